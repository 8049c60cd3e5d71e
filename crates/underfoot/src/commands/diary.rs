//! Read a slab's diary, in the order things happened.

use crate::out::answer;
use slab_diary::fold;

use super::fields::kind_named;

use crate::cli::Which;
use crate::failure::{Answer, Failure};
use crate::session::Session;
use crate::{json, text};

pub(crate) fn run(session: &Session, which: &Which, kind: Option<&str>, all: bool) -> Result<Answer, Failure> {
    let asked = session.ask(which)?;
    let slab = fold(&asked.diary, asked.knowledge);
    let kind = match kind {
        None => None,
        Some(name) => Some(kind_named(name)?),
    };
    let mut entries: Vec<&slab_diary::Entry> = if all {
        asked.diary.entries().filter(|e| asked.knowledge.includes(e)).collect()
    } else {
        slab.entries().to_vec()
    };
    entries.sort_by_key(|e| e.order());
    for entry in entries.into_iter().filter(|e| kind.is_none() || e.body.kind() == kind) {
        if session.json {
            answer!("{}", json::entry(entry, &slab));
        } else {
            answer!("{}", text::entry(entry, &slab, &session.locale));
        }
    }
    Ok(Answer::Yes)
}
