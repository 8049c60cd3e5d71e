//! The slab's temperature record since the pour, and the equivalent age it gives.

use jiff::Timestamp;
use science::cure::{Activation, ArrheniusAge, Between, GapRule, TemperatureLog, TemperatureReading, equivalent_age};
use units::{Duration, Temperature, TemperatureDifference};

use super::Judge;
use slab_diary::EntryId;
use slab_diary::Zone;
use slab_diary::body::{AirReading, AirSeries, Temperature as TemperatureBody};

/// Equivalent age with the entries it was computed from.
pub(super) struct CureAge {
    /// Lowest and highest, over the activation temperatures that are in use and the gaps of the record.
    pub(super) age: (Duration, Duration),
    /// The record has gaps.
    pub(super) gaps: bool,
    pub(super) evidence: Vec<EntryId>,
}

/// Time from one moment to a later one.
pub(crate) fn between(from: Timestamp, until: Timestamp) -> Duration {
    Duration::seconds(until.duration_since(from).as_secs_f64())
}

impl Judge<'_> {
    /// Equivalent age since the pour; `None` without at least two readings.
    ///
    /// Slab readings win; air readings stand in where there are none, since indoors a slab follows
    /// the air. Silences over the bridged length are gaps: the answer is an interval then.
    pub(super) fn cure_age(&self, zone: &Zone, poured: Timestamp) -> Option<CureAge> {
        let mut slab: Vec<(Timestamp, Temperature, EntryId)> = Vec::new();
        let mut air: Vec<(Timestamp, Temperature, EntryId)> = Vec::new();
        let written = |w: &Option<units::AsWritten<Temperature>>| w.as_ref().map(units::AsWritten::value);
        for seen in self.slab.all::<TemperatureBody>().filter(|s| self.slab.touches(s.entry, zone)) {
            let at = seen.entry.happened.instant();
            slab.extend(written(&seen.body.slab).map(|t| (at, t, seen.entry.id)));
            air.extend(written(&seen.body.air).map(|t| (at, t, seen.entry.id)));
        }
        for seen in self.slab.all::<AirReading>().filter(|s| self.slab.touches(s.entry, zone)) {
            let at = seen.entry.happened.instant();
            slab.extend(written(&seen.body.slab).map(|t| (at, t, seen.entry.id)));
            air.extend(written(&seen.body.air).map(|t| (at, t, seen.entry.id)));
        }
        for seen in self.slab.all::<AirSeries>().filter(|s| self.slab.touches(s.entry, zone)) {
            for sample in &seen.body.series.samples {
                slab.extend(sample.slab.map(|t| (sample.at, t, seen.entry.id)));
                air.extend(sample.air.map(|t| (sample.at, t, seen.entry.id)));
            }
        }
        let mut readings = if slab.len() >= 2 { slab } else { air };
        readings.retain(|(at, ..)| *at >= poured && *at <= self.at);
        readings.sort_by_key(|(at, ..)| *at);
        readings.dedup_by_key(|(at, ..)| *at);
        if readings.len() < 2 {
            return None;
        }
        let log: Vec<TemperatureReading> = readings
            .iter()
            .map(|(at, temperature, _)| TemperatureReading { at: between(poured, *at), temperature: *temperature })
            .collect();
        let rule = GapRule {
            longest: self.figures.value("temperature-silence-bridged"),
            margin: self.figures.value::<TemperatureDifference>("temperature-gap-margin"),
        };
        let log = TemperatureLog::new(&log, Between::StraightLine, rule).ok()?;
        let age = |activation: &str| {
            let activation = Activation::kelvins(self.figures.number(activation)).ok()?;
            let law = ArrheniusAge { activation, ..ArrheniusAge::default() };
            equivalent_age(log, Duration::ZERO, between(poured, self.at), &law).ok()
        };
        // The range of activation and the gaps widen each other: the ends of all are told.
        let (one, other) = (age("cure-activation-low")?, age("cure-activation-high")?);
        let (low, high) = (one.low.min(other.low), one.high.max(other.high));
        let mut evidence: Vec<EntryId> = readings.iter().map(|(_, _, id)| *id).collect();
        evidence.dedup();
        Some(CureAge { age: (low, high), gaps: !one.gaps.is_empty(), evidence })
    }
}
