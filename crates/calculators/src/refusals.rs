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
use units::ReadError;
use weather_series::TypicalYearError;

use crate::accepted::Accepted;
use crate::error::What;

/// An error of the core that a page can say.
pub(crate) trait Refused: Display {
    fn what(&self) -> What;
}

fn beyond(fields: &'static [&'static str], accepted: impl Into<Accepted>) -> What {
    What::Beyond { fields, accepted: accepted.into(), typed: None }
}

impl Refused for ReadError {
    fn what(&self) -> What {
        What::Unread(self.clone())
    }
}

impl Refused for FilmError {
    fn what(&self) -> What {
        match self {
            Self::NoFilm => beyond(&["solids"], "film-former"),
            Self::Thickness(_) => beyond(&["dry", "wet"], "above-zero"),
            Self::Coverage(_) => beyond(&["coverage"], "above-zero"),
            Self::Area(_) => beyond(&["area"], "zero-or-more"),
            Self::Loss(_) => beyond(&["loss"], "below-all"),
            Self::NoCoats => beyond(&["coats"], "one-or-more"),
        }
    }
}

impl Refused for EmissionError {
    fn what(&self) -> What {
        match self {
            Self::Gain(_) => beyond(&["gain"], "zero-or-more"),
            Self::Area(_) => beyond(&["area"], "above-zero"),
            Self::Time(_) => beyond(&["time"], "above-zero"),
        }
    }
}

impl Refused for DryingError {
    fn what(&self) -> What {
        match self {
            Self::Thickness(_) => beyond(&["thickness"], "drying-thickness"),
            Self::Diffusivity(_) => beyond(&["d1"], "diffusivity"),
            Self::WaterCement(_) => beyond(&["wc"], "water-cement"),
            Self::Strength(_) => beyond(&["strength"], "drying-strength"),
            Self::Film(_) => beyond(&["face"], "above-zero"),
            Self::Horizon(_) => beyond(&["days", "wet_cure"], "drying-days"),
            Self::Members(_) => beyond(&["members"], "members"),
            Self::ReadingTime { horizon, .. } => {
                let last = format!("{:.0}", horizon.as_days());
                beyond(&["reading"], Accepted::from("reading-day").with("last", last))
            }
            Self::ImpossibleReading { .. } => beyond(&["reading"], "likely-reading"),
            Self::TooFewAgree { .. } => beyond(&["reading"], "agreeing-readings"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for ChemistryError {
    fn what(&self) -> What {
        match self {
            Self::Strength(_) => beyond(&["stock", "strength", "baume"], "acid-strength"),
            Self::NoAcid => beyond(&["stock", "strength", "baume"], "some-acid"),
            Self::BeyondStock { .. } => beyond(&["to"], "up-to-stock"),
            Self::Baume(_) | Self::AcidBaume(_) => beyond(&["baume"], "baume-range"),
            Self::Volume(_) => beyond(&["volume"], "zero-or-more"),
            Self::Mass(_) => beyond(&["acid"], "zero-or-more"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for MixtureError {
    fn what(&self) -> What {
        match self {
            Self::Parts { .. } => beyond(&["parts", "thinner"], "parts-above-zero"),
            Self::SpecificGravity(_) => beyond(&["gravity"], "specific-gravity"),
        }
    }
}

impl Refused for CureError {
    fn what(&self) -> What {
        match self {
            Self::EmptyLog => beyond(&["history", "file"], "one-reading"),
            Self::Reading { .. } => beyond(&["history", "file"], "slab-temperature"),
            Self::GapLength(_) => beyond(&["longest_gap"], "above-zero"),
            Self::GapMargin(_) => beyond(&["gap_margin"], "zero-or-more"),
            Self::Activation(_) => beyond(&["activation", "energy"], "activation-range"),
            Self::Constant { field, .. } if field.contains("datum") => beyond(&["datum"], "slab-temperature"),
            Self::Constant { .. } => beyond(&["reference"], "slab-temperature"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for ConcreteError {
    fn what(&self) -> What {
        match self {
            Self::Area(_) => beyond(&["area"], "above-zero"),
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
                beyond(field, "above-zero")
            }
            Self::Step(_) => beyond(&["step"], "above-zero"),
            Self::SpacingRule { .. } => beyond(&["low", "high"], "spacing-rule"),
            Self::Aspect(_) => beyond(&["aspect"], "aspect"),
            Self::TooManyPanels { .. } => beyond(&["length"], "fewer-panels"),
            Self::CutDepth(_) => beyond(&["cut"], "above-zero"),
        }
    }
}

impl Refused for MarkupError {
    fn what(&self) -> What {
        match self {
            Self::Markup(_) => beyond(&["markup", "margin"], "markup-range"),
            Self::Margin(_) => beyond(&["margin", "markup"], "margin-range"),
        }
    }
}

impl Refused for ColorError {
    fn what(&self) -> What {
        beyond(&[], "lab-range")
    }
}

impl Refused for AirError {
    fn what(&self) -> What {
        match self {
            Self::Temperature { field, .. } => beyond(temperature(field), "air-temperature"),
            Self::BelowUno { field, .. } => beyond(temperature(field), "above-uno"),
            Self::NoDewPoint(_) => beyond(&["rh"], "some-vapor"),
            Self::Boiling { .. } => beyond(&["pressure", "elevation", "air"], "below-boiling"),
            Self::Pressure(_) => beyond(&["pressure"], "above-zero"),
            Self::Wind(_) => beyond(&["wind"], "zero-or-more"),
            Self::Elevation(_) => beyond(&["elevation"], "elevation"),
        }
    }
}

fn temperature(field: &str) -> &'static [&'static str] {
    if field.contains("air") { &["air"] } else { &["surface", "slab", "air"] }
}

impl Refused for SeriesError {
    fn what(&self) -> What {
        match self {
            Self::Limit(_) => beyond(&["limit"], "above-zero"),
            other => What::Said(other.to_string()),
        }
    }
}

impl Refused for TypicalYearError {
    fn what(&self) -> What {
        match self {
            Self::NotTypical => beyond(&["year"], "typical-year"),
            Self::Year { .. } => beyond(&["year"], "years"),
        }
    }
}

impl Refused for VentilationError {
    fn what(&self) -> What {
        match self {
            Self::AcidMist => What::Sentence("acid-mist"),
            Self::Spraying => What::Sentence("spraying"),
            Self::Concentration { field, .. } => {
                let fields: &'static [&'static str] = match *field {
                    "lower explosive limit" => &["lel"],
                    "wished concentration" => &["to"],
                    "concentration" => &["from"],
                    _ => &["limit"],
                };
                beyond(fields, "concentration")
            }
            Self::MolarMass(_) => beyond(&["molar_mass"], "above-zero"),
            Self::Volume { field: "room", .. } => beyond(&["room"], "above-zero"),
            Self::Volume { .. } => beyond(&["liquid"], "above-zero"),
            Self::Time { .. } => beyond(&["over"], "above-zero"),
            Self::Flow { .. } => beyond(&["fan"], "above-zero"),
            Self::Mixing(_) => beyond(&["mixing"], "mixing"),
            Self::Safety(_) => beyond(&["safety"], "safety"),
            Self::Removal(_) => beyond(&["removal"], "below-all"),
            other => What::Said(other.to_string()),
        }
    }
}
