//! The fitted model: from a recipe to a color, and how surely.

use super::absorb::reflected;
use super::error::{NoInterval, OutsideTested, RecipeRefusal};
use super::fit::{Row, Strengths, fit};
use super::interval::Interval;
use super::panel::{Bare, Recipe, StainedPanel};
use super::tested::Tested;
use crate::chance::Seed;
use crate::color::{ColorDifference, Lab, LinearRgb, ciede2000};

/// The share of the draws that a radius holds.
pub const HELD: f64 = 0.9;

/// What the panels of one slab and finish say of recipes between them.
#[derive(Debug, Clone, PartialEq)]
pub struct RecipeModel {
    bare: Bare,
    panels: Vec<StainedPanel>,
    strengths: Strengths,
    tested: Tested,
    interval: Result<Interval, NoInterval>,
}

/// The color a recipe is expected to give on this slab.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prediction {
    /// In CIELAB.
    pub lab: Lab,
    /// As light.
    pub light: LinearRgb,
    /// The distance from `lab` that holds the color of a new panel nine times in ten, or why none
    /// can be told. A floor is larger than a panel and varies more.
    pub radius: Result<ColorDifference, NoInterval>,
}

impl RecipeModel {
    /// Fits the strengths of the stains to panels of one concrete and finish, all in one state
    /// (sealed where the floor will be). The seed sets the draws behind the radius.
    ///
    /// # Errors
    /// No panels, panels that name different stains, a stain in no panel, or a color too dark or
    /// too bright.
    pub fn fit(bare: &Bare, panels: &[StainedPanel], seed: Seed) -> Result<Self, RecipeRefusal> {
        let stains = panels.first().ok_or(RecipeRefusal::NoPanels)?.recipe.shares.stains();
        for (panel, found) in panels.iter().map(|p| p.recipe.shares.stains()).enumerate() {
            if found != stains {
                return Err(RecipeRefusal::Stains { panel, found, expected: stains });
            }
        }
        let tried = |stain: &usize| panels.iter().any(|p| p.recipe.shares.values()[*stain] > 0.0);
        if let Some(stain) = (0..stains).find(|stain| !tried(stain)) {
            return Err(RecipeRefusal::StainUntried { stain });
        }
        let rows: Vec<Row> =
            panels.iter().enumerate().map(|(index, panel)| Row::of(panel, index)).collect::<Result<_, _>>()?;
        let strengths = fit(bare.absorption(), &rows.iter().collect::<Vec<_>>(), stains, None)?;
        let interval = Interval::learn(&rows, bare.absorption(), &strengths, seed);
        let tested = Tested::of(panels, stains);
        Ok(Self { bare: *bare, panels: panels.to_vec(), strengths, tested, interval })
    }

    /// K/S that one undiluted coat of a stain adds in red, green and blue; none for an index that is
    /// not named.
    #[must_use]
    pub fn strength(&self, stain: usize) -> Option<[f64; 3]> {
        (stain < self.strengths.stains()).then(|| self.strengths.of_stain(stain))
    }

    /// p: coats count as their number to this power.
    #[must_use]
    pub fn coat_power(&self) -> f64 {
        self.strengths.coat_power()
    }

    /// r: water takes strength as 1 + parts to this power.
    #[must_use]
    pub fn water_power(&self) -> f64 {
        self.strengths.water_power()
    }

    /// Half the sum of squares at the fit, priors included.
    #[must_use]
    pub const fn objective(&self) -> f64 {
        self.strengths.objective
    }

    /// The ranges that the panels tried.
    #[must_use]
    pub const fn tested(&self) -> &Tested {
        &self.tested
    }

    /// The panels it was fitted to.
    #[must_use]
    pub fn panels(&self) -> &[StainedPanel] {
        &self.panels
    }

    /// How far the panels lie from what the others foretell.
    ///
    /// # Errors
    /// Too few panels, with what is needed.
    pub fn interval(&self) -> Result<&Interval, NoInterval> {
        self.interval.as_ref().map_err(|why| *why)
    }

    /// The color a recipe should give.
    ///
    /// # Errors
    /// A recipe beyond what the panels tried.
    pub fn predict(&self, recipe: &Recipe) -> Result<Prediction, OutsideTested> {
        self.tested.holds(recipe)?;
        Ok(self.prediction(&self.spread(recipe)))
    }

    pub(super) fn prediction(&self, spread: &Spread) -> Prediction {
        let radius = self.interval().map(|_| {
            let mut off: Vec<f64> = spread.draws().map(|lab| ciede2000(spread.lab, lab).as_units()).collect();
            off.sort_by(f64::total_cmp);
            let held = (HELD * off.len() as f64).ceil() as usize;
            ColorDifference::units(off[held - 1])
        });
        Prediction { lab: spread.lab, light: spread.light, radius }
    }

    /// What a recipe inside the tried ranges may give.
    pub(super) fn spread(&self, recipe: &Recipe) -> Spread<'_> {
        let bare = self.bare.absorption();
        let row = (libm::log(f64::from(recipe.coats.count())), libm::log1p(recipe.water.per_stain()));
        let dose = self.strengths.dose(row.0, row.1);
        let absorption = self.strengths.absorption(bare, recipe.shares.values(), dose);
        let light = LinearRgb::new(absorption.map(reflected));
        let (deviations, widen): (&[[f64; 3]], _) = match &self.interval {
            Ok(interval) => (interval.deviations(), self.widened(interval, absorption)),
            Err(_) => (&[], [1.0; 3]),
        };
        Spread { absorption, light, lab: light.xyz().lab(), deviations, widen }
    }

    /// By how much the deviations grow where the bare concrete alone varies more: a spread s of
    /// ln q0 is s·q0/q of ln q.
    fn widened(&self, interval: &Interval, absorption: [f64; 3]) -> [f64; 3] {
        let bare = self.bare.absorption();
        let Some(spread) = self.bare.spread() else { return [1.0; 3] };
        std::array::from_fn(|c| {
            let learned = libm::sqrt(interval.covariance()[c][c]);
            let floor = spread[c] * bare[c] / absorption[c];
            if floor > learned && learned > 0.0 { floor / learned } else { 1.0 }
        })
    }
}

/// A recipe's color and the colors that a panel of it may turn out.
pub(super) struct Spread<'a> {
    absorption: [f64; 3],
    pub(super) light: LinearRgb,
    pub(super) lab: Lab,
    deviations: &'a [[f64; 3]],
    widen: [f64; 3],
}

impl Spread<'_> {
    /// The drawn colors; none without an interval.
    pub(super) fn draws(&self) -> impl Iterator<Item = Lab> + '_ {
        self.deviations.iter().map(|deviation| {
            let drawn = |c: usize| reflected(self.absorption[c] * libm::exp(self.widen[c] * deviation[c]));
            LinearRgb::new(std::array::from_fn(drawn)).xyz().lab()
        })
    }
}
