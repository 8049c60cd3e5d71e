//! Which choice of the client is in force where.

use super::{panel, same, stands_for};
use slab_diary::body::{ChoiceApproved, ChoiceWithdrawn};
use slab_diary::{EntryOf, Slab, Zone};

/// The client's choice for a zone.
#[derive(Debug, Clone, Copy)]
pub struct Choice<'d> {
    /// The approval.
    pub approved: EntryOf<'d, ChoiceApproved>,
    /// Its panel stands for the zone's concrete and finish, as far as they are noted.
    pub stands: bool,
    /// The entry that took it back, when one did.
    pub withdrawn: Option<EntryOf<'d, ChoiceWithdrawn>>,
}

/// The choice in force for a zone: the last approval of a panel that stands for its concrete and finish, or the
/// last of all where none does. One that was taken back stays the last word, so that an older one does not come
/// to life again.
#[must_use]
pub fn choice_in_force<'d>(slab: &Slab<'d>, zone: &Zone) -> Option<Choice<'d>> {
    let here = || slab.all::<ChoiceApproved>().filter(|seen| slab.touches(seen.entry, zone));
    let fits = |seen: &EntryOf<'d, ChoiceApproved>| {
        stands_for(slab, &panel(slab, seen.body.panel.as_str())).contains(&zone.name)
    };
    let fitting = here().rev().find(fits);
    let approved = fitting.or_else(|| here().next_back())?;
    let withdrawn = slab.all::<ChoiceWithdrawn>().rfind(|seen| {
        same(&seen.body.panel, &approved.body.panel)
            && slab.touches(seen.entry, zone)
            && seen.entry.order() > approved.entry.order()
    });
    Some(Choice { approved, stands: fitting.is_some(), withdrawn })
}
