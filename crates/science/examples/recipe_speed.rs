//! How long fitting panels and searching a recipe take on this machine.
//!
//! Run: `cargo run --release -p science --example recipe_speed`

#[path = "recipe_coverage/recipe_world.rs"]
mod recipe_world;

use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

use recipe_world::{Laid, Law, World, design, recipe_within};
use science::chance::{Seed, Stream};
use science::color::recipe::{PracticalGrid, RecipeModel, Wish};

#[expect(clippy::disallowed_methods, reason = "this example times the work")]
fn least<T>(times: u32, mut work: impl FnMut() -> T) -> f64 {
    let mut least = f64::INFINITY;
    for _ in 0..times {
        let begin = Instant::now();
        black_box(work());
        least = least.min(begin.elapsed().as_secs_f64() * 1e3);
    }
    least
}

fn main() -> Result<(), Box<dyn Error>> {
    println!("| stains | panels | fit, left-out fits and draws | search | recipes searched |");
    println!("|--:|--:|--:|--:|--:|");
    for (law, stains, panels, laid) in
        [(Law::AsTheModel, 1, 4, Laid::Out), (Law::AsTheModel, 2, 8, Laid::Out), (Law::Other, 3, 12, Laid::Haphazard)]
    {
        let mut chance = Stream::of_member(Seed(1), stains as u64);
        let world = World::draw(law, stains, &mut chance)?;
        let panels = design(&world, laid, panels, &mut chance)?;
        let bare = world.bare(&mut chance)?;
        let fit = least(30, || RecipeModel::fit(&bare, &panels, Seed(7)));
        let model = RecipeModel::fit(&bare, &panels, Seed(7))?;
        let wish = Wish::Lab(model.predict(&recipe_within(&model, &mut chance)?)?.lab);
        let grid = PracticalGrid::usual();
        let search = least(10, || model.search(wish, &grid));
        let tried = model.search(wish, &grid)?.tried;
        println!("| {stains} | {} | {fit:.2} ms | {search:.1} ms | {tried} |", panels.len());
    }
    Ok(())
}
