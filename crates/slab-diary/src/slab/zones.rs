//! Zones, and which entries speak of which zone.

use units::{Area, Length};

use crate::Slab;
use crate::{Entry, Place};
use slab_plan::{Patch, Plan, Point, WHOLE};

/// A part of the slab that is judged on its own.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone {
    /// Its name; `whole` when the slab is not divided.
    pub name: String,
    /// Its area, when the plan tells it.
    pub area: Option<Area>,
}

pub(super) fn same(a: &str, b: &str) -> bool {
    a.trim().eq_ignore_ascii_case(b.trim())
}

pub(super) fn zones(plan: Option<&Plan>, live: &[&Entry]) -> Vec<Zone> {
    if let Some(plan) = plan {
        return plan.zones().iter().map(|z| Zone { name: z.name().to_owned(), area: Some(z.area()) }).collect();
    }
    let mut named: Vec<Zone> = Vec::new();
    for name in live.iter().filter_map(|e| e.place.as_ref()?.zone.as_deref()) {
        if !named.iter().any(|z| same(&z.name, name)) {
            named.push(Zone { name: name.trim().to_owned(), area: None });
        }
    }
    named.sort_by(|a, b| a.name.cmp(&b.name));
    if named.is_empty() {
        named.push(Zone { name: WHOLE.to_owned(), area: None });
    }
    named
}

/// The zones that a place lies in, by index. Nothing when the place cannot be found.
pub(super) fn zones_of(place: &Place, plan: Option<&Plan>, zones: &[Zone]) -> Vec<usize> {
    let named = |name: &str| zones.iter().position(|z| same(&z.name, name));
    if let Some(name) = &place.zone {
        let only = (zones.len() == 1 && same(name, WHOLE)).then_some(0);
        return named(name).or(only).into_iter().collect();
    }
    let Some(plan) = plan.filter(|p| p.is_drawn()) else {
        // A point on a slab that nobody drew can only be on the one zone there is.
        return if zones.len() == 1 { vec![0] } else { Vec::new() };
    };
    if let Some(patch) = patch(place) {
        return plan.shares(&patch).iter().filter_map(|share| named(share.zone.name())).collect();
    }
    point(place).and_then(|at| plan.zone_at(at)).and_then(|z| named(z.name())).into_iter().collect()
}

/// The point of a place.
pub(super) fn point(place: &Place) -> Option<Point> {
    place.point.as_ref().map(|[x, y]| Point::new(x.value(), y.value()))
}

fn patch(place: &Place) -> Option<Patch> {
    if let Some(corners) = &place.polygon {
        let corners: Vec<Point> = corners.iter().map(|[x, y]| Point::new(x.value(), y.value())).collect();
        return Patch::polygon(&corners).ok();
    }
    let radius = place.radius.as_ref()?.value();
    Patch::circle(point(place)?, radius).ok()
}

impl Slab<'_> {
    /// Whether something that happened at the entry's place touches the zone. Without a place it
    /// touches the whole slab.
    #[must_use]
    pub fn touches(&self, entry: &Entry, zone: &Zone) -> bool {
        entry.place.is_none() || self.lies_in(entry, zone)
    }

    /// Whether a test made at the entry's place speaks for the zone. A test without a place speaks
    /// only for an undivided slab: of a divided one nobody knows which part it tells of.
    #[must_use]
    pub fn speaks_for(&self, entry: &Entry, zone: &Zone) -> bool {
        if entry.place.is_none() { self.zones.len() == 1 } else { self.lies_in(entry, zone) }
    }

    /// Area of the zone that an entry's patch covers; the whole zone for an entry without a place.
    #[must_use]
    pub fn area_within(&self, entry: &Entry, zone: &Zone) -> Option<Area> {
        let Some(place) = &entry.place else { return zone.area };
        match (patch(place), self.plan()) {
            (Some(patch), Some(plan)) => {
                plan.shares(&patch).iter().find(|s| same(s.zone.name(), &zone.name)).map(|s| s.area)
            }
            (None, _) if place.zone.is_some() && self.lies_in(entry, zone) => zone.area,
            _ => None,
        }
    }

    /// The point where an entry was made, if one was noted.
    #[must_use]
    pub fn point_of(&self, entry: &Entry) -> Option<Point> {
        entry.place.as_ref().and_then(point)
    }

    /// The patch of the plan that an entry is about, if it is one.
    pub fn patch_of(&self, entry: &Entry) -> Option<Patch> {
        entry.place.as_ref().and_then(patch)
    }

    /// Whether what happened at one entry's place reaches the place of another, both within `near` of each other
    /// where they are points. What names no place reaches everything; what names only a zone, all of that zone.
    #[must_use]
    pub fn reaches(&self, from: &Entry, to: &Entry, near: Length) -> bool {
        let Some(place) = &from.place else { return true };
        let meet = || {
            to.place.is_none()
                || self
                    .places
                    .get(&from.id)
                    .zip(self.places.get(&to.id))
                    .is_some_and(|(a, b)| a.iter().any(|zone| b.contains(zone)))
        };
        let Some(at) = self.point_of(to) else { return meet() };
        let center = point(place);
        if center.is_some_and(|center| center.distance(at) <= near) {
            return true;
        }
        match patch(place) {
            Some(patch) => patch.holds(at),
            None if center.is_some() => false,
            None => meet(),
        }
    }

    /// Whether something that was done at the entry's place was done to the whole zone: a patch counts that leaves
    /// no more than a fiftieth of it out.
    #[must_use]
    pub fn covers(&self, entry: &Entry, zone: &Zone) -> bool {
        let Some(place) = &entry.place else { return true };
        if place.zone.is_some() {
            return self.lies_in(entry, zone);
        }
        match (self.area_within(entry, zone), zone.area) {
            (Some(done), Some(whole)) => done >= whole * 0.98,
            _ => false,
        }
    }

    /// Whether entries together were done to the whole zone: one of them was, or their patches add up to it.
    #[must_use]
    pub fn cover_together<'e>(&self, entries: impl IntoIterator<Item = &'e Entry>, zone: &Zone) -> bool {
        let entries: Vec<&Entry> = entries.into_iter().collect();
        let sections = entries.iter().filter_map(|entry| self.area_within(entry, zone));
        let done = sections.map(Area::as_square_meters).sum::<f64>();
        entries.iter().any(|entry| self.covers(entry, zone))
            || zone.area.is_some_and(|whole| !entries.is_empty() && done >= whole.as_square_meters() * 0.98)
    }

    fn lies_in(&self, entry: &Entry, zone: &Zone) -> bool {
        let Some(index) = self.zones.iter().position(|z| z.name == zone.name) else { return false };
        self.places.get(&entry.id).is_some_and(|zones| zones.contains(&index))
    }
}
