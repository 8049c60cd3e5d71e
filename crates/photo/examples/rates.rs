//! Judges a folder of labeled pictures (`labels.csv` with `file`, `truth`, `accept`, `kind` and a
//! card) and counts right, wrong and can't tell for each kind.
//!
//! `cargo run --release -p photo --example rates -- FOLDER [--each]`

use std::collections::BTreeMap;
use std::path::Path;
use std::{env, fs};

use photo::{Card, Evenness, EvennessLook, Rect, Reflectance, Verdict, decode, evenness};

#[derive(Default)]
struct Count {
    right: u32,
    wrong: u32,
    cant_tell: u32,
    wrong_words: Vec<String>,
}

fn main() {
    let mut arguments = env::args().skip(1);
    let folder = arguments.next().expect("the folder of pictures");
    let each = arguments.next().is_some();
    let mut counts: BTreeMap<String, Count> = BTreeMap::new();
    let text = fs::read_to_string(Path::new(&folder).join("labels.csv")).expect("labels.csv");
    let mut lines = text.lines();
    let names: Vec<&str> = lines.next().expect("a heading").split(',').collect();
    for line in lines {
        let values: Vec<&str> = line.split(',').collect();
        let get = |name: &str| names.iter().position(|n| *n == name).map_or("", |i| values[i]);
        let bytes = fs::read(Path::new(&folder).join(get("file"))).expect("the picture");
        let picture = decode(&bytes).expect("a picture");
        let number = |name: &str| get(name).parse::<f64>().ok().map(|v| v as u32);
        let card = || {
            let rect = Rect { x: number("card_x")?, y: number("card_y")?, w: number("card_w")?, h: number("card_h")? };
            Some(Card { rect, reflectance: Reflectance::new(get("card_reflectance").parse().ok()?).ok()? })
        };
        let answer = evenness(&picture, &EvennessLook { card: card(), scale: None });
        let word = match answer.verdict {
            Verdict::Even => "uniform",
            Verdict::Patchy => "patchy",
            Verdict::CantTell => "cannot_tell",
        };
        let kind = if get("kind").is_empty() { get("note") } else { get("kind") };
        let count = counts.entry(kind.to_owned()).or_default();
        let accepted = get("accept").split('|').any(|a| a == word);
        match answer.verdict {
            _ if !accepted && word != "cannot_tell" => {
                count.wrong += 1;
                count.wrong_words.push(format!("{} {word}", get("file")));
            }
            Verdict::CantTell => count.cant_tell += 1,
            _ => count.right += 1,
        }
        if each {
            show(get("file"), kind, get("accept"), word, accepted, &answer);
        }
    }
    println!("| kind | pictures | right word | wrong word | can't tell | wrong ones |");
    println!("|---|---|---|---|---|---|");
    for (kind, count) in &counts {
        let all = count.right + count.wrong + count.cant_tell;
        println!(
            "| {kind} | {all} | {} | {} | {} | {} |",
            count.right,
            count.wrong,
            count.cant_tell,
            count.wrong_words.join(", ")
        );
    }
}

fn show(file: &str, kind: &str, accept: &str, word: &str, accepted: bool, answer: &Evenness) {
    let codes: Vec<String> = answer
        .why
        .iter()
        .map(|why| format!("{}{:.2?}", why.code(), why.values().iter().map(|v| v.1).collect::<Vec<_>>()))
        .collect();
    println!(
        "{} {file} {kind} accept {accept} got {word} S {:.2} class {:.2} share {:.2} warm {:.3} range {:.2} lines {} {}",
        if accepted { "ok" } else { "NO" },
        answer.score_de00.unwrap_or(-1.0),
        answer.class_de00.unwrap_or(-1.0),
        answer.share.unwrap_or(-1.0),
        answer.warmth.unwrap_or(0.0),
        answer.light_range.unwrap_or(0.0),
        answer.lines.len(),
        codes.join(" "),
    );
}
