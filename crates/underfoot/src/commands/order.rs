//! What to buy.

use crate::out::answer;
use slab_answers::order::order;
use slab_diary::fold;
use trade_facts::Trade;

use crate::cli::Which;
use crate::failure::{Answer, Failure};
use crate::session::Session;
use crate::{json, text};

pub(crate) fn run(session: &Session, which: &Which) -> Result<Answer, Failure> {
    let asked = session.ask(which)?;
    let slab = fold(&asked.diary, asked.knowledge);
    let order = order(&slab, Trade::built_in()).map_err(Failure::data)?;
    if session.json {
        let id = asked.record.id.to_string();
        answer!("{:#}", json::order(&asked.record.name, &id, asked.knowledge.at, &order, &session.locale));
    } else {
        crate::out::print(format_args!("{}", text::order(&asked.record.name, &order, &session.locale)));
    }
    Ok(Answer::Yes)
}
