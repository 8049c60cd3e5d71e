//! Printing bare numbers: a point for decimals and commas for thousands in both languages, as the
//! United States write them, Spanish included.

/// Rounded to so many decimals at most; zeros at the end are left out, and so is a negative zero.
pub(crate) fn rounded(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", value.abs());
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    let (whole, rest) = text.split_at(text.find('.').unwrap_or(text.len()));
    let sign = if value < 0.0 && text.bytes().any(|b| (b'1'..=b'9').contains(&b)) { "-" } else { "" };
    format!("{sign}{}{rest}", grouped(whole))
}

fn grouped(digits: &str) -> String {
    let mut out = String::with_capacity(digits.len() + digits.len() / 3);
    for (i, digit) in digits.chars().enumerate() {
        if i > 0 && (digits.len() - i).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

/// Three figures that tell, but never fewer than the whole part: 2 decimals below 10, 1 below 100.
pub(crate) fn three_figures(value: f64) -> String {
    let decimals = match value.abs() {
        size if size < 10.0 => 2,
        size if size < 100.0 => 1,
        _ => 0,
    };
    rounded(value, decimals)
}
