//! One line of the log for each request, and the id by which its answer and its faults are found again.
//!
//! A line names the pattern of the route, never the path: a path may hold the token of a share link, a query what
//! somebody typed.

use std::sync::Arc;
use std::time::Instant;

use axum::extract::{MatchedPath, Request, State};
use axum::http::header::{HeaderName, HeaderValue};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::Response;

use crate::app::App;
use crate::fault;
use crate::serving::Serving;

/// Carries the id of the request back to whoever sent it.
const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");

/// Gives a request its id, and writes its line when it is answered.
pub(crate) async fn request_log(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let serving = Serving::request(app.fresh_id());
    let monotonic = app.settings.outside.monotonic;
    let mut line = Line {
        method: method_name(request.method()),
        route: request.extensions().get::<MatchedPath>().cloned(),
        begun: monotonic(),
        monotonic,
        status: None,
        serving: Arc::clone(&serving),
    };
    let mut response = serving.scope(next.run(request)).await;
    line.status = Some(response.status());
    if response.status().is_server_error() && !serving.fault_is_told() {
        fault::tell_of(&serving, "no cause was told");
    }
    if let Ok(id) = HeaderValue::try_from(serving.request.to_string()) {
        response.headers_mut().insert(REQUEST_ID, id);
    }
    response
}

/// A request's line. It is written when this is dropped, so that a request whose sender hangs up before the
/// answer has its line too.
struct Line {
    method: &'static str,
    route: Option<MatchedPath>,
    begun: Instant,
    monotonic: fn() -> Instant,
    status: Option<StatusCode>,
    serving: Arc<Serving>,
}

impl Drop for Line {
    fn drop(&mut self) {
        let taken = (self.monotonic)().saturating_duration_since(self.begun).as_millis();
        tracing::info!(
            request_id = %self.serving.request,
            method = %self.method,
            route = %self.route.as_ref().map_or("none", MatchedPath::as_str),
            status = self.status.map_or(0, |status| status.as_u16()),
            ms = u64::try_from(taken).unwrap_or(u64::MAX),
            "request"
        );
    }
}

/// The standard's name of a method; whoever sends one may put any word there.
fn method_name(method: &Method) -> &'static str {
    match *method {
        Method::GET => "GET",
        Method::HEAD => "HEAD",
        Method::POST => "POST",
        Method::PUT => "PUT",
        Method::PATCH => "PATCH",
        Method::DELETE => "DELETE",
        Method::OPTIONS => "OPTIONS",
        Method::TRACE => "TRACE",
        Method::CONNECT => "CONNECT",
        _ => "other",
    }
}

#[cfg(test)]
mod tests {
    use std::sync::{Mutex, Once, PoisonError};
    use std::time::Duration;

    use axum::Router;
    use axum::body::Body;
    use axum::http::Request;
    use axum::routing::get;
    use jiff::Timestamp;
    use serde_json::Value;
    use tempfile::TempDir;
    use tower::ServiceExt;
    use uuid::Uuid;

    use super::*;
    use crate::app::{Access, Outside, Settings};
    use crate::context::{Answer, RequestContext, page};
    use crate::jobs::Works;
    use crate::server::around;
    use crate::visitor::Permission;

    static LOG: Mutex<Vec<u8>> = Mutex::new(Vec::new());

    struct Sink;

    impl std::io::Write for Sink {
        fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
            LOG.lock().unwrap_or_else(PoisonError::into_inner).extend_from_slice(bytes);
            Ok(bytes.len())
        }

        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    /// These tests are the program here: they keep the log, and a panic becomes a line of it.
    fn keep_the_log() {
        static ONCE: Once = Once::new();
        ONCE.call_once(|| {
            let lines = tracing_subscriber::fmt().json().flatten_event(true).with_writer(|| Sink);
            tracing::subscriber::set_global_default(lines.with_max_level(tracing::Level::DEBUG).finish())
                .expect("nobody else keeps it");
            let usual = std::panic::take_hook();
            std::panic::set_hook(Box::new(move |panic| {
                fault::tell_panic(panic);
                usual(panic);
            }));
        });
    }

    /// The lines about one request, those of its jobs too.
    fn lines_of(id: &str) -> Vec<Value> {
        let log = LOG.lock().unwrap_or_else(PoisonError::into_inner).clone();
        let all = String::from_utf8(log).expect("a log is text");
        let lines = all.lines().map(|line| serde_json::from_str::<Value>(line).expect("a line is JSON"));
        lines.filter(|line| line["request_id"] == id).collect()
    }

    #[expect(clippy::disallowed_methods, reason = "a test is its own shell")]
    fn app() -> (TempDir, Arc<App>) {
        let folder = TempDir::new().expect("a folder");
        let settings = Settings {
            store: store::Store::open(folder.path()).expect("a store"),
            access: Access::ThisMachine,
            outside: Outside {
                now: || Timestamp::UNIX_EPOCH,
                monotonic: Instant::now,
                fresh_id: Uuid::now_v7,
                secret: || [0; 32],
            },
            stands_at: None,
            author: "Ana".to_owned(),
            demo: None,
        };
        (folder, Arc::new(App::new(settings)))
    }

    fn breaks(context: &RequestContext) -> Answer {
        match context.part("word") {
            "" => panic!("on purpose"),
            word => panic!("cannot do {word}"),
        }
    }

    fn runtime() -> tokio::runtime::Runtime {
        tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime")
    }

    fn router(app: &Arc<App>) -> Router {
        let routes = Router::new()
            .route("/page", page(Permission::Read, breaks))
            .route("/page/{word}", page(Permission::Read, breaks))
            .route("/task", get(async || -> Response { panic!("in a task") }))
            .route("/bare", get(async || StatusCode::BAD_GATEWAY))
            .route("/never", get(std::future::pending::<Response>));
        around(routes, Arc::clone(app))
    }

    fn ask(path: &str) -> (StatusCode, Vec<Value>) {
        keep_the_log();
        let (_folder, app) = app();
        let request = Request::get(path).header("host", "localhost").body(Body::empty()).expect("a request");
        let answer = runtime().block_on(router(&app).oneshot(request)).expect("an answer");
        let id = answer.headers()[REQUEST_ID].to_str().expect("an id").to_owned();
        (answer.status(), lines_of(&id))
    }

    #[test]
    fn a_panic_is_one_fault_with_its_place_and_the_id_of_the_answer() {
        for (path, route, message) in [
            ("/page", "/page", Some("on purpose")),
            ("/page/Olga", "/page/{word}", None),
            ("/task", "/task", Some("in a task")),
        ] {
            let (status, lines) = ask(path);
            assert_eq!(status, 500, "{path}");
            let faults: Vec<&Value> = lines.iter().filter(|line| line["message"] == "fault").collect();
            assert_eq!(faults.len(), 1, "{path}: {lines:?}");
            assert_eq!((&faults[0]["level"], &faults[0]["doing"]), (&"ERROR".into(), &"answering a request".into()));
            let cause = faults[0]["cause"].as_str().expect("a cause");
            assert!(cause.starts_with("panic at crates/web/src/request_log.rs:"), "{cause}");
            assert_eq!(cause.rsplit_once(": ").map(|(_, said)| said), message, "{cause}");
            let line = lines.last().expect("a line");
            assert_eq!((&line["message"], &line["route"]), (&"request".into(), &route.into()));
            assert_eq!((&line["status"], &line["level"]), (&500.into(), &"INFO".into()));
            assert!(!lines.iter().any(|line| line.to_string().contains("Olga")), "{lines:?}");
        }
    }

    #[test]
    fn a_server_error_without_a_cause_is_a_fault_too() {
        let (status, lines) = ask("/bare");
        assert_eq!((status.as_u16(), lines.len()), (502, 2), "{lines:?}");
        assert_eq!(lines[0]["cause"], "no cause was told");
    }

    #[test]
    fn a_sender_that_hangs_up_leaves_a_line_with_no_status() {
        keep_the_log();
        let (_folder, mut app) = app();
        // An id that this test knows, since no answer brings one.
        Arc::get_mut(&mut app).expect("alone").settings.outside.fresh_id = || Uuid::from_u128(0xdead);
        let request = Request::get("/never").header("host", "localhost").body(Body::empty()).expect("a request");
        let waited = runtime()
            .block_on(async { tokio::time::timeout(Duration::from_millis(20), router(&app).oneshot(request)).await });
        assert!(waited.is_err(), "it never answers");
        let lines = lines_of(&Uuid::from_u128(0xdead).to_string());
        assert_eq!(lines.len(), 1, "{lines:?}");
        assert_eq!((&lines[0]["status"], &lines[0]["route"]), (&0.into(), &"/never".into()));
        assert!(lines[0]["ms"].as_u64().is_some_and(|ms| ms >= 20), "{lines:?}");
    }

    #[test]
    fn a_job_that_breaks_off_is_a_fault_of_the_request_that_began_it() {
        keep_the_log();
        let works = Works::default();
        let serving = Serving::request(Uuid::from_u128(0xbeef));
        let work = runtime().block_on(serving.scope(async { works.forecast("a", |_| panic!("on purpose")) }));
        while !work.is_broken() {
            std::thread::yield_now();
        }
        let lines = lines_of(&Uuid::from_u128(0xbeef).to_string());
        assert_eq!(lines.len(), 1, "{lines:?}");
        assert_eq!((&lines[0]["message"], &lines[0]["doing"]), (&"fault".into(), &"a drying forecast".into()));
        assert!(!serving.fault_is_told(), "the request itself was answered");
    }

    #[test]
    fn a_word_that_is_no_method_is_not_repeated() {
        assert_eq!(method_name(&Method::from_bytes(b"OLGA").expect("a word")), "other");
        assert_eq!(method_name(&Method::HEAD), "HEAD");
    }
}
