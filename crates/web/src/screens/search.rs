//! Finding what a person typed in a text, the way a person means it.

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

#[cfg(test)]
mod tests {
    use super::holds;

    #[test]
    fn accents_case_and_order_make_no_difference() {
        let texts = ["acid stain (reactive stain)", "tinte ácido (tinte reactivo)"];
        for search in ["", "ACIDO", "stain reactive", "tinte ácido", "  reactivo "] {
            assert!(holds(search, &texts), "{search}");
        }
        assert!(!holds("acid sealer", &texts));
    }
}
