//! Pictures of the screens for the documents: made on request by `./check --pictures`.

use std::fmt::Write;
use std::fs;
use std::path::Path;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use browser_tests::{Reading, Server, Site, Tab, Visit, free_port, pattern, repository};
use serde_json::json;

/// All pictures together stay below this many bytes.
const MAX_BYTES: u64 = 8_000_000;

/// A picture as tall as a page that goes on for ever is of no use to anybody.
const TALLEST: u64 = 1_200;

/// Screens, as the end of their address below the demo slab, and what a picture of it is called.
const OF_A_SLAB: &[(&str, &str, &str)] = &[
    ("", "slab", "The slab: its answer, the next thing to do, its hold points"),
    ("/diary", "diary", "The diary"),
    ("/add", "add", "What can be noted"),
    ("/add/water_drop", "water-drop", "The form for a water drop"),
    ("/add/incident", "incident", "The form for an incident, with the plan"),
    ("/plan", "plan", "The plan with what lies on it"),
    ("/plan/draw", "draw", "Drawing the plan"),
    ("/plan/lines", "lines", "Joints and score lines"),
    ("/photographs", "photographs", "Is the slab one color"),
    ("/panels", "panels", "Sample panels, recipes, the floor as it may look"),
    ("/time", "time", "The time line"),
    ("/drying", "drying", "The drying forecast"),
    ("/order", "order", "What to buy"),
    ("/papers", "papers", "The papers"),
    ("/pour-day", "pour-day", "The pour day"),
];

/// Screens about no slab.
const OTHERS: &[(&str, &str, &str)] = &[
    ("/", "list", "The list of slabs"),
    ("/new", "new", "Opening a slab"),
    ("/sums", "sums", "Single sums"),
    ("/sums/dilute", "dilute", "A sum: diluting"),
    ("/glossary", "glossary", "The words of the trade"),
];

const WAYS: &[(&str, Reading)] =
    &[("phone", Reading::PHONE), ("desk", Reading::DESK), ("phone-es", Reading { lang: "es", ..Reading::PHONE })];

fn shoot(tab: &Tab, path: &Path) -> u64 {
    // The plan of a form lies in a fold.
    tab.eval("document.querySelectorAll('details:has([data-plan])').forEach((fold) => { fold.open = true; })");
    tab.eval("scrollTo(0, 0)");
    let height = tab.eval("document.documentElement.scrollHeight").as_u64().unwrap().min(TALLEST);
    let width = tab.reading().size.0;
    // As tall as the page for a moment, so that what sticks to the foot of the window is at the foot.
    tab.set_size((width, u32::try_from(height).unwrap()));
    // Those far down the page wait to be scrolled to.
    tab.eval("[...document.images].forEach((image) => { image.loading = 'eager'; })");
    tab.until_true("[...document.images].every((image) => image.complete)");
    let shot = tab.cdp("Page.captureScreenshot", json!({ "format": "png", "optimizeForSpeed": false }));
    let bytes = STANDARD.decode(shot["data"].as_str().unwrap()).unwrap();
    fs::write(path, &bytes).unwrap();
    bytes.len() as u64
}

/// The demo slab's address on a server that has it.
fn demo(server: &Server) -> String {
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(server, "/");
    tab.tap_to("form[action='/demo'] button");
    tab.path()
}

#[test]
#[ignore = "makes the pictures of the documents; run by ./check --pictures"]
fn of_each_screen() {
    let site = Site::empty();
    let server = site.serve_at(free_port(), &[]);
    let slab = demo(&server);
    let folder = repository("docs/pictures");
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    let mut index = String::from(
        "# Pictures of the screens\n\nThe demo slab, which is invented, on a phone, on a desk, and on a phone in \
         Spanish. Made by `./check --pictures`.\n\n| screen | phone | desk | phone, Spanish |\n|---|---|---|---|\n",
    );
    let screens = OF_A_SLAB.iter().map(|(end, name, what)| (format!("{slab}{end}"), *name, *what));
    let screens: Vec<_> = screens.chain(OTHERS.iter().map(|(path, n, w)| ((*path).to_owned(), *n, *w))).collect();
    let visit = Visit::within(300);
    let mut total = 0;
    let tabs: Vec<(&str, Reading, Tab)> =
        WAYS.iter().map(|(way, reading)| (*way, *reading, visit.tab(*reading))).collect();
    for (address, name, what) in screens {
        let _ = write!(index, "| {what} |");
        for (way, reading, tab) in &tabs {
            tab.read_as(&server, *reading);
            tab.go(&server, &address);
            assert_eq!(tab.status(), 200, "{}", pattern(&address));
            let file = format!("{name}-{way}.png");
            total += shoot(tab, &folder.join(&file));
            let _ = write!(index, " [picture]({file}) |");
        }
        index.push('\n');
    }
    fs::write(folder.join("README.md"), index).unwrap();
    println!("{total} bytes in {}", folder.display());
    assert!(total < MAX_BYTES, "{total} bytes of pictures, more than {MAX_BYTES}");
}
