//! Work sections: the parts of the slab between joints and, by choice, score lines.

use std::collections::BTreeMap;

use geo::{Coord, Line, MultiPolygon};
use units::{Area, Length};

use super::faces::{Face, Faces};
use super::net::{Net, Role};
use super::runs::Placed;
use super::{LayoutError, measure};
use crate::{Patch, Piece, Plan, Point, Share, ground};

/// Difference between the parts and the slab, as a share, that is rounding and no more.
const ROUNDING: f64 = 1e-9;

/// What cuts the slab into sections.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cuts {
    /// The joints.
    pub joints: bool,
    /// The score lines of all patterns.
    pub score_lines: bool,
}

/// A part of the slab that no joint or score line crosses.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// From 1, from the bottom up and left to right; it depends on the lines, not on their order.
    pub id: usize,
    /// Its shape; cut-outs and sections that lie within it are its holes.
    pub piece: Piece,
    /// Its area.
    pub area: Area,
    /// All its edges together.
    pub perimeter: Length,
    /// The longer side of the smallest rectangle around it.
    pub long: Length,
    /// The shorter side of that rectangle.
    pub short: Length,
    ground: MultiPolygon<f64>,
}

/// A stretch along which two sections meet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meeting {
    /// The ids of the two sections, the lower first.
    pub sections: (usize, usize),
    /// How long they meet.
    pub length: Length,
    /// How much of that is a joint; the rest is a score line alone.
    pub at_joints: Length,
}

/// The sections of a slab.
#[derive(Debug, Clone)]
pub struct Sections {
    sections: Vec<Section>,
    meetings: Vec<Meeting>,
    net: Net,
    faces: Faces,
}

impl Section {
    /// The zones it lies in, with the area in each; zones that it misses are left out.
    #[must_use]
    pub fn zones<'a>(&self, plan: &'a Plan) -> Vec<Share<'a>> {
        let shared = |zone: &'a crate::Zone| {
            let area = ground::area(&ground::common(&self.ground, zone.ground.as_ref()?));
            (area > 1e-9 * self.area.as_square_meters()).then(|| Share { zone, area: Area::square_meters(area) })
        };
        plan.zones().iter().filter_map(shared).collect()
    }

    /// How much of it a patch covers.
    #[must_use]
    pub fn covered(&self, patch: &Patch) -> Area {
        Area::square_meters(patch.on(&self.ground))
    }

    /// Whether the point lies in it or on its edge.
    #[must_use]
    pub fn contains(&self, at: Point) -> bool {
        ground::holds(&self.ground, at)
    }

    pub(super) fn rings(&self) -> Vec<Vec<Coord<f64>>> {
        let ring = |points: &Vec<Point>| points.iter().map(|p| p.coord()).collect();
        std::iter::once(&self.piece.outer).chain(&self.piece.holes).map(ring).collect()
    }
}

impl Sections {
    /// Cuts the slab. Lines that end on the slab without meeting another line cut nothing.
    ///
    /// # Errors
    /// [`LayoutError::NotDrawn`], [`LayoutError::TooMany`] or [`LayoutError::TooFine`].
    pub fn of(plan: &Plan, cuts: Cuts) -> Result<Self, LayoutError> {
        let placed = Placed::of(plan)?;
        let mut lines: Vec<(Line<f64>, Role)> = Vec::new();
        if cuts.joints {
            lines.extend(lined(&placed.joints, Role::Joint));
        }
        if cuts.score_lines {
            placed.scores.iter().for_each(|s| lines.extend(lined(s, Role::Score)));
        }
        Self::cut(plan, &placed, lines)
    }

    /// Cuts the slab by lines that are clipped to it already.
    pub(super) fn cut(plan: &Plan, placed: &Placed, lines: Vec<(Line<f64>, Role)>) -> Result<Self, LayoutError> {
        let mut all = lined(&placed.walls, Role::Wall);
        all.extend(lines);
        let net = Net::of(&all, placed.same)?;
        let faces = Faces::of(&net);
        adds_up(&faces, plan.area())?;
        Ok(Self::numbered(net, faces))
    }

    fn numbered(net: Net, faces: Faces) -> Self {
        let sections = faces.faces.iter().enumerate().map(|(i, face)| section(i + 1, face)).collect();
        let mut pairs: BTreeMap<(usize, usize), (f64, f64)> = BTreeMap::new();
        for (a, b, length, tags) in &faces.between {
            let pair = pairs.entry((a + 1, b + 1)).or_default();
            pair.0 += length;
            pair.1 += if tags.joint { *length } else { 0.0 };
        }
        let meeting = |(sections, (length, at_joints))| {
            let (length, at_joints) = (Length::meters(length), Length::meters(at_joints));
            Meeting { sections, length, at_joints }
        };
        Self { sections, meetings: pairs.into_iter().map(meeting).collect(), net, faces }
    }

    /// The sections in the order of their ids.
    #[must_use]
    pub fn sections(&self) -> &[Section] {
        &self.sections
    }

    /// Which sections meet, and how far.
    #[must_use]
    pub fn meetings(&self) -> &[Meeting] {
        &self.meetings
    }

    /// The section in which the point lies; on an edge the one with the lower id.
    #[must_use]
    pub fn at(&self, at: Point) -> Option<&Section> {
        self.sections.iter().find(|s| s.contains(at))
    }

    /// How much of each section a patch covers, by id; sections that it misses are left out.
    #[must_use]
    pub fn shares(&self, patch: &Patch) -> Vec<(usize, Area)> {
        let share = |s: &Section| (s.id, s.covered(patch));
        let seen = |(id, area): &(usize, Area)| *area > self.sections[id - 1].area * 1e-12;
        self.sections.iter().map(share).filter(seen).collect()
    }

    /// Sections joined to larger ones of at most the wished area, such as what a crew can keep wet:
    /// time and again the smallest joins the neighbor along which it meets farthest, as long as both
    /// together are small enough. A section larger than the wish stays as it is. Ids are given anew.
    ///
    /// # Errors
    /// [`LayoutError::OutOfRange`] when the wish is not above zero, [`LayoutError::TooManySections`].
    pub fn merged(&self, wish: Area) -> Result<Self, LayoutError> {
        if !(wish > Area::ZERO && wish.as_square_meters().is_finite()) {
            return Err(LayoutError::area("wish", wish, "an area above zero"));
        }
        let group = super::merge::groups(&self.faces, wish.as_square_meters() * (1.0 + ROUNDING))?;
        let side = |side: (usize, usize)| self.faces.left_of.get(&side).map(|f| group[*f]);
        let kept = self.net.pieces.iter().filter(|((a, b), _)| side((*a, *b)) != side((*b, *a)));
        let net = Net { places: self.net.places.clone(), pieces: kept.map(|(k, t)| (*k, *t)).collect() };
        let faces = Faces::of(&net);
        adds_up(&faces, self.sections.iter().map(|s| s.area).sum())?;
        Ok(Self::numbered(net, faces))
    }

    pub(super) fn net(&self) -> &Net {
        &self.net
    }
}

/// Lines with what they are.
pub(super) fn lined(lines: &[Line<f64>], role: Role) -> Vec<(Line<f64>, Role)> {
    lines.iter().map(|l| (*l, role)).collect()
}

/// Nothing of the slab may be lost or counted twice.
pub(super) fn adds_up(faces: &Faces, whole: Area) -> Result<(), LayoutError> {
    let sum = Area::square_meters(faces.faces.iter().map(|f| f.area).sum());
    let off = (sum - whole).abs() / whole;
    if off <= ROUNDING { Ok(()) } else { Err(LayoutError::TooFine { sum, whole }) }
}

/// A face for drawing.
pub(super) fn piece(face: &Face) -> Piece {
    let ring = |ring: &Vec<Coord<f64>>| ring.iter().map(|c| Point::of(*c)).collect();
    Piece { outer: ring(&face.rings[0]), holes: face.rings[1..].iter().map(ring).collect() }
}

fn section(id: usize, face: &Face) -> Section {
    let extent = measure::extent(&face.rings[0]);
    Section {
        id,
        piece: piece(face),
        area: Area::square_meters(face.area),
        perimeter: measure::around(&face.rings),
        long: Length::meters(extent.long),
        short: Length::meters(extent.short),
        ground: face.ground(),
    }
}
