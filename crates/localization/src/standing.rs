//! Hold points, states, what to do next, and the answer in one line.

use slab_answers::standing::{HoldPointId, Next, Overall, State};
use units::Duration;

use crate::locale::Locale;

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

    /// What to do, without caution and without the period: a label for the button.
    #[must_use]
    pub fn order(self, next: &Next) -> String {
        self.message(next.action.key(), &[])
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

    /// The question that a hold point answers.
    #[must_use]
    pub fn hold_point_question(self, id: HoldPointId) -> String {
        let key = match id {
            HoldPointId::Age => "ask-age",
            HoldPointId::Membrane => "ask-membrane",
            HoldPointId::Absorbency => "ask-absorbency",
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

    /// The answer in one line: state, hold point, what to do and how long it takes. The caution of a
    /// dangerous step is not in it: show [`Locale::care`] where the step is begun.
    #[must_use]
    pub fn overall(self, overall: &Overall) -> String {
        let key = match overall.state {
            State::Released if overall.stained => "overall-released-stained",
            State::Released => "overall-released",
            State::Unproven => "overall-unproven",
            State::CantTell => "overall-cant-tell",
            State::Held => "overall-held",
        };
        let point = overall.hold_point.map(|id| self.hold_point(id)).unwrap_or_default();
        let answer = self.message(key, &[("point", point.into())]);
        let Some(next) = overall.next else { return answer };
        let (order, time) = (self.order(&next), self.action_time(&next));
        let step = if time.is_empty() {
            self.message("overall-next-untimed", &[("action", order.into())])
        } else {
            self.message("overall-next", &[("action", order.into()), ("time", time.into())])
        };
        format!("{answer} {step}")
    }

    /// How many hold points are open: `4 of 10 hold points are open.`
    #[must_use]
    pub fn open_hold_points(self, overall: &Overall) -> String {
        let args = [("open", (overall.open as f64).into()), ("all", (HoldPointId::ALL.len() as f64).into())];
        self.message("overall-open", &args)
    }
}
