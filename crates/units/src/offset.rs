//! Signed distances along the axes of a plan.

use std::ops::{Add, Sub};

use crate::{Length, Notation, Problem, ReadError};

const ACCEPTED: &str = "0, 12' 6\", -3 ft, 3.81 m; at most 10 km either way";

const LARGEST_METERS: f64 = 10_000.0;

/// A signed distance along one of the plan's two axes: right of the origin or up from it is
/// positive. Range −10 km to 10 km when read.
///
/// Reads what [`Length`] reads, with an optional leading minus; a bare `0` needs no unit.
/// ```
/// use units::{Length, Notation, Offset};
/// assert_eq!(Offset::read("-3' 6\"")?, Offset::from(Length::feet_inches(-3.0, -6.0)));
/// # Ok::<(), units::ReadError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Offset(f64);

impl Offset {
    /// The largest distance that is read. No slab is larger; a slip of the keyboard is.
    pub const LARGEST: Length = Length::meters(LARGEST_METERS);

    /// At the origin.
    pub const ZERO: Self = Self(0.0);

    /// From a number in meters.
    #[must_use]
    pub const fn meters(value: f64) -> Self {
        Self(value)
    }

    /// As a number in meters.
    #[must_use]
    pub const fn as_meters(self) -> f64 {
        self.0
    }

    /// From a number in feet.
    #[must_use]
    pub const fn feet(value: f64) -> Self {
        Self(Length::feet(value).as_meters())
    }

    /// As a number in feet.
    #[must_use]
    pub const fn as_feet(self) -> f64 {
        Length::meters(self.0).as_feet()
    }
}

impl From<Length> for Offset {
    fn from(length: Length) -> Self {
        Self(length.as_meters())
    }
}

impl From<Offset> for Length {
    /// Keeps the sign.
    fn from(offset: Offset) -> Self {
        Self::meters(offset.0)
    }
}

impl Add for Offset {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Offset {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Notation for Offset {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError { quantity: "offset", text: text.to_owned(), problem, accepted: ACCEPTED };
        let typed = text.trim();
        if typed == "0" {
            return Ok(Self::ZERO);
        }
        let (sign, rest) = typed.strip_prefix(['-', '−', '–']).map_or((1.0, typed), |rest| (-1.0, rest));
        let meters = sign * Length::read(rest).map_err(|e| fail(e.problem))?.as_meters();
        if meters.abs() > LARGEST_METERS {
            return Err(fail(Problem::OutOfRange { low: "-10 km", high: "10 km" }));
        }
        Ok(Self(meters))
    }
}
