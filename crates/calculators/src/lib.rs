//! Single calculations without a slab, for the command line and for pages.
//!
//! Why this crate exists: the command line and the pages ask the same questions. A [`Calculator`] is data: a
//! [`form_schema::Form`] like those of the diary, and a function from what was given to a [`Calculation`]. The
//! command line makes its options from it and a page its inputs, and [`Calculator::calculate`] takes what was typed
//! into either through the same checks. A refusal is a [`CalculatorError`] that names its fields; both speak
//! through [`localization::Locale`].
//!
//! The crate reads no file and no clock, and it knows no command line: a weather file comes through [`Files`].
//!
//! To add a calculator: its file in `kinds`, its line in `kinds/mod.rs`, its messages in `locales/*/sums.ftl`. What
//! checks it against a value from outside stands in `crates/underfoot/tests/sums.rs`.
//!
//! ```
//! use calculators::{NoFiles, calculate};
//! use form_schema::FormData;
//! use localization::{Lang, Locale, UnitSystem};
//! let mut typed = FormData::from_iter([("air", "75 °F"), ("rh", "60 %")]);
//! let reader = Locale::new(Lang::Es, UnitSystem::Metric);
//! let answer = calculate("dew-point", &typed, None, &NoFiles)?;
//! assert_eq!(answer.answers(reader)[0].label, "punto de rocío");
//! assert_eq!(answer.answers(reader)[0].lines, ["15.7 °C"]);
//! typed.set("rh", "");
//! let refused = calculate("dew-point", &typed, None, &NoFiles).unwrap_err();
//! assert_eq!(refused.problems(reader), [(Some("rh"), "Falta humedad del aire; se acepta: 60 %".to_owned())]);
//! # Ok::<(), calculators::CalculatorError>(())
//! ```

mod calculation;
mod calculator;
mod caution;
mod error;
mod fields;
mod files;
mod given;
mod kinds;
mod log_file;
mod refusals;
mod render;
mod rests_on;
mod shown;
pub mod weather_file;

pub use calculation::Calculation;
pub use calculator::{Calculator, calculate, calculator, calculators, choice_label, label, usual, usual_text};
pub use error::{CalculatorError, ErrorKind};
pub use files::{Files, NoFiles, Uploads};
pub use render::{Answered, Cautioned, Understood};
pub use rests_on::RestsOn;
