//! Humidity in a drying slab: arguments, and the published form.

use science::moisture::{
    Accuracy, Ambient, Concrete, DryingSlab, MODEL_CODE_DRYING, MONTH_PER_INCH, Point, Sides, Surface,
    month_per_inch,
};
use units::{Diffusivity, Duration, Fraction, Length, RelativeHumidity, Temperature};

use super::drying_forecast;
use super::prelude::*;
use crate::caution::Caution;
use crate::given::{bare, humidity, part};
use crate::rests_on::fact;
use crate::shown::Key;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "drying",
        fields: &[
            optional("form", "value-form", FORMS).usual("default", "default").more(),
            required("thickness", "sum-field-drying-thickness", THICKNESS).in_answer("value-thickness"),
            optional("sides", "value-sides", SIDES).usual("1", "1"),
            optional("wc", "value-wc", NUMBER).such_as("0.5", "0.5"),
            optional("d1", "sum-field-drying-d1", one_unit(Kind::Diffusivity, "m2/s", "4.0e-10")).in_answer("value-d1").more(),
            optional("strength", "sum-field-drying-strength", quantity(Kind::Pressure, "3500 psi", "24 MPa")).in_answer("value-strength").more(),
            optional("h0", "value-h0", percent(Kind::RelativeHumidity, "100 %")).usual("100 %", "100 %").more(),
            required("rh", "value-rh", percent(Kind::RelativeHumidity, "50 %")),
            optional("air", "sum-field-drying-air", quantity(Kind::Temperature, "64 °F", "18 °C")).in_answer("value-air").usual("64.4 °F", "18 °C").more(),
            optional("face", "sum-field-drying-face", one_unit(Kind::Speed, "m/s", "1.0e-7")).in_answer("value-face").usual_said("sum-usual-drying-face").more(),
            optional("wet_cure", "value-wet-cure", quantity(Kind::Duration, "7 days", "7 days")).more(),
            optional("days", "sum-field-drying-days", LINE).in_answer("value-days").usual("28,90,180,365", "28,90,180,365").more(),
            optional("limits", "sum-field-drying-limits", LINE).in_answer("value-limits").usual("85,80,75", "85,80,75").more(),
            optional("reading", "sum-field-drying-reading", InputKind::Texts).in_answer("value-reading").such_as("30:91", "30:91"),
            optional("members", "sum-field-drying-members", count(50, 100_000)).in_answer("value-members").usual("1000", "1000").more(),
            optional("seed", "sum-field-drying-seed", count(0, u32::MAX)).usual("1", "1").more(),
        ],
        presets: &[],
        rules: &[Rule::NotBoth("strength", "d1")],
    },
    title: "sum-drying",
    about: "sum-about-drying",
    example: &["thickness", "wc", "rh"],
    lines: &[r#"--thickness "4 in" --wc 0.5 --rh "50 %" --reading 30:91,45:88.5"#,
        r#"--form published --thickness 100mm --sides 1 --wc 0.5 --d1 4.031281e-10 --h0 "100 %" --rh "50 %" --days 28,90,180,365 --json"#],
    places: &[],
    run,
};

/// Our prior, to be updated by readings, and the published code's form.
const FORMS: InputKind =
    InputKind::Named { values: &["default", "published"], also: &[("prior", "default")] };

/// The top only; top and bottom.
const SIDES: InputKind = InputKind::Named { values: &["1", "2"], also: &[("one", "1"), ("two", "2")] };

/// What both forms are asked for.
pub(crate) struct Question {
    pub(crate) slab: DryingSlab,
    pub(crate) days: Vec<Duration>,
    pub(crate) limits: Vec<RelativeHumidity>,
}

/// How far both forms look at least.
const HORIZON: Duration = Duration::days(3000.0);

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let published = given.text("form")? == "published";
    let source = if published { MODEL_CODE_DRYING } else { science::moisture::DRYING_PRIOR };
    let mut sum = Calculation::new(given, source);
    let form = if published { "published-form" } else { "default-form" };
    given.note("form", if published { "published" } else { "default" }, Shown::Code(form));
    let thickness = given.read("thickness", Shown::Thickness)?;
    let sides = if given.text("sides")? == "2" { Sides::Two } else { Sides::One };
    given.note("sides", if sides == Sides::One { "1" } else { "2" }, Shown::Count(1 + u32::from(sides == Sides::Two)));
    let concrete = if published {
        refuse(given, &["reading", "members", "air"], "sum-accepts-default-form-only")?;
        published_concrete(given, &mut sum)?
    } else {
        default_concrete(given, thickness, sides)?
    };
    let slab = described(given, (thickness, sides), concrete)?;
    let question = Question { slab, days: days(given)?, limits: limits(given)? };
    let mut sum = if published { solve(sum, &question)? } else { drying_forecast::solve(sum, given, &question)? };
    sum.result("probe_depth", Shown::Thickness(question.slab.probe_depth()));
    sum.note_also(fact(match sides {
        Sides::One => "humidity-probe-depth-one-side",
        Sides::Two => "humidity-probe-depth-two-sides",
    }));
    if sides == Sides::One {
        sum.result("month_per_inch", Shown::Days(question.slab.wet_cure + month_per_inch(thickness)));
        sum.note_also(MONTH_PER_INCH);
    }
    sum.caution([Caution::ForecastNeverReleases, Caution::MakersSheetGoverns]);
    Ok(sum)
}

impl Question {
    /// The time to look at: past every day asked for.
    pub(crate) fn horizon(&self) -> Duration {
        self.days.iter().fold(HORIZON, |far, day| far.max(*day))
    }
}

/// Refuses what another form knows.
fn refuse(given: &Given<'_>, names: &[&'static str], accepted: &'static str) -> Result<(), CalculatorError> {
    match names.iter().find_map(|name| given.typed(name).map(|text| (*name, text))) {
        Some((name, text)) => Err(CalculatorError::unclear(name, &text, accepted)),
        None => Ok(()),
    }
}

/// The ratio of water to cement within what is believed of any concrete.
fn water_cement(
    given: &mut Given<'_>,
    range: (f64, f64),
    accepted: &'static str,
) -> Result<Option<Fraction>, CalculatorError> {
    let Some(ratio) = given.number("wc", 3) else { return Ok(None) };
    let within = (range.0..=range.1).contains(&ratio).then(|| Fraction::share(ratio).ok()).flatten();
    within.map(Some).ok_or_else(|| CalculatorError::impossible("wc", &ratio.to_string(), accepted))
}

fn default_concrete(given: &mut Given<'_>, thickness: Length, sides: Sides) -> Result<Concrete, CalculatorError> {
    refuse(given, &["d1", "strength"], "sum-accepts-published-form-only")?;
    const ACCEPTED: &str = "sum-accepts-water-cement";
    let ratio = water_cement(given, (0.35, 0.75), ACCEPTED)?;
    let ratio = ratio.ok_or_else(|| CalculatorError::missing_but("wc", ACCEPTED))?;
    Concrete::default_prior(ratio, thickness, sides).map_err(CalculatorError::core)
}

/// D1 as given, or from strength. The ratio, when given, is only noted: this form does not use it.
fn published_concrete(given: &mut Given<'_>, sum: &mut Calculation) -> Result<Concrete, CalculatorError> {
    water_cement(given, (0.2, 1.0), "sum-accepts-water-cement-wide")?;
    sum.caution([Caution::PublishedTrendBackwards]);
    if let Some(strength) = given.some("strength", Shown::Strength)? {
        return Concrete::published_from_strength(strength).map_err(CalculatorError::core);
    }
    let d1 = given.some("d1", Shown::Diffusivity)?;
    let d1 = d1.ok_or_else(|| CalculatorError::missing_but("d1", "sum-accepts-d1-or-strength"))?;
    if d1 <= Diffusivity::ZERO {
        let typed = given.typed("d1").unwrap_or_default();
        return Err(CalculatorError::impossible("d1", &typed, "sum-accepts-diffusivity-example"));
    }
    Ok(Concrete::published(d1))
}

fn described(
    given: &mut Given<'_>,
    (thickness, sides): (Length, Sides),
    concrete: Concrete,
) -> Result<DryingSlab, CalculatorError> {
    let start = given.read("h0", Shown::Humidity)?;
    let air = given.read("rh", Shown::Humidity)?;
    let temperature = if concrete.by_temperature {
        given.read_or("air", Temperature::celsius(18.0), Shown::Temperature)?
    } else {
        Temperature::celsius(18.0)
    };
    let mut slab = DryingSlab::new(thickness, sides, concrete, Ambient::constant(air, temperature));
    slab.initial = start;
    if let Some(film) = given.some("face", Shown::FaceFilm)? {
        slab.surface = Surface::Film(film);
    }
    if let Some(cure) = given.some("wet_cure", Shown::Days)? {
        slab.wet_cure = cure;
    }
    Ok(slab)
}

fn days(given: &mut Given<'_>) -> Result<Vec<Duration>, CalculatorError> {
    const ACCEPTED: &str = "sum-accepts-days";
    let text = given.text("days")?;
    let read = |day| match bare(day) {
        Some(days) => Ok(Duration::days(days)),
        None => part("days", day, ACCEPTED),
    };
    let within = |day: &Duration| (0.0..=36_500.0).contains(&day.as_days());
    let days = list(&text).map(read).collect::<Result<Vec<_>, _>>()?;
    if !days.iter().all(within) {
        return Err(CalculatorError::impossible("days", &text, "sum-accepts-drying-days"));
    }
    if days.is_empty() {
        return Err(CalculatorError::unclear("days", &text, ACCEPTED));
    }
    given.note("days", &text, Shown::Text(text.clone()));
    Ok(days)
}

fn limits(given: &mut Given<'_>) -> Result<Vec<RelativeHumidity>, CalculatorError> {
    let text = given.text("limits")?;
    let limits = list(&text).map(|limit| humidity("limits", limit)).collect::<Result<Vec<_>, _>>()?;
    given.note("limits", &text, Shown::Text(text.clone()));
    Ok(limits)
}

pub(super) fn list(text: &str) -> impl Iterator<Item = &str> {
    text.split(',').map(str::trim).filter(|part| !part.is_empty())
}

/// One run costs so little that it can be as fine as the solved reference cases: against them the
/// solver's own tests find it within 1e-5 of humidity and 0.02 % of time.
const ONE_RUN: Accuracy = Accuracy { cells: 400, tolerance: 1e-6 };

/// One slab, followed exactly.
fn solve(mut sum: Calculation, question: &Question) -> Result<Calculation, CalculatorError> {
    let history = question.slab.dry(question.horizon(), &[Point::Probe], ONE_RUN).map_err(CalculatorError::core)?;
    let by_day = |day: &Duration| (Key::Day(*day), Shown::Humidity(history.humidity(0, *day)));
    sum.result("rh", Shown::By(question.days.iter().map(by_day).collect()));
    let by_limit = |limit: &RelativeHumidity| (Key::Limit(*limit), Shown::DaysTo(history.time_to(0, *limit)));
    sum.result("days_to", Shown::By(question.limits.iter().map(by_limit).collect()));
    Ok(sum)
}

#[cfg(test)]
mod tests {
    use trade_facts::{Measured, Which};
    use units::Length;

    use super::{Sides, fact};

    /// The model tells the humidity at this depth, so the shares stand in it; they are the facts' own.
    #[test]
    fn the_probe_sits_where_the_facts_have_it() {
        let whole = Length::meters(1.0);
        for (sides, id) in
            [(Sides::One, "humidity-probe-depth-one-side"), (Sides::Two, "humidity-probe-depth-two-sides")]
        {
            let share = fact(id).plain(Which::Usual);
            assert!(share.is_some_and(|share| (sides.probe_depth(whole) / whole - share).abs() < 1e-12), "{id}");
        }
    }
}
