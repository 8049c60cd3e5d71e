//! What the panels tried: coats, water and mixes, beyond which nothing is predicted.

use super::error::OutsideTested;
use super::panel::{Coats, Recipe, Shares, StainedPanel, WaterParts};

/// Shares closer than this are the same: they come from small numbers of parts.
const SAME: f64 = 1e-9;
/// How far a mix is moved to see whether the tested mixes end there; smaller than any share that is
/// measured out.
const NUDGE: f64 = 1e-4;

/// What was tried with one stain, alone or in a mix.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StainTested {
    /// Fewest and most coats.
    pub coats: (Coats, Coats),
    /// Least and most water.
    pub water: (WaterParts, WaterParts),
}

/// The tried ranges: for each stain its coats and its water, and all mixes between tried mixes.
///
/// A recipe is inside when its coats and its water lie within the ranges of every stain in it. Many
/// coats and much water need not have been tried together.
#[derive(Debug, Clone, PartialEq)]
pub struct Tested {
    stains: Vec<StainTested>,
    mixes: Vec<Shares>,
}

/// Where the best recipe stands at the end of what was tried, so that one further out might be
/// better and a panel further out would tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Edge {
    /// Most coats tried.
    MoreCoats,
    /// Fewest coats tried, and more than one.
    FewerCoats,
    /// Most water tried.
    MoreWater,
    /// Least water tried, and more than none.
    LessWater,
    /// The mixes that were tried end here.
    Shares,
}

impl Edge {
    /// A stable word for screens and JSON.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::MoreCoats => "more-coats",
            Self::FewerCoats => "fewer-coats",
            Self::MoreWater => "more-water",
            Self::LessWater => "less-water",
            Self::Shares => "shares",
        }
    }
}

impl Tested {
    /// From panels of which each stain is in at least one.
    pub(super) fn of(panels: &[StainedPanel], stains: usize) -> Self {
        let range = |stain: usize| {
            let mut range: Option<StainTested> = None;
            for recipe in panels.iter().map(|p| &p.recipe).filter(|r| r.shares.values()[stain] > 0.0) {
                let (n, w) = (recipe.coats, recipe.water);
                let so_far = range.unwrap_or(StainTested { coats: (n, n), water: (w, w) });
                let (least, most) = so_far.water;
                range = Some(StainTested {
                    coats: (so_far.coats.0.min(n), so_far.coats.1.max(n)),
                    water: (if w < least { w } else { least }, if w > most { w } else { most }),
                });
            }
            range
        };
        let mut mixes: Vec<Shares> = Vec::new();
        for panel in panels {
            if !mixes.iter().any(|known| same(known.values(), panel.recipe.shares.values())) {
                mixes.push(panel.recipe.shares.clone());
            }
        }
        Self { stains: (0..stains).filter_map(range).collect(), mixes }
    }

    /// What was tried with each stain, by index.
    #[must_use]
    pub fn stains(&self) -> &[StainTested] {
        &self.stains
    }

    /// The mixes that were tried, each once.
    #[must_use]
    pub fn mixes(&self) -> &[Shares] {
        &self.mixes
    }

    /// Whether the recipe lies within what was tried.
    ///
    /// # Errors
    /// The first thing that lies outside.
    pub fn holds(&self, recipe: &Recipe) -> Result<(), OutsideTested> {
        let shares = recipe.shares.values();
        if shares.len() != self.stains.len() {
            return Err(OutsideTested::Stains { found: shares.len(), expected: self.stains.len() });
        }
        if !self.holds_mix(shares) {
            return Err(OutsideTested::Shares);
        }
        for (stain, tested) in self.used(shares) {
            let (low, high) = tested.coats;
            if recipe.coats < low || recipe.coats > high {
                let (low, high) = (low.count(), high.count());
                return Err(OutsideTested::Coats { stain, coats: recipe.coats.count(), low, high });
            }
            let (low, high) = tested.water;
            if recipe.water < low || recipe.water > high {
                let (low, high) = (low.per_stain(), high.per_stain());
                return Err(OutsideTested::Water { stain, water: recipe.water.per_stain(), low, high });
            }
        }
        Ok(())
    }

    /// At which ends of the tried ranges a recipe stands. Undiluted, one coat and a pure stain are
    /// no such ends: there is nothing beyond them.
    #[must_use]
    pub fn edges(&self, recipe: &Recipe) -> Vec<Edge> {
        let shares = recipe.shares.values();
        let any = |at: &dyn Fn(StainTested) -> bool| self.used(shares).any(|(_, tested)| at(tested));
        let (coats, water) = (recipe.coats, recipe.water);
        [
            (Edge::MoreCoats, any(&|t| coats >= t.coats.1)),
            (Edge::FewerCoats, coats > Coats::ONE && any(&|t| coats <= t.coats.0)),
            (Edge::MoreWater, any(&|t| water >= t.water.1)),
            (Edge::LessWater, water > WaterParts::UNDILUTED && any(&|t| water <= t.water.0)),
            (Edge::Shares, self.mixes_end_at(shares)),
        ]
        .into_iter()
        .filter_map(|(edge, stands)| stands.then_some(edge))
        .collect()
    }

    fn used<'a>(&'a self, shares: &'a [f64]) -> impl Iterator<Item = (usize, StainTested)> + 'a {
        self.stains.iter().copied().enumerate().filter(|(stain, _)| shares[*stain] > 0.0)
    }

    fn mixes_end_at(&self, shares: &[f64]) -> bool {
        let ends = |from: usize, to: usize| {
            let mut moved = shares.to_vec();
            moved[from] -= NUDGE;
            moved[to] += NUDGE;
            from != to && moved[from] >= 0.0 && !self.holds_mix(&moved)
        };
        (0..shares.len()).any(|from| (0..shares.len()).any(|to| ends(from, to)))
    }

    /// Whether the mix is an average of tried mixes. Seen from a point inside, the tried mixes leave
    /// no gap of more than half a turn.
    fn holds_mix(&self, shares: &[f64]) -> bool {
        // Shares add up to 1, so the first two tell a mix of three.
        let place = |values: &[f64]| (values[0], if values.len() > 2 { values[1] } else { 0.0 });
        let (x, y) = place(shares);
        if self.mixes.iter().any(|mix| same(mix.values(), shares)) {
            return true;
        }
        let mut angles: Vec<f64> =
            self.mixes.iter().map(|mix| place(mix.values())).map(|(px, py)| libm::atan2(py - y, px - x)).collect();
        angles.sort_by(f64::total_cmp);
        let around = angles.first().zip(angles.last()).map(|(first, last)| first + std::f64::consts::TAU - last);
        let widest = angles.windows(2).map(|pair| pair[1] - pair[0]).chain(around).fold(0.0, f64::max);
        widest <= std::f64::consts::PI + SAME
    }
}

pub(super) fn same(first: &[f64], second: &[f64]) -> bool {
    first.iter().zip(second).all(|(a, b)| (a - b).abs() < SAME)
}
