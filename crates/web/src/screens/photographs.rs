//! The photographs of the slab: is it one color, in each of them and over days, beside the other rule of
//! age. What a photograph says is measured beside the page; a page that waits shows how far it is.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::time::Duration as Wait;

use askama::Template;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use diary_photographs::{Looked, look, row};
use jiff::Timestamp;
use localization::Locale;
use photo::{Decoded, decode};
use pictures::{Look, ScoreChart, score_chart};
use slab_answers::standing::{AgeRules, HoldPointId, age_rules, judge};
use slab_diary::body::{Evenness, SlabPhotograph};
use slab_diary::{Body, Entry, EntryId, Knowledge, PhotoHash};
use slab_diary::{EntryOf, Slab, fold};
use trade_facts::Trade;

use crate::app::App;
use crate::chart_section::{Charted, source};
use crate::context::{Answer, RequestContext, page};
use crate::entries::Opened;
use crate::fault;
use crate::forecast::Waiting;
use crate::frame::{Frame, NavLink, show};
use crate::jobs::{Looks, Work};
use crate::page_error::PageError;
use crate::screens::slab::form_for;
use crate::visitor::Permission;

/// A page waits so long for the measuring before it shows how far that is.
const LOOKS: u32 = 40;
const BETWEEN_LOOKS: Wait = Wait::from_millis(20);
/// Pixels of a small copy.
const SMALL: u32 = 480;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/photographs", page(Permission::Read, shown))
        .route("/slab/{slab}/photo/{hash}/small", page(Permission::Read, small))
        .route("/slab/{slab}/entry/{entry}/map", page(Permission::Read, map))
}

/// The two rules for a zone, in words.
struct RuleRow {
    zone: String,
    days: Vec<String>,
    color: String,
    mark: &'static str,
}

struct Photograph {
    src: String,
    whole: String,
    map: Option<String>,
}

/// One entry with its photographs.
struct Shot {
    when: String,
    place: Option<String>,
    verdict: String,
    mark: &'static str,
    score: Option<String>,
    why: Vec<String>,
    second: Option<String>,
    photographs: Vec<Photograph>,
    href: String,
    alt: String,
}

struct Group {
    zone: String,
    trend: Option<String>,
    chart: Option<Charted>,
    shots: Vec<Shot>,
}

#[derive(Template)]
#[template(path = "slab_photographs.html")]
struct Page {
    frame: Frame,
    answer: String,
    state: &'static str,
    step: Option<(String, String)>,
    rules: Vec<RuleRow>,
    groups: Vec<Group>,
    waiting: Option<Waiting>,
    take: Option<NavLink>,
    source: String,
    ignored: String,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (locale, trade) = (context.locale(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let id = opened.record.id.to_string();
    let writes = context.visitor.permission >= Permission::Write;
    let standing = judge(&slab, trade);
    let age = standing.hold_point(HoldPointId::Age);
    let zones = || age.zones.iter().find(|(_, state)| *state == age.state).map(|(zone, _)| zone.as_str());
    let step = age.next.as_ref().or(age.proposed.as_ref()).filter(|_| writes).map(|next| {
        let mut href = format!("/slab/{id}/add/{}", form_for(next.action).name());
        if let Some(zone) = zones().filter(|zone| !zone.is_empty()) {
            let query = form_urlencoded::Serializer::new(String::new()).append_pair("zone", zone).finish();
            href = format!("{href}?{query}");
        }
        (href, locale.order(next))
    });
    let (looks, waiting) = measured(context, &opened, &slab, locale);
    let take = NavLink {
        href: format!("/slab/{id}/add/slab_photograph?next=/slab/{id}/photographs"),
        label: locale.message("photos-take", &[]),
        here: false,
    };
    let args = [("question", locale.hold_point_question(age.id).into()), ("state", locale.state(age.state).into())];
    Ok(show(&Page {
        frame: context.frame(locale.message("way-photographs", &[])).about(context, &opened.record, &opened.zone),
        answer: locale.message("photos-answer", &args),
        state: age.state.name(),
        step,
        rules: rule_rows(&age_rules(&slab, trade), locale),
        groups: groups(&slab, &looks, &opened, writes, locale),
        waiting,
        take: writes.then_some(take),
        source: source(&age.citation, trade, locale),
        ignored: locale.message("standing-if-ignored", &[("consequence", locale.consequence(age.id).into())]),
    }))
}

/// Zones of which the same is true share a row.
fn rule_rows(rules: &[AgeRules], locale: Locale) -> Vec<RuleRow> {
    let mut groups: Vec<(AgeRules, Vec<String>)> = Vec::new();
    for rules in rules {
        let alike = AgeRules { zone: String::new(), ..rules.clone() };
        match groups.iter_mut().find(|(known, _)| *known == alike) {
            Some((_, zones)) => zones.push(rules.zone.clone()),
            None => groups.push((alike, vec![rules.zone.clone()])),
        }
    }
    groups.into_iter().map(|(rules, zones)| RuleRow { zone: locale.list(&zones), ..rule_row(&rules, locale) }).collect()
}

fn rule_row(rules: &AgeRules, locale: Locale) -> RuleRow {
    let mut days = Vec::new();
    match (rules.days, rules.ready) {
        (Some((is, needed)), Some(ready)) => {
            let key = if is >= needed { "photos-days-over" } else { "photos-days" };
            let args = [
                ("days", locale.count(is).into()),
                ("needed", locale.count(needed).into()),
                ("date", locale.date(ready).into()),
            ];
            days.push(locale.message(key, &args));
        }
        _ => days.push(locale.message("photos-no-pour", &[])),
    }
    if let Some((low, high)) = rules.equivalent {
        let [low, high] = [low, high].map(|age| locale.duration(age));
        days.push(locale.message("photos-equivalent", &[("range", locale.range(&low, &high).into())]));
    }
    let (color, mark) = match rules.color {
        Some((evenness, date)) => {
            let (key, state) = match evenness {
                Evenness::Even => ("photos-even", "released"),
                Evenness::Patchy => ("photos-patchy", "held"),
                Evenness::CantTell => ("photos-cant-tell", "cant_tell"),
            };
            (locale.message(key, &[("date", locale.date(date).into())]), state)
        }
        None => (locale.message("photos-not-looked", &[]), "unproven"),
    };
    RuleRow { zone: rules.zone.clone(), days, color, mark: super::mark(mark) }
}

/// What the photographs say, and how far the measuring is when it takes longer than a blink.
fn measured(
    context: &RequestContext,
    opened: &Opened,
    slab: &Slab<'_>,
    locale: Locale,
) -> (Arc<Looks>, Option<Waiting>) {
    let wanted: Vec<(EntryId, SlabPhotograph, Vec<PhotoHash>)> = slab
        .all::<SlabPhotograph>()
        .filter(|seen| !seen.entry.photographs.is_empty())
        .map(|seen| (seen.entry.id, seen.body.clone(), seen.entry.photographs.clone()))
        .collect();
    if wanted.is_empty() {
        return (Arc::default(), None);
    }
    let name = format!("{}.{}.photographs.{}", opened.record.id, opened.record.version, wanted.len());
    let app = Arc::clone(&context.app);
    let work = context.app.works.looks(&name, move |work| measure(&app, &wanted, work));
    for _ in 0..LOOKS {
        if work.answer().is_some() || work.is_broken() {
            break;
        }
        std::thread::sleep(BETWEEN_LOOKS);
    }
    match work.answer() {
        Some(looks) => (looks, None),
        None if work.is_broken() => (Arc::default(), None),
        None => (Arc::default(), Some(Waiting::at(&name, work.share(), locale.message("photos-working", &[])))),
    }
}

fn measure(app: &App, wanted: &[(EntryId, SlabPhotograph, Vec<PhotoHash>)], work: &Work<Looks>) -> Looks {
    let mut looks = Looks::new();
    for (at, (entry, body, hashes)) in wanted.iter().enumerate() {
        let looked = app.works.look_once(*entry, || look(body, &pictures(app, hashes)).map(Looked::without_maps));
        looks.extend(looked.map(|looked| (*entry, looked)));
        work.tell((at + 1) as f64 / wanted.len() as f64);
    }
    looks
}

/// The first two photographs that can be decoded.
fn pictures(app: &App, hashes: &[PhotoHash]) -> Vec<Decoded> {
    let bytes = hashes.iter().filter_map(|hash| app.store().photograph(hash).map_err(fault::of_the_store).ok());
    bytes.filter_map(|bytes| decode(&bytes).ok()).take(2).collect()
}

fn groups(slab: &Slab<'_>, looks: &Looks, opened: &Opened, writes: bool, locale: Locale) -> Vec<Group> {
    let mut by_zone: BTreeMap<usize, Vec<EntryOf<'_, SlabPhotograph>>> = BTreeMap::new();
    for seen in slab.all::<SlabPhotograph>().filter(|seen| !seen.entry.photographs.is_empty()) {
        // A photograph of no place in particular stands with the first zone only when there is one.
        let zone = slab.zones().iter().position(|zone| slab.touches(seen.entry, zone));
        let whole = seen.entry.place.is_none() && slab.zones().len() > 1;
        by_zone.entry(if whole { usize::MAX } else { zone.unwrap_or(usize::MAX) }).or_default().push(seen);
    }
    let group = |(at, (zone, all)): (usize, (usize, Vec<EntryOf<'_, SlabPhotograph>>))| {
        let looked = |entry: EntryId| looks.iter().find(|(id, _)| *id == entry).map(|(_, looked)| looked.as_ref());
        let days: Vec<(Timestamp, &Looked)> =
            all.iter().filter_map(|seen| Some((seen.entry.happened.instant(), looked(seen.entry.id)?))).collect();
        let name = slab.zones().get(zone).map_or_else(|| locale.message("place-slab", &[]), |zone| zone.name.clone());
        let series = row(&days);
        let chart = (days.len() > 1).then(|| {
            let day = |at: Timestamp| at.to_zoned_datetime(opened.zone.clone()).date();
            let title = locale.message("photos-series", &[("zone", name.as_str().into())]);
            let drawing = score_chart(&ScoreChart {
                look: Look::new(&format!("score-{at}"), &title, locale),
                points: series.points.iter().map(|point| (day(point.at), point.score_de00)).collect(),
                even_below: photo::EVEN_BELOW,
                patchy_from: photo::PATCHY_FROM,
            });
            Charted::new(&title, drawing)
        });
        let trend = (days.len() > 1).then(|| locale.photo_trend(series.trend.word()));
        let shot = |seen: &EntryOf<'_, SlabPhotograph>| shot(*seen, looked(seen.entry.id), opened, writes, locale);
        Group { zone: name.clone(), trend, chart, shots: all.iter().rev().map(shot).collect() }
    };
    by_zone.into_iter().enumerate().map(group).collect()
}

fn shot(
    seen: EntryOf<'_, SlabPhotograph>,
    looked: Option<&Looked>,
    opened: &Opened,
    writes: bool,
    locale: Locale,
) -> Shot {
    let (entry, base) = (seen.entry, format!("/slab/{}", opened.record.id));
    // What stands in the diary decides; the photograph says why.
    let stands = seen.body.evenness;
    let measured = looked.map(|looked| looked.verdict.word());
    let word = stands.map_or_else(|| measured.unwrap_or("cant_tell"), word_of);
    let mut why: Vec<String> = Vec::new();
    if let Some(said) = measured.filter(|said| *said != word) {
        why.push(locale.message("photos-measured-otherwise", &[("verdict", locale.photo_verdict(said).into())]));
    }
    if let Some(looked) = looked {
        why.extend(looked.why.iter().map(|reason| locale.photo_why(reason.key(), &reason.values())));
    }
    let photographs = entry.photographs.iter().enumerate().map(|(at, hash)| {
        let whole = format!("{base}/photo/{}", hash.as_str());
        let map = (at < 2 && looked.is_some()).then(|| format!("{base}/entry/{}/map?number={at}", entry.id));
        Photograph { src: format!("{whole}/small"), whole, map }
    });
    let when = locale.moment(entry.happened.instant(), &opened.zone);
    let score = looked.and_then(Looked::score_de00);
    let second = looked.filter(|looked| looked.asks_for_second() && writes);
    Shot {
        alt: locale.message("photos-alt", &[("when", when.as_str().into())]),
        when,
        place: crate::entry_text::place(entry, locale),
        verdict: locale.photo_verdict(word),
        mark: super::mark(match word {
            "even" => "released",
            "patchy" => "held",
            _ => "cant_tell",
        }),
        score: score.map(|score| locale.message("photo-score", &[("score", locale.number(score, 1).into())])),
        why,
        second: second.map(|_| format!("{base}/fix/{}?next={base}/photographs", entry.id)),
        photographs: photographs.collect(),
        href: format!("{base}/entry/{}", entry.id),
    }
}

const fn word_of(evenness: Evenness) -> &'static str {
    match evenness {
        Evenness::Even => "even",
        Evenness::Patchy => "patchy",
        Evenness::CantTell => "cant_tell",
    }
}

/// A small copy of a photograph that some entry of this slab names.
fn small(context: &RequestContext) -> Answer {
    let record = context.slab()?;
    let hash = PhotoHash::try_from(context.part("hash").to_owned()).map_err(|_| PageError::NotFound)?;
    let bytes = context.app.store().photograph_of(record.id, &hash)?.ok_or(PageError::NotFound)?;
    let picture = decode(&bytes).map_err(|e| PageError::failed("reading a photograph", &e))?;
    let copy = photo::small(&picture, SMALL).map_err(|e| PageError::failed("making a small photograph", &e))?;
    Ok(([(CONTENT_TYPE, "image/jpeg"), (CACHE_CONTROL, "private, max-age=31536000, immutable")], copy).into_response())
}

/// A photograph of an entry beside its map of patches.
fn map(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let id: EntryId = context.part("entry").parse().map_err(|_| PageError::NotFound)?;
    let entry: &Entry = opened.diary.get(id).ok_or(PageError::NotFound)?;
    let Body::SlabPhotograph(body) = &entry.body else { return Err(PageError::NotFound) };
    let number: usize = context.query.first("number").unwrap_or("0").parse().map_err(|_| PageError::NotFound)?;
    let pictures = pictures(&context.app, &entry.photographs);
    let looked = look(body, &pictures).ok_or(PageError::NotFound)?;
    let (Some(picture), Some(evenness)) = (pictures.get(number), looked.each.get(number)) else {
        return Err(PageError::NotFound);
    };
    let png = photo::overlay(picture, evenness).map_err(|e| PageError::failed("drawing a map of patches", &e))?;
    Ok(([(CONTENT_TYPE, "image/png"), (CACHE_CONTROL, "private, max-age=86400")], png).into_response())
}
