//! What one unit of a drawing is.

use ::units::Length;

/// The unit of a drawing's coordinates.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Units {
    /// The file says nothing usable: a person must say.
    NotTold,
    /// Millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Decimetres.
    Decimetres,
    /// Metres.
    Metres,
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
        Self::Millimetres,
        Self::Centimetres,
        Self::Decimetres,
        Self::Metres,
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
            4 => Self::Millimetres,
            5 => Self::Centimetres,
            6 => Self::Metres,
            10 => Self::Yards,
            14 => Self::Decimetres,
            21 => Self::SurveyFeet,
            _ => Self::NotTold,
        }
    }

    /// One unit as a length; `None` when it is not told.
    #[must_use]
    pub fn one(self) -> Option<Length> {
        Some(match self {
            Self::NotTold => return None,
            Self::Millimetres => Length::metres(0.001),
            Self::Centimetres => Length::metres(0.01),
            Self::Decimetres => Length::metres(0.1),
            Self::Metres => Length::metres(1.0),
            Self::Inches => Length::inches(1.0),
            Self::Feet => Length::feet(1.0),
            Self::Yards => Length::feet(3.0),
            Self::SurveyFeet => Length::metres(1200.0 / 3937.0),
        })
    }
}
