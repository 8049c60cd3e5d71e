//! What a drop not yet set is expected to settle.
//!
//! Before the drop, ln(seconds) at a place is N(m, v). The drop will move the mean, by how much
//! nobody knows, and shrink the variance to v_new, which is known. With a = (ln T − m)/√v and
//! ρ = 1 − v_new/v, the share of v that the drop explains, expectations over its outcome are areas
//! under two normal numbers correlated by ρ, and Owen's T gives them.

use super::owen::owens_t;
use super::planner::Planner;
use crate::chance::normal_cdf;

/// What is summed over the map.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Criterion {
    /// Expected Bernoulli variance p(1 − p) of "quicker than the limit", whose logarithm is given.
    Bernoulli(f64),
    /// Variance.
    Variance,
}

/// ρ = 1 − v_new/v, with rounding taken off.
fn explained(first: f64, after: f64) -> f64 {
    if first > 0.0 { (1.0 - after / first).clamp(0.0, 1.0) } else { 0.0 }
}

/// (ln T − m)/√v; infinite, or 0 on the limit itself, where nothing is left to learn.
fn distance(limit: f64, mean: f64, variance: f64) -> f64 {
    (limit - mean) / libm::sqrt(variance).max(f64::MIN_POSITIVE)
}

/// Expected p(1 − p) after the drop, 2·T(a, √((1−ρ)/(1+ρ))) (Chevalier et al. 2014; grade M;
/// checked against a reference file, grade V, and by simulation).
pub(crate) fn bernoulli(a: f64, rho: f64) -> f64 {
    2.0 * owens_t(a, libm::sqrt((1.0 - rho) / (1.0 + rho)))
}

/// The chance that a place is called "quicker" at one state of knowledge and "slower" at a later
/// one, whose shares of the first variance explained are given: 2·T(a/√ρ₂, √((ρ₂−ρ₁)/ρ₁)). With
/// ρ₂ = 1, the truth, it is the chance of a wrong call. Our derivation: both means are normal about
/// m with variances ρ₁v and ρ₂v and the later one keeps the earlier, so their correlation is
/// √(ρ₁/ρ₂), and Owen's formula for the quadrants loses one of its two terms. Checked by simulation.
pub(crate) fn parted(a: f64, earlier: f64, later: f64) -> f64 {
    if later <= earlier {
        return 0.0;
    }
    let height = a.abs() / libm::sqrt(later);
    if earlier <= 0.0 {
        return normal_cdf(-height);
    }
    2.0 * owens_t(height, libm::sqrt((later - earlier) / earlier))
}

impl Criterion {
    /// The sum over the map at these variances, × m².
    pub(crate) fn total(self, planner: &Planner, after: &[f64]) -> f64 {
        let sum: f64 = match self {
            Self::Variance => after.iter().sum(),
            Self::Bernoulli(limit) => per_place(planner, after)
                .map(|(mean, first, v)| {
                    let a = distance(limit, mean, first);
                    // Beyond 38 deviations a normal chance is nothing in double precision.
                    if a.abs() > 38.0 { 0.0 } else { bernoulli(a, explained(first, v)) }
                })
                .sum(),
        };
        planner.each * sum
    }
}

fn per_place<'a>(planner: &'a Planner, after: &'a [f64]) -> impl Iterator<Item = (f64, f64, f64)> + 'a {
    planner.means.iter().zip(&planner.first).zip(after).map(|((m, v), w)| (*m, *v, *w))
}

/// m² expected to be called wrongly at these variances.
pub(crate) fn misclassified(planner: &Planner, limit: f64, after: &[f64]) -> f64 {
    let at = |(mean, first, v): (f64, f64, f64)| parted(distance(limit, mean, first), explained(first, v), 1.0);
    planner.each * per_place(planner, after).map(at).sum::<f64>()
}

/// m² whose call is expected to change between the planned drops and one more.
pub(crate) fn changed(planner: &Planner, limit: f64, after: &[f64]) -> f64 {
    let places = per_place(planner, after).zip(&planner.now);
    let at = |((mean, first, v), now): ((f64, f64, f64), &f64)| {
        parted(distance(limit, mean, first), explained(first, *now), explained(first, v))
    };
    planner.each * places.map(at).sum::<f64>()
}

#[cfg(test)]
mod tests {
    use super::{bernoulli, parted};
    use crate::chance::{Seed, Stream, normal_cdf};

    const DRAWS: u64 = 400_000;

    /// Against draws: the two means, and the truth, with unit variance.
    #[test]
    fn closed_forms_agree_with_simulation() {
        for (case, (a, earlier, later)) in
            [(0.3_f64, 0.2_f64, 0.5_f64), (-1.1, 0.05, 0.9), (0.0, 0.4, 0.41), (2.0, 0.6, 0.95), (0.7, 0.0, 0.3)]
                .into_iter()
                .enumerate()
        {
            let mut stream = Stream::of_member(Seed(11), case as u64);
            let (mut p1p, mut wrong, mut moved) = (0.0, 0.0, 0.0);
            for _ in 0..DRAWS {
                let first = earlier.sqrt() * stream.standard_normal();
                let second = first + (later - earlier).sqrt() * stream.standard_normal();
                let truth = second + (1.0 - later).sqrt() * stream.standard_normal();
                let p = normal_cdf((a - second) / (1.0 - later).sqrt());
                p1p += p * (1.0 - p);
                wrong += f64::from(u8::from((second < a) != (truth < a)));
                moved += f64::from(u8::from((first < a) != (second < a)));
            }
            let n = DRAWS as f64;
            // Five standard errors of a share near one half.
            let allowed = 5.0 * 0.5 / n.sqrt();
            assert!((bernoulli(a, later) - p1p / n).abs() < allowed, "p(1-p) of case {case}");
            assert!((parted(a, later, 1.0) - wrong / n).abs() < allowed, "wrong in case {case}");
            assert!((parted(a, earlier, later) - moved / n).abs() < allowed, "moved in case {case}");
        }
    }

    #[test]
    fn nothing_learnt_leaves_the_call_as_it_is() {
        for a in [-2.0_f64, -0.4, 0.0, 1.3] {
            let p = normal_cdf(a);
            assert!((bernoulli(a, 0.0) - p * (1.0 - p)).abs() < 1e-14);
            assert!((parted(a, 0.0, 1.0) - p.min(1.0 - p)).abs() < 1e-14);
            assert_eq!(parted(a, 0.3, 0.3), 0.0);
            assert!(bernoulli(a, 1.0).abs() < 1e-14 && parted(a, 1.0, 1.0).abs() < 1e-14);
        }
    }
}
