//! Pictures as they come, and things that call themselves pictures.

use std::path::Path;

fn data(name: &str) -> Vec<u8> {
    std::fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("../photo/tests/data").join(name)).unwrap()
}

/// A small real JPEG.
pub(crate) fn jpeg() -> Vec<u8> {
    data("progressive.jpg")
}

/// A small real PNG.
pub(crate) fn png() -> Vec<u8> {
    data("texts.png")
}

/// The check sum of a PNG chunk (PNG specification, annex D: CRC-32 with 0xEDB88320).
fn crc(bytes: &[u8]) -> u32 {
    let step = |crc: u32| if crc & 1 == 1 { 0xEDB8_8320 ^ (crc >> 1) } else { crc >> 1 };
    !bytes.iter().fold(!0_u32, |crc, byte| (0..8).fold(crc ^ u32::from(*byte), |crc, _| step(crc)))
}

/// A PNG whose head says so many dots.
pub(crate) fn png_of(width: u32, height: u32) -> Vec<u8> {
    let mut out = png();
    out[16..20].copy_from_slice(&width.to_be_bytes());
    out[20..24].copy_from_slice(&height.to_be_bytes());
    let sum = crc(&out[12..29]);
    out[29..33].copy_from_slice(&sum.to_be_bytes());
    out
}

#[test]
fn the_check_sum_is_the_one_of_the_file() {
    let file = png();
    assert_eq!(&file[12..16], b"IHDR");
    assert_eq!(crc(&file[12..29]).to_be_bytes(), file[29..33]);
}
