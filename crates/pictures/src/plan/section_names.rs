//! The stretches between the joints, with their number and area.

use slab_answers::map::SlabMap;
use slab_plan::layout::Section;

use super::mark::Layer;
use super::room::roomiest;
use super::strokes::{distance, joined};
use super::{PlanItem, Sheet};
use crate::boxes::{Box2, Xy};
use crate::key::KeyEntry;
use crate::lettering::{SMALL, bold_width, width};
use crate::svg::{Anchor, CEMENT, Letters};

/// Sections named and listed at most.
const MOST: usize = 200;
const LINE: f64 = 17.0;
const DASHES: &str = " stroke-dasharray=\"3 3\"";

impl Sheet<'_> {
    /// The sections of the map, when there are two or more.
    pub(super) fn sections(&self) -> &[Section] {
        let map: Option<&SlabMap> = self.layers.map.as_deref().filter(|_| self.shows(Layer::Sections));
        map.map(|map| map.sections.sections()).filter(|sections| sections.len() > 1).unwrap_or(&[])
    }

    /// Whether the sections are outlined: where the joints are drawn, these part them already.
    fn outlines_sections(&self) -> bool {
        !self.shows(Layer::Joints) && !self.sections().is_empty()
    }

    /// Dashed lines between the sections.
    pub(super) fn draw_sections(&mut self) {
        if !self.outlines_sections() {
            return;
        }
        let rings: Vec<Vec<Xy>> =
            self.sections().iter().flat_map(|section| self.patch(std::slice::from_ref(&section.piece)).0).collect();
        let on_edge = |(a, b): (Xy, Xy)| {
            let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
            self.edges.iter().any(|(from, to)| distance(middle, *from, *to) < 0.1)
        };
        let sides = rings.iter().flat_map(|ring| ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)));
        // Each lies between two sections, and comes twice.
        let lines = joined(sides.filter(|side| !on_edge(*side)).collect());
        self.open_layer(Layer::Sections);
        for (from, to) in lines {
            self.svg.stroke(&[from, to], "p-section-edge", (CEMENT, 1.6), DASHES);
            self.rules.push((from, to));
        }
        self.svg.close();
    }

    /// Number and area in each, where there is room, and each in the list.
    pub(super) fn draw_section_names(&mut self) {
        if self.sections().is_empty() {
            return;
        }
        let named: Vec<(usize, String, String, super::ground::Patch)> = self
            .sections()
            .iter()
            .take(MOST)
            .map(|section| {
                let short = self.locale.message("pic-section-short", &[("n", section.id.to_string().into())]);
                let patch = self.patch(std::slice::from_ref(&section.piece));
                (section.id, short, self.locale.area(section.area), patch)
            })
            .collect();
        self.open_layer(Layer::Sections);
        for (id, short, area, patch) in named {
            let args = [("n", id.to_string().into()), ("area", area.as_str().into())];
            let text = self.locale.message("pic-section", &args);
            self.items.push(PlanItem { id: None, layer: Layer::Sections, number: None, text });
            let Some(bounds) = patch.bounds() else { continue };
            let around = self.around(bounds);
            let both = (bold_width(&short, SMALL).max(width(&area, SMALL)) + 3.0, 2.0 * LINE + 1.0);
            let alone = (bold_width(&short, SMALL) + 3.0, LINE + 1.0);
            for (size, lines) in [(both, 2), (alone, 1)] {
                let Some((at, over)) = roomiest(&patch, &around, bounds.center(), size) else { continue };
                if over > 0.0 {
                    continue;
                }
                self.taken.take(Box2::around(at, size.0, size.1));
                let top = at.1 - size.1 / 2.0;
                let letters = Letters::new(SMALL).at(Anchor::Middle).halo();
                self.svg.text((at.0, top + 14.0), letters.bold(), &short);
                if lines == 2 {
                    self.svg.text((at.0, top + LINE + 14.0), letters, &area);
                }
                break;
            }
        }
        self.svg.close();
    }

    /// What the dashed lines mean.
    pub(super) fn section_key(&self) -> Option<KeyEntry> {
        self.outlines_sections().then(|| KeyEntry {
            words: self.locale.message("pic-key-section", &[]),
            swatch: Box::new(|svg, (x, y)| {
                svg.stroke(&[(x - 10.0, y), (x + 10.0, y)], "p-section-edge", (CEMENT, 1.6), DASHES);
            }),
        })
    }
}
