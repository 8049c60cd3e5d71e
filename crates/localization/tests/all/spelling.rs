//! No British spelling in the English, no English in the Spanish, one Spanish word for one thing.

use std::collections::BTreeSet;

use crate::messages::messages;
use localization::Lang;

fn words_of(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphabetic()).filter(|w| !w.is_empty()).map(str::to_lowercase)
}

#[test]
fn the_english_is_spelled_the_american_way() {
    let british = [
        "colour",
        "grey",
        "vapour",
        "mould",
        "labour",
        "favour",
        "odour",
        "harbour",
        "neutralis",
        "organis",
        "recognis",
        "realis",
        "finalis",
        "minimis",
        "moisturis",
        "metre",
        "litre",
        "centre",
        "fibre",
        "tyre",
        "judgement",
        "programme",
        "aluminium",
        "plough",
        "travell",
        "labell",
        "levell",
        "cancell",
        "catalogue",
        "practise",
        "licence",
        "defence",
        "whilst",
        "learnt",
        "acknowledgement",
        "sulphur",
        "gauge wheel",
    ];
    let mut read = 0;
    for (key, message) in messages(Lang::En) {
        for word in words_of(&message.text) {
            assert!(!british.iter().any(|b| word.starts_with(b)), "{key}: {word}");
            read += 1;
        }
    }
    assert!(read > 2500, "only {read} words read");
}

#[test]
fn the_spanish_has_no_english_left() {
    let english = "the and with without water slab stain sealer scrape blade hold point test film moisture drop chalk floor \
        of to is are was not from for this that it be by on in at or if then when which will can must may \
        burn burnished crack patch pour cure mix coat rinse owner maker sheet probe dish rag gloves acid look note wait \
        release released held yet ready fresh dry wet hour hours day days minute minutes year month hairline scrub \
        mock primer panels foam tape overspray finish broom";
    let english: BTreeSet<&str> = english.split_whitespace().collect();
    // Words that are Spanish where they stand.
    let shared = [("paper-curing-panels", "cure"), ("pic-month-5", "may")];
    for (key, message) in messages(Lang::Es) {
        for word in words_of(&message.text) {
            let word = word.as_str();
            assert!(!english.contains(word) || shared.contains(&(key.as_str(), word)), "{key}: {word}");
        }
    }
}

/// A word of four letters or more that stands in both versions of a message was left untranslated,
/// unless both languages have it.
#[test]
fn no_word_was_left_untranslated() {
    // Words of both languages, and what is typed on the command line.
    let both = BTreeSet::from([
        "color",
        "panel",
        "plan",
        "final",
        "area",
        "normal",
        "local",
        "mils",
        "goggles",
        "vapor",
        "underfoot",
        "diary",
        "demo",
        "data",
        "help",
        "json",
        "error",
        "factor",
        "metal",
        "molar",
        "moles",
        "baumé",
        "ciede",
        "cielab",
        "real",
        "kriging",
        "matérn",
        "wish",
        "jpeg",
        "decimal",
        "latin",
        "natural",
        "https",
        "localhost",
        "ctrl",
        "public",
        "legal",
        "usual",
        "ticket",
        "portland",
        "astm",
        "general",
        "invisible",
        "cure",
    ]);
    let spanish = messages(Lang::Es);
    let mut compared = 0;
    for (key, message) in messages(Lang::En) {
        let english: BTreeSet<String> = words_of(&message.text).filter(|w| w.chars().count() >= 4).collect();
        for word in words_of(&spanish[&key].text) {
            assert!(!english.contains(&word) || both.contains(word.as_str()), "{key}: {word}");
            compared += 1;
        }
    }
    assert!(compared > 2500, "only {compared} words compared");
}

/// The words of `trade/glossary.toml` (common practice, no source), against their rivals elsewhere.
#[test]
fn one_spanish_word_for_one_thing() {
    let rivals = [
        "hormigón",
        "tiza",
        "placa",
        "encofrado",
        "capataz",
        "vaciado",
        "vertido",
        "sellante",
        "selladora",
        "paleta",
        "enlucido",
        "agujero",
        "fraguado",
        "rasqueta",
        "cuchilla",
        "gafas",
        "disolvente",
        "decapante",
        "barreno",
        "retardador",
        "amoníaco",
        "moteado",
        "desconchado",
        "cataplasma",
        "rodapié",
        "pulir",
        "lijadora",
        "propietario",
        "cliente",
        "ventanilla",
        "lechada",
        "bicapa",
        "recubrimiento",
        "ácida",
        "lavador",
        "chequeo",
        "chequear",
        "parqueo",
        "sampleo",
    ];
    for (key, message) in messages(Lang::Es) {
        for word in words_of(&message.text) {
            assert!(!rivals.contains(&word.as_str()), "{key}: {word}");
        }
    }
}

#[test]
fn spanish_questions_open_as_they_close() {
    for (key, message) in messages(Lang::Es) {
        assert_eq!(message.text.matches('¿').count(), message.text.matches('?').count(), "{key}");
        // The questions of the hold points are nothing but questions.
        assert!(!key.starts_with("ask-") || message.text.starts_with('¿'), "{key}");
    }
}
