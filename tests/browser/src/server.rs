//! The real binary on a data folder of its own: as a command, and as a server that can be killed.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};
use std::sync::OnceLock;

use serde_json::Value;
use tempfile::TempDir;

/// The moment at which the clock of the pages stands.
pub const CLOCK: &str = "2025-05-20T10:00:00-05:00";

/// A whole diary: a slab in Chicago with a drawn plan of two zones, a pour and a finish. Last year's,
/// so that no machine's clock is behind it.
pub const BASE: &str = r#"
{"happened":"2025-03-01 09:00","body":{"kind":"job_opened","name":"Creek Road shop","exposure":"interior","age":"new","time_zone":"America/Chicago","drying_sides":1}}
{"happened":"2025-03-03 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},{"name":"office"}]}}
{"happened":"2025-03-03 07:00","body":{"kind":"pour","mix":"4021","thickness":"4 in"}}
{"happened":"2025-03-03 12:00","body":{"kind":"finish","finish":"light-steel-trowel"}}
"#;

/// A file of the repository.
pub fn repository(file: &str) -> PathBuf {
    // Without "..", through which a browser reads no file.
    Path::new(env!("CARGO_MANIFEST_DIR")).ancestors().nth(2).expect("tests/browser lies in the repository").join(file)
}

/// The binary: `UNDERFOOT_BIN`, else the one cargo has just brought up to date.
fn binary() -> &'static Path {
    static BINARY: OnceLock<PathBuf> = OnceLock::new();
    BINARY.get_or_init(|| {
        if let Some(given) = std::env::var_os("UNDERFOOT_BIN") {
            return PathBuf::from(given);
        }
        let mut build = Command::new(env!("CARGO"));
        build.args(["build", "-p", "underfoot"]).current_dir(repository(""));
        let built = build.status().expect("cargo runs");
        assert!(built.success(), "cargo build -p underfoot failed; set UNDERFOOT_BIN to use another binary");
        // This test lies in target/debug/deps.
        let test = std::env::current_exe().expect("a test knows where it lies");
        let path = test.ancestors().nth(2).expect("target/debug").join("underfoot");
        assert!(path.exists(), "{} is not there; set UNDERFOOT_BIN", path.display());
        path
    })
}

/// How a command ended.
#[derive(Debug)]
pub struct Ran {
    /// What it wrote to standard output.
    pub out: String,
    err: String,
    code: Option<i32>,
}

impl Ran {
    fn of(output: &Output) -> Self {
        let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
        Self { out: text(&output.stdout), err: text(&output.stderr), code: output.status.code() }
    }

    /// Stops unless it ended well: fine, or with the answer "no".
    #[track_caller]
    pub fn fine(self) -> Self {
        assert!(matches!(self.code, Some(0 | 1)), "{:?}\n{}\n{}", self.code, self.out, self.err);
        self
    }
}

/// A data folder.
#[derive(Debug)]
pub struct Site {
    folder: TempDir,
}

impl Site {
    /// No slab yet.
    pub fn empty() -> Self {
        Self { folder: tempfile::tempdir().unwrap() }
    }

    /// One slab, opened and written by [`BASE`].
    pub fn with_slab() -> Self {
        let site = Self::empty();
        site.log(BASE);
        site
    }

    /// A path in the folder.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(binary());
        command
            .arg("--data")
            .arg(self.path("data"))
            .args(["--author", "the crew"])
            .args(args)
            .current_dir(self.folder.path())
            .env_remove("UNDERFOOT_DATA")
            .env("HOME", self.folder.path())
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped());
        command
    }

    /// Runs a command on the data.
    pub fn run(&self, args: &[&str]) -> Ran {
        Ran::of(&self.command(args).output().expect("the binary runs"))
    }

    /// Writes entries, one JSON line each.
    #[track_caller]
    pub fn log(&self, lines: &str) {
        let mut child =
            self.command(&["log", "--slab", "Creek Road shop", "--from", "-"]).stdin(Stdio::piped()).spawn().unwrap();
        child.stdin.take().unwrap().write_all(lines.as_bytes()).unwrap();
        Ran::of(&child.wait_with_output().unwrap()).fine();
    }

    /// The entries of the one slab, corrected ones too.
    pub fn diary(&self) -> Vec<Value> {
        let told = self.run(&["diary", "--all", "--json"]).fine();
        told.out.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
    }

    /// How many entries of a kind the diary has.
    pub fn count(&self, kind: &str) -> usize {
        self.diary().iter().filter(|entry| entry["body"]["kind"] == kind).count()
    }

    /// The id of the one slab.
    pub fn slab(&self) -> String {
        let listed: Value = serde_json::from_str(&self.run(&["list", "--json"]).fine().out).unwrap();
        listed[0]["id"].as_str().expect("a slab has an id").to_owned()
    }

    /// How many photographs the store holds.
    pub fn photographs(&self) -> usize {
        fn files(folder: &Path) -> usize {
            let Ok(there) = std::fs::read_dir(folder) else { return 0 };
            there.filter_map(Result::ok).map(|e| if e.path().is_dir() { files(&e.path()) } else { 1 }).sum()
        }
        files(&self.path("data/photographs"))
    }

    /// Serves the pages at a free port, with the clock standing at [`CLOCK`].
    pub fn serve(&self) -> Server {
        self.serve_at(free_port(), &["--clock", CLOCK])
    }

    /// Serves the pages at this port, to this machine only.
    pub fn serve_at(&self, port: u16, rest: &[&str]) -> Server {
        self.serve_on(&format!("127.0.0.1:{port}"), rest)
    }

    /// Serves the pages at this address and port.
    pub fn serve_on(&self, address: &str, rest: &[&str]) -> Server {
        let port = address.rsplit(':').next().and_then(|port| port.parse().ok()).expect("an address has a port");
        let mut args = vec!["serve", "--addr", address];
        args.extend(rest);
        let mut child = self.command(&args).spawn().expect("the binary runs");
        let mut out = BufReader::new(child.stdout.take().unwrap());
        // The log goes on for as long as the server runs: it is taken from the beginning, so that no full pipe
        // stops the server.
        let mut err = child.stderr.take().unwrap();
        let log = std::thread::spawn(move || {
            let mut log = Vec::new();
            let _ = err.read_to_end(&mut log);
            String::from_utf8_lossy(&log).into_owned()
        });
        // It binds its port before it says where it serves; the last line before it answers is how to
        // stop it.
        let mut said = String::new();
        while !said.contains("Ctrl") {
            let mut line = String::new();
            if out.read_line(&mut line).unwrap() == 0 {
                panic!("the server ended at once: {said}{}", log.join().unwrap());
            }
            said.push_str(&line);
        }
        // Nobody reads on; a server that says more must not stop at a full pipe.
        std::thread::spawn(move || std::io::copy(&mut out, &mut std::io::sink()));
        Server { child: Some(child), port, said }
    }
}

/// A port that nobody listens at just now.
pub fn free_port() -> u16 {
    TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port()
}

/// A server that runs until it is dropped.
#[derive(Debug)]
pub struct Server {
    child: Option<Child>,
    /// Where it listens.
    pub port: u16,
    /// What it said when it began.
    pub said: String,
}

impl Server {
    /// A server that is not there: the addresses of its pages, for a browser that has kept them.
    pub fn stopped_at(port: u16) -> Self {
        Self { child: None, port, said: String::new() }
    }

    /// The address of a page.
    pub fn url(&self, path: &str) -> String {
        format!("http://127.0.0.1:{}{path}", self.port)
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // Killed, not asked: what it said it kept must be kept already.
        if let Some(child) = &mut self.child {
            let _ = child.kill();
            let _ = child.wait();
        }
    }
}
