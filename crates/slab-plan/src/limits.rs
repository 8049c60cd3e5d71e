//! Checks on single values of a plan: nothing, too much, too many.

use units::{Area, AsWritten, Length};

use super::offset::LARGEST_METERS;
use super::{Offset, PlanError};

/// The most corners one shape may have; a real slab has dozens.
const MAX_CORNERS: usize = 2_000;
/// The most shapes of one kind a plan may have.
const MAX_SHAPES: usize = 500;
/// The most patterns of score lines a plan may have.
const MAX_PATTERNS: usize = 50;
/// The most parallel lines of one family; a warehouse with a foot between has hundreds.
const MAX_LINES: usize = 1_000;
/// The most straight pieces of joints and score lines together, before they are clipped.
const MAX_SEGMENTS: usize = 2_000;

/// A length above zero and at most 10 km, in meters.
pub(super) fn length(written: &AsWritten<Length>, path: &str) -> Result<f64, PlanError> {
    let meters = written.value().as_meters();
    if meters <= 0.0 {
        return Err(PlanError::ZeroLength { path: path.to_owned(), typed: written.text().to_owned() });
    }
    // Also refuses what overflowed to infinity.
    if meters > LARGEST_METERS {
        return Err(PlanError::TooLarge { path: path.to_owned(), typed: written.text().to_owned() });
    }
    Ok(meters)
}

/// An area above zero and at most 100 km², in square meters.
pub(super) fn area(written: &AsWritten<Area>, path: &str) -> Result<f64, PlanError> {
    let square_meters = written.value().as_square_meters();
    if square_meters <= 0.0 {
        return Err(PlanError::NoArea { path: path.to_owned(), typed: Some(written.text().to_owned()) });
    }
    if square_meters > LARGEST_METERS * LARGEST_METERS {
        return Err(PlanError::TooLarge { path: path.to_owned(), typed: written.text().to_owned() });
    }
    Ok(square_meters)
}

/// An offset within 10 km; reading already refuses others, a value made in code may not have been read.
pub(super) fn offset(written: &AsWritten<Offset>, path: &str, field: &str) -> Result<Offset, PlanError> {
    let value = written.value();
    if value.as_meters().abs() <= LARGEST_METERS {
        Ok(value)
    } else {
        Err(PlanError::TooLarge { path: format!("{path}.{field}"), typed: written.text().to_owned() })
    }
}

/// From three corners up to [`MAX_CORNERS`].
pub(super) fn corner_limit(count: usize, path: &str) -> Result<(), PlanError> {
    if count < 3 {
        return Err(PlanError::TooFew { path: path.to_owned(), count, least: 3 });
    }
    if count > MAX_CORNERS {
        return Err(PlanError::TooMany { path: path.to_owned(), count, most: MAX_CORNERS });
    }
    Ok(())
}

/// Up to [`MAX_SHAPES`], and at least `least`.
pub(super) fn shape_limit(count: usize, least: usize, path: &str) -> Result<(), PlanError> {
    if count < least {
        return Err(PlanError::TooFew { path: path.to_owned(), count, least });
    }
    if count > MAX_SHAPES {
        return Err(PlanError::TooMany { path: path.to_owned(), count, most: MAX_SHAPES });
    }
    Ok(())
}

/// Up to [`MAX_SHAPES`] joints or free lines.
pub(super) fn joint_limit(count: usize, path: &str) -> Result<(), PlanError> {
    shape_limit(count, 0, path)
}

/// Up to [`MAX_PATTERNS`].
pub(super) fn pattern_limit(count: usize, path: &str) -> Result<(), PlanError> {
    if count > MAX_PATTERNS {
        return Err(PlanError::TooMany { path: path.to_owned(), count, most: MAX_PATTERNS });
    }
    Ok(())
}

/// From two points of a line up to [`MAX_CORNERS`].
pub(super) fn point_limit(count: usize, path: &str) -> Result<(), PlanError> {
    if count < 2 {
        return Err(PlanError::TooFew { path: path.to_owned(), count, least: 2 });
    }
    if count > MAX_CORNERS {
        return Err(PlanError::TooMany { path: path.to_owned(), count, most: MAX_CORNERS });
    }
    Ok(())
}

/// Up to [`MAX_LINES`] from one spacing or inset.
pub(super) fn line_limit(count: usize, path: &str, typed: &str) -> Result<(), PlanError> {
    if count > MAX_LINES {
        let (path, typed) = (path.to_owned(), typed.to_owned());
        return Err(PlanError::TooManyLines { path, typed, count, most: MAX_LINES });
    }
    Ok(())
}

/// Up to [`MAX_SEGMENTS`] over all joints and patterns.
pub(super) fn segment_limit(count: usize) -> Result<(), PlanError> {
    if count > MAX_SEGMENTS {
        return Err(PlanError::TooMany { path: "score_lines".to_owned(), count, most: MAX_SEGMENTS });
    }
    Ok(())
}
