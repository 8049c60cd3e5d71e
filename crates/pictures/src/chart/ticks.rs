//! Round places on an axis.

use jiff::civil::Date;

use crate::day::{days_after, days_between};

/// Round numbers from `low` to `high`: steps of 1, 2 or 5 times a power of ten, at most `most`.
/// None when the span is empty or not finite.
pub(crate) fn round_numbers(low: f64, high: f64, most: usize) -> Vec<f64> {
    let span = high - low;
    if !(span > 0.0 && span.is_finite()) || most == 0 {
        return Vec::new();
    }
    let rough = span / most as f64;
    let power = libm::pow(10.0, libm::floor(libm::log10(rough)));
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|s| s * power).find(|s| *s >= rough).unwrap_or(10.0 * power);
    let first = (low / step - 1e-9).ceil();
    let last = (high / step + 1e-9).floor();
    // Multiples of the step, so that rounding does not add up.
    (0..).map(|i| first + f64::from(i)).take_while(|n| *n <= last).map(|n| n * step).collect()
}

/// Decimals that tell the numbers of such an axis apart.
pub(crate) fn decimals(ticks: &[f64]) -> usize {
    let step = ticks.windows(2).map(|w| w[1] - w[0]).fold(f64::INFINITY, f64::min);
    if step.is_finite() && step > 0.0 { (-libm::floor(libm::log10(step) + 1e-9)).clamp(0.0, 6.0) as usize } else { 2 }
}

/// Dates for an axis from one date over so many days, at most about `most`: every so many days, or
/// first days of months.
pub(crate) fn round_dates(from: Date, days: i32, most: usize) -> Vec<Date> {
    let most = most.max(1) as i32;
    if let Some(step) = [1, 2, 7, 14].into_iter().find(|step| days / step < most) {
        return (0..).map(|i| i * step).take_while(|d| *d <= days).map(|d| days_after(from, d)).collect();
    }
    let months = [1, 2, 3, 6, 12, 24, 60].into_iter().find(|m| days / (30 * m) < most).unwrap_or(120);
    let mut out = Vec::new();
    let mut at = from.first_of_month();
    while days_between(from, at) <= days {
        if at >= from {
            out.push(at);
        }
        match at.checked_add(jiff::Span::new().months(months)) {
            Ok(next) => at = next,
            Err(_) => break,
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use proptest::prelude::*;

    #[test]
    fn round_numbers_of_common_spans() {
        assert_eq!(round_numbers(0.0, 100.0, 5), vec![0.0, 20.0, 40.0, 60.0, 80.0, 100.0]);
        assert_eq!(round_numbers(72.0, 101.0, 6), vec![75.0, 80.0, 85.0, 90.0, 95.0, 100.0]);
        assert_eq!(round_numbers(3.0, 3.0, 5), Vec::<f64>::new());
        assert_eq!(decimals(&round_numbers(0.0, 0.25, 5)), 2);
        assert_eq!(decimals(&round_numbers(0.0, 60.0, 5)), 0);
    }

    #[test]
    fn dates_fall_on_days_or_on_first_days_of_months() {
        assert_eq!(round_dates(date(2026, 2, 23), 14, 4).len(), 3);
        let months = round_dates(date(2026, 2, 23), 150, 6);
        assert_eq!(months.first(), Some(&date(2026, 3, 1)));
        assert!(months.iter().all(|d| d.day() == 1));
    }

    proptest! {
        #[test]
        fn ticks_lie_within_and_are_few(low in -1e6..1e6_f64, span in 1e-6..1e6_f64, most in 1_usize..12) {
            let ticks = round_numbers(low, low + span, most);
            prop_assert!(ticks.len() <= most + 1);
            for t in ticks {
                prop_assert!(t >= low - 1e-6 * span && t <= low + span * (1.0 + 1e-6));
            }
        }

        #[test]
        fn dates_lie_within_and_are_few(start in -20_000..20_000_i32, days in 0..10_000_i32, most in 2_usize..10) {
            let from = days_after(date(2026, 1, 1), start);
            let dates = round_dates(from, days, most);
            prop_assert!(dates.len() <= most + 2, "{} dates", dates.len());
            for d in dates {
                prop_assert!((0..=days).contains(&days_between(from, d)));
            }
        }
    }
}
