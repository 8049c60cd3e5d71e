//! A reason as a sentence.

use slab_answers::standing::{Reason, Value};
use slab_plan::Point;
use units::TemperatureDifference;

use crate::locale::Locale;
use crate::messages::Arg;

/// Pairs of values that a sentence tells as one range, and its name in the message.
const RANGES: [(&str, &str, &str); 2] = [("low", "high", "window"), ("lowest", "highest", "read")];

/// Decimals are added at most so often to tell two values apart.
const CLOSEST: usize = 3;

/// The same text with a capital letter first, for names that people typed and that begin a sentence.
#[must_use]
pub fn capitalized(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

impl Locale {
    /// The sentence of a reason, with its zones in front when it does not speak of the whole slab.
    #[must_use]
    pub fn reason(self, reason: &Reason) -> String {
        let sentence = capitalized(&self.message(reason.code.key(), &self.arguments(&reason.values)));
        if reason.zones.is_empty() {
            return sentence;
        }
        let zone = capitalized(&self.list(&reason.zones));
        self.message("reason-in-zone", &[("zone", zone.into()), ("reason", sentence.into())])
    }

    pub(crate) fn arguments(self, values: &[(&'static str, Value)]) -> Vec<(&'static str, Arg<'static>)> {
        let shown: Vec<(&'static str, String)> = values
            .iter()
            .map(|(name, value)| (*name, self.value(value, self.decimals_that_tell(value, values))))
            .collect();
        let of = |name: &str| -> Vec<String> {
            shown.iter().filter(|(n, _)| *n == name).map(|(_, text)| text.clone()).collect()
        };
        let mut args: Vec<(&'static str, Arg<'static>)> = Vec::new();
        for (name, value) in values {
            if args.iter().any(|(known, _)| known == name) {
                continue;
            }
            args.push(match value {
                Value::Count(count) => (*name, (*count).into()),
                // A name that stands several times is a list.
                _ => (*name, self.list(&of(name)).into()),
            });
            if let ("spread", Value::Difference(spread)) = (*name, value) {
                let side = if *spread < TemperatureDifference::default() { "below" } else { "above" };
                args.push(("side", side.into()));
            }
        }
        for (low, high, name) in RANGES {
            if let (Some(low), Some(high)) = (of(low).first(), of(high).first()) {
                args.push((name, self.range(low, high).into()));
            }
        }
        args
    }

    /// A place on the plan, by its distances from the plan's corner.
    pub(crate) fn place(self, at: Point) -> String {
        format!("{}, {}", self.length(at.x.into()), self.length(at.y.into()))
    }

    /// A value beside its limit must not print as the limit while it is over it: decimals are added
    /// until it looks different from every other value of its kind that differs from it. Where no
    /// number of them tells, the two are the same for a person.
    fn decimals_that_tell(self, value: &Value, values: &[(&'static str, Value)]) -> usize {
        let others: Vec<&Value> = values
            .iter()
            .map(|(_, other)| other)
            .filter(|other| std::mem::discriminant(*other) == std::mem::discriminant(value) && *other != value)
            .collect();
        let tells =
            |further: &usize| others.iter().all(|other| self.value(other, *further) != self.value(value, *further));
        (0..=CLOSEST).find(tells).unwrap_or(0)
    }

    fn value(self, value: &Value, further: usize) -> String {
        match value {
            Value::Count(count) => self.count(*count),
            Value::Ratio(ratio) => self.ratio(*ratio),
            Value::Text(text) => text.clone(),
            Value::Term(id) => self.term(id),
            Value::Date(date) => self.date(*date),
            Value::Duration(duration) => self.duration(*duration),
            Value::Length(length) => self.length_closer(*length, further),
            Value::Area(area) => self.area(*area),
            Value::Temperature(temperature) => self.temperature_closer(*temperature, further),
            // Which side it lies on is said in words.
            Value::Difference(difference) => {
                let size = difference.as_celsius_degrees().abs();
                self.difference_closer(TemperatureDifference::celsius_degrees(size), further)
            }
            Value::Humidity(humidity) => self.humidity_closer(*humidity, further),
            Value::Emission(emission) => self.emission(*emission),
            Value::Ph(ph) => self.ph_closer(*ph, further),
            Value::Share(share) => self.share(*share),
            Value::Speed(speed) => self.speed(*speed),
            Value::Moment(at) => self.local_moment(*at),
            Value::Point(at) => self.place(*at),
            Value::Remedy(incident) => self.remedy(incident),
        }
    }
}
