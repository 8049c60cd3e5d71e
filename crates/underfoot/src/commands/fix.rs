//! Correct an entry: a new one replaces it.

use diary_writer::NewEntry;
use serde_json::Map;
use slab_diary::{Diary, Entry, EntryKind};

use super::fields;
use super::log::{new_entry, report, write};
use crate::cli::Fix;
use crate::failure::{Answer, Failure};
use crate::session::{Session, zone_of};

pub(crate) fn run(session: &Session, fix: &Fix) -> Result<Answer, Failure> {
    let record = session.find(fix.slab.as_deref())?;
    let diary = session.diary(&record)?;
    let old = find(&diary, &fix.entry)?;
    if fix.never_happened {
        let (kind, zone) = (EntryKind::NeverHappened, zone_of(&diary));
        let fields = fields::fields(kind, Map::new(), &fix.fields, session.locale)?;
        let new = NewEntry { replaces: Some(old), ..new_entry(kind, fields, &zone) };
        return report(session, &write(session, record.id, &diary, &zone, new)?);
    }
    let place = fields::place(&fix.place)?;
    if fix.fields.is_empty() && fix.happened.is_none() && place.is_none() {
        return Err(Failure::Use(
            "nothing to change; accepted: field=value, --happened, --zone, --point or --never-happened".to_owned(),
        ));
    }
    let Some(kind) = old.body.kind() else {
        return Err(Failure::Data(format!(
            "entry {} was written by a newer program; accepted: one of a kind known here",
            old.id
        )));
    };
    let zone = zone_of(&diary);
    let kept = old.happened.to_string();
    let fields = fields::fields(kind, old.body.to_fields(), &fix.fields, session.locale)?;
    let new = NewEntry {
        happened: Some(fix.happened.as_deref().unwrap_or(&kept)),
        replaces: Some(old),
        place: place.or_else(|| serde_json::to_value(&old.place).ok().filter(|v| !v.is_null())),
        ..new_entry(kind, fields, &zone)
    };
    report(session, &write(session, record.id, &diary, &zone, new)?)
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
