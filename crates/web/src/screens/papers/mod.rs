//! The papers of a slab: what each is for, what a pour sheet is wished to say, and the PDFs.

mod wishes;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use forms::Typed;
use jiff::civil::Date;
use papers::{PageSize, PaperError, PourSheet, SiteNotice, pour_sheet, site_notice};
use slab::diary::Knowledge;
use slab::diary::body::Pour;
use slab::slab::{Slab, fold};
use slab::trade::Trade;

use crate::app::App;
use crate::ask::{Answer, Ask, page};
use crate::control::{Choice, Mistakes};
use crate::entries::Opened;
use crate::frame::{Frame, show};
use crate::texts::file_name;
use crate::visitor::May;

use wishes::{WishField, fields, read};

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/papers", page(May::Read, shown))
        .route("/slab/{slab}/papers/pour-sheet.pdf", page(May::Read, pour))
        .route("/slab/{slab}/papers/site-notice.pdf", page(May::Read, notice))
}

#[derive(Template)]
#[template(path = "papers.html")]
struct Page {
    frame: Frame,
    /// The day of the pour when it is over.
    poured: Option<String>,
    /// What no form can give: the plan.
    no_zones: bool,
    found: String,
    wishes: Vec<WishField>,
    link: String,
    link_mistake: Option<String>,
    sizes: Vec<Choice>,
    mistakes: Vec<(String, String)>,
    writes: bool,
}

/// The slab as known now, and today's date there.
fn known<'o>(ask: &Ask, opened: &'o Opened) -> (Slab<'o>, Date) {
    let at = ask.app.asked_at(opened.record.id);
    (fold(&opened.diary, Knowledge::noted_by(at)), at.to_zoned_datetime(opened.zone.clone()).date())
}

fn size_of(typed: &Typed) -> PageSize {
    typed.answer("size").and_then(PageSize::from_word).unwrap_or(PageSize::Letter)
}

fn with_mistakes(ask: &Ask, opened: &Opened, slab: &Slab<'_>, mistakes: &Mistakes) -> Page {
    let voice = ask.voice();
    let size = size_of(&ask.query);
    let found = slab::standing::open_incidents(slab, Trade::built_in()).len();
    let sizes = PageSize::ALL.map(|one| Choice {
        value: one.word().to_owned(),
        label: match one {
            PageSize::Letter => voice.say("papers-letter", &[]),
            PageSize::A4 => voice.say("papers-a4", &[]),
        },
        chosen: one == size,
    });
    Page {
        frame: ask.frame(voice.say("papers-title", &[])).about(ask, &opened.record, &opened.zone),
        poured: slab.last::<Pour>().map(|pour| voice.date(pour.entry.happened.date())),
        no_zones: slab.zones().iter().all(|zone| zone.area.is_none()),
        found: voice.say("papers-found", &[("count", words::Arg::Number(found as f64))]),
        wishes: fields(slab, &ask.query, mistakes, voice),
        link: ask.query.first("link").unwrap_or_default().to_owned(),
        link_mistake: crate::control::mistake_of(mistakes, "link"),
        sizes: sizes.to_vec(),
        mistakes: mistakes.to_vec(),
        writes: ask.visitor.may >= May::Write,
    }
}

fn shown(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (slab, _) = known(ask, &opened);
    Ok(show(&with_mistakes(ask, &opened, &slab, &[])))
}

fn mend(ask: &Ask, opened: &Opened, slab: &Slab<'_>, mistakes: &Mistakes) -> Answer {
    let page = with_mistakes(ask, opened, slab, mistakes);
    Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&page)).into_response())
}

/// A PDF under a plain name: the browser shows it, and saves it under that name.
fn pdf(bytes: Vec<u8>, name: &str) -> Answer {
    let shown_as = format!("inline; filename=\"{name}\"");
    Ok(([(CONTENT_TYPE, "application/pdf".to_owned()), (CONTENT_DISPOSITION, shown_as)], bytes).into_response())
}

fn pour(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (slab, today) = known(ask, &opened);
    let voice = ask.voice();
    let wished = match read(&slab, &ask.query, today, voice) {
        Ok(wished) => wished,
        Err(mistakes) => return mend(ask, &opened, &slab, &mistakes),
    };
    let made = PourSheet::of(&slab, Trade::built_in(), &wished)
        .and_then(|sheet| pour_sheet(&sheet, voice.lang, size_of(&ask.query)));
    match made {
        Ok(bytes) => pdf(bytes, &format!("{}-pour-sheet-{}.pdf", file_name(&opened.record.name), voice.lang.name())),
        Err(error) => mend(ask, &opened, &slab, &[wishes::refused(&error, &slab, voice)]),
    }
}

fn notice(ask: &Ask) -> Answer {
    let opened = ask.opened()?;
    let (slab, today) = known(ask, &opened);
    let link = ask.query.answer("link").map(str::to_owned);
    let notice = SiteNotice { link, ..SiteNotice::of(&slab, Trade::built_in(), today) };
    match site_notice(&notice, size_of(&ask.query)) {
        Ok(bytes) => pdf(bytes, &format!("{}-site-notice.pdf", file_name(&opened.record.name))),
        Err(error) => {
            let voice = ask.voice();
            let mistake = match &error {
                PaperError::Field { field, .. } if &**field == "link" => {
                    ("link".to_owned(), voice.say("papers-link-wrong", &[]))
                }
                error => wishes::refused(error, &slab, voice),
            };
            mend(ask, &opened, &slab, &[mistake])
        }
    }
}
