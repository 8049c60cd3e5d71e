//! The tiles that a pattern of score lines makes: whole ones, cut ones, slivers.

use geo::Line;
use units::{Area, Fraction, Length};

use super::faces::Faces;
use super::net::{Net, Role};
use super::runs::Placed;
use super::sections::{adds_up, lined};
use super::{LayoutError, measure};
use crate::clip::{same_place, walls};
use crate::{Piece, Plan, ScoreSpec, ground};

/// Difference in area, as a share, up to which a tile counts as whole: a sixteenth of an inch on the
/// side of a 4 ft tile is 0.0013, so this is far below what a tape sees.
const WHOLE_WITHIN: f64 = 1e-6;

/// One tile of a pattern.
#[derive(Debug, Clone, PartialEq)]
pub struct Tile {
    /// Its shape, with what is cut out of it.
    pub piece: Piece,
    /// Its area.
    pub area: Area,
    /// Whether it has the area of a full tile; never for patterns that have none.
    pub whole: bool,
    /// Its least width.
    pub narrowest: Length,
    /// Whether it is cut, and narrower than the wished share of a full tile's shorter side.
    pub sliver: bool,
}

/// The tiles of one pattern.
#[derive(Debug, Clone, PartialEq)]
pub struct Tiles {
    /// All of them, from the bottom up.
    pub tiles: Vec<Tile>,
    /// How many are whole.
    pub whole: usize,
    /// How many are cut: by the edge, a cut-out, or because the pattern has no full tile.
    pub cut: usize,
    /// How many of the cut ones are slivers.
    pub slivers: usize,
    /// The sides of a full tile; `None` for a border or free lines.
    pub full: Option<(Length, Length)>,
}

/// The tiles of one pattern, by its place in [`Plan::patterns`]: the parts into which its lines cut the
/// slab or its zone. A cut tile narrower than `sliver` of a full tile's shorter side is marked.
///
/// A tile that an edge cuts off without taking any of its area counts as whole. The width of a tile is
/// that of its hull, so a thin arm of a wide tile is not seen.
///
/// # Errors
/// [`LayoutError::NotDrawn`], [`LayoutError::NoPattern`], [`LayoutError::TooMany`] or
/// [`LayoutError::TooFine`].
pub fn tiles(plan: &Plan, index: usize, sliver: Fraction) -> Result<Tiles, LayoutError> {
    let placed = Placed::of(plan)?;
    let count = plan.patterns().len();
    let (pattern, lines) =
        plan.patterns().get(index).zip(placed.scores.get(index)).ok_or(LayoutError::NoPattern { index, count })?;
    let scope = plan.scope(pattern.run.zone).ok_or(LayoutError::NotDrawn)?;
    let mut all: Vec<(Line<f64>, Role)> = walls(scope).into_iter().map(|l| (l, Role::Wall)).collect();
    all.extend(lined(lines, Role::Score));
    let faces = Faces::of(&Net::of(&all, same_place(scope))?);
    adds_up(&faces, Area::square_meters(ground::area(scope)))?;
    let full = match pattern.spec() {
        ScoreSpec::Grid(grid) => Some((grid.spacing_x.value(), grid.spacing_y.value())),
        ScoreSpec::Diagonal(diagonal) => Some((diagonal.spacing.value(), diagonal.spacing.value())),
        ScoreSpec::Border(_) | ScoreSpec::Lines(_) => None,
    };
    let tiles: Vec<Tile> = faces
        .faces
        .iter()
        .map(|face| {
            let area = Area::square_meters(face.area);
            let narrowest = Length::meters(measure::extent(&face.rings[0]).narrowest);
            let whole = full.is_some_and(|(x, y)| (area / (x * y) - 1.0).abs() <= WHOLE_WITHIN);
            let thin = full.is_some_and(|(x, y)| narrowest < x.min(y) * sliver.as_share());
            Tile { piece: super::sections::piece(face), area, whole, narrowest, sliver: thin && !whole }
        })
        .collect();
    let whole = tiles.iter().filter(|t| t.whole).count();
    let slivers = tiles.iter().filter(|t| t.sliver).count();
    Ok(Tiles { whole, cut: tiles.len() - whole, slivers, full, tiles })
}
