//! The soaking times of one bay on a grid of its own, and the lines of equal value in it.

use std::collections::VecDeque;

use contour::ContourBuilder;
use slab::map::Cell;
use slab::plan::{Offset, Point};
use units::Length;

/// Rings of cells laid around a bay, so that no line of equal value ends at its edge. What is laid
/// around is cut off where it is drawn.
const AROUND: usize = 2;

/// Values of one bay on a grid, with what lies around it filled up from its edge.
pub(super) struct Grid {
    columns: usize,
    rows: usize,
    /// The middle of the first cell, and the side of one, metres.
    first: (f64, f64),
    step: f64,
    values: Vec<f64>,
    known: Vec<bool>,
}

/// A closed line of equal value.
pub(super) type Ring = Vec<Point>;

fn metres(at: Point) -> (f64, f64) {
    (at.x.as_metres(), at.y.as_metres())
}

impl Grid {
    /// The grid of the cells that have a value; nothing without any.
    pub(super) fn of(cells: &[(&Cell, f64)], side: Length) -> Option<Self> {
        let step = side.as_metres();
        let places: Vec<(f64, f64)> = cells.iter().map(|(cell, _)| metres(cell.at)).collect();
        let low = places.iter().copied().reduce(|a, b| (a.0.min(b.0), a.1.min(b.1)))?;
        let high = places.iter().copied().reduce(|a, b| (a.0.max(b.0), a.1.max(b.1)))?;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a map has some thousand cells")]
        let index = |value: f64, from: f64| ((value - from) / step).round().max(0.0) as usize;
        let (columns, rows) = (index(high.0, low.0) + 1 + 2 * AROUND, index(high.1, low.1) + 1 + 2 * AROUND);
        let first = (low.0 - step * AROUND as f64, low.1 - step * AROUND as f64);
        let mut values = vec![0.0; columns * rows];
        let mut known = vec![false; columns * rows];
        for ((x, y), (_, value)) in places.iter().zip(cells) {
            let at = (index(*y, low.1) + AROUND) * columns + index(*x, low.0) + AROUND;
            (values[at], known[at]) = (*value, true);
        }
        let mut grid = Self { columns, rows, first, step, values, known };
        grid.fill();
        Some(grid)
    }

    /// Fills what is not known ring by ring from what is: each the mean of its neighbors before it.
    fn fill(&mut self) {
        let mut depth: Vec<u32> = self.known.iter().map(|known| if *known { 0 } else { u32::MAX }).collect();
        let mut queue: VecDeque<usize> = (0..depth.len()).filter(|at| depth[*at] == 0).collect();
        while let Some(at) = queue.pop_front() {
            if depth[at] > 0 {
                let before: Vec<usize> = self.neighbors(at).filter(|near| depth[*near] < depth[at]).collect();
                self.values[at] = before.iter().map(|near| self.values[*near]).sum::<f64>() / before.len() as f64;
            }
            for near in self.neighbors(at).collect::<Vec<_>>() {
                if depth[near] == u32::MAX {
                    depth[near] = depth[at] + 1;
                    queue.push_back(near);
                }
            }
        }
    }

    fn neighbors(&self, at: usize) -> impl Iterator<Item = usize> + use<> {
        let (column, row) = (at % self.columns, at / self.columns);
        let (columns, rows) = (self.columns, self.rows);
        let beside = move |at: usize, most: usize| at.saturating_sub(1)..=(at + 1).min(most - 1);
        beside(row, rows)
            .flat_map(move |r| beside(column, columns).map(move |c| r * columns + c))
            .filter(move |near| *near != at)
    }

    /// The lowest and the highest value in the bay itself.
    pub(super) fn span(&self) -> (f64, f64) {
        let own = self.values.iter().zip(&self.known).filter(|(_, known)| **known).map(|(value, _)| *value);
        own.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
    }

    /// The rings around all that has at least this value, straight between the middles of cells.
    pub(super) fn rings(&self, value: f64) -> Vec<Ring> {
        let builder = ContourBuilder::new(self.columns, self.rows, true);
        let Ok(lines) = builder.lines(&self.values, &[value]) else { return Vec::new() };
        // The middle of the first cell lies at one half in both directions.
        let place = |x: f64, y: f64| {
            Point::new(
                Offset::metres(self.first.0 + (x - 0.5) * self.step),
                Offset::metres(self.first.1 + (y - 0.5) * self.step),
            )
        };
        let lines = lines.into_iter().flat_map(|line| line.geometry().0.clone());
        lines.map(|line| line.0.iter().map(|c| place(c.x, c.y)).collect()).collect()
    }
}
