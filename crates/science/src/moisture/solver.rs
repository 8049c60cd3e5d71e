//! The run through time: wet cure, drying, adaptive steps.

use units::{Duration, HumidityDifference};

use super::ambient::Drive;
use super::flow::{Face, System};
use super::grid::{Grid, Probe};
use super::history::{Balance, DryingHistory, Point};
use super::potential::{Potential, Shape};
use super::step::Stepper;
use super::{Accuracy, DryingError, DryingSlab, SelfDesiccation, Sides, Surface};

/// Longest step under air that changes, seconds: within a day the air is averaged, not followed.
const LONGEST_STEP_IN_SERIES: f64 = 86_400.0;

/// Room for runs of the solver. One run after another in the same workspace allocates only its
/// history; each thread has its own. The result does not depend on what ran before.
#[derive(Debug, Clone, Default)]
pub struct Workspace {
    grid: Option<Grid>,
    shape: Option<Shape>,
    potential: Potential,
    drive: Drive,
    stepper: Stepper,
    cells: Vec<f64>,
}

/// What is followed at each point: a probe, or the mean of all cells.
enum Reader {
    Cells(Probe),
    Mean,
}

impl DryingSlab {
    /// Follows the humidity at the points for the given time since placing.
    ///
    /// Solves ∂H/∂t = ∂/∂x(D(H) ∂H/∂x) - s(t) (Bažant and Najjar 1972, Model Code 1990, grade M)
    /// by finite volumes with fluxes as differences of the Kirchhoff potential. Checked against 16
    /// solved cases and Crank's series (grade V by computation): at the default accuracy within
    /// 1e-3 of RH.
    ///
    /// # Errors
    /// When a number of the slab is out of its range or a point lies outside the slab.
    pub fn dry(&self, horizon: Duration, points: &[Point], accuracy: Accuracy) -> Result<DryingHistory, DryingError> {
        self.dry_in(&mut Workspace::default(), horizon, points, accuracy)
    }

    /// The same in a workspace of one's own, for many runs.
    ///
    /// # Errors
    /// As [`DryingSlab::dry`].
    pub fn dry_in(
        &self,
        workspace: &mut Workspace,
        horizon: Duration,
        points: &[Point],
        accuracy: Accuracy,
    ) -> Result<DryingHistory, DryingError> {
        self.check(horizon)?;
        let accuracy = accuracy.check()?;
        workspace.prepare(self, accuracy);
        let grid = workspace.grid.as_ref().expect("prepare has made the grid");
        let readers = points.iter().map(|p| self.reader(*p, grid)).collect::<Result<Vec<_>, _>>()?;
        let mut run = Run {
            slab: self,
            grid,
            potential: &workspace.potential,
            drive: &mut workspace.drive,
            stepper: &mut workspace.stepper,
            cells: &mut workspace.cells,
            readers,
            tolerance: accuracy.tolerance,
            left: 0.0,
            history: DryingHistory {
                points: points.len(),
                times: Vec::with_capacity(128),
                values: Vec::with_capacity(128 * points.len()),
                slopes: Vec::with_capacity(128 * points.len()),
                drying_from: self.wet_cure.as_seconds(),
                balance: Balance {
                    lost_by_cells: HumidityDifference::points(0.0),
                    left_through_faces: HumidityDifference::points(0.0),
                    taken_by_hydration: HumidityDifference::points(0.0),
                },
            },
        };
        let (cure, end) = (self.wet_cure.as_seconds(), horizon.as_seconds());
        if cure > 0.0 {
            run.advance(0.0, cure.min(end), true)?;
        }
        if end > cure {
            run.advance(cure, end, false)?;
        }
        Ok(run.finish(end))
    }

    fn reader(&self, point: Point, grid: &Grid) -> Result<Reader, DryingError> {
        let depth = match point {
            Point::Mean => return Ok(Reader::Mean),
            Point::Probe => self.probe_depth(),
            Point::Deepest => self.sides.path(self.thickness),
            Point::Depth(depth) => depth,
        };
        let share = depth / self.thickness;
        if (0.0..=1.0).contains(&share) {
            Ok(Reader::Cells(grid.probe(share)))
        } else {
            Err(DryingError::Depth { depth, thickness: self.thickness })
        }
    }
}

impl Workspace {
    fn prepare(&mut self, slab: &DryingSlab, accuracy: Accuracy) {
        let cells = match slab.sides {
            Sides::One => accuracy.cells,
            Sides::Two => 2 * accuracy.cells,
        };
        if !self.grid.as_ref().is_some_and(|g| g.sides == slab.sides && g.cells() == cells) {
            self.grid = Some(Grid::new(accuracy.cells, slab.sides));
            self.stepper.resize(cells);
            self.cells.resize(cells, 0.0);
        }
        if self.shape != Some(slab.concrete.shape) {
            self.potential.rebuild(&slab.concrete.shape);
            self.shape = Some(slab.concrete.shape);
        }
        self.drive.rebuild(&slab.ambient, &self.potential, |t| slab.concrete.pace(t));
        self.cells.fill(slab.initial.as_share());
        self.stepper.scratch.face = [slab.initial.as_share(); 2];
    }
}

impl SelfDesiccation {
    /// Humidity taken up by a time since placing, share of 1.
    fn taken(&self, seconds: f64) -> f64 {
        -self.fall.as_share() * libm::expm1(-seconds / self.time_constant.as_seconds())
    }

    /// How fast it is taken up, 1/s.
    fn rate(&self, seconds: f64) -> f64 {
        let constant = self.time_constant.as_seconds();
        self.fall.as_share() / constant * libm::exp(-seconds / constant)
    }
}

/// One run in progress.
struct Run<'a> {
    slab: &'a DryingSlab,
    grid: &'a Grid,
    potential: &'a Potential,
    drive: &'a mut Drive,
    stepper: &'a mut Stepper,
    cells: &'a mut [f64],
    readers: Vec<Reader>,
    tolerance: f64,
    /// Moisture that has left through the faces.
    left: f64,
    history: DryingHistory,
}

impl<'a> Run<'a> {
    fn taken(&self, seconds: f64) -> f64 {
        self.slab.self_desiccation.map_or(0.0, |s| s.taken(seconds))
    }

    /// The system over a step; the air and the sink enter as their means over it.
    fn system(&mut self, from: f64, to: f64, wet: bool) -> System<'a> {
        let slab = self.slab;
        let air = self.drive.mean(from, to);
        let thickness = slab.thickness.as_meters();
        let diffusivity = slab.concrete.saturated.as_square_meters_per_second() * air.pace;
        let top = match slab.surface {
            _ if wet => Face::Held { potential: self.potential.at(1.0).0 },
            Surface::AtAmbient => Face::Held { potential: air.potential },
            Surface::Film(film) => Face::Film {
                coefficient: film.as_meters_per_second() * thickness / diffusivity,
                humidity: air.humidity,
            },
        };
        System {
            grid: self.grid,
            potential: self.potential,
            top,
            bottom: if slab.sides == Sides::Two { top } else { Face::Sealed },
            speed: diffusivity / (thickness * thickness),
            sink: (self.taken(to) - self.taken(from)) / (to - from),
        }
    }

    /// Steps from one moment to another under one kind of surface.
    fn advance(&mut self, from: f64, to: f64, wet: bool) -> Result<(), DryingError> {
        let series = self.slab.ambient.is_series();
        let mut time = from;
        let mut length = self.first_step(from, to, wet);
        while time < to {
            length = length.min(self.longest_step(time));
            // The last step takes what is left, so that no sliver remains.
            let mut end = if time + 1.01 * length >= to { to } else { time + length };
            let mut system = self.system(time, end, wet);
            self.stepper.start(&system, self.cells);
            self.record(time, system.sink);
            let step = loop {
                let step = self.stepper.attempt(&system, self.cells, end - time, self.tolerance);
                // Order 2 is estimated, so the error goes with the cube of the length.
                let factor = (0.9 / libm::cbrt(step.error.max(1e-9))).clamp(0.2, 5.0);
                length = (end - time) * factor;
                if step.error <= 1.0 {
                    break step;
                }
                if !(length > 1e-6 && step.error.is_finite()) {
                    return Err(DryingError::Stuck(Duration::seconds(time)));
                }
                end = time + length;
                system = self.system(time, end, wet);
                if series || self.slab.self_desiccation.is_some() {
                    self.stepper.start(&system, self.cells);
                }
            };
            self.cells.copy_from_slice(&self.stepper.next);
            self.left += step.left;
            time = end;
        }
        // The slope at the end under this surface: the next one may differ.
        let system = self.system(to - 1e-3 * (to - from), to, wet);
        self.stepper.start(&system, self.cells);
        self.record(to, system.sink);
        Ok(())
    }

    /// The error estimate cannot see what air and hydration do within a step, since both enter as
    /// means, so the step is kept short where they change.
    fn longest_step(&self, time: f64) -> f64 {
        let air = if self.slab.ambient.is_series() { LONGEST_STEP_IN_SERIES } else { f64::INFINITY };
        match self.slab.self_desiccation.map(|s| s.time_constant.as_seconds()) {
            // After ten time constants the rest is 5e-5 of the fall.
            Some(constant) if time < 10.0 * constant => air.min(constant / 4.0),
            _ => air,
        }
    }

    /// The time in which the first cell feels its face.
    fn first_step(&mut self, from: f64, to: f64, wet: bool) -> f64 {
        let speed = self.system(from, to, wet).speed;
        (self.grid.size[0] * self.grid.size[0] / speed).min(to - from)
    }

    /// Notes the humidity and its rate at each point; the rate with the sink of this moment in
    /// place of its mean over the step.
    fn record(&mut self, time: f64, mean_sink: f64) {
        self.history.times.push(time);
        let sink_excess = mean_sink - self.slab.self_desiccation.map_or(0.0, |s| s.rate(time));
        let (cells, rate, size) = (&*self.cells, &self.stepper.rate, &self.grid.size);
        for reader in &self.readers {
            let (value, slope): (f64, f64) = match reader {
                Reader::Cells(probe) => (
                    probe.read(cells),
                    (0..4).map(|k| probe.weights[k] * rate[probe.cells[k]] / size[probe.cells[k]]).sum(),
                ),
                Reader::Mean => (cells.iter().zip(size).map(|(h, v)| h * v).sum(), rate.iter().sum()),
            };
            self.history.values.push(value);
            self.history.slopes.push(slope + sink_excess);
        }
    }

    fn finish(mut self, end: f64) -> DryingHistory {
        let now: f64 = self.cells.iter().zip(&self.grid.size).map(|(h, v)| h * v).sum();
        let start: f64 = self.grid.size.iter().sum::<f64>() * self.slab.initial.as_share();
        let points = |share: f64| HumidityDifference::points(100.0 * share);
        self.history.balance = Balance {
            lost_by_cells: points(start - now),
            left_through_faces: points(self.left),
            taken_by_hydration: points(self.taken(end)),
        };
        self.history
    }
}
