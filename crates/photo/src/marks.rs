//! Separate marks in the picture: things that are not slab, and small strong spots.

use crate::cells::Cells;
use crate::field::{grown, share, smoothed};
use crate::score::Score;

/// Changes no bare slab shows, in ln: wet concrete gives back half to a third of the light of dry
/// (about −0.7 to −1.0), bloom at most about twice.
const DARKEST: f32 = -0.95;
const BRIGHTEST: f32 = 0.85;
/// Change of red against blue, in ln, that no damp and no bloom makes.
const STRANGEST: f32 = 0.40;
/// ΔE00 that counts as part of a thing when it touches it.
const PART_OF_IT: f32 = 6.0;
/// ΔE00 of a spot that stands out.
const SPOT: f32 = 3.0;

/// A group of fewer cells (0.04 % of 30 000) is noise.
pub(crate) const MIN_CELLS: usize = 12;

/// A connected group of cells.
#[derive(Debug, Clone)]
pub(crate) struct Mark {
    pub(crate) cells: Vec<usize>,
}

/// Connected groups (four neighbors) of set cells.
pub(crate) fn groups(set: &[bool], cols: usize) -> Vec<Mark> {
    let mut open = set.to_vec();
    let mut out = Vec::new();
    for start in 0..set.len() {
        if !open[start] {
            continue;
        }
        open[start] = false;
        let (mut cells, mut next) = (vec![start], 0);
        while let Some(&at) = cells.get(next) {
            next += 1;
            let (col, last) = (at % cols, set.len() - cols);
            let near = [
                (col > 0).then(|| at - 1),
                (col + 1 < cols).then(|| at + 1),
                at.checked_sub(cols),
                (at < last).then(|| at + cols),
            ];
            for other in near.into_iter().flatten() {
                if std::mem::take(&mut open[other]) {
                    cells.push(other);
                }
            }
        }
        out.push(Mark { cells });
    }
    out
}

/// Cells of things that are no slab (boots, tools, leaves), with two cells around them: changes too
/// strong for damp or bloom and what hangs on them, and smaller marks whose fine texture is
/// not that of the rest.
pub(crate) fn things(cells: &Cells, left: &[[f32; 3]], score: &Score, usable: &[bool]) -> Vec<bool> {
    let strange: Vec<bool> = (0..usable.len())
        .map(|at| {
            let change = [0, 1, 2].map(|i| score.left[i][at]);
            let tint = (change[0] - change[2]).abs().max(1.5 * (change[1] - 0.5 * (change[0] + change[2])).abs());
            usable[at] && (change[1] < DARKEST || change[1] > BRIGHTEST || tint > STRANGEST)
        })
        .collect();
    let near = grown(&strange, cells.cols, 2);
    let differs: Vec<bool> =
        (0..usable.len()).map(|at| usable[at] && (near[at] || score.difference[at] > PART_OF_IT)).collect();
    let texture = texture(left, usable, cells.cols);
    let usual = middle(&texture, usable.iter().copied());
    let mut out = vec![false; usable.len()];
    for mark in groups(&differs, cells.cols) {
        let strange_cells = mark.cells.iter().filter(|at| strange[**at]).count();
        let strong = strange_cells >= 6 && share(strange_cells, mark.cells.len()) > 0.15;
        let mut inside = vec![false; usable.len()];
        mark.cells.iter().for_each(|at| inside[*at] = true);
        let own = middle(&texture, inside.iter().copied());
        let small = share(mark.cells.len(), usable.len()) < 0.05;
        let other = small && mark.cells.len() >= 40 && !(0.4..=2.2).contains(&(own / usual.max(1e-6)));
        if strong || other {
            mark.cells.iter().for_each(|at| out[*at] = true);
        }
    }
    grown(&out, cells.cols, 2)
}

/// Size of what changes from cell to cell, in ln.
fn texture(left: &[[f32; 3]], usable: &[bool], cols: usize) -> Vec<f32> {
    let green: Vec<f32> = left.iter().map(|cell| cell[1]).collect();
    let smooth = smoothed(&green, usable, cols, 1.0);
    green.iter().zip(&smooth).map(|(v, s)| (v - s).abs()).collect()
}

fn middle(values: &[f32], chosen: impl Iterator<Item = bool>) -> f32 {
    let mut values: Vec<f32> = values.iter().zip(chosen).filter(|(_, set)| *set).map(|(v, _)| *v).collect();
    crate::field::quantile(&mut values, 0.5)
}

/// What stands out of an otherwise even slab.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Spots {
    /// Share of the usable cells in spots of at least some cells.
    pub(crate) share: f64,
    /// How many there are.
    pub(crate) count: usize,
}

/// Groups of cells that stand out.
pub(crate) fn spots(score: &Score, usable: &[bool], cols: usize) -> Spots {
    let out: Vec<bool> = score.difference.iter().zip(usable).map(|(d, ok)| *ok && *d > SPOT).collect();
    let all = usable.iter().filter(|ok| **ok).count();
    let marks: Vec<usize> =
        groups(&out, cols).iter().map(|mark| mark.cells.len()).filter(|n| *n >= MIN_CELLS).collect();
    Spots { share: share(marks.iter().sum(), all), count: marks.len() }
}
