//! A plan out of an architect's drawing file, without a slab: its layers, or the plan they make.

use std::io::Read as _;
use std::path::{Path, PathBuf};

use clap::{Args, ValueEnum};
use drawings::{Choice, Drawing, Gap, Layer, Notation, Spot, Units, read_dxf};
use localization::{Arg, Locale, UnitSystem};
use pictures::{PlanLayers, PlanLook, plan_svg};
use serde_json::{Value, json};
use slab_plan::{Plan, PlanError, PlanSpec};
use units::{Area, Length};

use crate::cli::Common;
use crate::failure::{Answer, Failure};
use crate::json::rounded;
use crate::out::answer;
use crate::session;

/// Bytes of a file that are read, at most: what `drawings` accepts.
const MAX_BYTES: u64 = 32 << 20;
/// Gaps and places of branching that are told of a layer, at most.
const MAX_PLACES: usize = 20;

/// Lines of joint layers that are left out because they lie off the slab, at most.
const MAX_LEFT_OUT: usize = 100;

#[derive(Debug, Args)]
pub(crate) struct DrawingArgs {
    /// Drawing, DXF saved as text
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// Layer with the line around the slab [default: tell the layers]
    #[arg(long, value_name = "LAYER")]
    outline: Option<String>,
    /// Layer whose closed lines are cut out
    #[arg(long, value_name = "LAYER", requires = "outline")]
    cut_out: Vec<String>,
    /// Layer whose closed lines are zones
    #[arg(long, value_name = "LAYER", requires = "outline")]
    zone: Vec<String>,
    /// Layer whose lines are joints
    #[arg(long, value_name = "LAYER", requires = "outline")]
    joint: Vec<String>,
    /// What one unit of the drawing is [default: as the file says]
    #[arg(long, value_enum)]
    drawn_in: Option<DrawnIn>,
}

/// The unit of a drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum DrawnIn {
    Mm,
    Cm,
    M,
    In,
    Ft,
}

impl From<DrawnIn> for Units {
    fn from(unit: DrawnIn) -> Self {
        match unit {
            DrawnIn::Mm => Self::Millimeters,
            DrawnIn::Cm => Self::Centimeters,
            DrawnIn::M => Self::Meters,
            DrawnIn::In => Self::Inches,
            DrawnIn::Ft => Self::Feet,
        }
    }
}

pub(crate) fn run(args: &DrawingArgs, common: &Common) -> Result<Answer, Failure> {
    let locale = session::locale(common);
    let drawing = read(&args.file)?;
    let units = args.drawn_in.map(Units::from);
    match &args.outline {
        Some(outline) => told_plan(&drawing, &choice(args, outline, units, locale), common.json, locale),
        None if common.json => {
            answer!("{:#}", layers_json(&drawing, units));
            Ok(Answer::Yes)
        }
        None => {
            told_layers(&drawing, units, locale);
            Ok(Answer::Yes)
        }
    }
}

/// The file, of which no more is read than the reader accepts and a byte: it says itself that it is too large.
fn read(file: &Path) -> Result<Drawing, Failure> {
    let mut bytes = Vec::new();
    let opened = std::fs::File::open(file).map_err(|e| Failure::file(file, &e))?;
    opened.take(MAX_BYTES + 1).read_to_end(&mut bytes).map_err(|e| Failure::file(file, &e))?;
    read_dxf(&bytes).map_err(|error| Failure::Data(format!("drawing \"{}\": {error}", file.display())))
}

fn choice(args: &DrawingArgs, outline: &str, units: Option<Units>, locale: Locale) -> Choice {
    Choice {
        outline_layer: outline.to_owned(),
        cut_out_layers: args.cut_out.clone(),
        zone_layers: args.zone.clone(),
        joint_layers: args.joint.clone(),
        units,
        notation: match locale.unit_system {
            UnitSystem::Imperial => Notation::FeetInches,
            UnitSystem::Metric => Notation::Meters,
        },
    }
}

fn told_plan(drawing: &Drawing, choice: &Choice, as_json: bool, locale: Locale) -> Result<Answer, Failure> {
    let mut spec = drawing.plan(choice).map_err(|error| match error {
        // Chosen by the person: the command was used wrongly.
        drawings::DrawingError::UnknownLayer { .. } => Failure::Use(error.to_string()),
        drawings::DrawingError::UnitsNotTold => Failure::Use(format!("{error} (--drawn-in mm, cm, m, in or ft)")),
        other => Failure::data(other),
    })?;
    let (plan, left_out) = resolved(&mut spec)?;
    if left_out > 0 {
        anstream::eprintln!("{}", locale.message("dxf-left-out", &[count(left_out)]));
    }
    if as_json {
        answer!("{:#}", serde_json::to_value(&spec).map_err(Failure::data)?);
        return Ok(Answer::Yes);
    }
    let area = ("area", locale.area(plan.area()).into());
    let perimeter = plan.perimeter().unwrap_or(Length::ZERO);
    answer!("{}", locale.message("draw-comes-to", &[area, ("perimeter", locale.length(perimeter).into())]));
    if plan.cut_out_area() > Area::ZERO {
        answer!("{}", locale.message("draw-cut-out", &[("area", locale.area(plan.cut_out_area()).into())]));
    }
    for zone in plan.zones().iter().filter(|zone| zone.name() != slab_plan::WHOLE) {
        answer!("  {}: {}", clean(zone.name()), locale.area(zone.area()));
    }
    if !spec.joints.is_empty() {
        answer!("{}", locale.message("dxf-joints", &[count(spec.joints.len())]));
    }
    let drawn = plan_svg(&plan, &PlanLayers::default(), &PlanLook::new("drawing", "drawing", locale).keyed());
    for wall in drawn.items.iter().filter(|item| item.layer == pictures::Layer::Dimensions) {
        answer!("  {}", wall.text);
    }
    Ok(Answer::Yes)
}

/// The plan, without lines of joint layers that lie off the slab or along its edge: those are no joints.
fn resolved(spec: &mut PlanSpec) -> Result<(Plan, usize), Failure> {
    for left_out in 0..=MAX_LEFT_OUT {
        let error = match Plan::resolve(spec) {
            Ok(plan) => return Ok((plan, left_out)),
            Err(error) => error,
        };
        let index = error.path().strip_prefix("joints[").and_then(|rest| rest.split(']').next()?.parse().ok());
        match (&error, index) {
            (PlanError::LineOffSlab { .. }, Some(index)) if index < spec.joints.len() => {
                spec.joints.remove(index);
            }
            _ => return Err(Failure::data(error)),
        }
    }
    Err(Failure::Data(format!("joints: more than {MAX_LEFT_OUT} lie off the slab; accepted: joints on it")))
}

/// A name out of a file, without what a terminal would obey.
fn clean(name: &str) -> String {
    name.chars().filter(|c| !c.is_control()).collect()
}

fn count(count: usize) -> (&'static str, Arg<'static>) {
    ("count", Arg::Number(count as f64))
}

fn spot(at: Spot, locale: Locale) -> String {
    format!("({}; {})", locale.number(at.x, 3), locale.number(at.y, 3))
}

fn told_layers(drawing: &Drawing, units: Option<Units>, locale: Locale) {
    let one = units.unwrap_or(drawing.units).one();
    for (name, layer) in &drawing.layers {
        answer!("{}", clean(name));
        for said in holds(layer, one, locale) {
            answer!("  {said}");
        }
    }
}

fn holds(layer: &Layer, one: Option<Length>, locale: Locale) -> Vec<String> {
    let area = |size: f64| match one {
        Some(one) => locale.area(Area::square_meters(size * one.as_meters() * one.as_meters())),
        None => locale.message("dxf-own-square-units", &[("size", locale.number(size, 3).into())]),
    };
    let width = |gap: &Gap| match one {
        Some(one) => locale.length(one * gap.width()),
        None => locale.message("dxf-own-units", &[("size", locale.number(gap.width(), 3).into())]),
    };
    let mut said = Vec::new();
    if !layer.loops.is_empty() {
        let areas: Vec<String> = layer.loops.iter().take(MAX_PLACES).map(|around| area(around.area)).collect();
        said.push(locale.message("dxf-holds-closed", &[count(layer.loops.len()), ("areas", areas.join(", ").into())]));
    }
    match layer.gaps.first() {
        Some(gap) => {
            let ends = [("from", spot(gap.from, locale).into()), ("to", spot(gap.to, locale).into())];
            let more = [count(layer.open.len()), ("gap", width(gap).into())];
            said.push(locale.message("dxf-holds-open", &ends.into_iter().chain(more).collect::<Vec<_>>()));
        }
        None if !layer.open.is_empty() => said.push(locale.message("dxf-holds-open-far", &[count(layer.open.len())])),
        None => {}
    }
    if let Some((at, _)) = layer.branches.first() {
        let at = ("at", spot(*at, locale).into());
        said.push(locale.message("dxf-holds-branches", &[count(layer.branches.len()), at]));
    }
    if !layer.labels.is_empty() {
        said.push(locale.message("dxf-holds-texts", &[count(layer.labels.len())]));
    }
    if !layer.ignored.is_empty() {
        let kinds: Vec<String> = layer.ignored.iter().map(|(kind, n)| format!("{n} × {}", clean(kind))).collect();
        said.push(locale.message("dxf-holds-ignored", &[("kinds", kinds.join(", ").into())]));
    }
    said
}

fn layers_json(drawing: &Drawing, chosen: Option<Units>) -> Value {
    let units = chosen.unwrap_or(drawing.units);
    let one = units.one().map(Length::as_meters);
    let place = |at: &Spot| json!([rounded(at.x, 6), rounded(at.y, 6)]);
    let layers = drawing.layers.iter().map(|(name, layer)| {
        let closed = layer.loops.iter().map(|around| {
            let area = one.map(|one| rounded(around.area * one * one, 6));
            json!({ "area_units2": rounded(around.area, 6), "area_m2": area, "corners": around.corners.len() })
        });
        let gaps = layer.gaps.iter().take(MAX_PLACES).map(|gap| {
            let length = one.map(|one| rounded(gap.width() * one, 6));
            json!({ "from": place(&gap.from), "to": place(&gap.to), "width_units": rounded(gap.width(), 6), "width_m": length })
        });
        let branches =
            layer.branches.iter().take(MAX_PLACES).map(|(at, lines)| json!({ "at": place(at), "lines": lines }));
        json!({
            "name": name,
            "closed": closed.collect::<Vec<_>>(),
            "open": layer.open.len(),
            "gaps": gaps.collect::<Vec<_>>(),
            "branches": branches.collect::<Vec<_>>(),
            "texts": layer.labels.iter().map(|label| label.text.as_str()).collect::<Vec<_>>(),
            "left_out": layer.ignored,
        })
    });
    json!({
        "schema": "underfoot.drawing/1",
        "one_unit_m": one,
        "metric_hint": drawing.metric_hint,
        "layers": layers.collect::<Vec<_>>(),
    })
}
