//! The whole space of EXIF tags, swept against the names of the EXIF library.

use std::collections::BTreeSet;

use exif::{Context, In, Tag, Value};
use photo::without_location;

use crate::pictures::{field, png_with, reread, tiff};

const KEPT: [Tag; 43] = [
    Tag::Orientation,
    Tag::XResolution,
    Tag::YResolution,
    Tag::ResolutionUnit,
    Tag::DateTime,
    Tag::YCbCrPositioning,
    Tag::ExposureTime,
    Tag::FNumber,
    Tag::ExposureProgram,
    Tag::PhotographicSensitivity,
    Tag::SensitivityType,
    Tag::ExifVersion,
    Tag::DateTimeOriginal,
    Tag::DateTimeDigitized,
    Tag::OffsetTime,
    Tag::OffsetTimeOriginal,
    Tag::OffsetTimeDigitized,
    Tag::ComponentsConfiguration,
    Tag::ShutterSpeedValue,
    Tag::ApertureValue,
    Tag::BrightnessValue,
    Tag::ExposureBiasValue,
    Tag::MeteringMode,
    Tag::LightSource,
    Tag::Flash,
    Tag::FocalLength,
    Tag::SubSecTime,
    Tag::SubSecTimeOriginal,
    Tag::SubSecTimeDigitized,
    Tag::FlashpixVersion,
    Tag::ColorSpace,
    Tag::PixelXDimension,
    Tag::PixelYDimension,
    Tag::ExposureMode,
    Tag::WhiteBalance,
    Tag::DigitalZoomRatio,
    Tag::FocalLengthIn35mmFilm,
    Tag::SceneCaptureType,
    Tag::GainControl,
    Tag::Contrast,
    Tag::Saturation,
    Tag::Sharpness,
    Tag::Gamma,
];

fn key(tag: Tag) -> (bool, u16) {
    (tag.context() == Context::Exif, tag.number())
}

#[test]
fn of_all_tags_there_can_be_exactly_the_listed_ones_stay() {
    let mut left = BTreeSet::new();
    let mut written = 0;
    for context in [Context::Tiff, Context::Exif, Context::Gps, Context::Interop] {
        for first in (0..=u16::MAX).step_by(8192) {
            let fields: Vec<_> =
                (first..=first + 8191).map(|number| field(Tag(context, number), Value::Short(vec![1]))).collect();
            written += fields.len();
            let clean = without_location(png_with(&[(b"eXIf", &tiff(&fields, true))])).unwrap();
            for field in reread(&clean) {
                assert!(matches!(field.tag.context(), Context::Tiff | Context::Exif), "{}", field.tag);
                assert_eq!(field.ifd_num, In::PRIMARY);
                left.insert(key(field.tag));
            }
        }
    }
    assert_eq!(written, 4 * 65536);
    assert_eq!(left, KEPT.into_iter().map(key).collect());
}

#[test]
fn long_values_are_not_kept_under_any_listed_tag() {
    // 32 bytes are the most; a listed tag is no hiding place for a longer text.
    // Orientation stays only as the one number it is, so it is left out here.
    for (length, stays) in [(32, 1), (33, 0), (60_000, 0)] {
        for tag in KEPT.into_iter().filter(|tag| *tag != Tag::Orientation) {
            let fields = [field(tag, Value::Undefined(vec![b'x'; length], 0))];
            let clean = without_location(png_with(&[(b"eXIf", &tiff(&fields, false))])).unwrap();
            assert_eq!(reread(&clean).len(), stays, "{tag} with {length} bytes");
        }
    }
}
