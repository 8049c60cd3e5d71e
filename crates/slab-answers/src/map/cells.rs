//! The slab cut into square cells, each with the worst that speaks of it.

use science::absorbency::{Estimate, Limits, Place};
use units::{Fraction, Length};

use super::bays::Parts;
use super::{Bay, Fineness, Ground, Spot, place, sureness};
use slab_plan::{Offset, Plan, Point};

/// Finest and coarsest cells: below a hand nothing is tested, above a stride nothing is worked.
const SIDES: (Length, Length) = (Length::meters(0.05), Length::meters(2.0));

/// A square of the slab.
#[derive(Debug, Clone, Copy)]
pub struct Cell {
    /// Its middle.
    pub at: Point,
    /// The zone by index.
    pub zone: usize,
    /// The bay by index.
    pub bay: usize,
    /// The soaking time foretold here; none where the bay has no map.
    pub estimate: Option<Estimate>,
    /// How sure the class of that time is.
    pub sure: Option<Fraction>,
    /// The worst that speaks of it.
    pub ground: Ground,
}

/// Cells whose middle lies on the slab and in a zone, and their side.
pub(super) fn cut(plan: &Plan, bays: &[Bay], parts: &Parts, fineness: Fineness) -> (Length, Vec<Cell>) {
    let area = plan.area().as_square_meters();
    let side = (area / f64::from(fineness.cells.max(1))).sqrt();
    let side = Length::meters(side).max(SIDES.0).min(SIDES.1);
    let Some((low, high)) = plan.bounds() else { return (side, Vec::new()) };
    let count = |low: Offset, high: Offset| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a plan is at most kilometers")]
        let whole = (Length::from(high - low).as_meters() / side.as_meters()).ceil() as u32;
        whole.max(1)
    };
    let (columns, rows) = (count(low.x, high.x), count(low.y, high.y));
    let step = side.as_meters();
    let mut cells = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let middle = |from: Offset, at: u32| {
                Offset::meters(Length::from(from - Offset::meters(0.0)).as_meters() + (f64::from(at) + 0.5) * step)
            };
            let at = Point::new(middle(low.x, column), middle(low.y, row));
            let Some(zone) = plan.zone_at(at) else { continue };
            let Some(zone) = plan.zones().iter().position(|known| known.name() == zone.name()) else { continue };
            let Some(bay) = parts.bay_at(at, zone).or_else(|| nearest_bay(bays, plan, zone)) else { continue };
            cells.push(Cell { at, zone, bay, estimate: None, sure: None, ground: Ground::Untested });
        }
    }
    (side, cells)
}

/// A middle that falls on a joint lies in no stretch; any bay of its zone will do.
fn nearest_bay(bays: &[Bay], plan: &Plan, zone: usize) -> Option<usize> {
    let name = plan.zones().get(zone)?.name();
    bays.iter().position(|bay| bay.zones.iter().any(|known| known == name))
}

/// Puts into each cell how it drinks and the worst that speaks of it.
pub(super) fn judge(cells: &mut [Cell], bays: &[Bay], spots: &[Spot], limits: Option<&Limits>) {
    for (index, bay) in bays.iter().enumerate() {
        let own: Vec<usize> = (0..cells.len()).filter(|at| cells[*at].bay == index).collect();
        if let Some(field) = bay.field() {
            let places: Vec<Place> = own.iter().map(|at| place(cells[*at].at)).collect();
            for (at, estimate) in own.iter().zip(field.map(&places)) {
                cells[*at].estimate = Some(estimate);
                cells[*at].sure = limits.and_then(|limits| sureness(&estimate, limits));
            }
        }
        for at in own {
            cells[at].ground = drinking(&cells[at], bay, limits);
        }
    }
    for (index, spot) in spots.iter().enumerate().filter(|(_, spot)| spot.is_open()) {
        for cell in cells.iter_mut() {
            let covered = match &spot.patch {
                Some(patch) => patch.holds(cell.at),
                None => spot.zones.contains(&cell.zone),
            };
            // The first of several keeps the cell: they are told one by one beside the map.
            if covered && !matches!(cell.ground, Ground::Spot(_)) {
                cell.ground = Ground::Spot(index);
            }
        }
    }
}

fn drinking(cell: &Cell, bay: &Bay, limits: Option<&Limits>) -> Ground {
    if bay.film {
        return Ground::Film;
    }
    match (&cell.estimate, limits) {
        (Some(estimate), Some(limits)) => match estimate.class(limits) {
            0 if bay.dense => Ground::Dense,
            0 => Ground::Drinks,
            1 => Ground::Slow,
            _ => Ground::Stands,
        },
        _ if bay.stands => Ground::Stands,
        _ => Ground::Untested,
    }
}
