//! The diary, newest first; one entry with its photographs and what became of it.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use localization::{Arg, Locale};
use slab_answers::map::spots_of;
use slab_answers::standing::{State, incident_standing};
use slab_diary::{Body, Entry, EntryId, EntryKind, Knowledge, PhotoHash};
use slab_diary::{Slab, fold};
use trade_facts::{Record, Trade};

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::entries::Opened;
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::view_scope::ViewScope;
use crate::visitor::Permission;

/// Entries on one page.
const PER_PAGE: u32 = 40;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/diary", page(Permission::Read, list))
        .route("/slab/{slab}/entry/{entry}", page(Permission::Read, one))
        .route("/slab/{slab}/photo/{hash}", page(Permission::Read, photograph))
}

struct Row {
    href: String,
    when: String,
    what: String,
    place: Option<String>,
    said: String,
    author: String,
    photographs: Vec<String>,
    /// That it counts no longer: corrected, or struck out.
    over: Option<String>,
    corrects: bool,
}

struct Day {
    date: String,
    rows: Vec<Row>,
}

#[derive(Template)]
#[template(path = "diary.html")]
struct List {
    frame: Frame,
    days: Vec<Day>,
    kinds: Vec<NavLink>,
    head: String,
    older: Option<String>,
}

fn list(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let frame =
        context.frame(context.locale().message("diary-title", &[])).about(context, &opened.record, &opened.zone);
    page_of(context, &opened, frame, &ViewScope::own(context, opened.record.id))
}

/// A page of the diary in any frame.
pub(crate) fn page_of(context: &RequestContext, opened: &Opened, frame: Frame, sight: &ViewScope) -> Answer {
    let locale = context.locale();
    let (id, base) = (opened.record.id, sight.base.as_str());
    let to_be_seen = sight.kinds();
    let kind = context.query.first("kind").and_then(EntryKind::named).map(EntryKind::name);
    let kind = kind.filter(|kind| to_be_seen.as_ref().is_none_or(|seen| seen.contains(kind)));
    let before = context.query.first("before").and_then(|text| {
        let (micros, id) = text.split_once('_')?;
        Some((micros.parse::<i64>().ok()?, id.parse::<EntryId>().ok()?))
    });
    let only = kind.map(|kind| vec![kind]).or(to_be_seen);
    let entries = context.app.store().entries_page(id, only.as_deref(), before, PER_PAGE + 1)?;
    let slab = fold(&opened.diary, Knowledge::happened_by(jiff::Timestamp::MAX));
    let shown = &entries[..entries.len().min(PER_PAGE as usize)];
    let mut days: Vec<Day> = Vec::new();
    for entry in shown {
        let local = entry.happened.instant().to_zoned_datetime(opened.zone.clone());
        let date = locale.date(local.date());
        let row = Row {
            href: format!("{base}/entry/{}", entry.id),
            when: format!("{:02}:{:02}", local.hour(), local.minute()),
            what: locale.kind_of(&entry.body),
            place: crate::entry_text::place(entry, locale),
            said: said_of(entry, opened, &slab, locale),
            author: entry.author.clone(),
            photographs: photographs(entry, sight),
            over: slab.corrected_by(entry.id).map(|by| match strikes(opened.diary.get(by)) {
                true => locale.message("entry-struck", &[]),
                false => locale.message("entry-corrected", &[]),
            }),
            corrects: entry.replaces.is_some() && !strikes(Some(entry)),
        };
        match days.last_mut() {
            Some(day) if day.date == date => day.rows.push(row),
            _ => days.push(Day { date, rows: vec![row] }),
        }
    }
    let link = |before: Option<&Entry>, kind: Option<&str>| {
        let mut query = form_urlencoded::Serializer::new(String::new());
        if let Some(kind) = kind {
            query.append_pair("kind", kind);
        }
        if let Some(last) = before {
            query.append_pair("before", &format!("{}_{}", last.happened.instant().as_microsecond(), last.id));
        }
        format!("{base}/diary?{}", query.finish())
    };
    let seen = opened.diary.entries().filter(|entry| sight.shows(entry));
    let mut there: Vec<&str> = seen.map(|entry| entry.body.kind_name()).collect();
    let count = there.len() as f64;
    there.sort_unstable();
    there.dedup();
    let kinds = there.into_iter().map(|known| NavLink {
        href: link(None, Some(known)),
        label: EntryKind::named(known).map_or_else(|| known.to_owned(), |kind| locale.kind(kind)),
        here: kind == Some(known),
    });
    Ok(show(&List {
        kinds: kinds.collect(),
        head: locale.message("diary-count", &[("count", Arg::Number(count))]),
        older: (entries.len() > shown.len()).then(|| link(shown.last(), kind)),
        days,
        frame,
    }))
}

/// Whether an entry strikes another one out.
fn strikes(entry: Option<&Entry>) -> bool {
    entry.and_then(|entry| entry.body.kind()) == Some(EntryKind::NeverHappened)
}

/// What an entry says, in one line; one that strikes another out says which.
fn said_of(entry: &Entry, opened: &Opened, slab: &Slab<'_>, locale: Locale) -> String {
    let line = crate::entry_text::line(entry, locale);
    let old = entry.replaces.filter(|_| strikes(Some(entry))).and_then(|id| opened.diary.get(id));
    match old.map(|old| crate::control::short(old, slab, locale)) {
        Some(old) if line.is_empty() => old,
        Some(old) => format!("{old}. {line}"),
        None => line,
    }
}

/// The addresses of an entry's photographs, where they are shown.
pub(crate) fn photographs(entry: &Entry, sight: &ViewScope) -> Vec<String> {
    if !sight.photographs {
        return Vec::new();
    }
    entry.photographs.iter().map(|hash| format!("{}/photo/{}", sight.base, hash.as_str())).collect()
}

#[derive(Template)]
#[template(path = "entry.html")]
struct One {
    frame: Frame,
    title: String,
    when: String,
    noted: String,
    place: Option<String>,
    told: Vec<(String, String)>,
    author: String,
    photographs: Vec<String>,
    corrected_by: Option<String>,
    corrects: Option<String>,
    of: Option<(String, String)>,
    trouble: Option<OnFloor>,
    fix: Option<String>,
    /// Where it is struck out, with the id of the entry that does so.
    strike: Option<(String, String)>,
    /// It was struck out; where it is brought back.
    struck: Option<Option<String>>,
    json: Option<String>,
}

/// What an incident is to this floor.
struct OnFloor {
    mark: &'static str,
    reasons: Vec<String>,
    covers: Vec<String>,
    assumed: bool,
    /// What it does, what takes it out, when it shows: the trade's words, in English.
    effect: String,
    remedy: String,
    visible: String,
    grade: String,
    ways: Vec<NavLink>,
}

fn trouble(entry: &Entry, slab: &Slab<'_>, sight: &ViewScope, locale: Locale) -> Option<OnFloor> {
    let Body::Incident(body) = &entry.body else { return None };
    let trade = Trade::built_in();
    let standing = incident_standing(slab, trade, entry.id)?;
    let record = trade.incident(&body.what);
    let spot = spots_of(slab, trade).into_iter().find(|spot| spot.entry == entry.id);
    let way = |kind: EntryKind, key: &'static str| NavLink {
        href: format!("{}/add/{}?of={}&next={}/entry/{}", sight.base, kind.name(), entry.id, sight.base, entry.id),
        label: locale.message(key, &[]),
        here: false,
    };
    let open = standing.state != State::Released;
    let mut ways = Vec::new();
    if sight.writes && open {
        ways.push(way(EntryKind::Cleaning, "entry-treat"));
        ways.push(way(EntryKind::Retest, "entry-retest"));
        ways.push(way(EntryKind::WaterDrop, "entry-drop"));
        if record.is_some_and(|record| record.acceptable) {
            ways.push(way(EntryKind::Accepted, "entry-accept"));
        }
    }
    let text = |name| record.map_or_else(String::new, |record| locale.text_of(record, name));
    let of_zone = |(zone, area): &(String, units::Area)| {
        locale.message("entry-covers-zone", &[("zone", zone.as_str().into()), ("area", locale.area(*area).into())])
    };
    Some(OnFloor {
        mark: super::mark(standing.state.name()),
        reasons: standing.reasons.iter().map(|reason| locale.reason(reason)).collect(),
        covers: spot.iter().flat_map(|spot| spot.covers.iter().map(of_zone)).collect(),
        assumed: spot.is_some_and(|spot| spot.reach_assumed),
        effect: text("effect"),
        remedy: text("remedy"),
        visible: text("visible"),
        grade: record.map_or_else(String::new, |record| locale.grade(trade.grade_to_show(&record.citation()))),
        ways,
    })
}

fn one(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let frame = context.frame(String::new()).about(context, &opened.record, &opened.zone);
    entry_of(context, &opened, frame, &ViewScope::own(context, opened.record.id))
}

/// One entry in any frame.
pub(crate) fn entry_of(context: &RequestContext, opened: &Opened, frame: Frame, sight: &ViewScope) -> Answer {
    let (locale, base) = (context.locale(), sight.base.as_str());
    let id: EntryId = context.part("entry").parse().map_err(|_| PageError::NotFound)?;
    let entry = opened.diary.get(id).filter(|entry| sight.shows(entry)).ok_or(PageError::NotFound)?;
    let slab = fold(&opened.diary, Knowledge::happened_by(jiff::Timestamp::MAX));
    let href = |id: EntryId| format!("{base}/entry/{id}");
    let of = entry
        .body
        .form_data()
        .first("of")
        .and_then(|text| text.parse::<EntryId>().ok())
        .and_then(|id| opened.diary.get(id))
        .map(|of| (href(of.id), crate::control::short(of, &slab, locale)));
    let corrected_by = slab.corrected_by(id);
    let struck = strikes(corrected_by.and_then(|id| opened.diary.get(id)));
    let kind = entry.body.kind();
    let may_fix = sight.writes && corrected_by.is_none();
    let title = locale.kind_of(&entry.body);
    Ok(show(&One {
        frame: Frame { title: title.clone(), ..frame },
        title,
        when: locale.moment(entry.happened.instant(), &opened.zone),
        noted: locale.moment(entry.noted.instant(), &opened.zone),
        place: crate::entry_text::place(entry, locale),
        told: crate::entry_text::told(entry, locale),
        author: entry.author.clone(),
        photographs: photographs(entry, sight),
        corrected_by: corrected_by.filter(|_| !struck).map(href),
        corrects: entry.replaces.map(href),
        of,
        trouble: trouble(entry, &slab, sight, locale),
        fix: match entry.body.kind() {
            _ if !may_fix => None,
            Some(EntryKind::Plan) => Some(format!("{base}/plan/draw")),
            kind => kind.filter(|kind| super::add::has_form(kind.schema())).map(|_| format!("{base}/fix/{id}")),
        },
        strike: (may_fix && !matches!(kind, Some(EntryKind::JobOpened | EntryKind::NeverHappened)))
            .then(|| (format!("{base}/undo/{id}"), context.app.fresh_id().to_string())),
        struck: struck.then(|| {
            let has_form = kind.is_some_and(|kind| super::add::has_form(kind.schema()));
            (sight.writes && has_form).then(|| format!("{base}/fix/{id}"))
        }),
        json: (!sight.by_link).then(|| entry.to_json()),
    }))
}

/// A photograph that some entry of this slab names. It never changes, so it may be kept.
fn photograph(context: &RequestContext) -> Answer {
    let record = context.slab()?;
    let hash = PhotoHash::try_from(context.part("hash").to_owned()).map_err(|_| PageError::NotFound)?;
    picture(context.app.store().photograph_of(record.id, &hash)?.ok_or(PageError::NotFound)?)
}

/// A photograph as an answer: its kind from its bytes, never from a name.
pub(crate) fn picture(bytes: Vec<u8>) -> Answer {
    let kind = match photo::inspect(&bytes).map_err(|e| PageError::failed("reading a photograph", &e))?.format {
        photo::Format::Jpeg => "image/jpeg",
        photo::Format::Png => "image/png",
        _ => return Err(PageError::NotFound),
    };
    Ok(([(CONTENT_TYPE, kind), (CACHE_CONTROL, "private, max-age=31536000, immutable")], bytes).into_response())
}
