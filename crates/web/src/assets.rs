//! The files that pages fetch: style, script, icon, the worker that keeps pages for reading offline.

use std::borrow::Cow;
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
            hasher.update(&slim(&name, &file.data));
        }
    }
    hasher.finalize().to_hex()[..16].to_owned()
});

/// A file as it travels: without the lines of a script that only speak to whoever reads it here, and without what
/// its lines are moved in by. Our scripts have no text over several lines, where that would change something.
fn slim<'f>(name: &str, data: &'f [u8]) -> Cow<'f, [u8]> {
    let kind = name.rsplit('.').next().unwrap_or_default();
    let Some(text) = std::str::from_utf8(data).ok().filter(|_| matches!(kind, "js" | "css")) else {
        return Cow::Borrowed(data);
    };
    let lines = text.lines().map(str::trim).filter(|line| !(line.is_empty() || kind == "js" && line.starts_with("//")));
    Cow::Owned(lines.flat_map(|line| [line, "\n"]).collect::<String>().into_bytes())
}

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
    let data = slim(&name, &file.data).into_owned();
    ([(CONTENT_TYPE, kind.as_str()), (CACHE_CONTROL, "public, max-age=31536000, immutable")], data).into_response()
}

/// The worker, with the addresses of this version's files written into it.
pub(crate) async fn worker() -> Response {
    let mut names: Vec<_> = Files::iter().filter(|name| name != WORKER).collect();
    names.sort();
    let addresses: Vec<String> = names.iter().map(|name| address(name)).collect();
    let text = Files::get(WORKER).map(|file| String::from_utf8_lossy(&slim(WORKER, &file.data)).into_owned());
    let text = text.unwrap_or_default();
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

#[cfg(test)]
mod tests {
    use super::{Files, slim};

    #[test]
    fn no_text_of_a_script_goes_over_several_lines() {
        let scripts = Files::iter().filter(|name| name.ends_with(".js"));
        for name in scripts {
            let file = Files::get(&name).expect("it is there");
            let text = String::from_utf8(file.data.into_owned()).expect("scripts are UTF-8");
            for line in text.lines().filter(|line| !line.trim_start().starts_with("//")) {
                assert!(line.matches('`').count() % 2 == 0 && !line.ends_with('\\'), "{name}: {line}");
            }
        }
    }

    #[test]
    fn only_what_speaks_to_its_reader_is_left_out() {
        let script = b"// Why.\n\nconst at = \"https://a.example//b\"; // here\n  go(at);\n";
        assert_eq!(&*slim("a.js", script), b"const at = \"https://a.example//b\"; // here\ngo(at);\n");
        assert_eq!(&*slim("a.css", b"a {\n  top: 0;\n}\n"), b"a {\ntop: 0;\n}\n");
        assert_eq!(&*slim("a.svg", b"  // as it is"), b"  // as it is");
    }
}
