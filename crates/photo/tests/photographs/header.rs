//! What `inspect` reads, against what the libraries wrote and read.

use exif::{Tag, Value};
use photo::{Format, Orientation, Taken, inspect, without_location};

use crate::pictures::{FILES, app1, ascii, decoded, field, jpeg, jpeg_with, png, png_with, tiff};

#[test]
fn size_and_format_come_from_the_content() {
    for (width, height) in [(1, 1), (20, 12), (17, 333)] {
        for (bytes, format) in [(jpeg(width, height), Format::Jpeg), (png(width, height), Format::Png)] {
            let header = inspect(&bytes).unwrap();
            assert_eq!((header.format, header.width, header.height), (format, width, height));
            assert_eq!((header.orientation, header.taken), (Orientation::Upright, None));
        }
    }
}

#[test]
fn the_upright_size_agrees_with_the_image_library() {
    for number in 1..=8u16 {
        for little_endian in [false, true] {
            let fields = [field(Tag::Orientation, Value::Short(vec![number]))];
            let jpeg = jpeg_with(&[(0xe1, &app1(&fields, little_endian))]);
            let png = png_with(&[(b"eXIf", &tiff(&fields, little_endian))]);
            for bytes in [jpeg, png] {
                let header = inspect(&bytes).unwrap();
                let upright = decoded(&bytes).unwrap();
                assert_eq!((header.width, header.height), (upright.width(), upright.height()), "orientation {number}");
                assert_eq!(u16::from(header.orientation.exif()), number);
                assert_eq!(header.orientation, Orientation::from_exif(u32::from(number)));
            }
        }
    }
}

#[test]
fn nonsense_orientations_are_upright() {
    let values = [
        Value::Short(vec![0]),
        Value::Short(vec![9]),
        Value::Short(vec![65535]),
        Value::Long(vec![6]),
        Value::Short(vec![6, 6]),
        Value::SByte(vec![6]),
        ascii("6"),
    ];
    for value in values {
        let fields = [field(Tag::Orientation, value)];
        let header = inspect(&jpeg_with(&[(0xe1, &app1(&fields, false))])).unwrap();
        assert_eq!((header.orientation, header.width), (Orientation::Upright, 20), "{fields:?}");
    }
}

/// Written time and offset, and what is to be read from them.
type Clock = (&'static str, Option<&'static str>, Option<(&'static str, Option<i32>)>);

#[test]
fn the_time_is_read_with_its_offset() {
    let cases: [Clock; 15] = [
        ("2026:05:04 07:08:09", None, Some(("2026-05-04T07:08:09", None))),
        ("2026:05:04 07:08:09", Some("-05:00"), Some(("2026-05-04T07:08:09", Some(-18_000)))),
        ("2026:05:04 07:08:09", Some("+05:45"), Some(("2026-05-04T07:08:09", Some(20_700)))),
        ("2026:05:04 07:08:09", Some("Z"), Some(("2026-05-04T07:08:09", Some(0)))),
        ("2026:05:04 07:08:09", Some("   :  "), Some(("2026-05-04T07:08:09", None))),
        ("2026:05:04 07:08:09", Some("+05:61"), Some(("2026-05-04T07:08:09", None))),
        ("2026:05:04 07:08:09", Some("+99:00"), Some(("2026-05-04T07:08:09", None))),
        ("2024:02:29 23:59:59", None, Some(("2024-02-29T23:59:59", None))),
        ("2026:02:29 00:00:00", None, None),
        ("0000:00:00 00:00:00", None, None),
        ("    :  :     :  :  ", Some("+01:00"), None),
        ("2026:13:04 07:08:09", None, None),
        ("2026:05:04 24:08:09", None, None),
        ("2026-05-04 07:08:09", None, None),
        ("2026:05:04", None, None),
    ];
    for (time, offset, expected) in cases {
        let mut fields = vec![field(Tag::DateTimeOriginal, ascii(time))];
        fields.extend(offset.map(|offset| field(Tag::OffsetTimeOriginal, ascii(offset))));
        // Times of change and of scanning are not when the picture was taken.
        fields.push(field(Tag::DateTime, ascii("2001:01:01 01:01:01")));
        fields.push(field(Tag::DateTimeDigitized, ascii("2002:02:02 02:02:02")));
        for little_endian in [false, true] {
            let bytes = jpeg_with(&[(0xe1, &app1(&fields, little_endian))]);
            let taken = inspect(&bytes).unwrap().taken;
            let read = taken.map(|Taken { local, offset }| (local.to_string(), offset.map(|offset| offset.seconds())));
            assert_eq!(read, expected.map(|(local, offset)| (local.to_string(), offset)), "{time} {offset:?}");
        }
    }
}

#[test]
fn files_of_another_encoder_are_read() {
    for (name, bytes) in FILES {
        let header = inspect(bytes).unwrap();
        assert_eq!((header.width, header.height), (24, 40), "{name}");
        assert_eq!(header.orientation, Orientation::QuarterRight, "{name}");
        let taken = header.taken.unwrap();
        assert_eq!(taken.local.to_string(), "2026-05-04T07:08:09", "{name}");
        assert_eq!(taken.offset.unwrap().seconds(), -5 * 3600, "{name}");
    }
}

#[test]
fn stray_bytes_and_fill_between_segments_are_passed_over() {
    // The encoder's first segment, the JFIF header, ends at byte 20.
    let mut bytes = jpeg(20, 12);
    bytes.splice(20..20, [0x55, 0xff, 0x00, 0xff, 0xff, 0xff, 0xd3, 0x00]);
    let header = inspect(&bytes).unwrap();
    assert_eq!((header.width, header.height), (20, 12));
    assert_eq!(without_location(bytes), Ok(jpeg(20, 12)));
}

#[test]
fn only_the_first_exif_block_before_the_picture_counts() {
    let turned = app1(&[field(Tag::Orientation, Value::Short(vec![6]))], false);
    let mirrored = app1(&[field(Tag::Orientation, Value::Short(vec![2]))], false);
    let both = jpeg_with(&[(0xe1, b"http://ns.adobe.com/xap/1.0/\0"), (0xe1, &turned), (0xe1, &mirrored)]);
    assert_eq!(inspect(&both).unwrap().orientation, Orientation::QuarterRight);
}
