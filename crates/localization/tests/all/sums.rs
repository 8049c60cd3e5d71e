//! What calculations answer with, printed against values worked by hand from NIST SP 811, Appendix B.8 (V).

use localization::{Lang, Locale, UnitSystem};
use units::{AirFlow, Concentration, Density, EvaporationRate, Fraction, Pressure, Speed, Volume};

/// In the order: English imperial, English metric, Spanish imperial, Spanish metric.
fn printed(show: impl Fn(Locale) -> String) -> [String; 4] {
    [
        (Lang::En, UnitSystem::Imperial),
        (Lang::En, UnitSystem::Metric),
        (Lang::Es, UnitSystem::Imperial),
        (Lang::Es, UnitSystem::Metric),
    ]
    .map(|(lang, unit_system)| show(Locale::new(lang, unit_system)))
}

#[test]
fn rates_and_speeds() {
    // 0.2 × 4.88242764 = 0.97649; 10 × 0.44704 = 4.4704; 1000 × 1.69901082 = 1699.0.
    let alarm = EvaporationRate::pounds_per_square_foot_hour(0.2);
    assert_eq!(
        printed(|v| v.evaporation(alarm)),
        ["0.2 lb/ft² per hour", "0.98 kg/m² per hour", "0.2 lb/pie² por hora", "0.98 kg/m² por hora"]
    );
    assert_eq!(printed(|v| v.speed(Speed::miles_per_hour(10.0))), ["10 mph", "4.5 m/s", "10 mph", "4.5 m/s"]);
    assert_eq!(
        printed(|v| v.air_flow(AirFlow::cubic_feet_per_minute(1000.0))),
        ["1,000 cfm", "1,699 m³/h", "1,000 pies³/min", "1,699 m³/h"]
    );
}

#[test]
fn strengths_pressures_and_shares() {
    // 1 g/mL × 3.785411784 / 0.45359237 = 8.3454 lb/gal; 101.325 / 3.386389 = 29.921; 24.1317 MPa = 3500 psi.
    assert_eq!(
        printed(|v| v.density(Density::grams_per_milliliter(1.0))),
        ["8.35 lb/gal", "1 g/mL", "8.35 lb/gal", "1 g/mL"]
    );
    assert_eq!(
        printed(|v| v.air_pressure(Pressure::kilopascals(101.325))),
        ["29.921 inHg", "101.325 kPa", "29.921 pulgHg", "101.325 kPa"]
    );
    assert_eq!(printed(|v| v.strength(Pressure::psi(3500.0))), ["3,500 psi", "24.1 MPa", "3,500 psi", "24.1 MPa"]);
    assert_eq!(printed(|v| v.space(Volume::cubic_feet(5000.0))), ["5,000 ft³", "142 m³", "5,000 pies³", "142 m³"]);
    assert_eq!(printed(|v| v.concentration(Concentration::parts_per_million(9999.0)))[0], "9,999 ppm");
    assert_eq!(printed(|v| v.concentration(Concentration::percent(1.1)))[1], "1.1 %");
    assert_eq!(Locale::default().share(Fraction::share(0.3145).unwrap()), "31.45 %");
    assert_eq!(Locale::default().percent(133.333), "133.33 %");
    // 1248 °C·h are 2246.4 °F·h above the same datum.
    assert_eq!(printed(|v| v.degree_hours(1248.0, 2246.4)), ["2,246 °F·h", "1,248 °C·h", "2,246 °F·h", "1,248 °C·h"]);
}
