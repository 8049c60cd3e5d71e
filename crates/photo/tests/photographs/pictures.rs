//! Small pictures, and what can be hung on them.

use std::io::Cursor;

use exif::experimental::Writer;
use exif::{Field, In, Tag, Value};
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Rgb, RgbImage};

/// The word that every text to be dropped contains.
pub(crate) const SECRET: &[u8] = b"SECRET";

/// The pictures made with Pillow, by name; all are stored 40 by 24 and turned by a quarter.
pub(crate) const FILES: [(&str, &[u8]); 5] = [
    ("progressive.jpg", include_bytes!("../data/progressive.jpg")),
    ("restarts.jpg", include_bytes!("../data/restarts.jpg")),
    ("cmyk.jpg", include_bytes!("../data/cmyk.jpg")),
    ("gray.jpg", include_bytes!("../data/gray.jpg")),
    ("texts.png", include_bytes!("../data/texts.png")),
];

/// More pictures of the other encoder, 320 by 244: just large enough to be measured. The first is turned
/// by a quarter and carries a position.
pub(crate) const SLABS: [(&str, &[u8]); 3] = [
    ("slab_progressive.jpg", include_bytes!("../data/slab_progressive.jpg")),
    ("slab_palette.png", include_bytes!("../data/slab_palette.png")),
    ("slab_interlaced.png", include_bytes!("../data/slab_interlaced.png")),
];

fn encoded(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
    let shade = |x: u32, y: u32| Rgb([(x * 7) as u8, (y * 11) as u8, (x * y) as u8]);
    let mut out = Cursor::new(Vec::new());
    RgbImage::from_fn(width, height, shade).write_to(&mut out, format).expect("a small picture encodes");
    out.into_inner()
}

pub(crate) fn jpeg(width: u32, height: u32) -> Vec<u8> {
    encoded(width, height, ImageFormat::Jpeg)
}

pub(crate) fn png(width: u32, height: u32) -> Vec<u8> {
    encoded(width, height, ImageFormat::Png)
}

/// A JPEG with further segments right after its start.
pub(crate) fn jpeg_with(segments: &[(u8, &[u8])]) -> Vec<u8> {
    let mut out = jpeg(20, 12);
    let mut added = Vec::new();
    for (marker, payload) in segments {
        added.extend([0xff, *marker]);
        added.extend(u16::try_from(payload.len() + 2).expect("small").to_be_bytes());
        added.extend_from_slice(payload);
    }
    out.splice(2..2, added);
    out
}

pub(crate) fn chunk(name: &[u8; 4], data: &[u8]) -> Vec<u8> {
    let mut out = u32::try_from(data.len()).expect("small").to_be_bytes().to_vec();
    out.extend_from_slice(name);
    out.extend_from_slice(data);
    let sum = crc32fast::hash(&out[4..]);
    out.extend(sum.to_be_bytes());
    out
}

/// A PNG with further chunks right after its header, which ends at byte 33.
pub(crate) fn png_with(chunks: &[(&[u8; 4], &[u8])]) -> Vec<u8> {
    let mut out = png(20, 12);
    out.splice(33..33, chunks.iter().flat_map(|(name, data)| chunk(name, data)));
    out
}

pub(crate) fn field(tag: Tag, value: Value) -> Field {
    Field { tag, ifd_num: In::PRIMARY, value }
}

pub(crate) fn ascii(text: &str) -> Value {
    Value::Ascii(vec![text.as_bytes().to_vec()])
}

/// A TIFF structure written by the EXIF library.
pub(crate) fn tiff(fields: &[Field], little_endian: bool) -> Vec<u8> {
    let mut writer = Writer::new();
    fields.iter().for_each(|field| writer.push_field(field));
    let mut out = Cursor::new(Vec::new());
    writer.write(&mut out, little_endian).expect("the fields can be written");
    out.into_inner()
}

/// The same, with the prefix it has in a JPEG.
pub(crate) fn app1(fields: &[Field], little_endian: bool) -> Vec<u8> {
    [b"Exif\0\0", tiff(fields, little_endian).as_slice()].concat()
}

/// What the EXIF library finds in a picture: nothing if there is no EXIF block.
pub(crate) fn reread(picture: &[u8]) -> Vec<Field> {
    let mut reader = exif::Reader::new();
    let found = reader
        .continue_on_error(true)
        .read_from_container(&mut Cursor::new(picture))
        .or_else(|error| error.distill_partial_result(|_| {}));
    found.map(|exif| exif.fields().cloned().collect()).unwrap_or_default()
}

/// What the image library decodes, turned by its own reading of the orientation; `None` if it
/// refuses the file.
pub(crate) fn decoded(picture: &[u8]) -> Option<DynamicImage> {
    let mut decoder = ImageReader::new(Cursor::new(picture)).with_guessed_format().ok()?.into_decoder().ok()?;
    let orientation = decoder.orientation().ok()?;
    let mut image = DynamicImage::from_decoder(decoder).ok()?;
    image.apply_orientation(orientation);
    Some(image)
}

/// The color profile as the image library sees it.
pub(crate) fn profile(picture: &[u8]) -> Option<Vec<u8>> {
    let mut decoder = ImageReader::new(Cursor::new(picture)).with_guessed_format().ok()?.into_decoder().ok()?;
    decoder.icc_profile().ok()?
}

pub(crate) fn contains(haystack: &[u8], needle: &[u8]) -> bool {
    haystack.windows(needle.len()).any(|window| window == needle)
}
