//! Hold points, states, what to do next, and the answer in one line.

use slab_answers::ready::{Deed, ToReady};
use slab_answers::standing::{HoldPoint, HoldPointId, Next, Overall, Stage, State, Value};
use units::{Area, Duration};

use crate::locale::Locale;
use crate::reason::capitalized;

impl Locale {
    /// What to do, as an order, with the caution that belongs to a dangerous step.
    #[must_use]
    pub fn action(self, next: &Next) -> String {
        let order = self.message("overall-next-untimed", &[("action", self.order(next).into())]);
        match self.care(next) {
            Some(care) => format!("{order} {care}"),
            None => order,
        }
    }

    /// What to do, where and with what, without caution and without the period: a label for the button.
    #[must_use]
    pub fn order(self, next: &Next) -> String {
        let mut order = self.message(next.action.key(), &self.arguments(&next.values));
        let at = |wanted: &str| {
            next.values.iter().find_map(|(name, value)| match value {
                Value::Point(point) if *name == wanted => Some(self.place(*point)),
                _ => None,
            })
        };
        if let Some(place) = at("place") {
            order = self.message("overall-at", &[("order", order.into()), ("place", place.into())]);
        }
        if let (Some(slow), Some(fast)) = (at("slow_place"), at("fast_place")) {
            let both = [("order", order.into()), ("slow", slow.into()), ("fast", fast.into())];
            order = self.message("overall-both-ends", &both);
        }
        if next.zones.is_empty() {
            return order;
        }
        let zones = capitalized(&self.list(&next.zones));
        self.message("overall-where", &[("zones", zones.into()), ("step", order.into())])
    }

    /// The caution that belongs beside a dangerous step, its signal word first.
    #[must_use]
    pub fn care(self, next: &Next) -> Option<String> {
        self.attribute(next.action.key(), "care")
    }

    /// How long it takes: `20 minutes`, `60 minutes, then wait 24 hours`, `wait 4 hours`; empty when
    /// neither is known.
    #[must_use]
    pub fn action_time(self, next: &Next) -> String {
        let work = || self.duration(Duration::minutes(f64::from(next.minutes)));
        let wait = || self.duration(Duration::hours(f64::from(next.wait_hours)));
        match (next.minutes, next.wait_hours) {
            (0, 0) => String::new(),
            (_, 0) => work(),
            (0, _) => self.message("time-wait", &[("wait", wait().into())]),
            _ => self.message("time-work-wait", &[("work", work().into()), ("wait", wait().into())]),
        }
    }

    /// Short name of a hold point, in lower case.
    #[must_use]
    pub fn hold_point(self, id: HoldPointId) -> String {
        let key = match id {
            HoldPointId::Age => "hold-age",
            HoldPointId::Membrane => "hold-membrane",
            HoldPointId::Absorbency => "hold-absorbency",
            HoldPointId::Reaction => "hold-reaction",
            HoldPointId::Contamination => "hold-contamination",
            HoldPointId::Moisture => "hold-moisture",
            HoldPointId::SurfacePh => "hold-surface-ph",
            HoldPointId::Repairs => "hold-repairs",
            HoldPointId::Panel => "hold-panel",
            HoldPointId::Site => "hold-site",
            HoldPointId::Air => "hold-air",
        };
        self.message(key, &[])
    }

    /// The name of a hold point where there is little room: a line of the ledger.
    #[must_use]
    pub fn hold_point_short(self, id: HoldPointId) -> String {
        let key = match id {
            HoldPointId::Age => "short-age",
            HoldPointId::Membrane => "short-membrane",
            HoldPointId::Absorbency => "short-absorbency",
            HoldPointId::Reaction => "short-reaction",
            HoldPointId::Contamination => "short-contamination",
            HoldPointId::Moisture => "short-moisture",
            HoldPointId::SurfacePh => "short-surface-ph",
            HoldPointId::Repairs => "short-repairs",
            HoldPointId::Panel => "short-panel",
            HoldPointId::Site => "short-site",
            HoldPointId::Air => "short-air",
        };
        self.message(key, &[])
    }

    /// The question that a hold point answers.
    #[must_use]
    pub fn hold_point_question(self, id: HoldPointId) -> String {
        let key = match id {
            HoldPointId::Age => "ask-age",
            HoldPointId::Membrane => "ask-membrane",
            HoldPointId::Absorbency => "ask-absorbency",
            HoldPointId::Reaction => "ask-reaction",
            HoldPointId::Contamination => "ask-contamination",
            HoldPointId::Moisture => "ask-moisture",
            HoldPointId::SurfacePh => "ask-surface-ph",
            HoldPointId::Repairs => "ask-repairs",
            HoldPointId::Panel => "ask-panel",
            HoldPointId::Site => "ask-site",
            HoldPointId::Air => "ask-air",
        };
        self.message(key, &[])
    }

    /// What can happen when a hold point is skipped.
    #[must_use]
    pub fn consequence(self, id: HoldPointId) -> String {
        let key = match id {
            HoldPointId::Age => "ignored-age",
            HoldPointId::Membrane => "ignored-membrane",
            HoldPointId::Absorbency => "ignored-absorbency",
            HoldPointId::Reaction => "ignored-reaction",
            HoldPointId::Contamination => "ignored-contamination",
            HoldPointId::Moisture => "ignored-moisture",
            HoldPointId::SurfacePh => "ignored-surface-ph",
            HoldPointId::Repairs => "ignored-repairs",
            HoldPointId::Panel => "ignored-panel",
            HoldPointId::Site => "ignored-site",
            HoldPointId::Air => "ignored-air",
        };
        self.message(key, &[])
    }

    /// The name of a state.
    #[must_use]
    pub fn state(self, state: State) -> String {
        let key = match state {
            State::Released => "state-released",
            State::Unproven => "state-unproven",
            State::CantTell => "state-cant-tell",
            State::Held => "state-held",
        };
        self.message(key, &[])
    }

    /// The answer: state, hold point, how far stained zones are, what stands by a person's word, what to do and how
    /// long it takes. The caution of a dangerous step is not in it: show [`Locale::care`] where the step is begun.
    #[must_use]
    pub fn overall(self, overall: &Overall) -> String {
        let mut said = vec![self.verdict(overall)];
        if overall.stages.iter().any(|(stage, _)| stage.is_stained()) {
            said.extend(
                overall.stages.iter().map(|(stage, zones)| self.stage(*stage, zones, overall.stages.len() == 1)),
            );
        }
        if !overall.by_word.is_empty() {
            let points: Vec<String> = overall.by_word.iter().map(|id| self.hold_point(*id)).collect();
            said.push(self.message("overall-by-word", &[("points", self.list(&points).into())]));
        }
        if !overall.own_figures.is_empty() {
            let points: Vec<String> = overall.own_figures.iter().map(|id| self.hold_point(*id)).collect();
            said.push(self.message("overall-own-figures", &[("points", self.list(&points).into())]));
        }
        if let Some(next) = &overall.next {
            let (order, time) = (self.order(next), self.action_time(next));
            let step = if time.is_empty() {
                self.message("overall-next-untimed", &[("action", order.into())])
            } else {
                self.message("overall-next", &[("action", order.into()), ("time", time.into())])
            };
            // Work on another hold point than the one the answer names is told as that.
            said.push(match overall.next_for.filter(|id| Some(*id) != overall.hold_point) {
                Some(id) => {
                    let args = [("point", self.hold_point(id).into()), ("step", step.into())];
                    self.message("overall-meanwhile", &args)
                }
                None => step,
            });
        }
        said.join(" ")
    }

    fn verdict(self, overall: &Overall) -> String {
        let asked = ("asked", (overall.asked as u32).into());
        let at = self.spoken_of(&overall.zones);
        if let Some(id) = overall.hold_point {
            let key = match overall.state {
                State::Held => "overall-held",
                State::CantTell => "overall-cant-tell",
                State::Unproven | State::Released => "overall-unproven",
            };
            let point = match at {
                Some(at) => {
                    self.message("overall-point-at", &[("point", self.hold_point(id).into()), ("where", at.into())])
                }
                None => self.hold_point(id),
            };
            return self.message(key, &[("point", point.into())]);
        }
        let bare = overall.stages.iter().find(|(stage, _)| !stage.is_stained());
        match (overall.state, bare) {
            (State::Held, _) => self.message("overall-curing", &[]),
            (State::Unproven | State::CantTell, _) => self.message("overall-sealing", &[]),
            (State::Released, Some((_, zones))) if overall.stages.len() > 1 => {
                let zones = at.unwrap_or_else(|| self.list(zones));
                self.message("overall-released-zones", &[("zones", capitalized(&zones).into())])
            }
            (State::Released, Some(_)) => match at {
                Some(at) => self.message("overall-released-where", &[asked, ("where", at.into())]),
                None => self.message("overall-released", &[asked]),
            },
            (State::Released, None) if overall.sealed() => self.message("overall-open-floor", &[]),
            (State::Released, None) => self.message("overall-released-stained", &[asked]),
        }
    }

    /// Zones with their areas, `shop (750 ft²) and office (450 ft²)`; many as their number and what they add up to.
    /// Nothing where neither name nor area is known.
    fn spoken_of(self, zones: &[(String, Option<Area>)]) -> Option<String> {
        const NAMED: usize = 3;
        let named = |(name, area): &(String, Option<Area>)| {
            let name = if name == slab_plan::WHOLE { self.message("where-whole", &[]) } else { name.clone() };
            match area {
                Some(area) => self.message("where-area", &[("zone", name.into()), ("area", self.area(*area).into())]),
                None => name,
            }
        };
        match zones {
            [] => None,
            [(name, None)] if name == slab_plan::WHOLE => None,
            few if few.len() <= NAMED => Some(self.list(&few.iter().map(named).collect::<Vec<_>>())),
            many => {
                let count = ("zones", (many.len() as u32).into());
                let all: Option<Vec<f64>> = many.iter().map(|(_, area)| area.map(Area::as_square_meters)).collect();
                Some(match all {
                    Some(all) => {
                        let area = self.area(Area::square_meters(all.iter().sum()));
                        self.message("where-many-area", &[count, ("area", area.into())])
                    }
                    None => self.message("where-many", &[count]),
                })
            }
        }
    }

    /// How far zones are: `Shop: the stain works until May 3, 2026 14:05.`
    fn stage(self, stage: Stage, zones: &[String], all: bool) -> String {
        let zones = if all { self.message("the-floor", &[]) } else { capitalized(&self.list(zones)) };
        let zones = ("zones", zones.into());
        let clock = |at: &jiff::civil::DateTime| self.local_moment(*at);
        match stage {
            Stage::Bare => self.message("stage-bare", &[zones]),
            Stage::Dwell { until: Some(until) } => {
                self.message("stage-dwell", &[zones, ("until", clock(&until).into())])
            }
            Stage::Dwell { until: None } => self.message("stage-dwell-unknown", &[zones]),
            Stage::NextCoat { coat, of } => {
                self.message("stage-next-coat", &[zones, ("coat", coat.into()), ("of", of.into())])
            }
            Stage::Neutralize => self.message("stage-neutralize", &[zones]),
            Stage::Rinse => self.message("stage-rinse", &[zones]),
            Stage::Dry => self.message("stage-dry", &[zones]),
            Stage::Seal { coat, of, from } => self.message(
                "stage-seal",
                &[zones, ("coat", coat.into()), ("of", of.into()), ("from", clock(&from).into())],
            ),
            Stage::Cure { until } => self.message("stage-cure", &[zones, ("until", clock(&until).into())]),
            Stage::Open => self.message("stage-open", &[zones]),
        }
    }

    /// The figures that this slab has set for itself among those a hold point goes by; nothing where there are none.
    #[must_use]
    pub fn own_limits(self, point: &HoldPoint) -> Option<String> {
        let facts: Vec<String> = point.own_limits.iter().map(|(fact, _)| self.fact(fact)).collect();
        (!facts.is_empty()).then(|| self.message("overall-own-limit", &[("facts", self.list(&facts).into())]))
    }

    /// Until when what releases a hold point counts; nothing where it does not lapse.
    #[must_use]
    pub fn lapses(self, point: &HoldPoint) -> Option<String> {
        let until = self.local_moment(point.lapses?);
        Some(self.message("overall-lapses", &[("until", until.into())]))
    }

    /// The way to ready as lines: each deed with its time and what it is for, then what it all takes.
    #[must_use]
    pub fn to_ready(self, way: &ToReady) -> Vec<String> {
        let mut lines: Vec<String> = way.deeds.iter().map(|deed| self.deed(deed)).collect();
        if !way.unknown.is_empty() {
            let points: Vec<String> = way.unknown.iter().map(|id| self.hold_point(*id)).collect();
            lines.push(self.message("ready-unknown", &[("points", self.list(&points).into())]));
        }
        lines.push(if way.deeds.is_empty() {
            self.message("ready-nothing", &[])
        } else {
            let work = self.duration(Duration::minutes(f64::from(way.minutes)));
            let wait = self.duration(Duration::hours(f64::from(way.wait_hours)));
            let args = [
                ("work", work.into()),
                ("wait", wait.into()),
                ("waits", u32::from(way.wait_hours > 0).into()),
                ("earliest", self.local_moment(way.earliest).into()),
            ];
            self.message("ready-in-all", &args)
        });
        lines
    }

    fn deed(self, deed: &Deed) -> String {
        let (order, time) = (self.order(&deed.next), self.action_time(&deed.next));
        let step = if time.is_empty() { order } else { format!("{order} ({time})") };
        let points: Vec<String> = deed.points.iter().map(|id| self.hold_point(*id)).collect();
        if points.is_empty() {
            return self.message("overall-next-untimed", &[("action", step.into())]);
        }
        self.message("ready-deed", &[("step", step.into()), ("points", self.list(&points).into())])
    }

    /// How many hold points are open: `4 of 10 hold points are open.`
    #[must_use]
    pub fn open_hold_points(self, overall: &Overall) -> String {
        let args = [("open", (overall.open as f64).into()), ("all", (overall.asked as f64).into())];
        self.message("overall-open", &args)
    }
}
