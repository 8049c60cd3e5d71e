//! Drawings that several screens show.

use pictures::{PlanLayers, PlanLook, marks_of, plan_svg};

use crate::control::Known;

/// The plan with what was found on it, to tap a place on.
pub(crate) fn small_plan(known: &Known<'_>) -> Option<String> {
    let plan = known.slab.plan()?;
    let layers = PlanLayers { marks: marks_of(known.slab, known.trade, known.locale), ..PlanLayers::default() };
    plan_svg(plan, &layers, &PlanLook::new("place", &known.locale.message("plan-to-tap", &[]), known.locale)).svg
}
