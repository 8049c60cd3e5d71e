//! How much there is: length, area, volume, mass, and what links them.

/// One inch, meters.
pub(crate) const INCH: f64 = 0.0254;
/// One foot, meters.
pub(crate) const FOOT: f64 = 12.0 * INCH;
/// One square foot, square meters.
pub(crate) const FOOT2: f64 = FOOT * FOOT;
/// One US gallon (231 cubic inches), cubic meters.
pub(crate) const GALLON: f64 = 231.0 * INCH * INCH * INCH;
/// One avoirdupois pound, kilograms.
pub(crate) const POUND: f64 = 0.453_592_37;

quantity! {
    /// A distance on or through the slab.
    ///
    /// Reads `12'6`, `12 ft 6 1/2 in`, `12-6 1/2"`, `12.54 ft`, `3.81 m`, `381 cm`, `3810 mm`, `4 yd`.
    Length, LengthUnit, "length", si "m", negative false,
    accepted "12' 6 1/2\", 12 ft 6 in, 12.5 ft, 3.81 m, 100 mm",
    trailing (Foot, Inch),
    units {
        /// Meter.
        Meter: meters / as_meters = 1.0, "m", ["meter", "meters", "metre", "metres", "metro", "metros"];
        /// Foot.
        Foot: feet / as_feet = FOOT, "ft", ["'", "feet", "foot", "pie", "pies"];
        /// Inch.
        Inch: inches / as_inches = INCH, "in", ["\"", "''", "inch", "inches", "pulgada", "pulgadas", "pulg", "plg"];
        /// Centimeter.
        Centimeter: centimeters / as_centimeters = 0.01, "cm", ["centimeter", "centimeters", "centímetros"];
        /// Millimeter.
        Millimeter: millimeters / as_millimeters = 0.001, "mm", ["millimeter", "millimeters", "milímetros"];
        /// Yard.
        Yard: yards / as_yards = 3.0 * FOOT, "yd", ["yard", "yards", "yarda", "yardas"];
    }
}

quantity! {
    /// The area of a slab, a zone or a patch.
    Area, AreaUnit, "area", si "m²", negative false,
    accepted "850 ft2, 850 sq ft, 79 m2",
    units {
        /// Square meter.
        SquareMeter: square_meters / as_square_meters = 1.0, "m²", ["sq m", "m^2", "square meters", "square metres", "metros cuadrados"];
        /// Square foot.
        SquareFoot: square_feet / as_square_feet = FOOT2, "ft²", ["sq ft", "sqft", "sf", "ft^2", "square feet", "square foot", "pies cuadrados", "pie2", "pies2"];
        /// Square yard.
        SquareYard: square_yards / as_square_yards = 9.0 * FOOT2, "yd²", ["sq yd", "square yards"];
        /// Square inch.
        SquareInch: square_inches / as_square_inches = INCH * INCH, "in²", ["sq in", "square inches"];
    }
}

quantity! {
    /// A volume of liquid or concrete. Gallons, quarts, pints and fluid ounces are US liquid measure.
    Volume, VolumeUnit, "volume", si "m³", negative false,
    accepted "3.5 gal, 2 gal 1 qt, 12 fl oz, 13 L, 4.25 yd3",
    units {
        /// Cubic meter.
        CubicMeter: cubic_meters / as_cubic_meters = 1.0, "m³", ["cu m", "cubic meters", "cubic metres", "metros cúbicos"];
        /// Liter.
        Liter: liters / as_liters = 0.001, "L", ["liter", "liters", "litre", "litres", "litro", "litros"];
        /// Milliliter.
        Milliliter: milliliters / as_milliliters = 1e-6, "mL", ["cc", "cm3", "milliliters", "mililitros"];
        /// US gallon.
        UsGallon: us_gallons / as_us_gallons = GALLON, "gal", ["gallon", "gallons", "us gal", "galón", "galones", "galon"];
        /// US liquid quart.
        UsQuart: us_quarts / as_us_quarts = GALLON / 4.0, "qt", ["quart", "quarts", "cuarto", "cuartos"];
        /// US liquid pint.
        UsPint: us_pints / as_us_pints = GALLON / 8.0, "pt", ["pint", "pints", "pinta", "pintas"];
        /// US fluid ounce.
        UsFluidOunce: us_fluid_ounces / as_us_fluid_ounces = GALLON / 128.0, "fl oz", ["floz", "fluid ounce", "fluid ounces", "onzas líquidas"];
        /// Cubic foot.
        CubicFoot: cubic_feet / as_cubic_feet = FOOT2 * FOOT, "ft³", ["cu ft", "cubic feet", "pies cúbicos"];
        /// Cubic yard.
        CubicYard: cubic_yards / as_cubic_yards = 27.0 * FOOT2 * FOOT, "yd³", ["cu yd", "cubic yards", "cubic yard", "yardas cúbicas"];
    }
}

quantity! {
    /// A mass of material.
    Mass, MassUnit, "mass", si "kg", negative false,
    accepted "7 lb, 5 lb 4 oz, 3.2 kg, 250 g",
    units {
        /// Kilogram.
        Kilogram: kilograms / as_kilograms = 1.0, "kg", ["kilo", "kilos", "kilograms", "kilogramos"];
        /// Gram.
        Gram: grams / as_grams = 0.001, "g", ["gram", "grams", "gramos", "gr"];
        /// Avoirdupois pound.
        Pound: pounds / as_pounds = POUND, "lb", ["lbs", "pound", "pounds", "libra", "libras"];
        /// Avoirdupois ounce.
        Ounce: ounces / as_ounces = POUND / 16.0, "oz", ["ounce", "ounces", "onza", "onzas"];
    }
}

quantity! {
    /// How far a liquid goes: area per volume, one coat.
    Coverage, CoverageUnit, "coverage", si "m²/m³", negative false,
    accepted "250 ft2/gal, 6 m2/L",
    units {
        /// Square meters from a cubic meter; the reciprocal is a thickness in meters.
        SquareMeterPerCubicMeter: square_meters_per_cubic_meter / as_square_meters_per_cubic_meter = 1.0, "m²/m³", ["m2/m3"];
        /// Square feet from a US gallon.
        SquareFootPerGallon: square_feet_per_gallon / as_square_feet_per_gallon = FOOT2 / GALLON, "ft²/gal", ["sq ft/gal", "sqft/gal", "sf/gal", "ft2 per gal", "sq ft per gallon", "pies2/gal"];
        /// Square meters from a liter.
        SquareMeterPerLiter: square_meters_per_liter / as_square_meters_per_liter = 1000.0, "m²/L", ["sq m/l", "m2 per l"];
    }
}

quantity! {
    /// Mass in a volume: density of a liquid, cement content of a mix, or strength of a solution.
    Density, DensityUnit, "density", si "kg/m³", negative false,
    accepted "470 lb/yd3, 300 kg/m3, 0.5 lb/gal, 1.16 g/mL",
    units {
        /// Kilogram per cubic meter, which is also gram per liter.
        KilogramPerCubicMeter: kilograms_per_cubic_meter / as_kilograms_per_cubic_meter = 1.0, "kg/m³", ["kg/m3", "g/L"];
        /// Gram per milliliter.
        GramPerMilliliter: grams_per_milliliter / as_grams_per_milliliter = 1000.0, "g/mL", ["g/cm3", "kg/L"];
        /// Pound per cubic yard.
        PoundPerCubicYard: pounds_per_cubic_yard / as_pounds_per_cubic_yard = POUND / (27.0 * FOOT2 * FOOT), "lb/yd³", ["lb/cu yd", "lbs/yd3", "pcy"];
        /// Pound per US gallon.
        PoundPerGallon: pounds_per_gallon / as_pounds_per_gallon = POUND / GALLON, "lb/gal", ["lbs/gal", "lb per gal"];
        /// Pound per cubic foot.
        PoundPerCubicFoot: pounds_per_cubic_foot / as_pounds_per_cubic_foot = POUND / (FOOT2 * FOOT), "lb/ft³", ["lb/cu ft"];
        /// Milligram per liter, for metals in waste water.
        MilligramPerLiter: milligrams_per_liter / as_milligrams_per_liter = 0.001, "mg/L", [];
        /// Milligram per cubic meter, for vapors and dust in air.
        MilligramPerCubicMeter: milligrams_per_cubic_meter / as_milligrams_per_cubic_meter = 1e-6, "mg/m³", ["mg/cu m"];
    }
}

quantity! {
    /// Amount of a substance: how many moles react.
    AmountOfSubstance, AmountOfSubstanceUnit, "amount of substance", si "mol", negative false,
    accepted "2.5 mol, 40 mmol",
    units {
        /// Mole.
        Mole: moles / as_moles = 1.0, "mol", ["mole", "moles"];
        /// Millimole.
        Millimole: millimoles / as_millimoles = 0.001, "mmol", [];
    }
}

quantity! {
    /// Mass of one mole of a substance.
    MolarMass, MolarMassUnit, "molar mass", si "kg/mol", negative false,
    accepted "36.46 g/mol",
    units {
        /// Kilogram per mole.
        KilogramPerMole: kilograms_per_mole / as_kilograms_per_mole = 1.0, "kg/mol", [];
        /// Gram per mole, which is also pound per pound-mole.
        GramPerMole: grams_per_mole / as_grams_per_mole = 0.001, "g/mol", ["kg/kmol"];
    }
}

quantity! {
    /// Strength of a solution as moles in a volume of it.
    Molarity, MolarityUnit, "molarity", si "mol/m³", negative false,
    accepted "2.87 mol/L",
    units {
        /// Mole per cubic meter.
        MolePerCubicMeter: moles_per_cubic_meter / as_moles_per_cubic_meter = 1.0, "mol/m³", ["mmol/L"];
        /// Mole per liter.
        MolePerLiter: moles_per_liter / as_moles_per_liter = 1000.0, "mol/L", [];
    }
}

product!(Area * Length = Volume);
product!(Coverage * Volume = Area);
product!(Density * Volume = Mass);
product!(MolarMass * AmountOfSubstance = Mass);
product!(Molarity * Volume = AmountOfSubstance);

impl std::ops::Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area(self.0 * other.0)
    }
}

impl std::ops::Div<Length> for Area {
    type Output = Length;
    fn div(self, other: Length) -> Length {
        Length(self.0 / other.0)
    }
}

impl Area {
    /// The side of the square of this area.
    #[must_use]
    pub fn side_of_square(self) -> Length {
        Length(self.0.sqrt())
    }
}
