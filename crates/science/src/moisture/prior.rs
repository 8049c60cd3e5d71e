//! How wrong the numbers of a slab may be, and the slabs that follow.

use units::{Fraction, HumidityDifference, RelativeHumidity};

use super::{DryingError, DryingSlab};
use crate::chance::{Seed, Stream, normal_cdf};

/// Numbers of a slab that are not known exactly.
pub(crate) const UNKNOWNS: usize = 8;

/// One possible slab: a standard normal score for each unknown.
pub(crate) type Scores = [f64; UNKNOWNS];

/// How far each number of the described slab may be off.
///
/// A *factor* is a geometric standard deviation: 1.6 puts two slabs in three between 1/1.6 and 1.6
/// times the described number. 1 means exactly known. All values here are judgment (grade M):
/// recalled drying tables for one mix disagree by a factor of 1.3 to 2.7 in time
/// (`drying_calibration.csv`), so the diffusivity is known to a factor of 1.6 at best; the rest is
/// what a tape, a thermo-hygrometer and a mix sheet leave open. Whether the bands that follow are
/// wide enough is measured on slabs drawn from a wider world: `reference/forecast/calibration.md`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Factor on the diffusivity; 1 to 5. Below 1.4 it claims more than any table supports.
    pub diffusivity_factor: f64,
    /// Standard deviation of the air's mean humidity; 0 to 20 points.
    pub ambient: HumidityDifference,
    /// The thickness lies evenly within plus or minus this share; below 0.5.
    pub thickness: Fraction,
    /// Factor on α, the diffusivity left in dry concrete; 1 to 5.
    pub dry_share_factor: f64,
    /// Standard deviation of Hc, the knee of the diffusivity; 0 to 10 points.
    pub knee: HumidityDifference,
    /// Factor on the exponent n; 1 to 5.
    pub exponent_factor: f64,
    /// The humidity at the start lies evenly between the described one and this much below it, for
    /// water that hydration took; 0 to 20 points.
    pub start_below: HumidityDifference,
    /// Standard deviation of what the equation itself leaves out, as a steady difference between
    /// slab and solution; 0 to 10 points. No number of readings of one slab takes it away
    /// entirely, since the probe may be off by as much.
    pub equation: HumidityDifference,
}

impl Default for Spread {
    fn default() -> Self {
        Self {
            diffusivity_factor: 1.6,
            ambient: HumidityDifference::points(8.0),
            thickness: Fraction::share(0.1).expect("0.1 is a share"),
            dry_share_factor: 2.0,
            knee: HumidityDifference::points(5.0),
            exponent_factor: 1.7,
            start_below: HumidityDifference::points(6.0),
            equation: HumidityDifference::points(2.0),
        }
    }
}

impl Spread {
    pub(crate) fn check(&self) -> Result<(), DryingError> {
        let fail = |field, value, accepted| Err(DryingError::Spread { field, value, accepted });
        for (field, value) in [
            ("diffusivity factor", self.diffusivity_factor),
            ("dry share factor", self.dry_share_factor),
            ("exponent factor", self.exponent_factor),
        ] {
            if !(1.0..=5.0).contains(&value) {
                return fail(field, value, "1 to 5");
            }
        }
        for (field, value, most, accepted) in [
            ("ambient spread", self.ambient, 20.0, "0 to 20 points"),
            ("knee spread", self.knee, 10.0, "0 to 10 points"),
            ("start below", self.start_below, 20.0, "0 to 20 points"),
            ("equation spread", self.equation, 10.0, "0 to 10 points"),
        ] {
            if !(0.0..=most).contains(&value.as_points()) {
                return fail(field, value.as_points(), accepted);
            }
        }
        if self.thickness.as_share() >= 0.5 {
            return fail("thickness spread", self.thickness.as_share(), "a share below 0.5");
        }
        Ok(())
    }

    /// The slab that lies this many standard deviations off the described one. Each number is
    /// kept where the solver takes it: the knee within 50 to 95 %, α within 0.005 to 1.
    pub(crate) fn slab(&self, described: &DryingSlab, scores: &Scores) -> DryingSlab {
        let times = |factor: f64, score: f64| libm::exp(libm::log(factor) * score);
        let mut slab = described.clone();
        let concrete = &mut slab.concrete;
        concrete.saturated = concrete.saturated * times(self.diffusivity_factor, scores[0]);
        slab.ambient = slab.ambient.shifted(HumidityDifference::points(self.ambient.as_points() * scores[1]));
        slab.thickness = slab.thickness * (1.0 + self.thickness.as_share() * (2.0 * normal_cdf(scores[2]) - 1.0));
        slab.initial = humidity(slab.initial.as_share() - self.start_below.as_share() * normal_cdf(scores[6]));
        let shape = &mut concrete.shape;
        shape.dry_share = (shape.dry_share * times(self.dry_share_factor, scores[3])).clamp(0.005, 1.0);
        shape.knee = (shape.knee + self.knee.as_share() * scores[4]).clamp(0.5, 0.95);
        shape.exponent = (shape.exponent * times(self.exponent_factor, scores[5])).clamp(1.0, 60.0);
        // Drying times are what is known; the shape says how they divide over the humidities.
        concrete.saturated =
            concrete.saturated * (described.concrete.shape.drying_integral() / shape.drying_integral());
        slab
    }
}

impl Spread {
    /// What this slab's humidity lies above the solution, share of 1.
    pub(crate) fn offset(&self, scores: &Scores) -> f64 {
        self.equation.as_share() * scores[7]
    }
}

/// How many possible slabs are drawn and from which seed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Draws {
    /// 50 to 100000; 1000 gives a P10 good to about one point of RH.
    pub members: usize,
    /// The same seed gives the same forecast on any machine and any number of threads.
    pub seed: Seed,
}

/// Standard normal scores from a member's own stream.
pub(crate) fn draw_scores(stream: &mut Stream) -> Scores {
    core::array::from_fn(|_| stream.standard_normal())
}

/// A humidity from a share of 1, kept within 0 to 100 %.
pub(crate) fn humidity(share: f64) -> RelativeHumidity {
    RelativeHumidity::percent((share * 100.0).clamp(0.0, 100.0)).expect("clamped to 0 to 100 %")
}
