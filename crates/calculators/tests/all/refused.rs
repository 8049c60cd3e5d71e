//! Refusals name their field and speak the reader's language.

use calculators::{ErrorKind, SumError};
use localization::{Lang, Locale, UnitSystem};

use crate::asked;

const SPANISH: Locale = Locale::new(Lang::Es, UnitSystem::Metric);
const ENGLISH: Locale = Locale::new(Lang::En, UnitSystem::Imperial);

/// A question, the field that is named, and parts of the English and the Spanish message.
type Refusal = (
    &'static str,
    &'static [(&'static str, &'static str)],
    Option<&'static str>,
    &'static [&'static str],
    &'static [&'static str],
);

const REFUSALS: [Refusal; 29] = [
    (
        "dew-point",
        &[("air", "75 °F")],
        Some("rh"),
        &["Humidity of the air is needed; accepted: 60 %"],
        &["Falta humedad del aire; se acepta: 60 %"],
    ),
    ("dew-point", &[("air", "75 °F"), ("rh", " ")], Some("rh"), &["is needed"], &["Falta"]),
    (
        "dew-point",
        &[("air", "75 °F"), ("rh", "60 %"), ("pressure", "100 kPa"), ("elevation", "5 m")],
        Some("pressure"),
        &["give one of", "air pressure", "height above the sea"],
        &["dé uno de", "presión del aire", "altura sobre el mar"],
    ),
    (
        "dew-point",
        &[("air", "75 °F"), ("rh", "60 %"), ("margin", "3 °C")],
        Some("slab"),
        &["Slab surface is needed", "68 °F"],
        &["Falta", "20 °C"],
    ),
    (
        "dew-point",
        &[("air", "warm"), ("rh", "60 %")],
        Some("air"),
        &["\"warm\" cannot be read", "75 °F"],
        &["no se entiende \"warm\"", "24 °C"],
    ),
    ("dew-point", &[("air", "75"), ("rh", "60 %")], Some("air"), &["has no unit"], &["no trae unidad"]),
    ("dew-point", &[("air", "75 miles"), ("rh", "60 %")], Some("air"), &["\"75 miles\"", "accepted"], &["se acepta"]),
    (
        "dew-point",
        &[("air", "75 °F"), ("rh", "120 %")],
        Some("rh"),
        &["out of range", "100 %"],
        &["fuera de rango", "100 %"],
    ),
    ("dew-point", &[("air", "75 °F"), ("rh", "0.6")], Some("rh"), &["60 %"], &["60 %", "signo"]),
    ("dew-point", &[("air", "75 °F"), ("rh", "0 %")], Some("rh"), &["\"0 %\"", "above 0 %"], &["más de 0 %"]),
    (
        "dew-point",
        &[("air", "75 °F"), ("air", "80 °F"), ("rh", "60 %")],
        Some("air"),
        &["more than once"],
        &["más de una vez"],
    ),
    ("dew-point", &[("air", "75 °F"), ("rh", "60 %"), ("json", "x")], None, &["no field"], &["no es un campo"]),
    ("no-such-sum", &[], None, &["no such calculation"], &["No hay tal cálculo"]),
    (
        "evaporation",
        &[("surface", "80 °F"), ("air", "70 °F"), ("rh", "50 %")],
        Some("wind"),
        &["Wind is needed", "“weather file"],
        &["Falta viento", "“archivo"],
    ),
    (
        "evaporation",
        &[("form", "guess")],
        Some("form"),
        &["\"guess\"", "Vapor pressures, 1954"],
        &["Presiones de vapor, 1954"],
    ),
    ("film", &[("solids", "25 %"), ("dry", "1 mil"), ("wet", "2 mil")], Some("dry"), &["give one of"], &["dé uno de"]),
    ("film", &[("solids", "0 %"), ("dry", "1 mil")], Some("solids"), &["leaves no film"], &["no deja película"]),
    ("film", &[("solids", "25 %"), ("wet", "0 mil")], Some("wet"), &["above 0"], &["más de 0"]),
    ("volume", &[("thickness", "4 in")], Some("area"), &["“length”", "“width”"], &["“largo”", "“ancho”"]),
    (
        "volume",
        &[("area", "600 ft2"), ("thickness", "4 in"), ("panels", "two")],
        Some("panels"),
        &["whole number"],
        &["número entero"],
    ),
    (
        "volume",
        &[("area", "600 ft2"), ("thickness", "4 in"), ("panels", "-1")],
        Some("panels"),
        &["whole number"],
        &["número entero"],
    ),
    (
        "dilute",
        &[("stock", "31.45 %"), ("to", "35 %")],
        Some("to"),
        &["up to the strength of the stock"],
        &["hasta la concentración"],
    ),
    (
        "ventilate",
        &[("substance", "hydrogen-chloride"), ("liquid", "1 gal"), ("over", "1 h")],
        None,
        &["Acid mist", "no protection"],
        &["Neblina de ácido", "no protege"],
    ),
    (
        "ventilate",
        &[("substance", "acetone"), ("liquid", "1 gal"), ("over", "1 h"), ("how", "spraying")],
        Some("how"),
        &["Sprayed"],
        &["gotas"],
    ),
    (
        "ventilate",
        &[("liquid", "1 gal"), ("over", "1 h")],
        Some("substance"),
        &["“what evaporates”", "molar mass"],
        &["“qué se evapora”"],
    ),
    (
        "drying",
        &[("thickness", "4 in"), ("rh", "50 %"), ("wc", "1.4")],
        Some("wc"),
        &["0.35 to 0.75"],
        &["0.35 a 0.75"],
    ),
    (
        "drying",
        &[("thickness", "4 m"), ("rh", "50 %"), ("wc", "0.5")],
        Some("thickness"),
        &["\"4 m\"", "2000 mm"],
        &["\"4 m\"", "2000 mm"],
    ),
    ("markup", &[("margin", "100 %")], Some("margin"), &["below 100 %"], &["menos de 100 %"]),
    (
        "color-difference",
        &[("second", "120,0,0"), ("first", "50,0,0")],
        Some("second"),
        &["\"120,0,0\"", "0 to 105"],
        &["0 a 105"],
    ),
];

fn refused(sum: &str, pairs: &[(&str, &str)]) -> SumError {
    match asked(sum, pairs) {
        Ok(_) => panic!("{sum} {pairs:?} has an answer"),
        Err(error) => error,
    }
}

#[test]
fn a_refusal_names_its_field_in_the_readers_language() {
    for (sum, pairs, field, english, spanish) in REFUSALS {
        let error = refused(sum, pairs);
        assert_eq!(error.field.as_deref(), field, "{sum} {pairs:?}: {error}");
        for (locale, parts) in [(ENGLISH, english), (SPANISH, spanish)] {
            let plain = error.plain(locale);
            for part in parts {
                assert!(plain.contains(part), "{sum} {pairs:?}: \"{part}\" is not in: {plain}");
            }
            assert!(!plain.contains("--") && !plain.contains("sum-") && !plain.contains("{$"), "{plain}");
        }
        assert!(!error.said.is_empty() && error.said.lines().count() == 1, "{}", error.said);
    }
}

/// Exit codes of the command line: 2 for a question put wrongly, 3 for a value that cannot be.
#[test]
fn the_kind_tells_question_from_value() {
    let air = ("air", "75 °F");
    for (rh, kind) in
        [("x", ErrorKind::Use), ("", ErrorKind::Use), ("120 %", ErrorKind::Data), ("0 %", ErrorKind::Data)]
    {
        assert_eq!(refused("dew-point", &[air, ("rh", rh)]).kind, kind, "{rh}");
    }
}

#[test]
fn a_long_text_is_not_told_back_whole() {
    let long = "é".repeat(5000);
    let plain = refused("dew-point", &[("air", &long), ("rh", "60 %")]).plain(SPANISH);
    assert!(plain.chars().count() < 200, "{} characters", plain.chars().count());
}
