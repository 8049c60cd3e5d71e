//! Files come from whoever asks, never from the disk.

use std::cell::RefCell;
use std::io;
use std::path::{Path, PathBuf};

use calculators::{NoFiles, Uploads, calculate, calculator, calculators};
use form_schema::InputKind;
use localization::{Lang, Locale, UnitSystem};

use crate::{typed, with};

fn plain(refused: &calculators::CalculatorError, locale: Locale) -> String {
    refused.problems(locale).into_iter().map(|(_, said)| said).collect()
}

const LOG: &str = "time,air °C,RH %,slab °C,wind km/h\n2026-06-02 13:00,35,20,35,30\n2026-06-02 14:00,20,50,20,0\n\
                   2026-06-02 15:00,25,50,25,20\n";

#[test]
fn an_uploaded_file_is_read_from_its_bytes() {
    let question = typed(&[("file", "my log.csv"), ("time_zone", "America/Chicago")]);
    let sum = calculate("evaporation", &question, None, &Uploads(&[("my log.csv", LOG.as_bytes())])).unwrap();
    let json = sum.json(Locale::default());
    // The first hour is above the limit: row 35 °C, 20 %, 30 km/h of reference/physics/evaporation_checks.csv.
    assert_eq!(json["results"]["alarm_hours_h"], 1);
    assert_eq!(json["inputs"]["file"], "my log.csv");
    assert_eq!(json["results"]["alarms"][0]["from"], "2026-06-02T13:00:00-05:00");
    let age = calculate(
        "equivalent-age",
        &typed(&[("file", "my log.csv")]),
        None,
        &Uploads(&[("my log.csv", LOG.as_bytes())]),
    );
    assert_eq!(age.unwrap().json(Locale::default())["results"]["calendar_age_h"], 2);
}

#[test]
fn what_is_noticed_in_a_file_is_told_with_the_answer_and_with_a_refusal() {
    let gappy = "time,air °C,RH %\n2026-06-02 13:00,35,20\n2026-06-02 14:00,no,50\n2026-06-03 15:00,25,50\n";
    let files = Uploads(&[("log.csv", gappy.as_bytes())]);
    let mut question = typed(&[("file", "log.csv"), ("surface", "80 °F"), ("wind", "5 mph")]);
    let sum = calculate("evaporation", &question, None, &files).unwrap();
    assert!(
        sum.notes().iter().all(|note| note.starts_with("log.csv: ")) && !sum.notes().is_empty(),
        "{:?}",
        sum.notes()
    );
    question.set("wind", "");
    let refused = calculate("evaporation", &question, None, &files).unwrap_err();
    assert_eq!(refused.field_name(), Some("wind"));
    assert_eq!(refused.notes, sum.notes());
}

/// A path as typed reaches nothing but the reader that was given.
#[test]
fn a_typed_path_never_reads_a_file() {
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml");
    assert!(Path::new(here).exists());
    for sum in ["evaporation", "equivalent-age"] {
        for path in [here, "/etc/passwd", "../../etc/passwd", "Cargo.toml", "-"] {
            for refused in [
                calculate(sum, &typed(&[("file", path)]), None, &NoFiles).unwrap_err(),
                calculate(sum, &typed(&[("file", path)]), None, &Uploads(&[("log.csv", LOG.as_bytes())])).unwrap_err(),
            ] {
                assert_eq!(refused.field_name(), Some("file"), "{refused}");
                let plain = plain(&refused, Locale::new(Lang::Es, UnitSystem::Metric));
                assert!(plain.contains("no vino con la pregunta"), "{plain}");
            }
        }
    }
}

/// Whatever is typed elsewhere, no file is asked for.
#[test]
fn no_other_field_reaches_the_reader() {
    let asked: RefCell<Vec<PathBuf>> = RefCell::default();
    let spy = |path: &Path| {
        asked.borrow_mut().push(path.to_owned());
        io::Result::Err(io::Error::other("not here"))
    };
    for of in calculators() {
        for field in of.form.fields.iter().filter(|field| field.input != InputKind::File) {
            for text in ["--file=/etc/passwd", "x --file /etc/passwd", "--file", "@/etc/passwd", "=/etc/passwd"] {
                let question = with(&of.filled(UnitSystem::Metric), field.name, &[text]);
                drop(of.calculate(&question, None, &spy));
            }
        }
    }
    assert!(asked.borrow().is_empty(), "{asked:?}");
    let _ = calculate("evaporation", &typed(&[("file", "a b=c.csv ")]), None, &spy);
    assert_eq!(asked.into_inner(), [PathBuf::from("a b=c.csv ")]);
}

/// What a reader cannot use is told with the file's name.
#[test]
fn an_empty_or_foreign_file_is_refused() {
    for bytes in [&b""[..], b"time,slab\n", b"\x00\x01\x02", b"%PDF-1.7"] {
        for sum in ["evaporation", "equivalent-age"] {
            let refused =
                calculate(sum, &typed(&[("file", "f.csv")]), None, &Uploads(&[("f.csv", bytes)])).unwrap_err();
            assert_eq!(refused.field_name(), Some("file"), "{refused}");
            assert!(plain(&refused, Locale::default()).contains("f.csv"), "{}", plain(&refused, Locale::default()));
        }
    }
}

/// The fields that only a file has use for.
#[test]
fn what_goes_with_a_file_is_taken() {
    let mapped = "time,T1,RH,S\n2026-06-02 13:00,35,20,35\n2026-06-02 14:00,20,50,20\n";
    let files = Uploads(&[("log.csv", LOG.as_bytes()), ("map.csv", mapped.as_bytes())]);
    let answer = |pairs: &[(&str, &str)]| {
        let sum = calculate("equivalent-age", &typed(pairs), None, &files).unwrap_or_else(|e| panic!("{pairs:?}: {e}"));
        sum.json(Locale::default())["results"].clone()
    };
    let log = [("file", "log.csv")];
    let without = answer(&log);
    for field in ["time_zone", "longest_gap", "gap_margin"] {
        for unit_system in UnitSystem::ALL {
            let example = calculator("equivalent-age").unwrap().field(field).unwrap().example(unit_system);
            assert_eq!(answer(&[log[0], (field, example)]), without, "{field}: the log has no gap");
        }
    }
    // Three columns under one field.
    let columns = [("file", "map.csv"), ("column", "time=time"), ("column", "slab=S"), ("column", "slab_unit=C")];
    assert_eq!(answer(&columns)["calendar_age_h"], 1);
    let refused = calculate("equivalent-age", &typed(&[log[0], ("column", "slab")]), None, &files).unwrap_err();
    assert_eq!(refused.field_name(), Some("column"));
    let refused = calculate("equivalent-age", &typed(&[log[0], ("year", "2026")]), None, &files).unwrap_err();
    assert_eq!(refused.field_name(), Some("year"));
    assert!(
        plain(&refused, Locale::default()).contains("typical weather year"),
        "{}",
        plain(&refused, Locale::default())
    );
    let refused = calculate("equivalent-age", &typed(&[log[0], ("time_zone", "Mars")]), None, &files).unwrap_err();
    assert_eq!(refused.field_name(), Some("time_zone"));
    let weather =
        std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/weather/pvgis-45N-8E-jan-feb.epw"));
    let files = Uploads(&[("w.epw", &weather.unwrap())]);
    let year =
        calculate("evaporation", &typed(&[("file", "w.epw"), ("surface", "80 °F"), ("year", "2026")]), None, &files)
            .unwrap();
    let alarms = year.json(Locale::default())["results"]["highest_at"].to_string();
    assert!(alarms.starts_with("\"2026-"), "{alarms}");
}
