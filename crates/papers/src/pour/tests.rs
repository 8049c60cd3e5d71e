//! Sums against hand values, and the sheet as printed.

use jiff::civil::date;
use localization::Lang;
use science::air::Level;
use trade_facts::Trade;
use units::{Area, EvaporationRate, Fraction, Length, Temperature};

use super::hours::stretches;
use super::sheet::lay_out;
use super::{HourRisk, JointAdvice, Panels, PourSheet, PourWeather, PourZone, WeatherBasis, hour_risks};
use crate::typeset::squeezed;
use crate::{PageSize, PaperError, pour_sheet};

fn zone(name: &str, square_feet: f64, finish: &str) -> PourZone {
    PourZone { name: name.to_owned(), area: Area::square_feet(square_feet), finish: finish.to_owned() }
}

fn panels(finish: &str, count: u32) -> Panels {
    Panels { finish: finish.to_owned(), count, edge: Length::inches(18.0), thickness: Length::inches(2.0) }
}

fn sheet() -> PourSheet {
    let hours = (5_u8..=20).map(|hour| match hour {
        0..9 => HourRisk { hour, days: 30, above: 0, possible: 1 },
        9..12 => HourRisk { hour, days: 30, above: 9, possible: 3 },
        12..18 => HourRisk { hour, days: 30, above: 18, possible: 6 },
        _ => HourRisk { hour, days: 0, above: 0, possible: 0 },
    });
    PourSheet {
        job: "Quarry Road barn".to_owned(),
        slab: "Shop floor".to_owned(),
        prepared: date(2026, 5, 4),
        pour_day: Some(date(2026, 6, 2)),
        thickness: Length::inches(4.0),
        zones: vec![zone("Shop", 900.0, "light-steel-trowel"), zone("Apron", 300.0, "broom")],
        panels: vec![panels("light-steel-trowel", 3), panels("broom", 1)],
        waste: Fraction::share(0.07).expect("in range"),
        weather: Some(PourWeather {
            place: "the county airport".to_owned(),
            month: 6,
            basis: WeatherBasis::TypicalYear,
            alarm: EvaporationRate::pounds_per_square_foot_hour(0.2),
            relative_error: Fraction::share(0.4).expect("in range"),
            concrete: Temperature::fahrenheit(75.0),
            hours: hours.collect(),
        }),
    }
}

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() < 1e-9, "{found} against {wanted}");
}

/// By hand: 1,200 ft² × 1/3 ft = 400 ft³; 4 panels × 1.5 ft × 1.5 ft × 1/6 ft = 1.5 ft³; 7 % of
/// 401.5 ft³ = 28.105 ft³; together 429.605 ft³ / 27 = 15.9113 yd³, so 16.00 yd³.
#[test]
fn concrete_by_hand() {
    let order = sheet().concrete().expect("a fair sheet");
    near(order.slab.as_cubic_feet(), 400.0);
    near(order.panels.as_cubic_feet(), 1.5);
    near(order.waste.as_cubic_feet(), 28.105);
    near(order.order.as_cubic_yards(), 16.0);
}

/// 81 ft² × 4 in = 27 ft³ = 1 yd³ exactly: no quarter is added for rounding dust. One more square
/// foot asks for the next quarter.
#[test]
fn rounding_goes_up_and_not_further() {
    let order = |square_feet: f64| {
        let mut sheet = PourSheet { panels: Vec::new(), waste: Fraction::share(0.0).expect("in range"), ..sheet() };
        sheet.zones = vec![zone("All", square_feet, "float")];
        sheet.concrete().expect("a fair sheet").order.as_cubic_yards()
    };
    near(order(81.0), 1.0);
    near(order(82.0), 1.25);
    near(order(0.1), 0.25);
    near(order(81.0 * 37.0), 37.0);
}

/// By hand: 24 × 4 in = 8 ft, 36 × 4 in = 12 ft; 36 × 5.5 in = 16.5 ft, above 15 ft; 24 × 9 in = 18 ft,
/// above it as well. Depth 1/4.
#[test]
fn joints_by_hand() {
    let of =
        |inches: f64| JointAdvice::for_thickness(Trade::built_in(), Length::inches(inches)).expect("built-in limits");
    let four = of(4.0);
    near(four.spacing.low.as_feet(), 8.0);
    near(four.spacing.high.as_feet(), 12.0);
    assert_eq!(four.spacing.held_to, None);
    near(four.depth.as_inches(), 1.0);
    let thick = of(5.5);
    near(thick.spacing.low.as_feet(), 11.0);
    near(thick.spacing.high.as_feet(), 15.0);
    near(thick.depth.as_inches(), 1.375);
    let very = of(9.0);
    near(very.spacing.low.as_feet(), 15.0);
    assert!(very.spacing.held_to.is_some());
}

#[test]
fn hours_are_counted_by_their_start() {
    let counted = hour_risks([
        (13, Some(Level::Above)),
        (13, Some(Level::Below)),
        (13, None),
        (5, Some(Level::Possible)),
        (99, None),
    ]);
    assert_eq!(counted.len(), 24);
    assert_eq!(counted[13], HourRisk { hour: 13, days: 2, above: 1, possible: 0 });
    assert_eq!(counted[13].above_share(), Some(0.5));
    assert_eq!(counted[5].reach_share(), Some(1.0));
    assert_eq!(counted[6].reach_share(), None);
    assert_eq!(stretches(&counted, |hour| hour.days == 0), [(0, 5), (6, 13), (14, 24)]);
}

#[test]
fn every_language_and_size_on_two_sheets_with_all_that_matters() {
    for (lang, wanted) in [(Lang::En, ENGLISH), (Lang::Es, SPANISH)] {
        for size in PageSize::ALL {
            let laid = lay_out(&sheet(), lang, size).expect("a sheet");
            assert_eq!(laid.sheets(), 2, "{lang:?} {size:?}");
            let text = laid.text();
            for part in wanted.iter().chain(&BOTH) {
                assert!(text.contains(&squeezed(part)), "{lang:?} {size:?}: {part}");
            }
            for clause in Trade::built_in().pour_spec() {
                assert!(text.contains(&clause.code), "{lang:?}: clause {} {}", clause.code, clause.id);
            }
        }
    }
}

const BOTH: [&str; 9] =
    ["Quarry Road barn", "Shop floor", "Shop", "Apron", "900 ft²", "16.00 yd³", "8′", "12′", "18″ × 18″"];
const ENGLISH: &[&str] = &[
    "Pour sheet",
    "May 4, 2026",
    "June 2, 2026",
    "No membrane curing compound on this slab",
    "Light steel trowel",
    "Broom, medium",
    "fair / poor",
    "Order, rounded up to the quarter yard",
    "5 sack (470 lb/yd³) min; 3,000–4,000 psi",
    "0 %, or ≤ 10–15 % constant",
    "24 to 36 times the thickness",
    "at least 1″",
    "1 to 4 h after finishing with an early-entry saw, 4 to 12 h with a wet saw",
    "Wet cure, at least 7 days",
    "Keep it at 50 °F or warmer",
    "evaporation < 0.2 lb/ft²/h",
    "Above the alarm on half of the days or more: 12 noon to 6 pm.",
    "On one day in ten or fewer: 5 am to 9 am.",
    "No readings: 6 pm to 9 pm.",
    "Estimate, ± 40 %. June at the county airport, from a typical weather year",
    "it is not a forecast",
    "Sample panels, poured the same day",
    "55 lb",
    "Concrete contractor",
    "silica dust",
    "caustic",
    "ACI 302.1R (M): P02, P03, P08, P13, P15",
    "V read in the source",
    "licensed engineer",
];
const SPANISH: &[&str] = &[
    "Hoja de colado",
    "4 de mayo de 2026",
    "Nada de membrana de curado en esta losa",
    "Llana metálica ligera",
    "Escobillado medio",
    "regular / malo",
    "5 sacos (470 lb/yd³) mínimo; 3,000–4,000 psi",
    "de 24 a 36 veces el espesor",
    "Curado húmedo, al menos 7 días",
    "evaporación < 0.2 lb/pie² por hora",
    "Sobre la alarma la mitad de los días o más: 12 del día a 6 pm.",
    "Estimación, ± 40 %. Junio en the county airport",
    "no es un pronóstico",
    "Paneles de muestra, colados el mismo día",
    "Contratista de concreto",
    "ADVERTENCIA",
    "ingeniero con licencia",
];

#[test]
fn no_weather_and_no_panels_are_said() {
    let bare = PourSheet { weather: None, panels: Vec::new(), pour_day: None, ..sheet() };
    let text = lay_out(&bare, Lang::En, PageSize::Letter).expect("a sheet").text();
    for part in ["No weather file was given", "No panels are asked for", "not set"] {
        assert!(text.contains(&squeezed(part)), "{part}");
    }
}

#[test]
fn a_thick_slab_says_what_holds_the_spacing() {
    let thick = PourSheet { thickness: Length::inches(6.0), ..sheet() };
    let text = lay_out(&thick, Lang::En, PageSize::Letter).expect("a sheet").text();
    // 24 × 6 in = 12 ft; 36 × 6 in = 18 ft, held to 15 ft.
    assert!(text.contains(&squeezed("12′ to 15′")) && text.contains(&squeezed("held to 15′ at most")));
}

#[test]
fn a_finish_that_may_refuse_stain_is_called_out() {
    let mut burnt = sheet();
    burnt.zones[0].finish = "burnished".to_owned();
    let text = lay_out(&burnt, Lang::En, PageSize::Letter).expect("a sheet").text();
    assert!(text.contains(&squeezed("Zone Shop asks for a burnished finish")));
}

#[test]
fn many_zones_take_more_sheets_and_lose_none() {
    let mut many = sheet();
    many.zones = (1..=40).map(|n| zone(&format!("Room {n:02}"), 100.0, "float")).collect();
    let laid = lay_out(&many, Lang::Es, PageSize::Letter).expect("a sheet");
    assert!(laid.sheets() > 2);
    let text = laid.text();
    assert!((1..=40).all(|n| text.contains(&format!("Room{n:02}"))));
}

/// Names reach the typesetter as data, never as its markup.
#[test]
fn names_are_printed_as_they_are() {
    let odd = PourSheet { job: "#panic() *A* $x$ {slab} <b>".to_owned(), ..sheet() };
    let text = lay_out(&odd, Lang::En, PageSize::A4).expect("a sheet").text();
    assert!(text.contains(&squeezed("#panic() *A* $x$")));
}

fn refused(change: impl FnOnce(&mut PourSheet)) -> String {
    let mut sheet = sheet();
    change(&mut sheet);
    pour_sheet(&sheet, Lang::En, PageSize::Letter).expect_err("refused").to_string()
}

#[test]
fn bad_figures_are_named_with_what_would_be_accepted() {
    let cases = [
        (refused(|s| s.thickness = Length::ZERO), "thickness: 0 in; accepted: above 0 in, at most 36 in"),
        (refused(|s| s.zones.clear()), "zones: none; accepted: at least one zone"),
        (refused(|s| s.zones[1].area = Area::ZERO), "zones[1].area: 0 ft²; accepted: above 0, at most 10,000,000 ft²"),
        (refused(|s| s.panels[0].count = 0), "panels[0].count: 0; accepted: 1 to 99"),
        (
            refused(|s| s.panels[1].edge = Length::inches(5.0)),
            "panels[1].edge: 5 in; accepted: at least 6 in, at most 72 in",
        ),
        (refused(|s| s.waste = Fraction::share(0.6).expect("a share")), "waste: 0.6; accepted: a share from 0 to 0.5"),
    ];
    for (found, wanted) in cases {
        assert_eq!(found, wanted);
    }
    assert!(
        refused(|s| s.zones[0].finish = "velvet".to_owned())
            .starts_with("zones[0].finish: \"velvet\"; accepted: broom, ")
    );
    let month = refused(|s| s.weather.as_mut().expect("has weather").month = 13);
    assert_eq!(month, "weather.month: 13; accepted: 1 to 12");
}

#[test]
fn a_character_the_typeface_lacks_is_named() {
    let error = pour_sheet(&PourSheet { job: "Barn 🐎".to_owned(), ..sheet() }, Lang::En, PageSize::A4);
    assert!(matches!(error, Err(PaperError::Glyph { character: '🐎', .. })), "{error:?}");
}
