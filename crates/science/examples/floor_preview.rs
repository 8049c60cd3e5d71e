//! Draws floor from a patch of a photographed panel and compares the two.
//!
//! Run: `cargo run -p science --example floor_preview PICTURE MM_PER_PX X Y SIDE OUT.png WIDTH HEIGHT OUT_MM_PER_PX SEED`

use std::error::Error;
use std::time::Instant;

use science::chance::Seed;
use science::color::preview::{PanelColor, PixelSize};
use science::color::{Lab, Srgb};
use units::{Length, LengthUnit};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [picture, scale, x, y, side, out, width, height, out_scale, seed] = arguments.as_slice() else {
        return Err("arguments: PICTURE MM_PER_PX X Y SIDE OUT.png WIDTH HEIGHT OUT_MM_PER_PX SEED".into());
    };
    let photograph = image::open(picture)?.to_rgb8();
    let (x, y, side): (u32, u32, u32) = (x.parse()?, y.parse()?, side.parse()?);
    let patch = image::imageops::crop_imm(&photograph, x, y, side, side).to_image();
    let scale = Length::millimeters(scale.parse()?);
    let size = PixelSize { width: side as usize, height: side as usize };
    let panel = measured(patch.pixels().map(|pixel| pixel.0), size, scale)?;

    let size = PixelSize { width: width.parse()?, height: height.parse()? };
    let out_scale = Length::millimeters(out_scale.parse()?);
    #[expect(clippy::disallowed_methods, reason = "this example times the work")]
    let begin = Instant::now();
    let floor = panel.floor(size, out_scale, Seed(seed.parse()?))?;
    println!("drawn in {:.3} s, clipped {:.2} %", begin.elapsed().as_secs_f64(), floor.clipped.as_percent());
    println!("variation that pixels of this size show: {:.1} %", floor.shown.as_percent());
    let again = measured(floor.pixels.iter().copied(), size, out_scale)?;
    for (name, color) in [("panel", &panel), ("floor", &again)] {
        let mean = color.mean();
        println!("{name}: mean {:.2} {:.2} {:.2}", mean.lightness(), mean.a(), mean.b());
        println!("  covariance {:.3?}", color.covariance());
        let bands = color.channels()[0].bands();
        let line: Vec<String> = bands
            .iter()
            .map(|band| {
                format!("{}: {:.1} %", band.wavelength.show(LengthUnit::Millimeter, 1), band.share.as_percent())
            })
            .collect();
        println!("  first direction, {}", line.join(", "));
    }
    let bytes: Vec<u8> = floor.pixels.concat();
    image::save_buffer(out, &bytes, size.width as u32, size.height as u32, image::ColorType::Rgb8)?;
    Ok(())
}

fn measured(
    bytes: impl Iterator<Item = [u8; 3]>,
    size: PixelSize,
    scale: Length,
) -> Result<PanelColor, Box<dyn Error>> {
    let colors: Vec<Lab> = bytes.map(|bytes| Srgb::bytes(bytes).lab()).collect();
    Ok(PanelColor::from_lab(&colors, size, scale)?)
}
