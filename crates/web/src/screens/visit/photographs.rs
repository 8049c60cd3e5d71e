//! The photographs that a link shows.

use askama::Template;
use axum::http::HeaderValue;
use axum::http::header::CACHE_CONTROL;
use slab_diary::{Entry, PhotoHash};

use super::Visit;
use super::choice::OF_PANELS;
use crate::context::{Answer, RequestContext};
use crate::frame::{Frame, show};
use crate::page_error::PageError;
use crate::screens::diary::{photographs, picture};

struct Picture {
    src: String,
    what: String,
    when: String,
}

#[derive(Template)]
#[template(path = "visit_photographs.html")]
struct All {
    frame: Frame,
    pictures: Vec<Picture>,
    count: u64,
}

/// Every photograph of the diary, the newest first.
pub(super) fn all(context: &RequestContext) -> Answer {
    let visit = Visit::at(context, "photographs")?;
    let locale = context.locale();
    let mut entries: Vec<&Entry> = visit.opened.diary.entries().filter(|entry| visit.sight.shows(entry)).collect();
    entries.sort_by_key(|entry| std::cmp::Reverse(entry.happened.instant()));
    let of = |entry: &&Entry| {
        let kind = locale.kind_of(&entry.body);
        let what = match crate::entry_text::place(entry, locale) {
            Some(place) => format!("{kind}, {place}"),
            None => kind,
        };
        let when = locale.moment(entry.happened.instant(), &visit.opened.zone);
        photographs(entry, &visit.sight)
            .into_iter()
            .map(|src| Picture { src, what: what.clone(), when: when.clone() })
            .collect::<Vec<_>>()
    };
    let pictures: Vec<Picture> = entries.iter().flat_map(of).collect();
    Ok(show(&All { frame: visit.frame(context, "photographs"), count: pictures.len() as u64, pictures }))
}

/// One photograph: only one that a page of this link shows.
pub(super) fn one(context: &RequestContext) -> Answer {
    let visit = Visit::of(context)?;
    let hash = PhotoHash::try_from(context.part("hash").to_owned()).map_err(|_| PageError::NotFound)?;
    let shown = visit.opened.diary.entries().filter(|entry| entry.photographs.contains(&hash)).any(|entry| {
        let of_panel = visit.shows("choice") && entry.body.kind().is_some_and(|kind| OF_PANELS.contains(&kind));
        of_panel || (visit.sight.photographs && visit.sight.shows(entry))
    });
    if !shown {
        return Err(PageError::NotFound);
    }
    let bytes = context.app.store().photograph_of(visit.opened.record.id, &hash)?.ok_or(PageError::NotFound)?;
    let mut response = picture(bytes)?;
    // A browser forgets it soon after the link is withdrawn.
    response.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("private, max-age=600"));
    Ok(response)
}
