//! Is it ready, what proves it, what comes next.

use crate::out::answer;
use slab_answers::standing::{State, standing};
use trade_facts::Trade;

use crate::cli::Which;
use crate::failure::{Answer, Failure};
use crate::session::Session;
use crate::{json, text};

pub(crate) fn run(session: &Session, which: &Which, html: bool) -> Result<Answer, Failure> {
    let asked = session.ask(which)?;
    let trade = Trade::built_in();
    let standing = standing(&asked.diary, trade, asked.knowledge);
    if session.json {
        let id = asked.record.id.to_string();
        answer!("{:#}", json::standing(&asked.record.name, &id, &standing, &session.locale, trade));
    } else if html {
        let name = &asked.record.name;
        answer!("{}", web::standing_page(name, &standing, session.locale, trade, &asked.zone));
    } else {
        crate::out::print(format_args!(
            "{}",
            text::standing(&asked.record.name, &standing, &session.locale, trade, &asked.zone)
        ));
    }
    Ok(if standing.overall.state == State::Released { Answer::Yes } else { Answer::No })
}
