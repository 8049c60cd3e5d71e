//! The rule of thumb, to be shown beside the forecast.

use units::{Duration, Length};

use super::DateToLimit;
use crate::{FormulaSource, Grade};

/// Source of the rule of thumb.
pub const MONTH_PER_INCH: FormulaSource =
    FormulaSource { id: "month-per-inch", document: "common practice", locator: "", grade: Grade::CommonPractice };

/// One month (30 days) of drying for each inch of thickness after the wet cure, drying one side
/// (common practice, no source).
#[must_use]
pub fn month_per_inch(thickness: Length) -> Duration {
    Duration::days(30.0 * thickness.as_inches())
}

/// How the rule of thumb compares with a forecast.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RuleCheck {
    /// It falls between P10 and P90.
    Agrees,
    /// It falls before P10: by the forecast, nine slabs in ten are still wetter than the limit.
    RuleEarlier,
    /// It falls after P90: by the forecast, nine slabs in ten are there before.
    RuleLater,
    /// The forecast does not reach far enough to say.
    CannotTell,
}

/// Compares the rule of thumb, counted from the end of the wet cure, with a forecast.
#[must_use]
pub fn compare_with_rule(thickness: Length, forecast: &DateToLimit, horizon: Duration) -> RuleCheck {
    let rule = forecast.cured + month_per_inch(thickness);
    match (forecast.p10, forecast.p90) {
        (Some(early), _) if rule < early.value => RuleCheck::RuleEarlier,
        (None, _) if rule <= horizon => RuleCheck::RuleEarlier,
        (_, Some(late)) if rule > late.value => RuleCheck::RuleLater,
        (Some(_), Some(_)) => RuleCheck::Agrees,
        (Some(_), None) if rule <= horizon => RuleCheck::Agrees,
        _ => RuleCheck::CannotTell,
    }
}
