//! Of which concrete and finish a zone is: what was placed and finished on all of it, and the parts that differ.

use super::same;
use slab_diary::body::{EntryBody, Finish, Pour};
use slab_diary::{EntryOf, Slab, Zone};

/// The last entry of a kind that took in all of the zone, else the last that touches it.
fn of_all<'d, T: EntryBody + 'd>(slab: &Slab<'d>, zone: &Zone, says: impl Fn(&T) -> bool) -> Option<EntryOf<'d, T>> {
    let here = || slab.all::<T>().filter(|s| slab.touches(s.entry, zone) && says(s.body));
    here().rev().find(|s| slab.covers(s.entry, zone)).or_else(|| here().next_back())
}

/// The finish of a zone.
pub(crate) fn finish_of<'d>(slab: &Slab<'d>, zone: &Zone) -> Option<EntryOf<'d, Finish>> {
    of_all(slab, zone, |_| true)
}

/// The mix of a zone, as on the ticket.
pub(crate) fn mix_of<'d>(slab: &Slab<'d>, zone: &Zone) -> Option<&'d str> {
    of_all::<Pour>(slab, zone, |pour| pour.mix.is_some()).and_then(|pour| pour.body.mix.as_deref())
}

/// Parts of a zone that are of another mix or finish than the rest: what they are, and the entry that says so.
pub(crate) fn other_parts<'d>(slab: &Slab<'d>, zone: &Zone) -> Vec<(&'d str, slab_diary::EntryId)> {
    let part = |entry| slab.touches(entry, zone) && !slab.covers(entry, zone);
    let (mix, finish) = (mix_of(slab, zone), finish_of(slab, zone).map(|f| f.body.finish.as_str()));
    let pours = slab.all::<Pour>().filter(|s| part(s.entry)).filter_map(|s| Some((s.body.mix.as_deref()?, s.entry.id)));
    let finishes = slab.all::<Finish>().filter(|s| part(s.entry)).map(|s| (s.body.finish.as_str(), s.entry.id));
    let differs = |found: &str, whole: Option<&str>| whole.is_some_and(|whole| !same(found, whole));
    let pours = pours.filter(|(found, _)| differs(found, mix));
    pours.chain(finishes.filter(|(found, _)| differs(found, finish))).collect()
}
