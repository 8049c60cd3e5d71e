//! The list of quantities, for whoever learns only at run time which one is asked: forms, the command line,
//! calculators. To add a quantity to the list: one line below.

use crate::{
    AirFlow, Area, Concentration, Coverage, Density, Diffusivity, Duration, EvaporationRate, FilmThickness, Fraction,
    Length, Mass, MoistureEmission, MolarMass, Notation, Offset, Percentage, Ph, Pressure, ReadError, RelativeHumidity,
    Speed, Temperature, TemperatureDifference, Volume,
};

macro_rules! quantities {
    ($( $(#[$doc:meta])* $name:ident ),+ $(,)?) => {
        /// Which quantity.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum QuantityKind { $( $(#[$doc])* $name, )+ }

        /// A value of any of the quantities.
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub enum Quantity { $( $(#[$doc])* $name($name), )+ }

        impl QuantityKind {
            /// All of them.
            pub const ALL: &'static [Self] = &[$( Self::$name ),+];

            /// Reads a text as this quantity; the unit is required unless the quantity has none.
            ///
            /// # Errors
            /// As [`Notation::read`].
            pub fn read(self, text: &str) -> Result<Quantity, ReadError> {
                match self { $( Self::$name => $name::read(text).map(Quantity::$name), )+ }
            }
        }

        impl Quantity {
            /// Which quantity it is of.
            #[must_use]
            pub const fn kind(self) -> QuantityKind {
                match self { $( Self::$name(_) => QuantityKind::$name, )+ }
            }
        }

        $( impl From<$name> for Quantity {
            fn from(value: $name) -> Self { Self::$name(value) }
        } )+
    };
}

quantities! {
    /// A distance.
    Length,
    /// A position along an axis of the plan, which may lie below zero.
    Offset,
    /// An area.
    Area,
    /// A volume of liquid, concrete or air.
    Volume,
    /// A mass.
    Mass,
    /// Mass in a volume.
    Density,
    /// Mass of one mole.
    MolarMass,
    /// A pressure or strength.
    Pressure,
    /// A film or sheet.
    FilmThickness,
    /// Moisture emission.
    MoistureEmission,
    /// Water leaving a wet surface.
    EvaporationRate,
    /// Moisture diffusivity.
    Diffusivity,
    /// A duration.
    Duration,
    /// A speed.
    Speed,
    /// A flow of air.
    AirFlow,
    /// A temperature.
    Temperature,
    /// A difference of temperatures.
    TemperatureDifference,
    /// A relative humidity.
    RelativeHumidity,
    /// A share of the whole.
    Fraction,
    /// A percentage that may lie below zero and beyond the whole.
    Percentage,
    /// A pH.
    Ph,
    /// Area that a volume covers.
    Coverage,
    /// Parts of a gas in air, or of a solute in water.
    Concentration,
}
