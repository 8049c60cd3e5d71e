//! English and Spanish sentences for the core's codes, and numbers in each reader's units.
//!
//! Why this crate exists: the core answers in codes and typed quantities. Here they become a
//! sentence that a person on the slab can act on. Two people read the same answer: one in English
//! with feet and °F, one in Spanish with meters. [`Locale`] is how one person reads.
//!
//! The texts are in `locales/en` and `locales/es`, one file for each subject, and are part of the
//! program: nothing is read from disk. To add a code: one message in each language; the tests name
//! what is missing, what nobody uses, and what the two languages do not share. What the records of
//! the trade say has its English there and its Spanish in `locales/es/trade` ([`Locale::text_of`]).
//!
//! ```
//! use slab_answers::standing::{HoldPointId, State};
//! use units::Length;
//! use localization::{Lang, UnitSystem, Locale};
//! let reader = Locale::new(Lang::Es, UnitSystem::Imperial);
//! assert_eq!(reader.state(State::Held), "Alto");
//! assert_eq!(reader.length(Length::feet_inches(12.0, 6.5)), "12' 6 1/2\"");
//! let reader = Locale::new(Lang::En, UnitSystem::Metric);
//! assert_eq!(reader.hold_point(HoldPointId::Membrane), "membrane");
//! assert_eq!(reader.length(Length::feet_inches(12.0, 6.5)), "3.82 m");
//! ```

mod beside;
mod drying;
mod entry_errors;
mod entry_text;
mod locale;
mod messages;
mod names;
mod numbers;
mod numerals;
mod order;
mod photo;
mod plan;
mod rates;
mod reason;
mod recipe;
mod standing;
mod time;

pub use entry_text::{choice_label, group_label, hint, how, input_label, label, place_label, preset_label, why};
pub use locale::{Lang, Locale};
pub use messages::{Arg, FILES, TRADE_FILES};
pub use reason::capitalized;
pub use recipe::hex;
pub use units::{UnitSystem, UnknownChoice};
