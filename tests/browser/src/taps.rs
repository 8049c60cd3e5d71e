//! What a person does: taps, types, presses keys, chooses photographs.

use std::path::Path;
use std::time::Duration;

use serde_json::{Value, json};

use crate::browser::instant;
use crate::tab::Tab;

/// How long a thing may take to come within reach, as while the page is still moving.
const PATIENCE: Duration = Duration::from_secs(5);

/// The middle of what is to be tapped, after it was brought into view; nothing when something else
/// lies over it, so that a finger would not reach it.
const MIDDLE: &str = r#"((selector) => {
  const found = [...document.querySelectorAll(selector)].filter((one) => one.checkVisibility() && one.getClientRects().length);
  if (!found.length) return { why: "nothing visible matches" };
  const target = found[0];
  target.scrollIntoView({ block: "center", inline: "nearest", behavior: "instant" });
  const { left, top, width, height } = target.getBoundingClientRect();
  const [x, y] = [left + width / 2, top + height / 2];
  const there = document.elementFromPoint(x, y);
  const reached = there && (target.contains(there) || there.contains(target) && there.closest("label, a, summary, button"));
  return reached ? { x, y } : { why: `${there?.outerHTML.slice(0, 120)} lies over it, ${width} x ${height} at ${x}, ${y}` };
})"#;

fn quoted(text: &str) -> String {
    Value::from(text).to_string()
}

impl Tab {
    /// Where a finger or the mouse goes to reach the first visible thing that matches, once the page
    /// holds still: a strip that appears at its top moves everything down.
    #[track_caller]
    fn middle(&self, selector: &str) -> (f64, f64) {
        let limit = instant() + PATIENCE;
        let mut before = None;
        loop {
            let found = self.eval(&format!("({MIDDLE})({})", quoted(selector)));
            let here = found["x"].as_f64().zip(found["y"].as_f64());
            match here {
                Some(point) if before == here => return point,
                None if instant() > limit => panic!("cannot tap {selector}: {}\n{}", found["why"], self.seen()),
                _ => before = here,
            }
            std::thread::sleep(Duration::from_millis(30));
        }
    }

    /// Taps once on the first visible thing that matches; counted.
    #[track_caller]
    pub fn tap(&self, selector: &str) {
        let (x, y) = self.middle(selector);
        self.tap_at(x, y);
    }

    /// Taps once on a point of the window; counted.
    #[track_caller]
    pub fn tap_at(&self, x: f64, y: f64) {
        self.taps.set(self.taps.get() + 1);
        if self.is_phone() {
            self.cdp("Input.dispatchTouchEvent", json!({ "type": "touchStart", "touchPoints": [{ "x": x, "y": y }] }));
            self.cdp("Input.dispatchTouchEvent", json!({ "type": "touchEnd", "touchPoints": [] }));
        } else {
            let mouse = |kind: &str| json!({ "type": kind, "x": x, "y": y, "button": "left", "clickCount": 1 });
            self.cdp("Input.dispatchMouseEvent", mouse("mousePressed"));
            self.cdp("Input.dispatchMouseEvent", mouse("mouseReleased"));
        }
    }

    /// Taps once on what leads to another page and waits until that is ready.
    #[track_caller]
    pub fn tap_to(&self, selector: &str) {
        let (x, y) = self.middle(selector);
        self.leaving();
        self.tap_at(x, y);
        self.arrived();
    }

    /// How often was tapped so far.
    pub fn taps(&self) -> u32 {
        self.taps.get()
    }

    /// Opens the fold that a thing lies in, if it is shut: one tap.
    #[track_caller]
    pub fn unfold(&self, selector: &str) {
        let shut = format!("document.querySelector({0}).closest('details:not([open])') !== null", quoted(selector));
        if self.is(&shut) {
            self.tap(&format!("details:not([open]):has({selector}) > summary"));
            self.until_true(&format!("document.querySelector({0}).closest('details').open", quoted(selector)));
        }
    }

    /// Types into a field in place of what is there.
    #[track_caller]
    pub fn fill(&self, selector: &str, text: &str) {
        self.tap(selector);
        // Synthetic taps reach the page a moment later.
        self.until_true(&format!("document.activeElement?.matches({})", quoted(selector)));
        self.eval("document.activeElement.select?.()");
        // Not by keys: those know no ñ.
        self.cdp("Input.insertText", json!({ "text": text }));
        assert_eq!(self.value(selector), text, "{selector} took other than what was typed");
    }

    /// The value of a field.
    #[track_caller]
    pub fn value(&self, selector: &str) -> String {
        self.text(&format!("document.querySelector({}).value", quoted(selector)))
    }

    /// Whether something that matches is visible.
    #[track_caller]
    pub fn sees(&self, selector: &str) -> bool {
        self.is(&format!(
            "[...document.querySelectorAll({})].some((one) => one.checkVisibility() && one.getClientRects().length)",
            quoted(selector)
        ))
    }

    /// Chooses a choice that lies open as things to tap.
    #[track_caller]
    pub fn choose(&self, name: &str, value: &str) {
        let radio = format!("input[name=\"{name}\"][value=\"{value}\"]");
        self.tap(&radio);
        self.until_true(&format!("document.querySelector({}).checked", quoted(&radio)));
    }

    /// Chooses from a folded list, which the phone itself draws.
    #[track_caller]
    pub fn select(&self, name: &str, value: &str) {
        self.eval(&format!(
            "(() => {{ const list = document.querySelector('select[name=\"{name}\"]'); list.value = {}; \
             list.dispatchEvent(new Event('input', {{ bubbles: true }})); \
             list.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()",
            quoted(value)
        ));
        assert_eq!(self.value(&format!("select[name=\"{name}\"]")), value, "{name} does not offer {value}");
    }

    /// Chooses files, as from the camera.
    #[track_caller]
    pub fn photograph(&self, files: &[&Path]) {
        let found = self
            .cdp("Runtime.evaluate", json!({ "expression": "document.querySelector('input[type=file][data-photo]')" }));
        self.cdp("DOM.setFileInputFiles", json!({ "files": files, "objectId": found["result"]["objectId"] }));
    }

    /// Presses a key: `Tab`, `Shift+Tab`, `Enter` or `Space`.
    #[track_caller]
    pub fn press(&self, key: &str) {
        let (name, code, number, text, shift) = match key {
            "Tab" => ("Tab", "Tab", 9, "", 0),
            "Shift+Tab" => ("Tab", "Tab", 9, "", 8),
            "Enter" => ("Enter", "Enter", 13, "\r", 0),
            "Space" => (" ", "Space", 32, " ", 0),
            other => panic!("no such key: {other}"),
        };
        let event = |kind: &str| {
            json!({ "type": kind, "key": name, "code": code, "windowsVirtualKeyCode": number, "text": text,
                    "modifiers": shift })
        };
        self.cdp("Input.dispatchKeyEvent", event(if text.is_empty() { "rawKeyDown" } else { "keyDown" }));
        self.cdp("Input.dispatchKeyEvent", event("keyUp"));
    }

    /// Presses a key that leads to another page and waits until that is ready.
    #[track_caller]
    pub fn press_to(&self, key: &str) {
        self.leaving();
        self.press(key);
        self.arrived();
    }

    /// Answers the question that the browser itself shows, once it is there.
    pub fn answer_question(&self, yes: bool) {
        while self.try_cdp("Page.handleJavaScriptDialog", json!({ "accept": yes })).is_err() {
            self.in_time();
            std::thread::sleep(Duration::from_millis(20));
        }
    }
}
