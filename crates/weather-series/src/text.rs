//! From bytes to lines, cells and numbers.
//!
//! Lines are split one by one, not by a CSV reader over the whole file: one quote left open by a
//! failing logger then spoils its own line and not the rest of the file.

use super::assumed::Encoding;
use super::error::ImportError;

/// One line of the file.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line<'a> {
    /// Counted from 1, as editors do.
    pub(super) number: usize,
    /// Without its end-of-line mark.
    pub(super) text: &'a str,
}

/// How many bytes are looked at to tell text from binary.
const LOOKED_AT: usize = 4096;

/// A control byte that text does not hold. Tab, line feed, form feed, carriage return and the old
/// end-of-file mark are text.
const fn is_control(byte: u8) -> bool {
    byte < 0x20 && !matches!(byte, b'\t' | b'\n' | 0x0c | b'\r' | 0x1a)
}

/// Decodes UTF-8 (with or without mark), UTF-16 with a mark, or else Latin-1.
pub(super) fn decode(bytes: &[u8]) -> Result<(String, Encoding), ImportError> {
    let (text, encoding) = match bytes {
        [0xff, 0xfe, rest @ ..] => (utf16(rest, u16::from_le_bytes), Encoding::Utf16),
        [0xfe, 0xff, rest @ ..] => (utf16(rest, u16::from_be_bytes), Encoding::Utf16),
        _ => {
            let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
            // A logger that lost power leaves a few zero bytes in a good file, so a share decides.
            let head = &bytes[..bytes.len().min(LOOKED_AT)];
            let controls = head.iter().filter(|b| is_control(**b)).count();
            if controls * 50 > head.len() {
                let byte = head.iter().position(|b| is_control(*b)).unwrap_or(0);
                return Err(ImportError::Binary { byte });
            }
            match std::str::from_utf8(bytes) {
                Ok(text) => (text.to_owned(), Encoding::Utf8),
                Err(_) => (bytes.iter().map(|b| char::from(*b)).collect(), Encoding::Latin1),
            }
        }
    };
    if text.chars().all(|c| c.is_whitespace() || c.is_control()) {
        return Err(ImportError::Empty);
    }
    Ok((text, encoding))
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> String {
    let units: Vec<u16> = bytes.chunks_exact(2).map(|pair| unit([pair[0], pair[1]])).collect();
    String::from_utf16_lossy(&units)
}

/// The lines of a text; a lone carriage return ends a line where no line feed is used.
pub(super) fn lines(text: &str) -> Vec<Line<'_>> {
    let end = if text.contains('\n') { '\n' } else { '\r' };
    let mut lines: Vec<Line<'_>> = text
        .split(end)
        .enumerate()
        .map(|(index, line)| Line { number: index + 1, text: line.strip_suffix('\r').unwrap_or(line) })
        .collect();
    while lines.last().is_some_and(|line| line.text.trim_matches(['\u{1a}', '\0', ' ']).is_empty()) {
        lines.pop();
    }
    lines
}

/// Whether a line starts with these ASCII characters, in any case.
pub(super) fn starts(line: &str, with: &str) -> bool {
    line.get(..with.len()).is_some_and(|head| head.eq_ignore_ascii_case(with))
}

/// The cells of a line, trimmed; double quotes may surround a cell and are doubled inside.
pub(super) fn split(line: &str, separator: char) -> Vec<String> {
    if !line.contains('"') {
        return line.split(separator).map(|cell| cell.trim().to_owned()).collect();
    }
    let mut cells = Vec::new();
    let mut cell = String::new();
    let mut quoted = false;
    let mut chars = line.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                cell.push('"');
            }
            '"' => quoted = !quoted,
            c if c == separator && !quoted => cells.push(std::mem::take(&mut cell).trim().to_owned()),
            c => cell.push(c),
        }
    }
    cells.push(cell.trim().to_owned());
    cells
}

/// A number as people and loggers write it, and whether its decimal mark was a comma.
///
/// With both marks the last one is the decimal mark. A single comma is a decimal comma.
pub(super) fn number(text: &str) -> Option<(f64, bool)> {
    let text = text.trim().replace('\u{2212}', "-");
    if text.is_empty() || !text.chars().all(|c| c.is_ascii_digit() || "+-.,eE".contains(c)) {
        return None;
    }
    let (points, commas) = (text.matches('.').count(), text.matches(',').count());
    let comma = match (points, commas) {
        (_, 0) => false,
        (0, 1) => true,
        (1.., 1) => text.rfind(',') > text.rfind('.'),
        (1, _) if text.rfind('.') > text.rfind(',') => false,
        _ => return None,
    };
    let clean = if comma { text.replace('.', "").replace(',', ".") } else { text.replace(',', "") };
    clean.parse::<f64>().ok().filter(|n| n.is_finite()).map(|n| (n, comma))
}

/// A number and the unit written after it: `72 °F` gives 72 and `°F`.
pub(super) fn number_and_rest(text: &str) -> Option<(f64, bool, &str)> {
    if let Some((value, comma)) = number(text) {
        return Some((value, comma, ""));
    }
    let end = text.find(|c: char| !(c.is_ascii_digit() || "+-.,\u{2212}".contains(c)))?;
    let (head, rest) = text.split_at(end);
    number(head).map(|(value, comma)| (value, comma, rest.trim()))
}

/// Whether a cell is one of the usual ways to write "no reading".
pub(super) fn is_missing(cell: &str) -> bool {
    const MARKS: [&str; 15] =
        ["", "-", "--", "---", "na", "n/a", "#n/a", "nan", "null", "none", "s/d", "nd", "n/d", "sin dato", "?"];
    MARKS.contains(&cell.trim().to_lowercase().as_str())
}

/// A value cut to a length fit for a message.
pub(super) fn shown(text: &str) -> String {
    const LONGEST: usize = 80;
    let clean: String = text.chars().map(|c| if c.is_control() { '\u{fffd}' } else { c }).take(LONGEST + 1).collect();
    match clean.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &clean[..end]),
        None => clean,
    }
}
