//! One question: a name and its `key=value` pairs.

use std::error::Error;

use units::{RelativeHumidity, Temperature};

/// A line taken apart.
pub(crate) struct Ask<'a> {
    pub(crate) name: &'a str,
    pairs: Vec<(&'a str, &'a str)>,
}

impl<'a> Ask<'a> {
    pub(crate) fn read(line: &'a str) -> Result<Self, Box<dyn Error>> {
        let mut words = line.split_ascii_whitespace();
        let name = words.next().ok_or("an empty line")?;
        let pairs = words
            .map(|word| word.split_once('=').ok_or_else(|| format!("{word:?} is not key=value")))
            .collect::<Result<_, _>>()?;
        Ok(Self { name, pairs })
    }

    /// The value of a key that may be absent.
    pub(crate) fn maybe(&self, key: &str) -> Option<&'a str> {
        self.pairs.iter().find(|(name, _)| *name == key).map(|(_, value)| *value)
    }

    pub(crate) fn word(&self, key: &str) -> Result<&'a str, Box<dyn Error>> {
        self.maybe(key).ok_or_else(|| format!("{} needs {key}=…", self.name).into())
    }

    pub(crate) fn number(&self, key: &str) -> Result<f64, Box<dyn Error>> {
        let word = self.word(key)?;
        word.parse().map_err(|_| format!("{key}={word} is not a number").into())
    }

    pub(crate) fn numbers(&self, key: &str) -> Result<Vec<f64>, Box<dyn Error>> {
        let word = self.word(key)?;
        let parse = |part: &str| part.parse().map_err(|_| format!("{part:?} in {key} is not a number").into());
        word.split(',').map(parse).collect()
    }

    pub(crate) fn celsius(&self, key: &str) -> Result<Temperature, Box<dyn Error>> {
        Ok(Temperature::celsius(self.number(key)?))
    }

    pub(crate) fn percent(&self, key: &str) -> Result<RelativeHumidity, Box<dyn Error>> {
        Ok(RelativeHumidity::percent(self.number(key)?)?)
    }
}
