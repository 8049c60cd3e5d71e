//! Adding an entry of any kind, and correcting one.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use forms::{Form, Group, Typed};
use serde_json::json;
use slab::diary::{Entry, EntryId, Knowledge};
use slab::slab::fold;
use slab::trade::Trade;

use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::{Control, Known, Mistakes, Places, controls, photographs, places};
use crate::entries::{Opened, after, write_form};
use crate::frame::{Frame, Way, show};
use crate::trouble::Trouble;
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/add", page(May::Write, menu))
        .route("/slab/{slab}/add/{kind}", page(May::Write, blank).merge(form(May::Write, add)))
        .route("/slab/{slab}/fix/{entry}", page(May::Write, old).merge(form(May::Write, fix)))
}

#[derive(Template)]
#[template(path = "add.html")]
struct Menu {
    frame: Frame,
    groups: Vec<(String, Vec<(Way, String)>)>,
}

fn menu(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let voice = ask.voice();
    let id = opened.record.id;
    let groups = Group::ALL.into_iter().map(|group| {
        let ways = forms::forms().iter().filter(|f| f.group == group && f.kind != "job_opened").map(|f| {
            let way = Way { href: format!("/slab/{id}/add/{}", f.kind), label: voice.kind(f.kind), here: false };
            (way, forms::why(voice, f))
        });
        (forms::group_label(voice, group), ways.collect())
    });
    let frame = ask.frame(voice.say("add-title", &[])).about(ask, &opened.record, &opened.zone);
    Ok(show(&Menu { groups: groups.collect(), frame }))
}

#[derive(Template)]
#[template(path = "form.html")]
struct Page {
    frame: Frame,
    action: String,
    title: String,
    why: String,
    how: String,
    controls: Vec<Control>,
    presets: Vec<(String, String)>,
    places: Option<Places>,
    takes_photographs: bool,
    about_photographs: bool,
    most_bytes: usize,
    entry: String,
    next: String,
    happened: String,
    happened_mistake: Option<String>,
    photo_mistake: Option<String>,
    mistakes: Vec<(String, String)>,
    label: String,
    fixing: bool,
    /// The first photograph of the entry that is corrected: what is marked is marked on it.
    kept: Option<String>,
}

fn shown(
    ask: &Ask,
    opened: &Opened,
    kind: &'static Form,
    old: Option<&Entry>,
    typed: &Typed,
    mistakes: &Mistakes,
) -> Page {
    let voice = ask.voice();
    let at = ask.app.asked_at(opened.record.id);
    let slab = fold(&opened.diary, Knowledge::noted_by(at));
    let known = Known { slab: &slab, trade: Trade::built_in(), voice };
    let id = opened.record.id;
    let (action, title) = match old {
        Some(old) => {
            (format!("/slab/{id}/fix/{}", old.id), voice.say("fix-title", &[("what", voice.kind(kind.kind).into())]))
        }
        None => (format!("/slab/{id}/add/{}", kind.kind), voice.kind(kind.kind)),
    };
    let (takes_photographs, about_photographs) = photographs(kind);
    let mistake = |name: &str| crate::control::mistake_of(mistakes, name);
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    Page {
        frame: ask.frame(title.clone()).about(ask, &opened.record, &opened.zone),
        action,
        title,
        why: forms::why(voice, kind),
        how: forms::how(voice, kind),
        controls: controls(kind, typed, mistakes, &known),
        presets: kind
            .presets
            .iter()
            .filter(|_| old.is_none())
            .map(|preset| (preset.name.to_owned(), forms::preset_label(voice, kind, preset)))
            .collect(),
        places: places(kind, typed, mistakes, &known),
        takes_photographs,
        about_photographs,
        most_bytes: photo::MOST_BYTES,
        entry: typed.first("entry").map_or_else(|| ask.app.fresh_id().to_string(), str::to_owned),
        next: text("next"),
        happened: text("happened"),
        happened_mistake: mistake("happened"),
        photo_mistake: mistake("photographs"),
        mistakes: mistakes.to_vec(),
        label: voice.kind(kind.kind),
        fixing: old.is_some(),
        kept: old.and_then(|old| old.photographs.first()).map(|hash| format!("/slab/{id}/photo/{}", hash.as_str())),
    }
}

fn kind_of(ask: &Ask) -> Result<&'static Form, Trouble> {
    forms::form(ask.part("kind")).ok_or(Trouble::NotFound)
}

fn blank(ask: &Ask) -> Answer {
    let kind = kind_of(ask)?;
    let opened = ask.opened()?;
    // A step on another page may say where, or of what, and where to go afterwards.
    let given = ["zone", "x", "y", "radius", "of", "panel", "state", "next"];
    let typed: Typed = given
        .into_iter()
        .filter_map(|name| ask.query.first(name).map(|value| (name.to_owned(), value.to_owned())))
        .collect();
    Ok(show(&shown(ask, &opened, kind, None, &typed, &[])))
}

fn add(ask: &Ask, posted: &Posted) -> Answer {
    let kind = kind_of(ask)?;
    let opened = ask.opened()?;
    let written = write_form(ask, &opened, kind, posted, None);
    answer(ask, posted, &opened, kind, None, written)
}

/// The entry that the path names, when it is of this slab and has a form.
fn named<'o>(ask: &Ask, opened: &'o Opened) -> Result<(&'o Entry, &'static Form), Trouble> {
    let id: EntryId = ask.part("entry").parse().map_err(|_| Trouble::NotFound)?;
    let entry = opened.diary.get(id).ok_or(Trouble::NotFound)?;
    let kind = forms::form(entry.body.kind()).ok_or(Trouble::NotFound)?;
    Ok((entry, kind))
}

fn old(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (entry, kind) = named(ask, &opened)?;
    let mut typed = forms::typed_from(&entry.body, entry.place.as_ref());
    let local = entry.happened.local();
    typed.set("happened", format!("{} {:02}:{:02}", local.date(), local.hour(), local.minute()));
    if let Some(next) = ask.query.first("next") {
        typed.set("next", next);
    }
    Ok(show(&shown(ask, &opened, kind, Some(entry), &typed, &[])))
}

fn fix(ask: &Ask, posted: &Posted) -> Answer {
    let opened = ask.opened()?;
    let (entry, kind) = named(ask, &opened)?;
    let written = write_form(ask, &opened, kind, posted, Some(entry));
    answer(ask, posted, &opened, kind, Some(entry), written)
}

fn answer(
    ask: &Ask,
    posted: &Posted,
    opened: &Opened,
    kind: &'static Form,
    old: Option<&Entry>,
    written: Result<EntryId, Trouble>,
) -> Answer {
    match written {
        Ok(_) => {
            let said = if old.is_some() { "corrected" } else { "written" };
            let location = after(posted, &opened.record, said);
            if ask.wants_json() {
                let said = ask.voice().say(&format!("said-{said}"), &[]);
                return Ok(axum::Json(json!({ "ok": true, "location": location, "said": said })).into_response());
            }
            Ok(Redirect::to(&location).into_response())
        }
        Err(Trouble::Mistakes(mistakes)) if !ask.wants_json() => {
            let page = show(&shown(ask, opened, kind, old, &posted.typed, &mistakes));
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}
