//! From a drawing to a plan, by layers that a person chose.

use slab_plan::{JointSpec, PlanSpec, ShapeSpec, WrittenPoint, ZoneSpec};
use units::Length;

use crate::{Drawing, DrawingError, Layer, Loop, Notation, Spot, Units};

/// The most closed lines on a layer, corners of one and corners of all: what a plan accepts.
const MAX_LOOPS: usize = 500;
const MAX_CORNERS: usize = 2_000;
const MAX_CORNERS_ON_LAYER: usize = 60_000;
/// The most texts that are looked at for the name of a zone.
const MAX_LABELS: usize = 200;

/// The widest drawing that is a slab, meters: what a plan accepts.
const WIDEST: f64 = 10_000.0;

/// Which layers are what.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Choice {
    /// The layer with the line around the slab; closed lines inside it are cut-outs.
    pub outline_layer: String,
    /// Layers whose closed lines are cut out.
    pub cut_out_layers: Vec<String>,
    /// Layers whose closed lines are zones, named after the text inside, else after the layer.
    pub zone_layers: Vec<String>,
    /// Layers whose lines are joints.
    pub joint_layers: Vec<String>,
    /// The unit, in place of the file's own word.
    pub units: Option<Units>,
    /// How lengths are written.
    pub notation: Notation,
}

impl Choice {
    /// The line around the slab alone, in the file's own unit, written in meters.
    #[must_use]
    pub fn of_outline(layer: &str) -> Self {
        Self { outline_layer: layer.to_owned(), ..Self::default() }
    }
}

impl Drawing {
    /// The plan that the chosen layers make, its lower left corner at the plan's origin. Whether zones
    /// fit is for [`slab_plan::Plan::resolve`] to say.
    ///
    /// # Errors
    /// [`DrawingError`]: the unit is not told, a layer is not there, a line that should be closed is
    /// open (with where and how wide), lines branch, or closed lines do not lie inside the outline.
    pub fn plan(&self, choice: &Choice) -> Result<PlanSpec, DrawingError> {
        let units = choice.units.unwrap_or(self.units);
        let one = units.one().ok_or(DrawingError::UnitsNotTold)?;
        let around = self.closed(&choice.outline_layer, one)?;
        let nothing = || DrawingError::NothingClosed { layer: choice.outline_layer.clone() };
        let outline = around.iter().max_by(|a, b| a.area.total_cmp(&b.area)).ok_or_else(nothing)?;
        let desk = Desk::of(outline, one, units, choice.notation)?;
        let mut cut_outs = Vec::new();
        for inner in around.iter().filter(|l| !std::ptr::eq(*l, outline)) {
            if let Some(at) = desk.outside(inner) {
                let (layer, count) = (choice.outline_layer.clone(), around.len());
                return Err(DrawingError::Apart { layer, count, at });
            }
            cut_outs.push(desk.shape(inner)?);
        }
        for name in &choice.cut_out_layers {
            for inner in self.closed(name, one)? {
                if let Some(at) = desk.outside(inner) {
                    return Err(DrawingError::Outside { layer: name.clone(), at });
                }
                cut_outs.push(desk.shape(inner)?);
            }
        }
        let mut zones: Vec<ZoneSpec> = Vec::new();
        for name in &choice.zone_layers {
            for zone in self.closed(name, one)? {
                let name = unique(self.label_in(zone, name), &zones);
                zones.push(ZoneSpec { name, shape: Some(desk.shape(zone)?) });
            }
        }
        let mut joints = Vec::new();
        for name in &choice.joint_layers {
            for line in lines(self.layer(name)?) {
                joints.extend(desk.line(&line)?.map(|line| JointSpec { line, kind: None, zone: None }));
            }
        }
        let outline = desk.shape(outline)?;
        Ok(PlanSpec { outline, cut_outs, zones, joints, score_lines: Vec::new(), north: None })
    }

    fn layer(&self, name: &str) -> Result<&Layer, DrawingError> {
        let unknown =
            || DrawingError::UnknownLayer { name: name.to_owned(), known: self.layers.keys().cloned().collect() };
        self.layers.get(name).ok_or_else(unknown)
    }

    /// The closed lines of a layer that has nothing else.
    fn closed(&self, name: &str, one: Length) -> Result<&[Loop], DrawingError> {
        let layer = self.layer(name)?;
        if let Some((at, count)) = layer.branches.first() {
            return Err(DrawingError::Branching { layer: name.to_owned(), at: *at, count: *count });
        }
        if let Some(gap) = layer.gaps.first() {
            let (from, to, gap) = (gap.from, gap.to, gap.width());
            return Err(DrawingError::Open { layer: name.to_owned(), from, to, gap, length: one * gap });
        }
        if layer.loops.is_empty() {
            return Err(DrawingError::NothingClosed { layer: name.to_owned() });
        }
        let corners = |loops: &[Loop]| loops.iter().map(|l| l.corners.len()).sum::<usize>();
        let most = layer.loops.iter().map(|l| l.corners.len()).max().unwrap_or_default();
        for (count, most, what) in [
            (layer.loops.len(), MAX_LOOPS, "closed lines on a layer"),
            (most, MAX_CORNERS, "corners of a closed line"),
            (corners(&layer.loops), MAX_CORNERS_ON_LAYER, "corners on a layer"),
        ] {
            if count > most {
                return Err(DrawingError::TooLarge { what, most });
            }
        }
        Ok(&layer.loops)
    }

    /// The first text inside, on the zone's own layer before others; else the layer's name.
    fn label_in<'a>(&'a self, zone: &Loop, layer: &'a str) -> &'a str {
        let own = self.layers.get(layer).into_iter();
        let others = self.layers.iter().filter(|(name, _)| *name != layer).map(|(_, l)| l);
        let (low, high) = bounds(&zone.corners);
        let near = |at: Spot| at.x >= low.x && at.x <= high.x && at.y >= low.y && at.y <= high.y;
        let labels = own.chain(others).flat_map(|l| &l.labels).filter(|label| near(label.at));
        labels.take(MAX_LABELS).find(|label| inside(&zone.corners, label.at)).map_or(layer, |label| label.text.as_str())
    }
}

/// A name that no zone has yet.
fn unique(name: &str, zones: &[ZoneSpec]) -> String {
    let name: String = name.chars().filter(|c| !c.is_control()).take(80).collect();
    let taken = |wish: &str| zones.iter().any(|z| z.name.to_lowercase() == wish.to_lowercase());
    if !taken(&name) {
        return name;
    }
    let numbered = (2..).map(|n| format!("{name} {n}")).find(|wish| !taken(wish));
    numbered.unwrap_or(name)
}

/// Open lines as they are, closed ones back to their start.
fn lines(layer: &Layer) -> Vec<Vec<Spot>> {
    let closed = layer.loops.iter().map(|l| l.corners.iter().chain(l.corners.first()).copied().collect());
    layer.open.iter().map(|chain| chain.points.clone()).chain(closed).collect()
}

/// The drawing's coordinates as points of the plan.
struct Desk<'a> {
    outline: &'a Loop,
    low: Spot,
    one: f64,
    notation: Notation,
    too_wide: DrawingError,
}

impl<'a> Desk<'a> {
    fn of(outline: &'a Loop, one: Length, units: Units, notation: Notation) -> Result<Self, DrawingError> {
        let (low, high) = bounds(&outline.corners);
        let across = one * (high.x - low.x).max(high.y - low.y);
        let too_wide = DrawingError::TooWide { unit: format!("{units:?}").to_lowercase(), across };
        if across.as_meters().is_nan() || across.as_meters() > WIDEST {
            return Err(too_wide);
        }
        Ok(Self { outline, low, one: one.as_meters(), notation, too_wide })
    }

    fn point(&self, at: Spot) -> Result<WrittenPoint, DrawingError> {
        let (x, y) = ((at.x - self.low.x) * self.one, (at.y - self.low.y) * self.one);
        self.notation.point(x, y).map_err(|_| self.too_wide.clone())
    }

    /// Points as written, without two in one place.
    fn points(&self, spots: &[Spot]) -> Result<Vec<WrittenPoint>, DrawingError> {
        let mut points: Vec<WrittenPoint> = Vec::with_capacity(spots.len());
        for spot in spots {
            let point = self.point(*spot)?;
            if points.last() != Some(&point) {
                points.push(point);
            }
        }
        Ok(points)
    }

    fn shape(&self, around: &Loop) -> Result<ShapeSpec, DrawingError> {
        let mut points = self.points(&around.corners)?;
        while points.len() > 1 && points.first() == points.last() {
            points.pop();
        }
        Ok(ShapeSpec::Polygon(points))
    }

    /// A line of two points or more; nothing when rounding leaves one.
    fn line(&self, spots: &[Spot]) -> Result<Option<Vec<WrittenPoint>>, DrawingError> {
        let points = self.points(spots)?;
        Ok((points.len() > 1).then_some(points))
    }

    /// A corner of the loop that lies outside the outline and not on it.
    fn outside(&self, inner: &Loop) -> Option<Spot> {
        let near = 1e-6 * self.outline.area.sqrt();
        let on = |at: &Spot| edges(&self.outline.corners).any(|(a, b)| distance(*at, a, b) <= near);
        inner.corners.iter().find(|at| !inside(&self.outline.corners, **at) && !on(at)).copied()
    }
}

/// The lower left and the upper right corner of the box around.
fn bounds(corners: &[Spot]) -> (Spot, Spot) {
    let least = |axis: fn(&Spot) -> f64| corners.iter().map(axis).fold(f64::INFINITY, f64::min);
    let most = |axis: fn(&Spot) -> f64| corners.iter().map(axis).fold(f64::NEG_INFINITY, f64::max);
    (Spot::new(least(|s| s.x), least(|s| s.y)), Spot::new(most(|s| s.x), most(|s| s.y)))
}

fn edges(corners: &[Spot]) -> impl Iterator<Item = (Spot, Spot)> {
    corners.iter().copied().zip(corners.iter().copied().cycle().skip(1))
}

fn inside(corners: &[Spot], at: Spot) -> bool {
    let crosses =
        |(a, b): &(Spot, Spot)| (a.y > at.y) != (b.y > at.y) && at.x < a.x + (b.x - a.x) * ((at.y - a.y) / (b.y - a.y));
    edges(corners).filter(crosses).count() % 2 == 1
}

fn distance(at: Spot, a: Spot, b: Spot) -> f64 {
    let (x, y) = (b.x - a.x, b.y - a.y);
    let length2 = x * x + y * y;
    let share = if length2 > 0.0 { (((at.x - a.x) * x + (at.y - a.y) * y) / length2).clamp(0.0, 1.0) } else { 0.0 };
    libm::hypot(at.x - a.x - x * share, at.y - a.y - y * share)
}
