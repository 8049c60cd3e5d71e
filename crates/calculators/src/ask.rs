//! Asking what was typed into a page, through the parser of the command line.

use clap::FromArgMatches;
use clap::error::{ContextKind, ContextValue, ErrorKind as Parsed};
use localization::UnitSystem;

use crate::accepted::flag;
use crate::command::{SumCommand, run};
use crate::error::{ErrorKind, SumError, What};
use crate::files::Files;
use crate::form::{SumForm, form, options, parser};
use crate::read::bare;
use crate::sum::Sum;

/// What was typed: fields by their ids, each with its texts.
pub type Typed = [(String, Vec<String>)];

/// Calculates from what was typed into a form. A text can only ever be the value of its own field;
/// empty texts count as nothing.
///
/// # Errors
/// There is no such calculation or field; a field is missing, doubled or beside one it excludes; what
/// was typed cannot be read or lies outside what is accepted; a file that `files` refuses.
pub fn ask(sum: &str, typed: &Typed, files: &dyn Files) -> Result<Sum, SumError> {
    let Some(form) = form(sum) else {
        let said = format!("sum \"{sum}\" is not known");
        return Err(SumError::new(ErrorKind::Use, None, said, What::UnknownSum));
    };
    let answer = line(form, typed).and_then(|line| parse(form, line)).and_then(|command| run(&command, files));
    answer.map_err(|error| error.of_sum(&form.id).among(form, typed))
}

/// The same texts with the unit of their field behind bare numbers, for a page that shows the unit
/// beside the input. Shares up to 1 stay as they are: they could mean percent or a share, and the
/// calculation asks back.
#[must_use]
pub fn with_units(sum: &str, typed: &Typed, unit_system: UnitSystem) -> Vec<(String, Vec<String>)> {
    let unit = |field: &str| form(sum)?.field(field)?.unit(unit_system);
    let complete = |field: &str, text: &String| match (unit(field), bare(text)) {
        (Some("%"), Some(number)) if number > 0.0 && number <= 1.0 => text.clone(),
        (Some(unit), Some(_)) => format!("{} {unit}", text.trim()),
        _ => text.clone(),
    };
    typed.iter().map(|(field, texts)| (field.clone(), texts.iter().map(|t| complete(field, t)).collect())).collect()
}

/// The line as it would be typed: each text tied to its option.
fn line(form: &SumForm, typed: &Typed) -> Result<Vec<String>, SumError> {
    let mut line = vec![form.id.clone()];
    for field in &form.fields {
        let given = typed.iter().filter(|(id, _)| *id == field.id).flat_map(|(_, texts)| texts);
        let given: Vec<&String> = given.filter(|text| !text.trim().is_empty()).collect();
        if given.len() > 1 && !field.repeatable {
            return Err(SumError::bad_use(&field.id, format!("{} is given twice", flag(&field.id)), What::Several));
        }
        let option = flag(&field.id);
        line.extend(given.into_iter().map(|text| match (field.flag, field.takes_file) {
            (true, _) => option.clone(),
            // A file's name is taken as it is.
            (_, true) => format!("{option}={text}"),
            _ => format!("{option}={}", text.trim()),
        }));
    }
    match typed.iter().find(|(id, _)| form.field(id).is_none()) {
        Some((id, _)) => {
            Err(SumError::bad_use(id, format!("{} is no field of this sum", flag(id)), What::UnknownField))
        }
        None => Ok(line),
    }
}

fn parse(form: &SumForm, line: Vec<String>) -> Result<SumCommand, SumError> {
    let matches = parser().try_get_matches_from(line).map_err(|error| understood(form, &error))?;
    SumCommand::from_arg_matches(&matches).map_err(|error| understood(form, &error))
}

/// The parser's own refusal as one of ours.
fn understood(form: &SumForm, error: &clap::Error) -> SumError {
    let fields = options(error, ContextKind::InvalidArg);
    let field = fields.iter().find(|id| form.field(id).is_some()).map(String::as_str);
    let typed = match error.get(ContextKind::InvalidValue) {
        Some(ContextValue::String(text)) => text.clone(),
        _ => String::new(),
    };
    let what = match error.kind() {
        Parsed::MissingRequiredArgument => What::MissingExample,
        Parsed::ArgumentConflict => What::Conflict { with: options(error, ContextKind::PriorArg) },
        Parsed::InvalidValue => What::NoChoice { typed },
        Parsed::ValueValidation => What::NoNumber { typed },
        _ => What::Said(error.kind().to_string()),
    };
    let said = error.to_string();
    let said = said.lines().next().unwrap_or_default().trim_start_matches("error: ").to_owned();
    SumError::new(ErrorKind::Use, field, said, what)
}
