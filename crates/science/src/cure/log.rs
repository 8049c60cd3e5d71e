//! The temperature log: readings, what is assumed between them, and where nothing is.

use units::{Duration, Temperature, TemperatureDifference};

use super::CureError;
use crate::span::first_out_of_order;
use crate::{Span, joined};

/// Coldest and warmest slab believed, °C.
const BELIEVED_C: std::ops::RangeInclusive<f64> = -60.0..=100.0;

/// One reading of the slab's temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureReading {
    /// Time since the caller's own zero, usually the pour.
    pub at: Duration,
    /// Temperature of the concrete.
    pub temperature: Temperature,
}

/// What is assumed between two readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Between {
    /// A straight line from one to the next: logged probes.
    #[default]
    StraightLine,
    /// The earlier one holds until the next: a stated history in steps.
    Step,
}

/// When a silence is a gap, and what is plausible inside one.
///
/// Rule: inside a gap the slab was never colder than the coldest reading of the whole log less
/// `margin`, and never warmer than the warmest reading plus `margin`. Nothing is interpolated. With
/// few readings the log may not have seen the cold nights, so the margin should not be zero then.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GapRule {
    /// The longest silence that is still bridged.
    pub longest: Duration,
    /// How far beyond the coldest and the warmest reading the slab may have been.
    pub margin: TemperatureDifference,
}

/// Readings in order of time, checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TemperatureLog<'a> {
    readings: &'a [TemperatureReading],
    between: Between,
    rule: GapRule,
}

/// A stretch of the log with the straight line of temperature along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stretch {
    pub(super) span: Span,
    pub(super) first: Temperature,
    pub(super) last: Temperature,
}

/// A period cut into what the log covers and what it does not.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Covered {
    pub(super) stretches: Vec<Stretch>,
    pub(super) gaps: Vec<Span>,
}

pub(super) fn believed(value: Temperature) -> bool {
    BELIEVED_C.contains(&value.as_celsius())
}

impl<'a> TemperatureLog<'a> {
    /// From readings in order of time.
    ///
    /// # Errors
    /// No readings, times that do not rise, a temperature no slab has, or a gap rule out of range.
    pub fn new(readings: &'a [TemperatureReading], between: Between, rule: GapRule) -> Result<Self, CureError> {
        if readings.is_empty() {
            return Err(CureError::EmptyLog);
        }
        let bridges = rule.longest > Duration::ZERO;
        if !bridges {
            return Err(CureError::GapLength(rule.longest));
        }
        let margin = rule.margin.as_celsius_degrees();
        if !(margin >= 0.0 && margin.is_finite()) {
            return Err(CureError::GapMargin(rule.margin));
        }
        if let Some(index) = readings.iter().position(|reading| !believed(reading.temperature)) {
            return Err(CureError::Reading { index, value: readings[index].temperature });
        }
        match first_out_of_order(readings.iter().map(|reading| reading.at)) {
            Some(index) => Err(CureError::Order { index, at: readings[index].at }),
            None => Ok(Self { readings, between, rule }),
        }
    }

    /// The coldest and the warmest that a gap may have been.
    #[must_use]
    pub fn plausible(self) -> (Temperature, Temperature) {
        let first = self.readings[0].temperature;
        let (coldest, warmest) = self.readings.iter().fold((first, first), |(cold, warm), reading| {
            let t = reading.temperature;
            (if t < cold { t } else { cold }, if t > warm { t } else { warm })
        });
        (coldest - self.rule.margin, warmest + self.rule.margin)
    }

    /// Cuts a period into stretches and gaps. Before the first reading and after the last one the
    /// nearest reading holds, for as long as a silence may last; what is longer is a gap as a whole.
    pub(super) fn covering(self, from: Duration, until: Duration) -> Covered {
        let mut covered = Covered { stretches: Vec::new(), gaps: Vec::new() };
        let (first, last) = (self.readings[0], self.readings[self.readings.len() - 1]);
        self.place(held(from, first.at.min(until), first.temperature), from, until, &mut covered);
        for pair in self.readings.windows(2) {
            let end = match self.between {
                Between::StraightLine => pair[1].temperature,
                Between::Step => pair[0].temperature,
            };
            let span = Span { start: pair[0].at, end: pair[1].at };
            self.place(Stretch { span, first: pair[0].temperature, last: end }, from, until, &mut covered);
        }
        self.place(held(last.at, until, last.temperature), from, until, &mut covered);
        covered.gaps = joined(covered.gaps);
        covered
    }

    /// Files a stretch under stretches or gaps, cut to the period. The length of the silence is
    /// judged before cutting: asking about a part of a gap does not make it shorter.
    fn place(self, stretch: Stretch, from: Duration, until: Duration, covered: &mut Covered) {
        let span = Span { start: stretch.span.start.max(from), end: stretch.span.end.min(until) };
        if span.end <= span.start {
            return;
        }
        if stretch.span.length() > self.rule.longest {
            covered.gaps.push(span);
            return;
        }
        let at = |time: Duration| {
            let share = (time - stretch.span.start) / stretch.span.length();
            let rise = (stretch.last - stretch.first).as_celsius_degrees();
            stretch.first + TemperatureDifference::celsius_degrees(rise * share)
        };
        covered.stretches.push(Stretch { span, first: at(span.start), last: at(span.end) });
    }
}

fn held(start: Duration, end: Duration, temperature: Temperature) -> Stretch {
    Stretch { span: Span { start, end }, first: temperature, last: temperature }
}
