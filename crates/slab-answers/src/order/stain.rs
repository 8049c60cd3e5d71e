//! Stain and the water it is mixed with.

use units::Volume;

use super::packs::liquid;
use super::{Amount, Buyer, CoverageBasis, Item, Line, OrderNote, Recipe, Spread, ZoneCoverage};
use trade_facts::Grade;

impl Buyer<'_> {
    /// Stain and mixing water for every recipe on its own zones; a stain that several recipes take is one line.
    pub(super) fn stain_lines(&self, recipes: &[Recipe], coverage: &[ZoneCoverage]) -> Vec<Line> {
        let mut stains: Vec<(Option<String>, Spread<Volume>, OrderNote)> = Vec::new();
        let mut water = Spread::exactly(Volume::default());
        for recipe in recipes {
            let zones: Vec<&ZoneCoverage> = coverage.iter().filter(|zone| recipe.zones.contains(&zone.zone)).collect();
            let mixed = self.working_mix(recipe, &zones);
            // One part of stain in 1 + w parts of mix; less water takes more stain.
            let stain = mixed.zip(recipe.water_parts, |volume, water| volume / (1.0 + water));
            for (name, share) in &recipe.mix {
                // A stain that the choice names is never one that was assumed: those have no name.
                let note = if recipe.panel.is_some() { OrderNote::RecipeFromChoice } else { OrderNote::RecipeAssumed };
                match stains.iter_mut().find(|(known, ..)| known == name) {
                    Some((_, need, _)) => *need = *need + stain * *share,
                    None => stains.push((name.clone(), stain * *share, note)),
                }
            }
            // The weakest mix needs the most water, the strongest the least: the other way round than stain.
            water = water + mixed.zip(recipe.water_parts.reversed(), |volume, parts| volume * parts / (1.0 + parts));
        }
        let mut notes = vec![OrderNote::OneBatch, OrderNote::TouchUpKept];
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
        let chosen: Vec<_> = recipes.iter().flat_map(|recipe| recipe.evidence.iter().copied()).collect();
        let evidence: Vec<_> =
            chosen.iter().copied().chain(coverage.iter().flat_map(|z| z.evidence.iter().copied())).collect();
        let facts: Vec<String> = coverage
            .iter()
            .filter_map(|z| z.finish.clone())
            .chain(["stain-waste", "porous-edge-extra", "touch-up-reserve"].map(str::to_owned))
            .collect();
        let sizes: Vec<Volume> = self.trade.pack("stain").map(trade_facts::Pack::sizes).unwrap_or_default();
        let reserve = self.allowance("touch-up-reserve").map(Volume::us_gallons);
        let mut lines: Vec<Line> = stains
            .into_iter()
            .map(|(name, need, recipe)| {
                // The reserve is kept of every stain: a mix can only be touched up with both.
                let need = need + reserve;
                Line {
                    item: Item::Stain,
                    which: name,
                    need: Amount::Volume(need),
                    buy: liquid(need.high, &sizes),
                    notes: std::iter::once(recipe).chain(notes.iter().copied()).collect(),
                    grade,
                    facts: facts.clone(),
                    evidence: evidence.clone(),
                }
            })
            .collect();
        lines.push(Line {
            item: Item::MixingWater,
            which: None,
            need: Amount::Volume(water),
            buy: Vec::new(),
            notes: Vec::new(),
            grade,
            facts: vec!["dilution-water".to_owned()],
            evidence: chosen,
        });
        lines
    }

    /// Working mix for zones of one recipe, waste and edges included.
    fn working_mix(&self, recipe: &Recipe, coverage: &[&ZoneCoverage]) -> Spread<Volume> {
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
