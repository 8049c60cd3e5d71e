//! A number of the trade records in the reader's units.

use localization::{Arg, Locale, UnitSystem};
use trade_facts::{Bound, Fact, InUnit, Measured, Unit, Which};
use units::{
    AirFlow, Area, Concentration, Coverage, Density, Duration, EvaporationRate, FilmThickness, Length, Mass,
    MoistureEmission, Ph, Pressure, Temperature, TemperatureDifference, VaporPermeance, Volume,
};

/// Decimals of a bare number: as many as the records have.
const DECIMALS: usize = 3;

/// The number with its unit, in the reader's own where the unit has a counterpart.
pub(crate) fn figure(locale: Locale, number: f64, unit: Unit) -> String {
    measured(locale, number, unit).unwrap_or_else(|| counted(locale, number, unit))
}

/// A physical quantity; nothing for counts, ratios and units that are the same everywhere.
fn measured(locale: Locale, number: f64, unit: Unit) -> Option<String> {
    fn of<Q: InUnit>(number: f64, unit: Unit, said: impl Fn(Q) -> String) -> Option<String> {
        Q::in_unit(number, unit).map(said)
    }
    let metric = locale.unit_system == UnitSystem::Metric;
    let with = |number: f64, word: &str| format!("{} {word}", locale.number(number, DECIMALS));
    match unit {
        Unit::Second | Unit::Minute | Unit::Hour | Unit::Day => of(number, unit, |q: Duration| locale.duration(q)),
        Unit::Inch | Unit::Foot | Unit::Meter => of(number, unit, |q: Length| locale.length(q)),
        Unit::Mil => of(number, unit, |q: FilmThickness| locale.film(q)),
        Unit::SquareFoot | Unit::Acre => of(number, unit, |q: Area| locale.area(q)),
        Unit::Gallon => of(number, unit, |q: Volume| locale.volume(q)),
        Unit::SquareFootPerGallon => of(number, unit, |q: Coverage| locale.coverage(q)),
        // A depth of one millimeter is one liter on a square meter.
        Unit::GallonPerSquareFoot if metric => of(number, unit, |q: Length| with(q.as_millimeters(), "L/m²")),
        Unit::GallonPerSquareFoot => Some(with(number, "gal/ft²")),
        Unit::Pound => of(number, unit, |q: Mass| locale.mass(q)),
        Unit::PoundPerGallon => of(number, unit, |q: Density| locale.density(q)),
        Unit::PoundPerCubicYard if metric => {
            of(number, unit, |q: Density| format!("{} kg/m³", locale.number(q.as_kilograms_per_cubic_meter(), 0)))
        }
        Unit::PoundPerCubicYard => Some(with(number, "lb/yd³")),
        Unit::PoundPerSquareFootHour => of(number, unit, |q: EvaporationRate| locale.evaporation(q)),
        Unit::PoundPerThousandSquareFeetDay => of(number, unit, |q: MoistureEmission| locale.emission(q)),
        Unit::Fahrenheit => of(number, unit, |q: Temperature| locale.temperature(q)),
        Unit::FahrenheitDifference => of(number, unit, |q: TemperatureDifference| locale.difference(q)),
        Unit::Ph => of(number, unit, |q: Ph| format!("pH {}", locale.ph(q))),
        Unit::Psi => of(number, unit, |q: Pressure| locale.strength(q)),
        // The metric counterpart has no short name; its value is in nanograms.
        Unit::Perm if metric => of(number, unit, |q: VaporPermeance| with(q.as_us_perms() * 57.2135, "ng/(Pa·s·m²)")),
        Unit::CubicFootPerMinute => of(number, unit, |q: AirFlow| locale.air_flow(q)),
        Unit::PartPerMillion => of(number, unit, |q: Concentration| locale.concentration(q)),
        Unit::SquareFootEach => Some(said_of(locale, "facts-each", locale.area(Area::square_feet(number)))),
        Unit::SquareFootPerHour => Some(said_of(locale, "facts-an-hour", locale.area(Area::square_feet(number)))),
        Unit::FootPerHour => Some(said_of(locale, "facts-an-hour", locale.length(Length::feet(number)))),
        _ => None,
    }
}

fn said_of(locale: Locale, key: &'static str, amount: String) -> String {
    locale.message(key, &[("amount", amount.into())])
}

fn counted(locale: Locale, number: f64, unit: Unit) -> String {
    let bare = locale.number(number, DECIMALS);
    match unit {
        Unit::Percent => locale.percent(number),
        Unit::Fraction => locale.percent(number * 100.0),
        Unit::Month => locale.message("facts-months", &[("n", bare.into()), ("count", Arg::Number(number))]),
        unit if unit.is_plain() => bare,
        unit => format!("{bare} {}", unit.word()),
    }
}

/// The number of a fact in words: how it is meant, how much, for how much; nothing where it has none.
pub(crate) fn fact_figure(locale: Locale, fact: &Fact) -> Option<String> {
    let unit = fact.unit()?;
    let figure = |which| fact.amount(which).map(|number| figure(locale, number, unit));
    let amount = match (figure(Which::Usual), figure(Which::Low), figure(Which::High)) {
        (Some(usual), _, _) => usual,
        (None, Some(low), Some(high)) => locale.range(&low, &high),
        (None, Some(one), None) | (None, None, Some(one)) => one,
        (None, None, None) => return None,
    };
    let amount = match (fact.per, fact.per_unit) {
        (Some(per), Some(unit)) => {
            let per = self::figure(locale, per, unit);
            locale.message("facts-for-each", &[("amount", amount.into()), ("per", per.into())])
        }
        _ => amount,
    };
    let key = match fact.bound {
        Some(Bound::AtMost) => "facts-at-most",
        Some(Bound::AtLeast) => "facts-at-least",
        Some(Bound::Above) => "facts-above",
        Some(Bound::Below) => "facts-below",
        Some(Bound::About) => "facts-about",
        Some(Bound::Range | Bound::Exact) | None => return Some(amount),
    };
    Some(locale.message(key, &[("amount", amount.into())]))
}

/// Low to high with the usual in between.
pub(crate) fn three_figures(locale: Locale, record: &impl Measured) -> Option<String> {
    let unit = record.unit()?;
    let figure = |which| record.amount(which).map(|number| figure(locale, number, unit));
    let (low, usual, high) = (figure(Which::Low)?, figure(Which::Usual)?, figure(Which::High)?);
    if low == high {
        return Some(usual);
    }
    let range = locale.range(&low, &high);
    Some(locale.message("facts-usually", &[("range", range.into()), ("usual", usual.into())]))
}

#[cfg(test)]
mod tests {
    use localization::{Lang, Locale, UnitSystem};
    use trade_facts::Unit;

    use super::figure;

    /// Conversions by the definitions of NIST SP 811, appendix B (from memory).
    #[test]
    fn figures_are_told_in_the_readers_units() {
        let cases = [
            (28.0, Unit::Day, "28 days", "28 days"),
            (40.0, Unit::Fahrenheit, "40 °F", "4.4 °C"),
            (5.0, Unit::FahrenheitDifference, "5 °F", "2.8 °C"),
            (250.0, Unit::SquareFootPerGallon, "250 ft²/gal", "6.1 m²/L"),
            (0.1, Unit::GallonPerSquareFoot, "0.1 gal/ft²", "4.075 L/m²"),
            (500.0, Unit::PoundPerCubicYard, "500 lb/yd³", "297 kg/m³"),
            (0.1, Unit::Perm, "0.1 perm", "5.721 ng/(Pa·s·m²)"),
            (0.07, Unit::Fraction, "7 %", "7 %"),
            (75.0, Unit::Percent, "75 %", "75 %"),
            (2.0, Unit::Coat, "2", "2"),
            (6.0, Unit::Month, "6 months", "6 months"),
            (10.0, Unit::Ph, "pH 10", "pH 10"),
            (7.0, Unit::MilligramPerCubicMeter, "7 mg/m3", "7 mg/m3"),
        ];
        for (number, unit, imperial, metric) in cases {
            let said = |unit_system| figure(Locale::new(Lang::En, unit_system), number, unit);
            assert_eq!((said(UnitSystem::Imperial).as_str(), said(UnitSystem::Metric).as_str()), (imperial, metric));
        }
    }

    #[test]
    fn no_unit_of_the_records_is_told_as_a_key() {
        for unit in Unit::ALL {
            for lang in Lang::ALL {
                let said = figure(Locale::new(lang, UnitSystem::Metric), 1.0, *unit);
                assert!(said.contains('1') || said.contains(|c: char| c.is_ascii_digit()), "{said}");
                assert!(!said.contains("facts-"), "{said}");
            }
        }
    }
}
