//! Sample panels as the diary tells them, and the recipes that they allow.
//!
//! Why: a panel is the only honest way to show a client a color, and its color is a measurement for
//! the next one. A panel speaks only for its own concrete with its own finish, and a color only for
//! the state it was seen in: bare, stained and sealed are kept apart, and a photograph taken before
//! the panel was stained again no longer shows the panel.
//!
//! [`panels`] tells what is known of each panel; [`recipe_books`] makes a model of each set of panels
//! that belong together, and says of every panel that is not in it why not.

mod book;
mod choice;
mod concrete;

use jiff::Timestamp;
use science::color::Lab;

use slab_diary::EntryId;
use slab_diary::body::{ChoiceApproved, PanelMade, PanelPhotographed, PanelStained, PanelState};
use slab_diary::{EntryOf, Slab, Zone};

pub use book::{BareFrom, LeftOut, Measured, RecipeBook, recipe_books};
pub use choice::{Choice, choice_in_force};
pub(crate) use concrete::{finish_of, mix_of, other_parts};

/// What is known of one panel.
#[derive(Debug, Clone)]
pub struct Panel<'d> {
    /// Its name as first written.
    pub name: &'d str,
    /// How it was made, last told.
    pub made: Option<EntryOf<'d, PanelMade>>,
    /// How it was stained, last told: coats and mix of that entry are those of the panel as it is.
    pub stained: Option<EntryOf<'d, PanelStained>>,
    /// Its last photograph in each state, with what stands against using it.
    pub looks: Vec<PanelLook<'d>>,
    /// The client's approvals of it.
    pub approved: Vec<EntryOf<'d, ChoiceApproved>>,
}

/// A panel in one state.
#[derive(Debug, Clone, Copy)]
pub struct PanelLook<'d> {
    /// The entry that shows it.
    pub seen: EntryOf<'d, PanelPhotographed>,
    /// The measured color, when it was measured and can be a color.
    pub lab: Option<Lab>,
    /// The panel was stained after this was taken: it shows how the panel was.
    pub outdated: bool,
}

/// Panel names are written by many hands: spaces around them and capitals do not count.
pub(crate) fn same(a: &str, b: &str) -> bool {
    a.trim().to_lowercase() == b.trim().to_lowercase()
}

impl<'d> Panel<'d> {
    /// Its last photograph in a state.
    #[must_use]
    pub fn look(&self, state: PanelState) -> Option<&PanelLook<'d>> {
        self.looks.iter().find(|look| look.seen.body.state == state)
    }

    /// Its color in a state, while that still is its color.
    #[must_use]
    pub fn color(&self, state: PanelState) -> Option<Lab> {
        self.look(state).filter(|look| !look.outdated).and_then(|look| look.lab)
    }

    /// The mix it was poured from, as on the ticket.
    #[must_use]
    pub fn mix(&self) -> Option<&'d str> {
        self.made.and_then(|made| made.body.mix.as_deref())
    }

    /// Its finish, by the id in the trade facts.
    #[must_use]
    pub fn finish(&self) -> Option<&'d str> {
        self.made.and_then(|made| made.body.finish.as_deref())
    }

    /// Every entry that speaks of it, in the order they are kept here.
    #[must_use]
    pub fn evidence(&self) -> Vec<EntryId> {
        let made = self.made.map(|seen| seen.entry.id);
        let stained = self.stained.map(|seen| seen.entry.id);
        let looks = self.looks.iter().map(|look| look.seen.entry.id);
        made.into_iter().chain(stained).chain(looks).chain(self.approved.iter().map(|seen| seen.entry.id)).collect()
    }
}

/// The panels of a slab in the order they are first named.
#[must_use]
pub fn panels<'d>(slab: &Slab<'d>) -> Vec<Panel<'d>> {
    let mut named: Vec<(Timestamp, &'d str)> = Vec::new();
    named.extend(slab.all::<PanelMade>().map(|s| (s.entry.happened.instant(), s.body.panel.as_str())));
    named.extend(slab.all::<PanelStained>().map(|s| (s.entry.happened.instant(), s.body.panel.as_str())));
    named.extend(slab.all::<PanelPhotographed>().map(|s| (s.entry.happened.instant(), s.body.panel.as_str())));
    // Panels of one minute stand by name, so that every device shows them alike.
    named.sort();
    let mut names: Vec<&'d str> = Vec::new();
    for (_, name) in named {
        if !names.iter().any(|known| same(known, name)) {
            names.push(name);
        }
    }
    names.into_iter().map(|name| panel(slab, name)).collect()
}

fn panel<'d>(slab: &Slab<'d>, name: &'d str) -> Panel<'d> {
    let stainings: Vec<_> = slab.all::<PanelStained>().filter(|s| same(&s.body.panel, name)).collect();
    let first = stainings.first().map(|s| s.entry.happened.instant());
    let last = stainings.last().map(|s| s.entry.happened.instant());
    let look = |state: PanelState| {
        let seen = slab.all::<PanelPhotographed>().rfind(|s| same(&s.body.panel, name) && s.body.state == state)?;
        let at = seen.entry.happened.instant();
        let outdated = match state {
            // What was bare when it was photographed stays the color of the bare panel.
            PanelState::Bare => first.is_some_and(|first| at > first),
            PanelState::Stained | PanelState::Sealed => last.is_some_and(|last| at < last),
        };
        let lab = seen.body.lab.and_then(|[l, a, b]| Lab::new(l, a, b).ok());
        Some(PanelLook { seen, lab, outdated })
    };
    Panel {
        name: name.trim(),
        made: slab.all::<PanelMade>().rfind(|s| same(&s.body.panel, name)),
        stained: stainings.last().copied(),
        looks: [PanelState::Bare, PanelState::Stained, PanelState::Sealed].into_iter().filter_map(look).collect(),
        approved: slab.all::<ChoiceApproved>().filter(|s| same(&s.body.panel, name)).collect(),
    }
}

/// The zones that a panel stands for: those whose finish and concrete, as far as they are noted, are
/// the panel's; for a mock-up on the floor, the zones it lies in.
#[must_use]
pub fn stands_for(slab: &Slab<'_>, panel: &Panel<'_>) -> Vec<String> {
    let agree = |panel: Option<&str>, floor: Option<&str>| match (panel, floor) {
        (Some(panel), Some(floor)) => same(panel, floor),
        _ => true,
    };
    let fits = |zone: &&Zone| {
        if let Some(made) = panel.made.filter(|made| made.body.on_the_floor) {
            return slab.touches(made.entry, zone);
        }
        let finish = finish_of(slab, zone).map(|s| s.body.finish.as_str());
        agree(panel.finish(), finish) && agree(panel.mix(), mix_of(slab, zone))
    };
    slab.zones().iter().filter(fits).map(|zone| zone.name.clone()).collect()
}
