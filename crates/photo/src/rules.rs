//! The rules: from what was measured to even, patchy, or can't tell.
//!
//! A wrong word costs more than none: "even" on a patchy slab gets it stained, "patchy" on an even
//! one costs days. So a verdict is given only where nothing speaks against it, and each thing that
//! does is a [`Why`]. The limits are provisional, from synthetic pictures.

use science::color::Lab;

use crate::cells::Detail;
use crate::grid::Grid;
use crate::light::Light;
use crate::line::{Line, LineKind};
use crate::look::Rect;
use crate::marks::Spots;
use crate::score::Score;
use crate::shade::{Likeness, Tint, least_warmth, likeness};
use crate::verdict::{Evenness, Verdict};
use crate::why::Why;

/// Score from which a slab is patchy, and below which it is even, in ΔE00.
pub const PATCHY_FROM: f64 = 2.5;
/// See [`PATCHY_FROM`].
pub const EVEN_BELOW: f64 = 1.5;
const MAX_CLIPPED: f64 = 0.10;
/// 25 of 255, as linear light.
const MIN_GREEN: f64 = 0.009_721;
const MIN_SLAB: f64 = 0.50;
const MAX_RANGE: f64 = 1.8;
const MAX_THINGS: f64 = 0.003;
const MAX_CARD_RATIO: f64 = 2.5;
const MIN_SHARPNESS: f64 = 0.24;
const MAX_BLOCKINESS: f64 = 4.0;
const MAX_BLANK: f64 = 0.4;
const MIN_STEEPNESS: f64 = 0.08;
const MIN_PARTED: f64 = 0.70;
/// Range and warmth of smooth light that may be a slowly drying slab.
const SMOOTH_RANGE: f64 = 0.2;
const SMOOTH_DAMP: std::ops::Range<f64> = 0.15..0.30;
/// Score over the usual difference; a bell curve has 2.9.
const MIN_RATIO: f64 = 4.0;
/// What is left at large, in ln, from which a spread is no mottle.
const LARGE_PATTERN: f64 = 0.08;
/// What is left at large, in ln, above which a slab is not called even; less where it has no rim.
/// Even slabs measured at most 0.021, plain ones 0.011. What a fitted light leaves of damp along one side
/// measured 0.019 and more, with a rim of at most 0.087; small patches have one of 0.1 and more.
const MAX_LARGE: f64 = 0.03;
const MAX_LARGE_SOFT: f64 = 0.015;
const SOFT: f64 = 0.09;
/// More bright pieces than this are taken for sun through leaves unless they are plainly bloom.
const MAX_BLOOMS: usize = 10;
/// Share of the slab in one mark, and in all, below which marks are small.
const SMALL_MARK: f64 = 0.02;
const SMALL_MARKS: f64 = 0.10;
/// ΔE00 between so small a class and the rest, above which it is one: faint wet footprints measured 1.5
/// and more, while even slabs part in two halves at most 0.7 apart.
const SMALL_CLASS: f64 = 1.0;

/// The scored slab.
pub(crate) struct Scored {
    pub(crate) tint: Tint,
    pub(crate) steepness: Option<f64>,
    /// 95th percentile of what is left of ln light after smoothing over 5 % of the width.
    pub(crate) large: f64,
    /// Pieces of the smaller class, and the share of the slab in the largest.
    pub(crate) pieces: usize,
    pub(crate) largest_piece: f64,
    pub(crate) things_share: f64,
    pub(crate) spots: Spots,
    pub(crate) score: Score,
}

/// Everything the rules look at.
pub(crate) struct Facts {
    pub(crate) detail: Detail,
    pub(crate) clipped_share: f64,
    pub(crate) usable_share: f64,
    pub(crate) median_green: f64,
    pub(crate) gray: bool,
    pub(crate) lines: Vec<Line>,
    pub(crate) card_given: bool,
    pub(crate) card_ratio: Option<f64>,
    /// Color of the slab by the card.
    pub(crate) base: Option<Lab>,
    pub(crate) light: Option<LightFacts>,
    pub(crate) score: Option<Scored>,
}

/// The smooth light.
#[derive(Clone, Copy)]
pub(crate) struct LightFacts {
    pub(crate) range: f64,
    /// Warmth of its dark side, as of a pattern.
    pub(crate) warmth: f64,
}

impl LightFacts {
    /// Slope of the smooth ln R − ln B against the smooth ln G over the usable cells.
    pub(crate) fn of(light: &Light, usable: &[bool]) -> Self {
        let (mut n, mut sx, mut sy, mut sxx, mut sxy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (smooth, _) in light.smooth.iter().zip(usable).filter(|(_, ok)| **ok) {
            let (x, y) = (f64::from(smooth[1]), f64::from(smooth[0] - smooth[2]));
            n += 1.0;
            sx += x;
            sy += y;
            sxx += x * x;
            sxy += x * y;
        }
        let n = f64::max(n, 1.0);
        let (spread, joint) = (sxx / n - (sx / n) * (sx / n), sxy / n - sx / n * (sy / n));
        Self { range: light.range, warmth: if spread > 1e-6 { -joint / spread } else { 0.0 } }
    }
}

/// What keeps any verdict from being given.
fn blocks(facts: &Facts, why: &mut Vec<Why>) {
    if facts.gray {
        why.push(Why::NoColor);
    }
    if facts.clipped_share > MAX_CLIPPED {
        why.push(Why::Clipped { share: facts.clipped_share, most: MAX_CLIPPED });
    }
    if facts.median_green < MIN_GREEN {
        why.push(Why::Dark { median: facts.median_green, least: MIN_GREEN });
    }
    if facts.usable_share < MIN_SLAB {
        why.push(Why::LittleSlab { share: facts.usable_share, least: MIN_SLAB });
    }
    if let Some(light) = facts.light.filter(|light| light.range > MAX_RANGE) {
        why.push(Why::UnevenLight { range: light.range, most: MAX_RANGE });
    }
    if facts.detail.blank > MAX_BLANK {
        why.push(if facts.detail.blockiness > MAX_BLOCKINESS {
            Why::Compressed { blockiness: facts.detail.blockiness, most: MAX_BLOCKINESS }
        } else {
            Why::Blank { share: facts.detail.blank, most: MAX_BLANK }
        });
    }
    if let Some(ratio) = facts.card_ratio.filter(|ratio| *ratio > MAX_CARD_RATIO) {
        why.push(Why::ColoredLight { ratio, most: MAX_CARD_RATIO });
    }
}

/// What speaks against "patchy" although the score is high.
fn doubts_of_patchy(facts: &Facts, scored: &Scored, why: &mut Vec<Why>) {
    let (score, tint) = (&scored.score, scored.tint);
    let rough = facts.detail.blockiness > MAX_BLOCKINESS;
    let least = least_warmth(score.dark || scored.pieces > MAX_BLOOMS, rough);
    match likeness(tint, least) {
        Likeness::Slab => {}
        Likeness::Shade => why.push(Why::CouldBeShade { warmth: tint.warm, least }),
        Likeness::ColoredLight => why.push(Why::CouldBeColoredLight { warmth: tint.warm }),
    }
    if let Some(steepness) = scored.steepness.filter(|steepness| !scored.score.dark && *steepness < MIN_STEEPNESS) {
        why.push(Why::CouldBeGlare { steepness, least: MIN_STEEPNESS });
    }
    if scored.largest_piece < SMALL_MARK && score.share < SMALL_MARKS {
        why.push(Why::SmallMarks { count: scored.pieces, share: score.share });
    }
    let ratio = score.s / score.usual.max(1e-6);
    if ratio < MIN_RATIO && score.parted < MIN_PARTED && scored.large < LARGE_PATTERN {
        why.push(Why::Mottle { parted: score.parted, least: MIN_PARTED });
    }
}

/// What speaks against "even" although the score is low.
fn doubts_of_even(facts: &Facts, scored: &Scored, why: &mut Vec<Why>) {
    let score = &scored.score;
    if scored.things_share > MAX_THINGS {
        why.push(Why::Things { share: scored.things_share });
    }
    if scored.spots.share > 0.001 {
        why.push(Why::SmallMarks { count: scored.spots.count, share: scored.spots.share });
    } else if score.share < SMALL_MARKS && score.class > SMALL_CLASS {
        why.push(Why::SmallMarks { count: scored.pieces, share: score.share });
    }
    if score.parted > 0.72 && score.class > 1.0 {
        why.push(Why::FaintPattern { class_de00: score.class, share: score.share });
    }
    let soft = scored.steepness.is_some_and(|steepness| steepness < SOFT);
    let most = if soft { MAX_LARGE_SOFT } else { MAX_LARGE };
    if scored.large > most {
        why.push(Why::LargePattern { rise: scored.large, most });
    }
    if facts.detail.sharpness < MIN_SHARPNESS {
        why.push(Why::Blurred { sharpness: facts.detail.sharpness, least: MIN_SHARPNESS });
    }
    if facts.detail.blockiness > MAX_BLOCKINESS {
        why.push(Why::Compressed { blockiness: facts.detail.blockiness, most: MAX_BLOCKINESS });
    }
    if let Some(light) = facts.light.filter(|light| light.range > SMOOTH_RANGE && SMOOTH_DAMP.contains(&light.warmth)) {
        why.push(Why::SmoothDamp { warmth: light.warmth, range: light.range });
    }
}

/// Gives the verdict.
pub(crate) fn judge(facts: Facts, grid: Grid, card: Option<Rect>) -> Evenness {
    let mut why = Vec::new();
    blocks(&facts, &mut why);
    let edges: Vec<&Line> = facts.lines.iter().filter(|line| line.kind == LineKind::Edge).collect();
    let step = edges.iter().map(|line| f64::from(line.step)).fold(0.0, f64::max);
    let hard = Why::HardEdge { count: edges.len(), step };
    let mut verdict = Verdict::CantTell;
    if let Some(scored) = &facts.score {
        let s = scored.score.s;
        let before = why.len();
        if s >= PATCHY_FROM {
            doubts_of_patchy(&facts, scored, &mut why);
            verdict = Verdict::Patchy;
        } else {
            if !edges.is_empty() {
                why.push(hard);
            }
            doubts_of_even(&facts, scored, &mut why);
            if s >= EVEN_BELOW && why.len() == before {
                why.push(Why::Between { score_de00: s });
            }
            verdict = Verdict::Even;
        }
    } else if why.is_empty() {
        why.push(Why::LittleSlab { share: facts.usable_share, least: MIN_SLAB });
    }
    if !why.is_empty() {
        verdict = Verdict::CantTell;
    }
    if verdict == Verdict::Patchy && !edges.is_empty() {
        why.push(hard);
    }
    let joints = facts.lines.iter().filter(|line| line.kind == LineKind::Joint).count();
    if joints > 0 {
        why.push(Why::Joints { count: joints });
    }
    if facts.card_given && facts.base.is_none() {
        why.push(Why::BadCard);
    } else if facts.base.is_none() {
        why.push(Why::NoCard);
    }
    let score = facts.score.as_ref();
    Evenness {
        verdict,
        score_de00: score.map(|scored| scored.score.s),
        class_de00: score.map(|scored| scored.score.class),
        share: score.map(|scored| scored.score.share),
        base_lab: facts.base,
        why,
        clipped_share: facts.clipped_share,
        light_range: facts.light.map(|light| light.range),
        warmth: score.map(|scored| scored.tint.warm),
        lines: facts.lines,
        grid,
        card,
    }
}
