//! A page gets from the crate `calculators` what the command line prints.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use calculators::{Calculator, NoFiles, Uploads, calculate, calculators};
use common::Site;
use form_schema::FormData;
use localization::{Lang, Locale, UnitSystem};

/// The whole example of a form as a line of the command line.
fn line(of: &Calculator, typed: &FormData) -> Vec<String> {
    let mut line = vec!["sums".to_owned(), of.id().to_owned()];
    for (field, texts) in typed.iter() {
        let placed = of.places.contains(&field);
        let option = format!("--{}", field.replace('_', "-"));
        line.extend(texts.iter().map(|text| if placed { text.clone() } else { format!("{option}={text}") }));
    }
    line
}

#[test]
fn every_form_answers_as_the_command_line_does() {
    let site = Site::empty();
    for of in calculators() {
        for (unit_system, units) in [(UnitSystem::Imperial, "imperial"), (UnitSystem::Metric, "metric")] {
            for (lang, said) in [(Lang::En, "en"), (Lang::Es, "es")] {
                let typed = of.filled(unit_system);
                let page = of.calculate(&typed, Some(unit_system), &NoFiles).unwrap();
                let mut args = line(of, &typed);
                args.extend(["--lang", said, "--units", units].map(str::to_owned));
                let args: Vec<&str> = args.iter().map(String::as_str).collect();
                let locale = Locale::new(lang, unit_system);
                assert_eq!(site.run(&args).ends(0).out, page.text(locale), "{args:?}");
                let printed = site.run(&[&args[..], &["--json"]].concat()).ends(0).out;
                assert_eq!(printed, format!("{:#}\n", page.json(locale)), "{args:?}");
            }
        }
    }
}

#[test]
fn a_file_answers_alike_from_the_disk_and_from_an_upload() {
    let log = "time,air °C,RH %,slab °C,wind km/h\n2026-06-02 13:00,35,20,35,30\n2026-06-02 14:00,no,50,20,0\n\
               2026-06-02 19:00,25,50,25,20\n";
    let site = Site::empty();
    site.file("log.csv", log);
    for sum in ["evaporation", "equivalent-age"] {
        let ran = site.run(&["sums", sum, &format!("--file={}", site.path("log.csv").display()), "--json"]).ends(0);
        let typed = FormData::from_iter([("file", "log.csv")]);
        let page = calculate(sum, &typed, None, &Uploads(&[("log.csv", log.as_bytes())])).unwrap();
        assert_eq!(ran.out, format!("{:#}\n", page.json(Locale::default())));
        let notes: String = page.notes().iter().map(|note| format!("{note}\n")).collect();
        assert_eq!(ran.err, notes);
    }
}
