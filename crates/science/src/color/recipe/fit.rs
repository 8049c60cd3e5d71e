//! Strengths of the stains from the panels: damped least squares (Levenberg 1944, Marquardt 1963; M).

use nalgebra::{DMatrix, DVector};

use super::panel::{StainedPanel, absorptions};
use super::{Place, RecipeRefusal};

/// Standard deviation of ln K/S of a panel about the model.
const NOISE: f64 = 0.08;
/// Coats and dilution: expected power and its standard deviation.
const POWER: (f64, f64) = (0.8, 0.25);
/// Strengths: weight of the pull and the K/S of one undiluted coat it pulls to.
const STRENGTH_PULL: (f64, f64) = (0.3, 0.5);
/// The objective is quadratic near its least value, so a step that gains less than this share of it
/// is at rounding.
const RESTS: f64 = 1e-15;
/// A fit of eight panels takes about ten steps.
const MAX_STEPS: usize = 300;

/// One panel as the fit sees it.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub(super) shares: Vec<f64>,
    pub(super) ln_coats: f64,
    /// ln(1 + w).
    pub(super) ln_water: f64,
    pub(super) ln_absorption: [f64; 3],
}

impl Row {
    pub(super) fn of(panel: &StainedPanel, index: usize) -> Result<Self, RecipeRefusal> {
        let recipe = &panel.recipe;
        Ok(Self {
            shares: recipe.shares.values().to_vec(),
            ln_coats: libm::log(f64::from(recipe.coats.count())),
            ln_water: libm::log1p(recipe.water.per_stain()),
            ln_absorption: absorptions(panel.color, Place::Panel(index))?.map(libm::log),
        })
    }
}

/// ln k of each stain and channel, then p and r: what is fitted.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Strengths {
    values: Vec<f64>,
    /// Half the sum of squares at `values`.
    pub(super) objective: f64,
}

impl Strengths {
    fn start(stains: usize) -> Self {
        let mut values = vec![libm::log(STRENGTH_PULL.1); 3 * stains];
        values.extend([POWER.0; 2]);
        Self { values, objective: f64::INFINITY }
    }

    pub(super) fn stains(&self) -> usize {
        self.values.len() / 3
    }

    pub(super) fn of_stain(&self, stain: usize) -> [f64; 3] {
        std::array::from_fn(|channel| libm::exp(self.values[3 * stain + channel]))
    }

    pub(super) fn coat_power(&self) -> f64 {
        self.values[self.values.len() - 2]
    }

    pub(super) fn water_power(&self) -> f64 {
        self.values[self.values.len() - 1]
    }

    /// n^p (1 + w)^(−r) from the logarithms of n and 1 + w.
    pub(super) fn dose(&self, ln_coats: f64, ln_water: f64) -> f64 {
        libm::exp(self.coat_power() * ln_coats - self.water_power() * ln_water)
    }

    /// q_c = q0_c + Σ_j f_j k_jc n^p (1 + w)^(−r)
    pub(super) fn absorption(&self, bare: [f64; 3], shares: &[f64], dose: f64) -> [f64; 3] {
        let mut q = bare;
        for (stain, share) in shares.iter().enumerate().filter(|(_, share)| **share > 0.0) {
            let strength = self.of_stain(stain);
            for (value, k) in q.iter_mut().zip(strength) {
                *value += share * k * dose;
            }
        }
        q
    }

    /// ln of the panel's K/S less ln of the model's.
    pub(super) fn residual(&self, bare: [f64; 3], row: &Row) -> [f64; 3] {
        let q = self.absorption(bare, &row.shares, self.dose(row.ln_coats, row.ln_water));
        std::array::from_fn(|c| row.ln_absorption[c] - libm::log(q[c]))
    }
}

/// Half the sum of squares, its gradient and JᵀJ.
struct Normal {
    objective: f64,
    gradient: DVector<f64>,
    curvature: DMatrix<f64>,
}

/// Adds one weighted residual, given where its derivative is not zero.
fn add(normal: &mut Normal, residual: f64, slope: &[(usize, f64)]) {
    normal.objective += 0.5 * residual * residual;
    for (i, by_i) in slope {
        normal.gradient[*i] += by_i * residual;
        for (j, by_j) in slope {
            normal.curvature[(*i, *j)] += by_i * by_j;
        }
    }
}

fn normal(at: &Strengths, bare: [f64; 3], rows: &[&Row]) -> Normal {
    let size = at.values.len();
    let mut sum = Normal { objective: 0.0, gradient: DVector::zeros(size), curvature: DMatrix::zeros(size, size) };
    let mut slope = Vec::with_capacity(size);
    let strengths: Vec<[f64; 3]> = (0..at.stains()).map(|stain| at.of_stain(stain)).collect();
    for row in rows {
        let dose = at.dose(row.ln_coats, row.ln_water);
        let q = at.absorption(bare, &row.shares, dose);
        for c in 0..3 {
            slope.clear();
            let added = q[c] - bare[c];
            for (stain, share) in row.shares.iter().enumerate().filter(|(_, share)| **share > 0.0) {
                slope.push((3 * stain + c, share * strengths[stain][c] * dose / q[c] / NOISE));
            }
            slope.push((size - 2, row.ln_coats * added / q[c] / NOISE));
            slope.push((size - 1, -row.ln_water * added / q[c] / NOISE));
            add(&mut sum, (libm::log(q[c]) - row.ln_absorption[c]) / NOISE, &slope);
        }
    }
    let (weight, usual) = STRENGTH_PULL;
    for i in 0..size - 2 {
        add(&mut sum, weight * (at.values[i] - libm::log(usual)), &[(i, weight)]);
    }
    for i in size - 2..size {
        add(&mut sum, (at.values[i] - POWER.0) / POWER.1, &[(i, 1.0 / POWER.1)]);
    }
    sum
}

/// The strengths of least objective, from the usual ones or from those of nearly the same panels.
pub(super) fn fit(
    bare: [f64; 3],
    rows: &[&Row],
    stains: usize,
    near: Option<&Strengths>,
) -> Result<Strengths, RecipeRefusal> {
    let mut at = near.cloned().unwrap_or_else(|| Strengths::start(stains));
    let mut here = normal(&at, bare, rows);
    let mut damping = 1e-3;
    for _ in 0..MAX_STEPS {
        let mut damped = here.curvature.clone();
        for i in 0..damped.nrows() {
            damped[(i, i)] *= 1.0 + damping;
        }
        let step = damped.cholesky().ok_or(RecipeRefusal::NoFit)?.solve(&here.gradient);
        let mut next = at.clone();
        for (value, change) in next.values.iter_mut().zip(step.iter()) {
            *value -= change;
        }
        let there = normal(&next, bare, rows);
        if there.objective < here.objective {
            let gain = here.objective - there.objective;
            (at, here) = (next, there);
            damping = (damping / 10.0).max(1e-12);
            if gain <= RESTS * here.objective {
                break;
            }
        } else {
            // No better in either direction of the damping: the bottom, to rounding.
            if damping > 1e8 {
                break;
            }
            damping *= 10.0;
        }
    }
    at.objective = here.objective;
    if at.objective.is_finite() { Ok(at) } else { Err(RecipeRefusal::NoFit) }
}
