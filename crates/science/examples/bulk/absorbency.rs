//! Questions about water drops: `x_m`, `y_m` and `seconds` of the drops, `sill`, `length_m` and `nugget`.

use std::error::Error;

use science::absorbency::{
    Aim, Covariance, DropTest, End, Field, Ground, LogVariance, Nugget, Place, fit_covariance, log_likelihood,
};
use units::{Area, Duration, Length};

use crate::Answer;
use crate::ask::Ask;

fn places(ask: &Ask<'_>, x: &str, y: &str) -> Result<Vec<Place>, Box<dyn Error>> {
    let (xs, ys) = (ask.numbers(x)?, ask.numbers(y)?);
    if xs.len() != ys.len() {
        return Err(format!("{x} and {y} differ in length").into());
    }
    let place = |(x, y): (&f64, &f64)| Place { x: Length::meters(*x), y: Length::meters(*y) };
    Ok(xs.iter().zip(&ys).map(place).collect())
}

fn drops(ask: &Ask<'_>) -> Result<Vec<DropTest>, Box<dyn Error>> {
    let (places, seconds) = (places(ask, "x_m", "y_m")?, ask.numbers("seconds")?);
    if places.len() != seconds.len() {
        return Err("x_m and seconds differ in length".into());
    }
    let drop = |(place, s): (Place, &f64)| DropTest { place, end: End::SoakedIn(Duration::seconds(*s)) };
    Ok(places.into_iter().zip(&seconds).map(drop).collect())
}

fn covariance(ask: &Ask<'_>) -> Result<Covariance, Box<dyn Error>> {
    Ok(Covariance {
        sill: LogVariance::new(ask.number("sill")?)?,
        length: Length::meters(ask.number("length_m")?),
        nugget: LogVariance::new(ask.number("nugget")?)?,
    })
}

fn field(ask: &Ask<'_>) -> Result<Field, Box<dyn Error>> {
    Ok(Field::with_covariance(&drops(ask)?, covariance(ask)?)?)
}

/// At each of `at_x_m`, `at_y_m`: mean of ln seconds, latent variance, and variance of a fresh drop.
pub(crate) fn krige(ask: &Ask<'_>) -> Answer {
    let estimates = field(ask)?.map(&places(ask, "at_x_m", "at_y_m")?);
    let numbers = |e: science::absorbency::Estimate| {
        [e.log_mean(), e.log_variance().value(), e.fresh_drop().log_variance().value()]
    };
    Ok(estimates.into_iter().flat_map(numbers).collect())
}

/// For each drop, mean and variance foretold from the others.
pub(crate) fn left_out(ask: &Ask<'_>) -> Answer {
    let report = field(ask)?.left_out();
    Ok(report.drops.iter().flat_map(|d| [d.foretold.log_mean(), d.foretold.log_variance().value()]).collect())
}

/// The restricted log-likelihood.
pub(crate) fn likelihood(ask: &Ask<'_>) -> Answer {
    Ok(vec![log_likelihood(&drops(ask)?, covariance(ask)?)?])
}

/// The top of the restricted log-likelihood with the nugget at `nugget` or above, then s², l and t² there.
pub(crate) fn top(ask: &Ask<'_>) -> Answer {
    let fitted = fit_covariance(&drops(ask)?, Nugget::AtLeast(LogVariance::new(ask.number("nugget")?)?))?;
    let Covariance { sill, length, nugget } = fitted.covariance;
    Ok(vec![fitted.log_likelihood, sill.value(), length.as_meters(), nugget.value()])
}

/// After one more drop at each of `at_x_m`, `at_y_m`, which are also the map: expected Bernoulli
/// variance against `limit_s`, then the variances, both as means over the map.
pub(crate) fn next_test(ask: &Ask<'_>) -> Answer {
    let map = places(ask, "at_x_m", "at_y_m")?;
    let ground = Ground { reachable: map.clone(), map, each: Area::square_meters(1.0) };
    let field = field(ask)?;
    let mut numbers = field.weigh_places(&ground, Aim::at_limit(Duration::seconds(ask.number("limit_s")?)))?;
    numbers.extend(field.weigh_places(&ground, Aim::spread())?);
    Ok(numbers)
}
