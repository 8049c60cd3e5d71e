//! Trade words in English and Spanish, from either side.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use localization::{Arg, Lang, Locale};
use trade_facts::{Grade, Record, Term, Trade};

use crate::app::App;
use crate::context::{Answer, RequestContext, page};
use crate::frame::{Frame, show};
use crate::texts::{holds, plain};
use crate::visitor::Permission;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new().route("/glossary", page(Permission::Read, shown))
}

/// A word with what it is called on the other side.
struct Word {
    id: String,
    from: String,
    to: String,
    note: Option<String>,
    /// Its grade, where it is not that of the whole list.
    grade: Option<String>,
    source: String,
}

struct Letter {
    letter: String,
    words: Vec<Word>,
}

#[derive(Template)]
#[template(path = "glossary.html")]
struct Page {
    frame: Frame,
    from: Lang,
    to: Lang,
    search: String,
    counted: String,
    letters: Vec<Letter>,
    /// How sure the list is where nothing else is said.
    grade: String,
    other_way: String,
}

impl Page {
    fn is_from_spanish(&self) -> bool {
        self.from == Lang::Es
    }
}

/// The letter a word is found under: accents make no difference, Ñ is its own.
fn letter_of(word: &str) -> String {
    let first = word.chars().find(|c| c.is_alphanumeric()).unwrap_or('#');
    match first {
        'ñ' | 'Ñ' => "Ñ".to_owned(),
        c if c.is_ascii_digit() => "0–9".to_owned(),
        c => plain(&c.to_string()).to_uppercase(),
    }
}

fn shown(context: &RequestContext) -> Answer {
    let (locale, trade) = (context.locale(), Trade::built_in());
    let from = context.query.first("from").and_then(|text| text.parse().ok()).unwrap_or(locale.lang);
    let search = context.query.answer("q").unwrap_or_default().to_owned();
    let to = if from == Lang::En { Lang::Es } else { Lang::En };
    let sides = |term: &Term| [from, to].map(|lang| Locale { lang, ..locale }.text_of(term, "word"));
    // Said once where it is true of most.
    let graded = |grade: Grade| trade.glossary().filter(|term| term.grade == grade).count();
    let usual = Grade::ALL.into_iter().max_by_key(|grade| graded(*grade)).unwrap_or(Grade::CommonPractice);
    let mut found: Vec<Word> = trade
        .glossary()
        .map(|term| (term, sides(term)))
        .filter(|(term, [from, to])| holds(&search, &[from, to, term.note.as_deref().unwrap_or_default()]))
        .map(|(term, [from, to])| {
            let grade = trade.grade_to_show(&term.citation());
            Word {
                id: term.id.clone(),
                from,
                to,
                note: Some(locale.text_of(term, "note")).filter(|note| !note.is_empty()),
                grade: (grade != usual).then(|| locale.grade(grade)),
                source: if term.source.is_empty() { String::new() } else { locale.cite(trade, &term.citation()) },
            }
        })
        .collect();
    // Ñ follows N; other accents do not count.
    found.sort_by_cached_key(|word| plain(&word.from.replace('ñ', "n~").replace('Ñ', "N~")));
    let counted = locale.message("glossary-count", &[("count", Arg::Number(found.len() as f64))]);
    let mut letters: Vec<Letter> = Vec::new();
    for word in found {
        let letter = letter_of(&word.from);
        match letters.last_mut() {
            Some(last) if last.letter == letter => last.words.push(word),
            _ => letters.push(Letter { letter, words: vec![word] }),
        }
    }
    let mut other_way = form_urlencoded::Serializer::new(String::new());
    other_way.append_pair("from", to.name());
    if !search.is_empty() {
        other_way.append_pair("q", &search);
    }
    let frame = context.frame(locale.message("glossary-title", &[]));
    Ok(show(&Page {
        frame,
        from,
        to,
        search,
        counted,
        letters,
        grade: locale.grade(usual),
        other_way: format!("/glossary?{}", other_way.finish()),
    }))
}
