//! Looks for the reference card: a bright or dark rectangle, flat, with straight sides.
//!
//! A wrong card colors everything that is measured from it, so a find below [`MIN_CONFIDENCE`] is
//! handed back as a question, never used. Cards turned by more than about 6° are not found.

use science::color::bulk::Bulk;

use crate::cells::Cells;
use crate::decode::Decoded;
use crate::evenness::MIN_SIDE;
use crate::field::{quantile, share};
use crate::light::fit;
use crate::look::{Card, Rect, Reflectance};
use crate::marks::groups;

/// Confidence below which the user is asked.
pub const MIN_CONFIDENCE: f64 = 0.7;
/// Sides of a card, as shares of the picture's width.
const SIDES: std::ops::RangeInclusive<f64> = 0.03..=0.25;
/// Steps in ln light at which a card is looked for.
const STEPS: [f32; 6] = [0.6, 0.4, 0.22, -0.6, -0.35, -0.18];

/// What a card is taken for, by its brightness against the slab.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CardKind {
    /// A photographer's gray card: darker than dry concrete.
    Gray,
    /// White paper.
    Paper,
}

/// A card that was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoundCard {
    /// The card, a cell inside its sides, with the reflectance of its kind.
    pub card: Card,
    /// What it is taken for.
    pub kind: CardKind,
    /// 0 to 1; at least [`MIN_CONFIDENCE`]. A score of shape and flatness, no probability.
    pub confidence: f64,
}

/// Why no card is handed back.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum NoCard {
    /// Nothing looks like one.
    #[error("no card is seen; mark it by hand, or take the picture again with a gray card or white paper on the slab")]
    NotSeen,
    /// Something may be one.
    #[error("something at {}, {} may be the card, but not surely ({confidence:.2}); mark it by hand", rect.x, rect.y)]
    Unsure {
        /// Where.
        rect: Rect,
        /// How sure, 0 to 1.
        confidence: f64,
    },
    /// More than one looks like one.
    #[error("{count} things look like a card; mark the right one by hand")]
    Several {
        /// How many.
        count: usize,
    },
    /// It is overexposed, so it gives no measure.
    #[error("the card at {}, {} is overexposed; take the picture again a little darker", rect.x, rect.y)]
    Overexposed {
        /// Where.
        rect: Rect,
    },
    /// The picture is too small.
    #[error("the picture is {width} by {height} pixels; the shorter side must be at least {MIN_SIDE}")]
    TooSmall {
        /// Width, in pixels.
        width: u32,
        /// Height, in pixels.
        height: u32,
    },
}

/// A candidate in cells.
#[derive(Debug, Clone, Copy)]
struct Candidate {
    left: usize,
    top: usize,
    right: usize,
    bottom: usize,
    bright: bool,
    confidence: f64,
}

/// Looks for a gray card or white paper.
///
/// # Errors
/// [`NoCard`], with what to do about it.
pub fn find_card(picture: &Decoded) -> Result<FoundCard, NoCard> {
    let (width, height) = (picture.width(), picture.height());
    if width.min(height) < MIN_SIDE {
        return Err(NoCard::TooSmall { width, height });
    }
    let fine = Cells::fine(picture, &Bulk::new());
    let half = fine.halved();
    let light = fit(&half, &mut vec![true; half.light.len()], &[]).ok_or(NoCard::NotSeen)?;
    let change: Vec<[f32; 3]> = (0..fine.light.len())
        .map(|at| {
            let (row, col) = ((at / fine.cols / 2).min(half.rows - 1), (at % fine.cols / 2).min(half.cols - 1));
            let (ln, fitted) = (fine.ln(at), light.fitted(row * half.cols + col));
            [0, 1, 2].map(|i| ln[i] - fitted[i])
        })
        .collect();
    let mut found: Vec<Candidate> = Vec::new();
    for step in STEPS {
        let set: Vec<bool> = change.iter().map(|c| if step > 0.0 { c[1] > step } else { c[1] < step }).collect();
        for mark in groups(&set, fine.cols) {
            let Some(new) = candidate(&fine, &change, &mark.cells, step > 0.0) else { continue };
            match found.iter_mut().find(|old| overlaps(old, &new)) {
                Some(old) if new.confidence > old.confidence => *old = new,
                Some(_) => {}
                None => found.push(new),
            }
        }
    }
    choose(&fine, &found)
}

fn choose(fine: &Cells, found: &[Candidate]) -> Result<FoundCard, NoCard> {
    let best = found.iter().max_by(|a, b| a.confidence.total_cmp(&b.confidence)).ok_or(NoCard::NotSeen)?;
    let rect = rect(fine, best);
    if best.confidence < MIN_CONFIDENCE {
        return Err(NoCard::Unsure { rect, confidence: best.confidence });
    }
    let count = found.iter().filter(|c| c.confidence >= MIN_CONFIDENCE).count();
    if count > 1 {
        return Err(NoCard::Several { count });
    }
    let inside = cells_in(fine, best);
    let clipped = inside.iter().filter(|at| fine.clipped[**at] > 0.02).count();
    if share(clipped, inside.len()) > 0.05 {
        return Err(NoCard::Overexposed { rect });
    }
    let (kind, reflectance) = if best.bright {
        (CardKind::Paper, Reflectance::WHITE_PAPER)
    } else {
        (CardKind::Gray, Reflectance::GRAY_CARD)
    };
    Ok(FoundCard { card: Card { rect, reflectance }, kind, confidence: best.confidence })
}

fn overlaps(a: &Candidate, b: &Candidate) -> bool {
    a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom
}

/// The candidate's rectangle, one cell inside, in pixels.
#[expect(clippy::cast_possible_truncation, reason = "some hundred cells")]
fn rect(fine: &Cells, c: &Candidate) -> Rect {
    let px = |cells: usize| cells as u32 * fine.side;
    Rect { x: px(c.left + 1), y: px(c.top + 1), w: px(c.right - c.left - 1), h: px(c.bottom - c.top - 1) }
}

fn cells_in(fine: &Cells, c: &Candidate) -> Vec<usize> {
    let (top, bottom) = (c.top + 2, c.bottom.saturating_sub(1).max(c.top + 3));
    (top..bottom).flat_map(|row| (c.left + 2..c.right - 1).map(move |col| row * fine.cols + col)).collect()
}

/// Scores a connected group by size, fill of its box, flatness, neutral color and sharp sides.
#[expect(clippy::cast_precision_loss, reason = "counts of cells")]
fn candidate(fine: &Cells, change: &[[f32; 3]], cells: &[usize], bright: bool) -> Option<Candidate> {
    let (mut left, mut right, mut top, mut bottom) = (usize::MAX, 0, usize::MAX, 0);
    for at in cells {
        let (row, col) = (at / fine.cols, at % fine.cols);
        (left, right) = (left.min(col), right.max(col));
        (top, bottom) = (top.min(row), bottom.max(row));
    }
    let (wide, high) = (right.checked_sub(left)? + 1, bottom.checked_sub(top)? + 1);
    let part = |size: usize| size as f64 / fine.cols as f64;
    let whole = left > 0 && top > 0 && right + 1 < fine.cols && bottom + 1 < fine.rows;
    if !whole || !SIDES.contains(&part(wide)) || !SIDES.contains(&part(high)) || wide.min(high) < 8 {
        return None;
    }
    let mut out = Candidate { left, top, right, bottom, bright, confidence: 0.0 };
    let inside = cells_in(fine, &out);
    let spread = |i: usize| {
        let mut values: Vec<f32> = inside.iter().map(|at| change[*at][i]).collect();
        let middle = quantile(&mut values, 0.5);
        let mut off: Vec<f32> = values.iter().map(|v| (v - middle).abs()).collect();
        (middle, f64::from(quantile(&mut off, 0.9)))
    };
    let ((red, _), (green, flat), (blue, _)) = (spread(0), spread(1), spread(2));
    let fill = share(cells.len(), wide * high);
    // A card is neutral and concrete nearly so: their tints lie close.
    let tint = f64::from((red - blue).abs().max((green - 0.5 * (red + blue)).abs() * 2.0));
    let ramp = |value: f64, bad: f64, good: f64| ((value - bad) / (good - bad)).clamp(0.0, 1.0);
    let height = f64::from(green.abs());
    out.confidence = ramp(fill, 0.82, 0.95)
        * ramp(flat / height.max(1e-3), 0.5, 0.2)
        * ramp(tint, 0.5, 0.3)
        * ramp(sharp(fine, change, &out), 0.6, 0.85);
    (out.confidence > 0.1).then_some(out)
}

/// Share of the places along the four sides where the change is nearly whole two cells inside and
/// nearly gone two cells outside.
fn sharp(fine: &Cells, change: &[[f32; 3]], c: &Candidate) -> f64 {
    let green = |row: usize, col: usize| change.get(row * fine.cols + col).map_or(0.0, |v| v[1]);
    let mut values: Vec<f32> = cells_in(fine, c).iter().map(|at| change[*at][1]).collect();
    let height = quantile(&mut values, 0.5);
    let passes = |inner: f32, outer: f32| {
        (inner - height).abs() < 0.35 * height.abs() && (inner - outer).abs() > 0.5 * height.abs()
    };
    let (mut good, mut all) = (0, 0);
    for row in c.top + 2..c.bottom.saturating_sub(1) {
        good += usize::from(passes(green(row, c.left + 2), green(row, c.left.saturating_sub(2))));
        good += usize::from(passes(green(row, c.right - 2), green(row, (c.right + 2).min(fine.cols - 1))));
        all += 2;
    }
    for col in c.left + 2..c.right.saturating_sub(1) {
        good += usize::from(passes(green(c.top + 2, col), green(c.top.saturating_sub(2), col)));
        good += usize::from(passes(green(c.bottom - 2, col), green((c.bottom + 2).min(fine.rows - 1), col)));
        all += 2;
    }
    share(good, all)
}
