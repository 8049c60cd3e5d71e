//! A refusal: which field, what was wrong, what would be accepted.

use std::fmt;
use std::io;

use form_schema::{Field, FieldError, FieldErrorKind};
use localization::{Arg, Locale};
use serde_json::{Map, Value};
use trade_facts::Trade;

use crate::calculator::{Calculator, choice_label};
use crate::given::is_value;
use crate::refusals::Refused;

/// Whose fault it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ErrorKind {
    /// The question was put wrongly: something is missing, doubled or cannot be read (exit code 2).
    Use,
    /// The question is clear and the value or file cannot be (exit code 3).
    Data,
}

/// A calculation that was refused.
#[derive(Debug)]
pub struct CalculatorError {
    /// Whose fault it is.
    pub kind: ErrorKind,
    /// What was assumed or left out of a file that was read before the refusal. English.
    pub notes: Vec<String>,
    calculator: Option<&'static Calculator>,
    problems: Vec<Problem>,
}

/// One thing that is wrong.
#[derive(Debug)]
struct Problem {
    field: Option<String>,
    typed: String,
    what: What,
    /// What the core says, in English with its figures.
    said: Option<String>,
}

/// What was wrong, to be said in any language.
#[derive(Debug)]
pub(crate) enum What {
    /// What every form checks.
    Field(FieldErrorKind),
    /// A message about the field, and what would be accepted.
    Accepts(&'static str, Accepted),
    /// A value that the formulas refuse; the first of these fields that was given is meant.
    Beyond(&'static [&'static str], Accepted),
    /// The file under a name, and what its reader says in English.
    File(&'static str, String, String),
    /// A whole sentence of its own, about this field.
    Sentence(&'static str, Option<&'static str>),
    /// Only what the library says, in English.
    Said(String),
}

/// What would be accepted, as a message of both languages with what is filled in.
#[derive(Debug)]
pub(crate) struct Accepted {
    key: &'static str,
    with: Vec<(&'static str, String)>,
}

impl From<&'static str> for Accepted {
    fn from(key: &'static str) -> Self {
        Self::new(key)
    }
}

impl Accepted {
    pub(crate) fn new(key: &'static str) -> Self {
        Self { key, with: Vec::new() }
    }

    /// With something filled in.
    pub(crate) fn with(mut self, name: &'static str, text: impl Into<String>) -> Self {
        self.with.push((name, text.into()));
        self
    }

    fn message(&self, locale: Locale) -> String {
        let with = self.with.iter().map(|(name, text)| (*name, Arg::from(text.as_str())));
        locale.message(self.key, &with.collect::<Vec<_>>())
    }
}

impl CalculatorError {
    fn new(kind: ErrorKind, field: Option<&str>, typed: &str, what: What) -> Self {
        let typed = typed.trim().to_owned();
        let problem = Problem { field: field.map(str::to_owned), typed, what, said: None };
        Self { kind, notes: Vec::new(), calculator: None, problems: vec![problem] }
    }

    /// What the form refuses.
    pub(crate) fn fields(calculator: &'static Calculator, errors: Vec<FieldError>) -> Self {
        let kind = if errors.iter().all(|error| is_value(&error.what)) { ErrorKind::Data } else { ErrorKind::Use };
        let problem = |error: FieldError| Problem {
            field: Some(error.field),
            typed: error.typed,
            what: What::Field(error.what),
            said: None,
        };
        let problems = errors.into_iter().map(problem).collect();
        Self { kind, notes: Vec::new(), calculator: Some(calculator), problems }
    }

    /// There is no such calculator.
    pub(crate) fn unknown(id: &str) -> Self {
        Self::new(ErrorKind::Use, None, id, What::Sentence("sum-refused-no-such-sum", None))
    }

    /// A field that this question needs.
    pub(crate) fn missing(field: &'static str) -> Self {
        Self::new(ErrorKind::Use, Some(field), "", What::Field(FieldErrorKind::Missing))
    }

    /// The same, where it is not for its example to say what would be accepted.
    pub(crate) fn missing_but(field: &'static str, accepted: &'static str) -> Self {
        Self::new(ErrorKind::Use, Some(field), "", What::Accepts("sum-refused-missing", accepted.into()))
    }

    /// A text that says nothing usable.
    pub(crate) fn unclear(field: &'static str, typed: &str, accepted: impl Into<Accepted>) -> Self {
        Self::new(ErrorKind::Use, Some(field), typed, What::Accepts("sum-refused-unclear", accepted.into()))
    }

    /// A value that cannot be.
    pub(crate) fn impossible(field: &'static str, typed: &str, accepted: impl Into<Accepted>) -> Self {
        Self::new(ErrorKind::Data, Some(field), typed, What::Accepts("sum-refused-impossible", accepted.into()))
    }

    /// Only what a library says of a field.
    pub(crate) fn said(field: &'static str, error: &dyn fmt::Display) -> Self {
        Self::new(ErrorKind::Use, Some(field), "", What::Said(error.to_string()))
    }

    /// No file goes by the name.
    pub(crate) fn no_file(field: &'static str, path: &str, name: &str, error: &io::Error) -> Self {
        let what = What::File("sum-refused-no-file", name.to_owned(), error.to_string());
        let said = format!("file \"{path}\": {error}; accepted: a file that can be read or written there");
        Self::new(ErrorKind::Data, Some(field), "", what).saying(said)
    }

    /// A file whose content is no use.
    pub(crate) fn content(name: &str, said: &str) -> Self {
        let what = What::File("sum-refused-content", name.to_owned(), said.to_owned());
        Self::new(ErrorKind::Data, Some("file"), "", what).saying(format!("file \"{name}\": {said}"))
    }

    /// Refused by a formula or type of the core.
    #[expect(clippy::needless_pass_by_value, reason = "for use in map_err")]
    pub(crate) fn core(error: impl Refused) -> Self {
        let what = error.what();
        let field = if let What::Sentence(_, field) = what { field } else { None };
        Self::new(ErrorKind::Data, field, "", what).saying(error.to_string())
    }

    fn saying(mut self, said: String) -> Self {
        self.problems.iter_mut().for_each(|problem| problem.said = Some(said.clone()));
        self
    }

    /// The same refusal of a field that the place of the question knows better.
    pub(crate) fn at(mut self, field: &'static str, typed: &str) -> Self {
        for problem in &mut self.problems {
            (problem.field, problem.typed) = (Some(field.to_owned()), typed.trim().to_owned());
            problem.said = problem.said.take().map(|said| format!("{field} {said}"));
        }
        self
    }

    /// Finds the fields that are meant among those that were given, and what was typed there.
    pub(crate) fn of(mut self, of: &'static Calculator, values: &Map<String, Value>, notes: Vec<String>) -> Self {
        for problem in &mut self.problems {
            if let (What::Beyond(fields, _), None) = (&problem.what, &problem.field) {
                let given = fields.iter().find(|field| values.contains_key(**field)).or(fields.first());
                problem.field = given.filter(|field| of.field(field).is_some()).map(|field| (*field).to_owned());
                let value = problem.field.as_ref().and_then(|field| values.get(field));
                let text = value.map(|value| value.as_str().map_or_else(|| value.to_string(), str::to_owned));
                problem.typed = text.unwrap_or_default();
            }
        }
        Self { calculator: Some(of), notes, ..self }
    }

    /// Each problem: the field to put it beside, when the form has it, and what is wrong in the reader's language,
    /// with examples in the reader's units. What only a library or a file says stays in English inside it.
    #[must_use]
    pub fn problems(&self, locale: Locale) -> Vec<(Option<&str>, String)> {
        let label = |key: fn(&Field) -> &'static str, name: &str| match self.field(name) {
            Some(field) => locale.message(key(field), &[]),
            None => shown(name).to_owned(),
        };
        // Labels of alternatives begin with "or"; inside a sentence the plain names read better.
        let other = |name: &str| label(|field| field.hints.in_answer, name);
        let told = self.problems.iter().map(|problem| {
            let field = problem.field.as_deref().filter(|name| self.field(name).is_some());
            let named = label(|field| field.hints.label, problem.field.as_deref().unwrap_or_default());
            (field, sentence_case(&self.message(problem, locale, named, &other)))
        });
        told.collect()
    }

    /// The field of the first problem, when the form has it.
    #[must_use]
    pub fn field_name(&self) -> Option<&str> {
        self.problems.first()?.field.as_deref().filter(|name| self.field(name).is_some())
    }

    fn field(&self, name: &str) -> Option<&'static Field> {
        self.calculator?.field(name)
    }

    /// What a field takes, by example or by its choices.
    fn accepted(&self, name: &str, locale: Locale) -> String {
        let Some(field) = self.field(name) else { return String::new() };
        if !field.is_choice() {
            return field.example(locale.unit_system).to_owned();
        }
        let choices = field.choices(Trade::built_in()).into_iter();
        choices.map(|choice| choice_label(field, choice, locale)).collect::<Vec<_>>().join(", ")
    }

    fn message(&self, problem: &Problem, locale: Locale, field: String, named: &dyn Fn(&str) -> String) -> String {
        let name = problem.field.as_deref().unwrap_or_default();
        let (field, typed) = (("field", Arg::from(field)), ("typed", Arg::from(shown(&problem.typed))));
        match &problem.what {
            What::Field(FieldErrorKind::Missing) => {
                locale.message("sum-refused-missing", &[field, ("accepted", self.accepted(name, locale).into())])
            }
            What::Field(FieldErrorKind::NoneAnswered(names)) => {
                let others: Vec<String> = names[1..].iter().map(|other| named(other)).collect();
                let accepted = ("accepted", self.accepted(name, locale).into());
                locale.message("sum-refused-none", &[field, accepted, ("others", others.join(", ").into())])
            }
            What::Field(what) => {
                let said = locale.field_error_naming(what, shown(&problem.typed), named);
                locale.message("sum-refused-field", &[field, ("problem", said.into())])
            }
            What::Accepts(key, accepted) => {
                locale.message(key, &[field, typed, ("accepted", accepted.message(locale).into())])
            }
            What::Beyond(_, accepted) => {
                let key = if problem.typed.is_empty() { "sum-refused-beyond" } else { "sum-refused-impossible" };
                locale.message(key, &[field, typed, ("accepted", accepted.message(locale).into())])
            }
            What::File(key, name, said) => {
                locale.message(key, &[("name", shown(name).into()), ("said", said.as_str().into())])
            }
            What::Sentence(key, _) => locale.message(key, &[]),
            What::Said(said) => locale.message("sum-refused-said", &[("said", said.as_str().into())]),
        }
    }
}

/// Enough of a text to know it by.
fn shown(text: &str) -> &str {
    const MOST: usize = 60;
    text.char_indices().nth(MOST).map_or(text, |(end, _)| &text[..end])
}

/// With a capital, unless the word is written as it is: `pH`, `o-xylene`.
pub(crate) fn sentence_case(text: &str) -> String {
    let mut letters = text.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if first.is_lowercase() && (second.is_lowercase() || second == ' ') => {
            first.to_uppercase().chain(letters).collect()
        }
        _ => text.to_owned(),
    }
}

/// The line of the command line: English, with the fields as options.
impl fmt::Display for CalculatorError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let option = |name: &str| match self.calculator {
            Some(calculator) if !calculator.places.contains(&name) => format!("--{}", name.replace('_', "-")),
            _ => name.to_owned(),
        };
        let line = |problem: &Problem| {
            let field = option(problem.field.as_deref().unwrap_or_default());
            problem.said.clone().unwrap_or_else(|| self.message(problem, Locale::default(), field, &option))
        };
        f.write_str(&self.problems.iter().map(line).collect::<Vec<_>>().join("; "))
    }
}

impl std::error::Error for CalculatorError {}
