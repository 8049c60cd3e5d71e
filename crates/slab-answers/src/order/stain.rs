//! Stain and the water it is mixed with.

use units::Volume;

use super::packs::liquid;
use super::{Amount, Buyer, CoverageBasis, Item, Line, OrderNote, Recipe, Spread, ZoneCoverage};
use trade_facts::Grade;

impl Buyer<'_> {
    pub(super) fn stain_lines(&self, recipe: &Recipe, coverage: &[ZoneCoverage]) -> Vec<Line> {
        let mixed = self.working_mix(recipe, coverage);
        // One part of stain in 1 + w parts of mix; less water takes more stain.
        let stain = mixed.zip(recipe.water_parts, |volume, water| volume / (1.0 + water));
        let mut notes = vec![
            if recipe.panel.is_some() { OrderNote::RecipeFromChoice } else { OrderNote::RecipeAssumed },
            OrderNote::OneBatch,
            OrderNote::TouchUpKept,
        ];
        let measured = |z: &ZoneCoverage| matches!(z.basis, CoverageBasis::Panels(_));
        if coverage.iter().any(measured) {
            notes.push(OrderNote::CoverageFromPanels);
        }
        if coverage.iter().any(|z| z.basis == CoverageBasis::Table) {
            notes.push(OrderNote::CoverageFromTable);
        }
        if coverage.iter().any(|z| z.basis == CoverageBasis::Unknown) {
            notes.push(OrderNote::FinishUnknown);
        }
        if coverage
            .iter()
            .any(|z| z.finish.as_deref().and_then(|id| self.trade.finish(id)).is_some_and(|finish| finish.may_not_take))
        {
            notes.push(OrderNote::FinishMayRefuse);
        }
        let grade = coverage.iter().map(|z| z.grade).max().unwrap_or(Grade::CommonPractice);
        let evidence: Vec<_> =
            recipe.evidence.iter().copied().chain(coverage.iter().flat_map(|z| z.evidence.iter().copied())).collect();
        let facts: Vec<String> = coverage
            .iter()
            .filter_map(|z| z.finish.clone())
            .chain(["stain-waste", "porous-edge-extra", "touch-up-reserve"].map(str::to_owned))
            .collect();
        let sizes: Vec<Volume> = self.trade.pack("stain").map(trade_facts::Pack::sizes).unwrap_or_default();
        let reserve = self.allowance("touch-up-reserve").map(Volume::us_gallons);
        let mut lines: Vec<Line> = recipe
            .mix
            .iter()
            .map(|(name, share)| {
                // The reserve is kept of every stain: a mix can only be touched up with both.
                let need = (stain * *share) + reserve;
                Line {
                    item: Item::Stain,
                    which: name.clone(),
                    need: Amount::Volume(need),
                    buy: liquid(need.high, &sizes),
                    notes: notes.clone(),
                    grade,
                    facts: facts.clone(),
                    evidence: evidence.clone(),
                }
            })
            .collect();
        // The weakest mix needs the most water, the strongest the least: the other way round than stain.
        let water = mixed.zip(recipe.water_parts.reversed(), |volume, parts| volume * parts / (1.0 + parts));
        lines.push(Line {
            item: Item::MixingWater,
            which: None,
            need: Amount::Volume(water),
            buy: Vec::new(),
            notes: Vec::new(),
            grade,
            facts: vec!["dilution-water".to_owned()],
            evidence: recipe.evidence.clone(),
        });
        lines
    }

    /// Working mix for all zones, waste and edges included.
    fn working_mix(&self, recipe: &Recipe, coverage: &[ZoneCoverage]) -> Spread<Volume> {
        let extra = self.allowance("stain-waste") + self.allowance("porous-edge-extra");
        let bare = Spread::sum(coverage.iter().map(|zone| {
            // A finish that may need a coat more is only sure of its least.
            let coats = Spread {
                low: recipe.coats.low + zone.extra_coats.0,
                usual: recipe.coats.usual + zone.extra_coats.0,
                high: recipe.coats.high + zone.extra_coats.1,
            };
            zone.coverage.reversed().zip(coats, |coverage, coats| zone.area * f64::from(coats) / coverage)
        }));
        bare.zip(extra, |volume, extra| volume * (1.0 + extra))
    }
}
