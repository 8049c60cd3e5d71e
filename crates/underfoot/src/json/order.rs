//! The order as JSON.

use localization::Locale;
use serde_json::{Value, json};
use slab_answers::order::{Amount, CoverageBasis, Line, Order, PackCount, PackSize, Recipe, Spread, ZoneCoverage};

use super::amount::rounded;

pub(crate) fn order(name: &str, id: &str, at: jiff::Timestamp, order: &Order, locale: &Locale) -> Value {
    json!({
        "schema": "underfoot.order/1",
        "slab": { "id": id, "name": name },
        "at": at.to_string(),
        "recipe": order.recipes.first().map(recipe),
        "recipes": order.recipes.iter().map(recipe).collect::<Vec<_>>(),
        "coverage": order.coverage.iter().map(coverage).collect::<Vec<_>>(),
        "lines": order.lines.iter().map(|l| line(l, locale)).collect::<Vec<_>>(),
    })
}

fn recipe(recipe: &Recipe) -> Value {
    json!({
        "zones": recipe.zones,
        "panel": recipe.panel,
        "coats": { "low": recipe.coats.low, "usual": recipe.coats.usual, "high": recipe.coats.high },
        "water_parts": {
            "low_need": rounded(recipe.water_parts.low, 3),
            "usual": rounded(recipe.water_parts.usual, 3),
            "high_need": rounded(recipe.water_parts.high, 3),
        },
        "mix": recipe.mix.iter().map(|(stain, share)| json!({ "stain": stain, "share": rounded(*share, 4) })).collect::<Vec<_>>(),
    })
}

fn coverage(zone: &ZoneCoverage) -> Value {
    let (basis, panels) = match zone.basis {
        CoverageBasis::Panels(n) => ("panels", n),
        CoverageBasis::Table => ("table", 0),
        CoverageBasis::Unknown => ("unknown", 0),
    };
    let c = zone.coverage.map(|c| c.as_square_meters_per_liter());
    json!({
        "zone": zone.zone,
        "area_m2": rounded(zone.area.as_square_meters(), 3),
        "finish": zone.finish,
        "basis": basis,
        "panels": panels,
        "coverage_low_m2_l": rounded(c.low, 3),
        "coverage_usual_m2_l": rounded(c.usual, 3),
        "coverage_high_m2_l": rounded(c.high, 3),
        "extra_coats_low": zone.extra_coats.0,
        "extra_coats_high": zone.extra_coats.1,
        "grade": zone.grade.words(),
        "evidence": zone.evidence.iter().map(ToString::to_string).collect::<Vec<_>>(),
    })
}

fn line(line: &Line, locale: &Locale) -> Value {
    let three = |low: f64, usual: f64, high: f64, unit: &str, decimals: i32| json!({ format!("low_{unit}"): rounded(low, decimals), format!("usual_{unit}"): rounded(usual, decimals), format!("high_{unit}"): rounded(high, decimals) });
    let need = match line.need {
        Amount::Volume(Spread { low, usual, high }) => {
            three(low.as_liters(), usual.as_liters(), high.as_liters(), "l", 2)
        }
        Amount::Mass(Spread { low, usual, high }) => {
            three(low.as_kilograms(), usual.as_kilograms(), high.as_kilograms(), "kg", 2)
        }
        Amount::Area(Spread { low, usual, high }) => {
            three(low.as_square_meters(), usual.as_square_meters(), high.as_square_meters(), "m2", 1)
        }
        Amount::Pieces(Spread { low, usual, high }) => {
            three(f64::from(low), f64::from(usual), f64::from(high), "pieces", 0)
        }
    };
    json!({
        "item": line.item.name(),
        "name": locale.item(line.item),
        "which": line.which,
        "need": need,
        "buy": line.buy.iter().map(pack).collect::<Vec<_>>(),
        "notes": line.notes.iter().map(|n| locale.order_note(*n)).collect::<Vec<_>>(),
        "note_codes": line.notes.iter().map(|n| n.name()).collect::<Vec<_>>(),
        "grade": line.grade.words(),
        "facts": line.facts,
        "evidence": line.evidence.iter().map(ToString::to_string).collect::<Vec<_>>(),
    })
}

fn pack(pack: &PackCount) -> Value {
    match pack.size {
        PackSize::Volume(v) => {
            json!({ "count": pack.count, "size_l": rounded(v.as_liters(), 3), "size_gal": rounded(v.as_us_gallons(), 3) })
        }
        PackSize::Mass(m) => {
            json!({ "count": pack.count, "size_kg": rounded(m.as_kilograms(), 3), "size_lb": rounded(m.as_pounds(), 3) })
        }
    }
}
