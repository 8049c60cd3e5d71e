//! One numbering of the marks: by their order in the list, the same in every width and whatever is hidden.

use super::mark::{MarkKind, PlanLayers, PlanMark};

/// A mark with its number; a letter for a place to test next, nothing for a stretch of work, which has a word.
pub(super) struct Numbered<'a> {
    pub(super) mark: &'a PlanMark,
    pub(super) number: Option<String>,
}

impl<'a> Numbered<'a> {
    pub(super) fn all(layers: &'a PlanLayers) -> Vec<Self> {
        let (mut tests, mut next) = (0, 0);
        let number = |mark: &'a PlanMark| {
            let number = match mark.kind {
                MarkKind::Section => None,
                MarkKind::Next => {
                    next += 1;
                    Some(letter(next))
                }
                _ => {
                    tests += 1;
                    Some(tests.to_string())
                }
            };
            Self { mark, number }
        };
        layers.marks.iter().map(number).collect()
    }
}

/// The number of a zone whose name finds no room: after those of the marks, so that no two things have one number.
pub(super) fn zone_number(layers: &PlanLayers, at: usize) -> String {
    let marks = layers.marks.iter().filter(|m| !matches!(m.kind, MarkKind::Next | MarkKind::Section)).count();
    (marks + at + 1).to_string()
}

/// The letter of the place to test next with this number, from 1: A to Z, then AA, AB and on.
pub(crate) fn letter(number: usize) -> String {
    let mut rest = number;
    let mut letters = Vec::new();
    while rest > 0 {
        letters.push(char::from(b'A' + ((rest - 1) % 26) as u8));
        rest = (rest - 1) / 26;
    }
    letters.into_iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::letter;

    #[test]
    fn letters_go_on_after_the_last() {
        assert_eq!([1, 2, 26, 27, 52, 53, 702, 703].map(letter), ["A", "B", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
    }
}
