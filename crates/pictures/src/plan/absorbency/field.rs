//! The soaking times of one bay on a grid of its own, and the lines of equal value in it.

use std::collections::VecDeque;

use contour::ContourBuilder;
use slab_answers::map::Cell;
use slab_plan::{Offset, Point};
use units::Length;

/// Rings of cells laid around a bay, so that no line of equal value ends at its edge. What is laid
/// around is cut off where it is drawn.
const AROUND: usize = 2;
/// So many cells beyond the bay its slope goes on.
const STRAIGHT: u32 = 1;
/// To the eight neighbors of a cell.
const WAYS: [(isize, isize); 8] = [(-1, -1), (0, -1), (1, -1), (-1, 0), (1, 0), (-1, 1), (0, 1), (1, 1)];

/// Values of one bay on a grid, with what lies around it filled up from its edge.
pub(super) struct Grid {
    columns: usize,
    rows: usize,
    /// The middle of the first cell, and the side of one, meters.
    first: (f64, f64),
    step: f64,
    values: Vec<f64>,
    known: Vec<bool>,
}

/// A closed line of equal value.
pub(super) type Ring = Vec<Point>;

fn meters(at: Point) -> (f64, f64) {
    (at.x.as_meters(), at.y.as_meters())
}

impl Grid {
    /// The grid of the cells that have a value; nothing without any.
    pub(super) fn of(cells: &[(&Cell, f64)], side: Length) -> Option<Self> {
        let step = side.as_meters();
        let places: Vec<(f64, f64)> = cells.iter().map(|(cell, _)| meters(cell.at)).collect();
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

    /// Fills what is not known ring by ring from what is: each goes on as its neighbors before it do.
    fn fill(&mut self) {
        let mut depth: Vec<u32> = self.known.iter().map(|known| if *known { 0 } else { u32::MAX }).collect();
        let mut queue: VecDeque<usize> = (0..depth.len()).filter(|at| depth[*at] == 0).collect();
        while let Some(at) = queue.pop_front() {
            if depth[at] > 0 {
                let before = |near: &usize| depth[*near] < depth[at];
                let told: Vec<f64> = WAYS
                    .iter()
                    .filter_map(|way| {
                        let near = self.beside(at, *way, 1).filter(before)?;
                        // Farther out a slope would run away.
                        let further = self.beside(at, *way, 2).filter(|far| depth[at] <= STRAIGHT && before(far));
                        Some(further.map_or(self.values[near], |far| 2.0 * self.values[near] - self.values[far]))
                    })
                    .collect();
                self.values[at] = told.iter().sum::<f64>() / told.len() as f64;
            }
            for near in WAYS.iter().filter_map(|way| self.beside(at, *way, 1)) {
                if depth[near] == u32::MAX {
                    depth[near] = depth[at] + 1;
                    queue.push_back(near);
                }
            }
        }
    }

    /// The cell so many steps away, when there is one.
    fn beside(&self, at: usize, (right, down): (isize, isize), steps: isize) -> Option<usize> {
        let column = (at % self.columns).checked_add_signed(right * steps).filter(|c| *c < self.columns)?;
        let row = (at / self.columns).checked_add_signed(down * steps).filter(|r| *r < self.rows)?;
        Some(row * self.columns + column)
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
                Offset::meters(self.first.0 + (x - 0.5) * self.step),
                Offset::meters(self.first.1 + (y - 0.5) * self.step),
            )
        };
        let lines = lines.into_iter().flat_map(|line| line.geometry().0.clone());
        lines.map(|line| line.0.iter().map(|c| place(c.x, c.y)).collect()).collect()
    }
}

#[cfg(test)]
mod tests {
    use slab_answers::map::Ground;

    use super::*;

    /// Lines of equal distance from a point are circles around it, and beyond the edge of what is known
    /// they go on.
    #[test]
    fn lines_of_equal_distance_are_circles() {
        let middle = (3.03, 2.98);
        let cells: Vec<Cell> = (0..60)
            .flat_map(|row| (0..60).map(move |column| (f64::from(column) * 0.1, f64::from(row) * 0.1)))
            .map(|(x, y)| Cell {
                at: Point::new(Offset::meters(x), Offset::meters(y)),
                zone: 0,
                bay: 0,
                estimate: None,
                sure: None,
                ground: Ground::Untested,
            })
            .collect();
        let far = |at: Point| libm::hypot(at.x.as_meters() - middle.0, at.y.as_meters() - middle.1);
        let valued: Vec<(&Cell, f64)> = cells.iter().map(|cell| (cell, far(cell.at))).collect();
        let grid = Grid::of(&valued, Length::meters(0.1)).expect("there are cells");
        for radius in [1.0, 2.5] {
            let rings = grid.rings(radius);
            // Around what is at least so far: the circle, and the edge of the grid.
            let circle: Vec<Point> = rings.concat().into_iter().filter(|at| far(*at) < 2.9).collect();
            assert!(circle.len() > 50, "{}", circle.len());
            // Straight between the middles of cells: off by at most an eighth of the side squared over the radius.
            let most = 0.1 * 0.1 / 8.0 / radius * 2.0 + 1e-9;
            assert!(circle.iter().all(|at| (far(*at) - radius).abs() < most), "{radius}");
        }
    }

    #[test]
    fn without_cells_there_is_no_grid() {
        assert!(Grid::of(&[], Length::meters(0.1)).is_none());
    }
}
