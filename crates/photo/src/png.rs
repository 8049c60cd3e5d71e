//! The chunks of a PNG file: finding the size and the EXIF block, and leaving chunks out.
//!
//! PNG specification, third edition, sections 5 and 11 (grade M for the section numbers).

use crate::error::PhotoError;
use crate::header::{Facts, Format, check_size};
use crate::kind::PNG_SIGNATURE;

/// Chunks that decide how the pixels look, or when the picture was last changed. Everything else
/// is left out: texts, XMP, thumbnails, the further frames of an animation, private chunks.
const KEPT: &[&[u8; 4]] = &[
    b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"iCCP", b"cICP", b"mDCV", b"cLLI",
    b"sBIT", b"bKGD", b"pHYs", b"tIME",
];

struct Chunk<'a> {
    name: [u8; 4],
    /// Where the chunk starts in the file, in bytes.
    at: usize,
    data: &'a [u8],
    /// The chunk as it stands in the file: length, name, data and check sum.
    whole: &'a [u8],
}

/// The chunks in their order. Borrowed, so a walk needs no memory of its own.
struct Chunks<'a> {
    bytes: &'a [u8],
    at: usize,
    ended: bool,
}

impl<'a> Chunks<'a> {
    fn new(bytes: &'a [u8]) -> Self {
        Self { bytes, at: PNG_SIGNATURE.len(), ended: false }
    }

    /// The next chunk whose check sum is right, or nothing after the end chunk. A wrong check sum
    /// damages the picture if the chunk is needed; otherwise the chunk is passed over.
    fn next(&mut self) -> Result<Option<Chunk<'a>>, PhotoError> {
        while !self.ended {
            let at = self.at;
            let cut = || PhotoError::CutShort { format: Format::Png, at: self.bytes.len() };
            let head = self.bytes.get(at..).and_then(|rest| rest.first_chunk::<8>()).ok_or_else(cut)?;
            let [l3, l2, l1, l0, name @ ..] = *head;
            if !name.iter().all(u8::is_ascii_alphabetic) {
                return Err(damaged("a chunk has no proper name", at));
            }
            let length = u32::from_be_bytes([l3, l2, l1, l0]);
            let end = usize::try_from(length).ok().and_then(|length| length.checked_add(at + 12));
            let whole = end.and_then(|end| self.bytes.get(at..end)).ok_or_else(cut)?;
            let (checked, sum) = whole[4..].split_at(whole.len() - 8);
            self.at = at + whole.len();
            self.ended = &name == b"IEND";
            if crc32fast::hash(checked).to_be_bytes() == sum {
                return Ok(Some(Chunk { name, at, data: &checked[4..], whole }));
            }
            if is_needed(name) {
                return Err(damaged("a check sum is wrong", at));
            }
        }
        Ok(None)
    }
}

/// A capital first letter marks a chunk without which the picture cannot be shown.
fn is_needed(name: [u8; 4]) -> bool {
    name[0].is_ascii_uppercase()
}

fn damaged(what: &'static str, at: usize) -> PhotoError {
    PhotoError::Damaged { format: Format::Png, what, at }
}

/// Size and EXIF block of a PNG file that is whole.
pub(crate) fn read(bytes: &[u8]) -> Result<Facts<'_>, PhotoError> {
    if bytes.len() < PNG_SIGNATURE.len() {
        return Err(PhotoError::CutShort { format: Format::Png, at: bytes.len() });
    }
    let mut chunks = Chunks::new(bytes);
    let mut size = None;
    let mut exif = None;
    let mut pictured = false;
    while let Some(chunk) = chunks.next()? {
        match (&chunk.name, size) {
            (b"IHDR", None) => size = Some(header_size(&chunk)?),
            (b"IHDR", Some(_)) => return Err(damaged("the size is given twice", chunk.at)),
            (_, None) => return Err(damaged("the size does not come first", chunk.at)),
            (b"IDAT", _) => pictured = true,
            (b"eXIf", _) if exif.is_none() => exif = Some(chunk.data),
            (name, _) if is_needed(*name) && !KEPT.contains(&name) => {
                return Err(damaged("it needs an extension that is not in the standard", chunk.at));
            }
            _ => {}
        }
    }
    match size {
        Some((width, height)) if pictured => Ok(Facts { width, height, exif }),
        _ => Err(damaged("there is no picture in it", bytes.len())),
    }
}

fn header_size(chunk: &Chunk<'_>) -> Result<(u32, u32), PhotoError> {
    let &[w3, w2, w1, w0, h3, h2, h1, h0, depth, color, compression, filter, interlace] = chunk.data else {
        return Err(damaged("the header has the wrong length", chunk.at));
    };
    let known = matches!((color, depth), (0, 1 | 2 | 4 | 8 | 16) | (3, 1 | 2 | 4 | 8) | (2 | 4 | 6, 8 | 16));
    if !known || compression != 0 || filter != 0 || interlace > 1 {
        return Err(damaged("the header names a coding that is not in the standard", chunk.at));
    }
    let (width, height) = (u32::from_be_bytes([w3, w2, w1, w0]), u32::from_be_bytes([h3, h2, h1, h0]));
    check_size(width, height)?;
    Ok((width, height))
}

/// The same picture with `exif` (a TIFF structure) in place of its EXIF block, and without any
/// chunk that is not in [`KEPT`].
pub(crate) fn rebuild(bytes: &[u8], mut exif: Option<Vec<u8>>) -> Result<Vec<u8>, PhotoError> {
    let mut out = Vec::with_capacity(bytes.len());
    out.extend_from_slice(PNG_SIGNATURE);
    let mut chunks = Chunks::new(bytes);
    while let Some(chunk) = chunks.next()? {
        if &chunk.name == b"eXIf" {
            if let Some(tiff) = exif.take() {
                push(&mut out, b"eXIf", &tiff);
            }
        } else if KEPT.contains(&&chunk.name) {
            out.extend_from_slice(chunk.whole);
        }
    }
    Ok(out)
}

fn push(out: &mut Vec<u8>, name: &[u8; 4], data: &[u8]) {
    let length = u32::try_from(data.len()).expect("a short list of EXIF values is far below 4 GB");
    out.extend_from_slice(&length.to_be_bytes());
    let checked_from = out.len();
    out.extend_from_slice(name);
    out.extend_from_slice(data);
    let sum = crc32fast::hash(&out[checked_from..]);
    out.extend_from_slice(&sum.to_be_bytes());
}
