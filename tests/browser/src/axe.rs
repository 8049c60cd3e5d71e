//! axe-core, from its package: fetched for the tests, never shipped.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

use serde_json::Value;

use crate::server::repository;
use crate::tab::Tab;

/// The version whose rules the pages are held to.
pub const AXE: &str = include_str!("../axe-version").trim_ascii();

/// One thing that axe-core objects to.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fault {
    /// The rule.
    pub rule: String,
    /// Where in the page.
    pub selector: String,
    /// What it says.
    pub what: String,
}

/// The script: `AXE_JS`, else `.tools/axe/axe.min.js`, else fetched there.
fn script() -> &'static str {
    static SCRIPT: OnceLock<String> = OnceLock::new();
    SCRIPT.get_or_init(|| {
        let path = std::env::var_os("AXE_JS").map_or_else(|| repository(".tools/axe/axe.min.js"), PathBuf::from);
        if !path.exists() {
            fetch(&path);
        }
        let text = std::fs::read_to_string(&path).unwrap_or_else(|e| {
            panic!("axe-core {AXE} is not at {}: {e}; it is axe.min.js in the package axe-core", path.display())
        });
        assert!(text.contains(AXE), "{} is not axe-core {AXE}", path.display());
        text
    })
}

fn fetch(path: &Path) {
    // Whether it came is seen by reading it.
    let _ = Command::new(repository("tests/browser/ready-axe")).arg(path).status();
}

/// Everything axe-core objects to on the page; `rules` limits it to some rules, none means all of them.
pub fn axe_faults(tab: &Tab, rules: &[&str]) -> Vec<Fault> {
    if !tab.is("typeof axe === 'object'") {
        // Through the debugger, so the pages' own policy stays as strict as it is.
        tab.eval(&format!("{}; 0", script()));
    }
    let only = match rules {
        [] => String::new(),
        some => format!(", runOnly: {{ type: 'rule', values: {} }}", serde_json::json!(some)),
    };
    let run = format!(
        "axe.run(document, {{ resultTypes: ['violations']{only} }}).then((found) => found.violations.flatMap((v) => \
         v.nodes.map((n) => [v.id, n.target.join(' '), n.failureSummary])))"
    );
    let found = tab.eval(&run);
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let faults = found.as_array().expect("axe-core answers with a list").iter();
    faults.map(|f| Fault { rule: text(&f[0]), selector: text(&f[1]), what: text(&f[2]) }).collect()
}
