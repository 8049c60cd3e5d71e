//! Durations and dates.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use slab_diary::DateOrder;
use units::{Duration, UnitSystem};

use crate::locale::{Lang, Locale};
use crate::numerals::rounded;

const MINUTE: f64 = 60.0;
const HOUR: f64 = 60.0 * MINUTE;
const DAY: f64 = 24.0 * HOUR;

/// The months, January first, as a picture has room for them.
const MONTHS_SHORT: [&str; 12] = [
    "pic-month-1",
    "pic-month-2",
    "pic-month-3",
    "pic-month-4",
    "pic-month-5",
    "pic-month-6",
    "pic-month-7",
    "pic-month-8",
    "pic-month-9",
    "pic-month-10",
    "pic-month-11",
    "pic-month-12",
];

/// The months' names, January first.
const MONTHS: [&str; 12] = [
    "month-1", "month-2", "month-3", "month-4", "month-5", "month-6", "month-7", "month-8", "month-9", "month-10",
    "month-11", "month-12",
];

impl Locale {
    /// How long: `45 seconds`, `1 minute 30 seconds`, `90 minutes`, `24 hours`, `17.5 days`.
    ///
    /// Seconds up to ten minutes, minutes up to two days, tenths of a day up to sixty days.
    #[must_use]
    pub fn duration(self, duration: Duration) -> String {
        let seconds = duration.as_seconds().max(0.0);
        if seconds < 10.0 {
            return self.timed("duration-seconds", seconds, 1);
        }
        let whole = seconds.round();
        if whole < 10.0 * MINUTE {
            return self.two("duration-minutes", (whole / MINUTE).floor(), "duration-seconds", whole % MINUTE);
        }
        let minutes = (seconds / MINUTE).round();
        if minutes < 100.0 {
            return self.timed("duration-minutes", minutes, 0);
        }
        if minutes < 2.0 * DAY / MINUTE {
            return self.two("duration-hours", (minutes / MINUTE).floor(), "duration-minutes", minutes % MINUTE);
        }
        let days = seconds / DAY;
        self.timed("duration-days", days, usize::from(days < 60.0))
    }

    fn timed(self, unit: &'static str, value: f64, decimals: usize) -> String {
        let step = if decimals == 0 { 1.0 } else { 10.0 };
        // The plural goes by the number as printed.
        let printed = (value * step).round() / step;
        let args = [("n", rounded(value, decimals).into()), ("count", printed.into())];
        self.message(unit, &args)
    }

    fn two(self, large: &'static str, many: f64, small: &'static str, rest: f64) -> String {
        match (many > 0.0, rest > 0.0) {
            (true, true) => format!("{} {}", self.timed(large, many, 0), self.timed(small, rest, 0)),
            (true, false) => self.timed(large, many, 0),
            _ => self.timed(small, rest, 0),
        }
    }

    /// The month of a day in full: `May`, `mayo`.
    #[must_use]
    pub fn month(self, date: Date) -> String {
        self.message(MONTHS[usize::from(date.month().unsigned_abs()) - 1], &[])
    }

    /// The month of a day in short: `Mar`, `mar`.
    #[must_use]
    pub fn month_short(self, date: Date) -> String {
        self.message(MONTHS_SHORT[usize::from(date.month().unsigned_abs()) - 1], &[])
    }

    /// How a reader of this language and these units orders the numbers of a date. On a site in the United States
    /// a Spanish date is written either way round.
    #[must_use]
    pub fn date_order(self) -> DateOrder {
        match (self.lang, self.unit_system) {
            (Lang::En, UnitSystem::Imperial) => DateOrder::MonthFirst,
            _ => DateOrder::Unknown,
        }
    }

    /// A day: `May 3, 2026`, `3 de mayo de 2026`.
    #[must_use]
    pub fn date(self, date: Date) -> String {
        let month = self.month(date);
        let args =
            [("day", date.day().to_string().into()), ("month", month.into()), ("year", date.year().to_string().into())];
        self.message("date", &args)
    }

    /// A moment in a place's own clock: `May 3, 2026 14:05`.
    #[must_use]
    pub fn moment(self, at: Timestamp, zone: &TimeZone) -> String {
        self.local_moment(at.to_zoned_datetime(zone.clone()).datetime())
    }

    /// The same, already by that clock.
    #[must_use]
    pub fn local_moment(self, at: jiff::civil::DateTime) -> String {
        format!("{} {:02}:{:02}", self.date(at.date()), at.hour(), at.minute())
    }
}
