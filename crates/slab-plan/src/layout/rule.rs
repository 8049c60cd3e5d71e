//! The rule of joint spacing: the only place that makes it out of the trade facts. The layout, the
//! calculation and the pour sheet all ask here, so that one slab gets one answer.

use science::concrete::{JointRule, joint_spacing, saw_cut_depth};
use units::{Fraction, Length};

use super::LayoutError;
use trade_facts::{Fact, Grade, InUnit, Measured, Record, Trade, Which};

const MULTIPLES: &str = "joint-spacing";
/// The cap. Two facts could be it: the usual spacing ends at 15 ft, and `joint-spacing-most` allows
/// 5 m whatever the thickness. The tighter is taken: a joint too many costs a saw cut, one too few a
/// crack through the color.
const CAP: &str = "joint-spacing-usual";
const ASPECT: &str = "joint-panel-aspect";
const CUT_DEPTH: &str = "joint-depth";

/// How far apart joints may be, and what says so.
#[derive(Debug, Clone, PartialEq)]
pub struct JointLimits {
    /// The numbers of spacing and shape, all the user's to change.
    pub rule: JointRule,
    /// Least depth of a saw cut as a share of the thickness.
    pub cut_depth: Fraction,
    /// The fact behind the multiples of the thickness.
    pub multiples: JointFact,
    /// The fact behind the cap.
    pub cap: JointFact,
    /// The fact behind the longest side over the shortest.
    pub aspect: JointFact,
    /// The fact behind the depth of the cut.
    pub depth: JointFact,
}

/// The trade fact behind a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JointFact {
    /// Its id in `limits.toml`.
    pub id: &'static str,
    /// How sure it is.
    pub grade: Grade,
}

/// The spacing of joints for one thickness.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointSpacing {
    /// Closest usual spacing.
    pub low: Length,
    /// Widest spacing.
    pub high: Length,
    /// The cap, when it cut the range short.
    pub held_to: Option<Length>,
    /// The fact that sets the widest spacing: the cap where it binds, the multiples elsewhere.
    pub fact: JointFact,
}

impl JointLimits {
    /// From the trade facts: multiples of the thickness (`joint-spacing`), no farther than the long
    /// end of the usual spacing (`joint-spacing-usual`), sides of a panel (`joint-panel-aspect`),
    /// depth of the cut (`joint-depth`).
    ///
    /// # Errors
    /// [`LayoutError::Fact`] for a fact that is missing or measures something else.
    pub fn of(trade: &Trade) -> Result<Self, LayoutError> {
        let multiples = fact(trade, MULTIPLES)?;
        let times = |which| multiples.plain(which).ok_or(LayoutError::Fact(MULTIPLES));
        let rule = JointRule {
            low_multiple: times(Which::Low)?,
            high_multiple: times(Which::High)?,
            cap: fact(trade, CAP)?.high_as().ok_or(LayoutError::Fact(CAP))?,
            aspect_max: fact(trade, ASPECT)?.plain(Which::Usual).ok_or(LayoutError::Fact(ASPECT))?,
        };
        Ok(Self {
            rule,
            cut_depth: usual(trade, CUT_DEPTH)?,
            multiples: graded(trade, MULTIPLES)?,
            cap: graded(trade, CAP)?,
            aspect: graded(trade, ASPECT)?,
            depth: graded(trade, CUT_DEPTH)?,
        })
    }

    /// The spacing for a thickness, and the fact of whichever bound is the tighter.
    ///
    /// # Errors
    /// [`LayoutError::Rule`] for a thickness or a rule out of range.
    pub fn spacing(&self, thickness: Length) -> Result<JointSpacing, LayoutError> {
        let (low, high) = joint_spacing(thickness, &self.rule)?;
        let held = thickness * self.rule.high_multiple > self.rule.cap;
        let fact = if held { self.cap } else { self.multiples };
        Ok(JointSpacing { low, high, held_to: held.then_some(self.rule.cap), fact })
    }

    /// The least depth of a saw cut for a thickness.
    ///
    /// # Errors
    /// [`LayoutError::Rule`] for a thickness or a share not above zero.
    pub fn least_cut(&self, thickness: Length) -> Result<Length, LayoutError> {
        Ok(saw_cut_depth(thickness, self.cut_depth)?)
    }
}

fn fact<'a>(trade: &'a Trade, id: &'static str) -> Result<&'a Fact, LayoutError> {
    trade.limit(id).ok_or(LayoutError::Fact(id))
}

fn usual<Q: InUnit>(trade: &Trade, id: &'static str) -> Result<Q, LayoutError> {
    fact(trade, id)?.value_as().ok_or(LayoutError::Fact(id))
}

fn graded(trade: &Trade, id: &'static str) -> Result<JointFact, LayoutError> {
    Ok(JointFact { id, grade: trade.grade_to_show(&fact(trade, id)?.citation()) })
}
