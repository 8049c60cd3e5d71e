//! From files to pixels, against the image library's own reading and turning of the same files.

use std::io::Cursor;

use exif::{Tag, Value};
use image::{DynamicImage, ImageBuffer, ImageFormat, ImageReader, Rgb, RgbImage, Rgba};
use photo::{Decoded, EvennessLook, Format, MAX_PIXELS, PhotoError, Why, decode, evenness};

use crate::pictures::{FILES, SLABS, app1, decoded, field, jpeg, jpeg_with, png, png_with, tiff};

fn same(bytes: &[u8]) {
    let ours = decode(bytes).expect("is accepted");
    let theirs = decoded(bytes).expect("is accepted").to_rgb8();
    assert_eq!((ours.width(), ours.height()), theirs.dimensions());
    assert!(ours.pixels() == theirs.as_raw().as_slice(), "the pixels differ");
}

#[test]
fn all_eight_orientations_in_both_formats() {
    for value in 0..=9_u16 {
        let fields = [field(Tag::Orientation, Value::Short(vec![value]))];
        same(&jpeg_with(&[(0xe1, &app1(&fields, true))]));
        same(&png_with(&[(b"eXIf", &tiff(&fields, false))]));
    }
}

#[test]
fn pictures_of_the_other_encoder() {
    let mut counted = 0;
    for (name, bytes) in FILES {
        match name {
            "cmyk.jpg" => assert_eq!(decode(bytes), Err(PhotoError::NoColor { what: "in printing colors (CMYK)" })),
            "gray.jpg" => assert_eq!(decode(bytes), Err(PhotoError::NoColor { what: "grayscale" })),
            _ => same(bytes),
        }
        counted += 1;
    }
    assert_eq!(counted, 5);
    // Progressive, palette and interlaced.
    for (name, bytes) in SLABS {
        same(bytes);
        assert!(!evenness(&decode(bytes).unwrap(), &EvennessLook::default()).why.is_empty(), "{name}: no card in it");
    }
}

fn written(image: &DynamicImage) -> Vec<u8> {
    let mut out = Cursor::new(Vec::new());
    image.write_to(&mut out, ImageFormat::Png).expect("a small picture encodes");
    out.into_inner()
}

#[test]
fn one_pixel() {
    same(&jpeg(1, 1));
    same(&png(1, 1));
}

#[test]
fn sixteen_bits_become_eight() {
    let deep = ImageBuffer::from_fn(9, 7, |x, y| Rgb([(x * 7000) as u16, (y * 9000) as u16, 40_000]));
    same(&written(&DynamicImage::ImageRgb16(deep)));
}

#[test]
fn grayscale_png_has_no_color() {
    let gray = DynamicImage::ImageLuma8(ImageBuffer::from_pixel(9, 7, image::Luma([90])));
    assert_eq!(decode(&written(&gray)), Err(PhotoError::NoColor { what: "grayscale" }));
}

#[test]
fn opaque_alpha_is_dropped_and_glass_refused() {
    let with = |alpha: u8| {
        let mut image = ImageBuffer::from_pixel(9, 7, Rgba([90_u8, 80, 70, 255]));
        image.put_pixel(3, 3, Rgba([1, 2, 3, alpha]));
        written(&DynamicImage::ImageRgba8(image))
    };
    assert_eq!(decode(&with(255)).expect("opaque").pixels().len(), 9 * 7 * 3);
    assert_eq!(decode(&with(254)), Err(PhotoError::SeeThrough));
}

#[test]
fn a_picture_cut_short_anywhere_is_refused() {
    for whole in [jpeg(40, 30), png(40, 30)] {
        for length in 0..whole.len() {
            assert!(decode(&whole[..length]).is_err(), "{length} of {}", whole.len());
        }
    }
}

#[test]
fn the_name_of_a_file_does_not_matter_its_content_does() {
    assert!(matches!(decode(b"GIF89a\x01\0\x01\0"), Err(PhotoError::NotAccepted { .. })));
    assert!(matches!(decode(b"not a picture"), Err(PhotoError::NotAccepted { .. })));
    assert_eq!(decode(b""), Err(PhotoError::Empty));
}

/// A size of 100 million pixels is refused from the header: nothing of that size is made.
#[test]
fn a_hundred_megapixels_are_refused_before_anything_is_made() {
    let mut large = jpeg(16, 16);
    let frame = large.windows(2).position(|two| two[0] == 0xff && (two[1] == 0xc0 || two[1] == 0xc2)).expect("a frame");
    large[frame + 5..frame + 9].copy_from_slice(&[0x27, 0x10, 0x27, 0x10]);
    assert_eq!(decode(&large), Err(PhotoError::TooManyPixels { width: 10_000, height: 10_000 }));
}

/// The same for whole files, of 12 and 6 kB: one over what is accepted, which the image library could
/// read, and one exactly at it, which is decoded and judged.
#[test]
fn small_files_of_very_many_pixels() {
    let large = include_bytes!("../data/hundred_megapixels.png");
    let theirs = ImageReader::new(Cursor::new(large)).with_guessed_format().unwrap().into_dimensions();
    assert_eq!(theirs.unwrap(), (10_000, 10_000));
    let refused = decode(large).expect_err("over the limit");
    assert_eq!(refused, PhotoError::TooManyPixels { width: 10_000, height: 10_000 });
    assert!(refused.to_string().contains("8192 by 6144"), "{refused}");
    let most = decode(include_bytes!("../data/most_megapixels.png")).expect("at the limit");
    assert_eq!(most.pixels().len() as u64, 3 * MAX_PIXELS);
    assert_eq!(most.pixels()[..3], [150, 141, 129]);
    let answer = evenness(&most, &EvennessLook::default());
    assert!(answer.why.iter().any(|why| matches!(why, Why::Blank { .. })), "{:?}", answer.why);
}

#[test]
fn pixels_must_fit_the_size() {
    let error = Decoded::from_rgb(2, 2, vec![0; 11]).expect_err("a byte is missing");
    assert_eq!(error, PhotoError::WrongLength { bytes: 11, width: 2, height: 2 });
    assert!(matches!(Decoded::from_rgb(0, 2, vec![]), Err(PhotoError::ZeroSize { .. })));
}

#[test]
fn damaged_pixels_are_told_from_a_damaged_file() {
    let image = RgbImage::from_pixel(40, 30, Rgb([90, 80, 70]));
    let mut bytes = written(&DynamicImage::ImageRgb8(image));
    // The compressed stream's first byte names its method; the chunk's check sum is made anew.
    let data = bytes.windows(4).position(|four| four == b"IDAT").expect("pixels") + 4;
    let length = u32::from_be_bytes(bytes[data - 8..data - 4].try_into().expect("four")) as usize;
    bytes[data] = 0;
    let sum = crc32fast::hash(&bytes[data - 4..data + length]).to_be_bytes();
    bytes[data + length..data + length + 4].copy_from_slice(&sum);
    assert!(matches!(decode(&bytes), Err(PhotoError::Undecodable { format: Format::Png, .. })));
}
