//! Which pages there are: found by following every link, as a person could.

use std::collections::{BTreeMap, VecDeque};

use serde_json::Value;

use crate::server::Server;
use crate::tab::Tab;

/// In place of an id in a [`pattern`].
pub const HIDDEN_ID: &str = "*";

/// Links of the page that lead to pages of ours, in their order.
const LINKS: &str = r#"[...document.querySelectorAll("a[href]")]
  .map((link) => new URL(link.href))
  .filter((url) => url.origin === location.origin && !link_is_file(url.pathname))
  .map((url) => url.pathname + url.search)"#;

/// The address with ids, names and numbers hidden: pages of one pattern look alike.
pub fn pattern(address: &str) -> String {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let told_apart = path.contains("/diary") || path.starts_with("/sums/") || path == "/";
    let shown: Vec<&str> = path.split('/').map(|part| if is_id(part) { HIDDEN_ID } else { part }).collect();
    let names: Vec<&str> =
        query.split('&').filter_map(|pair| pair.split('=').next()).filter(|n| !n.is_empty()).collect();
    match told_apart && !names.is_empty() {
        true => format!("{}?{}", shown.join("/"), names.join("&")),
        false => shown.join("/"),
    }
}

fn is_id(part: &str) -> bool {
    part.len() >= 32 && part.chars().all(|c| c.is_ascii_hexdigit() || c == '-')
}

/// Follows every link from these addresses and gives one address for each pattern, each looked at by
/// `look`. A page may be left out by `skip`, which sees its pattern.
pub fn crawl(
    tab: &Tab,
    server: &Server,
    from: &[String],
    skip: fn(&str) -> bool,
    mut look: impl FnMut(&Tab, &str),
) -> BTreeMap<String, String> {
    let mut known: BTreeMap<String, String> = BTreeMap::new();
    let mut waiting: VecDeque<String> = VecDeque::new();
    let mut meet = |address: String, waiting: &mut VecDeque<String>| {
        let pattern = pattern(&address);
        if !skip(&pattern) && !known.contains_key(&pattern) {
            known.insert(pattern, address.clone());
            waiting.push_back(address);
        }
    };
    for address in from {
        meet(address.clone(), &mut waiting);
    }
    let links = format!(
        "(() => {{ const link_is_file = (path) => /\\.(pdf|ics|csv|json|jsonl|svg|png|jpg|webmanifest)$|\\/photo\\/[0-9a-f]{{64}}|\\/entry\\/[^/]+\\/map$/.test(path); return {LINKS}; }})()"
    );
    while let Some(address) = waiting.pop_front() {
        tab.go(server, &address);
        for link in tab.eval(&links).as_array().into_iter().flatten().filter_map(Value::as_str) {
            meet(link.to_owned(), &mut waiting);
        }
        look(tab, &address);
    }
    known
}

/// Opens every fold of the page, so that what lies in them is looked at too.
pub fn with_folds_open(tab: &Tab) {
    tab.eval("document.querySelectorAll('details').forEach((fold) => { fold.open = true; })");
}
