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
    let refused = |problem: String| DrawingError::Refused { problem };
    let file = dxf::Drawing::load(&mut scanned.kept.as_bytes()).map_err(|e| refused(e.to_string()))?;
    // The reader ends at what it does not understand; nothing may be lost in silence.
    let (found, blocks) = (file.entities().count(), file.blocks().count());
    if found != scanned.entities || blocks != scanned.blocks {
        let (entities, all) = (scanned.entities, scanned.blocks);
        return Err(refused(format!("{found} of {entities} entities and {blocks} of {all} blocks could be read")));
    }
    let flat = flatten::flatten(&file, scanned.ignored)?;
    let (layers, joined_within) = chain::layers(flat);
    Ok(Drawing { units: scanned.units.unwrap_or(Units::NotTold), metric_hint: scanned.metric, joined_within, layers })
}
