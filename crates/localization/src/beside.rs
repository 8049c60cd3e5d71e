//! What was typed in the units of the other system, in the reader's own.

use units::{Quantity, QuantityKind, UnitSystem};

use crate::Locale;

impl Locale {
    /// The quantity in the reader's units, when it was written in those of the other system: `18.9 °C` for `66 °F`.
    /// Nothing when it was written in the reader's own, in a unit that both use, or is none.
    #[must_use]
    pub fn in_own_units(self, kind: QuantityKind, typed: &str) -> Option<String> {
        UnitSystem::written_in(typed).filter(|written| *written != self.unit_system)?;
        Some(match kind.read(typed).ok()? {
            Quantity::Length(length) => self.length(length),
            Quantity::Offset(offset) => self.length(offset.into()),
            Quantity::Area(area) => self.area(area),
            Quantity::Volume(volume) => self.volume(volume),
            Quantity::Mass(mass) => self.mass(mass),
            Quantity::Density(density) => self.density(density),
            Quantity::Pressure(pressure) => self.strength(pressure),
            Quantity::FilmThickness(film) => self.film(film),
            Quantity::MoistureEmission(emission) => self.emission(emission),
            Quantity::Speed(speed) => self.speed(speed),
            Quantity::Temperature(temperature) => self.temperature(temperature),
            _ => return None,
        })
    }

    /// What was typed, with the reader's own units beside it where they are others.
    #[must_use]
    pub fn typed_quantity(self, kind: QuantityKind, typed: &str) -> String {
        match self.in_own_units(kind, typed) {
            Some(own) => self.message("typed-and-own", &[("typed", typed.into()), ("own", own.into())]),
            None => typed.to_owned(),
        }
    }
}
