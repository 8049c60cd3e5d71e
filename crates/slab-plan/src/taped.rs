//! A turn measured with a tape alone: two marks beside the corner, or an offset from the wall's line.
//!
//! Why: a corner that is not square is seldom measured with a protractor, and a tape is always there.
//! - `8 ft by 6 ft, 10 ft between`: a mark 8 ft back along the last wall, one 6 ft along the next, and the straight way
//!   between the two. By the law of cosines, by halves, tan²(inside / 2) = (c² − (a − b)²) / ((a + b)² − c²); the turn
//!   is what is missing to half a turn. `8 ft, 10 ft between` sets both marks as far from the corner; with both walls taped whole, the
//!   way between is the diagonal.
//! - `8 ft on, 3 ft across`: 8 ft on along the line of the last wall past the corner, then 3 ft square across to the
//!   next wall: the turn is atan(across / on), below a quarter turn.

use units::{Length, Notation, Problem};

const BETWEEN: [&str; 2] = ["between", "entre"];
const ACROSS: [&str; 3] = ["across", "al través", "al traves"];
const ON: [&str; 2] = ["on", "adelante"];
const BY: [&str; 5] = [" by ", " x ", " × ", " por ", " y "];
/// A turn is kept to this share of a degree: a right angle out of 3, 4 and 5 is a right angle.
const STEPS_PER_DEGREE: f64 = 1e9;

/// The degrees of a turn written as it was taped, without its side; nothing for any other text. In small letters.
///
/// # Errors
/// The problem of a length that cannot be read, or [`Problem::OutOfRange`] where three lengths make no triangle.
pub(super) fn turn_degrees(text: &str) -> Option<Result<f64, Problem>> {
    if let Some(rest) = without(text, &BETWEEN) {
        return Some(marks(rest));
    }
    without(text, &ACROSS).map(offset)
}

/// The text before one of these last words.
fn without<'a>(text: &'a str, words: &[&str]) -> Option<&'a str> {
    words.iter().find_map(|word| text.trim_end().strip_suffix(word)).map(str::trim_end)
}

fn marks(text: &str) -> Result<f64, Problem> {
    let (both, between) = parted(text)?;
    let (back, along) = BY.iter().find_map(|word| both.split_once(word)).unwrap_or((both, both));
    let (a, b, c) = (taped(back)?, taped(along)?, taped(between)?);
    // A hair more than both together is the rounding of the notation, not a mark that cannot be.
    if c > (a + b) * (1.0 + 1e-9) || c < (a - b).abs() * (1.0 - 1e-9) {
        return Err(Problem::OutOfRange { low: "the difference of both marks", high: "both marks together" });
    }
    // By halves, which keeps its digits near a straight wall; a hair of rounding there is straight.
    let half = |larger: f64, smaller: f64| {
        let missing = larger - smaller;
        if missing <= 1e-9 * larger { 0.0 } else { libm::sqrt(missing * (larger + smaller)) }
    };
    let inside = 2.0 * libm::atan2(half(c, (a - b).abs()), half(a + b, c));
    Ok(kept(180.0 - inside.to_degrees()))
}

fn offset(text: &str) -> Result<f64, Problem> {
    let (on, across) = parted(text)?;
    let on = without(on, &ON).ok_or(Problem::NotANumber)?;
    Ok(kept(libm::atan2(taped(across)?, taped(on)?).to_degrees()))
}

/// Before and after the last comma that parts; one inside a number does not.
fn parted(text: &str) -> Result<(&str, &str), Problem> {
    text.rsplit_once(", ").or_else(|| text.rsplit_once(';')).ok_or(Problem::NotANumber)
}

/// Meters, above zero.
fn taped(text: &str) -> Result<f64, Problem> {
    let meters = Length::read(text.trim()).map_err(|error| error.problem)?.as_meters();
    if meters > 0.0 { Ok(meters) } else { Err(Problem::NotANumber) }
}

fn kept(degrees: f64) -> f64 {
    (degrees * STEPS_PER_DEGREE).round() / STEPS_PER_DEGREE
}

#[cfg(test)]
mod tests {
    use crate::Turn;
    use units::Notation;

    /// The triangles of whole sides with an angle of 90°, 60° or 120° (Euclid I.47 for 3-4-5; 3-7-8, 5-7-8 and 3-5-7
    /// by the law of cosines, as tabulated for integer triangles); tangents 1 and 5/12.
    #[test]
    fn taped_turns_are_those_of_known_triangles() {
        for (text, degrees) in [
            ("right 3 ft by 4 ft, 5 ft between", 90.0),
            ("left 3 ft by 4 ft, 5 ft between", -90.0),
            ("right 3 ft x 4 ft, 5 ft between", 90.0),
            ("right 4 ft, 4 ft between", 120.0),
            ("right 8 ft by 3 ft, 7 ft between", 120.0),
            ("left 5 ft by 8 ft, 7 ft between", -120.0),
            ("right 3 ft by 5 ft, 7 ft between", 60.0),
            ("derecha 3 m por 4 m, 5 m entre", 90.0),
            ("izquierda 1,5 m por 2 m, 2,5 m entre", -90.0),
            ("right 3 ft by 4 ft, 7 ft between", 0.0),
            ("right 8 ft on, 8 ft across", 45.0),
            ("left 12 ft on, 5 ft across", -22.619_864_948),
            ("derecha 2 m adelante, 2 m al través", 45.0),
            ("right 6' 0\" by 8' 0\", 10' 0\" between", 90.0),
        ] {
            let turn = Turn::read(text).unwrap_or_else(|error| panic!("{text}: {error}"));
            assert!((turn.as_right_degrees() - degrees).abs() < 1e-8, "{text}: {turn:?}");
        }
    }

    #[test]
    fn what_no_corner_can_be_is_refused() {
        for text in [
            "right 3 ft by 4 ft, 7.1 ft between",
            "right 3 ft by 4 ft, 0.9 ft between",
            "right 3 ft by 4 ft between",
            "right 3 by 4, 5 between",
            "right 0 ft by 4 ft, 4 ft between",
            "right 8 ft on, 0 ft across",
            "right 8 ft, 3 ft across",
            "right between",
            "3 ft by 4 ft, 5 ft between",
        ] {
            let error = Turn::read(text).expect_err(text);
            assert!(error.to_string().contains("between"), "{error}");
        }
    }

    /// Three corners set down at whole places by hand; the tape reads the ways between them.
    #[test]
    fn a_turn_taped_is_the_turn_walked() {
        let corners = [((0.0, 0.0), (6.0, 0.0), (9.0, 4.0)), ((0.0, 0.0), (5.0, 0.0), (2.0, -4.0))];
        for ((x1, y1), (x2, y2), (x3, y3)) in corners {
            let far = |a: f64, b: f64| f64::hypot(a, b);
            let (a, b, c) = (far(x2 - x1, y2 - y1), far(x3 - x2, y3 - y2), far(x3 - x1, y3 - y1));
            let left = f64::atan2(y3 - y2, x3 - x2).to_degrees() - f64::atan2(y2 - y1, x2 - x1).to_degrees();
            let side = if left > 0.0 { "left" } else { "right" };
            let turn = Turn::read(&format!("{side} {a} m by {b} m, {c} m between")).expect("reads");
            assert!((turn.as_right_degrees() + left).abs() < 1e-6, "{turn:?} {left}");
        }
    }
}
