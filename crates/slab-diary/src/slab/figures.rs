//! The trade's figures as they hold for this slab: a person's own figure in the diary replaces the
//! fact's.

use std::collections::HashMap;

use crate::EntryId;
use crate::Slab;
use crate::body::LimitSet;
use trade_facts::{Fact, InUnit, Measured, Trade, Unit};

/// Trade facts with this slab's own figures laid over them.
#[derive(Debug)]
pub struct Figures<'t> {
    trade: &'t Trade,
    own: HashMap<String, (f64, EntryId)>,
}

/// How far from the trade's figure a slab's own may lie, either way. Our judgment: ten times is a mistyped number.
const FARTHEST: f64 = 10.0;

/// The figures that a slab may have of its own for a fact: within ten times of the trade's, and no more than
/// the whole of a share.
pub(crate) fn own_range(fact: &Fact) -> Option<(f64, f64)> {
    let value = fact.value.filter(|value| *value > 0.0)?;
    let most = match fact.unit {
        Some(Unit::Fraction) => 1.0,
        Some(Unit::Percent) => 100.0,
        Some(Unit::Ph) => 14.0,
        _ => f64::INFINITY,
    };
    Some((value / FARTHEST, (value * FARTHEST).min(most)))
}

impl<'t> Figures<'t> {
    /// The figures for a slab.
    #[must_use]
    pub fn new(trade: &'t Trade, slab: &Slab<'_>) -> Self {
        let set = slab.all::<LimitSet>().filter(|s| {
            let range = trade.fact(&s.body.fact).and_then(own_range);
            range.is_some_and(|(low, high)| (low..=high).contains(&s.body.value))
        });
        let own = set.map(|s| (s.body.fact.clone(), (s.body.value, s.entry.id))).collect();
        Self { trade, own }
    }

    /// The facts behind the figures.
    #[must_use]
    pub fn trade(&self) -> &'t Trade {
        self.trade
    }

    /// The entry that set this slab's own figure, if one did.
    #[must_use]
    pub fn set_by(&self, id: &str) -> Option<EntryId> {
        self.own.get(id).map(|(_, entry)| *entry)
    }

    fn fact(&self, id: &str) -> &'t Fact {
        // The ids are our own constants; a test loads the built-in facts and asks for each.
        self.trade.fact(id).unwrap_or_else(|| panic!("the trade facts hold no figure {id}"))
    }

    /// A single figure as a quantity.
    ///
    /// # Panics
    /// When the built-in facts lack it or hold it in another kind of unit, which a test rules out.
    #[must_use]
    pub fn value<Q: InUnit>(&self, id: &str) -> Q {
        let fact = self.fact(id);
        let own = self.own.get(id).and_then(|(value, _)| Q::in_unit(*value, fact.unit?));
        own.or_else(|| fact.value_as()).unwrap_or_else(|| panic!("figure {id} is no such quantity"))
    }

    /// A count, ratio or share.
    ///
    /// # Panics
    /// As [`Figures::value`].
    #[must_use]
    pub fn number(&self, id: &str) -> f64 {
        let fact = self.fact(id);
        self.own
            .get(id)
            .map(|(value, _)| *value)
            .or(fact.value)
            .unwrap_or_else(|| panic!("figure {id} has no single value"))
    }

    /// The low and high end as quantities.
    ///
    /// # Panics
    /// As [`Figures::value`].
    #[must_use]
    pub fn range<Q: InUnit>(&self, id: &str) -> (Q, Q) {
        self.fact(id).range_as().unwrap_or_else(|| panic!("figure {id} is no range of that quantity"))
    }

    /// Tests needed for an area: `first` for the first stretch, `further` for each further stretch
    /// or part of one.
    ///
    /// # Panics
    /// As [`Figures::value`], or when the facts do not say per how much.
    #[must_use]
    pub fn tests_for(&self, area: units::Area, first: &str, further: Option<&str>) -> u32 {
        let per = |id: &str| {
            let fact = self.fact(id);
            let area = fact.per.zip(fact.per_unit).and_then(|(per, unit)| <units::Area as InUnit>::in_unit(per, unit));
            area.unwrap_or_else(|| panic!("figure {id} does not say per which area"))
        };
        let stretches = |beyond: units::Area, per: units::Area| (beyond / per - 1e-9).ceil().max(0.0);
        let first_count = self.number(first);
        let count = match further {
            Some(id) => first_count + self.number(id) * stretches(area - per(first), per(id)),
            None => first_count * stretches(area, per(first)).max(1.0),
        };
        count as u32
    }
}
