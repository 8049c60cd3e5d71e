//! Flow of moisture between cells and through the faces, and how it changes with humidity.

use super::grid::Grid;
use super::potential::Potential;

/// What a face does over one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Face {
    /// Nothing crosses it.
    Sealed,
    /// Its potential is given.
    Held { potential: f64 },
    /// A film resists; the coefficient is f·L/D1 at the pace of the step.
    Film { coefficient: f64, humidity: f64 },
}

/// Flow out through a face and its change with the potential of the cell behind it.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(crate) struct Outflow {
    pub(crate) flow: f64,
    pub(crate) by_potential: f64,
}

/// The rates at one state.
pub(crate) struct System<'a> {
    pub(crate) grid: &'a Grid,
    pub(crate) potential: &'a Potential,
    pub(crate) top: Face,
    pub(crate) bottom: Face,
    /// D1·pace/L², 1/s.
    pub(crate) speed: f64,
    /// Humidity lost everywhere by self-desiccation, 1/s.
    pub(crate) sink: f64,
}

impl System<'_> {
    /// Fills `rate` with cell size times dH/dt, and `potential` and `slope` with Φ and dΦ/dH.
    ///
    /// Each flow between two cells is added to one and taken from the other, so what the cells
    /// lose is what the faces and the sink take, to rounding.
    pub(crate) fn rates(&self, cells: &[f64], scratch: &mut Scratch, rate: &mut [f64]) -> [Outflow; 2] {
        let count = cells.len();
        let potential = &mut scratch.potential[..count];
        let slope = &mut scratch.slope[..count];
        for ((h, p), d) in cells.iter().zip(potential.iter_mut()).zip(slope.iter_mut()) {
            (*p, *d) = self.potential.at(*h);
        }
        let size = &self.grid.size;
        let top = self.outflow(self.top, 2.0 / size[0], cells[0], potential[0], &mut scratch.face[0]);
        let last = count - 1;
        let bottom = self.outflow(self.bottom, 2.0 / size[last], cells[last], potential[last], &mut scratch.face[1]);
        let mut from_above = -top.flow;
        for (i, between) in self.grid.between.iter().enumerate() {
            let from_below = between * (potential[i + 1] - potential[i]);
            rate[i] = self.speed * (from_above + from_below) - self.sink * size[i];
            from_above = -from_below;
        }
        rate[last] = self.speed * (from_above - bottom.flow) - self.sink * size[last];
        [top, bottom]
    }

    fn outflow(&self, face: Face, half: f64, cell: f64, cell_potential: f64, guess: &mut f64) -> Outflow {
        match face {
            Face::Sealed => Outflow::default(),
            Face::Held { potential } => Outflow { flow: half * (cell_potential - potential), by_potential: half },
            Face::Film { coefficient, humidity } => {
                let (mut low, mut high) = (cell.min(humidity), cell.max(humidity));
                let mut surface = guess.clamp(low, high);
                let mut slope = 1.0;
                // g(Hs) = b(Hs - Ha) - c(Φ - Φ(Hs)) rises with Hs, so Newton kept in a bracket ends;
                // 60 halvings exhaust a double, Newton needs three or four steps.
                for _ in 0..60 {
                    let (potential, diffusivity) = self.potential.at(surface);
                    slope = diffusivity;
                    let excess = coefficient * (surface - humidity) - half * (cell_potential - potential);
                    if excess > 0.0 {
                        high = surface;
                    } else {
                        low = surface;
                    }
                    let step = excess / (coefficient + half * slope);
                    let next = surface - step;
                    surface = if next >= low && next <= high { next } else { 0.5 * (low + high) };
                    if step.abs() < 1e-14 {
                        break;
                    }
                }
                *guess = surface;
                Outflow {
                    flow: coefficient * (surface - humidity),
                    by_potential: coefficient * half / (coefficient + half * slope),
                }
            }
        }
    }
}

/// Room for the potentials of one state, and the last humidity found at each filmed face.
#[derive(Debug, Clone, Default)]
pub(crate) struct Scratch {
    pub(crate) potential: Vec<f64>,
    pub(crate) slope: Vec<f64>,
    pub(crate) face: [f64; 2],
}
