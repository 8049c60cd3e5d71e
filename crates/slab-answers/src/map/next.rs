//! Where to put the next drops, and what each would settle.

use std::collections::HashSet;

use science::absorbency::{AbsorbencyError, Aim, Enough, Fields, Gain, Ground as Planned, NextRule, Place};
use units::{Area, Duration, Length};

use super::bays::apart;
use super::{Bay, BayField, Cell, Spot};
use slab_plan::{Offset, Point};

/// Places named at most.
const MOST: usize = 5;
/// Candidates stand at least so far apart, and from a drop that is there. Our choice, no source.
const STEP: Length = Length::meters(0.6);
const FROM_A_DROP: Length = Length::meters(0.3);
/// And so far from walls, joints and the next bay: there the trowel and the saw made another surface.
/// Our choice, no source.
const FROM_AN_EDGE: Length = Length::meters(0.3);
/// Below this a bay asks for no map of its own, such as the square round a column. Our choice, no source.
const MIN_BAY: Area = Area::square_meters(4.0);
/// Candidates at most over the whole slab.
const MAX_CANDIDATES: usize = 400;

/// A place to test next.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NextTest {
    /// Where.
    pub at: Point,
    /// The bay by index.
    pub bay: usize,
    /// What a drop there teaches.
    pub teaches: Teaches,
}

/// What a drop teaches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Teaches {
    /// It settles so much of the area that is doubtful now, and may change the call of so much.
    Settles {
        /// By how much the area expected to be called wrongly falls.
        settles: Area,
        /// Area expected to change its call.
        changes: Area,
    },
    /// The bay has no map yet; so many places are missing.
    FirstMap {
        /// Places that are missing, this one counted in.
        missing: usize,
    },
}

pub(super) fn next_tests(
    cells: &[Cell],
    side: Length,
    bays: &[Bay],
    spots: &[Spot],
    limit: Duration,
) -> (Vec<NextTest>, Option<Enough>) {
    let mut next = Vec::new();
    // A bay nobody knows anything of comes first; one where water stands everywhere needs no drop.
    for (index, bay) in bays.iter().enumerate().filter(|(_, bay)| !bay.film && !bay.stands) {
        let area = side * side * cells.iter().filter(|cell| cell.bay == index).count() as f64;
        if let BayField::None(AbsorbencyError::TooFewPlaces { more, .. }) = &bay.field
            && area >= MIN_BAY
        {
            let own = candidates(cells, side, index, bay, spots);
            for (at, missing) in spread_out(&own, &bay.places, *more).into_iter().zip((1..=*more).rev()) {
                next.push(NextTest { at, bay: index, teaches: Teaches::FirstMap { missing } });
            }
        }
    }
    next.truncate(MOST);
    let mut enough = None;
    if next.len() < MOST {
        let fields =
            Fields::fit(bays.iter().enumerate().filter_map(|(index, bay)| {
                bay.field().filter(|_| !bay.film).map(|field| (index, field.drops().to_vec()))
            }));
        let grounds: Vec<(usize, Planned)> = bays
            .iter()
            .enumerate()
            .filter(|(_, bay)| bay.field().is_some() && !bay.film)
            .map(|(index, bay)| (index, planned(cells, side, index, bay, spots)))
            .filter(|(_, ground)| !ground.map.is_empty() && !ground.reachable.is_empty())
            .collect();
        let rule = NextRule { aim: Aim::at_limit(limit), most: MOST - next.len() };
        if let Ok(advice) = fields.next_places(&grounds, rule) {
            enough = Some(advice.enough);
            next.extend(advice.places.into_iter().map(|place| NextTest {
                at: point(place.place),
                bay: place.group,
                teaches: match place.gain {
                    Gain::Limit { settles, changes } => Teaches::Settles { settles, changes },
                    Gain::Spread(_) => Teaches::Settles { settles: Area::ZERO, changes: Area::ZERO },
                },
            }));
        }
    }
    (next, enough)
}

fn point(place: Place) -> Point {
    Point::new(Offset::meters(place.x.as_meters()), Offset::meters(place.y.as_meters()))
}

/// The ground of a bay, thinned to what can be planned in a moment.
fn planned(cells: &[Cell], side: Length, index: usize, bay: &Bay, spots: &[Spot]) -> Planned {
    const MAX_MAPPED: usize = 1500;
    let own: Vec<&Cell> = cells.iter().filter(|cell| cell.bay == index).collect();
    let every = own.len().div_ceil(MAX_MAPPED).max(1);
    let map: Vec<Place> = own.iter().step_by(every).map(|cell| super::place(cell.at)).collect();
    let each = side * side * every as f64;
    let reachable = candidates(cells, side, index, bay, spots).into_iter().map(super::place).collect();
    Planned { map, each, reachable }
}

/// Where a drop can be put: on the bay, off what is not settled, not beside a drop that is there.
fn candidates(cells: &[Cell], side: Length, index: usize, bay: &Bay, spots: &[Spot]) -> Vec<Point> {
    let open = |at: Point| spots.iter().any(|spot| spot.is_open() && spot.patch.as_ref().is_some_and(|p| p.holds(at)));
    let own: HashSet<(i64, i64)> =
        cells.iter().filter(|cell| cell.bay == index).map(|cell| steps(cell.at, side)).collect();
    #[expect(clippy::cast_possible_truncation, reason = "a few cells")]
    let reach = (FROM_AN_EDGE.as_meters() / side.as_meters()).ceil() as i64;
    let inside = |at: Point| {
        let (x, y) = steps(at, side);
        [(reach, 0), (-reach, 0), (0, reach), (0, -reach)].iter().all(|(dx, dy)| own.contains(&(x + dx, y + dy)))
    };
    let mut step = STEP;
    loop {
        let mut kept: Vec<Point> = Vec::new();
        for cell in cells.iter().filter(|cell| cell.bay == index) {
            let near = |other: &Point, least: Length| apart(*other, cell.at) < least;
            let taken = bay.places.iter().any(|drop| near(drop, FROM_A_DROP));
            if !taken && inside(cell.at) && !open(cell.at) && !kept.iter().any(|other| near(other, step)) {
                kept.push(cell.at);
            }
        }
        if kept.len() <= MAX_CANDIDATES {
            return kept;
        }
        step = step * 1.5;
    }
}

/// A place in whole sides of a cell.
fn steps(at: Point, side: Length) -> (i64, i64) {
    #[expect(clippy::cast_possible_truncation, reason = "a plan is at most kilometers")]
    let step = |offset: Offset| (Length::from(offset).as_meters() / side.as_meters()).floor() as i64;
    (step(at.x), step(at.y))
}

/// Places far from each other and from the drops there are: each the farthest from all before.
fn spread_out(candidates: &[Point], drops: &[Point], count: usize) -> Vec<Point> {
    let mut taken: Vec<Point> = drops.to_vec();
    let mut out = Vec::new();
    // With no drop at all the first stands nearest to the middle of the bay.
    if taken.is_empty()
        && let Some(first) = middle(candidates)
    {
        taken.push(first);
        out.push(first);
    }
    while out.len() < count {
        let distance = |at: &Point| taken.iter().map(|other| apart(*other, *at)).fold(None, least);
        let best = candidates.iter().filter_map(|at| Some((at, distance(at)?))).filter(|(_, d)| *d > Length::ZERO);
        let Some((at, _)) = best.max_by(|a, b| a.1.as_meters().total_cmp(&b.1.as_meters())) else { break };
        taken.push(*at);
        out.push(*at);
    }
    out.truncate(count);
    out
}

fn least(known: Option<Length>, next: Length) -> Option<Length> {
    Some(known.map_or(next, |known| known.min(next)))
}

fn middle(candidates: &[Point]) -> Option<Point> {
    let count = candidates.len() as f64;
    let sum = |of: fn(&Point) -> Offset| {
        candidates.iter().map(|at| Length::from(of(at) - Offset::meters(0.0)).as_meters()).sum::<f64>() / count
    };
    let mean = Point::new(Offset::meters(sum(|at| at.x)), Offset::meters(sum(|at| at.y)));
    candidates.iter().copied().min_by(|a, b| apart(*a, mean).as_meters().total_cmp(&apart(*b, mean).as_meters()))
}
