//! The noise of a single drop, from repeated drops.

use units::Length;

use super::drop::Drops;
use super::{AbsorbencyError, DropTest, LogVariance};

/// Drops this near to each other are repeats at one place: a hand's width, since no drop can be set
/// on a spot still wet. Our choice.
pub const SAME_PLACE: Length = Length::millimeters(100.0);

/// Least t² taken for true: a factor of 1.15 for drop size and for the eye that calls the end.
/// Our judgment, no source.
const FLOOR: f64 = 0.02;
/// Degrees of freedom below which repeats do not fix the nugget: three drops at one place.
const FEWEST_DEGREES: usize = 2;

/// What repeated drops say of the noise of one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Repeats {
    /// Pooled variance of ln(seconds) within places.
    pub variance: LogVariance,
    /// Drops at repeated places less those places.
    pub degrees_of_freedom: usize,
    /// Places with two or more timed drops.
    pub places: usize,
}

/// Pooled variance of repeated drops, Σ(y − ȳ)²/Σ(n − 1) over places with two or more timed drops
/// (within-group mean square; grade M). Drops that still stood are left out. None without repeats.
///
/// # Errors
/// When a drop has no place or no time above 0.
pub fn repeats(drops: &[DropTest]) -> Result<Option<Repeats>, AbsorbencyError> {
    Ok(pooled(&Drops::read(drops)?))
}

fn pooled(drops: &Drops) -> Option<Repeats> {
    let (mut squares, mut degrees_of_freedom, mut places) = (0.0, 0, 0);
    for group in drops.groups() {
        let logs: Vec<f64> = group.iter().filter(|i| !drops.standing[**i]).map(|i| drops.logs[*i]).collect();
        if logs.len() < 2 {
            continue;
        }
        let mean = logs.iter().sum::<f64>() / logs.len() as f64;
        squares += logs.iter().map(|y| (y - mean) * (y - mean)).sum::<f64>();
        degrees_of_freedom += logs.len() - 1;
        places += 1;
    }
    (degrees_of_freedom > 0).then(|| Repeats {
        variance: LogVariance::computed(squares / degrees_of_freedom as f64),
        degrees_of_freedom,
        places,
    })
}

/// How the fit treats t².
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Nugget {
    /// Held at this value, above 0.
    Fixed(LogVariance),
    /// Fitted, but never below this value, above 0. Single drops cannot tell noise from small
    /// spots, so a fitted value above the floor is no measurement of the noise.
    AtLeast(LogVariance),
}

/// Where the nugget of a fit comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NuggetBasis {
    /// From repeated drops.
    Repeats(Repeats),
    /// From repeated drops that agreed better than drops can; raised to the floor.
    RepeatsRaised(Repeats),
    /// There were too few repeats and the fit stayed on the floor: give 3 to 5 drops at one place.
    Floor,
    /// There were too few repeats and the fit went above the floor; noise and small spots are not
    /// told apart: give 3 to 5 drops at one place.
    NotIdentified,
    /// The caller gave it.
    Given,
}

/// The usual rule: repeats of at least two degrees of freedom (three drops at one place) fix the
/// nugget, never below the floor; otherwise it is fitted above the floor.
pub(crate) fn by_rule(drops: &Drops) -> (Nugget, Option<NuggetBasis>) {
    let floor = LogVariance::computed(FLOOR);
    match pooled(drops) {
        Some(found) if found.degrees_of_freedom >= FEWEST_DEGREES => {
            if found.variance > floor {
                (Nugget::Fixed(found.variance), Some(NuggetBasis::Repeats(found)))
            } else {
                (Nugget::Fixed(floor), Some(NuggetBasis::RepeatsRaised(found)))
            }
        }
        _ => (Nugget::AtLeast(floor), None),
    }
}
