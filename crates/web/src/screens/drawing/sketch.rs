//! A walk that does not close, as it was walked, with its gap. `pictures` draws plans, and this is none
//! yet.

use std::fmt::Write as _;

use localization::Locale;
use slab_plan::Walk;

const WIDTH: f64 = 360.0;
const MAX_HEIGHT: f64 = 360.0;
/// Room for the numbers around the walls.
const MARGIN: f64 = 30.0;
const INK: &str = "#1f1d1a";
const ACCENT: &str = "#7a3b1c";

/// The walls in order with their numbers, the start as a ring, the end as a dot, the gap as a broken line.
pub(super) fn open_walk(walk: &Walk, numbers: &[usize], locale: Locale) -> Option<String> {
    let mut corners: Vec<(f64, f64)> = walk.points.iter().map(|p| (p.x.as_meters(), p.y.as_meters())).collect();
    let (last, leg) = (*corners.last()?, walk.legs.last()?);
    let end = (last.0 + leg.adjusted_departure().as_meters(), last.1 + leg.adjusted_latitude().as_meters());
    corners.push(end);
    let low = corners.iter().fold((f64::MAX, f64::MAX), |low, at| (low.0.min(at.0), low.1.min(at.1)));
    let high = corners.iter().fold((f64::MIN, f64::MIN), |high, at| (high.0.max(at.0), high.1.max(at.1)));
    let (width, height) = (high.0 - low.0, high.1 - low.1);
    let scale = ((WIDTH - 2.0 * MARGIN) / width).min((MAX_HEIGHT - 2.0 * MARGIN) / height);
    if !scale.is_finite() {
        return None;
    }
    let left = (WIDTH - width * scale) / 2.0;
    let tall = height * scale + 2.0 * MARGIN;
    let at = |(x, y): (f64, f64)| (left + (x - low.0) * scale, tall - MARGIN - (y - low.1) * scale);
    let drawn: Vec<(f64, f64)> = corners.into_iter().map(at).collect();
    let mut path = String::new();
    for (x, y) in &drawn {
        let _ = write!(path, "{x:.1},{y:.1} ");
    }
    let (start, end) = (*drawn.first()?, *drawn.last()?);
    let title = locale.message("draw-open-walk", &[]);
    let ((x1, y1), (x2, y2), path) = (end, start, path.trim_end());
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"picture\" role=\"img\" viewBox=\"0 0 {WIDTH} {tall:.0}\" \
         font-family=\"system-ui, sans-serif\" font-size=\"13\"><title>{title}</title>\
         <polyline points=\"{path}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"3\" stroke-linejoin=\"round\"/>\
         <circle cx=\"{x2:.1}\" cy=\"{y2:.1}\" r=\"6\" fill=\"#f6f4ef\" stroke=\"{ACCENT}\" stroke-width=\"2\"/>\
         <line x1=\"{x1:.1}\" y1=\"{y1:.1}\" x2=\"{x2:.1}\" y2=\"{y2:.1}\" stroke=\"{ACCENT}\" stroke-width=\"2\" \
         stroke-dasharray=\"5 4\"/><circle cx=\"{x1:.1}\" cy=\"{y1:.1}\" r=\"4\" fill=\"{ACCENT}\"/>"
    );
    for (pair, number) in drawn.windows(2).zip(numbers) {
        let (dx, dy) = (pair[1].0 - pair[0].0, pair[1].1 - pair[0].1);
        let long = dx.hypot(dy).max(1.0);
        // Beside the middle of the wall, to its right as it is walked.
        let (x, y) =
            ((pair[0].0 + pair[1].0) / 2.0 - 13.0 * dy / long, (pair[0].1 + pair[1].1) / 2.0 + 13.0 * dx / long);
        let _ = write!(
            svg,
            "<text x=\"{x:.1}\" y=\"{:.1}\" text-anchor=\"middle\" fill=\"{INK}\">{number}</text>",
            y + 4.5
        );
    }
    svg.push_str("</svg>");
    Some(svg)
}
