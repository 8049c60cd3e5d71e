//! One field for each finish, never joined across a boundary.

use super::next::{Enough, Gain, Ground, NextRule, Plan, State};
use super::{AbsorbencyError, DropTest, Field, Place};

/// The fields of a slab by finish. Drops of one finish say nothing of another: level, s², l and t²
/// are fitted for each alone, and a finish with too few drops is refused alone.
#[derive(Debug, Clone)]
pub struct Fields<K>(Vec<(K, Result<Field, AbsorbencyError>)>);

/// One place to test next.
#[derive(Debug, Clone, PartialEq)]
pub struct NextPlace<K> {
    /// On which finish.
    pub group: K,
    /// Where.
    pub place: Place,
    /// What the drop is expected to do, after those named before it.
    pub gain: Gain,
    /// What is expected to be left unknown on all finishes together after it.
    pub after: State,
}

/// Where to test next, best first.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice<K> {
    /// The places; none when what is known is enough.
    pub places: Vec<NextPlace<K>>,
    /// How much is unknown now, on the finishes planned.
    pub before: State,
    /// Why no more places are named.
    pub enough: Enough,
    /// Finishes left out: without a field (see [`Fields::get`]) or without a ground.
    pub left_out: Vec<K>,
}

impl<K: Clone + PartialEq> Fields<K> {
    /// Fits each group by [`Field::fit`]. Drops under the same key in several groups are put
    /// together, in order.
    #[must_use]
    pub fn fit(groups: impl IntoIterator<Item = (K, Vec<DropTest>)>) -> Self {
        let mut joined: Vec<(K, Vec<DropTest>)> = Vec::new();
        for (key, drops) in groups {
            match joined.iter_mut().find(|(other, _)| *other == key) {
                Some((_, known)) => known.extend(drops),
                None => joined.push((key, drops)),
            }
        }
        Self(joined.into_iter().map(|(key, drops)| (key, Field::fit(&drops))).collect())
    }

    /// The field of one finish, or why there is none; nothing when the finish has no drops.
    #[must_use]
    pub fn get(&self, key: &K) -> Option<Result<&Field, &AbsorbencyError>> {
        self.0.iter().find(|(other, _)| other == key).map(|(_, field)| field.as_ref())
    }

    /// All finishes in the order given.
    pub fn iter(&self) -> impl Iterator<Item = (&K, Result<&Field, &AbsorbencyError>)> {
        self.0.iter().map(|(key, field)| (key, field.as_ref()))
    }

    /// Where to test next over all finishes together, up to five places, each as if the drops
    /// before it had been set. With a limit the place is taken that most lowers the expected
    /// Bernoulli variance over the area (Bect et al. 2012; grade M), without one the mean variance.
    ///
    /// # Errors
    /// When nothing can be planned, a ground has no map, no area or too many places, the limit is
    /// not above 0, or not 1 to 5 places are asked for.
    pub fn next_places(&self, grounds: &[(K, Ground)], rule: NextRule) -> Result<Advice<K>, AbsorbencyError> {
        let mut planned = Vec::new();
        let mut left_out = Vec::new();
        for (key, field) in &self.0 {
            match (field, grounds.iter().find(|(other, _)| other == key)) {
                (Ok(field), Some((_, ground))) => planned.push((key, field, ground)),
                _ => left_out.push(key.clone()),
            }
        }
        let missing = grounds.iter().map(|(key, _)| key).filter(|key| self.get(key).is_none());
        left_out.extend(missing.cloned());
        let pairs: Vec<(&Field, &Ground)> = planned.iter().map(|(_, field, ground)| (*field, *ground)).collect();
        let mut plan = Plan::new(&pairs, rule.aim)?;
        let before = plan.state();
        let (steps, enough) = plan.places(rule.most)?;
        let places = steps
            .into_iter()
            .map(|step| {
                let (key, _, ground) = planned[step.group];
                NextPlace { group: key.clone(), place: ground.reachable[step.at], gain: step.gain, after: step.after }
            })
            .collect();
        Ok(Advice { places, before, enough, left_out })
    }
}

impl Field {
    /// Where to test next on this finish alone; see [`Fields::next_places`].
    ///
    /// # Errors
    /// As [`Fields::next_places`].
    pub fn next_places(&self, ground: &Ground, rule: NextRule) -> Result<Advice<()>, AbsorbencyError> {
        Fields(vec![((), Ok(self.clone()))]).next_places(&[((), ground.clone())], rule)
    }
}
