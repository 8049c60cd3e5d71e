//! A crew sets several drops and watches all: each has its own clock.

use browser_tests::{Reading, Server, Site, Tab, Visit};
use serde_json::Value;

use crate::incident::on_screen;

fn drops_page(site: &Site, server: &Server) -> Tab {
    let tab = Visit::within(90).tab(Reading::PHONE);
    tab.go(server, &format!("/slab/{}/drops", site.slab()));
    tab.until_true("!document.querySelector('[data-drops]').hidden");
    tab
}

/// Taps the plan at a place in feet.
fn set_at(tab: &Tab, x: f64, y: f64) {
    let before = tab.eval("document.querySelectorAll('[data-drops-list] li').length").as_u64().unwrap();
    let (x, y) = on_screen(tab, x, y);
    tab.tap_at(x, y);
    tab.until_true(&format!("document.querySelectorAll('[data-drops-list] li').length === {}", before + 1));
}

fn drops(site: &Site) -> Vec<Value> {
    site.diary().into_iter().filter(|e| e["body"]["kind"] == "water_drop").collect()
}

#[test]
fn nine_drops_each_with_its_own_clock() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = drops_page(&site, &server);
    for n in 0..9 {
        set_at(&tab, 4.0 + 4.0 * f64::from(n), 6.0 + 2.0 * f64::from(n));
    }
    assert_eq!(tab.eval("document.querySelectorAll('.drop-mark').length"), 9, "all are on the plan");
    tab.until_true("/0:0[2-9]/.test(document.querySelector('[data-drops-list] output').textContent)");
    // The phone loads the page again: every clock runs on.
    tab.reload();
    tab.until_true("document.querySelectorAll('[data-drops-list] li').length === 9");
    tab.until_true("/0:0[3-9]/.test(document.querySelector('[data-drops-list] output').textContent)");
    // One was set by mistake, one soaks in, one beads, one still stands.
    tab.tap("[data-drops-list] li:nth-child(9) button:nth-child(4)");
    tab.until_true("document.querySelectorAll('[data-drops-list] li').length === 8");
    for (row, button, left) in [(2, 1, 7), (1, 3, 6), (1, 2, 5)] {
        tab.tap(&format!("[data-drops-list] li:nth-child({row}) button:nth-child({button})"));
        tab.until_true(&format!("document.querySelectorAll('[data-drops-list] li').length === {left}"));
        tab.until_true("!document.querySelector('[data-drops-said]').hidden");
        tab.until_true("self.underfootOutbox.all().then((all) => all.length === 0)");
    }
    let written = drops(&site);
    assert_eq!(written.len(), 3, "{written:?}");
    let soaked = written.iter().find(|e| !e["body"]["soaked_in"].is_null()).expect("one soaked in");
    let seconds: u64 = soaked["body"]["soaked_in"].as_str().unwrap().trim_end_matches(" s").parse().unwrap();
    assert!((2..60).contains(&seconds), "{soaked}");
    assert!(written.iter().any(|e| e["body"]["beads"] == true), "{written:?}");
    assert!(written.iter().any(|e| !e["body"]["still_stood_after"].is_null()), "{written:?}");
    assert!(written.iter().all(|e| e["place"]["point"].is_array()), "each at its own place: {written:?}");
    assert_eq!(tab.eval("document.querySelectorAll('.drop-mark').length"), 5);
}

#[test]
fn without_script_it_leads_to_one_drop_at_a_time() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE.without_script());
    tab.go(&server, &format!("/slab/{}/drops", site.slab()));
    assert!(!tab.sees("[data-drops]"), "no clock is shown that would not run");
    tab.tap_to(".without-script a");
    assert!(tab.path().ends_with("/add/water_drop"), "{}", tab.path());
}

/// On a slow phone the click of a tap comes after the drop is set, and finds a button where the plan was.
#[test]
fn a_click_that_comes_late_sets_no_second_drop() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = drops_page(&site, &server);
    let event = |on: &str, kind: &str, id: u32| {
        tab.eval(&format!(
            "document.querySelector({on:?}).dispatchEvent(new PointerEvent({kind:?}, {{ pointerId: {id}, pointerType: 'touch',
              bubbles: true, cancelable: true, isPrimary: true, clientX: 150, clientY: 500 }})) && true"
        ))
    };
    let rows = |count: u32| format!("document.querySelectorAll('[data-drops-list] li').length === {count}");
    tab.eval("document.querySelector('[data-plan] svg').setPointerCapture = () => {}");
    let (svg, button) = ("[data-plan] svg", "[data-drop-zone]");
    event(svg, "pointerdown", 7);
    event(svg, "pointerup", 7);
    tab.until_true(&rows(1));
    event(button, "click", 7);
    assert!(tab.is(&rows(1)), "the late click pressed the button");
    event(button, "pointerdown", 8);
    event(button, "click", 8);
    assert!(tab.is(&rows(2)), "the next tap does press it");
}
