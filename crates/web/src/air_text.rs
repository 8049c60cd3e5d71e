//! What was read from a weather file or a logger's table, in the reader's words.

use localization::{Arg, Lang, Locale, UnitSystem};
use units::{Length, RelativeHumidity};
use weather_series::{Assumption, Because, DateOrder, Encoding, ImportError, Missing, Quantity, Sample, Skipped, Why};

/// The name of a quantity.
pub(crate) fn quantity(quantity: Quantity, locale: Locale) -> String {
    let key = match quantity {
        Quantity::Air => "air-quantity-air",
        Quantity::Humidity => "air-quantity-humidity",
        Quantity::DewPoint => "air-quantity-dew-point",
        Quantity::Wind => "air-quantity-wind",
        Quantity::Slab => "air-quantity-slab",
        Quantity::Pressure => "air-quantity-pressure",
        Quantity::Rain => "air-quantity-rain",
    };
    locale.message(key, &[])
}

/// A reading of a sample: a number to compare by, and its words.
pub(crate) fn reading(sample: &Sample, quantity: Quantity, locale: Locale) -> Option<(f64, String)> {
    Some(match quantity {
        Quantity::Air => sample.air.map(|t| (t.as_celsius(), locale.temperature(t)))?,
        Quantity::Humidity => sample.humidity.map(|h: RelativeHumidity| (h.as_percent(), locale.humidity(h)))?,
        Quantity::DewPoint => sample.dew_point.map(|t| (t.as_celsius(), locale.temperature(t)))?,
        Quantity::Wind => sample.wind.map(|w| (w.as_meters_per_second(), locale.speed(w)))?,
        Quantity::Slab => sample.slab.map(|t| (t.as_celsius(), locale.temperature(t)))?,
        Quantity::Pressure => sample.pressure.map(|p| (p.as_hectopascals(), locale.air_pressure(p)))?,
        Quantity::Rain => sample.rain.map(|r| (r.as_millimeters(), rain(r, locale)))?,
    })
}

fn rain(depth: Length, locale: Locale) -> String {
    match locale.unit_system {
        UnitSystem::Imperial => format!("{} in", locale.number(depth.as_inches(), 2)),
        UnitSystem::Metric => format!("{} mm", locale.number(depth.as_millimeters(), 1)),
    }
}

/// Something taken for granted, as a sentence; nothing for a column, which the table of columns tells.
pub(crate) fn assumption(assumption: &Assumption, locale: Locale) -> Option<String> {
    let count = |n: usize| Arg::Number(n as f64);
    let (key, args): (&str, Vec<(&str, Arg<'_>)>) = match assumption {
        Assumption::Column { .. } => return None,
        Assumption::Encoding(Encoding::Utf8) => return None,
        Assumption::Encoding(Encoding::Utf16) => ("air-assumed-utf16", vec![]),
        Assumption::Encoding(Encoding::Latin1) => ("air-assumed-latin1", vec![]),
        Assumption::HeaderLine { line } => ("air-assumed-header-line", vec![("line", line.to_string().into())]),
        Assumption::Separator('\t') => ("air-assumed-tab", vec![]),
        Assumption::Separator(sign) => ("air-assumed-separator", vec![("sign", sign.to_string().into())]),
        Assumption::DecimalComma => ("air-assumed-decimal-comma", vec![]),
        Assumption::TimeColumns { columns } => ("air-assumed-time", vec![("columns", locale.list(columns).into())]),
        Assumption::Unused { columns } => ("air-assumed-unused", vec![("columns", columns.join(", ").into())]),
        Assumption::DateOrder { order, because } => return Some(date_order(*order, *because, locale)),
        Assumption::TwoDigitYears => ("air-assumed-two-digit-years", vec![]),
        Assumption::LocalTimes { zone } => ("air-assumed-local-times", vec![("zone", zone.as_str().into())]),
        Assumption::StatedOffset { offset } => {
            ("air-assumed-stated-offset", vec![("offset", offset.to_string().into())])
        }
        Assumption::RepeatedHour { first_line, rows } => {
            ("air-assumed-repeated-hour", vec![("line", first_line.to_string().into()), ("count", count(*rows))])
        }
        Assumption::HourEnding { offset } => ("air-assumed-hour-ending", vec![("offset", offset.to_string().into())]),
        Assumption::WindAtStation => ("air-assumed-wind-at-station", vec![]),
        Assumption::DoubtfulRain { rows } => ("air-assumed-doubtful-rain", vec![("count", count(*rows))]),
        Assumption::TypicalYear { first, last } => {
            ("air-assumed-typical-year", vec![("first", first.to_string().into()), ("last", last.to_string().into())])
        }
        Assumption::Sorted { rows } => ("air-assumed-sorted", vec![("count", count(*rows))]),
    };
    Some(locale.message(key, &args))
}

fn date_order(order: DateOrder, because: Because, locale: Locale) -> String {
    let order = match order {
        DateOrder::MonthFirst => "month",
        DateOrder::DayFirst => "day",
    };
    let key = match because {
        Because::NumberAboveTwelve => "air-date-order-twelve",
        Because::Majority => "air-date-order-majority",
        Because::ShorterLog => "air-date-order-shorter",
        Because::Habit => "air-date-order-habit",
    };
    locale.message(key, &[("order", order.into())])
}

/// A row or cell that was left out: where, what stood there, why, and what would be accepted.
pub(crate) fn skipped(skipped: &Skipped, locale: Locale) -> String {
    let mut args: Vec<(&str, Arg<'_>)> = vec![
        ("line", skipped.line.to_string().into()),
        ("value", skipped.value.as_str().into()),
        ("why", why(skipped, locale).into()),
    ];
    match &skipped.column {
        Some(column) => {
            args.push(("column", column.as_str().into()));
            locale.message("air-skipped-cell", &args)
        }
        None => locale.message("air-skipped-row", &args),
    }
}

fn why(skipped: &Skipped, locale: Locale) -> String {
    let key = match skipped.why {
        Why::NotANumber => "air-why-not-a-number",
        Why::UnknownUnit => "air-why-unknown-unit",
        Why::OutOfRange => "air-why-out-of-range",
        Why::OtherPeriod => "air-why-other-period",
        Why::BadTime => "air-why-bad-time",
        Why::NoSuchLocalTime => "air-why-no-such-local-time",
        Why::LeapDay => "air-why-leap-day",
        Why::CutShort => "air-why-cut-short",
        Why::TooManyCells => "air-why-too-many-cells",
        Why::NothingMeasured => "air-why-nothing-measured",
    };
    // Only these name what is accepted in numbers and units; the others say it in their sentence.
    let args = match skipped.why {
        Why::NotANumber | Why::OutOfRange => vec![("accepted", in_numbers(skipped.accepted, locale).into())],
        Why::UnknownUnit => vec![("accepted", skipped.accepted.into())],
        _ => Vec::new(),
    };
    locale.message(key, &args)
}

/// `a number from 0 to 100 %` in the reader's language: the range is written in one way only.
fn in_numbers(accepted: &'static str, locale: Locale) -> String {
    match (locale.lang, accepted.strip_prefix("a number from ")) {
        (Lang::Es, Some(range)) => locale.message("air-number-from", &[("range", range.replace(" to ", " a ").into())]),
        _ => accepted.to_owned(),
    }
}

/// Why nothing could be taken from a file, and what would be accepted.
pub(crate) fn refused(error: &ImportError, locale: Locale) -> String {
    let line = |line: &usize| ("line", Arg::from(line.to_string()));
    let text = |name: &'static str, text: &str| (name, Arg::from(text.to_owned()));
    let (key, args) = match error {
        ImportError::Empty => ("air-refused-empty", vec![]),
        ImportError::Binary { .. } => ("air-refused-binary", vec![]),
        ImportError::Header { line: at, found, .. } => ("air-refused-header", vec![line(at), text("found", found)]),
        ImportError::SiteField { line: at, field, found, .. } => {
            ("air-refused-site-field", vec![line(at), text("field", field), text("found", found)])
        }
        ImportError::Columns { found, missing } => {
            let key = match missing {
                Missing::Time => "air-refused-no-time",
                Missing::Reading => "air-refused-no-reading",
                Missing::TimeAndReading => "air-refused-no-columns",
            };
            (key, vec![text("found", &found.join(", "))])
        }
        ImportError::NoSuchColumn { column, found, .. } => {
            ("air-refused-no-such-column", vec![text("column", column), text("found", &found.join(", "))])
        }
        ImportError::UnknownKey { found } => {
            ("air-refused-unknown-unit", vec![text("found", found), text("accepted", "")])
        }
        ImportError::UnknownUnit { found, accepted, .. } => {
            ("air-refused-unknown-unit", vec![text("found", found), text("accepted", accepted)])
        }
        ImportError::UnitMissing { column, accepted, .. } => {
            ("air-refused-unit-missing", vec![text("column", column), text("accepted", accepted)])
        }
        ImportError::MappingNotUsed { .. } => ("air-refused-mapping", vec![]),
        ImportError::NoRows { line: at } => ("air-refused-no-rows", vec![line(at)]),
        ImportError::NoGoodRow { count, first } => (
            "air-refused-no-good-row",
            vec![("count", Arg::Number(*count as f64)), text("first", &skipped(first, locale))],
        ),
    };
    locale.message(key, &args)
}
