//! A slab's own page: the answer, the one next thing to do, what is used kneeling on it, and the hold
//! points with why.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use slab::diary::{EntryId, Knowledge};
use slab::slab::{Slab, fold};
use slab::standing::{Action, HoldPoint, judge};
use slab::trade::Trade;
use words::Voice;

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::control::short;
use crate::entries::Opened;
use crate::frame::{Frame, Way, show};
use crate::sight::Sight;
use crate::visitor::May;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}", page(May::Read, shown))
}

/// What is written down kneeling on a slab, most often first; the rest is one tap further.
const QUICK: &[&str] =
    &["water_drop", "scrape", "incident", "slab_photograph", "surface_ph", "air_reading", "slab_humidity", "note"];

/// A hold point as the template draws it.
#[derive(Debug, Clone)]
pub(crate) struct Point {
    pub(crate) id: &'static str,
    pub(crate) state: &'static str,
    pub(crate) state_said: String,
    pub(crate) question: String,
    pub(crate) zones: Vec<(String, String)>,
    pub(crate) why: Vec<String>,
    pub(crate) step: Option<Step>,
    pub(crate) ignored: String,
    pub(crate) source: String,
    /// What it rests on, with the way to it where there is one.
    pub(crate) evidence: Vec<(Option<String>, String)>,
    pub(crate) tests: Vec<TestHow>,
}

/// What to do next, with the form that takes its answer.
#[derive(Debug, Clone)]
pub(crate) struct Step {
    pub(crate) order: String,
    pub(crate) time: String,
    pub(crate) care: Option<String>,
    pub(crate) href: Option<String>,
}

/// How a test is done, from the trade records; in English as they are written.
#[derive(Debug, Clone)]
pub(crate) struct TestHow {
    pub(crate) name: String,
    pub(crate) how: String,
    pub(crate) passes: String,
    pub(crate) fails: String,
}

#[derive(Template)]
#[template(path = "slab.html")]
struct Page {
    frame: Frame,
    answer: String,
    state: &'static str,
    open_said: String,
    step: Option<Step>,
    quick: Vec<Way>,
    points: Vec<Point>,
    missing_plan: bool,
}

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let frame = ask.frame(ask.voice().say("slab-title", &[])).about(ask, &opened.record, &opened.zone);
    standing(ask, &opened, frame, &Sight::own(ask, opened.record.id))
}

/// The standing in any frame.
pub(crate) fn standing(ask: &Ask, opened: &Opened, frame: Frame, sight: &Sight) -> Answer {
    let (voice, trade) = (ask.voice(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(ask.app.asked_at(opened.record.id)));
    let standing = judge(&slab, trade);
    let (base, writes) = (sight.base.as_str(), sight.writes);
    let zone_of_next = standing.overall.hold_point.and_then(|point| {
        let point = standing.hold_point(point);
        point.zones.iter().find(|(_, state)| *state == point.state).map(|(zone, _)| zone.clone())
    });
    let step = standing.overall.next.map(|next| {
        let href = writes.then(|| form_for(next.action)).map(|kind| link(base, kind, zone_of_next.as_deref()));
        Step { order: voice.order(&next), time: voice.action_time(&next), care: voice.care(&next), href }
    });
    let mut points: Vec<Point> = standing.hold_points.iter().map(|p| point(p, sight, &slab, trade, voice)).collect();
    points.sort_by_key(|p| match p.state {
        "held" => 0,
        "cant_tell" => 1,
        "unproven" => 2,
        _ => 3,
    });
    let quick =
        QUICK.iter().map(|kind| Way { href: format!("{base}/add/{kind}"), label: voice.kind(kind), here: false });
    let all = Way { href: format!("{base}/add"), label: voice.say("slab-note-other", &[]), here: false };
    Ok(show(&Page {
        frame,
        answer: first_sentence(voice, &standing.overall),
        state: standing.overall.state.name(),
        open_said: voice.open_hold_points(&standing.overall),
        step,
        quick: if writes { quick.chain([all]).collect() } else { Vec::new() },
        points,
        missing_plan: slab.plan().is_none() && writes,
    }))
}

/// The answer without its next step: the step stands below as the button.
fn first_sentence(voice: Voice, overall: &slab::standing::Overall) -> String {
    voice.overall(&slab::standing::Overall { next: None, ..overall.clone() })
}

/// A hold point in the reader's words.
fn point(point: &HoldPoint, sight: &Sight, slab: &Slab<'_>, trade: &Trade, voice: Voice) -> Point {
    let step = point.next.map(|next| Step {
        order: voice.order(&next),
        time: voice.action_time(&next),
        care: voice.care(&next),
        href: sight.writes.then(|| {
            let worst = point.zones.iter().find(|(_, state)| *state == point.state).map(|(zone, _)| zone.as_str());
            link(&sight.base, form_for(next.action), worst)
        }),
    });
    let source = voice.cite(trade, &point.citation);
    let grade = voice.grade(trade.grade_to_show(&point.citation));
    let told = |entry: &EntryId| {
        let entry = slab.entries().iter().find(|e| e.id == *entry)?;
        let mut said = short(entry, slab, voice);
        let line = crate::told::line(entry, voice);
        if !line.is_empty() {
            said = format!("{said}: {line}");
        }
        Some((sight.entries.then(|| format!("{}/entry/{}", sight.base, entry.id)), said))
    };
    let tests = point.tests.iter().filter_map(|test| trade.hold_point_test(test)).map(|test| TestHow {
        name: test.name.clone(),
        how: test.how.clone(),
        passes: test.passes.clone(),
        fails: test.fails.clone(),
    });
    Point {
        id: point.id.name(),
        state: point.state.name(),
        state_said: voice.state(point.state),
        question: voice.hold_point_question(point.id),
        zones: point.zones.iter().map(|(zone, state)| (zone.clone(), voice.state(*state))).collect(),
        why: point.why.iter().map(|reason| voice.reason(reason)).collect(),
        step,
        ignored: voice.say("standing-if-ignored", &[("consequence", voice.consequence(point.id).into())]),
        source: voice.say("standing-source", &[("source", source.into()), ("grade", grade.into())]),
        evidence: point.evidence.iter().filter_map(told).collect(),
        tests: tests.collect(),
    }
}

/// The form that a step's answer is written in.
pub(super) const fn form_for(action: Action) -> &'static str {
    match action {
        Action::NotePour => "pour",
        Action::LookForOneColor => "color_look",
        Action::DropAndScrape | Action::RepeatDropAndScrape | Action::WaterDrops | Action::MoreDrops => "water_drop",
        Action::Scrape | Action::ScrapeWhereWaterStands => "scrape",
        Action::SolventWipe => "solvent_wipe",
        Action::StripAndRetest | Action::ScreenAndRetest | Action::TreatAndRetest => "cleaning",
        Action::MistAndLook | Action::MapCracks => "survey",
        Action::LiftMistAndLook => "cover",
        Action::RetestSpot => "retest",
        Action::AskOwnerToAccept => "accepted",
        Action::ChooseSealer | Action::AskSealerMaker => "sealer_chosen",
        Action::EndWetCure => "cured",
        Action::SetProbes | Action::MeasureMoistureAgain | Action::DryAndMeasureAgain => "slab_humidity",
        Action::LaySheet => "plastic_sheet",
        Action::TestPh => "surface_ph",
        Action::NeutralizeAndRinse => "neutralized",
        Action::MeasureCrack => "defect",
        Action::RepairOrAccept => "repair",
        Action::AskEngineer => "note",
        Action::MakePanel | Action::NotePanel | Action::MockUpOrGrind => "panel_made",
        Action::StainPanels | Action::TryOnPanelOrScreen | Action::TryStainOnPatch => "panel_stained",
        Action::GetApproval => "choice_approved",
        Action::SetUpSite => "site_check",
        Action::ReadAir | Action::WaitForAir => "air_reading",
    }
}

fn link(base: &str, kind: &str, zone: Option<&str>) -> String {
    let path = format!("{base}/add/{kind}");
    match zone.filter(|zone| !zone.is_empty()) {
        Some(zone) => {
            format!("{path}?{}", form_urlencoded::Serializer::new(String::new()).append_pair("zone", zone).finish())
        }
        None => path,
    }
}
