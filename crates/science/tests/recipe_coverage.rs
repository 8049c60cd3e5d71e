//! The radius of a recipe holds a new panel about nine times in ten, on simulated slabs with fixed
//! seeds. The long table is `reference/color/coverage.md`.

#![expect(clippy::unwrap_used, reason = "where a check cannot go on, it fails")]

#[path = "../examples/recipe_coverage/recipe_world.rs"]
mod recipe_world;

use recipe_world::{Laid, Law, World, design, recipe_within};
use science::chance::{Seed, Stream};
use science::color::ciede2000;
use science::color::recipe::RecipeModel;

fn held(law: Law, laid: Laid, stains: usize, panels: usize) -> f64 {
    const SLABS: u64 = 150;
    const RECIPES: u64 = 4;
    let mut held = 0;
    for slab in 0..SLABS {
        let mut chance = Stream::of_member(Seed(20), slab);
        let world = World::draw(law, stains, &mut chance).unwrap();
        let panels = design(&world, laid, panels, &mut chance).unwrap();
        let model = RecipeModel::fit(&world.bare(&mut chance).unwrap(), &panels, Seed(slab)).unwrap();
        for _ in 0..RECIPES {
            let recipe = recipe_within(&model, &mut chance).unwrap();
            let prediction = model.predict(&recipe).unwrap();
            let came_out = world.panel(&recipe, &mut chance).xyz().lab();
            held += u32::from(ciede2000(prediction.lab, came_out) <= prediction.radius.unwrap());
        }
    }
    f64::from(held) / (SLABS * RECIPES) as f64 * 100.0
}

#[test]
fn with_the_fewest_panels_and_with_more_the_radius_holds_85_to_96_in_100() {
    for law in [Law::AsTheModel, Law::Other] {
        for (stains, panels) in [(1, 4), (1, 8), (2, 6), (2, 12), (3, 9)] {
            let share = held(law, Laid::Out, stains, panels);
            assert!((85.0..=96.0).contains(&share), "{law:?}, {stains} stains, {panels} panels: {share} %");
        }
    }
    let share = held(Law::AsTheModel, Laid::Haphazard, 2, 8);
    assert!((85.0..=96.0).contains(&share), "haphazard: {share} %");
}
