//! The pH of a waste against the federal bounds, both ends included.

use science::chemistry::{PhFinding, WastePhLimits, ph_findings};
use units::Ph;

fn ph(value: f64) -> Ph {
    Ph::new(value).expect("a pH")
}

#[test]
fn both_ends_of_corrosive_waste_count() {
    let limits = WastePhLimits { sewer_floor: ph(5.0), corrosive_low: ph(2.0), corrosive_high: ph(12.5) };
    let at = |value| ph_findings(ph(value), &limits);
    assert_eq!(at(2.0), [PhFinding::BelowSewerFloor, PhFinding::CorrosiveHazardousWaste]);
    assert_eq!(at(2.1), [PhFinding::BelowSewerFloor]);
    assert_eq!(at(5.0), []);
    assert_eq!(at(12.4), []);
    assert_eq!(at(12.5), [PhFinding::CorrosiveHazardousWaste]);
}
