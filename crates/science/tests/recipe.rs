//! The recipe model against `reference/color/km_fit_example.csv`, and its laws and refusals.

#![expect(clippy::unwrap_used, reason = "where a check cannot go on, it fails")]

use proptest::prelude::*;
use science::chance::Seed;
use science::color::recipe::{
    Bare, Coats, Edge, NoInterval, OutsideTested, Place, PracticalGrid, Recipe, RecipeModel, RecipeRefusal,
    SearchRefusal, Shares, StainedPanel, WaterParts, Wish,
};
use science::color::{Lab, LinearRgb, Xyz, ciede2000};

const EXAMPLE: &str = include_str!("../../../reference/color/km_fit_example.csv");

fn recipe(parts: &[f64], water: f64, coats: u32) -> Recipe {
    Recipe {
        shares: Shares::of_parts(parts).unwrap(),
        water: WaterParts::new(water).unwrap(),
        coats: Coats::new(coats).unwrap(),
    }
}

/// Role and numbers of each row; an empty cell is not a number.
fn example() -> Vec<(String, Vec<f64>)> {
    let lines = EXAMPLE.lines().skip(1).filter(|line| !line.starts_with('#'));
    let rows: Vec<(String, Vec<f64>)> = lines
        .map(|line| {
            let mut cells = line.split(',');
            let role = cells.next().unwrap().to_owned();
            (role, cells.map(|cell| cell.parse().unwrap_or(f64::NAN)).collect())
        })
        .collect();
    assert_eq!(rows.len(), 11, "rows of the example");
    rows
}

fn light(n: &[f64]) -> LinearRgb {
    LinearRgb::new([n[4], n[5], n[6]])
}

fn panels() -> (Bare, Vec<StainedPanel>) {
    let rows = example();
    let bare = Bare::of_places(&[light(&rows[0].1)]).unwrap();
    let panel = |n: &[f64]| StainedPanel { recipe: recipe(&n[..2], n[2], n[3] as u32), color: light(n) };
    let panels: Vec<_> = rows.iter().filter(|row| row.0 == "panel").map(|row| panel(&row.1)).collect();
    assert_eq!(panels.len(), 8);
    (bare, panels)
}

fn fitted() -> RecipeModel {
    let (bare, panels) = panels();
    RecipeModel::fit(&bare, &panels, Seed(7)).unwrap()
}

/// The file prints ten digits of the least objective and of where it lies.
#[test]
fn the_fit_ends_where_the_reference_fit_ends() {
    let model = fitted();
    assert!((model.objective() / 7.782_716_326 - 1.0).abs() < 1e-8, "objective {}", model.objective());
    let theta = EXAMPLE.lines().find_map(|line| line.split_once("p, r): ").map(|(_, values)| values)).unwrap();
    let theta: Vec<f64> = theta.split(' ').map(|value| value.parse().unwrap()).collect();
    assert_eq!(theta.len(), 8);
    for stain in 0..2 {
        for (channel, k) in model.strength(stain).unwrap().into_iter().enumerate() {
            let off = libm::log(k) - theta[3 * stain + channel];
            assert!(off.abs() < 1e-5, "stain {stain}, channel {channel}: off by {off}");
        }
    }
    assert!((model.coat_power() - theta[6]).abs() < 1e-5, "p {}", model.coat_power());
    assert!((model.water_power() - theta[7]).abs() < 1e-5, "r {}", model.water_power());
    assert_eq!(model.strength(2), None);
}

/// The reference went to CIELAB by the matrix printed in the standard, which is a deliberate
/// difference: ours comes of the primaries.
fn as_printed(light: LinearRgb) -> Lab {
    let [r, g, b] = light.as_light();
    let x = 0.4124 * r + 0.3576 * g + 0.1805 * b;
    let y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    let z = 0.0193 * r + 0.1192 * g + 0.9505 * b;
    Xyz::new([x, y, z]).lab()
}

#[test]
fn panels_and_new_recipes_are_foretold_as_in_the_reference() {
    let model = fitted();
    let mut seen = 0;
    for (role, n) in example().iter().filter(|row| row.0 != "bare") {
        let found = model.predict(&recipe(&n[..2], n[2], n[3] as u32)).unwrap();
        let lab = as_printed(found.light);
        for (ours, theirs) in [lab.lightness(), lab.a(), lab.b()].into_iter().zip(&n[10..13]) {
            assert!((ours - theirs).abs() < 1e-5, "{role} {n:?}: {ours}");
        }
        assert_eq!(found.lab, found.light.xyz().lab());
        if role == "predict" {
            for (ours, theirs) in found.light.as_light().into_iter().zip(&n[7..10]) {
                let absorbed = (1.0 - ours) * (1.0 - ours) / (2.0 * ours);
                assert!((absorbed / theirs - 1.0).abs() < 1e-5, "K/S {absorbed} against {theirs}");
            }
        }
        seen += 1;
    }
    assert_eq!(seen, 10);
}

#[test]
fn the_same_seed_gives_the_same_radius_and_another_seed_nearly_so() {
    let (bare, panels) = panels();
    let radius = |seed| {
        let model = RecipeModel::fit(&bare, &panels, Seed(seed)).unwrap();
        model.predict(&recipe(&[1.0, 3.0], 1.0, 2)).unwrap().radius.unwrap().as_units()
    };
    assert_eq!(radius(7).to_bits(), radius(7).to_bits());
    assert_ne!(radius(7).to_bits(), radius(8).to_bits());
    // The 90 % point of 400 draws is known to about 4 % (one standard deviation).
    assert!((radius(7) / radius(8) - 1.0).abs() < 0.2, "{} and {}", radius(7), radius(8));
}

#[test]
fn too_few_panels_give_a_color_and_no_radius_and_say_what_is_needed() {
    let (bare, all) = panels();
    let why = |keep: &[usize]| {
        let kept: Vec<_> = keep.iter().map(|i| all[*i].clone()).collect();
        let model = RecipeModel::fit(&bare, &kept, Seed(7)).unwrap();
        assert_eq!(model.interval().err(), model.predict(&kept[0].recipe).unwrap().radius.err());
        model.interval().err()
    };
    assert_eq!(why(&[0, 1, 3, 4, 6]), Some(NoInterval::TooFewPanels { stains: 2, panels: 5, needed: 6 }));
    assert_eq!(why(&[0, 1, 2, 3, 4, 5]), Some(NoInterval::NoMix { stains: 2, panels: 6 }));
    assert_eq!(why(&[0, 1, 2, 0, 1, 6]), Some(NoInterval::StainInOnePanel { stain: 1 }));
    assert_eq!(why(&[0, 1, 2, 3, 4, 6]), None);

    let one = |count: usize| {
        let panel = |water: f64, lost: f64| StainedPanel {
            recipe: recipe(&[1.0], water, 1),
            color: LinearRgb::new([0.3 - lost, 0.28 - lost, 0.25 - lost]),
        };
        let four = [panel(0.0, 0.15), panel(1.0, 0.1), panel(2.0, 0.07), panel(4.0, 0.04)];
        RecipeModel::fit(&bare, &four[..count], Seed(7)).unwrap().interval().err()
    };
    assert_eq!(one(3), Some(NoInterval::TooFewPanels { stains: 1, panels: 3, needed: 4 }));
    assert_eq!(one(4), None);

    let three: Vec<StainedPanel> = all
        .iter()
        .enumerate()
        .map(|(i, panel)| {
            let share = |stain| panel.recipe.shares.share(stain).as_share();
            let parts = if i % 3 == 0 { [share(0), share(1), 1.0] } else { [share(0), share(1), 0.0] };
            StainedPanel {
                recipe: Recipe { shares: Shares::of_parts(&parts).unwrap(), ..panel.recipe.clone() },
                ..*panel
            }
        })
        .collect();
    let model = RecipeModel::fit(&bare, &three, Seed(7)).unwrap();
    assert_eq!(model.interval().err(), Some(NoInterval::TooFewPanels { stains: 3, panels: 8, needed: 9 }));
    let search = model.search(Wish::Panel(0), &PracticalGrid::usual()).unwrap();
    assert_eq!(search.within_reach, None);
    assert!(search.best.prediction.radius.is_err());
}

#[test]
fn nothing_is_foretold_beyond_what_was_tried() {
    let model = fitted();
    let why = |parts: &[f64], water, coats| model.predict(&recipe(parts, water, coats)).unwrap_err();
    assert_eq!(why(&[1.0, 0.0], 0.0, 4), OutsideTested::Coats { stain: 0, coats: 4, low: 1, high: 3 });
    assert_eq!(why(&[0.0, 1.0], 4.5, 1), OutsideTested::Water { stain: 1, water: 4.5, low: 0.0, high: 4.0 });
    assert_eq!(why(&[1.0], 0.0, 1), OutsideTested::Stains { found: 1, expected: 2 });

    // Only the mixes 3 : 1 and 1 : 1, so nothing purer or the other way round.
    let (bare, all) = panels();
    let mixed = |parts: &[f64], like: usize| StainedPanel {
        recipe: Recipe { shares: Shares::of_parts(parts).unwrap(), ..all[like].recipe.clone() },
        ..all[like]
    };
    let some = [mixed(&[3.0, 1.0], 6), mixed(&[1.0, 1.0], 7)];
    let model = RecipeModel::fit(&bare, &some, Seed(7)).unwrap();
    let holds = |parts: &[f64]| model.tested().holds(&recipe(parts, 1.0, 1));
    assert_eq!(holds(&[2.0, 1.0]), Ok(()));
    assert_eq!(holds(&[4.0, 1.0]), Err(OutsideTested::Shares));
    assert_eq!(holds(&[1.0, 2.0]), Err(OutsideTested::Shares));
    let edges = |parts: &[f64], water, coats| model.tested().edges(&recipe(parts, water, coats));
    assert_eq!(edges(&[2.0, 1.0], 1.0, 1), []);
    assert_eq!(edges(&[3.0, 1.0], 2.0, 2), [Edge::MoreCoats, Edge::MoreWater, Edge::Shares]);
}

/// Pure stains 0, 1 and 2, and nothing else, bracket every mix; two of them and one mix do not.
#[test]
fn a_mix_of_three_lies_within_the_triangle_of_tried_mixes() {
    let color = LinearRgb::new([0.15, 0.14, 0.1]);
    let model = |mixes: [[f64; 3]; 3]| {
        let panels = mixes.map(|parts| StainedPanel { recipe: recipe(&parts, 1.0, 1), color });
        RecipeModel::fit(&panels_bare(), &panels, Seed(7)).unwrap()
    };
    let pure = model([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]]);
    for parts in [[1.0, 1.0, 1.0], [1.0, 1.0, 0.0], [0.0, 0.0, 2.0], [6.0, 1.0, 1.0]] {
        assert_eq!(pure.tested().holds(&recipe(&parts, 1.0, 1)), Ok(()), "{parts:?}");
    }
    let less = model([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 1.0, 1.0]]);
    assert_eq!(less.tested().holds(&recipe(&[2.0, 1.0, 1.0], 1.0, 1)), Ok(()));
    for parts in [[0.0, 0.0, 1.0], [1.0, 0.0, 1.0], [0.0, 1.0, 2.0]] {
        assert_eq!(less.tested().holds(&recipe(&parts, 1.0, 1)), Err(OutsideTested::Shares), "{parts:?}");
    }
    assert!(less.tested().edges(&recipe(&[0.0, 1.0, 1.0], 1.0, 1)).contains(&Edge::Shares));
    assert!(!pure.tested().edges(&recipe(&[0.0, 1.0, 1.0], 1.0, 1)).contains(&Edge::Shares));
}

fn panels_bare() -> Bare {
    Bare::of_places(&[LinearRgb::new([0.32, 0.28, 0.26])]).unwrap()
}

#[test]
fn the_search_finds_no_worse_than_any_recipe_of_its_grid() {
    let model = fitted();
    let grid = PracticalGrid::usual();
    for index in 0..8 {
        let found = model.search(Wish::Panel(index), &grid).unwrap();
        assert_eq!(found.nearest_panel.index, index);
        assert!(found.nearest_panel.difference.as_units() < 1e-9);
        assert!(found.best.expected <= found.runner_up.unwrap().expected);
        let own = model.search(Wish::Lab(found.best.prediction.lab), &grid).unwrap();
        assert_eq!(own.within_reach, Some(true));
        assert!(own.best.expected <= own.best.prediction.radius.unwrap());
    }
    // Nine mixes in eighths; water 0, ½, 1, 1½, 2, 3 and 4 parts; one to three coats.
    let tried = model.search(Wish::Panel(0), &grid).unwrap().tried;
    assert_eq!(tried, 9 * 7 * 3);
}

/// Panels made by the law itself miss nothing, so the search must give back the recipe of a wish.
#[test]
fn a_wish_that_is_a_recipe_of_exact_panels_is_found_again() {
    let bare = panels_bare();
    let absorbed = |r: f64| (1.0 - r) * (1.0 - r) / (2.0 * r);
    let made = |parts: [f64; 2], water: f64, coats: u32| {
        // p = r = 0.8 and k = 0.5 sit on the priors, so that the fit has no reason to move.
        let dose = libm::pow(f64::from(coats), 0.8) * libm::pow(1.0 + water, -0.8);
        let k = [[0.5, 0.5, 0.5], [0.5, 0.5, 0.5]];
        let color = [0.32, 0.28, 0.26].into_iter().enumerate().map(|(c, r)| {
            let q = absorbed(r) + (parts[0] * k[0][c] + parts[1] * k[1][c]) * dose;
            1.0 + q - libm::sqrt(q * q + 2.0 * q)
        });
        let color: Vec<f64> = color.collect();
        StainedPanel { recipe: recipe(&parts, water, coats), color: LinearRgb::new([color[0], color[1], color[2]]) }
    };
    let plan = [([1.0, 0.0], 0.0, 1), ([1.0, 0.0], 4.0, 3), ([0.0, 1.0], 0.0, 1), ([0.0, 1.0], 4.0, 3)];
    let mut panels: Vec<_> = plan.into_iter().map(|(f, w, n)| made(f, w, n)).collect();
    panels.extend([made([0.5, 0.5], 2.0, 2), made([0.5, 0.5], 0.0, 3)]);
    let model = RecipeModel::fit(&bare, &panels, Seed(7)).unwrap();
    assert!(model.objective() < 1e-20, "objective {}", model.objective());
    let wish = made([0.25, 0.75], 1.5, 2);
    let predicted = model.predict(&wish.recipe).unwrap();
    assert!(ciede2000(predicted.lab, wish.color.xyz().lab()).as_units() < 1e-6);
    let found = model.search(Wish::Lab(wish.color.xyz().lab()), &PracticalGrid::usual()).unwrap();
    // Both stains are alike here, so the mix is free; water and coats are not.
    assert_eq!((found.best.recipe.water, found.best.recipe.coats), (wish.recipe.water, wish.recipe.coats));
    assert!(found.best.expected.as_units() < 1e-6);
}

#[test]
fn a_restless_bare_floor_widens_the_radius_of_a_pale_recipe() {
    let (_, panels) = panels();
    let gray = |level: f64| LinearRgb::new([0.32 * level, 0.28 * level, 0.26 * level]);
    let radius = |places: &[LinearRgb]| {
        let model = RecipeModel::fit(&Bare::of_places(places).unwrap(), &panels, Seed(7)).unwrap();
        model.predict(&recipe(&[1.0, 0.0], 4.0, 1)).unwrap().radius.unwrap()
    };
    assert!(radius(&[gray(0.6), gray(1.0), gray(1.6)]) > radius(&[gray(0.99), gray(1.0), gray(1.01)]));
}

#[test]
fn what_no_model_can_be_fitted_to_is_refused_by_name() {
    let (bare, all) = panels();
    let refused = |panels: &[StainedPanel]| RecipeModel::fit(&bare, panels, Seed(7)).unwrap_err();
    assert_eq!(refused(&[]), RecipeRefusal::NoPanels);
    assert_eq!(refused(&all[..3]), RecipeRefusal::StainUntried { stain: 1 });
    let odd = StainedPanel { recipe: recipe(&[1.0], 0.0, 1), ..all[0] };
    assert_eq!(refused(&[all[0].clone(), odd]), RecipeRefusal::Stains { panel: 1, found: 1, expected: 2 });
    let black = StainedPanel { color: LinearRgb::new([0.1, 0.0, 0.1]), ..all[0].clone() };
    let light = RecipeRefusal::Light { place: Place::Panel(0), channel: "green", value: 0.0 };
    assert_eq!(refused(&[black, all[3].clone()]), light);
    assert_eq!(Bare::of_places(&[]), Err(RecipeRefusal::NoBare));
    assert!(Bare::of_places(&[LinearRgb::new([0.3, f64::NAN, 0.3])]).is_err());
    assert_eq!(Coats::new(0), Err(RecipeRefusal::Coats(0)));
    assert_eq!(Coats::new(21), Err(RecipeRefusal::Coats(21)));
    assert_eq!(WaterParts::new(-0.5), Err(RecipeRefusal::Water(-0.5)));
    for parts in [&[][..], &[0.0, 0.0], &[1.0, -1.0], &[1.0; 4], &[f64::NAN]] {
        assert!(matches!(Shares::of_parts(parts), Err(RecipeRefusal::Parts { .. })), "{parts:?}");
    }
    let model = fitted();
    let grid = PracticalGrid::usual();
    assert_eq!(model.search(Wish::Panel(8), &grid), Err(SearchRefusal::NoSuchPanel { index: 8, panels: 8 }));
    let coarse = PracticalGrid { share_steps: 0, ..grid };
    assert_eq!(model.search(Wish::Panel(0), &coarse), Err(SearchRefusal::ShareSteps(0)));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// p and r are above 0 in the example.
    #[test]
    fn more_coats_darken_and_more_water_lightens(part in 0.0..1.0_f64, water in 0.0..3.9_f64, coats in 1_u32..3) {
        let model = fitted();
        let lightness = |w: f64, n: u32| model.predict(&recipe(&[part, 1.0 - part], w, n)).unwrap().lab.lightness();
        prop_assert!(lightness(water, coats + 1) < lightness(water, coats));
        prop_assert!(lightness(water + 0.1, coats) > lightness(water, coats));
    }

    /// Which stain is called the first is nobody's business.
    #[test]
    fn swapping_the_stains_swaps_nothing_else(part in 0.0..1.0_f64, water in 0.0..4.0_f64) {
        let (bare, panels) = panels();
        let swap = |r: &Recipe| recipe(&[r.shares.share(1).as_share(), r.shares.share(0).as_share()], r.water.per_stain(), r.coats.count());
        let swapped: Vec<_> = panels.iter().map(|p| StainedPanel { recipe: swap(&p.recipe), ..*p }).collect();
        let (one, other) = (fitted(), RecipeModel::fit(&bare, &swapped, Seed(7)).unwrap());
        let asked = recipe(&[part, 1.0 - part], water, 2);
        let (first, second) = (one.predict(&asked).unwrap(), other.predict(&swap(&asked)).unwrap());
        prop_assert!(ciede2000(first.lab, second.lab).as_units() < 1e-4);
        prop_assert!((first.radius.unwrap().as_units() / second.radius.unwrap().as_units() - 1.0).abs() < 1e-3);
    }
}
