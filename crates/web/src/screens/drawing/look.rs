//! What the plan comes to as it is typed: the drawing, its areas, how a walk closes, what is wrong.

use form_schema::FormData;
use localization::{Arg, Locale};
use pictures::{Layer, PlanLayers, PlanLook, plan_svg};
use slab_diary::Slab;
use slab_plan::{Plan, PlanError, WHOLE};
use units::Area;

use super::kept::Kept;
use super::read::{Told, Wrong, read};
use super::way::{Telling, row_of};

/// Ground in no zone below this share of the slab is the rounding of a tape.
const WORTH_TELLING: f64 = 0.002;

/// A plan as it is typed.
#[derive(Debug, Clone, Default)]
pub(super) struct Look {
    /// The drawing to scale.
    pub(super) drawing: Option<String>,
    /// A walk that does not close, as walked.
    pub(super) open: Option<String>,
    /// What it comes to: area, perimeter, how the walk closed.
    pub(super) sentences: Vec<String>,
    pub(super) zones: Vec<(String, String)>,
    /// What to think about before it is written: it can be written all the same.
    pub(super) doubts: Vec<String>,
    /// What keeps it from being written, with its place on the page.
    pub(super) wrong: Vec<(Option<String>, String)>,
    /// The lengths of the walls.
    pub(super) walls: Vec<String>,
    /// Nothing was typed yet.
    pub(super) empty: bool,
    pub(super) metric: bool,
}

/// What was typed, proved to be a plan.
pub(super) struct Proved {
    pub(super) told: Told,
    pub(super) plan: Plan,
}

/// Reads and proves, with the lines of the plan that stands.
pub(super) fn prove(
    way: Telling,
    typed: &FormData,
    kept: Option<&Kept>,
    locale: Locale,
) -> Result<Proved, (Wrong, Option<Box<Opened>>)> {
    let mut told = read(way, typed, locale).map_err(|wrong| (wrong, None))?;
    if let Some(kept) = kept {
        kept.carry(&mut told.spec);
    }
    match Plan::resolve(&told.spec) {
        Ok(plan) => Ok(Proved { told, plan }),
        Err(error) => {
            let wrong = super::error_source::blame(&error, &told.from, locale);
            Err((wrong, Some(Box::new(Opened { error, told }))))
        }
    }
}

/// A plan that reads but does not hold together.
pub(super) struct Opened {
    error: PlanError,
    told: Told,
}

/// The look at what was typed. `slab` is what the diary knows so far.
pub(super) fn look(way: Telling, typed: &FormData, slab: &Slab<'_>, locale: Locale) -> Look {
    let kept = Kept::of(way, typed, slab);
    let metric = locale.unit_system == localization::UnitSystem::Metric;
    if typed.iter().filter(|(name, _)| is_input(name)).all(|(_, texts)| texts.iter().all(|t| t.trim().is_empty())) {
        return Look { empty: true, metric, ..Look::default() };
    }
    match prove(way, typed, kept.as_ref(), locale) {
        Ok(Proved { plan, .. }) => of_plan(&plan, slab, locale),
        Err((mut wrong, opened)) => {
            if opened.is_some() {
                // The first sentence tells of every wall that may be wrong; at their rows they are told again.
                wrong.truncate(1);
            }
            let open = opened.and_then(|opened| match &opened.error {
                PlanError::WalkOpen { walk, .. } => {
                    let numbers: Vec<usize> = opened.told.from.legs.iter().map(|row| row + 1).collect();
                    super::sketch::open_walk(walk, &numbers, locale)
                }
                _ => None,
            });
            let wrong = wrong.into_iter().map(|(field, said)| (place(&field, locale), said)).collect();
            Look { open, wrong, metric, ..Look::default() }
        }
    }
}

/// Whether a name is one that a person fills in: not what the page sends along.
fn is_input(name: &str) -> bool {
    !matches!(name, "entry" | "noted" | "next" | "replaces" | "happened" | "look" | "way" | super::kept::LEAVE_OUT)
}

/// What a plan comes to.
pub(super) fn of_plan(plan: &Plan, slab: &Slab<'_>, locale: Locale) -> Look {
    let title = locale.message("draw-as-typed", &[]);
    let drawing = plan_svg(plan, &PlanLayers::default(), &PlanLook::new("typed", &title, locale).keyed());
    let mut sentences = vec![match plan.perimeter() {
        Some(perimeter) => {
            let args = [("area", locale.area(plan.area()).into()), ("perimeter", locale.length(perimeter).into())];
            locale.message("draw-comes-to", &args)
        }
        None => locale.message("draw-comes-to-area", &[("area", locale.area(plan.area()).into())]),
    }];
    if plan.cut_out_area() > Area::ZERO {
        sentences.push(locale.message("draw-cut-out", &[("area", locale.area(plan.cut_out_area()).into())]));
    }
    sentences.extend(plan.walks().iter().map(|(_, walk)| locale.walk(walk)));
    let walls = drawing.items.iter().filter(|item| item.layer == Layer::Dimensions);
    Look {
        metric: locale.unit_system == localization::UnitSystem::Metric,
        walls: walls.map(|item| item.text.clone()).collect(),
        drawing: drawing.svg,
        sentences,
        zones: plan.zones().iter().map(|z| (zone_name(z.name(), locale), locale.area(z.area()))).collect(),
        doubts: doubts(plan, slab, locale),
        ..Look::default()
    }
}

/// The name of a zone; the only zone of an undivided slab has one in the reader's language.
pub(in crate::screens) fn zone_name(name: &str, locale: Locale) -> String {
    if name == WHOLE { locale.message("plan-whole", &[]) } else { name.to_owned() }
}

fn doubts(plan: &Plan, slab: &Slab<'_>, locale: Locale) -> Vec<String> {
    let mut doubts = Vec::new();
    let pieces = plan.pieces().len();
    if pieces > 1 {
        doubts.push(locale.message("draw-pieces", &[("count", Arg::Number(pieces as f64))]));
    }
    if plan.unzoned_area() > plan.area() * WORTH_TELLING {
        doubts.push(locale.message("draw-unzoned", &[("area", locale.area(plan.unzoned_area()).into())]));
    }
    doubts.extend(strangers(plan, slab).into_iter().map(|(zone, count)| {
        locale.message("draw-stranger", &[("zone", zone.into()), ("count", Arg::Number(f64::from(count)))])
    }));
    let points = slab.entries().iter().filter_map(|entry| slab.point_of(entry));
    let off = points.filter(|at| plan.is_drawn() && !plan.contains(*at)).count();
    if off > 0 {
        doubts.push(locale.message("draw-off", &[("count", Arg::Number(off as f64))]));
    }
    doubts
}

/// Zones that entries of the diary name and this plan does not have, with how many do.
fn strangers<'s>(plan: &Plan, slab: &'s Slab<'_>) -> Vec<(&'s str, u32)> {
    let mut found: Vec<(&str, u32)> = Vec::new();
    for zone in slab.entries().iter().filter_map(|entry| entry.place.as_ref()?.zone.as_deref()) {
        let whole = zone.eq_ignore_ascii_case(WHOLE) && plan.zones().len() == 1;
        if whole || plan.zone(zone).is_some() {
            continue;
        }
        match found.iter_mut().find(|(name, _)| *name == zone) {
            Some((_, count)) => *count += 1,
            None => found.push((zone, 1)),
        }
    }
    found
}

/// Where on the page a mistake is, in words; nothing when it concerns the whole.
fn place(field: &str, locale: Locale) -> Option<String> {
    let (name, row) = row_of(field)?;
    let key = match name.split('_').next() {
        Some("room") => "draw-room-n",
        Some("cut") => "draw-cut-n",
        Some("part") => "draw-part-n",
        _ => "draw-wall-n",
    };
    Some(locale.message(key, &[("number", (row + 1).to_string().into())]))
}
