//! Maturity against direct arithmetic on constructed histories (V; formulas of ASTM C1074, M).

use science::cure::{
    Activation, ArrheniusAge, Between, GapRule, KelvinOffset, TemperatureLog, TemperatureReading,
    TemperatureTimeFactor, equivalent_age, temperature_time_factor,
};
use units::{Duration, Temperature, TemperatureDifference};

use crate::reference::{every_row, near, number};

/// Steps of (hours, °C) as the name of a history in the reference file says.
fn steps(name: &str) -> Vec<(f64, f64)> {
    match &name[..2] {
        "M1" => vec![(168.0, 20.0)],
        "M2" => vec![(168.0, 10.0)],
        "M3" => vec![(72.0, 30.0)],
        "M4" => vec![(12.0, 15.0), (12.0, 25.0), (24.0, 20.0), (24.0, 12.0)],
        "M5" => vec![(24.0, 8.0), (24.0, 4.0), (24.0, -2.0), (24.0, 5.0)],
        "M6" => vec![(672.0, 23.0)],
        "M7" => vec![(672.0, 18.0)],
        other => panic!("unknown history {other}"),
    }
}

fn logged(steps: &[(f64, f64)]) -> (Vec<TemperatureReading>, Duration) {
    let mut at = 0.0;
    let mut readings = Vec::new();
    for (hours, celsius) in steps {
        readings.push(TemperatureReading { at: Duration::hours(at), temperature: Temperature::celsius(*celsius) });
        at += hours;
    }
    (readings, Duration::hours(at))
}

fn month() -> GapRule {
    GapRule { longest: Duration::days(28.0), margin: TemperatureDifference::celsius_degrees(0.0) }
}

fn ages(q: Result<Activation, science::cure::CureError>, offset: KelvinOffset) -> ArrheniusAge {
    ArrheniusAge { activation: q.expect("an activation"), reference: Temperature::celsius(20.0), offset }
}

#[test]
fn histories_agree_with_direct_arithmetic() {
    let all = every_row("maturity_checks.csv");
    let table = &all[1..8];
    assert_eq!(all[0][0], "history");
    assert_eq!(all[8][0], "T_C");
    for row in table {
        let (readings, until) = logged(&steps(&row[0]));
        let log = TemperatureLog::new(&readings, Between::Step, month()).expect("a log");
        let factor = |datum| {
            let constants = TemperatureTimeFactor { datum: Temperature::celsius(datum) };
            temperature_time_factor(log, Duration::ZERO, until, constants).expect("in range").low
        };
        near(factor(0.0).as_celsius_hours(), number(&row[1]), 1e-4, &row[0]);
        near(factor(-10.0).as_celsius_hours(), number(&row[2]), 1e-4, &row[0]);
        near(factor(-10.0).as_fahrenheit_hours(), number(&row[3]), 1e-4, &row[0]);
        let forms = [
            ages(Activation::kelvins(5000.0), KelvinOffset::AsPrinted273),
            ages(Activation::kelvins(5000.0), KelvinOffset::Exact273_15),
            // The file divides by the standard's rounded 8.314 J/(mol·K).
            ages(Activation::kelvins(33_500.0 / 8.314), KelvinOffset::AsPrinted273),
            ages(Activation::kelvins(41_500.0 / 8.314), KelvinOffset::AsPrinted273),
            ages(Activation::kelvins(45_000.0 / 8.314), KelvinOffset::AsPrinted273),
        ];
        for (form, cell) in forms.iter().zip(&row[4..9]) {
            let age = equivalent_age(log, Duration::ZERO, until, form).expect("in range");
            near(age.low.as_hours(), number(cell), 6e-5, &row[0]);
            assert_eq!((age.low, age.gaps.len()), (age.high, 0), "{}", row[0]);
        }
    }
}

#[test]
fn an_activation_energy_is_q_times_the_gas_constant() {
    let q = Activation::joules_per_mole(41_500.0).expect("an activation").as_kelvins();
    // 8.314 in the standard, 8.31446 in the SI: 6e-5 apart.
    near(q, 41_500.0 / 8.314, 6e-5 * q, "Q");
}

#[test]
fn age_factors_agree_with_direct_arithmetic() {
    let all = every_row("maturity_checks.csv");
    let table = &all[9..];
    assert_eq!(table.len(), 10);
    let form = ages(Activation::kelvins(5000.0), KelvinOffset::AsPrinted273);
    for row in table {
        near(form.factor(Temperature::celsius(number(&row[0]))), number(&row[1]), 6e-7, &row[0]);
        let (readings, until) = logged(&[(20.0, number(&row[0]))]);
        let log = TemperatureLog::new(&readings, Between::StraightLine, month()).expect("a log");
        let found = temperature_time_factor(log, Duration::ZERO, until, TemperatureTimeFactor::default());
        // Over 20 h at 20 °C the factor is 400 °C·h; the file gives the ratio to that.
        near(found.expect("in range").low.as_celsius_hours() / 400.0, number(&row[2]), 1e-9, &row[0]);
    }
}

#[test]
fn a_straight_line_across_the_datum_counts_only_its_triangle() {
    let readings = [(0.0, -10.0), (2.0, 10.0), (4.0, -10.0)]
        .map(|(h, c)| TemperatureReading { at: Duration::hours(h), temperature: Temperature::celsius(c) });
    let log = TemperatureLog::new(&readings, Between::StraightLine, month()).expect("a log");
    let found = temperature_time_factor(log, Duration::ZERO, Duration::hours(4.0), TemperatureTimeFactor::default());
    // A triangle 2 h wide and 10 °C high.
    near(found.expect("in range").low.as_celsius_hours(), 10.0, 1e-9, "triangle");
}

#[test]
fn a_long_silence_is_a_gap_and_widens_the_answer() {
    let readings = [(0.0, 20.0), (2.0, 22.0), (26.0, 18.0), (28.0, 20.0)]
        .map(|(h, c)| TemperatureReading { at: Duration::hours(h), temperature: Temperature::celsius(c) });
    let rule = GapRule { longest: Duration::hours(3.0), margin: TemperatureDifference::celsius_degrees(5.0) };
    let log = TemperatureLog::new(&readings, Between::StraightLine, rule).expect("a log");
    let found = temperature_time_factor(log, Duration::ZERO, Duration::hours(40.0), TemperatureTimeFactor::default())
        .expect("in range");
    // 2 h at 21 and 2 h at 19 are proven; 24 h inside and 12 h after the log are gaps between
    // 18 − 5 = 13 and 22 + 5 = 27 °C.
    let spans: Vec<(f64, f64)> = found.gaps.iter().map(|gap| (gap.start.as_hours(), gap.end.as_hours())).collect();
    assert_eq!(spans, [(2.0, 26.0), (28.0, 40.0)]);
    near(found.proven.as_celsius_hours(), 80.0, 1e-9, "proven");
    near(found.low.as_celsius_hours(), 80.0 + 36.0 * 13.0, 1e-9, "low");
    near(found.high.as_celsius_hours(), 80.0 + 36.0 * 27.0, 1e-9, "high");
}

#[test]
fn asking_about_a_part_of_a_gap_does_not_close_it() {
    let readings = [(0.0, 20.0), (24.0, 20.0)]
        .map(|(h, c)| TemperatureReading { at: Duration::hours(h), temperature: Temperature::celsius(c) });
    let rule = GapRule { longest: Duration::hours(3.0), margin: TemperatureDifference::celsius_degrees(5.0) };
    let log = TemperatureLog::new(&readings, Between::StraightLine, rule).expect("a log");
    for (from, until) in [(10.0, 11.0), (25.0, 40.0)] {
        let found = equivalent_age(log, Duration::hours(from), Duration::hours(until), &ArrheniusAge::default());
        let found = found.expect("in range");
        assert_eq!(found.proven, Duration::ZERO, "{from} to {until} h");
        assert_eq!(found.gaps.len(), 1);
        assert!(found.low < Duration::hours(until - from) && found.high > Duration::hours(until - from));
    }
}
