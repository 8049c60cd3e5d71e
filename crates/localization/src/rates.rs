//! Rates, strengths and plain numbers in a person's units: what single calculations answer with.

use units::{AirFlow, Concentration, Density, Diffusivity, EvaporationRate, Fraction, Pressure, Speed, Volume};

use crate::locale::Locale;
use crate::numerals::{rounded, three_figures};

impl Locale {
    /// Water leaving fresh concrete: `0.15 lb/ft² per hour`, `0.71 kg/m² per hour`.
    #[must_use]
    pub fn evaporation(self, rate: EvaporationRate) -> String {
        if self.imperial() {
            self.unit("evaporation-pounds", rounded(rate.as_pounds_per_square_foot_hour(), 3))
        } else {
            self.unit("evaporation-kilograms", rounded(rate.as_kilograms_per_square_meter_hour(), 2))
        }
    }

    /// Wind: `10 mph`, `4.5 m/s`.
    #[must_use]
    pub fn speed(self, speed: Speed) -> String {
        if self.imperial() {
            self.unit("speed-miles", rounded(speed.as_miles_per_hour(), 1))
        } else {
            self.unit("speed-meters", rounded(speed.as_meters_per_second(), 1))
        }
    }

    /// Air moved: `8,200 cfm`, `13,930 m³/h`.
    #[must_use]
    pub fn air_flow(self, flow: AirFlow) -> String {
        if self.imperial() {
            self.unit("flow-cubic-feet", three_figures(flow.as_cubic_feet_per_minute()))
        } else {
            self.unit("flow-cubic-meters", three_figures(flow.as_cubic_meters_per_hour()))
        }
    }

    /// The volume of a room or of a gas: `5,000 ft³`, `142 m³`.
    #[must_use]
    pub fn space(self, volume: Volume) -> String {
        if self.imperial() {
            self.unit("space-cubic-feet", three_figures(volume.as_cubic_feet()))
        } else {
            self.unit("concrete-cubic-meters", three_figures(volume.as_cubic_meters()))
        }
    }

    /// A vapor in air by volume: `100 ppm`, from 1 % on `1.1 %`.
    #[must_use]
    pub fn concentration(self, concentration: Concentration) -> String {
        if concentration < Concentration::percent(1.0) {
            self.unit("concentration-ppm", three_figures(concentration.as_parts_per_million()))
        } else {
            self.percent(concentration.as_percent())
        }
    }

    /// Mass in a volume of liquid: `9.58 lb/gal`, `1.148 g/mL`.
    #[must_use]
    pub fn density(self, density: Density) -> String {
        if self.imperial() {
            self.unit("density-pounds", rounded(density.as_pounds_per_gallon(), 2))
        } else {
            self.unit("density-grams", rounded(density.as_grams_per_milliliter(), 3))
        }
    }

    /// Pressure of air or vapor: `29.92 inHg`, `101.3 kPa`.
    #[must_use]
    pub fn air_pressure(self, pressure: Pressure) -> String {
        if self.imperial() {
            self.unit("pressure-mercury", rounded(pressure.as_inches_of_mercury(), 3))
        } else {
            self.unit("pressure-kilopascals", rounded(pressure.as_kilopascals(), 3))
        }
    }

    /// Strength of concrete: `3,500 psi`, `24.1 MPa`.
    #[must_use]
    pub fn strength(self, pressure: Pressure) -> String {
        if self.imperial() {
            self.unit("pressure-psi", rounded(pressure.as_psi(), 0))
        } else {
            self.unit("pressure-megapascals", rounded(pressure.as_megapascals(), 1))
        }
    }

    /// Moisture diffusivity, in one unit for all: `4.031e-10 m²/s`.
    #[must_use]
    pub fn diffusivity(self, diffusivity: Diffusivity) -> String {
        self.unit("diffusivity", format!("{:.3e}", diffusivity.as_square_meters_per_second()))
    }

    /// A share of the whole in percent: `31.45 %`.
    #[must_use]
    pub fn share(self, share: Fraction) -> String {
        self.percent(share.as_percent())
    }

    /// Percent of something, which may be below 0 or above 100: `25 %`.
    #[must_use]
    pub fn percent(self, percent: f64) -> String {
        self.unit("share-percent", rounded(percent, 2))
    }

    /// Warmth over time: `2,246 °F·h`, `1,248 °C·h`; both numbers are given since degrees differ.
    #[must_use]
    pub fn degree_hours(self, celsius_hours: f64, fahrenheit_hours: f64) -> String {
        if self.imperial() {
            self.unit("degree-hours-fahrenheit", rounded(fahrenheit_hours, 0))
        } else {
            self.unit("degree-hours-celsius", rounded(celsius_hours, 0))
        }
    }

    /// A bare number with so many decimals at most: `2.37`.
    #[must_use]
    pub fn number(self, number: f64, decimals: usize) -> String {
        rounded(number, decimals)
    }
}
