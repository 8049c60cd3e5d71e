//! Adding an entry of any kind, and correcting one.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use form_schema::FormData;
use localization::Locale;
use pictures::{Step, steps};
use serde_json::json;
use slab_diary::body::Group;
use slab_diary::fold;
use slab_diary::{Entry, EntryId, EntryKind, EntrySchema, Knowledge, PLACE_INPUTS, fill_place};
use trade_facts::Trade;

use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::{Control, FieldErrors, GUESSED, Known, Places, controls, last_zone, photographs, places};
use crate::entries::{Opened, Submitted, after, field_errors, write, write_form};
use crate::entry_text;
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/add", page(Permission::Write, menu))
        .route("/slab/{slab}/add/{kind}", page(Permission::Write, blank).merge(form(Permission::Write, add)))
        .route("/slab/{slab}/fix/{entry}", page(Permission::Write, old).merge(form(Permission::Write, fix)))
        .route("/slab/{slab}/undo/{entry}", form(Permission::Write, undo))
}

/// The addresses of all forms of a slab with their names.
pub(super) fn addresses(locale: Locale, id: &str) -> impl Iterator<Item = (String, String)> {
    let kinds = EntryKind::ALL.iter().filter(|kind| has_form(kind.schema()));
    kinds.map(move |kind| (format!("/slab/{id}/add/{}", kind.name()), locale.kind(*kind)))
}

#[derive(Template)]
#[template(path = "add.html")]
struct Menu {
    frame: Frame,
    groups: Vec<(String, Vec<(NavLink, String)>)>,
}

/// Whether it is written in a form of its own fields.
pub(super) fn has_form(schema: &EntrySchema) -> bool {
    !schema.own_screen && !schema.only_corrects
}

/// Whether the menu of a group shows a kind: a job is opened elsewhere, a drawing has its own screen.
fn menu_shows(schema: &EntrySchema, group: Group) -> bool {
    schema.group == group && has_form(schema) && schema.kind != EntryKind::JobOpened
}

fn menu(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let locale = context.locale();
    let id = opened.record.id;
    let groups = Group::ALL.into_iter().map(|group| {
        let ways = EntryKind::ALL.iter().map(|kind| kind.schema()).filter(|s| menu_shows(s, group)).map(|f| {
            let way =
                NavLink { href: format!("/slab/{id}/add/{}", f.kind.name()), label: locale.kind(f.kind), here: false };
            (way, localization::why(locale, f))
        });
        (localization::group_label(locale, group), ways.collect())
    });
    let frame = context.frame(locale.message("add-title", &[])).about(context, &opened.record, &opened.zone);
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
    /// The same as drawings.
    steps: &'static [Step],
    /// What may hurt, told open beside the step.
    care: Option<String>,
    /// Where several are made at once.
    several: Option<String>,
    controls: Vec<Control>,
    presets: Vec<(String, String)>,
    places: Option<Places>,
    takes_photographs: bool,
    about_photographs: bool,
    most_bytes: usize,
    entry: String,
    next: String,
    /// Whether its moment is asked for, and not taken to be now.
    asks_when: bool,
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
    context: &RequestContext,
    opened: &Opened,
    kind: EntryKind,
    old: Option<&Entry>,
    typed: &FormData,
    mistakes: &FieldErrors,
) -> Page {
    let locale = context.locale();
    let at = context.app.asked_at(opened.record.id);
    let slab = fold(&opened.diary, Knowledge::noted_by(at));
    let schema = kind.schema();
    let known = Known { slab: &slab, trade: Trade::built_in(), locale };
    let id = opened.record.id;
    let (action, title) = match old {
        Some(old) => {
            (format!("/slab/{id}/fix/{}", old.id), locale.message("fix-title", &[("what", locale.kind(kind).into())]))
        }
        None => (format!("/slab/{id}/add/{}", kind.name()), locale.kind(kind)),
    };
    let (takes_photographs, about_photographs) = photographs(schema);
    let (how, care) = without_care(&localization::how(locale, schema));
    let mistake = |name: &str| crate::control::mistake_of(mistakes, name);
    let text = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    Page {
        frame: context.frame(title.clone()).about(context, &opened.record, &opened.zone),
        action,
        title,
        why: localization::why(locale, schema),
        how,
        steps: steps(kind.name()),
        care,
        several: (kind == EntryKind::WaterDrop && old.is_none()).then(|| format!("/slab/{id}/drops")),
        controls: controls(schema, typed, mistakes, &known),
        presets: schema
            .presets
            .iter()
            .filter(|_| old.is_none())
            .map(|preset| (preset.name.to_owned(), localization::preset_label(locale, schema, preset)))
            .collect(),
        places: places(schema, typed, mistakes, &known),
        takes_photographs,
        about_photographs,
        most_bytes: photo::MAX_BYTES,
        entry: typed.first("entry").map_or_else(|| context.app.fresh_id().to_string(), str::to_owned),
        next: text("next"),
        asks_when: schema.asks_when,
        happened: text("happened"),
        happened_mistake: mistake("happened"),
        photo_mistake: mistake("photographs"),
        mistakes: mistakes
            .iter()
            .map(|(field, said)| (field.clone(), with_field_name(schema, field, said, locale)))
            .collect(),
        label: locale.kind(kind),
        fixing: old.is_some(),
        kept: old.and_then(|old| old.photographs.first()).map(|hash| format!("/slab/{id}/photo/{}", hash.as_str())),
    }
}

/// What is wrong, with the name of its field before it: a summary stands away from the fields.
fn with_field_name(schema: &'static EntrySchema, input: &str, said: &str, locale: Locale) -> String {
    let name = match (schema.form().field_of_input(input), input) {
        (Some(field), _) => localization::label(locale, schema, field),
        (None, "happened") => locale.message("happened", &[]),
        (None, "photographs") => locale.message("photographs", &[]),
        (None, name) if name == "place" || PLACE_INPUTS.contains(&name) => locale.message("place", &[]),
        (None, _) => return said.to_owned(),
    };
    if said.contains(&name) {
        return said.to_owned();
    }
    locale.message("mistake-of-field", &[("field", name.into()), ("said", said.into())])
}

/// How something is done, and apart from it the caution that a signal word begins.
fn without_care(how: &str) -> (String, Option<String>) {
    let signals = ["Warning:", "Caution:", "Advertencia:", "Precaución:"];
    match signals.iter().filter_map(|signal| how.find(signal)).min() {
        Some(at) => (how[..at].trim_end().to_owned(), Some(how[at..].to_owned())),
        None => (how.to_owned(), None),
    }
}

fn kind_of(context: &RequestContext) -> Result<EntryKind, PageError> {
    EntryKind::named(context.part("kind")).filter(|kind| has_form(kind.schema())).ok_or(PageError::NotFound)
}

fn blank(context: &RequestContext) -> Answer {
    let kind = kind_of(context)?;
    let opened = context.opened()?;
    // A step on another page may say where, or of what, and where to go afterwards.
    let given = ["zone", "x", "y", "radius", "of", "panel", "state", "next"];
    let mut typed: FormData = given
        .into_iter()
        .filter_map(|name| context.query.first(name).map(|value| (name.to_owned(), value.to_owned())))
        .collect();
    if ["zone", "x", "of"].iter().all(|name| typed.answer(name).is_none()) {
        let at = context.app.asked_at(opened.record.id);
        let slab = fold(&opened.diary, Knowledge::noted_by(at));
        if let Some(zone) = last_zone(kind.schema(), &slab, &context.visitor.name, at) {
            typed.set("zone", zone);
            typed.set(GUESSED, "yes");
        }
    }
    Ok(show(&shown(context, &opened, kind, None, &typed, &[])))
}

fn add(context: &RequestContext, posted: &Posted) -> Answer {
    let kind = kind_of(context)?;
    let opened = context.opened()?;
    let written = write_form(context, &opened, kind, posted, None);
    answer(context, posted, &opened, kind, None, written)
}

/// The entry that the path names, when it is of this slab and has a form.
fn named<'o>(context: &RequestContext, opened: &'o Opened) -> Result<(&'o Entry, EntryKind), PageError> {
    let id: EntryId = context.part("entry").parse().map_err(|_| PageError::NotFound)?;
    let entry = opened.diary.get(id).ok_or(PageError::NotFound)?;
    let kind = entry.body.kind().filter(|kind| has_form(kind.schema())).ok_or(PageError::NotFound)?;
    Ok((entry, kind))
}

fn old(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (entry, kind) = named(context, &opened)?;
    let mut typed = entry.body.form_data();
    fill_place(entry.place.as_ref(), &mut typed);
    let local = entry.happened.local();
    typed.set("happened", format!("{} {:02}:{:02}", local.date(), local.hour(), local.minute()));
    if let Some(next) = context.query.first("next") {
        typed.set("next", next);
    }
    Ok(show(&shown(context, &opened, kind, Some(entry), &typed, &[])))
}

fn fix(context: &RequestContext, posted: &Posted) -> Answer {
    let opened = context.opened()?;
    let (entry, kind) = named(context, &opened)?;
    let written = write_form(context, &opened, kind, posted, Some(entry));
    answer(context, posted, &opened, kind, Some(entry), written)
}

/// Strikes an entry out: what it tells of never happened.
fn undo(context: &RequestContext, posted: &Posted) -> Answer {
    let kind = EntryKind::NeverHappened;
    let opened = context.opened()?;
    let id: EntryId = context.part("entry").parse().map_err(|_| PageError::NotFound)?;
    let old = opened.diary.get(id).ok_or(PageError::NotFound)?;
    let fields = kind.read(&posted.typed, context.locale().unit_system);
    let fields = fields.map_err(|wrong| PageError::FieldErrors(field_errors(&wrong, kind, context.locale())))?;
    let submitted = Submitted { old: Some(old), ..Submitted::of(kind, fields) };
    let written = write(context, &opened, submitted, posted)?;
    answer(context, posted, &opened, kind, Some(old), Ok(written))
}

fn answer(
    context: &RequestContext,
    posted: &Posted,
    opened: &Opened,
    kind: EntryKind,
    old: Option<&Entry>,
    written: Result<EntryId, PageError>,
) -> Answer {
    match written {
        Ok(id) => {
            let done = match old {
                _ if kind.schema().only_corrects => "taken-back",
                Some(_) => "corrected",
                None => "written",
            };
            let location = after(posted, &opened.record, done, id);
            if context.wants_json() {
                let locale = context.locale();
                let entry = context.app.store().entry(opened.record.id, id)?.ok_or(PageError::NotFound)?;
                let said = match done {
                    "taken-back" => locale.message("said-taken-back", &[]),
                    "corrected" => entry_text::corrected(&entry, locale),
                    _ => entry_text::written(&entry, locale),
                };
                return Ok(axum::Json(json!({ "ok": true, "location": location, "said": said })).into_response());
            }
            Ok(Redirect::to(&location).into_response())
        }
        Err(PageError::FieldErrors(mistakes)) if !context.wants_json() => {
            let page = show(&shown(context, opened, kind, old, &posted.typed, &mistakes));
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}
