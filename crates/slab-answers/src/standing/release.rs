//! A named person's release: it stands until newer evidence speaks against it.

use std::collections::HashSet;

use super::finding::{Finding, Value};
use super::{Code, HoldPointId, Judge, State};
use slab_diary::Zone;
use slab_diary::body::{HoldReleased, Pour};
use slab_diary::{Entry, EntryId};

/// What nobody's word changes: a concrete that does not react, a film that is there, a spot or a hole that
/// nobody treated, a panel that does not exist.
fn never_by_word(code: Code) -> bool {
    matches!(
        code,
        Code::NoFizz
            | Code::MembraneOnSlab
            | Code::FilmOnBlade
            | Code::FilmOnBladeWaterStopped
            | Code::PenetratingTreatment
            | Code::IncidentUntreated
            | Code::CoverStillLies
            | Code::IncidentStillThere
            | Code::HoleOpen
            | Code::NoPanel
            | Code::PanelOriginUnknown
    )
}

impl Judge<'_> {
    pub(super) fn apply_release(&self, id: HoldPointId, finding: &mut Finding) {
        if finding.state == State::Released {
            return;
        }
        let zone = finding.zone.as_ref().and_then(|name| self.slab.zones().iter().find(|z| z.name == *name));
        let release = self
            .slab
            .all::<HoldReleased>()
            .rfind(|s| s.body.hold_point == id && zone.is_none_or(|zone| self.slab.covers(s.entry, zone)));
        let Some(release) = release else { return };
        let (state, code) = if id == HoldPointId::Site {
            // Eyewash and safety data sheets are there or they are not.
            (finding.state, Code::NobodyMayReleaseSite)
        } else if id == HoldPointId::Air {
            // The air of one hour says nothing of the next.
            (finding.state, Code::NobodyMayReleaseAir)
        } else if finding.reasons.iter().any(|reason| never_by_word(reason.code)) {
            (finding.state, Code::WordDoesNotSettle)
        } else if zone.is_some_and(|zone| self.changed_since(id, zone, release.entry))
            || self.grew_worse(id, zone, release.entry, finding)
        {
            (finding.state, Code::ReleaseLapsed)
        } else {
            (State::Released, Code::ReleasedByPerson)
        };
        let told = Finding::new(state, code)
            .with("by", Value::Text(release.body.by.to_string()))
            .with("reason", Value::Text(release.body.reason.to_string()))
            .with("date", Value::Date(release.entry.happened.date()));
        finding.state = state;
        finding.reasons.splice(0..0, told.reasons);
        finding.evidence.push(release.entry.id);
        if state == State::Released {
            finding.next = None;
            finding.further.clear();
            finding.by_word = true;
        }
    }

    /// Whether something happened to the surface after the release that its hold point goes by: it was given for the
    /// surface as it was.
    fn changed_since(&self, id: HoldPointId, zone: &Zone, release: &Entry) -> bool {
        let changes = match id {
            HoldPointId::Moisture => self.wettings(zone),
            HoldPointId::SurfacePh => self.ph_moved(zone),
            HoldPointId::Membrane | HoldPointId::Absorbency | HoldPointId::Reaction => self.surface_changes(zone),
            HoldPointId::Age => {
                self.slab.all::<Pour>().filter(|s| self.slab.touches(s.entry, zone)).map(|s| s.entry).collect()
            }
            _ => Vec::new(),
        };
        changes.iter().any(|change| change.happened > release.happened)
    }

    /// Whether evidence newer than the release made the case worse than the person knew it: a worse
    /// state, or the same bad state for another reason. Newer evidence that only adds to what was
    /// known leaves the release standing.
    fn grew_worse(&self, id: HoldPointId, zone: Option<&Zone>, release: &Entry, now: &Finding) -> bool {
        let evidence: HashSet<EntryId> = now.evidence.iter().copied().collect();
        let newer = self
            .slab
            .entries()
            .iter()
            .any(|e| e.happened.instant() > release.happened.instant() && evidence.contains(&e.id));
        let taken_back = now.reasons.iter().any(|reason| reason.code == Code::ChoiceWithdrawn);
        if !newer || (now.state < State::CantTell && !taken_back) {
            return false;
        }
        let earlier = self.slab.as_it_was(release.happened.instant());
        let judge = Judge::new(&earlier, self.figures);
        let zone = zone.cloned().unwrap_or_else(|| earlier.zones()[0].clone());
        let then = judge.zone(id, &zone);
        let said = |finding: &Finding, code| finding.reasons.iter().any(|reason| reason.code == code);
        now.state > then.state
            || now.reasons.first().map(|r| r.code) != then.reasons.first().map(|r| r.code)
            || (said(now, Code::ColorPatchy) && !said(&then, Code::ColorPatchy))
    }
}
