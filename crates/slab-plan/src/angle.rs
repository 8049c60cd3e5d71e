//! Turns at corners, bearings on the plan, and how people write them.

use std::fmt;

use units::{Notation, Problem, ReadError};

use super::taped;

const TURNS: &str = "right 90, left 45, right, left, straight, back, right 22.5, left 89°30', \
                     right 8 ft by 6 ft, 10 ft between, left 8 ft on, 3 ft across";
const BEARINGS: &str = "0 deg, 15.5 deg, 15°30', from 0 to 360";

/// A change of direction at a corner; a right turn is positive.
///
/// Reads `right 90`, `left 22.5`, `right 89°30'15"`; `right` and `left` alone are 90 degrees,
/// `straight` is none, `back` is 180. Taped, without a protractor: `right 8 ft by 6 ft, 10 ft between` (two marks
/// beside the corner), `left 8 ft on, 3 ft across` (an offset from the line of the last wall). From 0 to 360 degrees either way; a turn read beyond 180 is
/// kept as the same turn the other way.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Turn(f64);

impl Turn {
    /// No change of direction.
    pub const STRAIGHT: Self = Self(0.0);

    /// From degrees, right positive.
    #[must_use]
    pub const fn right_degrees(degrees: f64) -> Self {
        Self(degrees)
    }

    /// As degrees, right positive.
    #[must_use]
    pub const fn as_right_degrees(self) -> f64 {
        self.0
    }

    /// The same turn the other way.
    #[must_use]
    pub const fn flipped(self) -> Self {
        Self(-self.0)
    }
}

impl fmt::Display for Turn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = trimmed(self.0.abs());
        match self.0 {
            _ if size == "0" => f.write_str("straight"),
            turn if turn < 0.0 => write!(f, "left {size}°"),
            _ => write!(f, "right {size}°"),
        }
    }
}

impl Notation for Turn {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError { quantity: "turn", text: text.to_owned(), problem, accepted: TURNS };
        let folded = text.trim().to_lowercase();
        if folded.is_empty() {
            return Err(fail(Problem::Empty));
        }
        // The word may stand before the number (`right 90`) or after it (`90 right`).
        let word_end = folded.find(|c: char| !c.is_alphabetic()).unwrap_or(folded.len());
        let (word, angle) = if word_end > 0 {
            folded.split_at(word_end)
        } else {
            match folded.rsplit_once(' ') {
                Some((angle, word)) if side(word).is_some() => (word, angle),
                _ => return Err(fail(Problem::NoUnit)),
            }
        };
        let angle = angle.trim();
        match word {
            "straight" | "ahead" | "recto" if angle.is_empty() || angle == "ahead" => return Ok(Self::STRAIGHT),
            "back" | "atrás" | "atras" if angle.is_empty() => return Ok(Self(180.0)),
            _ => {}
        }
        let side = side(word).ok_or_else(|| fail(Problem::UnknownUnit(word.to_owned())))?;
        let size = match taped::turn_degrees(angle) {
            Some(taped) => taped.map_err(fail)?,
            None if angle.is_empty() => 90.0,
            None => degrees(angle).ok_or_else(|| fail(Problem::NotANumber))?,
        };
        if size < 0.0 {
            return Err(fail(Problem::Negative));
        }
        if size > 360.0 {
            return Err(fail(Problem::OutOfRange { low: "0°", high: "360°" }));
        }
        Ok(Self(half_turn(side * size)))
    }
}

/// +1 for right, −1 for left.
fn side(word: &str) -> Option<f64> {
    match word {
        "right" | "r" | "rt" | "derecha" => Some(1.0),
        "left" | "l" | "lt" | "izquierda" => Some(-1.0),
        _ => None,
    }
}

/// The same direction as a turn of at most 180 degrees.
pub(super) fn half_turn(degrees: f64) -> f64 {
    let turned = degrees.rem_euclid(360.0);
    if turned > 180.0 { turned - 360.0 } else { turned }
}

/// A direction on the plan, clockwise from plan north (straight up), 0 to below 360 degrees.
///
/// The first wall of a walk, walked straight ahead, runs plan east: 90 degrees.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Bearing(f64);

impl Bearing {
    /// From degrees clockwise from plan north; whole turns are taken off.
    #[must_use]
    pub fn degrees(degrees: f64) -> Self {
        let turned = degrees.rem_euclid(360.0);
        // A tiny negative angle rounds up to a full turn.
        Self(if turned >= 360.0 { 0.0 } else { turned })
    }

    /// As degrees clockwise from plan north.
    #[must_use]
    pub const fn as_degrees(self) -> f64 {
        self.0
    }

    /// The bearing after a turn.
    #[must_use]
    pub fn turned(self, turn: Turn) -> Self {
        Self::degrees(self.0 + turn.0)
    }

    /// The turn that leads from this bearing to another, at most half a turn.
    #[must_use]
    pub fn turn_to(self, other: Self) -> Turn {
        Turn(half_turn(other.0 - self.0))
    }

    /// Of a displacement to the right and up; `None` when it has no length.
    pub(super) fn of(right: f64, up: f64) -> Option<Self> {
        (right != 0.0 || up != 0.0).then(|| Self::degrees(libm::atan2(right, up).to_degrees()))
    }

    /// Departure (to the right) and latitude (up) of one unit along this bearing: `(sin, cos)`.
    ///
    /// Whole quarter turns are exact, so that square rooms close to the last bit.
    pub(super) fn right_and_up(self) -> (f64, f64) {
        let quarter = (self.0 / 90.0).floor();
        let rest = self.0 - 90.0 * quarter;
        let (sin, cos) = if rest == 0.0 { (0.0, 1.0) } else { libm::sincos(rest.to_radians()) };
        match quarter as u8 {
            0 => (sin, cos),
            1 => (cos, -sin),
            2 => (-sin, -cos),
            _ => (-cos, sin),
        }
    }
}

impl fmt::Display for Bearing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        const NAMES: [&str; 8] =
            ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];
        let nearest = ((self.0 / 45.0).round() as usize) % NAMES.len();
        write!(f, "plan {} ({}°)", NAMES[nearest], trimmed(self.0))
    }
}

impl Notation for Bearing {
    fn read(text: &str) -> Result<Self, ReadError> {
        let fail = |problem| ReadError { quantity: "bearing", text: text.to_owned(), problem, accepted: BEARINGS };
        let folded = text.trim().to_lowercase();
        if folded.is_empty() {
            return Err(fail(Problem::Empty));
        }
        let size = degrees(&folded).ok_or_else(|| fail(Problem::NotANumber))?;
        if !(0.0..=360.0).contains(&size) {
            return Err(fail(Problem::OutOfRange { low: "0°", high: "360°" }));
        }
        Ok(Self::degrees(size))
    }
}

/// At most two decimals, without trailing zeros.
fn trimmed(degrees: f64) -> String {
    let text = format!("{degrees:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// `90`, `22.5 deg`, `89°30'`, `89 d 30 m 15 s`, as decimal degrees.
fn degrees(text: &str) -> Option<f64> {
    const UNITS: [(&[&str], f64); 3] = [
        (&["°", "º", "deg", "degree", "degrees", "d", "grados", "grado"], 1.0),
        (&["'", "′", "’", "min", "m"], 60.0),
        (&["\"", "″", "”", "''", "sec", "s"], 3600.0),
    ];
    let mut total = 0.0;
    let mut rest = text.trim();
    let mut next = 0;
    while !rest.is_empty() {
        let number_end =
            rest.char_indices().find(|(i, c)| !(c.is_ascii_digit() || matches!(c, '.' | ',') || *i == 0 && *c == '-'));
        let (number, after) = rest.split_at(number_end.map_or(rest.len(), |(i, _)| i));
        let value: f64 = number.replace(',', ".").parse().ok()?;
        let after = after.trim_start();
        let unit_end = after.find(|c: char| c.is_ascii_digit() || c.is_whitespace()).unwrap_or(after.len());
        let (unit, following) = after.split_at(unit_end);
        let place = match unit {
            "" => next,
            _ => UNITS.iter().position(|(words, _)| words.contains(&unit))?,
        };
        // Degrees, minutes, seconds in that order; minutes and seconds below sixty.
        if place < next || place >= UNITS.len() || (place > 0 && !(0.0..60.0).contains(&value)) {
            return None;
        }
        total += value / UNITS[place].1;
        next = place + 1;
        rest = following.trim_start();
    }
    (next > 0).then_some(total)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_read_in_every_accepted_form() {
        for (text, degrees) in [
            ("right 90", 90.0),
            ("Right", 90.0),
            ("left", -90.0),
            ("left 45", -45.0),
            ("90 left", -90.0),
            ("right 22.5", 22.5),
            ("right 22,5°", 22.5),
            ("left 89°30'", -89.5),
            ("left 89 deg 30 min", -89.5),
            ("right 36°00'36\"", 36.01),
            ("right 270", -90.0),
            ("straight", 0.0),
            ("straight ahead", 0.0),
            ("back", 180.0),
            ("derecha 90", 90.0),
        ] {
            let turn = Turn::read(text).expect(text);
            assert!((turn.as_right_degrees() - degrees).abs() < 1e-12, "{text}: {turn:?}");
        }
    }

    #[test]
    fn turns_that_say_too_little_are_refused() {
        for text in ["", "90", "rite 90", "right ninety", "left 400", "right -90", "right 89°75'", "right 30' 89°"] {
            let error = Turn::read(text).expect_err(text);
            assert!(error.to_string().contains("right 90"), "{error}");
        }
    }

    #[test]
    fn quarter_turns_are_exact() {
        let square: Vec<_> = (0..4).map(|q| Bearing::degrees(90.0 * f64::from(q)).right_and_up()).collect();
        assert_eq!(square, [(0.0, 1.0), (1.0, 0.0), (0.0, -1.0), (-1.0, 0.0)]);
    }

    #[test]
    fn bearings_name_the_nearest_point() {
        assert_eq!(Bearing::degrees(359.0).to_string(), "plan north (359°)");
        assert_eq!(Bearing::read("135 deg").expect("reads").to_string(), "plan south-east (135°)");
        assert!(Bearing::read("-5 deg").is_err() && Bearing::read("N").is_err());
    }
}
