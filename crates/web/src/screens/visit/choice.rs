//! The client's choice of a panel through a link: what there is to choose from, what is agreed to, and
//! the entry that says who chose what, when, and with which words before their eyes.

use askama::Template;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use form_schema::FormData;
use localization::{Lang, Locale};
use slab_diary::body::{ChoiceApproved, PanelMade, PanelPhotographed, PanelStained, PanelState};
use slab_diary::{Entry, EntryKind, Knowledge};
use slab_diary::{Slab, fold};

use super::Visit;
use crate::context::{Answer, Posted, RequestContext};
use crate::control::{Choice, FieldErrors};
use crate::entries::{Submitted, field_errors, write};
use crate::frame::{Frame, show};
use crate::page_error::PageError;

/// Kinds of entry whose photographs the choice shows.
pub(super) const OF_PANELS: [EntryKind; 3] =
    [EntryKind::PanelMade, EntryKind::PanelStained, EntryKind::PanelPhotographed];
/// Longest name of who chooses, in letters.
const NAME_LETTERS: usize = 80;

/// A panel to choose, or to come.
struct Panel {
    name: String,
    told: Vec<String>,
    photographs: Vec<(String, String)>,
    stained: bool,
    chosen: bool,
}

#[derive(Template)]
#[template(path = "choice.html")]
struct Page {
    frame: Frame,
    head: String,
    chosen: Vec<String>,
    panels: Vec<Panel>,
    any_stained: bool,
    states: Vec<Choice>,
    agreed: Vec<String>,
    by: String,
    lang: &'static str,
    entry: String,
    mistakes: Vec<(String, String)>,
}

/// The words that are agreed to. Common practice, no source; our own wording.
fn agreed(locale: Locale) -> Vec<String> {
    vec![
        locale.message("agree-varies", &[]),
        locale.message("agree-shows", &[]),
        locale.message("agree-panel", &[]),
        locale.message("agree-sealer", &[]),
        locale.message("agree-stays", &[]),
    ]
}

fn same(a: &str, b: &str) -> bool {
    a.trim().eq_ignore_ascii_case(b.trim())
}

fn state_said(state: PanelState, locale: Locale) -> String {
    match state {
        PanelState::Bare => locale.message("choice-bare", &[]),
        PanelState::Stained => locale.message("choice-stained", &[]),
        PanelState::Sealed => locale.message("choice-sealed", &[]),
    }
}

/// The panels of the diary, each by its last entries.
fn panels(slab: &Slab<'_>, base: &str, chosen: &str, locale: Locale) -> Vec<Panel> {
    let mut panels: Vec<Panel> = Vec::new();
    for made in slab.all::<PanelMade>() {
        let name = made.body.panel.trim();
        if panels.iter().any(|panel| same(&panel.name, name)) {
            continue;
        }
        let last = slab.all::<PanelMade>().rfind(|other| same(&other.body.panel, name)).unwrap_or(made);
        let stained = slab.all::<PanelStained>().rfind(|stained| same(&stained.body.panel, name));
        panels.push(Panel {
            name: name.to_owned(),
            told: told(last.body, stained.map(|s| s.body), locale),
            photographs: photographs(slab, name, base, locale),
            stained: stained.is_some(),
            chosen: same(chosen, name),
        });
    }
    panels
}

fn told(made: &PanelMade, stained: Option<&PanelStained>, locale: Locale) -> Vec<String> {
    let mut told = Vec::new();
    if made.on_the_floor {
        told.push(locale.message("choice-on-floor", &[]));
    }
    if let Some(finish) = &made.finish {
        told.push(locale.message("choice-finish", &[("finish", locale.term(finish).into())]));
    }
    match stained {
        Some(stained) => {
            let part = |share: &slab_diary::body::StainShare| match stained.mix.len() {
                1 => share.stain.clone(),
                _ => format!("{} {}", share.stain, locale.number(share.parts, 1)),
            };
            let mix: Vec<String> = stained.mix.iter().map(part).collect();
            let args = [("mix", locale.list(&mix).into()), ("coats", stained.coats.into())];
            told.push(locale.message("choice-stain", &args));
        }
        None => told.push(locale.message("choice-not-stained", &[])),
    }
    told
}

/// Address and caption of every photograph of a panel.
fn photographs(slab: &Slab<'_>, name: &str, base: &str, locale: Locale) -> Vec<(String, String)> {
    let of = |entry: &Entry, caption: String| -> Vec<(String, String)> {
        entry.photographs.iter().map(|hash| (format!("{base}/photo/{}", hash.as_str()), caption.clone())).collect()
    };
    let caption = |state: PanelState| format!("{name}: {}", state_said(state, locale));
    let photographed = slab.all::<PanelPhotographed>().filter(|seen| same(&seen.body.panel, name));
    let mut all: Vec<_> = photographed.flat_map(|seen| of(seen.entry, caption(seen.body.state))).collect();
    let stained = slab.all::<PanelStained>().filter(|seen| same(&seen.body.panel, name));
    all.extend(stained.flat_map(|seen| of(seen.entry, caption(PanelState::Stained))));
    let made = slab.all::<PanelMade>().filter(|seen| same(&seen.body.panel, name));
    all.extend(made.flat_map(|seen| of(seen.entry, caption(PanelState::Bare))));
    all
}

fn shown(context: &RequestContext, visit: &Visit, typed: &FormData, mistakes: &FieldErrors) -> Response {
    let locale = context.locale();
    let slab = fold(&visit.opened.diary, Knowledge::noted_by(context.app.asked_at(visit.opened.record.id)));
    let typed_of = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    let chosen: Vec<String> = slab
        .all::<ChoiceApproved>()
        .map(|choice| {
            let day = choice.entry.happened.instant().to_zoned_datetime(visit.opened.zone.clone()).date();
            let args = [
                ("by", choice.body.by.as_str().into()),
                ("panel", choice.body.panel.as_str().into()),
                ("date", locale.date(day).into()),
            ];
            locale.message("choice-chosen", &args)
        })
        .collect();
    let panels = panels(&slab, &visit.sight.base, &typed_of("panel"), locale);
    let any_stained = panels.iter().any(|panel| panel.stained);
    let state = |state: PanelState, value: &str| Choice {
        value: value.to_owned(),
        label: state_said(state, locale),
        chosen: typed_of("state") == value,
    };
    show(&Page {
        frame: visit.frame(context, "way-choice"),
        head: match (any_stained, chosen.last()) {
            (_, Some(last)) => last.clone(),
            (true, None) => locale.message("choice-head", &[]),
            (false, None) => locale.message("choice-nothing", &[]),
        },
        chosen,
        panels,
        any_stained,
        states: vec![state(PanelState::Sealed, "sealed"), state(PanelState::Stained, "stained")],
        agreed: agreed(locale),
        by: typed_of("by"),
        lang: locale.lang.name(),
        entry: typed.first("entry").map_or_else(|| context.app.fresh_id().to_string(), str::to_owned),
        mistakes: mistakes.to_vec(),
    })
}

pub(super) fn blank(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "choice")?;
    Ok(shown(context, &visit, &FormData::new(), &[]))
}

pub(super) fn choose(context: &RequestContext, posted: &Posted) -> Answer {
    let visit = Visit::at(context, "choice")?;
    let tried = context.app.by_link.admit(&visit.link.id.to_string(), context.from, context.app.real_now());
    tried.map_err(|left| PageError::Wait(u64::try_from(left.as_secs()).unwrap_or(0) + 1))?;
    match written(context, &visit, posted) {
        Ok(()) => Ok(Redirect::to(&format!("{}/choice?said=approved", visit.sight.base)).into_response()),
        Err(PageError::FieldErrors(mistakes)) => {
            let page = shown(context, &visit, &posted.typed, &mistakes);
            Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response())
        }
        Err(trouble) => Err(trouble),
    }
}

fn written(context: &RequestContext, visit: &Visit, posted: &Posted) -> Result<(), PageError> {
    let locale = context.locale();
    let answer = |name: &str| posted.typed.answer(name).unwrap_or_default();
    let slab = fold(&visit.opened.diary, Knowledge::noted_by(context.app.asked_at(visit.opened.record.id)));
    let panel = panels(&slab, "", answer("panel"), locale).into_iter().find(|panel| panel.chosen && panel.stained);
    let mut wrong: Vec<(&str, &str)> = Vec::new();
    if panel.is_none() {
        wrong.push(("panel", "mistake-choice-panel"));
    }
    if !["stained", "sealed"].contains(&answer("state")) {
        wrong.push(("state", "mistake-choice-state"));
    }
    let by = answer("by");
    if by.is_empty() || by.chars().count() > NAME_LETTERS || by.chars().any(char::is_control) {
        wrong.push(("by", "mistake-choice-name"));
    }
    if answer("agree") != "yes" {
        wrong.push(("agree", "mistake-choice-agree"));
    }
    let (Some(panel), true) = (panel, wrong.is_empty()) else {
        let said = wrong.into_iter().map(|(field, key)| (field.to_owned(), locale.message(key, &[])));
        return Err(PageError::FieldErrors(said.collect()));
    };
    // The words in the language that they were shown in, which may have changed since.
    let lang: Lang = answer("lang").parse().unwrap_or(locale.lang);
    let words = format!("{}: {}", lang.name(), agreed(Locale::new(lang, locale.unit_system)).join("\n"));
    let typed: FormData = [("panel", panel.name.as_str()), ("by", by), ("state", answer("state")), ("words", &words)]
        .into_iter()
        .collect();
    let fields = EntryKind::ChoiceApproved
        .read(&typed, locale.unit_system)
        .map_err(|errors| PageError::FieldErrors(field_errors(&errors, EntryKind::ChoiceApproved, locale)))?;
    let mut by_link = context.clone();
    by_link.visitor.name = match visit.link.note.as_str() {
        "" => "link".to_owned(),
        note => format!("link: {note}"),
    };
    // When it was chosen is when it came here: a link is not taken at its word for that.
    let posted = Posted { typed: [("entry", answer("entry"))].into_iter().collect(), files: Vec::new() };
    let entry = Submitted::of(EntryKind::ChoiceApproved, fields);
    write(&by_link, &visit.opened, entry, &posted).map(drop)
}
