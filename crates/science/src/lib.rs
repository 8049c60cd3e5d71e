//! Numbers only: the physics, chemistry and statistics behind the judgment of a slab.
//!
//! Why this crate exists: everything here can be checked against a published standard, a handbook
//! or a reference library without knowing what a slab is. It does no input or output, reads no
//! clock and holds no global state; randomness comes in as a seed, and limits come in as arguments,
//! since each is a fact of the trade with its own record. Each function names its source
//! and how good that source is (verified, secondary copy, from memory).
//!
//! To add a calculation: one module with its typed error, a [`FormulaSource`] constant that names the
//! formula's document and grade, and a test that checks it against values from outside.

pub mod absorbency;
pub mod air;
pub mod chance;
pub mod chemistry;
pub mod color;
pub mod concrete;
pub mod cure;
pub mod emission;
pub mod film;
pub mod markup;
pub mod moisture;
pub mod ventilation;

mod mixture;
mod source;
mod span;

pub use mixture::{MixtureError, Parts, SpecificGravity};
pub use source::{FormulaSource, Grade};
pub use span::{Span, joined};
