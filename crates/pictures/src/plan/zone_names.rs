//! Names and areas of zones, inside them.

use slab_plan::{WHOLE, Zone};

use super::ground::Patch;
use super::mark::Layer;
use super::numbers::zone_number;
use super::room::roomiest;
use super::{PlanItem, Sheet, zone_text};
use crate::boxes::{Box2, Xy};
use crate::lettering::{DOWN, PLAIN, SMALL, bold_width, width, wrapped};
use crate::svg::{Anchor, Letters};

/// Height of a line of lettering.
const LINE: f64 = 18.0;

/// Lines of lettering for a zone.
struct Name {
    /// Text and whether it is bold.
    lines: Vec<(String, bool)>,
    is_number: bool,
}

impl Name {
    fn size(&self) -> Xy {
        let wide =
            self.lines.iter().map(|(text, bold)| if *bold { bold_width(text, PLAIN) } else { width(text, SMALL) });
        (wide.fold(0.0, f64::max) + 3.0, LINE * self.lines.len() as f64 + 2.0)
    }
}

impl Sheet<'_> {
    pub(super) fn draw_zone_names(&mut self) {
        if !self.shows(Layer::Zones) {
            return;
        }
        self.open_layer(Layer::Zones);
        for (at, zone) in self.plan.zones().iter().enumerate() {
            let patch = self.patch(&zone.pieces());
            let number = self.draw_zone_name(zone, zone_number(self.layers, at), &patch);
            self.items.push(PlanItem { id: None, layer: Layer::Zones, number, text: zone_text(zone, self.locale) });
        }
        self.svg.close();
    }

    /// The fullest form that finds room; gives the number when it came to that.
    fn draw_zone_name(&mut self, zone: &Zone, number: String, patch: &Patch) -> Option<String> {
        let bounds = patch.bounds()?;
        let around = self.around(bounds);
        let aim = zone.centroid().map(|c| self.view.to_svg(c))?;
        let forms = self.forms(zone, &number, bounds.width());
        let found = forms.into_iter().find_map(|name| {
            let size = name.size();
            let (center, over) = roomiest(patch, &around, aim, size)?;
            (over <= 0.0).then_some((name, center))
        });
        let (name, center) = found?;
        let (wide, high) = name.size();
        let own = Box2::around(center, wide, high);
        self.taken.take(own);
        self.words.take(own);
        let top = center.1 - high / 2.0 + 1.0;
        for (at, (text, bold)) in name.lines.iter().enumerate() {
            let letters = Letters::new(if *bold { PLAIN } else { SMALL }).at(Anchor::Middle).halo();
            let letters = if *bold { letters.bold() } else { letters };
            self.svg.text((center.0, top + LINE * (at as f64 + 0.5) + DOWN), letters, text);
        }
        name.is_number.then(|| {
            self.numbered.push((number.clone(), zone_text(zone, self.locale)));
            number
        })
    }

    fn forms(&self, zone: &Zone, number: &str, room: f64) -> Vec<Name> {
        let area = (self.locale.area(zone.area()), false);
        let number = Name { lines: vec![(number.to_owned(), true)], is_number: true };
        let name = |lines: Vec<(String, bool)>| Name { lines, is_number: false };
        if self.plan.zones().len() == 1 && zone.name() == WHOLE {
            return vec![name(vec![area]), number];
        }
        let full: Vec<(String, bool)> =
            wrapped(zone.name(), PLAIN * 1.15, (room - 6.0).min(150.0), 3).into_iter().map(|l| (l, true)).collect();
        let cut = full.iter().any(|(line, _)| line.ends_with('…'));
        let with_area = full.iter().cloned().chain([area]).collect();
        // A name that must be cut tells less than its number with the name in the key.
        if cut { vec![number] } else { vec![name(with_area), name(full), number] }
    }
}
