//! A second engine: Firefox, spoken to by WebDriver BiDi (W3C Working Draft), for the main walk.
//!
//! One browser for each walk, in a profile of its own. Only what a walk needs is here; what is measured and looked at
//! is so in Chromium.

use std::cell::Cell;
use std::io::{BufRead, BufReader};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use tempfile::TempDir;
use tungstenite::stream::MaybeTlsStream;
use tungstenite::{Message, WebSocket};

use crate::browser::instant;

/// How long one command may take.
const PATIENCE: Duration = Duration::from_secs(60);
const LISTENS: &str = "WebDriver BiDi listening on ";

/// A running Firefox with one tab; ended when it is dropped.
#[derive(Debug)]
pub struct Firefox {
    child: Child,
    socket: std::cell::RefCell<WebSocket<MaybeTlsStream<TcpStream>>>,
    asked: Cell<u64>,
    tab: String,
    until: Instant,
    #[expect(dead_code, reason = "held, so that it is deleted after the browser")]
    profile: TempDir,
}

fn binary() -> PathBuf {
    let given = std::env::var_os("FIREFOX").map(PathBuf::from);
    let usual = ["/usr/bin/firefox-esr", "/usr/bin/firefox"].map(PathBuf::from);
    let places = given.map_or_else(|| usual.to_vec(), |given| vec![given]);
    let found = places.iter().find(|path| path.exists()).cloned();
    found.unwrap_or_else(|| {
        panic!("no Firefox at {places:?}: install the package firefox-esr or set FIREFOX; no test is skipped for want of it")
    })
}

impl Firefox {
    /// Starts it with a window of a phone's size; everything done with it must end within so many seconds.
    #[must_use]
    pub fn within(seconds: u64) -> Self {
        let profile = tempfile::tempdir().expect("a folder can be made");
        let mut child = Command::new(binary())
            .args(["--headless", "--no-remote", "--remote-debugging-port", "0", "--profile"])
            .arg(profile.path())
            .arg("about:blank")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .expect("Firefox starts");
        let mut said = BufReader::new(child.stderr.take().expect("it is piped"));
        let mut line = String::new();
        let address = loop {
            line.clear();
            assert!(said.read_line(&mut line).expect("Firefox speaks") > 0, "Firefox ended before it listened");
            if let Some(address) = line.trim().strip_prefix(LISTENS) {
                break format!("{address}/session");
            }
        };
        // Nobody reads on; a browser that says more must not stop at a full pipe.
        std::thread::spawn(move || std::io::copy(&mut said, &mut std::io::sink()));
        let (socket, _) = tungstenite::connect(&address).expect("Firefox answers");
        if let MaybeTlsStream::Plain(stream) = socket.get_ref() {
            stream.set_read_timeout(Some(PATIENCE)).expect("a time can be set");
        }
        let until = instant() + Duration::from_secs(seconds);
        let mut firefox =
            Self { child, socket: socket.into(), asked: Cell::new(0), tab: String::new(), until, profile };
        firefox.ask("session.new", json!({ "capabilities": {} }));
        let tree = firefox.ask("browsingContext.getTree", json!({}));
        firefox.tab = tree["contexts"][0]["context"].as_str().expect("there is a tab").to_owned();
        let phone = json!({ "width": 390, "height": 844 });
        firefox.ask("browsingContext.setViewport", json!({ "context": firefox.tab, "viewport": phone }));
        firefox
    }

    /// A command; the answer, or what was wrong.
    fn try_ask(&self, method: &str, params: Value) -> Result<Value, String> {
        assert!(instant() < self.until, "the test is over its time, at {method}");
        let id = self.asked.get() + 1;
        self.asked.set(id);
        let text = json!({ "id": id, "method": method, "params": params }).to_string();
        let mut socket = self.socket.borrow_mut();
        socket.send(Message::text(text)).map_err(|error| error.to_string())?;
        loop {
            let Message::Text(text) = socket.read().map_err(|error| format!("{method}: {error}"))? else { continue };
            let answer: Value = serde_json::from_str(text.as_str()).map_err(|error| error.to_string())?;
            // Events have no id.
            if answer["id"].as_u64() != Some(id) {
                continue;
            }
            return match answer["type"].as_str() {
                Some("success") => Ok(answer["result"].clone()),
                _ => Err(format!("{}: {}", answer["error"], answer["message"])),
            };
        }
    }

    #[track_caller]
    fn ask(&self, method: &str, params: Value) -> Value {
        self.try_ask(method, params).unwrap_or_else(|error| panic!("{method}: {error}"))
    }

    /// Goes to an address and waits until the page and its script are there.
    #[track_caller]
    pub fn go(&self, url: &str) {
        self.ask("browsingContext.navigate", json!({ "context": self.tab, "url": url, "wait": "complete" }));
        self.until_true("document.documentElement.dataset.started === 'yes'");
    }

    fn try_eval(&self, expression: &str) -> Result<Value, String> {
        // As text: BiDi has its own form of values, and all that is asked here is plain.
        let wrapped = format!("Promise.resolve({expression}).then((value) => JSON.stringify(value ?? null))");
        let target = json!({ "context": self.tab });
        let asked = json!({ "expression": wrapped, "target": target, "awaitPromise": true });
        let answer = self.try_ask("script.evaluate", asked)?;
        match answer["result"]["value"].as_str() {
            Some(text) => serde_json::from_str(text).map_err(|error| error.to_string()),
            None => Err(answer["exceptionDetails"]["text"].to_string()),
        }
    }

    /// Evaluates an expression in the page.
    #[track_caller]
    pub fn eval(&self, expression: &str) -> Value {
        self.try_eval(expression).unwrap_or_else(|error| panic!("{expression}: {error}"))
    }

    /// Waits until an expression is true.
    #[track_caller]
    pub fn until_true(&self, expression: &str) {
        let limit = (instant() + Duration::from_secs(30)).min(self.until);
        loop {
            let answer = self.try_eval(expression);
            if answer == Ok(Value::Bool(true)) {
                return;
            }
            let seen = "location.href + '\\n' + document.body.innerText.slice(0, 1500)";
            assert!(instant() < limit, "never true: {expression}\nlast: {answer:?}\n{:?}", self.try_eval(seen));
            std::thread::sleep(Duration::from_millis(50));
        }
    }

    /// Taps with a finger on the middle of the first part that a selector finds.
    #[track_caller]
    pub fn tap(&self, selector: &str) {
        let middle = format!(
            "(() => {{ const part = document.querySelector({selector:?});
               part.scrollIntoView({{ block: 'center' }});
               const box = part.getBoundingClientRect();
               return [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)]; }})()"
        );
        let at = self.eval(&middle);
        self.tap_at(at[0].as_f64().unwrap_or_default(), at[1].as_f64().unwrap_or_default());
    }

    /// Taps with a finger on a point of the window.
    #[track_caller]
    pub fn tap_at(&self, x: f64, y: f64) {
        let steps = json!([
            { "type": "pointerMove", "x": x.round() as i64, "y": y.round() as i64 },
            { "type": "pointerDown", "button": 0 },
            { "type": "pointerUp", "button": 0 },
        ]);
        let finger =
            json!({ "type": "pointer", "id": "finger", "parameters": { "pointerType": "touch" }, "actions": steps });
        self.ask("input.performActions", json!({ "context": self.tab, "actions": [finger] }));
    }

    /// Taps what leads to another page and waits until that is ready.
    #[track_caller]
    pub fn tap_to(&self, selector: &str) {
        self.eval("(window.stillHere = true)");
        self.tap(selector);
        self.until_true("!window.stillHere && document.readyState === 'complete'");
        self.until_true("document.documentElement.dataset.started === 'yes'");
    }

    /// Types into a field, letter by letter.
    #[track_caller]
    pub fn type_into(&self, selector: &str, text: &str) {
        self.tap(selector);
        let keys: Vec<Value> = text
            .chars()
            .flat_map(|c| ["keyDown", "keyUp"].map(|kind| json!({ "type": kind, "value": c.to_string() })))
            .collect();
        let keyboard = json!({ "type": "key", "id": "keyboard", "actions": keys });
        self.ask("input.performActions", json!({ "context": self.tab, "actions": [keyboard] }));
    }

    /// Chooses a file in a file field.
    #[track_caller]
    pub fn choose_file(&self, selector: &str, file: &Path) {
        let wanted = json!({
            "expression": format!("document.querySelector({selector:?})"),
            "target": { "context": self.tab },
            "awaitPromise": false,
        });
        let found = self.ask("script.evaluate", wanted);
        let element = json!({ "sharedId": found["result"]["sharedId"] });
        let params = json!({ "context": self.tab, "element": element, "files": [file.display().to_string()] });
        self.ask("input.setFiles", params);
    }
}

impl Drop for Firefox {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
