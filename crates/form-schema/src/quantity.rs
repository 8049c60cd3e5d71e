//! Quantities as a form asks for them: which unit a bare number takes, and examples in each system of units.

use units::{Problem, QuantityKind, ReadError, UnitSystem};

/// A quantity as one field asks for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct QuantityInput {
    /// Which quantity.
    pub kind: QuantityKind,
    /// Asked in percent: a bare number up to one is unclear.
    in_percent: bool,
    /// Always written in one unit, so that a bare number is clear everywhere.
    in_one_unit: bool,
    /// What a bare number is at least and at most, in millimeters, where lengths of several units are usual.
    usual_mm: Option<(u32, u32)>,
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
    /// A bare number that in the usual unit would be far from anything usual: 10 typed for a thickness.
    UnitUnclear,
}

pub(crate) const fn at(unit_system: UnitSystem) -> usize {
    match unit_system {
        UnitSystem::Imperial => 0,
        UnitSystem::Metric => 1,
    }
}

impl QuantityInput {
    /// A quantity with its usual unit and an example, each in imperial and metric.
    #[must_use]
    pub const fn new(kind: QuantityKind, units: [&'static str; 2], examples: [&'static str; 2]) -> Self {
        Self { kind, in_percent: false, in_one_unit: false, usual_mm: None, units, examples }
    }

    /// A quantity with an example in imperial and in metric, whose units are the usual ones.
    #[must_use]
    pub const fn by_example(kind: QuantityKind, imperial: &'static str, metric: &'static str) -> Self {
        Self::new(kind, [unit_of(imperial), unit_of(metric)], [imperial, metric])
    }

    /// A quantity that everybody writes in one unit: a bare number takes it, on a command line too.
    #[must_use]
    pub const fn in_one_unit(kind: QuantityKind, unit: &'static str, example: &'static str) -> Self {
        Self { in_one_unit: true, ..Self::new(kind, [unit, unit], [example, example]) }
    }

    /// A quantity asked in percent, with an example.
    #[must_use]
    pub const fn percent(kind: QuantityKind, example: &'static str) -> Self {
        Self {
            kind,
            in_percent: true,
            in_one_unit: false,
            usual_mm: None,
            units: ["%", "%"],
            examples: [example, example],
        }
    }

    /// A length that is asked about when a bare number lies outside these millimeters: written with its unit, it is
    /// taken. Such bounds are ours (common practice, no source): they refuse nothing.
    #[must_use]
    pub const fn usual_mm(self, least: u32, most: u32) -> Self {
        Self { usual_mm: Some((least, most)), ..self }
    }

    /// How thick a slab is, wherever it is asked: from a thin topping to a footing. The bounds only decide whether a
    /// bare number is asked for its unit; grade: common practice, no source.
    pub const SLAB_THICKNESS: Self = Self::by_example(QuantityKind::Length, "4 in", "100 mm").usual_mm(30, 1000);

    /// Whether it is asked in percent.
    #[must_use]
    pub const fn in_percent(&self) -> bool {
        self.in_percent
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

    /// What is kept: the text as typed, or a bare number with the usual unit of the system. Without a system the
    /// unit must be written.
    ///
    /// # Errors
    /// [`QuantityProblem`] when the text is no such quantity, with or without the unit.
    pub fn read(&self, typed: &str, usual: Option<UnitSystem>) -> Result<String, QuantityProblem> {
        let typed = typed.trim();
        if let Some(clock) = self.as_on_a_stopwatch(typed) {
            return self.check(&clock).map_err(QuantityProblem::Read);
        }
        // Both systems have the one unit.
        let usual = usual.or(self.in_one_unit.then_some(UnitSystem::Metric));
        if self.in_percent
            && let Some(number) = bare(typed)
        {
            return match usual {
                _ if number > 0.0 && number <= 1.0 => Err(QuantityProblem::ShareOrPercent),
                Some(_) => self.check(&format!("{typed} %")).map_err(QuantityProblem::Read),
                None => Err(QuantityProblem::Read(Problem::NoUnit)),
            };
        }
        let with_unit = |system| {
            // The added unit must not be blamed on the person.
            self.check(&format!("{typed} {}", self.unit(system))).map_err(|problem| match problem {
                Problem::UnknownUnit(_) | Problem::OutOfOrder => Problem::NoUnit,
                other => other,
            })
        };
        match (self.check(typed), usual) {
            (Err(Problem::NoUnit), Some(system)) => {
                let text = with_unit(system).map_err(QuantityProblem::Read)?;
                if self.is_usual(&text) { Ok(text) } else { Err(QuantityProblem::UnitUnclear) }
            }
            (read, _) => read.map_err(QuantityProblem::Read),
        }
    }

    fn is_usual(&self, text: &str) -> bool {
        let (Some((least, most)), Ok(units::Quantity::Length(length))) = (self.usual_mm, self.kind.read(text)) else {
            return true;
        };
        let millimeters = length.as_meters() * 1000.0;
        (f64::from(least)..=f64::from(most)).contains(&millimeters)
    }

    /// Minutes and seconds as a stopwatch shows them, `1:15`, where seconds are asked for.
    fn as_on_a_stopwatch(&self, typed: &str) -> Option<String> {
        if self.kind != QuantityKind::Duration || self.units[0] != "s" {
            return None;
        }
        let (minutes, seconds) = typed.split_once(':')?;
        let digits = |text: &str| !text.is_empty() && text.len() <= 3 && text.bytes().all(|b| b.is_ascii_digit());
        let whole = digits(minutes) && digits(seconds) && seconds.len() == 2 && seconds < "60";
        whole.then(|| format!("{minutes} min {seconds} s"))
    }

    /// Whether a written value is such a quantity, with its unit.
    ///
    /// # Errors
    /// What is wrong with it.
    pub(crate) fn check(&self, text: &str) -> Result<String, Problem> {
        self.kind.read(text).map(|_| text.to_owned()).map_err(|ReadError { problem, .. }| problem)
    }

    /// The text to fill into the input for what the diary holds: itself, but a share written without
    /// its percent sign gets one, since the input says percent.
    #[must_use]
    pub(crate) fn fill(&self, kept: &str) -> String {
        match bare(kept) {
            Some(number) if self.kind == QuantityKind::Fraction && self.in_percent => format!("{} %", number * 100.0),
            _ => kept.to_owned(),
        }
    }
}

/// What stands behind the first blank of an example: `75 °F` is in °F.
const fn unit_of(example: &'static str) -> &'static str {
    let bytes = example.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        if bytes[at] == b' ' {
            return example.split_at(at + 1).1;
        }
        at += 1;
    }
    ""
}

/// The number, when the text is a number and nothing else.
fn bare(text: &str) -> Option<f64> {
    crate::number::read(text)
}
