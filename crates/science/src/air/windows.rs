//! When work may go on: hours in which every limit holds, and why the others are closed.

use units::{Duration, Fraction, RelativeHumidity, Speed, Temperature, TemperatureDifference};

use super::{AirError, AirSample, Missing, SeriesError, WeatherSeries, dew_point};
use crate::{Span, joined};

/// A range of temperatures, both ends allowed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Lowest allowed.
    pub low: Temperature,
    /// Highest allowed.
    pub high: Temperature,
}

/// The limits of a product or a site. `None` asks nothing; the product's own sheet governs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WorkLimits {
    /// The surface at least this far above the dew point: a difference, 3 °C is 5.4 °F.
    pub above_dew_point: Option<TemperatureDifference>,
    /// Highest relative humidity of the air.
    pub humidity_max: Option<RelativeHumidity>,
    /// Range of the surface temperature.
    pub surface: Option<Band>,
    /// Range of the air temperature.
    pub air: Option<Band>,
    /// Strongest wind.
    pub wind_max: Option<Speed>,
    /// Highest chance of rain; 0 is "no rain forecast". `None` for work under a roof.
    pub rain_max: Option<Fraction>,
}

/// Why an hour is closed, with the value that closed it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ClosedReason {
    /// The surface is too near to the dew point, or below it.
    NearDewPoint {
        /// Surface less dew point.
        margin: TemperatureDifference,
        /// The dew point.
        dew_point: Temperature,
    },
    /// The air is too humid.
    Humid(RelativeHumidity),
    /// The surface is below its range.
    SurfaceCold(Temperature),
    /// The surface is above its range.
    SurfaceHot(Temperature),
    /// The air is below its range.
    AirCold(Temperature),
    /// The air is above its range.
    AirHot(Temperature),
    /// The wind is too strong.
    Windy(Speed),
    /// Rain is too likely.
    Rain(Fraction),
    /// A limit asks for a reading the sample lacks.
    NotRead(Missing),
}

/// A closed sample with every reason, in the order of [`WorkLimits`].
#[derive(Debug, Clone, PartialEq)]
pub struct Closed {
    /// When.
    pub span: Span,
    /// At least one.
    pub reasons: Vec<ClosedReason>,
}

/// A series judged by limits.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkWindows {
    /// Unbroken times in which every limit holds.
    pub open: Vec<Span>,
    /// One per closed sample.
    pub closed: Vec<Closed>,
    /// Times between samples that no sample speaks for: not open.
    pub gaps: Vec<Span>,
}

impl WorkWindows {
    /// The open times that are long enough for a piece of work.
    pub fn open_for(&self, work: Duration) -> impl Iterator<Item = Span> {
        self.open.iter().copied().filter(move |span| span.length() >= work)
    }
}

/// The work windows of a series for a set of limits.
///
/// # Errors
/// A sample the dew point formula refuses or whose wind is below zero, named by its position.
pub fn work_windows(series: WeatherSeries<'_>, limits: &WorkLimits) -> Result<WorkWindows, SeriesError> {
    let mut open = Vec::new();
    let mut closed = Vec::new();
    for (index, (span, sample)) in series.spoken_for().enumerate() {
        let reasons = reasons(sample, limits).map_err(|problem| SeriesError::Sample { index, problem })?;
        if reasons.is_empty() { open.push(span) } else { closed.push(Closed { span, reasons }) }
    }
    Ok(WorkWindows { open: joined(open), closed, gaps: series.gaps() })
}

fn reasons(sample: &AirSample, limits: &WorkLimits) -> Result<Vec<ClosedReason>, AirError> {
    let mut found = Vec::new();
    dew_point_reason(sample, limits, &mut found)?;
    if limits.humidity_max.is_some_and(|max| sample.humidity > max) {
        found.push(ClosedReason::Humid(sample.humidity));
    }
    surface_reason(sample, limits, &mut found);
    if limits.air.is_some_and(|band| sample.air < band.low) {
        found.push(ClosedReason::AirCold(sample.air));
    }
    if limits.air.is_some_and(|band| sample.air > band.high) {
        found.push(ClosedReason::AirHot(sample.air));
    }
    if let Some(max) = limits.wind_max {
        match sample.wind {
            None => found.push(ClosedReason::NotRead(Missing::Wind)),
            Some(wind) if wind > max => found.push(ClosedReason::Windy(wind)),
            Some(wind) if wind >= Speed::ZERO => {}
            Some(wind) => return Err(AirError::Wind(wind)),
        }
    }
    if let Some(max) = limits.rain_max {
        match sample.rain {
            None => found.push(ClosedReason::NotRead(Missing::Rain)),
            Some(rain) if rain > max => found.push(ClosedReason::Rain(rain)),
            Some(_) => {}
        }
    }
    Ok(found)
}

fn dew_point_reason(sample: &AirSample, limits: &WorkLimits, found: &mut Vec<ClosedReason>) -> Result<(), AirError> {
    // Air without vapor has no dew point to come near to.
    let (Some(wanted), true) = (limits.above_dew_point, sample.humidity.as_percent() > 0.0) else {
        return Ok(());
    };
    match sample.slab {
        None => found.push(ClosedReason::NotRead(Missing::Slab)),
        Some(slab) => {
            let dew_point = dew_point(sample.air, sample.humidity)?;
            let margin = slab - dew_point;
            if margin < wanted {
                found.push(ClosedReason::NearDewPoint { margin, dew_point });
            }
        }
    }
    Ok(())
}

fn surface_reason(sample: &AirSample, limits: &WorkLimits, found: &mut Vec<ClosedReason>) {
    let Some(band) = limits.surface else { return };
    match sample.slab {
        // Said once, even when two limits ask for the same reading.
        None if found.contains(&ClosedReason::NotRead(Missing::Slab)) => {}
        None => found.push(ClosedReason::NotRead(Missing::Slab)),
        Some(slab) if slab < band.low => found.push(ClosedReason::SurfaceCold(slab)),
        Some(slab) if slab > band.high => found.push(ClosedReason::SurfaceHot(slab)),
        Some(_) => {}
    }
}
