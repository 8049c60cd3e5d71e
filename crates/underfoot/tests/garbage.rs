//! A thousand command lines that nobody would type: each ends with a code of its own, none panics.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use common::{Ran, Site};

/// Lehmer's generator with the multiplier of Park and Miller (1988): small, seeded, the same everywhere.
struct Draw(u64);

impl Draw {
    fn below(&mut self, end: usize) -> usize {
        self.0 = self.0 * 48_271 % 2_147_483_647;
        (self.0 % end as u64) as usize
    }

    fn of<'w>(&mut self, words: &[&'w str]) -> &'w str {
        words[self.below(words.len())]
    }
}

const COMMANDS: &[&str] = &["log", "ready", "order", "papers", "diary", "fix", "new", "list", "completions", "help"];

/// Words that mean something somewhere, in places where they do not. The demo is left out, since it takes
/// seconds; it is `demo.rs`.
const WORDS: &[&str] = &[
    "--json",
    "--at",
    "--known",
    "happened",
    "noted",
    "--from",
    "-",
    "--",
    "--kind",
    "pour-sheet",
    "--out",
    "x.pdf",
    "--lang",
    "es",
    "--units",
    "metric",
    "--slab",
    "creek",
    "Creek Road shop",
    "",
    " ",
    "\u{e9}\u{2603}\u{1f9f1}",
    "'; drop table entry; --",
    "2026-13-45",
    "9999-12-31",
    "0000-01-01",
    "-9999-01-01",
    "-1",
    "water-drop",
    "soaked_in=45 s",
    "soaked_in=",
    "=",
    "==",
    "a=b",
    "kind=note",
    "pour",
    "thickness=4 in",
    "thickness=1e400 in",
    "thickness=NaN in",
    "--point",
    "1 ft,2 ft",
    "nan,nan",
    ",",
    "--radius",
    "1 mil",
    "--zone",
    "shop",
    "lines.jsonl",
    "noise.bin",
    "table.csv",
    "--column",
    "air=air",
    "air_unit=F",
    "time=",
    "air-series",
    "--year",
    "-32768",
    "2026",
    "99999999999",
    "--photo",
    "--happened",
    "2026-03-05 10:00",
    "note",
    "text=hi",
    "plan",
    r#"outline={"area":"1e308 ft2"}"#,
    r#"outline={"area":"0 ft2"}"#,
    r#"outline={"polygon":[["0 ft","0 ft"]]}"#,
    r#"outline={"walk":{"start":["0 ft","0 ft"],"legs":[]}}"#,
    "--thickness",
    "4 in",
    "--pour-day",
    "--finish",
    "whole=broom",
    "--waste",
    "5 %",
    "200 %",
    "--panels",
    "4294967295",
    "0",
    "bash",
    "--help",
    "--version",
    "limit-set",
    "fact=drum-fill",
    "value=1e308",
    "value=0",
    "reason=x",
    "--author",
    "--all",
    "emission-dish",
    "gain=1 g",
    "area=0 ft2",
    "exposed=0 s",
    "[[[[[[[[[[[[[[[[",
    "{\"kind\":",
    "incident",
    "what=cutting-oil",
    "finish",
    "finish=broom",
    "panel-stained",
    "mix=[]",
    "coats=0",
    "used=0 gal",
    "sealer-chosen",
    "sealer=acrylic-water",
    "coats=4294967295",
    "solids=0 %",
    "dry_film=0 mil",
];

/// Command lines that mean something, to be spoiled in one to three places.
const SENSIBLE: &[&[&str]] = &[
    &["log", "water-drop", "soaked_in=45 s", "--happened", "2026-03-05 10:00", "--zone", "shop"],
    &["log", "pour", "thickness=4 in", "water_cement=0.5", "--happened", "2026-03-02"],
    &["log", "note", "text=hi", "--point", "1 ft,2 ft", "--radius", "1 ft", "--photo", "noise.bin"],
    &["log", "incident", "what=cutting-oil", "trade=plumber", "--author", "Sam"],
    &["log", "plan", r#"outline={"area":"1200 ft2"}"#, "--happened", "2026-03-02"],
    &["log", "limit-set", "fact=drum-fill", "value=0.8", "reason=x"],
    &["log", "sealer-chosen", "sealer=acrylic-water", "solids=25 %", "dry_film=1.5 mil", "coats=2"],
    &["log", "emission-dish", "gain=2 g", "area=0.5 ft2", "exposed=66 h"],
    &["log", "air-series", "table.csv", "--column", "time=time", "--column", "air=air", "--column", "air_unit=F"],
    &["log", "--from", "lines.jsonl", "--slab", "creek"],
    &["log", "--from", "noise.bin", "--json"],
    &["ready", "creek", "--at", "2026-04-02", "--known", "happened", "--json", "--lang", "es"],
    &["order", "--slab", "creek", "--at", "2026-04-02", "--units", "metric", "--json"],
    &["diary", "--kind", "water-drop", "--all", "--json", "--at", "2026-04-02"],
    &["fix", "0190a8f0", "thickness=5 in", "--happened", "2026-03-03", "--zone", "office"],
    &["new", "x", "--site", "y", "--time-zone", "America/Denver", "--exterior", "--existing"],
    &["papers", "--kind", "pour-sheet", "--out", "no/x.pdf", "--thickness", "4 in", "--waste", "5 %", "--panels", "3"],
    &["list", "--json", "--lang", "es", "--units", "metric"],
    &["completions", "bash"],
];

fn garbage(draw: &mut Draw) -> Vec<String> {
    let any = |draw: &mut Draw| if draw.below(8) == 0 { noise(draw) } else { draw.of(WORDS).to_owned() };
    if draw.below(3) == 0 {
        let count = draw.below(8);
        return std::iter::once(draw.of(COMMANDS).to_owned()).chain((0..count).map(|_| any(draw))).collect();
    }
    let mut args: Vec<String> = SENSIBLE[draw.below(SENSIBLE.len())].iter().map(|&word| word.to_owned()).collect();
    for _ in 0..draw.below(4) {
        let at = draw.below(args.len());
        match draw.below(4) {
            0 => args.insert(at, any(draw)),
            1 if args.len() > 1 => drop(args.remove(at)),
            2 => {
                let cut = draw.below(args[at].chars().count() + 1);
                args[at] = args[at].chars().take(cut).collect();
            }
            _ => args[at] = any(draw),
        }
    }
    args
}

/// A few characters from anywhere but the null that no argument can hold.
fn noise(draw: &mut Draw) -> String {
    (0..1 + draw.below(12)).filter_map(|_| char::from_u32(1 + draw.below(0xd000) as u32)).collect()
}

#[test]
fn a_thousand_random_command_lines_never_panic() {
    let site = Site::with_slab();
    site.file("lines.jsonl", common::BASE);
    site.file("noise.bin", (0..999u32).map(|i| (i * 7919 % 256) as u8).collect::<Vec<u8>>());
    site.file("table.csv", "time,air,rh\n2026-03-03 10:00,66,45\n");
    let mut draw = Draw(20_260_302);
    let mut ends = [0u32; 4];
    for _ in 0..1000 {
        let args = garbage(&mut draw);
        let words: Vec<&str> = args.iter().map(String::as_str).collect();
        let Ran { code, err, .. } = site.run(&words);
        assert!(!err.contains("panicked"), "{args:?}: {err}");
        assert!((0..4).contains(&code), "{args:?} ended with {code}: {err}");
        assert!(code < 2 || !err.trim().is_empty(), "{args:?} ended with {code} and said nothing");
        ends[code as usize] += 1;
    }
    // Garbage that only ever met the argument parser would have tried little.
    assert!(ends.iter().all(|&count| count > 10), "{ends:?}");
    // What garbage could write is read again.
    site.run(&["ready", "Creek Road shop"]).ends(1);
}
