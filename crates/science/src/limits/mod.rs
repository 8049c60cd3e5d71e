//! Public limits and test constants as data, each with its document and how surely it is known.
//!
//! Why this module exists: a limit is only worth the document it comes from. To add one: a variant
//! of [`Limit`] if its kind is new, a line in [`all`], and its row in
//! `reference/physics/regulatory_limits.csv`, against which the list is checked.

use units::{Area, Density, Duration, EvaporationRate, Fraction, MoistureEmission, Ph, TemperatureDifference};

use crate::chemistry::Metal;
use crate::{FormulaSource, Grade};

/// A limit or a test constant.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Limit {
    /// Waste water to a sewer works must not be below this pH.
    SewerPhFloor(Ph),
    /// Watery waste at or below the first, or at or above the second, is corrosive hazardous waste.
    CorrosiveWaste(Ph, Ph),
    /// A leachate at or above this is toxic hazardous waste.
    ToxicLeachate(Metal, Density),
    /// Below this share of filterable solids the filtered waste is itself the leachate.
    LeachateWithoutSolids(Fraction),
    /// Surface pH: at least so many readings for each area.
    SurfacePhReadings(u32, Area),
    /// Surface pH paper: lowest and highest pH it must cover, and its step.
    SurfacePhPaper(Ph, Ph, Ph),
    /// Surface pH after acid: not more than the first below nor the second above the rinse water.
    SurfacePhWindow(Ph, Ph),
    /// Depth of a humidity probe as a share of the thickness: drying from one side, from two sides.
    ProbeDepth(Fraction, Fraction),
    /// Wait after setting a humidity probe: present edition, older editions.
    ProbeWait(Duration, Duration),
    /// Humidity probes: so many for the first area, one more for each further such area.
    ProbeCount(u32, Area),
    /// Dish test: shortest and longest exposure.
    DishExposure(Duration, Duration),
    /// Dish test: usual limits of flooring, stricter and milder.
    DishLimit(MoistureEmission, MoistureEmission),
    /// Evaporation above which plastic shrinkage cracks are likely; about half of it with silica fume.
    EvaporationAlarm(EvaporationRate),
    /// Surface at least so far above the dew point.
    AboveDewPoint(TemperatureDifference),
}

/// A limit with its document.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct KnownLimit {
    /// The limit.
    pub limit: Limit,
    /// Where it comes from.
    pub source: FormulaSource,
}

fn ph(value: f64) -> Ph {
    Ph::new(value).expect("every pH of the list lies between 0 and 14")
}

fn share(value: f64) -> Fraction {
    Fraction::share(value).expect("every share of the list lies between 0 and 1")
}

/// The federal floor for waste water to a sewer works.
pub(crate) fn sewer_ph_floor() -> Ph {
    ph(5.0)
}

/// The two ends of corrosive hazardous waste; both count as corrosive.
pub(crate) fn corrosive_waste_ph() -> (Ph, Ph) {
    (ph(2.0), ph(12.5))
}

/// The federal toxicity limit of a metal in a leachate.
pub(crate) const fn toxic_leachate(metal: Metal) -> Density {
    Density::milligrams_per_liter(match metal {
        Metal::Arsenic | Metal::Chromium | Metal::Lead | Metal::Silver => 5.0,
        Metal::Barium => 100.0,
        Metal::Cadmium | Metal::Selenium => 1.0,
        Metal::Mercury => 0.2,
    })
}

const fn metal_source(metal: Metal) -> FormulaSource {
    let grade = match metal {
        Metal::Arsenic | Metal::Barium | Metal::Cadmium | Metal::Chromium => Grade::Verified,
        Metal::Lead | Metal::Mercury | Metal::Selenium | Metal::Silver => Grade::FromMemory,
    };
    FormulaSource { id: "toxic-leachate", document: "40 CFR 261.24", locator: "table 1", grade }
}

const fn known(
    limit: Limit,
    id: &'static str,
    document: &'static str,
    locator: &'static str,
    grade: Grade,
) -> KnownLimit {
    KnownLimit { limit, source: FormulaSource { id, document, locator, grade } }
}

/// Every limit, in the order of the reference file.
#[must_use]
pub fn all() -> Vec<KnownLimit> {
    let mut list = waste();
    list.extend(surface());
    list.extend(slab_moisture());
    list.extend(weather());
    list
}

fn waste() -> Vec<KnownLimit> {
    let (low, high) = corrosive_waste_ph();
    let mut list = vec![
        known(
            Limit::SewerPhFloor(sewer_ph_floor()),
            "sewer-ph-floor",
            "40 CFR 403.5(b)(2)",
            "paragraph number from memory; local permits are stricter",
            Grade::Verified,
        ),
        known(
            Limit::CorrosiveWaste(low, high),
            "corrosive-waste",
            "40 CFR 261.22(a)(1)",
            "both ends inclusive",
            Grade::Verified,
        ),
    ];
    list.extend(Metal::ALL.map(|metal| KnownLimit {
        limit: Limit::ToxicLeachate(metal, toxic_leachate(metal)),
        source: metal_source(metal),
    }));
    list.push(known(
        Limit::LeachateWithoutSolids(share(0.005)),
        "leachate-without-solids",
        "40 CFR 261.24(a)",
        "",
        Grade::Verified,
    ));
    list
}

fn surface() -> Vec<KnownLimit> {
    vec![
        known(
            Limit::SurfacePhReadings(2, Area::square_feet(500.0)),
            "surface-ph-readings",
            "ASTM D4262-05(2012)",
            "6.2; right after the final rinse, before it drains",
            Grade::Verified,
        ),
        known(
            Limit::SurfacePhPaper(ph(1.0), ph(11.0), ph(0.5)),
            "surface-ph-paper",
            "ASTM D4262-83(1999)",
            "4.1",
            Grade::Verified,
        ),
        known(
            Limit::SurfacePhWindow(ph(1.0), ph(2.0)),
            "surface-ph-window",
            "SSPC-SP 13/NACE 6",
            "table of acceptance",
            Grade::FromMemory,
        ),
    ]
}

fn slab_moisture() -> Vec<KnownLimit> {
    let thousand = Area::square_feet(1000.0);
    let pounds = MoistureEmission::pounds_per_thousand_square_feet_day;
    vec![
        known(
            Limit::ProbeDepth(share(0.40), share(0.20)),
            "probe-depth",
            "ASTM F2170-09",
            "secondary manual quoting it",
            Grade::SecondaryCopy,
        ),
        known(
            Limit::ProbeWait(Duration::hours(24.0), Duration::hours(72.0)),
            "probe-wait",
            "ASTM F2170-18",
            "trade notices; the standard's text not seen",
            Grade::SecondaryCopy,
        ),
        known(
            Limit::ProbeCount(3, thousand),
            "probe-count",
            "ASTM F2170-09",
            "slab at service conditions for 48 h",
            Grade::SecondaryCopy,
        ),
        known(
            Limit::DishExposure(Duration::hours(60.0), Duration::hours(72.0)),
            "dish-exposure",
            "ASTM F1869",
            "",
            Grade::SecondaryCopy,
        ),
        known(
            Limit::DishLimit(pounds(3.0), pounds(5.0)),
            "dish-limit",
            "trade article 1998",
            "flooring, not stain",
            Grade::SecondaryCopy,
        ),
    ]
}

fn weather() -> Vec<KnownLimit> {
    vec![
        known(
            Limit::EvaporationAlarm(EvaporationRate::pounds_per_square_foot_hour(0.2)),
            "evaporation-alarm",
            "ACI 305R",
            "stored page of the institute",
            Grade::SecondaryCopy,
        ),
        known(
            Limit::AboveDewPoint(TemperatureDifference::celsius_degrees(3.0)),
            "above-dew-point",
            "ISO 8502-4 practice",
            "exact clause from memory; a difference, 5.4 °F",
            Grade::SecondaryCopy,
        ),
    ]
}
