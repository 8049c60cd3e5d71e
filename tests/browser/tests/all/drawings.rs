//! Every drawing on the screens that people have: lettering large enough, and off the lines and off itself.

use std::fmt::Write as _;

use browser_tests::{Reading, Server, Site, Tab, Visit, free_port, with_folds_open};
use serde_json::Value;

/// Widths of windows, from a small phone to a desk.
const WIDTHS: [u32; 4] = [360, 390, 768, 1280];
/// The least size of lettering, in CSS pixels, less what a scroll bar takes.
const LEAST: f64 = 13.9;
/// Pages of a slab that show drawings.
const PAGES: [&str; 7] = ["", "/plan", "/drops", "/add/water_drop", "/time", "/drying", "/pour-day"];

/// Sizes of the lettering of every visible drawing, what lies on other lettering, and what lies across a straight
/// line. A number in the shape of a mark lies on what hides the line; the words of a tag lie on the tag.
const MEASURED: &str = r#"(() => {
  const faults = [], sizes = [];
  const box = (text) => {
    // Of a line of lettering only the height of its letters, not the room above and below them.
    const { left, right, top, bottom } = text.getBoundingClientRect();
    const level = right - left >= bottom - top || text.textContent.length < 3;
    const [ends, sides] = level ? [1, (bottom - top) * 0.22] : [(right - left) * 0.22, 1];
    return { left: left + ends, right: right - ends, top: top + sides, bottom: bottom - sides };
  };
  const slanted = (text) => {
    const turned = /rotate\((-?[\d.]+)/.exec(text.getAttribute("transform") ?? "");
    return turned && ![0, 90].includes(Math.abs(Number(turned[1])));
  };
  const crosses = (a, { x: x1, y: y1 }, { x: x2, y: y2 }) => {
    let [from, to] = [0, 1];
    for (const [start, end, low, high] of [[x1, x2, a.left, a.right], [y1, y2, a.top, a.bottom]]) {
      if (start === end) { if (start <= low || start >= high) return false; continue; }
      const [p, q] = [(low - start) / (end - start), (high - start) / (end - start)];
      [from, to] = [Math.max(from, Math.min(p, q)), Math.min(to, Math.max(p, q))];
    }
    return from < to;
  };
  const strokes = (path) => {
    const at = path.getScreenCTM();
    const out = [];
    let begun = null, last = null;
    for (const [, step, x, y] of path.getAttribute("d").matchAll(/([ML])(-?[\d.]+) (-?[\d.]+)|Z/g)) {
      if (!step) { if (last) out.push([last, begun]); continue; }
      const here = new DOMPoint(Number(x), Number(y)).matrixTransform(at);
      if (step === "L") out.push([last, here]); else begun = here;
      last = here;
    }
    return out;
  };
  const RULES = ["p-edge", "p-zone", "p-joint-saw-cut", "p-joint-construction", "p-joint-isolation", "p-joint-any",
    "p-dim", "p-leader", "p-limit", "p-section-edge"].map((name) => `path.${name}`).join(", ");
  let drawings = 0;
  for (const svg of document.querySelectorAll("svg.picture")) {
    if (!svg.checkVisibility()) continue;
    drawings += 1;
    const unit = svg.getScreenCTM().a;
    const texts = [...svg.querySelectorAll("text")].filter((text) => text.checkVisibility());
    for (const text of texts) sizes.push(Number(text.getAttribute("font-size")) * unit);
    const boxes = texts.filter((text) => !slanted(text)).map((text) => [text, box(text)]);
    for (const [at, [text, a]] of boxes.entries()) {
      for (const [other, b] of boxes.slice(at + 1)) {
        if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) {
          faults.push(`"${text.textContent}" on "${other.textContent}"`);
        }
      }
    }
    const rules = [...svg.querySelectorAll(RULES)].filter((path) => path.checkVisibility())
      .flatMap((path) => strokes(path).map((stroke) => [path, stroke]));
    for (const [text, a] of boxes) {
      if (text.closest(".p-mark, .p-key") && !text.classList.contains("p-halo") || text.matches(".p-text-light")) continue;
      const on = rules.find(([, [from, to]]) => crosses(a, from, to));
      if (on) faults.push(`"${text.textContent}" across ${on[0].getAttribute("class")}`);
    }
  }
  return { faults, drawings, texts: sizes.length, least: Math.min(...sizes, 99) };
})()"#;

/// A slab of forty zones with two hundred places that drank a drop.
fn crowded() -> Site {
    let site = Site::with_slab();
    let zone = |i: u32| {
        let (x, y) = (12 * (i % 8), 12 * (i / 8));
        format!(
            r#"{{"name":"room {} east","shape":{{"rectangles":[{{"corner":["{x} ft","{y} ft"],"width":"12 ft","depth":"12 ft"}}]}}}}"#,
            i + 1
        )
    };
    let zones: Vec<String> = (0..40).map(zone).collect();
    let mut lines = format!(
        r#"{{"happened":"2025-03-05 06:00","body":{{"kind":"plan","outline":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"96 ft","depth":"60 ft"}}]}},"zones":[{}]}}}}"#,
        zones.join(",")
    );
    for i in 0..200_u32 {
        let (x, y) = (1 + i * 37 % 94, 1 + i * 53 % 58);
        let seconds = 40 + i * 7 % 300;
        write!(
            lines,
            "\n{{\"happened\":\"2025-04-20 08:00\",\"place\":{{\"point\":[\"{x} ft\",\"{y} ft\"]}},\"body\":{{\"kind\":\"water_drop\",\"soaked_in\":\"{seconds} s\"}}}}"
        )
        .unwrap();
    }
    site.log(&lines);
    site
}

/// Looks at every page in both languages and every width; gives how many drawings and texts it measured.
fn look(tab: &Tab, server: &Server, slab: &str) -> (u64, u64) {
    let (mut drawings, mut texts) = (0, 0);
    for reading in [Reading::PHONE, Reading::PHONE.spanish()] {
        tab.read_as(server, reading);
        for page in PAGES {
            tab.go(server, &format!("{slab}{page}"));
            with_folds_open(tab);
            for width in WIDTHS {
                tab.set_size((width, 844));
                let found = tab.eval(MEASURED);
                let place = format!("{} {page} at {width}", reading.lang);
                assert_eq!(found["faults"].as_array().map(Vec::len), Some(0), "{place}: {}", found["faults"]);
                assert!(found["least"].as_f64().unwrap() >= LEAST, "{place}: {} px", found["least"]);
                drawings += found["drawings"].as_u64().unwrap();
                texts += found["texts"].as_u64().unwrap();
            }
        }
    }
    (drawings, texts)
}

#[test]
fn lettering_of_the_demo_is_large_and_lies_on_nothing() {
    let site = Site::empty();
    let server = site.serve_at(free_port(), &[]);
    let tab = Visit::within(180).tab(Reading::PHONE);
    tab.go(&server, "/");
    tab.eval("fetch('/demo', { method: 'POST', redirect: 'manual' }).then(() => 0)");
    let listed: Value = serde_json::from_str(&site.run(&["list", "--json"]).fine().out).unwrap();
    let slab = format!("/slab/{}", listed[0]["id"].as_str().unwrap());
    let (drawings, texts) = look(&tab, &server, &slab);
    assert!(drawings >= 40 && texts >= 1000, "{drawings} drawings, {texts} texts");
}

#[test]
fn lettering_of_forty_zones_and_two_hundred_marks_is_large_and_lies_on_nothing() {
    let site = crowded();
    let server = site.serve_at(free_port(), &[]);
    let tab = Visit::within(300).tab(Reading::PHONE);
    let (drawings, texts) = look(&tab, &server, &format!("/slab/{}", site.slab()));
    assert!(drawings >= 24 && texts >= 300, "{drawings} drawings, {texts} texts");
}
