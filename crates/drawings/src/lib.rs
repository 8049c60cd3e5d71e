//! Reads the outline of a slab out of a drawing file (DXF, as text).
//!
//! Why this crate exists: architects send drawings, and typing a floor again is slow and goes wrong.
//! A plan knows nothing of the format of files. A file comes from a stranger: it is bounded in size,
//! number and nesting, and whatever is wrong with it is an error.
//!
//! ```
//! use drawings::{Choice, Units, read_dxf};
//! let file = include_bytes!("../../../reference/plan/dxf/lines_only.dxf");
//! let drawing = read_dxf(file)?;
//! assert_eq!(drawing.units, Units::Millimeters);
//! let spec = drawing.plan(&Choice::of_outline("SLAB"))?;
//! let plan = slab_plan::Plan::resolve(&spec).expect("a sound slab");
//! assert_eq!(plan.area().as_square_meters().round(), 84.0);
//! # Ok::<(), drawings::DrawingError>(())
//! ```
//!
//! To add a kind of entity: its name, groups and shape in `entity`, its lines in `flatten`, a drawing
//! under `reference/plan/dxf` with its area, and a line in the table of `tests/areas.rs`.

mod affine;
mod chain;
mod curve;
mod drawing;
mod entity;
mod error;
mod fields;
mod flatten;
mod pairs;
mod plan;
mod read;
mod scan;
mod text;
mod units;
mod write;

pub use drawing::{Chain, Drawing, Gap, Label, Layer, Loop, Spot};
pub use error::DrawingError;
pub use plan::Choice;
pub use read::read_dxf;
pub use units::Units;
pub use write::Notation;
