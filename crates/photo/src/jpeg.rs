//! The segments of a JPEG file: finding the size and the EXIF block, and leaving segments out.
//!
//! ITU-T T.81 annex B (grade M for the clause numbers). Why not a library: the kept crate for
//! editing segments holds every segment in memory at once (tens of times the file, for a hostile
//! one) and carries over whatever follows the first scan, where phones append second pictures with
//! a position of their own.

use crate::error::PhotoError;
use crate::header::{Facts, Format, check_size};

const SOI: u8 = 0xd8;
const EOI: u8 = 0xd9;
const SOS: u8 = 0xda;
const APP0: u8 = 0xe0;
const APP1: u8 = 0xe1;
/// What an APP1 segment with an EXIF block starts with.
const EXIF_NAME: &[u8] = b"Exif\0\0";

/// One marker segment. Borrowed, so a walk needs no memory of its own.
struct Segment<'a> {
    marker: u8,
    /// Where the marker stands in the file, in bytes.
    at: usize,
    /// What follows the length field.
    payload: &'a [u8],
    /// The compressed data after a start of scan; empty for every other segment.
    scan: &'a [u8],
}

/// The segments between start and end of the image.
struct Segments<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl<'a> Segments<'a> {
    fn new(bytes: &'a [u8]) -> Self {
        Self { bytes, at: 2 }
    }

    fn cut_short(&self) -> PhotoError {
        PhotoError::CutShort { format: Format::Jpeg, at: self.bytes.len() }
    }

    /// The next segment, or nothing at the end of the image.
    fn next(&mut self) -> Result<Option<Segment<'a>>, PhotoError> {
        let at = next_marker(self.bytes, self.at).ok_or_else(|| self.cut_short())?;
        match self.bytes[at + 1] {
            EOI => Ok(None),
            SOI => Err(damaged("a second picture starts inside the first", at)),
            0xde | 0xdf => Err(PhotoError::RareJpeg { what: "hierarchical coding" }),
            0x01..=0xbf | 0xc8 | 0xf0..=0xfd => Err(damaged("it has a marker that is reserved", at)),
            marker => self.segment(marker, at).map(Some),
        }
    }

    fn segment(&mut self, marker: u8, at: usize) -> Result<Segment<'a>, PhotoError> {
        let start = at + 4;
        let length = self.bytes.get(at + 2..start).ok_or_else(|| self.cut_short())?;
        // The length counts its own two bytes.
        let length = usize::from(u16::from_be_bytes([length[0], length[1]]));
        let length = length.checked_sub(2).ok_or_else(|| damaged("a segment is shorter than its own length", at))?;
        let end = start + length;
        let payload = self.bytes.get(start..end).ok_or_else(|| self.cut_short())?;
        self.at = end;
        if marker == SOS {
            self.at = next_marker(self.bytes, end).ok_or_else(|| self.cut_short())?;
        }
        let scan = &self.bytes[end..self.at];
        Ok(Segment { marker, at, payload, scan })
    }
}

/// Where the next marker stands that is neither a stuffed zero, fill, nor a restart inside a scan.
/// Stray bytes before it are passed over, as decoders do.
fn next_marker(bytes: &[u8], from: usize) -> Option<usize> {
    let mut at = from;
    loop {
        at += bytes.get(at..)?.iter().position(|&byte| byte == 0xff)?;
        match bytes.get(at + 1)? {
            0xff => at += 1,
            0x00 | 0xd0..=0xd7 => at += 2,
            _ => return Some(at),
        }
    }
}

fn damaged(what: &'static str, at: usize) -> PhotoError {
    PhotoError::Damaged { format: Format::Jpeg, what, at }
}

/// Size and EXIF block of a JPEG file that is whole.
pub(crate) fn read(bytes: &[u8]) -> Result<Facts<'_>, PhotoError> {
    let mut segments = Segments::new(bytes);
    let mut size = None;
    let mut exif = None;
    let mut scanned = false;
    while let Some(segment) = segments.next()? {
        if is_frame(segment.marker) {
            if size.is_some() {
                return Err(damaged("the size is given twice", segment.at));
            }
            size = Some(frame_size(&segment)?);
        } else if segment.marker == SOS {
            if size.is_none() {
                return Err(damaged("the picture starts before its size is given", segment.at));
            }
            scanned = true;
        } else if scanned && segment.marker >= APP0 {
            // Allowed by the standard, but written by no camera, and decoders do not agree on it.
            return Err(PhotoError::RareJpeg { what: "other data between its scans" });
        } else if exif.is_none() {
            exif = exif_block(&segment);
        }
    }
    match size {
        Some((width, height)) if scanned => Ok(Facts { width, height, exif }),
        _ => Err(damaged("there is no picture in it", bytes.len())),
    }
}

/// Number of color channels of a JPEG file that [`read`] accepted.
pub(crate) fn channels(bytes: &[u8]) -> Option<u8> {
    let mut segments = Segments::new(bytes);
    while let Ok(Some(segment)) = segments.next() {
        if is_frame(segment.marker) {
            return segment.payload.get(5).copied();
        }
    }
    None
}

/// The EXIF block in an APP1 segment.
fn exif_block<'a>(segment: &Segment<'a>) -> Option<&'a [u8]> {
    if segment.marker == APP1 { segment.payload.strip_prefix(EXIF_NAME) } else { None }
}

/// Start-of-frame markers: 0xC0 to 0xCF but for tables (C4), the reserved C8 and arithmetic
/// conditioning (CC).
fn is_frame(marker: u8) -> bool {
    matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc)
}

fn frame_size(segment: &Segment<'_>) -> Result<(u32, u32), PhotoError> {
    let &[precision, h1, h0, w1, w0, channels, ..] = segment.payload else {
        return Err(damaged("the segment that gives the size is too short", segment.at));
    };
    let what = match (segment.marker, precision, channels) {
        (0xc3 | 0xc7 | 0xcb | 0xcf, ..) => Some("lossless coding"),
        (0xc5 | 0xc6, ..) => Some("hierarchical coding"),
        (0xc9..=0xce, ..) => Some("arithmetic coding"),
        (_, 8, 1 | 3 | 4) => None,
        (_, 8, _) => Some("an unusual number of color channels"),
        _ => Some("more than 8 bits a channel"),
    };
    if let Some(what) = what {
        return Err(PhotoError::RareJpeg { what });
    }
    let (width, height) = (u32::from(u16::from_be_bytes([w1, w0])), u32::from(u16::from_be_bytes([h1, h0])));
    check_size(width, height)?;
    Ok((width, height))
}

/// Whether a segment decides how the pixels look. The application segments that do: the JFIF
/// header, an ICC profile, and the note on the color transform in APP14.
fn is_kept(segment: &Segment<'_>) -> bool {
    match segment.marker {
        // Frames, Huffman and arithmetic tables; scan, quantization, line count, restart interval.
        0xc0..=0xcf | SOS | 0xdb..=0xdd => true,
        APP0 => segment.payload.starts_with(b"JFIF\0"),
        0xe2 => segment.payload.starts_with(b"ICC_PROFILE\0"),
        0xee => segment.payload.starts_with(b"Adobe"),
        _ => false,
    }
}

/// The same picture with `exif` (a TIFF structure) in place of its EXIF block, and without any
/// segment that does not decide the pixels.
pub(crate) fn rebuild(bytes: &[u8], mut exif: Option<Vec<u8>>) -> Result<Vec<u8>, PhotoError> {
    let mut out = Vec::with_capacity(bytes.len());
    out.extend_from_slice(&[0xff, SOI]);
    let mut segments = Segments::new(bytes);
    while let Some(segment) = segments.next()? {
        if exif_block(&segment).is_some() {
            if let Some(tiff) = exif.take() {
                push(&mut out, APP1, &[EXIF_NAME, &tiff]);
            }
        } else if is_kept(&segment) {
            push(&mut out, segment.marker, &[segment.payload]);
            out.extend_from_slice(segment.scan);
        }
    }
    out.extend_from_slice(&[0xff, EOI]);
    Ok(out)
}

fn push(out: &mut Vec<u8>, marker: u8, parts: &[&[u8]]) {
    let length = 2 + parts.iter().map(|part| part.len()).sum::<usize>();
    let length =
        u16::try_from(length).expect("a payload read from a segment, or a short list of EXIF values, fits one");
    out.extend_from_slice(&[0xff, marker]);
    out.extend_from_slice(&length.to_be_bytes());
    for part in parts {
        out.extend_from_slice(part);
    }
}
