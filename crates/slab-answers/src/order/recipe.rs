//! The recipes to order for: of each zone that of the client's choice in force there, or the trade's usual one
//! until there is a choice.

use super::{Buyer, Spread};
use crate::panels::{choice_in_force, same};
use slab_diary::body::{PanelStained, StainShare};
use slab_diary::{EntryId, Zone};
use trade_facts::Measured;

/// Coats, dilution and mix.
#[derive(Debug, Clone, PartialEq)]
pub struct Recipe {
    /// Coats.
    pub coats: Spread<u32>,
    /// Parts of water to one part of stain; the low end needs the most stain.
    pub water_parts: Spread<f64>,
    /// Share of each stain in the mix, adding to 1; one unnamed stain before the choice.
    pub mix: Vec<(Option<String>, f64)>,
    /// The approved panel it comes from.
    pub panel: Option<String>,
    /// The zones it is for.
    pub zones: Vec<String>,
    /// The entries it comes from.
    pub evidence: Vec<EntryId>,
}

impl Buyer<'_> {
    /// Every zone's recipe, zones of the same one together, that for the most ground first.
    pub(super) fn recipes(&self) -> Vec<Recipe> {
        let mut found: Vec<Recipe> = Vec::new();
        for zone in self.slab.zones() {
            let recipe = self.chosen_recipe(zone).unwrap_or_else(|| self.usual_recipe());
            match found.iter_mut().find(|known| known.panel == recipe.panel) {
                Some(known) => known.zones.push(zone.name.clone()),
                None => found.push(Recipe { zones: vec![zone.name.clone()], ..recipe }),
            }
        }
        let ground = |recipe: &Recipe| -> f64 {
            let zones = self.slab.zones().iter().filter(|zone| recipe.zones.contains(&zone.name));
            zones.filter_map(|zone| zone.area).map(units::Area::as_square_meters).sum()
        };
        found.sort_by(|a, b| ground(b).total_cmp(&ground(a)));
        found
    }

    /// The choice in force for a zone, where its panel stands for the zone and was stained as the diary says.
    fn chosen_recipe(&self, zone: &Zone) -> Option<Recipe> {
        let choice = choice_in_force(self.slab, zone).filter(|choice| choice.stands && choice.withdrawn.is_none())?;
        let approval = choice.approved;
        let stained = self.slab.all::<PanelStained>().rfind(|s| same(&s.body.panel, &approval.body.panel))?;
        let total: f64 = stained.body.mix.iter().map(|s| s.parts).sum();
        let share = |s: &StainShare| (Some(s.stain.clone()), s.parts / total);
        Some(Recipe {
            coats: Spread::exactly(stained.body.coats),
            water_parts: Spread::exactly(stained.body.water_parts),
            mix: stained.body.mix.iter().map(share).collect(),
            panel: Some(approval.body.panel.trim().to_owned()),
            zones: Vec::new(),
            evidence: vec![approval.entry.id, stained.entry.id],
        })
    }

    fn usual_recipe(&self) -> Recipe {
        let coats = self.three("stain-coats");
        let water = self.three("dilution-water");
        Recipe {
            coats: coats.map(|c| c.round() as u32),
            // The darkest mix, without water, needs the most stain.
            water_parts: water.reversed(),
            mix: vec![(None, 1.0)],
            panel: None,
            zones: Vec::new(),
            evidence: Vec::new(),
        }
    }

    /// Low, usual and high of a material figure as bare numbers in its unit.
    pub(super) fn three(&self, id: &str) -> Spread<f64> {
        use trade_facts::Which;
        let record = self.trade.material(id).unwrap_or_else(|| panic!("the trade facts hold no material {id}"));
        let number = |which| record.amount(which).unwrap_or_else(|| panic!("material {id} lacks a number"));
        Spread { low: number(Which::Low), usual: number(Which::Usual), high: number(Which::High) }
    }

    /// Low, usual and high of an allowance, such as waste.
    pub(super) fn allowance(&self, id: &str) -> Spread<f64> {
        use trade_facts::Which;
        let record = self.trade.allowance(id).unwrap_or_else(|| panic!("the trade facts hold no allowance {id}"));
        let number = |which| record.amount(which).unwrap_or_else(|| panic!("allowance {id} lacks a number"));
        Spread { low: number(Which::Low), usual: number(Which::Usual), high: number(Which::High) }
    }
}
