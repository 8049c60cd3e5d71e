//! Measures slabs: one JSON line each on standard input, `area,perimeter,x,y` of each on standard
//! output, in square meters and meters.
//!
//! ```text
//! echo '{"outline":[[0,0],[4,0],[4,3],[0,3]],"cut_outs":[]}' | cargo run -p slab --example plan_area
//! 12,14,2,1.5
//! ```
//!
//! `reference/plan/make_polygons.py` makes such lines and compares the answers with Shapely's.

use std::error::Error;
use std::io::{BufRead, Write};

use serde::Deserialize;
use slab_plan::{Plan, PlanSpec, ShapeSpec, WrittenPoint};
use units::AsWritten;

/// Corners in meters; other fields of the line are for the comparison.
#[derive(Deserialize)]
struct Line {
    outline: Vec<[f64; 2]>,
    cut_outs: Vec<Vec<[f64; 2]>>,
}

fn polygon(corners: &[[f64; 2]]) -> Result<ShapeSpec, Box<dyn Error>> {
    let point = |[x, y]: &[f64; 2]| -> Result<WrittenPoint, Box<dyn Error>> {
        Ok([AsWritten::read(&format!("{x} m"))?, AsWritten::read(&format!("{y} m"))?])
    };
    Ok(ShapeSpec::Polygon(corners.iter().map(point).collect::<Result<_, _>>()?))
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut out = std::io::stdout().lock();
    for line in std::io::stdin().lock().lines() {
        let line: Line = serde_json::from_str(&line?)?;
        let cut_outs = line.cut_outs.iter().map(|c| polygon(c)).collect::<Result<_, _>>()?;
        let (zones, joints, score_lines) = (Vec::new(), Vec::new(), Vec::new());
        let spec = PlanSpec { outline: polygon(&line.outline)?, cut_outs, zones, joints, score_lines, north: None };
        let plan = Plan::resolve(&spec)?;
        let (perimeter, centroid) = plan.perimeter().zip(plan.centroid()).ok_or("a drawn plan has both")?;
        writeln!(
            out,
            "{},{},{},{}",
            plan.area().as_square_meters(),
            perimeter.as_meters(),
            centroid.x.as_meters(),
            centroid.y.as_meters()
        )?;
    }
    Ok(())
}
