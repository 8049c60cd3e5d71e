//! What a share link opens: the chosen pages of one slab, for whoever has the link, without signing in.
//!
//! The pages are the ordinary ones in a plainer frame: the same functions make them, told by a
//! [`ViewScope`] what they may show and where their links lead. Every address here begins with the link's
//! token, and every answer says of itself that it is not to be found by searching.
//!
//! To add a page: its line in [`SHARED`], its route, and its words in `locales/*/people_pages.ftl`.

mod choice;
mod photographs;

use std::sync::Arc;

use axum::Router;
use axum::response::{IntoResponse, Redirect};
use store::{Link, LinkState, TokenHash};

use super::{diary, order, plan, slab};
use crate::app::App;
use crate::context::{Answer, RequestContext, form, page};
use crate::entries::Opened;
use crate::frame::{Frame, NavLink};
use crate::page_error::PageError;
use crate::view_scope::ViewScope;
use crate::visitor::Permission;

/// What the address of every page of a link begins with.
const ROOT: &str = "/s/";

/// Whether a path lies below a share link.
pub(crate) fn is_link(path: &str) -> bool {
    path.starts_with(ROOT)
}

/// A page that a link can show.
pub(super) struct Shared {
    /// As the link keeps it, and as its address ends.
    pub(super) code: &'static str,
    /// Key of its name.
    pub(super) label: &'static str,
    /// Key of what it shows.
    pub(super) what: &'static str,
}

/// In the order in which they are told; the first that a link shows is where it leads.
pub(super) const SHARED: &[Shared] = &[
    Shared { code: "choice", label: "way-choice", what: "links-choice" },
    Shared { code: "standing", label: "way-slab", what: "links-standing" },
    Shared { code: "plan", label: "way-plan", what: "links-plan" },
    Shared { code: "diary", label: "way-diary", what: "links-diary" },
    Shared { code: "photographs", label: "photographs", what: "links-photographs" },
    Shared { code: "order", label: "way-order", what: "links-order" },
];

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/s/{token}", page(Permission::Nothing, first))
        .route("/s/{token}/standing", page(Permission::Nothing, standing_page))
        .route("/s/{token}/plan", page(Permission::Nothing, plan_page))
        .route("/s/{token}/diary", page(Permission::Nothing, diary_page))
        .route("/s/{token}/entry/{entry}", page(Permission::Nothing, entry_page))
        .route("/s/{token}/photographs", page(Permission::Nothing, photographs::all))
        .route("/s/{token}/photo/{hash}", page(Permission::Nothing, photographs::one))
        .route("/s/{token}/order", page(Permission::Nothing, order_page))
        .route(
            "/s/{token}/choice",
            page(Permission::Nothing, choice::blank).merge(form(Permission::Nothing, choice::choose)),
        )
}

/// A link with what it opens.
struct Visit {
    link: Link,
    opened: Opened,
    sight: ViewScope,
}

impl Visit {
    /// Opens the link that the path names.
    fn of(context: &RequestContext) -> Result<Self, PageError> {
        let token = context.part("token");
        // Every token made here is 64 small hexadecimal letters; nothing else is looked up.
        let fit = token.len() == 64 && token.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
        if !fit {
            return Err(PageError::NotFound);
        }
        let link = match context.app.store().link_state(TokenHash::of(token.as_bytes()), context.app.real_now())? {
            LinkState::Unknown => return Err(PageError::NotFound),
            LinkState::Expired(at) => return Err(PageError::LinkOver(at)),
            LinkState::Withdrawn(at) => return Err(PageError::LinkWithdrawn(at)),
            LinkState::Open(link) => link,
        };
        let record = context.app.store().slab_record(link.slab)?.ok_or(PageError::NotFound)?;
        let shows = |code: &str| link.pages.iter().any(|page| page == code);
        let sight = ViewScope {
            base: format!("{ROOT}{token}"),
            writes: false,
            entries: shows("diary"),
            photographs: shows("photographs"),
            by_link: true,
        };
        Ok(Self { opened: context.open(record)?, sight, link })
    }

    /// Opens the link that the path names, when it shows a page.
    fn at(context: &RequestContext, code: &str) -> Result<Self, PageError> {
        let visit = Self::of(context)?;
        if visit.shows(code) { Ok(visit) } else { Err(PageError::NotFound) }
    }

    fn shows(&self, code: &str) -> bool {
        self.link.pages.iter().any(|page| page == code)
    }

    /// The frame of one of its pages; `title` is a key.
    fn frame(&self, context: &RequestContext, title: &'static str) -> Frame {
        let locale = context.locale();
        let path = context.here.split('?').next().unwrap_or_default();
        let ways = SHARED.iter().filter(|page| self.shows(page.code)).map(|page| {
            let href = format!("{}/{}", self.sight.base, page.code);
            NavLink { here: path == href, label: locale.message(page.label, &[]), href }
        });
        let (record, zone) = (&self.opened.record, &self.opened.zone);
        context.frame(locale.message(title, &[])).by_link(
            context,
            record,
            zone,
            self.sight.base.clone(),
            ways.collect(),
        )
    }
}

fn first(context: &RequestContext) -> Answer {
    let visit = Visit::of(context)?;
    let page = SHARED.iter().find(|page| visit.shows(page.code)).ok_or(PageError::NotFound)?;
    Ok(Redirect::to(&format!("{}/{}", visit.sight.base, page.code)).into_response())
}

fn standing_page(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "standing")?;
    slab::standing(context, &visit.opened, visit.frame(context, "slab-title"), &visit.sight)
}

fn plan_page(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "plan")?;
    plan::plan_of(context, &visit.opened, visit.frame(context, "way-plan"), &visit.sight)
}

fn diary_page(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "diary")?;
    diary::page_of(context, &visit.opened, visit.frame(context, "diary-title"), &visit.sight)
}

fn entry_page(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "diary")?;
    diary::entry_of(context, &visit.opened, visit.frame(context, "diary-title"), &visit.sight)
}

fn order_page(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "order")?;
    order::order_of(context, &visit.opened, visit.frame(context, "way-order"), &visit.sight)
}
