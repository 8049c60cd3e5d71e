//! Synthetic slabs and stains whose panels the model has to foretell.

use std::error::Error;

use science::chance::Stream;
use science::color::LinearRgb;
use science::color::recipe::{Bare, Coats, Recipe, RecipeModel, RecipeRefusal, Shares, StainedPanel, WaterParts};

/// By which law color comes about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Law {
    /// By the model's own.
    AsTheModel,
    /// Each stain has its own powers, strength saturates with coats, mixes are stronger or weaker
    /// than their parts, and panels differ with heavy tails.
    Other,
}

/// How the crew chose its panels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Laid {
    /// From corner to corner of what may be wanted.
    Out,
    /// As it came.
    Haphazard,
}

/// One slab with its stains.
pub(crate) struct World {
    law: Law,
    bare: [f64; 3],
    strengths: Vec<[f64; 3]>,
    powers: Vec<(f64, f64)>,
    /// Coats after which a stain gives no more, as a scale.
    full: Vec<f64>,
    /// ln of what a mix has over its parts.
    mixed: [f64; 3],
    /// Standard deviation of ln K/S between panels of one recipe.
    noise: f64,
    /// Correlation of it between channels.
    together: f64,
}

impl World {
    pub(crate) fn draw(law: Law, stains: usize, chance: &mut Stream) -> Result<Self, Box<dyn Error>> {
        let gray = chance.uniform(0.22, 0.45)?;
        let mut bare = [0.0; 3];
        for value in &mut bare {
            let light: f64 = gray * chance.log_normal(1.0, 0.06)?;
            *value = (1.0 - light) * (1.0 - light) / (2.0 * light);
        }
        let mut strengths = Vec::new();
        let mut powers = Vec::new();
        let mut full = Vec::new();
        let shared = (chance.normal(0.7, 0.25)?.clamp(0.1, 1.3), chance.normal(0.8, 0.25)?.clamp(0.1, 1.4));
        for _ in 0..stains {
            let depth = chance.log_normal(1.0, 0.5)?;
            let mut strength = [0.0; 3];
            for value in &mut strength {
                *value = depth * chance.log_normal(1.0, 0.6)?;
            }
            strengths.push(strength);
            let own = (chance.normal(shared.0, 0.2)?.clamp(0.05, 1.4), chance.normal(shared.1, 0.2)?.clamp(0.05, 1.5));
            powers.push(if law == Law::Other { own } else { shared });
            full.push(chance.uniform(1.5, 6.0)?);
        }
        let mut mixed = [0.0; 3];
        for value in &mut mixed {
            *value = chance.normal(0.0, 0.15)?;
        }
        let noise = chance.uniform(0.04, 0.15)?;
        let together = chance.uniform(0.4, 0.9)?;
        Ok(Self { law, bare, strengths, powers, full, mixed, noise, together })
    }

    /// Deviations of ln K/S of one panel.
    fn off(&self, chance: &mut Stream) -> [f64; 3] {
        // Heavy tails: a normal over the root of a mean of four squares (Student, 4 degrees), as wide
        // as the normal.
        let squares: f64 = (0..4).map(|_| chance.standard_normal()).map(|z| z * z).sum();
        let heavy = if self.law == Law::Other { 1.0 / libm::sqrt(squares / 4.0) / libm::sqrt(2.0) } else { 1.0 };
        let all = chance.standard_normal();
        let (common, own) = (libm::sqrt(self.together), libm::sqrt(1.0 - self.together));
        std::array::from_fn(|_| self.noise * heavy * (common * all + own * chance.standard_normal()))
    }

    /// A panel of a recipe, with all that makes panels differ.
    pub(crate) fn panel(&self, recipe: &Recipe, chance: &mut Stream) -> LinearRgb {
        let (coats, water) = (f64::from(recipe.coats.count()), 1.0 + recipe.water.per_stain());
        let mix = if self.law == Law::Other && recipe.shares.is_mix() { self.mixed } else { [0.0; 3] };
        let off = self.off(chance);
        LinearRgb::new(std::array::from_fn(|c| {
            let added: f64 = (0..self.strengths.len())
                .map(|stain| {
                    let (p, r) = self.powers[stain];
                    let scale = self.full[stain];
                    let laid = if self.law == Law::Other {
                        scale * (1.0 - libm::exp(-libm::pow(coats, p) / scale))
                    } else {
                        libm::pow(coats, p)
                    };
                    recipe.shares.share(stain).as_share() * self.strengths[stain][c] * laid * libm::pow(water, -r)
                })
                .sum();
            let q = (self.bare[c] + added * libm::exp(mix[c])) * libm::exp(off[c]);
            1.0 / (1.0 + q + libm::sqrt(q * (q + 2.0)))
        }))
    }

    /// The bare concrete as measured in one place beside the panels, which is off as panels are.
    pub(crate) fn bare(&self, chance: &mut Stream) -> Result<Bare, RecipeRefusal> {
        let off = self.off(chance);
        Bare::of_places(&[LinearRgb::new(std::array::from_fn(|c| {
            let q = self.bare[c] * libm::exp(off[c]);
            1.0 / (1.0 + q + libm::sqrt(q * (q + 2.0)))
        }))])
    }
}

type Parts = (&'static [f64], u32, f64);

const ONE: [Parts; 8] = [
    (&[1.0], 1, 0.0),
    (&[1.0], 3, 0.0),
    (&[1.0], 1, 4.0),
    (&[1.0], 2, 1.0),
    (&[1.0], 3, 4.0),
    (&[1.0], 2, 2.0),
    (&[1.0], 1, 1.0),
    (&[1.0], 3, 1.0),
];
const TWO: [Parts; 12] = [
    (&[1.0, 0.0], 1, 0.0),
    (&[0.0, 1.0], 1, 0.0),
    (&[1.0, 0.0], 3, 2.0),
    (&[0.0, 1.0], 3, 2.0),
    (&[1.0, 1.0], 2, 1.0),
    (&[1.0, 1.0], 1, 4.0),
    (&[1.0, 0.0], 1, 4.0),
    (&[0.0, 1.0], 1, 4.0),
    (&[1.0, 0.0], 3, 0.0),
    (&[0.0, 1.0], 3, 0.0),
    (&[3.0, 1.0], 3, 0.0),
    (&[1.0, 3.0], 2, 2.0),
];
const THREE: [Parts; 16] = [
    (&[1.0, 0.0, 0.0], 1, 0.0),
    (&[0.0, 1.0, 0.0], 1, 0.0),
    (&[0.0, 0.0, 1.0], 1, 0.0),
    (&[1.0, 0.0, 0.0], 3, 2.0),
    (&[0.0, 1.0, 0.0], 3, 2.0),
    (&[0.0, 0.0, 1.0], 3, 2.0),
    (&[1.0, 1.0, 0.0], 2, 1.0),
    (&[0.0, 1.0, 1.0], 1, 4.0),
    (&[1.0, 0.0, 1.0], 2, 4.0),
    (&[1.0, 1.0, 1.0], 1, 2.0),
    (&[1.0, 1.0, 1.0], 3, 0.0),
    (&[1.0, 1.0, 0.0], 1, 4.0),
    (&[1.0, 0.0, 0.0], 3, 0.0),
    (&[0.0, 1.0, 0.0], 3, 0.0),
    (&[0.0, 0.0, 1.0], 3, 0.0),
    (&[0.0, 1.0, 1.0], 2, 1.0),
];

fn recipe(parts: &[f64], coats: u32, water: f64) -> Result<Recipe, RecipeRefusal> {
    Ok(Recipe { shares: Shares::of_parts(parts)?, water: WaterParts::new(water)?, coats: Coats::new(coats)? })
}

/// So many panels of the world's stains; the haphazard ones until an interval may be given.
pub(crate) fn design(
    world: &World,
    laid: Laid,
    count: usize,
    chance: &mut Stream,
) -> Result<Vec<StainedPanel>, Box<dyn Error>> {
    let stains = world.strengths.len();
    let made = |recipe: Recipe, chance: &mut Stream| StainedPanel { color: world.panel(&recipe, chance), recipe };
    if laid == Laid::Out {
        let plan: &[Parts] = match stains {
            1 => &ONE,
            2 => &TWO,
            _ => &THREE,
        };
        return plan[..count].iter().map(|(f, n, w)| Ok(made(recipe(f, *n, *w)?, chance))).collect();
    }
    loop {
        let mut panels = Vec::new();
        for _ in 0..count {
            let mut parts = vec![0.0; stains];
            for _ in 0..2 {
                parts[pick(stains, chance)] += 1.0;
            }
            let coats = 1 + pick(3, chance) as u32;
            let water = [0.0, 0.0, 1.0, 2.0, 4.0][pick(5, chance)];
            panels.push(made(recipe(&parts, coats, water)?, chance));
        }
        let seed = science::chance::Seed(0);
        let fitted = RecipeModel::fit(&world.bare(chance)?, &panels, seed);
        if fitted.is_ok_and(|model| model.interval().is_ok()) {
            return Ok(panels);
        }
    }
}

fn pick(count: usize, chance: &mut Stream) -> usize {
    ((chance.unit() * count as f64) as usize).min(count - 1)
}

/// A recipe inside what the panels tried, of any shares, coats and water there.
pub(crate) fn recipe_within(model: &RecipeModel, chance: &mut Stream) -> Result<Recipe, Box<dyn Error>> {
    let stains = model.tested().stains().len();
    loop {
        let mut parts: Vec<f64> = (0..stains).map(|_| (chance.unit() * 5.0).floor()).collect();
        if chance.unit() < 0.3 {
            parts[pick(stains, chance)] = 0.0;
        }
        let Ok(shares) = Shares::of_parts(&parts) else { continue };
        let recipe = Recipe {
            shares,
            coats: Coats::new(1 + pick(3, chance) as u32)?,
            water: WaterParts::new((chance.unit() * 9.0).floor() / 2.0)?,
        };
        if model.tested().holds(&recipe).is_ok() {
            return Ok(recipe);
        }
    }
}
