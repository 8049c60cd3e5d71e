//! From the bytes of a file to a drawing.

use crate::scan::scan;
use crate::{Drawing, DrawingError, Units, chain, flatten};

/// Reads a DXF file as text, of any release from R12 on.
///
/// Lines, arcs, circles, ellipses and both kinds of polyline are read, and blocks with what they hold;
/// other kinds are counted and left out, as is what lies in paper space or is drawn on a slant.
/// Curves become chords of at most 2 degrees. Ends of lines that lie within 10⁻⁵ of the drawing's
/// extent of each other are joined; 30 m across that is 0.3 mm.
///
/// # Errors
/// [`DrawingError`]: not text, cut short, malformed, too large, or blocks nested too deep.
pub fn read_dxf(bytes: &[u8]) -> Result<Drawing, DrawingError> {
    let scanned = scan(bytes)?;
    let flat = flatten::flatten(&scanned)?;
    let (layers, joined_within) = chain::layers(flat);
    Ok(Drawing { units: scanned.units.unwrap_or(Units::NotTold), metric_hint: scanned.metric, joined_within, layers })
}
