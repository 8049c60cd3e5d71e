//! What to do next, in work and waiting (`next_actions.toml`).

use serde::{Deserialize, Serialize};
use units::Area;

use super::grade::Grade;
use super::record::record;

/// An action the standing can ask for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NextAction {
    /// Word id, as in `standing::Action`.
    pub id: String,
    /// Minutes of work whatever its extent; 0 when there is only waiting.
    pub minutes: u32,
    /// Minutes for every test still missing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes_each: Option<u32>,
    /// Minutes for every 1000 square feet that it is for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes_per_1000_ft2: Option<u32>,
    /// Actions that must follow it before its hold point can be released.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub then: Vec<String>,
    /// Hours to wait for the answer afterwards.
    pub wait_hours: u32,
    /// Grade of the figures.
    pub grade: Grade,
    /// Source keys.
    pub source: Vec<String>,
}
record!(NextAction);

/// The area that figures by area are given for where none is known, in square feet.
const USUAL_FT2: f64 = 1000.0;

impl NextAction {
    /// Minutes of work for so many tests on an area, to the full five beyond ten; a slab of 1000 square feet is
    /// taken where the area is not known.
    #[must_use]
    pub fn minutes_for(&self, tests: u32, area: Option<Area>) -> u32 {
        let area = area.map_or(USUAL_FT2, Area::as_square_feet) / 1000.0;
        let by_area = (f64::from(self.minutes_per_1000_ft2.unwrap_or(0)) * area).ceil() as u32;
        let minutes = self.minutes + self.minutes_each.unwrap_or(0) * tests + by_area;
        if minutes <= 10 { minutes } else { minutes.div_ceil(5) * 5 }
    }
}
