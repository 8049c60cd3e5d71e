//! A quantity together with what was typed, so that the diary keeps the person's own words.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

use crate::notation::{Notation, ReadError};

/// A quantity and the text it was read from.
///
/// In JSON it is that text, unit included: `"12' 6 1/2\""`.
/// ```
/// use units::{Length, AsWritten};
/// let typed: AsWritten<Length> = serde_json::from_str(r#""4 in""#).unwrap();
/// assert_eq!(typed.value(), Length::inches(4.0));
/// assert_eq!(serde_json::to_string(&typed).unwrap(), r#""4 in""#);
/// ```
#[derive(Clone, PartialEq)]
pub struct AsWritten<Q> {
    text: String,
    value: Q,
}

impl<Q: Notation> AsWritten<Q> {
    /// Reads a text and keeps it.
    ///
    /// # Errors
    /// What [`Notation::read`] says.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        let text = text.trim();
        Ok(Self { value: Q::read(text)?, text: text.to_owned() })
    }

    /// The quantity.
    #[must_use]
    pub fn value(&self) -> Q {
        self.value
    }

    /// What was typed.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }
}

impl<Q> fmt::Debug for AsWritten<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "AsWritten({:?})", self.text)
    }
}

impl<Q> fmt::Display for AsWritten<Q> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl<Q> Serialize for AsWritten<Q> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.text)
    }
}

impl<'de, Q: Notation> Deserialize<'de> for AsWritten<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Text<Q>(std::marker::PhantomData<Q>);
        impl<Q: Notation> de::Visitor<'_> for Text<Q> {
            type Value = AsWritten<Q>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a text such as \"4 in\" with its unit")
            }
            fn visit_str<E: de::Error>(self, text: &str) -> Result<Self::Value, E> {
                AsWritten::read(text).map_err(E::custom)
            }
            // A number carries no unit: the reader says so, and pH, which has none, accepts it.
            fn visit_f64<E: de::Error>(self, number: f64) -> Result<Self::Value, E> {
                AsWritten::read(&number.to_string()).map_err(E::custom)
            }
            fn visit_i64<E: de::Error>(self, number: i64) -> Result<Self::Value, E> {
                AsWritten::read(&number.to_string()).map_err(E::custom)
            }
            fn visit_u64<E: de::Error>(self, number: u64) -> Result<Self::Value, E> {
                AsWritten::read(&number.to_string()).map_err(E::custom)
            }
        }
        deserializer.deserialize_any(Text(std::marker::PhantomData))
    }
}
