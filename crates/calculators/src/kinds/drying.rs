//! Humidity in a drying slab: arguments, and the published form.

use clap::{Args, ValueEnum};
use science::moisture::{
    Accuracy, Ambient, Concrete, DryingSlab, MODEL_CODE_DRYING, MONTH_PER_INCH, Point, Sides, Surface, month_per_inch,
};
use units::{Diffusivity, Duration, Fraction, Length, RelativeHumidity, Temperature};

use super::drying_forecast;
use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{humidity, impossible, missing, number, quantity, unclear};
use crate::rests_on::fact;
use crate::shown::{Key, Shown};
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Drying {
    /// Our prior with its band, or the published code's form with one answer
    #[arg(long, value_enum, default_value = "default")]
    form: FormArg,
    /// Thickness of the slab
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    thickness: String,
    /// Sides that dry: 1 on the ground or a vapor retarder, 2 suspended
    #[arg(long, value_enum, default_value = "1")]
    sides: SidesArg,
    /// Water to cement by mass
    #[arg(long, value_name = "RATIO", allow_hyphen_values = true)]
    wc: Option<String>,
    /// Diffusivity of the saturated concrete in m²/s (published form)
    #[arg(long, value_name = "M2/S", allow_hyphen_values = true)]
    d1: Option<String>,
    /// Characteristic strength that stands in for D1 (published form)
    #[arg(long, value_name = "PRESSURE", conflicts_with = "d1", allow_hyphen_values = true)]
    strength: Option<String>,
    /// Humidity in the concrete at the start, as a share or in percent
    #[arg(long, value_name = "SHARE", default_value = "100 %", allow_hyphen_values = true)]
    h0: String,
    /// Relative humidity of the air over the slab
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    rh: String,
    /// Temperature of the air over the slab (default form) [default: 18 °C]
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    air: Option<String>,
    /// How easily moisture leaves the face, in m/s [default: the face takes the air's humidity at once]
    #[arg(long, value_name = "M/S", allow_hyphen_values = true)]
    face: Option<String>,
    /// How long the face is kept wet
    #[arg(long, value_name = "DURATION", allow_hyphen_values = true)]
    wet_cure: Option<String>,
    /// Days after placing to tell the humidity for
    #[arg(long, value_name = "DAYS", default_value = "28,90,180,365", allow_hyphen_values = true)]
    days: String,
    /// Limits of humidity to tell the day of
    #[arg(long, value_name = "PERCENTS", default_value = "85,80,75", allow_hyphen_values = true)]
    limits: String,
    /// Readings in the slab at probe depth, as day:humidity (default form)
    #[arg(long, value_name = "DAY:PERCENT,…", allow_hyphen_values = true)]
    pub(crate) reading: Vec<String>,
    /// How many possible slabs are followed (default form) [default: 1000]
    #[arg(long, value_name = "COUNT", allow_hyphen_values = true)]
    pub(crate) members: Option<String>,
    /// The number the possible slabs are drawn from (default form)
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    pub(crate) seed: u64,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum FormArg {
    /// Our prior, to be updated by readings
    #[value(alias = "prior")]
    Default,
    /// The published code's form
    Published,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum SidesArg {
    /// The top only
    #[value(name = "1", alias = "one")]
    One,
    /// Top and bottom
    #[value(name = "2", alias = "two")]
    Two,
}

/// What both forms are asked for.
pub(crate) struct Question {
    pub(crate) slab: DryingSlab,
    pub(crate) days: Vec<Duration>,
    pub(crate) limits: Vec<RelativeHumidity>,
}

/// How far both forms look at least.
const HORIZON: Duration = Duration::days(3000.0);

pub(crate) fn run(args: &Drying) -> Result<Sum, SumError> {
    let published = args.form == FormArg::Published;
    let source = if published { MODEL_CODE_DRYING } else { science::moisture::DRYING_PRIOR };
    let mut sum = Sum::new("drying", source);
    let form = if published { "published-form" } else { "default-form" };
    sum.given("form", if published { "published" } else { "default" }, Shown::Code(form));
    let thickness = sum.read("thickness", &args.thickness, Shown::Thickness as fn(Length) -> Shown)?;
    let sides = match args.sides {
        SidesArg::One => Sides::One,
        SidesArg::Two => Sides::Two,
    };
    sum.given("sides", if sides == Sides::One { "1" } else { "2" }, Shown::Count(1 + u32::from(sides == Sides::Two)));
    let concrete = if published {
        only_default(args)?;
        published_concrete(&mut sum, args)?
    } else {
        default_concrete(&mut sum, args, thickness, sides)?
    };
    let slab = described(&mut sum, args, (thickness, sides), concrete)?;
    let question = Question { slab, days: days(&mut sum, &args.days)?, limits: limits(&mut sum, &args.limits)? };
    let mut sum = if published { solve(sum, &question)? } else { drying_forecast::solve(sum, args, &question)? };
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

/// Refuses what only the default form knows.
fn only_default(args: &Drying) -> Result<(), SumError> {
    let given = [("reading", args.reading.first()), ("members", args.members.as_ref()), ("air", args.air.as_ref())];
    match given.into_iter().find_map(|(name, text)| text.map(|text| (name, text))) {
        Some((name, text)) => Err(unclear(name, text, Accepted::naming("default-form-only", &["form"]))),
        None => Ok(()),
    }
}

/// The ratio of water to cement within what is believed of any concrete.
fn water_cement(sum: &mut Sum, text: &str, range: (f64, f64), accepted: &'static str) -> Result<Fraction, SumError> {
    let ratio = number("wc", text, accepted)?;
    let within = (range.0..=range.1).contains(&ratio).then(|| Fraction::share(ratio).ok()).flatten();
    let Some(share) = within else { return Err(impossible("wc", text, accepted)) };
    sum.given("wc", text, Shown::Number(ratio, 3));
    Ok(share)
}

fn default_concrete(sum: &mut Sum, args: &Drying, thickness: Length, sides: Sides) -> Result<Concrete, SumError> {
    const ACCEPTED: &str = "water-cement";
    if let Some((name, text)) = [("d1", &args.d1), ("strength", &args.strength)]
        .into_iter()
        .find_map(|(name, text)| text.as_ref().map(|text| (name, text)))
    {
        return Err(unclear(name, text, Accepted::naming("published-form-only", &["form", "wc"])));
    }
    let text = args.wc.as_ref().ok_or_else(|| missing("wc", ACCEPTED))?;
    let ratio = water_cement(sum, text, (0.35, 0.75), ACCEPTED)?;
    Concrete::default_prior(ratio, thickness, sides).map_err(SumError::core)
}

/// D1 as given, or from strength. The ratio, when given, is only noted: this form does not use it.
fn published_concrete(sum: &mut Sum, args: &Drying) -> Result<Concrete, SumError> {
    if let Some(text) = &args.wc {
        water_cement(sum, text, (0.2, 1.0), "water-cement-wide")?;
    }
    if let Some(text) = &args.strength {
        let strength = sum.read("strength", text, Shown::Strength)?;
        sum.caution([Caution::PublishedTrendBackwards]);
        return Concrete::published_from_strength(strength).map_err(SumError::core);
    }
    let text = args.d1.as_ref().ok_or_else(|| missing("d1", Accepted::naming("d1-or-strength", &["strength"])))?;
    let d1 = match text.trim().parse::<f64>() {
        Ok(number) if number > 0.0 => Diffusivity::square_meters_per_second(number),
        Ok(_) => return Err(impossible("d1", text, "diffusivity-example")),
        Err(_) => quantity("d1", text)?,
    };
    sum.given("d1", text, Shown::Diffusivity(d1));
    sum.caution([Caution::PublishedTrendBackwards]);
    Ok(Concrete::published(d1))
}

fn described(
    sum: &mut Sum,
    args: &Drying,
    (thickness, sides): (Length, Sides),
    concrete: Concrete,
) -> Result<DryingSlab, SumError> {
    let start = start(sum, &args.h0)?;
    let air = sum.humidity("rh", &args.rh)?;
    let temperature = if concrete.by_temperature {
        sum.read_or("air", args.air.as_ref(), Temperature::celsius(18.0), Shown::Temperature)?
    } else {
        Temperature::celsius(18.0)
    };
    let mut slab = DryingSlab::new(thickness, sides, concrete, Ambient::constant(air, temperature));
    slab.initial = start;
    if let Some(text) = &args.face {
        let film = match text.trim().parse::<f64>() {
            Ok(number) => units::Speed::meters_per_second(number),
            Err(_) => quantity("face", text)?,
        };
        sum.given("face", text, Shown::FaceFilm(film));
        slab.surface = Surface::Film(film);
    }
    if let Some(cure) = sum.read_some("wet_cure", args.wet_cure.as_ref(), Shown::Days)? {
        slab.wet_cure = cure;
    }
    Ok(slab)
}

/// A bare number up to 1 is a share, since no concrete starts at 1 %.
fn start(sum: &mut Sum, text: &str) -> Result<RelativeHumidity, SumError> {
    let start = match text.trim().parse::<f64>() {
        Ok(share) if share > 0.0 && share <= 1.0 => RelativeHumidity::percent(share * 100.0).map_err(SumError::core)?,
        _ => humidity("h0", text)?,
    };
    sum.given("h0", text, Shown::Humidity(start));
    Ok(start)
}

fn days(sum: &mut Sum, text: &str) -> Result<Vec<Duration>, SumError> {
    const ACCEPTED: &str = "days";
    let days = list(text)
        .map(|day| {
            let days = match day.parse::<f64>() {
                Ok(days) => Duration::days(days),
                Err(_) => quantity("days", day)?,
            };
            if (0.0..=36_500.0).contains(&days.as_days()) {
                Ok(days)
            } else {
                Err(impossible("days", day, "drying-days"))
            }
        })
        .collect::<Result<Vec<_>, _>>()?;
    if days.is_empty() {
        return Err(unclear("days", text, ACCEPTED));
    }
    sum.given("days", text, Shown::Text(text.trim().to_owned()));
    Ok(days)
}

fn limits(sum: &mut Sum, text: &str) -> Result<Vec<RelativeHumidity>, SumError> {
    let limits = list(text).map(|limit| humidity("limits", limit)).collect::<Result<Vec<_>, _>>()?;
    sum.given("limits", text, Shown::Text(text.trim().to_owned()));
    Ok(limits)
}

pub(crate) fn list(text: &str) -> impl Iterator<Item = &str> {
    text.split(',').map(str::trim).filter(|part| !part.is_empty())
}

/// One run costs so little that it can be as fine as the solved reference cases: against them the
/// solver's own tests find it within 1e-5 of humidity and 0.02 % of time.
const ONE_RUN: Accuracy = Accuracy { cells: 400, tolerance: 1e-6 };

/// One slab, followed exactly.
fn solve(mut sum: Sum, question: &Question) -> Result<Sum, SumError> {
    let history = question.slab.dry(question.horizon(), &[Point::Probe], ONE_RUN).map_err(SumError::core)?;
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
