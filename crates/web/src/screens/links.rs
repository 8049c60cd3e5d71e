//! Share links of a slab: making one, seeing which there are, withdrawing.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::http::header::HOST;
use axum::response::{IntoResponse, Redirect, Response};
use fast_qr::convert::svg::SvgBuilder;
use fast_qr::qr::QRBuilder;
use jiff::SignedDuration;
use jiff::tz::TimeZone;
use localization::{Arg, Locale};
use store::{Link, LinkId, NewLink, TokenHash};

use super::visit::SHARED;
use crate::app::{Access, App};
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::Choice;
use crate::entries::Opened;
use crate::frame::{Frame, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/links", page(Permission::Own, list).merge(form(Permission::Own, make)))
        .route("/slab/{slab}/links/{link}/withdraw", form(Permission::Own, withdraw))
}

/// How long a link may be good, in days.
const DAYS: std::ops::RangeInclusive<i64> = 1..=365;
const USUAL_DAYS: &str = "30";
/// Longest note, in letters: it becomes the author of what is written by the link.
const NOTE_LETTERS: usize = 100;

struct Row {
    id: String,
    note: String,
    pages: String,
    made: String,
    state: String,
    open: bool,
}

/// A link just made: shown once, since only its hash is kept.
struct Fresh {
    address: String,
    picture: Option<String>,
}

#[derive(Template)]
#[template(path = "links.html")]
struct Page {
    frame: Frame,
    head: String,
    here_only: bool,
    rows: Vec<Row>,
    pages: Vec<(Choice, String)>,
    note: String,
    days: String,
    link: String,
    fresh: Option<Fresh>,
    mistakes: Vec<(String, String)>,
}

fn row(link: &Link, now: jiff::Timestamp, zone: &TimeZone, locale: Locale) -> Row {
    let pages: Vec<String> = SHARED
        .iter()
        .filter(|page| link.pages.iter().any(|code| code == page.code))
        .map(|page| locale.message(page.label, &[]))
        .collect();
    let moment = |at| [("moment", Arg::from(locale.moment(at, zone)))];
    let state = match link.withdrawn {
        Some(at) => locale.message("link-withdrawn", &moment(at)),
        None if link.is_open(now) => locale.message("link-open", &moment(link.expires)),
        None => locale.message("link-over", &moment(link.expires)),
    };
    Row {
        id: link.id.to_string(),
        note: link.note.clone(),
        pages: locale.list(&pages),
        made: locale.moment(link.made, zone),
        state,
        open: link.is_open(now),
    }
}

/// What the page shows besides the list.
#[derive(Default)]
struct Shown<'a> {
    typed: Option<&'a Posted>,
    fresh: Option<Fresh>,
    mistakes: Vec<(String, String)>,
}

fn shown(context: &RequestContext, opened: &Opened, shown: Shown<'_>) -> Result<Response, PageError> {
    let (locale, now) = (context.locale(), context.app.real_now());
    let links = context.app.store().links_of(opened.record.id)?;
    let open = links.iter().filter(|link| link.is_open(now)).count();
    let typed = |name: &str| shown.typed.and_then(|posted| posted.typed.first(name)).map(str::to_owned);
    let ticked = |code: &str| match shown.typed {
        Some(posted) => posted.typed.get("page").iter().any(|page| page == code),
        None => code == "standing",
    };
    let page = |page: &super::visit::Shared| {
        let (value, label) = (page.code.to_owned(), locale.message(page.label, &[]));
        (Choice { value, label, chosen: ticked(page.code) }, locale.message(page.what, &[]))
    };
    Ok(show(&Page {
        frame: context.frame(locale.message("way-links", &[])).about(context, &opened.record, &opened.zone),
        head: locale.message("links-count", &[("count", Arg::Number(open as f64))]),
        here_only: context.app.settings.access == Access::ThisMachine,
        rows: links.iter().map(|link| row(link, now, &opened.zone, locale)).collect(),
        pages: SHARED.iter().map(page).collect(),
        note: typed("note").unwrap_or_default(),
        days: typed("days").unwrap_or_else(|| USUAL_DAYS.to_owned()),
        link: context.app.fresh_id().to_string(),
        fresh: shown.fresh,
        mistakes: shown.mistakes,
    }))
}

fn list(context: &RequestContext) -> Answer {
    shown(context, &context.opened()?, Shown::default())
}

fn make(context: &RequestContext, posted: &Posted) -> Answer {
    let opened = context.opened()?;
    match made(context, &opened, posted) {
        Ok(fresh) => shown(context, &opened, Shown { fresh: Some(fresh), ..Shown::default() }),
        Err(PageError::FieldErrors(mistakes)) => {
            let page = shown(context, &opened, Shown { typed: Some(posted), mistakes, fresh: None })?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn made(context: &RequestContext, opened: &Opened, posted: &Posted) -> Result<Fresh, PageError> {
    let locale = context.locale();
    let mut mistakes = Vec::new();
    let ticked = posted.typed.get("page");
    let pages: Vec<&str> = SHARED.iter().map(|page| page.code).filter(|c| ticked.iter().any(|t| t == c)).collect();
    if pages.is_empty() {
        mistakes.push(("page".to_owned(), locale.message("mistake-link-page", &[])));
    }
    let days = posted.typed.first("days").and_then(|text| text.trim().parse().ok()).filter(|days| DAYS.contains(days));
    if days.is_none() {
        let ends = [("least", Arg::Number(*DAYS.start() as f64)), ("most", Arg::Number(*DAYS.end() as f64))];
        mistakes.push(("days".to_owned(), locale.message("mistake-link-days", &ends)));
    }
    let note = posted.typed.first("note").unwrap_or_default().trim();
    if note.chars().count() > NOTE_LETTERS || note.chars().any(char::is_control) {
        mistakes
            .push(("note".to_owned(), locale.message("mistake-link-note", &[("most", (NOTE_LETTERS as u32).into())])));
    }
    let (Some(days), true) = (days, mistakes.is_empty()) else { return Err(PageError::FieldErrors(mistakes)) };
    let id = posted.typed.first("link").and_then(|text| text.parse::<LinkId>().ok());
    let id = id.unwrap_or_else(|| LinkId::from_u128(context.app.fresh_id().as_u128()));
    // The same form sent twice: the first link stands, and its address can't be shown again.
    if context.app.store().links_of(opened.record.id)?.iter().any(|link| link.id == id) {
        return Err(PageError::mistake("page", locale.message("mistake-link-made", &[])));
    }
    let (token, now) = (context.app.secret(), context.app.real_now());
    let link = NewLink {
        id,
        token: TokenHash::of(token.as_bytes()),
        slab: opened.record.id,
        pages: &pages,
        note,
        made_by: context.visitor.person.as_ref().map(|person| person.id),
        expires: now + SignedDuration::from_hours(24 * days),
    };
    context.app.store().add_link(&link, now)?;
    let address = format!("{}/s/{token}", origin(context));
    Ok(Fresh { picture: picture(&address, &locale.message("links-picture", &[])), address })
}

/// What the address begins with: as this server is known outside, else as this page was asked for.
fn origin(context: &RequestContext) -> String {
    match &context.app.settings.access {
        Access::People { public: Some(address) } => address.clone(),
        _ => {
            let host = context.headers.get(HOST).and_then(|host| host.to_str().ok()).unwrap_or("localhost");
            format!("http://{host}")
        }
    }
}

/// The address as a picture for a phone's camera (QR, ISO/IEC 18004), with its quiet edge.
fn picture(address: &str, label: &str) -> Option<String> {
    let code = QRBuilder::new(address).build().ok()?;
    let svg = SvgBuilder::default().to_str(&code);
    let label = label.replace('&', "&amp;").replace('"', "&quot;").replace('<', "&lt;");
    Some(svg.replacen("<svg ", &format!("<svg role=\"img\" aria-label=\"{label}\" "), 1))
}

fn withdraw(context: &RequestContext, _: &Posted) -> Answer {
    let record = context.slab()?;
    let id: LinkId = context.part("link").parse().map_err(|_| PageError::NotFound)?;
    // Only a link of this slab: another's id opens nothing here.
    if !context.app.store().links_of(record.id)?.iter().any(|link| link.id == id) {
        return Err(PageError::NotFound);
    }
    context.app.store().withdraw_link(id, context.app.real_now())?;
    Ok(Redirect::to(&format!("/slab/{}/links?said=link-withdrawn", record.id)).into_response())
}

#[cfg(test)]
mod tests {
    use super::picture;

    #[test]
    fn the_picture_has_no_style_and_no_script_and_a_name() {
        let svg = picture("https://slabs.example.org/s/00ff", "a \"link\"").expect("a picture");
        assert!(svg.starts_with("<svg role=\"img\" aria-label=\"a &quot;link&quot;\" "), "{}", &svg[..120]);
        for never in ["style", "script", "<image", "href"] {
            assert!(!svg.contains(never), "{never}");
        }
    }
}
