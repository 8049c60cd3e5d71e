//! No position is left, and nothing else of worth is lost.

use exif::{Context, Field, In, Rational, Tag, Value};
use photo::{inspect, without_location};

use crate::pictures::{
    FILES, SECRET, app1, ascii, contains, decoded, field, jpeg, jpeg_with, png, png_with, profile, reread, tiff,
};

/// Everything a phone might write, with a secret wherever a position could hide.
fn telling() -> Vec<Field> {
    let degrees = |d| Value::Rational(vec![(d, 1).into(), (30, 1).into(), Rational { num: 4242, denom: 100 }]);
    let text = |words: &str| Value::Undefined([b"ASCII\0\0\0SECRET ", words.as_bytes()].concat(), 0);
    vec![
        field(Tag::Orientation, Value::Short(vec![8])),
        field(Tag::DateTimeOriginal, ascii("2026:05:04 07:08:09")),
        field(Tag::OffsetTimeOriginal, ascii("-05:00")),
        field(Tag::ExposureTime, Value::Rational(vec![(1, 125).into()])),
        field(Tag::WhiteBalance, Value::Short(vec![1])),
        field(Tag::ExifVersion, Value::Undefined(b"0232".to_vec(), 0)),
        field(Tag::Make, ascii("SECRET maker")),
        field(Tag::Model, ascii("SECRET model")),
        field(Tag::ImageDescription, ascii("SECRET street")),
        field(Tag::BodySerialNumber, ascii("SECRET 0001")),
        field(Tag::MakerNote, text("maker note")),
        field(Tag::UserComment, text("comment")),
        field(Tag::GPSLatitudeRef, ascii("N")),
        field(Tag::GPSLatitude, degrees(48)),
        field(Tag::GPSLongitudeRef, ascii("E")),
        field(Tag::GPSLongitude, degrees(2)),
        field(Tag::GPSAltitude, Value::Rational(vec![(35, 1).into()])),
        field(Tag::GPSAreaInformation, text("area")),
        field(Tag::InteroperabilityIndex, ascii("R98")),
        // A second directory, as for a thumbnail, can carry a position of its own.
        Field { tag: Tag::GPSMapDatum, ifd_num: In::THUMBNAIL, value: ascii("SECRET datum") },
    ]
}

fn sorted(fields: &[Field]) -> Vec<(Tag, In, String)> {
    // The library also notes where in the block an undefined value stood; that may change.
    let shown = |value: &Value| match value {
        Value::Undefined(bytes, _) => format!("{bytes:?}"),
        other => format!("{other:?}"),
    };
    let mut out: Vec<_> = fields.iter().map(|field| (field.tag, field.ifd_num, shown(&field.value))).collect();
    out.sort_by_key(|(Tag(context, number), ifd, _)| (format!("{context:?}"), *number, ifd.index()));
    out
}

/// The laws for every picture: no GPS value, no secret, the same pixels, profile and header, and
/// nothing more to do the second time.
fn cleaned(name: &str, bytes: &[u8]) -> Vec<u8> {
    assert!(contains(bytes, SECRET), "{name}: the picture tells nothing to begin with");
    let clean = without_location(bytes.to_vec()).expect("the picture is in order");
    assert!(reread(&clean).iter().all(|field| field.tag.context() != Context::Gps), "{name}: GPS is left");
    assert!(!contains(&clean, SECRET), "{name}: a secret is left");
    assert_eq!(inspect(&clean), inspect(bytes), "{name}");
    assert!(decoded(bytes).is_some() && decoded(&clean) == decoded(bytes), "{name}: the pixels differ");
    assert_eq!(profile(&clean), profile(bytes), "{name}: the color profile differs");
    assert_eq!(without_location(clean.clone()).as_ref(), Ok(&clean), "{name}");
    clean
}

#[test]
fn exif_keeps_what_is_listed_with_its_values() {
    let fields = telling();
    let expected = sorted(&fields[..6]);
    for little_endian in [false, true] {
        let jpeg = jpeg_with(&[(0xe1, &app1(&fields, little_endian))]);
        let png = png_with(&[(b"eXIf", &tiff(&fields, little_endian))]);
        for (name, bytes) in [("JPEG", jpeg), ("PNG", png)] {
            assert!(reread(&bytes).iter().any(|field| field.tag == Tag::GPSLatitude));
            assert_eq!(sorted(&reread(&cleaned(name, &bytes))), expected, "{name}");
        }
    }
}

#[test]
fn jpeg_segments_that_can_tell_the_place_are_dropped() {
    let second = jpeg_with(&[(0xe1, &app1(&telling(), true))]);
    let long_xmp =
        [b"http://ns.adobe.com/xmp/extension/\0", [b'0'; 32].as_slice(), b"\0\0\0\x06\0\0\0\0SECRET"].concat();
    let segments: [(&str, u8, &[u8]); 10] = [
        ("XMP", 0xe1, b"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>SECRET</x:xmpmeta>"),
        ("long XMP", 0xe1, &long_xmp),
        ("press record", 0xed, b"8BIM\x04\x04\0\0\0\0\0\x0bSECRET city"),
        ("several pictures", 0xe2, b"MPF\0MM\0*SECRET"),
        ("FlashPix", 0xe2, b"FPXR\0SECRET"),
        ("content credentials", 0xeb, b"JP\0\x01\0\0\0\x01SECRET"),
        ("small preview", 0xe0, b"JFXX\0\x10SECRET"),
        ("unknown", 0xe5, b"SECRET"),
        ("comment", 0xfe, b"SECRET"),
        ("broken EXIF", 0xe1, b"Exif\0\0SECRET"),
    ];
    for (name, marker, payload) in segments {
        let clean = cleaned(name, &jpeg_with(&[(marker, payload)]));
        assert_eq!(clean, jpeg(20, 12), "{name}: the rest is as the encoder wrote it");
    }
    let tails: [(&str, &[u8]); 2] = [("a second picture", &second), ("a video", b"\0\0\0\x18ftypmp42SECRET")];
    for (name, tail) in tails {
        let clean = cleaned(name, &[jpeg(20, 12).as_slice(), tail].concat());
        assert_eq!(clean, jpeg(20, 12), "{name}");
    }
}

#[test]
fn png_chunks_that_can_tell_the_place_are_dropped() {
    let chunks: [(&str, &[u8; 4], &[u8]); 5] = [
        ("XMP", b"iTXt", b"XML:com.adobe.xmp\0\0\0\0\0<x:xmpmeta>SECRET</x:xmpmeta>"),
        ("raw EXIF in a text", b"tEXt", b"Raw profile type exif\0SECRET"),
        ("compressed text", b"zTXt", b"Comment\0\0SECRET"),
        ("unknown", b"prVt", b"SECRET"),
        ("broken EXIF", b"eXIf", b"SECRET"),
    ];
    for (name, kind, data) in chunks {
        let clean = cleaned(name, &png_with(&[(kind, data)]));
        assert_eq!(clean, png(20, 12), "{name}: the rest is as the encoder wrote it");
    }
    let clean = cleaned("tail", &[png(20, 12).as_slice(), b"SECRET"].concat());
    assert_eq!(clean, png(20, 12));
    // An optional chunk with a wrong check sum is not passed on either.
    let mut wrong_sum = png_with(&[(b"tIME", b"SECRET.")]);
    wrong_sum[33 + 8] = b'S';
    wrong_sum[33 + 15] ^= 1;
    assert_eq!(cleaned("wrong check sum", &wrong_sum), png(20, 12));
}

#[test]
fn pictures_that_tell_nothing_are_not_changed() {
    for bytes in [jpeg(20, 12), png(20, 12), jpeg(1, 1), png(333, 17)] {
        assert_eq!(without_location(bytes.clone()), Ok(bytes));
    }
}

#[test]
fn files_of_another_encoder_keep_pixels_profile_and_time() {
    for (name, bytes) in FILES {
        let clean = cleaned(name, bytes);
        assert!(profile(&clean).is_some_and(|profile| profile.len() > 300), "{name}: the profile is there");
        let tags: Vec<_> = sorted(&reread(&clean)).into_iter().map(|(tag, ..)| tag).collect();
        assert_eq!(tags, [Tag::DateTimeOriginal, Tag::OffsetTimeOriginal, Tag::Orientation], "{name}");
    }
}
