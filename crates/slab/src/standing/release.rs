//! A named person's release: it stands until newer evidence speaks against it.

use super::finding::{Finding, Value};
use super::{Code, HoldPointId, Judge, State};
use crate::diary::body::HoldReleased;

impl Judge<'_> {
    pub(super) fn apply_release(&self, id: HoldPointId, finding: &mut Finding) {
        if finding.state == State::Released {
            return;
        }
        let zone = finding.zone.as_ref().and_then(|name| self.slab.zones().iter().find(|z| z.name == *name));
        let release = self
            .slab
            .all::<HoldReleased>()
            .rfind(|s| s.body.hold_point == id && zone.is_none_or(|zone| self.slab.touches(s.entry, zone)));
        let Some(release) = release else { return };
        let newer = self.slab.entries().iter().any(|e| {
            finding.evidence.contains(&e.id) && e.happened.instant() > release.entry.happened.instant()
        });
        let (state, code) = if id == HoldPointId::Site {
            // Eyewash and safety data sheets are there or they are not.
            (finding.state, Code::NobodyMayReleaseSite)
        } else if newer {
            (finding.state, Code::ReleaseLapsed)
        } else {
            (State::Released, Code::ReleasedByPerson)
        };
        let told = Finding::new(state, code)
            .with("by", Value::Text(release.body.by.clone()))
            .with("reason", Value::Text(release.body.reason.clone()))
            .with("date", Value::Date(release.entry.happened.date()));
        finding.state = state;
        finding.reasons.splice(0..0, told.reasons);
        finding.evidence.push(release.entry.id);
        if state == State::Released {
            finding.next = None;
        }
    }
}
