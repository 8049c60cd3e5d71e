//! The lines of the plan that stands: a plan that is drawn anew must not lose them.

use form_schema::FormData;
use localization::{Arg, Locale};
use slab_diary::Slab;
use slab_plan::{JointSpec, PlanSpec, ScoreSpec};

use super::error_source::number;
use super::way::Telling;

/// The input that leaves them out.
pub(super) const LEAVE_OUT: &str = "leave_lines";

/// Joints and score lines of the plan that stands.
#[derive(Debug, Clone)]
pub(super) struct Kept {
    joints: Vec<JointSpec>,
    score_lines: Vec<ScoreSpec>,
    left_out: bool,
}

/// The same for the page.
#[derive(Debug, Clone)]
pub(super) struct KeptShown {
    pub(super) said: String,
    pub(super) left_out: bool,
    pub(super) mistake: Option<String>,
}

impl Kept {
    /// What there is to carry over; nothing where the plan is told as text, which has its lines in it.
    pub(super) fn of(way: Telling, typed: &FormData, slab: &Slab<'_>) -> Option<Self> {
        let (seen, _) = slab.plan_entry()?;
        let PlanSpec { joints, score_lines, .. } = seen.body;
        if way == Telling::Text || (joints.is_empty() && score_lines.is_empty()) {
            return None;
        }
        let left_out = typed.first(LEAVE_OUT).is_some();
        Some(Self { joints: joints.clone(), score_lines: score_lines.clone(), left_out })
    }

    /// Puts them into the plan that takes the place of the old one.
    pub(super) fn carry(&self, spec: &mut PlanSpec) {
        if !self.left_out {
            spec.joints.clone_from(&self.joints);
            spec.score_lines.clone_from(&self.score_lines);
        }
    }

    pub(super) fn shown(&self, mistake: Option<String>, locale: Locale) -> KeptShown {
        let count = |n: usize| Arg::Number(n as f64);
        let args = [("joints", count(self.joints.len())), ("patterns", count(self.score_lines.len()))];
        KeptShown { said: locale.message("lines-carried", &args), left_out: self.left_out, mistake }
    }
}

/// Which line no longer fits, when it is a line that is wrong.
pub(super) fn unfit(path: &str, said: &str, locale: Locale) -> Option<String> {
    let (name, key) = [("joints", "lines-joint-unfit"), ("score_lines", "lines-pattern-unfit")]
        .into_iter()
        .find(|(name, _)| path.starts_with(name))?;
    let which = number(path, name).map_or(0, |index| index + 1);
    Some(locale.message(key, &[("number", Arg::Number(which as f64)), ("said", said.into())]))
}
