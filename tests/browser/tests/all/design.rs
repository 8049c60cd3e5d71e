//! What docs/design.md promises and can be measured: the first screen of a slab, the desk, paper, the weight
//! of a page, and that nothing moves under the reader.

use browser_tests::{Reading, Server, Site, Tab, Visit, free_port};
use serde_json::{Value, json};

/// Style and script of a page before it is first painted, over the line.
const MOST_BYTES: f64 = 30_000.0;
/// Cumulative layout shift.
const MOST_SHIFT: f64 = 0.05;

/// The demo slab, a slab with little in its diary, and one with nothing.
fn with_slabs() -> (Site, Server, Vec<String>) {
    let site = Site::with_slab();
    let server = site.serve_at(free_port(), &[]);
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, "/");
    // The button is on the empty list only.
    tab.eval("fetch('/demo', { method: 'POST', redirect: 'manual' }).then(() => 0)");
    site.run(&["new", "Nothing noted yet", "--time-zone", "America/Chicago"]).fine();
    let listed: Value = serde_json::from_str(&site.run(&["list", "--json"]).fine().out).unwrap();
    let slabs: Vec<String> =
        listed.as_array().unwrap().iter().map(|slab| format!("/slab/{}", slab["id"].as_str().unwrap())).collect();
    assert_eq!(slabs.len(), 3, "{listed}");
    (site, server, slabs)
}

/// What does not lie whole in the window, above what sticks to its foot, or overlaps its neighbor.
const OUT_OF_SIGHT: &str = r#"(() => {
  const foot = document.querySelector(".foot").getBoundingClientRect();
  const parts = [...document.querySelectorAll(".answer h1, .answer .deed, .answer .step, .ledger li a")];
  const name = (one) => one.innerText.replace(/\s+/g, " ").slice(0, 60);
  const areas = parts.map((one) => [one, one.getBoundingClientRect()]);
  const faults = areas
    .filter(([, area]) => area.top < 0 || area.height < 10 || area.bottom > foot.top || area.right > innerWidth)
    .map(([one, area]) => `${name(one)}: ${area.top.toFixed(0)} to ${area.bottom.toFixed(0)}, the foot at ${foot.top.toFixed(0)}`);
  for (const word of document.querySelectorAll(".ledger b, .ledger span")) {
    if (word.scrollWidth > word.clientWidth) faults.push(`cut: ${name(word)}`);
  }
  return { faults, lines: document.querySelectorAll(".ledger li").length, deeds: document.querySelectorAll(".answer .deed, .answer .step").length,
    icons: document.querySelectorAll(".ledger li svg use").length,
    low: Math.max(...areas.map(([, area]) => area.bottom)), foot: foot.top };
})()"#;

#[test]
fn answer_deed_and_every_hold_point_are_on_the_first_screen() {
    let (_site, server, slabs) = with_slabs();
    let visit = Visit::within(120);
    for reading in [Reading::PHONE, Reading::PHONE.spanish()] {
        let tab = visit.tab(reading);
        tab.read_as(&server, reading);
        for slab in &slabs {
            tab.go(&server, slab);
            let seen = tab.eval(OUT_OF_SIGHT);
            println!("{} {slab}: down to {} of {}", reading.lang, seen["low"], seen["foot"]);
            assert_eq!(seen["lines"], 11, "{}", tab.seen());
            assert_eq!(seen["icons"], 11);
            assert_eq!(seen["deeds"], 1, "one next deed: {}", tab.seen());
            assert!(seen["faults"].as_array().unwrap().is_empty(), "{} at {slab}: {}", reading.lang, seen["faults"]);
            assert_eq!(tab.eval("scrollY"), 0);
        }
    }
}

/// Words of the ledger that are parted in the middle, with the text twice as large.
const PARTED: &str = r#"(() => {
  document.documentElement.style.fontSize = "200%";
  const faults = [];
  for (const one of document.querySelectorAll(".ledger b, .ledger span, .bar a")) {
    const text = [...one.childNodes].find((node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim());
    let at = 0;
    for (const word of text.textContent.split(/(\s+)/)) {
      const range = document.createRange();
      range.setStart(text, at);
      at += word.length;
      range.setEnd(text, at);
      const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
      if (word.trim() && tops.size > 1) faults.push(`parted: ${word}`);
    }
    if (one.scrollWidth > one.clientWidth + 1) faults.push(`cut: ${one.innerText}`);
  }
  const wide = document.documentElement.scrollWidth;
  if (wide > innerWidth) faults.push(`the page is ${wide} wide`);
  return faults;
})()"#;

#[test]
fn short_names_hold_together_in_text_twice_as_large() {
    let (_site, server, slabs) = with_slabs();
    for reading in [Reading::PHONE, Reading::PHONE.spanish()] {
        let tab = Visit::within(60).tab(reading);
        tab.read_as(&server, reading);
        tab.go(&server, &slabs[0]);
        let faults = tab.eval(PARTED);
        assert!(faults.as_array().unwrap().is_empty(), "{}: {faults}", reading.lang);
    }
}

#[test]
fn a_line_of_the_ledger_opens_its_reasons() {
    let site = Site::with_slab();
    let server = site.serve();
    for reading in [Reading::PHONE, Reading::PHONE.without_script()] {
        let tab = Visit::within(60).tab(reading);
        tab.go(&server, &format!("/slab/{}", site.slab()));
        tab.tap(".ledger a[href='#why-moisture']");
        tab.forbid_scripts(false);
        tab.until_true("document.querySelector('#why-moisture').checkVisibility()");
        assert!(!tab.is("document.querySelector('#why-age').checkVisibility()"), "the others stay folded");
    }
}

#[test]
fn a_desk_has_every_screen_at_its_side_and_no_bar() {
    let site = Site::with_slab();
    let server = site.serve();
    let slab = site.slab();
    let tab = Visit::within(60).tab(Reading::DESK);
    let ends = [
        "",
        "/plan",
        "/diary",
        "/add",
        "/photographs",
        "/panels",
        "/order",
        "/drying",
        "/pour-day",
        "/time",
        "/papers",
        "/links",
    ];
    for end in ends {
        tab.set_size((1280, 900));
        tab.go(&server, &format!("/slab/{slab}{end}"));
        for (width, desk) in [(1280, true), (1024, true), (1023, false), (768, false), (390, false)] {
            tab.set_size((width, 900));
            assert_eq!(tab.sees(".side"), desk, "side of {end} at {width}");
            assert_eq!(tab.sees(".bar"), !desk, "bar of {end} at {width}");
            assert_eq!(tab.sees(".menu"), !desk, "menu of {end} at {width}");
        }
        tab.set_size((1280, 900));
        for other in ends {
            assert!(tab.sees(&format!(".side a[href='/slab/{slab}{other}']")), "no way from {end} to {other}");
        }
        let here = tab.text("document.querySelector('.side [aria-current=page]').getAttribute('href')");
        assert_eq!(here, format!("/slab/{slab}{end}"));
    }
}

/// Style and script that came before the first paint, and all of them.
const WEIGHT: &str = r#"(async () => {
  const painted = () => performance.getEntriesByName("first-contentful-paint")[0];
  while (!painted()) await new Promise((done) => setTimeout(done, 20));
  const files = performance.getEntriesByType("resource").filter(({ name }) => /\.(css|js)$/.test(new URL(name).pathname));
  const bytes = (some) => some.reduce((sum, { transferSize }) => sum + transferSize, 0);
  return { before: bytes(files.filter(({ responseEnd }) => responseEnd <= painted().startTime)), all: bytes(files), files: files.length };
})()"#;

#[test]
fn style_and_script_before_the_first_paint_are_light() {
    let site = Site::with_slab();
    let server = site.serve();
    let slab = site.slab();
    // A page to read is light as a whole; a form fetches more once it stands there.
    for (end, whole) in [("", true), ("/plan", true), ("/diary", true), ("/drying", true), ("/add/water_drop", false)] {
        // Nothing kept: a browser of its own for each page.
        let tab = Visit::within(60).tab(Reading::PHONE);
        tab.go(&server, &format!("/slab/{slab}{end}"));
        let weight = tab.eval(WEIGHT);
        let (before, all) = (weight["before"].as_f64().unwrap(), weight["all"].as_f64().unwrap());
        println!("{end}: {before} bytes before the first paint, {all} in {} files", weight["files"]);
        assert!(all > 5_000.0, "the style sheet alone is more: {weight}");
        assert!(before < MOST_BYTES, "{end}: {weight}");
        assert!(!whole || all < MOST_BYTES, "{end}: {weight}");
    }
}

/// How far what is seen moved since the page began to load.
const SHIFT: &str = r#"new Promise((done) => {
  const moved = [];
  let sum = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      sum += entry.value;
      moved.push(...entry.sources.map(({ node }) => node?.outerHTML?.slice(0, 80) ?? node?.textContent?.slice(0, 40)));
    }
  }).observe({ type: "layout-shift", buffered: true });
  setTimeout(() => done({ sum, moved }), 600);
})"#;

#[test]
fn nothing_moves_under_the_reader() {
    let (_site, server, slabs) = with_slabs();
    for reading in [Reading::PHONE, Reading::DESK.spanish()] {
        let tab = Visit::within(150).tab(reading);
        tab.read_as(&server, reading);
        for slab in &slabs[..2] {
            for end in ["", "/plan", "/diary", "/panels", "/order", "/papers", "/add", "/add/water_drop", "/plan/draw"]
            {
                tab.go(&server, &format!("{slab}{end}"));
                let shift = tab.eval(SHIFT);
                assert!(shift["sum"].as_f64().unwrap() <= MOST_SHIFT, "{slab}{end} at {:?}: {shift}", reading.size);
            }
        }
    }
}

fn on_paper(tab: &Tab) {
    tab.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" }));
}

#[test]
fn paper_has_the_slab_the_day_the_reasons_and_nothing_to_press() {
    let (_site, server, slabs) = with_slabs();
    for reading in [Reading::DESK, Reading::PHONE.spanish()] {
        let tab = Visit::within(120).tab(reading);
        tab.read_as(&server, reading);
        for slab in &slabs {
            for end in ["", "/plan", "/diary", "/panels", "/order", "/papers", "/drying", "/add/water_drop"] {
                tab.go(&server, &format!("{slab}{end}"));
                on_paper(&tab);
                for gone in ["button", "header", ".side", ".foot", ".bar", ".menu", ".zoom", ".send"] {
                    assert!(!tab.sees(gone), "{gone} on the paper of {slab}{end}");
                }
                assert!(tab.sees(".on-paper"), "{slab}{end}");
                let head = tab.text("document.querySelector('.on-paper').innerText");
                let name = tab.text("document.querySelector('.of-slab').firstChild.textContent");
                assert!(!name.trim().is_empty() && head.contains(name.trim()), "{head}");
                assert!(head.contains(":00") || head.contains("20"), "the day: {head}");
                let tall = tab.eval("Math.max(0, ...[...document.querySelectorAll('.plan svg')].map((one) => one.getBoundingClientRect().height))");
                assert!(tall.as_f64().unwrap() <= 890.0, "the plan is {tall} high, a page 890");
                if end.is_empty() {
                    let folded = tab.eval("[...document.querySelectorAll('.point > div > ul > li')].filter((one) => !one.checkVisibility()).length");
                    assert_eq!(folded, 0, "reasons that are folded away on paper");
                    assert!(tab.sees(".answer .deed, .answer .step"), "the deed is words on paper");
                }
                tab.cdp("Emulation.setEmulatedMedia", json!({ "media": "" }));
            }
        }
    }
}

#[test]
fn the_theme_follows_the_device_until_it_is_chosen() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    let ground = |tab: &Tab| tab.text("getComputedStyle(document.body).backgroundColor");
    let device = |scheme: &str| {
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        tab.cdp("Emulation.setEmulatedMedia", json!({ "features": features }));
    };
    tab.go(&server, "/");
    device("light");
    let light = ground(&tab);
    device("dark");
    let dark = ground(&tab);
    assert_ne!(light, dark);
    tab.tap(".menu > summary");
    tab.tap_to(".menu button[name='theme'][value='light']");
    assert_eq!(ground(&tab), light, "light on a dark device, as chosen");
    tab.tap(".menu > summary");
    tab.tap_to(".menu button[name='theme'][value='device']");
    assert_eq!(ground(&tab), dark);
}

#[test]
fn a_photograph_from_the_gallery_joins_those_of_the_camera() {
    let site = Site::with_slab();
    let server = site.serve();
    let tab = Visit::within(60).tab(Reading::PHONE);
    tab.go(&server, &format!("/slab/{}", site.slab()));
    tab.tap_to(".bar a[href$='/add/slab_photograph']");
    assert!(tab.sees("input[data-photo][capture]") && tab.sees("input[data-photo-too]:not([capture])"));
    let picture = browser_tests::repository("demo/photographs");
    let picture = std::fs::read_dir(picture).unwrap().map(|file| file.unwrap().path()).min().unwrap();
    tab.photograph(&[&picture]);
    tab.until_true("document.querySelectorAll('.photographs li').length === 1");
    let gallery =
        tab.cdp("Runtime.evaluate", json!({ "expression": "document.querySelector('input[data-photo-too]')" }));
    tab.cdp("DOM.setFileInputFiles", json!({ "files": [picture], "objectId": gallery["result"]["objectId"] }));
    tab.until_true("document.querySelectorAll('.photographs li').length === 2");
    assert_eq!(tab.eval("document.querySelector('input[data-photo]').files.length"), 2);
    assert_eq!(tab.eval("document.querySelector('input[data-photo-too]').files.length"), 0, "sent once, not twice");
}
