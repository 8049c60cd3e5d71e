//! Answering the question: possible slabs followed before and after the readings.

use science::chance::Seed;
use science::moisture::{
    Accuracy, DateToLimit, Draws, DryingError, Forecast, ForecastPlan, Reading, ReadingError, RuleCheck, Sides,
    compare_with_rule, month_per_inch,
};
use units::{Duration, RelativeHumidity};

use super::forecast::{
    Band, BandDay, Dates, DryingForecast, ForecastDate, LimitForecast, ReadingPoint, RestsOn, RuleOfThumb, Unexplained,
};
use super::{Caution, DryingQuestion, Limit, LimitBound};
use crate::standing::between;

/// Points of the chart, about.
const CHART_POINTS: f64 = 90.0;
/// Days the chart reaches at least.
const CHART_DAYS: f64 = 120.0;

impl DryingQuestion {
    /// The forecast from so many possible slabs and a seed ([`MEMBERS`](super::MEMBERS) will do).
    ///
    /// Readings that cannot be this slab's are no error: they are told as
    /// [`unexplained`](DryingForecast::unexplained), and no date is given then.
    ///
    /// # Errors
    /// When the members are not 50 to 100000, or the solver gives up on the numbers.
    pub fn forecast(&self, members: usize, seed: u64) -> Result<DryingForecast, DryingError> {
        self.forecast_watched(members, seed, &mut |_, _| {})
    }

    /// The same, telling how many of its steps are done: `watch(done, of)`. The steps are unequal and
    /// few (before readings, after readings, chart), since the possible slabs of one step are
    /// followed together.
    ///
    /// # Errors
    /// As [`DryingQuestion::forecast`].
    pub fn forecast_watched(
        &self,
        members: usize,
        seed: u64,
        watch: &mut dyn FnMut(u32, u32),
    ) -> Result<DryingForecast, DryingError> {
        let steps = if self.readings.is_empty() { 2 } else { 3 };
        watch(0, steps);
        let mut plan = ForecastPlan::new(self.slab(), Draws { members, seed: Seed(seed) });
        plan.horizon = self.horizon();
        plan.accuracy = Accuracy::ENSEMBLE;
        let before = plan.before_readings()?;
        watch(1, steps);
        let (after, unexplained) = self.weigh(&plan)?;
        watch(steps - 1, steps);
        let answer = self.answer((members, seed), &before, after.as_ref(), unexplained);
        watch(steps, steps);
        Ok(answer)
    }

    /// The forecast with the readings weighed, or why they can't be.
    fn weigh(&self, plan: &ForecastPlan) -> Result<(Option<Forecast>, Option<Unexplained>), DryingError> {
        if self.readings.is_empty() {
            return Ok((None, None));
        }
        let readings: Vec<Reading> =
            self.readings.iter().map(|r| Reading { at: r.day, depth: r.depth, humidity: r.humidity }).collect();
        match plan.after_readings(&readings, ReadingError::default()) {
            Ok(forecast) => Ok((Some(forecast), None)),
            Err(DryingError::ImpossibleReading { at, read, nearest, sigmas }) => {
                let meant = self.readings.iter().find(|r| r.day == at && r.humidity == read);
                let entry = meant.map_or(self.pour, |r| r.entry);
                Ok((None, Some(Unexplained::Reading { entry, read, nearest, sigmas })))
            }
            Err(DryingError::TooFewAgree { effective, needed }) => {
                Ok((None, Some(Unexplained::TooFewAgree { effective, needed })))
            }
            Err(other) => Err(other),
        }
    }

    fn answer(
        &self,
        (members, seed): (usize, u64),
        before: &Forecast,
        after: Option<&Forecast>,
        unexplained: Option<Unexplained>,
    ) -> DryingForecast {
        let rests_on = match (after, unexplained) {
            (_, Some(_)) => RestsOn::Nothing,
            (Some(_), None) => RestsOn::Readings,
            (None, None) => RestsOn::Description,
        };
        let limits: Vec<LimitForecast> =
            self.limits.iter().map(|limit| self.limit(limit, before, after, rests_on)).collect();
        let rule_of_thumb = (self.sides == Sides::One).then(|| {
            let wait = month_per_inch(self.thickness);
            RuleOfThumb { wait, date: self.date(between(self.poured, self.drying_from) + wait) }
        });
        let mut forecast = DryingForecast {
            members,
            seed,
            horizon: self.horizon(),
            rests_on,
            bands: self.bands(&limits, before, after),
            limits,
            points: self.points(),
            rule_of_thumb,
            effective_members: after.map(Forecast::effective_members),
            unexplained,
            cautions: Vec::new(),
        };
        forecast.cautions = cautions(&forecast);
        forecast
    }

    fn limit(&self, limit: &Limit, before: &Forecast, after: Option<&Forecast>, rests_on: RestsOn) -> LimitForecast {
        let prior = before.date_to(limit.humidity);
        let weighed = after.map(|f| f.date_to(limit.humidity));
        let counts = match rests_on {
            RestsOn::Description => Some(prior),
            RestsOn::Readings => weighed,
            RestsOn::Nothing => None,
        };
        let rule = counts
            .filter(|_| self.sides == Sides::One)
            .map(|dates| compare_with_rule(self.thickness, &dates, self.horizon()));
        LimitForecast {
            limit: limit.clone(),
            before_readings: self.dates(&prior),
            after_readings: weighed.map(|w| self.dates(&w)),
            rule,
        }
    }

    fn dates(&self, to: &DateToLimit) -> Dates {
        let date = |day: Duration| ForecastDate { day, date: self.date(day) };
        Dates {
            p10: to.p10.map(|q| date(q.value)),
            p50: to.p50.map(|q| date(q.value)),
            p90: to.p90.map(|q| date(q.value)),
            not_within_horizon: to.not_within_horizon,
        }
    }

    /// Evenly spaced days from the pour to past everything that is shown.
    fn bands(&self, limits: &[LimitForecast], before: &Forecast, after: Option<&Forecast>) -> Vec<BandDay> {
        let late = |dates: &Dates| dates.p90.or(dates.p50).map(|d| d.day.as_days() * 1.05);
        let shown = limits.iter().flat_map(|l| [late(&l.before_readings), l.after_readings.as_ref().and_then(late)]);
        let now = between(self.poured, self.at).as_days() + 30.0;
        let end = shown.flatten().fold(CHART_DAYS.max(now), f64::max).min(self.horizon().as_days());
        let step = (end / CHART_POINTS).ceil().max(1.0);
        let count = (end / step).ceil() as u32;
        (0..=count)
            .map(|n| {
                let day = Duration::days((f64::from(n) * step).min(self.horizon().as_days()));
                BandDay {
                    day,
                    date: self.date(day),
                    before_readings: band(before, day),
                    after_readings: after.map(|f| band(f, day)),
                }
            })
            .collect()
    }

    fn points(&self) -> Vec<ReadingPoint> {
        let error = ReadingError::default();
        let points = libm::hypot(error.each.as_points(), error.shared.as_points());
        let off = |humidity: RelativeHumidity, by: f64| {
            let percent = (humidity.as_percent() + by).clamp(0.0, 100.0);
            RelativeHumidity::percent(percent).expect("clamped to 0 to 100 %")
        };
        let point = |entry, day, humidity, weighed, zones: &[String]| ReadingPoint {
            entry,
            day,
            humidity,
            low: off(humidity, -points),
            high: off(humidity, points),
            weighed,
            zones: zones.to_vec(),
        };
        let weighed = self.readings.iter().map(|r| point(r.entry, r.day, r.humidity, true, &r.zones));
        let left_out =
            self.left_out.iter().map(|r| point(r.entry, between(self.poured, r.at), r.humidity, false, &r.zones));
        let mut points: Vec<ReadingPoint> = weighed.chain(left_out).collect();
        points.sort_by(|a, b| a.day.as_seconds().total_cmp(&b.day.as_seconds()).then(a.entry.cmp(&b.entry)));
        points
    }
}

fn band(forecast: &Forecast, day: Duration) -> Band {
    let band = forecast.humidity(day);
    Band { p10: band.p10.value, p50: band.p50.value, p90: band.p90.value }
}

fn cautions(forecast: &DryingForecast) -> Vec<Caution> {
    let plain = || forecast.limits.iter().filter(|l| l.limit.bound == LimitBound::Plain);
    let past = |limit: &LimitForecast| forecast.dates(limit).is_some_and(|dates| dates.p90.is_none());
    [
        (true, Caution::ForecastNeverReleases),
        (true, Caution::MakersSheetGoverns),
        (forecast.rests_on == RestsOn::Nothing, Caution::ReadingsUnexplained),
        (forecast.rests_on == RestsOn::Description, Caution::PriorNeedsReadings),
        (plain().any(|l| l.rule == Some(RuleCheck::RuleEarlier)), Caution::RuleEarlier),
        (forecast.limits.iter().any(past), Caution::PastHorizon),
    ]
    .into_iter()
    .filter_map(|(holds, caution)| holds.then_some(caution))
    .collect()
}
