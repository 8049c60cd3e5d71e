//! One tab of the browser: going to pages and looking at them.

use std::cell::{Cell, RefCell};
use std::sync::Arc;
use std::time::{Duration, Instant};

use chromiumoxide::Page;
use serde_json::{Value, json};

use crate::browser::{Context, ask, instant};
use crate::server::Server;

/// Whether the page has its script at work, where it has any.
const READY: &str = r#"(() => {
  if (document.readyState !== "complete" || window.underfootLeft) return false;
  if (!document.querySelector('script[type="module"]')) return true;
  return document.documentElement.dataset.started === "yes" &&
    [...document.querySelectorAll("form[data-entry], form[data-draft], [data-plan]")]
      .every((part) => part.dataset.ready === "yes" || (part.matches("[data-plan]") && !part.querySelector("svg")));
})()"#;

/// How a person reads and on what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reading {
    /// `en` or `es`.
    pub lang: &'static str,
    /// `light` or `dark`.
    pub theme: &'static str,
    /// `imperial` or `metric`.
    pub measure: &'static str,
    /// Width and height of the window in CSS pixels.
    pub size: (u32, u32),
    /// Whether scripts run.
    pub script: bool,
}

impl Reading {
    /// A phone.
    pub const PHONE: Self = Self { lang: "en", theme: "light", measure: "imperial", size: (390, 844), script: true };
    /// A desk.
    pub const DESK: Self = Self { size: (1280, 900), ..Self::PHONE };

    /// The same in Spanish.
    #[must_use]
    pub fn spanish(self) -> Self {
        Self { lang: "es", ..self }
    }

    /// The same with scripts forbidden.
    #[must_use]
    pub fn without_script(self) -> Self {
        Self { script: false, ..self }
    }

    fn is_phone(self) -> bool {
        self.size.0 < 700
    }
}

/// A tab.
#[derive(Debug)]
pub struct Tab {
    page: Page,
    #[expect(dead_code, reason = "held, so that its storage lives as long as it does")]
    context: Arc<Context>,
    pub(crate) until: Instant,
    reading: Cell<Reading>,
    pub(crate) taps: Cell<u32>,
    /// Where it went last, for messages.
    pub(crate) went: RefCell<String>,
}

impl Tab {
    pub(crate) fn new(page: Page, context: Arc<Context>, reading: Reading, until: Instant) -> Self {
        let tab =
            Self { page, context, until, reading: Cell::new(reading), taps: Cell::new(0), went: RefCell::default() };
        // Without this the page waits for its service worker for ever: chromiumoxide attaches to the
        // worker, which then waits for the debugger.
        tab.cdp(
            "Target.setAutoAttach",
            json!({ "autoAttach": false, "waitForDebuggerOnStart": false, "flatten": true }),
        );
        tab.cdp("Page.enable", json!({}));
        tab.cdp("Network.enable", json!({}));
        // Colors are measured as they are, not half-way from one to another.
        let still = json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] });
        tab.cdp("Emulation.setEmulatedMedia", still);
        tab.set_size(reading.size);
        if !reading.script {
            tab.forbid_scripts(true);
        }
        tab
    }

    /// Forbids scripts, or lets those of the tests run on a page whose own did not.
    pub fn forbid_scripts(&self, forbidden: bool) {
        self.cdp("Emulation.setScriptExecutionDisabled", json!({ "value": forbidden }));
    }

    /// A command of the DevTools protocol.
    #[track_caller]
    pub fn cdp(&self, method: &'static str, params: Value) -> Value {
        self.in_time();
        ask(&self.page, method, params).unwrap_or_else(|e| panic!("{method} at {}: {e}", self.went.borrow()))
    }

    /// The same, where it may fail.
    pub(crate) fn try_cdp(&self, method: &'static str, params: Value) -> Result<Value, String> {
        ask(&self.page, method, params)
    }

    #[track_caller]
    pub(crate) fn in_time(&self) {
        assert!(instant() < self.until, "the test is over its time, at {}", self.went.borrow());
    }

    /// Changes the window.
    pub fn set_size(&self, (width, height): (u32, u32)) {
        let phone = width < 700;
        self.cdp(
            "Emulation.setDeviceMetricsOverride",
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": phone }),
        );
        self.cdp("Emulation.setTouchEmulationEnabled", json!({ "enabled": phone, "maxTouchPoints": 5 }));
        self.reading.set(Reading { size: (width, height), ..self.reading.get() });
    }

    pub(crate) fn is_phone(&self) -> bool {
        self.reading.get().is_phone()
    }

    /// How its person reads.
    pub fn reading(&self) -> Reading {
        self.reading.get()
    }

    /// Sets how the person of this tab reads, by the cookies that the pages know.
    pub fn read_as(&self, server: &Server, reading: Reading) {
        for (name, value) in [("lang", reading.lang), ("theme", reading.theme), ("measure", reading.measure)] {
            self.cdp("Network.setCookie", json!({ "name": name, "value": value, "url": server.url("/") }));
        }
        self.reading.set(reading);
        self.set_size(reading.size);
    }

    /// Goes to a page and waits until it is ready.
    #[track_caller]
    pub fn go(&self, server: &Server, path: &str) {
        self.open(&server.url(path));
    }

    /// Goes to an address and waits until it is ready.
    #[track_caller]
    pub fn open(&self, url: &str) {
        self.in_time();
        *self.went.borrow_mut() = url.to_owned();
        self.leaving();
        // Its answer is not needed: whether the page came is seen by looking.
        let _ = self.try_cdp("Page.navigate", json!({ "url": url }));
        self.arrived();
    }

    /// Loads the page again.
    #[track_caller]
    pub fn reload(&self) {
        self.leaving();
        self.cdp("Page.reload", json!({}));
        self.arrived();
    }

    /// Marks the page that is there, so that the next one is told from it.
    pub(crate) fn leaving(&self) {
        let _ = self.try_eval("window.underfootLeft = true");
    }

    /// Waits until another page is there and ready.
    #[track_caller]
    pub(crate) fn arrived(&self) {
        let script = self.reading.get().script;
        let ready = if script { READY } else { "document.readyState === 'complete' && !window.underfootLeft" };
        self.until_true(ready);
        *self.went.borrow_mut() = self.text("location.href");
    }

    /// Evaluates an expression in the page, when there is a page.
    pub(crate) fn try_eval(&self, expression: &str) -> Result<Value, String> {
        let asked = json!({ "expression": expression, "returnByValue": true, "awaitPromise": true });
        let answer = self.try_cdp("Runtime.evaluate", asked)?;
        if answer["exceptionDetails"].is_object() {
            let what = &answer["exceptionDetails"];
            return Err(what["exception"]["description"].as_str().unwrap_or("thrown").to_owned());
        }
        Ok(answer["result"]["value"].clone())
    }

    /// Evaluates an expression in the page.
    #[track_caller]
    pub fn eval(&self, expression: &str) -> Value {
        self.in_time();
        self.try_eval(expression).unwrap_or_else(|e| panic!("{expression}\nat {}: {e}", self.went.borrow()))
    }

    /// An expression that gives a text.
    #[track_caller]
    pub fn text(&self, expression: &str) -> String {
        self.eval(expression).as_str().unwrap_or_default().to_owned()
    }

    /// An expression that gives yes or no.
    #[track_caller]
    pub fn is(&self, expression: &str) -> bool {
        self.eval(expression) == Value::Bool(true)
    }

    /// Waits until an expression is true; a page that is just going away is asked again.
    #[track_caller]
    pub fn until_true(&self, expression: &str) {
        let mut wait = Duration::from_millis(10);
        let limit = (instant() + Duration::from_secs(30)).min(self.until);
        loop {
            let answer = self.try_eval(expression);
            if answer == Ok(Value::Bool(true)) {
                return;
            }
            if instant() > limit {
                panic!("never true: {expression}\nlast: {answer:?}\nwent to {}\n{}", self.went.borrow(), self.seen());
            }
            std::thread::sleep(wait);
            wait = (wait * 2).min(Duration::from_millis(100));
        }
    }

    /// What stands on the page, shortened, for messages.
    pub fn seen(&self) -> String {
        let seen = self.try_eval("location.href + '\\n' + document.body.innerText.slice(0, 1500)");
        seen.ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
    }

    /// The visible text of the page's main part.
    pub fn main_text(&self) -> String {
        self.text("document.querySelector('main').innerText")
    }

    /// The HTTP status that the page came with.
    pub fn status(&self) -> u64 {
        self.eval("performance.getEntriesByType('navigation')[0].responseStatus").as_u64().unwrap_or_default()
    }

    /// The path of the page, without what comes after it.
    pub fn path(&self) -> String {
        self.text("location.pathname")
    }
}
