//! The ground itself: zones, cut-outs, the edge of the slab, and patches on it.

use slab_plan::Piece;

use super::mark::{Layer, MarkKind, MarkPlace};
use super::{MAX_NUMBERS, Sheet, zone_text};
use crate::boxes::{Box2, Xy};
use crate::svg::{CEMENT, Hatch, INK, IRON, escaped, outline};

/// Fill of a zone.
const GROUND: &str = "#fcfbf8";

/// Pieces of ground in the units of the drawing.
pub(super) struct Patch(pub(super) Vec<Vec<Xy>>);

impl Patch {
    /// Whether a box lies wholly on it.
    pub(super) fn holds(&self, wanted: Box2) -> bool {
        self.covers(wanted.center()) && !self.sides().any(|(a, b)| wanted.crossed_by(a, b))
    }

    /// Whether a point lies on it: a ray from it crosses the edges an odd number of times.
    fn covers(&self, (x, y): Xy) -> bool {
        let crossed = self
            .sides()
            .filter(|((x1, y1), (x2, y2))| (*y1 > y) != (*y2 > y) && x < (x2 - x1) * (y - y1) / (y2 - y1) + x1);
        crossed.count() % 2 == 1
    }

    /// Its straight edges.
    pub(super) fn sides(&self) -> impl Iterator<Item = (Xy, Xy)> + '_ {
        self.0.iter().flat_map(|ring| ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)))
    }

    pub(super) fn bounds(&self) -> Option<Box2> {
        Box2::of(self.0.iter().flatten().copied())
    }
}

impl Sheet<'_> {
    pub(super) fn patch(&self, pieces: &[Piece]) -> Patch {
        let ring = |ring: &Vec<slab_plan::Point>| ring.iter().map(|p| self.view.to_svg(*p)).collect();
        Patch(pieces.iter().flat_map(|p| std::iter::once(&p.outer).chain(&p.holes)).map(ring).collect())
    }

    pub(super) fn put_patch(&mut self, patch: &Patch, class: &str, fill: &str, stroke: (&str, f64)) {
        let d: Vec<String> = patch.0.iter().map(|ring| outline(ring, true)).collect();
        let (d, (ink, width)) = (d.join(" "), stroke);
        self.svg.put(format_args!(
            "<path class=\"{class}\" d=\"{d}\" fill=\"{fill}\" fill-rule=\"evenodd\" stroke=\"{ink}\" stroke-width=\"{width}\" stroke-linejoin=\"round\"/>"
        ));
    }

    /// Zones and cut-outs.
    pub(super) fn draw_ground(&mut self) {
        if self.shows(Layer::Zones) {
            self.open_layer(Layer::Zones);
            for zone in self.plan.zones() {
                let patch = self.patch(&zone.pieces());
                self.svg.open(&format!(" class=\"p-zone-of\" data-zone=\"{}\"", escaped(zone.name())));
                self.svg.title(&zone_text(zone, self.locale));
                self.put_patch(&patch, "p-zone", GROUND, (CEMENT, 1.0));
                self.rules.extend(patch.sides());
                self.svg.close();
            }
            self.svg.close();
        }
        if self.shows(Layer::CutOuts) {
            let cut = self.patch(&self.plan.cut_out_pieces());
            if let (false, Some(words)) = (cut.0.is_empty(), self.cut_words()) {
                self.open_layer(Layer::CutOuts);
                self.svg.title(&words);
                let fill = self.svg.hatch(Hatch::Cut);
                self.put_patch(&cut, "p-cut", &fill, (INK, 1.2));
                self.rules.extend(cut.sides());
                self.svg.close();
            }
        }
    }

    /// The edge of the slab, over what lies on its ground.
    pub(super) fn draw_edge(&mut self) {
        let slab = self.patch(&self.plan.pieces());
        self.put_patch(&slab, "p-edge", "none", (INK, 2.2));
        self.edges = slab.sides().collect();
        self.rules.extend(&self.edges);
    }

    fn cut_words(&self) -> Option<String> {
        let area = self.plan.cut_out_area();
        (area > units::Area::ZERO)
            .then(|| self.locale.message("pic-cut-outs", &[("area", self.locale.area(area).into())]))
    }

    /// The ground that marks cover. Their shapes and words come later, on top.
    pub(super) fn draw_patches(&mut self) {
        for layer in [Layer::Sections, Layer::Incidents] {
            let mut marks: Vec<_> =
                self.layers.marks.iter().filter(|m| m.layer == layer && self.shows(layer)).collect();
            // What is open lies over what is dealt with.
            marks.sort_by_key(|m| !m.settled);
            if marks.is_empty() {
                continue;
            }
            // Two hatches on each other could not be told apart.
            let hatched = self.layers.map.is_some() && self.shows(Layer::Absorbency)
                || !self.layers.finishes.is_empty() && self.shows(Layer::Finishes);
            self.open_layer(layer);
            for mark in marks {
                let settled = mark.settled && mark.kind.can_settle();
                let (hatch, ink, class) = match (mark.kind, settled) {
                    (MarkKind::Section, _) => (Hatch::Section, CEMENT, "p-patch p-section"),
                    (_, true) => (Hatch::Settled, IRON, "p-patch p-settled"),
                    (_, false) => (Hatch::Trouble, IRON, "p-patch p-open"),
                };
                let fill = self.svg.hatch(hatch);
                let backed = hatched && class.ends_with("p-open");
                match &mark.at {
                    MarkPlace::Circle { center, radius } => {
                        let (at, r) = (self.view.to_svg(*center), radius.as_meters() / self.view.m);
                        // A circle that leaves the sheet would be cut off without a sign of it.
                        let around = Box2::around(at, 2.0 * r, 2.0 * r);
                        if around.inside(self.frame) {
                            self.covered.take(around);
                            if backed {
                                self.svg.circle(at, r, "p-zone", GROUND, ("none", 0.0));
                            }
                            self.svg.circle(at, r, class, &fill, (ink, 1.4));
                        }
                    }
                    MarkPlace::Polygon(corners) => {
                        let points: Vec<Xy> = corners.iter().map(|c| self.view.to_svg(*c)).collect();
                        if let Some(around) = Box2::of(points.iter().copied()).filter(|b| b.inside(self.frame)) {
                            self.covered.take(around);
                            if backed {
                                self.svg.shape(&points, "p-zone", GROUND, ("none", 0.0));
                            }
                            self.svg.shape(&points, class, &fill, (ink, 1.4));
                            self.rules.extend(Patch(vec![points]).sides());
                        }
                    }
                    MarkPlace::Point(_) | MarkPlace::Zone(_) => {}
                }
            }
            self.svg.close();
        }
    }

    /// The lines below the key that say what the numbers stand for.
    pub(super) fn number_lines(&self) -> Vec<(String, String)> {
        let mut lines: Vec<(String, String)> = self.numbered.iter().take(MAX_NUMBERS).cloned().collect();
        if self.numbered.len() > MAX_NUMBERS {
            let n = self.locale.count((self.numbered.len() - MAX_NUMBERS) as u32);
            lines.push((String::new(), self.locale.message("pic-more", &[("n", n.into())])));
        }
        lines
    }
}
