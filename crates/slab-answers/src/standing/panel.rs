//! A panel of *this* concrete with *this* finish, stained, shown and approved.

use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use crate::panels::{choice_in_force, mix_of, other_parts, same};
use slab_diary::body::{ChoiceApproved, ChoiceWithdrawn, PanelMade, PanelPhotographed, PanelStained, PanelState};
use slab_diary::{EntryOf, Zone};

impl Judge<'_> {
    /// The choice in force decides; what was approved before it, or for other concrete, does not.
    pub(super) fn panel(&self, zone: &Zone) -> Finding {
        let Some(choice) = choice_in_force(self.slab, zone) else { return self.no_approval() };
        match choice.withdrawn {
            Some(withdrawn) => Finding::unproven(Code::ChoiceWithdrawn, Action::GetApproval)
                .with("panel", Value::Text(choice.approved.body.panel.to_string()))
                .with("by", Value::Text(withdrawn.body.by.to_string()))
                .with("date", Value::Date(withdrawn.entry.happened.date()))
                .with("reason", Value::Text(withdrawn.body.reason.to_string()))
                .because([choice.approved.entry.id, withdrawn.entry.id]),
            None => {
                let parts = self.parts_without_panel(zone);
                let whole = self.approval(zone, choice.approved);
                Finding::worst(std::iter::once(whole.clone()).chain(parts).collect()).unwrap_or(whole)
            }
        }
    }

    /// Parts of the zone of another mix or finish that no approved panel has.
    fn parts_without_panel(&self, zone: &Zone) -> Option<Finding> {
        let shown = |of: &str| {
            let approved = self.slab.all::<ChoiceApproved>().filter(|s| !self.withdrawn(s));
            let names: Vec<_> = approved.map(|s| s.body.panel.clone()).collect();
            self.slab.all::<PanelMade>().any(|made| {
                let has = |said: Option<&str>| said.is_some_and(|said| same(said, of));
                names.iter().any(|name| same(name, &made.body.panel))
                    && (has(made.body.mix.as_deref()) || has(made.body.finish.as_deref()))
            })
        };
        let (of, entry) = other_parts(self.slab, zone).into_iter().find(|(of, _)| !shown(of))?;
        Some(
            Finding::cant_tell(Code::PartWithoutPanel, Action::MakePanel)
                .with("part_is", Value::Term(of.to_owned()))
                .because([entry]),
        )
    }

    /// Whether an approval was taken back.
    pub(super) fn withdrawn(&self, approved: &EntryOf<'_, ChoiceApproved>) -> bool {
        self.slab
            .all::<ChoiceWithdrawn>()
            .any(|s| same(&s.body.panel, &approved.body.panel) && s.entry.order() > approved.entry.order())
    }

    /// Whether a panel is known to have the zone's concrete and finish, or is a mock-up in the zone.
    pub(super) fn is_this_concrete(&self, zone: &Zone, made: EntryOf<'_, PanelMade>) -> bool {
        self.represents(zone, made, &|finding| finding).is_none()
    }

    /// Whether a panel was seen with sealer on it after it was stained.
    fn seen_sealed(&self, approval: EntryOf<'_, ChoiceApproved>, stained: &[EntryOf<'_, PanelStained>]) -> bool {
        approval.body.state == Some(PanelState::Sealed)
            || self.slab.all::<PanelPhotographed>().any(|s| {
                same(&s.body.panel, &approval.body.panel)
                    && s.body.state == PanelState::Sealed
                    && stained.iter().all(|stained| s.entry.happened >= stained.entry.happened)
            })
    }

    fn no_approval(&self) -> Finding {
        let made: Vec<_> = self.slab.all::<PanelMade>().map(|s| s.entry.id).collect();
        let stained: Vec<_> = self.slab.all::<PanelStained>().map(|s| s.entry.id).collect();
        if !stained.is_empty() {
            Finding::unproven(Code::NoChoiceYet, Action::GetApproval).because(stained)
        } else if !made.is_empty() {
            Finding::unproven(Code::PanelsBare, Action::StainPanels).because(made)
        } else {
            Finding::unproven(Code::NoPanel, Action::MakePanel)
        }
    }

    fn approval(&self, zone: &Zone, approval: EntryOf<'_, ChoiceApproved>) -> Finding {
        let name = &approval.body.panel;
        let named = |f: Finding| {
            f.with("panel", Value::Text(name.to_string()))
                .with("by", Value::Text(approval.body.by.to_string()))
                .with("date", Value::Date(approval.entry.happened.date()))
                .because([approval.entry.id])
        };
        let Some(made) = self.slab.all::<PanelMade>().rfind(|s| same(&s.body.panel, name)) else {
            return named(Finding::cant_tell(Code::PanelOriginUnknown, Action::NotePanel));
        };
        let stained: Vec<EntryOf<'_, PanelStained>> =
            self.slab.all::<PanelStained>().filter(|s| same(&s.body.panel, name)).collect();
        let finding = self.represents(zone, made, &named).unwrap_or_else(|| {
            if stained.is_empty() {
                named(Finding::cant_tell(Code::ApprovedBeforeStained, Action::StainPanels))
            } else if stained.iter().any(|s| s.entry.happened > approval.entry.happened) {
                named(Finding::unproven(Code::StainedAgainSinceApproval, Action::GetApproval))
            } else if !self.seen_sealed(approval, &stained) {
                named(Finding::cant_tell(Code::ApprovedUnsealed, Action::SealPanelAndShow))
            } else {
                named(Finding::released(Code::PanelApproved))
            }
        });
        finding.because([made.entry.id]).because(stained.iter().map(|s| s.entry.id))
    }

    /// `None` when the panel has the zone's finish and mix; otherwise what is amiss.
    fn represents(
        &self,
        zone: &Zone,
        made: EntryOf<'_, PanelMade>,
        named: &impl Fn(Finding) -> Finding,
    ) -> Option<Finding> {
        let floor_finish = self.finish(zone);
        let floor_mix = mix_of(self.slab, zone);
        let told = |f: Finding, of: &str, zone_has: &str| {
            named(f).with("panel_has", Value::Term(of.to_owned())).with("zone_has", Value::Term(zone_has.to_owned()))
        };
        // A mock-up on the floor itself has the floor's own concrete and finish, in its own zone.
        if made.body.on_the_floor && !self.slab.touches(made.entry, zone) {
            return Some(named(Finding::held(Code::PanelOtherZone, Action::MakePanel)));
        }
        // The floor was opened since: what the panel shows is no longer what the floor is, unless
        // the new finish was noted and a panel has it, or the mock-up was made on the opened floor.
        let finished = floor_finish.map(|f| f.entry.happened.instant());
        let opened = self.surface_opened(zone).filter(|e| {
            let at = e.happened.instant();
            if made.body.on_the_floor { at > made.entry.happened.instant() } else { finished.is_none_or(|f| at > f) }
        });
        if let Some(opened) = opened {
            return Some(named(Finding::held(Code::FloorChangedSincePanel, Action::MakePanel)).because([opened.id]));
        }
        if made.body.on_the_floor {
            return None;
        }
        match (made.body.finish.as_deref(), floor_finish.map(|f| f.body.finish.as_str())) {
            (Some(panel), Some(floor)) if !same(panel, floor) => {
                return Some(told(Finding::held(Code::PanelOtherFinish, Action::MakePanel), panel, floor));
            }
            (Some(_), Some(_)) => {}
            _ => return Some(named(Finding::cant_tell(Code::PanelFinishUnknown, Action::NotePanel))),
        }
        match (made.body.mix.as_deref(), floor_mix) {
            (Some(panel), Some(floor)) if !same(panel, floor) => {
                Some(told(Finding::held(Code::PanelOtherMix, Action::MakePanel), panel, floor))
            }
            (Some(_), Some(_)) => None,
            _ => Some(named(Finding::cant_tell(Code::PanelMixUnknown, Action::NotePanel))),
        }
    }
}
