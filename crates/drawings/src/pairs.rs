//! The file as pairs of a group code and a value, a line each.

use crate::DrawingError;

/// A group of the file: what it is, and its value as it stands there.
pub(crate) struct Pair<'a> {
    pub(crate) code: i32,
    pub(crate) value: &'a [u8],
    /// The line of the value, from 1.
    pub(crate) line: usize,
}

/// What is left of the file.
pub(crate) struct Pairs<'a> {
    rest: Option<&'a [u8]>,
    line: usize,
}

impl<'a> Pairs<'a> {
    pub(crate) const fn of(bytes: &'a [u8]) -> Self {
        Self { rest: Some(bytes), line: 0 }
    }

    fn line(&mut self) -> Option<&'a [u8]> {
        let rest = self.rest?;
        self.line += 1;
        let line = match rest.iter().position(|b| *b == b'\n') {
            Some(end) => {
                self.rest = Some(&rest[end + 1..]);
                &rest[..end]
            }
            None => {
                self.rest = None;
                rest
            }
        };
        Some(line.strip_suffix(b"\r").unwrap_or(line))
    }

    pub(crate) fn next(&mut self, within: &'static str) -> Result<Pair<'a>, DrawingError> {
        let cut_short = || DrawingError::CutShort { within };
        let code = self.line().ok_or_else(cut_short)?;
        let value = self.line().ok_or_else(cut_short)?;
        let line = self.line;
        let code = std::str::from_utf8(code).ok().and_then(|text| text.trim().parse().ok()).ok_or_else(|| {
            DrawingError::Malformed { line: line - 1, found: short(code), expected: "a group code, a whole number" }
        })?;
        Ok(Pair { code, value, line })
    }
}

impl Pair<'_> {
    /// Why the value cannot be read.
    pub(crate) fn malformed(&self, expected: &'static str) -> DrawingError {
        DrawingError::Malformed { line: self.line, found: short(self.value), expected }
    }
}

fn short(bytes: &[u8]) -> String {
    String::from_utf8_lossy(&bytes[..bytes.len().min(40)]).into_owned()
}
