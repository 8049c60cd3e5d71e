//! Entities as lines in the drawing's own coordinates, blocks opened.

use std::collections::{BTreeMap, HashMap};

use dxf::entities::{Entity, EntityType, Insert, LwPolyline, MText, Polyline};
use dxf::{Block, Vector};

use crate::affine::Affine;
use crate::curve::{Arc, Path};
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
pub(crate) fn flatten(
    file: &dxf::Drawing,
    ignored: BTreeMap<(String, String), usize>,
) -> Result<BTreeMap<String, Loose>, DrawingError> {
    let blocks = file.blocks().map(|block| (block.name.to_uppercase(), block)).collect();
    let mut desk = Desk { blocks, out: BTreeMap::new(), placed: 0, points: 0 };
    for ((layer, kind), count) in ignored {
        *desk.layer(&layer).ignored.entry(kind).or_default() += count;
    }
    for entity in file.entities() {
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
        let own = entity.common.layer.as_str();
        let layer = within.layer.filter(|_| own == "0").unwrap_or(own).to_owned();
        if entity.common.is_in_paper_space {
            *self.layer(&layer).ignored.entry("paper space".to_owned()).or_default() += 1;
            return Ok(());
        }
        let slanted = |desk: &mut Self, kind: &str| {
            *desk.layer(&layer).ignored.entry(format!("{kind}, on a slant")).or_default() += 1;
            Ok(())
        };
        let (path, closed) = match &entity.specific {
            EntityType::Line(line) => {
                let points = vec![Spot::new(line.p1.x, line.p1.y), Spot::new(line.p2.x, line.p2.y)];
                (Path { points, ..Path::default() }.placed(within.place), false)
            }
            EntityType::Circle(circle) => {
                let Some(own) = facing(&circle.normal) else { return slanted(self, "CIRCLE") };
                let center = Spot::new(circle.center.x, circle.center.y);
                let arc = Arc::circular(center, circle.radius.abs(), 0.0, std::f64::consts::TAU);
                (chords(&arc, true).placed(within.place.after(own)), true)
            }
            EntityType::Arc(arc) => {
                let Some(own) = facing(&arc.normal) else { return slanted(self, "ARC") };
                let center = Spot::new(arc.center.x, arc.center.y);
                let sweep = swept(arc.start_angle.to_radians(), arc.end_angle.to_radians());
                let arc = Arc::circular(center, arc.radius.abs(), arc.start_angle.to_radians(), sweep);
                (chords(&arc, false).placed(within.place.after(own)), false)
            }
            EntityType::Ellipse(ellipse) => {
                let Some(side) = upright(&ellipse.normal) else { return slanted(self, "ELLIPSE") };
                let major = Spot::new(ellipse.major_axis.x, ellipse.major_axis.y);
                let ratio = side * ellipse.minor_axis_ratio;
                let minor = Spot::new(-major.y * ratio, major.x * ratio);
                let sweep = swept(ellipse.start_parameter, ellipse.end_parameter);
                let closed = sweep >= std::f64::consts::TAU - 1e-9;
                let center = Spot::new(ellipse.center.x, ellipse.center.y);
                let arc = Arc { center, major, minor, from: ellipse.start_parameter, sweep };
                (chords(&arc, closed).placed(within.place), closed)
            }
            EntityType::LwPolyline(line) => match light(line) {
                Some((path, closed)) => (path.placed(within.place), closed),
                None => return slanted(self, "LWPOLYLINE"),
            },
            EntityType::Polyline(line) => match heavy(line) {
                Some((path, closed)) => (path.placed(within.place), closed),
                None => return slanted(self, "POLYLINE of a mesh or"),
            },
            EntityType::Text(text) => return self.label(&layer, &text.value, text.location.x, text.location.y, within),
            EntityType::MText(text) => {
                return self.label(&layer, &plain(text), text.insertion_point.x, text.insertion_point.y, within);
            }
            EntityType::Insert(insert) => return self.insert(insert, &layer, within),
            // The scan lets nothing else through but the ends of lists.
            _ => return Ok(()),
        };
        self.points += path.points.len();
        limit(self.points, MAX_POINTS, "points with those in blocks")?;
        self.layer(&layer).paths.push((path, closed));
        Ok(())
    }

    fn label(&mut self, layer: &str, text: &str, x: f64, y: f64, within: &Within<'_>) -> Result<(), DrawingError> {
        let text = text.trim();
        if !text.is_empty() {
            let at = within.place.of(Spot::new(x, y));
            self.layer(layer).labels.push(Label { text: text.to_owned(), at });
        }
        Ok(())
    }

    fn insert(&mut self, insert: &Insert, layer: &str, within: &Within<'_>) -> Result<(), DrawingError> {
        let Some(own) = facing(&insert.extrusion_direction) else {
            *self.layer(layer).ignored.entry("INSERT, on a slant".to_owned()).or_default() += 1;
            return Ok(());
        };
        let Some(block) = self.blocks.get(&insert.name.to_uppercase()).copied() else {
            *self.layer(layer).ignored.entry("INSERT of a block that is not there".to_owned()).or_default() += 1;
            return Ok(());
        };
        if within.depth >= DEEPEST {
            return Err(DrawingError::Nested { name: block.name.clone(), depth: DEEPEST });
        }
        let (columns, rows) = (insert.column_count.max(1), insert.row_count.max(1));
        let base = Affine::moved(-block.base_point.x, -block.base_point.y);
        let turned = Affine::turned(insert.rotation);
        for (column, row) in (0..columns).flat_map(|c| (0..rows).map(move |r| (c, r))) {
            self.placed += 1;
            limit(self.placed, MAX_PLACED, "entities with those in blocks")?;
            let step = Affine::moved(f64::from(column) * insert.column_spacing, f64::from(row) * insert.row_spacing);
            let place = within
                .place
                .after(own)
                .after(Affine::moved(insert.location.x, insert.location.y))
                .after(turned)
                .after(step)
                .after(Affine::scaled(insert.x_scale_factor, insert.y_scale_factor))
                .after(base);
            for entity in &block.entities {
                self.entity(entity, &Within { place, layer: Some(layer), depth: within.depth + 1 })?;
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

/// +1 for what is seen from above, −1 from below; nothing on a slant.
fn upright(normal: &Vector) -> Option<f64> {
    let flat = libm::hypot(normal.x, normal.y) <= 1e-6 * normal.z.abs();
    (flat && normal.z != 0.0).then_some(normal.z.signum())
}

/// From the coordinates of an entity to those around it.
fn facing(normal: &Vector) -> Option<Affine> {
    upright(normal).map(|side| if side > 0.0 { Affine::SAME } else { Affine::FROM_BELOW })
}

fn light(line: &LwPolyline) -> Option<(Path, bool)> {
    let own = facing(&line.extrusion_direction)?;
    let corners: Vec<(Spot, f64)> = line.vertices.iter().map(|v| (Spot::new(v.x, v.y), v.bulge)).collect();
    Some((Path::bulged(&corners, line.is_closed()).placed(own), line.is_closed()))
}

fn heavy(line: &Polyline) -> Option<(Path, bool)> {
    if line.is_3d_polygon_mesh() || line.is_polyface_mesh() {
        return None;
    }
    let own = if line.is_3d_polyline() { Affine::SAME } else { facing(&line.normal)? };
    // Control points of a spline frame are no points of the line.
    let real = line.vertices().filter(|v| !v.is_spline_frame_control_point());
    let corners: Vec<(Spot, f64)> = real.map(|v| (Spot::new(v.location.x, v.location.y), v.bulge)).collect();
    Some((Path::bulged(&corners, line.is_closed()).placed(own), line.is_closed()))
}

/// The text without the codes for its look: `{\fSans;Hall}\PNorth` is `Hall North`.
fn plain(text: &MText) -> String {
    let whole = text.extended_text.concat() + &text.text;
    let mut out = String::new();
    let mut letters = whole.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '{' | '}' => {}
            '\\' => match letters.next() {
                Some('P' | '~') => out.push(' '),
                Some(own @ ('\\' | '{' | '}')) => out.push(own),
                // A code with a value runs to its semicolon; these have none.
                Some('L' | 'l' | 'O' | 'o' | 'K' | 'k') | None => {}
                Some(_) => while letters.next().is_some_and(|c| c != ';') {},
            },
            other => out.push(other),
        }
    }
    out
}

fn limit(count: usize, most: usize, what: &'static str) -> Result<(), DrawingError> {
    if count > most { Err(DrawingError::TooLarge { what, most }) } else { Ok(()) }
}
