//! The word tables, the drawings, and what every PDF must hold.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::date;
use localization::Lang;
use serde_json::Value;
use units::{Area, Fraction, Length};

use crate::pictograms::Pictogram;
use crate::texts::{EN, ES, Words};
use crate::{PageSize, PourSheet, PourZone, SiteNotice, pour_sheet, site_notice};

/// Everything the crate is made of that may use a text.
const USERS: &[&str] = &[
    include_str!("show.rs"),
    include_str!("grades.rs"),
    include_str!("texts.rs"),
    include_str!("notice/sheet.rs"),
    include_str!("pour/sheet.rs"),
    include_str!("pour/write_slab.rs"),
    include_str!("pour/write_weather.rs"),
    include_str!("pour/write_work.rs"),
    include_str!("../templates/common.typ"),
    include_str!("../templates/pour_sheet.typ"),
    include_str!("../templates/site_notice.typ"),
];
/// Tables whose keys are names of drawings, grades or signal words.
const BY_ID: [&str; 3] = ["picture.", "grade.", "signal."];

fn leaves(text: &str) -> BTreeMap<String, Vec<String>> {
    fn walk(value: &Value, path: &str, out: &mut BTreeMap<String, Vec<String>>) {
        match value {
            Value::Object(map) => {
                for (key, inner) in map {
                    let dot = if path.is_empty() { "" } else { "." };
                    walk(inner, &format!("{path}{dot}{key}"), out);
                }
            }
            Value::Array(list) => {
                let texts = list.iter().map(|v| v.as_str().expect("a text").to_owned());
                out.insert(path.to_owned(), texts.collect());
            }
            other => {
                out.insert(path.to_owned(), vec![other.as_str().expect("a text").to_owned()]);
            }
        }
    }
    let mut out = BTreeMap::new();
    walk(&toml::from_str(text).expect("TOML"), "", &mut out);
    out
}

fn names(text: &str) -> BTreeSet<String> {
    text.split('{').skip(1).filter_map(|rest| rest.split_once('}')).map(|(name, _)| name.to_owned()).collect()
}

#[test]
fn both_languages_have_the_same_texts_and_fillings() {
    let (en, es) = (leaves(EN), leaves(ES));
    assert_eq!(en.keys().collect::<Vec<_>>(), es.keys().collect::<Vec<_>>());
    for (key, texts) in &en {
        let other = &es[key];
        assert_eq!(texts.len(), other.len(), "{key}");
        for (a, b) in texts.iter().zip(other) {
            assert_eq!(names(a), names(b), "{key}");
            assert!(!a.trim().is_empty() && !b.trim().is_empty(), "{key}");
        }
    }
}

#[test]
fn every_text_is_used() {
    let code: String = USERS.concat();
    for key in leaves(EN).keys().filter(|key| !BY_ID.iter().any(|table| key.starts_with(table))) {
        let last = key.rsplit('.').next().expect("split gives at least one part");
        let quoted = [format!("{key}\""), format!("\"{last}\"")].iter().any(|way| code.contains(way));
        // As a field in a template: `.name`, and not the beginning of a longer word.
        let field = code
            .split(&format!(".{last}"))
            .skip(1)
            .any(|rest| !rest.starts_with(|c: char| c.is_alphanumeric() || "_-(".contains(c)));
        let used = quoted || field;
        assert!(used, "nothing uses {key}");
    }
}

#[test]
fn every_drawing_has_its_words() {
    for lang in Lang::ALL {
        for drawing in Pictogram::ALL {
            assert!(Words::of(lang).message(&format!("picture.{}", drawing.name())).is_ok(), "{}", drawing.name());
        }
    }
    let table = leaves(EN);
    assert_eq!(table.keys().filter(|key| key.starts_with("picture.")).count(), Pictogram::ALL.len());
}

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
