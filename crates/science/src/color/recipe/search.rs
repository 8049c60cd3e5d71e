//! The recipe that comes nearest to a wished color.

use rayon::prelude::*;

use super::error::SearchRefusal;
use super::model::{Prediction, RecipeModel};
use super::panel::{Coats, Recipe, Shares, WaterParts};
use super::tested::{Edge, same};
use crate::color::{ColorDifference, Lab, Srgb, ciede2000};

/// Recipes looked at side by side before the bar is set anew.
const TOGETHER: usize = 16;

/// The color wished for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wish {
    /// In CIELAB, as an instrument reads it.
    Lab(Lab),
    /// As a screen shows it.
    Screen(Srgb),
    /// The measured color of one of the panels, from 0.
    Panel(usize),
}

/// Recipes that can be measured out on site. What lies beyond the tried ranges is left out of the
/// search; what the panels themselves tried is always in it.
#[derive(Debug, Clone, PartialEq)]
pub struct PracticalGrid {
    /// Shares in steps of one over this number.
    pub share_steps: u32,
    /// Dilutions.
    pub waters: Vec<WaterParts>,
    /// Coats.
    pub coats: Vec<Coats>,
}

impl PracticalGrid {
    /// Most steps of a share.
    pub const FINEST: u32 = 20;

    /// Shares in eighths, water undiluted to ten parts, one to four coats (common practice, no source).
    #[must_use]
    pub fn usual() -> Self {
        let waters = [0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0].map(WaterParts::known);
        Self { share_steps: 8, waters: waters.to_vec(), coats: [1, 2, 3, 4].map(Coats::known).to_vec() }
    }

    /// All recipes of the grid that the panels bracket, in a fixed order.
    fn recipes(&self, model: &RecipeModel) -> Vec<Recipe> {
        let tried = || model.panels().iter().map(|panel| &panel.recipe);
        let mut mixes = mixes(model.tested().stains().len(), self.share_steps);
        for mix in model.tested().mixes() {
            if !mixes.iter().any(|known| same(known.values(), mix.values())) {
                mixes.push(mix.clone());
            }
        }
        let mut coats: Vec<Coats> = self.coats.iter().copied().chain(tried().map(|r| r.coats)).collect();
        coats.sort_unstable();
        coats.dedup();
        let mut waters: Vec<WaterParts> = self.waters.iter().copied().chain(tried().map(|r| r.water)).collect();
        waters.sort_by(|a, b| a.per_stain().total_cmp(&b.per_stain()));
        waters.dedup();
        let mut recipes = Vec::new();
        for shares in &mixes {
            for coats in &coats {
                for water in &waters {
                    let recipe = Recipe { shares: shares.clone(), water: *water, coats: *coats };
                    if model.tested().holds(&recipe).is_ok() {
                        recipes.push(recipe);
                    }
                }
            }
        }
        recipes
    }
}

/// All shares in whole steps: of one, two or three stains.
fn mixes(stains: usize, steps: u32) -> Vec<Shares> {
    let share = |count: u32| f64::from(count) / f64::from(steps);
    match stains {
        1 => vec![Shares::known(vec![1.0])],
        2 => (0..=steps).map(|a| Shares::known(vec![share(a), share(steps - a)])).collect(),
        _ => (0..=steps)
            .flat_map(|a| (0..=steps - a).map(move |b| [a, b, steps - a - b]))
            .map(|counts| Shares::known(counts.map(share).to_vec()))
            .collect(),
    }
}

/// A recipe, what it should give, and how near that comes to the wish.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// The recipe.
    pub recipe: Recipe,
    /// The color it should give, with its radius.
    pub prediction: Prediction,
    /// The mean distance to the wish over the colors a panel of it may turn out. Without an
    /// interval, the distance of the prediction itself, which promises too much.
    pub expected: ColorDifference,
}

/// A panel that stands there to be looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NearestPanel {
    /// Which, from 0.
    pub index: usize,
    /// How far its measured color lies from the wish.
    pub difference: ColorDifference,
}

/// The answer to a wish.
#[derive(Debug, Clone, PartialEq)]
pub struct Search {
    /// The wish in CIELAB.
    pub wish: Lab,
    /// The recipe of least expected distance.
    pub best: Candidate,
    /// The next.
    pub runner_up: Option<Candidate>,
    /// The nearest panel.
    pub nearest_panel: NearestPanel,
    /// Where the best recipe stands at the end of what was tried.
    pub edges: Vec<Edge>,
    /// Whether the wish lies within the radius of the best recipe; not known without an interval.
    pub within_reach: Option<bool>,
    /// Recipes looked at.
    pub tried: usize,
}

impl RecipeModel {
    /// The recipe of the grid, within the tried ranges, with the least expected distance to the
    /// wish. Among equals, the one first in order of mix, coats and water.
    ///
    /// # Errors
    /// A panel that is not there, or shares in no or too fine steps.
    pub fn search(&self, wish: Wish, grid: &PracticalGrid) -> Result<Search, SearchRefusal> {
        if !(1..=PracticalGrid::FINEST).contains(&grid.share_steps) {
            return Err(SearchRefusal::ShareSteps(grid.share_steps));
        }
        let wish = self.wished(wish)?;
        let recipes = grid.recipes(self);
        let ranked = self.nearest_two(&recipes, wish);
        let candidate = |(expected, index): (f64, usize)| Candidate {
            recipe: recipes[index].clone(),
            prediction: self.prediction(&self.spread(&recipes[index])),
            expected: ColorDifference::units(expected),
        };
        // The recipes of the panels themselves are among them, and there is at least one panel.
        let best = candidate(ranked[0]);
        let reach = best.prediction.radius.ok().map(|radius| ciede2000(best.prediction.lab, wish) <= radius);
        Ok(Search {
            wish,
            runner_up: ranked.get(1).map(|second| candidate(*second)),
            nearest_panel: self.nearest(wish),
            edges: self.tested().edges(&best.recipe),
            within_reach: reach,
            tried: recipes.len(),
            best,
        })
    }

    fn wished(&self, wish: Wish) -> Result<Lab, SearchRefusal> {
        match wish {
            Wish::Lab(lab) => Ok(lab),
            Wish::Screen(color) => Ok(color.lab()),
            Wish::Panel(index) => match self.panels().get(index) {
                Some(panel) => Ok(panel.color.xyz().lab()),
                None => Err(SearchRefusal::NoSuchPanel { index, panels: self.panels().len() }),
            },
        }
    }

    /// Expected distance and index of the best recipe and the next, one where there is one only.
    fn nearest_two(&self, recipes: &[Recipe], wish: Lab) -> Vec<(f64, usize)> {
        // Likely ones first, so that the others are soon given up: a sum of distances only grows.
        let mut order: Vec<(f64, usize)> = recipes
            .par_iter()
            .enumerate()
            .map(|(index, recipe)| (ciede2000(self.spread(recipe).lab, wish).as_units(), index))
            .collect();
        let by_distance = |a: &(f64, usize), b: &(f64, usize)| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1));
        order.sort_by(by_distance);
        let mut two: Vec<(f64, usize)> = Vec::new();
        for some in order.chunks(TOGETHER) {
            let most = two.get(1).map_or(f64::INFINITY, |second| second.0);
            two.par_extend(
                some.par_iter().filter_map(|(central, index)| {
                    Some((self.expected(&recipes[*index], wish, *central, most)?, *index))
                }),
            );
            two.sort_by(by_distance);
            two.truncate(2);
        }
        two
    }

    /// The mean distance to the wish, or none once it must exceed `most`.
    fn expected(&self, recipe: &Recipe, wish: Lab, central: f64, most: f64) -> Option<f64> {
        let Ok(interval) = self.interval() else { return Some(central) };
        let count = interval.deviations().len() as f64;
        let mut sum = 0.0;
        for lab in self.spread(recipe).draws() {
            sum += ciede2000(lab, wish).as_units();
            if sum > most * count {
                return None;
            }
        }
        Some(sum / count)
    }

    fn nearest(&self, wish: Lab) -> NearestPanel {
        let off = |index: usize| ciede2000(self.panels()[index].color.xyz().lab(), wish);
        let first = NearestPanel { index: 0, difference: off(0) };
        (1..self.panels().len()).map(|index| NearestPanel { index, difference: off(index) }).fold(
            first,
            |best, next| {
                if next.difference < best.difference { next } else { best }
            },
        )
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Bare, StainedPanel};
    use super::*;
    use crate::chance::Seed;
    use crate::color::LinearRgb;

    /// Giving up a recipe early must not change which two are best.
    #[test]
    fn the_two_found_are_the_two_of_all_recipes_weighed_to_the_end() {
        let panel = |water: f64, coats: u32, light: [f64; 3]| StainedPanel {
            recipe: Recipe {
                shares: Shares::known(vec![1.0]),
                water: WaterParts::known(water),
                coats: Coats::known(coats),
            },
            color: LinearRgb::new(light),
        };
        let panels = [
            panel(0.0, 1, [0.19, 0.14, 0.09]),
            panel(0.0, 3, [0.17, 0.13, 0.08]),
            panel(4.0, 1, [0.27, 0.22, 0.17]),
            panel(2.0, 2, [0.23, 0.19, 0.12]),
        ];
        let bare = Bare::of_places(&[LinearRgb::new([0.32, 0.28, 0.26])]).unwrap();
        let model = RecipeModel::fit(&bare, &panels, Seed(7)).unwrap();
        let recipes = PracticalGrid::usual().recipes(&model);
        assert_eq!(recipes.len(), 7 * 3);
        for lightness in [30.0, 45.0, 50.0, 55.0, 80.0] {
            let wish = Lab::new(lightness, 5.0, 15.0).unwrap();
            let weigh = |(index, recipe)| (model.expected(recipe, wish, 0.0, f64::INFINITY).unwrap(), index);
            let mut all: Vec<(f64, usize)> = recipes.iter().enumerate().map(|(i, r)| weigh((i, r))).collect();
            all.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
            assert_eq!(model.nearest_two(&recipes, wish), all[..2]);
        }
    }
}
