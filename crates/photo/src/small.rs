//! A small upright copy for lists.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::{ExtendedColorType, ImageEncoder, RgbImage, imageops};

use crate::decode::Decoded;
use crate::error::PhotoError;

/// Quality of the copy: for looking, never for measuring.
const QUALITY: u8 = 80;

/// A JPEG of at most so many pixels on its longer side, upright, with nothing but the picture in it.
///
/// # Errors
/// Only if the JPEG cannot be written.
pub fn small(picture: &Decoded, most: u32) -> Result<Vec<u8>, PhotoError> {
    let (width, height) = (picture.width(), picture.height());
    let longer = width.max(height).max(1);
    let side = |side: u32| {
        let scaled = u64::from(side) * u64::from(most.min(longer)) / u64::from(longer);
        u32::try_from(scaled).unwrap_or(most).max(1)
    };
    let rows: Vec<u8> = (0..height).flat_map(|y| picture.row(y).iter().flatten().copied()).collect();
    let whole = RgbImage::from_raw(width, height, rows)
        .ok_or_else(|| PhotoError::NotWritten { what: "the picture has no pixels".to_owned() })?;
    let copy = imageops::thumbnail(&whole, side(width), side(height));
    let mut out = Cursor::new(Vec::new());
    JpegEncoder::new_with_quality(&mut out, QUALITY)
        .write_image(copy.as_raw(), copy.width(), copy.height(), ExtendedColorType::Rgb8)
        .map_err(|error| PhotoError::NotWritten { what: error.to_string() })?;
    Ok(out.into_inner())
}
