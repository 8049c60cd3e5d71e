//! How often each value of a channel occurs: 257 quantiles, close together in the tails.

use std::f64::consts::PI;

/// Steps between quantiles.
const STEPS: usize = 256;

/// Quantiles at shares ½(1 − cos(πi/256)), from the least value to the greatest: the second lies at
/// a share of 4 in 100,000, so that a rare dark fleck keeps its depth.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Levels(Vec<f64>);

fn share(step: usize) -> f64 {
    0.5 * (1.0 - libm::cos(PI * step as f64 / STEPS as f64))
}

impl Levels {
    /// From at least one value.
    pub(super) fn of(mut values: Vec<f64>) -> Self {
        values.sort_by(f64::total_cmp);
        let last = values.len() - 1;
        let level = |step: usize| {
            let place = (share(step) * last as f64).clamp(0.0, last as f64);
            let below = place as usize;
            let above = (below + 1).min(last);
            values[below] + (place - below as f64) * (values[above] - values[below])
        };
        Self((0..=STEPS).map(level).collect())
    }

    pub(super) fn values(&self) -> &[f64] {
        &self.0
    }

    /// Puts the panel's values in the place of the field's, least for least and greatest for greatest.
    pub(super) fn map(&self, field: &mut [f64]) {
        let mut order: Vec<usize> = (0..field.len()).collect();
        order.sort_by(|a, b| field[*a].total_cmp(&field[*b]).then(a.cmp(b)));
        let mut step = 0;
        let (mut low, mut high) = (share(0), share(1));
        for (rank, index) in order.into_iter().enumerate() {
            let at = (rank as f64 + 0.5) / field.len() as f64;
            while at > high && step + 2 <= STEPS {
                step += 1;
                (low, high) = (high, share(step + 1));
            }
            let part = (at - low) / (high - low);
            field[index] = self.0[step] + part * (self.0[step + 1] - self.0[step]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Levels;

    /// The quantile function of the exponential distribution is −ln(1 − p).
    #[test]
    fn a_field_gets_the_values_of_a_skewed_panel_and_keeps_its_order() {
        let panel: Vec<f64> = (0..40_000).map(|i| -libm::log(1.0 - (f64::from(i) + 0.5) / 40_000.0)).collect();
        let levels = Levels::of(panel);
        let mut field: Vec<f64> = (0..9_999).map(|i| libm::sin(f64::from(i) * 0.7)).collect();
        let before = field.clone();
        levels.map(&mut field);
        let mean = field.iter().sum::<f64>() / field.len() as f64;
        let variance = field.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / field.len() as f64;
        assert!((mean - 1.0).abs() < 0.005, "mean {mean} of 1");
        assert!((variance - 1.0).abs() < 0.02, "variance {variance} of 1");
        for i in 1..field.len() {
            assert_eq!(field[i] > field[i - 1], before[i] > before[i - 1], "order at {i}");
        }
    }

    #[test]
    fn a_panel_of_one_value_gives_a_floor_of_one_value() {
        let levels = Levels::of(vec![3.0; 100]);
        let mut field: Vec<f64> = (0..50).map(f64::from).collect();
        levels.map(&mut field);
        assert!(field.iter().all(|value| *value == 3.0));
    }
}
