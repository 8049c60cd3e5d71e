//! The times on the lines of equal soaking time, where there is room.

use super::words::round_time;
use crate::boxes::{Box2, Xy};
use crate::lettering::{DOWN, SMALL, TALL, bold_width, width};
use crate::plan::Sheet;
use crate::plan::mark::Layer;
use crate::svg::{Anchor, Letters};

/// A line shorter than so many widths of its time goes without.
const LEAST: f64 = 1.6;
/// Between two times on one long line.
const EVERY: f64 = 260.0;

impl Sheet<'_> {
    pub(in crate::plan) fn draw_times(&mut self) {
        if self.thirst.lines.is_empty() {
            return;
        }
        let lines = std::mem::take(&mut self.thirst.lines);
        self.open_layer(Layer::Absorbency);
        for line in &lines {
            let words = round_time(line.time, self.locale);
            let wide = if line.is_limit { bold_width(&words, SMALL) } else { width(&words, SMALL) };
            let inside = |at: &Xy| line.edge.holds(Box2::around(*at, 1.0, 1.0));
            let places: Vec<Xy> = spaced(&line.points).into_iter().filter(inside).collect();
            // Places are as far apart as they were spaced.
            if (places.len() as f64) * SPACE < LEAST * wide {
                continue;
            }
            let mut set: Vec<Xy> = Vec::new();
            for at in from_the_middle(&places) {
                let wanted = Box2::around(at, wide + 4.0, TALL);
                let far = set.iter().all(|(x, y)| libm::hypot(x - at.0, y - at.1) > EVERY);
                let across = self.rules.iter().any(|(a, b)| wanted.crossed_by(*a, *b));
                let free = !across && self.taken.is_free(wanted) && self.covered.is_free(wanted);
                if far && free && line.edge.holds(wanted) {
                    self.taken.take(wanted);
                    let letters = Letters::new(SMALL).at(Anchor::Middle).halo();
                    let letters = if line.is_limit { letters.bold() } else { letters };
                    self.svg.text((at.0, at.1 + DOWN), letters, &words);
                    set.push(at);
                }
            }
        }
        self.svg.close();
    }
}

const SPACE: f64 = 6.0;

/// Points at even steps along a line.
fn spaced(line: &[Xy]) -> Vec<Xy> {
    let mut out = Vec::new();
    let mut next = 0.0;
    let mut passed = 0.0;
    for pair in line.windows(2) {
        let ((x1, y1), (x2, y2)) = (pair[0], pair[1]);
        let length = libm::hypot(x2 - x1, y2 - y1);
        while length > 0.0 && next <= passed + length {
            let share = (next - passed) / length;
            out.push((x1 + share * (x2 - x1), y1 + share * (y2 - y1)));
            next += SPACE;
        }
        passed += length;
    }
    out
}

/// The middle first, then outward to both ends in turn.
fn from_the_middle(places: &[Xy]) -> impl Iterator<Item = Xy> + '_ {
    let middle = places.len() / 2;
    let (before, after) = places.split_at(middle);
    let pairs = after.iter().map(Some).zip(before.iter().rev().map(Some).chain(std::iter::repeat(None)));
    pairs.flat_map(|(a, b)| [a, b]).flatten().copied()
}
