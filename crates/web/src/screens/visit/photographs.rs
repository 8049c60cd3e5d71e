//! The photographs that a link shows.

use askama::Template;
use axum::http::HeaderValue;
use axum::http::header::CACHE_CONTROL;
use slab::diary::{Entry, PhotoHash};

use super::Visit;
use super::choice::OF_PANELS;
use crate::ask::{Answer, Ask};
use crate::frame::{Frame, show};
use crate::screens::diary::{photographs, picture};
use crate::trouble::Trouble;

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
pub(super) fn all(ask: &Ask) -> Answer {
    let visit = Visit::at(ask, "photographs")?;
    let voice = ask.voice();
    let mut entries: Vec<&Entry> = visit.opened.diary.entries().filter(|entry| visit.sight.shows(entry)).collect();
    entries.sort_by_key(|entry| std::cmp::Reverse(entry.happened.instant()));
    let of = |entry: &&Entry| {
        let kind = voice.kind(entry.body.kind());
        let what = match crate::told::place(entry, voice) {
            Some(place) => format!("{kind}, {place}"),
            None => kind,
        };
        let when = voice.moment(entry.happened.instant(), &visit.opened.zone);
        photographs(entry, &visit.sight)
            .into_iter()
            .map(|src| Picture { src, what: what.clone(), when: when.clone() })
            .collect::<Vec<_>>()
    };
    let pictures: Vec<Picture> = entries.iter().flat_map(of).collect();
    Ok(show(&All { frame: visit.frame(ask, "photographs"), count: pictures.len() as u64, pictures }))
}

/// One photograph: only one that a page of this link shows.
pub(super) fn one(ask: &Ask) -> Answer {
    let visit = Visit::of(ask)?;
    let hash = PhotoHash::try_from(ask.part("hash").to_owned()).map_err(|_| Trouble::NotFound)?;
    let shown = visit.opened.diary.entries().filter(|entry| entry.photographs.contains(&hash)).any(|entry| {
        let of_panel = visit.shows("choice") && OF_PANELS.contains(&entry.body.kind());
        of_panel || (visit.sight.photographs && visit.sight.shows(entry))
    });
    if !shown {
        return Err(Trouble::NotFound);
    }
    let bytes = ask.app.store().photograph_of(visit.opened.record.id, &hash)?.ok_or(Trouble::NotFound)?;
    let mut response = picture(bytes)?;
    // A browser forgets it soon after the link is withdrawn.
    response.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("private, max-age=600"));
    Ok(response)
}
