//! Weather by the hour, as logged or forecast, on a clock the caller keeps.

use units::{Duration, Fraction, Pressure, RelativeHumidity, Speed, Temperature};

use super::SeriesError;
use crate::Span;
use crate::span::first_out_of_order;

/// One line of a weather log or forecast. What was not read is `None`, never a guess.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AirSample {
    /// Time since the caller's own zero.
    pub at: Duration,
    /// Air temperature.
    pub air: Temperature,
    /// Relative humidity of the air.
    pub humidity: RelativeHumidity,
    /// Wind over the slab.
    pub wind: Option<Speed>,
    /// Temperature of the slab surface.
    pub slab: Option<Temperature>,
    /// Chance of rain on the slab: 1 while it rains, 0 when dry.
    pub rain: Option<Fraction>,
    /// Air pressure at the site.
    pub pressure: Option<Pressure>,
}

/// Samples in order of time, each speaking for the time until the next, but not longer than `holds`.
///
/// A longer silence is a gap: nothing is said about it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WeatherSeries<'a> {
    samples: &'a [AirSample],
    holds: Duration,
}

impl<'a> WeatherSeries<'a> {
    /// From samples in order of time.
    ///
    /// # Errors
    /// No samples, times that do not rise, or `holds` not above zero.
    pub fn new(samples: &'a [AirSample], holds: Duration) -> Result<Self, SeriesError> {
        if samples.is_empty() {
            return Err(SeriesError::Empty);
        }
        if !(holds > Duration::ZERO && holds.as_seconds().is_finite()) {
            return Err(SeriesError::Holds(holds));
        }
        match first_out_of_order(samples.iter().map(|sample| sample.at)) {
            Some(index) => Err(SeriesError::Order { index, at: samples[index].at }),
            None => Ok(Self { samples, holds }),
        }
    }

    /// Each sample with the time it speaks for.
    pub fn spoken_for(self) -> impl Iterator<Item = (Span, &'a AirSample)> {
        self.samples.iter().enumerate().map(move |(i, sample)| {
            let silence = sample.at + self.holds;
            let end = self.samples.get(i + 1).map_or(silence, |next| next.at.min(silence));
            (Span { start: sample.at, end }, sample)
        })
    }

    /// The times between the first and the last sample that no sample speaks for.
    #[must_use]
    pub fn gaps(self) -> Vec<Span> {
        self.samples
            .windows(2)
            .map(|pair| Span { start: pair[0].at + self.holds, end: pair[1].at })
            .filter(|gap| gap.end > gap.start)
            .collect()
    }
}
