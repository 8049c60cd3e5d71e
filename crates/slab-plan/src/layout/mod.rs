//! What lines make of a slab: how long they are, the tiles of a pattern, the panels between joints,
//! the sections a crew works in.
//!
//! Why: score lines and joints are priced by length, stain is laid section by section with a wet edge
//! that stops at a line, and a slab with too few joints cracks where it likes. Everything here is a
//! pure function of a [`crate::Plan`].
//!
//! Lines are clipped to the slab or their zone, split where they meet, and the parts of the slab
//! between them are found by walking around each (`net`, `faces`). Nothing is rounded to a raster: two
//! places are one only below about 10⁻⁸ of the slab's extent, and the parts must add up to the slab.
//!
//! To add a finding about joints: a variant of [`FindingCode`], a rule in `check`, and a case in
//! `tests/layout_joints.rs`.

mod advice;
mod check;
mod corners;
mod error;
mod faces;
mod measure;
mod merge;
mod net;
mod panel;
mod rule;
mod runs;
mod sections;
mod tiles;

pub use advice::{JointAdvice, advise_joints};
pub use check::{JointCheck, check_joints};
pub use corners::{Column, columns, reentrant_corners};
pub use error::LayoutError;
pub use panel::{Finding, FindingCode, Panel};
pub use rule::{JointFact, JointLimits, JointSpacing};
pub use runs::{Lineal, Segment, joint_lines, pattern_lines, score_lines};
pub use sections::{Cuts, Meeting, Section, Sections};
pub use tiles::{Tile, Tiles, tiles};
