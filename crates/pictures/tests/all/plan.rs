//! The plan: finding places on it, what is listed, what is drawn where.

use std::collections::BTreeMap;
use std::time::{Duration, Instant};

use localization::{Lang, Locale, UnitSystem};
use pictures::{Layer, MarkKind, MarkPlace, PlanLayers, PlanLook, marks_of, plan_svg};
use proptest::prelude::*;
use roxmltree::Document;
use trade_facts::Trade;

use crate::samples::{self, feet, mark};

fn number(svg: &str, name: &str) -> f64 {
    let document = Document::parse(svg).expect("well-formed");
    document.root_element().attribute(name).and_then(|v| v.parse().ok()).expect(name)
}

proptest! {
    /// What a page's script computes from a tap is where the mark of that place is drawn; nearer to a wall its
    /// shape stands aside.
    #[test]
    fn a_tap_on_a_mark_is_its_place(x in 2.0..38.0_f64, y in 2.0..15.5_f64, width in 320.0..1200.0_f64) {
        let place = feet(x, y);
        let layers = PlanLayers { marks: vec![mark("m", MarkKind::Temperature, MarkPlace::Point(place), "")], hidden: vec![Layer::Zones], ..PlanLayers::default() };
        let drawing = plan_svg(&samples::crooked(), &layers, &PlanLook::new("p", "Plan", Locale::default()).wide(width));
        let (svg, view) = (drawing.svg.expect("drawn"), drawing.view.expect("drawn"));
        let document = Document::parse(&svg).expect("well-formed");
        let group = document.descendants().find(|n| n.attribute("data-item") == Some("m")).expect("the mark is drawn");
        let circle = group.descendants().find(|n| n.has_tag_name(("http://www.w3.org/2000/svg", "circle"))).expect("its shape");
        let at = |name: &str| circle.attribute(name).and_then(|v| v.parse::<f64>().ok()).expect(name);
        let (x0, y0, m) = (number(&svg, "data-x0"), number(&svg, "data-y0"), number(&svg, "data-m"));
        // Drawn to a hundredth of a unit.
        prop_assert!((x0 + m * at("cx") - place.x.as_meters()).abs() <= 0.0051 * m);
        prop_assert!((y0 - m * at("cy") - place.y.as_meters()).abs() <= 0.0051 * m);
        let (sx, sy) = view.to_svg(place);
        let back = view.to_plan(sx, sy);
        prop_assert!((back.x.as_meters() - place.x.as_meters()).abs() < 1e-9);
        prop_assert!((back.y.as_meters() - place.y.as_meters()).abs() < 1e-9);
        prop_assert_eq!(group.attribute("data-x").and_then(|v| v.parse::<f64>().ok()), Some(place.x.as_meters()));
    }
}

#[test]
fn hidden_layers_are_neither_drawn_nor_listed() {
    let diary = samples::diary(&samples::mapped_lines());
    let (plan, shown) = samples::layers_of(&diary, &samples::FINISHES, Locale::default());
    for layer in Layer::ALL {
        let show = |hidden: Vec<Layer>| {
            let layers = PlanLayers { hidden, ..shown.clone() };
            plan_svg(&plan, &layers, &PlanLook::new("p", "Plan", Locale::default()))
        };
        let (all, without) = (show(Vec::new()), show(vec![layer]));
        let group = format!("data-layer-of=\"{}\"", layer.name());
        assert!(all.svg.expect("drawn").contains(&group), "{group}");
        assert!(!without.svg.expect("drawn").contains(&group), "{group}");
        assert!(all.items.iter().any(|i| i.layer == layer), "{group}");
        assert!(without.items.iter().all(|i| i.layer != layer), "{group}");
    }
}

#[test]
fn every_mark_is_listed_and_those_on_the_sheet_are_drawn() {
    let layers = PlanLayers { marks: samples::one_of_each(), ..PlanLayers::default() };
    let drawing = plan_svg(&samples::crooked(), &layers, &PlanLook::new("p", "Plan", Locale::default()));
    let svg = drawing.svg.expect("drawn");
    for mark in &layers.marks {
        assert_eq!(drawing.items.iter().filter(|i| i.id.as_ref() == Some(&mark.id)).count(), 1, "{}", mark.id);
        let drawn = svg.contains(&format!("data-item=\"{}\"", mark.id));
        assert_eq!(drawn, mark.id != "far" && mark.id != "nowhere", "{}", mark.id);
    }
}

#[test]
fn every_mark_has_one_number_whatever_the_width_and_what_is_hidden() {
    let marks = samples::one_of_each();
    let numbers = |width: f64, hidden: Vec<Layer>| {
        let layers = PlanLayers { marks: marks.clone(), hidden, ..PlanLayers::default() };
        let look = PlanLook::new("p", "Plan", Locale::default()).wide(width);
        let items = plan_svg(&samples::crooked(), &layers, &look).items;
        items.into_iter().filter_map(|i| Some((i.id?, i.number))).collect::<BTreeMap<_, _>>()
    };
    let phone = numbers(320.0, Vec::new());
    assert_eq!(phone, numbers(1600.0, Vec::new()));
    let without = numbers(320.0, vec![Layer::Incidents]);
    assert!(without.len() < phone.len() && without.iter().all(|(id, number)| phone[id] == *number));
    let mut given: Vec<&str> = phone.values().flatten().map(String::as_str).collect();
    given.sort_by_key(|n| (n.len(), *n));
    let tests = marks.iter().filter(|m| !matches!(m.kind, MarkKind::Next | MarkKind::Section)).count();
    let next = marks.iter().filter(|m| m.kind == MarkKind::Next).count();
    let mut expected: Vec<String> = (1..=tests).map(|n| n.to_string()).collect();
    expected.extend(('A'..).take(next).map(|c| c.to_string()));
    expected.sort_by_key(|n| (n.len(), n.clone()));
    assert_eq!(given, expected);
}

#[test]
fn a_zone_without_room_for_its_name_has_a_number_after_those_of_the_marks() {
    let marks = vec![mark("m", MarkKind::Temperature, MarkPlace::Point(feet(5.0, 5.0)), "61 °F")];
    let layers = PlanLayers { marks, ..PlanLayers::default() };
    let look = PlanLook::new("p", "Plan", Locale::default()).keyed();
    let drawing = plan_svg(&samples::crooked(), &layers, &look);
    let svg = drawing.svg.expect("drawn");
    let closet = drawing.items.iter().find(|i| i.text.starts_with("walk-in closet")).expect("the closet is listed");
    let number = closet.number.as_ref().expect("its name is too long for it");
    assert!(number.parse::<usize>().expect("a number") > 1, "{number}");
    assert!(svg.contains(&format!(">{number}</text>")));
    let mut numbers: Vec<&String> = drawing.items.iter().filter_map(|i| i.number.as_ref()).collect();
    let given = numbers.len();
    numbers.sort();
    numbers.dedup();
    assert_eq!(numbers.len(), given, "no two things have one number");
}

#[test]
fn a_drawing_for_a_file_says_what_its_numbers_stand_for_and_one_for_a_page_leaves_that_to_the_page() {
    let diary = samples::demo();
    let slab = slab_diary::fold(&diary, samples::after_all());
    let marks = marks_of(&slab, Trade::built_in(), Locale::default());
    let layers = PlanLayers { marks, ..PlanLayers::default() };
    let look = PlanLook::new("p", "Plan", Locale::default());
    let plan = slab.plan().expect("the demo has a plan");
    let (page, file) = (plan_svg(plan, &layers, &look), plan_svg(plan, &layers, &look.clone().keyed()));
    assert_eq!((&page.items, &page.key), (&file.items, &file.key));
    let (page_svg, file_svg) = (page.svg.expect("drawn"), file.svg.expect("drawn"));
    assert!(!page_svg.contains("p-key") && !page_svg.contains("p-numbers"));
    assert!(file_svg.contains("p-key") && file_svg.contains("p-numbers"));
    assert!(page.key.len() > 4);
    for line in &page.key {
        assert!(line.svg.starts_with("<svg ") && !line.words.is_empty(), "{line:?}");
        for hatch in line.svg.split("url(#").skip(1).filter_map(|rest| rest.split(')').next()) {
            assert!(page_svg.contains(&format!("<pattern id=\"{hatch}\"")), "{hatch} is in the drawing beside it");
        }
    }
}

#[test]
fn a_plan_of_areas_is_a_list() {
    let plan = samples::plan(r#"{"outline":{"area":"900 ft2"},"zones":[{"name":"hall"}]}"#);
    let drawing = plan_svg(&plan, &PlanLayers::default(), &PlanLook::new("p", "Plan", Locale::default()));
    assert_eq!((drawing.svg, drawing.view), (None, None));
    assert_eq!(drawing.items.iter().map(|i| i.text.as_str()).collect::<Vec<_>>(), ["hall: 900 ft²"]);
    let finishes = vec![("hall".to_owned(), "broom".to_owned())];
    let layers = PlanLayers { finishes, ..PlanLayers::default() };
    let drawing = plan_svg(&plan, &layers, &PlanLook::new("p", "Plan", Locale::default()));
    assert_eq!(drawing.items.last().map(|i| i.text.as_str()), Some("hall: Broom, medium"));
}

#[test]
fn walls_carry_their_lengths() {
    // Lengths of the typed corners: the slanted wall by Pythagoras is 9√2 ft = 12.728 ft = 12' 8 3/4".
    let show = |unit_system| {
        let look = PlanLook::new("p", "Plan", Locale::new(Lang::En, unit_system));
        plan_svg(&samples::crooked(), &PlanLayers::default(), &look)
    };
    let walls = |drawing: &pictures::PlanDrawing| -> Vec<String> {
        drawing
            .items
            .iter()
            .filter(|i| i.layer == Layer::Dimensions)
            .filter_map(|i| i.text.split(": ").nth(1).map(str::to_owned))
            .collect()
    };
    let feet = show(UnitSystem::Imperial);
    let mut lengths = walls(&feet);
    lengths.sort();
    assert_eq!(lengths, ["12' 8 3/4\"", "13' 0\"", "17' 0\"", "18' 0\"", "18' 0\"", "40' 0\"", "44' 0\""]);
    let svg = feet.svg.expect("drawn");
    assert!(svg.contains(">12&#39; 8 3/4&quot;</text>") && svg.contains(">40&#39; 0&quot;</text>"));
    assert!(show(UnitSystem::Metric).svg.expect("drawn").contains(">12.19 m</text>"));
}

#[test]
fn the_arrow_points_north() {
    // Plan north, up, points to compass 65°: true north lies 65° to the left of up.
    let drawing = plan_svg(&samples::crooked(), &PlanLayers::default(), &PlanLook::new("p", "Plan", Locale::default()));
    let svg = drawing.svg.expect("drawn");
    let document = Document::parse(&svg).expect("well-formed");
    let shaft = document.descendants().find(|n| n.attribute("class") == Some("p-north")).expect("an arrow");
    let d = shaft.attribute("d").expect("a path");
    let ends: Vec<f64> = d.split(['M', 'L', ' ']).filter_map(|t| t.parse().ok()).collect();
    let left_of_up = (ends[0] - ends[2]).atan2(ends[1] - ends[3]).to_degrees();
    assert!((left_of_up - 65.0).abs() < 0.1, "{left_of_up}");
}

#[test]
fn the_scale_bar_is_to_scale() {
    for (unit_system, meters) in [(UnitSystem::Imperial, 10.0 * 0.3048), (UnitSystem::Metric, 5.0)] {
        let look = PlanLook::new("p", "Plan", Locale::new(Lang::En, unit_system));
        let drawing = plan_svg(&samples::crooked(), &PlanLayers::default(), &look);
        let svg = drawing.svg.expect("drawn");
        let document = Document::parse(&svg).expect("well-formed");
        let halves = document.descendants().filter(|n| n.attribute("class") == Some("p-scale"));
        let drawn: f64 = halves.filter_map(|n| n.attribute("width")?.parse::<f64>().ok()).sum();
        let shown = drawn * number(&svg, "data-m");
        let words = if unit_system == UnitSystem::Imperial { ">10 ft</text>" } else { ">5 m</text>" };
        assert!((shown - meters).abs() < 0.01 * meters && svg.contains(words), "{shown} m");
    }
}

#[test]
fn the_demo_slab_shows_its_open_incidents_and_its_tests() {
    let diary = samples::demo();
    let slab = slab_diary::fold(&diary, samples::after_all());
    let trade = Trade::built_in();
    let marks = marks_of(&slab, trade, Locale::default());
    let placed_incidents: Vec<_> = marks.iter().filter(|m| m.kind == MarkKind::Incident).collect();
    let open = slab_answers::standing::open_incidents(&slab, trade);
    for mark in &placed_incidents {
        assert_eq!(mark.settled, !open.iter().any(|s| s.entry.id.to_string() == mark.id), "{}", mark.title);
    }
    assert_eq!(placed_incidents.len(), 2);
    // Read off demo/slab.jsonl: thirteen places with drops, two scrapes, pH in three zones, two sheets, a crack.
    let count = |kind: MarkKind| marks.iter().filter(|m| m.kind == kind).count();
    let counted = [MarkKind::WaterDrop, MarkKind::Scrape, MarkKind::Ph, MarkKind::Sheet, MarkKind::Defect].map(count);
    assert_eq!(counted, [13, 2, 3, 2, 1]);
    let drop = marks.iter().find(|m| m.short == "75 s").expect("the drop of 75 s");
    assert_eq!(drop.title, "Water drop: soaked in after 1 minute 15 seconds, shop, Mar 25");
    assert!(marks.iter().any(|m| m.short == "over 12 min" && m.title.contains("showroom")));
    // The shop's pH was read twice in that zone.
    assert!(marks.iter().any(|m| m.kind == MarkKind::Ph && m.title.ends_with("; 1 earlier try there")));
}

/// 400 rooms with 150 marks: less than 50 ms in a release build, the quickest of three since the
/// machine has other work; a test build is slower.
#[test]
#[expect(clippy::disallowed_methods, reason = "measures how long drawing takes")]
fn four_hundred_rooms_are_drawn_quickly() {
    let plan = samples::rooms(20, 20);
    let marks = (0..150_u32)
        .map(|i| {
            let at = feet(f64::from(i * 37 % 200), f64::from(i * 53 % 200));
            mark(&format!("m{i}"), MarkKind::WaterDrop, MarkPlace::Point(at), "75 s")
        })
        .collect();
    let layers = PlanLayers { marks, ..PlanLayers::default() };
    let draw = || {
        let start = Instant::now();
        let drawing = plan_svg(&plan, &layers, &PlanLook::new("p", "Plan", Locale::default()));
        assert_eq!(drawing.svg.expect("drawn").matches("data-zone=").count(), 400);
        start.elapsed()
    };
    let took = (0..3).map(|_| draw()).min().expect("three runs");
    println!("400 rooms: {took:?}");
    let limit = if cfg!(debug_assertions) { Duration::from_secs(5) } else { Duration::from_millis(50) };
    assert!(took < limit, "took {took:?}");
}
