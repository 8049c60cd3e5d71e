//! Readings of humidity in the slab: which are weighed, and why the others are not.

use jiff::Timestamp;
use units::{AsWritten, Duration, Length, RelativeHumidity};

use super::WhyLeftOut;
use super::past::Past;
use crate::standing::between;
use slab_diary::EntryId;
use slab_diary::body::SlabHumidity;
use slab_diary::{EntryOf, Slab};

/// A reading that is weighed.
#[derive(Debug, Clone, PartialEq)]
pub struct SlabReading {
    /// The entry.
    pub entry: EntryId,
    /// When it was read.
    pub at: Timestamp,
    /// The same since placing.
    pub day: Duration,
    /// Depth of the probe.
    pub depth: Length,
    /// What it read.
    pub humidity: RelativeHumidity,
    /// The zones it was read in; none when nobody noted where.
    pub zones: Vec<String>,
}

/// A reading that is not weighed.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOut {
    /// The entry.
    pub entry: EntryId,
    /// When it was read.
    pub at: Timestamp,
    /// What it read.
    pub humidity: RelativeHumidity,
    /// The zones it was read in; none when nobody noted where.
    pub zones: Vec<String>,
    /// Why not.
    pub why: WhyLeftOut,
}

/// All readings of the slab, in the order they were taken. `rest`: how long a hole must stand closed.
pub(super) fn readings(slab: &Slab<'_>, past: &Past, rest: Duration) -> (Vec<SlabReading>, Vec<LeftOut>) {
    let (mut weighed, mut left_out) = (Vec::new(), Vec::new());
    for seen in slab.all::<SlabHumidity>() {
        let (entry, at) = (seen.entry.id, seen.entry.happened.instant());
        let humidity = seen.body.humidity.value();
        let zones = zones_of(slab, seen);
        match depth(seen, &zones, past, rest) {
            Ok(depth) => {
                weighed.push(SlabReading { entry, at, day: between(past.poured, at), depth, humidity, zones });
            }
            Err(why) => left_out.push(LeftOut { entry, at, humidity, zones, why }),
        }
    }
    (weighed, left_out)
}

/// An entry without a place does not say which zone it speaks of.
fn zones_of(slab: &Slab<'_>, seen: EntryOf<'_, SlabHumidity>) -> Vec<String> {
    slab.zones().iter().filter(|z| slab.speaks_for(seen.entry, z)).map(|z| z.name.clone()).collect()
}

fn depth(seen: EntryOf<'_, SlabHumidity>, zones: &[String], past: &Past, rest: Duration) -> Result<Length, WhyLeftOut> {
    let at = seen.entry.happened.instant();
    if at <= past.poured {
        return Err(WhyLeftOut::BeforePour);
    }
    if !zones.is_empty() && zones.iter().all(|zone| !past.zones.contains(zone)) {
        return Err(WhyLeftOut::OtherPour);
    }
    if at < past.drying_from {
        return Err(WhyLeftOut::UnderWetCure);
    }
    let depth = seen.body.depth.as_ref().map(AsWritten::value).ok_or(WhyLeftOut::NoDepth)?;
    if depth > past.thickness {
        return Err(WhyLeftOut::DeeperThanSlab);
    }
    if seen.body.equilibrated.as_ref().is_none_or(|stood| stood.value() < rest) {
        return Err(WhyLeftOut::NotEquilibrated { needed: rest });
    }
    Ok(depth)
}
