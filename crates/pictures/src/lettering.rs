//! How wide lettering is, before any font is known.
//!
//! A page shows the reader's own sans-serif, which we cannot measure. The widths here are those of
//! a wide one (DejaVu Sans, regular weight, rounded up; measured from its `hmtx` table), so that
//! what fits here fits in the narrower faces of phones.

/// Smallest lettering in any drawing, units: a drawing is laid out in as many units as the narrowest screen that
/// shows it has pixels.
pub(crate) const SMALL: f64 = 14.0;
/// Names and values.
pub(crate) const PLAIN: f64 = 15.0;
/// From the middle of a line of lettering to its base line.
pub(crate) const DOWN: f64 = 5.0;
/// Height of the box that a line of small lettering fills, without what hangs below and stands above.
pub(crate) const TALL: f64 = 15.0;
/// Bold lettering is wider by this share at most.
const BOLD: f64 = 1.12;

/// Width of a character as a share of the font size.
fn share(c: char) -> f64 {
    match c {
        'i' | 'j' | 'l' | '\'' | '’' | '′' | '|' => 0.30,
        ' ' | ',' | '.' | ':' | ';' | '!' | 'I' => 0.34,
        'f' | 't' | 'r' | '(' | ')' | '-' | '/' | '[' | ']' => 0.42,
        '"' | '”' | '″' | '°' | '*' | '²' | '³' => 0.50,
        'm' | 'w' | '—' | '…' => 0.99,
        'M' | 'W' | '@' | '%' | '½' | '¼' | '¾' => 1.0,
        'A'..='Z' => 0.74,
        'a'..='z' | '0'..='9' => 0.64,
        c if c.is_ascii() => 0.84,
        // Accented Latin is as wide as plain; other scripts can be full squares.
        '\u{c0}'..='\u{17f}' => 0.78,
        _ => 1.1,
    }
}

/// Width of a text in units, on the wide side.
pub(crate) fn width(text: &str, size: f64) -> f64 {
    text.chars().map(share).sum::<f64>() * size
}

/// Width of a bold text.
pub(crate) fn bold_width(text: &str, size: f64) -> f64 {
    BOLD * width(text, size)
}

/// The text cut to a width, with an ellipsis where something was left out.
pub(crate) fn fitted(text: &str, size: f64, room: f64) -> String {
    if width(text, size) <= room {
        return text.to_owned();
    }
    let mut kept = String::new();
    let mut used = width("…", size);
    for c in text.chars() {
        used += share(c) * size;
        if used > room {
            break;
        }
        kept.push(c);
    }
    format!("{}…", kept.trim_end())
}

/// The text in lines of at most `room` units, at most `lines` of them; what does not fit ends in an
/// ellipsis. Never empty.
pub(crate) fn wrapped(text: &str, size: f64, room: f64, lines: usize) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    let mut rest = text.trim();
    while !rest.is_empty() {
        if out.len() + 1 >= lines {
            out.push(fitted(rest, size, room));
            return out;
        }
        let (line, after) = first_line(rest, size, room);
        out.push(line.trim_end().to_owned());
        rest = after.trim_start();
    }
    if out.is_empty() {
        out.push(String::new());
    }
    out
}

/// As many words as fit; of a single word too long, as many letters as fit.
fn first_line(text: &str, size: f64, room: f64) -> (&str, &str) {
    let mut used = 0.0;
    let mut space = None;
    for (at, c) in text.char_indices() {
        if c.is_whitespace() {
            space = Some(at);
        }
        used += share(c) * size;
        if used > room && at > 0 {
            return text.split_at(space.filter(|s| *s > 0).unwrap_or(at));
        }
    }
    (text, "")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cut_and_wrapped_text_fits_its_room() {
        for text in
            ["red chalk line across the shop", "Supercalifragilistic", "a", "", "mmmm mmmm mmmm", "龍龍龍龍龍龍"]
        {
            for room in [40.0, 60.0, 200.0] {
                assert!(width(&fitted(text, 12.0, room), 12.0) <= room, "{text} in {room}");
                let lines = wrapped(text, 12.0, room, 3);
                assert!((1..=3).contains(&lines.len()));
                assert!(lines.iter().all(|l| width(l, 12.0) <= room), "{lines:?} in {room}");
            }
        }
    }

    #[test]
    fn wrapping_loses_no_word_while_there_are_lines() {
        let text = "one two three four five six seven";
        assert_eq!(wrapped(text, 12.0, 80.0, 10).join(" "), text);
        assert!(wrapped(text, 12.0, 80.0, 2)[1].ends_with('…'));
    }
}
