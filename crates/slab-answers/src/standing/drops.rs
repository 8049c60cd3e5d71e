//! Water drops and blades on one zone, as the trade reads them.

use units::Duration;

use super::Judge;
use slab_diary::EntryId;
use slab_diary::body::{Scrape, ScrapeResult, SolventWipe, WaterDrop, WipeResult};
use slab_diary::{EntryOf, Zone};

/// How a drop behaved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Drink {
    /// Absorbed within the passing time.
    Soaks,
    /// Absorbed between the passing and the standing time.
    Slow,
    /// Still there at the standing time.
    Stands,
    /// It stood up as a bead.
    Beads,
}

/// One usable drop.
#[derive(Debug, Clone, Copy)]
pub(super) struct Drop<'d> {
    pub(super) seen: EntryOf<'d, WaterDrop>,
    pub(super) drink: Drink,
    /// Time to soak in; none when the end was not seen.
    pub(super) time: Option<Duration>,
}

/// Everything tried on a zone's surface as it is now.
pub(super) struct Tried<'d> {
    pub(super) drops: Vec<Drop<'d>>,
    pub(super) scrapes: Vec<EntryOf<'d, Scrape>>,
    pub(super) wipes: Vec<EntryOf<'d, SolventWipe>>,
    /// Tests made before the surface was changed.
    pub(super) outdated: Vec<EntryId>,
    /// Tests that name no place on a divided slab.
    pub(super) unplaced: Vec<EntryId>,
}

impl Tried<'_> {
    pub(super) fn nothing(&self) -> bool {
        self.drops.is_empty() && self.scrapes.is_empty() && self.wipes.is_empty()
    }

    /// The blade or the rag found a film.
    pub(super) fn film(&self) -> bool {
        self.scrapes
            .iter()
            .any(|s| matches!(s.body.result, ScrapeResult::Curl | ScrapeResult::Flake | ScrapeResult::Tacky))
            || self.wipes.iter().any(|s| s.body.result == WipeResult::StickyOrYellow)
    }

    /// The blade lifted bare powder.
    pub(super) fn powder(&self) -> bool {
        self.scrapes.iter().any(|s| s.body.result == ScrapeResult::Powder)
    }

    /// A blade or rag answer that is neither.
    pub(super) fn shine(&self) -> bool {
        self.scrapes.iter().any(|s| s.body.result == ScrapeResult::ShineChange)
            || self.wipes.iter().any(|s| s.body.result == WipeResult::ShineChange)
    }

    pub(super) fn any(&self, drink: Drink) -> bool {
        self.drops.iter().any(|d| d.drink == drink)
    }

    pub(super) fn water_is_stopped(&self) -> bool {
        self.drops.iter().any(|d| d.drink >= Drink::Stands)
    }

    pub(super) fn ids(&self) -> Vec<EntryId> {
        let drops = self.drops.iter().map(|d| d.seen.entry.id);
        drops.chain(self.scrapes.iter().map(|s| s.entry.id)).chain(self.wipes.iter().map(|s| s.entry.id)).collect()
    }
}

impl<'a> Judge<'a> {
    /// Reads a drop; `None` when the watching stopped before it could say anything.
    pub(super) fn drink(&self, drop: &WaterDrop) -> Option<(Drink, Option<Duration>)> {
        let passes: Duration = self.figures.value("drop-absorbed");
        let stands: Duration = self.figures.value("drop-stands");
        if drop.beads {
            return Some((Drink::Beads, None));
        }
        if let Some(time) = drop.soaked_in.as_ref().map(units::AsWritten::value) {
            let drink = if time <= passes {
                Drink::Soaks
            } else if time <= stands {
                Drink::Slow
            } else {
                Drink::Stands
            };
            return Some((drink, Some(time)));
        }
        let stood = drop.still_stood_after.as_ref().map(units::AsWritten::value)?;
        if stood >= stands {
            Some((Drink::Stands, None))
        } else if stood > passes {
            Some((Drink::Slow, None))
        } else {
            None
        }
    }

    /// Everything tried on the zone's surface. Tests on the spot of an incident are left to the
    /// contamination rules.
    pub(super) fn tried(&self, zone: &Zone) -> &Tried<'a> {
        let all = self.tried.get_or_init(|| self.slab.zones().iter().map(|z| self.try_out(z)).collect());
        let index = self.slab.zones().iter().position(|z| z.name == zone.name).unwrap_or(0);
        &all[index]
    }

    fn try_out(&self, zone: &Zone) -> Tried<'a> {
        let since = self.surface_since(zone);
        let mut tried = Tried {
            drops: Vec::new(),
            scrapes: Vec::new(),
            wipes: Vec::new(),
            outdated: Vec::new(),
            unplaced: Vec::new(),
        };
        let mut counts = |entry: &slab_diary::Entry| {
            if entry.place.is_none() && self.slab.zones().len() > 1 {
                tried.unplaced.push(entry.id);
                return false;
            }
            if !self.slab.speaks_for(entry, zone) {
                return false;
            }
            let current = since.is_none_or(|since| entry.happened.instant() >= since);
            if !current {
                tried.outdated.push(entry.id);
            }
            current
        };
        for seen in self.slab.all::<WaterDrop>().filter(|s| s.body.of.is_none()) {
            if counts(seen.entry)
                && let Some((drink, time)) = self.drink(seen.body)
            {
                tried.drops.push(Drop { seen, drink, time });
            }
        }
        for seen in self.slab.all::<Scrape>().filter(|s| s.body.of.is_none()) {
            if counts(seen.entry) {
                tried.scrapes.push(seen);
            }
        }
        for seen in self.slab.all::<SolventWipe>() {
            if counts(seen.entry) {
                tried.wipes.push(seen);
            }
        }
        tried
    }

    /// Drops needed in a zone: the trade's three, and more on a large one.
    pub(super) fn drops_needed(&self, zone: &Zone) -> u32 {
        let least = self.figures.number("drops-per-zone") as u32;
        zone.area.map_or(least, |area| {
            least.max(self.figures.tests_for(area, "porous-tests-first", Some("porous-tests-further")))
        })
    }
}
