//! Each zone in shares: so much of it is this, so much that.

use units::{Area, Fraction};

use super::{Cell, Ground, Spot};
use slab_plan::Plan;

/// A zone as a picture in shares.
#[derive(Debug, Clone)]
pub struct ZonePicture {
    /// The zone.
    pub zone: String,
    /// Its area.
    pub area: Area,
    /// What it is made of, the worst first. Together they are the whole zone.
    pub shares: Vec<ShareOf>,
    /// The share of the zone whose class is less sure than four in five, among what is mapped.
    pub unsure: Fraction,
}

/// A share of a zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShareOf {
    /// What it is.
    pub ground: Ground,
    /// How much of the zone. Of an open spot exact, of the rest by cells.
    pub share: Fraction,
}

/// Below this a class is told as unsure. Our choice, no source.
pub(crate) const SURE_FROM: f64 = 0.8;

pub(super) fn pictures(plan: &Plan, cells: &[Cell], spots: &[Spot]) -> Vec<ZonePicture> {
    plan.zones().iter().enumerate().map(|(index, zone)| picture(index, zone, cells, spots)).collect()
}

fn picture(index: usize, zone: &slab_plan::Zone, cells: &[Cell], spots: &[Spot]) -> ZonePicture {
    let own: Vec<&Cell> = cells.iter().filter(|cell| cell.zone == index).collect();
    let mut counted: Vec<(Ground, f64)> = Vec::new();
    for cell in &own {
        match counted.iter_mut().find(|(known, _)| *known == cell.ground) {
            Some((_, count)) => *count += 1.0,
            None => counted.push((cell.ground, 1.0)),
        }
    }
    // Spots smaller than a cell may have no middle of a cell in them: their exact share counts.
    for (at, spot) in spots.iter().enumerate().filter(|(_, spot)| spot.is_open()) {
        let covered = spot.covers.iter().any(|(name, _)| name == zone.name());
        if covered && !counted.iter().any(|(known, _)| *known == Ground::Spot(at)) {
            counted.push((Ground::Spot(at), 0.0));
        }
    }
    let total: f64 = counted.iter().map(|(_, count)| count).sum::<f64>().max(1.0);
    let whole = zone.area().as_square_meters();
    let exact = |ground: Ground| -> Option<f64> {
        let Ground::Spot(at) = ground else { return None };
        let area = spots[at].covers.iter().find(|(name, _)| name == zone.name())?.1;
        Some((area.as_square_meters() / whole).min(1.0))
    };
    let mut shares: Vec<(Ground, f64)> =
        counted.iter().map(|(ground, count)| (*ground, exact(*ground).unwrap_or(count / total))).collect();
    // Where spots overlap each has its own area; what is left over goes to the rest.
    let spotted: f64 = shares.iter().filter(|(ground, _)| matches!(ground, Ground::Spot(_))).map(|(_, s)| s).sum();
    let rest: f64 = shares.iter().filter(|(ground, _)| !matches!(ground, Ground::Spot(_))).map(|(_, s)| s).sum();
    let left = (1.0 - spotted).max(0.0);
    for (ground, share) in &mut shares {
        if !matches!(ground, Ground::Spot(_)) {
            *share = if rest > 0.0 { *share / rest * left } else { 0.0 };
        }
    }
    shares.sort_by_key(|(ground, _)| *ground);
    let unsure = own.iter().filter(|cell| cell.sure.is_some_and(|sure| sure.as_share() < SURE_FROM)).count() as f64;
    let share = |value: f64| Fraction::share(value.clamp(0.0, 1.0)).expect("clamped to 0 to 1");
    ZonePicture {
        zone: zone.name().to_owned(),
        area: zone.area(),
        shares: shares
            .into_iter()
            .filter(|(_, of)| *of > 0.0)
            .map(|(ground, of)| ShareOf { ground, share: share(of) })
            .collect(),
        unsure: share(unsure / total),
    }
}
