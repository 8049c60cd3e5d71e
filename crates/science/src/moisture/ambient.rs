//! The air over the slab, constant or by spells, and what it does to the surface over a step.

use std::sync::Arc;

use units::{Duration, HumidityDifference, RelativeHumidity, Temperature};

use super::DryingError;
use super::potential::Potential;

/// Air of one kind until the next spell begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spell {
    /// When it begins, since placing.
    pub from: Duration,
    /// Relative humidity of the air.
    pub humidity: RelativeHumidity,
    /// Temperature of the slab, for which that of the air stands in.
    pub temperature: Temperature,
}

/// The air over the slab from placing on; the last spell lasts.
#[derive(Debug, Clone, PartialEq)]
pub struct Ambient {
    spells: Arc<[Spell]>,
    /// Added to every humidity, share of 1.
    shift: f64,
}

impl Ambient {
    /// The same air all the time.
    #[must_use]
    pub fn constant(humidity: RelativeHumidity, temperature: Temperature) -> Self {
        Self { spells: [Spell { from: Duration::ZERO, humidity, temperature }].into(), shift: 0.0 }
    }

    /// Air by spells, such as daily means of a weather series. Swings shorter than a time step are
    /// averaged as the slab averages them: the surface's potential, not its humidity.
    ///
    /// # Errors
    /// When there are none, the first is not at 0, or they are out of order.
    pub fn series(spells: &[Spell]) -> Result<Self, DryingError> {
        match spells.first() {
            Some(first) if first.from == Duration::ZERO => {}
            _ => return Err(DryingError::Spells { index: 0 }),
        }
        if let Some(index) = spells.windows(2).position(|s| s[1].from <= s[0].from || s[1].from.as_days().is_nan()) {
            return Err(DryingError::Spells { index: index + 1 });
        }
        Ok(Self { spells: spells.into(), shift: 0.0 })
    }

    /// The same air, damper by so much (negative: drier), kept within 0 to 100 %.
    #[must_use]
    pub fn shifted(&self, by: HumidityDifference) -> Self {
        Self { spells: Arc::clone(&self.spells), shift: self.shift + by.as_share() }
    }

    /// The first spell, as given.
    #[must_use]
    pub fn first(&self) -> Spell {
        self.spells[0]
    }

    pub(crate) fn is_series(&self) -> bool {
        self.spells.len() > 1
    }
}

/// What the air does over one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Air {
    /// Mean of diffusivity over that at the reference temperature.
    pub(crate) pace: f64,
    /// Mean humidity, share of 1.
    pub(crate) humidity: f64,
    /// Mean potential at the surface.
    pub(crate) potential: f64,
}

/// Running integrals of the air, so that a mean over any step costs two look-ups.
#[derive(Debug, Clone, Default)]
pub(crate) struct Drive {
    starts: Vec<f64>,
    air: Vec<Air>,
    /// Integrals from 0 to each start.
    sums: Vec<Air>,
    cursor: usize,
}

impl Drive {
    pub(crate) fn rebuild(&mut self, ambient: &Ambient, potential: &Potential, pace: impl Fn(Temperature) -> f64) {
        self.starts.clear();
        self.air.clear();
        self.sums.clear();
        self.cursor = 0;
        let mut sum = Air { pace: 0.0, humidity: 0.0, potential: 0.0 };
        for (i, spell) in ambient.spells.iter().enumerate() {
            let humidity = (spell.humidity.as_share() + ambient.shift).clamp(0.0, 1.0);
            let air = Air { pace: pace(spell.temperature), humidity, potential: potential.at(humidity).0 };
            self.starts.push(spell.from.as_seconds());
            self.air.push(air);
            self.sums.push(sum);
            if let Some(next) = ambient.spells.get(i + 1) {
                sum = sum.plus(air, (next.from - spell.from).as_seconds());
            }
        }
    }

    /// The mean over `from` to `to` (seconds). Steps come in order, so the cursor moves on or
    /// back by a few spells at most.
    pub(crate) fn mean(&mut self, from: f64, to: f64) -> Air {
        if self.starts.len() == 1 {
            return self.air[0];
        }
        let start = self.integral(from);
        let end = self.integral(to);
        let part = 1.0 / (to - from);
        Air {
            pace: (end.pace - start.pace) * part,
            humidity: (end.humidity - start.humidity) * part,
            potential: (end.potential - start.potential) * part,
        }
    }

    fn integral(&mut self, time: f64) -> Air {
        while self.cursor > 0 && self.starts[self.cursor] > time {
            self.cursor -= 1;
        }
        while self.cursor + 1 < self.starts.len() && self.starts[self.cursor + 1] <= time {
            self.cursor += 1;
        }
        self.sums[self.cursor].plus(self.air[self.cursor], time - self.starts[self.cursor])
    }
}

impl Air {
    fn plus(self, air: Self, seconds: f64) -> Self {
        Self {
            pace: self.pace + air.pace * seconds,
            humidity: self.humidity + air.humidity * seconds,
            potential: self.potential + air.potential * seconds,
        }
    }
}
