//! How fast the surface drinks, everywhere on the slab, from a few timed water drops.
//!
//! Why this module exists: a drop says how one spot drinks; stain is laid on all of them. Between
//! drops the logarithm of the seconds is estimated by ordinary kriging, which says at every place
//! how unsure it is, and so also where one more drop would teach most.
//!
//! The model: y = ln(seconds) = a level nobody knows + a smooth part with the Matérn 3/2 covariance
//! C(h) = s²(1+√3h/l)e^(−√3h/l) + noise of a single drop of variance t² (the nugget). An
//! [`Estimate`] speaks of the place, without t²; [`Estimate::fresh_drop`] of one more drop there.
//! s², l and t² are taken as known once fitted: the bands do not hold the doubt about them, and
//! with few drops they are too narrow. [`Field::left_out`] shows how well they hold.
//!
//! **Drops that still stood** when the watching stopped are not times. For the map such a drop says
//! "longer than this", no more, by expectation propagation: it becomes a value with a noise of its
//! own, chosen so that mean and variance at its place are those of the distribution cut off at the
//! bound (exact with one such drop; with two or three the checks were off by up to 0.01 deviations
//! of the mean and 5 % of the variance). Only while s², l and t² are
//! fitted does it count as a time, at the bound; that makes s² too low rather than too high, and
//! [`Note::StillStanding`] tells.
//!
//! A boundary between finishes is a break: the floats and trowels of one finish say nothing of the
//! next, so each finish is a [`Field`] of its own and [`Fields`] keeps them apart.
//!
//! ```
//! use science::absorbency::{Aim, DropTest, End, Field, Ground, NextRule, Place};
//! use units::{Area, Duration, Length};
//!
//! let place = |x, y| Place { x: Length::meters(x), y: Length::meters(y) };
//! let soaked = |x, y, s| DropTest { place: place(x, y), end: End::SoakedIn(Duration::seconds(s)) };
//! let drops = [
//!     soaked(1.0, 1.0, 35.0), soaked(4.0, 1.2, 42.0), soaked(7.0, 0.8, 110.0),
//!     soaked(1.2, 4.0, 38.0), soaked(4.1, 4.1, 70.0), soaked(7.1, 4.3, 150.0),
//! ];
//! let field = Field::fit(&drops)?;
//! let (low, high) = field.at(place(5.5, 2.5)).p10_p90();
//! assert!(low < high);
//!
//! let grid: Vec<Place> = (0..40).map(|i| place(f64::from(i % 8) + 0.5, f64::from(i / 8) + 0.5)).collect();
//! let ground = Ground { map: grid.clone(), each: Area::square_meters(1.0), reachable: grid };
//! let rule = NextRule { aim: Aim::at_limit(Duration::seconds(60.0)), most: 3 };
//! assert!(field.next_places(&ground, rule)?.places.len() <= 3);
//! # Ok::<(), science::absorbency::AbsorbencyError>(())
//! ```
//!
//! To add another criterion for the next place: one arm in `criterion.rs` that sums it over the map.

mod censored;
mod covariance;
mod criterion;
mod dense;
mod drop;
mod error;
mod estimate;
mod falling;
mod field;
mod fields;
mod fit;
mod left_out;
mod limits;
mod many;
mod next;
mod nugget;
mod owen;
mod planner;
mod reml;
mod system;

pub use covariance::{Covariance, LogVariance};
pub use drop::{DropTest, End, Place};
pub use error::AbsorbencyError;
pub use estimate::Estimate;
pub use field::{Field, Note};
pub use fields::{Advice, Fields, NextPlace};
pub use fit::{Fitted, fit_covariance, log_likelihood};
pub use left_out::{LeftOut, LeftOutDrop, Outcome};
pub use limits::Limits;
pub use next::{Aim, Enough, Gain, Ground, NextRule, State};
pub use nugget::{Nugget, NuggetBasis, Repeats, SAME_PLACE, repeats};
pub use owen::owens_t;

use crate::source::{FormulaSource, Grade};

/// Fewest places with drops from which a map is drawn. Our choice: with an unknown level and three
/// parameters, fewer places leave nothing to judge the fit by.
pub const FEWEST_PLACES: usize = 6;

/// Kriging with an unknown level, and its leave-one-out errors.
pub const KRIGING: FormulaSource = FormulaSource {
    id: "ordinary-kriging",
    document: "Cressie, Statistics for Spatial Data, rev. ed. 1993; leave-one-out: Dubrule, Mathematical Geology 15 (1983)",
    locator: "sec. 3.2",
    grade: Grade::FromMemory,
};

/// Restricted maximum likelihood of the covariance.
pub const REML: FormulaSource = FormulaSource {
    id: "reml",
    document: "Patterson and Thompson, Biometrika 58 (1971)",
    locator: "",
    grade: Grade::FromMemory,
};

/// Where to test next when a limit matters.
pub const EXPECTED_BERNOULLI_VARIANCE: FormulaSource = FormulaSource {
    id: "expected-bernoulli-variance",
    document: "Bect et al., Statistics and Computing 22 (2012); closed form: Chevalier et al., Technometrics 56 (2014)",
    locator: "",
    grade: Grade::FromMemory,
};

/// Drops whose end was not seen.
pub const CENSORED_DROPS: FormulaSource = FormulaSource {
    id: "expectation-propagation",
    document: "Minka, Expectation Propagation for approximate Bayesian inference, UAI 2001",
    locator: "",
    grade: Grade::FromMemory,
};
