//! Damaged pictures through everything that reads pixels: an answer or a refusal, never a panic,
//! and no answer that takes long.

use std::io::Cursor;
use std::time::{Duration, Instant};

use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, ImageBuffer, ImageFormat, Rgb, RgbImage};
use photo::{EvennessLook, decode, evenness, find_card, overlay};

use crate::garbage::{laws, whole};
use crate::pictures::{FILES, SLABS};

/// Numbers that depend on the seed alone (splitmix64).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn below(&mut self, most: usize) -> usize {
        (self.next() % most.max(1) as u64) as usize
    }
}

/// A picture just large enough to be measured, in both formats.
fn large_enough() -> [Vec<u8>; 2] {
    let mut numbers = Numbers(7);
    let image = RgbImage::from_fn(320, 244, |x, y| {
        let noise = numbers.below(9) as u8;
        let patch = if (100..200).contains(&x) && y > 90 { 40 } else { 0 };
        Rgb([150 + noise - patch, 140 + noise - patch, 128 + noise - patch])
    });
    let mut jpeg = Vec::new();
    JpegEncoder::new_with_quality(&mut jpeg, 85).encode_image(&image).expect("encodes");
    let mut png = Cursor::new(Vec::new());
    image.write_to(&mut png, ImageFormat::Png).expect("encodes");
    [jpeg, png.into_inner()]
}

/// Changes a few bytes, cuts, doubles or drops a stretch; for a PNG the check sums are made anew
/// half of the time, so that the damage reaches the decoder.
fn mutated(whole: &[u8], numbers: &mut Numbers) -> Vec<u8> {
    let mut bytes = whole.to_vec();
    for _ in 0..=numbers.below(6) {
        let at = numbers.below(bytes.len());
        match numbers.below(8) {
            0 => bytes.truncate(at.max(4)),
            1 => {
                let end = (at + numbers.below(64)).min(bytes.len());
                let again = bytes[at..end].to_vec();
                bytes.splice(at..at, again);
            }
            2 => {
                let end = (at + numbers.below(64)).min(bytes.len());
                bytes.drain(at..end);
            }
            3 => bytes[at] ^= 1 << numbers.below(8),
            // The head, where sizes and tables stand, is hit as often as all the rest.
            4 => {
                let at = numbers.below(bytes.len().min(700));
                bytes[at] = numbers.next() as u8;
            }
            _ => bytes[at] = numbers.next() as u8,
        }
        if bytes.len() < 8 {
            break;
        }
    }
    if bytes.starts_with(b"\x89PNG") && numbers.below(2) == 0 {
        mend_sums(&mut bytes);
    }
    bytes
}

fn mend_sums(bytes: &mut [u8]) {
    let mut at = 8;
    while let Some(head) = bytes.get(at..at + 4) {
        let length = u32::from_be_bytes(head.try_into().expect("four bytes")) as usize;
        let Some(end) = at.checked_add(8 + length).filter(|end| end + 4 <= bytes.len()) else { break };
        let sum = crc32fast::hash(&bytes[at + 4..end]).to_be_bytes();
        bytes[end..end + 4].copy_from_slice(&sum);
        at = end + 4;
    }
}

/// Everything the crate does with a file of a stranger; whether pixels came of it.
fn through_everything(bytes: &[u8], seed: u64) -> bool {
    // What is said of the file and of its copy without a position costs two decodings to check.
    if bytes.len() < 4_000 || seed.is_multiple_of(8) {
        laws(bytes).expect("the laws of `garbage.rs`");
    }
    let Ok(picture) = decode(bytes) else { return false };
    let answer = evenness(&picture, &EvennessLook::default());
    let _ = find_card(&picture);
    assert!(answer.why.iter().all(|why| why.values().iter().all(|(_, value)| value.is_finite())), "{answer:?}");
    assert!(answer.score_de00.is_none_or(f64::is_finite), "{answer:?}");
    if seed.is_multiple_of(16) {
        overlay(&picture, &answer).expect("a drawing of what was measured");
    }
    true
}

/// What came of some damaged pictures.
#[derive(Debug, Default)]
struct Outcome {
    tried: usize,
    /// How many were decoded and judged.
    answered: usize,
    longest: Duration,
}

impl Outcome {
    fn run(&mut self, whole: &[u8], seeds: std::ops::Range<u64>) {
        for seed in seeds {
            let bytes = mutated(whole, &mut Numbers(seed));
            #[expect(clippy::disallowed_methods, reason = "the time it takes is what is tested")]
            let start = Instant::now();
            let went = std::panic::catch_unwind(|| through_everything(&bytes, seed));
            let answered = went.unwrap_or_else(|_| panic!("seed {seed}, {} bytes: {bytes:02x?}", bytes.len()));
            self.tried += 1;
            self.answered += usize::from(answered);
            self.longest = self.longest.max(start.elapsed());
            assert!(self.longest < LONGEST, "seed {seed}: {:?}", self.longest);
        }
    }
}

/// Longest time for one damaged picture, generous for a busy machine: a decoded picture of the most
/// pixels takes a few seconds.
const LONGEST: Duration = Duration::from_secs(30);

#[test]
fn two_thousand_damaged_pictures_of_each_format() {
    for whole in large_enough() {
        let mut outcome = Outcome::default();
        outcome.run(&whole, 0..1_500);
        assert!(outcome.answered > 20, "{outcome:?}");
    }
    for (_, whole) in FILES.into_iter().chain(SLABS) {
        Outcome::default().run(whole, 0..500);
    }
}

/// Whole pictures of every coding: small and just large enough, with positions and turned; two of the
/// labeled photographs; 16 bits a channel.
fn of_every_coding() -> Vec<Vec<u8>> {
    let mut out: Vec<Vec<u8>> = large_enough().into();
    out.extend(SLABS.map(|(_, bytes)| bytes.to_vec()));
    out.extend(whole());
    let deep = ImageBuffer::from_fn(300, 240, |x, y| Rgb([30_000 + (x * 97 + y * 31) as u16 % 900, 28_000, 26_000]));
    let mut png = Cursor::new(Vec::new());
    DynamicImage::ImageRgb16(deep).write_to(&mut png, ImageFormat::Png).expect("encodes");
    out.push(png.into_inner());
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../reference/photos/");
    out.extend(["slab_03.jpg", "boots_patches.jpg"].map(|name| std::fs::read(format!("{folder}{name}")).expect(name)));
    out
}

/// The same for as many minutes as `PHOTO_MINUTES` says, from seed `PHOTO_SEED` on, with what came of it
/// and the most memory that was ever held:
///
/// `(ulimit -v 1500000; PHOTO_MINUTES=10 cargo test -p photo -- --ignored damaged --nocapture)`
#[test]
#[ignore = "runs for minutes; set PHOTO_MINUTES"]
#[expect(clippy::disallowed_methods, reason = "how long to run is told from outside")]
fn damaged_pictures_for_minutes() {
    let number = |name: &str| std::env::var(name).ok().and_then(|text| text.parse::<u64>().ok());
    let minutes = number("PHOTO_MINUTES").unwrap_or(1);
    let first = number("PHOTO_SEED").unwrap_or(10_000);
    let (start, mut seed, mut outcome) = (Instant::now(), first, Outcome::default());
    let pictures = of_every_coding();
    while start.elapsed() < Duration::from_secs(60 * minutes) {
        for whole in &pictures {
            outcome.run(whole, seed..seed + 20);
        }
        seed += 20;
    }
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let memory = status.lines().find(|line| line.starts_with("VmHWM")).unwrap_or("most memory not known");
    println!("seeds {first} to {seed} of each of {} pictures: {outcome:?}; {memory}", pictures.len());
}
