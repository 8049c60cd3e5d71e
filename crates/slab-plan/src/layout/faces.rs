//! The faces of a net: the parts into which its pieces cut the ground.
//!
//! Each piece has two sides; walking along one side and turning as sharply as can be at every place
//! goes around one face. A piece with the same face on both sides cuts nothing (a line that ends on
//! the slab, a line that joins a cut-out to a wall without closing anything) and is left out. What is
//! ground is known from the walls, which have it to their left.

use std::collections::HashMap;

use geo::{Coord, LineString, MultiPolygon, Polygon};

use super::net::{Net, Tags};
use crate::clip::cross;

/// One side of a piece: the places that it leads from and to, with its face on the left.
type Side = (usize, usize);

/// One part of the ground.
#[derive(Debug, Clone)]
pub(super) struct Face {
    /// Square meters.
    pub(super) area: f64,
    /// The outer ring counter-clockwise and the holes clockwise, without a repeated end.
    pub(super) rings: Vec<Vec<Coord<f64>>>,
}

/// The faces of a net, and which pieces part two of them.
#[derive(Debug, Clone)]
pub(super) struct Faces {
    pub(super) faces: Vec<Face>,
    /// Pieces between two faces: the faces, meters, what the piece is.
    pub(super) between: Vec<(usize, usize, f64, Tags)>,
    /// The face to the left of each side that has one.
    pub(super) left_of: HashMap<Side, usize>,
}

impl Face {
    pub(super) fn ground(&self) -> MultiPolygon<f64> {
        let mut rings = self.rings.iter().map(|r| LineString(r.clone()));
        let Some(outer) = rings.next() else { return MultiPolygon(Vec::new()) };
        MultiPolygon(vec![Polygon::new(outer, rings.collect())])
    }
}

/// A closed walk along sides.
struct Cycle {
    sides: Vec<Side>,
    /// Square meters, negative when walked clockwise.
    area: f64,
    /// Some side runs along a wall with the ground on its right.
    outside: bool,
    /// The part of the net that it belongs to.
    part: usize,
}

impl Faces {
    /// The faces of the net on its ground, in the order of their lowest, then leftmost place.
    pub(super) fn of(net: &Net) -> Self {
        let all: Vec<Side> = net.pieces.keys().copied().collect();
        let walked = cycles(net, &all);
        let owner = owners(&walked);
        let cutting: Vec<Side> = all.into_iter().filter(|(a, b)| owner[&(*a, *b)] != owner[&(*b, *a)]).collect();
        let walked = cycles(net, &cutting);
        let mut order: Vec<usize> =
            (0..walked.len()).filter(|i| walked[*i].area > 0.0 && !walked[*i].outside).collect();
        order.sort_by_key(|i| low_left(net, &walked[*i]));
        let mut faces: Vec<Face> = order.iter().map(|i| face(net, &walked[*i])).collect();
        let mut face_of: Vec<Option<usize>> = vec![None; walked.len()];
        for (number, i) in order.iter().enumerate() {
            face_of[*i] = Some(number);
        }
        for (i, hole) in walked.iter().enumerate().filter(|(_, c)| c.area < 0.0 && !c.outside) {
            let at = net.places[hole.sides[0].0];
            let around = order
                .iter()
                .filter(|o| walked[**o].part != hole.part && -hole.area < walked[**o].area)
                .filter(|o| surrounds(net, &walked[**o], at))
                .min_by(|a, b| walked[**a].area.total_cmp(&walked[**b].area));
            let Some(number) = around.and_then(|o| face_of[*o]) else { continue };
            face_of[i] = Some(number);
            faces[number].area += hole.area;
            faces[number].rings.push(corners(net, &hole.sides));
        }
        let left_of: HashMap<Side, usize> =
            owners(&walked).into_iter().filter_map(|(side, cycle)| Some((side, face_of[cycle]?))).collect();
        let part = |(a, b): &Side| {
            let (left, right) = (*left_of.get(&(*a, *b))?, *left_of.get(&(*b, *a))?);
            Some((left.min(right), left.max(right), net.length((*a, *b)), net.pieces[&(*a, *b)]))
        };
        let between = cutting.iter().filter_map(part).filter(|(a, b, ..)| a != b).collect();
        Self { faces, between, left_of }
    }
}

/// All closed walks, each with its face on the left.
fn cycles(net: &Net, pieces: &[Side]) -> Vec<Cycle> {
    let mut around: HashMap<usize, Vec<usize>> = HashMap::new();
    for (a, b) in pieces {
        around.entry(*a).or_default().push(*b);
        around.entry(*b).or_default().push(*a);
    }
    for (from, to) in &mut around {
        let angle = |to: &usize| {
            let off = net.places[*to] - net.places[*from];
            libm::atan2(off.y, off.x)
        };
        to.sort_by(|a, b| angle(a).total_cmp(&angle(b)));
    }
    // Where each neighbor stands in the list around a place.
    let slots: HashMap<Side, usize> =
        around.iter().flat_map(|(from, to)| to.iter().enumerate().map(|(i, to)| ((*from, *to), i))).collect();
    // On arriving, the next side clockwise from the way back.
    let next = |(from, at): Side| {
        let to = &around[&at];
        (at, to[(slots[&(at, from)] + to.len() - 1) % to.len()])
    };
    let mut part = Parts::of(net.places.len());
    pieces.iter().for_each(|(a, b)| part.join(*a, *b));
    let mut done: HashMap<Side, ()> = HashMap::new();
    let mut out = Vec::new();
    for start in pieces.iter().flat_map(|(a, b)| [(*a, *b), (*b, *a)]) {
        if done.contains_key(&start) {
            continue;
        }
        let mut sides = Vec::new();
        let mut side = start;
        while done.insert(side, ()).is_none() {
            sides.push(side);
            side = next(side);
        }
        let outside = sides.iter().any(|(a, b)| {
            let tags = net.pieces[&(*a.min(b), *a.max(b))];
            // The ground lies to the right of this side, and not also to its left.
            if a < b { tags.wall_down && !tags.wall_up } else { tags.wall_up && !tags.wall_down }
        });
        out.push(Cycle { area: area(net, &sides), outside, part: part.root(sides[0].0), sides });
    }
    out
}

fn owners(cycles: &[Cycle]) -> HashMap<Side, usize> {
    cycles.iter().enumerate().flat_map(|(i, c)| c.sides.iter().map(move |s| (*s, i))).collect()
}

/// Signed area, from the first place so that survey coordinates lose nothing.
fn area(net: &Net, sides: &[Side]) -> f64 {
    let from = net.places[sides[0].0];
    sides.iter().map(|(a, b)| cross(net.places[*a] - from, net.places[*b] - from)).sum::<f64>() / 2.0
}

fn face(net: &Net, cycle: &Cycle) -> Face {
    Face { area: cycle.area, rings: vec![corners(net, &cycle.sides)] }
}

/// The corners of a closed walk, without places on a straight line.
fn corners(net: &Net, sides: &[Side]) -> Vec<Coord<f64>> {
    let count = sides.len();
    let straight = |i: usize| {
        let (before, after) = (sides[(i + count - 1) % count], sides[i]);
        let (a, b) = (net.places[before.1] - net.places[before.0], net.places[after.1] - net.places[after.0]);
        cross(a, b).abs() <= 1e-9 * libm::hypot(a.x, a.y) * libm::hypot(b.x, b.y) && a.x * b.x + a.y * b.y > 0.0
    };
    (0..count).filter(|i| !straight(*i)).map(|i| net.places[sides[i].0]).collect()
}

/// Millimeters up and to the right of the lowest, then leftmost corner.
fn low_left(net: &Net, cycle: &Cycle) -> (i64, i64) {
    let millimeters = |v: f64| (v * 1000.0).round() as i64;
    let corner = |(from, _): &Side| (millimeters(net.places[*from].y), millimeters(net.places[*from].x));
    cycle.sides.iter().map(corner).min().unwrap_or_default()
}

/// Whether the closed walk goes around the place: an upward ray crosses it an odd number of times.
fn surrounds(net: &Net, cycle: &Cycle, at: Coord<f64>) -> bool {
    let crosses = |(from, to): &&Side| {
        let (a, b) = (net.places[*from], net.places[*to]);
        (a.x > at.x) != (b.x > at.x) && at.y < a.y + (b.y - a.y) * ((at.x - a.x) / (b.x - a.x))
    };
    cycle.sides.iter().filter(crosses).count() % 2 == 1
}

/// Which places hang together.
struct Parts(Vec<usize>);

impl Parts {
    fn of(count: usize) -> Self {
        Self((0..count).collect())
    }

    fn root(&mut self, mut place: usize) -> usize {
        while self.0[place] != place {
            self.0[place] = self.0[self.0[place]];
            place = self.0[place];
        }
        place
    }

    fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.root(a), self.root(b));
        self.0[a.max(b)] = a.min(b);
    }
}
