//! Does the radius of a recipe hold a new panel nine times in ten?
//!
//! Draws synthetic slabs and stains, makes panels on them, fits the model and counts how often a new
//! panel of another recipe falls within the radius. Prints the table kept in
//! `reference/color/coverage.md`.
//!
//! Run: `cargo run --release -p science --example recipe_coverage [slabs] [seed]`

mod recipe_world;

use std::error::Error;

use science::chance::{Seed, Stream};
use science::color::ciede2000;
use science::color::recipe::{PracticalGrid, Recipe, RecipeModel, Search, WaterParts, Wish};

use recipe_world::{Laid, Law, World, design, recipe_within};

/// New recipes looked at on each slab.
const RECIPES: usize = 5;

fn law_name(law: Law) -> &'static str {
    match law {
        Law::AsTheModel => "as the model",
        Law::Other => "another law",
    }
}

fn laid_name(laid: Laid) -> &'static str {
    match laid {
        Laid::Out => "laid out",
        Laid::Haphazard => "haphazard",
    }
}

#[derive(Default)]
struct Tally {
    /// Distance of the new panel over the radius.
    ratios: Vec<f64>,
    radius: f64,
    missed: f64,
}

impl Tally {
    fn add(&mut self, radius: f64, missed: f64) {
        self.ratios.push(missed / radius);
        self.radius += radius;
        self.missed += missed;
    }

    fn held(&self) -> f64 {
        self.ratios.iter().filter(|ratio| **ratio <= 1.0).count() as f64 / self.ratios.len() as f64 * 100.0
    }

    /// What the radius would have to be multiplied by to hold exactly nine in ten.
    fn factor(&mut self) -> f64 {
        self.ratios.sort_by(f64::total_cmp);
        self.ratios[self.ratios.len() * 9 / 10]
    }
}

/// New panels of recipes drawn within the tried ranges, and one of the recipe found for a wish.
fn look(
    world: &World,
    laid: Laid,
    panels: usize,
    chance: &mut Stream,
    tallies: &mut [Tally; 2],
) -> Result<(), Box<dyn Error>> {
    let panels = design(world, laid, panels, chance)?;
    let seed = Seed((chance.unit() * 1e9) as u64);
    let model = RecipeModel::fit(&world.bare(chance)?, &panels, seed)?;
    let meet = |recipe: &Recipe, tally: &mut Tally, chance: &mut Stream| -> Result<(), Box<dyn Error>> {
        let prediction = model.predict(recipe)?;
        let missed = ciede2000(prediction.lab, world.panel(recipe, chance).xyz().lab());
        tally.add(prediction.radius?.as_units(), missed.as_units());
        Ok(())
    };
    for _ in 0..RECIPES {
        let recipe = recipe_within(&model, chance)?;
        meet(&recipe, &mut tallies[0], chance)?;
    }
    let wish = Wish::Lab(world.panel(&recipe_within(&model, chance)?, chance).xyz().lab());
    let waters = [0.0, 0.5, 1.0, 2.0, 3.0, 4.0].into_iter().map(WaterParts::new).collect::<Result<_, _>>()?;
    let grid = PracticalGrid { share_steps: 4, waters, coats: PracticalGrid::usual().coats };
    let Search { best, .. } = model.search(wish, &grid)?;
    meet(&best.recipe, &mut tallies[1], chance)
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let slabs: u64 = arguments.next().map_or(Ok(300), |text| text.parse())?;
    let seed: u64 = arguments.next().map_or(Ok(1), |text| text.parse())?;
    println!("{slabs} slabs a row, {RECIPES} new recipes and 1 search each, seed {seed}\n");
    println!(
        "| world | panels | stains | stained panels | held | mean radius | mean miss | right factor | held, found by search |"
    );
    println!("|---|---|--:|--:|--:|--:|--:|--:|--:|");
    for law in [Law::AsTheModel, Law::Other] {
        for laid in [Laid::Out, Laid::Haphazard] {
            for (stains, panels) in [(1, 4), (1, 5), (1, 6), (1, 8), (2, 6), (2, 8), (2, 12), (3, 9), (3, 12), (3, 16)]
            {
                let mut tallies = [Tally::default(), Tally::default()];
                for slab in 0..slabs {
                    let row = (panels * 8 + stains * 1000) as u64
                        + u64::from(laid == Laid::Out) * 2
                        + u64::from(law == Law::Other);
                    let mut chance = Stream::of_member(Seed(seed), row * 1_000_000 + slab);
                    let world = World::draw(law, stains, &mut chance)?;
                    look(&world, laid, panels, &mut chance, &mut tallies)?;
                }
                let count = tallies[0].ratios.len() as f64;
                let [recipes, found] = &mut tallies;
                println!(
                    "| {} | {} | {stains} | {panels} | {:.1} % | {:.1} | {:.1} | {:.2} | {:.1} % |",
                    law_name(law),
                    laid_name(laid),
                    recipes.held(),
                    recipes.radius / count,
                    recipes.missed / count,
                    recipes.factor(),
                    found.held(),
                );
            }
        }
    }
    Ok(())
}
