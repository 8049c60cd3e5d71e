//! Figures, dates and signs as they are printed.

use jiff::civil::Date;
use localization::Locale;
use units::Length;

use crate::error::PaperError;

/// A number with thousands apart, as on US sites in both languages: `1,250` or `16.00`.
pub(crate) fn number(value: f64, decimals: usize) -> String {
    let plain = format!("{:.decimals$}", value.abs());
    let (whole, rest) = plain.split_once('.').map_or((plain.as_str(), ""), |(whole, rest)| (whole, rest));
    let mut out = String::new();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    if !rest.is_empty() {
        out.push('.');
        out.push_str(rest);
    }
    if value < 0.0 && plain.bytes().any(|b| (b'1'..=b'9').contains(&b)) { format!("−{out}") } else { out }
}

/// A whole or decimal number without needless zeros.
pub(crate) fn short(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A length in feet and whole inches with the signs of print: `12′ 6″`, `8′`.
pub(crate) fn tape(length: Length) -> String {
    let text = length.show_feet_inches(1).replace('\'', "′").replace('"', "″");
    text.strip_suffix(" 0″").map_or(text.clone(), str::to_owned)
}

/// A length in inches and eighths, however long: `18″`, `4 ½″`, `1 1/8″`.
pub(crate) fn inches(length: Length) -> String {
    let eighths = (length.as_inches() * 8.0).round();
    let whole = (eighths / 8.0).floor();
    let rest = Length::inches((eighths - whole * 8.0) / 8.0).show_feet_inches(8);
    let rest = rest.replace('"', "").replace("1/2", "½").replace("1/4", "¼").replace("3/4", "¾");
    match (whole > 0.0, rest.as_str()) {
        (_, "0") => format!("{whole:.0}″"),
        (true, rest) => format!("{whole:.0} {rest}″"),
        (false, rest) => format!("{rest}″"),
    }
}

/// The name of a month, 1 to 12.
pub(crate) fn month(locale: Locale, month: i8) -> Result<String, PaperError> {
    let first = Date::new(2000, month, 1).map_err(|_| PaperError::field("weather.month", month, "1 to 12"))?;
    Ok(locale.month(first))
}

/// An hour of the day on the clock of the site.
pub(crate) fn hour(locale: Locale, hour: u8) -> String {
    match hour % 24 {
        0 => locale.message("paper-hour-midnight", &[]),
        12 => locale.message("paper-hour-noon", &[]),
        am @ 1..12 => locale.message("paper-hour-am", &[("hour", u32::from(am).into())]),
        pm => locale.message("paper-hour-pm", &[("hour", u32::from(pm - 12).into())]),
    }
}

/// A value of the data files with the signs of print: `<= 10-15 %` becomes `≤ 10–15 %`.
pub(crate) fn signs(text: &str) -> String {
    let plain = [
        ("<= ", "≤\u{a0}"),
        (">= ", "≥\u{a0}"),
        ("+/-", "±"),
        ("ft2", "ft²"),
        ("pie2", "pie²"),
        ("yd3", "yd³"),
        (" x ", " × "),
        ("\"dissipating\"", "“dissipating”"),
    ];
    let text = plain.iter().fold(text.to_owned(), |text, (from, to)| text.replace(from, to));
    let chars: Vec<char> = text.chars().collect();
    let digit = |at: Option<&char>| at.is_some_and(char::is_ascii_digit);
    let mut out = String::new();
    for (at, &c) in chars.iter().enumerate() {
        let (before, after) = (at.checked_sub(1).and_then(|b| chars.get(b)), chars.get(at + 1));
        match c {
            '-' if digit(before) && digit(after) => out.push('–'),
            // `40 F` is a temperature; `FF 25` and `F` inside a word are not.
            'F' if before.is_some_and(|space| *space == ' ')
                && digit(at.checked_sub(2).and_then(|b| chars.get(b)))
                && after.is_none_or(|a| !a.is_alphanumeric()) =>
            {
                out.push_str("°F");
            }
            // A number and its unit stay on one line.
            ' ' if digit(before) && UNITS.iter().any(|unit| begins_with_word(&chars[at + 1..], unit)) => {
                out.push('\u{a0}')
            }
            _ => out.push(c),
        }
    }
    out
}

/// Units that do not leave their number.
const UNITS: [&str; 11] = ["%", "in", "ft", "pulg", "pies", "lb", "psi", "mil", "perm", "F", "x"];

fn begins_with_word(chars: &[char], word: &str) -> bool {
    let length = word.chars().count();
    chars.len() >= length
        && word.chars().eq(chars[..length].iter().copied())
        && chars.get(length).is_none_or(|next| !next.is_alphanumeric())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_of_print() {
        assert_eq!(signs("0 %, or <= 10-15 % constant"), "0\u{a0}%, or ≤\u{a0}10–15\u{a0}% constant");
        assert_eq!(
            signs("air >= 40 F; keep >= 50 F; evaporation < 0.2 lb/ft2/h"),
            "air ≥\u{a0}40\u{a0}°F; keep ≥\u{a0}50\u{a0}°F; evaporation < 0.2\u{a0}lb/ft²/h"
        );
        assert_eq!(signs("FF 25-35 / FL 20; pre-pour"), "FF 25–35 / FL 20; pre-pour");
    }

    #[test]
    fn numbers_with_thousands() {
        assert_eq!(number(1234.5, 0), "1,234");
        assert_eq!(number(1_234_567.0, 1), "1,234,567.0");
        assert_eq!(number(999.999, 2), "1,000.00");
        assert_eq!(number(0.25, 2), "0.25");
        assert_eq!(number(-12.0, 0), "−12");
        assert_eq!(number(-0.001, 1), "0.0");
    }

    #[test]
    fn lengths() {
        assert_eq!(tape(Length::feet_inches(12.0, 6.0)), "12′ 6″");
        assert_eq!(tape(Length::feet(8.0)), "8′");
        assert_eq!(inches(Length::inches(18.0)), "18″");
        assert_eq!(inches(Length::inches(4.5)), "4 ½″");
        assert_eq!(inches(Length::inches(1.125)), "1 1/8″");
        assert_eq!(inches(Length::inches(0.75)), "¾″");
    }
}
