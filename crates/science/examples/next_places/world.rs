//! Synthetic slabs the study knows all about and the map does not.

use std::error::Error;
use std::f64::consts::TAU;

use science::absorbency::{DropTest, End, Place};
use science::chance::{Seed, Stream};
use units::{Duration, Length};

/// The limit, s.
pub(crate) const LIMIT: f64 = 60.0;
/// Spacing of the map and of the reachable places, m.
const MAP_STEP: f64 = 0.5;
const REACH_STEP: f64 = 1.0;
/// Waves whose sum is the smooth part.
const WAVES: usize = 60;

/// A slab with the true ln(seconds) everywhere.
pub(crate) struct World {
    pub(crate) map: Vec<Place>,
    pub(crate) truth: Vec<f64>,
    pub(crate) reachable: Vec<Place>,
    /// What a drop at each reachable place reads: the truth there and its noise.
    readings: Vec<f64>,
}

struct Spot {
    x: f64,
    y: f64,
    radius: f64,
    height: f64,
}

fn grid(x: f64, y: f64, step: f64) -> Vec<(f64, f64)> {
    let (columns, rows) = ((x / step) as u32, (y / step) as u32);
    let at = |i: u32| (f64::from(i) + 0.5) * step;
    (0..rows).flat_map(|j| (0..columns).map(move |i| (at(i), at(j)))).collect()
}

pub(crate) fn place(x: f64, y: f64) -> Place {
    Place { x: Length::meters(x), y: Length::meters(y) }
}

impl World {
    /// Slab number `index` of a seed.
    pub(crate) fn draw(seed: u64, index: u64) -> Result<Self, Box<dyn Error>> {
        let mut chance = Stream::of_member(Seed(seed), index);
        // Whole meters, so that both nets fill the slab.
        let (width, depth) = (chance.uniform(8.0, 15.0)?.floor(), chance.uniform(6.0, 11.0)?.floor());
        let shape = Shape::draw(&mut chance, width, depth)?;
        let map = grid(width, depth, MAP_STEP);
        let mut truth: Vec<f64> = map.iter().map(|(x, y)| shape.at(*x, *y)).collect();
        // The limit cuts the slab somewhere between its quickest and its slowest quarter.
        let mut sorted = truth.clone();
        sorted.sort_by(f64::total_cmp);
        let cut = sorted[(chance.uniform(0.25, 0.75)? * sorted.len() as f64) as usize];
        let shift = LIMIT.ln() - cut;
        truth.iter_mut().for_each(|t| *t += shift);
        // A tenth of the width along one side is stacked with other trades' things.
        let blocked = 0.1 * width;
        let reachable: Vec<(f64, f64)> =
            grid(width, depth, REACH_STEP).into_iter().filter(|(x, _)| *x > blocked).collect();
        let noise = chance.uniform(0.12, 0.25)?;
        let readings =
            reachable.iter().map(|(x, y)| shape.at(*x, *y) + shift + noise * chance.standard_normal()).collect();
        let places = |of: Vec<(f64, f64)>| of.into_iter().map(|(x, y)| place(x, y)).collect();
        Ok(Self { map: places(map), truth, reachable: places(reachable), readings })
    }

    pub(crate) fn drop_at(&self, index: usize) -> DropTest {
        DropTest { place: self.reachable[index], end: End::SoakedIn(Duration::seconds(self.readings[index].exp())) }
    }
}

/// Smooth waves, an unmarked break in the finish, local spots.
struct Shape {
    waves: Vec<(f64, f64, f64)>,
    height: f64,
    /// Nearest point of the break to the middle, its direction and its step.
    break_line: (f64, f64, f64, f64),
    spots: Vec<Spot>,
}

impl Shape {
    fn draw(chance: &mut Stream, width: f64, depth: f64) -> Result<Self, Box<dyn Error>> {
        // Waves with a normal spectrum: smoother than the Matérn field the map believes in.
        let length = chance.uniform(1.5, 5.0)?;
        let waves = (0..WAVES)
            .map(|_| (chance.standard_normal() / length, chance.standard_normal() / length, TAU * chance.unit()))
            .collect();
        let height = chance.uniform(0.2, 0.6)? * (2.0 / WAVES as f64).sqrt();
        let (x, y, angle) = (width * chance.uniform(0.2, 0.8)?, depth * chance.uniform(0.2, 0.8)?, TAU * chance.unit());
        let broken = chance.unit() < 0.7;
        let step = if broken { chance.uniform(0.3, 0.8)? } else { 0.0 };
        let count = (5.0 * chance.unit()) as usize;
        let spots = (0..count)
            .map(|_| {
                Ok(Spot {
                    x: width * chance.unit(),
                    y: depth * chance.unit(),
                    radius: chance.uniform(0.3, 1.0)?,
                    height: chance.uniform(0.5, 1.2)? * if chance.unit() < 0.5 { -1.0 } else { 1.0 },
                })
            })
            .collect::<Result<_, Box<dyn Error>>>()?;
        Ok(Self { waves, height, break_line: (x, y, angle, step), spots })
    }

    fn at(&self, x: f64, y: f64) -> f64 {
        let smooth: f64 = self.waves.iter().map(|(u, v, phase)| (u * x + v * y + phase).cos()).sum();
        let (bx, by, angle, step) = self.break_line;
        let beyond = (x - bx) * angle.cos() + (y - by) * angle.sin() > 0.0;
        let spots: f64 = self
            .spots
            .iter()
            .map(|s| s.height * (-((x - s.x).powi(2) + (y - s.y).powi(2)) / (s.radius * s.radius)).exp())
            .sum();
        self.height * smooth + if beyond { step } else { 0.0 } + spots
    }
}
