//! The sections of a file, and in them the entities that a plan needs.
//!
//! Only known kinds of entities and known groups get past here, numbers that are numbers, sections
//! that begin and end. Counts are bounded. What is left out is counted by layer and kind.

use std::collections::BTreeMap;

use crate::entity::{self, Block, Entity};
use crate::fields::Fields;
use crate::pairs::{Pair, Pairs};
use crate::text::Encoding;
use crate::{DrawingError, Units};

const MAX_BYTES: usize = 32 << 20;
const MAX_ENTITIES: usize = 200_000;
const MAX_VERTICES: usize = 500_000;
const MAX_BLOCKS: usize = 20_000;

/// What a file holds.
#[derive(Debug, Default)]
pub(crate) struct Scanned {
    pub(crate) units: Option<Units>,
    pub(crate) metric: Option<bool>,
    pub(crate) blocks: Vec<Block>,
    /// Those outside of blocks.
    pub(crate) entities: Vec<Entity>,
    /// By layer and kind how many were left out.
    pub(crate) ignored: BTreeMap<(String, String), usize>,
}

/// Reads a file.
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
    let mut scan =
        Scan { pairs: Pairs::of(bytes), encoding: Encoding::default(), vertices: 0, seen: 0, out: Scanned::default() };
    scan.file()?;
    Ok(scan.out)
}

struct Scan<'a> {
    pairs: Pairs<'a>,
    encoding: Encoding,
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
                        (2, b"BLOCKS") => self.section(true)?,
                        (2, b"ENTITIES") => self.section(false)?,
                        _ => self.skip()?,
                    }
                }
                _ => return Err(pair.malformed("SECTION or EOF")),
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
                1 if name == b"$ACADVER" => {
                    // The release of 2007.
                    let unicode = value >= b"AC1021".as_slice();
                    self.encoding = if unicode { Encoding::Unicode } else { Encoding::Latin };
                }
                70 if name == b"$INSUNITS" => self.out.units = number().map(Units::of_code),
                70 if name == b"$MEASUREMENT" => self.out.metric = number().map(|n| n == 1),
                _ => {}
            }
        }
    }

    /// A section of entities, or one of blocks that hold them.
    fn section(&mut self, of_blocks: bool) -> Result<(), DrawingError> {
        // The block that is open, and the polyline that vertices belong to.
        let (mut block, mut polyline): (Option<Block>, Option<Entity>) = (None, None);
        let mut pair = self.pairs.next("a section of entities")?;
        loop {
            if pair.code != 0 {
                return Err(pair.malformed("an entity (code 0)"));
            }
            let kind = String::from_utf8_lossy(pair.value.trim_ascii()).into_owned();
            let line = pair.line;
            let groups;
            (groups, pair) = if kind == "ENDSEC" { (Vec::new(), pair) } else { self.groups()? };
            if kind != "VERTEX"
                && let Some(whole) = polyline.take()
            {
                self.place(&mut block, whole);
            }
            match kind.as_str() {
                "ENDSEC" if block.is_none() => return Ok(()),
                "BLOCK" if of_blocks && block.is_none() => {
                    limit(self.out.blocks.len() + 1, MAX_BLOCKS, "blocks")?;
                    block = Some(Block::read(&self.fields(&groups, &[&entity::BLOCK])?));
                }
                "ENDBLK" if block.is_some() => self.out.blocks.extend(block.take()),
                "ENDSEC" | "BLOCK" | "ENDBLK" => {
                    return Err(DrawingError::Malformed { line, found: kind, expected: "blocks that begin and end" });
                }
                "VERTEX" => {
                    if let Some(polyline) = &mut polyline {
                        polyline.push_vertex(&self.fields(&groups, &[&entity::VERTEX])?);
                    }
                }
                "SEQEND" | "ATTRIB" => {}
                "POLYLINE" => polyline = self.entity(&kind, &groups)?,
                _ => {
                    if let Some(entity) = self.entity(&kind, &groups)? {
                        self.place(&mut block, entity);
                    }
                }
            }
        }
    }

    fn place(&mut self, block: &mut Option<Block>, entity: Entity) {
        block.as_mut().map_or(&mut self.out.entities, |block| &mut block.entities).push(entity);
    }

    /// The entity; nothing for a kind that no plan needs, which is counted.
    fn entity(&mut self, kind: &str, groups: &[Pair<'a>]) -> Result<Option<Entity>, DrawingError> {
        let Some(more) = entity::codes(kind) else {
            let layer = groups.iter().find(|g| g.code == 8);
            let layer = layer.map_or_else(|| "0".to_owned(), |g| self.encoding.read(g.value));
            *self.out.ignored.entry((layer, kind.chars().take(40).collect())).or_default() += 1;
            limit(self.out.ignored.len(), MAX_BLOCKS, "kinds of entities")?;
            return Ok(None);
        };
        self.seen += 1;
        limit(self.seen, MAX_ENTITIES, "entities")?;
        Ok(Entity::read(kind, &self.fields(groups, &[&entity::COMMON, more])?))
    }

    fn fields(&mut self, groups: &[Pair<'a>], codes: &[&[i32]]) -> Result<Fields, DrawingError> {
        let fields = Fields::read(groups, codes, self.encoding)?;
        self.vertices += fields.points();
        limit(self.vertices, MAX_VERTICES, "points")?;
        Ok(fields)
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
}

pub(crate) fn limit(count: usize, most: usize, what: &'static str) -> Result<(), DrawingError> {
    if count > most { Err(DrawingError::TooLarge { what, most }) } else { Ok(()) }
}
