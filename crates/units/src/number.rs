//! Numbers as people write them: `12`, `1,200`, `3.81`, `3,81`, `6 1/2`, `6½`, `7/8`.

/// Cuts the text into numbers and words, in order.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Token {
    Number(f64),
    Word(String),
}

fn vulgar_fraction(c: char) -> Option<f64> {
    Some(match c {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        '⅛' => 0.125,
        '⅜' => 0.375,
        '⅝' => 0.625,
        '⅞' => 0.875,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        _ => return None,
    })
}

/// A comma is a thousands mark when groups of exactly three digits follow it (`1,200`, `12,345.5`)
/// and the first group is not a lone zero; otherwise a single comma is a decimal mark (`3,81`).
fn plain_number(text: &str) -> Option<f64> {
    let cleaned = if text.contains(',') {
        let (whole, decimals) = text.split_once('.').map_or((text, None), |(w, d)| (w, Some(d)));
        let groups: Vec<&str> = whole.split(',').collect();
        let grouped = groups.len() > 1
            && (1..=3).contains(&groups[0].len())
            && groups[0] != "0"
            && groups[1..].iter().all(|g| g.len() == 3);
        if grouped {
            match decimals {
                Some(d) => format!("{}.{d}", groups.concat()),
                None => groups.concat(),
            }
        } else if groups.len() == 2 && decimals.is_none() {
            format!("{}.{}", groups[0], groups[1])
        } else {
            return None;
        }
    } else {
        text.to_owned()
    };
    let value: f64 = cleaned.parse().ok()?;
    value.is_finite().then_some(value)
}

fn is_number_part(c: char) -> bool {
    c.is_ascii_digit() || c == '.' || c == ','
}

/// Splits `text` into tokens; `None` when something in it is no number and no word.
///
/// A whole number followed by a fraction is one number: `6 1/2`, `6-1/2`, `6½`. A minus sign is
/// only read in front of the first number.
pub(crate) fn tokens(text: &str) -> Option<Vec<Token>> {
    let chars: Vec<char> = text
        .chars()
        .map(|c| match c {
            '’' | '′' | '‘' | '`' => '\'',
            '”' | '″' | '“' => '"',
            '−' | '–' => '-',
            '⁄' => '/',
            '\u{a0}' | '\u{202f}' | '\t' => ' ',
            other => other,
        })
        .collect();
    let mut out: Vec<Token> = Vec::new();
    let mut i = 0;
    let mut sign = 1.0;
    let mut joinable = false; // the last token is a whole number that a fraction may extend
    while i < chars.len() {
        let c = chars[i];
        if c == ' ' {
            i += 1;
        } else if (c == '-' || c == '+') && out.is_empty() {
            sign = if c == '-' { -sign } else { sign };
            i += 1;
        } else if c == '-' {
            // `12'-6"` and `6-1/2`: a joiner between terms, never a minus.
            i += 1;
        } else if let Some(part) = vulgar_fraction(c) {
            if joinable {
                if let Some(Token::Number(n)) = out.last_mut() {
                    *n += part;
                }
            } else {
                out.push(Token::Number(part));
            }
            joinable = false;
            i += 1;
        } else if is_number_part(c) {
            let start = i;
            while i < chars.len() && is_number_part(chars[i]) {
                i += 1;
            }
            // Scientific notation: `4.03e-10`.
            if i < chars.len() && (chars[i] == 'e' || chars[i] == 'E') {
                let mut j = i + 1;
                if j < chars.len() && (chars[j] == '-' || chars[j] == '+') {
                    j += 1;
                }
                if j < chars.len() && chars[j].is_ascii_digit() {
                    while j < chars.len() && chars[j].is_ascii_digit() {
                        j += 1;
                    }
                    i = j;
                }
            }
            let first: String = chars[start..i].iter().collect();
            let first = first.trim_end_matches(',').to_owned();
            if i < chars.len() && chars[i] == '/' && chars.get(i + 1).is_some_and(char::is_ascii_digit) {
                i += 1;
                let below_start = i;
                while i < chars.len() && chars[i].is_ascii_digit() {
                    i += 1;
                }
                let below: f64 = chars[below_start..i].iter().collect::<String>().parse().ok()?;
                let above: f64 = first.parse().ok()?;
                if below == 0.0 {
                    return None;
                }
                let part = above / below;
                if joinable {
                    if let Some(Token::Number(n)) = out.last_mut() {
                        *n += part;
                    }
                } else {
                    out.push(Token::Number(part));
                }
                joinable = false;
            } else {
                let value = plain_number(&first)?;
                joinable = value.fract() == 0.0 && first.chars().all(|c| c.is_ascii_digit());
                out.push(Token::Number(value));
            }
        } else {
            let start = i;
            if c == '\'' || c == '"' {
                while i < chars.len() && chars[i] == c {
                    i += 1;
                }
            } else {
                while i < chars.len()
                    && chars[i] != ' '
                    && chars[i] != '\''
                    && chars[i] != '"'
                    && (!is_number_part(chars[i]) || unit_digit(&chars, start, i))
                {
                    i += 1;
                }
                if i == start {
                    return None;
                }
            }
            out.push(Token::Word(chars[start..i].iter().collect()));
            joinable = false;
        }
    }
    if sign < 0.0 {
        // The sign covers the whole of what follows: `-12' 6"` is minus twelve and a half feet.
        for token in &mut out {
            if let Token::Number(n) = token {
                *n = -*n;
            }
        }
    }
    Some(out)
}

/// A digit or dot that belongs to a unit's own name: `m2`, `ft2/gal`, `fl.oz`, `lb/1000ft2/24h`;
/// but the `6` of `12ft6in` starts a new number.
fn unit_digit(chars: &[char], start: usize, at: usize) -> bool {
    if at == start {
        return false;
    }
    let before = chars[at - 1];
    let power = matches!(chars[at], '2' | '3')
        && before.is_alphabetic()
        && chars.get(at + 1).is_none_or(|next| !next.is_alphanumeric() && *next != '.');
    power
        || chars[at] == '.' && before.is_alphabetic()
        || chars[start..at].iter().rev().take_while(|c| is_number_part(**c)).count() > 0
        || before == '/'
}
