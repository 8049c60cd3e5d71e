//! The server's log: what a line holds is what `docs/logging.md` says, and nothing that belongs to anybody.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::process::{Child, Stdio};
use std::thread::JoinHandle;

use common::{Site, repository};
use serde_json::Value;

const DOC: &str = include_str!("../../../docs/logging.md");

/// A server, and what it writes.
struct Served {
    child: Child,
    port: u16,
    /// Read all the time, so that a full pipe does not stop the server.
    log: Option<JoinHandle<String>>,
}

/// An answer: status, and headers in small letters.
struct Got {
    status: u16,
    headers: BTreeMap<String, String>,
}

impl Served {
    fn start(site: &Site, rest: &[&str]) -> Self {
        let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
        let address = format!("127.0.0.1:{port}");
        let mut command = site.command(&[&["serve", "--addr", &address][..], rest].concat());
        let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let mut err = child.stderr.take().unwrap();
        let log = std::thread::spawn(move || {
            let mut log = String::new();
            err.read_to_string(&mut log).unwrap();
            log
        });
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut said = String::new();
        while !said.contains("Ctrl") {
            assert_ne!(out.read_line(&mut said).unwrap(), 0, "it ended at once: {said}");
        }
        Self { child, port, log: Some(log) }
    }

    /// Sends a request just as it is written here.
    fn send(&self, head: &str, body: &[u8]) -> Got {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        let length = body.len();
        let port = self.port;
        write!(stream, "{head}\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\nContent-Length: {length}\r\n\r\n")
            .unwrap();
        stream.write_all(body).unwrap();
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes).unwrap();
        let text = String::from_utf8_lossy(&bytes);
        let mut lines = text.split("\r\n\r\n").next().unwrap().lines();
        let status = lines.next().unwrap().split(' ').nth(1).unwrap().parse().unwrap();
        let headers = lines.filter_map(|line| line.split_once(": "));
        Got { status, headers: headers.map(|(name, value)| (name.to_lowercase(), value.to_owned())).collect() }
    }

    fn get(&self, path: &str) -> Got {
        self.send(&format!("GET {path} HTTP/1.1"), b"")
    }

    /// Stops it; all that it wrote to standard error. A line is written before its answer is sent.
    fn stop(mut self) -> String {
        self.child.kill().unwrap();
        self.child.wait().unwrap();
        self.log.take().unwrap().join().unwrap()
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The log as JSON.
fn json(log: &str) -> Vec<Value> {
    log.lines().map(|line| serde_json::from_str(line).unwrap_or_else(|e| panic!("{e}: {line}"))).collect()
}

/// Level and fields of each message, as the page of the log has them.
fn documented() -> BTreeMap<String, (String, Vec<String>)> {
    let table = DOC.split("## Lines").nth(1).unwrap().split("\n\n").nth(1).unwrap();
    let rows = table.lines().skip(2).map(|row| row.split('|').map(str::trim).collect::<Vec<_>>());
    let codes = |cell: &str| cell.split('`').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>();
    rows.map(|cells| (codes(cells[1]).remove(0), (cells[2].to_owned(), codes(cells[3])))).collect()
}

/// Stops unless every line has the level and exactly the fields that are documented for its message.
#[track_caller]
fn assert_as_documented(lines: &[Value]) {
    let documented = documented();
    for line in lines {
        let message = line["message"].as_str().unwrap();
        let (level, fields) = documented.get(message).unwrap_or_else(|| panic!("{message} is not documented"));
        assert_eq!(line["level"], level.as_str(), "{line}");
        let mut wanted: Vec<&str> =
            fields.iter().map(String::as_str).chain(["timestamp", "level", "message"]).collect();
        let mut there: Vec<&str> = line.as_object().unwrap().keys().map(String::as_str).collect();
        wanted.sort_unstable();
        there.sort_unstable();
        assert_eq!(there, wanted, "{line}");
        for field in there {
            assert!(DOC.contains(&format!("| `{field}` |")), "{field} has no row of its own");
            let number = matches!(field, "status" | "ms");
            assert_eq!((line[field].is_u64(), line[field].is_string()), (number, !number), "{field} of {line}");
        }
        let at: jiff::Timestamp = line["timestamp"].as_str().unwrap().parse().unwrap();
        assert!(at > jiff::Timestamp::UNIX_EPOCH);
    }
}

#[test]
fn each_request_is_one_line_with_the_documented_fields() {
    let site = Site::with_slab();
    let slab = site.run(&["list", "--json"]).ends(0).json()[0]["id"].as_str().unwrap().to_owned();
    let served = Served::start(&site, &["--log-format", "json"]);
    let diary = format!("/slab/{slab}/diary");
    let asked = [("/", 200, "/"), (diary.as_str(), 200, "/slab/{slab}/diary"), ("/no/such", 404, "none")];
    let ids: Vec<String> = asked
        .iter()
        .map(|(path, status, _)| {
            let got = served.get(path);
            assert_eq!(got.status, *status, "{path}");
            got.headers["x-request-id"].clone()
        })
        .collect();
    let log = served.stop();
    let lines = json(&log);
    assert_as_documented(&lines);
    assert_eq!(lines[0]["message"], "listening");
    let requests: Vec<&Value> = lines.iter().filter(|line| line["message"] == "request").collect();
    assert_eq!(requests.len(), asked.len(), "{log}");
    for ((line, (_, status, route)), id) in requests.into_iter().zip(asked).zip(&ids) {
        assert_eq!((&line["method"], &line["status"]), (&"GET".into(), &status.into()), "{line}");
        assert_eq!((&line["route"], &line["request_id"]), (&route.into(), &id.as_str().into()), "{line}");
    }
    assert!(!log.contains(&slab) && !log.contains("such"), "{log}");
}

#[test]
fn what_was_sent_leaves_nothing_in_the_log() {
    for format in ["json", "text"] {
        let site = Site::with_slab();
        let more = ["--public", "https://slabs.example.org", "--log-level", "debug", "--log-format", format];
        let served = Served::start(&site, &more);
        let own = "0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10";
        let heads = [
            "GET /s/zirconium HTTP/1.1".to_owned(),
            "GET /s/zirconium/plan?q=zirconium HTTP/1.1".to_owned(),
            "GET /slab/zirconium/diary HTTP/1.1".to_owned(),
            "GET /zirconium/%7Azirconium HTTP/1.1".to_owned(),
            "ZIRCONIUM / HTTP/1.1".to_owned(),
            format!(
                "GET /?name=zirconium HTTP/1.1\r\nCookie: session=zirconium; lang=zirconium\r\nX-Request-Id: {own}"
            ),
            "GET /sign-in HTTP/1.1\r\nUser-Agent: zirconium\r\nReferer: /zirconium\r\nX-Forwarded-For: 198.51.100.7"
                .to_owned(),
        ];
        for head in &heads {
            let got = served.send(head, b"");
            assert_ne!(got.headers["x-request-id"], own, "{head}");
        }
        let form = "Content-Type: application/x-www-form-urlencoded\r\nOrigin: https://slabs.example.org";
        for path in ["/sign-in", "/set-up"] {
            let head = format!("POST {path} HTTP/1.1\r\n{form}");
            served.send(&head, b"name=zirconium&password=zirconium&code=zirconium");
        }
        // Until a try must wait.
        let tries: Vec<u16> = (0..8)
            .map(|_| served.send(&format!("POST /sign-in HTTP/1.1\r\n{form}"), b"name=zirconium&password=no").status)
            .collect();
        let log = served.stop();
        assert!(log.lines().count() > heads.len() + tries.len(), "{log}");
        let small = log.to_lowercase();
        for never in ["zirconium", "198.51.100.7", "127.0.0.1", "creek", own, "the crew", "?", "%7a"] {
            assert!(!small.contains(never), "{never} in {log}");
        }
        let folder = site.path("").display().to_string();
        assert!(!log.contains(folder.trim_end_matches('/')), "{folder} in {log}");
        for there in ["/s/{token}", "other", "no owner yet"] {
            assert!(log.contains(there), "{there} is not in {log}");
        }
        if format == "json" {
            assert_as_documented(&json(&log));
        }
    }
}

/// A photograph sent with a form.
fn photograph() -> Vec<u8> {
    let mut body =
        b"--edge\r\nContent-Disposition: form-data; name=\"photographs\"; filename=\"zirconium.jpg\"\r\n\r\n".to_vec();
    body.extend(std::fs::read(repository("demo/photographs/panel-1.jpg")).unwrap());
    body.extend(b"\r\n--edge--\r\n");
    body
}

/// Sends it where the store has no room for it.
fn fault(site: &Site, served: &Served) -> Got {
    let slab = site.run(&["list", "--json"]).ends(0).json()[0]["id"].as_str().unwrap().to_owned();
    let photographs = site.path("data/photographs");
    std::fs::remove_dir_all(&photographs).unwrap();
    std::fs::write(&photographs, "not a folder").unwrap();
    let head =
        format!("POST /slab/{slab}/add/slab_photograph HTTP/1.1\r\nContent-Type: multipart/form-data; boundary=edge");
    served.send(&head, &photograph())
}

#[test]
fn a_fault_is_an_error_with_its_cause_and_the_id_of_the_answer() {
    let site = Site::with_slab();
    let served = Served::start(&site, &["--log-format", "json"]);
    let got = fault(&site, &served);
    assert_eq!(got.status, 500);
    let log = served.stop();
    let lines = json(&log);
    assert_as_documented(&lines);
    let faults: Vec<&Value> = lines.iter().filter(|line| line["level"] == "ERROR").collect();
    assert_eq!(faults.len(), 1, "{log}");
    assert_eq!((&faults[0]["message"], &faults[0]["doing"]), (&"fault".into(), &"answering a request".into()));
    assert_eq!(faults[0]["request_id"], got.headers["x-request-id"].as_str());
    let cause = faults[0]["cause"].as_str().unwrap();
    assert!(cause.contains(": ") && cause.contains("os error"), "{cause}");
    let request = lines.last().unwrap();
    assert_eq!((&request["message"], &request["status"]), (&"request".into(), &500.into()));
    assert_eq!(request["request_id"], faults[0]["request_id"]);
    for never in ["zirconium", "photographs/", &site.path("data").display().to_string()] {
        assert!(!log.contains(never), "{never} in {log}");
    }
}

#[test]
fn each_level_has_the_lines_of_those_above_it() {
    let told = |level: &str| {
        let site = Site::with_slab();
        let served = Served::start(&site, &["--log-format", "json", "--log-level", level]);
        assert_eq!(fault(&site, &served).status, 500);
        assert_eq!(served.get("/nothing-here").status, 404);
        let log = served.stop();
        json(&log).iter().map(|line| line["message"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(told("off"), [""; 0]);
    assert_eq!(told("error"), ["fault"]);
    assert_eq!(told("warn"), ["fault"]);
    assert_eq!(told("info"), ["listening", "fault", "request", "request"]);
    assert_eq!(told("debug"), ["listening", "fault", "refused", "request", "refused", "request"]);
}

#[test]
fn a_warning_says_that_the_pages_can_be_read_on_the_way() {
    let site = Site::empty();
    // Every address of this machine, so that people sign in.
    let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
    let served = Served::start(&site, &["--log-level", "warn", "--log-format", "json"]);
    assert_eq!(served.stop(), "", "nobody but this machine can listen");
    let mut command = site.command(&["serve", "--addr", &format!("0.0.0.0:{port}"), "--log-level", "warn"]);
    let mut child = command.stdout(Stdio::null()).stderr(Stdio::piped()).spawn().unwrap();
    let mut line = String::new();
    BufReader::new(child.stderr.take().unwrap()).read_line(&mut line).unwrap();
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(line.trim_end().ends_with("WARN the pages are not encrypted on the way"), "{line}");
}

#[test]
fn text_is_for_reading() {
    let site = Site::empty();
    let served = Served::start(&site, &[]);
    let id = served.get("/").headers["x-request-id"].clone();
    let log = served.stop();
    let line = log.lines().last().unwrap();
    let (_, said) = line.split_once("INFO ").unwrap();
    assert!(said.starts_with(&format!("request request_id={id} method=GET route=/ status=200 ms=")), "{line}");
    assert!(!log.contains('\u{1b}'), "no colors in a file");
}

#[test]
fn an_unknown_level_or_format_is_refused_with_what_is_accepted() {
    let site = Site::empty();
    for (option, accepted) in
        [("--log-level", &["off", "error", "warn", "info", "debug"][..]), ("--log-format", &["text", "json"])]
    {
        let ran = site.run(&["serve", option, "loud"]).ends(2);
        assert!(ran.err.contains("loud") && ran.err.contains(option), "{}", ran.err);
        for word in accepted {
            assert!(ran.err.contains(word), "{word}: {}", ran.err);
        }
    }
}

#[test]
fn a_log_that_nobody_takes_any_more_does_not_stop_the_server() {
    let site = Site::empty();
    let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
    let mut command = site.command(&["serve", "--addr", &format!("127.0.0.1:{port}")]);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stderr.take());
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut said = String::new();
    while !said.contains("Ctrl") && out.read_line(&mut said).unwrap() > 0 {}
    let served = Served { child, port, log: None };
    for _ in 0..3 {
        assert_eq!(served.get("/").status, 200);
    }
}

#[cfg(unix)]
#[test]
fn a_server_that_is_asked_to_stop_says_so() {
    let site = Site::empty();
    let mut served = Served::start(&site, &["--log-format", "json"]);
    // Its answer means that it waits for being asked.
    served.get("/");
    let stop = format!("kill -TERM {}", served.child.id());
    let asked = std::process::Command::new("sh").args(["-c", &stop]).status().unwrap();
    assert!(asked.success());
    assert!(served.child.wait().unwrap().success());
    let lines = json(&served.log.take().unwrap().join().unwrap());
    assert_as_documented(&lines);
    assert_eq!(lines.last().unwrap()["message"], "stopped");
}
