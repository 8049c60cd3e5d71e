//! What is refused, and what the refusal says.

use photo::{Format, Found, MAX_BYTES, PhotoError, inspect, without_location};

use crate::pictures::{chunk, jpeg, jpeg_with, png, png_with};

/// Refused by both functions, for the same reason.
fn refusal(bytes: &[u8]) -> PhotoError {
    let error = inspect(bytes).expect_err("is to be refused");
    assert_eq!(without_location(bytes.to_vec()), Err(error.clone()));
    error
}

#[test]
fn other_formats_are_named_and_the_way_out_is_told() {
    let cases: [(&[u8], Found, &str); 24] = [
        (b"\0\0\0\x18ftypheic\0\0\0\0", Found::Heic, "a HEIC picture"),
        (b"\0\0\0\x18ftypmif1\0\0\0\0", Found::Heic, "a HEIC picture"),
        (b"\0\0\0\x18ftypavif\0\0\0\0", Found::Avif, "an AVIF picture"),
        (b"\0\0\0\x18ftypisom\0\0\0\0", Found::Video, "a video"),
        (b"\0\0\0\x14ftypqt  \0\0\0\0", Found::Video, "a video"),
        (b"\0\0\0\x14ftyp", Found::Video, "a video"),
        (b"GIF87a\x01\0\x01\0", Found::Gif, "a GIF picture"),
        (b"GIF89a\x01\0\x01\0", Found::Gif, "a GIF picture"),
        (b"RIFF\x24\0\0\0WEBPVP8 ", Found::WebP, "a WebP picture"),
        (b"RIFF\x24\0\0\0WAVEfmt ", Found::Unknown, "something unknown"),
        (b"%PDF-1.7\n%\xe2\xe3\xcf\xd3", Found::Pdf, "a PDF document"),
        (b"%PDF-1.7\nplain", Found::Pdf, "a PDF document"),
        (b"II*\0\x08\0\0\0", Found::Tiff, "a TIFF or raw camera picture"),
        (b"MM\0*\0\0\0\x08", Found::Tiff, "a TIFF or raw camera picture"),
        (b"BM\x46\0\0\0\0\0", Found::Bmp, "a BMP picture"),
        (b"BM is a plain note", Found::Text, "text"),
        (b"\xff\x0a\xfa\x7f", Found::JpegXl, "a JPEG XL picture"),
        (b"\0\0\0\x0cjP  \r\n\x87\n", Found::Jpeg2000, "a JPEG 2000 picture"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", Found::Text, "text"),
        (b"<!doctype html><img src='slab.jpg'>", Found::Text, "text"),
        ("Ma\u{f1}ana, ba\u{f1}o".as_bytes(), Found::Text, "text"),
        (b"\xff\xfeh\0i\0", Found::Text, "text"),
        (b"PK\x03\x04\x14\0", Found::Unknown, "something unknown"),
        (&[0; 64], Found::Unknown, "something unknown"),
    ];
    for (bytes, found, words) in cases {
        let error = refusal(bytes);
        assert_eq!(error, PhotoError::NotAccepted { found }, "{bytes:?}");
        let message = error.to_string();
        assert!(message.contains(words) && message.contains("send a JPEG or PNG"), "{message}");
    }
}

#[test]
fn a_phone_user_is_told_how_to_send_jpeg() {
    let message = |bytes: &[u8]| refusal(bytes).to_string();
    let heic = message(b"\0\0\0\x18ftypheic\0\0\0\0");
    for words in
        ["a HEIC picture", "send a JPEG or PNG", "most phones hand over JPEG by themselves", "most compatible format"]
    {
        assert!(heic.contains(words), "{heic}");
    }
    assert!(message(b"\0\0\0\x18ftypavif\0\0\0\0").contains("most compatible format"));
    assert!(message(b"\0\0\0\x18ftypisom\0\0\0\0").contains("one picture of the video"));
    assert!(message(b"a note").contains("choose the photograph itself"));
    assert!(message(b"GIF89a\x01\0\x01\0").contains("export the picture as JPEG"));
}

#[test]
fn a_long_text_cut_within_a_letter_is_still_text() {
    let text = format!("{}{}", "a".repeat(511), "\u{f1}".repeat(40));
    assert_eq!(refusal(text.as_bytes()), PhotoError::NotAccepted { found: Found::Text });
}

#[test]
fn nothing_is_refused_as_empty() {
    assert_eq!(refusal(b""), PhotoError::Empty);
}

#[test]
fn size_in_bytes_has_an_exact_bound() {
    // Bytes after the end mark count for the bound: they are read into memory like the others.
    let mut bytes = jpeg(20, 12);
    bytes.resize(MAX_BYTES, 0);
    assert_eq!(inspect(&bytes).unwrap().width, 20);
    bytes.push(0);
    let error = inspect(&bytes).unwrap_err();
    assert_eq!(error, PhotoError::TooManyBytes { bytes: 40_000_001 });
    assert_eq!(error.to_string(), "the picture file has 40000001 bytes; at most 40000000 are accepted");
}

/// A PNG that claims a size; the data are not looked at.
fn png_claiming(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = png(20, 12);
    let size = [&width.to_be_bytes()[..], &height.to_be_bytes(), &[8, 2, 0, 0, 0]].concat();
    bytes.splice(8..33, chunk(b"IHDR", &size));
    bytes
}

/// Where the frame header of the encoder's JPEG is.
fn frame_at(bytes: &[u8]) -> usize {
    bytes.windows(2).position(|pair| pair == [0xff, 0xc0]).expect("the encoder writes a baseline frame")
}

fn jpeg_claiming(width: u16, height: u16) -> Vec<u8> {
    let mut bytes = jpeg(20, 12);
    let at = frame_at(&bytes);
    bytes[at + 5..at + 7].copy_from_slice(&height.to_be_bytes());
    bytes[at + 7..at + 9].copy_from_slice(&width.to_be_bytes());
    bytes
}

#[test]
fn size_in_pixels_has_an_exact_bound() {
    // 48 × 2^20 = 50,331,648 = 8192 × 6144; the next multiple of a side over it is refused.
    for (width, height) in [(8192, 6144), (6144, 8192), (8064, 6048), (65535, 768)] {
        let upright = |bytes: &[u8]| inspect(bytes).map(|header| (header.width, header.height));
        assert_eq!(upright(&png_claiming(u32::from(width), u32::from(height))), Ok((width.into(), height.into())));
        assert_eq!(upright(&jpeg_claiming(width, height)), Ok((width.into(), height.into())));
    }
    for (width, height) in [(8193, 6144), (8192, 6145), (65535, 65535), (65535, 769)] {
        let expected = PhotoError::TooManyPixels { width: width.into(), height: height.into() };
        assert_eq!(refusal(&png_claiming(width.into(), height.into())), expected);
        assert_eq!(refusal(&jpeg_claiming(width, height)), expected);
        let message = expected.to_string();
        assert!(message.contains(&format!("{width} by {height} pixels")) && message.contains("50331648"), "{message}");
    }
    let largest = PhotoError::TooManyPixels { width: u32::MAX, height: u32::MAX };
    assert_eq!(refusal(&png_claiming(u32::MAX, u32::MAX)), largest);
}

#[test]
fn a_side_of_nothing_is_refused() {
    for (width, height) in [(0, 12), (20, 0), (0, 0)] {
        let expected = PhotoError::ZeroSize { width: width.into(), height: height.into() };
        assert_eq!(refusal(&png_claiming(width.into(), height.into())), expected);
        assert_eq!(refusal(&jpeg_claiming(width, height)), expected);
    }
}

#[test]
fn every_broken_off_transfer_is_noticed() {
    let turned = jpeg_with(&[(0xe1, b"Exif\0\0MM\0*\0\0\0\x08\0\0\0\0\0\0")]);
    for (bytes, format) in [(jpeg(20, 12), Format::Jpeg), (turned, Format::Jpeg), (png(20, 12), Format::Png)] {
        for length in 1..bytes.len() {
            assert_eq!(refusal(&bytes[..length]), PhotoError::CutShort { format, at: length });
        }
        inspect(&bytes).unwrap();
    }
}

#[test]
fn jpeg_variants_that_decoders_do_not_read_are_refused() {
    // Marker, bits a channel, channels, and the word to be told.
    let cases = [
        (0xc3, 8, 3, "lossless"),
        (0xc5, 8, 3, "hierarchical"),
        (0xde, 8, 3, "hierarchical"),
        (0xc9, 8, 3, "arithmetic"),
        (0xca, 8, 3, "arithmetic"),
        (0xc1, 12, 3, "more than 8 bits"),
        (0xc0, 8, 2, "channels"),
        (0xc0, 8, 0, "channels"),
    ];
    for (marker, precision, channels, word) in cases {
        let mut bytes = jpeg(20, 12);
        let at = frame_at(&bytes);
        (bytes[at + 1], bytes[at + 4], bytes[at + 9]) = (marker, precision, channels);
        let error = refusal(&bytes);
        assert!(matches!(error, PhotoError::RareJpeg { what } if what.contains(word)), "{error}");
    }
}

#[test]
fn other_data_after_the_first_scan_are_refused() {
    for segment in [b"\xff\xfe\0\x03x", b"\xff\xe5\0\x03x"] {
        let mut bytes = jpeg(20, 12);
        bytes.splice(bytes.len() - 2..bytes.len() - 2, *segment);
        assert_eq!(refusal(&bytes), PhotoError::RareJpeg { what: "other data between its scans" });
    }
}

#[test]
fn contradictions_are_named() {
    let whole = jpeg(20, 12);
    let frame = &whole[frame_at(&whole)..][..19];
    let mut wrong_sum = png(20, 12);
    wrong_sum[29] ^= 1;
    let no_picture = [&png(20, 12)[..33], &chunk(b"IEND", b"")].concat();
    let no_header = [b"\x89PNG\r\n\x1a\n".as_slice(), &chunk(b"IDAT", b"")].concat();
    let mut strange_depth = png(20, 12);
    strange_depth.splice(8..33, chunk(b"IHDR", &[0, 0, 0, 20, 0, 0, 0, 12, 3, 2, 0, 0, 0]));
    let cases: [(Vec<u8>, Format, &str); 16] = [
        ([&whole[..2], frame, &whole[2..]].concat(), Format::Jpeg, "the size is given twice"),
        ([&whole[..2], &[0xff, 0xd8], &whole[2..]].concat(), Format::Jpeg, "a second picture starts"),
        (vec![0xff, 0xd8, 0xff, 0xd9], Format::Jpeg, "there is no picture"),
        ([&whole[..2], frame, &[0xff, 0xd9]].concat(), Format::Jpeg, "there is no picture"),
        (jpeg_with(&[(0xda, b"")]), Format::Jpeg, "starts before its size"),
        (jpeg_with(&[(0xc0, b"\x08\0\x01")]), Format::Jpeg, "too short"),
        ([&whole[..2], &[0xff, 0xe0, 0, 1], &whole[2..]].concat(), Format::Jpeg, "shorter than its own length"),
        ([&whole[..2], &[0xff, 0x01], &whole[2..]].concat(), Format::Jpeg, "reserved"),
        (jpeg_with(&[(0xc8, b"")]), Format::Jpeg, "reserved"),
        (jpeg_with(&[(0xf7, b"")]), Format::Jpeg, "reserved"),
        (wrong_sum, Format::Png, "check sum"),
        (no_picture, Format::Png, "there is no picture"),
        (no_header, Format::Png, "does not come first"),
        (png_with(&[(b"NEED", b"")]), Format::Png, "not in the standard"),
        (png_with(&[(b"e\0If", b"")]), Format::Png, "no proper name"),
        (strange_depth, Format::Png, "not in the standard"),
    ];
    for (bytes, expected, words) in cases {
        let error = refusal(&bytes);
        assert!(
            matches!(error, PhotoError::Damaged { format, what, .. } if format == expected && what.contains(words)),
            "{words}: {error:?}"
        );
    }
}
