//! Refusals name their field and speak the reader's language.

use calculators::{CalculatorError, ErrorKind};
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
        &["not both", "Air pressure", "height above the sea"],
        &["no los dos", "Presión del aire", "altura sobre el mar"],
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
        &["no number in \"warm\"", "75 °F"],
        &["\"warm\"", "24 °C"],
    ),
    (
        "dew-point",
        &[("air", "75"), ("rh", "60 %")],
        Some("air"),
        &["\"75\" has no unit", "75 °F"],
        &["\"75\"", "unidad", "24 °C"],
    ),
    (
        "dew-point",
        &[("air", "75 miles"), ("rh", "60 %")],
        Some("air"),
        &["\"miles\" is no unit", "75 °F"],
        &["\"miles\"", "24 °C"],
    ),
    ("dew-point", &[("air", "75 °F"), ("rh", "120 %")], Some("rh"), &["not between 0 % and 100 %"], &["0 %", "100 %"]),
    ("dew-point", &[("air", "75 °F"), ("rh", "0.6")], Some("rh"), &["percent sign", "60 %"], &["60 %", "signo"]),
    ("dew-point", &[("air", "75 °F"), ("rh", "0 %")], Some("rh"), &["\"0 %\"", "above 0 %"], &["más de 0 %"]),
    (
        "dew-point",
        &[("air", "75 °F"), ("air", "80 °F"), ("rh", "60 %")],
        Some("air"),
        &["given several"],
        &["se dieron varias"],
    ),
    (
        "dew-point",
        &[("air", "75 °F"), ("rh", "60 %"), ("json", "x")],
        None,
        &["no such field"],
        &["No existe ese campo"],
    ),
    ("no-such-sum", &[], None, &["no such calculation"], &["No hay tal cálculo"]),
    (
        "evaporation",
        &[("surface", "80 °F"), ("air", "70 °F"), ("rh", "50 %")],
        Some("wind"),
        &["Wind is needed", "10 mph", "or file"],
        &["Falta viento", "archivo"],
    ),
    ("evaporation", &[("form", "guess")], Some("form"), &["\"guess\"", "menzel, uno"], &["\"guess\"", "menzel, uno"]),
    ("film", &[("solids", "25 %"), ("dry", "1 mil"), ("wet", "2 mil")], Some("dry"), &["not both"], &["no los dos"]),
    ("film", &[("solids", "0 %"), ("dry", "1 mil")], Some("solids"), &["leaves no film"], &["no deja película"]),
    ("film", &[("solids", "25 %"), ("wet", "0 mil")], Some("wet"), &["above 0"], &["más de 0"]),
    ("volume", &[("thickness", "4 in")], Some("area"), &["600 ft2", "or length"], &["56 m2", "o largo"]),
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
        &["What evaporates is needed", "o-xylene", "molar mass"],
        &["Falta qué se evapora", "masa molar"],
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

fn refused(sum: &str, pairs: &[(&str, &str)]) -> CalculatorError {
    match asked(sum, pairs) {
        Ok(_) => panic!("{sum} {pairs:?} has an answer"),
        Err(error) => error,
    }
}

fn plain(error: &CalculatorError, locale: Locale) -> String {
    error.problems(locale).into_iter().map(|(_, said)| said).collect::<Vec<_>>().join("; ")
}

#[test]
fn a_refusal_names_its_field_in_the_readers_language() {
    for (calculator, pairs, field, english, spanish) in REFUSALS {
        let error = refused(calculator, pairs);
        assert_eq!(error.field_name(), field, "{calculator} {pairs:?}: {error}");
        for (locale, parts) in [(ENGLISH, english), (SPANISH, spanish)] {
            // Each language quotes in its own way.
            let plain = plain(&error, locale).replace(['«', '»'], "\"");
            for part in parts {
                assert!(plain.contains(part), "{calculator} {pairs:?}: \"{part}\" is not in: {plain}");
            }
            assert!(!plain.contains("--") && !plain.contains("sum-") && !plain.contains("{$"), "{plain}");
        }
        let line = error.to_string();
        assert!(!line.is_empty() && line.lines().count() == 1, "{line}");
    }
}

/// A page hears of everything at once, each beside its field.
#[test]
fn every_field_that_is_wrong_is_told() {
    let error = refused("dew-point", &[("air", "warm"), ("rh", "120 %"), ("margin", "3 °C")]);
    let fields: Vec<_> = error.problems(ENGLISH).into_iter().map(|(field, _)| field.unwrap().to_owned()).collect();
    assert_eq!(fields, ["air", "rh", "slab"]);
    let line = error.to_string();
    assert!(["--air", "--rh", "--slab"].iter().all(|option| line.contains(option)), "{line}");
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
    let plain = plain(&refused("dew-point", &[("air", &long), ("rh", "60 %")]), SPANISH);
    assert!(plain.chars().count() < 200, "{} characters", plain.chars().count());
}
