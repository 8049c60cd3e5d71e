//! The recipe to order for: the approved panel's, or the trade's usual one until there is a choice.

use super::{Buyer, Spread};
use slab_diary::EntryId;
use slab_diary::body::{ChoiceApproved, PanelStained, StainShare};
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
    /// The entries it comes from.
    pub evidence: Vec<EntryId>,
}

impl Buyer<'_> {
    pub(super) fn recipe(&self) -> Recipe {
        self.approved_recipe().unwrap_or_else(|| self.usual_recipe())
    }

    fn approved_recipe(&self) -> Option<Recipe> {
        let approval = self.slab.last::<ChoiceApproved>()?;
        let stained = self
            .slab
            .all::<PanelStained>()
            .rfind(|s| s.body.panel.trim().eq_ignore_ascii_case(approval.body.panel.trim()))?;
        let total: f64 = stained.body.mix.iter().map(|s| s.parts).sum();
        let share = |s: &StainShare| (Some(s.stain.clone()), s.parts / total);
        Some(Recipe {
            coats: Spread::exactly(stained.body.coats),
            water_parts: Spread::exactly(stained.body.water_parts),
            mix: stained.body.mix.iter().map(share).collect(),
            panel: Some(approval.body.panel.to_string()),
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
