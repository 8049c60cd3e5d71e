//! Humidity in a drying slab with its band, updated by readings.

use science::chance::Seed;
use science::moisture::{
    Accuracy, Draws, Forecast, ForecastPlan, Reading, ReadingError, RuleCheck, Sides, compare_with_rule,
};
use units::{Duration, RelativeHumidity};

use super::drying::{Drying, Question, list};
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{humidity, number, unclear};
use crate::shown::{Key, Shown};
use crate::sum::Sum;

/// Possible slabs by default: enough for a P10 good to about one point of humidity.
const MEMBERS: f64 = 1000.0;

pub(crate) fn solve(mut sum: Sum, args: &Drying, question: &Question) -> Result<Sum, SumError> {
    const COUNT: &str = "members";
    let wanted = sum.number_or("members", args.members.as_ref(), MEMBERS, COUNT)?;
    if wanted.fract() != 0.0 || !(50.0..=100_000.0).contains(&wanted) {
        return Err(crate::read::impossible("members", args.members.as_deref().unwrap_or_default(), COUNT));
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "members")]
    let members = wanted as usize;
    let mut plan = ForecastPlan::new(question.slab.clone(), Draws { members, seed: Seed(args.seed) });
    plan.horizon = question.horizon();
    plan.accuracy = Accuracy::ENSEMBLE;
    let readings = readings(&mut sum, args, question)?;
    let before = plan.before_readings().map_err(SumError::core)?;
    if readings.is_empty() {
        fill(&mut sum, &before, question);
        sum.caution([Caution::PriorNeedsReadings]);
        return Ok(sum);
    }
    let after = plan.after_readings(&readings, ReadingError::default()).map_err(SumError::core)?;
    fill(&mut sum, &after, question);
    sum.result("rh_before_readings", by_day(&before, question));
    sum.result("days_to_before_readings", by_limit(&before, question));
    sum.result("effective_members", Shown::Number(after.effective_members(), 0));
    Ok(sum)
}

/// Readings at probe depth, in order of time.
fn readings(sum: &mut Sum, args: &Drying, question: &Question) -> Result<Vec<Reading>, SumError> {
    let mut readings = Vec::new();
    for text in args.reading.iter().flat_map(|texts| list(texts)) {
        let Some((day, read)) = text.split_once(':') else {
            return Err(unclear("reading", text, "day-and-humidity"));
        };
        let day = number("reading", day, "day-and-humidity")?;
        readings.push(Reading {
            at: Duration::days(day),
            depth: question.slab.probe_depth(),
            humidity: humidity("reading", read)?,
        });
    }
    if !args.reading.is_empty() {
        let typed = args.reading.join(",");
        sum.given("reading", &typed, Shown::Text(typed.clone()));
    }
    readings.sort_by(|a, b| a.at.as_seconds().total_cmp(&b.at.as_seconds()));
    Ok(readings)
}

fn fill(sum: &mut Sum, forecast: &Forecast, question: &Question) {
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
