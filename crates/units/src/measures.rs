//! What instruments on a slab read: films, moisture, evaporation, strength of a mist in air.

use crate::Length;
use crate::amounts::{FOOT2, INCH, POUND};

quantity! {
    /// Thickness of a wet or dry film, or of a plastic sheet. A mil is a thousandth of an inch.
    FilmThickness, FilmThicknessUnit, "film thickness", si "m", negative false,
    accepted "12 mil, 300 µm, 0.3 mm",
    units {
        /// Meter.
        Meter: meters / as_meters = 1.0, "m", [];
        /// Thousandth of an inch.
        Mil: mils / as_mils = INCH / 1000.0, "mil", ["mils", "thou"];
        /// Micrometer.
        Micrometer: micrometers / as_micrometers = 1e-6, "µm", ["um", "micron", "microns", "micras"];
        /// Millimeter.
        Millimeter: millimeters / as_millimeters = 0.001, "mm", [];
    }
}

impl From<FilmThickness> for Length {
    fn from(film: FilmThickness) -> Self {
        Self::meters(film.as_meters())
    }
}

quantity! {
    /// Water leaving a wet surface, mass per area and time. Below zero is condensation.
    EvaporationRate, EvaporationRateUnit, "evaporation rate", si "kg/(m²·s)", negative true,
    accepted "0.2 lb/ft2/h, 1.0 kg/m2/h",
    units {
        /// Kilogram per square meter and second.
        KilogramPerSquareMeterSecond: kilograms_per_square_meter_second / as_kilograms_per_square_meter_second = 1.0, "kg/m²/s", ["kg/(m2 s)"];
        /// Kilogram per square meter and hour.
        KilogramPerSquareMeterHour: kilograms_per_square_meter_hour / as_kilograms_per_square_meter_hour = 1.0 / 3600.0, "kg/m²/h", ["kg/m2h", "kg/m2 h"];
        /// Pound per square foot and hour.
        PoundPerSquareFootHour: pounds_per_square_foot_hour / as_pounds_per_square_foot_hour = POUND / FOOT2 / 3600.0, "lb/ft²/h", ["lb/ft2/hr", "lb/sqft/h", "lb/sq ft/hr"];
    }
}

quantity! {
    /// Moisture emission of a slab by the dish test: pounds from 1000 ft² in 24 hours.
    MoistureEmission, MoistureEmissionUnit, "moisture emission", si "kg/(m²·s)", negative false,
    accepted "3 lb (per 1000 ft2 in 24 h), 14.6 g/m2/d",
    units {
        /// Kilogram per square meter and second.
        KilogramPerSquareMeterSecond: kilograms_per_square_meter_second / as_kilograms_per_square_meter_second = 1.0, "kg/m²/s", [];
        /// Pound per 1000 square feet and 24 hours; on the slab simply called pounds.
        PoundPerThousandSquareFeetDay: pounds_per_thousand_square_feet_day / as_pounds_per_thousand_square_feet_day = POUND / (1000.0 * FOOT2) / 86_400.0, "lb/1000ft²/24h", ["lb", "lbs", "lb/1000ft2/d", "lb/1000 ft2/24 h", "libras"];
        /// Gram per square meter and day.
        GramPerSquareMeterDay: grams_per_square_meter_day / as_grams_per_square_meter_day = 0.001 / 86_400.0, "g/m²/d", ["g/m2/day", "g/m2/24h"];
    }
}

quantity! {
    /// Moisture diffusivity of concrete.
    Diffusivity, DiffusivityUnit, "diffusivity", si "m²/s", negative false,
    accepted "4.0e-10 m2/s, 34.8 mm2/d",
    units {
        /// Square meter per second.
        SquareMeterPerSecond: square_meters_per_second / as_square_meters_per_second = 1.0, "m²/s", ["m2/s"];
        /// Square millimeter per day.
        SquareMillimeterPerDay: square_millimeters_per_day / as_square_millimeters_per_day = 1e-6 / 86_400.0, "mm²/d", ["mm2/day"];
    }
}

quantity! {
    /// How much water vapor a sheet lets through. One US perm is 5.72135e-11 kg/(Pa·s·m²)
    /// (NIST SP 811, perm at 0 °C).
    VaporPermeance, VaporPermeanceUnit, "vapor permeance", si "kg/(Pa·s·m²)", negative false,
    accepted "0.1 perm",
    units {
        /// Kilogram per pascal, second and square meter.
        KilogramPerPascalSecondSquareMeter: kilograms_per_pascal_second_square_meter / as_kilograms_per_pascal_second_square_meter = 1.0, "kg/Pa/s/m²", [];
        /// US perm.
        UsPerm: us_perms / as_us_perms = 5.721_35e-11, "perm", ["perms"];
    }
}

quantity! {
    /// Share of a gas in air by volume, or of a solute in water by mass: parts in a million.
    Concentration, ConcentrationUnit, "concentration", si "1", negative false,
    accepted "100 ppm, 0.9 %",
    units {
        /// Share of one.
        Share: share / as_share = 1.0, "of 1", [];
        /// Parts per million.
        PartPerMillion: parts_per_million / as_parts_per_million = 1e-6, "ppm", [];
        /// Percent.
        Percent: percent / as_percent = 0.01, "%", ["pct", "percent", "por ciento"];
    }
}

quantity! {
    /// A percentage that may lie below zero and beyond the whole, such as a mark-up. A part of a whole is a
    /// [`crate::Fraction`].
    Percentage, PercentageUnit, "percentage", si "1", negative true,
    accepted "25 %, -10 %",
    units {
        /// Percent.
        Percent: percent / as_percent = 0.01, "%", ["pct", "percent", "por ciento"];
    }
}
