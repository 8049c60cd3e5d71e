//! Does an 80 % band of the drying forecast hold the truth 80 % of the time?
//!
//! Draws synthetic slabs from a world wider than the forecast's prior, takes three noisy readings
//! from each, and counts how often the P10 to P90 band holds what the synthetic slab then does.
//! Prints the table kept in `reference/forecast/calibration.md`.
//!
//! Run: `cargo run --release -p science --example forecast_calibration [slabs] [members] [seed]`

use std::error::Error;
use std::f64::consts::TAU;

use science::chance::{Seed, Stream};
use science::moisture::{
    Accuracy, Ambient, Concrete, Draws, DryingError, DryingHistory, DryingSlab, Forecast, ForecastPlan, Point, Reading,
    ReadingError, SelfDesiccation, Shape, Sides, Spell, Surface,
};
use units::{Diffusivity, Duration, Fraction, Length, RelativeHumidity, Speed, Temperature};

/// Days after placing at which the band is held against the truth.
const DAYS: [f64; 5] = [90.0, 120.0, 180.0, 270.0, 365.0];
/// Limits whose date is held against the truth, % RH.
const LIMITS: [f64; 3] = [90.0, 85.0, 80.0];
/// Days after the wet cure at which the slab is read.
const READ_AFTER: [f64; 3] = [20.0, 35.0, 50.0];
/// Error of the synthetic probe, points: of each reading, and of all readings of one slab.
const READING_EACH: f64 = 2.0;
const READING_SHARED: f64 = 1.5;

type Outcome<T> = Result<T, Box<dyn Error>>;

fn rh(percent: f64) -> Outcome<RelativeHumidity> {
    Ok(RelativeHumidity::percent(percent.clamp(1.0, 100.0))?)
}

/// A slab as its owner would describe it.
fn described(chance: &mut Stream) -> Outcome<DryingSlab> {
    let sides = if chance.unit() < 0.8 { Sides::One } else { Sides::Two };
    let thickness = Length::millimeters(chance.uniform(75.0, 200.0)?);
    let water_cement = Fraction::share(chance.uniform(0.40, 0.65)?)?;
    let concrete = Concrete::default_prior(water_cement, thickness, sides)?;
    let temperature = Temperature::celsius(chance.uniform(15.0, 25.0)?);
    let ambient = Ambient::constant(rh(chance.uniform(35.0, 65.0)?)?, temperature);
    let mut slab = DryingSlab::new(thickness, sides, concrete, ambient);
    slab.wet_cure = Duration::days(chance.uniform(3.0, 14.0)?.round());
    Ok(slab)
}

/// What D1 must be multiplied by for another shape to dry to 85 % in the same time. The prior is
/// fitted to drying times, so the world is centered on drying times too, not on one shape's D1.
fn same_time(usual: Shape, other: Shape) -> Outcome<f64> {
    let time = |shape: Shape| -> Outcome<f64> {
        let mut concrete = Concrete::published(Diffusivity::square_meters_per_second(5e-10));
        concrete.shape = shape;
        let ambient = Ambient::constant(rh(60.0)?, Temperature::celsius(18.0));
        let slab = DryingSlab::new(Length::millimeters(100.0), Sides::One, concrete, ambient);
        let history = slab.dry(Duration::days(3000.0), &[Point::Probe], Accuracy::default())?;
        Ok(history.time_to(0, rh(85.0)?).ok_or("85 % is reached in 3000 days")?.as_days())
    };
    Ok(time(other)? / time(usual)?)
}

/// What that slab really is: spread wider than the prior or, in thickness, start and sharpness of
/// the knee, as wide; with a season, a film and hydration going on for weeks, of which the forecast
/// knows nothing.
fn truth(slab: &DryingSlab, air: (f64, f64), chance: &mut Stream) -> Outcome<DryingSlab> {
    let mut real = slab.clone();
    real.thickness = slab.thickness * chance.uniform(0.9, 1.1)?;
    let log_uniform =
        |chance: &mut Stream, low: f64, high: f64| -> Outcome<f64> { Ok(chance.uniform(low.ln(), high.ln())?.exp()) };
    let shape = Shape::new(
        Fraction::share(log_uniform(chance, 0.0125, 0.2)?)?,
        rh(chance.uniform(70.0, 90.0)?)?,
        log_uniform(chance, 6.0, 38.0)?,
    )?;
    let factor = chance.log_normal(1.0, 1.8_f64.ln())? * same_time(slab.concrete.shape, shape)?;
    real.concrete.shape = shape;
    real.concrete.saturated = slab.concrete.saturated * factor;
    let (humidity, celsius) = air;
    let humidity = humidity + chance.normal(0.0, 7.0)?;
    let celsius = celsius + chance.normal(0.0, 2.5)?;
    let (swing, warm, phase) = (chance.uniform(0.0, 10.0)?, chance.uniform(0.0, 4.0)?, chance.uniform(0.0, TAU)?);
    let mut spells = Vec::new();
    for week in 0..160 {
        let from = Duration::weeks(f64::from(week));
        let season = libm::sin(from.as_days() / 365.25 * TAU + phase);
        spells.push(Spell {
            from,
            humidity: rh(humidity + swing * season)?,
            temperature: Temperature::celsius(celsius + warm * season),
        });
    }
    real.ambient = Ambient::series(&spells)?;
    real.initial = rh(chance.uniform(97.0, 100.0)?)?;
    real.surface = Surface::Film(Speed::meters_per_second(chance.log_normal(6e-8, 0.7)?));
    real.self_desiccation = Some(SelfDesiccation {
        fall: Fraction::share(chance.uniform(0.0, 0.03)?)?,
        time_constant: Duration::days(20.0),
    });
    Ok(real)
}

fn readings(slab: &DryingSlab, real: &DryingHistory, chance: &mut Stream) -> Outcome<Vec<Reading>> {
    let shared = chance.normal(0.0, READING_SHARED)?;
    READ_AFTER
        .iter()
        .map(|after| {
            let at = slab.wet_cure + Duration::days(*after);
            let off = shared + chance.normal(0.0, READING_EACH)?;
            Ok(Reading { at, depth: slab.probe_depth(), humidity: rh(real.humidity(0, at).as_percent() + off)? })
        })
        .collect()
}

/// How often the band held the truth, how wide it was.
#[derive(Default, Clone, Copy)]
struct Tally {
    held: usize,
    tried: usize,
    width: f64,
    low: usize,
}

impl Tally {
    fn note(&mut self, low: f64, value: f64, high: f64) {
        self.tried += 1;
        self.held += usize::from(low <= value && value <= high);
        self.low += usize::from(value < low);
        self.width += high - low;
    }

    fn plus(self, other: &Self) -> Self {
        Self {
            held: self.held + other.held,
            tried: self.tried + other.tried,
            width: self.width + other.width,
            low: self.low + other.low,
        }
    }

    fn percent(&self, count: usize) -> f64 {
        100.0 * count as f64 / self.tried as f64
    }
}

fn note(forecast: &Forecast, real: &DryingHistory, tallies: &mut [Tally; 8]) -> Outcome<()> {
    for (tally, day) in tallies.iter_mut().zip(DAYS) {
        let at = Duration::days(day);
        let band = forecast.humidity(at);
        let value = real.humidity(0, at).as_percent();
        tally.note(band.p10.value.as_percent(), value, band.p90.value.as_percent());
    }
    for (tally, limit) in tallies[DAYS.len()..].iter_mut().zip(LIMITS) {
        let limit = rh(limit)?;
        let date = forecast.date_to(limit);
        // Past the horizon counts as the horizon, so that an open end has a width.
        let horizon = forecast.horizon().as_days();
        let early = date.p10.map_or(horizon, |d| d.value.as_days());
        let late = date.p90.map_or(horizon, |d| d.value.as_days());
        let value = real.time_to(0, limit).map_or(horizon, |d| d.as_days().min(horizon));
        tally.note(early, value, late);
    }
    Ok(())
}

fn main() -> Outcome<()> {
    let mut given = std::env::args().skip(1);
    let mut number = |otherwise: u64| given.next().map_or(Ok(otherwise), |text| text.parse());
    let (slabs, members, seed) = (number(300)?, number(1000)? as usize, number(314)?);
    let horizon = Duration::days(1000.0);
    let mut before = [Tally::default(); 8];
    let mut after = [Tally::default(); 8];
    let (mut refused, mut effective) = (0, 0.0);
    for index in 0..slabs {
        let mut chance = Stream::of_member(Seed(seed), index);
        let slab = described(&mut chance)?;
        let probe = Point::Depth(slab.probe_depth());
        let air = slab.ambient.first();
        let air = (air.humidity.as_percent(), air.temperature.as_celsius());
        let real = truth(&slab, air, &mut chance)?.dry(horizon, &[probe], Accuracy::default())?;
        let read = readings(&slab, &real, &mut chance)?;
        let mut plan = ForecastPlan::new(slab, Draws { members, seed: Seed(seed ^ (index << 20)) });
        plan.horizon = horizon;
        match plan.after_readings(&read, ReadingError::default()) {
            Ok(forecast) => {
                note(&plan.before_readings()?, &real, &mut before)?;
                effective += forecast.effective_members();
                note(&forecast, &real, &mut after)?;
            }
            Err(refusal @ (DryingError::ImpossibleReading { .. } | DryingError::TooFewAgree { .. })) => {
                eprintln!("slab {index}: {refusal}");
                refused += 1;
            }
            Err(other) => return Err(other.into()),
        }
    }
    println!(
        "{slabs} slabs, {members} members, seed {seed}; refused {refused}; mean effective members after readings {:.0}",
        effective / (slabs - refused) as f64
    );
    println!();
    println!("| what | held before | below band | width | held after | below band | width |");
    println!("|---|---|---|---|---|---|---|");
    let cells =
        |t: &Tally| format!("{:.1} % | {:.1} % | {:.1}", t.percent(t.held), t.percent(t.low), t.width / t.tried as f64);
    let row = |name: String, before: &[Tally], after: &[Tally]| {
        let sum = |all: &[Tally]| cells(&all.iter().fold(Tally::default(), Tally::plus));
        println!("| {name} | {} | {} |", sum(before), sum(after));
    };
    let names = DAYS.iter().map(|d| format!("RH at day {d}")).chain(LIMITS.iter().map(|l| format!("day of {l} % RH")));
    for (k, name) in names.enumerate() {
        row(name, &before[k..=k], &after[k..=k]);
    }
    let humidities = DAYS.len();
    row("RH, all days".to_owned(), &before[..humidities], &after[..humidities]);
    row("day, all limits".to_owned(), &before[humidities..], &after[humidities..]);
    Ok(())
}
