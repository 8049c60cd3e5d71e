//! One implicit time step.

use super::flow::{Outflow, Scratch, System};
use super::tridiagonal::Tridiagonal;

/// Room for a step, kept from run to run so that a step allocates nothing.
#[derive(Debug, Clone, Default)]
pub(crate) struct Stepper {
    pub(crate) rate: Vec<f64>,
    pub(crate) next: Vec<f64>,
    pub(crate) scratch: Scratch,
    stage_rate: Vec<f64>,
    k1: Vec<f64>,
    k2: Vec<f64>,
    k3: Vec<f64>,
    matrix: Tridiagonal,
    /// Slope of the potential and of the faces at the start of the step.
    slope: Vec<f64>,
    faces: [Outflow; 2],
}

/// What a step did beside `Stepper::next`.
pub(crate) struct Step {
    /// Estimated error over the tolerance, root of the mean square over the thickness.
    pub(crate) error: f64,
    /// Moisture that left through the faces, mean RH times thickness.
    pub(crate) left: f64,
}

/// γ of RODAS3.
const GAMMA: f64 = 0.5;

impl Stepper {
    pub(crate) fn resize(&mut self, cells: usize) {
        for vector in [
            &mut self.rate,
            &mut self.next,
            &mut self.stage_rate,
            &mut self.k1,
            &mut self.k2,
            &mut self.k3,
            &mut self.slope,
            &mut self.scratch.potential,
            &mut self.scratch.slope,
        ] {
            vector.resize(cells, 0.0);
        }
        self.matrix.resize(cells);
    }

    /// Evaluates the rates at the start of a step; `attempt` may then be called with several lengths.
    pub(crate) fn start(&mut self, system: &System<'_>, cells: &[f64]) {
        self.faces = system.rates(cells, &mut self.scratch, &mut self.rate);
        self.slope.copy_from_slice(&self.scratch.slope);
    }

    /// RODAS3: a linearly implicit (Rosenbrock) method of order 3 with an embedded order 2, stiffly
    /// accurate and L-stable (Sandu et al., Atmospheric Environment 31 (1997) 3459, in the form of
    /// Hairer and Wanner II, IV.7, grade M; the orders are checked by a test).
    ///
    /// Why this and not an iterated implicit method: one factorization and four sweeps a step, and
    /// no stopping rule that would leave moisture unaccounted for. Flow through the faces is
    /// carried as one more unknown of the same method, so the balance closes to rounding.
    #[expect(clippy::needless_range_loop, reason = "each stage reads several vectors at one cell")]
    pub(crate) fn attempt(&mut self, system: &System<'_>, cells: &[f64], length: f64, tolerance: f64) -> Step {
        let grid = system.grid;
        let size = &grid.size[..];
        let speed = system.speed;
        let [top, bottom] = self.faces;
        let slope = &self.slope[..];
        let last = cells.len() - 1;
        let stiffness = 1.0 / (length * GAMMA);
        let (top_slope, bottom_slope) = (top.by_potential * slope[0], bottom.by_potential * slope[last]);
        self.matrix.factor(|i| {
            let above = if i > 0 { grid.between[i - 1] } else { 0.0 };
            let below = if i < last { grid.between[i] } else { 0.0 };
            let mut diagonal = (above + below) * slope[i];
            if i == 0 {
                diagonal += top_slope;
            }
            if i == last {
                diagonal += bottom_slope;
            }
            let before = if i > 0 { -speed * above * slope[i - 1] } else { 0.0 };
            let after = if i < last { -speed * below * slope[i + 1] } else { 0.0 };
            (before, size[i] * stiffness + speed * diagonal, after)
        });
        // Flow out through both faces at a state, and its change along a stage vector.
        let out = |faces: [Outflow; 2]| speed * (faces[0].flow + faces[1].flow);
        let out_along = |k: &[f64]| speed * (top_slope * k[0] + bottom_slope * k[last]);
        let per = 1.0 / length;

        // (V/(hγ) - J) K1 = F(u)
        self.k1.copy_from_slice(&self.rate);
        self.matrix.solve(&mut self.k1);
        let q1 = (out([top, bottom]) + out_along(&self.k1)) / stiffness;

        // (V/(hγ) - J) K2 = F(u) + 4/h V K1
        for i in 0..=last {
            self.k2[i] = self.rate[i] + 4.0 * per * size[i] * self.k1[i];
        }
        self.matrix.solve(&mut self.k2);
        let q2 = (out([top, bottom]) + out_along(&self.k2) + 4.0 * per * q1) / stiffness;

        // (V/(hγ) - J) K3 = F(u + 2 K1) + 1/h V (K1 - K2)
        for i in 0..=last {
            self.next[i] = cells[i] + 2.0 * self.k1[i];
        }
        let faces = system.rates(&self.next, &mut self.scratch, &mut self.stage_rate);
        for i in 0..=last {
            self.k3[i] = self.stage_rate[i] + per * size[i] * (self.k1[i] - self.k2[i]);
        }
        self.matrix.solve(&mut self.k3);
        let q3 = (out(faces) + out_along(&self.k3) + per * (q1 - q2)) / stiffness;

        // (V/(hγ) - J) K4 = F(u + 2 K1 + K3) + 1/h V (K1 - K2 - 8/3 K3)
        for i in 0..=last {
            self.next[i] += self.k3[i];
        }
        let faces = system.rates(&self.next, &mut self.scratch, &mut self.stage_rate);
        let k4 = &mut self.stage_rate;
        for i in 0..=last {
            k4[i] += per * size[i] * (self.k1[i] - self.k2[i] - 8.0 / 3.0 * self.k3[i]);
        }
        self.matrix.solve(k4);
        let q4 = (out(faces) + out_along(k4) + per * (q1 - q2 - 8.0 / 3.0 * q3)) / stiffness;

        // u' = u + 2 K1 + K3 + K4; K4 is the difference from the embedded solution of order 2.
        let mut square = 0.0;
        for i in 0..=last {
            self.next[i] += k4[i];
            square += size[i] * k4[i] * k4[i];
        }
        Step { error: libm::sqrt(square) / tolerance, left: 2.0 * q1 + q3 + q4 }
    }
}

#[cfg(test)]
mod tests {
    use super::{Stepper, System};
    use crate::moisture::flow::Face;
    use crate::moisture::grid::Grid;
    use crate::moisture::potential::{Potential, Shape};
    use crate::moisture::{Sides, slab};

    /// Runs a smooth problem in equal steps and gives the cells at the end.
    fn run(steps: u32) -> Vec<f64> {
        let grid = Grid::new(slab::Accuracy::default().cells, Sides::One);
        let mut potential = Potential::default();
        potential.rebuild(&Shape::MODEL_CODE_1990);
        let system = System {
            grid: &grid,
            potential: &potential,
            top: Face::Sealed,
            bottom: Face::Sealed,
            speed: 1.0,
            sink: 0.02,
        };
        let mut cells: Vec<f64> =
            grid.middle.iter().map(|x| 0.85 + 0.05 * libm::cos(core::f64::consts::PI * x)).collect();
        let mut stepper = Stepper::default();
        stepper.resize(cells.len());
        for _ in 0..steps {
            stepper.start(&system, &cells);
            stepper.attempt(&system, &cells, 1.0 / f64::from(steps), 1.0);
            cells.copy_from_slice(&stepper.next);
        }
        cells
    }

    /// Order 3 as published: half the step, an eighth of the error. The profile fits its faces; where
    /// a face jumps, any such method falls to about order 2, and the step control answers for it.
    #[test]
    fn order_in_time_is_three() {
        let best = run(1280);
        let error = |steps: u32| run(steps).iter().zip(&best).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
        let errors = [20, 40, 80].map(error);
        for pair in errors.windows(2) {
            let order = (pair[0] / pair[1]).log2();
            assert!((2.7..3.5).contains(&order), "errors {errors:?}");
        }
    }
}
