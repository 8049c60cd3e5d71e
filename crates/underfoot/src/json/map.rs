//! The map of the slab as JSON.

use science::absorbency::{Enough, Gain, Outcome};
use serde_json::{Value, json};
use slab_answers::map::{Bay, BayField, Cell, Ground, NextTest, SlabMap, Spot, Teaches, ZonePicture};
use slab_plan::Point;
use units::{Area, Length};

use super::rounded;

/// The map with the numbers behind it; every cell only when asked.
pub(crate) fn map(name: &str, id: &str, at: jiff::Timestamp, map: &SlabMap, cells: bool) -> Value {
    json!({
        "slab": { "name": name, "id": id },
        "at": at.to_string(),
        "limits_s": map.limits.map(|limit| limit.as_seconds()),
        "cell_m": rounded(map.cell.as_meters(), 4),
        "zones": map.zones.iter().map(|zone| zone_json(zone, map)).collect::<Vec<_>>(),
        "bays": map.bays.iter().map(bay).collect::<Vec<_>>(),
        "spots": map.spots.iter().map(spot).collect::<Vec<_>>(),
        "sections": map.sections.sections().iter().map(|section| json!({
            "id": section.id,
            "area_m2": rounded(section.area.as_square_meters(), 4),
            "perimeter_m": rounded(section.perimeter.as_meters(), 3),
        })).collect::<Vec<_>>(),
        "next": map.next.iter().map(next).collect::<Vec<_>>(),
        "enough": map.enough.as_ref().map(enough),
        "cells": cells.then(|| map.cells.iter().map(cell).collect::<Vec<_>>()),
    })
}

fn meters(at: Point) -> [Value; 2] {
    [at.x, at.y].map(|offset| rounded(Length::from(offset).as_meters(), 4))
}

fn square_meters(area: Area) -> Value {
    rounded(area.as_square_meters(), 4)
}

fn ground(ground: Ground, map: &SlabMap) -> Value {
    match ground {
        Ground::Spot(index) => json!({
            "code": ground.code(),
            "spot": index,
            "what": map.spots[index].what,
            "state": map.spots[index].state.name(),
        }),
        _ => json!({ "code": ground.code() }),
    }
}

fn zone_json(zone: &ZonePicture, map: &SlabMap) -> Value {
    let shares = zone.shares.iter().map(
        |share| json!({ "ground": ground(share.ground, map), "share_pct": rounded(100.0 * share.share.as_share(), 3) }),
    );
    json!({
        "zone": zone.zone,
        "area_m2": square_meters(zone.area),
        "shares": shares.collect::<Vec<_>>(),
        "unsure_pct": rounded(100.0 * zone.unsure.as_share(), 2),
    })
}

fn bay(bay: &Bay) -> Value {
    let field = match &bay.field {
        BayField::Mapped { field, left_out } => {
            let covariance = field.covariance();
            let each = left_out.drops.iter().map(|drop| match drop.outcome {
                Outcome::Timed { standardized } => json!({ "standardized": rounded(standardized, 6) }),
                Outcome::StillStood { chance } => json!({ "still_stood_chance": rounded(chance.as_share(), 6) }),
            });
            json!({
                "sill_ln_s2": rounded(covariance.sill.value(), 9),
                "length_m": rounded(covariance.length.as_meters(), 6),
                "nugget_ln_s2": rounded(covariance.nugget.value(), 9),
                "left_out": {
                    "drops": each.collect::<Vec<_>>(),
                    "timed": left_out.timed,
                    "mean": rounded(left_out.mean, 6),
                    "root_mean_square": rounded(left_out.root_mean_square, 6),
                    "held_80_pct": rounded(100.0 * left_out.held_80.as_share(), 2),
                    "held_95_pct": rounded(100.0 * left_out.held_95.as_share(), 2),
                },
            })
        }
        BayField::None(why) => json!({ "refused": why.to_string() }),
    };
    json!({
        "finish": bay.finish,
        "zones": bay.zones,
        "drops": bay.drops.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "drops_without_place": bay.unplaced.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "film": bay.film,
        "water_stands_at_every_drop": bay.stands,
        "dense_finish": bay.dense,
        "field": field,
    })
}

fn spot(spot: &Spot) -> Value {
    let covers = spot.covers.iter().map(|(zone, area)| json!({ "zone": zone, "area_m2": square_meters(*area) }));
    json!({
        "entry": spot.entry.to_string(),
        "what": spot.what,
        "on": spot.on.to_string(),
        "state": spot.state.name(),
        "open": spot.is_open(),
        "area_m2": square_meters(spot.area()),
        "reach_assumed": spot.reach_assumed,
        "photographs": spot.photographs,
        "covers": covers.collect::<Vec<_>>(),
    })
}

fn next(next: &NextTest) -> Value {
    let teaches = match next.teaches {
        Teaches::Settles { settles, changes } => {
            json!({ "settles_m2": square_meters(settles), "changes_m2": square_meters(changes) })
        }
        Teaches::FirstMap { missing } => json!({ "places_missing": missing }),
    };
    json!({ "at_m": meters(next.at), "bay": next.bay, "teaches": teaches })
}

fn enough(enough: &Enough) -> Value {
    let gain = |gain: &Gain| match gain {
        Gain::Limit { settles, changes } => {
            json!({ "settles_m2": square_meters(*settles), "changes_m2": square_meters(*changes) })
        }
        Gain::Spread(share) => json!({ "variance_falls_pct": rounded(100.0 * share.as_share(), 3) }),
    };
    match enough {
        Enough::AsAsked => json!({ "code": "as_asked" }),
        Enough::LittleGain(best) => json!({ "code": "little_gain", "best": gain(best) }),
        Enough::PlanStays(best) => json!({ "code": "plan_stays", "best": gain(best) }),
        Enough::NoPlaceLeft => json!({ "code": "no_place_left" }),
    }
}

fn cell(cell: &Cell) -> Value {
    let range = cell.estimate.as_ref().map(|estimate| {
        let (low, high) = estimate.p10_p90();
        [low.as_seconds(), estimate.median().as_seconds(), high.as_seconds()].map(|seconds| rounded(seconds, 2))
    });
    json!({
        "at_m": meters(cell.at),
        "zone": cell.zone,
        "bay": cell.bay,
        "ground": cell.ground.code(),
        "p10_p50_p90_s": range,
        "sure_pct": cell.sure.map(|sure| rounded(100.0 * sure.as_share(), 1)),
    })
}
