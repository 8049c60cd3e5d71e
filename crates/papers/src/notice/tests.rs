//! The notice as printed: one sheet, both languages, readable type.

use jiff::civil::date;
use trade_facts::Trade;

use super::sheet::{READERS, lay_out};
use super::{Found, SiteNotice};
use crate::typeset::squeezed;
use crate::{PageSize, PaperError, site_notice};

fn notice(kinds: Vec<String>, found: usize) -> SiteNotice {
    let found = (0..found).map(|n| Found { kind: "lift-oil".to_owned(), place: format!("bay {n}, by the door") });
    SiteNotice {
        job: "Quarry Road barn".to_owned(),
        slab: "Shop floor".to_owned(),
        posted: date(2026, 6, 3),
        kinds,
        found: found.collect(),
        link: None,
    }
}

#[test]
fn one_sheet_in_both_languages_with_every_warning() {
    for size in PageSize::ALL {
        let laid = lay_out(&notice(SiteNotice::usual(), 3), size).expect("a notice");
        assert_eq!(laid.sheets(), 1, "{size:?}");
        let text = laid.text();
        for kind in SiteNotice::usual() {
            let incident = Trade::built_in().incident(&kind).expect("a kind");
            for reader in READERS {
                assert!(text.contains(&squeezed(&reader.text_of(incident, "notice"))), "{kind}");
            }
        }
        for part in [
            "NOTICE",
            "AVISO",
            "This slab is the finished floor",
            "Esta losa es el piso terminado",
            "Report damage today.",
            "Anchor braces outside the slab.",
            "Ancle los puntales fuera de la losa.",
            "Avise de daños hoy mismo.",
            "Already found here",
            "Ya encontrado aquí",
            "Lift oil / Aceite de plataforma: bay 2, by the door",
            "Call / Llame a:",
            "WARNING",
            "ADVERTENCIA",
            "Poison gas can kill.",
            "June 3, 2026",
            "3 de junio de 2026",
            "ANSI Z535.4",
            "not reviewed|sin revisión",
        ] {
            assert!(part.split('|').any(|way| text.contains(&squeezed(way))), "{size:?}: {part}");
        }
    }
}

/// Warnings and titles are in 14 pt or more, on the fullest sheet too.
#[test]
fn type_is_read_from_two_meters() {
    for size in PageSize::ALL {
        let laid = lay_out(&notice(SiteNotice::usual(), 9), size).expect("a notice");
        let runs = laid.runs();
        for word in ["Tape", "Ponga", "Report", "This", "Already", "Call"] {
            let (_, points) = runs.iter().find(|(text, _)| text.starts_with(word)).unwrap_or_else(|| panic!("{word}"));
            assert!(*points >= 14.0 - 1e-9, "{word} in {points} pt");
        }
    }
}

#[test]
fn what_was_found_is_counted_where_it_does_not_fit() {
    let text = |found| lay_out(&notice(SiteNotice::usual(), found), PageSize::A4).expect("a notice").text();
    assert!(text(0).contains(&squeezed("Nothing noted so far. / Nada anotado hasta ahora.")));
    let many = text(7);
    let listed = many.matches("bythedoor").count();
    assert!(many.contains(&squeezed(&format!("and {} more in the diary", 7 - listed))), "{listed} listed");
}

#[test]
fn every_kind_can_be_printed_alone() {
    for incident in Trade::built_in().incidents() {
        let laid = lay_out(&notice(vec![incident.id.clone()], 1), PageSize::Letter).expect("a notice");
        assert_eq!(laid.sheets(), 1);
        let [_, spanish] = READERS.map(|reader| reader.text_of(incident, "notice"));
        assert!(laid.text().contains(&squeezed(&spanish)), "{}", incident.id);
    }
}

#[test]
fn too_many_warnings_are_refused_and_not_shrunk() {
    let all: Vec<String> = Trade::built_in().incidents().map(|incident| incident.id.clone()).collect();
    let error = site_notice(&notice(all, 0), PageSize::Letter);
    assert!(matches!(error, Err(PaperError::TooMuch { count: 30, sheets: 1, .. })), "{error:?}");
}

#[test]
fn no_warning_or_an_unknown_one_is_refused() {
    let none = site_notice(&notice(Vec::new(), 0), PageSize::A4).expect_err("refused").to_string();
    assert_eq!(none, "kinds: none; accepted: at least one incident kind");
    let odd = site_notice(&notice(vec!["glitter".to_owned()], 0), PageSize::A4).expect_err("refused").to_string();
    assert!(odd.starts_with("kinds[0]: \"glitter\"; accepted: red-chalk, "), "{odd}");
    let mut place = notice(SiteNotice::usual(), 1);
    place.found[0].kind = "glitter".to_owned();
    let odd = site_notice(&place, PageSize::A4).expect_err("refused").to_string();
    assert!(odd.starts_with("found[0].kind: \"glitter\""), "{odd}");
}

#[test]
fn trades_on_site_choose_the_warnings() {
    let plumbers = SiteNotice::for_trades(&["Plumber"]);
    assert!(plumbers.iter().take(2).all(|kind| ["pipe-glue", "cutting-oil"].contains(&kind.as_str())), "{plumbers:?}");
    assert!(plumbers.contains(&"tape".to_owned()) && !plumbers.contains(&"red-chalk".to_owned()));
    // The pour is over: nobody is told how to cure or trowel.
    let crowd = SiteNotice::for_trades(&["framer", "plumber", "GC", "concrete sub", "ready-mix", "drywall", "painter"]);
    assert!(
        !crowd
            .iter()
            .any(|kind| ["trowel-burn", "membrane-compound", "chloride-or-mix-change"].contains(&kind.as_str()))
    );
    for size in PageSize::ALL {
        for kinds in [plumbers.clone(), crowd.clone(), SiteNotice::for_trades(&[])] {
            assert!(!kinds.is_empty() && lay_out(&notice(kinds, 4), size).is_ok());
        }
    }
}

/// The address stands under the code, so that a person without a camera can type it.
#[test]
fn a_link_is_drawn_in_the_corner_and_printed_under_it() {
    let address = "https://slabs.example.org/s/0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef";
    for size in PageSize::ALL {
        let linked = SiteNotice { link: Some(address.to_owned()), ..notice(SiteNotice::usual(), 3) };
        let laid = lay_out(&linked, size).expect("a notice");
        assert_eq!(laid.sheets(), 1, "{size:?}");
        let printed = laid.text().replace('\u{200b}', "");
        for part in [address, "This slab on your phone", "Esta losa en su teléfono"] {
            assert!(printed.contains(&squeezed(part)), "{size:?}: {part}");
        }
        let pdf = site_notice(&linked, size).expect("a notice");
        assert!(pdf.starts_with(b"%PDF"));
    }
    let without = lay_out(&notice(SiteNotice::usual(), 3), PageSize::A4).expect("a notice").text();
    assert!(!without.contains(&squeezed("This slab on your phone")));
}

#[test]
fn a_link_that_is_no_web_address_is_refused() {
    let odd = SiteNotice { link: Some("the office".to_owned()), ..notice(SiteNotice::usual(), 0) };
    let error = site_notice(&odd, PageSize::A4).expect_err("refused").to_string();
    assert!(error.starts_with("link: \"the office\"; accepted: a web address"), "{error}");
}
