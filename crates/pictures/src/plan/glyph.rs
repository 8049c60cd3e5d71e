//! The shapes of the marks: our own, each told from the others in black and white.

use super::mark::MarkKind;
use crate::boxes::{Box2, Xy};
use crate::svg::{Anchor, INK, IRON, Letters, Num, PAPER, Svg};

/// Room that a shape takes.
pub(super) const WIDTH: f64 = 22.0;
/// Its height.
pub(super) const HEIGHT: f64 = 21.0;

/// Fill of a shape whose letters are dark.
const WHITE: &str = "#ffffff";

/// Draws a mark's shape around a point, with its letters.
pub(super) fn draw(svg: &mut Svg, kind: MarkKind, settled: bool, at: Xy, letters: &str) {
    let edge = (INK, 1.4);
    match kind {
        MarkKind::Incident => burr(svg, settled, at),
        MarkKind::Defect => split_diamond(svg, settled, at),
        MarkKind::WaterDrop => drop(svg, at, WHITE),
        MarkKind::AcidDrop => drop(svg, at, INK),
        MarkKind::Scrape => svg.rect(Box2::around(at, 17.0, 17.0), "p-shape", WHITE, edge),
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
            svg.rect(Box2::around(at, 17.0, 17.0), "p-shape", WHITE, (INK, 1.0));
            svg.rect(Box2::around(at, 21.0, 21.0), "p-shape-rim", "none", (INK, 0.8));
        }
        MarkKind::Temperature => svg.circle(at, 9.0, "p-shape", WHITE, edge),
        MarkKind::Photo => camera(svg, at),
        MarkKind::Next => {
            svg.circle(at, 10.0, "p-shape p-next", WHITE, (IRON, 1.6));
            svg.circle(at, 7.6, "p-shape p-next", WHITE, (IRON, 1.0));
        }
        MarkKind::Section => return,
    }
    if letters.is_empty() {
        return;
    }
    let (size, raise) = match (kind, letters.chars().count()) {
        (MarkKind::Humidity, _) => (11.0, -2.0),
        (MarkKind::WaterDrop | MarkKind::AcidDrop, _) => (11.0, 1.5),
        (_, 0..=2) => (11.0, 0.0),
        _ => (9.0, 0.0),
    };
    let ink = if kind == MarkKind::AcidDrop { PAPER } else { INK };
    let set = Letters { ink, ..Letters::new(size).at(Anchor::Middle).bold() };
    svg.text((at.0, at.1 + 4.0 + raise), set, letters);
}

fn around((x, y): Xy, points: &[Xy]) -> Vec<Xy> {
    points.iter().map(|(dx, dy)| (x + dx, y + dy)).collect()
}

/// A burr of nine points; open it is full with a dot left out, dealt with it is hollow with a tick.
fn burr(svg: &mut Svg, settled: bool, at: Xy) {
    const POINTS: u32 = 9;
    let rim: Vec<Xy> = (0..2 * POINTS)
        .map(|i| {
            let radius = if i % 2 == 0 { 10.0 } else { 6.6 };
            let (sin, cos) = libm::sincos(std::f64::consts::PI * f64::from(i) / f64::from(POINTS));
            (at.0 + radius * sin, at.1 - radius * cos)
        })
        .collect();
    if settled {
        svg.shape(&rim, "p-shape p-settled", WHITE, (IRON, 1.3));
        tick(svg, at);
    } else {
        svg.shape(&rim, "p-shape p-open", IRON, (IRON, 1.0));
        svg.circle(at, 2.4, "p-shape-dot", PAPER, (PAPER, 0.5));
    }
}

fn tick(svg: &mut Svg, at: Xy) {
    svg.stroke(&around(at, &[(-3.6, 0.2), (-1.0, 3.0), (4.0, -3.4)]), "p-tick", (INK, 1.6), "");
}

/// A diamond split by a crooked line.
fn split_diamond(svg: &mut Svg, settled: bool, at: Xy) {
    let diamond = around(at, &[(0.0, -10.0), (10.0, 0.0), (0.0, 10.0), (-10.0, 0.0)]);
    svg.shape(&diamond, if settled { "p-shape p-settled" } else { "p-shape p-open" }, WHITE, (INK, 1.4));
    if settled {
        tick(svg, at);
    } else {
        let crack = around(at, &[(-1.0, -9.0), (2.5, -4.0), (-2.5, 0.5), (2.0, 4.0), (0.0, 9.0)]);
        svg.stroke(&crack, "p-crack", (INK, 1.6), "");
    }
}

/// A falling drop.
fn drop(svg: &mut Svg, (x, y): Xy, fill: &str) {
    let n = |dx: f64, dy: f64| format!("{} {}", Num(x + dx), Num(y + dy));
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

/// A box with a lens.
fn camera(svg: &mut Svg, at: Xy) {
    let body =
        [(-10.0, -5.5), (-5.0, -5.5), (-3.0, -8.5), (3.0, -8.5), (5.0, -5.5), (10.0, -5.5), (10.0, 8.0), (-10.0, 8.0)];
    svg.shape(&around(at, &body), "p-shape", WHITE, (INK, 1.4));
    svg.circle((at.0, at.1 + 1.0), 4.0, "p-shape-lens", WHITE, (INK, 1.4));
}
