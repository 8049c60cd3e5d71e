//! Names and areas of zones, inside them.

use slab_plan::{WHOLE, Zone};

use super::ground::Patch;
use super::mark::Layer;
use super::room::roomiest;
use super::{PlanItem, Sheet, zone_text};
use crate::boxes::{Box2, Xy};
use crate::lettering::{PLAIN, SMALL, bold_width, width, wrapped};
use crate::svg::{Anchor, Letters};

/// Height of a line of lettering.
const LINE: f64 = 14.0;
/// Share of a name that may lie on something before a shorter form is tried.
const TOLERATED: f64 = 0.08;

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
        for zone in self.plan.zones() {
            let patch = self.patch(&zone.pieces());
            let number = self.draw_zone_name(zone, &patch);
            self.items.push(PlanItem { id: None, layer: Layer::Zones, number, text: zone_text(zone, self.locale) });
        }
        self.svg.close();
    }

    /// The fullest form that finds room; gives the number when it came to that.
    fn draw_zone_name(&mut self, zone: &Zone, patch: &Patch) -> Option<u32> {
        let bounds = patch.bounds()?;
        let near = (&self.taken.near(bounds), &self.covered.near(bounds));
        let aim = zone.centroid().map(|c| self.view.to_svg(c))?;
        let forms = self.forms(zone, bounds.width());
        let found = forms.into_iter().find_map(|name| {
            let size = name.size();
            let (center, over) = roomiest(patch, near, aim, size)?;
            (over <= TOLERATED * size.0 * size.1).then_some((name, center))
        });
        let (name, center) = found?;
        let (wide, high) = name.size();
        self.taken.take(Box2::around(center, wide, high));
        let top = center.1 - high / 2.0 + 1.0;
        for (at, (text, bold)) in name.lines.iter().enumerate() {
            let letters = Letters::new(if *bold { PLAIN } else { SMALL }).at(Anchor::Middle).halo();
            let letters = if *bold { letters.bold() } else { letters };
            self.svg.text((center.0, top + LINE * at as f64 + 11.0), letters, text);
        }
        name.is_number.then(|| self.number(zone_text(zone, self.locale)))
    }

    fn forms(&self, zone: &Zone, room: f64) -> Vec<Name> {
        let area = (self.locale.area(zone.area()), false);
        let number = Name { lines: vec![((self.numbered.len() + 1).to_string(), true)], is_number: true };
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
