//! From pour to hand-over, down a phone's screen: what happened, today, and when the rest is likely.

mod draw;
mod scale;

use jiff::civil::Date;

use crate::day::{day, day_year};
use crate::look::{Drawing, Look, Table};

/// What the time line shows.
#[derive(Debug, Clone, PartialEq)]
pub struct TimeLine {
    /// Title, reader, prefix.
    pub look: Look,
    /// Today.
    pub today: Date,
    /// What happened, in any order; of one day in the order given.
    pub happened: Vec<Happened>,
    /// Days that the calendar sets, such as the 28th after the pour.
    pub milestones: Vec<Milestone>,
    /// When the rest is likely.
    pub forecasts: Vec<ForecastSpan>,
}

/// Something that happened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Happened {
    /// On which day.
    pub on: Date,
    /// What, in the reader's language.
    pub label: String,
    /// It went against the work: an incident, a hold.
    pub trouble: bool,
    /// Becomes `data-item`, such as the entry's id.
    pub id: Option<String>,
}

/// A day that the calendar sets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Milestone {
    /// The day.
    pub on: Date,
    /// Its name, in the reader's language.
    pub label: String,
}

/// When something is likely.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ForecastSpan {
    /// What, in the reader's language.
    pub label: String,
    /// One in ten by then.
    pub p10: Date,
    /// Half by then; `None` when that is past the horizon.
    pub p50: Option<Date>,
    /// Nine in ten by then; `None` when that is past the horizon: the span is drawn open to it.
    pub p90: Option<Date>,
    /// How far the forecast looks.
    pub horizon: Date,
}

impl ForecastSpan {
    /// Where the drawn span ends.
    fn end(&self) -> Date {
        self.p90.unwrap_or(self.horizon).max(self.p10)
    }

    /// The day its label stands at.
    fn middle(&self) -> Date {
        self.p50.unwrap_or(self.p10).clamp(self.p10, self.end())
    }
}

/// What a row of the time line is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum What {
    Happened,
    Trouble,
    Milestone,
    Today,
    /// Of the forecast at this index.
    Forecast(usize),
}

/// One row: a day and what belongs to it.
#[derive(Debug, Clone)]
struct Row {
    on: Date,
    what: What,
    label: String,
    /// A second text in small letters; may be empty.
    small: String,
    id: Option<String>,
}

/// Draws the time line; as tall as its rows need, as wide as its look.
#[must_use]
pub fn time_line(line: &TimeLine) -> Drawing {
    let rows = rows(line);
    let svg = draw::draw(line, &rows);
    let locale = line.look.locale;
    let head = ["pic-date", "pic-what"].map(|k| locale.message(k, &[])).to_vec();
    let table = Table { head, rows: rows.iter().map(|r| vec![day_year(locale, r.on), in_words(line, r)]).collect() };
    let sentences = rows
        .iter()
        .map(|r| {
            let args = [("name", day_year(locale, r.on).into()), ("value", in_words(line, r).into())];
            locale.message("pic-named", &args)
        })
        .collect();
    Drawing { svg, sentences, table }
}

/// A row without its drawing: the kind that the shape shows is said.
fn in_words(line: &TimeLine, row: &Row) -> String {
    let locale = line.look.locale;
    let kind = match row.what {
        What::Happened | What::Today => return row.label.clone(),
        What::Trouble => "pic-line-trouble",
        What::Milestone => "pic-line-milestone",
        What::Forecast(_) => {
            return locale
                .message("pic-named", &[("name", row.label.as_str().into()), ("value", row.small.as_str().into())]);
        }
    };
    locale.message("pic-named", &[("name", locale.message(kind, &[]).into()), ("value", row.label.as_str().into())])
}

/// All rows in order of their days.
fn rows(line: &TimeLine) -> Vec<Row> {
    let locale = line.look.locale;
    let plain = |on, what, label: &str, id| Row { on, what, label: label.to_owned(), small: String::new(), id };
    let mut rows: Vec<Row> = line
        .happened
        .iter()
        .map(|h| plain(h.on, if h.trouble { What::Trouble } else { What::Happened }, &h.label, h.id.clone()))
        .collect();
    rows.extend(line.milestones.iter().map(|m| plain(m.on, What::Milestone, &m.label, None)));
    rows.push(plain(line.today, What::Today, &locale.message("pic-today", &[]), None));
    rows.extend(line.forecasts.iter().enumerate().map(|(at, f)| Row {
        on: f.middle(),
        what: What::Forecast(at),
        label: f.label.clone(),
        small: span_words(line, f),
        id: None,
    }));
    // Stable: what is of one day keeps its order, today after what happened on it.
    rows.sort_by_key(|r| r.on);
    rows
}

fn span_words(line: &TimeLine, span: &ForecastSpan) -> String {
    let locale = line.look.locale;
    let rest = match (span.p50, span.p90) {
        (Some(middle), Some(late)) => {
            locale.message("pic-line-by", &[("middle", day(locale, middle).into()), ("late", day(locale, late).into())])
        }
        (Some(middle), None) => locale.message("pic-line-by-open", &[("middle", day(locale, middle).into())]),
        (None, _) => locale.message("pic-line-open", &[]),
    };
    locale.message("pic-line-span", &[("early", day(locale, span.p10).into()), ("rest", rest.into())])
}
