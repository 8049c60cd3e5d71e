//! Do the suggested places settle more than as many drops at random or at equal spacing?
//!
//! Draws synthetic slabs, maps each from 10 equally spaced drops, adds 5 by several rules and
//! counts the share of the area called wrongly against a limit. Every rule reads the same drop at
//! the same place. Prints the table kept in `reference/kriging/next_points.md`.
//!
//! Run: `cargo run --release -p science --example next_places [slabs] [seed]`

mod spacing;
mod world;

use std::error::Error;

use rayon::prelude::*;
use science::absorbency::{Aim, Field, Ground, Limits, NextRule, Place, State};
use science::chance::{Seed, Stream};
use units::{Area, Duration, Fraction};
use world::{LIMIT, World};

type Outcome<T> = Result<T, Box<dyn Error + Send + Sync>>;

const FIRST: usize = 10;
const MORE: usize = 5;
const RULES: [&str; 10] = [
    "10 equally spaced, no more",
    "+ 5 suggested, all at once",
    "+ 5 suggested, one by one",
    "+ 5 suggested for mean variance (no limit)",
    "+ 5 random",
    "+ 5 in the widest gaps",
    "+ 5 equally spaced among the 10",
    "15 equally spaced from the start",
    "+ up to 5 suggested, stopped by the usual rule",
    "+ 5 suggested, s², l and t² known from 60 other drops",
];
/// The rules that all others are held against, and their heads in the table.
const AGAINST: [(usize, &str); 4] =
    [(4, "+ 5 random"), (5, "+ 5 in the widest gaps"), (6, "+ 5 equally spaced"), (7, "15 equally spaced")];

/// What one slab showed: share called wrongly by each rule, and some counts.
struct Shown {
    wrong: [f64; RULES.len()],
    /// Share the map of 10 drops expected to call wrongly.
    expected: f64,
    /// Places named under the usual stopping rule.
    named: f64,
}

fn aim(least: f64) -> Outcome<Aim> {
    let least = Fraction::share(least)?;
    Ok(Aim::Limit { limit: Duration::seconds(LIMIT), least_gain: least, least_change: least })
}

fn fitted(world: &World, taken: &[usize]) -> Outcome<Field> {
    let drops: Vec<_> = taken.iter().map(|i| world.drop_at(*i)).collect();
    Ok(Field::fit(&drops)?)
}

/// Share of the map whose call differs from the truth.
fn wrong(world: &World, field: &Field) -> Outcome<f64> {
    let limits = Limits::new(vec![Duration::seconds(LIMIT)])?;
    let slower = |truth: &f64| usize::from(*truth > LIMIT.ln());
    let calls = field.map(&world.map).into_iter().zip(&world.truth);
    Ok(calls.filter(|(e, truth)| e.class(&limits) != slower(truth)).count() as f64 / world.map.len() as f64)
}

/// The places taken and those suggested beyond them.
fn suggested(world: &World, field: &Field, taken: &[usize], rule: NextRule) -> Outcome<(Vec<usize>, State)> {
    let free: Vec<usize> = (0..world.reachable.len()).filter(|i| !taken.contains(i)).collect();
    let ground = Ground {
        map: world.map.clone(),
        each: Area::square_meters(0.25),
        reachable: free.iter().map(|i| world.reachable[*i]).collect(),
    };
    let advice = field.next_places(&ground, rule)?;
    let index = |place: Place| free[ground.reachable.iter().position(|p| *p == place).unwrap_or(0)];
    let mut all = taken.to_vec();
    all.extend(advice.places.iter().map(|next| index(next.place)));
    Ok((all, advice.before))
}

fn slab(seed: u64, index: u64) -> Outcome<Shown> {
    let world = World::draw(seed, index).map_err(|e| e.to_string())?;
    let mut chance = Stream::of_member(Seed(seed ^ 0x5eed), index);
    let first = spacing::equal(&world.map, &world.reachable, FIRST, &mut chance);
    let field = fitted(&world, &first)?;
    let all = |aim| NextRule { aim, most: MORE };
    let (at_once, before) = suggested(&world, &field, &first, all(aim(0.0)?))?;
    let mut one_by_one = first.clone();
    for _ in 0..MORE {
        let now = fitted(&world, &one_by_one)?;
        one_by_one = suggested(&world, &now, &one_by_one, NextRule { aim: aim(0.0)?, most: 1 })?.0;
    }
    let even = Aim::Spread { least_fall: Fraction::share(0.0)? };
    let by_variance = suggested(&world, &field, &first, all(even))?.0;
    let random = spacing::random(&world.reachable, &first, MORE, &mut chance);
    let gaps = spacing::gaps(&world.reachable, &first, MORE);
    let among = spacing::filled(&world.map, &world.reachable, &first, MORE);
    let fifteen = spacing::equal(&world.map, &world.reachable, FIRST + MORE, &mut chance);
    let usual = Aim::at_limit(Duration::seconds(LIMIT));
    let stopped = suggested(&world, &field, &first, all(usual))?.0;
    let many = spacing::random(&world.reachable, &[], 60.min(world.reachable.len()), &mut chance);
    let known = *fitted(&world, &many)?.covariance();
    let with_known = |taken: &[usize]| -> Outcome<Field> {
        let drops: Vec<_> = taken.iter().map(|i| world.drop_at(*i)).collect();
        Ok(Field::with_covariance(&drops, known)?)
    };
    let informed = suggested(&world, &with_known(&first)?, &first, all(aim(0.0)?))?.0;
    let of = |taken: &[usize]| wrong(&world, &fitted(&world, taken)?);
    let State::Misclassified(doubtful) = before else { return Err("a limit was given".into()) };
    Ok(Shown {
        wrong: [
            of(&first)?,
            of(&at_once)?,
            of(&one_by_one)?,
            of(&by_variance)?,
            of(&random)?,
            of(&gaps)?,
            of(&among)?,
            of(&fifteen)?,
            of(&stopped)?,
            wrong(&world, &with_known(&informed)?)?,
        ],
        expected: doubtful.as_square_meters() / (0.25 * world.map.len() as f64),
        named: (stopped.len() - first.len()) as f64,
    })
}

/// Mean and its standard error, percent.
fn mean(values: impl Iterator<Item = f64> + Clone) -> (f64, f64) {
    let n = values.clone().count() as f64;
    let mean = values.clone().sum::<f64>() / n;
    let spread = values.map(|v| (v - mean) * (v - mean)).sum::<f64>() / (n - 1.0);
    (100.0 * mean, 100.0 * (spread / n).sqrt())
}

fn main() -> Outcome<()> {
    let mut args = std::env::args().skip(1);
    let slabs: u64 = args.next().map_or(Ok(200), |a| a.parse())?;
    let seed: u64 = args.next().map_or(Ok(1), |a| a.parse())?;
    let shown = (0..slabs).into_par_iter().map(|i| slab(seed, i)).collect::<Outcome<Vec<_>>>()?;
    println!("Seed {seed}, {slabs} slabs:\n");
    let heads = AGAINST.map(|(_, head)| format!("against {head}")).join(" | ");
    println!("| drops | called wrongly | {heads} |\n|---|---|---|---|---|---|");
    for (rule, name) in RULES.iter().enumerate() {
        let (share, error) = mean(shown.iter().map(|s| s.wrong[rule]));
        let against = AGAINST.map(|(other, _)| {
            if other == rule {
                return "—".to_owned();
            }
            let (difference, error) = mean(shown.iter().map(|s| s.wrong[rule] - s.wrong[other]));
            format!("{difference:+.2} ± {error:.2}")
        });
        println!("| {name} | {share:.2} ± {error:.2} % | {} |", against.join(" | "));
    }
    let (expected, error) = mean(shown.iter().map(|s| s.expected));
    let named = shown.iter().map(|s| s.named).sum::<f64>() / slabs as f64;
    println!("\nThe map of 10 drops expected to call {expected:.2} ± {error:.2} % wrongly.");
    println!("The usual rule named {named:.2} places a slab.");
    Ok(())
}
