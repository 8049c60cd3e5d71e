//! Text of a drawing: how the file writes letters, and the codes for their look.

const MAX_TEXT: usize = 4_000;

/// How a file writes text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Encoding {
    /// A byte for each letter, until the release of 2007.
    #[default]
    Latin,
    Unicode,
}

impl Encoding {
    /// Text as UTF-8 on one line.
    pub(crate) fn read(self, bytes: &[u8]) -> String {
        let text: String = match self {
            Self::Unicode => String::from_utf8_lossy(bytes).into_owned(),
            Self::Latin => bytes.iter().map(|b| char::from(*b)).collect(),
        };
        // A caret begins a control character, and a label has none.
        let plain: String = text.trim().chars().take(MAX_TEXT).map(|c| if c == '^' { ' ' } else { c }).collect();
        unescaped(&plain)
    }
}

/// `\U+00F1` as the letter that it stands for.
fn unescaped(text: &str) -> String {
    let mut parts = text.split("\\U+");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let letter = part.get(..4).and_then(|hex| u32::from_str_radix(hex, 16).ok()).and_then(char::from_u32);
        match letter.filter(|c| !c.is_control()) {
            Some(letter) => {
                out.push(letter);
                out.push_str(&part[4..]);
            }
            None => out.push_str(part),
        }
    }
    out
}

/// The text without the codes for its look: `{\fSans;Hall}\PNorth` is `Hall North`.
pub(crate) fn without_look(text: &str) -> String {
    let mut out = String::new();
    let mut letters = text.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '{' | '}' => {}
            '\\' => match letters.next() {
                Some('P' | '~') => out.push(' '),
                Some(own @ ('\\' | '{' | '}')) => out.push(own),
                // A code with a value runs to its semicolon; these have none.
                Some('L' | 'l' | 'O' | 'o' | 'K' | 'k') | None => {}
                Some(_) => while letters.next().is_some_and(|c| c != ';') {},
            },
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{Encoding, without_look};

    #[test]
    fn letters_come_out_of_either_way_to_write_them() {
        assert_eq!(Encoding::Latin.read(b" Sal\xF3n "), "Salón");
        assert_eq!(Encoding::Unicode.read("Salón".as_bytes()), "Salón");
        assert_eq!(Encoding::Latin.read(b"Sal\\U+00F3n \\U+00"), "Salón 00");
        assert_eq!(Encoding::Unicode.read(b"a^Jb"), "a Jb");
    }

    #[test]
    fn codes_of_the_look_are_left_out() {
        assert_eq!(without_look("{\\fSans|b0;Hall}\\PNorth \\LA\\l"), "Hall North A");
    }
}
