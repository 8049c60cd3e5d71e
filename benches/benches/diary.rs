//! A large diary: read from the store, folded, judged. Asked for: 100,000 entries folded and judged
//! in under 0.5 s.

use benches::{row, times};
use jiff::tz::TimeZone;
use slab_answers::standing::judge;
use slab_diary::fold;
use slab_diary::{Context, Diary, Entry, Knowledge, SlabId, read_lines};
use trade_facts::Trade;

const ENTRIES: usize = 100_000;

/// A year of drops, readings and notes on a slab of three zones, with corrections among them.
fn lines() -> String {
    let mut lines = String::new();
    let first = r#"{"happened":"2025-01-01 07:00","body":{"kind":"job_opened","name":"bench","time_zone":"America/Chicago"}}
{"happened":"2025-01-01 07:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"90 ft","depth":"30 ft"}]},"zones":[{"name":"a","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"30 ft","depth":"30 ft"}]}},{"name":"b","shape":{"rectangles":[{"corner":["30 ft","0 ft"],"width":"30 ft","depth":"30 ft"}]}},{"name":"c"}]}}
{"happened":"2025-01-02 07:00","body":{"kind":"pour","mix":"m","thickness":"4 in"}}
{"happened":"2025-01-02 17:00","body":{"kind":"curing","method":"wet_covers"}}
{"happened":"2025-01-09 17:00","body":{"kind":"cured"}}
"#;
    lines.push_str(first);
    let start = jiff::civil::date(2025, 1, 10).at(0, 0, 0, 0);
    for n in first.lines().count()..ENTRIES {
        let at = start.checked_add(jiff::SignedDuration::from_mins(5 * n as i64)).expect("within the calendar");
        let (x, y) = (n * 7 % 90, n * 11 % 30);
        let body = match n % 8 {
            0 => format!(
                r#""place":{{"point":["{x} ft","{y} ft"]}},"body":{{"kind":"water_drop","soaked_in":"{} s"}}"#,
                60 + n % 40
            ),
            1 => format!(r#""place":{{"point":["{x} ft","{y} ft"]}},"body":{{"kind":"scrape","result":"powder"}}"#),
            2 => r#""body":{"kind":"temperature","slab":"61 °F"}"#.to_owned(),
            3 => format!(r#""place":{{"zone":"b"}},"body":{{"kind":"surface_ph","ph":"11.{}"}}"#, n % 10),
            4 => r#""body":{"kind":"air_reading","air":"66 °F","humidity":"45 %","slab":"62 °F"}"#.to_owned(),
            5 => format!(
                r#""place":{{"point":["{x} ft","{y} ft"]}},"body":{{"kind":"slab_humidity","humidity":"8{} %","depth":"1.6 in","equilibrated":"24 h"}}"#,
                n % 10
            ),
            6 => format!(r#""body":{{"kind":"note","text":"round {n}"}}"#),
            _ => format!(
                r##""id":"#fix{n}","replaces":"#fix{}","body":{{"kind":"note","text":"correction {n}"}}"##,
                n - 8
            ),
        };
        lines.push_str(&format!("{{\"happened\":\"{at}\",{body}}}\n"));
    }
    lines
}

fn main() {
    let slab = SlabId::of_name("bench");
    let context =
        Context { slab, zone: TimeZone::UTC, author: "bench".to_owned(), device: "bench".to_owned(), noted: None };
    let text = lines();
    let entries: Vec<Entry> = read_lines(&text, &context).expect("well formed lines");
    let diary: Diary = entries.iter().cloned().collect();
    let end = entries.iter().map(|e| e.happened.instant()).max().expect("entries");
    let knowledge = Knowledge::noted_by(end);
    let trade = Trade::built_in();
    println!("{} entries", diary.len());
    row("fold", times(7, || fold(&diary, knowledge).entries().len()));
    row("fold and judge (asked for: under 500 ms)", times(7, || judge(&fold(&diary, knowledge), trade).overall.open));
    row("read from JSON Lines", times(3, || read_lines(&text, &context).expect("well formed lines").len()));
    let folder = tempfile::tempdir().expect("a folder");
    let store = store::Store::open(folder.path()).expect("a store");
    store.create_slab(slab, "bench").expect("a slab");
    row("write to the store in one transaction", times(1, || store.append(slab, &entries).expect("written").added));
    row("read from the store", times(3, || store.diary(slab).expect("read").len()));
}
