//! The file as pairs of code and value, cut down to what a plan needs before anything else reads it.
//!
//! The reader of the format meets only what this lets through: known kinds of entities, known groups,
//! numbers that are numbers, sections that begin and end. Counts are bounded. What is left out is
//! counted by layer and kind.

use std::collections::BTreeMap;

use crate::{DrawingError, Units};

const MAX_BYTES: usize = 32 << 20;
const MAX_ENTITIES: usize = 200_000;
const MAX_VERTICES: usize = 500_000;
const MAX_BLOCKS: usize = 20_000;
const MAX_TEXT: usize = 4_000;
/// No coordinate of a building is larger, in any unit.
const LARGEST: f64 = 1e12;

/// A drawing cut down.
#[derive(Debug, Default)]
pub(crate) struct Scanned {
    /// DXF text of the entities kept.
    pub(crate) kept: String,
    pub(crate) units: Option<Units>,
    pub(crate) metric: Option<bool>,
    /// By layer and kind how many were left out.
    pub(crate) ignored: BTreeMap<(String, String), usize>,
    /// How many entities of the model the reader must find: those outside of blocks.
    pub(crate) entities: usize,
    pub(crate) blocks: usize,
}

struct Pair<'a> {
    code: i32,
    value: &'a [u8],
    line: usize,
}

struct Pairs<'a> {
    rest: Option<&'a [u8]>,
    line: usize,
}

impl<'a> Pairs<'a> {
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

    fn next(&mut self, within: &'static str) -> Result<Pair<'a>, DrawingError> {
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

fn short(bytes: &[u8]) -> String {
    String::from_utf8_lossy(&bytes[..bytes.len().min(40)]).into_owned()
}

/// Reads and cuts down.
pub(crate) fn scan(bytes: &[u8]) -> Result<Scanned, DrawingError> {
    if bytes.len() > MAX_BYTES {
        return Err(DrawingError::TooLarge { what: "bytes", most: MAX_BYTES });
    }
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    if bytes.contains(&0) {
        return Err(DrawingError::NotText { found: "it holds bytes that are no text, as a binary file does" });
    }
    if bytes.trim_ascii().is_empty() {
        return Err(DrawingError::NotText { found: "it is empty" });
    }
    let mut scan = Scan {
        pairs: Pairs { rest: Some(bytes), line: 0 },
        unicode: false,
        vertices: 0,
        seen: 0,
        out: Scanned::default(),
    };
    // Entities need no header, but text after the year 2007 is written another way.
    scan.out.kept.push_str("0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1032\n0\nENDSEC\n");
    scan.file()?;
    scan.out.kept.push_str("0\nEOF\n");
    Ok(scan.out)
}

struct Scan<'a> {
    pairs: Pairs<'a>,
    /// Whether text is UTF-8.
    unicode: bool,
    vertices: usize,
    seen: usize,
    out: Scanned,
}

impl<'a> Scan<'a> {
    fn file(&mut self) -> Result<(), DrawingError> {
        loop {
            let pair = self.pairs.next("the file")?;
            match (pair.code, pair.value.trim_ascii()) {
                (999, _) => {}
                (0, b"EOF") => return Ok(()),
                (0, b"SECTION") => {
                    let name = self.pairs.next("a section")?;
                    match (name.code, name.value.trim_ascii()) {
                        (2, b"HEADER") => self.header()?,
                        (2, b"BLOCKS") => self.section("BLOCKS")?,
                        (2, b"ENTITIES") => self.section("ENTITIES")?,
                        _ => self.skip()?,
                    }
                }
                (_, value) => {
                    let expected = "SECTION or EOF";
                    return Err(DrawingError::Malformed { line: pair.line, found: short(value), expected });
                }
            }
        }
    }

    /// To the end of a section that no plan needs.
    fn skip(&mut self) -> Result<(), DrawingError> {
        loop {
            let pair = self.pairs.next("a section")?;
            if pair.code == 0 && pair.value.trim_ascii() == b"ENDSEC" {
                return Ok(());
            }
        }
    }

    fn header(&mut self) -> Result<(), DrawingError> {
        let mut name: &[u8] = b"";
        loop {
            let pair = self.pairs.next("the header")?;
            let value = pair.value.trim_ascii();
            let number = || std::str::from_utf8(value).ok().and_then(|v| v.parse::<i64>().ok());
            match pair.code {
                0 if value == b"ENDSEC" => return Ok(()),
                9 => name = value,
                1 if name == b"$ACADVER" => self.unicode = value >= b"AC1021".as_slice(),
                70 if name == b"$INSUNITS" => self.out.units = number().map(Units::of_code),
                70 if name == b"$MEASUREMENT" => self.out.metric = number().map(|n| n == 1),
                _ => {}
            }
        }
    }

    /// A section of entities, kept where they are known.
    fn section(&mut self, name: &'static str) -> Result<(), DrawingError> {
        self.out.kept.push_str("0\nSECTION\n2\n");
        self.out.kept.push_str(name);
        self.out.kept.push('\n');
        let blocks = name == "BLOCKS";
        // Which kind of entity the vertices belong to, and whether a block is open.
        let (mut polyline, mut open, mut pair) = (false, false, self.pairs.next("a section of entities")?);
        loop {
            if pair.code != 0 {
                return Err(DrawingError::Malformed {
                    line: pair.line,
                    found: short(pair.value),
                    expected: "an entity (code 0)",
                });
            }
            let kind = String::from_utf8_lossy(pair.value.trim_ascii()).into_owned();
            let line = pair.line;
            let groups;
            (groups, pair) = if kind == "ENDSEC" { (Vec::new(), pair) } else { self.groups()? };
            match kind.as_str() {
                "ENDSEC" if !open => break,
                "BLOCK" if blocks && !open => {
                    open = true;
                    self.out.blocks += 1;
                    limit(self.out.blocks, MAX_BLOCKS, "blocks")?;
                    self.keep(&kind, &groups, &[2, 8, 10, 20, 30, 70])?;
                }
                "ENDBLK" if open => {
                    open = false;
                    self.keep(&kind, &groups, &[])?;
                }
                "ENDSEC" | "BLOCK" | "ENDBLK" => {
                    return Err(DrawingError::Malformed { line, found: kind, expected: "blocks that begin and end" });
                }
                "VERTEX" if polyline => self.keep(&kind, &groups, &[8, 10, 20, 30, 42, 70])?,
                "SEQEND" if polyline => {
                    polyline = false;
                    self.keep(&kind, &groups, &[8])?;
                }
                "VERTEX" | "SEQEND" | "ATTRIB" => {}
                _ => {
                    self.entity(&kind, &groups, open)?;
                    polyline = kind == "POLYLINE";
                }
            }
        }
        self.out.kept.push_str("0\nENDSEC\n");
        Ok(())
    }

    fn entity(&mut self, kind: &str, groups: &[Pair<'a>], in_block: bool) -> Result<(), DrawingError> {
        const PLACE: [i32; 9] = [8, 10, 20, 30, 67, 70, 210, 220, 230];
        let more: &[i32] = match kind {
            "LINE" => &[11, 21, 31],
            "CIRCLE" => &[40],
            "ARC" => &[40, 50, 51],
            "ELLIPSE" => &[11, 21, 31, 40, 41, 42],
            "LWPOLYLINE" => &[42],
            "POLYLINE" => &[],
            "INSERT" => &[2, 41, 42, 43, 44, 45, 50, 71],
            "TEXT" => &[1],
            "MTEXT" => &[1, 3],
            _ => {
                let layer = groups.iter().find(|g| g.code == 8).map_or_else(|| "0".to_owned(), |g| self.text(g.value));
                *self.out.ignored.entry((layer, kind.chars().take(40).collect())).or_default() += 1;
                limit(self.out.ignored.len(), MAX_BLOCKS, "kinds of entities")?;
                return Ok(());
            }
        };
        self.seen += 1;
        limit(self.seen, MAX_ENTITIES, "entities")?;
        self.out.entities += usize::from(!in_block);
        let codes: Vec<i32> = PLACE.iter().chain(more).copied().collect();
        self.keep(kind, groups, &codes)
    }

    /// All groups of an entity up to what comes next. Groups of an object within it are left out.
    fn groups(&mut self) -> Result<(Vec<Pair<'a>>, Pair<'a>), DrawingError> {
        let mut groups = Vec::new();
        let mut inner = false;
        loop {
            let pair = self.pairs.next("an entity")?;
            match pair.code {
                0 => return Ok((groups, pair)),
                101 => inner = true,
                _ if inner => {}
                _ => groups.push(pair),
            }
            limit(groups.len(), 4 * MAX_VERTICES, "groups of one entity")?;
        }
    }

    fn keep(&mut self, kind: &str, groups: &[Pair<'a>], codes: &[i32]) -> Result<(), DrawingError> {
        use std::fmt::Write as _;
        let mut out = format!("0\n{kind}\n");
        for group in groups.iter().filter(|g| codes.contains(&g.code)) {
            let (code, line) = (group.code, group.line);
            let text = String::from_utf8_lossy(group.value.trim_ascii());
            let bad = |expected| DrawingError::Malformed { line, found: short(group.value), expected };
            // Writing to a string cannot fail.
            let _ = match code {
                1..=9 => writeln!(out, "{code}\n{}", self.text(group.value)),
                60..=79 => {
                    let number: i16 = text.parse().map_err(|_| bad("a whole number from -32768 to 32767"))?;
                    writeln!(out, "{code}\n{number}")
                }
                _ => {
                    let number: f64 = text.parse().map_err(|_| bad("a number"))?;
                    if !(number.is_finite() && number.abs() <= LARGEST) {
                        return Err(bad("a number up to 10^12"));
                    }
                    self.vertices += usize::from(code == 10);
                    writeln!(out, "{code}\n{number:?}")
                }
            };
        }
        limit(self.vertices, MAX_VERTICES, "points")?;
        self.out.kept.push_str(&out);
        Ok(())
    }

    /// Text as UTF-8 on one line, without the reader's own escapes.
    fn text(&self, bytes: &[u8]) -> String {
        let text: String = if self.unicode {
            String::from_utf8_lossy(bytes).into_owned()
        } else {
            bytes.iter().map(|b| char::from(*b)).collect()
        };
        let plain: String = text.trim().chars().take(MAX_TEXT).map(|c| if c == '^' { ' ' } else { c }).collect();
        unescaped(&plain)
    }
}

/// `\U+00F1` as the letter that it stands for.
fn unescaped(text: &str) -> String {
    let mut parts = text.split("\\U+");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let letter = part.get(..4).and_then(|hex| u32::from_str_radix(hex, 16).ok()).and_then(char::from_u32);
        match letter.filter(|c| !c.is_control()) {
            Some(letter) => {
                out.push(letter);
                out.push_str(&part[4..]);
            }
            None => out.push_str(part),
        }
    }
    out
}

fn limit(count: usize, most: usize, what: &'static str) -> Result<(), DrawingError> {
    if count > most { Err(DrawingError::TooLarge { what, most }) } else { Ok(()) }
}
