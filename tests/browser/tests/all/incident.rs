//! An incident is put where it is: a tap on the plan, and nearer by pinching.

use browser_tests::{Reading, Server, Site, Tab, Visit};
use serde_json::{Value, json};

/// Two decimals of a foot, and a tap falls on whole pixels of a plan 40 ft wide on a
/// phone, where a pixel is about an inch and a half.
const NEAR_FEET: f64 = 0.2;

fn plan_form(site: &Site, server: &Server, tab: &Tab) {
    tab.go(server, &format!("/slab/{}/add/incident", site.slab()));
    tab.unfold("figure[data-plan]");
}

/// The point of the window where a place of the plan, in feet, is drawn.
pub(crate) fn on_screen(tab: &Tab, x: f64, y: f64) -> (f64, f64) {
    let at = tab.eval(&format!(
        "(() => {{ const svg = document.querySelector('[data-plan] svg');
          svg.scrollIntoView({{ block: 'center' }});
          const [x0, y0, m] = [svg.dataset.x0, svg.dataset.y0, svg.dataset.m].map(Number);
          const point = new DOMPoint(({x} * 0.3048 - x0) / m, (y0 - {y} * 0.3048) / m).matrixTransform(svg.getScreenCTM());
          return [point.x, point.y]; }})()"
    ));
    (at[0].as_f64().unwrap(), at[1].as_f64().unwrap())
}

fn view_box(tab: &Tab) -> Vec<f64> {
    let text = tab.text("document.querySelector('[data-plan] svg').getAttribute('viewBox')");
    text.split_whitespace().map(|n| n.parse().unwrap()).collect()
}

fn feet(text: &str) -> f64 {
    text.trim_end_matches("ft").trim().parse().unwrap_or_else(|_| panic!("not feet: {text}"))
}

fn incident(site: &Site) -> Value {
    site.diary().into_iter().find(|e| e["body"]["kind"] == "incident").expect("it is in the diary")
}

#[test]
fn a_tap_on_the_plan_is_the_place_of_the_entry() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    plan_form(&site, &server, &tab);
    let (x, y) = on_screen(&tab, 10.0, 20.0);
    tab.tap_at(x, y);
    tab.until_true("document.querySelector('[name=x]').value !== ''");
    let (x, y) = (feet(&tab.value("[name='x']")), feet(&tab.value("[name='y']")));
    assert!((x - 10.0).abs() < NEAR_FEET && (y - 20.0).abs() < NEAR_FEET, "{x}, {y}");
    assert!(tab.is("document.querySelector('[name=place_kind][value=point]').checked"));
    assert!(tab.sees("svg .placed:not(.off)"), "the mark is drawn");
    tab.tap_to("button[name='preset'][value='tire_marks']");
    let entry = incident(&site);
    let point = entry["place"]["point"].to_string();
    assert!(point.contains(&format!("{x:.2} ft")) && point.contains(&format!("{y:.2} ft")), "{entry}");
    tab.go(&server, &format!("/slab/{}/diary", site.slab()));
    tab.tap_to(&format!(".day a[href$='/entry/{}']", entry["id"].as_str().unwrap()));
}

/// From the plan's own page: a tap, the list of what can be noted there, the form with the place in it.
#[test]
fn a_tap_on_the_plan_page_leads_to_the_form_for_that_place() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}/plan", site.slab()));
    assert!(!tab.sees("#here"), "nothing is asked before the tap");
    let (x, y) = on_screen(&tab, 30.0, 8.0);
    tab.tap_at(x, y);
    tab.until_true("document.activeElement?.id === 'here'");
    tab.tap_to("#here a[href*='/add/incident']");
    let (x, y) = (feet(&tab.value("[name='x']")), feet(&tab.value("[name='y']")));
    assert!((x - 30.0).abs() < NEAR_FEET && (y - 8.0).abs() < NEAR_FEET, "{x}, {y}");
    tab.tap_to("button[name='preset'][value='drywall_mud']");
    assert!(tab.taps() <= 3, "{} taps", tab.taps());
    let entry = incident(&site);
    let point = entry["place"]["point"].to_string();
    assert!(point.contains(&format!("{x:.2} ft")) && point.contains(&format!("{y:.2} ft")), "{entry}");
    tab.go(&server, &format!("/slab/{}/plan", site.slab()));
    let id = entry["id"].as_str().unwrap();
    assert!(tab.sees(&format!(".plan-list a[href$='/entry/{id}']")), "it is in the list: {}", tab.seen());
    assert!(tab.sees("[data-layer-of='incidents'] *"), "and on the drawing");
    tab.unfold("[data-layer='incidents']");
    tab.tap("[data-layer='incidents']");
    tab.until_true("document.querySelector('[data-layer-of=incidents]').classList.contains('off')");
    assert!(!tab.sees("[data-layer-of='incidents'] *"), "and its layer can be put away");
}

#[test]
fn two_fingers_and_the_buttons_bring_the_plan_nearer() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    plan_form(&site, &server, &tab);
    let whole = view_box(&tab);
    let (x, y) = on_screen(&tab, 20.0, 15.0);
    let touch = |kind: &str, apart: f64| {
        let points = json!([{ "x": x - apart, "y": y, "id": 0 }, { "x": x + apart, "y": y, "id": 1 }]);
        tab.cdp("Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points }));
    };
    touch("touchStart", 20.0);
    for apart in [30.0, 40.0, 50.0, 60.0] {
        touch("touchMove", apart);
    }
    tab.cdp("Input.dispatchTouchEvent", json!({ "type": "touchEnd", "touchPoints": [] }));
    // Three times as far apart: a third as much of the plan.
    let nearer = view_box(&tab);
    assert!((nearer[2] / whole[2] - 1.0 / 3.0).abs() < 0.05, "{whole:?} {nearer:?}");
    assert_eq!(tab.value("[name='x']"), "", "a pinch is not a tap");
    tab.tap("[data-zoom='all']");
    tab.until_true(&format!(
        "Math.abs(document.querySelector('[data-plan] svg').viewBox.baseVal.width - {}) < 1e-3",
        whole[2]
    ));
    tab.tap("[data-zoom='in']");
    tab.until_true(&format!(
        "Math.abs(document.querySelector('[data-plan] svg').viewBox.baseVal.width - {}) < 1e-3",
        whole[2] / 1.5
    ));
    // Nearer, a tap still lands where it points.
    let (x, y) = on_screen(&tab, 18.0, 12.0);
    tab.tap_at(x, y);
    tab.until_true("document.querySelector('[name=x]').value !== ''");
    assert!((feet(&tab.value("[name='x']")) - 18.0).abs() < NEAR_FEET);
    assert!((feet(&tab.value("[name='y']")) - 12.0).abs() < NEAR_FEET);
}
