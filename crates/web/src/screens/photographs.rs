//! The photographs of the slab: is it one color, in each of them and over days, beside the other rule of
//! age. What a photograph says is measured beside the page; a page that waits shows how far it is.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::time::Duration as Wait;

use askama::Template;
use axum::Router;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;
use jiff::Timestamp;
use photo::{Decoded, decode};
use photographed::{Looked, look, row};
use pictures::{Look, ScoreChart, score_chart};
use slab::diary::body::{Evenness, SlabPhotograph};
use slab::diary::{Body, Entry, EntryId, Knowledge, PhotoHash};
use slab::slab::{Seen, Slab, fold};
use slab::standing::{AgeRules, HoldPointId, age_rules, judge};
use slab::trade::Trade;
use words::Voice;

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::charted::{Charted, source};
use crate::entries::Opened;
use crate::forecast::Waiting;
use crate::frame::{Frame, Way, show};
use crate::screens::slab::form_for;
use crate::trouble::Trouble;
use crate::visitor::May;
use crate::work::{Looks, Work};

/// A page waits so long for the measuring before it shows how far that is.
const LOOKS: u32 = 40;
const BETWEEN_LOOKS: Wait = Wait::from_millis(20);
/// Pixels of a small copy.
const SMALL: u32 = 480;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/photographs", page(May::Read, shown))
        .route("/slab/{slab}/photo/{hash}/small", page(May::Read, small))
        .route("/slab/{slab}/entry/{entry}/map", page(May::Read, map))
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
    take: Option<Way>,
    source: String,
    ignored: String,
}

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (voice, trade) = (ask.voice(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let id = opened.record.id.to_string();
    let writes = ask.visitor.may >= May::Write;
    let standing = judge(&slab, trade);
    let age = standing.hold_point(HoldPointId::Age);
    let zones = || age.zones.iter().find(|(_, state)| *state == age.state).map(|(zone, _)| zone.as_str());
    let step = age.next.filter(|_| writes).map(|next| {
        let mut href = format!("/slab/{id}/add/{}", form_for(next.action));
        if let Some(zone) = zones().filter(|zone| !zone.is_empty()) {
            let query = form_urlencoded::Serializer::new(String::new()).append_pair("zone", zone).finish();
            href = format!("{href}?{query}");
        }
        (href, voice.order(&next))
    });
    let (looks, waiting) = measured(ask, &opened, &slab, voice);
    let take = Way {
        href: format!("/slab/{id}/add/slab_photograph?next=/slab/{id}/photographs"),
        label: voice.say("photos-take", &[]),
        here: false,
    };
    let args = [("question", voice.hold_point_question(age.id).into()), ("state", voice.state(age.state).into())];
    Ok(show(&Page {
        frame: ask.frame(voice.say("way-photographs", &[])).about(ask, &opened.record, &opened.zone),
        answer: voice.say("photos-answer", &args),
        state: age.state.name(),
        step,
        rules: rule_rows(&age_rules(&slab, trade), voice),
        groups: groups(&slab, &looks, &opened, writes, voice),
        waiting,
        take: writes.then_some(take),
        source: source(&age.citation, trade, voice),
        ignored: voice.say("standing-if-ignored", &[("consequence", voice.consequence(age.id).into())]),
    }))
}

/// Zones of which the same is true share a row.
fn rule_rows(rules: &[AgeRules], voice: Voice) -> Vec<RuleRow> {
    let mut groups: Vec<(AgeRules, Vec<String>)> = Vec::new();
    for rules in rules {
        let alike = AgeRules { zone: String::new(), ..rules.clone() };
        match groups.iter_mut().find(|(known, _)| *known == alike) {
            Some((_, zones)) => zones.push(rules.zone.clone()),
            None => groups.push((alike, vec![rules.zone.clone()])),
        }
    }
    groups.into_iter().map(|(rules, zones)| RuleRow { zone: voice.list(&zones), ..rule_row(&rules, voice) }).collect()
}

fn rule_row(rules: &AgeRules, voice: Voice) -> RuleRow {
    let mut days = Vec::new();
    match (rules.days, rules.ready) {
        (Some((is, needed)), Some(ready)) => {
            let key = if is >= needed { "photos-days-over" } else { "photos-days" };
            let args = [
                ("days", voice.count(is).into()),
                ("needed", voice.count(needed).into()),
                ("date", voice.date(ready).into()),
            ];
            days.push(voice.say(key, &args));
        }
        _ => days.push(voice.say("photos-no-pour", &[])),
    }
    if let Some((low, high)) = rules.equivalent {
        let [low, high] = [low, high].map(|age| voice.duration(age));
        days.push(voice.say("photos-equivalent", &[("range", voice.range(&low, &high).into())]));
    }
    let (color, mark) = match rules.color {
        Some((evenness, date)) => {
            let (key, state) = match evenness {
                Evenness::Even => ("photos-even", "released"),
                Evenness::Patchy => ("photos-patchy", "held"),
                Evenness::CantTell => ("photos-cant-tell", "cant_tell"),
            };
            (voice.say(key, &[("date", voice.date(date).into())]), state)
        }
        None => (voice.say("photos-not-looked", &[]), "unproven"),
    };
    RuleRow { zone: rules.zone.clone(), days, color, mark: super::mark(mark) }
}

/// What the photographs say, and how far the measuring is when it takes longer than a blink.
fn measured(ask: &Ask, opened: &Opened, slab: &Slab<'_>, voice: Voice) -> (Arc<Looks>, Option<Waiting>) {
    let wanted: Vec<(EntryId, SlabPhotograph, Vec<PhotoHash>)> = slab
        .all::<SlabPhotograph>()
        .filter(|seen| !seen.entry.photographs.is_empty())
        .map(|seen| (seen.entry.id, seen.body.clone(), seen.entry.photographs.clone()))
        .collect();
    if wanted.is_empty() {
        return (Arc::default(), None);
    }
    let name = format!("{}.{}.photographs.{}", opened.record.id, opened.record.version, wanted.len());
    let app = Arc::clone(&ask.app);
    let work = ask.app.works.looks(&name, move |work| measure(&app, &wanted, work));
    for _ in 0..LOOKS {
        if work.answer().is_some() || work.is_broken() {
            break;
        }
        std::thread::sleep(BETWEEN_LOOKS);
    }
    match work.answer() {
        Some(looks) => (looks, None),
        None if work.is_broken() => (Arc::default(), None),
        None => (Arc::default(), Some(Waiting::at(&name, work.share(), voice.say("photos-working", &[])))),
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
    let bytes = hashes.iter().filter_map(|hash| app.store().photograph(hash).ok());
    bytes.filter_map(|bytes| decode(&bytes).ok()).take(2).collect()
}

fn groups(slab: &Slab<'_>, looks: &Looks, opened: &Opened, writes: bool, voice: Voice) -> Vec<Group> {
    let mut by_zone: BTreeMap<usize, Vec<Seen<'_, SlabPhotograph>>> = BTreeMap::new();
    for seen in slab.all::<SlabPhotograph>().filter(|seen| !seen.entry.photographs.is_empty()) {
        // A photograph of no place in particular stands with the first zone only when there is one.
        let zone = slab.zones().iter().position(|zone| slab.touches(seen.entry, zone));
        let whole = seen.entry.place.is_none() && slab.zones().len() > 1;
        by_zone.entry(if whole { usize::MAX } else { zone.unwrap_or(usize::MAX) }).or_default().push(seen);
    }
    let group = |(at, (zone, all)): (usize, (usize, Vec<Seen<'_, SlabPhotograph>>))| {
        let looked = |entry: EntryId| looks.iter().find(|(id, _)| *id == entry).map(|(_, looked)| looked.as_ref());
        let days: Vec<(Timestamp, &Looked)> =
            all.iter().filter_map(|seen| Some((seen.entry.happened.instant(), looked(seen.entry.id)?))).collect();
        let name = slab.zones().get(zone).map_or_else(|| voice.say("place-slab", &[]), |zone| zone.name.clone());
        let series = row(&days);
        let chart = (days.len() > 1).then(|| {
            let day = |at: Timestamp| at.to_zoned_datetime(opened.zone.clone()).date();
            let title = voice.say("photos-series", &[("zone", name.as_str().into())]);
            let drawing = score_chart(&ScoreChart {
                look: Look::new(&format!("score-{at}"), &title, voice),
                points: series.points.iter().map(|point| (day(point.at), point.score_de00)).collect(),
                even_below: photo::EVEN_BELOW,
                patchy_from: photo::PATCHY_FROM,
            });
            Charted::new(&title, drawing)
        });
        let trend =
            (days.len() > 1).then(|| voice.say(&format!("photo-trend-{}", series.trend.word().replace('_', "-")), &[]));
        let shot = |seen: &Seen<'_, SlabPhotograph>| shot(*seen, looked(seen.entry.id), opened, writes, voice);
        Group { zone: name.clone(), trend, chart, shots: all.iter().rev().map(shot).collect() }
    };
    by_zone.into_iter().enumerate().map(group).collect()
}

fn shot(seen: Seen<'_, SlabPhotograph>, looked: Option<&Looked>, opened: &Opened, writes: bool, voice: Voice) -> Shot {
    let (entry, base) = (seen.entry, format!("/slab/{}", opened.record.id));
    // What stands in the diary decides; the photograph says why.
    let stands = seen.body.evenness;
    let measured = looked.map(|looked| looked.verdict.word());
    let word = stands.map_or_else(|| measured.unwrap_or("cant_tell"), word_of);
    let mut why: Vec<String> = Vec::new();
    if let Some(said) = measured.filter(|said| *said != word) {
        why.push(voice.say("photos-measured-otherwise", &[("verdict", voice.photo_verdict(said).into())]));
    }
    if let Some(looked) = looked {
        why.extend(looked.why.iter().map(|reason| voice.photo_why(reason.code(), &reason.values())));
    }
    let photographs = entry.photographs.iter().enumerate().map(|(at, hash)| {
        let whole = format!("{base}/photo/{}", hash.as_str());
        let map = (at < 2 && looked.is_some()).then(|| format!("{base}/entry/{}/map?number={at}", entry.id));
        Photograph { src: format!("{whole}/small"), whole, map }
    });
    let when = voice.moment(entry.happened.instant(), &opened.zone);
    let score = looked.and_then(Looked::score_de00);
    let second = looked.filter(|looked| looked.asks_for_second() && writes);
    Shot {
        alt: voice.say("photos-alt", &[("when", when.as_str().into())]),
        when,
        place: crate::told::place(entry, voice),
        verdict: voice.photo_verdict(word),
        mark: super::mark(match word {
            "even" => "released",
            "patchy" => "held",
            _ => "cant_tell",
        }),
        score: score.map(|score| voice.say("photo-score", &[("score", voice.number(score, 1).into())])),
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
fn small(ask: &Ask) -> Answer {
    let record = ask.slab()?;
    let hash = PhotoHash::try_from(ask.part("hash").to_owned()).map_err(|_| Trouble::NotFound)?;
    let bytes = ask.app.store().photograph_of(record.id, &hash)?.ok_or(Trouble::NotFound)?;
    let picture = decode(&bytes).map_err(|e| Trouble::Failed(e.to_string()))?;
    let copy = photo::small(&picture, SMALL).map_err(|e| Trouble::Failed(e.to_string()))?;
    Ok(([(CONTENT_TYPE, "image/jpeg"), (CACHE_CONTROL, "private, max-age=31536000, immutable")], copy).into_response())
}

/// A photograph of an entry beside its map of patches.
fn map(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let id: EntryId = ask.part("entry").parse().map_err(|_| Trouble::NotFound)?;
    let entry: &Entry = opened.diary.get(id).ok_or(Trouble::NotFound)?;
    let Body::SlabPhotograph(body) = &entry.body else { return Err(Trouble::NotFound) };
    let number: usize = ask.query.first("number").unwrap_or("0").parse().map_err(|_| Trouble::NotFound)?;
    let pictures = pictures(&ask.app, &entry.photographs);
    let looked = look(body, &pictures).ok_or(Trouble::NotFound)?;
    let (Some(picture), Some(evenness)) = (pictures.get(number), looked.each.get(number)) else {
        return Err(Trouble::NotFound);
    };
    let png = photo::overlay(picture, evenness).map_err(|e| Trouble::Failed(e.to_string()))?;
    Ok(([(CONTENT_TYPE, "image/png"), (CACHE_CONTROL, "private, max-age=86400")], png).into_response())
}
