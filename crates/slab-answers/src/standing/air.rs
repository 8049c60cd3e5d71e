//! Is the air fit for work on the day? Only a reading of the hour says so.

use jiff::Timestamp;
use science::air::dew_point;
use units::{Duration, RelativeHumidity, Speed, Temperature, TemperatureDifference};

use super::finding::{Finding, Value};
use super::temperature::between;
use super::{Action, Code, Judge};
use slab_diary::EntryId;
use slab_diary::body::{AirReading, AirSeries, CoatLaid, Exposure, SealerCoat, Temperature as TemperatureBody};

/// The newest reading of each kind that is still fresh.
#[derive(Default)]
struct Fresh {
    air: Option<(Timestamp, Temperature, EntryId)>,
    humidity: Option<(Timestamp, RelativeHumidity, EntryId)>,
    slab: Option<(Timestamp, Temperature, EntryId)>,
    rain: Option<(Timestamp, bool, EntryId)>,
    wind: Option<(Timestamp, Speed, EntryId)>,
}

fn newer<T>(slot: &mut Option<(Timestamp, T, EntryId)>, at: Timestamp, value: Option<T>, id: EntryId) {
    if let Some(value) = value
        && slot.as_ref().is_none_or(|(known, ..)| *known <= at)
    {
        *slot = Some((at, value, id));
    }
}

impl Judge<'_> {
    pub(super) fn air(&self) -> Finding {
        let fresh = self.fresh();
        let evidence: Vec<EntryId> = [
            fresh.air.map(|x| x.2),
            fresh.humidity.map(|x| x.2),
            fresh.slab.map(|x| x.2),
            fresh.rain.map(|x| x.2),
            fresh.wind.map(|x| x.2),
        ]
        .into_iter()
        .flatten()
        .collect();
        let exterior = self.slab.exposure() == Exposure::Exterior;
        let mut findings = Vec::new();
        if evidence.is_empty() {
            findings.push(Finding::unproven(Code::NoFreshAirReading, Action::ReadAir));
        } else {
            findings.push(self.surface_temperature(fresh.slab.map(|x| x.1)));
            findings.push(self.humidity_and_dew_point(&fresh));
            if exterior && fresh.rain.is_some_and(|x| x.1) {
                findings.push(Finding::held(Code::Rain, Action::WaitForAir));
            }
            if exterior {
                findings.extend(fresh.wind.and_then(|x| self.wind(x.1)));
            }
        }
        Finding::worst(findings)
            .unwrap_or_else(|| Finding::unproven(Code::NoFreshAirReading, Action::ReadAir))
            .because(evidence)
    }

    fn fresh(&self) -> Fresh {
        let keeps: Duration = self.figures.value("air-reading-keeps");
        let counts = |at: Timestamp| at <= self.at && between(at, self.at) <= keeps;
        let mut fresh = Fresh::default();
        for seen in self.slab.all::<AirReading>().filter(|s| counts(s.entry.happened.instant())) {
            let (at, id) = (seen.entry.happened.instant(), seen.entry.id);
            newer(&mut fresh.air, at, seen.body.air.as_ref().map(units::AsWritten::value), id);
            newer(&mut fresh.humidity, at, seen.body.humidity.as_ref().map(units::AsWritten::value), id);
            newer(&mut fresh.slab, at, seen.body.slab.as_ref().map(units::AsWritten::value), id);
            newer(&mut fresh.rain, at, seen.body.rain, id);
            newer(&mut fresh.wind, at, seen.body.wind.as_ref().map(units::AsWritten::value), id);
        }
        for seen in self.slab.all::<TemperatureBody>().filter(|s| counts(s.entry.happened.instant())) {
            let (at, id) = (seen.entry.happened.instant(), seen.entry.id);
            newer(&mut fresh.air, at, seen.body.air.as_ref().map(units::AsWritten::value), id);
            newer(&mut fresh.slab, at, seen.body.slab.as_ref().map(units::AsWritten::value), id);
        }
        // A typical weather year tells of no day in particular.
        for seen in self.slab.all::<AirSeries>().filter(|s| !s.body.series.typical_year) {
            for sample in seen.body.series.samples.iter().filter(|s| counts(s.at)) {
                newer(&mut fresh.air, sample.at, sample.air, seen.entry.id);
                newer(&mut fresh.humidity, sample.at, sample.humidity, seen.entry.id);
                newer(&mut fresh.slab, sample.at, sample.slab, seen.entry.id);
            }
        }
        fresh
    }

    /// Outdoors wind carries spray onto what must not be stained, and dries the stain while it works.
    fn wind(&self, wind: Speed) -> Option<Finding> {
        let (spray, stain): (Speed, Speed) = (self.figures.value("wind-spraying"), self.figures.value("wind-stain"));
        let told = |f: Finding, limit| f.with("wind", Value::Speed(wind)).with("limit", Value::Speed(limit));
        if wind > stain {
            Some(told(Finding::held(Code::WindTooStrong, Action::WaitForAir), stain))
        } else if wind > spray {
            Some(told(Finding::released(Code::WindNoSpraying), spray))
        } else {
            None
        }
    }

    /// Whether the work is at hand: stain was laid today, or the air was read for it within its hours.
    pub(super) fn work_is_on(&self) -> bool {
        let today = self.slab.all::<CoatLaid>().any(|s| s.entry.happened.date() == self.today)
            || self.slab.all::<SealerCoat>().any(|s| s.entry.happened.date() == self.today);
        let keeps: Duration = self.figures.value("air-reading-keeps");
        let read = self.slab.all::<AirReading>().any(|s| between(s.entry.happened.instant(), self.at) <= keeps);
        today || read
    }

    fn surface_temperature(&self, surface: Option<Temperature>) -> Finding {
        let Some(surface) = surface else {
            return Finding::unproven(Code::NoSurfaceTemperature, Action::ReadAir);
        };
        let (stop_low, stop_high) = self.figures.range::<Temperature>("air-window-temperature");
        let (low, high) = self.figures.range::<Temperature>("stain-surface-temperature");
        let told = |f: Finding| f.with("surface", Value::Temperature(surface));
        if surface < stop_low {
            told(Finding::held(Code::SurfaceTooCold, Action::WaitForAir)).with("limit", Value::Temperature(stop_low))
        } else if surface > stop_high {
            told(Finding::held(Code::SurfaceTooHot, Action::WaitForAir)).with("limit", Value::Temperature(stop_high))
        } else if surface < low || surface > high {
            told(Finding::cant_tell(Code::SurfaceMarginal, Action::WaitForAir))
                .with("low", Value::Temperature(low))
                .with("high", Value::Temperature(high))
        } else {
            told(Finding::released(Code::SurfaceFit))
        }
    }

    fn humidity_and_dew_point(&self, fresh: &Fresh) -> Finding {
        let (Some((_, air, _)), Some((_, humidity, _))) = (fresh.air, fresh.humidity) else {
            return Finding::unproven(Code::NoHumidityReading, Action::ReadAir);
        };
        let most: RelativeHumidity = self.figures.value("seal-humidity");
        if humidity > most {
            return Finding::held(Code::AirTooHumid, Action::WaitForAir)
                .with("humidity", Value::Humidity(humidity))
                .with("limit", Value::Humidity(most));
        }
        let Some((_, surface, _)) = fresh.slab else {
            return Finding::unproven(Code::NoSurfaceTemperature, Action::ReadAir);
        };
        // Bone-dry air has no dew point to come near to.
        let Ok(dew) = dew_point(air, humidity) else {
            return Finding::released(Code::AboveDewPoint);
        };
        let spread = surface - dew;
        let wanted: TemperatureDifference = self.figures.value("dew-point-spread");
        let stop: TemperatureDifference = self.figures.value("dew-point-spread-stop");
        let told = |f: Finding| {
            f.with("spread", Value::Difference(spread))
                .with("dew_point", Value::Temperature(dew))
                .with("wanted", Value::Difference(wanted))
        };
        if spread < stop {
            told(Finding::held(Code::NearDewPoint, Action::WaitForAir))
        } else if spread < wanted {
            told(Finding::cant_tell(Code::DewPointMarginal, Action::WaitForAir))
        } else {
            told(Finding::released(Code::AboveDewPoint))
        }
    }
}
