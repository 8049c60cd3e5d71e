//! Examples for the fields, in both measures, and what is usual where a field is left empty.
//!
//! They teach by example only: what a calculation assumes is in its own file, and the tests check that
//! every example is accepted where it stands and that giving the usual value changes no answer.

use localization::UnitSystem;

/// A text for each measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Pair {
    pub(crate) imperial: &'static str,
    pub(crate) metric: &'static str,
}

impl Pair {
    pub(crate) const fn of(self, unit_system: UnitSystem) -> &'static str {
        match unit_system {
            UnitSystem::Imperial => self.imperial,
            UnitSystem::Metric => self.metric,
        }
    }
}

/// What is known of a field beyond its definition.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Hint {
    pub(crate) field: &'static str,
    pub(crate) example: Pair,
    pub(crate) usual: Option<Pair>,
    /// Filled when the whole form is shown by example.
    pub(crate) filled: bool,
    /// Asked first; the others are for the few who need them.
    pub(crate) main: bool,
}

/// A field that is asked first.
const fn main(field: &'static str, imperial: &'static str, metric: &'static str) -> Hint {
    Hint { field, example: Pair { imperial, metric }, usual: None, filled: false, main: true }
}

/// A field that may stay hidden.
const fn more(field: &'static str, imperial: &'static str, metric: &'static str) -> Hint {
    Hint { main: false, ..main(field, imperial, metric) }
}

impl Hint {
    const fn filled(self) -> Self {
        Self { filled: true, ..self }
    }

    const fn usual(self, imperial: &'static str, metric: &'static str) -> Self {
        Self { usual: Some(Pair { imperial, metric }), ..self }
    }
}

/// How a weather file is read.
const COLUMN: Hint = more("column", "air=T1", "air=T1");
const TIME_ZONE: Hint = more("time_zone", "America/Chicago", "America/Chicago").usual("UTC", "UTC");
const YEAR: Hint = more("year", "2026", "2026");

const HINTS: &[(&str, &[Hint])] = &[
    (
        "dew-point",
        &[
            main("air", "75 °F", "24 °C").filled(),
            main("rh", "60 %", "60 %").filled(),
            main("slab", "68 °F", "20 °C").filled(),
            more("margin", "5.4 °F", "3 °C").usual("5.4 °F", "3 °C"),
            more("pressure", "29.92 inHg", "101.3 kPa").usual("29.921 inHg", "101.325 kPa"),
            more("elevation", "600 ft", "180 m"),
        ],
    ),
    (
        "evaporation",
        &[
            main("surface", "80 °F", "27 °C").filled(),
            main("air", "70 °F", "21 °C").filled(),
            main("rh", "50 %", "50 %").filled(),
            main("wind", "10 mph", "4.5 m/s").filled(),
            more("form", "menzel", "menzel"),
            more("limit", "0.2 lb/ft2/h", "1 kg/m2/h").usual("0.2 lb/ft2/h", "0.976 kg/m2/h"),
            more("file", "weather.epw", "weather.epw"),
            COLUMN,
            TIME_ZONE,
            YEAR,
        ],
    ),
    (
        "equivalent-age",
        &[
            main("history", "12h@59F,12h@77F", "12h@15C,12h@25C").filled(),
            main("file", "logger.csv", "logger.csv"),
            COLUMN,
            TIME_ZONE,
            YEAR,
            more("reference", "68 °F", "20 °C").usual("68 °F", "20 °C"),
            more("activation", "5000", "5000").usual("5000", "5000"),
            more("energy", "41500", "41500"),
            more("datum", "32 °F", "0 °C").usual("32 °F", "0 °C"),
            more("longest_gap", "3 h", "3 h"),
            more("gap_margin", "9 °F", "5 °C").usual("9 °F", "5 °C"),
        ],
    ),
    (
        "drying",
        &[
            more("form", "default", "default"),
            main("thickness", "4 in", "100 mm").filled(),
            main("sides", "1", "1"),
            main("wc", "0.5", "0.5").filled(),
            more("d1", "4.0e-10", "4.0e-10"),
            more("strength", "3500 psi", "24 MPa"),
            more("h0", "100 %", "100 %"),
            main("rh", "50 %", "50 %").filled(),
            more("air", "64 °F", "18 °C").usual("64.4 °F", "18 °C"),
            more("face", "1.0e-7", "1.0e-7"),
            more("wet_cure", "7 days", "7 days"),
            more("days", "28,90,180,365", "28,90,180,365"),
            more("limits", "85,80,75", "85,80,75"),
            main("reading", "30:91", "30:91"),
            more("members", "1000", "1000").usual("1000", "1000"),
            more("seed", "1", "1"),
        ],
    ),
    (
        "emission",
        &[
            main("gain", "2.5 g", "2.5 g").filled(),
            main("area", "0.4876 ft2", "0.0453 m2").filled(),
            main("time", "66 h", "66 h").filled(),
            main("limit", "3 lb", "14.6 g/m2/d").filled(),
        ],
    ),
    (
        "film",
        &[
            main("solids", "25 %", "25 %").filled(),
            main("dry", "1.5 mil", "40 µm").filled(),
            main("wet", "6 mil", "150 µm"),
            main("coverage", "300 ft2/gal", "7 m2/L"),
            more("thinner", "10 %", "10 %"),
            main("area", "1000 ft2", "90 m2").filled(),
            main("coats", "2", "2").filled(),
            more("loss", "15 %", "15 %").usual("0 %", "0 %"),
        ],
    ),
    (
        "dilute",
        &[
            main("stock", "31.45 %", "31.45 %").filled(),
            main("baume", "20", "20"),
            main("parts", "1:4", "1:4").filled(),
            main("to", "10 %", "10 %"),
            main("volume", "1 gal", "4 L").filled(),
        ],
    ),
    (
        "neutralize",
        &[
            main("volume", "1 gal", "4 L").filled(),
            main("strength", "31.45 %", "31.45 %").filled(),
            main("baume", "20", "20"),
            more("acid", "3 lb", "1.4 kg"),
            main("base", "sodium-bicarbonate", "sodium-bicarbonate").filled(),
            main("ph", "1.5", "1.5"),
        ],
    ),
    (
        "ventilate",
        &[
            main("substance", "o-xylene", "o-xylene").filled(),
            more("molar_mass", "106.17 g/mol", "106.17 g/mol"),
            more("gravity", "0.864", "0.864"),
            more("lel", "0.9 %", "0.9 %"),
            more("limit", "100 ppm", "100 ppm"),
            main("liquid", "2 gal", "7.5 L").filled(),
            main("part", "70 %", "70 %").filled().usual("100 %", "100 %"),
            main("over", "60 min", "60 min").filled(),
            main("how", "evaporating", "evaporating"),
            more("mixing", "5", "5").usual("5", "5"),
            more("safety", "10", "10").usual("10", "10"),
            main("room", "5000 ft3", "140 m3").filled(),
        ],
    ),
    (
        "purge",
        &[
            main("room", "5000 ft3", "140 m3").filled(),
            main("fan", "2000 cfm", "3400 m3/h").filled(),
            main("from", "1500 ppm", "1500 ppm").filled(),
            main("to", "100 ppm", "100 ppm").filled(),
            main("removal", "95 %", "95 %"),
            more("mixing", "5", "5").usual("5", "5"),
        ],
    ),
    (
        "volume",
        &[
            main("area", "600 ft2", "56 m2"),
            main("length", "30 ft", "9 m").filled(),
            main("width", "20 ft", "6 m").filled(),
            main("thickness", "4 in", "100 mm").filled(),
            main("panels", "3", "3").filled(),
            more("panel_length", "2 ft", "600 mm").usual("2 ft", "610 mm"),
            more("panel_width", "2 ft", "600 mm").usual("2 ft", "610 mm"),
            more("panel_thickness", "2 in", "50 mm").usual("2 in", "50.8 mm"),
            more("waste", "5 %", "5 %").usual("5 %", "5 %"),
            more("step", "0.25 yd3", "0.25 m3").usual("0.25 yd3", "0.191 m3"),
        ],
    ),
    (
        "joints",
        &[
            main("length", "60 ft", "18 m").filled(),
            main("width", "30 ft", "9 m").filled(),
            main("thickness", "4 in", "100 mm").filled(),
            more("low", "24", "24").usual("24", "24"),
            more("high", "36", "36").usual("36", "36"),
            more("cap", "15 ft", "4.5 m").usual("15 ft", "4.57 m"),
            more("aspect", "1.5", "1.5").usual("1.5", "1.5"),
            more("cut", "25 %", "25 %").usual("25 %", "25 %"),
        ],
    ),
    ("markup", &[main("markup", "25 %", "25 %").filled(), main("margin", "20 %", "20 %")]),
    (
        "color-difference",
        &[main("first", "#7a563a", "#7a563a").filled(), main("second", "42, 10, 21", "42, 10, 21").filled()],
    ),
];

/// What is known of a field of a calculation; a field without an example gets an empty one, which a
/// test does not allow.
pub(crate) fn hint(sum: &str, field: &str) -> Hint {
    let of_sum = HINTS.iter().find(|(id, _)| *id == sum).map_or(&[][..], |(_, hints)| *hints);
    of_sum.iter().find(|hint| hint.field == field).copied().unwrap_or(more("", "", ""))
}
