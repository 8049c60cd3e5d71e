//! How much concrete to order and where to cut it: volume, sample panels, waste, joints.
//!
//! Why this module exists: the sample panels that prove a stain must come from the slab's own
//! concrete, so they are ordered with it; and joints are the section lines of the later color.
//!
//! Checked against `reference/physics/film_volume_checks.csv` (volumes). Waste, rounding and joint
//! rules are trade practice and the user's to change.

mod error;
mod joints;
mod order;

pub use error::ConcreteError;
pub use joints::{JointPlan, JointRule, joint_plan, joint_spacing, saw_cut_depth};
pub use order::{ConcreteNeed, ConcreteOrder, QUARTER_YARD, SamplePanels, order, slab_volume};
