//! Lengths along the outer walls, outside the slab.

use units::Length;

use super::mark::Layer;
use super::{PlanItem, Sheet};
use crate::boxes::{Box2, Xy};
use crate::lettering::{DOWN, SMALL, width};
use crate::svg::{Anchor, CEMENT, INK, Letters};

/// From the wall to its dimension line, and from that to the middle of the lettering.
const TO_LINE: f64 = 11.0;
const TO_WORDS: f64 = 11.0;
/// Upright lettering is read from the right; a wall leaning so many degrees counts as upright.
const LEAN: f64 = 1.0;
/// Half an end stroke.
const TICK: f64 = 3.5;
/// Walls listed at most.
const MAX_WALLS: usize = 60;

/// An outer wall in the drawing.
struct Wall {
    from: Xy,
    to: Xy,
    words: String,
}

impl Wall {
    fn length(&self) -> f64 {
        libm::hypot(self.to.0 - self.from.0, self.to.1 - self.from.1)
    }

    /// A point along the wall (share of it) and so far out from it.
    fn point(&self, share: f64, out: f64) -> Xy {
        let ((x1, y1), (x2, y2)) = (self.from, self.to);
        let (ex, ey) = ((x2 - x1) / self.length(), (y2 - y1) / self.length());
        // Corners run counter-clockwise on the plan, so outside lies to the right of the walk,
        // which in the drawing, where y runs down, is (−ey, ex).
        (x1 + (x2 - x1) * share - ey * out, y1 + (y2 - y1) * share + ex * out)
    }

    /// Degrees by which lettering along it is turned, never upside down.
    fn turn(&self) -> f64 {
        let degrees = libm::atan2(self.to.1 - self.from.1, self.to.0 - self.from.0).to_degrees();
        let upright = if degrees > 90.0 - LEAN {
            degrees - 180.0
        } else if degrees < -90.0 - LEAN {
            degrees + 180.0
        } else {
            degrees
        };
        if upright.abs() < 0.01 { 0.0 } else { upright }
    }
}

impl Sheet<'_> {
    pub(super) fn draw_walls(&mut self) {
        if !self.shows(Layer::Dimensions) {
            return;
        }
        let walls = self.walls();
        self.open_layer(Layer::Dimensions);
        for (at, wall) in walls.iter().enumerate() {
            if at < MAX_WALLS {
                let args = [("n", (at + 1).to_string().into()), ("length", wall.words.as_str().into())];
                let text = self.locale.message("pic-wall", &args);
                self.items.push(PlanItem { id: None, layer: Layer::Dimensions, number: None, text });
            }
            self.dimension(wall, &walls);
        }
        self.svg.close();
    }

    fn walls(&self) -> Vec<Wall> {
        let mut walls = Vec::new();
        for piece in self.plan.pieces() {
            for (a, b) in piece.outer.iter().zip(piece.outer.iter().cycle().skip(1)) {
                let length: Length = a.distance(*b);
                walls.push(Wall {
                    from: self.view.to_svg(*a),
                    to: self.view.to_svg(*b),
                    words: self.locale.length(length),
                });
            }
        }
        walls
    }

    /// Draws the length where there is room for it; it is in the list in any case.
    fn dimension(&mut self, wall: &Wall, walls: &[Wall]) {
        let wide = width(&wall.words, SMALL);
        if wall.length() < wide + 2.0 {
            return;
        }
        let half = wide / wall.length() / 2.0;
        // A row of small boxes, since slanted lettering fills no upright box.
        let boxes: Vec<Box2> = (0..=8)
            .map(|i| wall.point(0.5 - half + 2.0 * half * f64::from(i) / 8.0, TO_LINE + TO_WORDS))
            .map(|at| Box2::around(at, SMALL, SMALL))
            .collect();
        let free = boxes.iter().all(|b| {
            b.inside(self.frame)
                && self.taken.is_free(*b)
                && !walls.iter().any(|other| b.crossed_by(other.from, other.to))
        });
        if !free {
            return;
        }
        for own in boxes {
            self.taken.take(own);
            self.words.take(own);
        }
        let along = (wall.length() / 6.0).ceil().max(1.0) as u32;
        for i in 0..=along {
            self.taken.take(Box2::around(wall.point(f64::from(i) / f64::from(along), TO_LINE), 4.0, 4.0));
        }
        let line = (CEMENT, 0.9);
        self.svg.stroke(&[wall.point(0.0, TO_LINE), wall.point(1.0, TO_LINE)], "p-dim", line, "");
        for (end, along) in [(0.0, 1.0), (1.0, -1.0)] {
            // Short strokes across both ends, and a slanted one where the measure ends.
            let lean = along * TICK / wall.length();
            self.svg.stroke(&[wall.point(end, 4.0), wall.point(end, TO_LINE + TICK)], "p-dim", line, "");
            let slant = [wall.point(end + lean, TO_LINE + TICK), wall.point(end - lean, TO_LINE - TICK)];
            self.svg.stroke(&slant, "p-dim", (INK, 1.2), "");
        }
        let turned = wall.turn();
        let (x, y) = wall.point(0.5, TO_LINE + TO_WORDS);
        // The base line lies about a third of the size below the middle of the figures.
        let down = DOWN;
        let radians = turned.to_radians();
        let at = (x - down * libm::sin(radians), y + down * libm::cos(radians));
        self.svg.text(at, Letters { turned, ..Letters::new(SMALL).at(Anchor::Middle) }, &wall.words);
    }
}
