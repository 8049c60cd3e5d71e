//! A number of the trade records in the reader's units.

use slab::trade::{Bound, Fact, InUnit, Measured, Unit, Which};
use units::{
    AirFlow, Area, Concentration, Coverage, Density, Duration, EvaporationRate, FilmThickness, Length, Mass,
    MoistureEmission, Ph, Pressure, Temperature, TemperatureDifference, VaporPermeance, Volume,
};
use words::{Arg, Measure, Voice};

/// Decimals of a bare number: as many as the records have.
const DECIMALS: usize = 3;

/// The number with its unit, in the reader's own where the unit has a counterpart.
pub(crate) fn figure(voice: Voice, number: f64, unit: Unit) -> String {
    measured(voice, number, unit).unwrap_or_else(|| counted(voice, number, unit))
}

/// A physical quantity; nothing for counts, ratios and units that are the same everywhere.
fn measured(voice: Voice, number: f64, unit: Unit) -> Option<String> {
    fn of<Q: InUnit>(number: f64, unit: Unit, said: impl Fn(Q) -> String) -> Option<String> {
        Q::in_unit(number, unit).map(said)
    }
    let metric = voice.measure == Measure::Metric;
    let with = |number: f64, word: &str| format!("{} {word}", voice.number(number, DECIMALS));
    match unit {
        Unit::Second | Unit::Minute | Unit::Hour | Unit::Day => of(number, unit, |q: Duration| voice.duration(q)),
        Unit::Inch | Unit::Foot | Unit::Meter => of(number, unit, |q: Length| voice.length(q)),
        Unit::Mil => of(number, unit, |q: FilmThickness| voice.film(q)),
        Unit::SquareFoot | Unit::Acre => of(number, unit, |q: Area| voice.area(q)),
        Unit::Gallon => of(number, unit, |q: Volume| voice.volume(q)),
        Unit::SquareFootPerGallon => of(number, unit, |q: Coverage| voice.coverage(q)),
        // A depth of one millimeter is one liter on a square meter.
        Unit::GallonPerSquareFoot if metric => of(number, unit, |q: Length| with(q.as_millimeters(), "L/m²")),
        Unit::GallonPerSquareFoot => Some(with(number, "gal/ft²")),
        Unit::Pound => of(number, unit, |q: Mass| voice.mass(q)),
        Unit::PoundPerGallon => of(number, unit, |q: Density| voice.density(q)),
        Unit::PoundPerCubicYard if metric => {
            of(number, unit, |q: Density| format!("{} kg/m³", voice.number(q.as_kilograms_per_cubic_meter(), 0)))
        }
        Unit::PoundPerCubicYard => Some(with(number, "lb/yd³")),
        Unit::PoundPerSquareFootHour => of(number, unit, |q: EvaporationRate| voice.evaporation(q)),
        Unit::PoundPerThousandSquareFeetDay => of(number, unit, |q: MoistureEmission| voice.emission(q)),
        Unit::Fahrenheit => of(number, unit, |q: Temperature| voice.temperature(q)),
        Unit::FahrenheitDifference => of(number, unit, |q: TemperatureDifference| voice.difference(q)),
        Unit::Ph => of(number, unit, |q: Ph| format!("pH {}", voice.ph(q))),
        Unit::Psi => of(number, unit, |q: Pressure| voice.strength(q)),
        // The metric counterpart has no short name; its value is in nanograms.
        Unit::Perm if metric => of(number, unit, |q: VaporPermeance| with(q.as_us_perms() * 57.2135, "ng/(Pa·s·m²)")),
        Unit::CubicFootPerMinute => of(number, unit, |q: AirFlow| voice.air_flow(q)),
        Unit::PartPerMillion => of(number, unit, |q: Concentration| voice.concentration(q)),
        Unit::SquareFootEach => Some(said_of(voice, "facts-each", voice.area(Area::square_feet(number)))),
        Unit::SquareFootPerHour => Some(said_of(voice, "facts-an-hour", voice.area(Area::square_feet(number)))),
        Unit::FootPerHour => Some(said_of(voice, "facts-an-hour", voice.length(Length::feet(number)))),
        _ => None,
    }
}

fn said_of(voice: Voice, key: &str, amount: String) -> String {
    voice.say(key, &[("amount", amount.into())])
}

fn counted(voice: Voice, number: f64, unit: Unit) -> String {
    let bare = voice.number(number, DECIMALS);
    match unit {
        Unit::Percent => voice.percent(number),
        Unit::Fraction => voice.percent(number * 100.0),
        Unit::Month => voice.say("facts-months", &[("n", bare.into()), ("count", Arg::Number(number))]),
        unit if unit.is_plain() => bare,
        unit => format!("{bare} {}", unit.word()),
    }
}

/// The number of a fact in words: how it is meant, how much, for how much; nothing where it has none.
pub(crate) fn fact_figure(voice: Voice, fact: &Fact) -> Option<String> {
    let unit = fact.unit()?;
    let figure = |which| fact.amount(which).map(|number| figure(voice, number, unit));
    let amount = match (figure(Which::Usual), figure(Which::Low), figure(Which::High)) {
        (Some(usual), _, _) => usual,
        (None, Some(low), Some(high)) => voice.range(&low, &high),
        (None, Some(one), None) | (None, None, Some(one)) => one,
        (None, None, None) => return None,
    };
    let amount = match (fact.per, fact.per_unit) {
        (Some(per), Some(unit)) => {
            let per = self::figure(voice, per, unit);
            voice.say("facts-for-each", &[("amount", amount.into()), ("per", per.into())])
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
    Some(voice.say(key, &[("amount", amount.into())]))
}

/// Low to high with the usual in between.
pub(crate) fn three_figures(voice: Voice, record: &impl Measured) -> Option<String> {
    let unit = record.unit()?;
    let figure = |which| record.amount(which).map(|number| figure(voice, number, unit));
    let (low, usual, high) = (figure(Which::Low)?, figure(Which::Usual)?, figure(Which::High)?);
    if low == high {
        return Some(usual);
    }
    let range = voice.range(&low, &high);
    Some(voice.say("facts-usually", &[("range", range.into()), ("usual", usual.into())]))
}

#[cfg(test)]
mod tests {
    use slab::trade::Unit;
    use words::{Lang, Measure, Voice};

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
            let said = |measure| figure(Voice::new(Lang::En, measure), number, unit);
            assert_eq!((said(Measure::Imperial).as_str(), said(Measure::Metric).as_str()), (imperial, metric));
        }
    }

    #[test]
    fn no_unit_of_the_records_is_told_as_a_key() {
        for unit in Unit::ALL {
            for lang in Lang::ALL {
                let said = figure(Voice::new(lang, Measure::Metric), 1.0, *unit);
                assert!(said.contains('1') || said.contains(|c: char| c.is_ascii_digit()), "{said}");
                assert!(!said.contains("facts-"), "{said}");
            }
        }
    }
}
