//! Questions about drying.

use std::error::Error;

use science::moisture::{
    Accuracy, Ambient, Concrete, DryingSlab, ParameterSet, Point, SelfDesiccation, Shape, Sides, Spell, Surface,
};
use units::{Diffusivity, Duration, Fraction, Length, RelativeHumidity, Speed, Temperature};

use crate::Answer;
use crate::ask::Ask;

/// Air by spells: `from_d`, `room_pct` and `room_c`, lists of one length.
fn ambient(ask: &Ask<'_>) -> Result<Ambient, Box<dyn Error>> {
    let (from, percent, celsius) = (ask.numbers("from_d")?, ask.numbers("room_pct")?, ask.numbers("room_c")?);
    if from.len() != percent.len() || from.len() != celsius.len() {
        return Err("from_d, room_pct and room_c differ in length".into());
    }
    let spells = (0..from.len())
        .map(|i| {
            Ok(Spell {
                from: Duration::days(from[i]),
                humidity: RelativeHumidity::percent(percent[i])?,
                temperature: Temperature::celsius(celsius[i]),
            })
        })
        .collect::<Result<Vec<_>, Box<dyn Error>>>()?;
    match spells[..] {
        // One spell without end is steady air, which the solver need not follow day by day.
        [only] if only.from == Duration::ZERO => Ok(Ambient::constant(only.humidity, only.temperature)),
        _ => Ok(Ambient::series(&spells)?),
    }
}

fn slab(ask: &Ask<'_>) -> Result<DryingSlab, Box<dyn Error>> {
    let sides = match ask.word("sides")? {
        "one" => Sides::One,
        "two" => Sides::Two,
        other => return Err(format!("sides={other}: one or two").into()),
    };
    let concrete = Concrete {
        set: ParameterSet::Own,
        saturated: Diffusivity::square_meters_per_second(ask.number("d1_m2s")?),
        shape: Shape::new(
            Fraction::share(ask.number("dry_share")?)?,
            ask.percent("knee_pct")?,
            ask.number("exponent")?,
        )?,
        by_temperature: ask.maybe("by_temperature").is_some(),
    };
    let mut slab = DryingSlab::new(Length::meters(ask.number("thickness_m")?), sides, concrete, ambient(ask)?);
    slab.initial = ask.percent("start_pct")?;
    if ask.maybe("film_ms").is_some() {
        slab.surface = Surface::Film(Speed::meters_per_second(ask.number("film_ms")?));
    }
    if ask.maybe("cure_d").is_some() {
        slab.wet_cure = Duration::days(ask.number("cure_d")?);
    }
    if ask.maybe("fall_share").is_some() {
        slab.self_desiccation = Some(SelfDesiccation {
            fall: Fraction::share(ask.number("fall_share")?)?,
            time_constant: Duration::days(ask.number("fall_d")?),
        });
    }
    Ok(slab)
}

/// The default, or `cells` and `tolerance` of one's own.
fn accuracy(ask: &Ask<'_>) -> Result<Accuracy, Box<dyn Error>> {
    if ask.maybe("cells").is_none() {
        return Ok(Accuracy::default());
    }
    let cells: usize = ask.word("cells")?.parse()?;
    Ok(Accuracy { cells, tolerance: ask.number("tolerance")? })
}

/// For each of `days`: RH at the probe, at `depth_m`, and the mean over the thickness, shares of 1.
/// Then for each of `limits_pct` the day on which the probe reaches it, -1 when it does not.
pub(crate) fn drying(ask: &Ask<'_>) -> Answer {
    let slab = slab(ask)?;
    let days = ask.numbers("days")?;
    let horizon = days.iter().copied().fold(0.0, f64::max);
    let points = [Point::Probe, Point::Depth(Length::meters(ask.number("depth_m")?)), Point::Mean];
    let history = slab.dry(Duration::days(horizon), &points, accuracy(ask)?)?;
    let mut numbers = Vec::new();
    for day in &days {
        numbers.extend((0..points.len()).map(|point| history.humidity(point, Duration::days(*day)).as_share()));
    }
    if ask.maybe("limits_pct").is_some() {
        for limit in ask.numbers("limits_pct")? {
            let reached = history.time_to(0, RelativeHumidity::percent(limit)?);
            numbers.push(reached.map_or(-1.0, Duration::as_days));
        }
    }
    Ok(numbers)
}
