//! The edge of a bay: its zones, cut where a construction or isolation joint parts them.

use slab_answers::map::{Cell, SlabMap};

use super::zones_of;
use crate::boxes::{Box2, Xy};
use crate::plan::Sheet;
use crate::plan::ground::Patch;

/// The ground of a bay on the drawing.
pub(super) struct BayEdge {
    pub(super) zones: Patch,
    /// Where its zones go on beyond a joint, the part on its side.
    pub(super) stretch: Option<Patch>,
}

impl BayEdge {
    /// Whether a box lies wholly in the bay.
    pub(super) fn holds(&self, wanted: Box2) -> bool {
        self.zones.holds(wanted) && self.stretch.as_ref().is_none_or(|stretch| stretch.holds(wanted))
    }
}

impl Sheet<'_> {
    /// The edges of the bays in their order.
    pub(super) fn bay_edges(&self, map: &SlabMap) -> Vec<BayEdge> {
        let shares = |index: usize| {
            let own = &map.bays[index].zones;
            map.bays.iter().enumerate().any(|(at, bay)| at != index && bay.zones.iter().any(|zone| own.contains(zone)))
        };
        let parted: Vec<bool> = (0..map.bays.len()).map(shares).collect();
        // Most slabs have no such joint, and then nobody needs to know in which section a cell lies.
        let sections: Vec<Option<usize>> = if parted.contains(&true) && map.sections.sections().len() > 1 {
            map.cells.iter().map(|cell| map.sections.at(cell.at).map(|section| section.id)).collect()
        } else {
            Vec::new()
        };
        map.bays
            .iter()
            .zip(&parted)
            .enumerate()
            .map(|(index, (bay, parted))| BayEdge {
                zones: zones_of(self, bay),
                stretch: parted.then(|| self.stretch(map, index, &sections)),
            })
            .collect()
    }

    /// The sections most of whose cells, as far as they lie in the bay's zones, are the bay's.
    fn stretch(&self, map: &SlabMap, index: usize, sections: &[Option<usize>]) -> Patch {
        if sections.is_empty() {
            return Patch(
                map.cells.iter().filter(|cell| cell.bay == index).map(|cell| self.square(map, cell)).collect(),
            );
        }
        let zones = &map.bays[index].zones;
        let in_zones =
            |cell: &Cell| self.plan.zones().get(cell.zone).is_some_and(|z| zones.iter().any(|n| n == z.name()));
        let mut counts = vec![(0_u32, 0_u32); map.sections.sections().len()];
        for (cell, section) in map.cells.iter().zip(sections).filter(|(cell, _)| in_zones(cell)) {
            // Numbers of sections begin at 1.
            if let Some(count) = section.and_then(|id| counts.get_mut(id - 1)) {
                count.0 += u32::from(cell.bay == index);
                count.1 += 1;
            }
        }
        let own = map.sections.sections().iter().zip(&counts).filter(|(_, (own, all))| 2 * own > *all);
        let pieces: Vec<_> = own.map(|(section, _)| section.piece.clone()).collect();
        self.patch(&pieces)
    }

    fn square(&self, map: &SlabMap, cell: &Cell) -> Vec<Xy> {
        let ((x, y), half) = (self.view.to_svg(cell.at), map.cell.as_meters() / self.view.m / 2.0);
        vec![(x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)]
    }
}
