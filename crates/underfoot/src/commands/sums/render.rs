//! A calculation as text and as JSON: the answer first, then what it was made from and rests on.

use std::fmt::Write;

use science::Source;
use serde_json::{Map, Value, json};
use slab::trade::Grade;
use words::Voice;

use super::shown::Shown;
use super::sum::{Input, Sum};
use crate::text::wrapped;

/// The grade as the rest of the program says it.
fn grade(source: Source) -> Grade {
    match source.grade {
        science::Grade::Verified => Grade::Verified,
        science::Grade::VerifiedSecondary => Grade::SecondaryCopy,
        science::Grade::Memory => Grade::FromMemory,
        science::Grade::CommonPractice => Grade::CommonPractice,
    }
}

fn formula(voice: Voice, source: Source) -> String {
    voice.say(&format!("formula-{}", source.id), &[])
}

/// The name of a value; a result may go by another one than what was given under the same name.
fn label(voice: Voice, kind: &str, name: &str) -> String {
    let name = name.replace('_', "-");
    let own = format!("{kind}-{name}");
    if voice.knows(&own) { voice.say(&own, &[]) } else { voice.say(&format!("value-{name}"), &[]) }
}

/// What was given: in the person's own writing, but choices in words.
fn given(voice: Voice, input: &Input) -> String {
    let name = label(voice, "given", input.name);
    match (&input.typed, &input.shown) {
        (Some(typed), shown) if !matches!(shown, Shown::Code(_)) => format!("{name} {typed}"),
        (Some(_), shown) => format!("{name} {}", shown.line(voice)),
        (None, shown) => voice.say("sum-assumed", &[("name", name.into()), ("value", shown.line(voice).into())]),
    }
}

/// For a terminal.
pub(super) fn text(sum: &Sum, voice: Voice) -> String {
    let mut out = String::new();
    let _ = writeln!(out, "{}", voice.say(&format!("sum-{}", sum.id), &[]));
    for found in &sum.results {
        let name = label(voice, "found", found.name);
        match found.shown.lines(voice).as_slice() {
            [one] => wrapped(&mut out, "  ", "    ", &format!("{name}: {one}")),
            many => {
                wrapped(&mut out, "  ", "    ", &format!("{name}:"));
                for line in many {
                    wrapped(&mut out, "    ", "      ", line);
                }
            }
        }
    }
    let _ = writeln!(out);
    let inputs: Vec<String> = sum.inputs.iter().map(|input| given(voice, input)).collect();
    wrapped(&mut out, "", "  ", &voice.say("sum-from", &[("inputs", inputs.join("; ").into())]));
    wrapped(&mut out, "", "  ", &voice.say("sum-formula", &[("formula", formula(voice, sum.source).into())]));
    wrapped(&mut out, "", "  ", &cited(voice, sum.source));
    for source in &sum.also {
        let text = format!("{}. {}", formula(voice, *source), cited(voice, *source));
        wrapped(&mut out, "", "  ", &voice.say("sum-also", &[("text", text.into())]));
    }
    for caution in &sum.cautions {
        wrapped(&mut out, "  ! ", "    ", &voice.say(&caution.key(), &[]));
    }
    out
}

/// The document and the place in it. Languages other than that of the documents have their own words
/// for what is not a title.
fn cited(voice: Voice, source: Source) -> String {
    let key = format!("cite-sum-{}", source.id);
    let named = match source.locator {
        _ if voice.knows(&key) => voice.say(&key, &[]),
        "" => source.document.to_owned(),
        locator => format!("{}; {locator}", source.document),
    };
    voice.say("standing-source", &[("source", named.into()), ("grade", voice.grade(grade(source)).into())])
}

/// For a program.
pub(super) fn json(sum: &Sum, voice: Voice) -> Value {
    let inputs: Map<String, Value> = sum.inputs.iter().flat_map(|input| input.shown.fields(input.name)).collect();
    let assumed: Vec<&str> = sum.inputs.iter().filter(|i| i.typed.is_none()).map(|i| i.name).collect();
    let results: Map<String, Value> = sum.results.iter().flat_map(|found| found.shown.fields(found.name)).collect();
    json!({
        "schema": "underfoot.sum/1",
        "sum": sum.id,
        "inputs": inputs,
        "assumed": assumed,
        "results": results,
        "formula": formula(voice, sum.source),
        "source": source(sum.source),
        "grade": grade(sum.source).words(),
        "also": sum.also.iter().map(|also| {
            json!({ "formula": formula(voice, *also), "source": source(*also), "grade": grade(*also).words() })
        }).collect::<Vec<_>>(),
        "cautions": sum.cautions.iter().map(|caution| voice.say(&caution.key(), &[])).collect::<Vec<_>>(),
        "caution_codes": sum.cautions.iter().map(|caution| caution.name()).collect::<Vec<_>>(),
    })
}

fn source(source: Source) -> Value {
    json!({ "id": source.id, "document": source.document, "locator": source.locator })
}
