//! Contraction joints: how far apart, how deep, how many.

use units::{Fraction, Length};

use super::ConcreteError;
use super::error::above_zero;

/// More panels than this along one side are a slip of the unit, not a slab.
const MAX_PANELS: u32 = 10_000;

/// The rule of thumb in numbers. There is no default: they are facts of the trade, and the user's to
/// change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointRule {
    /// Shortest spacing as a multiple of the thickness.
    pub low_multiple: f64,
    /// Longest spacing as a multiple of the thickness.
    pub high_multiple: f64,
    /// Never further apart than this.
    pub cap: Length,
    /// Longest side over shortest side of a panel.
    pub aspect_max: f64,
}

impl JointRule {
    fn checked(&self) -> Result<(), ConcreteError> {
        let (low, high) = (self.low_multiple, self.high_multiple);
        if !(low > 0.0 && high >= low && high.is_finite()) {
            return Err(ConcreteError::SpacingRule { low, high });
        }
        let possible = self.aspect_max >= 1.0;
        if !possible {
            return Err(ConcreteError::Aspect(self.aspect_max));
        }
        above_zero("longest joint spacing", self.cap).map(|_| ())
    }
}

/// The range of joint spacing for a thickness: shorter and longer end, both cut at the cap.
///
/// # Errors
/// Thickness not above zero, or a rule out of range.
pub fn joint_spacing(thickness: Length, rule: &JointRule) -> Result<(Length, Length), ConcreteError> {
    rule.checked()?;
    let thickness = above_zero("slab thickness", thickness)?;
    Ok(((thickness * rule.low_multiple).min(rule.cap), (thickness * rule.high_multiple).min(rule.cap)))
}

/// Depth of a saw cut as a share of the thickness.
///
/// # Errors
/// Thickness or share not above zero.
pub fn saw_cut_depth(thickness: Length, share: Fraction) -> Result<Length, ConcreteError> {
    let thickness = above_zero("slab thickness", thickness)?;
    if share.as_share() > 0.0 { Ok(thickness * share.as_share()) } else { Err(ConcreteError::CutDepth(share)) }
}

/// A rectangle cut into equal panels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointPlan {
    /// Panels along the length.
    pub along: u32,
    /// Panels along the width.
    pub across: u32,
    /// Side of a panel along the length.
    pub panel_length: Length,
    /// Side of a panel along the width.
    pub panel_width: Length,
    /// Longest side over shortest side of a panel.
    pub aspect: f64,
    /// Whether the aspect is within the rule.
    pub aspect_within: bool,
    /// All cuts together, edges not counted.
    pub cut_length: Length,
}

/// The fewest equal panels of a rectangle whose sides are at most the longest spacing of the rule,
/// with the side of the longer panels cut once more while that brings the panel nearer to square
/// and the aspect is still outside the rule.
///
/// # Errors
/// Length, width or thickness not above zero, a rule out of range, or more than 10 000 panels along
/// a side.
pub fn joint_plan(
    length: Length,
    width: Length,
    thickness: Length,
    rule: &JointRule,
) -> Result<JointPlan, ConcreteError> {
    let (length, width) = (above_zero("slab length", length)?, above_zero("slab width", width)?);
    let (_, longest) = joint_spacing(thickness, rule)?;
    let (mut along, mut across) = (fewest(length, longest), fewest(width, longest));
    loop {
        let plan = cut(length, width, along, across, rule);
        let finer = if plan.panel_length > plan.panel_width { (along + 1, across) } else { (along, across + 1) };
        let next = cut(length, width, finer.0, finer.1, rule);
        if finer.0.max(finer.1) > MAX_PANELS {
            return Err(ConcreteError::TooManyPanels { length, width });
        }
        // Ends: each pass adds a panel, and the aspect stops falling once the panel is about square.
        if plan.aspect_within || next.aspect >= plan.aspect {
            return Ok(plan);
        }
        (along, across) = finer;
    }
}

/// Fewest equal parts of a side that are no longer than `longest`; a hair over is no extra joint.
fn fewest(side: Length, longest: Length) -> u32 {
    // The clamp leaves one panel more to the caller, who then refuses.
    libm::ceil(side / longest - 1e-9).clamp(1.0, f64::from(MAX_PANELS)) as u32
}

fn cut(length: Length, width: Length, along: u32, across: u32, rule: &JointRule) -> JointPlan {
    let (panel_length, panel_width) = (length / f64::from(along), width / f64::from(across));
    let aspect = panel_length.max(panel_width) / panel_length.min(panel_width);
    JointPlan {
        along,
        across,
        panel_length,
        panel_width,
        aspect,
        aspect_within: aspect <= rule.aspect_max + 1e-9,
        cut_length: width * f64::from(along - 1) + length * f64::from(across - 1),
    }
}
