//! The one Chromium of a test run, and each test's own part of it.

use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, LazyLock, OnceLock};
use std::time::{Duration, Instant};

use chromiumoxide::cdp::browser_protocol::browser::BrowserContextId;
use chromiumoxide::cdp::browser_protocol::target::CreateTargetParams;
use chromiumoxide::handler::HandlerConfig;
use chromiumoxide::types::{Command as Cdp, Method, MethodId};
use chromiumoxide::{Browser, Page};
use futures_util::StreamExt;
use serde::{Serialize, Serializer};
use serde_json::{Value, json};
use tokio::runtime::Runtime;

use crate::tab::{Reading, Tab};

/// How long the browser may take for one command.
const PATIENCE: Duration = Duration::from_secs(30);

/// Ends the browser and clears its profile when its input closes: when the test run is over, however
/// it ended.
const KEEPER: &str = r#"
profile=$1; shift
"$@" >/dev/null 2>&1 </dev/null &
browser=$!
cat >/dev/null
kill "$browser" 2>/dev/null; wait "$browser" 2>/dev/null
# Its helpers may still be writing.
rm -rf "$profile" 2>/dev/null || { sleep 1; rm -rf "$profile"; }
"#;

const FLAGS: &[&str] = &[
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    // Two tests share it, and a page in the back must not be slower than one in front.
    "--disable-background-timer-throttling",
    "--disable-backgrounding-occluded-windows",
    "--disable-renderer-backgrounding",
    "--lang=en-US",
    "--remote-debugging-port=0",
];

static RUNTIME: LazyLock<Runtime> = LazyLock::new(|| {
    tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().expect("threads can be made")
});

/// A moment of the real clock, for time-outs only.
#[expect(clippy::disallowed_methods, reason = "a test must stop after a time; nothing is computed from it")]
pub(crate) fn instant() -> Instant {
    Instant::now()
}

/// A command of the DevTools protocol, by its name.
#[derive(Debug)]
struct Raw {
    method: &'static str,
    params: Value,
}

impl Serialize for Raw {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.params.serialize(serializer)
    }
}

impl Method for Raw {
    fn identifier(&self) -> MethodId {
        self.method.into()
    }
}

impl Cdp for Raw {
    type Response = Value;
}

/// Asks the browser about one page.
pub(crate) fn ask(page: &Page, method: &'static str, params: Value) -> Result<Value, String> {
    RUNTIME.block_on(async {
        match tokio::time::timeout(PATIENCE, page.execute(Raw { method, params })).await {
            Ok(Ok(answer)) => Ok(answer.result),
            Ok(Err(error)) => Err(error.to_string()),
            Err(_) => Err(format!("{method}: no answer")),
        }
    })
}

struct Running {
    browser: Browser,
    #[expect(dead_code, reason = "held, so that its input stays open while the tests run")]
    keeper: Child,
}

fn chromium() -> PathBuf {
    let given = std::env::var_os("CHROMIUM").map(PathBuf::from);
    let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].map(PathBuf::from);
    let places = given.map_or_else(|| usual.to_vec(), |given| vec![given]);
    let found = places.iter().find(|path| path.exists()).cloned();
    found.unwrap_or_else(|| {
        panic!(
            "no Chromium at {places:?}: install the package chromium or set CHROMIUM; no test is skipped for want of it"
        )
    })
}

fn running() -> &'static Running {
    static RUNNING: OnceLock<Running> = OnceLock::new();
    RUNNING.get_or_init(|| {
        let profile = tempfile::tempdir().expect("a folder can be made").keep();
        let mut command = Command::new("sh");
        command.args(["-c", KEEPER, "keeper"]).arg(&profile).arg(chromium()).args(FLAGS);
        command.arg(format!("--user-data-dir={}", profile.display())).arg("about:blank");
        let keeper = command.stdin(Stdio::piped()).spawn().expect("a shell runs");
        let address = debugger(&profile);
        let browser = RUNTIME.block_on(async {
            let config = HandlerConfig { viewport: None, request_timeout: PATIENCE, ..HandlerConfig::default() };
            let (browser, mut handler) = Browser::connect_with_config(address, config).await.expect("Chromium answers");
            tokio::spawn(async move { while handler.next().await.is_some() {} });
            browser
        });
        Running { browser, keeper }
    })
}

/// Where Chromium listens: it writes it into its profile once it does.
fn debugger(profile: &Path) -> String {
    let until = instant() + PATIENCE;
    loop {
        let text = std::fs::read_to_string(profile.join("DevToolsActivePort")).unwrap_or_default();
        if let Some((port, path)) = text.trim().split_once('\n') {
            return format!("ws://127.0.0.1:{port}{path}");
        }
        assert!(instant() < until, "Chromium ({}) did not start within {PATIENCE:?}", chromium().display());
        std::thread::sleep(Duration::from_millis(20));
    }
}

/// Cookies, storage and workers that go with the last tab that uses them.
#[derive(Debug)]
pub(crate) struct Context(BrowserContextId);

/// One test's own part of the browser.
#[derive(Debug)]
pub struct Visit {
    context: Arc<Context>,
    /// When the test must be over.
    until: Instant,
}

impl Visit {
    /// Begins; the test fails at the first look after this many seconds.
    pub fn within(seconds: u64) -> Self {
        let raw = Raw { method: "Target.createBrowserContext", params: json!({ "disposeOnDetach": true }) };
        let made = RUNTIME.block_on(running().browser.execute(raw)).expect("a context can be made");
        let id = made.result["browserContextId"].as_str().expect("a context has an id").to_owned();
        Self { context: Arc::new(Context(BrowserContextId::from(id))), until: instant() + Duration::from_secs(seconds) }
    }

    /// A new tab, empty, set up as this person's device.
    pub fn tab(&self, reading: Reading) -> Tab {
        let mut target = CreateTargetParams::new("about:blank");
        // A window of its own: a tab behind another one gets no touches.
        target.new_window = Some(true);
        target.browser_context_id = Some(self.context.0.clone());
        let page = RUNTIME.block_on(running().browser.new_page(target)).expect("a tab can be opened");
        Tab::new(page, Arc::clone(&self.context), reading, self.until)
    }
}

impl Drop for Context {
    fn drop(&mut self) {
        let params = json!({ "browserContextId": self.0.as_ref() });
        let _ = RUNTIME.block_on(running().browser.execute(Raw { method: "Target.disposeBrowserContext", params }));
    }
}

/// Begins to count; gives how long it has been.
pub fn stopwatch() -> impl Fn() -> Duration {
    let began = instant();
    move || began.elapsed()
}
