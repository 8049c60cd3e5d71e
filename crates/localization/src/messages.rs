//! The messages of both languages, and saying one of them.

use std::borrow::Cow;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use trade_facts::Translated;
use unic_langid::langid;

use crate::locale::{Lang, Locale};

macro_rules! files {
    ($($lang:ident: [$($name:literal),+ $(,)?]),+ $(,)?) => {
        &[$($((Lang::$lang, $name, include_str!(concat!("../../../locales/", $name)))),+),+]
    };
}

/// Every file of messages: its language, its path under `locales/`, its text.
pub const FILES: &[(Lang, &str, &str)] = files![
    En: [
        "en/reasons.ftl",
        "en/actions.ftl",
        "en/standing.ftl",
        "en/names.ftl",
        "en/forms.ftl",
        "en/numbers.ftl",
        "en/order.ftl",
        "en/shell.ftl",
        "en/sums.ftl",
        "en/sum_forms.ftl",
        "en/pictures.ftl",
        "en/drying.ftl",
        "en/pages.ftl",
        "en/photo.ftl",
        "en/recipe.ftl",
        "en/panel_pages.ftl",
        "en/script.ftl",
        "en/plan.ftl",
        "en/plan_pages.ftl",
        "en/answer_pages.ftl",
        "en/drying_pages.ftl",
        "en/people_pages.ftl",
        "en/line_pages.ftl",
        "en/papers.ftl",
        "en/frame.ftl",
        "en/steps.ftl",
    ],
    Es: [
        "es/reasons.ftl",
        "es/actions.ftl",
        "es/standing.ftl",
        "es/names.ftl",
        "es/forms.ftl",
        "es/numbers.ftl",
        "es/order.ftl",
        "es/shell.ftl",
        "es/sums.ftl",
        "es/sum_forms.ftl",
        "es/pictures.ftl",
        "es/drying.ftl",
        "es/pages.ftl",
        "es/photo.ftl",
        "es/recipe.ftl",
        "es/panel_pages.ftl",
        "es/script.ftl",
        "es/plan.ftl",
        "es/plan_pages.ftl",
        "es/answer_pages.ftl",
        "es/drying_pages.ftl",
        "es/people_pages.ftl",
        "es/line_pages.ftl",
        "es/papers.ftl",
        "es/frame.ftl",
        "es/steps.ftl",
    ],
];

/// The Spanish of the records under `trade/`, which have their English themselves: its path under `locales/`,
/// named as their file there, and its text. The id of a message is [`Translated::key`]. These stand apart, since no
/// literal of the source says them.
pub const TRADE_FILES: &[(Lang, &str, &str)] = files![
    Es: [
        "es/trade/allowances.ftl",
        "es/trade/facts.ftl",
        "es/trade/finishes.ftl",
        "es/trade/glossary.ftl",
        "es/trade/hold_point_tests.ftl",
        "es/trade/incidents.ftl",
        "es/trade/materials.ftl",
        "es/trade/pour_spec.ftl",
        "es/trade/sealers.ftl",
        "es/trade/signs.ftl",
        "es/trade/sources.ftl",
    ],
];

/// Something put into a message.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg<'a> {
    /// A text, shown as it is.
    Text(Cow<'a, str>),
    /// A number, which also chooses the plural.
    Number(f64),
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Arg<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

impl From<u32> for Arg<'_> {
    fn from(count: u32) -> Self {
        Self::Number(f64::from(count))
    }
}

impl From<f64> for Arg<'_> {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

type Bundle = FluentBundle<FluentResource>;

/// Constant data, parsed once.
static ENGLISH: LazyLock<Bundle> = LazyLock::new(|| bundle(Lang::En, FILES));
static SPANISH: LazyLock<Bundle> = LazyLock::new(|| bundle(Lang::Es, FILES));
static SPANISH_TRADE: LazyLock<Bundle> = LazyLock::new(|| bundle(Lang::Es, TRADE_FILES));

fn bundle(lang: Lang, files: &[(Lang, &str, &'static str)]) -> Bundle {
    let id = match lang {
        Lang::En => langid!("en-US"),
        Lang::Es => langid!("es-US"),
    };
    let mut bundle = Bundle::new_concurrent(vec![id]);
    // Isolating marks around names would be copied into papers and searches.
    bundle.set_use_isolating(false);
    for (_, name, text) in files.iter().filter(|(l, ..)| *l == lang) {
        let resource = FluentResource::try_new((*text).to_owned())
            .unwrap_or_else(|(_, errors)| panic!("a test reads every file; {name}: {errors:?}"));
        if let Err(errors) = bundle.add_resource(resource) {
            panic!("a test looks for doubled keys; {name}: {errors:?}");
        }
    }
    bundle
}

impl Locale {
    fn bundle(self) -> &'static Bundle {
        match self.lang {
            Lang::En => &ENGLISH,
            Lang::Es => &SPANISH,
        }
    }

    /// Whether there is a message under the key.
    #[must_use]
    pub fn knows(self, key: &'static str) -> bool {
        self.knows_built(key)
    }

    /// The message under a key, with its arguments filled in. The key is a literal of the source, never
    /// put together, so that it is found where it is said. A key without a message comes back as it
    /// is, so that a mistake is seen and nothing breaks.
    #[must_use]
    pub fn message(self, key: &'static str, args: &[(&str, Arg<'_>)]) -> String {
        self.message_built(key, args)
    }

    /// As [`Locale::knows`], of a key that was put together: only for forms, calculations and the names of
    /// kinds, until those say their keys as literals too. Goes with them.
    #[must_use]
    pub fn knows_built(self, key: &str) -> bool {
        self.bundle().has_message(key)
    }

    /// As [`Locale::message`], of a key that was put together: see [`Locale::knows_built`].
    #[must_use]
    pub fn message_built(self, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        let bundle = self.bundle();
        let Some(pattern) = bundle.get_message(key).and_then(|m| m.value()) else { return key.to_owned() };
        let mut filled = FluentArgs::with_capacity(args.len());
        for (name, arg) in args {
            let value = match arg {
                Arg::Text(text) => FluentValue::from(text.as_ref()),
                Arg::Number(number) => FluentValue::from(*number),
            };
            filled.set(*name, value);
        }
        // Errors are arguments that are missing; tests rule them out for every message of ours.
        bundle.format_pattern(pattern, Some(&filled), &mut Vec::new()).into_owned()
    }

    /// One of the texts of a record of `trade/`, by its name in [`Translated::texts`]: its own English, or the Spanish
    /// under its key where there is one. Empty where the record has no such text.
    #[must_use]
    pub fn text_of(self, record: &impl Translated, text: &'static str) -> String {
        let texts = record.texts();
        let Some(at) = texts.iter().position(|(name, _)| *name == text) else { return String::new() };
        let spanish = || {
            let message = SPANISH_TRADE.get_message(&record.key())?;
            let pattern = if at == 0 { message.value()? } else { message.get_attribute(text)?.value() };
            Some(SPANISH_TRADE.format_pattern(pattern, None, &mut Vec::new()).into_owned())
        };
        (self.lang == Lang::Es).then(spanish).flatten().unwrap_or_else(|| texts[at].1.to_owned())
    }

    /// The text under an attribute of a message, where it has one.
    pub(crate) fn attribute(self, key: &'static str, attribute: &str) -> Option<String> {
        let bundle = self.bundle();
        let attribute = bundle.get_message(key)?.get_attribute(attribute)?;
        Some(bundle.format_pattern(attribute.value(), None, &mut Vec::new()).into_owned())
    }
}
