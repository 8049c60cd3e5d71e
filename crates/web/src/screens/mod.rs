//! The screens: which there are, in which order, and the ways between them.

mod add;
mod air_record;
mod diary;
mod drawing;
mod drops;
mod drying;
mod facts;
mod glossary;
mod links;
mod order;
mod panels;
mod papers;
mod people;
mod photographs;
mod plan;
mod pour_day;
mod reading;
mod sign_in;
mod slab;
mod slabs;
mod sums;
mod time_line;
mod visit;

use std::sync::Arc;

use axum::Router;
use localization::Locale;

use crate::app::App;
use crate::frame::NavLink;
use crate::visitor::Permission;

pub(crate) use slabs::mark;
pub(crate) use visit::is_link;

/// A screen about one slab.
struct SlabScreen {
    /// Below `/slab/ID`, with its slash; the slab's own page is empty.
    path: &'static str,
    /// Key of its name.
    label: &'static str,
    /// Whether it is one of the few ways at the foot of a phone.
    bar: bool,
    /// Who sees the way to it.
    need: Permission,
    /// Whether it is kept for reading offline.
    keep: bool,
    routes: fn() -> Router<Arc<App>>,
}

/// In the order they are told.
const SLAB_SCREENS: &[SlabScreen] = &[
    SlabScreen { path: "", label: "way-slab", bar: true, need: Permission::Read, keep: true, routes: slab::routes },
    SlabScreen {
        path: "/plan",
        label: "way-plan",
        bar: true,
        need: Permission::Read,
        keep: true,
        routes: plan::routes,
    },
    SlabScreen {
        path: "/diary",
        label: "way-diary",
        bar: true,
        need: Permission::Read,
        keep: true,
        routes: diary::routes,
    },
    SlabScreen { path: "/add", label: "way-add", bar: true, need: Permission::Write, keep: true, routes: add::routes },
    SlabScreen {
        path: "/drops",
        label: "way-drops",
        bar: false,
        need: Permission::Write,
        keep: true,
        routes: drops::routes,
    },
    SlabScreen {
        path: "/photographs",
        label: "way-photographs",
        bar: false,
        need: Permission::Read,
        keep: true,
        routes: photographs::routes,
    },
    SlabScreen {
        path: "/panels",
        label: "way-panels",
        bar: false,
        need: Permission::Read,
        keep: true,
        routes: panels::routes,
    },
    SlabScreen {
        path: "/order",
        label: "way-order",
        bar: false,
        need: Permission::Read,
        keep: true,
        routes: order::routes,
    },
    SlabScreen {
        path: "/drying",
        label: "way-drying",
        bar: false,
        need: Permission::Read,
        keep: true,
        routes: drying::routes,
    },
    SlabScreen {
        path: "/pour-day",
        label: "way-pour-day",
        bar: false,
        need: Permission::Read,
        keep: false,
        routes: pour_day::routes,
    },
    SlabScreen {
        path: "/time",
        label: "way-time",
        bar: false,
        need: Permission::Read,
        keep: false,
        routes: time_line::routes,
    },
    SlabScreen {
        path: "/papers",
        label: "way-papers",
        bar: false,
        need: Permission::Read,
        keep: true,
        routes: papers::routes,
    },
    SlabScreen {
        path: "/links",
        label: "way-links",
        bar: false,
        need: Permission::Own,
        keep: false,
        routes: links::routes,
    },
];

/// A screen about no slab.
struct OtherScreen {
    path: &'static str,
    label: &'static str,
    /// Whether there is a way to it on every page.
    way: bool,
    /// Whether it is kept for reading offline.
    keep: bool,
    routes: fn() -> Router<Arc<App>>,
}

const OTHER_SCREENS: &[OtherScreen] = &[
    OtherScreen { path: "/", label: "way-slabs", way: true, keep: true, routes: slabs::routes },
    OtherScreen { path: "/reading", label: "way-reading", way: false, keep: false, routes: reading::routes },
    OtherScreen { path: "/sums", label: "way-sums", way: true, keep: true, routes: sums::routes },
    OtherScreen { path: "/glossary", label: "way-glossary", way: true, keep: true, routes: glossary::routes },
    OtherScreen { path: "/facts", label: "way-facts", way: true, keep: false, routes: facts::routes },
];

/// A screen that is there only where people sign in.
struct PeopleScreen {
    path: &'static str,
    label: &'static str,
    /// Who sees the way to it.
    need: Permission,
}

const PEOPLE_SCREENS: &[PeopleScreen] = &[
    PeopleScreen { path: "/people", label: "way-people", need: Permission::Own },
    PeopleScreen { path: "/password", label: "way-password", need: Permission::Read },
];

/// Every route of every screen.
pub(crate) fn routes() -> Router<Arc<App>> {
    let slab = SLAB_SCREENS.iter().map(|screen| (screen.routes)());
    let people = [sign_in::routes(), people::routes(), visit::routes()];
    slab.chain(OTHER_SCREENS.iter().map(|screen| (screen.routes)())).chain(people).fold(Router::new(), Router::merge)
}

fn way(locale: Locale, id: &str, screen: &SlabScreen, here: &str) -> NavLink {
    let href = format!("/slab/{id}{}", screen.path);
    let path = here.split('?').next().unwrap_or_default();
    NavLink { here: path == href, label: locale.message(screen.label, &[]), href }
}

/// The ways at the foot of a phone.
pub(crate) fn bar(locale: Locale, id: &str, here: &str, permission: Permission) -> Vec<NavLink> {
    SLAB_SCREENS.iter().filter(|s| s.bar && permission >= s.need).map(|s| way(locale, id, s, here)).collect()
}

/// All other ways of a slab.
pub(crate) fn more(locale: Locale, id: &str, here: &str, permission: Permission) -> Vec<NavLink> {
    SLAB_SCREENS.iter().filter(|s| !s.bar && permission >= s.need).map(|s| way(locale, id, s, here)).collect()
}

/// The ways from every page; `people` where they sign in.
pub(crate) fn everywhere(locale: Locale, permission: Permission, people: bool) -> Vec<NavLink> {
    let ways = OTHER_SCREENS.iter().filter(|s| s.way).map(|s| (s.path, s.label));
    let of_people = PEOPLE_SCREENS.iter().filter(|s| people && permission >= s.need).map(|s| (s.path, s.label));
    ways.chain(of_people)
        .map(|(path, label)| NavLink { href: path.to_owned(), label: locale.message(label, &[]), here: false })
        .collect()
}

/// Addresses with their names, for a phone to keep.
type Kept = Vec<(String, String)>;

/// What a phone keeps of the screens about no slab: the list, every calculation, the trade words.
fn keep_everywhere(locale: Locale, permission: Permission) -> Kept {
    if permission < Permission::Read {
        return Kept::new();
    }
    let screens = OTHER_SCREENS.iter().filter(|s| s.keep);
    let screens = screens.map(|s| (s.path.to_owned(), locale.message(s.label, &[])));
    screens.chain(sums::addresses(locale)).collect()
}

fn as_json(kept: &Kept) -> String {
    serde_json::to_string(kept).unwrap_or_else(|_| "[]".to_owned())
}

/// What a phone keeps for reading offline, as JSON, from a page about no slab.
pub(crate) fn keep(locale: Locale, permission: Permission) -> String {
    as_json(&keep_everywhere(locale, permission))
}

/// The same from a page about a slab: its screens and every form that can wait on a phone too.
pub(crate) fn keep_slab(locale: Locale, id: &str, permission: Permission) -> String {
    let screens = SLAB_SCREENS.iter().filter(|s| s.keep && permission >= s.need);
    let screens = screens.map(|s| (format!("/slab/{id}{}", s.path), locale.message(s.label, &[])));
    let writes = permission >= Permission::Write;
    let forms = add::addresses(locale, id).chain(drawing::addresses(locale, id)).filter(|_| writes);
    as_json(&screens.chain(forms).chain(keep_everywhere(locale, permission)).collect())
}
