//! The rule of joint spacing, with the facts it comes from.

use science::concrete::{JointRule, joint_spacing};
use units::Length;

use super::LayoutError;
use trade_facts::{Grade, Measured, Record, Trade, Which};

const SPACING: &str = "joint-spacing";
const USUAL: &str = "joint-spacing-usual";

/// How far apart joints may be, and what says so.
#[derive(Debug, Clone, PartialEq)]
pub struct JointLimits {
    /// The numbers, all the user's to change.
    pub rule: JointRule,
    /// Ids of the facts behind the multiples of the thickness.
    pub multiple_facts: Vec<&'static str>,
    /// How sure those are.
    pub multiple_grade: Grade,
    /// Ids of the facts behind the cap.
    pub cap_facts: Vec<&'static str>,
    /// How sure those are.
    pub cap_grade: Grade,
}

/// The longest side of a panel, and what says so.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Longest {
    pub(super) spacing: (Length, Length),
    pub(super) facts: Vec<&'static str>,
    pub(super) grade: Grade,
}

impl JointLimits {
    /// From the trade facts: 24 to 36 times the thickness (`joint-spacing`), no farther than the long
    /// end of the usual spacing (`joint-spacing-usual`, 15 ft); panels no longer than 1.5 times their
    /// width, which is common practice without a source. A fact that is missing or has another unit
    /// leaves the default of [`JointRule`], graded as common practice.
    #[must_use]
    pub fn of(trade: &Trade) -> Self {
        let grade =
            |id: &str| trade.fact(id).map_or(Grade::CommonPractice, |fact| trade.grade_to_show(&fact.citation()));
        let mut rule = JointRule::default();
        let multiples = trade.fact(SPACING).and_then(|f| f.plain(Which::Low).zip(f.plain(Which::High)));
        let cap = trade.fact(USUAL).and_then(Measured::high_as::<Length>);
        (rule.low_multiple, rule.high_multiple) = multiples.unwrap_or((rule.low_multiple, rule.high_multiple));
        rule.cap = cap.unwrap_or(rule.cap);
        Self {
            rule,
            multiple_facts: multiples.map_or_else(Vec::new, |_| vec![SPACING]),
            multiple_grade: multiples.map_or(Grade::CommonPractice, |_| grade(SPACING)),
            cap_facts: cap.map_or_else(Vec::new, |_| vec![USUAL]),
            cap_grade: cap.map_or(Grade::CommonPractice, |_| grade(USUAL)),
        }
    }

    /// The spacing for a thickness, and the facts of whichever bound is the tighter.
    pub(super) fn longest(&self, thickness: Length) -> Result<Longest, LayoutError> {
        let spacing = joint_spacing(thickness, &self.rule)?;
        let by_cap = thickness * self.rule.high_multiple > self.rule.cap;
        let (facts, grade) =
            if by_cap { (&self.cap_facts, self.cap_grade) } else { (&self.multiple_facts, self.multiple_grade) };
        Ok(Longest { spacing, facts: facts.clone(), grade })
    }
}
