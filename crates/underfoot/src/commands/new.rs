//! Start a slab.

use crate::out::answer;
use serde_json::{Map, json};
use slab_diary::{Diary, EntryKind, SlabId};

use super::log::{new_entry, write};
use crate::cli::New;
use crate::failure::{Answer, Failure};
use crate::session::{Session, fresh_id};

pub(crate) fn run(session: &Session, new: &New) -> Result<Answer, Failure> {
    if new.name.trim().is_empty() {
        return Err(Failure::Use("name \"\": it is empty; accepted: what the crew calls the slab".to_owned()));
    }
    let id = SlabId(fresh_id());
    let mut body = Map::new();
    body.insert("name".to_owned(), json!(new.name.trim()));
    if let Some(site) = &new.site {
        body.insert("site".to_owned(), json!(site));
    }
    if let Some(zone) = &new.time_zone {
        body.insert("time_zone".to_owned(), json!(zone));
    }
    // What was not said is left out, so that a diary read in afterwards can say it.
    if new.exterior {
        body.insert("exposure".to_owned(), json!("exterior"));
    }
    if new.existing {
        body.insert("age".to_owned(), json!("existing"));
    }
    let zone = match &new.time_zone {
        None => jiff::tz::TimeZone::UTC,
        Some(name) => jiff::tz::TimeZone::get(name).map_err(|_| {
            Failure::Use(format!("time zone \"{name}\" is not known; accepted: a name such as America/Chicago"))
        })?,
    };
    let entry = new_entry(EntryKind::JobOpened, body, &zone);
    session.store.create_slab(id, new.name.trim()).map_err(Failure::data)?;
    write(session, id, &Diary::new(), &zone, entry)?;
    if session.json {
        answer!("{}", json!({ "id": id.to_string(), "name": new.name.trim() }));
    } else {
        answer!("{}", session.locale.message("slab-opened", &[("name", new.name.trim().into())]));
    }
    Ok(Answer::Yes)
}
