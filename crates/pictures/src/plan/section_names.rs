//! The stretches between the joints, with their number and area.

use slab::layout::Section;
use slab::map::SlabMap;

use super::mark::Layer;
use super::room::roomiest;
use super::{PlanItem, Sheet};
use crate::boxes::Box2;
use crate::key::KeyEntry;
use crate::lettering::{SMALL, bold_width, width};
use crate::svg::{Anchor, CEMENT, Letters};

/// Sections named and listed at most.
const MOST: usize = 200;
const LINE: f64 = 13.0;
const DASHES: &str = " stroke-dasharray=\"3 3\"";

impl Sheet<'_> {
    /// The sections of the map, when there are two or more.
    pub(super) fn sections(&self) -> &[Section] {
        let map: Option<&SlabMap> = self.layers.map.as_deref().filter(|_| self.shows(Layer::Sections));
        map.map(|map| map.sections.sections()).filter(|sections| sections.len() > 1).unwrap_or(&[])
    }

    /// Dashed outlines.
    pub(super) fn draw_sections(&mut self) {
        if self.sections().is_empty() {
            return;
        }
        let patches: Vec<_> =
            self.sections().iter().map(|section| self.patch(std::slice::from_ref(&section.piece))).collect();
        self.open_layer(Layer::Sections);
        for ring in patches.iter().flat_map(|patch| &patch.0) {
            let closed: Vec<_> = ring.iter().chain(ring.first()).copied().collect();
            self.svg.stroke(&closed, "p-section-edge", (CEMENT, 1.6), DASHES);
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
                let short = self.voice.say("pic-section-short", &[("n", section.id.to_string().into())]);
                let patch = self.patch(std::slice::from_ref(&section.piece));
                (section.id, short, self.voice.area(section.area), patch)
            })
            .collect();
        self.open_layer(Layer::Sections);
        for (id, short, area, patch) in named {
            let args = [("n", id.to_string().into()), ("area", area.as_str().into())];
            let text = self.voice.say("pic-section", &args);
            self.items.push(PlanItem { id: None, layer: Layer::Sections, number: None, text });
            let Some(bounds) = patch.bounds() else { continue };
            let (taken, covered) = (self.taken.near(bounds), self.covered.near(bounds));
            let both = (bold_width(&short, SMALL).max(width(&area, SMALL)) + 3.0, 2.0 * LINE + 1.0);
            let alone = (bold_width(&short, SMALL) + 3.0, LINE + 1.0);
            for (size, lines) in [(both, 2), (alone, 1)] {
                let Some((at, over)) = roomiest(&patch, (&taken, &covered), bounds.center(), size) else { continue };
                if over > 0.0 {
                    continue;
                }
                self.taken.take(Box2::around(at, size.0, size.1));
                let top = at.1 - size.1 / 2.0;
                let letters = Letters::new(SMALL).at(Anchor::Middle).halo();
                self.svg.text((at.0, top + 11.0), letters.bold(), &short);
                if lines == 2 {
                    self.svg.text((at.0, top + LINE + 11.0), letters, &area);
                }
                break;
            }
        }
        self.svg.close();
    }

    /// What the dashed outlines mean.
    pub(super) fn section_key(&self) -> Option<KeyEntry> {
        (!self.sections().is_empty()).then(|| KeyEntry {
            words: self.voice.say("pic-key-section", &[]),
            swatch: Box::new(|svg, (x, y)| {
                let (l, r, t, b) = (x - 9.0, x + 9.0, y - 7.0, y + 7.0);
                let ring = [(l, t), (r, t), (r, b), (l, b), (l, t)];
                svg.stroke(&ring, "p-section-edge", (CEMENT, 1.6), DASHES);
            }),
        })
    }
}
