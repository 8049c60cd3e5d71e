//! Cracks, holes and patches: known, and settled with the owner.

use units::Length;

use super::finding::{Finding, Value};
use super::{Action, Code, Judge, State};
use slab_diary::Entry;
use slab_diary::body::{Accepted, Defect, DefectKind, Incident, Repair, RepairMaterial, Survey};
use slab_diary::{EntryOf, Zone};

impl Judge<'_> {
    pub(super) fn repairs(&self, zone: &Zone) -> Finding {
        let defects = self.slab.all::<Defect>().filter(|s| self.slab.touches(s.entry, zone));
        let mut findings: Vec<Finding> = defects.map(|defect| self.defect(defect)).collect();
        let nailed = self
            .slab
            .all::<Incident>()
            .filter(|s| s.body.what == "nailed-into-field" && self.slab.touches(s.entry, zone));
        findings.extend(nailed.map(|s| {
            self.settled(s.entry)
                .unwrap_or_else(|| Finding::held(Code::HoleOpen, Action::RepairOrAccept))
                .because([s.entry.id])
        }));
        let survey = self.slab.all::<Survey>().rfind(|s| s.body.cracks && self.sees_all(zone, s.entry));
        let found = findings.len();
        findings.push(match survey {
            Some(survey) if found == 0 => Finding::released(Code::NoDefects)
                .with("date", Value::Date(survey.entry.happened.date()))
                .because([survey.entry.id]),
            Some(survey) => Finding::released(Code::DefectsMapped)
                .with("count", Value::Count(found as u32))
                .because([survey.entry.id]),
            None => Finding::unproven(Code::CracksNotMapped, Action::MapCracks),
        });
        Finding::worst(findings).unwrap_or_else(|| Finding::unproven(Code::CracksNotMapped, Action::MapCracks))
    }

    fn defect(&self, defect: EntryOf<'_, Defect>) -> Finding {
        let width = defect.body.width.as_ref().map(units::AsWritten::value);
        let limit: Length = self.figures.value("crack-width");
        let accepted_or = |finding: Finding| self.settled(defect.entry).unwrap_or(finding);
        let finding = match defect.body.what {
            DefectKind::Crack if defect.body.moving == Some(true) => {
                // A moving crack opens again whatever is put into it or agreed about it: an
                // engineer's question. A named person may release the hold point with the answer.
                Finding::held(Code::CrackMoves, Action::AskEngineer)
            }
            DefectKind::Crack => match width {
                None => accepted_or(Finding::cant_tell(Code::CrackNotMeasured, Action::MeasureCrack)),
                Some(width) if width > limit => accepted_or(Finding::held(Code::CrackWide, Action::RepairOrAccept))
                    .with("width", Value::Length(width))
                    .with("limit", Value::Length(limit)),
                Some(width) => Finding::released(Code::CrackHairline).with("width", Value::Length(width)),
            },
            DefectKind::Hole => accepted_or(Finding::held(Code::HoleOpen, Action::RepairOrAccept)),
            DefectKind::Spall => accepted_or(Finding::held(Code::SpallOpen, Action::RepairOrAccept)),
            DefectKind::Patch => accepted_or(Finding::cant_tell(Code::PatchUntried, Action::TryStainOnPatch)),
            DefectKind::Dusting => accepted_or(Finding::held(Code::SurfaceDusts, Action::ScreenAndRetest)),
        };
        finding.because([defect.entry.id])
    }

    /// What was done about a defect: accepted, or repaired with what.
    fn settled(&self, found: &Entry) -> Option<Finding> {
        if let Some(accepted) = self.acceptance(found) {
            return Some(accepted);
        }
        let repair = self.slab.all::<Repair>().rfind(|s| s.body.of == Some(found.id))?;
        let finding = match repair.body.material {
            RepairMaterial::Cement if repair.body.owner_told => Finding::released(Code::RepairedOwnerTold),
            RepairMaterial::Cement => Finding::unproven(Code::RepairedOwnerNotTold, Action::AskOwnerToAccept),
            RepairMaterial::Polymer | RepairMaterial::Gypsum => {
                Finding::held(Code::RepairTakesNoStain, Action::AskOwnerToAccept)
            }
        };
        Some(finding.because([repair.entry.id]))
    }

    fn acceptance(&self, found: &Entry) -> Option<Finding> {
        let accepted =
            self.slab.all::<Accepted>().rfind(|s| s.body.of == found.id && s.entry.happened >= found.happened)?;
        Some(
            Finding::new(State::Released, Code::DefectAccepted)
                .with("by", Value::Text(accepted.body.by.to_string()))
                .because([accepted.entry.id]),
        )
    }
}
