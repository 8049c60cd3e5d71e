//! The two age functions and their integral over a log.

use units::{Duration, Temperature, TemperatureDifference};

use super::log::{Stretch, believed};
use super::{CureError, TemperatureLog};
use crate::{FormulaSource, Grade, Span};

/// The temperature–time factor, Σ (Ta − T0) Δt.
pub const NURSE_SAUL: FormulaSource = FormulaSource {
    id: "temperature-time-factor",
    document: "ASTM C1074",
    locator: "equation 1",
    grade: Grade::FromMemory,
};

/// Equivalent age, Σ exp(−Q (1/Ta − 1/Ts)) Δt.
pub const EQUIVALENT_AGE: FormulaSource =
    FormulaSource { id: "equivalent-age", document: "ASTM C1074", locator: "equation 2", grade: Grade::FromMemory };

/// Gas constant, J/(mol·K), exact in the SI of 2019.
const GAS_CONSTANT: f64 = 8.314_462_618;

/// The factor's datum: below it nothing counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureTimeFactor {
    /// T0, usually 0 °C or -10 °C (M); a property of the cement, for the user to set.
    pub datum: Temperature,
}

impl Default for TemperatureTimeFactor {
    /// T0 = 0 °C (M).
    fn default() -> Self {
        Self { datum: Temperature::celsius(0.0) }
    }
}

/// Degree-hours above the datum.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct TemperatureTime(f64);

impl TemperatureTime {
    /// In Celsius degree-hours.
    #[must_use]
    pub const fn as_celsius_hours(self) -> f64 {
        self.0
    }

    /// In Celsius degree-days.
    #[must_use]
    pub const fn as_celsius_days(self) -> f64 {
        self.0 / 24.0
    }

    /// In Fahrenheit degree-hours.
    #[must_use]
    pub const fn as_fahrenheit_hours(self) -> f64 {
        self.0 * 9.0 / 5.0
    }
}

/// Activation energy over the gas constant, K: how strongly warmth speeds the cement up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Activation(f64);

impl Activation {
    /// From Q in kelvins.
    ///
    /// # Errors
    /// Not above 0, or above 20 000 K.
    pub fn kelvins(q: f64) -> Result<Self, CureError> {
        if q > 0.0 && q <= 20_000.0 { Ok(Self(q)) } else { Err(CureError::Activation(q)) }
    }

    /// From an activation energy in J/mol, such as 41 500.
    ///
    /// # Errors
    /// As [`Activation::kelvins`], after dividing by the gas constant.
    pub fn joules_per_mole(energy: f64) -> Result<Self, CureError> {
        Self::kelvins(energy / GAS_CONSTANT)
    }

    /// Q in kelvins.
    #[must_use]
    pub const fn as_kelvins(self) -> f64 {
        self.0
    }
}

/// What is added to °C to get the temperature of the exponent.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum KelvinOffset {
    /// 273, as printed in the standard. Our choice, so that a hand calculation agrees.
    #[default]
    AsPrinted273,
    /// 273.15. Changes an age by about 0.1 % at 10 °C.
    Exact273_15,
}

impl KelvinOffset {
    const fn value(self) -> f64 {
        match self {
            Self::AsPrinted273 => 273.0,
            Self::Exact273_15 => 273.15,
        }
    }
}

/// The constants of equivalent age.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArrheniusAge {
    /// Q.
    pub activation: Activation,
    /// Ts, the temperature at which an hour is an hour: 20 °C or 23 °C.
    pub reference: Temperature,
    /// Which kelvin.
    pub offset: KelvinOffset,
}

impl Default for ArrheniusAge {
    /// Q = 5000 K, Ts = 20 °C (M); the user's to set.
    fn default() -> Self {
        Self {
            activation: Activation(5000.0),
            reference: Temperature::celsius(20.0),
            offset: KelvinOffset::AsPrinted273,
        }
    }
}

impl ArrheniusAge {
    /// How many hours at the reference temperature one hour at `temperature` is worth.
    #[must_use]
    pub fn factor(&self, temperature: Temperature) -> f64 {
        let t = temperature.as_celsius() + self.offset.value();
        let ts = self.reference.as_celsius() + self.offset.value();
        // exp(−Q (1/Ta − 1/Ts))
        libm::exp(-self.activation.0 * (1.0 / t - 1.0 / ts))
    }
}

/// An answer from a log: one value where the log has no gap, an interval where it has.
#[derive(Debug, Clone, PartialEq)]
pub struct Maturity<T> {
    /// With every gap at its coldest plausible temperature.
    pub low: T,
    /// With every gap at its warmest plausible temperature; equals `low` when there is no gap.
    pub high: T,
    /// The part that the readings prove: gaps count nothing.
    pub proven: T,
    /// Silences longer than the rule allows, within the period asked for.
    pub gaps: Vec<Span>,
}

/// Equivalent age at the reference temperature.
pub type EquivalentAge = Maturity<Duration>;

/// Temperature–time factor of a log from one moment to another.
///
/// Contributions below the datum count as zero. A straight line between readings is integrated
/// exactly, also where it crosses the datum.
///
/// # Errors
/// A datum out of range, or an end before the start.
pub fn temperature_time_factor(
    log: TemperatureLog<'_>,
    from: Duration,
    until: Duration,
    constants: TemperatureTimeFactor,
) -> Result<Maturity<TemperatureTime>, CureError> {
    checked("datum temperature", constants.datum)?;
    let rise = |t: Temperature| (t - constants.datum).as_celsius_degrees();
    let line = |stretch: &Stretch| {
        let (a, b) = (rise(stretch.first), rise(stretch.last));
        let mean = match (a > 0.0, b > 0.0) {
            (true, true) => 0.5 * (a + b),
            (false, false) => 0.0,
            // A triangle on the part above the datum.
            (true, false) => 0.5 * a * a / (a - b),
            (false, true) => 0.5 * b * b / (b - a),
        };
        mean * stretch.span.length().as_hours()
    };
    integral(log, from, until, line, |t| rise(t).max(0.0)).map(|found| found.map(TemperatureTime))
}

/// Equivalent age of a log from one moment to another.
///
/// Along a straight line between readings the rate is integrated by Simpson's rule; it is smooth,
/// and over a step of 10 °C the rule errs by less than 1e-4 of that step for Q up to 5500 K (1.5e-4 at
/// 6500 K, measured).
///
/// # Errors
/// A reference temperature out of range, or an end before the start.
pub fn equivalent_age(
    log: TemperatureLog<'_>,
    from: Duration,
    until: Duration,
    constants: &ArrheniusAge,
) -> Result<EquivalentAge, CureError> {
    checked("reference temperature", constants.reference)?;
    let line = |stretch: &Stretch| {
        let middle = stretch.first
            + TemperatureDifference::celsius_degrees(0.5 * (stretch.last - stretch.first).as_celsius_degrees());
        let rates = constants.factor(stretch.first) + 4.0 * constants.factor(middle) + constants.factor(stretch.last);
        rates / 6.0 * stretch.span.length().as_hours()
    };
    integral(log, from, until, line, |t| constants.factor(t)).map(|found| found.map(Duration::hours))
}

fn checked(field: &'static str, value: Temperature) -> Result<(), CureError> {
    if believed(value) { Ok(()) } else { Err(CureError::Constant { field, value }) }
}

impl Maturity<f64> {
    fn map<T>(self, unit: impl Fn(f64) -> T) -> Maturity<T> {
        Maturity { low: unit(self.low), high: unit(self.high), proven: unit(self.proven), gaps: self.gaps }
    }
}

/// Adds up the stretches, then puts the coldest and the warmest plausible rate into the gaps. Both
/// rates rise with temperature, so the truth lies between if the plausible temperatures hold.
fn integral(
    log: TemperatureLog<'_>,
    from: Duration,
    until: Duration,
    line: impl Fn(&Stretch) -> f64,
    rate: impl Fn(Temperature) -> f64,
) -> Result<Maturity<f64>, CureError> {
    let ends_after = until >= from && from.as_seconds().is_finite() && until.as_seconds().is_finite();
    if !ends_after {
        return Err(CureError::Period { from, until });
    }
    let covered = log.covering(from, until);
    let proven: f64 = covered.stretches.iter().map(line).sum();
    let silent = covered.gaps.iter().map(|gap| gap.length()).sum::<Duration>().as_hours();
    let (coldest, warmest) = log.plausible();
    let (low, high) = (proven + rate(coldest) * silent, proven + rate(warmest) * silent);
    Ok(Maturity { low, high, proven, gaps: covered.gaps })
}
