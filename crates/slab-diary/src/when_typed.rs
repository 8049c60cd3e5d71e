//! A moment as people write it: `10/20/2026 7:30 am`, `20 oct 2026`, `yesterday 16:00`.

use jiff::ToSpan;
use jiff::civil::{Date, DateTime, Time};
use jiff::fmt::strtime::BrokenDownTime;

use crate::When;

/// In which order whoever writes a date of three numbers puts them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateOrder {
    /// Month, day, year, as in the United States.
    MonthFirst,
    /// Nobody knows: `10/11/2026` may be either, and is asked about.
    Unknown,
}

/// Why a typed moment was not taken.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TypedWhenError {
    /// It is no moment.
    #[error("\"{0}\" is no date")]
    Unread(String),
    /// It can be two days.
    #[error("\"{text}\" can be {month_first} and {day_first}")]
    TwoDays {
        /// What was typed.
        text: String,
        /// The day with the month first.
        month_first: Date,
        /// The day with the day first.
        day_first: Date,
    },
}

/// Names of months by their first three letters, English and Spanish.
const MONTHS: [&[&str]; 12] = [
    &["jan", "ene"],
    &["feb"],
    &["mar"],
    &["apr", "abr"],
    &["may"],
    &["jun"],
    &["jul"],
    &["aug", "ago"],
    &["sep", "set"],
    &["oct"],
    &["nov"],
    &["dec", "dic"],
];
const TODAY: &[&str] = &["today", "hoy"];
const YESTERDAY: &[&str] = &["yesterday", "ayer"];
/// Words between the parts of a date that say nothing.
const BETWEEN: &[&str] = &["de", "del", "at", "on", "el", "a", "las", "la", "of"];

impl When {
    /// Reads a moment as a person types it into a form, at the moment `noted`. Today, yesterday, a missing year
    /// and a missing day are counted from there; a date without a time is its noon.
    ///
    /// # Errors
    /// [`TypedWhenError`] when it is no moment, or could be two days.
    pub fn read_typed(text: &str, noted: &Self, order: DateOrder) -> Result<Self, TypedWhenError> {
        if let Ok(when) = Self::read(text, noted.zone()) {
            return Ok(when);
        }
        let unread = || TypedWhenError::Unread(text.to_owned());
        let words = words(text);
        if words.is_empty() {
            return Err(unread());
        }
        // The time is at the end; the shortest end that is one leaves the most for the date.
        let mut two_days = None;
        for at in (0..=words.len()).rev() {
            let Some(time) = time_of(&words[at..]) else { continue };
            match date_of(&words[..at], noted.date(), order) {
                Some(Ok(date)) => {
                    let civil = DateTime::from_parts(date, time);
                    let zoned = civil.to_zoned_datetime(noted.zone().clone()).map_err(|_| unread())?;
                    return Ok(Self::new(zoned.timestamp(), noted.zone()));
                }
                Some(Err((month_first, day_first))) => {
                    two_days = Some(TypedWhenError::TwoDays { text: text.to_owned(), month_first, day_first });
                }
                None => {}
            }
        }
        Err(two_days.unwrap_or_else(unread))
    }
}

/// The words of a text in small letters, those that say nothing left out, `p. m.` and `PM` joined to their time.
fn words(text: &str) -> Vec<String> {
    let text = text.trim().to_lowercase().replace(['\u{a0}', '\u{202f}', ','], " ");
    let text = text.replace("a. m.", "am").replace("p. m.", "pm").replace("a.m.", "am").replace("p.m.", "pm");
    let mut words: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        if BETWEEN.contains(&word) {
            continue;
        }
        match word {
            // "7:30 am" and "7:30am" are one time.
            "am" | "pm" if words.last().is_some_and(|last| last.ends_with(|c: char| c.is_ascii_digit())) => {
                if let Some(last) = words.last_mut() {
                    last.push_str(word);
                }
            }
            _ => words.push(word.trim_end_matches('.').to_owned()),
        }
    }
    words
}

/// A time of day; noon when there is none.
fn time_of(words: &[String]) -> Option<Time> {
    match words {
        [] => Some(Time::constant(12, 0, 0, 0)),
        [one] => {
            let one = one.trim_end_matches("hrs").trim_end_matches('h');
            ["%H:%M", "%H:%M:%S", "%I:%M%p", "%I%p"]
                .iter()
                .find_map(|format| BrokenDownTime::parse(format, one).ok()?.to_time().ok())
        }
        _ => None,
    }
}

/// The month that a word names.
fn month(word: &str) -> Option<i8> {
    let start = word.get(..3).filter(|_| word.chars().all(char::is_alphabetic))?;
    let at = MONTHS.iter().position(|names| names.contains(&start))?;
    i8::try_from(at + 1).ok()
}

/// A date; two of them where it can be either.
fn date_of(words: &[String], noted: Date, order: DateOrder) -> Option<Result<Date, (Date, Date)>> {
    let numbers =
        |text: &str| -> Option<Vec<i16>> { text.split(['/', '-', '.']).map(|part| part.parse().ok()).collect() };
    match words {
        [] => Some(Ok(noted)),
        [one] if TODAY.contains(&one.as_str()) => Some(Ok(noted)),
        [one] if YESTERDAY.contains(&one.as_str()) => noted.checked_sub(1.day()).ok().map(Ok),
        [one] => match numbers(one)?[..] {
            [year, month, day] if year > 31 => day_of(Some(year), month, day, noted).map(Ok),
            [a, b, year] => either(a, b, Some(year), noted, order),
            [a, b] => either(a, b, None, noted, order),
            _ => None,
        },
        _ => {
            let named: Vec<i8> = words.iter().filter_map(|word| month(word)).collect();
            let rest: Option<Vec<i16>> = words
                .iter()
                .filter(|word| month(word).is_none())
                .map(|word| word.trim_end_matches(|c: char| c.is_alphabetic() || c == 'º' || c == '°').parse().ok())
                .collect();
            let ([month], rest) = (&named[..], rest?) else { return None };
            match rest[..] {
                [day] => day_of(None, i16::from(*month), day, noted).map(Ok),
                [year, day] if year > 31 => day_of(Some(year), i16::from(*month), day, noted).map(Ok),
                [day, year] => day_of(Some(year), i16::from(*month), day, noted).map(Ok),
                _ => None,
            }
        }
    }
}

fn either(a: i16, b: i16, year: Option<i16>, noted: Date, order: DateOrder) -> Option<Result<Date, (Date, Date)>> {
    match (day_of(year, a, b, noted), day_of(year, b, a, noted)) {
        (Some(one), Some(other)) if one != other && order == DateOrder::Unknown => Some(Err((one, other))),
        (Some(month_first), _) => Some(Ok(month_first)),
        (None, other) => other.map(Ok),
    }
}

/// A day of the calendar. Two figures of a year are of this century; without a year it is the last such day that
/// was.
fn day_of(year: Option<i16>, month: i16, day: i16, noted: Date) -> Option<Date> {
    let (month, day) = (i8::try_from(month).ok()?, i8::try_from(day).ok()?);
    let on = |year: i16| Date::new(year, month, day).ok();
    match year {
        Some(year @ 0..=99) => on(2000 + year),
        Some(year @ 1900..) => on(year),
        Some(_) => None,
        None => on(noted.year()).filter(|date| *date <= noted).or_else(|| on(noted.year() - 1)),
    }
}
