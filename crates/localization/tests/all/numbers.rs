//! Printed numbers against values worked by hand from the exact factors of NIST SP 811, Appendix B.8
//! (V): inch 25.4 mm, US gallon 231 in³ = 3.785411784 L, pound 0.45359237 kg.

use jiff::civil::date;
use localization::{Lang, Locale, UnitSystem, UnknownChoice};
use units::{
    Area, Coverage, Duration, FilmThickness, Length, Mass, MoistureEmission, Notation, Ph, RelativeHumidity,
    Temperature, TemperatureDifference, Volume,
};

const EN_FEET: Locale = Locale::new(Lang::En, UnitSystem::Imperial);
const EN_METER: Locale = Locale::new(Lang::En, UnitSystem::Metric);
const ES_FEET: Locale = Locale::new(Lang::Es, UnitSystem::Imperial);
const ES_METER: Locale = Locale::new(Lang::Es, UnitSystem::Metric);

/// In the order: English imperial, English metric, Spanish imperial, Spanish metric.
fn printed(show: impl Fn(Locale) -> String) -> [String; 4] {
    [EN_FEET, EN_METER, ES_FEET, ES_METER].map(show)
}

#[test]
fn lengths() {
    let cases: [(Length, [&str; 4]); 8] = [
        (Length::feet_inches(12.0, 6.5), ["12' 6 1/2\"", "3.82 m", "12' 6 1/2\"", "3.82 m"]),
        (Length::inches(4.0), ["4\"", "102 mm", "4\"", "102 mm"]),
        (Length::inches(0.02), ["0.02 in", "0.51 mm", "0.02 pulg", "0.51 mm"]),
        (Length::inches(1.0 / 16.0), ["0.0625 in", "1.59 mm", "0.0625 pulg", "1.59 mm"]),
        (Length::feet(100.0), ["100 ft", "30.48 m", "100 pies", "30.48 m"]),
        (Length::feet(1234.56), ["1,234.6 ft", "376.3 m", "1,234.6 pies", "376.3 m"]),
        (Length::feet_inches(0.0, 11.97), ["1' 0\"", "304 mm", "1' 0\"", "304 mm"]),
        (Length::ZERO, ["0 in", "0 mm", "0 pulg", "0 mm"]),
    ];
    for (length, expected) in cases {
        assert_eq!(printed(|v| v.length(length)), expected);
    }
}

#[test]
fn areas_volumes_masses() {
    // 1250 × 0.09290304 = 116.13; 9.5 × 0.09290304 = 0.8826.
    assert_eq!(printed(|v| v.area(Area::square_feet(1250.0))), ["1,250 ft²", "116 m²", "1,250 pies²", "116 m²"]);
    assert_eq!(printed(|v| v.area(Area::square_feet(9.5))), ["9.5 ft²", "0.88 m²", "9.5 pies²", "0.88 m²"]);
    // 3.5 × 3.785411784 = 13.249; 12 × 29.5735 = 354.88.
    assert_eq!(printed(|v| v.volume(Volume::us_gallons(3.5))), ["3.5 gal", "13.2 L", "3.5 gal", "13.2 L"]);
    assert_eq!(
        printed(|v| v.volume(Volume::us_fluid_ounces(12.0))),
        ["12 fl oz", "355 mL", "12 onzas líquidas", "355 mL"]
    );
    // 4.25 × 0.764554857984 = 3.2494.
    assert_eq!(printed(|v| v.concrete(Volume::cubic_yards(4.25))), ["4.25 yd³", "3.25 m³", "4.25 yd³", "3.25 m³"]);
    // 7 × 0.45359237 = 3.1751; 0.25 lb = 4 oz = 113.4 g.
    assert_eq!(printed(|v| v.mass(Mass::pounds(7.0))), ["7 lb", "3.18 kg", "7 lb", "3.18 kg"]);
    assert_eq!(printed(|v| v.mass(Mass::pounds(0.25))), ["4 oz", "113 g", "4 oz", "113 g"]);
}

#[test]
fn what_is_spread_and_what_comes_out() {
    // 250 ft²/gal = 250 × 0.09290304 / 3.785411784 = 6.1356 m²/L.
    assert_eq!(
        printed(|v| v.coverage(Coverage::square_feet_per_gallon(250.0))),
        ["250 ft²/gal", "6.1 m²/L", "250 pies²/gal", "6.1 m²/L"]
    );
    // 1604.17 / 300 = 5.347 mil = 135.8 µm. "mil" alone is a thousand in Spanish.
    assert_eq!(printed(|v| v.film(FilmThickness::mils(1604.17 / 300.0))), ["5.3 mil", "136 µm", "5.3 mils", "136 µm"]);
    // 3 × 453.59237 g / 92.90304 m² = 14.647.
    assert_eq!(
        printed(|v| v.emission(MoistureEmission::pounds_per_thousand_square_feet_day(3.0))),
        ["3 lb per 1000 ft² in 24 h", "14.6 g/m² per day", "3 lb por 1000 pies² en 24 h", "14.6 g/m² por día"]
    );
}

#[test]
fn temperatures_and_humidity() {
    assert_eq!(printed(|v| v.temperature(Temperature::fahrenheit(55.0))), ["55 °F", "12.8 °C", "55 °F", "12.8 °C"]);
    assert_eq!(printed(|v| v.temperature(Temperature::celsius(-20.0))), ["-4 °F", "-20 °C", "-4 °F", "-20 °C"]);
    assert_eq!(printed(|v| v.temperature(Temperature::celsius(-0.01))), ["32 °F", "0 °C", "32 °F", "0 °C"]);
    let spread = TemperatureDifference::celsius_degrees(3.0);
    assert_eq!(printed(|v| v.difference(spread)), ["5.4 °F", "3 °C", "5.4 °F", "3 °C"]);
    let humidity = RelativeHumidity::percent(84.96).expect("in range");
    assert_eq!(printed(|v| v.humidity(humidity)), ["85 %"; 4]);
    assert_eq!(printed(|v| v.ph(Ph::new(10.5).expect("in range"))), ["10.5"; 4]);
    assert_eq!(printed(|v| v.count(1250)), ["1,250"; 4]);
    assert_eq!(printed(|v| v.ratio(4.26)), ["4.3"; 4]);
}

#[test]
fn durations() {
    let cases = [
        (Duration::seconds(0.0), "0 seconds", "0 segundos"),
        (Duration::seconds(1.0), "1 second", "1 segundo"),
        (Duration::seconds(6.5), "6.5 seconds", "6.5 segundos"),
        (Duration::seconds(45.0), "45 seconds", "45 segundos"),
        (Duration::seconds(59.7), "1 minute", "1 minuto"),
        (Duration::seconds(75.0), "1 minute 15 seconds", "1 minuto 15 segundos"),
        (Duration::seconds(599.6), "10 minutes", "10 minutos"),
        (Duration::minutes(20.0), "20 minutes", "20 minutos"),
        (Duration::minutes(90.0), "90 minutes", "90 minutos"),
        (Duration::minutes(150.0), "2 hours 30 minutes", "2 horas 30 minutos"),
        (Duration::minutes(480.0), "8 hours", "8 horas"),
        (Duration::hours(24.0), "24 hours", "24 horas"),
        (Duration::hours(168.0), "7 days", "7 días"),
        (Duration::days(20.72), "20.7 days", "20.7 días"),
        (Duration::days(400.4), "400 days", "400 días"),
    ];
    for (duration, english, spanish) in cases {
        assert_eq!(EN_FEET.duration(duration), english);
        assert_eq!(ES_METER.duration(duration), spanish);
    }
}

#[test]
fn dates_and_ranges() {
    assert_eq!(printed(|v| v.date(date(2026, 5, 3)))[0], "May 3, 2026");
    assert_eq!(printed(|v| v.date(date(2026, 5, 3)))[2], "3 de mayo de 2026");
    assert_eq!(EN_FEET.date(date(1999, 12, 31)), "December 31, 1999");
    assert_eq!(ES_FEET.date(date(2027, 1, 1)), "1 de enero de 2027");
    assert_eq!(EN_FEET.range("9.5", "10"), "9.5 to 10");
    assert_eq!(ES_FEET.range("9.5", "10"), "9.5 a 10");
    assert_eq!(ES_FEET.range("10", "10"), "10");
    let items = ["a", "b", "c"].map(str::to_owned);
    assert_eq!(EN_FEET.list(&items), "a, b and c");
    assert_eq!(ES_FEET.list(&items[..2]), "a y b");
    assert_eq!(ES_FEET.list(&[]), "");
}

/// Law: what is printed can be typed back, and prints the same again.
#[test]
fn what_is_printed_reads_back() {
    fn back<Q: Notation>(value: Q, show: impl Fn(Locale, Q) -> String) {
        for locale in [EN_FEET, EN_METER, ES_FEET, ES_METER] {
            let text = show(locale, value);
            let read = Q::read(&text).unwrap_or_else(|e| panic!("{e}"));
            assert_eq!(show(locale, read), text);
        }
    }
    for inches in [0.02, 0.3, 4.0, 150.5, 1500.0] {
        back(Length::inches(inches), Locale::length);
    }
    for square_feet in [3.3, 48.0, 1250.0, 12_500.0] {
        back(Area::square_feet(square_feet), Locale::area);
    }
    for gallons in [0.1, 0.7, 3.5, 1200.0] {
        back(Volume::us_gallons(gallons), Locale::volume);
        back(Volume::us_gallons(gallons), Locale::concrete);
    }
    for pounds in [0.1, 7.0, 520.0] {
        back(Mass::pounds(pounds), Locale::mass);
    }
    for seconds in [6.5, 75.0, 5400.0, 100_000.0, 3_000_000.0] {
        back(Duration::seconds(seconds), Locale::duration);
    }
    back(Coverage::square_feet_per_gallon(250.0), Locale::coverage);
    back(FilmThickness::mils(5.35), Locale::film);
    back(Temperature::fahrenheit(48.5), Locale::temperature);
    back(TemperatureDifference::fahrenheit_degrees(5.4), Locale::difference);
    back(RelativeHumidity::percent(82.5).expect("in range"), Locale::humidity);
    back(Ph::new(10.5).expect("in range"), Locale::ph);
}

#[test]
fn languages_and_measures_have_names() {
    for lang in Lang::ALL {
        assert_eq!(lang.name().parse(), Ok(lang));
    }
    for unit_system in UnitSystem::ALL {
        assert_eq!(unit_system.name().parse(), Ok(unit_system));
    }
    let error: UnknownChoice = "fr".parse::<Lang>().expect_err("no such language");
    assert_eq!(error.to_string(), "language \"fr\" is not known; accepted: en, es");
    let error = "nautical".parse::<UnitSystem>().expect_err("no such measure");
    assert_eq!(error.to_string(), "units \"nautical\" is not known; accepted: imperial, metric");
}
