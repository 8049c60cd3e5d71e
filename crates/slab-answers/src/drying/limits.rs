//! The humidity the chosen sealers ask for, as the moisture hold point judges it.

use units::RelativeHumidity;

use super::Assumption;
use crate::standing::Judge;
use slab_diary::EntryId;
use slab_diary::body::SealerChosen;
use slab_diary::{Figures, Slab};

/// A humidity in the slab that a sealer asks for.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// At most this.
    pub humidity: RelativeHumidity,
    /// How it is meant.
    pub bound: LimitBound,
    /// Whose it is.
    pub from: LimitFrom,
    /// The zones it holds for; none when it holds for the whole slab.
    pub zones: Vec<String>,
}

/// How a limit is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LimitBound {
    /// Fine at this or less without asking.
    Plain,
    /// Fine only where the maker's sheet says so.
    MakerMustSay,
}

/// Whose limit it is.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum LimitFrom {
    /// The maker's, as noted with the choice of sealer.
    Maker {
        /// Class of sealer, by its id in the trade facts.
        sealer: String,
        /// The entry.
        entry: EntryId,
    },
    /// The default of the chosen class of sealer.
    Class {
        /// Class of sealer, by its id in the trade facts.
        sealer: String,
        /// The entry.
        entry: EntryId,
    },
    /// The default for breathing sealers, since none is chosen.
    NoSealerBreathing,
    /// The default for tight films, since none is chosen.
    NoSealerFilm,
}

/// The limits of all zones, the one reached first in front, with the entries behind them.
pub(super) fn limits(
    slab: &Slab<'_>,
    figures: &Figures<'_>,
    judge: &Judge<'_>,
) -> (Vec<Limit>, Option<Assumption>, Vec<EntryId>) {
    let mut found: Vec<Limit> = Vec::new();
    let mut evidence = Vec::new();
    let mut assumed = None;
    for zone in slab.zones() {
        let mut add = |humidity, bound, from: LimitFrom| {
            let same = found.iter_mut().find(|l| l.humidity == humidity && l.bound == bound && l.from == from);
            match same {
                Some(limit) => limit.zones.push(zone.name.clone()),
                None => found.push(Limit { humidity, bound, from, zones: vec![zone.name.clone()] }),
            }
        };
        let Some(chosen) = slab.all::<SealerChosen>().rfind(|s| slab.touches(s.entry, zone)) else {
            assumed = Some(Assumption::NoSealerChosen);
            add(figures.value("humidity-breathing"), LimitBound::Plain, LimitFrom::NoSealerBreathing);
            add(figures.value("humidity-film"), LimitBound::Plain, LimitFrom::NoSealerFilm);
            continue;
        };
        evidence.push(chosen.entry.id);
        let asked = judge.asked(chosen.body);
        let (sealer, entry) = (chosen.body.sealer.clone(), chosen.entry.id);
        let from = match chosen.body.humidity_limit {
            Some(_) => LimitFrom::Maker { sealer, entry },
            None => LimitFrom::Class { sealer, entry },
        };
        if let Some(humidity) = asked.humidity {
            add(humidity, LimitBound::Plain, from.clone());
        }
        if let Some(upper) = asked.humidity_upper.filter(|upper| Some(*upper) != asked.humidity) {
            add(upper, LimitBound::MakerMustSay, from);
        }
    }
    for limit in &mut found {
        if limit.zones.len() == slab.zones().len() {
            limit.zones.clear();
        }
    }
    found.sort_by(|a, b| b.humidity.as_percent().total_cmp(&a.humidity.as_percent()));
    (found, assumed, evidence)
}
