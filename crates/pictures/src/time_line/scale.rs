//! From days to places down the line.
//!
//! An even scale would crowd the busy days and leave the quiet months empty. So a stretch takes the
//! room its days ask for or the room that the labels at its beginning ask for, whichever is more; the
//! calendar beside the line shows where it is stretched.

use jiff::civil::Date;

use crate::day::days_between;

/// Height that the days alone ask for, units.
const EVEN: f64 = 380.0;
/// The most one day asks for.
const DAY_AT_MOST: f64 = 12.0;

/// Places of the days that matter, rising.
pub(super) struct Scale(Vec<(Date, f64)>);

impl Scale {
    /// Of days with the height of their labels, the first at `top`.
    pub(super) fn new(mut days: Vec<(Date, f64)>, top: f64) -> Self {
        days.sort_by_key(|(date, _)| *date);
        let mut merged: Vec<(Date, f64)> = Vec::new();
        for (date, height) in days {
            match merged.last_mut() {
                Some((last, sum)) if *last == date => *sum += height,
                _ => merged.push((date, height)),
            }
        }
        let all = match (merged.first(), merged.last()) {
            (Some((first, _)), Some((last, _))) => f64::from(days_between(*first, *last)).max(1.0),
            _ => 1.0,
        };
        let of_day = (EVEN / all).min(DAY_AT_MOST);
        let mut places = Vec::with_capacity(merged.len());
        let mut y = top;
        for (at, (date, _)) in merged.iter().enumerate() {
            if at > 0 {
                let (before, height_before) = merged[at - 1];
                let even = of_day * f64::from(days_between(before, *date));
                y += even.max(height_before);
            }
            places.push((*date, y));
        }
        Self(places)
    }

    /// Where a day lies; days before the first and after the last lie on them.
    pub(super) fn at(&self, date: Date) -> f64 {
        let after = self.0.partition_point(|(d, _)| *d < date);
        match (after.checked_sub(1).and_then(|b| self.0.get(b)), self.0.get(after)) {
            (Some((d1, y1)), Some((d2, y2))) => {
                let share = f64::from(days_between(*d1, date)) / f64::from(days_between(*d1, *d2));
                y1 + share * (y2 - y1)
            }
            (Some((_, y)), None) | (None, Some((_, y))) => *y,
            (None, None) => 0.0,
        }
    }

    pub(super) fn first(&self) -> Option<(Date, f64)> {
        self.0.first().copied()
    }

    pub(super) fn last(&self) -> Option<(Date, f64)> {
        self.0.last().copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::day::days_after;
    use jiff::civil::date;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn later_is_lower(days in proptest::collection::vec((0..900_i32, 0.0..60.0_f64), 1..40)) {
            let from = date(2026, 1, 1);
            let scale = Scale::new(days.iter().map(|(d, h)| (days_after(from, *d), *h)).collect(), 20.0);
            let mut before = 0.0;
            for d in 0..900 {
                let y = scale.at(days_after(from, d));
                prop_assert!(y >= before - 1e-9);
                before = y;
            }
        }
    }
}
