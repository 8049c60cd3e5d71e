//! Arbitrary and damaged bytes: never a panic, never a position left, never other pixels.

use exif::{Context, Tag, Value};
use photo::{inspect, without_location};
use proptest::prelude::*;

use crate::pictures::{FILES, app1, ascii, decoded, field, jpeg_with, png_with, reread, tiff};

/// The laws that hold for whatever comes in.
pub(crate) fn laws(bytes: &[u8]) -> Result<(), TestCaseError> {
    let before = inspect(bytes);
    let after = without_location(bytes.to_vec());
    prop_assert_eq!(before.as_ref().err(), after.as_ref().err());
    let (Ok(header), Ok(clean)) = (before, after) else { return Ok(()) };
    prop_assert_eq!(inspect(&clean), Ok(header));
    prop_assert_eq!(without_location(clean.clone()), Ok(clean.clone()));
    prop_assert!(reread(&clean).iter().all(|field| field.tag.context() != Context::Gps));
    // Values that share bytes are written apart: at most 43 of 32 bytes, and their directories.
    prop_assert!(clean.len() <= bytes.len() + 43 * (12 + 32) + 64);
    if let Some(image) = decoded(bytes) {
        prop_assert_eq!((image.width(), image.height()), (header.width, header.height), "{:?}", header);
        prop_assert!(decoded(&clean) == Some(image), "the pixels differ");
    }
    Ok(())
}

/// Whole pictures to damage: those of the other encoder, and two with EXIF right at the start.
pub(crate) fn whole() -> Vec<Vec<u8>> {
    let fields = [
        field(Tag::Orientation, Value::Short(vec![6])),
        field(Tag::DateTimeOriginal, ascii("2026:05:04 07:08:09")),
        field(Tag::GPSLatitude, Value::Rational(vec![(48, 1).into()])),
    ];
    let mut pictures: Vec<_> = FILES.iter().map(|(_, bytes)| bytes.to_vec()).collect();
    pictures.push(jpeg_with(&[(0xe1, &app1(&fields, true))]));
    pictures.push(png_with(&[(b"eXIf", &tiff(&fields, false))]));
    pictures
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn arbitrary_bytes(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        laws(&bytes)?;
    }

    #[test]
    fn arbitrary_bytes_after_a_signature(start in 0..6usize, bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let starts: [&[u8]; 6] = [
            b"\xff\xd8\xff", b"\xff\xd8\xff\xe1\x01\x00Exif\0\0MM\0*\0\0\0\x08", b"\x89PNG\r\n\x1a\n",
            b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR", b"\0\0\0\x18ftyp", b"RIFF",
        ];
        laws(&[starts[start], &bytes].concat())?;
    }

    #[test]
    fn arbitrary_exif(little in any::<bool>(), bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let sign: &[u8] = if little { b"II*\0" } else { b"MM\0*" };
        laws(&png_with(&[(b"eXIf", &[sign, &bytes].concat())]))?;
        laws(&jpeg_with(&[(0xe1, &[b"Exif\0\0", sign, &bytes].concat())]))?;
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn damaged_pictures(
        which in any::<prop::sample::Index>(),
        changes in proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6),
        cut in proptest::option::weighted(0.2, any::<prop::sample::Index>()),
    ) {
        let pictures = whole();
        let mut bytes = which.get(&pictures).clone();
        for (at, value) in changes {
            let at = at.index(bytes.len());
            bytes[at] = value;
        }
        if let Some(cut) = cut {
            bytes.truncate(cut.index(bytes.len()));
        }
        laws(&bytes)?;
    }
}
