//! Reading is forgiving, printing is exact, and what is printed reads back as the same quantity.

use proptest::prelude::*;
use units::{
    AirFlow, Area, AsWritten, Coverage, Density, Duration, EvaporationRate, FilmThickness, Fraction, Length,
    LengthUnit, Mass, MoistureEmission, Notation, Ph, Pressure, Problem, RelativeHumidity, Speed, Temperature,
    TemperatureDifference, Volume, VolumeUnit,
};

fn meters(text: &str) -> f64 {
    Length::read(text).unwrap_or_else(|e| panic!("{e}")).as_meters()
}

#[test]
fn one_length_in_every_way_people_write_it() {
    // 12 ft 6 1/2 in is 150.5 in of exactly 25.4 mm (NIST SP 811, B.8).
    for text in [
        "12' 6 1/2\"",
        "12'6 1/2\"",
        "12'-6 1/2\"",
        "12' 6½\"",
        "12’ 6½”",
        "12 ft 6 1/2 in",
        "12ft6.5in",
        "12 ft 6-1/2 in",
        "12 feet 6.5 inches",
        "12' 6.5",
        "150.5 in",
        "150 1/2\"",
        "12 pies 6 1/2 pulgadas",
        "3.8227 m",
        "3,8227 m",
        "382.27 cm",
        "3822.7 mm",
        "  12'  6 1/2 \"  ",
        "12 ft. 6.5 in.",
        "3 822.7 mm".replace(' ', ",").as_str(),
    ] {
        assert!((meters(text) - 3.8227).abs() < 1e-12, "{text} reads {}", meters(text));
    }
    assert!((meters("12'6") - Length::feet_inches(12.0, 6.0).as_meters()).abs() < 1e-12);
    assert!((meters("7/8 in") - 0.022_225).abs() < 1e-15);
    assert!((meters("1,200 ft") - 365.76).abs() < 1e-9);
}

#[test]
fn other_quantities_as_people_write_them() {
    assert!((Volume::read("3.5 gal").unwrap().as_liters() - 13.248_941_244).abs() < 1e-6);
    assert_eq!(Volume::read("2 gal 1 qt").unwrap(), Volume::us_quarts(9.0));
    assert!((Volume::read("12 fl oz").unwrap() / Volume::us_pints(0.75) - 1.0).abs() < 1e-12);
    assert!((Volume::read("1 yd3").unwrap().as_cubic_meters() - 0.764_554_857_984).abs() < 1e-12);
    assert!((Area::read("1,200 sq ft").unwrap().as_square_meters() - 111.483_648).abs() < 1e-6);
    assert!((Area::read("850ft2").unwrap().as_square_feet() - 850.0).abs() < 1e-9);
    assert!((Mass::read("5 lb 4 oz").unwrap().as_kilograms() - 2.381_359_942_5).abs() < 1e-9);
    assert!((Temperature::read("55 °F").unwrap().as_celsius() - 12.777_777_777_8).abs() < 1e-9);
    assert!((Temperature::read("55F").unwrap().as_fahrenheit() - 55.0).abs() < 1e-9);
    assert!((Temperature::read("-4 deg C").unwrap().as_celsius() + 4.0).abs() < 1e-9);
    assert!((TemperatureDifference::read("5 °F").unwrap().as_celsius_degrees() - 2.777_777_777_8).abs() < 1e-9);
    assert!((FilmThickness::read("12 mil").unwrap().as_micrometers() - 304.8).abs() < 1e-9);
    assert!((Speed::read("10 mph").unwrap().as_meters_per_second() - 4.4704).abs() < 1e-12);
    assert!((Pressure::read("3500 psi").unwrap().as_megapascals() - 24.131_65).abs() < 1e-4);
    assert_eq!(Duration::read("1 h 30 min").unwrap(), Duration::minutes(90.0));
    assert_eq!(Duration::read("28 days").unwrap(), Duration::weeks(4.0));
    assert_eq!(Duration::read("28 días").unwrap(), Duration::days(28.0));
    assert!((Coverage::read("250 ft2/gal").unwrap().as_square_meters_per_liter() - 6.135_60).abs() < 1e-4);
    assert!((Density::read("470 lb/yd3").unwrap().as_kilograms_per_cubic_meter() - 278.84).abs() < 0.01);
    assert!(
        (EvaporationRate::read("0.2 lb/ft2/h").unwrap().as_kilograms_per_square_meter_hour() - 0.976_49).abs() < 1e-4
    );
    assert!((MoistureEmission::read("3 lb").unwrap().as_grams_per_square_meter_day() - 14.647).abs() < 1e-3);
    assert!((AirFlow::read("800 cfm").unwrap().as_cubic_meters_per_second() - 0.377_56).abs() < 1e-4);
    assert_eq!(RelativeHumidity::read("75 % RH").unwrap().as_percent(), 75.0);
    assert_eq!(Ph::read("pH 10.5").unwrap().value(), 10.5);
    assert_eq!(Fraction::read("25 %").unwrap().as_share(), 0.25);
}

#[test]
fn what_cannot_be_read_is_refused_with_value_and_accepted_form() {
    let refused: [(&str, Problem); 9] = [
        ("", Problem::Empty),
        ("about a yard or so", Problem::NotANumber),
        ("12", Problem::NoUnit),
        ("12 cubits", Problem::UnknownUnit("cubits".to_owned())),
        ("-12 ft", Problem::Negative),
        ("6 in 12 ft", Problem::OutOfOrder),
        ("12 ft 6 ft", Problem::OutOfOrder),
        ("1/0 in", Problem::NotANumber),
        ("12' 6 5", Problem::NoUnit),
    ];
    for (text, problem) in refused {
        let error = Length::read(text).expect_err(text);
        assert_eq!(error.problem, problem, "{text}");
        let said = error.to_string();
        assert!(said.contains(text) && said.contains("accepted: ") && said.starts_with("length"), "{said}");
    }
    assert!(RelativeHumidity::read("120 %").expect_err("above 100").to_string().contains("between 0 % and 100 %"));
    assert_eq!(RelativeHumidity::read("75").expect_err("no unit").problem, Problem::NoUnit);
    assert!(Ph::read("15").is_err());
    assert!(Fraction::read("1.4").is_err());
    assert!(Temperature::read("-500 °F").is_err());
    assert_eq!(Temperature::read("55").expect_err("no unit").problem, Problem::NoUnit);
    assert_eq!(Volume::read("-1 gal").expect_err("negative").problem, Problem::Negative);
    assert!(EvaporationRate::read("-0.1 kg/m2/h").is_ok(), "condensation is a negative evaporation");
}

#[test]
fn a_carry_reaches_the_feet() {
    assert_eq!(Length::feet_inches(11.0, 11.999).show_feet_inches(16), "12' 0\"");
    assert_eq!(Length::inches(0.4).show_feet_inches(8), "3/8\"");
    assert_eq!(Length::inches(-30.5).show_feet_inches(4), "-2' 6 1/2\"");
    assert_eq!(Length::inches(-0.001).show_feet_inches(16), "0\"");
}

proptest! {
    #[test]
    fn printed_feet_and_inches_read_back_and_print_the_same(
        sixteenths in 0u32..2_000_000, power in 0u32..7,
    ) {
        let denominator = 1 << power;
        let length = Length::inches(f64::from(sixteenths) / 16.0);
        let printed = length.show_feet_inches(denominator);
        let back = Length::read(&printed).unwrap();
        prop_assert!((back - length).abs().as_inches() <= 0.5 / f64::from(denominator) + 1e-9);
        prop_assert_eq!(back.show_feet_inches(denominator), printed);
        if denominator >= 16 {
            prop_assert!((back - length).abs().as_inches() < 1e-9, "exact to the chosen fraction");
        }
    }

    #[test]
    fn printed_units_read_back_to_the_last_decimal(value in 0.0f64..1e6, decimals in 0usize..6) {
        for unit in [LengthUnit::Meter, LengthUnit::Foot, LengthUnit::Inch, LengthUnit::Centimeter, LengthUnit::Millimeter, LengthUnit::Yard] {
            let length = Length::in_unit(value, unit);
            let back = Length::read(&length.show(unit, decimals)).unwrap();
            prop_assert!((back.as_unit(unit) - value).abs() <= 0.5 * 10f64.powi(-(decimals as i32)) + 1e-7);
            prop_assert_eq!(back.show(unit, decimals), length.show(unit, decimals));
        }
        for unit in [VolumeUnit::CubicMeter, VolumeUnit::Liter, VolumeUnit::Milliliter, VolumeUnit::UsGallon, VolumeUnit::UsQuart,
            VolumeUnit::UsPint, VolumeUnit::UsFluidOunce, VolumeUnit::CubicFoot, VolumeUnit::CubicYard] {
            let volume = Volume::in_unit(value, unit);
            let back = Volume::read(&volume.show(unit, decimals)).unwrap();
            prop_assert_eq!(back.show(unit, decimals), volume.show(unit, decimals));
        }
    }

    #[test]
    fn temperatures_go_there_and_back(celsius in -60.0f64..100.0, rise in -50.0f64..50.0) {
        let t = Temperature::celsius(celsius);
        prop_assert!((Temperature::fahrenheit(t.as_fahrenheit()).as_celsius() - celsius).abs() < 1e-9);
        let warmer = t + TemperatureDifference::celsius_degrees(rise);
        prop_assert!(((warmer - t).as_fahrenheit_degrees() - rise * 1.8).abs() < 1e-9);
        let printed = t.show_fahrenheit(1);
        prop_assert_eq!(Temperature::read(&printed).unwrap().show_fahrenheit(1), printed);
    }

    #[test]
    fn any_text_is_read_or_refused_but_never_panics(text in "\\PC{0,24}") {
        let _ = (Length::read(&text), Volume::read(&text), Temperature::read(&text), Ph::read(&text), RelativeHumidity::read(&text));
    }

    #[test]
    fn written_keeps_the_text_and_the_value(feet in 0u32..5000, inches in 0u32..12) {
        let text = format!("{feet} ft {inches} in");
        let written = AsWritten::<Length>::read(&text).unwrap();
        let json = serde_json::to_string(&written).unwrap();
        let back: AsWritten<Length> = serde_json::from_str(&json).unwrap();
        prop_assert_eq!(back.text(), text.as_str());
        prop_assert_eq!(back.value(), Length::feet_inches(f64::from(feet), f64::from(inches)));
    }
}
