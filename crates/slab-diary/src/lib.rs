//! The diary of one slab: dated entries, only ever added.
//!
//! An entry is never edited nor dropped. A correction is a new entry that names the one it
//! `replaces`; the old one stays readable. Because entries are only added and their order is decided
//! by their content, two diaries merge by set union ([`Diary::merge`]).
//!
//! To add a kind of entry: its body with its schema in a file of `body/`, one line in the `bodies!` list
//! there, and its words in `locales/en/forms.ftl` and `locales/es/forms.ftl`. Tests name what is missing, and
//! `docs/diary.md` is written anew from the schemas.

pub mod body;
mod checks;
mod draft;
mod entry;
mod ids;
mod knowledge;
mod place;
mod place_form;
mod set;
mod slab;
mod when;
mod when_typed;

pub use body::{Body, BodyError, EntryBody, EntryKind, EntrySchema, UnknownBody};
pub use checks::{Problem, ProblemKind, problems};
pub use draft::{Context, Draft, DraftError, read_lines};
pub use entry::{Entry, EntryError, SCHEMA};
pub use ids::{EntryId, IdError, PhotoHash, SlabId};
pub use knowledge::{Basis, Knowledge};
pub use place::{Place, PlaceError};
pub use place_form::{PLACE_INPUTS, PLACE_KINDS, fill_place, read_place};
pub use set::{Clash, Diary};
pub use slab::{EntryOf, Figures, Slab, Zone, fold};
pub use when::{When, WhenError};
pub use when_typed::{DateOrder, TypedWhenError};
