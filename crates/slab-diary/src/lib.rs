//! The diary of one slab: dated entries, only ever added.
//!
//! An entry is never edited nor dropped. A correction is a new entry that names the one it
//! `replaces`; the old one stays readable. Because entries are only added and their order is decided
//! by their content, two diaries merge by set union ([`Diary::merge`]).
//!
//! To add a kind of entry: write its struct in `body/`, add one line to the `bodies!` list there,
//! and an example to `docs/diary.md` (a test reads every example and demands one for each kind).

pub mod body;
mod checks;
mod draft;
mod entry;
mod ids;
mod knowledge;
mod place;
mod set;
mod slab;
mod when;

pub use body::{Body, BodyKind, UnknownBody};
pub use checks::{Complaint, ComplaintKind, complaints};
pub use draft::{Context, Draft, DraftError, read_lines};
pub use entry::{Entry, EntryError, SCHEMA};
pub use ids::{EntryId, IdError, PhotoHash, SlabId};
pub use knowledge::{Basis, Knowledge};
pub use place::{Place, PlaceError};
pub use set::{Clash, Diary};
pub use slab::{EntryOf, Figures, Slab, Zone, fold};
pub use when::{When, WhenError};
