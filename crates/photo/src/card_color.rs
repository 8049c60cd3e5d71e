//! The light on a card whose place is known, and the base color of the slab from it.

use science::color::bulk::Bulk;

use crate::decode::Decoded;
use crate::look::{Card, Rect};

/// Mean light of the middle of a card, if it can be trusted.
#[derive(Debug, Clone, Copy)]
pub(crate) struct CardLight {
    pub(crate) light: [f64; 3],
}

/// Smallest side of a card, in pixels.
const MIN_SIDE: u32 = 8;
/// Most share of clipped pixels on a card.
const MAX_CLIPPED: f64 = 0.02;
/// Most spread of a card's green light: its standard deviation over its mean, block by block.
const MAX_SPREAD: f64 = 0.15;

/// Reads a card: the mean of its middle 70 %. Nothing if it lies outside, is tiny, clipped, or
/// not uniform.
pub(crate) fn read(picture: &Decoded, card: &Card, bulk: &Bulk) -> Option<CardLight> {
    if !card.rect.is_inside(picture) || card.rect.w < MIN_SIDE || card.rect.h < MIN_SIDE {
        return None;
    }
    let rect = card.rect.inner(0.7);
    let (light, clipped, _) = mean(picture, rect, bulk);
    let mut blocks = Vec::new();
    for row in 0..4 {
        for col in 0..4 {
            let block = Rect {
                x: rect.x + col * rect.w / 4,
                y: rect.y + row * rect.h / 4,
                w: (rect.w / 4).max(1),
                h: (rect.h / 4).max(1),
            };
            blocks.push(mean(picture, block, bulk).0[1]);
        }
    }
    let spread = (blocks.iter().map(|b| (b - light[1]).powi(2)).sum::<f64>() / 16.0).sqrt() / light[1].max(1e-6);
    (clipped < MAX_CLIPPED && spread < MAX_SPREAD && light.iter().all(|v| *v > 1e-3)).then_some(CardLight { light })
}

/// Mean light, share of clipped pixels, and number of pixels in a rectangle inside the picture.
pub(crate) fn mean(picture: &Decoded, rect: Rect, bulk: &Bulk) -> ([f64; 3], f64, f64) {
    let table = bulk.light();
    let (mut sums, mut clipped) = ([0.0; 3], 0_u32);
    for y in rect.y..rect.y + rect.h {
        for pixel in &picture.row(y)[rect.x as usize..][..rect.w as usize] {
            for channel in 0..3 {
                sums[channel] += f64::from(table[usize::from(pixel[channel])]);
            }
            clipped += u32::from(pixel.iter().any(|v| *v >= 250));
        }
    }
    let count = f64::from(rect.w) * f64::from(rect.h);
    (sums.map(|sum| sum / count), f64::from(clipped) / count, count)
}
