//! Quantities as a form asks for them: which unit a bare number takes, and examples in each measure.

use localization::UnitSystem;
use slab_plan::Offset;
use units::{
    Area, Density, Duration, FilmThickness, Fraction, Length, Mass, MoistureEmission, Notation, Ph, Pressure, Problem,
    ReadError, RelativeHumidity, Speed, Temperature, Volume,
};

/// Which quantity it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum QuantityKind {
    /// A length.
    Length,
    /// A position on the plan, which may lie below zero.
    Offset,
    /// An area.
    Area,
    /// A volume of liquid.
    Volume,
    /// A mass.
    Mass,
    /// Mass in a volume.
    Density,
    /// A pressure or strength.
    Pressure,
    /// A film or sheet.
    Film,
    /// Moisture emission.
    Emission,
    /// A duration.
    Duration,
    /// A speed.
    Speed,
    /// A temperature.
    Temperature,
    /// A relative humidity in percent.
    Humidity,
    /// A share in percent.
    Percent,
    /// A ratio between 0 and 1 without a unit.
    Ratio,
    /// A pH.
    Ph,
}

/// A quantity as one field asks for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Quantity {
    /// Which quantity.
    pub kind: QuantityKind,
    units: [&'static str; 2],
    examples: [&'static str; 2],
}

/// Why a text is not the quantity asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum QuantityProblem {
    /// As the reader of trade notation says.
    Read(Problem),
    /// A bare number up to one where percent are asked: 0.5 may be meant as 0.5 % or as 50 %.
    ShareOrPercent,
}

const fn at(unit_system: UnitSystem) -> usize {
    match unit_system {
        UnitSystem::Imperial => 0,
        UnitSystem::Metric => 1,
    }
}

impl Quantity {
    /// A quantity with its usual unit and an example, each in imperial and metric.
    pub(crate) const fn new(kind: QuantityKind, units: [&'static str; 2], examples: [&'static str; 2]) -> Self {
        Self { kind, units, examples }
    }

    /// The unit that a bare number takes; empty for pH and ratios.
    #[must_use]
    pub const fn unit(&self, unit_system: UnitSystem) -> &'static str {
        self.units[at(unit_system)]
    }

    /// An example of what may be typed.
    #[must_use]
    pub const fn example(&self, unit_system: UnitSystem) -> &'static str {
        self.examples[at(unit_system)]
    }

    /// The keyboard to show: digits, or all keys where fractions, feet marks or a minus are usual.
    #[must_use]
    pub const fn input_mode(&self) -> &'static str {
        match self.kind {
            QuantityKind::Length | QuantityKind::Offset | QuantityKind::Temperature => "text",
            _ => "decimal",
        }
    }

    const fn in_percent(&self) -> bool {
        matches!(self.kind, QuantityKind::Humidity | QuantityKind::Percent)
    }

    /// What the diary keeps: the text as typed, or a bare number with the usual unit.
    ///
    /// # Errors
    /// [`QuantityProblem`] when the text is no such quantity, with or without the unit.
    pub fn read(&self, typed: &str, unit_system: UnitSystem) -> Result<String, QuantityProblem> {
        let typed = typed.trim();
        if self.in_percent() && !typed.is_empty() {
            // Read as a plain ratio first: only a bare number passes.
            if let Some(number) = bare(typed) {
                return if number > 0.0 && number <= 1.0 {
                    Err(QuantityProblem::ShareOrPercent)
                } else {
                    self.check(&format!("{typed} %")).map_err(QuantityProblem::Read)
                };
            }
        }
        match self.check(typed) {
            Err(Problem::NoUnit) => self
                .check(&format!("{typed} {}", self.unit(unit_system)))
                // The added unit must not be blamed on the person.
                .map_err(|problem| match problem {
                    Problem::UnknownUnit(_) | Problem::OutOfOrder => Problem::NoUnit,
                    other => other,
                }),
            other => other,
        }
        .map_err(QuantityProblem::Read)
    }

    fn check(&self, text: &str) -> Result<String, Problem> {
        let read = match self.kind {
            QuantityKind::Length => problem::<Length>(text),
            QuantityKind::Offset => problem::<Offset>(text),
            QuantityKind::Area => problem::<Area>(text),
            QuantityKind::Volume => problem::<Volume>(text),
            QuantityKind::Mass => problem::<Mass>(text),
            QuantityKind::Density => problem::<Density>(text),
            QuantityKind::Pressure => problem::<Pressure>(text),
            QuantityKind::Film => problem::<FilmThickness>(text),
            QuantityKind::Emission => problem::<MoistureEmission>(text),
            QuantityKind::Duration => problem::<Duration>(text),
            QuantityKind::Speed => problem::<Speed>(text),
            QuantityKind::Temperature => problem::<Temperature>(text),
            QuantityKind::Humidity => problem::<RelativeHumidity>(text),
            QuantityKind::Percent | QuantityKind::Ratio => problem::<Fraction>(text),
            QuantityKind::Ph => problem::<Ph>(text),
        };
        read.map(|()| text.to_owned())
    }

    /// The text to fill into the input for what the diary holds: itself, but a share written without
    /// its percent sign gets one, since the input says percent.
    #[must_use]
    pub(crate) fn fill(&self, kept: &str) -> String {
        match bare(kept) {
            Some(number) if self.kind == QuantityKind::Percent => format!("{} %", number * 100.0),
            _ => kept.to_owned(),
        }
    }
}

fn problem<Q: Notation>(text: &str) -> Result<(), Problem> {
    Q::read(text).map(|_| ()).map_err(|ReadError { problem, .. }| problem)
}

/// The number, when the text is a number and nothing else.
fn bare(text: &str) -> Option<f64> {
    crate::number::read(text)
}
