//! What each calculation asks for, taken from the arguments of the command line: one definition.

use std::path::PathBuf;
use std::sync::LazyLock;

use clap::error::{ContextKind, ContextValue};
use clap::{Arg, ArgAction, Command, Id, Subcommand};
use localization::{Locale, UnitSystem};

use crate::command::SumCommand;
use crate::hints::{Hint, hint};

/// The keyboard a field is best typed with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Keyboard {
    /// Digits and a point; a page that shows [`SumField::unit`] beside the field adds it afterwards
    /// ([`crate::with_units`]).
    Decimal,
    /// Everything.
    Text,
}

/// The form of one calculation.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SumForm {
    /// Its name on the command line and in addresses.
    pub id: String,
    /// In the order of the command line's help.
    pub fields: Vec<SumField>,
}

/// One field of a form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SumField {
    /// Its name in addresses, in JSON and in [`crate::SumError::field`], such as `wet_cure`.
    pub id: String,
    /// Nothing is answered without it. Other fields may still be needed one instead of another.
    pub required: bool,
    /// Worth showing at once; the others are for the few who need them.
    pub main: bool,
    /// What the parser takes when nothing is given.
    pub default: Option<String>,
    /// Takes several values.
    pub repeatable: bool,
    /// The texts it accepts; nothing when it is free.
    pub choices: Vec<String>,
    /// Fields that cannot be given beside it.
    pub conflicts: Vec<String>,
    /// Fields that must be given beside it.
    pub requires: Vec<String>,
    /// It names a file, whose bytes come through [`crate::Files`].
    pub takes_file: bool,
    /// Yes or no, without a text.
    pub flag: bool,
    /// How it is best typed.
    pub keyboard: Keyboard,
    sum: String,
    hint: Hint,
}

/// The forms of all calculations.
#[must_use]
pub fn forms() -> &'static [SumForm] {
    static FORMS: LazyLock<Vec<SumForm>> = LazyLock::new(|| {
        let command = parser();
        command.get_subcommands().map(|sum| described(&command, sum)).collect()
    });
    &FORMS
}

/// The form of one calculation.
#[must_use]
pub fn form(id: &str) -> Option<&'static SumForm> {
    forms().iter().find(|form| form.id == id)
}

/// The parser of the command line, with every field as an option: what a page sends has names, not
/// places.
pub(crate) fn parser() -> Command {
    let command = SumCommand::augment_subcommands(Command::new("sums")).no_binary_name(true);
    let command = command.disable_help_flag(true).disable_help_subcommand(true);
    let mut command = command.mut_subcommands(|sum| {
        let placed: Vec<Id> = sum.get_positionals().map(|arg| arg.get_id().clone()).collect();
        let named = placed.into_iter().fold(sum, |sum, id| sum.mut_arg(&id, |arg| arg.long(id.clone())));
        named.disable_help_flag(true)
    });
    command.build();
    command
}

fn described(command: &Command, sum: &Command) -> SumForm {
    let fields = sum.get_arguments().map(|arg| field(command, sum, arg)).collect();
    SumForm { id: sum.get_name().to_owned(), fields }
}

fn field(command: &Command, sum: &Command, arg: &Arg) -> SumField {
    let id = arg.get_id().to_string();
    let hint = hint(sum.get_name(), &id);
    let against = |one: &Arg, other: &Arg| {
        sum.get_arg_conflicts_with(one).iter().any(|conflict| conflict.get_id() == other.get_id())
    };
    let conflicts = sum.get_arguments().filter(|other| against(arg, other) || against(other, arg));
    let flag = matches!(arg.get_action(), ArgAction::SetTrue | ArgAction::SetFalse);
    let takes_file = arg.get_value_parser().type_id() == clap::value_parser!(PathBuf).type_id();
    let choices = if flag { Vec::new() } else { arg.get_possible_values() };
    let choices: Vec<String> = choices.iter().map(|choice| choice.get_name().to_owned()).collect();
    let number = !flag && !takes_file && choices.is_empty() && typed_as_number(hint.example.imperial);
    SumField {
        required: arg.is_required_set(),
        main: hint.main,
        default: arg.get_default_values().first().map(|text| text.to_string_lossy().into_owned()),
        repeatable: matches!(arg.get_action(), ArgAction::Append),
        conflicts: conflicts.map(|other| other.get_id().to_string()).collect(),
        requires: requires(command, sum, arg, hint),
        takes_file,
        flag,
        choices,
        keyboard: if number { Keyboard::Decimal } else { Keyboard::Text },
        sum: sum.get_name().to_owned(),
        hint,
        id,
    }
}

/// What the parser asks for once this field is given and did not ask for before. The parser does not
/// tell it, so it is asked.
fn requires(command: &Command, sum: &Command, arg: &Arg, hint: Hint) -> Vec<String> {
    let asked = |typed: Option<String>| {
        let line = std::iter::once(sum.get_name().to_owned()).chain(typed);
        match command.clone().try_get_matches_from(line) {
            Ok(_) => Vec::new(),
            Err(error) => options(&error, ContextKind::InvalidArg),
        }
    };
    let before = asked(None);
    let option = arg.get_long().map(|long| format!("--{long}={}", hint.example.imperial));
    asked(option).into_iter().filter(|id| !before.contains(id)).collect()
}

/// The fields that an error of the parser names, as ids.
pub(crate) fn options(error: &clap::Error, kind: ContextKind) -> Vec<String> {
    let id = |option: &String| {
        let name = option.trim_start_matches('-');
        name.split([' ', '=', '<', '[']).next().unwrap_or_default().replace('-', "_")
    };
    match error.get(kind) {
        Some(ContextValue::String(option)) => vec![id(option)],
        Some(ContextValue::Strings(options)) => options.iter().map(id).collect(),
        _ => Vec::new(),
    }
}

/// A bare number, or one with a unit that is written once: lengths are not, since people type feet and
/// inches.
fn typed_as_number(example: &str) -> bool {
    let rest = example.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
    rest.len() < example.len() && (rest.is_empty() || unit(example).is_some_and(|unit| !["ft", "in"].contains(&unit)))
}

fn unit(example: &str) -> Option<&str> {
    let (number, unit) = example.split_once(' ')?;
    (number.parse::<f64>().is_ok() && !unit.is_empty()).then_some(unit)
}

impl SumForm {
    /// Its name for a person.
    #[must_use]
    pub fn title(&self, locale: Locale) -> String {
        locale.message(&format!("sum-{}", self.id), &[])
    }

    /// What it answers, in one line.
    #[must_use]
    pub fn about(&self, locale: Locale) -> String {
        locale.message(&format!("sum-about-{}", self.id), &[])
    }

    /// One of its fields.
    #[must_use]
    pub fn field(&self, id: &str) -> Option<&SumField> {
        self.fields.iter().find(|field| field.id == id)
    }

    /// A filled form that has an answer.
    #[must_use]
    pub fn example(&self, unit_system: UnitSystem) -> Vec<(String, Vec<String>)> {
        let filled = self.fields.iter().filter(|field| field.hint.filled);
        filled.map(|field| (field.id.clone(), vec![field.example(unit_system).to_owned()])).collect()
    }
}

impl SumField {
    /// Its name for a person.
    #[must_use]
    pub fn label(&self, locale: Locale) -> String {
        sentence_case(&self.name(locale))
    }

    /// The same within a sentence.
    pub(crate) fn name(&self, locale: Locale) -> String {
        let field = self.id.replace('_', "-");
        let keys = [
            format!("sum-field-{}-{field}", self.sum),
            format!("sum-field-{field}"),
            format!("given-{field}"),
            format!("value-{field}"),
        ];
        let known = keys.iter().find(|key| locale.knows(key));
        known.map_or_else(|| self.id.clone(), |key| locale.message(key, &[]))
    }

    /// What is taken when it is left empty, where that is worth telling: a value in the reader's units
    /// or a sentence.
    #[must_use]
    pub fn usual(&self, locale: Locale) -> Option<String> {
        let key = format!("sum-usual-{}-{}", self.sum, self.id.replace('_', "-"));
        if locale.knows(&key) {
            return Some(locale.message(&key, &[]));
        }
        self.usual_text(locale.unit_system).map(str::to_owned)
    }

    /// The same as it could be typed; nothing where only a sentence tells it.
    #[must_use]
    pub fn usual_text(&self, unit_system: UnitSystem) -> Option<&str> {
        self.hint.usual.map(|usual| usual.of(unit_system)).or(self.default.as_deref())
    }

    /// A text that could be typed.
    #[must_use]
    pub fn example(&self, unit_system: UnitSystem) -> &str {
        self.hint.example.of(unit_system)
    }

    /// The unit that a bare number stands in; nothing where a bare number is complete or makes no sense.
    #[must_use]
    pub fn unit(&self, unit_system: UnitSystem) -> Option<&str> {
        if self.choices.is_empty() { unit(self.hint.example.of(unit_system)) } else { None }
    }

    /// A choice in words.
    #[must_use]
    pub fn choice_label(&self, choice: &str, locale: Locale) -> String {
        let keys = [format!("sum-choice-{}-{choice}", self.id), format!("finding-{choice}")];
        let known = keys.iter().find(|key| locale.knows(key));
        sentence_case(&known.map_or_else(|| choice.to_owned(), |key| locale.message(key, &[])))
    }

    /// All choices in words.
    #[must_use]
    pub fn choice_labels(&self, locale: Locale) -> Vec<String> {
        self.choices.iter().map(|choice| self.choice_label(choice, locale)).collect()
    }
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
