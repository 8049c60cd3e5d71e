//! Can the pattern be light instead of slab? Shade, glare and colored light each leave a mark.
//!
//! One photograph cannot tell a damp patch from a shadow by its shape. What parts them is color:
//! - Shade outdoors is lit by the sky alone, so its dark part is as it was or bluer: red falls at
//!   least as much as blue.
//! - Water darkens most where the slab already throws back least, for concrete in blue: its dark
//!   part turns warmer. White bloom on warm concrete turns its bright part more neutral, so again
//!   the dark part is the warmer one.
//! - Glare adds the color of the lamp and fades out from a peak; bloom has a plateau and a rim.
//! - Light of another color changes color without lightness.
//!
//! The numbers are ratios of ratios, so neither white balance nor the card enters. The limits are
//! provisional and come from synthetic pictures (`reference/photos/`); real shade next to a red
//! brick wall is warmer than the sky and can pass for damp. Hence the advice to take two pictures.

use crate::score::Score;

/// How the darker class differs from the brighter one.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Tint {
    /// Fall of ln Y from bright to dark, above 0.
    pub(crate) depth: f64,
    /// Extra fall of blue over red, over the depth: above 0 the dark part is warmer.
    pub(crate) warm: f64,
    /// Extra fall of red and blue over green, over the depth.
    pub(crate) green: f64,
}

/// Light as it falls on the eye, from the three channels of ln light (a small-change mean).
fn ln_y(left: [f64; 3]) -> f64 {
    0.2126 * left[0] + 0.7152 * left[1] + 0.0722 * left[2]
}

/// The tint of the cells in `dark` against those in `bright`.
pub(crate) fn tint(left: &[Vec<f32>; 3], dark: &[bool], bright: &[bool]) -> Option<Tint> {
    let mean = |chosen: &[bool]| {
        let count = chosen.iter().filter(|set| **set).count();
        (count >= 8).then(|| {
            [0, 1, 2].map(|i| {
                let sum: f64 = left[i].iter().zip(chosen).filter(|(_, set)| **set).map(|(v, _)| f64::from(*v)).sum();
                sum / f64::from(u32::try_from(count).unwrap_or(u32::MAX))
            })
        })
    };
    let (dark, bright) = (mean(dark)?, mean(bright)?);
    let fall = [0, 1, 2].map(|i| bright[i] - dark[i]);
    let depth = ln_y(fall);
    let scale = depth.abs().max(1e-6);
    Some(Tint { depth, warm: (fall[2] - fall[0]) / scale, green: (0.5 * (fall[0] + fall[2]) - fall[1]) / scale })
}

/// What the color of a pattern speaks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Likeness {
    /// The slab itself: damp or bloom.
    Slab,
    /// It could be shade.
    Shade,
    /// It could be light of another color.
    ColoredLight,
}

/// Least warmth of the dark part for damp (measured 0.15 to 0.20) and for bloom (0.03 to 0.10);
/// shade measured −0.15, and shade without any color of its own 0.00.
const DAMP: f64 = 0.08;
const BLOOM: f64 = 0.025;
/// Heavily compressed pictures hold color only roughly.
const ROUGH: f64 = 0.04;
/// Above this warmth or this green the change is one of color more than of lightness.
const COLOR_ONLY: f64 = 0.6;
const GREEN_ONLY: f64 = 0.3;

/// Warmth from which a pattern is the slab's own; `dark` when its smaller class is the darker one.
pub(crate) fn least_warmth(dark: bool, rough: bool) -> f64 {
    (if dark { DAMP } else { BLOOM }) + if rough { ROUGH } else { 0.0 }
}

/// Judges a pattern whose dark part must be `least` warm to be the slab's own.
pub(crate) fn likeness(tint: Tint, least: f64) -> Likeness {
    if tint.warm.abs() > COLOR_ONLY || tint.green.abs() > GREEN_ONLY {
        Likeness::ColoredLight
    } else if tint.warm < least {
        Likeness::Shade
    } else {
        Likeness::Slab
    }
}

/// How steep the rim of the smaller class is: median slope of ln light across it for one cell,
/// over the depth of the pattern. A patch with a rim measured 0.10 and more, glare at most 0.07.
/// Nothing for a tiny pattern.
pub(crate) fn steepness(score: &Score, smaller: &[bool], usable: &[bool], cols: usize, depth: f64) -> Option<f64> {
    let green = &score.left[1];
    let mut slopes: Vec<f32> = Vec::new();
    for at in cols + 1..green.len().saturating_sub(cols + 1) {
        let around = [at - 1, at + 1, at - cols, at + cols];
        if smaller[at] && around.iter().all(|&i| usable[i]) && around.iter().any(|&i| !smaller[i]) {
            let (across, down) = (green[at + 1] - green[at - 1], green[at + cols] - green[at - cols]);
            slopes.push(0.5 * libm::hypotf(across, down));
        }
    }
    (slopes.len() >= 20).then(|| f64::from(crate::field::quantile(&mut slopes, 0.5)) / depth.abs().max(1e-6))
}
