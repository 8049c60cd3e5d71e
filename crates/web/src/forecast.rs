//! The drying forecast of a slab as work beside the pages: the first page that wants it begins it, the
//! others join, and what it answers is said alike everywhere.

use std::sync::Arc;
use std::time::Duration as Wait;

use jiff::civil::Date;
use localization::{Arg, Locale};
use slab_answers::drying::{
    CannotTell, DryingForecast, DryingQuestion, LimitBound, LimitForecast, MEMBERS, RestsOn, question,
};
use slab_diary::Slab;
use slab_diary::SlabId;
use trade_facts::Trade;

use crate::app::App;
use crate::entries::Opened;
use crate::jobs::{Forecast, Name, Work};

/// A page waits so long for an answer before it shows how far the work is.
const LOOKS: u32 = 15;
const BETWEEN_LOOKS: Wait = Wait::from_millis(20);

/// A forecast that was asked for.
pub(crate) struct Begun {
    pub(crate) question: DryingQuestion,
    /// Its name in `/work/NAME`.
    pub(crate) name: Name,
    pub(crate) work: Arc<Work<Forecast>>,
}

/// Begins the forecast of a slab, or joins it.
pub(crate) fn begin(app: &App, opened: &Opened, slab: &Slab<'_>, trade: &Trade) -> Result<Begun, CannotTell> {
    let question = question(slab, trade)?;
    let id = opened.record.id;
    let day = question.at.to_zoned_datetime(question.zone.clone()).date();
    // The number of entries: one that lay ahead of an earlier look counts from its own moment on, with
    // no new version of the diary.
    let name = format!("{id}.{}.{day}.{}", opened.record.version, slab.entries().len());
    let asked = question.clone();
    let seed = seed(id);
    let work = app.works.forecast(&name, move |work| {
        asked.forecast_watched(MEMBERS, seed, &mut |done, of| work.tell(f64::from(done) / f64::from(of)))
    });
    Ok(Begun { question, name, work })
}

/// The same possible slabs whenever the same slab is asked about.
fn seed(slab: SlabId) -> u64 {
    let (high, low) = slab.0.as_u64_pair();
    high ^ low
}

/// The slab that a piece of work is about.
pub(crate) fn slab_of(name: &str) -> Option<SlabId> {
    name.split('.').next()?.parse().ok()
}

impl Begun {
    /// The answer, if it comes within a blink.
    pub(crate) fn soon(&self) -> Option<Arc<Forecast>> {
        for _ in 0..LOOKS {
            let answer = self.work.answer();
            if answer.is_some() || self.work.is_broken() {
                return answer;
            }
            std::thread::sleep(BETWEEN_LOOKS);
        }
        self.work.answer()
    }

    /// The local day it was asked on.
    pub(crate) fn today(&self) -> Date {
        self.question.at.to_zoned_datetime(self.question.zone.clone()).date()
    }
}

/// Work that is under way, as a page shows it.
#[derive(Debug, Clone)]
pub(crate) struct Waiting {
    pub(crate) href: String,
    pub(crate) share: String,
    pub(crate) said: String,
}

impl Waiting {
    pub(crate) fn of(begun: &Begun, locale: Locale) -> Self {
        let share = begun.work.share();
        Self::at(&begun.name, share, stage(share, locale))
    }

    /// A piece of work by its name, and how far it is.
    pub(crate) fn at(name: &str, share: f64, said: String) -> Self {
        Self { href: format!("/work/{name}"), share: format!("{share:.2}"), said }
    }
}

/// What the work is doing: without readings it has two steps, with readings three.
pub(crate) fn stage(share: f64, locale: Locale) -> String {
    let key = match share {
        s if s < 0.1 => "drying-work-following",
        s if s < 0.45 => "drying-work-weighing",
        _ => "drying-work-drawing",
    };
    locale.message(key, &[("count", locale.count(MEMBERS as u32).into())])
}

/// The limit that governs: the strictest that holds without asking anybody.
pub(crate) fn governing(forecast: &DryingForecast) -> Option<&LimitForecast> {
    let plain = forecast.limits.iter().rfind(|l| l.limit.bound == LimitBound::Plain);
    plain.or_else(|| forecast.limits.last())
}

/// The answer in one sentence.
pub(crate) fn said(forecast: &DryingForecast, question: &DryingQuestion, today: Date, locale: Locale) -> String {
    if forecast.rests_on == RestsOn::Nothing {
        return locale.message("drying-answer-nothing", &[]);
    }
    let Some((governing, dates)) = governing(forecast).and_then(|l| Some((l, forecast.dates(l)?))) else {
        return locale.message("drying-answer-no-limit", &[]);
    };
    let basis = if forecast.rests_on == RestsOn::Readings { "readings" } else { "mix" };
    let horizon = question.date(forecast.horizon);
    let date = |date: Date| Arg::from(locale.date(date));
    // The number and its sign stay on one line of a large heading.
    let limit = locale.humidity(governing.limit.humidity).replace(' ', "\u{a0}");
    let mut args = vec![("basis", basis.into()), ("limit", limit.into())];
    let key = match (dates.p10, dates.p90) {
        (_, Some(late)) if late.date <= today => {
            args.push(("late", date(late.date)));
            "drying-answer-reached"
        }
        (Some(early), Some(late)) => {
            args.extend([("early", date(early.date)), ("late", date(late.date))]);
            "drying-answer-between"
        }
        (Some(early), None) => {
            args.extend([("early", date(early.date)), ("horizon", date(horizon))]);
            "drying-answer-open"
        }
        (None, _) => {
            args.push(("horizon", date(horizon)));
            "drying-answer-late"
        }
    };
    locale.message(key, &args)
}
