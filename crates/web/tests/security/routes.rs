//! Every route with its right, read from the sources of the screens, so that a new one can't be left out.

use std::path::Path;

/// A route: its path, the right to look, the right to send.
#[derive(Debug, Clone)]
pub(crate) struct Route {
    pub(crate) path: String,
    pub(crate) page: Option<String>,
    pub(crate) form: Option<String>,
}

fn read(folder: &Path, all: &mut String) {
    for file in std::fs::read_dir(folder).unwrap() {
        let path = file.unwrap().path();
        if path.is_dir() {
            read(&path, all);
        } else if path.extension().is_some_and(|end| end == "rs") {
            all.push_str(&std::fs::read_to_string(&path).unwrap());
        }
    }
}

fn right(text: &str, call: &str) -> Option<String> {
    let rest = text.split(call).nth(1)?;
    Some(rest.split(',').next()?.trim().to_owned())
}

/// All routes of all screens.
pub(crate) fn routes() -> Vec<Route> {
    let mut sources = String::new();
    read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/screens"), &mut sources);
    let parts = sources.split(".route(").skip(1).map(|part| part.trim_start());
    let routes: Vec<Route> = parts
        .filter(|part| part.starts_with("\"/"))
        .map(|part| {
            let path = part[1..].split('"').next().unwrap().to_owned();
            // Up to the next route or the end of the statement.
            let call = part.split("\n}").next().unwrap();
            Route { path, page: right(call, "page(Permission::"), form: right(call, "form(Permission::") }
        })
        .collect();
    assert!(routes.len() > 40, "only {} routes found", routes.len());
    assert!(routes.iter().all(|route| route.page.is_some() || route.form.is_some()), "{routes:?}");
    routes
}

/// The path with something real in each of its holes.
pub(crate) fn filled(path: &str, holes: &[(&str, String)]) -> String {
    let mut path = path.to_owned();
    for (name, value) in holes {
        path = path.replace(&format!("{{{name}}}"), value);
    }
    assert!(!path.contains('{'), "{path} has a hole that no test fills");
    path
}

#[test]
fn strangers_may_send_only_to_these() {
    let all = routes();
    let of = |right: &str| {
        let mut paths: Vec<&str> =
            all.iter().filter(|r| r.form.as_deref() == Some(right)).map(|r| r.path.as_str()).collect();
        paths.sort_unstable();
        paths
    };
    assert_eq!(of("Nothing"), ["/reading", "/s/{token}/choice", "/set-up", "/sign-in", "/sign-out"]);
    assert_eq!(of("Read"), ["/password", "/sums/{sum}"]);
    for path in of("Own") {
        assert!(path.starts_with("/people") || path.starts_with("/slab/{slab}/links"), "{path}");
    }
    assert!(of("Write").len() >= 8);
}

#[test]
fn strangers_may_look_only_at_these() {
    for route in routes().iter().filter(|r| r.page.as_deref() == Some("Nothing")) {
        let path = route.path.as_str();
        assert!(path.starts_with("/s/{token}") || ["/set-up", "/sign-in", "/offline"].contains(&path), "{path}");
    }
}
