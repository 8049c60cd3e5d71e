//! Runs the real binary on a data folder of its own.

#![allow(dead_code, reason = "each test file uses its own share of these")]
#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use serde_json::Value;
use tempfile::TempDir;

/// A plan of two zones, a pour on 2 March 2026 and a finish: enough for every check to have something
/// to compare with.
pub(crate) const BASE: &str = r#"
{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},{"name":"office"}]}}
{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"4021","thickness":"4 in"}}
{"happened":"2026-03-02 12:00","body":{"kind":"finish","finish":"light-steel-trowel"}}
"#;

/// How a command ended.
pub(crate) struct Ran {
    pub(crate) code: i32,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Ran {
    fn of(output: &Output) -> Self {
        Self {
            code: output.status.code().expect("the program ended by itself"),
            out: String::from_utf8(output.stdout.clone()).expect("answers are UTF-8"),
            err: String::from_utf8(output.stderr.clone()).expect("messages are UTF-8"),
        }
    }

    /// The answer as JSON.
    pub(crate) fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|e| panic!("{e}: {}", self.out))
    }

    /// The answer as JSON Lines.
    pub(crate) fn json_lines(&self) -> Vec<Value> {
        self.out.lines().map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{e}: {line}"))).collect()
    }

    /// Stops unless it ended with this code.
    #[track_caller]
    pub(crate) fn ends(self, code: i32) -> Self {
        assert_eq!(self.code, code, "stdout: {}\nstderr: {}", self.out, self.err);
        self
    }
}

/// A folder with the diaries in `data`, from which the commands are run.
pub(crate) struct Site {
    folder: TempDir,
}

impl Site {
    /// No slab yet.
    pub(crate) fn empty() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    /// One slab in Chicago, with [`BASE`].
    pub(crate) fn with_slab() -> Self {
        let site = Self::empty();
        site.run(&["new", "Creek Road shop", "--time-zone", "America/Chicago"]).ends(0);
        site.log_lines(BASE).ends(0);
        site
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Writes a file and gives its path as text.
    pub(crate) fn file(&self, name: &str, bytes: impl AsRef<[u8]>) -> String {
        let path = self.path(name);
        std::fs::write(&path, bytes).unwrap();
        path.to_str().unwrap().to_owned()
    }

    pub(crate) fn command(&self, args: &[&str]) -> Command {
        self.command_on(self.path("data").to_str().unwrap(), args)
    }

    fn command_on(&self, data: &str, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_underfoot"));
        command
            .args(["--data", data])
            .args(args)
            .current_dir(self.folder.path())
            .env_remove("UNDERFOOT_DATA")
            .env("HOME", self.folder.path())
            .env("USER", "the crew")
            .stdin(Stdio::null());
        command
    }

    pub(crate) fn run(&self, args: &[&str]) -> Ran {
        Ran::of(&self.command(args).output().unwrap())
    }

    /// Runs on another data folder.
    pub(crate) fn run_on(&self, data: &str, args: &[&str]) -> Ran {
        Ran::of(&self.command_on(data, args).output().unwrap())
    }

    /// Runs with a text on standard input.
    pub(crate) fn run_with_input(&self, args: &[&str], input: &str) -> Ran {
        let mut command = self.command(args);
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        child.stdin.take().unwrap().write_all(input.as_bytes()).unwrap();
        Ran::of(&child.wait_with_output().unwrap())
    }

    /// Starts a command whose standard output nobody reads to its end.
    pub(crate) fn run_and_stop_reading(&self, args: &[&str]) -> String {
        let mut command = self.command(args);
        command.stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        drop(child.stdout.take());
        String::from_utf8(child.wait_with_output().unwrap().stderr).unwrap()
    }

    pub(crate) fn log_lines(&self, lines: &str) -> Ran {
        self.run_with_input(&["log", "--from", "-"], lines)
    }

    /// How many entries all diaries hold together.
    pub(crate) fn entries(&self) -> u64 {
        let listed = self.run(&["list", "--json"]).ends(0).json();
        listed.as_array().unwrap().iter().map(|slab| slab["entries"].as_u64().unwrap()).sum()
    }

    /// Ids of the entries of a kind, corrected ones too.
    pub(crate) fn ids(&self, kind: &str) -> Vec<String> {
        let told = self.run(&["diary", "--all", "--json", "--kind", kind]).ends(0).json_lines();
        told.iter().map(|entry| entry["id"].as_str().unwrap().to_owned()).collect()
    }

    /// How many photographs the store holds.
    pub(crate) fn photographs(&self) -> usize {
        std::fs::read_dir(self.path("data/photographs")).map_or(0, Iterator::count)
    }
}

/// A file of the repository.
pub(crate) fn repository(file: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(file)
}

/// The state of one hold point in the JSON of a standing.
pub(crate) fn state<'j>(standing: &'j Value, id: &str) -> &'j str {
    let points = standing["hold_points"].as_array().unwrap();
    points.iter().find(|point| point["id"] == id).unwrap()["state"].as_str().unwrap()
}

/// One refusal: nothing is written, nothing is answered, and one message on standard error holds all these parts:
/// the field, the value, and what would be accepted.
#[track_caller]
pub(crate) fn assert_refused(site: &Site, ran: Ran, before: (u64, usize), code: i32, says: &[&str]) {
    let ran = ran.ends(code);
    assert_eq!(ran.out, "", "a refusal answers nothing");
    assert_eq!(ran.err.matches("underfoot: ").count(), 1, "one message: {}", ran.err);
    assert!(ran.err.starts_with("underfoot: "), "{}", ran.err);
    for part in says {
        assert!(ran.err.contains(part), "\"{part}\" is not in: {}", ran.err);
    }
    assert_eq!((site.entries(), site.photographs()), before, "something was written: {}", ran.err);
}
