//! Single calculations without a slab: the list of them, and each with its form and its answer.
//!
//! What was typed stands in the address, so that an answer can be sent to somebody else; the units in
//! which bare numbers were meant stand there too. A calculation that takes a file sends its form the
//! other way, and is led back to such an address when no file came with it.

use std::collections::BTreeSet;
use std::sync::{Arc, LazyLock};

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use forms::Typed;
use sums::{Files, Keyboard, NoFiles, Sum, SumError, SumField, SumForm, Understood, Uploads};
use words::{Measure, Voice};

use crate::app::App;
use crate::ask::{Answer, Ask, Posted, form, page};
use crate::control::Choice;
use crate::frame::{Frame, Way, show};
use crate::trouble::Trouble;
use crate::visitor::May;

/// The units in which bare numbers were meant.
const MEASURE: &str = "measure";
/// Files larger than this are no weather or temperature record.
const MOST_BYTES: usize = 20 * 1024 * 1024;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/sums", page(May::Read, list))
        .route("/sums/{sum}", page(May::Read, one).merge(form(May::Read, sent)))
}

#[derive(Template)]
#[template(path = "sums.html")]
struct List {
    frame: Frame,
    ways: Vec<(Way, String)>,
}

fn list(ask: &Ask) -> Answer {
    let voice = ask.voice();
    let ways = sums::forms().iter().map(|sum| {
        let way = Way { href: format!("/sums/{}", sum.id), label: sum.title(voice), here: false };
        (way, sum.about(voice))
    });
    let mut frame = ask.frame(voice.say("sums-title", &[]));
    frame.keep = "[\"/sums\"]".to_owned();
    Ok(show(&List { ways: ways.collect(), frame }))
}

/// Fields that are not demanded by themselves and yet needed: without one of them the example has no
/// answer. A page must not call them optional.
fn is_needed(form: &SumForm, field: &SumField) -> bool {
    static NEEDED: LazyLock<BTreeSet<(String, String)>> = LazyLock::new(|| {
        let mut needed = BTreeSet::new();
        for form in sums::forms() {
            let example = form.example(Measure::Imperial);
            for left_out in &example {
                let rest: Vec<_> = example.iter().filter(|given| *given != left_out).cloned().collect();
                if sums::ask(&form.id, &rest, &NoFiles).is_err() {
                    needed.insert((form.id.clone(), left_out.0.clone()));
                }
            }
        }
        needed
    });
    field.required || NEEDED.contains(&(form.id.clone(), field.id.clone()))
}

/// A field as the template draws it.
struct Input {
    id: String,
    label: String,
    value: String,
    unit: Option<String>,
    example: String,
    usual: Option<String>,
    /// Which other fields it excludes or needs, in words.
    beside: Vec<String>,
    choices: Vec<Choice>,
    number: bool,
    required: bool,
    /// Whether the page may call it optional.
    optional: bool,
    lines: bool,
    file: bool,
    mistake: Option<String>,
}

/// An answer as the template draws it.
struct Answered {
    /// The first of them, in big.
    first: Option<sums::Answered>,
    rest: Vec<sums::Answered>,
    cautions: Vec<String>,
    inputs: Vec<Understood>,
    rests_on: Vec<(String, String)>,
    notes: Vec<String>,
}

#[derive(Template)]
#[template(path = "sum.html")]
struct Page {
    frame: Frame,
    path: String,
    title: String,
    about: String,
    measure: &'static str,
    answered: Option<Answered>,
    /// What is wrong and with which field; no field when it is the whole of it.
    refused: Option<(Option<String>, String)>,
    refused_notes: Vec<String>,
    main: Vec<Input>,
    more: Vec<Input>,
    more_open: bool,
    takes_file: bool,
    /// A file was sent and its form comes back: it has to be chosen again.
    lost_file: bool,
    example: String,
}

fn sum_of(ask: &Ask) -> Result<&'static SumForm, Trouble> {
    sums::form(ask.part("sum")).ok_or(Trouble::NotFound)
}

/// The texts of the form's own fields: nothing else in an address is of this calculation. A box of
/// several lines holds several values.
fn typed_into(form: &SumForm, typed: &Typed) -> Vec<(String, Vec<String>)> {
    let of_field = |field: &SumField| {
        let all = typed.get(&field.id).iter();
        let texts: Vec<String> = if field.repeatable {
            all.flat_map(|text| text.lines()).map(str::to_owned).collect()
        } else {
            all.cloned().collect()
        };
        (field.id.clone(), texts)
    };
    form.fields.iter().map(of_field).filter(|(_, texts)| !texts.is_empty()).collect()
}

/// The address that has an answer for what was typed.
fn address(form: &SumForm, typed: &[(String, Vec<String>)], measure: Measure) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    for (field, texts) in typed {
        for text in texts.iter().filter(|text| !text.trim().is_empty()) {
            query.append_pair(field, text);
        }
    }
    format!("/sums/{}?{}", form.id, query.append_pair(MEASURE, measure.name()).finish())
}

fn one(ask: &Ask) -> Answer {
    let form = sum_of(ask)?;
    let typed = typed_into(form, &ask.query);
    let asked = !typed.is_empty() || ask.query.first(MEASURE).is_some();
    answer(ask, form, &ask.query, typed, asked.then_some(&NoFiles as &dyn Files))
}

fn sent(ask: &Ask, posted: &Posted) -> Answer {
    let form = sum_of(ask)?;
    let mut typed = typed_into(form, &posted.typed);
    let taken = |id: &str| form.field(id).is_some_and(|field| field.takes_file);
    // The name a sender gave serves to tell files apart, and is told in what was noticed; no path is made of it.
    let files: Vec<(&str, &[u8])> = posted
        .files
        .iter()
        .filter(|file| taken(&file.field))
        .map(|file| (file.name.as_str(), &file.bytes[..]))
        .collect();
    if files.is_empty() {
        let measure = measure_of(&posted.typed, ask.voice());
        return Ok(Redirect::to(&address(form, &typed, measure)).into_response());
    }
    if files.iter().any(|(_, bytes)| bytes.len() > MOST_BYTES) {
        return Err(Trouble::TooLarge);
    }
    typed.retain(|(id, _)| !taken(id));
    typed.extend(posted.files.iter().filter(|f| taken(&f.field)).map(|f| (f.field.clone(), vec![f.name.clone()])));
    answer(ask, form, &posted.typed, typed, Some(&Uploads(&files)))
}

fn measure_of(typed: &Typed, voice: Voice) -> Measure {
    typed.first(MEASURE).and_then(|text| text.parse().ok()).unwrap_or(voice.measure)
}

/// The page: a blank form when nothing was asked, else with the answer or what is wrong.
fn answer(
    ask: &Ask,
    form: &'static SumForm,
    all: &Typed,
    typed: Vec<(String, Vec<String>)>,
    asked: Option<&dyn Files>,
) -> Answer {
    let voice = ask.voice();
    let meant = measure_of(all, voice);
    let complete = sums::with_units(&form.id, &typed, meant);
    let done = asked.map(|files| sums::ask(&form.id, &complete, files));
    // Typed in other units than the reader's, a bare number keeps its own unit.
    let shown = if meant == voice.measure { &typed } else { &complete };
    let (answered, error) = match done {
        Some(Ok(sum)) => (Some(answered(&sum, voice)), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let said = error.as_ref().map(|error| (field_of(form, error), error.plain(voice)));
    let of_field = |field: &SumField| input(form, field, shown, said.as_ref(), voice);
    let (main, more): (Vec<&SumField>, Vec<&SumField>) = form.fields.iter().partition(|field| field.main);
    let main = main.into_iter().map(of_field).collect();
    let more: Vec<Input> = more.into_iter().map(of_field).collect();
    let title = form.title(voice);
    let mut frame = ask.frame(title.clone());
    frame.keep = format!("[\"/sums\",\"/sums/{}\"]", form.id);
    let page = Page {
        frame,
        path: format!("/sums/{}", form.id),
        title,
        about: form.about(voice),
        measure: voice.measure.name(),
        more_open: more.iter().any(|input| !input.value.is_empty() || input.mistake.is_some()),
        main,
        more,
        refused_notes: error.as_ref().map(|error| error.notes.clone()).unwrap_or_default(),
        answered,
        takes_file: form.fields.iter().any(|field| field.takes_file),
        lost_file: typed.iter().any(|(id, _)| form.field(id).is_some_and(|field| field.takes_file)),
        example: address(form, &form.example(voice.measure), voice.measure),
        refused: said,
    };
    let status = if page.refused.is_some() { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    Ok((status, show(&page)).into_response())
}

/// The field that a refusal is about, when the form has it.
fn field_of(form: &SumForm, error: &SumError) -> Option<String> {
    error.field.clone().filter(|id| form.field(id).is_some())
}

fn answered(sum: &Sum, voice: Voice) -> Answered {
    let mut all = sum.answers(voice).into_iter();
    let formula = sum.formula(voice);
    let rests_on = std::iter::once(formula).chain(sum.also(voice)).map(|on| (on.formula, on.cited));
    Answered {
        first: all.next(),
        rest: all.collect(),
        cautions: sum.cautions(voice).into_iter().map(|caution| caution.text).collect(),
        inputs: sum.inputs(voice),
        rests_on: rests_on.collect(),
        notes: sum.notes().to_vec(),
    }
}

/// The text without the unit that stands beside its box, where the bare number means the same.
fn without_unit(form: &SumForm, field: &SumField, text: String, measure: Measure) -> String {
    let bare = field.unit(measure).and_then(|unit| text.strip_suffix(unit)).map(str::trim_end);
    let Some(bare) = bare else { return text };
    let again = sums::with_units(&form.id, &[(field.id.clone(), vec![bare.to_owned()])], measure);
    if again.iter().any(|(_, texts)| texts.contains(&text)) { bare.to_owned() } else { text }
}

/// What an empty box means: a choice by its name.
fn usual(field: &SumField, voice: Voice) -> Option<String> {
    let usual = field.usual(voice)?;
    Some(if field.choices.contains(&usual) { field.choice_label(&usual, voice) } else { usual })
}

fn input(
    form: &SumForm,
    field: &SumField,
    typed: &[(String, Vec<String>)],
    refused: Option<&(Option<String>, String)>,
    voice: Voice,
) -> Input {
    let texts = typed.iter().find(|(id, _)| *id == field.id).map(|(_, texts)| texts.as_slice()).unwrap_or_default();
    let value = if field.repeatable { texts.join("\n") } else { texts.first().cloned().unwrap_or_default() };
    let unit = field.unit(voice.measure);
    let value = without_unit(form, field, value, voice.measure);
    let example = field.example(voice.measure);
    // The unit stands beside the box already.
    let example = unit.and_then(|unit| example.strip_suffix(unit)).unwrap_or(example).trim_end();
    let mut choices: Vec<Choice> = field
        .choices
        .iter()
        .map(|choice| Choice {
            label: field.choice_label(choice, voice),
            chosen: *choice == value,
            value: choice.clone(),
        })
        .collect();
    if !choices.is_empty() && !field.required {
        let none = field.usual_text(voice.measure).is_none();
        let label = voice.say(if none { "not-said" } else { "sums-usual-choice" }, &[]);
        choices.push(Choice { value: String::new(), label, chosen: value.is_empty() });
    }
    // A choice that is not offered was typed into the address: it is shown as it came, to be mended.
    if !choices.is_empty() && !choices.iter().any(|choice| choice.chosen) {
        choices.push(Choice { value: value.clone(), label: value.clone(), chosen: true });
    }
    let names = |ids: &[String]| {
        let labels: Vec<String> = ids.iter().filter_map(|id| form.field(id)).map(|other| other.label(voice)).collect();
        (!labels.is_empty()).then(|| labels.join("; "))
    };
    let instead = names(&field.conflicts).map(|names| voice.say("sums-instead", &[("names", names.into())]));
    let needs = names(&field.requires).map(|names| voice.say("sums-needs", &[("names", names.into())]));
    Input {
        id: field.id.clone(),
        label: field.label(voice),
        value: if field.takes_file { String::new() } else { value },
        unit: unit.map(str::to_owned),
        example: example.to_owned(),
        usual: usual(field, voice),
        beside: instead.into_iter().chain(needs).collect(),
        choices,
        number: field.keyboard == Keyboard::Decimal,
        required: field.required,
        optional: !is_needed(form, field),
        lines: field.repeatable,
        file: field.takes_file,
        mistake: refused.filter(|(id, _)| id.as_ref() == Some(&field.id)).map(|(_, said)| said.clone()),
    }
}
