//! A slab's own page: the answer, the one next thing to do, what is used kneeling on it, and the hold
//! points with why.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use localization::Locale;
use slab_answers::ready::to_ready;
use slab_answers::standing::{Action, HoldPoint, State, judge};
use slab_diary::{EntryId, EntryKind, Knowledge};
use slab_diary::{Slab, fold};
use trade_facts::Trade;

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::control::short;
use crate::entries::Opened;
use crate::frame::{Frame, NavLink, show};
use crate::view_scope::ViewScope;
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/slab/{slab}", page(Permission::Read, shown))
}

/// What is written down kneeling on a slab, most often first; the rest is one tap further.
const QUICK: &[EntryKind] = &[
    EntryKind::WaterDrop,
    EntryKind::Scrape,
    EntryKind::Incident,
    EntryKind::SlabPhotograph,
    EntryKind::SurfacePh,
    EntryKind::AirReading,
    EntryKind::SlabHumidity,
    EntryKind::Note,
];

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

/// A hold point in the ledger: its short name and its state.
#[derive(Debug, Clone)]
struct LedgerLine {
    id: &'static str,
    short: String,
    state: &'static str,
    state_said: String,
}

/// What to do next, with the form that takes its answer.
#[derive(Debug, Clone)]
pub(crate) struct Step {
    pub(crate) order: String,
    pub(crate) time: String,
    pub(crate) care: Option<String>,
    pub(crate) href: Option<String>,
}

/// How a test is done, from the trade records.
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
    quick: Vec<NavLink>,
    /// In the order of the job, so that each has its place.
    ledger: Vec<LedgerLine>,
    /// The worst first.
    points: Vec<Point>,
    /// The deeds that could make it ready, and last what they all take; empty when it is.
    to_ready: Vec<String>,
    missing_plan: bool,
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let frame = context.frame(context.locale().message("slab-title", &[])).about(context, &opened.record, &opened.zone);
    standing(context, &opened, frame, &ViewScope::own(context, opened.record.id))
}

/// The standing in any frame.
pub(crate) fn standing(context: &RequestContext, opened: &Opened, frame: Frame, sight: &ViewScope) -> Answer {
    let (locale, trade) = (context.locale(), Trade::built_in());
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    let standing = judge(&slab, trade);
    let (base, writes) = (sight.base.as_str(), sight.writes);
    let step = standing.overall.next.as_ref().map(|next| {
        let href =
            writes.then(|| form_for(next.action)).map(|kind| link(base, kind, next.zones.first().map(String::as_str)));
        Step { order: locale.order(next), time: locale.action_time(next), care: locale.care(next), href }
    });
    let ledger = standing.hold_points.iter().map(|p| LedgerLine {
        id: p.id.name(),
        short: locale.hold_point_short(p.id),
        state: p.state.name(),
        state_said: locale.state(p.state),
    });
    let mut points: Vec<Point> = standing.hold_points.iter().map(|p| point(p, sight, &slab, trade, locale)).collect();
    points.sort_by_key(|p| match p.state {
        "held" => 0,
        "cant_tell" => 1,
        "unproven" => 2,
        _ => 3,
    });
    let quick = QUICK.iter().map(|kind| NavLink {
        href: format!("{base}/add/{}", kind.name()),
        label: locale.kind(*kind),
        here: false,
    });
    let all = NavLink { href: format!("{base}/add"), label: locale.message("slab-note-other", &[]), here: false };
    Ok(show(&Page {
        frame,
        answer: first_sentence(locale, &standing.overall),
        state: standing.overall.state.name(),
        open_said: locale.open_hold_points(&standing.overall),
        step,
        quick: if writes { quick.chain([all]).collect() } else { Vec::new() },
        ledger: ledger.collect(),
        points,
        to_ready: if standing.overall.state == State::Released {
            Vec::new()
        } else {
            locale.to_ready(&to_ready(&slab, trade, &standing))
        },
        missing_plan: slab.plan().is_none() && writes,
    }))
}

/// The answer without its next step: the step stands below as the button.
fn first_sentence(locale: Locale, overall: &slab_answers::standing::Overall) -> String {
    locale.overall(&slab_answers::standing::Overall { next: None, ..overall.clone() })
}

/// A hold point in the reader's words.
fn point(point: &HoldPoint, sight: &ViewScope, slab: &Slab<'_>, trade: &Trade, locale: Locale) -> Point {
    let step = point.next.as_ref().or(point.proposed.as_ref()).map(|next| Step {
        order: locale.order(next),
        time: locale.action_time(next),
        care: locale.care(next),
        href: sight.writes.then(|| link(&sight.base, form_for(next.action), next.zones.first().map(String::as_str))),
    });
    let source = locale.cite(trade, &point.citation);
    let grade = locale.grade(trade.grade_to_show(&point.citation));
    let told = |entry: &EntryId| {
        let entry = slab.entries().iter().find(|e| e.id == *entry)?;
        let mut said = short(entry, slab, locale);
        let line = crate::entry_text::line(entry, locale);
        if !line.is_empty() {
            said = format!("{said}: {line}");
        }
        Some((sight.entries.then(|| format!("{}/entry/{}", sight.base, entry.id)), said))
    };
    let tests = point.tests.iter().filter_map(|test| trade.hold_point_test(test)).map(|test| TestHow {
        name: locale.text_of(test, "name"),
        how: locale.text_of(test, "how"),
        passes: locale.text_of(test, "passes"),
        fails: locale.text_of(test, "fails"),
    });
    Point {
        id: point.id.name(),
        state: point.state.name(),
        state_said: locale.state(point.state),
        question: locale.hold_point_question(point.id),
        zones: point.zones.iter().map(|(zone, state)| (zone.clone(), locale.state(*state))).collect(),
        why: point
            .why
            .iter()
            .map(|reason| locale.reason(reason))
            .chain(locale.own_limits(point))
            .chain(locale.lapses(point))
            .collect(),
        step,
        ignored: locale.message("standing-if-ignored", &[("consequence", locale.consequence(point.id).into())]),
        source: locale.message("standing-source", &[("source", source.into()), ("grade", grade.into())]),
        evidence: point.evidence.iter().filter_map(told).collect(),
        tests: tests.collect(),
    }
}

/// The form that a step's answer is written in.
pub(super) const fn form_for(action: Action) -> EntryKind {
    match action {
        Action::NotePour => EntryKind::Pour,
        Action::LookForOneColor | Action::WaitForAge => EntryKind::ColorLook,
        Action::DropAndScrape | Action::RepeatDropAndScrape | Action::WaterDrops | Action::MoreDrops => {
            EntryKind::WaterDrop
        }
        Action::Scrape | Action::ScrapeWhereWaterStands => EntryKind::Scrape,
        Action::SolventWipe => EntryKind::SolventWipe,
        Action::AcidDrop => EntryKind::AcidDrop,
        Action::StripAndRetest | Action::ScreenAndRetest | Action::ScreenPlace | Action::TreatAndRetest => {
            EntryKind::Cleaning
        }
        Action::MistAndLook | Action::MapCracks => EntryKind::Survey,
        Action::LiftMistAndLook => EntryKind::Cover,
        Action::RetestSpot => EntryKind::Retest,
        Action::AskOwnerToAccept => EntryKind::Accepted,
        Action::ChooseSealer | Action::AskSealerMaker => EntryKind::SealerChosen,
        Action::EndWetCure => EntryKind::Cured,
        Action::SetProbes | Action::MeasureMoistureAgain | Action::DryAndMeasureAgain => EntryKind::SlabHumidity,
        Action::LaySheet => EntryKind::PlasticSheet,
        Action::TestPh => EntryKind::SurfacePh,
        Action::NeutralizeAndRinse => EntryKind::Neutralized,
        Action::MeasureCrack => EntryKind::Defect,
        Action::RepairOrAccept => EntryKind::Repair,
        Action::AskEngineer
        | Action::AskAboutConcrete
        | Action::AgreeProbePlace
        | Action::WaitDwell
        | Action::KeepOff => EntryKind::Note,
        Action::MakePanel
        | Action::NotePanel
        | Action::MockUpOrGrind
        | Action::MockUpBothEnds
        | Action::TryThisConcrete => EntryKind::PanelMade,
        Action::StainPanels | Action::TryOnPanelOrScreen | Action::TryStainOnPatch | Action::MixByZone => {
            EntryKind::PanelStained
        }
        Action::GetApproval => EntryKind::ChoiceApproved,
        Action::SealPanelAndShow => EntryKind::PanelPhotographed,
        Action::LayCoat => EntryKind::CoatLaid,
        Action::LaySealerCoat => EntryKind::SealerCoat,
        Action::SetUpSite | Action::CheckSiteAgain => EntryKind::SiteCheck,
        Action::ReadAir | Action::WaitForAir => EntryKind::AirReading,
    }
}

fn link(base: &str, kind: EntryKind, zone: Option<&str>) -> String {
    let path = format!("{base}/add/{}", kind.name());
    match zone.filter(|zone| !zone.is_empty()) {
        Some(zone) => {
            format!("{path}?{}", form_urlencoded::Serializer::new(String::new()).append_pair("zone", zone).finish())
        }
        None => path,
    }
}
