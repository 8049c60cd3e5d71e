//! The files that pages fetch: style, script, icon, the worker that keeps pages for reading offline.

use std::sync::LazyLock;

use axum::extract::Path;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{HeaderName, StatusCode};
use axum::response::{IntoResponse, Response};
use rust_embed::RustEmbed;

#[derive(RustEmbed)]
#[folder = "assets"]
struct Files;

/// The worker is served from the root, since it may only serve what lies below its own address.
const WORKER: &str = "sw.js";

/// One hash over all files: their addresses change together, so that a page never mixes old and new.
static HASH: LazyLock<String> = LazyLock::new(|| {
    let mut names: Vec<_> = Files::iter().collect();
    names.sort();
    let mut hasher = blake3::Hasher::new();
    for name in names {
        hasher.update(name.as_bytes());
        if let Some(file) = Files::get(&name) {
            hasher.update(&file.data);
        }
    }
    hasher.finalize().to_hex()[..16].to_owned()
});

/// The address of a file.
pub(crate) fn address(name: &str) -> String {
    format!("/a/{}/{name}", *HASH)
}

/// A file under its hashed address: it never changes.
pub(crate) async fn file(Path((hash, name)): Path<(String, String)>) -> Response {
    let found = (hash == *HASH).then(|| Files::get(&name)).flatten();
    let Some(file) = found.filter(|_| name != WORKER) else { return StatusCode::NOT_FOUND.into_response() };
    let kind = file.metadata.mimetype().to_owned();
    let kind = if kind.starts_with("text/") { format!("{kind}; charset=utf-8") } else { kind };
    ([(CONTENT_TYPE, kind.as_str()), (CACHE_CONTROL, "public, max-age=31536000, immutable")], file.data.into_owned())
        .into_response()
}

/// The worker, with the addresses of this version's files written into it.
pub(crate) async fn worker() -> Response {
    let mut names: Vec<_> = Files::iter().filter(|name| name != WORKER).collect();
    names.sort();
    let addresses: Vec<String> = names.iter().map(|name| address(name)).collect();
    let text = Files::get(WORKER).map(|file| String::from_utf8_lossy(&file.data).into_owned()).unwrap_or_default();
    let list = serde_json::to_string(&addresses).unwrap_or_else(|_| "[]".to_owned());
    let text = text.replace("__HASH__", &HASH).replace("__ASSETS__", &list);
    let allowed = HeaderName::from_static("service-worker-allowed");
    ([(CONTENT_TYPE, "text/javascript; charset=utf-8"), (CACHE_CONTROL, "no-cache")], [(allowed, "/")], text)
        .into_response()
}

/// What a phone needs to put the pages on its first screen.
pub(crate) async fn manifest() -> Response {
    let text = serde_json::json!({
        "name": "Underfoot",
        "short_name": "Underfoot",
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "background_color": "#f6f4ef",
        "theme_color": "#7a3b1c",
        "icons": [{ "src": address("icon.svg"), "sizes": "any", "type": "image/svg+xml", "purpose": "any" }],
    });
    ([(CONTENT_TYPE, "application/manifest+json"), (CACHE_CONTROL, "no-cache")], text.to_string()).into_response()
}
