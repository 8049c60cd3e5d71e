//! The pages in process: a store in a folder of its own, a clock that stands, and the demo's diary.

#![allow(dead_code, reason = "each test file uses its own share of these")]
#![allow(clippy::unwrap_used, reason = "a test may stop")]
#![allow(clippy::disallowed_methods, reason = "a test is its own shell: it makes the ids")]

use std::sync::Arc;

use axum::Router;
use axum::body::{Body, Bytes, to_bytes};
use axum::http::header::{CONTENT_TYPE, COOKIE, HOST};
use axum::http::{HeaderMap, Request, StatusCode};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use slab_diary::{Context, SlabId, read_lines};
use store::Store;
use tempfile::TempDir;
use tower::ServiceExt;
use uuid::Uuid;
use web::{Access, App, Outside, Settings, router};

/// The demo's diary, read in as any diary file is.
pub(crate) const DEMO: &str = include_str!("../../../../demo/slab.jsonl");
/// The morning at which its clock stands.
pub(crate) const NOW: &str = "2026-03-27T12:00:00Z";

fn now() -> Timestamp {
    NOW.parse().unwrap()
}

/// The pages over a store of their own.
pub(crate) struct Site {
    pub(crate) router: Router,
    pub(crate) store: Store,
    folder: TempDir,
}

/// An answer, read whole.
pub(crate) struct Got {
    pub(crate) status: StatusCode,
    pub(crate) headers: HeaderMap,
    pub(crate) bytes: Bytes,
}

impl Got {
    pub(crate) fn text(&self) -> String {
        String::from_utf8(self.bytes.to_vec()).expect("pages are UTF-8")
    }

    pub(crate) fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }

    /// Stops unless it has this status.
    #[track_caller]
    pub(crate) fn ends(self, status: u16) -> Self {
        assert_eq!(self.status.as_u16(), status, "{}", String::from_utf8_lossy(&self.bytes));
        self
    }

    /// Stops unless the page holds the text.
    #[track_caller]
    pub(crate) fn holds(self, text: &str) -> Self {
        assert!(self.text().contains(text), "\"{text}\" is not in:\n{}", self.text());
        self
    }
}

impl Site {
    /// No slab at all; whoever asks owns everything, as on one's own machine.
    pub(crate) fn empty() -> Self {
        Self::with(Access::ThisMachine)
    }

    pub(crate) fn with(access: Access) -> Self {
        let folder = TempDir::new().unwrap();
        let store = Store::open(folder.path()).unwrap();
        let settings = Settings {
            store: Store::open(folder.path()).unwrap(),
            access,
            outside: Outside {
                now,
                monotonic: std::time::Instant::now,
                fresh_id: Uuid::now_v7,
                secret: || *blake3::hash(Uuid::new_v4().as_bytes()).as_bytes(),
            },
            stands_at: Some(now()),
            author: "Ana".to_owned(),
            demo: None,
        };
        Self { router: router(Arc::new(App::new(settings))), store, folder }
    }

    /// The folder that the store keeps everything in.
    pub(crate) fn folder(&self) -> &std::path::Path {
        self.folder.path()
    }

    /// A slab of this name with these entries, given as JSON Lines.
    pub(crate) fn slab(&self, name: &str, lines: &str) -> SlabId {
        let id = SlabId::of_name(name);
        self.store.create_slab(id, name).unwrap();
        let context = Context {
            slab: id,
            zone: TimeZone::get("America/New_York").unwrap(),
            author: "diary file".to_owned(),
            device: "diary file".to_owned(),
            noted: None,
        };
        for file in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/../../demo/photographs")).unwrap() {
            let path = file.unwrap().path();
            if path.extension().is_some_and(|end| end == "jpg") {
                self.store.put_photograph(&std::fs::read(path).unwrap()).unwrap();
            }
        }
        let entries = read_lines(lines, &context).unwrap_or_else(|errors| panic!("{errors:?}"));
        self.store.append(id, &entries).unwrap();
        id
    }

    /// Sends a request as a browser on this machine does.
    pub(crate) fn send(&self, request: Request<Body>) -> Got {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
        runtime.block_on(async {
            let response = self.router.clone().oneshot(request).await.unwrap();
            let (parts, body) = response.into_parts();
            let bytes = to_bytes(body, usize::MAX).await.unwrap();
            Got { status: parts.status, headers: parts.headers, bytes }
        })
    }

    /// A page; `cookies` as `lang=es; measure=metric`.
    pub(crate) fn get_as(&self, path: &str, cookies: &str) -> Got {
        self.send(Request::get(path).header(HOST, "localhost").header(COOKIE, cookies).body(Body::empty()).unwrap())
    }

    /// A page in English with feet and gallons.
    pub(crate) fn get(&self, path: &str) -> Got {
        self.get_as(path, "lang=en")
    }

    /// A form without files, as it is sent without script.
    pub(crate) fn post(&self, path: &str, fields: &[(&str, &str)]) -> Got {
        let body = form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish();
        let request = Request::post(path).header(HOST, "localhost");
        self.send(request.header(CONTENT_TYPE, "application/x-www-form-urlencoded").body(Body::from(body)).unwrap())
    }

    /// A form with files: field, file name, bytes.
    pub(crate) fn post_files(&self, path: &str, fields: &[(&str, &str)], files: &[(&str, &str, &[u8])]) -> Got {
        let mut body = Vec::new();
        for (name, value) in fields {
            body.extend(
                format!("--edge\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n").bytes(),
            );
        }
        for (field, name, bytes) in files {
            let head =
                format!("--edge\r\nContent-Disposition: form-data; name=\"{field}\"; filename=\"{name}\"\r\n\r\n");
            body.extend(head.bytes().chain(bytes.iter().copied()).chain(*b"\r\n"));
        }
        body.extend(*b"--edge--\r\n");
        let request = Request::post(path).header(HOST, "localhost");
        self.send(request.header(CONTENT_TYPE, "multipart/form-data; boundary=edge").body(Body::from(body)).unwrap())
    }
}
