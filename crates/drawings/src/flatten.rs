//! Entities as lines in the drawing's own coordinates, blocks opened.

use std::collections::{BTreeMap, HashMap};

use crate::affine::Affine;
use crate::curve::{Arc, Path};
use crate::entity::{Block, Entity, Facing, Insert, PolylineKind, Shape};
use crate::scan::{Scanned, limit};
use crate::{DrawingError, Label, Spot};

/// How deep blocks may be nested.
const DEEPEST: usize = 16;
/// The most entities and points after blocks are opened.
const MAX_PLACED: usize = 200_000;
const MAX_POINTS: usize = 1_000_000;

/// What a layer holds before its lines are joined.
#[derive(Debug, Default)]
pub(crate) struct Loose {
    /// Lines, and whether they are closed.
    pub(crate) paths: Vec<(Path, bool)>,
    pub(crate) labels: Vec<Label>,
    pub(crate) ignored: BTreeMap<String, usize>,
}

/// Opens all blocks.
pub(crate) fn flatten(file: &Scanned) -> Result<BTreeMap<String, Loose>, DrawingError> {
    let blocks = file.blocks.iter().map(|block| (block.name.to_uppercase(), block)).collect();
    let mut desk = Desk { blocks, out: BTreeMap::new(), placed: 0, points: 0 };
    for ((layer, kind), count) in &file.ignored {
        *desk.layer(layer).ignored.entry(kind.clone()).or_default() += count;
    }
    for entity in &file.entities {
        desk.entity(entity, &Within { place: Affine::SAME, layer: None, depth: 0 })?;
    }
    Ok(desk.out)
}

/// Where an entity is met: in the drawing itself, or in a block that is placed.
struct Within<'a> {
    place: Affine,
    /// The layer of the placed block, which what is on layer 0 takes over.
    layer: Option<&'a str>,
    depth: usize,
}

struct Desk<'a> {
    blocks: HashMap<String, &'a Block>,
    out: BTreeMap<String, Loose>,
    placed: usize,
    points: usize,
}

impl Desk<'_> {
    fn layer(&mut self, name: &str) -> &mut Loose {
        self.out.entry(name.to_owned()).or_default()
    }

    fn entity(&mut self, entity: &Entity, within: &Within<'_>) -> Result<(), DrawingError> {
        self.placed += 1;
        limit(self.placed, MAX_PLACED, "entities with those in blocks")?;
        let own = entity.layer.as_str();
        let layer = within.layer.filter(|_| own == "0").unwrap_or(own).to_owned();
        if entity.in_paper_space {
            self.leave_out(&layer, "paper space".to_owned());
            return Ok(());
        }
        let Some(placed) = shape_place(entity) else {
            self.leave_out(&layer, format!("{}, on a slant", slanted(&entity.shape)));
            return Ok(());
        };
        let place = within.place.after(placed);
        let (path, closed) = match &entity.shape {
            Shape::Line { from, to } => (Path { points: vec![*from, *to], ..Path::default() }, false),
            Shape::Circle { center, radius } => {
                (chords(&Arc::circular(*center, radius.abs(), 0.0, std::f64::consts::TAU), true), true)
            }
            Shape::Arc { center, radius, from_degrees, to_degrees } => {
                let (from, to) = (from_degrees.to_radians(), to_degrees.to_radians());
                (chords(&Arc::circular(*center, radius.abs(), from, swept(from, to)), false), false)
            }
            Shape::Ellipse { center, major, ratio, from, to } => {
                let ratio = if entity.facing == Facing::Below { -ratio } else { *ratio };
                let minor = Spot::new(-major.y * ratio, major.x * ratio);
                let sweep = swept(*from, *to);
                let closed = sweep >= std::f64::consts::TAU - 1e-9;
                let arc = Arc { center: *center, major: *major, minor, from: *from, sweep };
                (chords(&arc, closed), closed)
            }
            Shape::LightPolyline { corners, closed } | Shape::Polyline { corners, closed, .. } => {
                (Path::bulged(corners, *closed), *closed)
            }
            Shape::Text { text, at } => {
                self.label(&layer, text, place.of(*at));
                return Ok(());
            }
            Shape::Insert(insert) => return self.insert(insert, &layer, place, within.depth),
        };
        let path = path.placed(place);
        self.points += path.points.len();
        limit(self.points, MAX_POINTS, "points with those in blocks")?;
        self.layer(&layer).paths.push((path, closed));
        Ok(())
    }

    fn leave_out(&mut self, layer: &str, kind: String) {
        *self.layer(layer).ignored.entry(kind).or_default() += 1;
    }

    fn label(&mut self, layer: &str, text: &str, at: Spot) {
        let text = text.trim();
        if !text.is_empty() {
            self.layer(layer).labels.push(Label { text: text.to_owned(), at });
        }
    }

    fn insert(&mut self, insert: &Insert, layer: &str, place: Affine, depth: usize) -> Result<(), DrawingError> {
        let Some(block) = self.blocks.get(&insert.block.to_uppercase()).copied() else {
            self.leave_out(layer, "INSERT of a block that is not there".to_owned());
            return Ok(());
        };
        if depth >= DEEPEST {
            return Err(DrawingError::Nested { name: block.name.clone(), depth: DEEPEST });
        }
        let (columns, rows) = (insert.columns.max(1), insert.rows.max(1));
        let base = Affine::moved(-block.base.x, -block.base.y);
        let turned = Affine::turned(insert.turned_degrees);
        for (column, row) in (0..columns).flat_map(|c| (0..rows).map(move |r| (c, r))) {
            self.placed += 1;
            limit(self.placed, MAX_PLACED, "entities with those in blocks")?;
            let step = Affine::moved(f64::from(column) * insert.spacing.x, f64::from(row) * insert.spacing.y);
            let place = place
                .after(Affine::moved(insert.at.x, insert.at.y))
                .after(turned)
                .after(step)
                .after(Affine::scaled(insert.scale.x, insert.scale.y))
                .after(base);
            for entity in &block.entities {
                self.entity(entity, &Within { place, layer: Some(layer), depth: depth + 1 })?;
            }
        }
        Ok(())
    }
}

fn chords(arc: &Arc, closed: bool) -> Path {
    let mut path = Path::default();
    arc.chords(&mut path, !closed);
    path
}

/// From angle to angle counter-clockwise, above nothing and up to a full turn.
fn swept(from: f64, to: f64) -> f64 {
    let sweep = (to - from).rem_euclid(std::f64::consts::TAU);
    if sweep <= 1e-12 { std::f64::consts::TAU } else { sweep }
}

/// From the coordinates of an entity to those around it; nothing for what stands on a slant.
fn shape_place(entity: &Entity) -> Option<Affine> {
    match (&entity.shape, entity.facing) {
        (Shape::Polyline { kind: PolylineKind::Mesh, .. }, _) => None,
        // These are in the coordinates around them, whichever way they face.
        (Shape::Line { .. } | Shape::Text { .. } | Shape::Polyline { kind: PolylineKind::Spatial, .. }, _) => {
            Some(Affine::SAME)
        }
        (_, Facing::Slant) => None,
        // An ellipse facing down has its axes as they are seen and turns the other way.
        (Shape::Ellipse { .. }, _) | (_, Facing::Above) => Some(Affine::SAME),
        (_, Facing::Below) => Some(Affine::FROM_BELOW),
    }
}

/// What is said of a shape that is left out for its slant.
const fn slanted(shape: &Shape) -> &'static str {
    match shape {
        Shape::Line { .. } => "LINE",
        Shape::Circle { .. } => "CIRCLE",
        Shape::Arc { .. } => "ARC",
        Shape::Ellipse { .. } => "ELLIPSE",
        Shape::LightPolyline { .. } => "LWPOLYLINE",
        Shape::Polyline { .. } => "POLYLINE of a mesh or",
        Shape::Text { .. } => "TEXT",
        Shape::Insert(_) => "INSERT",
    }
}
