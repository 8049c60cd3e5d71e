//! Correct an entry: a new one replaces it.

use serde_json::{Map, Value, json};
use slab_diary::{Diary, Entry, When};

use super::fields;
use super::log::{append, report, settle};
use crate::cli::Fix;
use crate::failure::{Answer, Failure};
use crate::session::{Session, fresh_id, now, zone_of};

pub(crate) fn run(session: &Session, fix: &Fix) -> Result<Answer, Failure> {
    let record = session.find(fix.slab.as_deref())?;
    let diary = session.diary(&record)?;
    let old = find(&diary, &fix.entry)?;
    let place = fields::place(&fix.place)?;
    if fix.fields.is_empty() && fix.happened.is_none() && place.is_none() {
        return Err(Failure::Use("nothing to change; accepted: field=value, --happened, --zone or --point".to_owned()));
    }
    let Ok(Value::Object(mut base)) = serde_json::from_str::<Value>(old.body.to_raw().get()) else {
        return Err(Failure::Data(format!("entry {} has no fields", old.id)));
    };
    base.shift_remove("kind");
    let body = fields::body(record.id, old.body.kind(), base, &fix.fields)?;
    let zone = zone_of(&diary);
    let mut line = Map::new();
    line.insert("id".to_owned(), json!(fresh_id().to_string()));
    line.insert("replaces".to_owned(), json!(old.id.to_string()));
    line.insert("happened".to_owned(), json!(fix.happened.clone().unwrap_or_else(|| old.happened.to_string())));
    if let Some(place) = place.or_else(|| serde_json::to_value(&old.place).ok().filter(|v| !v.is_null())) {
        line.insert("place".to_owned(), place);
    }
    if !old.photographs.is_empty() {
        line.insert("photographs".to_owned(), json!(old.photographs));
    }
    line.insert("body".to_owned(), body);
    let entry = settle(session, record.id, &zone, When::new(now(), &zone), line)?;
    let written = append(session, record.id, vec![entry])?;
    report(session, written)
}

/// An entry by its id, or by enough of the end of it: the ends of ids made in one moment differ,
/// their beginnings do not.
fn find<'d>(diary: &'d Diary, text: &str) -> Result<&'d Entry, Failure> {
    let wanted = text.trim().to_lowercase();
    let found: Vec<&Entry> = diary
        .entries()
        .filter(|e| {
            let id = e.id.to_string();
            id == wanted || (wanted.len() >= 4 && id.ends_with(&wanted))
        })
        .collect();
    match found.as_slice() {
        [one] => Ok(one),
        [] => Err(Failure::Use(format!(
            "entry \"{text}\" is not in this diary; accepted: an id that `underfoot diary` lists, or its last 4 or more characters"
        ))),
        several => {
            let ids: Vec<String> = several.iter().map(|e| e.id.to_string()).collect();
            Err(Failure::Use(format!("entry \"{text}\" could be several; accepted: one of {}", ids.join(", "))))
        }
    }
}
