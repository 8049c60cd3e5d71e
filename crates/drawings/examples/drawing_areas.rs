//! Areas in drawings: a path of a DXF file on each line of standard input, one JSON line each on
//! standard output: for every closed line of the layer SLAB, largest first, its area and the most that
//! its chords may be off, in square units of the drawing.
//!
//! ```text
//! echo reference/plan/dxf/lines_only.dxf | cargo run -p drawings --example drawing_areas
//! [[84000000.0,0.0]]
//! ```

use std::error::Error;
use std::io::{BufRead, Write};

use drawings::read_dxf;

fn main() -> Result<(), Box<dyn Error>> {
    let mut out = std::io::stdout().lock();
    for path in std::io::stdin().lock().lines() {
        let drawing = read_dxf(&std::fs::read(path?)?)?;
        let loops = drawing.layers.get("SLAB").map(|layer| layer.loops.as_slice()).unwrap_or_default();
        let mut areas: Vec<[f64; 2]> = loops.iter().map(|l| [l.area, l.area_error]).collect();
        areas.sort_by(|a, b| b[0].total_cmp(&a[0]));
        writeln!(out, "{}", serde_json::to_string(&areas)?)?;
    }
    Ok(())
}
