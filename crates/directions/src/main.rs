//! Checks mechanically what ARCHITECTURE.md promises: crates depend downward only, the core stays
//! free of input, output and clocks by not depending on crates that bring them, and the map names
//! no crate that is gone.

use std::collections::BTreeMap;
use std::process::{Command, ExitCode};

use serde_json::Value;

/// Height of each crate; a crate may depend only on lower ones.
const HEIGHTS: &[(&str, u32)] = &[
    ("units", 0),
    ("science", 1),
    ("trade-facts", 2),
    ("weather-series", 2),
    ("slab-plan", 3),
    ("form-schema", 3),
    ("photo", 2),
    ("slab-diary", 4),
    ("drawings", 4),
    ("slab-answers", 5),
    ("store", 5),
    ("diary-photographs", 5),
    ("localization", 6),
    ("diary-writer", 6),
    ("pictures", 7),
    ("calculators", 7),
    ("papers", 7),
    ("web", 8),
    ("underfoot", 9),
    ("benches", 10),
    ("browser-tests", 11),
    ("directions", 12),
];

/// Crates of the core, and what they must not depend on directly: these bring files, clocks,
/// sockets or the operating system's randomness.
const CORE: &[&str] =
    &["units", "science", "trade-facts", "weather-series", "slab-plan", "form-schema", "slab-diary", "slab-answers"];
const NOT_IN_CORE: &[&str] =
    &["rusqlite", "tokio", "axum", "typst", "getrandom", "rand", "chrono", "tempfile", "image"];

fn main() -> ExitCode {
    match check() {
        Ok(count) => {
            println!("{count} crates depend downward only");
            ExitCode::SUCCESS
        }
        Err(problem) => {
            eprintln!("{problem}");
            ExitCode::FAILURE
        }
    }
}

fn check() -> Result<usize, String> {
    let output = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version", "1", "--no-deps", "--offline"])
        .output()
        .map_err(|e| format!("cargo metadata cannot run: {e}"))?;
    let metadata: Value = serde_json::from_slice(&output.stdout).map_err(|e| format!("cargo metadata: {e}"))?;
    let heights: BTreeMap<&str, u32> = HEIGHTS.iter().copied().collect();
    let packages = metadata["packages"].as_array().ok_or("cargo metadata lists no packages")?;
    let map = std::fs::read_to_string("ARCHITECTURE.md").map_err(|e| format!("ARCHITECTURE.md: {e}"))?;
    for package in packages {
        let name = package["name"].as_str().unwrap_or_default();
        let own = heights.get(name).ok_or(format!("crate {name} has no height in crates/directions/src/main.rs"))?;
        if !map.contains(&format!("`{name}`")) {
            return Err(format!("ARCHITECTURE.md does not name the crate `{name}`"));
        }
        for dependency in package["dependencies"].as_array().into_iter().flatten() {
            let on = dependency["name"].as_str().unwrap_or_default();
            let kind = dependency["kind"].as_str();
            if dependency["path"].is_string()
                && let Some(other) = heights.get(on)
                && other >= own
            {
                return Err(format!("{name} depends on {on}, which is not below it"));
            }
            if kind.is_none() && CORE.contains(&name) && NOT_IN_CORE.contains(&on) {
                return Err(format!("{name} is core and must not depend on {on}"));
            }
        }
    }
    for line in map.lines().filter(|l| l.starts_with("| `")) {
        let name = line.split('`').nth(1).unwrap_or_default();
        if !packages.iter().any(|p| p["name"].as_str() == Some(name)) {
            return Err(format!("ARCHITECTURE.md names the crate `{name}`, which is gone"));
        }
    }
    Ok(packages.len())
}
