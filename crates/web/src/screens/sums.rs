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
use calculators::{Files, Keyboard, NoFiles, Sum, SumError, SumField, SumForm, Understood, Uploads};
use forms::FormData;
use localization::{Locale, UnitSystem};

use crate::app::App;
use crate::context::{Answer, Posted, RequestContext, form, page};
use crate::control::Choice;
use crate::frame::{Frame, NavLink, show};
use crate::page_error::PageError;
use crate::visitor::Permission;

/// The units in which bare numbers were meant.
const MEASURE: &str = "measure";
/// Files larger than this are no weather or temperature record.
const MAX_BYTES: usize = 20 * 1024 * 1024;

pub(super) fn routes() -> Router<Arc<App>> {
    Router::new()
        .route("/sums", page(Permission::Read, list))
        .route("/sums/{sum}", page(Permission::Read, one).merge(form(Permission::Read, sent)))
}

#[derive(Template)]
#[template(path = "sums.html")]
struct List {
    frame: Frame,
    ways: Vec<(NavLink, String)>,
}

fn list(context: &RequestContext) -> Answer {
    let locale = context.locale();
    let ways = calculators::forms().iter().map(|sum| {
        let way = NavLink { href: format!("/sums/{}", sum.id), label: sum.title(locale), here: false };
        (way, sum.about(locale))
    });
    let mut frame = context.frame(locale.message("sums-title", &[]));
    frame.keep = "[\"/sums\"]".to_owned();
    Ok(show(&List { ways: ways.collect(), frame }))
}

/// Fields that are not demanded by themselves and yet needed: without one of them the example has no
/// answer. A page must not call them optional.
fn is_needed(form: &SumForm, field: &SumField) -> bool {
    static NEEDED: LazyLock<BTreeSet<(String, String)>> = LazyLock::new(|| {
        let mut needed = BTreeSet::new();
        for form in calculators::forms() {
            let example = form.example(UnitSystem::Imperial);
            for left_out in &example {
                let rest: Vec<_> = example.iter().filter(|given| *given != left_out).cloned().collect();
                if calculators::ask(&form.id, &rest, &NoFiles).is_err() {
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
    first: Option<calculators::Answered>,
    rest: Vec<calculators::Answered>,
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
    unit_system: &'static str,
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

fn sum_of(context: &RequestContext) -> Result<&'static SumForm, PageError> {
    calculators::form(context.part("sum")).ok_or(PageError::NotFound)
}

/// The texts of the form's own fields: nothing else in an address is of this calculation. A box of
/// several lines holds several values.
fn typed_into(form: &SumForm, typed: &FormData) -> Vec<(String, Vec<String>)> {
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
fn address(form: &SumForm, typed: &[(String, Vec<String>)], unit_system: UnitSystem) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    for (field, texts) in typed {
        for text in texts.iter().filter(|text| !text.trim().is_empty()) {
            query.append_pair(field, text);
        }
    }
    format!("/sums/{}?{}", form.id, query.append_pair(MEASURE, unit_system.name()).finish())
}

fn one(context: &RequestContext) -> Answer {
    let form = sum_of(context)?;
    let typed = typed_into(form, &context.query);
    let asked = !typed.is_empty() || context.query.first(MEASURE).is_some();
    answer(context, form, &context.query, typed, asked.then_some(&NoFiles as &dyn Files))
}

fn sent(context: &RequestContext, posted: &Posted) -> Answer {
    let form = sum_of(context)?;
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
        let unit_system = measure_of(&posted.typed, context.locale());
        return Ok(Redirect::to(&address(form, &typed, unit_system)).into_response());
    }
    if files.iter().any(|(_, bytes)| bytes.len() > MAX_BYTES) {
        return Err(PageError::TooLarge);
    }
    typed.retain(|(id, _)| !taken(id));
    typed.extend(posted.files.iter().filter(|f| taken(&f.field)).map(|f| (f.field.clone(), vec![f.name.clone()])));
    answer(context, form, &posted.typed, typed, Some(&Uploads(&files)))
}

fn measure_of(typed: &FormData, locale: Locale) -> UnitSystem {
    typed.first(MEASURE).and_then(|text| text.parse().ok()).unwrap_or(locale.unit_system)
}

/// The page: a blank form when nothing was asked, else with the answer or what is wrong.
fn answer(
    context: &RequestContext,
    form: &'static SumForm,
    all: &FormData,
    typed: Vec<(String, Vec<String>)>,
    asked: Option<&dyn Files>,
) -> Answer {
    let locale = context.locale();
    let meant = measure_of(all, locale);
    let complete = calculators::with_units(&form.id, &typed, meant);
    let done = asked.map(|files| calculators::ask(&form.id, &complete, files));
    // FormData in other units than the reader's, a bare number keeps its own unit.
    let shown = if meant == locale.unit_system { &typed } else { &complete };
    let (answered, error) = match done {
        Some(Ok(sum)) => (Some(answered(&sum, locale)), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let said = error.as_ref().map(|error| (field_of(form, error), error.plain(locale)));
    let of_field = |field: &SumField| input(form, field, shown, said.as_ref(), locale);
    let (main, more): (Vec<&SumField>, Vec<&SumField>) = form.fields.iter().partition(|field| field.main);
    let main = main.into_iter().map(of_field).collect();
    let more: Vec<Input> = more.into_iter().map(of_field).collect();
    let title = form.title(locale);
    let mut frame = context.frame(title.clone());
    frame.keep = format!("[\"/sums\",\"/sums/{}\"]", form.id);
    let page = Page {
        frame,
        path: format!("/sums/{}", form.id),
        title,
        about: form.about(locale),
        unit_system: locale.unit_system.name(),
        more_open: more.iter().any(|input| !input.value.is_empty() || input.mistake.is_some()),
        main,
        more,
        refused_notes: error.as_ref().map(|error| error.notes.clone()).unwrap_or_default(),
        answered,
        takes_file: form.fields.iter().any(|field| field.takes_file),
        lost_file: typed.iter().any(|(id, _)| form.field(id).is_some_and(|field| field.takes_file)),
        example: address(form, &form.example(locale.unit_system), locale.unit_system),
        refused: said,
    };
    let status = if page.refused.is_some() { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    Ok((status, show(&page)).into_response())
}

/// The field that a refusal is about, when the form has it.
fn field_of(form: &SumForm, error: &SumError) -> Option<String> {
    error.field.clone().filter(|id| form.field(id).is_some())
}

fn answered(sum: &Sum, locale: Locale) -> Answered {
    let mut all = sum.answers(locale).into_iter();
    let formula = sum.formula(locale);
    let rests_on = std::iter::once(formula).chain(sum.also(locale)).map(|on| (on.formula, on.cited));
    Answered {
        first: all.next(),
        rest: all.collect(),
        cautions: sum.cautions(locale).into_iter().map(|caution| caution.text).collect(),
        inputs: sum.inputs(locale),
        rests_on: rests_on.collect(),
        notes: sum.notes().to_vec(),
    }
}

/// The text without the unit that stands beside its box, where the bare number means the same.
fn without_unit(form: &SumForm, field: &SumField, text: String, unit_system: UnitSystem) -> String {
    let bare = field.unit(unit_system).and_then(|unit| text.strip_suffix(unit)).map(str::trim_end);
    let Some(bare) = bare else { return text };
    let again = calculators::with_units(&form.id, &[(field.id.clone(), vec![bare.to_owned()])], unit_system);
    if again.iter().any(|(_, texts)| texts.contains(&text)) { bare.to_owned() } else { text }
}

/// What an empty box means: a choice by its name.
fn usual(field: &SumField, locale: Locale) -> Option<String> {
    let usual = field.usual(locale)?;
    Some(if field.choices.contains(&usual) { field.choice_label(&usual, locale) } else { usual })
}

fn input(
    form: &SumForm,
    field: &SumField,
    typed: &[(String, Vec<String>)],
    refused: Option<&(Option<String>, String)>,
    locale: Locale,
) -> Input {
    let texts = typed.iter().find(|(id, _)| *id == field.id).map(|(_, texts)| texts.as_slice()).unwrap_or_default();
    let value = if field.repeatable { texts.join("\n") } else { texts.first().cloned().unwrap_or_default() };
    let unit = field.unit(locale.unit_system);
    let value = without_unit(form, field, value, locale.unit_system);
    let example = field.example(locale.unit_system);
    // The unit stands beside the box already.
    let example = unit.and_then(|unit| example.strip_suffix(unit)).unwrap_or(example).trim_end();
    let mut choices: Vec<Choice> = field
        .choices
        .iter()
        .map(|choice| Choice {
            label: field.choice_label(choice, locale),
            chosen: *choice == value,
            value: choice.clone(),
        })
        .collect();
    if !choices.is_empty() && !field.required {
        let none = field.usual_text(locale.unit_system).is_none();
        let label = locale.message(if none { "not-said" } else { "sums-usual-choice" }, &[]);
        choices.push(Choice { value: String::new(), label, chosen: value.is_empty() });
    }
    // A choice that is not offered was typed into the address: it is shown as it came, to be mended.
    if !choices.is_empty() && !choices.iter().any(|choice| choice.chosen) {
        choices.push(Choice { value: value.clone(), label: value.clone(), chosen: true });
    }
    let names = |ids: &[String]| {
        let labels: Vec<String> = ids.iter().filter_map(|id| form.field(id)).map(|other| other.label(locale)).collect();
        (!labels.is_empty()).then(|| labels.join("; "))
    };
    let instead = names(&field.conflicts).map(|names| locale.message("sums-instead", &[("names", names.into())]));
    let needs = names(&field.requires).map(|names| locale.message("sums-needs", &[("names", names.into())]));
    Input {
        id: field.id.clone(),
        label: field.label(locale),
        value: if field.takes_file { String::new() } else { value },
        unit: unit.map(str::to_owned),
        example: example.to_owned(),
        usual: usual(field, locale),
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
