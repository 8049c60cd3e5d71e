//! Single calculations without a slab, for the command line and for pages.
//!
//! Why this crate exists: both shells ask the same fourteen questions. What each asks for is defined
//! once, by the arguments of [`SumCommand`]; the command line parses them, [`forms`] describes them
//! to a page and [`ask`] takes what was typed into that page through the same parser. An answer is a
//! [`Sum`], a refusal a [`SumError`] that names its field; both speak through [`localization::Locale`].
//!
//! The crate reads no file and no clock: a weather file comes through [`Files`].
//!
//! Each calculation is a file in `kinds` that reads what was typed, asks `science` and fills a `Sum`.
//! To add one: that file with its arguments and `run`, a variant of [`SumCommand`], its names in
//! `locales/*/sums.ftl` and `locales/*/sum_forms.ftl`, its examples in `hints`, and a checked value in
//! `crates/underfoot/tests/sums.rs`.
//!
//! ```
//! use calculators::{NoFiles, ask};
//! use localization::{Lang, UnitSystem, Locale};
//! let typed = [("air", "75 °F"), ("rh", "60 %")].map(|(field, text)| (field.to_owned(), vec![text.to_owned()]));
//! let reader = Locale::new(Lang::Es, UnitSystem::Metric);
//! let sum = ask("dew-point", &typed, &NoFiles)?;
//! assert_eq!(sum.answers(reader)[0].label, "punto de rocío");
//! assert_eq!(sum.answers(reader)[0].lines, ["15.7 °C"]);
//! let refused = ask("dew-point", &typed[..1], &NoFiles).unwrap_err();
//! assert_eq!(refused.field.as_deref(), Some("rh"));
//! assert_eq!(refused.plain(reader), "Falta humedad del aire; se acepta: 60 %");
//! # Ok::<(), calculators::SumError>(())
//! ```

mod accepted;
mod ask;
mod caution;
mod command;
mod error;
mod fields;
mod files;
mod form;
mod hints;
mod kinds;
mod log_file;
mod read;
mod refusals;
mod render;
mod rests_on;
mod shown;
mod sum;
pub mod weather_file;

pub use ask::{Typed, ask, with_units};
pub use command::{SumCommand, run};
pub use error::{ErrorKind, SumError};
pub use files::{Files, NoFiles, Uploads};
pub use form::{Keyboard, SumField, SumForm, form, forms};
pub use render::{Answered, Cautioned, Understood};
pub use rests_on::RestsOn;
pub use sum::Sum;
