//! Every label, choice, button, reason and instruction stands in both languages, and nothing idle.

use std::collections::BTreeSet;

use form_schema::{InputKind, TermList};
use localization::{
    FILES, Lang, Locale, UnitSystem, choice_label, group_label, hint, how, input_label, label, place_label,
    preset_label, why,
};
use slab_diary::body::Group;
use slab_diary::{PLACE_INPUTS, PLACE_KINDS};
use trade_facts::{SETTABLE, Trade};

use crate::support::{form, forms};

fn keys(lang: Lang) -> BTreeSet<String> {
    let files = FILES.iter().filter(|(l, name, _)| *l == lang && name.ends_with("/forms.ftl"));
    let lines = files.flat_map(|(.., text)| text.lines()).filter(|line| !line.starts_with([' ', '#']));
    lines.filter_map(|line| line.split_once(" = ")).map(|(key, _)| key.to_owned()).collect()
}

fn key(name: &str) -> String {
    name.replace('_', "-")
}

const MISTAKES: &str =
    "missing missing-named no-place two-days unit-unclear of-field none-answered not-both no-number no-unit unknown-unit out-of-order negative
    share-or-percent percent-range ratio-range ph-range too-cold not-a-choice not-an-id not-a-count not-positive
    not-zero-or-more not-zero-to-hundred not-a-color-number not-money not-a-currency not-a-time-zone
    outside-the-picture no-patch refused not-a-term unknown-field wrong-form given-twice not-a-number";

const PROBLEMS: &str = "line-missing line-any-text line-none-answered line-not-both before-pour in-future no-such-entry other-kind no-such-panel no-panel-yet no-such-zone off-plan
    no-place nothing-taken-back job-taken-back off-slab bad-plan deeper-than-slab figure not-above-zero no-kind unknown-kind";

/// The keys that somebody may ask for; of a specific and a general one, whichever stands there.
fn usable() -> BTreeSet<String> {
    let mut usable = BTreeSet::new();
    for form in forms() {
        let kind = key(form.kind.name());
        usable.extend([format!("form-why-{kind}"), format!("form-how-{kind}")]);
        usable.extend(form.presets.iter().map(|p| format!("preset-{kind}-{}", key(p.name))));
        for field in form.fields {
            let name = key(field.name);
            for input in field.inputs().iter().copied().chain([field.name]) {
                usable.extend([format!("field-{}", key(input)), format!("field-{kind}-{}", key(input))]);
            }
            usable.extend([format!("hint-{name}"), format!("hint-{kind}-{name}")]);
            if let InputKind::Choice(values) = field.input {
                for value in values {
                    usable.extend([
                        format!("choice-{name}-{}", key(value)),
                        format!("choice-{kind}-{name}-{}", key(value)),
                    ]);
                }
            }
        }
    }
    usable.extend(["yes", "no"].map(|v| format!("choice-{v}")));
    usable.extend(MISTAKES.split_whitespace().map(|m| format!("mistake-{m}")));
    usable.extend(PROBLEMS.split_whitespace().map(|p| format!("problem-{p}")));
    usable.extend(
        forms()
            .iter()
            .map(|f| format!("kind-{}", key(f.kind.name())))
            .chain(["kind-plan", "kind-air-series"].map(str::to_owned)),
    );
    usable.extend(Group::ALL.iter().map(|g| format!("form-group-{}", g.name())));
    usable.extend(PLACE_KINDS.iter().map(|k| format!("place-{}", key(k))));
    usable.extend(PLACE_INPUTS.iter().map(|i| format!("field-{}", key(i))));
    usable.extend(["form-fact", "place-all-over"].map(str::to_owned));
    usable.extend("day hour second each ratio fraction emission".split(' ').map(|u| format!("form-unit-{u}")));
    usable
}

#[test]
fn nothing_idle_and_the_named_ones_there() {
    let usable = usable();
    for lang in Lang::ALL {
        let has = keys(lang);
        let idle: Vec<_> = has.difference(&usable).collect();
        assert!(idle.is_empty(), "{lang:?} idle: {idle:?}");
        let always = ["kind-", "form-", "mistake-", "problem-", "place-"];
        let missing: Vec<_> =
            usable.difference(&has).filter(|k| always.iter().any(|prefix| k.starts_with(prefix))).collect();
        assert!(missing.is_empty(), "{lang:?} missing: {missing:?}");
    }
    let (english, spanish) = (keys(Lang::En), keys(Lang::Es));
    assert_eq!(english, spanish);
    assert!(english.len() > 300, "only {}", english.len());
}

/// What a reader sees is never a key, an id or a value of the diary.
#[test]
fn every_word_of_every_form_is_said_in_both_languages() {
    let trade = Trade::built_in();
    let mut said = 0;
    for locale in Lang::ALL.map(|lang| Locale::new(lang, UnitSystem::Imperial)) {
        let mut check = |text: String, what: &str| {
            assert!(!text.is_empty() && text != what && text != key(what), "{what} is not said in {:?}", locale.lang);
            said += 1;
        };
        for group in Group::ALL {
            check(group_label(locale, group), group.name());
        }
        for kind in PLACE_KINDS {
            check(place_label(locale, kind), kind);
        }
        for form in forms() {
            check(locale.kind(form.kind), form.kind.name());
            check(why(locale, form), &format!("form-why-{}", form.kind.name()));
            check(how(locale, form), &format!("form-how-{}", form.kind.name()));
            for field in form.fields {
                check(label(locale, form, field), field.name);
                for input in field.inputs() {
                    check(input_label(locale, form, input), input);
                }
                // Trade terms and hold points are named by crate `words`, whose tests read them.
                let ours = matches!(
                    field.input,
                    InputKind::Choice(_) | InputKind::YesNo | InputKind::Flag | InputKind::Term(TermList::Facts)
                );
                if ours && field.name != "hold_point" {
                    for value in field.choices(trade) {
                        check(choice_label(locale, form, field, value), value);
                    }
                }
                if let Some(hint) = hint(locale, form, field) {
                    check(hint, field.name);
                }
            }
            for preset in form.presets {
                check(preset_label(locale, form, preset), preset.name);
            }
        }
    }
    assert!(said > 1000, "only {said}");
}

/// Two fields of one form, two choices of one field or two buttons that read the same can't be told
/// apart.
#[test]
fn labels_within_a_form_differ() {
    let trade = Trade::built_in();
    for locale in Lang::ALL.map(|lang| Locale::new(lang, UnitSystem::Imperial)) {
        for form in forms() {
            let differ = |labels: Vec<String>| {
                let unique: BTreeSet<&String> = labels.iter().collect();
                assert_eq!(unique.len(), labels.len(), "{}: {labels:?}", form.kind.name());
            };
            differ(form.fields.iter().map(|f| label(locale, form, f)).collect());
            differ(form.presets.iter().map(|p| preset_label(locale, form, p)).collect());
            for field in form.fields {
                differ(field.choices(trade).into_iter().map(|v| choice_label(locale, form, field, v)).collect());
            }
        }
    }
}

#[test]
fn english_and_spanish_say_it_differently() {
    let (english, spanish) = Lang::ALL.map(|lang| Locale::new(lang, UnitSystem::Imperial)).into();
    let mut compared = 0;
    for form in forms() {
        for (en, es) in [(why(english, form), why(spanish, form)), (how(english, form), how(spanish, form))] {
            assert_ne!(en, es);
            compared += 1;
        }
    }
    assert_eq!(compared, 2 * forms().len());
}

/// Where acid, solvent, dust, waste water or fresh concrete are handled, the caution stands in the
/// instructions, and it points to the safety data sheet or the local rules.
#[test]
fn dangerous_kinds_carry_their_caution() {
    let sheet = [
        "solvent_wipe",
        "acid_drop",
        "emission_dish",
        "incident",
        "cleaning",
        "repair",
        "panel_stained",
        "batch_mixed",
        "coat_laid",
        "neutralized",
        "sealer_coat",
        "delivery",
    ];
    let caution = [
        "pour",
        "scrape",
        "solvent_wipe",
        "acid_drop",
        "surface_ph",
        "slab_humidity",
        "emission_dish",
        "cleaning",
        "repair",
        "panel_made",
        "panel_stained",
        "batch_mixed",
        "coat_laid",
        "neutralized",
        "rinsed",
        "sealer_coat",
        "survey",
        "color_look",
    ];
    for kind in sheet {
        let form = form(kind).unwrap();
        assert!(how(Locale::new(Lang::En, UnitSystem::Imperial), form).contains("safety data sheet"), "{kind}");
        assert!(how(Locale::new(Lang::Es, UnitSystem::Imperial), form).contains(" de seguridad"), "{kind}");
    }
    for kind in caution {
        let form = form(kind).unwrap();
        let (en, es) = (
            how(Locale::new(Lang::En, UnitSystem::Imperial), form),
            how(Locale::new(Lang::Es, UnitSystem::Imperial), form),
        );
        assert!(en.contains("Warning:") || en.contains("Caution:"), "{kind}");
        assert_eq!(
            (en.contains("Warning:"), en.contains("Caution:")),
            (es.contains("Advertencia:"), es.contains("Precaución:")),
            "{kind}"
        );
    }
}

#[test]
fn every_figure_offered_is_a_fact_with_a_value() {
    for id in SETTABLE {
        assert!(TermList::Facts.knows(Trade::built_in(), id), "{id}");
    }
    let unique: BTreeSet<_> = SETTABLE.iter().collect();
    assert_eq!(unique.len(), SETTABLE.len());
}
