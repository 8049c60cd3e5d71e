//! Bays: parts of the slab that drink as one, because they were poured and finished as one.

use science::absorbency::{AbsorbencyError, DropTest, End, Field, LeftOut};
use units::Length;

use super::{Mapped, ids, place};
use crate::standing::{ZoneTried, for_map};
use slab_diary::EntryId;
use slab_diary::Slab;
use slab_diary::body::{Plan as PlanBody, Pour};
use slab_plan::layout::{Cuts, Sections};
use slab_plan::{JointKind, Plan, Point};
use trade_facts::Trade;

/// A part of the slab with one finish out of one pour: a field of its own.
///
/// A boundary of finish is a break, and so is a construction or isolation joint: beyond it lies other
/// concrete. A saw cut is none: the same concrete runs on under it.
#[derive(Debug, Clone)]
pub struct Bay {
    /// Its finish, by the id in the trade facts, when it is noted.
    pub finish: Option<String>,
    /// Its zones.
    pub zones: Vec<String>,
    /// The drops in it that count and have a place.
    pub drops: Vec<EntryId>,
    /// Drops in its zones without a place: they count for the zone and not for the map.
    pub unplaced: Vec<EntryId>,
    /// How it drinks, or why there is no map of it.
    pub field: BayField,
    /// The blade or the rag found a film in one of its zones.
    pub film: bool,
    /// Water stood at every drop, and the drops are as many as the zones need.
    pub stands: bool,
    /// The finish often needs one more coat.
    pub dense: bool,
    pub(crate) places: Vec<Point>,
}

/// The field of a bay.
#[derive(Debug, Clone)]
pub enum BayField {
    /// It has one, with each drop foretold from the others.
    Mapped {
        /// The field.
        field: Box<Field>,
        /// How well it foretells its own drops.
        left_out: LeftOut,
    },
    /// It has none.
    None(AbsorbencyError),
}

impl Bay {
    /// The field, when there is one.
    #[must_use]
    pub fn field(&self) -> Option<&Field> {
        match &self.field {
            BayField::Mapped { field, .. } => Some(field),
            BayField::None(_) => None,
        }
    }
}

/// Which bay a place lies in.
pub(super) struct Parts {
    /// Stretches of concrete between construction and isolation joints.
    pours: Option<Sections>,
    /// Of each bay its zones by index, and its stretch.
    keys: Vec<(Vec<usize>, Option<usize>)>,
}

impl Parts {
    pub(super) fn bay_at(&self, at: Point, zone: usize) -> Option<usize> {
        let stretch = self.stretch(at);
        self.keys.iter().position(|(zones, own)| zones.contains(&zone) && *own == stretch)
    }

    fn stretch(&self, at: Point) -> Option<usize> {
        self.pours.as_ref().and_then(|pours| pours.at(at)).map(|section| section.id)
    }
}

/// What one bay is known by before its drops.
type Key = (Option<String>, Option<EntryId>);

pub(super) fn bays(slab: &Slab<'_>, trade: &Trade, plan: &Plan) -> (Vec<Bay>, Parts) {
    let (tried, _) = for_map(slab, trade);
    let mut groups: Vec<(Key, Vec<usize>)> = Vec::new();
    for (index, zone) in slab.zones().iter().enumerate() {
        let pour = slab.all::<Pour>().rfind(|seen| slab.touches(seen.entry, zone)).map(|seen| seen.entry.id);
        let key = (tried[index].finish.as_ref().map(|finish| finish.trim().to_lowercase()), pour);
        match groups.iter_mut().find(|(known, _)| *known == key) {
            Some((_, zones)) => zones.push(index),
            None => groups.push((key, vec![index])),
        }
    }
    let pours = pours(slab);
    let stretches: Vec<Option<usize>> = match &pours {
        Some(pours) => pours.sections().iter().map(|section| Some(section.id)).collect(),
        None => vec![None],
    };
    let mut parts = Parts { pours, keys: Vec::new() };
    let mut bays = Vec::new();
    for (_, zones) in groups {
        for stretch in &stretches {
            // Not every stretch reaches into every zone.
            let reaches = match (&parts.pours, stretch) {
                (Some(pours), Some(id)) => pours.sections().iter().find(|section| section.id == *id).is_some_and(|s| {
                    s.zones(plan).iter().any(|share| zones.iter().any(|z| slab.zones()[*z].name == share.zone.name()))
                }),
                _ => true,
            };
            if reaches {
                bays.push(bay(slab, &zones, &tried, &parts, *stretch));
                parts.keys.push((zones.clone(), *stretch));
            }
        }
    }
    (bays, parts)
}

/// The stretches between joints beyond which lies other concrete; none when there are no such joints.
fn pours(slab: &Slab<'_>) -> Option<Sections> {
    let (seen, _) = slab.plan_entry()?;
    let spec: &PlanBody = seen.body;
    let breaks = |kind: Option<JointKind>| matches!(kind, Some(JointKind::Construction | JointKind::Isolation));
    let mut only = spec.clone();
    only.joints.retain(|joint| breaks(joint.kind));
    only.score_lines.clear();
    if only.joints.is_empty() {
        return None;
    }
    let plan = Plan::resolve(&only).ok()?;
    Sections::of(&plan, Cuts { joints: true, score_lines: false }).ok().filter(|cut| cut.sections().len() > 1)
}

fn bay(slab: &Slab<'_>, zones: &[usize], tried: &[ZoneTried], parts: &Parts, stretch: Option<usize>) -> Bay {
    let mut drops: Vec<(EntryId, Point, DropTest)> = Vec::new();
    let mut unplaced = Vec::new();
    for drop in zones.iter().flat_map(|zone| &tried[*zone].drops) {
        let Some(at) = drop.at else {
            unplaced.push(drop.entry);
            continue;
        };
        if parts.stretch(at) != stretch {
            continue;
        }
        // A drop on the line between two zones was counted for both.
        if drops.iter().any(|(known, ..)| *known == drop.entry) {
            continue;
        }
        let end = if drop.soaked { End::SoakedIn(drop.time) } else { End::StillStood(drop.time) };
        drops.push((drop.entry, at, DropTest { place: place(at), end }));
    }
    let tests: Vec<DropTest> = drops.iter().map(|(.., test)| *test).collect();
    let mapped: Mapped = Field::fit(&tests);
    let field = match mapped {
        Ok(field) => BayField::Mapped { left_out: field.left_out(), field: Box::new(field) },
        Err(why) => BayField::None(why),
    };
    let of_zones = || zones.iter().map(|zone| &tried[*zone]);
    Bay {
        finish: of_zones().find_map(|zone| zone.finish.clone()),
        zones: zones.iter().map(|zone| slab.zones()[*zone].name.clone()).collect(),
        drops: ids(drops.iter().map(|(entry, ..)| *entry)),
        unplaced: ids(unplaced),
        field,
        film: of_zones().any(|zone| zone.film),
        stands: of_zones().all(|zone| zone.stands),
        dense: of_zones().any(|zone| zone.dense),
        places: drops.iter().map(|(_, at, _)| *at).collect(),
    }
}

/// How far two places lie apart.
pub(super) fn apart(a: Point, b: Point) -> Length {
    let (x, y) = (Length::from(a.x - b.x).as_meters(), Length::from(a.y - b.y).as_meters());
    Length::meters(libm::hypot(x, y))
}
