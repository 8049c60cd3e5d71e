//! What a share link opens: the chosen pages of one slab, for whoever has the link, without signing in.
//!
//! The pages are the ordinary ones in a plainer frame: the same functions make them, told by a
//! [`Sight`] what they may show and where their links lead. Every address here begins with the link's
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
use crate::ask::{Answer, Ask, form, page};
use crate::entries::Opened;
use crate::frame::{Frame, Way};
use crate::sight::Sight;
use crate::trouble::Trouble;
use crate::visitor::May;

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
        .route("/s/{token}", page(May::Nothing, first))
        .route("/s/{token}/standing", page(May::Nothing, standing_page))
        .route("/s/{token}/plan", page(May::Nothing, plan_page))
        .route("/s/{token}/diary", page(May::Nothing, diary_page))
        .route("/s/{token}/entry/{entry}", page(May::Nothing, entry_page))
        .route("/s/{token}/photographs", page(May::Nothing, photographs::all))
        .route("/s/{token}/photo/{hash}", page(May::Nothing, photographs::one))
        .route("/s/{token}/order", page(May::Nothing, order_page))
        .route("/s/{token}/choice", page(May::Nothing, choice::blank).merge(form(May::Nothing, choice::choose)))
}

/// A link with what it opens.
struct Visit {
    link: Link,
    opened: Opened,
    sight: Sight,
}

impl Visit {
    /// Opens the link that the path names.
    fn of(ask: &Ask) -> Result<Self, Trouble> {
        let token = ask.part("token");
        // Every token made here is 64 small hexadecimal letters; nothing else is looked up.
        let fit = token.len() == 64 && token.bytes().all(|b| b.is_ascii_digit() || (b'a'..=b'f').contains(&b));
        if !fit {
            return Err(Trouble::NotFound);
        }
        let link = match ask.app.store().link_state(TokenHash::of(token.as_bytes()), ask.app.real_now())? {
            LinkState::Unknown => return Err(Trouble::NotFound),
            LinkState::Expired(at) => return Err(Trouble::LinkOver(at)),
            LinkState::Withdrawn(at) => return Err(Trouble::LinkWithdrawn(at)),
            LinkState::Open(link) => link,
        };
        let record = ask.app.store().slab_record(link.slab)?.ok_or(Trouble::NotFound)?;
        let shows = |code: &str| link.pages.iter().any(|page| page == code);
        let sight = Sight {
            base: format!("{ROOT}{token}"),
            writes: false,
            entries: shows("diary"),
            photographs: shows("photographs"),
            by_link: true,
        };
        Ok(Self { opened: ask.open(record)?, sight, link })
    }

    /// Opens the link that the path names, when it shows a page.
    fn at(ask: &Ask, code: &str) -> Result<Self, Trouble> {
        let visit = Self::of(ask)?;
        if visit.shows(code) { Ok(visit) } else { Err(Trouble::NotFound) }
    }

    fn shows(&self, code: &str) -> bool {
        self.link.pages.iter().any(|page| page == code)
    }

    /// The frame of one of its pages; `title` is a key.
    fn frame(&self, ask: &Ask, title: &str) -> Frame {
        let voice = ask.voice();
        let path = ask.here.split('?').next().unwrap_or_default();
        let ways = SHARED.iter().filter(|page| self.shows(page.code)).map(|page| {
            let href = format!("{}/{}", self.sight.base, page.code);
            Way { here: path == href, label: voice.say(page.label, &[]), href }
        });
        let (record, zone) = (&self.opened.record, &self.opened.zone);
        ask.frame(voice.say(title, &[])).by_link(ask, record, zone, self.sight.base.clone(), ways.collect())
    }
}

fn first(ask: &Ask) -> Answer {
    let visit = Visit::of(ask)?;
    let page = SHARED.iter().find(|page| visit.shows(page.code)).ok_or(Trouble::NotFound)?;
    Ok(Redirect::to(&format!("{}/{}", visit.sight.base, page.code)).into_response())
}

fn standing_page(ask: &Ask) -> Answer {
    let visit = Visit::at(ask, "standing")?;
    slab::standing(ask, &visit.opened, visit.frame(ask, "slab-title"), &visit.sight)
}

fn plan_page(ask: &Ask) -> Answer {
    let visit = Visit::at(ask, "plan")?;
    plan::plan_of(ask, &visit.opened, visit.frame(ask, "way-plan"), &visit.sight)
}

fn diary_page(ask: &Ask) -> Answer {
    let visit = Visit::at(ask, "diary")?;
    diary::page_of(ask, &visit.opened, visit.frame(ask, "diary-title"), &visit.sight)
}

fn entry_page(ask: &Ask) -> Answer {
    let visit = Visit::at(ask, "diary")?;
    diary::entry_of(ask, &visit.opened, visit.frame(ask, "diary-title"), &visit.sight)
}

fn order_page(ask: &Ask) -> Answer {
    let visit = Visit::at(ask, "order")?;
    order::order_of(ask, &visit.opened, visit.frame(ask, "way-order"), &visit.sight)
}
