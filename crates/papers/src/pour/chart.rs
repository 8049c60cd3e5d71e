//! The bar chart of alarm hours, as SVG. Black, gray and a hatch: it reads the same without color.

use std::fmt::Write as _;

use super::hours::HourRisk;

/// Words in the drawing, already in the language of the paper.
pub(super) struct ChartWords {
    /// What the upright axis counts.
    pub(super) axis: String,
    /// The solid part of a bar.
    pub(super) above: String,
    /// The hatched part of a bar.
    pub(super) possible: String,
    /// The labels under the bars' left edges, and one for the end of the last; empty ones are not drawn.
    pub(super) hours: Vec<String>,
}

const WIDTH: f64 = 520.0;
const HEIGHT: f64 = 92.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = 18.0;
const TOP: f64 = 20.0;
const FLOOR: f64 = 75.0;

/// Draws the bars: solid for the share of days above the alarm, hatched for the days on which only
/// the error band reaches above it. An hour without readings has a dash.
pub(super) fn hour_bars(hours: &[HourRisk], words: &ChartWords) -> String {
    let step = (WIDTH - LEFT - RIGHT) / hours.len().max(1) as f64;
    let y = |share: f64| FLOOR - share.clamp(0.0, 1.0) * (FLOOR - TOP);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" font-family=\"Noto Sans\" font-size=\"9\">"
    );
    for (share, label) in [(0.0, "0"), (0.5, "50 %"), (1.0, "100 %")] {
        let (at, end) = (y(share), WIDTH - RIGHT);
        let ink = if share == 0.0 { "#222" } else { "#bbb" };
        line(&mut svg, (LEFT, at), (end, at), ink, 0.7);
        text(&mut svg, (LEFT - 4.0, at + 3.0), "end", label);
    }
    for (at, hour) in hours.iter().enumerate() {
        let left = LEFT + step * at as f64;
        bar(&mut svg, hour, (left + step * 0.16, step * 0.68), &y);
    }
    for (at, label) in words.hours.iter().enumerate() {
        let x = LEFT + step * at as f64;
        line(&mut svg, (x, FLOOR), (x, FLOOR + 3.0), "#222", 0.7);
        if !label.is_empty() {
            text(&mut svg, (x, FLOOR + 13.0), "middle", label);
        }
    }
    legend(&mut svg, words);
    svg.push_str("</svg>");
    svg
}

fn bar(svg: &mut String, hour: &HourRisk, (x, width): (f64, f64), y: &impl Fn(f64) -> f64) {
    let (Some(above), Some(reach)) = (hour.above_share(), hour.reach_share()) else {
        text(svg, (x + width / 2.0, FLOOR - 3.0), "middle", "–");
        return;
    };
    hatched(svg, (x, y(reach)), (width, y(above) - y(reach)));
    solid(svg, (x, y(above)), (width, FLOOR - y(above)));
}

fn legend(svg: &mut String, words: &ChartWords) {
    text(svg, (LEFT, 11.0), "start", &words.axis);
    let x = WIDTH * 0.42;
    solid(svg, (x, 4.0), (9.0, 9.0));
    text(svg, (x + 13.0, 11.0), "start", &words.above);
    let x = WIDTH * 0.64;
    hatched(svg, (x, 4.0), (9.0, 9.0));
    text(svg, (x + 13.0, 11.0), "start", &words.possible);
}

fn solid(svg: &mut String, (x, y): (f64, f64), (width, height): (f64, f64)) {
    if height > 0.0 {
        push(
            svg,
            format_args!("<rect x=\"{x:.2}\" y=\"{y:.2}\" width=\"{width:.2}\" height=\"{height:.2}\" fill=\"#333\"/>"),
        );
    }
}

/// A box filled with slanted strokes, drawn one by one: patterns do not print well everywhere.
fn hatched(svg: &mut String, (x, y): (f64, f64), (width, height): (f64, f64)) {
    if height <= 0.05 {
        return;
    }
    let mut shift = 3.0;
    while shift < width + height {
        // A stroke from the left or bottom edge up to the top or right edge.
        let start = if shift < height { (x, y + shift) } else { (x + shift - height, y + height) };
        let end = if shift < width { (x + shift, y) } else { (x + width, y + shift - width) };
        line(svg, start, end, "#333", 0.7);
        shift += 3.0;
    }
    push(
        svg,
        format_args!(
            "<rect x=\"{x:.2}\" y=\"{y:.2}\" width=\"{width:.2}\" height=\"{height:.2}\" fill=\"none\" stroke=\"#333\" stroke-width=\"0.7\"/>"
        ),
    );
}

fn line(svg: &mut String, (x1, y1): (f64, f64), (x2, y2): (f64, f64), ink: &str, width: f64) {
    push(
        svg,
        format_args!(
            "<line x1=\"{x1:.2}\" y1=\"{y1:.2}\" x2=\"{x2:.2}\" y2=\"{y2:.2}\" stroke=\"{ink}\" stroke-width=\"{width}\"/>"
        ),
    );
}

fn text(svg: &mut String, (x, y): (f64, f64), anchor: &str, words: &str) {
    let safe = words.replace('&', "&amp;").replace('<', "&lt;");
    push(svg, format_args!("<text x=\"{x:.2}\" y=\"{y:.2}\" text-anchor=\"{anchor}\" fill=\"#222\">{safe}</text>"));
}

fn push(svg: &mut String, what: std::fmt::Arguments<'_>) {
    svg.write_fmt(what).expect("writing to a string cannot fail");
}
