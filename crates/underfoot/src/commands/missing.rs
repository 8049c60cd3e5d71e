//! What is missing before a slab is ready.

use slab_answers::ready::to_ready;
use slab_answers::standing::{State, judge};
use slab_diary::fold;
use trade_facts::Trade;

use crate::cli::Which;
use crate::failure::{Answer, Failure};
use crate::out::answer;
use crate::session::Session;
use crate::{json, text};

pub(crate) fn run(session: &Session, which: &Which) -> Result<Answer, Failure> {
    let asked = session.ask(which)?;
    let trade = Trade::built_in();
    let slab = fold(&asked.diary, asked.knowledge);
    let standing = judge(&slab, trade);
    let way = to_ready(&slab, trade, &standing);
    let name = &asked.record.name;
    if session.json {
        answer!("{:#}", json::missing(name, &asked.record.id.to_string(), asked.knowledge.at, &way, &session.locale));
    } else {
        crate::out::print(format_args!(
            "{}",
            text::missing(name, asked.knowledge.at, &way, &session.locale, &asked.zone)
        ));
    }
    Ok(if standing.overall.state == State::Released { Answer::Yes } else { Answer::No })
}
