//! What all records share: an id, a grade, sources, and numbers in a unit.

use super::grade::Citation;
use super::unit::{InUnit, Unit};

/// A record of a data file.
pub trait Record {
    /// Word id, unique in its file.
    fn id(&self) -> &str;
    /// What the record rests on.
    fn citation(&self) -> Citation;
}

/// Implements [`Record`]; the names after `id` are further optional or plain grades of the record.
macro_rules! record {
    ($type:ty $(, optional $optional:ident)* $(, plain $plain:ident)*) => {
        impl $crate::record::Record for $type {
            fn id(&self) -> &str {
                &self.id
            }
            fn citation(&self) -> $crate::Citation {
                #[allow(unused_mut, reason = "records with one grade have nothing to compare")]
                let mut weakest = self.grade;
                $(weakest = weakest.max(self.$optional.unwrap_or(weakest));)*
                $(weakest = weakest.max(self.$plain);)*
                $crate::Citation { grade: self.grade, weakest, sources: self.source.clone() }
            }
        }
    };
}
pub(super) use record;

/// A record with texts that are shown in the reader's language. The record has them in English; the Spanish
/// stands under its key in `locales/es/trade`.
pub trait Translated {
    /// Its kind and id, with hyphens for points: `incident-red-chalk`.
    fn key(&self) -> String;
    /// Those of the texts that it has, by name; the first is always there.
    fn texts(&self) -> Vec<(&'static str, &str)>;
}

/// Implements [`Translated`]: the kind, the field of the id, and each text's name with its field, optional or not.
macro_rules! translated {
    ($type:ty, $kind:literal $id:ident: $($name:literal $field:ident),+) => {
        impl $crate::record::Translated for $type {
            fn key(&self) -> String {
                format!(concat!($kind, "-{}"), self.$id).replace('.', "-")
            }
            fn texts(&self) -> Vec<(&'static str, &str)> {
                let texts = [$(($name, Option::<&String>::from(&self.$field))),+];
                texts.into_iter().filter_map(|(name, text)| Some((name, text?.as_str()))).collect()
            }
        }
    };
}
pub(super) use translated;

/// Which of a record's numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// The single or usual value.
    Usual,
    /// The low end.
    Low,
    /// The high end.
    High,
}

/// A record with numbers in one unit.
pub trait Measured {
    /// The bare number; prefer the typed getters.
    fn amount(&self, which: Which) -> Option<f64>;
    /// The unit of the numbers.
    fn unit(&self) -> Option<Unit>;

    /// The single or usual value as a quantity; nothing where the record has none or measures something else.
    fn value_as<Q: InUnit>(&self) -> Option<Q> {
        Q::in_unit(self.amount(Which::Usual)?, self.unit()?)
    }

    /// The low end as a quantity.
    fn low_as<Q: InUnit>(&self) -> Option<Q> {
        Q::in_unit(self.amount(Which::Low)?, self.unit()?)
    }

    /// The high end as a quantity.
    fn high_as<Q: InUnit>(&self) -> Option<Q> {
        Q::in_unit(self.amount(Which::High)?, self.unit()?)
    }

    /// Low and high as quantities.
    fn range_as<Q: InUnit>(&self) -> Option<(Q, Q)> {
        Some((self.low_as()?, self.high_as()?))
    }

    /// A count or a ratio; nothing where the number has a unit.
    fn plain(&self, which: Which) -> Option<f64> {
        self.unit()?.is_plain().then(|| self.amount(which)).flatten()
    }
}

/// Implements [`Measured`] for a record with optional `value`, `low`, `mid`, `high` and `unit`.
macro_rules! measured_optional {
    ($type:ty, $self:ident => $unit:expr) => {
        impl $crate::record::Measured for $type {
            fn amount(&self, which: $crate::record::Which) -> Option<f64> {
                match which {
                    $crate::record::Which::Usual => self.value,
                    $crate::record::Which::Low => self.low,
                    $crate::record::Which::High => self.high,
                }
            }
            fn unit(&$self) -> Option<$crate::Unit> {
                $unit
            }
        }
    };
}
pub(super) use measured_optional;

/// Implements [`Measured`] for a record that always has `low`, `mid`, `high` and `unit`.
macro_rules! measured_three {
    ($type:ty) => {
        impl $crate::record::Measured for $type {
            fn amount(&self, which: $crate::record::Which) -> Option<f64> {
                Some(match which {
                    $crate::record::Which::Usual => self.mid,
                    $crate::record::Which::Low => self.low,
                    $crate::record::Which::High => self.high,
                })
            }
            fn unit(&self) -> Option<$crate::Unit> {
                Some(self.unit)
            }
        }
    };
}
pub(super) use measured_three;
