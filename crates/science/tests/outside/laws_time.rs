//! Laws of maturity logs and weather series.

use proptest::prelude::*;
use science::Span;
use science::air::{AirSample, EvaporationForm, WeatherSeries, evaporation_hours, work_windows};
use science::cure::{
    ArrheniusAge, Between, GapRule, TemperatureLog, TemperatureReading, TemperatureTimeFactor, equivalent_age,
    temperature_time_factor,
};
use units::{Duration, EvaporationRate, Fraction, RelativeHumidity, Speed, Temperature, TemperatureDifference};

use crate::windows::usual_limits;

fn reading(hour: f64, celsius: f64) -> TemperatureReading {
    TemperatureReading { at: Duration::hours(hour), temperature: Temperature::celsius(celsius) }
}

fn rule(hours: f64, margin: f64) -> GapRule {
    GapRule { longest: Duration::hours(hours), margin: TemperatureDifference::celsius_degrees(margin) }
}

fn age(readings: &[TemperatureReading], rule: GapRule, until: f64) -> science::cure::EquivalentAge {
    let log = TemperatureLog::new(readings, Between::StraightLine, rule).expect("a log");
    equivalent_age(log, Duration::ZERO, Duration::hours(until), &ArrheniusAge::default()).expect("in range")
}

fn hourly() -> impl Strategy<Value = Vec<f64>> {
    // A slab changes by a few degrees an hour, not by forty.
    (5.0..35.0_f64, prop::collection::vec(-4.0..4.0_f64, 24..80)).prop_map(|(start, steps)| {
        let mut t = start;
        steps
            .into_iter()
            .map(|step| {
                t = (t + step).clamp(-5.0, 45.0);
                t
            })
            .collect()
    })
}

fn weather() -> impl Strategy<Value = Vec<AirSample>> {
    let one = (0.5..4.0_f64, 0.0..45.0_f64, 1.0..100.0_f64, 0.0..15.0_f64, 0.0..60.0_f64, 0..3_u8);
    prop::collection::vec(one, 1..40).prop_map(|lines| {
        let mut at = 0.0;
        lines
            .into_iter()
            .map(|(step, air, humidity, wind, slab, lacking)| {
                at += step;
                AirSample {
                    at: Duration::hours(at),
                    air: Temperature::celsius(air),
                    humidity: RelativeHumidity::percent(humidity).expect("a humidity"),
                    wind: (lacking != 1).then_some(Speed::meters_per_second(wind)),
                    slab: (lacking != 2).then_some(Temperature::celsius(slab)),
                    rain: Some(Fraction::share(0.0).expect("a share")),
                    pressure: None,
                }
            })
            .collect()
    })
}

fn hours(spans: impl IntoIterator<Item = Span>) -> f64 {
    spans.into_iter().map(|span| span.length().as_hours()).sum()
}

proptest! {
    #[test]
    fn at_the_reference_temperature_an_hour_is_an_hour(times in prop::collection::vec(0.1..5.0_f64, 1..30)) {
        let mut at = 0.0;
        let mut readings = vec![reading(0.0, 20.0)];
        for step in times {
            at += step;
            readings.push(reading(at, 20.0));
        }
        let found = age(&readings, rule(6.0, 0.0), at);
        prop_assert!((found.low.as_hours() - at).abs() < 1e-9 * at);
        prop_assert_eq!(found.low, found.high);
    }

    #[test]
    fn a_warmer_slab_is_older(temperatures in hourly(), warmer in 0.1..10.0_f64) {
        let log = |rise: f64| -> Vec<TemperatureReading> {
            temperatures.iter().enumerate().map(|(h, t)| reading(h as f64, t + rise)).collect()
        };
        let until = temperatures.len() as f64;
        prop_assert!(age(&log(warmer), rule(2.0, 0.0), until).low > age(&log(0.0), rule(2.0, 0.0), until).low);
    }

    /// Ages add up: to noon and from noon is the whole.
    #[test]
    fn ages_add_up_over_time(temperatures in hourly(), cut in 0.01..0.99_f64) {
        let readings: Vec<_> = temperatures.iter().enumerate().map(|(h, t)| reading(h as f64, *t)).collect();
        let log = TemperatureLog::new(&readings, Between::StraightLine, rule(2.0, 0.0)).expect("a log");
        let end = Duration::hours(temperatures.len() as f64);
        let form = ArrheniusAge::default();
        let part = |from, until| equivalent_age(log, from, until, &form).expect("in range").low.as_hours();
        let whole = part(Duration::ZERO, end);
        let both = part(Duration::ZERO, end * cut) + part(end * cut, end);
        // Simpson's rule on two halves of one hour is the finer one.
        prop_assert!((whole - both).abs() < 1e-5, "{whole} against {both}");
        let factor = |from, until| {
            let datum = TemperatureTimeFactor::default();
            temperature_time_factor(log, from, until, datum).expect("in range").low.as_celsius_hours()
        };
        let sum = factor(Duration::ZERO, end * cut) + factor(end * cut, end);
        prop_assert!((factor(Duration::ZERO, end) - sum).abs() < 1e-9 * (1.0 + sum));
    }

    /// Dropping readings never makes the answer surer, and never moves it off the truth while the slab
    /// stayed within what the rule calls plausible.
    #[test]
    fn a_gap_widens_the_answer_around_the_truth(temperatures in hourly(), from in 1..10_usize, gap in 4..12_usize) {
        let readings: Vec<_> = temperatures.iter().enumerate().map(|(h, t)| reading(h as f64, *t)).collect();
        let mut holed = readings.clone();
        holed.drain(from..from + gap);
        let until = (temperatures.len() - 1) as f64;
        let truth = age(&readings, rule(2.0, 0.0), until);
        // 50 °C of margin covers every temperature this test draws.
        let found = age(&holed, rule(2.0, 50.0), until);
        prop_assert_eq!(found.gaps.len(), 1);
        prop_assert!(found.low <= truth.low && truth.high <= found.high);
        prop_assert!(found.low < found.high && found.proven <= found.low);
        let wider = age(&holed, rule(2.0, 55.0), until);
        prop_assert!(wider.low < found.low && found.high < wider.high);
    }

    /// Every moment of a series is open, closed or a gap, and only one of them.
    #[test]
    fn windows_partition_the_series(samples in weather(), holds in 0.5..4.0_f64) {
        let series = WeatherSeries::new(&samples, Duration::hours(holds)).expect("a series");
        let found = work_windows(series, &usual_limits()).expect("in range");
        let parts = hours(found.open.clone()) + hours(found.closed.iter().map(|c| c.span)) + hours(found.gaps.clone());
        let whole = (samples[samples.len() - 1].at - samples[0].at).as_hours() + holds;
        prop_assert!((parts - whole).abs() < 1e-9 * whole, "{parts} of {whole}");
        prop_assert!(found.closed.iter().all(|closed| !closed.reasons.is_empty()));
    }

    #[test]
    fn a_higher_limit_never_raises_more_alarms(samples in weather(), limit in 0.05..1.0_f64, more in 0.0..1.0_f64) {
        let series = WeatherSeries::new(&samples, Duration::hours(2.0)).expect("a series");
        let at = |limit| {
            let limit = EvaporationRate::kilograms_per_square_meter_hour(limit);
            evaporation_hours(series, EvaporationForm::Menzel, limit).expect("in range")
        };
        let (low, high) = (at(limit), at(limit + more));
        prop_assert!(hours(high.alarms.clone()) <= hours(low.alarms.clone()) + 1e-9);
        prop_assert!(hours(low.alarms) <= hours(low.possible) + 1e-9);
        prop_assert_eq!(low.not_known, high.not_known);
    }
}
