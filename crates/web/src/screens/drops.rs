//! Several water drops at once: a crew sets nine and watches all, each with its own clock.
//!
//! The clocks run on the phone; every drop that ends is an entry like any other, in the outbox first.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use pictures::{Step, steps};
use slab_diary::{EntryKind, Knowledge, fold};
use trade_facts::Trade;

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::control::Known;
use crate::frame::{Frame, show};
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}/drops", page(Permission::Write, shown))
}

#[derive(Template)]
#[template(path = "drops.html")]
struct Page {
    frame: Frame,
    how: String,
    /// The same as drawings.
    steps: &'static [Step],
    plan: Option<String>,
    /// The zones to set a drop in without tapping the plan; none where the slab is not divided.
    zones: Vec<String>,
    /// Where one entry of a drop is written, and what it is called.
    action: String,
    label: String,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let locale = context.locale();
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let known = Known { slab: &slab, trade: Trade::built_in(), locale };
    let drop = EntryKind::WaterDrop;
    let zones = slab.zones().iter().map(|zone| zone.name.clone());
    Ok(show(&Page {
        how: localization::how(locale, drop.schema()),
        steps: steps(drop.name()),
        plan: slab.plan().filter(|plan| plan.is_drawn()).and_then(|_| crate::small_plan::small_plan(&known)),
        zones: zones.filter(|zone| zone != slab_plan::WHOLE).collect(),
        action: format!("/slab/{}/add/{}", opened.record.id, drop.name()),
        label: locale.kind(drop),
        frame: context.frame(locale.message("drops-title", &[])).about(context, &opened.record, &opened.zone),
    }))
}
