//! Days and hours in the short forms of a picture.

use jiff::civil::{Date, DateTime};
use localization::Locale;
use units::Duration;

/// `Mar 9`, `9 mar`.
pub(crate) fn day(locale: Locale, date: Date) -> String {
    let month = locale.month_short(date);
    locale.message("pic-day", &[("day", date.day().to_string().into()), ("month", month.into())])
}

/// `Mar 9, 2026`.
pub(crate) fn day_year(locale: Locale, date: Date) -> String {
    let month = locale.month_short(date);
    let year = date.year().to_string();
    let args = [("day", date.day().to_string().into()), ("month", month.into()), ("year", year.into())];
    locale.message("pic-day-year", &args)
}

/// `7 AM`, `noon`, `3:30 PM`.
pub(crate) fn hour(locale: Locale, at: DateTime) -> String {
    let (hour, minute) = (at.hour(), at.minute());
    match (hour, minute) {
        (0, 0) => return locale.message("pic-midnight", &[]),
        (12, 0) => return locale.message("pic-noon", &[]),
        _ => {}
    }
    let twelve = if hour % 12 == 0 { 12 } else { hour % 12 };
    let n = if minute == 0 { twelve.to_string() } else { format!("{twelve}:{minute:02}") };
    locale.message(if hour < 12 { "pic-hour-am" } else { "pic-hour-pm" }, &[("n", n.into())])
}

/// Days from one date to another, negative when it lies before.
pub(crate) fn days_between(from: Date, to: Date) -> i32 {
    from.until(to).map_or(0, |span| span.get_days())
}

/// The date so many days later; the last date there is when that lies beyond.
pub(crate) fn days_after(date: Date, days: i32) -> Date {
    date.checked_add(jiff::Span::new().days(i64::from(days))).unwrap_or(Date::MAX)
}

/// The date so long after the beginning of a day.
pub(crate) fn date_after(date: Date, since: Duration) -> Date {
    days_after(date, since.as_days().floor().clamp(0.0, 1e6) as i32)
}
