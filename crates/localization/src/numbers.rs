//! Quantities in a person's units, rounded to what a person uses.
//!
//! Rounding is ours: sixteenths on the tape, tenths of a degree, three figures for what is bought.

use units::{
    Area, Coverage, FilmThickness, Length, Mass, MoistureEmission, Ph, RelativeHumidity, Temperature,
    TemperatureDifference, Volume,
};

use units::UnitSystem;

use crate::locale::Locale;
use crate::numerals::{rounded, three_figures};

/// Below this a tape can't tell: decimal inches.
const FINE: Length = Length::inches(0.125);
/// From here on sixteenths tell nothing: decimal feet.
const FAR: Length = Length::feet(100.0);
/// Below a quarter gallon liquids are measured in fluid ounces.
const LITTLE: Volume = Volume::us_gallons(0.25);

impl Locale {
    pub(crate) const fn imperial(self) -> bool {
        matches!(self.unit_system, UnitSystem::Imperial)
    }

    pub(crate) fn unit(self, key: &'static str, number: String) -> String {
        self.message(key, &[("n", number.into())])
    }

    /// A length: `12' 6 1/2"` by sixteenths, `0.02 in` where a tape can't tell, `120.5 ft` from 100 ft on;
    /// `102 mm`, `3.82 m`.
    #[must_use]
    pub fn length(self, length: Length) -> String {
        self.length_closer(length, 0)
    }

    /// With further decimals, to tell two lengths apart.
    pub(crate) fn length_closer(self, length: Length, further: usize) -> String {
        let size = length.abs();
        match (self.imperial(), further) {
            (true, 0) if size >= FAR => self.unit("length-feet", rounded(length.as_feet(), 1)),
            (true, 0) if size >= FINE => length.show_feet_inches(16),
            (true, _) => self.unit("length-inches", rounded(length.as_inches(), 4 + further)),
            (false, _) if size >= Length::meters(100.0) => {
                self.unit("length-meters", rounded(length.as_meters(), 1 + further))
            }
            (false, _) if size >= Length::meters(1.0) => {
                self.unit("length-meters", rounded(length.as_meters(), 2 + further))
            }
            (false, _) if size >= Length::millimeters(10.0) => {
                self.unit("length-millimeters", rounded(length.as_millimeters(), further))
            }
            (false, _) => self.unit("length-millimeters", rounded(length.as_millimeters(), 2 + further)),
        }
    }

    /// An area: `1,250 ft²`, `116 m²`.
    #[must_use]
    pub fn area(self, area: Area) -> String {
        if self.imperial() {
            self.unit("area-square-feet", three_figures(area.as_square_feet()))
        } else {
            self.unit("area-square-meters", three_figures(area.as_square_meters()))
        }
    }

    /// A volume of liquid: `3.5 gal`, `12 fl oz` below a quarter gallon; `13.2 L`, `355 mL`.
    #[must_use]
    pub fn volume(self, volume: Volume) -> String {
        match self.imperial() {
            true if volume.abs() < LITTLE => self.unit("volume-fluid-ounces", rounded(volume.as_us_fluid_ounces(), 1)),
            true => self.unit("volume-gallons", three_figures(volume.as_us_gallons())),
            false if volume.abs() < Volume::liters(1.0) => {
                self.unit("volume-milliliters", rounded(volume.as_milliliters(), 0))
            }
            false => self.unit("volume-liters", three_figures(volume.as_liters())),
        }
    }

    /// A volume of concrete: `4.25 yd³`, `3.25 m³`.
    #[must_use]
    pub fn concrete(self, volume: Volume) -> String {
        if self.imperial() {
            self.unit("concrete-cubic-yards", three_figures(volume.as_cubic_yards()))
        } else {
            self.unit("concrete-cubic-meters", three_figures(volume.as_cubic_meters()))
        }
    }

    /// A mass: `7 lb`, `4 oz`; `3.2 kg`, `250 g`.
    #[must_use]
    pub fn mass(self, mass: Mass) -> String {
        match self.imperial() {
            true if mass.abs() < Mass::pounds(1.0) => self.unit("mass-ounces", rounded(mass.as_ounces(), 1)),
            true => self.unit("mass-pounds", three_figures(mass.as_pounds())),
            false if mass.abs() < Mass::kilograms(1.0) => self.unit("mass-grams", three_figures(mass.as_grams())),
            false => self.unit("mass-kilograms", three_figures(mass.as_kilograms())),
        }
    }

    /// How far a liquid goes: `250 ft²/gal`, `6.1 m²/L`.
    #[must_use]
    pub fn coverage(self, coverage: Coverage) -> String {
        if self.imperial() {
            self.unit("coverage-square-feet-per-gallon", rounded(coverage.as_square_feet_per_gallon(), 0))
        } else {
            self.unit("coverage-square-meters-per-liter", rounded(coverage.as_square_meters_per_liter(), 1))
        }
    }

    /// A film: `5.3 mil`, `136 µm`.
    #[must_use]
    pub fn film(self, film: FilmThickness) -> String {
        if self.imperial() {
            self.unit("film-mils", rounded(film.as_mils(), 1))
        } else {
            self.unit("film-micrometers", rounded(film.as_micrometers(), 0))
        }
    }

    /// Moisture emission: `3 lb per 1000 ft² in 24 h`, `14.6 g/m² per day`.
    #[must_use]
    pub fn emission(self, emission: MoistureEmission) -> String {
        if self.imperial() {
            self.unit("emission-pounds", rounded(emission.as_pounds_per_thousand_square_feet_day(), 1))
        } else {
            self.unit("emission-grams", rounded(emission.as_grams_per_square_meter_day(), 1))
        }
    }

    /// A temperature: `55 °F`, `12.8 °C`.
    #[must_use]
    pub fn temperature(self, temperature: Temperature) -> String {
        self.temperature_closer(temperature, 0)
    }

    pub(crate) fn temperature_closer(self, temperature: Temperature, further: usize) -> String {
        if self.imperial() {
            self.unit("temperature-fahrenheit", rounded(temperature.as_fahrenheit(), 1 + further))
        } else {
            self.unit("temperature-celsius", rounded(temperature.as_celsius(), 1 + further))
        }
    }

    /// How far two temperatures lie apart: `5.4 °F`, `3 °C`.
    #[must_use]
    pub fn difference(self, difference: TemperatureDifference) -> String {
        self.difference_closer(difference, 0)
    }

    pub(crate) fn difference_closer(self, difference: TemperatureDifference, further: usize) -> String {
        if self.imperial() {
            self.unit("temperature-fahrenheit", rounded(difference.as_fahrenheit_degrees(), 1 + further))
        } else {
            self.unit("temperature-celsius", rounded(difference.as_celsius_degrees(), 1 + further))
        }
    }

    /// A relative humidity: `75 %`.
    #[must_use]
    pub fn humidity(self, humidity: RelativeHumidity) -> String {
        self.humidity_closer(humidity, 0)
    }

    pub(crate) fn humidity_closer(self, humidity: RelativeHumidity, further: usize) -> String {
        self.unit("humidity-percent", rounded(humidity.as_percent(), 1 + further))
    }

    /// A pH as a bare number: `10.5`.
    #[must_use]
    pub fn ph(self, ph: Ph) -> String {
        self.ph_closer(ph, 0)
    }

    pub(crate) fn ph_closer(self, ph: Ph, further: usize) -> String {
        rounded(ph.value(), 1 + further)
    }

    /// How many: `1,250`.
    #[must_use]
    pub fn count(self, count: u32) -> String {
        rounded(f64::from(count), 0)
    }

    /// A plain ratio: `4.3`.
    #[must_use]
    pub fn ratio(self, ratio: f64) -> String {
        rounded(ratio, 1)
    }

    /// From one printed value to another: `9.5 to 10`; once where both print the same.
    #[must_use]
    pub fn range(self, low: &str, high: &str) -> String {
        if low == high { low.to_owned() } else { self.message("range", &[("low", low.into()), ("high", high.into())]) }
    }

    /// A list in words: `water, eyewash and waste plan`.
    #[must_use]
    pub fn list(self, items: &[String]) -> String {
        let Some((last, before)) = items.split_last() else { return String::new() };
        let Some((nearest, earlier)) = before.split_last() else { return last.clone() };
        let end = self.message("list-and", &[("first", nearest.as_str().into()), ("last", last.as_str().into())]);
        earlier.iter().rev().fold(end, |rest, first| {
            self.message("list-comma", &[("first", first.as_str().into()), ("rest", rest.into())])
        })
    }
}
