//! The directions in CIELAB in which a panel varies on their own.

use nalgebra::Matrix3;

/// Mean, mean products of what is left, and the directions of most to least variation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Principal {
    pub(super) mean: [f64; 3],
    pub(super) covariance: [[f64; 3]; 3],
    /// Unit vectors, at right angles.
    pub(super) axes: [[f64; 3]; 3],
}

impl Principal {
    pub(super) fn of(colors: &[[f64; 3]]) -> Self {
        let count = colors.len() as f64;
        let mean: [f64; 3] = std::array::from_fn(|i| colors.iter().map(|c| c[i]).sum::<f64>() / count);
        let product =
            |i: usize, j: usize| colors.iter().map(|c| (c[i] - mean[i]) * (c[j] - mean[j])).sum::<f64>() / count;
        let covariance: [[f64; 3]; 3] = std::array::from_fn(|i| std::array::from_fn(|j| product(i.max(j), i.min(j))));
        let eigen = Matrix3::from_fn(|i, j| covariance[i][j]).symmetric_eigen();
        let mut order = [0, 1, 2];
        order.sort_by(|a: &usize, b: &usize| eigen.eigenvalues[*b].total_cmp(&eigen.eigenvalues[*a]));
        let axes = order.map(|column| {
            let axis: [f64; 3] = std::array::from_fn(|i| eigen.eigenvectors[(i, column)]);
            // Which way an axis points is free; its largest part is made positive, so that a seed
            // means the same picture everywhere.
            let largest =
                axis.into_iter().fold(0.0, |most: f64, part| if part.abs() > most.abs() { part } else { most });
            axis.map(|part| if largest < 0.0 { -part } else { part })
        });
        Self { mean, covariance, axes }
    }

    /// How far along an axis a color lies from the mean.
    pub(super) fn along(&self, axis: usize, color: [f64; 3]) -> f64 {
        (0..3).map(|i| self.axes[axis][i] * (color[i] - self.mean[i])).sum()
    }

    /// The color that lies so far along each axis.
    pub(super) fn back(&self, along: [f64; 3]) -> [f64; 3] {
        std::array::from_fn(|i| self.mean[i] + (0..3).map(|axis| self.axes[axis][i] * along[axis]).sum::<f64>())
    }
}

#[cfg(test)]
mod tests {
    use super::Principal;

    #[test]
    fn the_axes_are_those_of_an_ellipsoid_drawn_by_hand() {
        // Points at ±3 along (0.6, 0.8, 0), ±2 along (−0.8, 0.6, 0), ±1 along (0, 0, 1), about (50, 5, 20):
        // variances 2·9/6, 2·4/6, 2·1/6.
        let axes = [[0.6, 0.8, 0.0], [-0.8, 0.6, 0.0], [0.0, 0.0, 1.0]];
        let mut colors = Vec::new();
        for (axis, far) in axes.into_iter().zip([3.0, 2.0, 1.0]) {
            for sign in [-1.0, 1.0] {
                colors.push([50.0 + sign * far * axis[0], 5.0 + sign * far * axis[1], 20.0 + sign * far * axis[2]]);
            }
        }
        let found = Principal::of(&colors);
        let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-9, "{a} against {b}");
        for i in 0..3 {
            near(found.mean[i], [50.0, 5.0, 20.0][i]);
            // The second axis turns: its largest part, −0.8, is made positive.
            let by_hand = if i == 1 { [0.8, -0.6, 0.0] } else { axes[i] };
            found.axes[i].into_iter().zip(by_hand).for_each(|(found, expected)| near(found, expected));
        }
        near(found.covariance[0][0], 3.0 * 0.36 + 4.0 / 3.0 * 0.64);
        near(found.covariance[0][1], 3.0 * 0.48 - 4.0 / 3.0 * 0.48);
        let color = [44.0, 7.0, 23.0];
        let back = found.back([0, 1, 2].map(|axis| found.along(axis, color)));
        (0..3).for_each(|i| near(back[i], color[i]));
    }
}
