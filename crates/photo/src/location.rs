//! Hands a photograph on without saying where it was taken.

use crate::error::PhotoError;
use crate::header::{Format, inspect};
use crate::{exif, jpeg, png};

/// The same picture without its position. Pixels are not decoded: every byte that decides them is
/// copied as it is, and so are the color profile and the other color data.
///
/// Kept of the rest: orientation, the times, and the exposure values that help to judge a color
/// (the list is in `exif.rs`). Dropped: GPS, XMP, maker notes, thumbnails, captions and comments,
/// press (IPTC) records, camera make, model and serial number, data of unknown use, and everything
/// after the picture's end mark, where phones put second pictures and short videos that carry a
/// position of their own. An EXIF block that cannot be read is dropped whole.
///
/// Doing it twice changes nothing more.
///
/// # Errors
/// Whatever [`inspect`] refuses is refused here too, for the same reason.
pub fn without_location(bytes: Vec<u8>) -> Result<Vec<u8>, PhotoError> {
    let format = inspect(&bytes)?.format;
    match format {
        Format::Jpeg => {
            let kept = jpeg::read(&bytes)?.exif.and_then(exif::read).and_then(|exif| exif.write());
            jpeg::rebuild(&bytes, kept)
        }
        Format::Png => {
            let kept = png::read(&bytes)?.exif.and_then(exif::read).and_then(|exif| exif.write());
            png::rebuild(&bytes, kept)
        }
    }
}
