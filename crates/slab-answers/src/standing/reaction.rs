//! Does this concrete react at all? Gypsum and polymer toppings do not, and a mix with much fly ash or with
//! chloride may react weakly or blotchily.
//!
//! A drop of dilute acid on a spot that will not show, what the ticket says of the mix, and a panel of this
//! concrete that took the stain are the evidence.

use units::Fraction;

use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::body::{Fizz, PanelMade, PanelPhotographed, PanelStained, PanelState, Pour};
use slab_diary::{EntryId, EntryOf, Zone};

/// What the ticket says of a mix.
enum Mix {
    /// Plain Portland concrete.
    Plain,
    /// Something in it can weaken the reaction or make it blotchy.
    Doubtful(Code),
    /// It says too little.
    Unknown,
}

impl Judge<'_> {
    pub(super) fn reaction(&self, zone: &Zone) -> Finding {
        let tried = self.tried(zone);
        let acid = tried.acid.iter().map(|s| s.entry.id);
        self.reaction_by(zone, tried.fizz()).because(acid)
    }

    fn reaction_by(&self, zone: &Zone, fizz: Option<Fizz>) -> Finding {
        if fizz == Some(Fizz::None) {
            return Finding::held(Code::NoFizz, Action::AskAboutConcrete);
        }
        let pour = self.pour(zone);
        let mix = pour.map_or(Mix::Unknown, |pour| self.mix(pour));
        let told = |f: Finding| f.because(pour.map(|pour| pour.entry.id));
        if let Some((panel, seen)) = self.took_the_stain(zone) {
            return told(Finding::released(Code::PanelTookStain)).with("panel", Value::Text(panel)).because(seen);
        }
        let doubts = |f: Finding| match (&mix, pour.and_then(|p| p.body.fly_ash.as_ref())) {
            (Mix::Doubtful(Code::MuchFlyAsh), Some(ash)) => f
                .with("share", Value::Share(ash.value()))
                .with("limit", Value::Share(self.figures.value::<Fraction>("fly-ash-plain"))),
            _ => f,
        };
        match (fizz, &mix) {
            (_, Mix::Doubtful(code)) => told(doubts(Finding::cant_tell(*code, Action::TryThisConcrete))),
            (Some(Fizz::Weak), _) => told(Finding::cant_tell(Code::WeakFizz, Action::TryThisConcrete)),
            (Some(_), _) => told(Finding::released(Code::StrongFizz)),
            (None, Mix::Plain) => told(Finding::released(Code::PlainPortland)),
            (None, Mix::Unknown) if self.slab.called_existing().is_some() => {
                Finding::cant_tell(Code::OldToppingUnknown, Action::AcidDrop).because(self.slab.called_existing())
            }
            (None, Mix::Unknown) => told(Finding::unproven(Code::ReactionUntried, Action::AcidDrop)),
        }
    }

    fn mix(&self, pour: EntryOf<'_, Pour>) -> Mix {
        let plain: Fraction = self.figures.value("fly-ash-plain");
        let ash = pour.body.fly_ash.as_ref().map(|ash| ash.value() > plain);
        match (pour.body.chloride, ash) {
            (Some(true), _) => Mix::Doubtful(Code::ChlorideInMix),
            (_, Some(true)) => Mix::Doubtful(Code::MuchFlyAsh),
            (Some(false), Some(false)) => Mix::Plain,
            _ => Mix::Unknown,
        }
    }

    /// A panel or mock-up of this zone's concrete that was stained and seen so afterwards.
    fn took_the_stain(&self, zone: &Zone) -> Option<(String, Vec<EntryId>)> {
        self.slab.all::<PanelMade>().rev().find_map(|made| {
            let of = |panel: &str| crate::panels::same(panel, &made.body.panel);
            if !self.is_this_concrete(zone, made) {
                return None;
            }
            let stained = self.slab.all::<PanelStained>().rfind(|s| of(&s.body.panel))?;
            let after = |entry: &slab_diary::Entry| entry.order() > stained.entry.order();
            let looked = self
                .slab
                .all::<PanelPhotographed>()
                .find(|s| of(&s.body.panel) && s.body.state != PanelState::Bare && after(s.entry));
            let approved = self
                .slab
                .all::<slab_diary::body::ChoiceApproved>()
                .find(|s| of(&s.body.panel) && after(s.entry))
                .map(|s| s.entry.id);
            let seen = looked.map(|s| s.entry.id).or(approved)?;
            Some((made.body.panel.to_string(), vec![made.entry.id, stained.entry.id, seen]))
        })
    }
}
