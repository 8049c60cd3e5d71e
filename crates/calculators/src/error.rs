//! A refusal: which field, what was wrong, what would be accepted.

use std::fmt;

use localization::Locale;
use units::{Problem, ReadError};

use crate::accepted::Accepted;
use crate::form::{SumForm, form, sentence_case};
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
#[derive(Debug, Clone, PartialEq)]
pub struct SumError {
    /// The field to put the message beside ([`crate::SumField::id`]); nothing when it is about the whole.
    pub field: Option<String>,
    /// Whose fault it is.
    pub kind: ErrorKind,
    /// The line of the command line: English, with the options as they are typed there.
    pub said: String,
    /// What was assumed or left out of a file that was read before the refusal. English.
    pub notes: Vec<String>,
    sum: Option<&'static str>,
    what: Box<What>,
}

/// What was wrong, to be said in any language.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum What {
    Missing(Accepted),
    /// Required by the parser; its example says what would do.
    MissingExample,
    Unclear {
        typed: String,
        accepted: Accepted,
    },
    Impossible {
        typed: String,
        accepted: Accepted,
    },
    Unread(ReadError),
    /// Not one of the choices.
    NoChoice {
        typed: String,
    },
    /// Not a whole number in range.
    NoNumber {
        typed: String,
    },
    /// Fields of which one is to be given.
    Conflict {
        with: Vec<String>,
    },
    Several,
    UnknownField,
    UnknownSum,
    /// No file goes by that name.
    NoFile {
        name: String,
    },
    /// The file says nothing usable.
    Content {
        name: String,
        said: String,
    },
    /// A value that the formulas refuse; the first of these fields that was typed is meant.
    Beyond {
        fields: &'static [&'static str],
        accepted: Accepted,
        typed: Option<String>,
    },
    /// A whole sentence of its own.
    Sentence(&'static str),
    /// Only what the library says, in English.
    Said(String),
}

impl SumError {
    pub(crate) fn new(kind: ErrorKind, field: Option<&str>, said: String, what: What) -> Self {
        Self { field: field.map(str::to_owned), kind, said, notes: Vec::new(), sum: None, what: Box::new(what) }
    }

    pub(crate) fn bad_use(field: &str, said: String, what: What) -> Self {
        Self::new(ErrorKind::Use, Some(field), said, what)
    }

    /// Refused by a formula or type of the core.
    #[expect(clippy::needless_pass_by_value, reason = "for use in map_err")]
    pub(crate) fn core(error: impl Refused) -> Self {
        let what = error.what();
        let field = match &what {
            What::Beyond { fields, .. } => fields.first().copied(),
            What::Sentence("spraying") => Some("how"),
            _ => None,
        };
        Self::new(ErrorKind::Data, field, error.to_string(), what)
    }

    /// A file whose content is no use.
    pub(crate) fn content(name: &str, content: &str, said: String) -> Self {
        let what = What::Content { name: name.to_owned(), said: content.to_owned() };
        Self::new(ErrorKind::Data, Some("file"), said, what)
    }

    /// The same refusal of a field that the place of the question knows better.
    pub(crate) fn at(mut self, field: &'static str) -> Self {
        self.field = Some(field.to_owned());
        if let What::Beyond { fields, .. } = &mut *self.what {
            *fields = &[];
        }
        self
    }

    pub(crate) fn of_sum(mut self, sum: &'static str) -> Self {
        self.sum = Some(sum);
        self
    }

    /// Finds the field that is meant among those that were typed, and what was typed there. A field
    /// that the form does not have is none.
    pub(crate) fn among(mut self, form: &SumForm, typed: &[(String, Vec<String>)]) -> Self {
        let text = |field: &str| {
            let texts = typed.iter().filter(|(known, _)| known == field).flat_map(|(_, texts)| texts);
            texts.map(|text| text.trim()).find(|text| !text.is_empty()).map(str::to_owned)
        };
        if let What::Beyond { fields, typed: filled, .. } = &mut *self.what {
            let meant = fields.iter().find(|field| text(field).is_some()).copied();
            let meant = meant.map(str::to_owned).or_else(|| self.field.take());
            *filled = meant.as_deref().and_then(text);
            self.field = meant;
        }
        self.field = self.field.filter(|field| form.field(field).is_some());
        self
    }

    /// The message for a page: the field by its label, in the reader's language and with examples in
    /// the reader's units. What only a library or a file says stays in English inside it.
    #[must_use]
    pub fn plain(&self, locale: Locale) -> String {
        let form = self.sum.and_then(form);
        let named = |id: &str| form.and_then(|f| f.field(id)).map_or_else(|| id.to_owned(), |f| f.name(locale));
        let field = self.field.as_deref().map(named).unwrap_or_default();
        let of_form = self.field.as_deref().and_then(|id| form?.field(id));
        let example = of_form.map(|f| f.example(locale.unit_system).to_owned()).unwrap_or_default();
        let say = |key: &str, args: &[(&str, &str)]| {
            let args: Vec<_> = args.iter().map(|(name, text)| (*name, (*text).into())).collect();
            sentence_case(&locale.message(&format!("sum-refused-{key}"), &args))
        };
        let accepts = |key: &str, typed: &str, accepted: &str| {
            say(key, &[("field", &field), ("typed", typed), ("accepted", accepted)])
        };
        let in_words = |accepted: &Accepted| {
            // A page has no list in a help; the list is in the field itself.
            accepted.message(locale, |id| format!("“{}”", if id == "help" { field.clone() } else { named(id) }))
        };
        match &*self.what {
            What::Missing(accepted) => accepts("missing", "", &in_words(accepted)),
            What::MissingExample => {
                let choices = of_form.map(|f| f.choice_labels(locale)).filter(|c| !c.is_empty());
                accepts("missing", "", &choices.map_or(example, |c| c.join(", ")))
            }
            What::Unclear { typed, accepted } => accepts("unclear", shown(typed), &in_words(accepted)),
            What::Impossible { typed, accepted } => accepts("impossible", shown(typed), &in_words(accepted)),
            What::Beyond { accepted, typed: Some(typed), .. } => {
                accepts("impossible", shown(typed), &in_words(accepted))
            }
            What::Beyond { accepted, typed: None, .. } => {
                say("beyond", &[("field", &field), ("accepted", &in_words(accepted))])
            }
            What::Unread(error) => {
                let typed = shown(&error.text);
                match &error.problem {
                    Problem::OutOfRange { low, high } => {
                        say("outside", &[("field", &field), ("typed", typed), ("low", low), ("high", high)])
                    }
                    problem => accepts(unread(problem), typed, &example),
                }
            }
            What::NoChoice { typed } => {
                let choices = of_form.map(|f| f.choice_labels(locale).join(", ")).unwrap_or_default();
                accepts("unclear", shown(typed), &choices)
            }
            What::NoNumber { typed } => accepts("whole-number", shown(typed), &example),
            What::Conflict { with } => {
                let all: Vec<String> = std::iter::once(field.clone()).chain(with.iter().map(|id| named(id))).collect();
                say("conflict", &[("fields", &all.join(", "))])
            }
            What::Several => accepts("several", "", &example),
            What::UnknownField => say("no-such-field", &[("field", shown(self.field.as_deref().unwrap_or_default()))]),
            What::UnknownSum => say("no-such-sum", &[]),
            What::NoFile { name } => say("no-file", &[("name", shown(name))]),
            What::Content { name, said } => say("content", &[("name", shown(name)), ("said", said)]),
            What::Sentence(key) => say(key, &[]),
            What::Said(said) => say("said", &[("said", said)]),
        }
    }
}

/// Enough of a text to know it by.
fn shown(text: &str) -> &str {
    const MOST: usize = 60;
    let text = text.trim();
    text.char_indices().nth(MOST).map_or(text, |(end, _)| &text[..end])
}

fn unread(problem: &Problem) -> &'static str {
    match problem {
        Problem::Empty | Problem::NotANumber | Problem::OutOfRange { .. } => "unclear",
        Problem::NoUnit => "no-unit",
        Problem::UnknownUnit(_) => "unknown-unit",
        Problem::OutOfOrder => "out-of-order",
        Problem::Negative => "negative",
    }
}

impl fmt::Display for SumError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said)
    }
}

impl std::error::Error for SumError {}
