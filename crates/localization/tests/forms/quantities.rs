//! Bare numbers take the usual unit of the reader's measure; what carries a unit is kept as typed.

use form_schema::{FieldErrorKind, FormData, InputKind, QuantityProblem};
use slab_diary::read_place;

use crate::support::{form, forms, read_body, typed_from};
use localization::UnitSystem::{self, Imperial, Metric};
use serde_json::json;
use slab_diary::body::Body;
use units::Problem;

fn read(
    kind: &str,
    pairs: &[(&str, &str)],
    unit_system: UnitSystem,
) -> Result<serde_json::Value, Vec<form_schema::FieldError>> {
    let typed: FormData = pairs.iter().copied().collect();
    read_body(form(kind).expect("a kind with a form"), &typed, unit_system).map(serde_json::Value::Object)
}

/// Kind, field, other inputs it needs, typed, kept in imperial, kept in metric.
type Case = (&'static str, &'static str, &'static [(&'static str, &'static str)], &'static str, [&'static str; 2]);

/// By hand; units as `units` reads them.
const KEPT: &[Case] = &[
    ("water_drop", "soaked_in", &[], "45", ["45 s", "45 s"]),
    ("water_drop", "soaked_in", &[], " 45 s ", ["45 s", "45 s"]),
    ("water_drop", "soaked_in", &[], "1 min 30 s", ["1 min 30 s", "1 min 30 s"]),
    ("water_drop", "soaked_in", &[], "1:15", ["1 min 15 s", "1 min 15 s"]),
    ("water_drop", "soaked_in", &[], "12:05", ["12 min 05 s", "12 min 05 s"]),
    ("water_drop", "still_stood_after", &[], "10", ["10 min", "10 min"]),
    ("defect", "width", &[("what", "crack")], "1/16", ["1/16 in", "1/16 mm"]),
    ("defect", "width", &[("what", "crack")], "1.5 mm", ["1.5 mm", "1.5 mm"]),
    ("defect", "width", &[("what", "crack")], "½", ["½ in", "½ mm"]),
    ("temperature", "slab", &[], "62", ["62 °F", "62 °C"]),
    ("temperature", "slab", &[], "-4", ["-4 °F", "-4 °C"]),
    ("temperature", "slab", &[], "62f", ["62f", "62f"]),
    ("air_reading", "humidity", &[], "45", ["45 %", "45 %"]),
    ("air_reading", "humidity", &[], "45,5", ["45,5 %", "45,5 %"]),
    ("air_reading", "humidity", &[], "75 % RH", ["75 % RH", "75 % RH"]),
    ("air_reading", "wind", &[], "3", ["3 mph", "3 m/s"]),
    ("job_opened", "elevation", &[("name", "shop")], "800", ["800 ft", "800 m"]),
    ("defect", "width", &[("what", "crack")], "0.4", ["0.4 in", "0.4 mm"]),
    ("pour", "thickness", &[], "12' 6 1/2\"", ["12' 6 1/2\"", "12' 6 1/2\""]),
    ("pour", "cement", &[], "520", ["520 lb/yd³", "520 kg/m³"]),
    ("pour", "strength", &[], "4,000", ["4,000 psi", "4,000 MPa"]),
    ("pour", "fly_ash", &[], "0", ["0 %", "0 %"]),
    ("pour", "fly_ash", &[], "15", ["15 %", "15 %"]),
    ("pour", "water_cement", &[], "0.48", ["0.48", "0.48"]),
    ("pour", "retarder", &[], "15", ["15 mil", "15 µm"]),
    ("surface_ph", "ph", &[], "11.5", ["11.5", "11.5"]),
    ("emission_dish", "gain", &[("area", "0.5 ft2"), ("exposed", "66")], "2.5", ["2.5 g", "2.5 g"]),
    ("sealer_chosen", "emission_limit", &[("sealer", "epoxy-solid")], "3", ["3 lb", "3 g/m²/d"]),
    ("coat_laid", "used", &[("coat", "1")], "3.5", ["3.5 gal", "3.5 L"]),
    (
        "panel_stained",
        "used",
        &[("panel", "P1"), ("mix_stain", "umber"), ("mix_parts", "1"), ("water_parts", "1"), ("coats", "2")],
        "2",
        ["2 fl oz", "2 mL"],
    ),
];

#[test]
fn bare_numbers_get_the_unit_and_written_units_stay() {
    for (kind, field, others, typed, kept) in KEPT {
        for (unit_system, kept) in [(Imperial, kept[0]), (Metric, kept[1])] {
            let mut pairs = others.to_vec();
            pairs.push((field, typed));
            let body = read(kind, &pairs, unit_system).unwrap_or_else(|m| panic!("{kind}.{field} {typed}: {m:?}"));
            assert_eq!(body[*field], json!(kept), "{kind}.{field} {typed} {unit_system:?}");
        }
    }
    assert_eq!(KEPT.len(), 30);
}

#[test]
fn every_example_of_every_quantity_reads_as_it_stands_and_its_number_with_the_unit_shown() {
    let mut checked = 0;
    for field in forms().iter().flat_map(|f| f.fields) {
        let InputKind::Quantity(quantity) = field.input else { continue };
        for unit_system in UnitSystem::ALL {
            let example = field.example(unit_system);
            assert_eq!(quantity.read(example, Some(unit_system)).as_deref(), Ok(example), "{}", field.name);
            let kept = ["5", "0.5", "200"].iter().find_map(|bare| quantity.read(bare, Some(unit_system)).ok()).unwrap();
            assert!(kept.ends_with(field.unit(unit_system)), "{}: {kept}", field.name);
            checked += 1;
        }
    }
    assert_eq!(checked, 2 * QUANTITIES);
}

const QUANTITIES: usize = 48;

/// A bare number far from any such thing is asked for its unit; what is written with one is taken as it stands.
#[test]
fn a_bare_number_that_nobody_means_is_asked_back() {
    let panel = [("panel", "P1"), ("mix", "4021")];
    for (kind, field, others, typed, unit_system, taken) in [
        ("pour", "thickness", &[][..], "10", Metric, false),
        ("pour", "thickness", &[], "4", Metric, false),
        ("pour", "thickness", &[], "29", Metric, false),
        ("pour", "thickness", &[], "30", Metric, true),
        ("pour", "thickness", &[], "100", Metric, true),
        ("pour", "thickness", &[], "1001", Metric, false),
        ("pour", "thickness", &[], "10 mm", Metric, true),
        ("pour", "thickness", &[], "10 cm", Metric, true),
        ("pour", "thickness", &[], "10 in", Metric, true),
        ("pour", "thickness", &[], "10", Imperial, true),
        ("pour", "thickness", &[], "4", Imperial, true),
        ("pour", "thickness", &[], "100", Imperial, false),
        ("pour", "thickness", &[], "1", Imperial, false),
        ("panel_made", "side", &panel, "18", Metric, false),
        ("panel_made", "side", &panel, "18", Imperial, true),
        ("panel_made", "side", &panel, "450", Metric, true),
        ("slab_humidity", "depth", &[("humidity", "80 %")], "4", Metric, false),
        ("slab_humidity", "depth", &[("humidity", "80 %")], "40", Metric, true),
    ] {
        let mut pairs = others.to_vec();
        pairs.push((field, typed));
        let read = read(kind, &pairs, unit_system);
        assert_eq!(read.is_ok(), taken, "{kind}.{field} {typed} {unit_system:?}: {read:?}");
    }
}

#[test]
fn what_is_no_such_quantity_is_refused_with_the_reason() {
    let problems = [
        ("water_drop", "soaked_in", "soon", Problem::NotANumber),
        ("water_drop", "soaked_in", "45 gal", Problem::UnknownUnit("gal".to_owned())),
        ("water_drop", "soaked_in", "-5", Problem::Negative),
        ("water_drop", "soaked_in", "30 s 1 min", Problem::OutOfOrder),
        ("water_drop", "soaked_in", "5 3", Problem::NoUnit),
        ("surface_ph", "ph", "15", Problem::OutOfRange { low: "0", high: "14" }),
        ("air_reading", "humidity", "120", Problem::OutOfRange { low: "0 %", high: "100 %" }),
    ];
    for (kind, field, typed, problem) in problems {
        let mistakes = read(kind, &[(field, typed)], Imperial).unwrap_err();
        let found = mistakes.iter().find(|m| m.field == field).unwrap();
        assert!(
            matches!(&found.what, FieldErrorKind::Quantity { problem: QuantityProblem::Read(p), .. } if *p == problem),
            "{typed}: {found:?}"
        );
        assert_eq!(found.typed, typed);
    }
}

/// The input says percent; the reader of trade notation takes a bare 0.5 as a half. Neither is guessed.
#[test]
fn a_bare_share_where_percent_are_asked_is_asked_back() {
    for typed in ["0.5", "1", "0,25", "1/2"] {
        for (kind, field) in [("payment_terms", "deposit"), ("air_reading", "humidity")] {
            let mistakes = read(kind, &[(field, typed)], Imperial).unwrap_err();
            let share = FieldErrorKind::Quantity {
                asked: match form(kind).unwrap().field(field).unwrap().input {
                    InputKind::Quantity(quantity) => quantity,
                    other => panic!("{other:?}"),
                },
                problem: QuantityProblem::ShareOrPercent,
            };
            assert_eq!(mistakes[0].what, share, "{typed}");
        }
    }
}

/// An old body may hold a share without its sign; its correction must not read it as percent.
#[test]
fn an_old_share_fills_the_form_as_percent() {
    let raw = serde_json::value::to_raw_value(&json!({"kind": "payment_terms", "deposit": "0.25"})).unwrap();
    let old = Body::read(&raw, 1).unwrap();
    let typed = typed_from(&old, None);
    assert_eq!(typed.first("deposit"), Some("25 %"));
    assert_eq!(read_body(form("payment_terms").unwrap(), &typed, Imperial).unwrap()["deposit"], json!("25 %"));
}

#[test]
fn money_is_kept_as_a_decimal_text() {
    let cases = [
        ("120.00", Some("120.00")),
        ("120", Some("120")),
        ("$1,200.50", Some("1200.50")),
        ("1,200", Some("1200")),
        ("1.200,50", Some("1200.50")),
        ("120,5", Some("120.5")),
        ("12,345,678.9", Some("12345678.9")),
        ("-5", None),
        ("1,20,0", None),
        ("1.2.3", None),
        (".", None),
        ("abc", None),
        ("1,2,3.45", None),
    ];
    for (typed, kept) in cases {
        let read = read("time_cost", &[("what", "measuring"), ("cost", typed)], Imperial);
        assert_eq!(read.ok().map(|body| body["cost"].as_str().unwrap().to_owned()).as_deref(), kept, "{typed}");
    }
}

#[test]
fn places_read_in_the_readers_measure() {
    let place = |pairs: &[(&str, &str)], unit_system| read_place(&pairs.iter().copied().collect(), unit_system);
    assert_eq!(place(&[("place_kind", "slab"), ("zone", "shop")], Imperial), Ok(None));
    assert_eq!(place(&[], Imperial), Ok(None));
    assert_eq!(place(&[("zone", "shop")], Metric), Ok(Some(json!({"zone": "shop"}))));
    let spot = [("place_kind", "point"), ("zone", "shop"), ("x", "12"), ("y", "-3' 6\""), ("radius", "2")];
    assert_eq!(place(&spot, Imperial), Ok(Some(json!({"point": ["12 ft", "-3' 6\""], "radius": "2 ft"}))));
    assert_eq!(place(&spot, Metric), Ok(Some(json!({"point": ["12 m", "-3' 6\""], "radius": "2 m"}))));
    let found = place(&[("place_kind", "point"), ("x", "far"), ("radius", "-1")], Imperial).unwrap_err();
    assert_eq!(found.iter().map(|m| m.field.as_str()).collect::<Vec<_>>(), ["x", "y", "radius"]);
    let found = place(&[("place_kind", "patch"), ("corner_x", "1"), ("corner_y", "1")], Imperial).unwrap_err();
    assert_eq!(found[0].what, FieldErrorKind::NoPatch);
    assert_eq!(place(&[("place_kind", "moon")], Imperial).unwrap_err()[0].field, "place_kind");
    assert_eq!(place(&[("place_kind", "zone")], Imperial).unwrap_err()[0].field, "zone");
}

#[test]
fn every_kind_of_old_place_comes_back() {
    let places = [
        json!({"zone": "shop"}),
        json!({"point": ["5 ft", "5 ft"]}),
        json!({"zone": "shop", "point": ["5 ft", "5 ft"], "radius": "2 ft"}),
        json!({"polygon": [["0 ft", "0 ft"], ["1 m", "0 ft"], ["0 ft", "1 m"]]}),
        json!({"zone": "shop", "polygon": [["0 ft", "0 ft"], ["1 m", "0 ft"], ["0 ft", "1 m"]]}),
    ];
    let raw = serde_json::value::to_raw_value(&json!({"kind": "cured"})).unwrap();
    let body = Body::read(&raw, 1).unwrap();
    for place in places {
        let old: slab_diary::Place = serde_json::from_value(place.clone()).unwrap();
        let typed = typed_from(&body, Some(&old));
        assert_eq!(read_place(&typed, Imperial), Ok(Some(place)));
    }
}
