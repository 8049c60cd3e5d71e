//! The shapes of the marks: our own, each told from the others in black and white.

use super::mark::MarkKind;
use crate::boxes::{Box2, Xy};
use crate::lettering::{DOWN, SMALL};
use crate::svg::{Anchor, INK, IRON, Letters, Num, PAPER, Svg};

/// Room that a shape takes: two figures of the least size fit into each.
pub(super) const WIDTH: f64 = 29.0;
/// Its height.
pub(super) const HEIGHT: f64 = 28.0;
/// Radius of the dot that stands for a shape without room.
pub(super) const DOT: f64 = 4.0;

/// The shapes are written down in units of which this many make one of the drawing.
const SCALE: f64 = 1.3;

/// Fill of a shape whose number is dark.
const WHITE: &str = "#ffffff";

/// Whether a shape is full, and its number light.
fn is_full(kind: MarkKind, settled: bool) -> bool {
    kind == MarkKind::AcidDrop || kind.can_settle() && !settled
}

/// Draws a mark as a dot, where its shape has no room.
pub(super) fn dot(svg: &mut Svg, kind: MarkKind, settled: bool, at: Xy) {
    let ink = if kind == MarkKind::Incident || kind == MarkKind::Next { IRON } else { INK };
    let fill = if is_full(kind, settled) { ink } else { WHITE };
    svg.circle(at, DOT, "p-shape p-dot", fill, (ink, 1.6));
}

/// Draws a mark's shape around a point, with its number.
pub(super) fn draw(svg: &mut Svg, kind: MarkKind, settled: bool, at: Xy, number: &str) {
    let edge = (INK, 1.4);
    match kind {
        MarkKind::Incident => burr(svg, settled, at),
        MarkKind::Defect => split_diamond(svg, settled, at),
        MarkKind::WaterDrop => drop(svg, at, WHITE),
        MarkKind::AcidDrop => drop(svg, at, INK),
        MarkKind::Scrape => svg.rect(Box2::around(at, 17.0 * SCALE, 17.0 * SCALE), "p-shape", WHITE, edge),
        MarkKind::SolventWipe => svg.shape(
            &around(at, &[(-10.0, -8.0), (5.0, -8.0), (10.0, -3.0), (10.0, 8.0), (-10.0, 8.0)]),
            "p-shape",
            WHITE,
            edge,
        ),
        MarkKind::Ph => svg.shape(
            &around(at, &[(-11.0, 0.0), (-6.5, -9.0), (6.5, -9.0), (11.0, 0.0), (6.5, 9.0), (-6.5, 9.0)]),
            "p-shape",
            WHITE,
            edge,
        ),
        MarkKind::Humidity => svg.shape(
            &around(
                at,
                &[(-11.0, -9.0), (11.0, -9.0), (11.0, 5.0), (3.0, 5.0), (0.0, 10.0), (-3.0, 5.0), (-11.0, 5.0)],
            ),
            "p-shape",
            WHITE,
            edge,
        ),
        MarkKind::Dish => {
            svg.shape(&around(at, &[(-11.0, -7.0), (11.0, -7.0), (7.0, 8.0), (-7.0, 8.0)]), "p-shape", WHITE, edge)
        }
        MarkKind::Sheet => {
            svg.rect(Box2::around(at, 17.0 * SCALE, 17.0 * SCALE), "p-shape", WHITE, (INK, 1.0));
            svg.rect(Box2::around(at, 21.0 * SCALE, 21.0 * SCALE), "p-shape-rim", "none", (INK, 0.8));
        }
        MarkKind::Temperature => svg.circle(at, 9.5 * SCALE, "p-shape", WHITE, edge),
        MarkKind::Photo => camera(svg, at),
        MarkKind::Next => {
            svg.circle(at, 10.0 * SCALE, "p-shape p-next", WHITE, (IRON, 1.6));
            svg.circle(at, 8.0 * SCALE, "p-shape p-next", WHITE, (IRON, 1.0));
        }
        MarkKind::Section => return,
    }
    if number.is_empty() {
        return;
    }
    let raise = match kind {
        MarkKind::Humidity => -2.0 * SCALE,
        MarkKind::WaterDrop | MarkKind::AcidDrop => 1.5 * SCALE,
        _ => 0.0,
    };
    let ink = if is_full(kind, settled) { PAPER } else { INK };
    let letters = Letters { ink, ..Letters::new(SMALL).at(Anchor::Middle).bold() };
    svg.text((at.0, at.1 + DOWN + raise), letters, number);
}

fn around((x, y): Xy, points: &[Xy]) -> Vec<Xy> {
    points.iter().map(|(dx, dy)| (x + SCALE * dx, y + SCALE * dy)).collect()
}

/// A burr of nine points; open it is full, dealt with it is hollow.
fn burr(svg: &mut Svg, settled: bool, at: Xy) {
    const POINTS: u32 = 9;
    let rim: Vec<Xy> = (0..2 * POINTS)
        .map(|i| {
            let radius = SCALE * if i % 2 == 0 { 10.5 } else { 7.4 };
            let (sin, cos) = libm::sincos(std::f64::consts::PI * f64::from(i) / f64::from(POINTS));
            (at.0 + radius * sin, at.1 - radius * cos)
        })
        .collect();
    if settled {
        svg.shape(&rim, "p-shape p-settled", WHITE, (IRON, 1.3));
    } else {
        svg.shape(&rim, "p-shape p-open", IRON, (IRON, 1.0));
    }
}

/// A diamond; open it is full and split at both tips, dealt with it is hollow.
fn split_diamond(svg: &mut Svg, settled: bool, at: Xy) {
    let diamond = around(at, &[(0.0, -10.7), (10.7, 0.0), (0.0, 10.7), (-10.7, 0.0)]);
    if settled {
        svg.shape(&diamond, "p-shape p-settled", WHITE, (INK, 1.4));
        return;
    }
    svg.shape(&diamond, "p-shape p-open", INK, (INK, 1.4));
    for tip in [[(0.0, -10.7), (1.2, -7.5), (-0.8, -5.2)], [(0.0, 10.7), (-1.2, 7.5), (0.8, 5.2)]] {
        svg.stroke(&around(at, &tip), "p-crack", (PAPER, 1.6), "");
    }
}

/// A falling drop.
fn drop(svg: &mut Svg, (x, y): Xy, fill: &str) {
    let n = |dx: f64, dy: f64| format!("{} {}", Num(x + SCALE * dx), Num(y + SCALE * dy));
    let d = format!(
        "M{} C{} {} {} C{} {} {} C{} {} {} C{} {} {} Z",
        n(0.0, -10.5),
        n(3.0, -6.5),
        n(9.5, -3.5),
        n(9.5, 2.0),
        n(9.5, 7.0),
        n(5.0, 10.0),
        n(0.0, 10.0),
        n(-5.0, 10.0),
        n(-9.5, 7.0),
        n(-9.5, 2.0),
        n(-9.5, -3.5),
        n(-3.0, -6.5),
        n(0.0, -10.5)
    );
    svg.put(format_args!(
        "<path class=\"p-shape\" d=\"{d}\" fill=\"{fill}\" stroke=\"{INK}\" stroke-width=\"1.4\" stroke-linejoin=\"round\"/>"
    ));
}

/// A box with a finder and a lamp.
fn camera(svg: &mut Svg, at: Xy) {
    let body =
        [(-10.0, -6.0), (-5.0, -6.0), (-3.0, -9.0), (3.0, -9.0), (5.0, -6.0), (10.0, -6.0), (10.0, 8.5), (-10.0, 8.5)];
    svg.shape(&around(at, &body), "p-shape", WHITE, (INK, 1.4));
    svg.circle((at.0 + 8.0 * SCALE, at.1 - 4.2 * SCALE), 1.3, "p-shape-lens", INK, (INK, 0.5));
}
