//! How far predictions miss: each panel foretold from the others.

use super::error::NoInterval;
use super::fit::{Row, Strengths, fit};
use super::panel::Shares;
use crate::chance::{Seed, Stream};

/// Stained panels needed for an interval with one, two and three stains, a bare one beside.
///
/// Source: our own simulated panels (`reference/color/coverage.md`); provisional.
pub const FEWEST_PANELS: [usize; Shares::MAX_STAINS] = [4, 6, 9];
/// Draws behind each radius.
pub(super) const DRAWS: u64 = 400;

/// How far the panels' ln K/S lies from what the other panels foretell.
#[derive(Debug, Clone, PartialEq)]
pub struct Interval {
    covariance: [[f64; 3]; 3],
    panels: usize,
    /// Deviations of ln K/S, as likely as the panels say.
    deviations: Vec<[f64; 3]>,
}

impl Interval {
    /// Mean products of the left-out residuals of red, green and blue, in ln K/S.
    #[must_use]
    pub const fn covariance(&self) -> [[f64; 3]; 3] {
        self.covariance
    }

    /// Panels it was learned from.
    #[must_use]
    pub const fn panels(&self) -> usize {
        self.panels
    }

    pub(super) fn deviations(&self) -> &[[f64; 3]] {
        &self.deviations
    }

    /// From the panels, or why not.
    pub(super) fn learn(rows: &[Row], bare: [f64; 3], whole: &Strengths, seed: Seed) -> Result<Self, NoInterval> {
        enough(rows, whole.stains())?;
        let mut covariance = [[0.0; 3]; 3];
        for panel in 0..rows.len() {
            let others: Vec<&Row> = rows.iter().enumerate().filter(|(i, _)| *i != panel).map(|(_, row)| row).collect();
            let fitted =
                fit(bare, &others, whole.stains(), Some(whole)).map_err(|_| NoInterval::NoFitWithout { panel })?;
            let missed = fitted.residual(bare, &rows[panel]);
            for (line, by) in covariance.iter_mut().zip(missed) {
                for (sum, and) in line.iter_mut().zip(missed) {
                    *sum += by * and / rows.len() as f64;
                }
            }
        }
        let root = lower_root(covariance);
        let deviations = (0..DRAWS).map(|member| deviation(root, &mut Stream::of_member(seed, member))).collect();
        Ok(Self { covariance, panels: rows.len(), deviations })
    }
}

/// Whether there are panels enough.
fn enough(rows: &[Row], stains: usize) -> Result<(), NoInterval> {
    let panels = rows.len();
    // Up to three stains are let in.
    let needed = FEWEST_PANELS[stains - 1];
    if panels < needed {
        return Err(NoInterval::TooFewPanels { stains, panels, needed });
    }
    let in_use = |row: &Row| row.shares.iter().filter(|share| **share > 0.0).count();
    if stains > 1 && !rows.iter().any(|row| in_use(row) > 1) {
        return Err(NoInterval::NoMix { stains, panels });
    }
    match (0..stains).find(|stain| rows.iter().filter(|row| row.shares[*stain] > 0.0).count() < 2) {
        Some(stain) => Err(NoInterval::StainInOnePanel { stain }),
        None => Ok(()),
    }
}

/// L of A = LLᵀ (Cholesky). A direction in which the residuals do not vary stays without variation.
fn lower_root(a: [[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let mut l = [[0.0_f64; 3]; 3];
    for i in 0..3 {
        for j in 0..=i {
            let rest = a[i][j] - (0..j).map(|k| l[i][k] * l[j][k]).sum::<f64>();
            l[i][j] = match (i == j, l[j][j] > 0.0) {
                (true, _) => libm::sqrt(rest.max(0.0)),
                (false, true) => rest / l[j][j],
                (false, false) => 0.0,
            };
        }
    }
    l
}

fn deviation(root: [[f64; 3]; 3], chance: &mut Stream) -> [f64; 3] {
    let z: [f64; 3] = std::array::from_fn(|_| chance.standard_normal());
    std::array::from_fn(|i| (0..=i).map(|j| root[i][j] * z[j]).sum())
}

#[cfg(test)]
mod tests {
    use super::lower_root;

    #[test]
    fn the_root_times_itself_is_the_covariance_even_where_a_direction_is_still() {
        let full = [[4.0, 2.0, 1.0], [2.0, 5.0, 3.0], [1.0, 3.0, 6.0]];
        let still = [[4.0, 4.0, 2.0], [4.0, 4.0, 2.0], [2.0, 2.0, 3.0]];
        for a in [full, still, [[0.0; 3]; 3]] {
            let l = lower_root(a);
            for i in 0..3 {
                for j in 0..3 {
                    let product: f64 = (0..3).map(|k| l[i][k] * l[j][k]).sum();
                    assert!((product - a[i][j]).abs() < 1e-12, "{i}, {j}: {product} against {}", a[i][j]);
                }
            }
        }
    }
}
