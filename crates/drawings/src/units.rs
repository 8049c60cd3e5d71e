//! What one unit of a drawing is.

use ::units::Length;

/// The unit of a drawing's coordinates.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Units {
    /// The file says nothing usable: a person must say.
    NotTold,
    /// Millimeters.
    Millimeters,
    /// Centimeters.
    Centimeters,
    /// Decimeters.
    Decimeters,
    /// Meters.
    Meters,
    /// Inches.
    Inches,
    /// Feet.
    Feet,
    /// Yards.
    Yards,
    /// Feet of the United States survey, 1200/3937 m.
    SurveyFeet,
}

impl Units {
    /// Those a person can choose from.
    pub const TOLD: [Self; 8] = [
        Self::Millimeters,
        Self::Centimeters,
        Self::Decimeters,
        Self::Meters,
        Self::Inches,
        Self::Feet,
        Self::Yards,
        Self::SurveyFeet,
    ];

    /// Of the header's `$INSUNITS`; what no building is drawn in counts as not told.
    pub(crate) const fn of_code(code: i64) -> Self {
        match code {
            1 => Self::Inches,
            2 => Self::Feet,
            4 => Self::Millimeters,
            5 => Self::Centimeters,
            6 => Self::Meters,
            10 => Self::Yards,
            14 => Self::Decimeters,
            21 => Self::SurveyFeet,
            _ => Self::NotTold,
        }
    }

    /// One unit as a length; `None` when it is not told.
    #[must_use]
    pub fn one(self) -> Option<Length> {
        Some(match self {
            Self::NotTold => return None,
            Self::Millimeters => Length::meters(0.001),
            Self::Centimeters => Length::meters(0.01),
            Self::Decimeters => Length::meters(0.1),
            Self::Meters => Length::meters(1.0),
            Self::Inches => Length::inches(1.0),
            Self::Feet => Length::feet(1.0),
            Self::Yards => Length::feet(3.0),
            Self::SurveyFeet => Length::meters(1200.0 / 3937.0),
        })
    }
}
