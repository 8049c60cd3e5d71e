//! Measures the lines of plans: one plan as JSON on each line of standard input, one JSON answer each
//! on standard output, in meters and square meters.
//!
//! ```text
//! cargo run -p slab --example layout_measure < plans.jsonl
//! {"joints_m":4.0,"scores_m":0.0,"patterns_m":[],"panels_m2":[6.0,6.0],"sections_m2":[6.0,6.0],"tiles":[]}
//! ```
//!
//! `reference/plan/make_layouts.py` makes such lines and compares the answers with Shapely's.

use std::error::Error;
use std::io::{BufRead, Write};

use serde_json::json;
use slab_plan::layout::{Cuts, Sections, joint_lines, pattern_lines, score_lines, tiles};
use slab_plan::{Plan, PlanSpec};
use units::Fraction;

fn areas(plan: &Plan, score_lines: bool) -> Result<Vec<f64>, Box<dyn Error>> {
    let sections = Sections::of(plan, Cuts { joints: true, score_lines })?;
    let mut areas: Vec<f64> = sections.sections().iter().map(|s| s.area.as_square_meters()).collect();
    areas.sort_by(f64::total_cmp);
    Ok(areas)
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut out = std::io::stdout().lock();
    for line in std::io::stdin().lock().lines() {
        let plan = Plan::resolve(&PlanSpec::from_json(&line?)?)?;
        let mut patterns = Vec::new();
        let mut counts = Vec::new();
        for index in 0..plan.patterns().len() {
            patterns.push(pattern_lines(&plan, index)?.length.as_meters());
            let tiles = tiles(&plan, index, Fraction::share(0.0)?)?;
            counts.push([tiles.whole, tiles.cut]);
        }
        let answer = json!({
            "joints_m": joint_lines(&plan)?.length.as_meters(),
            "scores_m": score_lines(&plan)?.length.as_meters(),
            "patterns_m": patterns,
            "panels_m2": areas(&plan, false)?,
            "sections_m2": areas(&plan, true)?,
            "tiles": counts,
        });
        writeln!(out, "{answer}")?;
    }
    Ok(())
}
