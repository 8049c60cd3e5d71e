//! The screens: which there are, in which order, and the ways between them.

mod add;
mod diary;
mod reading;
mod slab;
mod slabs;

use std::sync::Arc;

use axum::Router;
use words::Voice;

use crate::app::App;
use crate::frame::Way;
use crate::visitor::May;

pub(crate) use slabs::mark;

/// A screen about one slab.
struct SlabScreen {
    /// Below `/slab/ID`, with its slash; the slab's own page is empty.
    path: &'static str,
    /// Key of its name.
    label: &'static str,
    /// Whether it is one of the few ways at the foot of a phone.
    bar: bool,
    /// Who sees the way to it.
    need: May,
    /// Whether it is kept for reading offline.
    keep: bool,
    routes: fn() -> Router<Arc<App>>,
}

/// In the order they are told.
const SLAB_SCREENS: &[SlabScreen] = &[
    SlabScreen { path: "", label: "way-slab", bar: true, need: May::Read, keep: true, routes: slab::routes },
    SlabScreen { path: "/diary", label: "way-diary", bar: true, need: May::Read, keep: true, routes: diary::routes },
    SlabScreen { path: "/add", label: "way-add", bar: true, need: May::Write, keep: true, routes: add::routes },
];

/// A screen about no slab.
struct OtherScreen {
    path: &'static str,
    label: &'static str,
    /// Whether there is a way to it on every page.
    way: bool,
    routes: fn() -> Router<Arc<App>>,
}

const OTHER_SCREENS: &[OtherScreen] = &[
    OtherScreen { path: "/", label: "way-slabs", way: true, routes: slabs::routes },
    OtherScreen { path: "/reading", label: "way-reading", way: false, routes: reading::routes },
];

/// Every route of every screen.
pub(crate) fn routes() -> Router<Arc<App>> {
    let slab = SLAB_SCREENS.iter().map(|screen| (screen.routes)());
    slab.chain(OTHER_SCREENS.iter().map(|screen| (screen.routes)())).fold(Router::new(), Router::merge)
}

fn way(voice: Voice, id: &str, screen: &SlabScreen, here: &str) -> Way {
    let href = format!("/slab/{id}{}", screen.path);
    let path = here.split('?').next().unwrap_or_default();
    Way { here: path == href, label: voice.say(screen.label, &[]), href }
}

/// The ways at the foot of a phone.
pub(crate) fn bar(voice: Voice, id: &str, here: &str) -> Vec<Way> {
    SLAB_SCREENS.iter().filter(|s| s.bar).map(|s| way(voice, id, s, here)).collect()
}

/// All other ways from a page about a slab.
pub(crate) fn more(voice: Voice, id: &str, here: &str, may: May) -> Vec<Way> {
    let slab = SLAB_SCREENS.iter().filter(|s| !s.bar && may >= s.need).map(|s| way(voice, id, s, here));
    slab.chain(everywhere(voice)).collect()
}

/// The ways from every page.
pub(crate) fn everywhere(voice: Voice) -> Vec<Way> {
    let ways = OTHER_SCREENS.iter().filter(|s| s.way);
    ways.map(|s| Way { href: s.path.to_owned(), label: voice.say(s.label, &[]), here: false }).collect()
}

/// The addresses a phone keeps for reading offline, as JSON: the slab's screens and the forms used
/// kneeling on it.
pub(crate) fn keep(id: &str) -> String {
    let screens = SLAB_SCREENS.iter().filter(|s| s.keep).map(|s| format!("/slab/{id}{}", s.path));
    let quick = forms::forms().iter().filter(|f| f.quick).map(|f| format!("/slab/{id}/add/{}", f.kind));
    let all: Vec<String> = screens.chain(quick).chain(["/".to_owned()]).collect();
    serde_json::to_string(&all).unwrap_or_else(|_| "[]".to_owned())
}
