//! A slab that dries, as the solver wants it described.

use units::{Duration, Fraction, Length, RelativeHumidity, Speed};

use super::{Ambient, Concrete, DryingError};

/// Which faces lose moisture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sides {
    /// The top only: on a vapor retarder or on ground that gives and takes nothing.
    One,
    /// Top and bottom alike: a suspended slab.
    Two,
}

impl Sides {
    /// The distance moisture travels at most: to the bottom, or to the middle.
    #[must_use]
    pub fn path(self, thickness: Length) -> Length {
        match self {
            Self::One => thickness,
            Self::Two => thickness / 2.0,
        }
    }

    /// Depth of the humidity probe: 40 % of the thickness drying one side, 20 % drying two
    /// (ASTM F2170, from memory). Part of the model, which tells the humidity of a slab by it; the
    /// trade facts hold the same shares, and a test of the calculations demands that they agree.
    #[must_use]
    pub fn probe_depth(self, thickness: Length) -> Length {
        match self {
            Self::One => thickness * 0.4,
            Self::Two => thickness * 0.2,
        }
    }
}

/// How the dried face meets the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Surface {
    /// The face takes the humidity of the air at once.
    AtAmbient,
    /// A film resists: D ∂H/∂x = f(Hs - Ha), f in m/s (about 1e-8 to 1e-7 for a bare face; M).
    Film(Speed),
}

/// Humidity taken up by hydration without any drying: H falls by `fall`·(1 - exp(-t/τ)).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SelfDesiccation {
    /// The fall of humidity in the end, as a share of 1 (0.05 is 5 points of RH).
    pub fall: Fraction,
    /// τ, since placing.
    pub time_constant: Duration,
}

/// A slab that dries from placing on.
#[derive(Debug, Clone, PartialEq)]
pub struct DryingSlab {
    /// 10 mm to 2 m.
    pub thickness: Length,
    /// Which faces dry.
    pub sides: Sides,
    /// How fast moisture moves in it.
    pub concrete: Concrete,
    /// Humidity in the pores at the start, the same at every depth.
    pub initial: RelativeHumidity,
    /// The air.
    pub ambient: Ambient,
    /// How the face meets the air.
    pub surface: Surface,
    /// How long the face is kept wet (at 100 %) before it may dry.
    pub wet_cure: Duration,
    /// Humidity taken up by hydration, if any is counted.
    pub self_desiccation: Option<SelfDesiccation>,
}

/// How finely the solver works.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Accuracy {
    /// Cells from a dried face to the plane no moisture crosses; 8 to 4000.
    pub cells: usize,
    /// Error allowed in one time step, RH as a share of 1; 1e-12 to 1e-2.
    pub tolerance: f64,
}

impl Accuracy {
    /// For ensembles: errs less than 1e-3 in RH and 1.5 % in time on the reference cases, which is
    /// a tenth of what a probe can tell, in a quarter of the time of the default.
    pub const ENSEMBLE: Self = Self { cells: 24, tolerance: 5e-4 };
}

impl Default for Accuracy {
    /// Errs less than 2e-4 in RH and 0.3 % in time on the reference cases.
    fn default() -> Self {
        Self { cells: 48, tolerance: 1e-4 }
    }
}

pub(crate) fn checked_thickness(thickness: Length) -> Result<Length, DryingError> {
    if (0.01..=2.0).contains(&thickness.as_meters()) { Ok(thickness) } else { Err(DryingError::Thickness(thickness)) }
}

impl DryingSlab {
    /// A slab saturated at the start, its face at the humidity of the air at once, without wet cure.
    #[must_use]
    pub fn new(thickness: Length, sides: Sides, concrete: Concrete, ambient: Ambient) -> Self {
        let initial = RelativeHumidity::percent(100.0).expect("100 % is within 0 to 100 %");
        Self {
            thickness,
            sides,
            concrete,
            initial,
            ambient,
            surface: Surface::AtAmbient,
            wet_cure: Duration::ZERO,
            self_desiccation: None,
        }
    }

    /// Depth of the humidity probe in this slab.
    #[must_use]
    pub fn probe_depth(&self) -> Length {
        self.sides.probe_depth(self.thickness)
    }

    pub(crate) fn check(&self, horizon: Duration) -> Result<(), DryingError> {
        checked_thickness(self.thickness)?;
        if !(1e-13..=1e-6).contains(&self.concrete.saturated.as_square_meters_per_second()) {
            return Err(DryingError::Diffusivity(self.concrete.saturated));
        }
        if !(horizon.as_days() > 0.0 && horizon.as_days() <= 36_500.0) {
            return Err(DryingError::Horizon(horizon));
        }
        if !(self.wet_cure.as_days() >= 0.0 && self.wet_cure.as_days() <= 36_500.0) {
            return Err(DryingError::Horizon(self.wet_cure));
        }
        if let Surface::Film(film) = self.surface
            && !(film.as_meters_per_second() > 0.0 && film.as_meters_per_second().is_finite())
        {
            return Err(DryingError::Film(film));
        }
        if let Some(sink) = self.self_desiccation
            && !(sink.time_constant.as_seconds() > 0.0 && sink.fall.as_share() < 1.0)
        {
            return Err(DryingError::SelfDesiccation);
        }
        Ok(())
    }
}

impl Accuracy {
    pub(crate) fn check(self) -> Result<Self, DryingError> {
        if (8..=4000).contains(&self.cells) && (1e-12..=1e-2).contains(&self.tolerance) {
            Ok(self)
        } else {
            Err(DryingError::Accuracy { cells: self.cells, tolerance: self.tolerance })
        }
    }
}
