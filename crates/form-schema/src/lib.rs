//! What is asked of a person: fields, units, choices, rules; and the one way to read and check the answers.
//!
//! Why this crate exists: an entry of the diary comes from a page, the command line or a file of lines, and a
//! calculation from a page or the command line. All of them must accept and refuse the same. So what is asked is
//! data ([`Form`]), what was typed ([`FormData`]) becomes one JSON object ([`read`]), and every such object,
//! whoever made it, passes [`check`]. The crate knows no diary, no page, no file and no language: a
//! [`FieldError`] is a code, said in crate `localization`.
//!
//! To add an input kind: a variant of [`InputKind`], how a text becomes its value in `read_one`, and what value is
//! accepted in `check_one`.

mod check;
mod choice;
mod field_error;
mod fill;
mod form;
mod form_data;
mod number;
mod picture_box;
mod quantity;
mod read;
mod text;

pub use check::check;
pub use choice::Choices;
pub use field_error::{FieldError, FieldErrorKind};
pub use fill::fill;
pub use form::{Answer, Field, Form, Hints, InputKind, Need, Preset, Rule, Span, TIME_ZONES, TermList};
pub use form_data::FormData;
pub use picture_box::{PictureBox, PictureBoxError};
pub use quantity::{QuantityInput, QuantityProblem};
pub use read::{read, read_text};
pub use text::{EmptyText, Text};
