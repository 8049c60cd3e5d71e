//! When the slab is likely to be dry enough: the forecast asked of a diary.
//!
//! Why this module exists: `science::moisture` knows slabs, air and readings as numbers; the diary
//! knows a pour, a cure, a sealer and probes. [`question`] gathers the first from the second and says
//! by name what it had to assume and what it left out; [`DryingQuestion::forecast`] answers. **A
//! forecast never releases a hold point: a measurement does.** `standing` does not ask this module.
//!
//! Limits, the start of drying and the wait of a probe are those of the moisture hold point, from the
//! same code, so that the two can't drift apart.
//!
//! To add an assumption: a variant of [`Assumption`], a line in its `code` and `CODES`, and its
//! sentence in `locales/*/drying.ftl`.

mod air;
mod code;
mod forecast;
mod limits;
mod past;
mod question;
mod readings;
mod run;

pub use science::moisture::{DryingError, RuleCheck, Sides};

pub use code::{Assumption, CannotTell, Caution, WhyLeftOut};
pub use forecast::{
    Band, BandDay, Dates, DryingForecast, ForecastDate, LimitForecast, ReadingPoint, RestsOn, RuleOfThumb, Unexplained,
};
pub use limits::{Limit, LimitBound, LimitFrom};
pub use question::{DryingQuestion, question};
pub use readings::{LeftOut, SlabReading};

/// Possible slabs followed when nobody asks for another number: enough for a P10 good to about one
/// point of humidity.
pub const MEMBERS: usize = 1000;
