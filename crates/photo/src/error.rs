//! Why a file was refused, and what would be accepted instead.

use std::fmt;

use crate::header::{Format, MAX_BYTES, MAX_PIXELS};

/// Why a file is not accepted as a photograph.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum PhotoError {
    /// There is nothing in the file.
    #[error("the picture file is empty; send the picture again")]
    Empty,
    /// The file is larger than [`MAX_BYTES`].
    #[error("the picture file has {bytes} bytes; at most {MAX_BYTES} are accepted")]
    TooManyBytes {
        /// Size of the file, in bytes.
        bytes: usize,
    },
    /// The content is neither JPEG nor PNG, whatever the file is called.
    #[error("the file holds {found}, not a JPEG or PNG picture; send a JPEG or PNG ({})", found.way_out())]
    NotAccepted {
        /// What the content looks like.
        found: Found,
    },
    /// The picture has more pixels than [`MAX_PIXELS`].
    #[error(
        "the picture is {width} by {height} pixels; at most {MAX_PIXELS} pixels in all are \
         accepted (8192 by 6144); send it at a smaller size"
    )]
    TooManyPixels {
        /// Stored width, in pixels, before any turning.
        width: u32,
        /// Stored height, in pixels, before any turning.
        height: u32,
    },
    /// A side of the picture is zero pixels long.
    #[error("the picture is {width} by {height} pixels; each side must be at least 1")]
    ZeroSize {
        /// Stored width, in pixels, before any turning.
        width: u32,
        /// Stored height, in pixels, before any turning.
        height: u32,
    },
    /// The file stops before the picture does, as after a broken-off transfer.
    #[error("the {format} picture is cut short: it ends at byte {at}, before its end mark; send it again whole")]
    CutShort {
        /// The format it started as.
        format: Format,
        /// Number of bytes that are there.
        at: usize,
    },
    /// A true JPEG, in a variant that cameras do not write and decoders do not read.
    #[error("the JPEG picture uses {what}; accepted are ordinary or progressive JPEG pictures of 8 bits a channel")]
    RareJpeg {
        /// The variant, in a few words.
        what: &'static str,
    },
    /// The file contradicts its own format.
    #[error("the {format} picture is damaged: {what}, at byte {at}; send it again, or save it anew as JPEG or PNG")]
    Damaged {
        /// The format it claims to be.
        format: Format,
        /// What is wrong, in a few words.
        what: &'static str,
        /// Where, in bytes from the start of the file.
        at: usize,
    },
    /// The file is whole, but its pixels cannot be read.
    #[error("the {format} picture cannot be decoded: {what}; send it again, or save it anew as JPEG or PNG")]
    Undecodable {
        /// The format of the file.
        format: Format,
        /// What the decoder says.
        what: String,
    },
    /// The picture holds no color that can be measured.
    #[error("the picture is {what}; to measure color, send the photograph as the camera wrote it, in RGB color")]
    NoColor {
        /// How it is coded, in a few words.
        what: &'static str,
    },
    /// Some of the picture is see-through, so its color depends on what lies behind.
    #[error("the picture has see-through parts; to measure color, send the photograph as the camera wrote it")]
    SeeThrough,
    /// A count of bytes that does not fit the size.
    #[error("{bytes} bytes do not make a picture of {width} by {height} pixels with 3 bytes each")]
    WrongLength {
        /// Bytes given.
        bytes: usize,
        /// Width, in pixels.
        width: u32,
        /// Height, in pixels.
        height: u32,
    },
    /// A drawing could not be written.
    #[error("the drawing could not be written: {what}")]
    NotWritten {
        /// What the encoder says.
        what: String,
    },
}

/// What a refused file looks like, judged by its first bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Found {
    /// HEIF family coded with HEVC (HEIC), the space-saving form of many phones.
    Heic,
    /// HEIF family coded with AV1.
    Avif,
    /// GIF, still or moving.
    Gif,
    /// WebP.
    WebP,
    /// TIFF, or a camera's raw form built on it.
    Tiff,
    /// BMP bitmap.
    Bmp,
    /// JPEG XL.
    JpegXl,
    /// JPEG 2000.
    Jpeg2000,
    /// A video of the MP4 family.
    Video,
    /// A PDF document.
    Pdf,
    /// Text of some kind: a note, a web page, an SVG drawing.
    Text,
    /// None of the above.
    Unknown,
}

impl Found {
    /// How to come to a JPEG from it.
    fn way_out(self) -> &'static str {
        match self {
            // Phones keep HEIC for themselves and hand on JPEG where JPEG is asked for.
            Found::Heic | Found::Avif => {
                "add the photograph on the slab's page, where most phones hand over JPEG by themselves; or set the camera \
                 to the most compatible format, JPEG; or share the picture as JPEG"
            }
            Found::Video => "take a photograph, or save one picture of the video as JPEG",
            Found::Text | Found::Pdf | Found::Unknown => "choose the photograph itself",
            _ => "set the camera to save JPEG, or export the picture as JPEG",
        }
    }
}

impl fmt::Display for Found {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Found::Heic => "a HEIC picture",
            Found::Avif => "an AVIF picture",
            Found::Gif => "a GIF picture",
            Found::WebP => "a WebP picture",
            Found::Tiff => "a TIFF or raw camera picture",
            Found::Bmp => "a BMP picture",
            Found::JpegXl => "a JPEG XL picture",
            Found::Jpeg2000 => "a JPEG 2000 picture",
            Found::Video => "a video",
            Found::Pdf => "a PDF document",
            Found::Text => "text",
            Found::Unknown => "something unknown",
        })
    }
}
