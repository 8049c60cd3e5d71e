//! What to do at a hold point: the next thing, everything else, and the time it takes.

use units::Area;

use super::finding::Finding;
use super::{Action, Judge, Next, Stage, State, Value};
use slab_diary::{Figures, Slab};
use trade_facts::Trade;

/// A deed of its own, for zones of the slab (none: all of it), with the time it takes.
pub(crate) fn deed(slab: &Slab<'_>, trade: &Trade, action: Action, zones: &[String]) -> Next {
    let figures = Figures::new(trade, slab);
    let judge = Judge::new(slab, &figures);
    let here = || slab.zones().iter().filter(|zone| zones.is_empty() || zones.contains(&zone.name));
    let area = here().map(|zone| zone.area).sum::<Option<Area>>();
    let missing: u32 = match action {
        Action::TestPh => here().count() as u32,
        Action::WaterDrops | Action::DropAndScrape => here().map(|zone| judge.drops_needed(zone)).sum(),
        _ => 1,
    };
    judge.next(action, zones.to_vec(), vec![("missing", Value::Count(missing))], missing, area)
}

impl Judge<'_> {
    /// The next thing to do: of the worst finding that proposes something, for all zones that are asked for the same.
    pub(super) fn next_of(&self, findings: &[Finding]) -> Option<Next> {
        let led = findings.iter().find(|f| f.next.is_some())?;
        let action = led.next?;
        let alike: Vec<&Finding> = findings.iter().filter(|f| f.next == Some(action) && f.state == led.state).collect();
        let zones: Vec<String> = alike.iter().filter_map(|f| f.zone.clone()).collect();
        let whole = zones.len() == self.slab.zones().len();
        let area = self.slab.zones().iter().filter(|zone| zones.contains(&zone.name)).map(|zone| zone.area);
        let area = area.sum::<Option<Area>>().or(self.slab.area());
        let mut values = led.asked_about();
        let missing: u32 = alike.iter().map(|f| missing(&f.asked_about())).sum();
        values.push(("missing", Value::Count(missing)));
        Some(self.next(action, if whole { Vec::new() } else { zones }, values, missing, area))
    }

    /// Everything that open zones ask for, the same in several zones once, after the next thing.
    pub(super) fn deeds(&self, findings: &[Finding], next: Option<&Next>) -> Vec<Next> {
        let mut deeds: Vec<Next> = next.cloned().into_iter().collect();
        for finding in findings.iter().filter(|f| f.state != State::Released) {
            let led = finding.next.map(|action| (action, finding.asked_about()));
            for (action, mut values) in led.into_iter().chain(finding.further.iter().cloned()) {
                let zones: Vec<String> = finding.zone.iter().cloned().collect();
                // Two spots are two deeds; the same test in two zones is one.
                let spot = |values: &[(&str, Value)]| {
                    values.iter().find(|(name, _)| *name == "place" || *name == "what").map(|(_, value)| value.clone())
                };
                let same = |known: &Next| known.action == action && spot(&known.values) == spot(&values);
                if let Some(known) = deeds.iter_mut().find(|known| same(known)) {
                    let missing = zones.iter().filter(|zone| !known.zones.contains(zone)).cloned().collect::<Vec<_>>();
                    if !known.zones.is_empty() {
                        known.zones.extend(missing);
                    }
                    continue;
                }
                let lacking = missing(&values);
                values.push(("missing", Value::Count(lacking)));
                let area = self.slab.zones().iter().find(|zone| zones.contains(&zone.name)).and_then(|zone| zone.area);
                let zones = if self.slab.zones().len() == 1 { Vec::new() } else { zones };
                deeds.push(self.next(action, zones, values, lacking, area.or(self.slab.area())));
            }
        }
        deeds
    }

    /// The work that a sealed floor still asks for.
    pub(super) fn sealer_work(&self, stage: Stage, zones: &[String]) -> Option<Next> {
        let zones = if zones.len() == self.slab.zones().len() { Vec::new() } else { zones.to_vec() };
        let (action, values) = match stage {
            Stage::Seal { coat, of, from } => (
                Action::LaySealerCoat,
                vec![("coat", Value::Count(coat)), ("of", Value::Count(of)), ("from", Value::Moment(from))],
            ),
            Stage::Cure { until } => (Action::KeepOff, vec![("until", Value::Moment(until))]),
            _ => return None,
        };
        Some(self.next(action, zones, values, 0, self.slab.area()))
    }

    /// An action with the time it takes: by itself, for each test still missing, and for the area.
    pub(super) fn next(
        &self,
        action: Action,
        zones: Vec<String>,
        values: Vec<(&'static str, Value)>,
        missing: u32,
        area: Option<Area>,
    ) -> Next {
        let record = self.figures.trade().action(action.name());
        let minutes = record.map_or(0, |r| r.minutes_for(missing, area));
        Next { action, zones, values, minutes, wait_hours: record.map_or(0, |r| r.wait_hours) }
    }
}

/// How many tests an action still lacks, by what is told with it.
fn missing(values: &[(&'static str, Value)]) -> u32 {
    let count = |wanted: &[&str]| {
        values.iter().find_map(|(name, value)| match value {
            Value::Count(count) if wanted.contains(name) => Some(*count),
            _ => None,
        })
    };
    match (count(&["needed"]), count(&["have", "drops"])) {
        (Some(needed), Some(have)) => needed.saturating_sub(have).max(1),
        (Some(needed), None) => needed,
        _ => count(&["places"]).unwrap_or(1),
    }
}
