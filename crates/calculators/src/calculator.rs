//! A calculator as data, and answering one.

use std::fmt;

use form_schema::{Field, FieldError, FieldErrorKind, Form, FormData, InputKind, read};
use localization::{Locale, UnitSystem};

use crate::calculation::Calculation;
use crate::error::{CalculatorError, sentence_case};
use crate::files::Files;
use crate::given::Given;
use crate::kinds::CALCULATORS;

/// A question without a slab: what is asked, and the function that answers.
pub struct Calculator {
    /// What is asked. Its name is the calculator's on the command line and in addresses.
    pub form: Form,
    /// The key of its title.
    pub(crate) title: &'static str,
    /// The key of one line that says what it answers.
    pub(crate) about: &'static str,
    /// Fields whose examples together have an answer.
    pub(crate) example: &'static [&'static str],
    /// Examples of the command line, each what stands behind the name.
    pub lines: &'static [&'static str],
    /// Fields that a line of the command line gives by their place.
    pub places: &'static [&'static str],
    pub(crate) run: fn(&mut Given<'_>) -> Result<Calculation, CalculatorError>,
}

/// All calculators, in the order they are shown.
#[must_use]
pub fn calculators() -> &'static [&'static Calculator] {
    CALCULATORS
}

/// A calculator by its name.
#[must_use]
pub fn calculator(id: &str) -> Option<&'static Calculator> {
    CALCULATORS.iter().find(|calculator| calculator.id() == id).copied()
}

impl fmt::Debug for Calculator {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.form.name)
    }
}

impl Calculator {
    /// Its name on the command line and in addresses, such as `dew-point`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.form.name
    }

    /// Its name for a person.
    #[must_use]
    pub fn title(&self, locale: Locale) -> String {
        locale.message(self.title, &[])
    }

    /// What it answers, in one line.
    #[must_use]
    pub fn about(&self, locale: Locale) -> String {
        locale.message(self.about, &[])
    }

    /// One of its fields.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.form.field(name)
    }

    /// A filled form that has an answer.
    #[must_use]
    pub fn filled(&self, unit_system: UnitSystem) -> FormData {
        let fields = self.example.iter().filter_map(|name| self.field(name));
        fields.map(|field| (field.name, field.example(unit_system))).collect()
    }

    /// Answers what was typed: texts by the names of fields, empty ones counting as nothing. A bare number takes
    /// the unit that a page shows in `usual`; without it, as on the command line, a unit must be written.
    ///
    /// # Errors
    /// What was typed is no answer to what is asked, or has none; a file that `files` refuses.
    pub fn calculate(
        &'static self,
        typed: &FormData,
        usual: Option<UnitSystem>,
        files: &dyn Files,
    ) -> Result<Calculation, CalculatorError> {
        let (mut answers, mut errors) = (FormData::new(), Vec::new());
        for (name, texts) in typed.iter() {
            let texts: Vec<&String> = texts.iter().filter(|text| !text.trim().is_empty()).collect();
            let what = match self.field(name).map(|field| field.input) {
                None => Some(FieldErrorKind::Unknown { fields: self.form.fields }),
                Some(input) if texts.len() > 1 && input != InputKind::Texts => Some(FieldErrorKind::GivenTwice),
                Some(_) => None,
            };
            errors.extend(what.map(|what| FieldError::new(name, what, "")));
            texts.into_iter().for_each(|text| answers.push(name, text.as_str()));
        }
        match read(&self.form, &answers, usual) {
            Ok(values) if errors.is_empty() => Given::new(self, values, files).calculate(),
            read => {
                errors.extend(read.err().unwrap_or_default());
                Err(CalculatorError::fields(self, errors))
            }
        }
    }
}

/// Answers what was typed into the calculator of that name.
///
/// # Errors
/// As [`Calculator::calculate`], and when there is no such calculator.
pub fn calculate(
    id: &str,
    typed: &FormData,
    usual: Option<UnitSystem>,
    files: &dyn Files,
) -> Result<Calculation, CalculatorError> {
    let found = calculator(id).ok_or_else(|| CalculatorError::unknown(id))?;
    found.calculate(typed, usual, files)
}

/// A field's name for a person.
#[must_use]
pub fn label(field: &Field, locale: Locale) -> String {
    sentence_case(&locale.message(field.hints.label, &[]))
}

/// What an empty field means, where that is worth telling: a value in the reader's units or a sentence.
#[must_use]
pub fn usual(field: &Field, locale: Locale) -> Option<String> {
    if let Some(key) = field.hints.usual_said {
        return Some(locale.message(key, &[]));
    }
    let text = usual_text(field, locale.unit_system)?;
    Some(if field.is_choice() { choice_label(field, text, locale) } else { text.to_owned() })
}

/// The same as it could be typed; nothing where only a sentence tells it.
#[must_use]
pub fn usual_text(field: &Field, unit_system: UnitSystem) -> Option<&'static str> {
    let [imperial, metric] = field.hints.usual?;
    Some(if unit_system == UnitSystem::Imperial { imperial } else { metric })
}

/// A choice in words.
#[must_use]
pub fn choice_label(field: &Field, choice: &str, locale: Locale) -> String {
    let keys = [format!("sum-choice-{}-{choice}", field.name), format!("finding-{choice}")];
    let known = keys.iter().find(|key| locale.knows_built(key));
    sentence_case(&known.map_or_else(|| choice.to_owned(), |key| locale.message_built(key, &[])))
}
