//! Which hours of the day are above the evaporation alarm, and on how many days.

use science::air::Level;

/// The first hour of the day that is printed.
pub(super) const FIRST: u8 = 5;
/// The last hour of the day that is printed.
pub(super) const LAST: u8 = 20;

/// One hour of the day, counted over the days of a month.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HourRisk {
    /// The hour it begins at, 0 to 23, local standard time.
    pub hour: u8,
    /// Days on which the rate is known.
    pub days: u32,
    /// Days on which the estimate is above the alarm.
    pub above: u32,
    /// Further days on which only the error band reaches above the alarm.
    pub possible: u32,
}

impl HourRisk {
    /// Share of the known days above the alarm; nothing when no day is known.
    #[must_use]
    pub fn above_share(&self) -> Option<f64> {
        (self.days > 0).then(|| f64::from(self.above) / f64::from(self.days))
    }

    /// Share of the known days above the alarm or within its error band.
    #[must_use]
    pub fn reach_share(&self) -> Option<f64> {
        (self.days > 0).then(|| f64::from(self.above.saturating_add(self.possible)) / f64::from(self.days))
    }
}

/// Counts samples by the hour of the day they begin at. `samples`: hour 0 to 23, and how the estimate
/// stands against the alarm, nothing where a reading is missing. All 24 hours come back, in order.
///
/// ```
/// use papers::hour_risks;
/// use science::air::Level;
/// let counted = hour_risks([(13, Some(Level::Above)), (13, Some(Level::Possible)), (13, None)]);
/// assert_eq!((counted[13].days, counted[13].above, counted[13].possible), (2, 1, 1));
/// assert_eq!(counted[4].above_share(), None);
/// ```
#[must_use]
pub fn hour_risks(samples: impl IntoIterator<Item = (u8, Option<Level>)>) -> Vec<HourRisk> {
    let mut out: Vec<HourRisk> = (0..24).map(|hour| HourRisk { hour, days: 0, above: 0, possible: 0 }).collect();
    for (hour, level) in samples {
        let Some(row) = out.get_mut(usize::from(hour)) else { continue };
        match level {
            None => continue,
            Some(Level::Above) => row.above += 1,
            Some(Level::Possible) => row.possible += 1,
            Some(Level::Below) => {}
        }
        row.days += 1;
    }
    out
}

/// Unbroken stretches of the printed hours for which `wanted` holds: first hour, and the hour after the last.
pub(super) fn stretches(hours: &[HourRisk], wanted: impl Fn(&HourRisk) -> bool) -> Vec<(u8, u8)> {
    let mut out: Vec<(u8, u8)> = Vec::new();
    for hour in hours.iter().filter(|hour| wanted(hour)) {
        match out.last_mut() {
            Some((_, end)) if *end == hour.hour => *end += 1,
            _ => out.push((hour.hour, hour.hour + 1)),
        }
    }
    out
}
