//! A drawing of what was found: the photograph beside a map, patches outlined in both.

use std::io::Cursor;

use image::{ImageFormat, Rgb, RgbImage};

use crate::decode::Decoded;
use crate::error::PhotoError;
use crate::grid::CellState;
use crate::line::LineKind;
use crate::verdict::Evenness;

/// Widest drawing, in pixels.
pub const MAX_WIDTH: u32 = 1600;
const GAP: u32 = 10;
const OUTLINE: [Rgb<u8>; 2] = [Rgb([255, 255, 255]), Rgb([0, 0, 0])];
const CARD: Rgb<u8> = Rgb([255, 255, 0]);
const EDGE: Rgb<u8> = Rgb([255, 0, 255]);
/// L by which a cell must differ for the full tone of the map.
const FULL_TONE: f32 = 8.0;

/// Draws the photograph beside a map of how much lighter or darker than most each place is. Patches
/// are outlined by a double line in both, so that the drawing can be read without its tones; things
/// that are no slab are hatched; the card's box and straight lines are drawn. A PNG of at most
/// [`MAX_WIDTH`] pixels across.
///
/// # Errors
/// Only if the PNG cannot be written.
pub fn overlay(picture: &Decoded, evenness: &Evenness) -> Result<Vec<u8>, PhotoError> {
    let scale = (f64::from(MAX_WIDTH - GAP) / 2.0 / f64::from(picture.width())).min(1.0);
    // A very tall picture is held to the same number of pixels.
    let scale = scale.min(f64::from(2 * MAX_WIDTH) / f64::from(picture.height()));
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "not larger than the picture")]
    let size = |side: u32| ((f64::from(side) * scale) as u32).max(1);
    let (width, height) = (size(picture.width()), size(picture.height()));
    let pane = Pane { picture, evenness, scale, width, height };
    let mut drawing = RgbImage::from_pixel(2 * width + GAP, height, Rgb([255, 255, 255]));
    for y in 0..height {
        for x in 0..width {
            drawing.put_pixel(x, y, pane.outlined(x, y, pane.photo(x, y)));
            drawing.put_pixel(width + GAP + x, y, pane.outlined(x, y, pane.map(x, y)));
        }
    }
    for left in [0, width + GAP] {
        pane.marks(&mut drawing, left);
    }
    let mut out = Cursor::new(Vec::new());
    drawing.write_to(&mut out, ImageFormat::Png).map_err(|error| PhotoError::NotWritten { what: error.to_string() })?;
    Ok(out.into_inner())
}

struct Pane<'a> {
    picture: &'a Decoded,
    evenness: &'a Evenness,
    scale: f64,
    width: u32,
    height: u32,
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "places inside the drawing")]
impl Pane<'_> {
    /// Place in the photograph of a place in the drawing.
    fn source(&self, x: u32, y: u32) -> (u32, u32) {
        let of = |place: u32, side: u32| (((f64::from(place) + 0.5) / self.scale) as u32).min(side - 1);
        (of(x, self.picture.width()), of(y, self.picture.height()))
    }

    fn photo(&self, x: u32, y: u32) -> Rgb<u8> {
        let (x, y) = self.source(x, y);
        Rgb(self.picture.row(y)[x as usize])
    }

    fn cell(&self, x: i64, y: i64) -> Option<(usize, usize)> {
        if x < 0 || y < 0 || x >= i64::from(self.width) || y >= i64::from(self.height) {
            return None;
        }
        let (x, y) = self.source(x as u32, y as u32);
        let side = self.evenness.grid.cell_px;
        Some(((x / side) as usize, (y / side) as usize))
    }

    fn state(&self, x: i64, y: i64) -> Option<CellState> {
        let (col, row) = self.cell(x, y)?;
        self.evenness.grid.state(col, row)
    }

    /// Gray where as most; darker and warmer, or brighter and cooler, where it differs.
    fn map(&self, x: u32, y: u32) -> Rgb<u8> {
        let Some((col, row)) = self.cell(x.into(), y.into()) else { return Rgb([255; 3]) };
        match self.evenness.grid.state(col, row) {
            Some(CellState::Slab | CellState::Patch) => {
                let tone = (self.evenness.grid.lighter(col, row).unwrap_or(0.0) / FULL_TONE).clamp(-1.0, 1.0);
                let byte = |value: f32| value as u8;
                let light = 170.0 + 60.0 * tone;
                Rgb([byte(light - 25.0 * tone), byte(light), byte(light + 25.0 * tone)])
            }
            Some(CellState::Thing) => {
                if (x + y) % 8 < 3 {
                    Rgb([60; 3])
                } else {
                    Rgb([220; 3])
                }
            }
            _ => Rgb([245; 3]),
        }
    }

    /// Black on the patch's side of its rim, white on the other.
    fn outlined(&self, x: u32, y: u32, under: Rgb<u8>) -> Rgb<u8> {
        let (x, y) = (i64::from(x), i64::from(y));
        let patch = |x, y| self.state(x, y).map(|state| state == CellState::Patch);
        let Some(own) = patch(x, y) else { return under };
        let rim = [(-1, 0), (1, 0), (0, -1), (0, 1)]
            .iter()
            .any(|(dx, dy)| patch(x + dx, y + dy).is_some_and(|other| other != own));
        if rim { OUTLINE[usize::from(own)] } else { under }
    }

    /// Card box and straight lines; an edge is drawn through, a joint dashed.
    fn marks(&self, drawing: &mut RgbImage, left: u32) {
        if let Some(card) = self.evenness.card {
            let (x0, y0) = (f64::from(card.x), f64::from(card.y));
            let (x1, y1) = (x0 + f64::from(card.w), y0 + f64::from(card.h));
            for (from, to) in [([x0, y0], [x1, y0]), ([x1, y0], [x1, y1]), ([x1, y1], [x0, y1]), ([x0, y1], [x0, y0])] {
                self.stroke(drawing, left, (from, to), CARD, false);
            }
        }
        for line in &self.evenness.lines {
            let ends = (line.from.map(f64::from), line.to.map(f64::from));
            self.stroke(drawing, left, ends, EDGE, line.kind == LineKind::Joint);
        }
    }

    fn stroke(
        &self,
        drawing: &mut RgbImage,
        left: u32,
        (from, to): ([f64; 2], [f64; 2]),
        color: Rgb<u8>,
        dashed: bool,
    ) {
        let [dx, dy] = [to[0] - from[0], to[1] - from[1]].map(|d| d * self.scale);
        let steps = (dx.hypot(dy).ceil() as u32).clamp(1, 8000);
        for step in (0..=steps).filter(|step| !dashed || step % 12 < 7) {
            let part = f64::from(step) / f64::from(steps);
            let (x, y) = (from[0] * self.scale + part * dx, from[1] * self.scale + part * dy);
            for (ox, oy) in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)] {
                let (x, y) = (x + ox, y + oy);
                if x >= 0.0 && y >= 0.0 && x < f64::from(self.width) && y < f64::from(self.height) {
                    drawing.put_pixel(left + x as u32, y as u32, color);
                }
            }
        }
    }
}
