//! A floor drawn from a panel has the panel's colors and wavelengths. The patches in
//! `reference/preview/` were drawn by another program; scale 1 mm a pixel.

#![expect(clippy::unwrap_used, reason = "where a check cannot go on, it fails")]

use std::path::Path;

use science::chance::Seed;
use science::color::preview::{Band, PanelColor, PixelSize, PreviewError};
use science::color::{Lab, LinearRgb, Srgb, ciede2000};
use units::Length;

const SQUARE: PixelSize = PixelSize { width: 256, height: 256 };

fn millimeters(value: f64) -> Length {
    Length::millimeters(value)
}

fn measured(pixels: &[[u8; 3]], size: PixelSize, pixel: Length) -> PanelColor {
    let colors: Vec<Lab> = pixels.iter().map(|bytes| Srgb::bytes(*bytes).lab()).collect();
    PanelColor::from_lab(&colors, size, pixel).unwrap()
}

fn patch(name: &str) -> PanelColor {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/preview").join(name);
    let picture = image::open(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display())).to_rgb8();
    let pixels: Vec<[u8; 3]> = picture.pixels().map(|pixel| pixel.0).collect();
    measured(&pixels, SQUARE, millimeters(1.0))
}

fn patches() -> [PanelColor; 3] {
    ["brown_mottled.png", "teal_cloudy.png", "black_speckle.png"].map(patch)
}

/// Entries of the difference over those of the first.
fn relative(first: [[f64; 3]; 3], second: [[f64; 3]; 3], scale: f64) -> f64 {
    let squares = |entry: &dyn Fn(usize, usize) -> f64| -> f64 {
        (0..9).map(|k| entry(k / 3, k % 3)).map(|value| value * value).sum()
    };
    let off = squares(&|i, j| second[i][j] - scale * first[i][j]);
    libm::sqrt(off / squares(&|i, j| scale * first[i][j]))
}

#[test]
fn mean_and_covariance_of_the_floor_are_the_panels() {
    for panel in patches() {
        for seed in 1..=3 {
            let floor = panel.floor(SQUARE, millimeters(1.0), Seed(seed)).unwrap();
            let again = measured(&floor.pixels, SQUARE, millimeters(1.0));
            let (mean, drawn) = (panel.mean(), again.mean());
            for (ours, theirs) in [(drawn.lightness(), mean.lightness()), (drawn.a(), mean.a()), (drawn.b(), mean.b())]
            {
                assert!((ours - theirs).abs() < 0.3, "mean {ours} against {theirs}");
            }
            let off = relative(panel.covariance(), again.covariance(), 1.0);
            assert!(off < 0.1, "covariance off by {off}");
            for i in 0..3 {
                let (ours, theirs) = (again.covariance()[i][i], panel.covariance()[i][i]);
                // Rounding to bytes adds up to about 0.06 in a dark floor.
                assert!((ours - theirs).abs() < 0.1 * theirs + 0.06, "variance {ours} against {theirs}");
            }
            assert!(floor.clipped.as_share() < 0.01);
        }
    }
}

/// Shares of the variance in half octaves finer than an eighth of the panel, where there are waves
/// enough for a steady mean.
fn fine(bands: &[Band]) -> Vec<f64> {
    let edges = [32.0, 22.6, 16.0, 11.3, 8.0, 5.66, 4.0, 2.83];
    edges
        .windows(2)
        .map(|edge| {
            let within = |band: &&Band| (edge[1]..edge[0]).contains(&band.wavelength.as_millimeters());
            bands.iter().filter(within).map(|band| band.share.as_share()).sum()
        })
        .collect()
}

#[test]
fn the_floor_varies_at_the_panels_wavelengths() {
    for panel in patches() {
        let floor = panel.floor(SQUARE, millimeters(1.0), Seed(5)).unwrap();
        let again = measured(&floor.pixels, SQUARE, millimeters(1.0));
        let (theirs, ours) = (fine(&panel.channels()[0].bands()), fine(&again.channels()[0].bands()));
        assert_eq!(theirs.len(), 7);
        for (theirs, ours) in theirs.iter().zip(&ours) {
            let ratio = ours / theirs;
            assert!((1.0 / 1.6..1.6).contains(&ratio), "share {ours} against {theirs}");
        }
    }
}

/// The wavelength with half the variance on either side.
fn middle(color: &PanelColor) -> f64 {
    let mut sum = 0.0;
    let bands = color.channels()[0].bands();
    let half = bands.iter().find(|band| {
        sum += band.share.as_share();
        sum >= 0.5
    });
    half.unwrap().wavelength.as_millimeters()
}

#[test]
fn mottling_keeps_its_size_in_millimeters_on_a_larger_floor() {
    let panel = patch("black_speckle.png");
    let size = PixelSize { width: 300, height: 200 };
    let floor = panel.floor(size, millimeters(2.0), Seed(5)).unwrap();
    let again = measured(&floor.pixels, size, millimeters(2.0));
    let (ours, theirs) = (middle(&again), middle(&panel));
    assert!((0.7..1.5).contains(&(ours / theirs)), "{ours} mm against {theirs} mm");
    // What two-millimeter pixels cannot show is gone, and no more.
    let shown = floor.shown.as_share();
    assert!((0.5..0.99).contains(&shown), "shown {shown}");
    let off = relative(panel.covariance(), again.covariance(), shown);
    assert!(off < 0.1, "covariance off by {off}");
}

#[test]
fn a_seed_is_one_picture_and_another_seed_another() {
    let panel = patch("teal_cloudy.png");
    let draw = |seed| panel.floor(PixelSize { width: 90, height: 70 }, millimeters(1.0), Seed(seed)).unwrap();
    assert_eq!(draw(1), draw(1));
    assert_ne!(draw(1).pixels, draw(2).pixels);
    assert_eq!(draw(1).pixels.len(), 90 * 70);
}

#[test]
fn a_panel_of_one_color_gives_a_floor_of_that_color() {
    let brown = Srgb::bytes([0x7a, 0x56, 0x3a]);
    let size = PixelSize { width: 40, height: 32 };
    let panel = PanelColor::from_light(&[brown.linear(); 1280], size, millimeters(1.0)).unwrap();
    assert!(ciede2000(panel.mean(), brown.lab()).as_units() < 1e-9);
    let floor = panel.floor(size, millimeters(3.0), Seed(1)).unwrap();
    assert!(floor.pixels.iter().all(|pixel| *pixel == [0x7a, 0x56, 0x3a]));
    assert!((floor.shown.as_share() - 1.0).abs() < 1e-12);
}

#[test]
fn what_cannot_be_measured_or_drawn_is_refused_by_value() {
    let light = vec![LinearRgb::new([0.2, 0.2, 0.2]); 32 * 32];
    let size = PixelSize { width: 32, height: 32 };
    let of = |size, pixel| PanelColor::from_light(&light, size, pixel);
    let small = PixelSize { width: 31, height: 33 };
    assert_eq!(of(small, millimeters(1.0)), Err(PreviewError::Size { size: small }));
    let other = PixelSize { width: 33, height: 32 };
    assert_eq!(of(other, millimeters(1.0)), Err(PreviewError::Count { found: 1024, size: other }));
    assert_eq!(of(size, millimeters(0.0)), Err(PreviewError::Pixel(millimeters(0.0))));
    let mut holed = light.clone();
    holed[7] = LinearRgb::new([f64::NAN; 3]);
    assert_eq!(PanelColor::from_light(&holed, size, millimeters(1.0)), Err(PreviewError::NotANumber(7)));
    let panel = of(size, millimeters(1.0)).unwrap();
    let finer = PreviewError::FinerThanPanel { asked: millimeters(0.5), measured: millimeters(1.0) };
    assert_eq!(panel.floor(size, millimeters(0.5), Seed(1)), Err(finer));
    let wide = PixelSize { width: 4096, height: 4096 };
    let pixels = 4096 * 4096;
    assert_eq!(panel.floor(wide, millimeters(1.0), Seed(1)), Err(PreviewError::TooLarge { pixels }));
}
