//! Alarm hours over a day of weather, on a day worked by hand.

use science::Span;
use science::air::{AirSample, EvaporationForm, EvaporationHour, Level, Missing, WeatherSeries, evaporation_hours};
use units::{Duration, EvaporationRate, RelativeHumidity, Speed, Temperature};

fn sample(hour: f64, wind_mph: f64) -> AirSample {
    AirSample {
        at: Duration::hours(hour),
        air: Temperature::fahrenheit(90.0),
        humidity: RelativeHumidity::percent(10.0).expect("a humidity"),
        wind: Some(Speed::miles_per_hour(wind_mph)),
        slab: Some(Temperature::fahrenheit(90.0)),
        rain: None,
        pressure: None,
    }
}

fn span(start: f64, end: f64) -> Span {
    Span { start: Duration::hours(start), end: Duration::hours(end) }
}

/// At 90 °F, 10 % RH the reference table gives 0.0700, 0.3357 and 0.7342 lb/ft²/h for 0, 10 and 25 mph;
/// linear in wind, so 3 mph is 0.1497, whose band reaches 0.2096.
#[test]
fn alarm_hours_are_those_above_the_limit_and_join_into_spans() {
    let mut samples = vec![sample(0.0, 0.0), sample(1.0, 3.0), sample(2.0, 10.0), sample(3.0, 25.0), sample(4.0, 0.0)];
    samples.push(AirSample { wind: None, slab: None, ..sample(5.0, 0.0) });
    samples.push(sample(9.0, 25.0));
    let series = WeatherSeries::new(&samples, Duration::hours(1.0)).expect("a series");
    let limit = EvaporationRate::pounds_per_square_foot_hour(0.2);
    let found = evaporation_hours(series, EvaporationForm::Menzel, limit).expect("in range");
    let levels: Vec<Option<Level>> = found
        .hours
        .iter()
        .map(|hour| match hour {
            EvaporationHour::Known { level, .. } => Some(*level),
            EvaporationHour::NotKnown { .. } => None,
        })
        .collect();
    let (below, possible, above) = (Some(Level::Below), Some(Level::Possible), Some(Level::Above));
    assert_eq!(levels, [below, possible, above, above, below, None, above]);
    assert_eq!(found.alarms, [span(2.0, 4.0), span(9.0, 10.0)]);
    assert_eq!(found.possible, [span(1.0, 4.0), span(9.0, 10.0)]);
    assert_eq!(found.not_known, [span(5.0, 9.0)]);
    assert_eq!(found.alarm_starts().map(Duration::as_hours).collect::<Vec<_>>(), [2.0, 3.0, 9.0]);
    let EvaporationHour::NotKnown { missing, .. } = &found.hours[5] else { panic!("hour 5 lacks readings") };
    assert_eq!(*missing, [Missing::Slab, Missing::Wind]);
}

#[test]
fn the_limit_for_silica_fume_is_just_another_limit() {
    let samples = [sample(0.0, 3.0)];
    let series = WeatherSeries::new(&samples, Duration::hours(1.0)).expect("a series");
    let limit = EvaporationRate::pounds_per_square_foot_hour(0.1);
    let found = evaporation_hours(series, EvaporationForm::Menzel, limit).expect("in range");
    assert_eq!(found.alarms, [span(0.0, 1.0)]);
}
