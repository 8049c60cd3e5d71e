//! Questions about air.

use std::error::Error;

use science::air::{self, Air, EvaporationForm};
use units::{Length, Pressure, Speed};

use crate::Answer;
use crate::ask::Ask;

/// Pa.
pub(crate) fn saturation(ask: &Ask<'_>) -> Answer {
    Ok(vec![air::saturation_pressure(ask.celsius("t_c")?)?.as_pascals()])
}

/// °C.
pub(crate) fn dew_point(ask: &Ask<'_>) -> Answer {
    Ok(vec![air::dew_point(ask.celsius("t_c")?, ask.percent("rh_pct")?)?.as_celsius()])
}

fn site(ask: &Ask<'_>) -> Result<Air, Box<dyn Error>> {
    Ok(Air::new(ask.celsius("t_c")?, ask.percent("rh_pct")?, Pressure::pascals(ask.number("p_pa")?))?)
}

/// °C.
pub(crate) fn wet_bulb(ask: &Ask<'_>) -> Answer {
    Ok(vec![site(ask)?.wet_bulb().as_celsius()])
}

/// kg of vapor per kg of dry air.
pub(crate) fn humidity_ratio(ask: &Ask<'_>) -> Answer {
    Ok(vec![site(ask)?.humidity_ratio().as_mass_per_mass()])
}

/// Pa.
pub(crate) fn pressure(ask: &Ask<'_>) -> Answer {
    Ok(vec![air::standard_pressure(Length::meters(ask.number("height_m")?))?.as_pascals()])
}

/// kg/m²/h by the vapor pressure form, the form without it in SI, and that in US units.
pub(crate) fn evaporation(ask: &Ask<'_>) -> Answer {
    let (surface, air, humidity) = (ask.celsius("surface_c")?, ask.celsius("air_c")?, ask.percent("rh_pct")?);
    let wind = Speed::kilometers_per_hour(ask.number("wind_kmh")?);
    [EvaporationForm::Menzel, EvaporationForm::Uno, EvaporationForm::UnoUsCustomary]
        .into_iter()
        .map(|form| {
            let estimate = air::evaporation_rate(form, surface, air, humidity, wind)?;
            Ok(estimate.rate.as_kilograms_per_square_meter_hour())
        })
        .collect()
}
