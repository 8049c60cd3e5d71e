//! From a file to pixels, bounded in memory and turned upright.
//!
//! The size is checked in the header ([`inspect`]) before anything is allocated. What is needed
//! beyond the decoded picture (3 bytes a pixel) is one byte a pixel while it is turned; a PNG of 16
//! bits a channel needs its own 8 bytes a pixel, and a progressive JPEG 6, while they are decoded.

use std::io::Cursor;

use image::codecs::{jpeg::JpegDecoder, png::PngDecoder};
use image::{ColorType, DynamicImage, ImageDecoder, ImageError, Limits};

use crate::error::PhotoError;
use crate::header::{Format, Header, MAX_PIXELS, Orientation, check_size, inspect};
use crate::jpeg;

/// An upright picture as red, green and blue bytes, read as sRGB. A color profile in the file is
/// not applied: a wide-gamut photograph shows a little less chroma than it should.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Decoded {
    width: u32,
    height: u32,
    pixels: Vec<u8>,
}

impl Decoded {
    /// From red, green and blue by byte, row by row from the top.
    ///
    /// # Errors
    /// A side of zero, more than [`MAX_PIXELS`], or a count of bytes that is not 3 a pixel.
    pub fn from_rgb(width: u32, height: u32, pixels: Vec<u8>) -> Result<Self, PhotoError> {
        check_size(width, height)?;
        if pixels.len() as u64 != 3 * u64::from(width) * u64::from(height) {
            return Err(PhotoError::WrongLength { bytes: pixels.len(), width, height });
        }
        Ok(Self { width, height, pixels })
    }

    /// Width, in pixels, 1 or more.
    #[must_use]
    pub fn width(&self) -> u32 {
        self.width
    }

    /// Height, in pixels, 1 or more.
    #[must_use]
    pub fn height(&self) -> u32 {
        self.height
    }

    /// Red, green, blue by byte, row by row from the top.
    #[must_use]
    pub fn pixels(&self) -> &[u8] {
        &self.pixels
    }

    /// One row of pixels, `y` below the height.
    pub(crate) fn row(&self, y: u32) -> &[[u8; 3]] {
        let width = self.width as usize;
        &self.pixels.as_chunks::<3>().0[y as usize * width..][..width]
    }
}

/// Decodes a photograph and turns it upright as its header says ([`Header::orientation`]).
///
/// # Errors
/// Everything that [`inspect`] refuses; then pixels that cannot be read, grayscale and CMYK
/// pictures (no color to measure), and pictures with see-through parts.
pub fn decode(bytes: &[u8]) -> Result<Decoded, PhotoError> {
    let header = inspect(bytes)?;
    let image = match header.format {
        Format::Jpeg => from_jpeg(bytes, &header)?,
        Format::Png => from_png(bytes, &header)?,
    };
    let (width, height) = (image.width(), image.height());
    let rgb = match image {
        DynamicImage::ImageRgb8(rgb) => rgb,
        other => {
            if other.color().has_alpha() && is_see_through(&other) {
                return Err(PhotoError::SeeThrough);
            }
            other.into_rgb8()
        }
    };
    Decoded::from_rgb(width, height, rgb.into_raw()).map(|stored| turned(stored, header.orientation))
}

fn from_jpeg(bytes: &[u8], header: &Header) -> Result<DynamicImage, PhotoError> {
    match jpeg::channels(bytes) {
        Some(1) => return Err(PhotoError::NoColor { what: "grayscale" }),
        Some(4) => return Err(PhotoError::NoColor { what: "in printing colors (CMYK)" }),
        _ => {}
    }
    let decoder = JpegDecoder::new(Cursor::new(bytes)).map_err(|error| undecodable(Format::Jpeg, &error))?;
    read(decoder, header)
}

fn from_png(bytes: &[u8], header: &Header) -> Result<DynamicImage, PhotoError> {
    let decoder =
        PngDecoder::with_limits(Cursor::new(bytes), limits()).map_err(|error| undecodable(Format::Png, &error))?;
    if matches!(decoder.color_type(), ColorType::L8 | ColorType::L16 | ColorType::La8 | ColorType::La16) {
        return Err(PhotoError::NoColor { what: "grayscale" });
    }
    read(decoder, header)
}

/// Room for the most pixels at 8 bytes each, and what a decoder needs besides.
fn limits() -> Limits {
    let mut limits = Limits::default();
    limits.max_alloc = Some(MAX_PIXELS * 8 + (64 << 20));
    limits
}

fn read(mut decoder: impl ImageDecoder, header: &Header) -> Result<DynamicImage, PhotoError> {
    let failed = |error: ImageError| undecodable(header.format, &error);
    decoder.set_limits(limits()).map_err(failed)?;
    let (width, height) = decoder.dimensions();
    check_size(width, height)?;
    DynamicImage::from_decoder(decoder).map_err(failed)
}

fn undecodable(format: Format, error: &ImageError) -> PhotoError {
    PhotoError::Undecodable { format, what: error.to_string() }
}

fn is_see_through(image: &DynamicImage) -> bool {
    match image {
        DynamicImage::ImageRgba8(rgba) => rgba.pixels().any(|pixel| pixel.0[3] != u8::MAX),
        DynamicImage::ImageRgba16(rgba) => rgba.pixels().any(|pixel| pixel.0[3] >> 8 != 0xff),
        _ => true,
    }
}

/// Turned upright one channel at a time, so that only one byte a pixel is held twice.
fn turned(stored: Decoded, orientation: Orientation) -> Decoded {
    if orientation == Orientation::Upright {
        return stored;
    }
    let Decoded { width, height, mut pixels } = stored;
    let (old_width, old_height) = (width as usize, height as usize);
    let swaps = orientation.swaps_sides();
    let (new_width, new_height) = if swaps { (old_height, old_width) } else { (old_width, old_height) };
    // Whether the upright picture runs against the stored one along the stored width and height.
    let (flip_x, flip_y) = match orientation {
        Orientation::Upright | Orientation::MirroredQuarterLeft => (false, false),
        Orientation::Mirrored | Orientation::QuarterLeft => (true, false),
        Orientation::HalfTurn | Orientation::MirroredQuarterRight => (true, true),
        Orientation::MirroredUpsideDown | Orientation::QuarterRight => (false, true),
    };
    let mut plane = vec![0; old_width * old_height];
    for channel in 0..3 {
        for (value, pixel) in plane.iter_mut().zip(pixels.as_chunks::<3>().0) {
            *value = pixel[channel];
        }
        for (y, row) in pixels.as_chunks_mut::<3>().0.chunks_exact_mut(new_width).enumerate().take(new_height) {
            for (x, pixel) in row.iter_mut().enumerate() {
                let (along, across) = if swaps { (y, x) } else { (x, y) };
                let old_x = if flip_x { old_width - 1 - along } else { along };
                let old_y = if flip_y { old_height - 1 - across } else { across };
                pixel[channel] = plane[old_y * old_width + old_x];
            }
        }
    }
    let size = |side: usize| u32::try_from(side).expect("the sides are those of the stored picture");
    Decoded { width: size(new_width), height: size(new_height), pixels }
}
