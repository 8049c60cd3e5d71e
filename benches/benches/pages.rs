//! The pages under load: 1,000 slabs with 100,000 entries, the slab list and slab pages asked 50 times a
//! second by people who do not wait for each other. Asked for: 99 of 100 within 50 ms on two cores,
//! ready within 0.3 s of the start, under 120 MB afterwards.
//!
//! `cargo bench -p benches --bench pages` runs the release binary itself, so that it measures what a
//! person runs: `cargo build --release` first.

#![expect(clippy::disallowed_methods, reason = "a benchmark reads the clock")]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;
use std::time::{Duration, Instant};

use jiff::tz::TimeZone;
use slab_diary::{Context, SlabId, read_lines};
use store::Store;

const SLABS: usize = 1_000;
const EACH: usize = 100;
const PER_SECOND: u64 = 50;
const SECONDS: u64 = 60;
/// Ways in at once: as many phones.
const WAYS: usize = 8;

fn main() {
    let binary = binary();
    let dir = tempfile::tempdir().expect("a folder");
    let started = Instant::now();
    fill(dir.path());
    println!("{SLABS} slabs with {} entries written in {:.1?}", SLABS * EACH, started.elapsed());
    let address = free();
    let (mut server, ready) = start(&binary, dir.path(), address);
    println!("first answer {ready:.0?} after the start");
    let list: Vec<String> = ids().map(|id| format!("/slab/{id}")).collect();
    let paths: Vec<String> = (0..PER_SECOND * SECONDS)
        .map(|n| match n % 2 {
            0 => "/".to_owned(),
            // A step that meets every slab before it meets one twice.
            _ => list[(n as usize * 389) % list.len()].clone(),
        })
        .collect();
    let taken = load(address, &paths);
    for (name, which) in [("slab list", 0), ("slab page", 1)] {
        let mut some: Vec<Duration> = taken.iter().filter(|(n, _)| n % 2 == which).map(|(_, t)| *t).collect();
        some.sort_unstable();
        let at = |share: f64| some[((some.len() - 1) as f64 * share) as usize];
        println!(
            "{name}: {} asked, half within {:.1?}, 99 of 100 within {:.1?}, all within {:.1?}",
            some.len(),
            at(0.5),
            at(0.99),
            at(1.0)
        );
    }
    println!("memory afterwards {} MB, at its most {} MB", memory(&server, "VmRSS"), memory(&server, "VmHWM"));
    let _ = server.kill();
    let _ = server.wait();
}

/// The release binary beside this bench's own folder, or the one that is named.
fn binary() -> PathBuf {
    let named = std::env::args().skip(1).find(|argument| !argument.starts_with('-'));
    let own = std::env::current_exe().expect("a running program has a path");
    let beside = own.parent().and_then(Path::parent).map(|folder| folder.join("underfoot"));
    let path = named.map(PathBuf::from).or(beside).expect("a path");
    assert!(path.exists(), "{} is not there: cargo build --release first", path.display());
    path
}

fn ids() -> impl Iterator<Item = SlabId> {
    (0..SLABS).map(|n| SlabId::of_name(&format!("load {n}")))
}

fn fill(dir: &Path) {
    let store = Store::open(dir).expect("a store");
    for (n, id) in ids().enumerate() {
        store.create_slab(id, &format!("Floor {n:04}")).expect("a slab");
        let context = Context {
            slab: id,
            zone: TimeZone::UTC,
            author: "load".to_owned(),
            device: "load".to_owned(),
            noted: None,
        };
        store.append(id, &read_lines(&diary(n), &context).expect("a diary")).expect("appended");
    }
}

/// A diary of a hundred entries: job, plan, pour, cure, and then tests over two zones.
fn diary(n: usize) -> String {
    let mut text = String::from(concat!(
        r#"{"happened":"2026-03-02 06:00","body":{"kind":"job_opened","name":"Floor","exposure":"interior","age":"new","time_zone":"America/Chicago"}}"#,
        "\n",
        r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},{"name":"office"}]}}"#,
        "\n",
        r#"{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"4021","thickness":"4 in","water_cement":"0.48"}}"#,
        "\n",
        r#"{"happened":"2026-03-09 08:00","body":{"kind":"cured"}}"#,
        "\n",
    ));
    for entry in 4..EACH {
        let (day, x, y) = (10 + entry % 20, (entry * 7 + n) % 40, (entry * 5) % 30);
        let seconds = 20 + (entry * 13 + n) % 100;
        text += &format!(
            "{{\"happened\":\"2026-03-{day:02} {:02}:{:02}\",\"place\":{{\"point\":[\"{x} ft\",\"{y} ft\"]}},\"body\":{{\"kind\":\"water_drop\",\"soaked_in\":\"{seconds} s\"}}}}\n",
            7 + entry % 10,
            entry % 60
        );
    }
    text
}

fn free() -> SocketAddr {
    TcpListener::bind("127.0.0.1:0").and_then(|l| l.local_addr()).expect("a free port")
}

/// Starts the server and waits for its first answer.
fn start(binary: &Path, dir: &Path, address: SocketAddr) -> (Child, Duration) {
    let started = Instant::now();
    let mut server = Command::new(binary)
        .args(["--data", &dir.display().to_string(), "serve", "--addr", &address.to_string()])
        .args(["--clock", "2026-04-02T12:00Z"])
        .stdout(Stdio::null())
        // Its log is written, as when it serves people, but not between the figures here.
        .stderr(Stdio::null())
        .spawn()
        .expect("the server starts");
    while started.elapsed() < Duration::from_secs(10) {
        if let Ok(mut stream) = TcpStream::connect(address)
            && ask(&mut stream, address, "/").is_some()
        {
            return (server, started.elapsed());
        }
        std::thread::sleep(Duration::from_millis(2));
    }
    let _ = server.kill();
    let _ = server.wait();
    panic!("the server did not answer within 10 s");
}

/// Asks on an open connection and reads the whole answer; nothing when it is not 200.
fn ask(stream: &mut TcpStream, address: SocketAddr, path: &str) -> Option<usize> {
    write!(stream, "GET {path} HTTP/1.1\r\nHost: {address}\r\nAccept-Encoding: gzip\r\n\r\n").ok()?;
    let mut reader = BufReader::new(stream.try_clone().ok()?);
    let mut line = String::new();
    reader.read_line(&mut line).ok()?;
    let fine = line.contains(" 200 ");
    let (mut length, mut chunked) = (0_usize, false);
    loop {
        line.clear();
        reader.read_line(&mut line).ok()?;
        let head = line.trim().to_ascii_lowercase();
        if head.is_empty() {
            break;
        }
        if let Some(value) = head.strip_prefix("content-length: ") {
            length = value.parse().ok()?;
        }
        chunked |= head == "transfer-encoding: chunked";
    }
    if chunked {
        length = 0;
        loop {
            line.clear();
            reader.read_line(&mut line).ok()?;
            let size = usize::from_str_radix(line.trim(), 16).ok()?;
            let mut body = vec![0; size + 2];
            reader.read_exact(&mut body).ok()?;
            length += size;
            if size == 0 {
                break;
            }
        }
    } else {
        let mut body = vec![0; length];
        reader.read_exact(&mut body).ok()?;
    }
    fine.then_some(length)
}

/// Asks each path at its own moment, whether the ones before were answered or not: a slow answer makes
/// those behind it wait, and that wait is counted.
fn load(address: SocketAddr, paths: &[String]) -> Vec<(u64, Duration)> {
    let (sender, receiver) = mpsc::channel();
    let begin = Instant::now() + Duration::from_millis(100);
    std::thread::scope(|scope| {
        for way in 0..WAYS {
            let sender = sender.clone();
            scope.spawn(move || {
                let mut stream = TcpStream::connect(address).expect("a connection");
                stream.set_nodelay(true).expect("a plain socket");
                for (n, path) in paths.iter().enumerate().skip(way).step_by(WAYS) {
                    let due = begin + Duration::from_millis(n as u64 * 1000 / PER_SECOND);
                    std::thread::sleep(due.saturating_duration_since(Instant::now()));
                    ask(&mut stream, address, path).unwrap_or_else(|| panic!("{path} was not answered with 200"));
                    sender.send((n as u64, due.elapsed())).expect("the receiver waits");
                }
            });
        }
    });
    drop(sender);
    receiver.into_iter().collect()
}

/// A figure of the process in MB, where the system tells it.
fn memory(server: &Child, name: &str) -> String {
    let status = std::fs::read_to_string(format!("/proc/{}/status", server.id())).unwrap_or_default();
    let kilobytes = status
        .lines()
        .find_map(|line| line.strip_prefix(name)?.strip_prefix(':')?.trim().split(' ').next()?.parse::<f64>().ok());
    kilobytes.map_or_else(|| "?".to_owned(), |kb| format!("{:.0}", kb / 1024.0))
}
