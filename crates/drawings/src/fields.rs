//! The groups of one entity, each read as what its code says it is.

use crate::DrawingError;
use crate::Spot;
use crate::pairs::Pair;
use crate::text::Encoding;

/// No coordinate of a building is larger, in any unit.
const LARGEST: f64 = 1e12;

/// A value by the range of its code.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Value {
    Text(String),
    Whole(i16),
    Number(f64),
}

/// Groups in the order of the file.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Fields(Vec<(i32, Value)>);

impl Fields {
    /// Those groups whose codes are asked for; no other is looked at.
    pub(crate) fn read(groups: &[Pair<'_>], codes: &[&[i32]], encoding: Encoding) -> Result<Self, DrawingError> {
        let asked = groups.iter().filter(|group| codes.iter().any(|some| some.contains(&group.code)));
        asked.map(|group| Ok((group.code, value(group, encoding)?))).collect::<Result<_, _>>().map(Self)
    }

    pub(crate) fn iter(&self) -> impl Iterator<Item = (i32, &Value)> {
        self.0.iter().map(|(code, value)| (*code, value))
    }

    /// A group that comes twice counts as it comes last.
    fn last(&self, code: i32) -> Option<&Value> {
        self.0.iter().rev().find(|(own, _)| *own == code).map(|(_, value)| value)
    }

    pub(crate) fn number(&self, code: i32, otherwise: f64) -> f64 {
        match self.last(code) {
            Some(Value::Number(number)) => *number,
            _ => otherwise,
        }
    }

    pub(crate) fn whole(&self, code: i32, otherwise: i16) -> i16 {
        match self.last(code) {
            Some(Value::Whole(number)) => *number,
            _ => otherwise,
        }
    }

    pub(crate) fn text(&self, code: i32) -> &str {
        match self.last(code) {
            Some(Value::Text(text)) => text,
            _ => "",
        }
    }

    /// A point by the code of its x; that of its y is ten more.
    pub(crate) fn spot(&self, code: i32, otherwise: Spot) -> Spot {
        Spot::new(self.number(code, otherwise.x), self.number(code + 10, otherwise.y))
    }

    /// How many points begin here.
    pub(crate) fn points(&self) -> usize {
        self.iter().filter(|(code, _)| *code == 10).count()
    }
}

fn value(group: &Pair<'_>, encoding: Encoding) -> Result<Value, DrawingError> {
    let text = String::from_utf8_lossy(group.value.trim_ascii());
    Ok(match group.code {
        1..=9 => Value::Text(encoding.read(group.value)),
        60..=79 => Value::Whole(text.parse().map_err(|_| group.malformed("a whole number from -32768 to 32767"))?),
        _ => {
            let number: f64 = text.parse().map_err(|_| group.malformed("a number"))?;
            if !(number.is_finite() && number.abs() <= LARGEST) {
                return Err(group.malformed("a number up to 10^12"));
            }
            Value::Number(number)
        }
    })
}
