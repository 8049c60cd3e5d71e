//! What a photograph says of itself before it is decoded.

use std::fmt;

use jiff::civil::DateTime;
use jiff::tz::Offset;

use crate::error::PhotoError;
use crate::{jpeg, kind, png};

/// Largest file accepted, in bytes: 40 megabytes.
pub const MAX_BYTES: usize = 40_000_000;

/// Most pixels accepted: 48 × 2²⁰, which is 8192 by 6144. Counted in powers of two because sensors
/// sold as 48 megapixels give a little more than 48 million (8064 by 6048 is 48.8 million).
pub const MAX_PIXELS: u64 = 48 << 20;

/// The picture formats that are accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Format {
    /// JPEG (ITU-T T.81), ordinary or progressive.
    Jpeg,
    /// PNG.
    Png,
}

impl fmt::Display for Format {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Format::Jpeg => "JPEG",
            Format::Png => "PNG",
        })
    }
}

/// How the stored picture has to be turned to be seen upright: EXIF tag 0x0112, values 1 to 8
/// (grade M; which of them swap the sides is tested against a general image library).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Orientation {
    /// 1: as stored. Also when the file says nothing, or nonsense.
    #[default]
    Upright,
    /// 2: mirrored left to right.
    Mirrored,
    /// 3: turned by half a turn.
    HalfTurn,
    /// 4: mirrored top to bottom.
    MirroredUpsideDown,
    /// 5: mirrored left to right, then turned a quarter turn counter-clockwise.
    MirroredQuarterLeft,
    /// 6: to be turned a quarter turn clockwise.
    QuarterRight,
    /// 7: mirrored left to right, then turned a quarter turn clockwise.
    MirroredQuarterRight,
    /// 8: to be turned a quarter turn counter-clockwise.
    QuarterLeft,
}

impl Orientation {
    /// From the EXIF value; anything but 1 to 8 is taken as upright, as viewers do.
    #[must_use]
    pub fn from_exif(value: u32) -> Self {
        match value {
            2 => Self::Mirrored,
            3 => Self::HalfTurn,
            4 => Self::MirroredUpsideDown,
            5 => Self::MirroredQuarterLeft,
            6 => Self::QuarterRight,
            7 => Self::MirroredQuarterRight,
            8 => Self::QuarterLeft,
            _ => Self::Upright,
        }
    }

    /// The EXIF value, 1 to 8.
    #[must_use]
    pub fn exif(self) -> u8 {
        match self {
            Self::Upright => 1,
            Self::Mirrored => 2,
            Self::HalfTurn => 3,
            Self::MirroredUpsideDown => 4,
            Self::MirroredQuarterLeft => 5,
            Self::QuarterRight => 6,
            Self::MirroredQuarterRight => 7,
            Self::QuarterLeft => 8,
        }
    }

    /// Whether width and height change places when the picture is turned upright.
    #[must_use]
    pub fn swaps_sides(self) -> bool {
        self.exif() >= 5
    }
}

/// When the shutter was released, by the camera's own clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Taken {
    /// EXIF `DateTimeOriginal`: the camera's wall-clock time, to the second, in no zone.
    pub local: DateTime,
    /// EXIF `OffsetTimeOriginal`: that clock's distance from UTC, where the camera wrote it.
    pub offset: Option<Offset>,
}

/// What a photograph says of itself. The camera's make, model and serial number are not read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Header {
    /// The format, by content.
    pub format: Format,
    /// Width of the upright picture, in pixels, 1 or more.
    pub width: u32,
    /// Height of the upright picture, in pixels, 1 or more.
    pub height: u32,
    /// How the stored picture has to be turned to be upright.
    pub orientation: Orientation,
    /// When it was taken, if the camera wrote a date that exists.
    pub taken: Option<Taken>,
}

/// What a format's reader finds in the file: the stored size and the EXIF block, unread.
pub(crate) struct Facts<'a> {
    /// Stored width, in pixels.
    pub(crate) width: u32,
    /// Stored height, in pixels.
    pub(crate) height: u32,
    /// The EXIF block as a TIFF structure, without the container's prefix.
    pub(crate) exif: Option<&'a [u8]>,
}

/// Reads what a photograph says of itself, without decoding it. The file is walked to its end
/// mark, so a broken-off transfer is noticed here and not when the color is measured.
///
/// # Errors
/// [`PhotoError`]: empty, too large in bytes or pixels, a side of zero, neither JPEG nor PNG by
/// content, cut short, damaged, or a JPEG variant that decoders do not read.
///
/// ```
/// use photo::{Found, PhotoError, inspect};
/// let refused = inspect(b"GIF89a....");
/// assert_eq!(refused, Err(PhotoError::NotAccepted { found: Found::Gif }));
/// ```
pub fn inspect(bytes: &[u8]) -> Result<Header, PhotoError> {
    if bytes.is_empty() {
        return Err(PhotoError::Empty);
    }
    if bytes.len() > MAX_BYTES {
        return Err(PhotoError::TooManyBytes { bytes: bytes.len() });
    }
    let format = kind::recognize(bytes).map_err(|found| PhotoError::NotAccepted { found })?;
    let Facts { width, height, exif } = match format {
        Format::Jpeg => jpeg::read(bytes)?,
        Format::Png => png::read(bytes)?,
    };
    let exif = exif.and_then(crate::exif::read).unwrap_or_default();
    let orientation = exif.orientation();
    let (width, height) = if orientation.swaps_sides() { (height, width) } else { (width, height) };
    Ok(Header { format, width, height, orientation, taken: exif.taken() })
}

/// Refuses a stored size of nothing, or of more than [`MAX_PIXELS`]; called by the format's
/// reader as soon as it knows the size, before it walks the rest.
pub(crate) fn check_size(width: u32, height: u32) -> Result<(), PhotoError> {
    if width == 0 || height == 0 {
        return Err(PhotoError::ZeroSize { width, height });
    }
    if u64::from(width) * u64::from(height) > MAX_PIXELS {
        return Err(PhotoError::TooManyPixels { width, height });
    }
    Ok(())
}
