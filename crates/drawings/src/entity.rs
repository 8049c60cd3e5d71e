//! Entities as the file has them: in their own coordinates, blocks unopened.

use std::f64::consts::TAU;

use crate::Spot;
use crate::fields::{Fields, Value};
use crate::text::without_look;

/// Groups that every entity may have: layer, place, paper space, flags, the way it faces.
pub(crate) const COMMON: [i32; 9] = [8, 10, 20, 30, 67, 70, 210, 220, 230];
/// Groups of a vertex and of the beginning of a block.
pub(crate) const VERTEX: [i32; 6] = [8, 10, 20, 30, 42, 70];
pub(crate) const BLOCK: [i32; 6] = [2, 8, 10, 20, 30, 70];

/// The further groups of a kind that a plan needs; nothing for a kind that it does not.
pub(crate) fn codes(kind: &str) -> Option<&'static [i32]> {
    Some(match kind {
        "LINE" => &[11, 21, 31],
        "CIRCLE" => &[40],
        "ARC" => &[40, 50, 51],
        "ELLIPSE" => &[11, 21, 31, 40, 41, 42],
        "LWPOLYLINE" => &[42],
        "POLYLINE" => &[],
        "INSERT" => &[2, 41, 42, 43, 44, 45, 50, 71],
        "TEXT" => &[1],
        "MTEXT" => &[1, 3],
        _ => return None,
    })
}

/// One entity of a known kind.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Entity {
    pub(crate) layer: String,
    /// Drawn on the sheet around the drawing, not in it.
    pub(crate) in_paper_space: bool,
    pub(crate) facing: Facing,
    pub(crate) shape: Shape,
}

/// From where an entity is seen as it was drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Facing {
    Above,
    Below,
    Slant,
}

/// What an entity is, angles as the file has them: of arcs in degrees, of ellipses in radians.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Shape {
    Line { from: Spot, to: Spot },
    Circle { center: Spot, radius: f64 },
    Arc { center: Spot, radius: f64, from_degrees: f64, to_degrees: f64 },
    Ellipse { center: Spot, major: Spot, ratio: f64, from: f64, to: f64 },
    LightPolyline { corners: Vec<(Spot, f64)>, closed: bool },
    Polyline { corners: Vec<(Spot, f64)>, closed: bool, kind: PolylineKind },
    Text { text: String, at: Spot },
    Insert(Insert),
}

/// What the vertices of a polyline are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum PolylineKind {
    Flat,
    /// Its points are in the drawing's coordinates, whichever way it faces.
    Spatial,
    /// A surface: its vertices are no line.
    Mesh,
}

/// A block placed, once or in rows and columns.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Insert {
    pub(crate) block: String,
    pub(crate) at: Spot,
    pub(crate) scale: Spot,
    pub(crate) turned_degrees: f64,
    pub(crate) columns: i16,
    pub(crate) rows: i16,
    /// From one column and one row to the next.
    pub(crate) spacing: Spot,
}

/// A named group of entities that an insert places.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Block {
    pub(crate) name: String,
    pub(crate) base: Spot,
    pub(crate) entities: Vec<Entity>,
}

impl Entity {
    /// Of a kind that [`codes`] knows; nothing for another.
    pub(crate) fn read(kind: &str, fields: &Fields) -> Option<Self> {
        let origin = Spot::default();
        let at = fields.spot(10, origin);
        let closed = fields.whole(70, 0) & 1 != 0;
        let shape = match kind {
            "LINE" => Shape::Line { from: at, to: fields.spot(11, origin) },
            "CIRCLE" => Shape::Circle { center: at, radius: fields.number(40, 0.0) },
            "ARC" => Shape::Arc {
                center: at,
                radius: fields.number(40, 0.0),
                from_degrees: fields.number(50, 0.0),
                to_degrees: fields.number(51, 360.0),
            },
            "ELLIPSE" => Shape::Ellipse {
                center: at,
                major: fields.spot(11, Spot::new(1.0, 0.0)),
                ratio: fields.number(40, 1.0),
                from: fields.number(41, 0.0),
                to: fields.number(42, TAU),
            },
            "LWPOLYLINE" => Shape::LightPolyline { corners: corners(fields), closed },
            "POLYLINE" => Shape::Polyline { corners: Vec::new(), closed, kind: polyline_kind(fields.whole(70, 0)) },
            "INSERT" => Shape::Insert(insert(fields, at)),
            "TEXT" => Shape::Text { text: fields.text(1).to_owned(), at },
            "MTEXT" => Shape::Text { text: without_look(&long_text(fields)), at },
            _ => return None,
        };
        Some(Self { layer: layer(fields), in_paper_space: fields.whole(67, 0) == 1, facing: facing(fields), shape })
    }

    /// A vertex of this polyline, which the file has as an entity of its own.
    pub(crate) fn push_vertex(&mut self, fields: &Fields) {
        // Control points of a spline frame are no points of the line.
        let of_frame = fields.whole(70, 0) & 16 != 0;
        if let Shape::Polyline { corners, .. } = &mut self.shape
            && !of_frame
        {
            corners.push((fields.spot(10, Spot::default()), fields.number(42, 0.0)));
        }
    }
}

impl Block {
    pub(crate) fn read(fields: &Fields) -> Self {
        Self { name: fields.text(2).to_owned(), base: fields.spot(10, Spot::default()), entities: Vec::new() }
    }
}

fn layer(fields: &Fields) -> String {
    match fields.text(8) {
        "" => "0".to_owned(),
        name => name.to_owned(),
    }
}

fn facing(fields: &Fields) -> Facing {
    let (x, y, z) = (fields.number(210, 0.0), fields.number(220, 0.0), fields.number(230, 1.0));
    match libm::hypot(x, y) <= 1e-6 * z.abs() {
        true if z > 0.0 => Facing::Above,
        true if z < 0.0 => Facing::Below,
        _ => Facing::Slant,
    }
}

/// Each corner begins with its x; what follows until the next belongs to it.
fn corners(fields: &Fields) -> Vec<(Spot, f64)> {
    let mut corners: Vec<(Spot, f64)> = Vec::with_capacity(fields.points());
    for (code, value) in fields.iter() {
        match (code, value, corners.last_mut()) {
            (10, Value::Number(x), _) => corners.push((Spot::new(*x, 0.0), 0.0)),
            (20, Value::Number(y), Some((at, _))) => at.y = *y,
            (42, Value::Number(number), Some((_, bulge))) => *bulge = *number,
            _ => {}
        }
    }
    corners
}

const fn polyline_kind(flags: i16) -> PolylineKind {
    match (flags & (16 | 64) != 0, flags & 8 != 0) {
        (true, _) => PolylineKind::Mesh,
        (false, true) => PolylineKind::Spatial,
        (false, false) => PolylineKind::Flat,
    }
}

fn insert(fields: &Fields, at: Spot) -> Insert {
    Insert {
        block: fields.text(2).to_owned(),
        at,
        scale: Spot::new(fields.number(41, 1.0), fields.number(42, 1.0)),
        turned_degrees: fields.number(50, 0.0),
        columns: fields.whole(70, 1),
        rows: fields.whole(71, 1),
        spacing: Spot::new(fields.number(44, 0.0), fields.number(45, 0.0)),
    }
}

/// A long text comes in pieces, its end last.
fn long_text(fields: &Fields) -> String {
    let pieces = fields.iter().filter_map(|(code, value)| match (code, value) {
        (3, Value::Text(text)) => Some(text.as_str()),
        _ => None,
    });
    pieces.chain([fields.text(1)]).collect()
}
