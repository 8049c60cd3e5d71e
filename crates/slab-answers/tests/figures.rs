//! Every figure that a rule asks for is in the built-in facts: `Figures` and the order stop the
//! program at one that is not.

use std::collections::BTreeSet;
use std::path::Path;

use trade_facts::{Measured, Trade};

/// Ids written as the first text after one of these calls in the rules' source.
const CALLS: [&str; 6] = [".number(\"", ".value(\"", ".range(\"", ">(\"", ".three(\"", ".allowance(\""];

fn sources(dir: &Path, out: &mut String) {
    for entry in std::fs::read_dir(dir).expect("a folder of source") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            sources(&path, out);
        } else {
            out.push_str(&std::fs::read_to_string(&path).expect("source is text"));
        }
    }
}

fn asked() -> BTreeSet<String> {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut text = String::new();
    sources(&src.join("standing"), &mut text);
    sources(&src.join("order"), &mut text);
    let after = |call: &str| -> Vec<String> {
        text.split(call).skip(1).filter_map(|rest| rest.split('"').next()).map(str::to_owned).collect()
    };
    let mut ids: BTreeSet<String> = CALLS.iter().flat_map(|call| after(call)).collect();
    // Ids that are chosen by a condition or counted over an area stand as plain texts.
    let hyphened = text.split('"').skip(1).step_by(2).filter(|t| {
        ["humidity-", "emission-", "porous-tests-", "sheet-tests", "ph-readings-", "surface-ph-tests", "rinse-water-"]
            .iter()
            .any(|start| t.starts_with(start))
            && t.chars().all(|c| c.is_ascii_lowercase() || c == '-')
    });
    ids.extend(hyphened.map(str::to_owned));
    ids
}

#[test]
fn every_figure_a_rule_asks_for_is_in_the_facts_with_a_number() {
    let trade = Trade::built_in();
    let codes: BTreeSet<&str> = slab_answers::standing::Code::ALL.iter().map(|c| c.name()).collect();
    let mut found = 0;
    for id in asked().iter().filter(|id| !codes.contains(id.as_str())) {
        let fact = trade.fact(id).is_some_and(|f| f.value.is_some() || (f.low.is_some() && f.high.is_some()));
        let material = trade.material(id).is_some_and(|m| m.unit().is_some());
        let allowance = trade.allowance(id).is_some();
        assert!(fact || material || allowance, "no figure {id} in trade/");
        found += 1;
    }
    assert!(found >= 40, "only {found} figures were found in the source: the scan is blind");
}
