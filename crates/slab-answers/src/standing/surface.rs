//! What changed the surface since a test was made: a test speaks only for the surface it was made on.

use super::Judge;
use slab_diary::Entry;
use slab_diary::body::{
    Cleaning, CleaningMethod, CoatLaid, Cured, Curing, CuringMethod, Incident, Neutralized, Pour, Rinsed, SealerCoat,
};
use slab_diary::{EntryOf, Zone};
use trade_facts::Blocks;

/// Removes a film: chemical stripping, grinding, blasting. Screening only takes off laitance.
pub(super) fn takes_off_film(method: CleaningMethod) -> bool {
    matches!(method, CleaningMethod::Stripper | CleaningMethod::Grind | CleaningMethod::Blast)
}

/// Opens a closed surface: screening, grinding, blasting, an acid wash.
pub(super) fn opens(method: CleaningMethod) -> bool {
    changes_pores(method) && method != CleaningMethod::Stripper
}

/// Opens or changes the pores, so that older drops and scrapes no longer count.
fn changes_pores(method: CleaningMethod) -> bool {
    takes_off_film(method) || matches!(method, CleaningMethod::Screen | CleaningMethod::Acid)
}

/// Moves the surface pH.
fn moves_ph(method: CleaningMethod) -> bool {
    matches!(
        method,
        CleaningMethod::Acid | CleaningMethod::Stripper | CleaningMethod::AlkalineScrub | CleaningMethod::Degreaser
    ) || changes_pores(method)
}

/// The incident that is a film over the whole surface.
const MEMBRANE: &str = "membrane-compound";

impl<'a> Judge<'a> {
    /// Whole-zone cleanings; those for the spot of one incident don't change the zone.
    pub(super) fn cleanings<'s>(&'s self, zone: &'s Zone) -> impl Iterator<Item = EntryOf<'a, Cleaning>> + 's {
        self.slab.all::<Cleaning>().filter(move |s| s.body.of.is_none() && self.slab.touches(s.entry, zone))
    }

    /// The last moment at which a film came on to the zone: a membrane, or a coat of sealer.
    pub(super) fn film_laid(&self, zone: &Zone) -> Option<&'a Entry> {
        let curing = self
            .slab
            .all::<Curing>()
            .filter(|s| s.body.method == CuringMethod::Membrane && self.slab.touches(s.entry, zone))
            .map(|s| s.entry);
        let incident = self
            .slab
            .all::<Incident>()
            .filter(|s| s.body.what == MEMBRANE && self.slab.touches(s.entry, zone))
            .map(|s| s.entry);
        // Sealer on a floor without stain is a film like any other.
        let sealed = self.sealed(zone).filter(|_| self.stained(zone).next().is_none()).map(|s| s.entry);
        curing.chain(incident).chain(sealed).max_by_key(|e| e.order())
    }

    /// The last removal of a film that took in all of the zone, or as much as the film covered.
    pub(super) fn film_removed(&self, zone: &Zone, film: &Entry) -> Option<&'a Entry> {
        let as_far = |removed: &Entry| {
            let area = |entry| self.slab.area_within(entry, zone);
            let as_much = match (area(removed), area(film)) {
                (Some(removed), Some(film)) => removed >= film * 0.98,
                _ => false,
            };
            self.slab.covers(removed, zone) || removed.place == film.place || (!self.slab.covers(film, zone) && as_much)
        };
        self.cleanings(zone)
            .filter(|s| takes_off_film(s.body.method) && as_far(s.entry))
            .map(|s| s.entry)
            .max_by_key(|e| e.order())
    }

    /// The last time the zone's surface was opened: screened, ground, blasted, acid-washed.
    pub(super) fn surface_opened(&self, zone: &Zone) -> Option<&'a Entry> {
        self.cleanings(zone).filter(|s| opens(s.body.method)).map(|s| s.entry).max_by_key(|e| e.order())
    }

    /// Everything that changed the zone's surface, all of it or in places: what was tried there before says
    /// nothing of it any more.
    pub(super) fn surface_changes(&self, zone: &Zone) -> Vec<&'a Entry> {
        let here = |entry: &Entry| self.slab.touches(entry, zone);
        let cleaned = self.cleanings(zone).filter(|s| changes_pores(s.body.method)).map(|s| s.entry);
        let cured = self.slab.all::<Curing>().filter(|s| s.body.method == CuringMethod::Membrane).map(|s| s.entry);
        let sealed = self.slab.all::<SealerCoat>().map(|s| s.entry);
        // What happened to a spot changed it; what names no spot did only where it lies on the surface.
        let fell =
            self.slab.all::<Incident>().filter(|s| s.entry.place.is_some() || self.lies_on_top(s)).map(|s| s.entry);
        // What was tried before this concrete was placed was tried on other concrete.
        let poured = self.slab.all::<Pour>().map(|s| s.entry);
        cleaned.chain(cured.chain(sealed).chain(fell).chain(poured).filter(|e| here(e))).collect()
    }

    /// What takes a film off, all of the zone or in places.
    pub(super) fn film_removals(&self, zone: &Zone) -> Vec<&'a Entry> {
        self.cleanings(zone).filter(|s| takes_off_film(s.body.method)).map(|s| s.entry).collect()
    }

    /// Whether an incident left something on the surface that water or acid meets first.
    fn lies_on_top(&self, incident: &EntryOf<'_, Incident>) -> bool {
        let record = self.figures.trade().incident(&incident.body.what);
        incident.body.what == MEMBRANE || record.is_none_or(|r| matches!(r.blocks, Blocks::Film | Blocks::Residue))
    }

    /// Everything that moved the zone's surface pH before any stain, all of it or in places.
    pub(super) fn ph_moved(&self, zone: &Zone) -> Vec<&'a Entry> {
        let cleaned = self.cleanings(zone).filter(|s| moves_ph(s.body.method)).map(|s| s.entry);
        let spilled = self
            .slab
            .all::<Incident>()
            .filter(|s| s.body.what == "acid-or-bleach" && self.slab.touches(s.entry, zone))
            .map(|s| s.entry);
        let poured = self.slab.all::<Pour>().filter(|s| self.slab.touches(s.entry, zone)).map(|s| s.entry);
        cleaned.chain(spilled).chain(poured).collect()
    }

    /// The coats of stain on the zone, in order. A floor that was ground or blasted all over since is bare again.
    pub(super) fn stained<'s>(&'s self, zone: &'s Zone) -> impl DoubleEndedIterator<Item = EntryOf<'a, CoatLaid>> + 's {
        let bare = self.made_bare(zone);
        self.slab.all::<CoatLaid>().filter(move |s| self.lies_on(s.entry, zone, bare))
    }

    /// The coats of sealer on the zone, in order; none that was ground off since.
    pub(super) fn sealed<'s>(
        &'s self,
        zone: &'s Zone,
    ) -> impl DoubleEndedIterator<Item = EntryOf<'a, SealerCoat>> + 's {
        let bare = self.made_bare(zone);
        self.slab.all::<SealerCoat>().filter(move |s| self.lies_on(s.entry, zone, bare))
    }

    /// Stain lies on a part of the zone only: its bare part is still asked what a bare slab is asked.
    pub(super) fn partly_stained(&self, zone: &Zone) -> bool {
        self.stained(zone).next().is_some() && !self.slab.cover_together(self.stained(zone).map(|s| s.entry), zone)
    }

    /// The last time the zone was neutralized since a moment, as far as stain lies on it.
    pub(super) fn neutralized(&self, zone: &Zone, since: &Entry) -> Option<&'a Entry> {
        let done = self.slab.all::<Neutralized>().map(|s| s.entry);
        self.as_far_as_the_stain(done.filter(|e| e.happened >= since.happened).collect(), zone)
    }

    /// The last time it was rinsed, likewise.
    pub(super) fn rinsed(&self, zone: &Zone, since: &Entry) -> Option<EntryOf<'a, Rinsed>> {
        let done: Vec<_> = self.slab.all::<Rinsed>().filter(|s| s.entry.happened >= since.happened).collect();
        let last = self.as_far_as_the_stain(done.iter().map(|s| s.entry).collect(), zone)?;
        done.into_iter().find(|s| s.entry.id == last.id)
    }

    fn as_far_as_the_stain(&self, done: Vec<&'a Entry>, zone: &Zone) -> Option<&'a Entry> {
        let here: Vec<&Entry> = done.into_iter().filter(|e| self.slab.touches(e, zone)).collect();
        let reached = |coat: &Entry| here.iter().any(|e| e.place == coat.place || self.slab.covers(e, zone));
        let all = self.slab.cover_together(here.iter().copied(), zone) || self.stained(zone).all(|s| reached(s.entry));
        here.last().copied().filter(|_| all)
    }

    fn lies_on(&self, coat: &Entry, zone: &Zone, bare: Option<&Entry>) -> bool {
        self.slab.touches(coat, zone) && bare.is_none_or(|bare| coat.happened > bare.happened)
    }

    /// The last grinding or blasting that took in all of the zone.
    fn made_bare(&self, zone: &Zone) -> Option<&'a Entry> {
        let ground = |method| matches!(method, CleaningMethod::Grind | CleaningMethod::Blast);
        let all = self.cleanings(zone).filter(|s| ground(s.body.method) && self.slab.covers(s.entry, zone));
        all.map(|s| s.entry).last()
    }

    /// When the zone began to dry: the end of its wet cure, or its pour when it was not cured wet.
    /// `None` in the pair while a wet cure has not ended.
    pub(crate) fn drying_since(&self, zone: &Zone) -> DryingStart<'a> {
        let curing = self.slab.all::<Curing>().rfind(|s| self.slab.touches(s.entry, zone));
        let Some(curing) = curing else { return DryingStart::Unknown };
        let wet = matches!(curing.body.method, CuringMethod::WetCovers | CuringMethod::Water | CuringMethod::Sheet);
        if !wet {
            return DryingStart::From(curing.entry);
        }
        self.slab
            .all::<Cured>()
            .find(|s| self.slab.touches(s.entry, zone) && s.entry.happened >= curing.entry.happened)
            .map_or(DryingStart::StillWet(curing.entry), |s| DryingStart::From(s.entry))
    }
}

/// When drying began.
pub(crate) enum DryingStart<'e> {
    /// From this entry on.
    From(&'e Entry),
    /// A wet cure was begun by this entry and no end of it is noted.
    StillWet(&'e Entry),
    /// No curing is noted.
    Unknown,
}
