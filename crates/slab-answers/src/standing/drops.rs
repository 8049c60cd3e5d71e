//! Water drops, blades, rags and acid drops on one zone, as the trade reads them.
//!
//! A test speaks for the surface it was made on: until that was changed there, for a month at most while others
//! work on the slab, and until the same place was tried again.

use units::{Duration, Length};

use super::Judge;
use slab_diary::body::{AcidDrop, Fizz, Scrape, ScrapeResult, SolventWipe, WaterDrop, WipeResult};
use slab_diary::{Entry, EntryId};
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
    /// The drops that count: the last at each place, no older than tests keep.
    pub(super) drops: Vec<Drop<'d>>,
    /// Every drop on the surface as it is: how it drinks does not lapse, and repeats tell how sure one drop is.
    pub(super) surface: Vec<Drop<'d>>,
    pub(super) scrapes: Vec<EntryOf<'d, Scrape>>,
    pub(super) wipes: Vec<EntryOf<'d, SolventWipe>>,
    pub(super) acid: Vec<EntryOf<'d, AcidDrop>>,
    /// Tests made before the surface was changed.
    pub(super) outdated: Vec<EntryId>,
    /// Tests that are too old, with nothing known to have happened since.
    pub(super) lapsed: Vec<EntryId>,
    /// Tests that name no place on a divided slab.
    pub(super) unplaced: Vec<EntryId>,
}

/// Whether what the blade lifted is a film.
fn is_film(result: ScrapeResult) -> bool {
    matches!(result, ScrapeResult::Curl | ScrapeResult::Flake | ScrapeResult::Tacky)
}

impl Tried<'_> {
    pub(super) fn nothing(&self) -> bool {
        self.drops.is_empty() && self.scrapes.is_empty() && self.wipes.is_empty()
    }

    /// The blade or the rag found a film.
    pub(super) fn film(&self) -> bool {
        self.curl() || self.wipes.iter().any(|s| s.body.result == WipeResult::StickyOrYellow)
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

    /// The blade lifted a film. Where it did there is one, whatever the water does.
    pub(super) fn curl(&self) -> bool {
        self.scrapes.iter().any(|s| is_film(s.body.result))
    }

    /// The rag came up clean, and none came up otherwise.
    pub(super) fn clean_rag(&self) -> bool {
        !self.wipes.is_empty() && self.wipes.iter().all(|s| s.body.result == WipeResult::Clean)
    }

    /// The weakest answer of the acid drops.
    pub(super) fn fizz(&self) -> Option<Fizz> {
        let said = |fizz| self.acid.iter().any(|s| s.body.fizz == fizz);
        [Fizz::None, Fizz::Weak, Fizz::Strong].into_iter().find(|fizz| said(*fizz))
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
        let mut counting = Counting::new(self, zone);
        let timed = self.slab.all::<WaterDrop>().filter(|s| s.body.of.is_none());
        let surface: Vec<Drop<'a>> = timed
            .filter_map(|seen| self.drink(seen.body).map(|(drink, time)| Drop { seen, drink, time }))
            .filter(|drop| counting.speaks_now(drop.seen.entry))
            .collect();
        let kept = surface.iter().copied().filter(|drop| counting.keeps(drop.seen.entry)).collect();
        let drops = self.last_at_each_place(kept, |drop: &Drop<'a>| drop.seen.entry);
        // A film that a blade lifted is not lifted away by a later scrape.
        let scrapes = self.slab.all::<Scrape>().filter(|s| s.body.of.is_none());
        let (films, others): (Vec<_>, Vec<_>) =
            scrapes.filter(|s| counting.film_stays(s.entry, s.body.result)).partition(|s| is_film(s.body.result));
        let scrapes = films.into_iter().chain(self.last_at_each_place(others, |s| s.entry)).collect();
        let wipes = self.slab.all::<SolventWipe>().filter(|s| counting.counts(s.entry)).collect();
        let wipes = self.last_at_each_place(wipes, |s| s.entry);
        // What did not react does not begin to by waiting.
        let acid = self.slab.all::<AcidDrop>().filter(|s| {
            if s.body.fizz == Fizz::None { counting.speaks_now(s.entry) } else { counting.counts(s.entry) }
        });
        let acid: Vec<_> = acid.collect();
        let acid = self.last_at_each_place(acid, |s| s.entry);
        let Counting { outdated, lapsed, unplaced, .. } = counting;
        Tried { drops, surface, scrapes, wipes, acid, outdated, lapsed, unplaced }
    }

    /// The tests whose place was not tried again later: within the reach of one place, or, where neither names its
    /// point, on a later day. `tests` are in order.
    pub(super) fn last_at_each_place<T>(&self, tests: Vec<T>, entry: impl Fn(&T) -> &Entry) -> Vec<T> {
        let near = self.one_place();
        let again = |test: &Entry, later: &Entry| match (self.slab.point_of(test), self.slab.point_of(later)) {
            (Some(a), Some(b)) => a.distance(b) <= near,
            // The same patch again, and a drop of a later day in the same zone.
            (None, None) if test.place.as_ref().is_some_and(|place| place.polygon.is_some()) => {
                test.place == later.place
            }
            (None, None) => {
                let zone = |e: &Entry| e.place.as_ref().and_then(|place| place.zone.clone());
                zone(test) == zone(later) && later.happened.date() > test.happened.date()
            }
            _ => false,
        };
        let last: Vec<bool> = (0..tests.len())
            .map(|i| !tests[i + 1..].iter().any(|later| again(entry(&tests[i]), entry(later))))
            .collect();
        tests.into_iter().zip(last).filter_map(|(test, last)| last.then_some(test)).collect()
    }

    /// Tests this near to each other are one place. A hair is added, for points that were noted in feet and inches.
    pub(super) fn one_place(&self) -> Length {
        self.figures.value::<Length>("one-place") + Length::meters(1e-6)
    }

    /// Drops needed in a zone: the trade's three, and more on a large one.
    pub(super) fn drops_needed(&self, zone: &Zone) -> u32 {
        let least = self.figures.number("drops-per-zone") as u32;
        zone.area.map_or(least, |area| {
            least.max(self.figures.tests_for(area, "porous-tests-first", Some("porous-tests-further")))
        })
    }
}

/// Which tests of a zone count, and why the others do not.
struct Counting<'j, 'a> {
    judge: &'j Judge<'a>,
    zone: &'j Zone,
    changes: Vec<&'a Entry>,
    /// Those of them that take a film off.
    removals: Vec<&'a Entry>,
    outdated: Vec<EntryId>,
    lapsed: Vec<EntryId>,
    unplaced: Vec<EntryId>,
}

impl<'j, 'a> Counting<'j, 'a> {
    fn new(judge: &'j Judge<'a>, zone: &'j Zone) -> Self {
        let (changes, removals) = (judge.surface_changes(zone), judge.film_removals(zone));
        Self { judge, zone, changes, removals, outdated: Vec::new(), lapsed: Vec::new(), unplaced: Vec::new() }
    }

    fn counts(&mut self, entry: &Entry) -> bool {
        self.speaks_now(entry) && self.keeps(entry)
    }

    fn keeps(&mut self, entry: &Entry) -> bool {
        let keeps = self.judge.keeps(entry, "surface-tests-keep");
        if !keeps {
            self.lapsed.push(entry.id);
        }
        keeps
    }

    fn speaks_now(&mut self, entry: &Entry) -> bool {
        self.speaks(entry, &self.changes.clone())
    }

    /// A film that a blade lifted does not go away by itself: it stays until something took it off.
    fn film_stays(&mut self, entry: &Entry, result: ScrapeResult) -> bool {
        if is_film(result) { self.speaks(entry, &self.removals.clone()) } else { self.counts(entry) }
    }

    fn speaks(&mut self, entry: &Entry, changes: &[&Entry]) -> bool {
        let slab = self.judge.slab;
        if entry.place.is_none() && slab.zones().len() > 1 {
            self.unplaced.push(entry.id);
            return false;
        }
        if !slab.speaks_for(entry, self.zone) {
            return false;
        }
        let near = self.judge.one_place();
        // What happened at one spot leaves a test standing that was made somewhere in the zone.
        let somewhere = slab.point_of(entry).is_none();
        let changed = changes.iter().any(|change| {
            let at_a_spot = change.place.as_ref().is_some_and(|place| place.zone.is_none());
            change.happened > entry.happened && slab.reaches(change, entry, near) && !(somewhere && at_a_spot)
        });
        if changed {
            self.outdated.push(entry.id);
        }
        !changed
    }
}
