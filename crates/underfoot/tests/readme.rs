//! README and truth never part: what it shows as output is output, and what it names exists.

use std::path::Path;
use std::process::Command;

const README: &str = include_str!("../../../README.md");

fn shown() -> Vec<&'static str> {
    let block = README.split("```text").nth(1).and_then(|rest| rest.split("```").next()).expect("a block of output");
    block.lines().filter(|line| !line.trim().is_empty()).collect()
}

#[test]
fn every_line_of_output_in_the_readme_is_printed_by_the_demo() {
    let dir = tempfile::tempdir().expect("a folder");
    let output = Command::new(env!("CARGO_BIN_EXE_underfoot"))
        .args(["demo", "--dir"])
        .arg(dir.path())
        .output()
        .expect("the demo runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let printed = String::from_utf8(output.stdout).expect("text");
    let lines: Vec<&str> = printed.lines().collect();
    let shown = shown();
    assert!(shown.len() > 15, "the block shows the answer");
    for line in shown {
        assert!(lines.contains(&line), "the demo does not print: {line}");
    }
}

#[test]
fn every_file_the_readme_links_to_is_there() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let links: Vec<&str> = README.split("](").skip(1).filter_map(|rest| rest.split(')').next()).collect();
    assert!(links.len() >= 4);
    for link in links {
        assert!(root.join(link).exists(), "{link} is not there");
    }
}
