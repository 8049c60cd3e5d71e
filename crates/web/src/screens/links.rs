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
use store::{Link, LinkId, NewLink, TokenHash};
use words::{Arg, Voice};

use super::visit::SHARED;
use crate::app::{Access, App};
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::Choice;
use crate::entries::Opened;
use crate::frame::{Frame, show};
use crate::trouble::Trouble;
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/links", page(May::Own, list).merge(form(May::Own, make)))
        .route("/slab/{slab}/links/{link}/withdraw", form(May::Own, withdraw))
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

fn row(link: &Link, now: jiff::Timestamp, zone: &TimeZone, voice: Voice) -> Row {
    let pages: Vec<String> = SHARED
        .iter()
        .filter(|page| link.pages.iter().any(|code| code == page.code))
        .map(|page| voice.say(page.label, &[]))
        .collect();
    let moment = |at| [("moment", Arg::from(voice.moment(at, zone)))];
    let state = match link.withdrawn {
        Some(at) => voice.say("link-withdrawn", &moment(at)),
        None if link.is_open(now) => voice.say("link-open", &moment(link.expires)),
        None => voice.say("link-over", &moment(link.expires)),
    };
    Row {
        id: link.id.to_string(),
        note: link.note.clone(),
        pages: voice.list(&pages),
        made: voice.moment(link.made, zone),
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

fn shown(ask: &Ask, opened: &Opened, shown: Shown<'_>) -> Result<Response, Trouble> {
    let (voice, now) = (ask.voice(), ask.app.real_now());
    let links = ask.app.store().links_of(opened.record.id)?;
    let open = links.iter().filter(|link| link.is_open(now)).count();
    let typed = |name: &str| shown.typed.and_then(|posted| posted.typed.first(name)).map(str::to_owned);
    let ticked = |code: &str| match shown.typed {
        Some(posted) => posted.typed.get("page").iter().any(|page| page == code),
        None => code == "standing",
    };
    let page = |page: &super::visit::Shared| {
        let (value, label) = (page.code.to_owned(), voice.say(page.label, &[]));
        (Choice { value, label, chosen: ticked(page.code) }, voice.say(page.what, &[]))
    };
    Ok(show(&Page {
        frame: ask.frame(voice.say("way-links", &[])).about(ask, &opened.record, &opened.zone),
        head: voice.say("links-count", &[("count", Arg::Number(open as f64))]),
        here_only: ask.app.settings.access == Access::ThisMachine,
        rows: links.iter().map(|link| row(link, now, &opened.zone, voice)).collect(),
        pages: SHARED.iter().map(page).collect(),
        note: typed("note").unwrap_or_default(),
        days: typed("days").unwrap_or_else(|| USUAL_DAYS.to_owned()),
        link: ask.app.fresh_id().to_string(),
        fresh: shown.fresh,
        mistakes: shown.mistakes,
    }))
}

fn list(ask: &Ask) -> Answer {
    shown(ask, &ask.opened()?, Shown::default())
}

fn make(ask: &Ask, posted: &Posted) -> Answer {
    let opened = ask.opened()?;
    match made(ask, &opened, posted) {
        Ok(fresh) => shown(ask, &opened, Shown { fresh: Some(fresh), ..Shown::default() }),
        Err(Trouble::Mistakes(mistakes)) => {
            let page = shown(ask, &opened, Shown { typed: Some(posted), mistakes, fresh: None })?;
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn made(ask: &Ask, opened: &Opened, posted: &Posted) -> Result<Fresh, Trouble> {
    let voice = ask.voice();
    let mut mistakes = Vec::new();
    let ticked = posted.typed.get("page");
    let pages: Vec<&str> = SHARED.iter().map(|page| page.code).filter(|c| ticked.iter().any(|t| t == c)).collect();
    if pages.is_empty() {
        mistakes.push(("page".to_owned(), voice.say("mistake-link-page", &[])));
    }
    let days = posted.typed.first("days").and_then(|text| text.trim().parse().ok()).filter(|days| DAYS.contains(days));
    if days.is_none() {
        let ends = [("least", Arg::Number(*DAYS.start() as f64)), ("most", Arg::Number(*DAYS.end() as f64))];
        mistakes.push(("days".to_owned(), voice.say("mistake-link-days", &ends)));
    }
    let note = posted.typed.first("note").unwrap_or_default().trim();
    if note.chars().count() > NOTE_LETTERS || note.chars().any(char::is_control) {
        mistakes.push(("note".to_owned(), voice.say("mistake-link-note", &[("most", (NOTE_LETTERS as u32).into())])));
    }
    let (Some(days), true) = (days, mistakes.is_empty()) else { return Err(Trouble::Mistakes(mistakes)) };
    let id = posted.typed.first("link").and_then(|text| text.parse::<LinkId>().ok());
    let id = id.unwrap_or_else(|| LinkId::from_u128(ask.app.fresh_id().as_u128()));
    // The same form sent twice: the first link stands, and its address can't be shown again.
    if ask.app.store().links_of(opened.record.id)?.iter().any(|link| link.id == id) {
        return Err(Trouble::mistake("page", voice.say("mistake-link-made", &[])));
    }
    let (token, now) = (ask.app.secret(), ask.app.real_now());
    let link = NewLink {
        id,
        token: TokenHash::of(token.as_bytes()),
        slab: opened.record.id,
        pages: &pages,
        note,
        made_by: ask.visitor.person.as_ref().map(|person| person.id),
        expires: now + SignedDuration::from_hours(24 * days),
    };
    ask.app.store().add_link(&link, now)?;
    let address = format!("{}/s/{token}", origin(ask));
    Ok(Fresh { picture: picture(&address, &voice.say("links-picture", &[])), address })
}

/// What the address begins with: as this server is known outside, else as this page was asked for.
fn origin(ask: &Ask) -> String {
    match &ask.app.settings.access {
        Access::People { public: Some(address) } => address.clone(),
        _ => {
            let host = ask.headers.get(HOST).and_then(|host| host.to_str().ok()).unwrap_or("localhost");
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

fn withdraw(ask: &Ask, _: &Posted) -> Answer {
    let record = ask.slab()?;
    let id: LinkId = ask.part("link").parse().map_err(|_| Trouble::NotFound)?;
    // Only a link of this slab: another's id opens nothing here.
    if !ask.app.store().links_of(record.id)?.iter().any(|link| link.id == id) {
        return Err(Trouble::NotFound);
    }
    ask.app.store().withdraw_link(id, ask.app.real_now())?;
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
