//! What the core refuses, as fields and messages: which field is meant and what would be accepted.

use std::fmt::Display;

use science::MixtureError;
use science::air::{AirError, SeriesError};
use science::chemistry::ChemistryError;
use science::color::ColorError;
use science::concrete::ConcreteError;
use science::cure::CureError;
use science::emission::EmissionError;
use science::film::FilmError;
use science::markup::MarkupError;
use science::moisture::DryingError;
use science::ventilation::VentilationError;
use weather_series::TypicalYearError;

use crate::error::{Accepted, What};

/// An error of the core that a page can say.
pub(crate) trait Refused: Display {
    fn what(&self) -> What;
}

fn beyond(fields: &'static [&'static str], accepted: impl Into<Accepted>) -> What {
    What::Beyond(fields, accepted.into())
}

impl Refused for FilmError {
    fn what(&self) -> What {
        match self {
            Self::NoFilm => beyond(&["solids"], "sum-accepts-film-former"),
            Self::Thickness(_) => beyond(&["dry", "wet"], "sum-accepts-above-zero"),
            Self::Coverage(_) => beyond(&["coverage"], "sum-accepts-above-zero"),
            Self::Area(_) => beyond(&["area"], "sum-accepts-zero-or-more"),
            Self::Loss(_) => beyond(&["loss"], "sum-accepts-below-all"),
            Self::NoCoats => beyond(&["coats"], "sum-accepts-one-or-more"),
        }
    }
}

impl Refused for EmissionError {
    fn what(&self) -> What {
        match self {
            Self::Gain(_) => beyond(&["gain"], "sum-accepts-zero-or-more"),
            Self::Area(_) => beyond(&["area"], "sum-accepts-above-zero"),
            Self::Time(_) => beyond(&["time"], "sum-accepts-above-zero"),
        }
    }
}

impl Refused for DryingError {
    fn what(&self) -> What {
        match self {
            Self::Thickness(_) => beyond(&["thickness"], "sum-accepts-drying-thickness"),
            Self::Diffusivity(_) => beyond(&["d1"], "sum-accepts-diffusivity"),
            Self::WaterCement(_) => beyond(&["wc"], "sum-accepts-water-cement"),
            Self::Strength(_) => beyond(&["strength"], "sum-accepts-drying-strength"),
            Self::Film(_) => beyond(&["face"], "sum-accepts-above-zero"),
            Self::Horizon(_) => beyond(&["days", "wet_cure"], "sum-accepts-drying-days"),
            Self::Members(_) => beyond(&["members"], "sum-accepts-members"),
            Self::ReadingTime { horizon, .. } => {
                let last = format!("{:.0}", horizon.as_days());
                beyond(&["reading"], Accepted::new("sum-accepts-reading-day").with("last", last))
            }
            Self::ImpossibleReading { .. } => beyond(&["reading"], "sum-accepts-likely-reading"),
            Self::TooFewAgree { .. } => beyond(&["reading"], "sum-accepts-agreeing-readings"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for ChemistryError {
    fn what(&self) -> What {
        match self {
            Self::Strength(_) => beyond(&["stock", "strength", "baume"], "sum-accepts-acid-strength"),
            Self::NoAcid => beyond(&["stock", "strength", "baume"], "sum-accepts-some-acid"),
            Self::BeyondStock { .. } => beyond(&["to"], "sum-accepts-up-to-stock"),
            Self::Baume(_) | Self::AcidBaume(_) => beyond(&["baume"], "sum-accepts-baume-range"),
            Self::Volume(_) => beyond(&["volume"], "sum-accepts-zero-or-more"),
            Self::Mass(_) => beyond(&["acid"], "sum-accepts-zero-or-more"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for MixtureError {
    fn what(&self) -> What {
        match self {
            Self::Parts { .. } => beyond(&["parts", "thinner"], "sum-accepts-parts-above-zero"),
            Self::SpecificGravity(_) => beyond(&["gravity"], "sum-accepts-specific-gravity"),
        }
    }
}

impl Refused for CureError {
    fn what(&self) -> What {
        match self {
            Self::EmptyLog => beyond(&["history", "file"], "sum-accepts-one-reading"),
            Self::Reading { .. } => beyond(&["history", "file"], "sum-accepts-slab-temperature"),
            Self::GapLength(_) => beyond(&["longest_gap"], "sum-accepts-above-zero"),
            Self::GapMargin(_) => beyond(&["gap_margin"], "sum-accepts-zero-or-more"),
            Self::Activation(_) => beyond(&["activation", "energy"], "sum-accepts-activation-range"),
            Self::Constant { field, .. } if field.contains("datum") => {
                beyond(&["datum"], "sum-accepts-slab-temperature")
            }
            Self::Constant { .. } => beyond(&["reference"], "sum-accepts-slab-temperature"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for ConcreteError {
    fn what(&self) -> What {
        match self {
            Self::Area(_) => beyond(&["area"], "sum-accepts-above-zero"),
            Self::Length { field, .. } => {
                let field: &'static [&'static str] = match *field {
                    "panel length" => &["panel_length"],
                    "panel width" => &["panel_width"],
                    "panel thickness" => &["panel_thickness"],
                    "longest joint spacing" => &["cap"],
                    "slab length" => &["length"],
                    "slab width" => &["width"],
                    _ => &["thickness"],
                };
                beyond(field, "sum-accepts-above-zero")
            }
            Self::Step(_) => beyond(&["step"], "sum-accepts-above-zero"),
            Self::SpacingRule { .. } => beyond(&["low", "high"], "sum-accepts-spacing-rule"),
            Self::Aspect(_) => beyond(&["aspect"], "sum-accepts-aspect"),
            Self::TooManyPanels { .. } => beyond(&["length"], "sum-accepts-fewer-panels"),
            Self::CutDepth(_) => beyond(&["cut"], "sum-accepts-above-zero"),
        }
    }
}

impl Refused for MarkupError {
    fn what(&self) -> What {
        match self {
            Self::Markup(_) => beyond(&["markup", "margin"], "sum-accepts-markup-range"),
            Self::Margin(_) => beyond(&["margin", "markup"], "sum-accepts-margin-range"),
        }
    }
}

impl Refused for ColorError {
    fn what(&self) -> What {
        beyond(&[], "sum-accepts-lab-range")
    }
}

impl Refused for AirError {
    fn what(&self) -> What {
        match self {
            Self::Temperature { field, .. } => beyond(temperature(field), "sum-accepts-air-temperature"),
            Self::BelowUno { field, .. } => beyond(temperature(field), "sum-accepts-above-uno"),
            Self::NoDewPoint(_) => beyond(&["rh"], "sum-accepts-some-vapor"),
            Self::Boiling { .. } => beyond(&["pressure", "elevation", "air"], "sum-accepts-below-boiling"),
            Self::Pressure(_) => beyond(&["pressure"], "sum-accepts-above-zero"),
            Self::Wind(_) => beyond(&["wind"], "sum-accepts-zero-or-more"),
            Self::Elevation(_) => beyond(&["elevation"], "sum-accepts-elevation"),
        }
    }
}

fn temperature(field: &str) -> &'static [&'static str] {
    if field.contains("air") { &["air"] } else { &["surface", "slab", "air"] }
}

impl Refused for SeriesError {
    fn what(&self) -> What {
        match self {
            Self::Limit(_) => beyond(&["limit"], "sum-accepts-above-zero"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for TypicalYearError {
    fn what(&self) -> What {
        match self {
            Self::NotTypical => beyond(&["year"], "sum-accepts-typical-year"),
            Self::Year { .. } => beyond(&["year"], "sum-accepts-years"),
        }
    }
}

impl Refused for VentilationError {
    fn what(&self) -> What {
        match self {
            Self::AcidMist => What::Sentence("sum-refused-acid-mist", None),
            Self::Spraying => What::Sentence("sum-refused-spraying", Some("how")),
            Self::Concentration { field, .. } => {
                let fields: &'static [&'static str] = match *field {
                    "lower explosive limit" => &["lel"],
                    "wished concentration" => &["to"],
                    "concentration" => &["from"],
                    _ => &["limit"],
                };
                beyond(fields, "sum-accepts-concentration")
            }
            Self::MolarMass(_) => beyond(&["molar_mass"], "sum-accepts-above-zero"),
            Self::Volume { field: "room", .. } => beyond(&["room"], "sum-accepts-above-zero"),
            Self::Volume { .. } => beyond(&["liquid"], "sum-accepts-above-zero"),
            Self::Time { .. } => beyond(&["over"], "sum-accepts-above-zero"),
            Self::Flow { .. } => beyond(&["fan"], "sum-accepts-above-zero"),
            Self::Mixing(_) => beyond(&["mixing"], "sum-accepts-mixing"),
            Self::Safety(_) => beyond(&["safety"], "sum-accepts-safety"),
            Self::Removal(_) => beyond(&["removal"], "sum-accepts-below-all"),
            other => What::Said(other.to_string()),
        }
    }
}
