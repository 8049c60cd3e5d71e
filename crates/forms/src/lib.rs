//! What each kind of diary entry asks of a person: fields, choices, usual units, one-tap answers.
//!
//! Why this crate exists: a page shows a form for every kind of entry, reads back what was typed and
//! fills the form again for a correction. All three must say the same, in two languages and two
//! measures, so the forms are data and a page only draws them. Nothing here knows of pages, files or
//! clocks.
//!
//! ```
//! use forms::{FormData, form, read_body};
//! use localization::UnitSystem;
//! let drop = form("water_drop").expect("a kind of the diary");
//! let typed: FormData = [("soaked_in", "45")].into_iter().collect();
//! let body = read_body(drop, &typed, UnitSystem::Imperial).expect("45 seconds");
//! assert_eq!(serde_json::to_string(&body).unwrap(), r#"{"kind":"water_drop","soaked_in":"45 s"}"#);
//! ```
//!
//! To add a kind: its form in `table/`, its line in `table/mod.rs`, and its words in
//! `locales/en/forms.ftl` and `locales/es/forms.ftl`; the tests name what is missing.

mod field_error;
mod fill;
mod form;
mod form_data;
mod number;
mod place;
mod quantity;
mod read;
mod table;
mod words_of;

pub use field_error::{FieldError, FieldErrorKind};
pub use fill::typed_from;
pub use form::{
    Field, Form, Group, InputKind, Need, PhotoInput, PlaceInput, Preset, Rule, Span, TIME_ZONES, TradeList,
};
pub use form_data::FormData;
pub use place::{PLACE_INPUTS, PLACE_KINDS, read_place};
pub use quantity::{Quantity, QuantityKind, QuantityProblem};
pub use read::read_body;
pub use table::{FACTS, OWN_SCREEN, form, forms};
pub use words_of::{choice_label, group_label, hint, how, input_label, label, place_label, preset_label, why};
