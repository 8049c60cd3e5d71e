//! What every PDF must hold.

use jiff::civil::date;
use localization::Lang;
use units::{Area, Fraction, Length};

use crate::{PageSize, PourSheet, PourZone, SiteNotice, pour_sheet, site_notice};

fn plain_sheet() -> PourSheet {
    PourSheet {
        job: "A job".to_owned(),
        slab: "A slab".to_owned(),
        prepared: date(2026, 5, 4),
        pour_day: None,
        thickness: Length::inches(4.0),
        zones: vec![PourZone { name: "All".to_owned(), area: Area::square_feet(100.0), finish: "float".to_owned() }],
        panels: Vec::new(),
        waste: Fraction::share(0.0).expect("in range"),
        weather: None,
    }
}

fn plain_notice() -> SiteNotice {
    SiteNotice {
        job: "A job".to_owned(),
        slab: "A slab".to_owned(),
        posted: date(2026, 5, 4),
        kinds: SiteNotice::usual(),
        found: Vec::new(),
        link: None,
    }
}

fn holds(pdf: &[u8], what: &str) -> bool {
    pdf.windows(what.len()).any(|at| at == what.as_bytes())
}

/// Marks of a PDF as in ISO 32000-1 (14.8 tagged PDF, 14.9 language, 9.9 embedded fonts) and
/// ISO 14289-1 (identification), from memory.
#[test]
fn every_pdf_is_tagged_titled_and_carries_its_fonts() {
    for size in PageSize::ALL {
        for lang in Lang::ALL {
            let pdf = pour_sheet(&plain_sheet(), lang, size).expect("a sheet");
            assert!(holds(&pdf, &format!("/Lang({}-US)", lang.name())));
            let title = if lang == Lang::En {
                "/Title(Pour sheet: A job, A slab)"
            } else {
                "/Title(Hoja de colado: A job, A slab)"
            };
            assert!(holds(&pdf, title));
            marks(&pdf);
        }
        let pdf = site_notice(&plain_notice(), size).expect("a notice");
        assert!(holds(&pdf, "/Lang(en-US)") && holds(&pdf, "/Lang(es-US)"), "both languages are marked");
        assert!(holds(&pdf, "/Title(Site notice: A job, A slab)"));
        marks(&pdf);
    }
}

fn marks(pdf: &[u8]) {
    assert!(pdf.starts_with(b"%PDF-1.7"));
    for mark in ["/MarkInfo", "/StructTreeRoot", "/FontFile2", "/DisplayDocTitle true", "pdfuaid:part>1", "/Alt"] {
        assert!(holds(pdf, mark), "{mark}");
    }
}

#[test]
fn the_same_data_give_the_same_bytes() {
    let sheet = || pour_sheet(&plain_sheet(), Lang::Es, PageSize::A4).expect("a sheet");
    assert_eq!(sheet(), sheet());
    let notice = || site_notice(&plain_notice(), PageSize::Letter).expect("a notice");
    assert_eq!(notice(), notice());
}
