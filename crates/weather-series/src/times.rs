//! Reading a moment as people and loggers write it.

use jiff::civil::{Date, DateTime, Time};
use jiff::tz::Offset;
use jiff::{SignedDuration, Timestamp};

use super::assumed::{Because, DateOrder};
use super::names::offset_of;

/// What would be accepted, for messages.
pub(super) const ACCEPTED: &str =
    "a date with a time of day: 2026-03-02 14:00, 2026-03-02T14:00-05:00, 3/2/2026 2:00 PM, 2 Mar 2026 14:00";

/// A date as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Day {
    /// The order is plain: year first, or the month by name.
    Plain(Date),
    /// `3/2/2026`: the order must be found out.
    Slashed { first: i8, second: i8, year: i16, points: bool },
}

/// A moment as written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stamp {
    /// Counted seconds, or a time that names its zone.
    Instant(Timestamp),
    /// Date and time of day, with the offset if one is written.
    Civil { day: Day, clock: Clock, offset: Option<Offset>, two_digit_year: bool },
}

/// A time of day; `24:00` is the next midnight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Clock {
    time: Time,
    next_day: bool,
}

impl Day {
    fn date(self, order: DateOrder) -> Option<Date> {
        match self {
            Self::Plain(date) => Some(date),
            Self::Slashed { first, second, year, .. } => match order {
                DateOrder::MonthFirst => Date::new(year, first, second).ok(),
                DateOrder::DayFirst => Date::new(year, second, first).ok(),
            },
        }
    }
}

impl Stamp {
    /// Date and time of day under an order of day and month.
    pub(super) fn civil(day: Day, clock: Clock, order: DateOrder) -> Option<DateTime> {
        let at = day.date(order)?.to_datetime(clock.time);
        if clock.next_day { at.checked_add(SignedDuration::from_hours(24)).ok() } else { Some(at) }
    }
}

/// Reads date and time from one cell.
pub(super) fn read(text: &str) -> Option<Stamp> {
    let text = text.trim();
    if text.ends_with(']') {
        return text.parse::<jiff::ZonedDateTime>().ok().map(|at| Stamp::Instant(at.timestamp()));
    }
    if text.bytes().all(|b| b.is_ascii_digit()) {
        let number = text.parse::<i64>().ok()?;
        return match text.len() {
            10 => Timestamp::from_second(number).ok().map(Stamp::Instant),
            13 => Timestamp::from_millisecond(number).ok().map(Stamp::Instant),
            _ => None,
        };
    }
    let lower = half_days(&text.to_lowercase());
    let start = clock_start(&lower)?;
    let (date, clock) = lower.split_at(start);
    let (day, two_digit_year) = day(date)?;
    let (clock, offset) = clock_and_offset(clock)?;
    Some(Stamp::Civil { day, clock, offset, two_digit_year })
}

/// Reads a date cell and a time-of-day cell. Spreadsheets add a midnight to the one and a base date
/// to the other; both are cut off.
pub(super) fn read_two(date: &str, clock: &str) -> Option<Stamp> {
    let (date, clock) = (half_days(&date.trim().to_lowercase()), half_days(&clock.trim().to_lowercase()));
    let date = clock_start(&date).map_or(date.as_str(), |start| &date[..start]);
    let digits = clock.bytes().all(|b| b.is_ascii_digit());
    let clock = match clock.len() {
        1 | 2 if digits => format!("{clock}:00"),
        3 | 4 if digits => format!("{}:{}", &clock[..clock.len() - 2], &clock[clock.len() - 2..]),
        _ => clock[clock_start(&clock)?..].to_owned(),
    };
    read(&format!("{date} {clock}"))
}

/// `2:00 p. m.` and `2:00 P.M.` as `2:00 pm`.
fn half_days(lower: &str) -> String {
    let mut text = lower.replace(['\u{a0}', '\u{202f}'], " ");
    for half in ["a", "p"] {
        for written in ["{}. m.", "{}.m.", "{} m", "{}. m"] {
            text = text.replace(&written.replace("{}", half), &format!("{half}m"));
        }
    }
    text
}

/// Where the time of day starts: at the digits before the first colon, or before am or pm.
fn clock_start(text: &str) -> Option<usize> {
    let end = match text.find(':') {
        Some(colon) => colon,
        None => text.strip_suffix("am").or_else(|| text.strip_suffix("pm"))?.trim_end().len(),
    };
    let digits = text[..end].bytes().rev().take_while(u8::is_ascii_digit).count();
    (1..=2).contains(&digits).then_some(end - digits)
}

fn clock_and_offset(text: &str) -> Option<(Clock, Option<Offset>)> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || c == ':')).unwrap_or(text.len());
    let (clock, rest) = text.split_at(end);
    let mut parts = clock.split(':');
    let hour = parts.next()?.parse::<i8>().ok()?;
    let mut two_digits = || match parts.next() {
        None => Some(0),
        Some(part) if part.len() == 2 => part.parse::<i8>().ok(),
        Some(_) => None,
    };
    let (minute, second) = (two_digits()?, two_digits()?);
    if parts.next().is_some() {
        return None;
    }
    let (nanosecond, rest) = match rest.strip_prefix(['.', ',']) {
        None => (0, rest),
        Some(rest) => fraction(rest)?,
    };
    let rest = rest.trim();
    let (half, rest) = match (rest.strip_prefix("am"), rest.strip_prefix("pm")) {
        (Some(rest), _) => (Some(0), rest.trim()),
        (_, Some(rest)) => (Some(12), rest.trim()),
        _ => (None, rest),
    };
    let offset = match rest {
        "" => None,
        "z" | "utc" | "gmt" => Some(Offset::UTC),
        _ => Some(offset_of(rest.strip_prefix("utc").or_else(|| rest.strip_prefix("gmt")).unwrap_or(rest))?),
    };
    let hour = match half {
        None => hour,
        Some(half) if (1..=12).contains(&hour) => hour % 12 + half,
        Some(_) => return None,
    };
    let next_day = hour == 24 && (minute, second, nanosecond) == (0, 0, 0);
    let time = Time::new(if next_day { 0 } else { hour }, minute, second, nanosecond).ok()?;
    Some((Clock { time, next_day }, offset))
}

/// The digits after the decimal mark of the seconds, as nanoseconds, and what follows them.
fn fraction(text: &str) -> Option<(i32, &str)> {
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    if !(1..=9).contains(&digits) {
        return None;
    }
    let nanoseconds = format!("{:0<9}", &text[..digits]).parse::<i32>().ok()?;
    Some((nanoseconds, &text[digits..]))
}

const MONTHS: [[&str; 2]; 12] = [
    ["jan", "ene"],
    ["feb", "feb"],
    ["mar", "mar"],
    ["apr", "abr"],
    ["may", "may"],
    ["jun", "jun"],
    ["jul", "jul"],
    ["aug", "ago"],
    ["sep", "sep"],
    ["oct", "oct"],
    ["nov", "nov"],
    ["dec", "dic"],
];

/// A date, and whether its year has two digits.
fn day(text: &str) -> Option<(Day, bool)> {
    let text = text.trim().trim_end_matches(['t', ',']).trim_end();
    if text.len() == 8 && text.bytes().all(|b| b.is_ascii_digit()) {
        let number = |range: std::ops::Range<usize>| text[range].parse::<i8>().ok();
        let date = Date::new(text[..4].parse().ok()?, number(4..6)?, number(6..8)?).ok()?;
        return Some((Day::Plain(date), false));
    }
    let parts: Vec<&str> =
        text.split(|c: char| !c.is_alphanumeric()).filter(|part| !part.is_empty() && *part != "de").collect();
    let [a, b, c] = parts[..] else { return None };
    if a.len() == 4 {
        let month = month(b).or_else(|| b.parse::<i8>().ok())?;
        return Some((Day::Plain(Date::new(a.parse().ok()?, month, c.parse().ok()?).ok()?), false));
    }
    let two_digit_year = c.len() == 2;
    let year = match c.len() {
        4 => c.parse::<i16>().ok()?,
        2 => 2000 + c.parse::<i16>().ok()?,
        _ => return None,
    };
    let day = match (month(a), month(b)) {
        (Some(month), None) => Day::Plain(Date::new(year, month, b.parse().ok()?).ok()?),
        (None, Some(month)) => Day::Plain(Date::new(year, month, a.parse().ok()?).ok()?),
        _ => {
            let (first, second) = (a.parse::<i8>().ok()?, b.parse::<i8>().ok()?);
            Day::Slashed { first, second, year, points: text.contains('.') }
        }
    };
    Some((day, two_digit_year))
}

fn month(word: &str) -> Option<i8> {
    let start = word.get(..3)?;
    let index = MONTHS.iter().position(|names| names.contains(&start))?;
    i8::try_from(index + 1).ok()
}

/// Finds the order of day and month from all dates of the file; `None` when no date needs it.
pub(super) fn date_order(days: impl Iterator<Item = Day>) -> Option<(DateOrder, Because)> {
    let mut slashed: Vec<Day> = days.filter(|day| matches!(day, Day::Slashed { .. })).collect();
    slashed.sort_unstable_by_key(|day| match day {
        Day::Slashed { first, second, year, .. } => (*year, *first, *second),
        Day::Plain(_) => (0, 0, 0),
    });
    let points = slashed.iter().any(|day| matches!(day, Day::Slashed { points: true, .. }));
    slashed.dedup();
    slashed.first()?;
    let fits = |order| slashed.iter().filter(|day| day.date(order).is_some()).count();
    let (month_first, day_first) = (fits(DateOrder::MonthFirst), fits(DateOrder::DayFirst));
    let order = if day_first > month_first { DateOrder::DayFirst } else { DateOrder::MonthFirst };
    if month_first != day_first {
        let all = month_first.max(day_first) == slashed.len();
        return Some((order, if all { Because::NumberAboveTwelve } else { Because::Majority }));
    }
    let spread = |order| {
        let dates = || slashed.iter().filter_map(|day| day.date(order));
        dates().min().zip(dates().max()).map_or(0, |(first, last)| last.duration_since(first).as_hours())
    };
    let (month_first, day_first) = (spread(DateOrder::MonthFirst), spread(DateOrder::DayFirst));
    Some(if month_first > 2 * day_first {
        (DateOrder::DayFirst, Because::ShorterLog)
    } else if day_first > 2 * month_first {
        (DateOrder::MonthFirst, Because::ShorterLog)
    } else if points {
        (DateOrder::DayFirst, Because::Habit)
    } else {
        (DateOrder::MonthFirst, Because::Habit)
    })
}
