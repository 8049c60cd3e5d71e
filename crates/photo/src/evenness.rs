//! From a picture to a verdict: the steps in their order.

use science::color::bulk::Bulk;

use crate::card_color;
use crate::cells::{Cells, Detail};
use crate::decode::Decoded;
use crate::edges::lines;
use crate::field::{grown, quantile, share, smoothed};
use crate::grid::Grid;
use crate::light::{Light, fit};
use crate::line::Line;
use crate::look::{Card, EvennessLook, Rect};
use crate::rules::{Facts, LightFacts, Scored, judge};
use crate::score::{Score, base_lab, colors, measured};
use crate::verdict::Evenness;
use crate::why::Why;
use crate::{marks, shade};

/// Least shorter side of a picture, in pixels.
pub(crate) const MIN_SIDE: u32 = 240;
/// Most the longer side may be of the shorter.
const MAX_ASPECT: u32 = 6;
/// Y of a slab that no card tells of.
const ASSUMED_Y: f64 = 0.30;
/// Smoothing with a scale, in millimeters on the slab.
const SMOOTHING_MM: f64 = 20.0;

/// Judges whether the slab in a photograph is one color, by the method of the module docs. Every
/// picture gets an answer; what cannot be told is said to be so.
///
/// Even color is no proof of dryness. Every threshold is provisional: they come from synthetic
/// pictures.
#[must_use]
pub fn evenness(picture: &Decoded, look: &EvennessLook) -> Evenness {
    let (width, height) = (picture.width(), picture.height());
    // A narrow strip has too few cells across for its edges to be found.
    let least = MIN_SIDE.max(width.max(height) / MAX_ASPECT);
    if width.min(height) < least {
        return Evenness::too_small(Why::TooSmall { width, height, least });
    }
    let bulk = Bulk::new();
    let (fine, detail) = rayon::join(|| Cells::fine(picture, &bulk), || Detail::of(picture));
    let cells = fine.halved();
    let card = look.card.filter(|card| card.rect.is_inside(picture));
    let card_light = card.and_then(|card| card_color::read(picture, &card, &bulk));

    let all_usable = cells.usable();
    let clipped_share = 1.0 - share(all_usable.iter().filter(|ok| **ok).count(), all_usable.len());
    let mut fine_usable = fine.usable();
    let mut usable = all_usable;
    if let Some(card) = card {
        mask(&fine, &mut fine_usable, card.rect, 4);
        mask(&cells, &mut usable, card.rect, 2);
    }
    let lines = lines(&fine, &fine_usable);
    drop_lines(&cells, &mut usable, &lines);
    let mut facts = Facts {
        detail,
        clipped_share,
        usable_share: 0.0,
        median_green: median_green(&cells),
        gray: is_gray(&cells),
        lines,
        card_given: look.card.is_some(),
        card_ratio: card_light.map(|card| ratio(card.light)),
        base: None,
        light: None,
        score: None,
    };
    let mut grid = Grid::new(&cells);
    if let Some(light) = fit(&cells, &mut usable, &facts.lines) {
        let base = match (card, card_light) {
            (Some(card), Some(read)) => base(&cells, &light, &card, read.light),
            _ => None,
        };
        let sigma = sigma(&cells, look);
        if let Some(score) = colors(&light.left, &usable, cells.cols, base.unwrap_or([ASSUMED_Y; 3]), sigma, &bulk) {
            judge_cells(&cells, &light, score, &mut usable, &mut facts, &mut grid);
        }
        facts.base = base.map(base_lab);
        facts.light = Some(LightFacts::of(&light, &usable));
    }
    judge(facts, grid, card.map(|card| card.rect))
}

/// Leaves out what is no slab, and scores the rest.
fn judge_cells(cells: &Cells, light: &Light, score: Score, usable: &mut [bool], facts: &mut Facts, grid: &mut Grid) {
    let before = usable.iter().filter(|ok| **ok).count();
    let things = marks::things(cells, &light.left, &score, usable);
    for (ok, thing) in usable.iter_mut().zip(&things) {
        *ok &= !thing;
    }
    let after = usable.iter().filter(|ok| **ok).count();
    facts.usable_share = share(after, usable.len());
    let things_share = share(before - after, before);
    let Some(score) = measured(score.left, score.lab, usable) else { return };
    let lightness = |at: usize| score.lab[3 * at];
    let in_class = |darker: bool| -> Vec<bool> {
        (0..usable.len()).map(|at| usable[at] && (lightness(at) < score.split) == darker).collect()
    };
    let (dark, bright) = (in_class(true), in_class(false));
    let tint = shade::tint(&score.left, &dark, &bright).unwrap_or_default();
    let smaller = if score.dark { &dark } else { &bright };
    let steepness = shade::steepness(&score, smaller, usable, cells.cols, tint.depth);
    let large = large(&light.left, usable, cells.cols);
    let pieces: Vec<usize> = marks::groups(smaller, cells.cols)
        .iter()
        .map(|mark| mark.cells.len())
        .filter(|n| *n >= marks::MIN_CELLS)
        .collect();
    let largest_piece = share(pieces.iter().copied().max().unwrap_or(0), after);
    grid.fill(&score, usable, &things, smaller);
    facts.score = Some(Scored {
        tint,
        steepness,
        large,
        pieces: pieces.len(),
        largest_piece,
        things_share,
        spots: marks::spots(&score, usable, cells.cols),
        score,
    });
}

/// What is left of the light at large: 95th percentile after smoothing over 5 % of the width.
fn large(left: &[[f32; 3]], usable: &[bool], cols: usize) -> f64 {
    let green: Vec<f32> = left.iter().map(|cell| cell[1]).collect();
    let smooth = smoothed(&green, usable, cols, 10.0);
    let mut sizes: Vec<f32> = smooth.iter().zip(usable).filter(|(_, ok)| **ok).map(|(v, _)| v.abs()).collect();
    f64::from(quantile(&mut sizes, 0.95))
}

fn mask(cells: &Cells, usable: &mut [bool], rect: Rect, reach: usize) {
    let side = cells.side;
    let span = |start: u32, size: u32, most: usize| {
        ((start / side) as usize).min(most)..(((start + size).div_ceil(side)) as usize).min(most)
    };
    let mut set = vec![false; usable.len()];
    for row in span(rect.y, rect.h, cells.rows) {
        set[row * cells.cols..][span(rect.x, rect.w, cells.cols)].fill(true);
    }
    for (ok, card) in usable.iter_mut().zip(grown(&set, cells.cols, reach)) {
        *ok &= !card;
    }
}

/// Cells on a line are not measured, nor those on its continuation: its ends are seldom found whole.
fn drop_lines(cells: &Cells, usable: &mut [bool], lines: &[Line]) {
    for (at, ok) in usable.iter_mut().enumerate() {
        let center = cells.center(at);
        *ok &= !lines.iter().any(|line| line.side(center).abs() < line.reach);
    }
}

fn median_green(cells: &Cells) -> f64 {
    let mut green: Vec<f32> = cells.light.iter().map(|light| light[1]).collect();
    f64::from(crate::field::quantile(&mut green, 0.5))
}

/// No cell differs between its channels by more than rounding.
fn is_gray(cells: &Cells) -> bool {
    cells.light.iter().all(|[r, g, b]| (r - g).abs() <= 1e-4 && (b - g).abs() <= 1e-4)
}

/// The strongest channel over the weakest.
fn ratio(light: [f64; 3]) -> f64 {
    light.iter().copied().fold(0.0, f64::max) / light.iter().copied().fold(f64::MAX, f64::min).max(1e-6)
}

/// The card's reflectance times the slab's fitted light around the card over the card's light.
fn base(cells: &Cells, light: &Light, card: &Card, card_light: [f64; 3]) -> Option<[f64; 3]> {
    let side = cells.side;
    let middle = |start: u32, size: u32, most: usize| (((start + size / 2) / side) as usize).min(most - 1);
    let at = middle(card.rect.y, card.rect.h, cells.rows) * cells.cols + middle(card.rect.x, card.rect.w, cells.cols);
    let out =
        [0, 1, 2].map(|i| card.reflectance.as_share() * f64::from(libm::expf(light.fitted(at)[i])) / card_light[i]);
    // A bare slab gives back some hundredths to nine tenths; anything else is no reading of it.
    out.iter().all(|v| (0.01..=1.0).contains(v)).then_some(out)
}

/// 1 % of the width, or 20 mm where the scale is known, within half a cell and five.
#[expect(clippy::cast_possible_truncation, reason = "a few cells")]
fn sigma(cells: &Cells, look: &EvennessLook) -> f32 {
    let side = f64::from(cells.side);
    let cells_wide = f64::from(u32::try_from(cells.cols.max(cells.rows)).unwrap_or(200));
    look.scale.map_or(0.01 * cells_wide, |scale| SMOOTHING_MM / (scale.as_millimeters() * side)).clamp(1.0, 5.0) as f32
}
