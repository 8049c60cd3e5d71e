//! Single calculations without a slab: the list of them, and each with its form and its answer.
//!
//! What was typed stands in the address, so that an answer can be sent to somebody else; the units in
//! which bare numbers were meant stand there too. A calculation that takes a file sends its form the
//! other way, and is led back to such an address when no file came with it.

use std::sync::Arc;

use askama::Template;
use axum::Router;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use calculators::{Calculation, Calculator, Files, NoFiles, Understood, Uploads};
use form_schema::{Field, FormData, InputKind};
use localization::{Locale, UnitSystem};
use trade_facts::Trade;

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

/// The addresses of all calculations with their names.
pub(super) fn addresses(locale: Locale) -> impl Iterator<Item = (String, String)> {
    calculators::calculators().iter().map(move |sum| (format!("/sums/{}", sum.id()), sum.title(locale)))
}

#[derive(Template)]
#[template(path = "sums.html")]
struct List {
    frame: Frame,
    ways: Vec<(NavLink, String)>,
}

fn list(context: &RequestContext) -> Answer {
    let locale = context.locale();
    let ways = calculators::calculators().iter().map(|sum| {
        let way = NavLink { href: format!("/sums/{}", sum.id()), label: sum.title(locale), here: false };
        (way, sum.about(locale))
    });
    let frame = context.frame(locale.message("sums-title", &[]));
    Ok(show(&List { ways: ways.collect(), frame }))
}

/// A field as the template draws it.
struct Input {
    id: &'static str,
    label: String,
    value: String,
    unit: &'static str,
    input_mode: &'static str,
    example: &'static str,
    usual: Option<String>,
    /// Which other fields it excludes or needs, in words.
    beside: Vec<String>,
    choices: Vec<Choice>,
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

/// What is wrong, each with the field that the form has for it.
type Refused = Vec<(Option<String>, String)>;

#[derive(Template)]
#[template(path = "sum.html")]
struct Page {
    frame: Frame,
    path: String,
    title: String,
    about: String,
    unit_system: &'static str,
    /// Whether something was to be worked out.
    asked: bool,
    answered: Option<Answered>,
    /// What is wrong and with which field; no field when it is the whole of it.
    refused: Refused,
    refused_notes: Vec<String>,
    main: Vec<Input>,
    more: Vec<Input>,
    more_open: bool,
    takes_file: bool,
    /// A file was sent and its form comes back: it has to be chosen again.
    lost_file: bool,
    example: String,
}

fn sum_of(context: &RequestContext) -> Result<&'static Calculator, PageError> {
    calculators::calculator(context.part("sum")).ok_or(PageError::NotFound)
}

/// The texts of the calculator's own fields: nothing else in an address is of this calculation.
fn typed_into(of: &Calculator, all: &FormData) -> FormData {
    let texts = |field: &Field| {
        let name = field.name;
        all.get(name).iter().map(move |text| (name, text.clone()))
    };
    of.form.fields.iter().flat_map(texts).collect()
}

/// The address that has an answer for what was typed.
fn address(of: &Calculator, typed: &FormData, unit_system: UnitSystem) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    for (field, texts) in typed.iter() {
        for text in texts.iter().filter(|text| !text.trim().is_empty()) {
            query.append_pair(field, text);
        }
    }
    format!("/sums/{}?{}", of.id(), query.append_pair(MEASURE, unit_system.name()).finish())
}

/// The field that a file is chosen in.
fn file_field(of: &Calculator) -> Option<&'static str> {
    of.form.fields.iter().find(|field| field.input == InputKind::File).map(|field| field.name)
}

fn one(context: &RequestContext) -> Answer {
    let of = sum_of(context)?;
    let typed = typed_into(of, &context.query);
    let asked = typed.iter().next().is_some() || context.query.first(MEASURE).is_some();
    answer(context, of, &context.query, &typed, asked.then_some(&NoFiles as &dyn Files))
}

fn sent(context: &RequestContext, posted: &Posted) -> Answer {
    let of = sum_of(context)?;
    let mut typed = typed_into(of, &posted.typed);
    // The name a sender gave serves to tell files apart, and is told in what was noticed; no path is made of it.
    let files: Vec<(&str, &[u8])> = posted
        .files
        .iter()
        .filter(|file| file_field(of) == Some(file.field.as_str()))
        .map(|file| (file.name.as_str(), &file.bytes[..]))
        .collect();
    let (Some(field), Some((name, _))) = (file_field(of), files.first()) else {
        let unit_system = measure_of(&posted.typed, context.locale());
        return Ok(Redirect::to(&address(of, &typed, unit_system)).into_response());
    };
    if files.iter().any(|(_, bytes)| bytes.len() > MAX_BYTES) {
        return Err(PageError::TooLarge);
    }
    typed.set(field, *name);
    files[1..].iter().for_each(|(name, _)| typed.push(field, *name));
    answer(context, of, &posted.typed, &typed, Some(&Uploads(&files)))
}

fn measure_of(typed: &FormData, locale: Locale) -> UnitSystem {
    typed.first(MEASURE).and_then(|text| text.parse().ok()).unwrap_or(locale.unit_system)
}

/// The page: a blank form when nothing was asked, else with the answer or what is wrong.
fn answer(
    context: &RequestContext,
    of: &'static Calculator,
    all: &FormData,
    typed: &FormData,
    asked: Option<&dyn Files>,
) -> Answer {
    let locale = context.locale();
    let meant = measure_of(all, locale);
    let (answered, error) = match asked.map(|files| of.calculate(typed, Some(meant), files)) {
        Some(Ok(found)) => (Some(answered(&found, locale)), None),
        Some(Err(error)) => (None, Some(error)),
        None => (None, None),
    };
    let problems = error.iter().flat_map(|error| error.problems(locale));
    let refused: Refused = problems.map(|(field, said)| (field.map(str::to_owned), said)).collect();
    let of_field = |field: &'static Field| input(of, field, typed, meant, &refused, locale);
    let (more, main): (Vec<&Field>, Vec<&Field>) = of.form.fields.iter().partition(|field| field.hints.more);
    let main = main.into_iter().map(of_field).collect();
    let more: Vec<Input> = more.into_iter().map(of_field).collect();
    let title = of.title(locale);
    let page = Page {
        frame: context.frame(title.clone()),
        asked: asked.is_some(),
        path: format!("/sums/{}", of.id()),
        title,
        about: of.about(locale),
        unit_system: locale.unit_system.name(),
        more_open: more.iter().any(|input| !input.value.is_empty() || input.mistake.is_some()),
        main,
        more,
        refused_notes: error.map(|error| error.notes).unwrap_or_default(),
        answered,
        takes_file: file_field(of).is_some(),
        lost_file: file_field(of).is_some_and(|field| typed.answer(field).is_some()),
        example: address(of, &of.filled(locale.unit_system), locale.unit_system),
        refused,
    };
    let status = if page.refused.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    Ok((status, show(&page)).into_response())
}

fn answered(sum: &Calculation, locale: Locale) -> Answered {
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

/// A text as its box shows it: a bare number that was meant in other units than the reader's with its unit, and
/// without the unit that stands beside the box.
fn in_box(field: &Field, text: &str, meant: UnitSystem, reader: UnitSystem) -> String {
    let InputKind::Quantity(asked) = field.input else { return text.to_owned() };
    let whole = asked.read(text, Some(meant)).unwrap_or_else(|_| text.to_owned());
    let unit = Some(asked.unit(reader)).filter(|unit| !unit.is_empty());
    let bare = unit.and_then(|unit| whole.strip_suffix(unit)).map(str::trim_end);
    let same = bare.filter(|bare| asked.read(bare, Some(reader)).as_ref() == Ok(&whole));
    same.map_or_else(|| whole.clone(), str::to_owned)
}

fn choices(field: &Field, value: &str, locale: Locale) -> Vec<Choice> {
    // Few zones are offered of all that are known: it stays a text.
    if field.input == InputKind::TimeZone {
        return Vec::new();
    }
    let offered = field.choices(Trade::built_in()).into_iter().map(|choice| Choice {
        label: calculators::choice_label(field, choice, locale),
        chosen: choice == value,
        value: choice.to_owned(),
    });
    let mut choices: Vec<Choice> = offered.collect();
    if !choices.is_empty() && !field.required() {
        let usual = calculators::usual_text(field, locale.unit_system).is_some();
        let label = locale.message(if usual { "sums-usual-choice" } else { "not-said" }, &[]);
        choices.push(Choice { value: String::new(), label, chosen: value.is_empty() });
    }
    // A choice that is not offered was typed into the address: it is shown as it came, to be mended.
    if !choices.is_empty() && !choices.iter().any(|choice| choice.chosen) {
        choices.push(Choice { value: value.to_owned(), label: value.to_owned(), chosen: true });
    }
    choices
}

fn input(
    of: &Calculator,
    field: &'static Field,
    typed: &FormData,
    meant: UnitSystem,
    refused: &Refused,
    locale: Locale,
) -> Input {
    let value = match field.input {
        InputKind::Texts => typed.get(field.name).join("\n"),
        InputKind::File => String::new(),
        _ => in_box(field, typed.answer(field.name).unwrap_or_default(), meant, locale.unit_system),
    };
    let unit = field.unit(locale.unit_system);
    let example = field.example(locale.unit_system);
    let names = |fields: Vec<&Field>| {
        let labels: Vec<String> = fields.into_iter().map(|other| calculators::label(other, locale)).collect();
        (!labels.is_empty()).then(|| labels.join("; "))
    };
    let instead = names(of.form.excluded_by(field.name));
    let instead = instead.map(|names| locale.message("sums-instead", &[("names", names.into())]));
    let needs = names(of.form.needed_by(field.name));
    let needs = needs.map(|names| locale.message("sums-needs", &[("names", names.into())]));
    Input {
        id: field.name,
        label: calculators::label(field, locale),
        choices: choices(field, &value, locale),
        value,
        unit,
        input_mode: field.input_mode(),
        // The unit stands beside the box already.
        example: example.strip_suffix(unit).unwrap_or(example).trim_end(),
        usual: calculators::usual(field, locale),
        beside: instead.into_iter().chain(needs).collect(),
        required: field.required(),
        optional: !of.form.needed(field),
        lines: field.input == InputKind::Texts,
        file: field.input == InputKind::File,
        mistake: refused.iter().find(|(of, _)| of.as_deref() == Some(field.name)).map(|(_, said)| said.clone()),
    }
}
