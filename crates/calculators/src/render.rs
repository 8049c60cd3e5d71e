//! A calculation as parts for a page, as text and as JSON: the answer first, then what it was made
//! from and rests on.

use std::fmt::Write;

use localization::Locale;
use serde_json::{Map, Value, json};

use crate::calculation::{Calculation, Input};
use crate::calculator::Calculator;
use crate::rests_on::RestsOn;
use crate::shown::Shown;

/// Something found, in a reader's words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// Its name in JSON, without the unit.
    pub name: &'static str,
    /// Its name for a person.
    pub label: String,
    /// Its value, or a list: one for each day, limit, spell or item.
    pub lines: Vec<String>,
}

/// Something given, as it was understood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Understood {
    /// The field it was given in ([`form_schema::Field::name`]).
    pub name: &'static str,
    /// Its name for a person.
    pub label: String,
    /// As it was typed, choices in words; the usual value where nothing was given.
    pub value: String,
    /// As it was understood, in the reader's units.
    pub understood: String,
    /// Nothing was given and the usual value was taken.
    pub assumed: bool,
}

/// What must be said beside an answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cautioned {
    /// Its code in JSON.
    pub code: &'static str,
    /// The sentence.
    pub text: String,
}

/// The name of a result, which may be another one than what was given under the same name.
fn label(locale: Locale, name: &str) -> String {
    let [found, value] = ["found", "value"].map(|kind| format!("{kind}-{}", name.replace('_', "-")));
    locale.message_built(if locale.knows_built(&found) { &found } else { &value }, &[])
}

fn understood(calculator: &Calculator, locale: Locale, input: &Input) -> Understood {
    let understood = input.shown.line(locale);
    let value = match (&input.typed, &input.shown) {
        (Some(typed), shown) if !matches!(shown, Shown::Code(_)) => typed.clone(),
        _ => understood.clone(),
    };
    let label = calculator.field(input.name).map_or_else(String::new, |f| locale.message(f.hints.in_answer, &[]));
    Understood { name: input.name, label, value, understood, assumed: input.typed.is_none() }
}

impl Calculation {
    /// Its name on the command line and in addresses, such as `dew-point`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.calculator.id()
    }

    /// Its name for a person.
    #[must_use]
    pub fn title(&self, locale: Locale) -> String {
        self.calculator.title(locale)
    }

    /// What was found, the answer first.
    #[must_use]
    pub fn answers(&self, locale: Locale) -> Vec<Answered> {
        let answered = self.results.iter().map(|found| Answered {
            name: found.name,
            label: label(locale, found.name),
            lines: found.shown.lines(locale),
        });
        answered.collect()
    }

    /// What was given and what was assumed.
    #[must_use]
    pub fn inputs(&self, locale: Locale) -> Vec<Understood> {
        self.inputs.iter().map(|input| understood(self.calculator, locale, input)).collect()
    }

    /// The formula.
    #[must_use]
    pub fn formula(&self, locale: Locale) -> RestsOn {
        self.basis.said(locale)
    }

    /// Limits and further formulas that were used.
    #[must_use]
    pub fn also(&self, locale: Locale) -> Vec<RestsOn> {
        self.also.iter().map(|basis| basis.said(locale)).collect()
    }

    /// What must be said beside the answer; all of it.
    #[must_use]
    pub fn cautions(&self, locale: Locale) -> Vec<Cautioned> {
        let cautioned = self.cautions.iter();
        cautioned.map(|c| Cautioned { code: c.name(), text: locale.message_built(&c.key(), &[]) }).collect()
    }

    /// What was assumed of a file, left out of it, or missing in it. In English.
    #[must_use]
    pub fn notes(&self) -> &[String] {
        &self.notes
    }

    /// For a terminal, in lines of at most 100 characters.
    #[must_use]
    pub fn text(&self, locale: Locale) -> String {
        let mut out = String::new();
        let _ = writeln!(out, "{}", self.title(locale));
        for Answered { label, lines, .. } in self.answers(locale) {
            match lines.as_slice() {
                [one] => wrapped(&mut out, "  ", "    ", &format!("{label}: {one}")),
                many => {
                    wrapped(&mut out, "  ", "    ", &format!("{label}:"));
                    for line in many {
                        wrapped(&mut out, "    ", "      ", line);
                    }
                }
            }
        }
        let _ = writeln!(out);
        let inputs: Vec<String> = self.inputs(locale).into_iter().map(|input| given(locale, input)).collect();
        wrapped(&mut out, "", "  ", &locale.message("sum-from", &[("inputs", inputs.join("; ").into())]));
        let RestsOn { formula, cited, .. } = self.formula(locale);
        wrapped(&mut out, "", "  ", &locale.message("sum-formula", &[("formula", formula.into())]));
        wrapped(&mut out, "", "  ", &cited);
        for RestsOn { formula, cited, .. } in self.also(locale) {
            wrapped(&mut out, "", "  ", &locale.message("sum-also", &[("text", format!("{formula}. {cited}").into())]));
        }
        for Cautioned { text, .. } in self.cautions(locale) {
            wrapped(&mut out, "  ! ", "    ", &text);
        }
        out
    }

    /// For a program: schema `underfoot.sum/1` of `docs/json.md`.
    #[must_use]
    pub fn json(&self, locale: Locale) -> Value {
        let inputs: Map<String, Value> = self.inputs.iter().flat_map(|i| i.shown.fields(i.name)).collect();
        let assumed: Vec<&str> = self.inputs.iter().filter(|i| i.typed.is_none()).map(|i| i.name).collect();
        let results: Map<String, Value> = self.results.iter().flat_map(|f| f.shown.fields(f.name)).collect();
        json!({
            "schema": "underfoot.sum/1",
            "sum": self.id(),
            "inputs": inputs,
            "assumed": assumed,
            "results": results,
            "formula": self.formula(locale).formula,
            "source": self.basis.json(),
            "grade": self.basis.grade().words(),
            "also": self.also.iter().map(|also| json!({
                "formula": also.said(locale).formula, "source": also.json(), "grade": also.grade().words(),
            })).collect::<Vec<_>>(),
            "cautions": self.cautions(locale).into_iter().map(|caution| caution.text).collect::<Vec<_>>(),
            "caution_codes": self.cautions.iter().map(|caution| caution.name()).collect::<Vec<_>>(),
        })
    }
}

fn given(locale: Locale, input: Understood) -> String {
    if input.assumed {
        locale.message("sum-assumed", &[("name", input.label.into()), ("value", input.value.into())])
    } else {
        format!("{} {}", input.label, input.value)
    }
}

fn wrapped(out: &mut String, first: &str, rest: &str, text: &str) {
    const WIDTH: usize = 100;
    let options = textwrap::Options::new(WIDTH).initial_indent(first).subsequent_indent(rest);
    let _ = writeln!(out, "{}", textwrap::fill(text, options));
}
