//! Dividing the slab into its zones.

use geo::MultiPolygon;
use units::{Area, Length};

use super::shape::{self, Drawn, Shape};
use super::walk::Walks;
use super::{Piece, PlanError, Point, ZoneSpec, ground, limits};

/// How far two drawn shapes may run into each other without being wrong: a quarter inch, the
/// honesty of a tape along a wall. Where a shape was walked, its misclosure is added.
///
/// Grade: common practice, no source.
pub const FIT_TOLERANCE: Length = Length::inches(0.25);

/// The name of the only zone when none is given.
pub const WHOLE: &str = "whole";

/// A part of the slab that is judged and ordered for apart.
#[derive(Debug, Clone, PartialEq)]
pub struct Zone {
    pub(super) name: String,
    pub(super) area: Area,
    pub(crate) ground: Option<MultiPolygon<f64>>,
}

impl Zone {
    /// Its name as typed.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its area without cut-outs, above zero.
    #[must_use]
    pub fn area(&self) -> Area {
        self.area
    }

    /// All its edges together, those of cut-outs in it too; `None` when it is not drawn.
    #[must_use]
    pub fn perimeter(&self) -> Option<Length> {
        self.ground.as_ref().map(|g| Length::meters(ground::perimeter(g)))
    }

    /// Its centroid, which may lie outside an L; `None` when it is not drawn.
    #[must_use]
    pub fn centroid(&self) -> Option<Point> {
        self.ground.as_ref().and_then(ground::centroid)
    }

    /// Its pieces for drawing; none when it is not drawn.
    #[must_use]
    pub fn pieces(&self) -> Vec<Piece> {
        self.ground.as_ref().map_or_else(Vec::new, ground::pieces)
    }

    /// Whether the point lies in it or on its edge.
    #[must_use]
    pub fn contains(&self, at: Point) -> bool {
        self.ground.as_ref().is_some_and(|g| ground::touches(g, at))
    }
}

/// The slab that the zones divide.
pub(super) enum Whole<'a> {
    /// The drawn outline, and the slab that remains of it after the cut-outs.
    Drawn { outline: &'a Drawn, slab: &'a MultiPolygon<f64> },
    /// Square meters.
    Area(f64),
}

/// The zones in the order typed, and the walks that drew them, by path.
pub(super) fn divide(specs: &[ZoneSpec], whole: &Whole<'_>) -> Result<(Vec<Zone>, Walks), PlanError> {
    check_names(specs)?;
    match whole {
        Whole::Drawn { outline, slab } => divide_ground(specs, outline, slab),
        Whole::Area(available) => Ok((divide_area(specs, *available)?, Vec::new())),
    }
}

fn check_names(specs: &[ZoneSpec]) -> Result<(), PlanError> {
    limits::shape_limit(specs.len(), 0, "zones")?;
    let mut rest: Option<&str> = None;
    for (i, zone) in specs.iter().enumerate() {
        let path = format!("zones[{i}].name");
        if zone.name.trim().is_empty() {
            return Err(PlanError::BlankZoneName { path });
        }
        if specs[..i].iter().any(|earlier| folded(&earlier.name) == folded(&zone.name)) {
            return Err(PlanError::DuplicateZone { path, name: zone.name.clone() });
        }
        if zone.shape.is_none() {
            if let Some(other) = rest {
                let (path, name, other) = (format!("zones[{i}].shape"), zone.name.clone(), other.to_owned());
                return Err(PlanError::TwoRestZones { path, name, other });
            }
            rest = Some(&zone.name);
        }
    }
    Ok(())
}

/// The form in which names are compared.
pub(super) fn folded(name: &str) -> String {
    name.trim().to_lowercase()
}

fn divide_area(specs: &[ZoneSpec], available: f64) -> Result<Vec<Zone>, PlanError> {
    let mut areas = Vec::with_capacity(specs.len());
    for (i, zone) in specs.iter().enumerate() {
        let path = format!("zones[{i}].shape");
        areas.push(match zone.shape.as_ref().map(|s| shape::resolve(s, &path)).transpose()? {
            Some(Shape::Drawn(_)) => return Err(PlanError::MixedShapes { path }),
            Some(Shape::Area(area)) => Some(area),
            None => None,
        });
    }
    let sum: f64 = areas.iter().flatten().sum();
    // Room for the rounding of units, no more.
    if sum > available * (1.0 + 1e-9) {
        let (sum, available) = (Area::square_meters(sum), Area::square_meters(available));
        return Err(PlanError::AreasTooLarge { path: "zones".to_owned(), sum, available });
    }
    let rest = available - sum;
    let nothing = 1e-9 * available;
    let zone = |(i, (spec, area)): (usize, (&ZoneSpec, Option<f64>))| {
        let area = area.unwrap_or(rest);
        if area <= nothing {
            return Err(PlanError::EmptyZone { path: format!("zones[{i}]"), name: spec.name.clone() });
        }
        Ok(Zone { name: spec.name.clone(), area: Area::square_meters(area), ground: None })
    };
    if specs.is_empty() {
        return Ok(vec![Zone { name: WHOLE.to_owned(), area: Area::square_meters(available), ground: None }]);
    }
    specs.iter().zip(areas).enumerate().map(zone).collect()
}

fn divide_ground(
    specs: &[ZoneSpec],
    outline: &Drawn,
    slab: &MultiPolygon<f64>,
) -> Result<(Vec<Zone>, Walks), PlanError> {
    if specs.is_empty() {
        return Ok((vec![zone(WHOLE, slab.clone())], Vec::new()));
    }
    let mut walks = Vec::new();
    // Ground and slack of each zone so far, in the order typed; the rest zone keeps its place empty.
    let mut taken: Vec<Option<(MultiPolygon<f64>, f64)>> = Vec::with_capacity(specs.len());
    for (i, spec) in specs.iter().enumerate() {
        let Some(shape) = &spec.shape else {
            taken.push(None);
            continue;
        };
        let path = format!("zones[{i}].shape");
        let Shape::Drawn(drawn) = shape::resolve(shape, &path)? else {
            return Err(PlanError::MixedShapes { path });
        };
        let slack = drawn.slack();
        let tolerance = FIT_TOLERANCE.as_meters() + outline.slack() + slack;
        let outside = ground::area_wider_than(&ground::without(&drawn.ground, &outline.ground), tolerance);
        if outside > 0.0 {
            let outside = Area::square_meters(outside);
            return Err(PlanError::ZoneOutside { path, name: spec.name.clone(), outside });
        }
        let mut own = ground::within(&drawn.ground, slab);
        for (earlier, other) in specs.iter().zip(&taken) {
            let Some((other, other_slack)) = other else { continue };
            let tolerance = FIT_TOLERANCE.as_meters() + slack + other_slack;
            let overlap = ground::area_wider_than(&ground::common(&own, other), tolerance);
            if overlap > 0.0 {
                let (name, other) = (spec.name.clone(), earlier.name.clone());
                return Err(PlanError::ZonesOverlap { path, name, other, overlap: Area::square_meters(overlap) });
            }
            own = ground::without(&own, other);
        }
        if let Some(walk) = drawn.walk {
            walks.push((format!("{path}.walk"), walk));
        }
        taken.push(Some((own, slack)));
    }
    let drawn: Vec<MultiPolygon<f64>> = taken.iter().flatten().map(|(ground, _)| ground.clone()).collect();
    let zones = specs.iter().zip(taken).enumerate().map(|(i, (spec, own))| {
        let own = own.map_or_else(|| drawn.iter().fold(slab.clone(), |rest, z| ground::without(&rest, z)), |(g, _)| g);
        if own.0.is_empty() {
            return Err(PlanError::EmptyZone { path: format!("zones[{i}]"), name: spec.name.clone() });
        }
        Ok(zone(&spec.name, own))
    });
    Ok((zones.collect::<Result<_, _>>()?, walks))
}

fn zone(name: &str, own: MultiPolygon<f64>) -> Zone {
    Zone { name: name.to_owned(), area: Area::square_meters(ground::area(&own)), ground: Some(own) }
}
