//! Small work on texts: finding what a person typed the way a person means it, capitals, file names.

/// A text in small letters without the accents of Spanish: on a phone they are seldom typed.
pub(crate) fn plain(text: &str) -> String {
    let bare = |c: char| match c {
        'á' | 'à' | 'ä' => 'a',
        'é' | 'è' | 'ë' => 'e',
        'í' | 'ì' | 'ï' => 'i',
        'ó' | 'ò' | 'ö' => 'o',
        'ú' | 'ù' | 'ü' => 'u',
        'ñ' => 'n',
        c => c,
    };
    text.to_lowercase().chars().map(bare).collect()
}

/// Whether every word that was searched for is somewhere in the texts.
pub(crate) fn holds(search: &str, texts: &[&str]) -> bool {
    let all = plain(&texts.join(" "));
    plain(search).split_whitespace().all(|word| all.contains(word))
}

/// With a capital, unless the word is written as it is, such as pH.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if !second.is_uppercase() => first.to_uppercase().chain(letters).collect(),
        _ => text.to_owned(),
    }
}

/// A file name of plain letters from what a person called something.
pub(crate) fn file_name(name: &str) -> String {
    let plain = plain(name);
    let words: Vec<&str> = plain.split(|c: char| !c.is_ascii_alphanumeric()).filter(|word| !word.is_empty()).collect();
    if words.is_empty() { "slab".to_owned() } else { words.join("-") }
}

#[cfg(test)]
mod tests {
    use super::{capital, file_name, holds};

    #[test]
    fn accents_case_and_order_make_no_difference() {
        let texts = ["acid stain (reactive stain)", "tinte ácido (tinte reactivo)"];
        for search in ["", "ACIDO", "stain reactive", "tinte ácido", "  reactivo "] {
            assert!(holds(search, &texts), "{search}");
        }
        assert!(!holds("acid sealer", &texts));
    }

    #[test]
    fn capitals_leave_ph_as_it_is() {
        assert_eq!(["dew point", "pH", "édad", "a", ""].map(capital), ["Dew point", "pH", "Édad", "a", ""]);
    }

    #[test]
    fn any_name_gives_a_plain_file_name() {
        for (name, plain) in
            [("Café, piso 2", "cafe-piso-2"), ("../../etc", "etc"), ("床", "slab"), ("a\r\nb\"", "a-b")]
        {
            assert_eq!(file_name(name), plain);
        }
    }
}
