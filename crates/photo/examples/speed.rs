//! Times the judging of 12 megapixels, and the bulk color functions, on a drawn slab.
//!
//! `cargo run --release -p photo --example speed`

use std::time::Instant;

use photo::{Decoded, EvennessLook, evenness, find_card};
use science::color::bulk::{Bulk, ciede2000_to};
use science::color::{Lab, Srgb, ciede2000};

#[expect(clippy::disallowed_methods, reason = "times are what this prints")]
fn timed(what: &str, mut run: impl FnMut()) {
    let mut times: Vec<f64> = (0..7)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed().as_secs_f64()
        })
        .collect();
    times.sort_by(f64::total_cmp);
    println!("{what}: best {:.3} s, median {:.3} s", times[0], times[3]);
}

fn main() {
    let (width, height) = (4000_u32, 3000_u32);
    let mut pixels = Vec::with_capacity(36_000_000);
    let mut z = 1_u64;
    for y in 0..height {
        for x in 0..width {
            z = z.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let patch = if (x / 700 + y / 600) % 3 == 0 { 20 } else { 0 };
            let value = 140 + (z >> 60) as u8 - patch;
            pixels.extend([value + 6, value, value - 8]);
        }
    }
    let picture = Decoded::from_rgb(width, height, pixels).expect("the size fits");
    timed("evenness of 12 megapixels", || drop(evenness(&picture, &EvennessLook::default())));
    timed("card in 12 megapixels", || assert!(find_card(&picture).is_err(), "there is no card in it"));
    let bulk = Bulk::new();
    let mut lab = vec![0.0_f32; picture.pixels().len()];
    timed("sRGB to Lab of 12 megapixels", || bulk.lab_of_bytes(picture.pixels(), &mut lab));
    let base = Lab::new(58.0, 1.0, 5.0).expect("a color");
    let mut out = vec![0.0_f32; lab.len() / 3];
    timed("dE00 of 12 million colors to one", || ciede2000_to(&lab, base, &mut out));
    let some = &picture.pixels()[..3_000_000];
    timed("one by one: Lab and dE00 of 1 million", || {
        let sum: f64 = some.as_chunks::<3>().0.iter().map(|p| ciede2000(Srgb::bytes(*p).lab(), base).as_units()).sum();
        assert!(sum.is_finite());
    });
}
