//! What is wrong with an entry, and what would be accepted: the same sentences for pages and the command line.

use form_schema::{FieldError, FieldErrorKind, QuantityInput, QuantityProblem, Span, TIME_ZONES};
use slab_diary::{BodyError, EntryError, EntryKind, Problem, ProblemKind, TypedWhenError};
use trade_facts::Trade;
use units::{Problem as Unread, QuantityKind};

use crate::entry_text::field_name;
use crate::{Arg, Locale};

impl Locale {
    /// What is wrong with a field and what would be accepted, with an example in the reader's units.
    #[must_use]
    pub fn field_error(self, error: &FieldError) -> String {
        self.field_error_kind(&error.what, &error.typed)
    }

    fn field_error_kind(self, what: &FieldErrorKind, typed: &str) -> String {
        self.field_error_naming(what, typed, &|name| field_name(self, name))
    }

    /// The same where the form has its own names for the other fields.
    #[must_use]
    pub fn field_error_naming(self, what: &FieldErrorKind, typed: &str, named: &dyn Fn(&str) -> String) -> String {
        let typed = || ("typed", Arg::from(typed));
        let list = |words: &[&str]| ("accepted", Arg::from(words.join(", ")));
        match what {
            FieldErrorKind::Missing => self.message("mistake-missing", &[]),
            FieldErrorKind::NoneAnswered(names) => {
                let names: Vec<String> = names.iter().map(|name| named(name)).collect();
                self.message("mistake-none-answered", &[("fields", self.list(&names).into())])
            }
            FieldErrorKind::GivenTwice => self.message("mistake-given-twice", &[]),
            FieldErrorKind::NotBoth(other) => self.message("mistake-not-both", &[("other", named(other).into())]),
            FieldErrorKind::Quantity { asked, problem } => self.quantity_problem(asked, problem, typed().1),
            FieldErrorKind::Unknown { fields } => {
                let names: Vec<&str> = fields.iter().map(|field| field.name).collect();
                self.message("mistake-unknown-field", &[list(&names)])
            }
            FieldErrorKind::WrongForm => self.message("mistake-wrong-form", &[typed()]),
            FieldErrorKind::NotAChoice(words) => self.message("mistake-not-a-choice", &[typed(), list(words)]),
            FieldErrorKind::NotATerm(terms) => {
                self.message("mistake-not-a-term", &[typed(), list(&terms.ids(Trade::built_in()))])
            }
            FieldErrorKind::NotAnId => self.message("mistake-not-an-id", &[typed()]),
            FieldErrorKind::NotACount { least, most } => {
                self.message("mistake-not-a-count", &[typed(), ("least", (*least).into()), ("most", (*most).into())])
            }
            FieldErrorKind::NotANumber(Span::Any) => self.message("mistake-not-a-number", &[typed()]),
            FieldErrorKind::NotANumber(Span::Positive) => self.message("mistake-not-positive", &[typed()]),
            FieldErrorKind::NotANumber(Span::NotNegative) => self.message("mistake-not-zero-or-more", &[typed()]),
            FieldErrorKind::NotANumber(Span::Percent) => self.message("mistake-not-zero-to-hundred", &[typed()]),
            FieldErrorKind::NotANumber(Span::Opponent) => self.message("mistake-not-a-color-number", &[typed()]),
            FieldErrorKind::NotMoney => self.message("mistake-not-money", &[typed()]),
            FieldErrorKind::NotACurrency => self.message("mistake-not-a-currency", &[typed()]),
            FieldErrorKind::NotATimeZone => {
                self.message("mistake-not-a-time-zone", &[typed(), ("example", TIME_ZONES[1].into())])
            }
            FieldErrorKind::OutsideThePicture => self.message("mistake-outside-the-picture", &[]),
            FieldErrorKind::NoPatch => self.message("mistake-no-patch", &[]),
            FieldErrorKind::Refused(problem) => {
                self.message("mistake-refused", &[("problem", problem.as_str().into())])
            }
        }
    }

    fn quantity_problem(self, asked: &QuantityInput, problem: &QuantityProblem, typed: Arg<'_>) -> String {
        let unit = match problem {
            QuantityProblem::Read(Unread::UnknownUnit(unit)) => unit.as_str(),
            _ => "",
        };
        let key = match problem {
            QuantityProblem::ShareOrPercent => "mistake-share-or-percent",
            QuantityProblem::UnitUnclear => "mistake-unit-unclear",
            QuantityProblem::Read(Unread::Empty | Unread::NotANumber) => "mistake-no-number",
            QuantityProblem::Read(Unread::NoUnit) => "mistake-no-unit",
            QuantityProblem::Read(Unread::UnknownUnit(_)) => "mistake-unknown-unit",
            QuantityProblem::Read(Unread::OutOfOrder) => "mistake-out-of-order",
            QuantityProblem::Read(Unread::Negative) => "mistake-negative",
            QuantityProblem::Read(Unread::OutOfRange { .. }) => match asked.kind {
                QuantityKind::Ph => "mistake-ph-range",
                QuantityKind::Fraction if !asked.in_percent() => "mistake-ratio-range",
                QuantityKind::Temperature => "mistake-too-cold",
                _ => "mistake-percent-range",
            },
        };
        let example = asked.example(self.unit_system);
        self.message(key, &[("typed", typed), ("unit", unit.into()), ("example", example.into())])
    }

    /// What is wrong with an entry in its diary, and what would be accepted.
    #[must_use]
    pub fn entry_problem(self, problem: &Problem) -> String {
        let value = ("value", Arg::from(problem.value.as_str()));
        let names = |names: &[String]| ("accepted", Arg::from(names.join(", ")));
        match &problem.what {
            ProblemKind::Field(what) => self.field_error_kind(what, &problem.value),
            ProblemKind::BeforePour { poured } => {
                self.message("problem-before-pour", &[value, ("poured", poured.to_string().into())])
            }
            ProblemKind::InFuture => self.message("problem-in-future", &[value]),
            ProblemKind::NoSuchEntry => self.message("problem-no-such-entry", &[value]),
            ProblemKind::NothingTakenBack => self.message("problem-nothing-taken-back", &[]),
            ProblemKind::JobTakenBack => self.message("problem-job-taken-back", &[]),
            ProblemKind::OtherKind { accepted } => {
                let kinds: Vec<String> =
                    accepted.iter().filter_map(|k| EntryKind::named(k)).map(|k| self.kind(k)).collect();
                let there = EntryKind::named(&problem.value).map_or_else(|| problem.value.clone(), |k| self.kind(k));
                self.message("problem-other-kind", &[("value", there.into()), names(&kinds)])
            }
            ProblemKind::NoSuchPanel { made } if made.is_empty() => self.message("problem-no-panel-yet", &[value]),
            ProblemKind::NoSuchPanel { made } => self.message("problem-no-such-panel", &[value, names(made)]),
            ProblemKind::NoPlace { zones } => self.message("problem-no-place", &[names(zones)]),
            ProblemKind::NoSuchZone { zones } => self.message("problem-no-such-zone", &[value, names(zones)]),
            ProblemKind::OffPlan { within: Some((low, high)) } => {
                let at = |point: &slab_plan::Point| {
                    format!("({}, {})", self.length(point.x.into()), self.length(point.y.into()))
                };
                self.message("problem-off-plan", &[value, ("low", at(low).into()), ("high", at(high).into())])
            }
            ProblemKind::OffPlan { within: None } => self.message("problem-off-slab", &[value]),
            ProblemKind::BadPlan(error) => {
                self.message("problem-bad-plan", &[("problem", self.plan_error(error).into())])
            }
            ProblemKind::DeeperThanSlab(thickness) => {
                self.message("problem-deeper-than-slab", &[value, ("thickness", self.length(*thickness).into())])
            }
            ProblemKind::Figure { low, high } => {
                self.message("problem-figure", &[value, ("low", figure(*low).into()), ("high", figure(*high).into())])
            }
            ProblemKind::NotAboveZero => self.message("problem-not-above-zero", &[value]),
        }
    }

    /// The same on one line that names the kind and the field as the diary writes them, for the command line.
    #[must_use]
    pub fn entry_problem_line(self, problem: &Problem) -> String {
        let kind = problem.kind.map_or("entry", EntryKind::name);
        match &problem.what {
            // The plan's own error names the path.
            ProblemKind::BadPlan(error) => format!("{kind}: {error}"),
            _ if problem.value.is_empty() => {
                format!("{kind}.{}: {}", problem.field, on_one_line(&self.entry_problem(problem)))
            }
            _ => {
                format!("{kind}.{} \"{}\": {}", problem.field, problem.value, on_one_line(&self.entry_problem(problem)))
            }
        }
    }

    /// The same for a field, with the fields' own names, as they are typed there.
    #[must_use]
    pub fn field_error_line(self, kind: EntryKind, error: &FieldError) -> String {
        let at = format!("{}.{}", kind.name(), error.field);
        match &error.what {
            FieldErrorKind::Missing => {
                let accepted = self.example_of(kind, &error.field);
                format!("{at} {}", self.message("problem-line-missing", &[("accepted", accepted.into())]))
            }
            FieldErrorKind::NoneAnswered(names) => {
                let fields = ("fields", names.join(", ").into());
                format!("{at} {}", self.message("problem-line-none-answered", &[fields]))
            }
            FieldErrorKind::NotBoth(other) => {
                format!("{at} {}", self.message("problem-line-not-both", &[("other", (*other).into())]))
            }
            _ if error.typed.is_empty() => format!("{at}: {}", on_one_line(&self.field_error(error))),
            _ => format!("{at} \"{}\": {}", error.typed, on_one_line(&self.field_error(error))),
        }
    }

    /// What would be taken for a field.
    fn example_of(self, kind: EntryKind, input: &str) -> String {
        let field = kind.schema().form().field_of_input(input);
        let example = field.map_or("", |field| field.example(self.unit_system));
        let choices = field.map_or_else(Vec::new, |field| field.choices(Trade::built_in()));
        match (example, &choices[..]) {
            ("", []) => self.message("problem-line-any-text", &[]),
            ("", choices) => choices.join(", "),
            (example, _) => example.to_owned(),
        }
    }

    /// What is wrong with a written line.
    #[must_use]
    pub fn entry_error(self, error: &EntryError) -> String {
        match error {
            EntryError::Header { .. } | EntryError::Place(_) => error.to_string(),
            EntryError::Body(error) => on_one_line(&self.body_error(error)),
        }
    }

    /// Why what was typed for a moment was not taken.
    #[must_use]
    pub fn typed_when_error(self, error: &TypedWhenError) -> String {
        match error {
            TypedWhenError::Unread(typed) => self.message("mistake-happened", &[("typed", typed.as_str().into())]),
            TypedWhenError::TwoDays { text, month_first, day_first } => self.message(
                "mistake-two-days",
                &[
                    ("typed", text.as_str().into()),
                    ("one", self.date(*month_first).into()),
                    ("other", self.date(*day_first).into()),
                    ("oneday", month_first.to_string().into()),
                    ("otherday", day_first.to_string().into()),
                ],
            ),
        }
    }

    /// The same on one line, for the command line.
    #[must_use]
    pub fn typed_when_line(self, error: &TypedWhenError) -> String {
        format!("happened: {}", on_one_line(&self.typed_when_error(error)))
    }

    /// What is wrong with a body.
    #[must_use]
    pub fn body_error(self, error: &BodyError) -> String {
        match error {
            BodyError::NoKind => self.message("problem-no-kind", &[]),
            BodyError::UnknownKind(kind) => {
                let kinds: Vec<&str> = EntryKind::ALL.iter().map(|kind| kind.name()).collect();
                self.message(
                    "problem-unknown-kind",
                    &[("value", kind.as_str().into()), ("accepted", kinds.join(", ").into())],
                )
            }
            BodyError::Fields(kind, errors) => {
                let lines: Vec<String> = errors.iter().map(|error| self.field_error_line(*kind, error)).collect();
                lines.join("; ")
            }
        }
    }
}

/// Two sentences as the command line says them: what is wrong; accepted: what would be taken.
fn on_one_line(said: &str) -> String {
    said.replace(". Accepted: ", "; accepted: ").replace(". Se acepta: ", "; se acepta: ")
}

/// A bare figure with no more places than it needs.
fn figure(value: f64) -> String {
    let rounded = (value * 1e4).round() / 1e4;
    rounded.to_string()
}
