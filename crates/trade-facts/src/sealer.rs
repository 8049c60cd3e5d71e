//! Sealer classes and what each asks of the slab.

use serde::{Deserialize, Serialize};
use units::{Coverage, Duration, Fraction, MoistureEmission, RelativeHumidity};

use super::finish::coverage;
use super::grade::Grade;
use super::record::{record, translated};
use super::unit::Unit;

/// What a sealer class asks of the slab's moisture. The product's own sheet wins over all of it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MoistureRule {
    /// A taped plastic sheet must stay dry.
    pub dry_sheet: bool,
    /// The product's own sheet governs.
    pub maker_rules: bool,
    /// Tolerates a damp slab.
    #[serde(default)]
    pub damp_tolerant: bool,
    /// Takes the limit of the coat under it.
    #[serde(default)]
    pub as_base_coat: bool,
    /// Goes on a cured sealer, not on the slab.
    #[serde(default)]
    pub needs_cured_sealer: bool,
    /// Most moisture emission, lb per 1000 ft² in 24 h.
    pub emission_lb_max: Option<f64>,
    /// Most in-slab relative humidity without asking, percent.
    pub rh_pct_max: Option<f64>,
    /// Most in-slab relative humidity where the maker's sheet allows it, percent.
    pub rh_pct_upper: Option<f64>,
}

impl MoistureRule {
    /// Most moisture emission, where the class has a default.
    #[must_use]
    pub fn emission_max(&self) -> Option<MoistureEmission> {
        self.emission_lb_max.map(MoistureEmission::pounds_per_thousand_square_feet_day)
    }

    /// Most in-slab relative humidity that is fine without asking.
    #[must_use]
    pub fn humidity_max(&self) -> Option<RelativeHumidity> {
        RelativeHumidity::percent(self.rh_pct_max?).ok()
    }

    /// Most in-slab relative humidity where the maker's sheet says so; between the two, can't tell.
    #[must_use]
    pub fn humidity_upper(&self) -> Option<RelativeHumidity> {
        RelativeHumidity::percent(self.rh_pct_upper?).ok()
    }
}

/// A danger that goes with a sealer class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SealerHazard {
    /// Vapor that a pilot light can ignite.
    FlammableVapor,
    /// A sensitizer that asks for a respirator plan.
    Isocyanate,
    /// Slippery when wet without grit.
    Slip,
}

/// Whether vehicles may drive on a sealed floor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Vehicles {
    /// After the waiting time.
    Allowed,
    /// Better not; if at all, after the waiting time.
    NotAdvised,
    /// Never.
    No,
}

/// A sealer class (`sealers.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sealer {
    /// Word id.
    pub id: String,
    /// Name of the class.
    pub name: String,
    /// Leaves a film on the surface.
    pub film: bool,
    /// Least solids by volume, percent.
    pub solids_pct_low: f64,
    /// Most solids by volume, percent.
    pub solids_pct_high: f64,
    /// Least coverage of one coat, in `coverage_unit`.
    pub coverage_low: f64,
    /// Greatest coverage of one coat, in `coverage_unit`.
    pub coverage_high: f64,
    /// Unit of the coverage.
    pub coverage_unit: Unit,
    /// Fewest coats.
    pub coats_low: u8,
    /// Most coats.
    pub coats_high: u8,
    /// What it asks of the slab's moisture.
    pub moisture: MoistureRule,
    /// Remark on moisture.
    pub moisture_note: Option<String>,
    /// Shortest wait between coats, hours.
    pub recoat_hours_low: Option<f64>,
    /// Longest wait between coats, hours.
    pub recoat_hours_high: Option<f64>,
    /// Remark on recoating.
    pub recoat_note: Option<String>,
    /// Shortest wait before walking, hours.
    pub foot_hours_low: f64,
    /// Longest wait before walking, hours.
    pub foot_hours_high: f64,
    /// Shortest wait before furniture, hours.
    pub furniture_hours_low: f64,
    /// Longest wait before furniture, hours.
    pub furniture_hours_high: f64,
    /// Whether vehicles may drive on it.
    pub vehicles: Vehicles,
    /// Shortest wait before vehicles, hours.
    pub vehicle_hours_low: Option<f64>,
    /// Longest wait before vehicles, hours.
    pub vehicle_hours_high: Option<f64>,
    /// Dangers.
    pub hazards: Vec<SealerHazard>,
    /// Look.
    pub look: String,
    /// What it is good for.
    pub good_for: String,
    /// What goes wrong with it.
    pub watch_out: String,
    /// Grade of the description.
    pub grade: Grade,
    /// Grade of the numbers, where it differs.
    pub grade_numbers: Option<Grade>,
    /// Source keys.
    pub source: Vec<String>,
    /// Sources that touch the matter without carrying it.
    #[serde(default)]
    pub see: Vec<String>,
    /// What the sources say of it.
    pub source_note: Option<String>,
}
record!(Sealer, optional grade_numbers);
translated!(Sealer, "sealer" id: "name" name);

impl Sealer {
    /// Least and most solids by volume.
    #[must_use]
    pub fn solids(&self) -> (Fraction, Fraction) {
        let share = |pct: f64| Fraction::share(pct / 100.0).expect("the loader admits solids of 0 to 100 percent");
        (share(self.solids_pct_low), share(self.solids_pct_high))
    }

    /// Least and greatest coverage of one coat.
    #[must_use]
    pub fn coverage(&self) -> (Coverage, Coverage) {
        (coverage(self.coverage_low, self.coverage_unit), coverage(self.coverage_high, self.coverage_unit))
    }

    /// Shortest and longest wait between coats, where there is a window.
    #[must_use]
    pub fn recoat(&self) -> Option<(Duration, Duration)> {
        Some((Duration::hours(self.recoat_hours_low?), Duration::hours(self.recoat_hours_high?)))
    }

    /// Shortest and longest wait before walking, at room temperature.
    #[must_use]
    pub fn before_foot(&self) -> (Duration, Duration) {
        (Duration::hours(self.foot_hours_low), Duration::hours(self.foot_hours_high))
    }

    /// Shortest and longest wait before furniture, at room temperature.
    #[must_use]
    pub fn before_furniture(&self) -> (Duration, Duration) {
        (Duration::hours(self.furniture_hours_low), Duration::hours(self.furniture_hours_high))
    }

    /// Shortest and longest wait before vehicles; nothing where they may never drive on it.
    #[must_use]
    pub fn before_vehicles(&self) -> Option<(Duration, Duration)> {
        Some((Duration::hours(self.vehicle_hours_low?), Duration::hours(self.vehicle_hours_high?)))
    }
}
