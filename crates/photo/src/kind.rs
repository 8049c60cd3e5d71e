//! Tells formats apart by their first bytes; the name of a file is never asked.
//!
//! Signatures: JPEG ITU-T T.81 B.1.1.3 (SOI) and the marker that must follow; PNG third edition
//! 5.2; PDF ISO 32000; TIFF 6.0 section 2; HEIF ISO/IEC 23008-12 brands in an ISO/IEC 14496-12
//! `ftyp` box; the others as commonly published. Grade M (from memory), and the two accepted ones
//! are tested against files written by a general image library.
//!
//! # Why no HEIC
//! Looked at in November 2026 and left out. HEIC is a still picture coded with HEVC (ITU-T H.265),
//! whose patents are licensed by several pools; a free license of the code grants none of them. The
//! kept decoder of old, libheif, is C++ under the LGPL and has to be built or installed apart, which
//! one binary without native libraries cannot have. The decoders in Rust are one under the AGPL,
//! which does not go with our MIT, and two under MIT or Apache 2.0 at versions 0.1 and 0.3: too young
//! for files of strangers. Nor is it needed: the page asks for `image/jpeg` and `image/png` only, and
//! most phones that keep HEIC then hand over JPEG (common behavior of phones, M; not tried here on one). To take it up later: a [`Format`] and a reader beside `jpeg.rs`, and pixels
//! through the same limits in `decode.rs`.

use crate::error::Found;
use crate::header::Format;

/// First bytes of a PNG file.
pub(crate) const PNG_SIGNATURE: &[u8; 8] = b"\x89PNG\r\n\x1a\n";
/// Start-of-image marker and the first byte of the marker after it.
const JPEG_SIGNATURE: &[u8; 3] = b"\xff\xd8\xff";
/// How much of the file is looked at to call it text, in bytes.
const TEXT_SAMPLE: usize = 512;

/// The format of `bytes`, or what they look like instead. A file that breaks off inside the
/// signature of an accepted format counts as that format, so that it is reported as cut short.
pub(crate) fn recognize(bytes: &[u8]) -> Result<Format, Found> {
    if starts(bytes, JPEG_SIGNATURE) {
        Ok(Format::Jpeg)
    } else if starts(bytes, PNG_SIGNATURE) {
        Ok(Format::Png)
    } else {
        Err(refused(bytes))
    }
}

/// Whether `bytes` begin with `signature`, or are cut off within it.
fn starts(bytes: &[u8], signature: &[u8]) -> bool {
    bytes.starts_with(signature) || (!bytes.is_empty() && signature.starts_with(bytes))
}

fn refused(bytes: &[u8]) -> Found {
    const FIXED: &[(&[u8], Found)] = &[
        (b"GIF87a", Found::Gif),
        (b"GIF89a", Found::Gif),
        (b"%PDF-", Found::Pdf),
        (b"II*\0", Found::Tiff),
        (b"MM\0*", Found::Tiff),
        (b"BM", Found::Bmp),
        (b"\xff\x0a", Found::JpegXl),
        (b"\0\0\0\x0cJXL \r\n\x87\n", Found::JpegXl),
        (b"\0\0\0\x0cjP  \r\n\x87\n", Found::Jpeg2000),
        (b"\xff\x4f\xff\x51", Found::Jpeg2000),
    ];
    if bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
        return Found::WebP;
    }
    if bytes.get(4..8) == Some(b"ftyp") {
        return media_box(bytes.get(8..12).unwrap_or_default());
    }
    // "BM" is also the start of words, so text is asked first.
    let plain = is_text(bytes);
    match FIXED.iter().find(|(signature, _)| bytes.starts_with(signature)) {
        Some((_, Found::Bmp)) if plain => Found::Text,
        Some((_, found)) => *found,
        None if plain => Found::Text,
        None => Found::Unknown,
    }
}

/// The leading brand of an ISO media file tells still pictures from videos.
fn media_box(brand: &[u8]) -> Found {
    match brand {
        b"heic" | b"heix" | b"heim" | b"heis" | b"hevc" | b"hevx" | b"mif1" | b"msf1" => Found::Heic,
        b"avif" | b"avis" => Found::Avif,
        b"jp2 " => Found::Jpeg2000,
        _ => Found::Video,
    }
}

/// UTF-8 without control characters other than white space, or marked as UTF-16.
fn is_text(bytes: &[u8]) -> bool {
    if bytes.starts_with(b"\xff\xfe") || bytes.starts_with(b"\xfe\xff") {
        return true;
    }
    let sample = &bytes[..bytes.len().min(TEXT_SAMPLE)];
    let valid = match std::str::from_utf8(sample) {
        Ok(text) => text,
        // A character may be cut in two at the end of the sample.
        Err(error) if error.error_len().is_none() => {
            std::str::from_utf8(&sample[..error.valid_up_to()]).unwrap_or_default()
        }
        Err(_) => return false,
    };
    !valid.is_empty() && valid.chars().all(|c| !c.is_control() || matches!(c, '\t' | '\n' | '\r' | '\u{c}'))
}
