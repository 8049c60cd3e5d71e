//! List the slabs, each with its standing in one sentence.

use crate::out::answer;
use serde_json::{Value, json};
use slab_answers::standing::standing;
use slab_diary::Knowledge;
use trade_facts::Trade;

use crate::failure::{Answer, Failure};
use crate::session::{Session, now};

pub(crate) fn run(session: &Session) -> Result<Answer, Failure> {
    let slabs = session.store.slabs().map_err(Failure::data)?;
    let mut listed = Vec::new();
    for record in &slabs {
        let diary = session.diary(record)?;
        let standing = standing(&diary, Trade::built_in(), Knowledge::noted_by(now()));
        let sentence = session.locale.overall(&standing.overall);
        if session.json {
            listed.push(json!({
                "id": record.id.to_string(),
                "name": record.name,
                "entries": record.entries,
                "overall": standing.overall.state.name(),
                "sentence": sentence,
            }));
        } else {
            answer!("{}\n  {sentence}", record.name);
        }
    }
    if session.json {
        answer!("{}", Value::Array(listed));
    } else if slabs.is_empty() {
        answer!("{}", session.locale.message("no-slabs-yet", &[]));
    }
    Ok(Answer::Yes)
}
