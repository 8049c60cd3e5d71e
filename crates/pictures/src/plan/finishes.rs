//! The finishes of the zones, each with a hatch of its own.

use super::mark::Layer;
use super::{PlanItem, Sheet, finish_text};
use crate::boxes::Box2;
use crate::key::KeyEntry;
use crate::svg::{CEMENT, Hatch};

impl Sheet<'_> {
    /// Each finish once, in the order in which they come.
    fn finishes(&self) -> Vec<&str> {
        let mut seen: Vec<&str> = Vec::new();
        if self.shows(Layer::Finishes) {
            for (_, finish) in &self.layers.finishes {
                if !seen.contains(&finish.as_str()) {
                    seen.push(finish);
                }
            }
        }
        seen
    }

    /// Hatches the zones and lists them.
    pub(super) fn draw_finishes(&mut self) {
        let seen: Vec<String> = self.finishes().into_iter().map(str::to_owned).collect();
        if seen.is_empty() {
            return;
        }
        self.open_layer(Layer::Finishes);
        for (zone, finish) in &self.layers.finishes {
            let text = finish_text(zone, finish, self.locale);
            if let (Some(at), Some(zone)) = (seen.iter().position(|known| known == finish), self.plan.zone(zone)) {
                let (patch, fill) = (self.patch(&zone.pieces()), self.svg.hatch(Hatch::Finish(at)));
                self.svg.open(" class=\"p-finish\"");
                self.svg.title(&text);
                self.put_patch(&patch, "p-finish-of", &fill, (CEMENT, 1.0));
                self.svg.close();
            }
            self.items.push(PlanItem { id: None, layer: Layer::Finishes, number: None, text });
        }
        self.svg.close();
    }

    /// What the hatches mean.
    pub(super) fn finish_key(&self) -> Vec<KeyEntry> {
        let entry = |(at, finish): (usize, &str)| {
            let fill = self.svg.hatch(Hatch::Finish(at));
            KeyEntry {
                words: self.locale.term(finish),
                swatch: Box::new(move |svg, at| {
                    svg.rect(Box2::around(at, 20.0, 16.0), "p-finish-of", &fill, (CEMENT, 1.0));
                }),
            }
        };
        self.finishes().into_iter().enumerate().map(entry).collect()
    }
}
