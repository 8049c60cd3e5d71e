//! The picture in cells, as it was taken: for drawings.

use crate::cells::Cells;
use crate::score::Score;

/// What a cell of the picture was taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CellState {
    /// Slab, of the larger class.
    Slab,
    /// Slab, of the smaller class: darker or brighter than most.
    Patch,
    /// Something that is no slab.
    Thing,
    /// Not measured: clipped, on a line, on or near the card.
    NotMeasured,
}

/// The picture in cells, for a drawing of what was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    /// Cells across.
    pub cols: usize,
    /// Cells down.
    pub rows: usize,
    /// Side of a cell, in pixels.
    pub cell_px: u32,
    states: Vec<CellState>,
    differences: Vec<f32>,
    lighter: Vec<f32>,
}

impl Grid {
    /// Of a picture that was not measured.
    pub(crate) fn nothing() -> Self {
        Self { cols: 0, rows: 0, cell_px: 1, states: Vec::new(), differences: Vec::new(), lighter: Vec::new() }
    }

    pub(crate) fn new(cells: &Cells) -> Self {
        let count = cells.light.len();
        Self {
            cols: cells.cols,
            rows: cells.rows,
            cell_px: cells.side,
            states: vec![CellState::NotMeasured; count],
            differences: vec![0.0; count],
            lighter: vec![0.0; count],
        }
    }

    pub(crate) fn fill(&mut self, score: &Score, usable: &[bool], things: &[bool], smaller: &[bool]) {
        let middle = score.median.lightness();
        for at in 0..self.states.len() {
            self.states[at] = match (things[at], usable[at], smaller[at]) {
                (true, ..) => CellState::Thing,
                (_, false, _) => CellState::NotMeasured,
                (.., true) => CellState::Patch,
                _ => CellState::Slab,
            };
            self.differences[at] = score.difference[at];
            #[expect(clippy::cast_possible_truncation, reason = "a difference of lightness")]
            let lighter = (f64::from(score.lab[3 * at]) - middle) as f32;
            self.lighter[at] = if usable[at] { lighter } else { 0.0 };
        }
    }

    /// What a cell was taken for; nothing outside the grid.
    #[must_use]
    pub fn state(&self, col: usize, row: usize) -> Option<CellState> {
        (col < self.cols).then(|| self.states.get(row * self.cols + col).copied()).flatten()
    }

    /// ΔE00 of a cell to the median color; nothing where it was not measured.
    #[must_use]
    pub fn difference(&self, col: usize, row: usize) -> Option<f32> {
        let measured = matches!(self.state(col, row)?, CellState::Slab | CellState::Patch);
        measured.then(|| self.differences[row * self.cols + col])
    }

    /// How much lighter than the median a cell is, in L; nothing where it was not measured.
    #[must_use]
    pub fn lighter(&self, col: usize, row: usize) -> Option<f32> {
        self.difference(col, row).map(|_| self.lighter[row * self.cols + col])
    }
}
