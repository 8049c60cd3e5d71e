//! The messages as parsed: keys, what they ask for, their plain texts.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::FluentResource;
use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};
use localization::{FILES, Lang};

/// One message or attribute (`key.attribute`).
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Message {
    /// The arguments it asks for.
    pub(crate) asks: BTreeSet<String>,
    /// Its texts between the arguments.
    pub(crate) text: String,
}

/// All messages of a language by key. A key that stands twice or junk in a file is a failure.
pub(crate) fn messages(lang: Lang) -> BTreeMap<String, Message> {
    let mut out = BTreeMap::new();
    for (_, name, text) in FILES.iter().filter(|(l, ..)| *l == lang) {
        for (key, message) in read(name, text) {
            assert!(out.insert(key.clone(), message).is_none(), "{name}: {key} stands twice");
        }
    }
    out
}

/// The messages of one file.
pub(crate) fn read(name: &str, text: &str) -> BTreeMap<String, Message> {
    let mut out = BTreeMap::new();
    let resource = FluentResource::try_new(text.to_owned())
        .unwrap_or_else(|(_, errors)| panic!("{name} does not parse: {errors:?}"));
    for entry in resource.entries() {
        match entry {
            Entry::Message(message) => {
                let own = message.value.iter().map(|value| (message.id.name.to_owned(), value));
                let more = message.attributes.iter().map(|a| (format!("{}.{}", message.id.name, a.id.name), &a.value));
                for (key, pattern) in own.chain(more) {
                    let mut read = Message::default();
                    walk(pattern, &mut read);
                    assert!(out.insert(key.clone(), read).is_none(), "{name}: {key} stands twice");
                }
            }
            Entry::Comment(_) | Entry::GroupComment(_) | Entry::ResourceComment(_) => {}
            other => panic!("{name} holds {other:?}"),
        }
    }
    out
}

fn walk(pattern: &Pattern<&str>, into: &mut Message) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => {
                into.text.push_str(value);
                into.text.push(' ');
            }
            PatternElement::Placeable { expression: Expression::Inline(inline) } => asked(inline, into),
            PatternElement::Placeable { expression: Expression::Select { selector, variants } } => {
                asked(selector, into);
                for variant in variants {
                    walk(&variant.value, into);
                }
            }
        }
    }
}

fn asked(inline: &InlineExpression<&str>, into: &mut Message) {
    match inline {
        InlineExpression::VariableReference { id } => {
            into.asks.insert(id.name.to_owned());
        }
        // A sign that can't be seen in a text: a space that keeps a number and its unit on one line.
        InlineExpression::StringLiteral { .. } => into.text.push(' '),
        other => panic!("our messages only ask for arguments, not {other:?}"),
    }
}
