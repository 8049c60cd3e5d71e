//! The papers of a slab: what each is for, what a pour sheet is wished to say, and the PDFs.

mod wishes;

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::IntoResponse;
use form_schema::FormData;
use jiff::civil::Date;
use papers::{PageSize, PaperError, PourSheet, SiteNotice, pour_sheet, site_notice};
use slab_diary::Knowledge;
use slab_diary::body::Pour;
use slab_diary::{Slab, fold};
use trade_facts::Trade;

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::control::{Choice, FieldErrors};
use crate::entries::Opened;
use crate::frame::{Frame, show};
use crate::texts::file_name;
use crate::visitor::Permission;

use wishes::{WishField, fields, read};

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/slab/{slab}/papers", page(Permission::Read, shown))
        .route("/slab/{slab}/papers/pour-sheet.pdf", page(Permission::Read, pour))
        .route("/slab/{slab}/papers/site-notice.pdf", page(Permission::Read, notice))
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
fn known<'o>(context: &RequestContext, opened: &'o Opened) -> (Slab<'o>, Date) {
    let at = context.app.asked_at(opened.record.id);
    (fold(&opened.diary, Knowledge::noted_by(at)), at.to_zoned_datetime(opened.zone.clone()).date())
}

fn size_of(typed: &FormData) -> PageSize {
    typed.answer("size").and_then(PageSize::from_word).unwrap_or(PageSize::Letter)
}

fn with_mistakes(context: &RequestContext, opened: &Opened, slab: &Slab<'_>, mistakes: &FieldErrors) -> Page {
    let locale = context.locale();
    let size = size_of(&context.query);
    let found = slab_answers::standing::open_incidents(slab, Trade::built_in()).len();
    let sizes = PageSize::ALL.map(|one| Choice {
        value: one.word().to_owned(),
        label: match one {
            PageSize::Letter => locale.message("papers-letter", &[]),
            PageSize::A4 => locale.message("papers-a4", &[]),
        },
        chosen: one == size,
    });
    Page {
        frame: context.frame(locale.message("papers-title", &[])).about(context, &opened.record, &opened.zone),
        poured: slab.last::<Pour>().map(|pour| locale.date(pour.entry.happened.date())),
        no_zones: slab.zones().iter().all(|zone| zone.area.is_none()),
        found: locale.message("papers-found", &[("count", localization::Arg::Number(found as f64))]),
        wishes: fields(slab, &context.query, mistakes, locale),
        link: context.query.first("link").unwrap_or_default().to_owned(),
        link_mistake: crate::control::mistake_of(mistakes, "link"),
        sizes: sizes.to_vec(),
        mistakes: mistakes.to_vec(),
        writes: context.visitor.permission >= Permission::Write,
    }
}

fn shown(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (slab, _) = known(context, &opened);
    Ok(show(&with_mistakes(context, &opened, &slab, &[])))
}

fn mend(context: &RequestContext, opened: &Opened, slab: &Slab<'_>, mistakes: &FieldErrors) -> Answer {
    let page = with_mistakes(context, opened, slab, mistakes);
    Ok((StatusCode::UNPROCESSABLE_ENTITY, show(&page)).into_response())
}

/// A PDF under a plain name: the browser shows it, and saves it under that name.
fn pdf(bytes: Vec<u8>, name: &str) -> Answer {
    let shown_as = format!("inline; filename=\"{name}\"");
    Ok(([(CONTENT_TYPE, "application/pdf".to_owned()), (CONTENT_DISPOSITION, shown_as)], bytes).into_response())
}

fn pour(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (slab, today) = known(context, &opened);
    let locale = context.locale();
    let wished = match read(&slab, &context.query, today, locale) {
        Ok(wished) => wished,
        Err(mistakes) => return mend(context, &opened, &slab, &mistakes),
    };
    let made = PourSheet::of(&slab, Trade::built_in(), &wished)
        .and_then(|sheet| pour_sheet(&sheet, locale.lang, size_of(&context.query)));
    match made {
        Ok(bytes) => pdf(bytes, &format!("{}-pour-sheet-{}.pdf", file_name(&opened.record.name), locale.lang.name())),
        Err(error) => mend(context, &opened, &slab, &[wishes::refused(&error, &slab, locale)]),
    }
}

fn notice(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let (slab, today) = known(context, &opened);
    let link = context.query.answer("link").map(str::to_owned);
    let notice = SiteNotice { link, ..SiteNotice::of(&slab, Trade::built_in(), today) };
    match site_notice(&notice, size_of(&context.query)) {
        Ok(bytes) => pdf(bytes, &format!("{}-site-notice.pdf", file_name(&opened.record.name))),
        Err(error) => {
            let locale = context.locale();
            let mistake = match &error {
                PaperError::Field { field, .. } if &**field == "link" => {
                    ("link".to_owned(), locale.message("papers-link-wrong", &[]))
                }
                error => wishes::refused(error, &slab, locale),
            };
            mend(context, &opened, &slab, &[mistake])
        }
    }
}
