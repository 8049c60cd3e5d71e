//! A plane of numbers and its waves: the discrete Fourier transform in two directions.

use std::sync::Arc;

use rustfft::num_complex::Complex;
use rustfft::{Fft, FftPlannerScalar};

/// Transforms planes of one size. Plain arithmetic without the processor's vector units, so that a
/// seed gives the same picture on another machine.
pub(super) struct Plane {
    pub(super) width: usize,
    pub(super) height: usize,
    rows: [Arc<dyn Fft<f64>>; 2],
    columns: [Arc<dyn Fft<f64>>; 2],
}

/// The waves of a plane, column by column.
pub(super) struct Waves(Vec<Complex<f64>>);

impl Plane {
    pub(super) fn new(width: usize, height: usize) -> Self {
        let mut planner = FftPlannerScalar::new();
        let rows = [planner.plan_fft_forward(width), planner.plan_fft_inverse(width)];
        let columns = [planner.plan_fft_forward(height), planner.plan_fft_inverse(height)];
        Self { width, height, rows, columns }
    }

    /// From values row by row.
    pub(super) fn waves(&self, values: &[f64]) -> Waves {
        let mut buffer: Vec<Complex<f64>> = values.iter().map(|value| Complex::new(*value, 0.0)).collect();
        self.rows[0].process(&mut buffer);
        let mut turned = turned(&buffer, self.width, self.height);
        self.columns[0].process(&mut turned);
        Waves(turned)
    }

    /// Back to values row by row, times width and height.
    pub(super) fn values(&self, mut waves: Waves) -> Vec<f64> {
        self.columns[1].process(&mut waves.0);
        let mut buffer = turned(&waves.0, self.height, self.width);
        self.rows[1].process(&mut buffer);
        buffer.into_iter().map(|value| value.re).collect()
    }

    /// Waves a pixel, across and along, of each place in [`Waves`].
    pub(super) fn frequencies(&self) -> impl Iterator<Item = (f64, f64)> + '_ {
        let signed = |index: usize, count: usize| {
            let steps = if 2 * index > count { index as f64 - count as f64 } else { index as f64 };
            steps / count as f64
        };
        (0..self.width)
            .flat_map(move |x| (0..self.height).map(move |y| (signed(x, self.width), signed(y, self.height))))
    }
}

impl Waves {
    /// The square of each amplitude.
    pub(super) fn powers(&self) -> impl Iterator<Item = f64> + '_ {
        self.0.iter().map(|wave| wave.norm_sqr())
    }

    /// Each amplitude times its factor.
    pub(super) fn shaped(mut self, factors: impl Iterator<Item = f64>) -> Self {
        for (wave, factor) in self.0.iter_mut().zip(factors) {
            *wave *= factor;
        }
        self
    }
}

/// Rows become columns. In tiles, so that both sides stay in the cache.
fn turned(values: &[Complex<f64>], width: usize, height: usize) -> Vec<Complex<f64>> {
    const TILE: usize = 32;
    let mut turned = vec![Complex::new(0.0, 0.0); values.len()];
    for top in (0..height).step_by(TILE) {
        for left in (0..width).step_by(TILE) {
            for y in top..(top + TILE).min(height) {
                for x in left..(left + TILE).min(width) {
                    turned[x * height + y] = values[y * width + x];
                }
            }
        }
    }
    turned
}

/// The next count from `least` on whose only factors are 2, 3 and 5: such planes transform fast.
pub(super) fn smooth(least: usize) -> usize {
    let bare = |mut count: usize| {
        for factor in [2_usize, 3, 5] {
            while count.is_multiple_of(factor) {
                count /= factor;
            }
        }
        count
    };
    (least.max(1)..).find(|count| bare(*count) == 1).expect("a power of two follows every number")
}

#[cfg(test)]
mod tests {
    use super::{Plane, smooth};
    use std::f64::consts::TAU;

    #[test]
    fn a_single_wave_has_all_its_power_at_its_frequency_and_comes_back() {
        let plane = Plane::new(20, 12);
        let values: Vec<f64> = (0..240)
            .map(|i| libm::cos(TAU * (3.0 * f64::from(i % 20) / 20.0 + 2.0 * f64::from(i / 20) / 12.0)))
            .collect();
        let waves = plane.waves(&values);
        // cos has half its amplitude at f and half at −f: |120|² each.
        for ((across, along), power) in plane.frequencies().zip(waves.powers()) {
            let at = (across - 0.15).abs() < 1e-12 && (along - 1.0 / 6.0).abs() < 1e-12
                || (across + 0.15).abs() < 1e-12 && (along + 1.0 / 6.0).abs() < 1e-12;
            let expected = if at { 120.0 * 120.0 } else { 0.0 };
            assert!((power - expected).abs() < 1e-8, "{across}, {along}: {power}");
        }
        let back = plane.values(waves);
        assert!(values.iter().zip(back).all(|(value, again)| (value - again / 240.0).abs() < 1e-12));
    }

    #[test]
    fn smooth_counts_as_listed() {
        assert_eq!([1, 7, 11, 13, 97, 256, 1001].map(smooth), [1, 8, 12, 15, 100, 256, 1024]);
    }
}
