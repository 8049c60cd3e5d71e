//! Work windows: one limit at a time, and together over a day.

use science::Span;
use science::air::{AirSample, Band, ClosedReason, Missing, WeatherSeries, WorkLimits, work_windows};
use units::{Duration, Fraction, RelativeHumidity, Speed, Temperature, TemperatureDifference};

fn good(hour: f64) -> AirSample {
    AirSample {
        at: Duration::hours(hour),
        air: Temperature::celsius(20.0),
        humidity: RelativeHumidity::percent(50.0).expect("a humidity"),
        wind: Some(Speed::miles_per_hour(5.0)),
        slab: Some(Temperature::celsius(18.0)),
        rain: Some(Fraction::share(0.0).expect("a share")),
        pressure: None,
    }
}

/// The usual limits outdoors, written out: the formulas hold no numbers of their own.
pub(crate) fn usual_limits() -> WorkLimits {
    WorkLimits {
        above_dew_point: Some(TemperatureDifference::celsius_degrees(3.0)),
        humidity_max: RelativeHumidity::percent(85.0).ok(),
        surface: Some(Band { low: Temperature::fahrenheit(50.0), high: Temperature::fahrenheit(90.0) }),
        air: None,
        wind_max: None,
        rain_max: Fraction::share(0.0).ok(),
    }
}

fn span(start: f64, end: f64) -> Span {
    Span { start: Duration::hours(start), end: Duration::hours(end) }
}

fn reasons_of(sample: AirSample, limits: &WorkLimits) -> Vec<ClosedReason> {
    let samples = [sample];
    let series = WeatherSeries::new(&samples, Duration::hours(1.0)).expect("a series");
    let found = work_windows(series, limits).expect("in range");
    assert_eq!(found.open.len() + found.closed.len(), 1);
    found.closed.into_iter().flat_map(|closed| closed.reasons).collect()
}

#[test]
fn a_good_hour_is_open() {
    assert_eq!(reasons_of(good(0.0), &usual_limits()), []);
}

#[test]
fn the_dew_point_limit_is_a_difference() {
    // The grid of psychrolib: 20 °C, 50 % RH has its dew point at 9.27 °C; 3 °C above is 12.27 °C, and
    // the whole Fahrenheit limit is 5.4 °F, not 37.4 °F.
    let limits =
        WorkLimits { above_dew_point: Some(TemperatureDifference::fahrenheit_degrees(5.4)), ..WorkLimits::default() };
    assert_eq!(reasons_of(AirSample { slab: Some(Temperature::celsius(12.30)), ..good(0.0) }, &limits), []);
    let near = reasons_of(AirSample { slab: Some(Temperature::celsius(12.24)), ..good(0.0) }, &limits);
    let [ClosedReason::NearDewPoint { margin, dew_point }] = near[..] else { panic!("closed by dew point: {near:?}") };
    assert!((margin.as_celsius_degrees() - 2.97).abs() < 0.01);
    assert!((dew_point.as_celsius() - 9.27).abs() < 0.01);
}

#[test]
fn every_limit_closes_with_its_own_reason() {
    let limits = WorkLimits {
        air: Some(Band { low: Temperature::celsius(5.0), high: Temperature::celsius(35.0) }),
        wind_max: Some(Speed::miles_per_hour(15.0)),
        ..usual_limits()
    };
    let (humid, hot, cold) =
        (RelativeHumidity::percent(90.0).expect("a humidity"), Temperature::celsius(40.0), Temperature::celsius(4.0));
    let rain = Fraction::share(0.3).expect("a share");
    let wind = Speed::miles_per_hour(20.0);
    let cases = [
        (
            AirSample { slab: Some(hot), humidity: humid, ..good(0.0) },
            vec![ClosedReason::Humid(humid), ClosedReason::SurfaceHot(hot)],
        ),
        (
            AirSample { slab: Some(cold), air: cold, ..good(0.0) },
            vec![ClosedReason::SurfaceCold(cold), ClosedReason::AirCold(cold)],
        ),
        (AirSample { air: hot, slab: Some(Temperature::celsius(32.0)), ..good(0.0) }, vec![ClosedReason::AirHot(hot)]),
        (AirSample { wind: Some(wind), ..good(0.0) }, vec![ClosedReason::Windy(wind)]),
        (AirSample { rain: Some(rain), ..good(0.0) }, vec![ClosedReason::Rain(rain)]),
        (
            AirSample { slab: None, wind: None, rain: None, ..good(0.0) },
            vec![
                ClosedReason::NotRead(Missing::Slab),
                ClosedReason::NotRead(Missing::Wind),
                ClosedReason::NotRead(Missing::Rain),
            ],
        ),
    ];
    for (sample, expected) in cases {
        let mut found = reasons_of(sample, &limits);
        found.retain(|reason| !matches!(reason, ClosedReason::NearDewPoint { .. }));
        assert_eq!(found, expected);
    }
}

#[test]
fn no_limit_asks_for_nothing() {
    let bare = AirSample { slab: None, wind: None, rain: None, ..good(0.0) };
    assert_eq!(reasons_of(bare, &WorkLimits::default()), []);
}

#[test]
fn dry_air_is_never_near_its_dew_point() {
    let dry = AirSample { humidity: RelativeHumidity::percent(0.0).expect("a humidity"), ..good(0.0) };
    assert_eq!(reasons_of(dry, &usual_limits()), []);
}

#[test]
fn open_hours_join_and_silence_is_not_open() {
    let wet = AirSample { rain: Some(Fraction::share(1.0).expect("a share")), ..good(2.0) };
    let samples = [good(0.0), good(1.0), wet, good(3.0), good(6.0), good(7.0), good(8.0)];
    let series = WeatherSeries::new(&samples, Duration::hours(1.0)).expect("a series");
    let found = work_windows(series, &usual_limits()).expect("in range");
    assert_eq!(found.open, [span(0.0, 2.0), span(3.0, 4.0), span(6.0, 9.0)]);
    assert_eq!(found.closed.iter().map(|closed| closed.span).collect::<Vec<_>>(), [span(2.0, 3.0)]);
    assert_eq!(found.gaps, [span(4.0, 6.0)]);
    assert_eq!(found.open_for(Duration::hours(2.0)).collect::<Vec<_>>(), [span(0.0, 2.0), span(6.0, 9.0)]);
}
