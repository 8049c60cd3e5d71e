//! Plain numbers as people type them: `2`, `1.5`, `1,5`, `1,200`, `-3`, `1 1/2`.

use units::Notation;
use units::TemperatureDifference;

/// The number, when the text is a number and nothing else.
pub(crate) fn read(text: &str) -> Option<f64> {
    // The reader of trade notation knows decimal commas and fractions. A difference of temperature
    // is its one quantity without lower end whose unit does not change the number.
    let bare = !text.chars().any(char::is_alphabetic) && !text.contains(['°', 'º', '%']);
    let number = TemperatureDifference::read(&format!("{text} °C")).ok()?.as_celsius_degrees();
    (bare && number.is_finite()).then_some(number)
}

/// An amount of money as a decimal text without currency sign and thousands marks: `$1,200.50` and
/// `1.200,50` give `1200.50`. Up to two decimals; a lone mark before three digits is one of thousands.
pub(crate) fn money(text: &str) -> Option<String> {
    let bare = text.trim().trim_start_matches('$').trim();
    if bare.is_empty() || !bare.chars().all(|c| c.is_ascii_digit() || c == '.' || c == ',') {
        return None;
    }
    let decimals = bare.rfind(['.', ',']).map(|at| &bare[at + 1..]).filter(|d| matches!(d.len(), 1 | 2));
    let whole = decimals.map_or(bare, |d| &bare[..bare.len() - d.len() - 1]);
    let mark = if whole.contains(',') { ',' } else { '.' };
    // The decimal mark and the thousands mark differ.
    if decimals.is_some_and(|d| whole.contains(mark) && bare.as_bytes()[bare.len() - d.len() - 1] == mark as u8) {
        return None;
    }
    let mut groups = whole.split(mark);
    let first = groups.next().filter(|g| !g.is_empty())?;
    let rest: Vec<&str> = groups.collect();
    if !first.bytes().all(|b| b.is_ascii_digit()) || !rest.is_empty() && first.len() > 3 {
        return None;
    }
    if rest.iter().any(|g| g.len() != 3 || !g.bytes().all(|b| b.is_ascii_digit())) {
        return None;
    }
    let whole = format!("{first}{}", rest.concat());
    Some(decimals.map_or_else(|| whole.clone(), |d| format!("{whole}.{d}")))
}
