//! Files that are broken, cut short, of another kind or not there: all of a diary's lines or none, the good
//! rows of a weather file with the bad ones said.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Site, assert_refused, repository};

const GOOD: &str = r#"{"happened":"2026-03-12 11:00","body":{"kind":"water_drop","soaked_in":"45 s"}}"#;

/// A binary file: the start of a picture.
const PICTURE: &[u8] = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x01\0\0\0\x01\0\x08\x02\xff\xfe";

fn epw() -> String {
    std::fs::read_to_string(repository("reference/weather/pvgis-45N-8E-jan-feb.epw")).unwrap()
}

/// One bad line among good ones: nothing of the file is written.
#[test]
fn a_bad_line_among_good_ones_stops_the_whole_file() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    for (line, says) in [
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"scrape","result":"powder"}"#,
            &["line 2", "broken JSON at column", "accepted: one JSON object on one line"][..],
        ),
        ("the finisher was here", &["line 2", "broken JSON", "accepted"]),
        ("[1, 2]", &["line 2", "not a JSON object", "accepted"]),
        (r#"{"body":{"kind":"scrape","result":"powder"}}"#, &["line 2", "happened", "missing", "accepted"]),
        (r#"{"happened":"2026-03-12 12:00"}"#, &["line 2", "body", "missing", "accepted"]),
        (r#"{"happened":"2026-03-12 12:00","body":{"result":"powder"}}"#, &["line 2", "body", "kind"]),
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"frobnicate"}}"#,
            &["line 2", "kind", "frobnicate", "accepted: job_opened"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"pour","thickness":"4 furlongs"}}"#,
            &["line 2", "pour.thickness", "4 furlongs", "accepted"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"pour","thickness":"-4 in"}}"#,
            &["line 2", "pour.thickness", "-4 in", "accepted"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"air_reading","humidity":"120 %"}}"#,
            &["line 2", "air_reading.humidity", "120 %", "accepted"],
        ),
        (
            r#"{"happened":"noon","body":{"kind":"scrape","result":"powder"}}"#,
            &["line 2", "happened", "noon", "accepted"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","boddy":1,"body":{"kind":"scrape","result":"powder"}}"#,
            &["line 2", "boddy"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"scrape","result":"powder","mood":"good"}}"#,
            &["line 2", "scrape.mood"],
        ),
        (
            r##"{"happened":"2026-03-12 12:00","body":{"kind":"retest","of":"#gone","result":"clear"}}"##,
            &["retest.of", "not in this diary", "accepted"],
        ),
        (
            r#"{"happened":"2026-02-12 12:00","body":{"kind":"scrape","result":"powder"}}"#,
            &["scrape.happened", "2026-02-12", "before the pour", "accepted"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","place":{"zone":"shed"},"body":{"kind":"scrape","result":"powder"}}"#,
            &["scrape.place.zone", "shed", "accepted: shop, office"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","slab":"0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10","body":{"kind":"note","text":"x"}}"#,
            &["line 2", "slab", "another slab", "accepted"],
        ),
        (
            r#"{"happened":"2026-03-12 12:00","body":{"kind":"choice_approved","panel":"P9","by":"me"}}"#,
            &["choice_approved.panel", "P9", "accepted"],
        ),
    ] {
        let file = site.file("lines.jsonl", format!("{GOOD}\n{line}\n{}\n", GOOD.replace("11:00", "13:00")));
        let says: Vec<&str> = says.iter().chain(&["nothing was written"]).copied().collect();
        assert_refused(&site, site.run(&["log", "--from", &file]), before, 3, &says);
        let typed = site.run_with_input(&["log", "--from", "-"], &std::fs::read_to_string(&file).unwrap());
        assert_refused(&site, typed, before, 3, &says);
    }
}

/// A file of 10,000 lines is not worth much if the checks say only what is wrong and not where.
#[test]
fn a_line_that_reads_but_cannot_be_is_refused_with_its_line() {
    let site = Site::with_slab();
    let late = r#"{"happened":"2026-02-12 12:00","body":{"kind":"scrape","result":"powder"}}"#;
    let refused = site.log_lines(&format!("{GOOD}\n{late}\n")).ends(3).err;
    assert!(refused.contains("line 2"), "{refused}");
}

/// A file may come from a machine whose clock is ahead: what lies ahead is kept, said, and left out of answers.
#[test]
fn a_line_ahead_of_the_clock_is_kept_and_said() {
    let site = Site::with_slab();
    let before = site.entries();
    let ahead = r#"{"happened":"2999-01-01","body":{"kind":"note","text":"x"}}"#;
    let told = site.log_lines(&format!("{GOOD}\n{ahead}\n")).ends(0);
    for part in ["note.happened", "2999-01-01", "future"] {
        assert!(told.err.contains(part), "{part}: {}", told.err);
    }
    assert_eq!(site.entries(), before + 2);
    assert!(site.ids("note").is_empty(), "it is not told before its day");
}

#[test]
fn every_bad_line_is_told_at_once() {
    let site = Site::with_slab();
    let refused = site.log_lines(&format!("broken\n{GOOD}\nbroken\n")).ends(3).err;
    assert!(refused.contains("line 1") && refused.contains("line 3") && !refused.contains("line 2"), "{refused}");
}

/// A newer program's entry is kept, not refused and not understood.
#[test]
fn an_entry_of_a_newer_program_is_kept_byte_for_byte() {
    let site = Site::with_slab();
    let body = r#"{"kind":"hologram",  "depth":"1.50 in","nested":{"b":1,"a":[1.0,2]}}"#;
    site.log_lines(&format!(r#"{{"happened":"2026-03-12 11:00","schema":99,"body":{body}}}"#)).ends(0);
    let told = site.run(&["diary", "--json"]).ends(0).out;
    assert!(told.contains("hologram") && told.contains("1.50 in"), "{told}");
    site.run(&["ready", "--at", "2026-04-01"]).ends(1);
}

#[test]
fn files_that_are_no_diary() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    let picture = site.file("picture.png", PICTURE);
    let folder = site.path("data").to_str().unwrap().to_owned();
    for (file, says) in [
        ("gone.jsonl", &["gone.jsonl", "accepted"][..]),
        (&picture, &["picture.png", "UTF-8", "accepted"]),
        (&folder, &["data", "accepted"]),
    ] {
        assert_refused(&site, site.run(&["log", "--from", file]), before, 3, says);
    }
}

#[test]
fn an_empty_file_writes_nothing() {
    let site = Site::with_slab();
    let before = site.entries();
    for text in ["", "\n", "  \r\n\t\n", "\u{feff}"] {
        let ran = site.run(&["log", "--from", &site.file("empty.jsonl", text)]);
        assert!(!ran.err.contains("panicked"), "{}", ran.err);
        assert_eq!(site.entries(), before, "{text:?}");
    }
}

#[test]
fn weather_files_that_cannot_be_read_at_all() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    let header: String = epw().lines().take(4).map(|line| format!("{line}\n")).collect();
    let no_rows: String = epw().lines().take(8).map(|line| format!("{line}\n")).collect();
    for (name, bytes, says) in [
        ("cut.epw", header.as_bytes(), &["cut.epw", "line 5", "end of file", "accepted: HOLIDAYS"][..]),
        ("rows.epw", no_rows.as_bytes(), &["rows.epw", "accepted"]),
        ("wrong.csv", b"name,phone\nSam,1\n", &["wrong.csv", "name, phone", "accepted: a time column"]),
        ("unit.csv", b"time,air\n2026-03-03 10:00,66\n", &["unit.csv", "\"air\"", "unit is missing", "accepted"]),
        ("empty.csv", b"", &["empty.csv", "empty", "accepted"]),
        ("picture.png", PICTURE, &["picture.png", "not text", "accepted: EPW, TMY3 CSV"]),
    ] {
        let file = site.file(name, bytes);
        assert_refused(&site, site.run(&["log", "air-series", &file]), before, 3, says);
    }
    for (args, code, says) in [
        (&["log", "air-series", "gone.csv"][..], 3, &["gone.csv", "accepted"][..]),
        (&["log", "air-series"], 2, &["air-series", "accepted: one file"]),
        (&["log", "air-series", "a.csv", "b.csv"], 2, &["air-series", "accepted: one file"]),
    ] {
        assert_refused(&site, site.run(args), before, code, says);
    }
}

#[test]
fn a_column_that_is_not_there_is_named() {
    let site = Site::with_slab();
    let before = (site.entries(), 0);
    let table = site.file("table.csv", "when,t,rh\n2026-03-03 10:00,66,45\n");
    let map = |columns: &[&'static str]| {
        let mut args = vec!["log", "air-series", &table];
        columns.iter().for_each(|column| args.extend(["--column", column]));
        site.run(&args)
    };
    for (columns, code, says) in [
        (&["time=when", "air=T9"][..], 3, &["air", "\"T9\"", "accepted: one of when, t, rh"][..]),
        (&["tim=when"], 2, &["\"tim\"", "accepted: time"]),
        (&["time"], 2, &["column", "\"time\"", "accepted: quantity=column"]),
        (&["time=when", "air=t", "air_unit=furlong"], 3, &["air_unit", "furlong", "accepted"]),
    ] {
        assert_refused(&site, map(columns), before, code, says);
    }
    map(&["time=when", "air=t", "air_unit=F", "humidity=rh"]).ends(0);
    let series = &site.run(&["diary", "--kind", "air-series", "--json"]).json_lines()[0]["body"]["series"];
    // 66 °F = (66 - 32) / 1.8 = 18.889 °C; 10:00 in Chicago on 3 March (before daylight saving) is 16:00 UTC.
    let row = &series["rows"][0];
    assert_eq!(row[0], "2026-03-03T16:00:00Z");
    assert!((row[1].as_f64().unwrap() - 18.889).abs() < 0.01, "{row}");
}

#[test]
fn a_cut_last_row_is_said_and_the_rows_before_it_are_kept() {
    let site = Site::with_slab();
    let whole = epw();
    let lines: Vec<&str> = whole.lines().collect();
    // Eight header lines, 24 rows, and the first five fields of one more.
    let cut: Vec<&str> = lines[32].splitn(6, ',').take(5).collect();
    let text = format!("{}\n{}", lines[..32].join("\n"), cut.join(","));
    let told = site.run(&["log", "air-series", &site.file("cut.epw", text)]).ends(0);
    assert!(told.err.contains("cut.epw: line 33") && told.err.contains("cut short"), "{}", told.err);
    let series = &site.run(&["diary", "--kind", "air-series", "--json"]).json_lines()[0]["body"]["series"];
    assert_eq!(series["rows"].as_array().unwrap().len(), 24);
}

#[test]
fn bad_rows_of_a_table_are_said_and_the_good_ones_kept() {
    let site = Site::with_slab();
    let table =
        "time,air °F,RH %\n2026-03-03 10:00,66,45\nnoon,66,45\n2026-03-03 12:00,66,450\n2026-03-03 13:00,68,44\n";
    let told = site.run(&["log", "air-series", &site.file("table.csv", table)]).ends(0);
    for part in ["table.csv: line 3", "noon", "table.csv: line 4", "450"] {
        assert!(told.err.contains(part), "{part}: {}", told.err);
    }
    let series = &site.run(&["diary", "--kind", "air-series", "--json"]).json_lines()[0]["body"]["series"];
    // The row with 450 % may keep its temperature.
    let kept = series["rows"].as_array().unwrap().len();
    assert!((2..=3).contains(&kept), "{kept}");
}
