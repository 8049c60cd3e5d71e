//! What changed the surface since a test was made: a test speaks only for the surface it was made on.

use jiff::Timestamp;

use super::Judge;
use slab_diary::Entry;
use slab_diary::body::{Cleaning, CleaningMethod, CoatLaid, Cured, Curing, CuringMethod, Incident, SealerCoat};
use slab_diary::{EntryOf, Zone};

/// Removes a film: chemical stripping, grinding, blasting. Screening only takes off laitance.
pub(super) fn takes_off_film(method: CleaningMethod) -> bool {
    matches!(method, CleaningMethod::Stripper | CleaningMethod::Grind | CleaningMethod::Blast)
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
            .filter(|s| s.body.what == "membrane-compound" && self.slab.touches(s.entry, zone))
            .map(|s| s.entry);
        curing.chain(incident).max_by_key(|e| e.order())
    }

    /// The last whole-zone removal of a film.
    pub(super) fn film_removed(&self, zone: &Zone) -> Option<&'a Entry> {
        self.cleanings(zone).filter(|s| takes_off_film(s.body.method)).map(|s| s.entry).max_by_key(|e| e.order())
    }

    /// The last time the zone's surface was opened: screened, ground, blasted, acid-washed.
    pub(super) fn surface_opened(&self, zone: &Zone) -> Option<&'a Entry> {
        self.cleanings(zone)
            .filter(|s| changes_pores(s.body.method) && s.body.method != CleaningMethod::Stripper)
            .map(|s| s.entry)
            .max_by_key(|e| e.order())
    }

    /// Since when drops and scrapes speak for the zone's surface as it is.
    pub(super) fn surface_since(&self, zone: &Zone) -> Option<Timestamp> {
        let cleaned = self.cleanings(zone).filter(|s| changes_pores(s.body.method)).map(|s| s.entry.happened.instant());
        let filmed = self.film_laid(zone).map(|e| e.happened.instant());
        let sealed = self
            .slab
            .all::<SealerCoat>()
            .filter(|s| self.slab.touches(s.entry, zone))
            .map(|s| s.entry.happened.instant());
        cleaned.chain(filmed).chain(sealed).max()
    }

    /// The last thing that moved the zone's surface pH before any stain.
    pub(super) fn ph_moved(&self, zone: &Zone) -> Option<&'a Entry> {
        let cleaned = self.cleanings(zone).filter(|s| moves_ph(s.body.method)).map(|s| s.entry);
        let spilled = self
            .slab
            .all::<Incident>()
            .filter(|s| s.body.what == "acid-or-bleach" && self.slab.touches(s.entry, zone))
            .map(|s| s.entry);
        cleaned.chain(spilled).max_by_key(|e| e.order())
    }

    /// The last coat of stain on the zone.
    pub(super) fn stained(&self, zone: &Zone) -> Option<EntryOf<'a, CoatLaid>> {
        self.slab.all::<CoatLaid>().rfind(|s| self.slab.touches(s.entry, zone))
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
