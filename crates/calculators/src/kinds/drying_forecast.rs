//! Humidity in a drying slab with its band, updated by readings.

use science::chance::Seed;
use science::moisture::{
    Accuracy, Draws, Forecast, ForecastPlan, Reading, ReadingError, RuleCheck, Sides, compare_with_rule,
};
use units::{Duration, RelativeHumidity};

use super::drying::{Question, list};
use super::prelude::*;
use crate::caution::Caution;
use crate::given::{humidity, number};
use crate::shown::Key;

pub(super) fn solve(
    mut sum: Calculation,
    given: &mut Given<'_>,
    question: &Question,
) -> Result<Calculation, CalculatorError> {
    let members = given.count("members")?;
    let shown = Shown::Number(f64::from(members), 3);
    match given.typed("members") {
        Some(typed) => given.note("members", &typed, shown),
        None => given.assumed("members", shown),
    }
    let seed = Seed(given.count("seed")?.into());
    let mut plan = ForecastPlan::new(question.slab.clone(), Draws { members: members as usize, seed });
    plan.horizon = question.horizon();
    plan.accuracy = Accuracy::ENSEMBLE;
    let readings = readings(given, question)?;
    let before = plan.before_readings().map_err(CalculatorError::core)?;
    if readings.is_empty() {
        fill(&mut sum, &before, question);
        sum.caution([Caution::PriorNeedsReadings]);
        return Ok(sum);
    }
    let after = plan.after_readings(&readings, ReadingError::default()).map_err(CalculatorError::core)?;
    fill(&mut sum, &after, question);
    sum.result("rh_before_readings", by_day(&before, question));
    sum.result("days_to_before_readings", by_limit(&before, question));
    sum.result("effective_members", Shown::Number(after.effective_members(), 0));
    Ok(sum)
}

/// Readings at probe depth, in order of time.
fn readings(given: &mut Given<'_>, question: &Question) -> Result<Vec<Reading>, CalculatorError> {
    const ACCEPTED: &str = "sum-accepts-day-and-humidity";
    let typed = given.texts("reading").join(",");
    let mut readings = Vec::new();
    for text in list(&typed) {
        let (day, read) = text.split_once(':').ok_or_else(|| CalculatorError::unclear("reading", text, ACCEPTED))?;
        readings.push(Reading {
            at: Duration::days(number("reading", day, ACCEPTED)?),
            depth: question.slab.probe_depth(),
            humidity: humidity("reading", read)?,
        });
    }
    if !typed.is_empty() {
        given.note("reading", &typed, Shown::Text(typed.clone()));
    }
    readings.sort_by(|a, b| a.at.as_seconds().total_cmp(&b.at.as_seconds()));
    Ok(readings)
}

fn fill(sum: &mut Calculation, forecast: &Forecast, question: &Question) {
    sum.result("rh", by_day(forecast, question));
    sum.result("days_to", by_limit(forecast, question));
    // The rule is said of slabs that dry one side.
    if question.slab.sides == Sides::One {
        let check = |limit: &RelativeHumidity| {
            let date = forecast.date_to(*limit);
            let found = match compare_with_rule(question.slab.thickness, &date, forecast.horizon()) {
                RuleCheck::Agrees => "rule-agrees",
                RuleCheck::RuleEarlier => "rule-earlier",
                RuleCheck::RuleLater => "rule-later",
                RuleCheck::CannotTell => "rule-cannot-tell",
            };
            (Key::Limit(*limit), Shown::Code(found))
        };
        sum.result("rule_check", Shown::By(question.limits.iter().map(check).collect()));
    }
}

fn by_day(forecast: &Forecast, question: &Question) -> Shown {
    let band = |day: &Duration| {
        let band = forecast.humidity(*day);
        (Key::Day(*day), Shown::HumidityBand([band.p10.value, band.p50.value, band.p90.value]))
    };
    Shown::By(question.days.iter().map(band).collect())
}

fn by_limit(forecast: &Forecast, question: &Question) -> Shown {
    let band = |limit: &RelativeHumidity| {
        let date = forecast.date_to(*limit);
        (Key::Limit(*limit), Shown::DaysBand([date.p10, date.p50, date.p90].map(|q| q.map(|q| q.value))))
    };
    Shown::By(question.limits.iter().map(band).collect())
}
