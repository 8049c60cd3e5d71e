//! What a rule finds in one zone.

use units::{
    Duration, Fraction, Length, MoistureEmission, Ph, RelativeHumidity, Speed, Temperature, TemperatureDifference,
};

use super::{Action, Code, State};
use slab_diary::EntryId;
use slab_plan::Point;

/// One reason behind a state.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason {
    /// What it says.
    pub code: Code,
    /// The zones it speaks of; none when it is true of the whole slab.
    pub zones: Vec<String>,
    /// The numbers and names in it, by the name the sentence knows them under.
    pub values: Vec<(&'static str, Value)>,
}

/// A number or name inside a reason. Typed, so that each reader sees their own units and words.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// How many.
    Count(u32),
    /// A plain ratio.
    Ratio(f64),
    /// A name a person gave, shown as it is.
    Text(String),
    /// A term of the trade facts, translated where it is shown.
    Term(String),
    /// A day.
    Date(jiff::civil::Date),
    /// A duration.
    Duration(Duration),
    /// A length.
    Length(Length),
    /// An area.
    Area(units::Area),
    /// A temperature.
    Temperature(Temperature),
    /// A temperature difference.
    Difference(TemperatureDifference),
    /// A relative humidity.
    Humidity(RelativeHumidity),
    /// A moisture emission.
    Emission(MoistureEmission),
    /// A pH.
    Ph(Ph),
    /// A share of the whole.
    Share(Fraction),
    /// A wind.
    Speed(Speed),
    /// A moment, by the clock of the slab.
    Moment(jiff::civil::DateTime),
    /// A place on the plan.
    Point(Point),
    /// What takes out what an incident of this kind left, by its id in the trade facts.
    Remedy(String),
}

/// What a rule finds in one zone.
#[derive(Debug, Clone)]
pub(super) struct Finding {
    pub(super) state: State,
    pub(super) zone: Option<String>,
    pub(super) reasons: Vec<Reason>,
    pub(super) evidence: Vec<EntryId>,
    pub(super) next: Option<Action>,
    /// The numbers and names that belong to the next action; those of the leading reason unless set.
    pub(super) about: Vec<(&'static str, Value)>,
    /// What else must be done before it is released, beside the next action.
    pub(super) further: Vec<Asked>,
    /// A person's word released it.
    pub(super) by_word: bool,
}

/// An action with its numbers and names.
pub(super) type Asked = (Action, Vec<(&'static str, Value)>);

impl Finding {
    pub(super) fn new(state: State, code: Code) -> Self {
        Self {
            state,
            zone: None,
            reasons: vec![Reason { code, zones: Vec::new(), values: Vec::new() }],
            evidence: Vec::new(),
            next: None,
            about: Vec::new(),
            further: Vec::new(),
            by_word: false,
        }
    }

    pub(super) fn released(code: Code) -> Self {
        Self::new(State::Released, code)
    }

    pub(super) fn unproven(code: Code, next: Action) -> Self {
        Self { next: Some(next), ..Self::new(State::Unproven, code) }
    }

    pub(super) fn cant_tell(code: Code, next: Action) -> Self {
        Self { next: Some(next), ..Self::new(State::CantTell, code) }
    }

    pub(super) fn held(code: Code, next: Action) -> Self {
        Self { next: Some(next), ..Self::new(State::Held, code) }
    }

    /// Adds a number or name to the last reason.
    pub(super) fn with(mut self, name: &'static str, value: Value) -> Self {
        if let Some(reason) = self.reasons.last_mut() {
            reason.values.push((name, value));
        }
        self
    }

    /// Adds a number or name to the next action alone.
    pub(super) fn asking(mut self, name: &'static str, value: Value) -> Self {
        self.about.push((name, value));
        self
    }

    /// Proposes something although the state does not ask for it.
    pub(super) fn proposing(mut self, next: Action) -> Self {
        self.next = Some(next);
        self
    }

    /// The numbers and names of its next action.
    pub(super) fn asked_about(&self) -> Vec<(&'static str, Value)> {
        let led = self.reasons.first().map(|reason| reason.values.clone()).unwrap_or_default();
        self.about.iter().cloned().chain(led).collect()
    }

    /// Adds a further reason that does not change the state.
    pub(super) fn and(mut self, code: Code) -> Self {
        self.reasons.push(Reason { code, zones: Vec::new(), values: Vec::new() });
        self
    }

    /// Adds a further reason when the condition holds.
    pub(super) fn and_if(self, condition: bool, code: Code) -> Self {
        if condition { self.and(code) } else { self }
    }

    /// Adds entries it rests on; doubles are left out when the hold point is put together.
    pub(super) fn because(mut self, entries: impl IntoIterator<Item = EntryId>) -> Self {
        self.evidence.extend(entries);
        self
    }

    /// Joins findings on separate matters of one hold point: the worst leads, all are told.
    pub(super) fn worst(findings: Vec<Self>) -> Option<Self> {
        let mut findings = findings;
        findings.sort_by_key(|f| std::cmp::Reverse(f.state));
        let mut all = findings.into_iter();
        let mut first = all.next()?;
        first.about = first.asked_about();
        for other in all {
            match (first.next, other.next) {
                (None, _) => (first.next, first.about) = (other.next, other.asked_about()),
                (Some(_), Some(next)) => first.further.push((next, other.asked_about())),
                (Some(_), None) => {}
            }
            first.reasons.extend(other.reasons);
            first = first.because(other.evidence);
        }
        Some(first)
    }
}
