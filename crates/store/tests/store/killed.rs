//! A program that is killed while it writes: what it acknowledged is there, and nothing half done.

use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};

use slab_diary::SlabId;
use store::Store;

use crate::common::{notes, store_with_slab};

const FOLDER: &str = "STORE_TEST_FOLDER";
const BATCH: usize = 40;

/// Run by the test below in a process of its own: writes until it is killed.
#[test]
#[ignore = "the victim of the test below"]
#[expect(clippy::disallowed_methods, reason = "the test runner passes no arguments on")]
fn victim() {
    let Ok(folder) = std::env::var(FOLDER) else { return };
    let store = Store::open(Path::new(&folder)).expect("it opens");
    let slab = SlabId::of_name("shop");
    for batch in 0.. {
        let photograph = store.put_photograph(&vec![1; 10_000 + batch]).expect("kept");
        let mut entries = notes(slab, batch * BATCH, (batch + 1) * BATCH);
        entries[0].photographs.push(photograph);
        store.append(slab, &entries).expect("added");
        // The standard output belongs to the test runner.
        writeln!(std::io::stderr(), "acknowledged {batch}").expect("the parent listens");
    }
}

#[test]
fn what_was_acknowledged_survives_and_nothing_is_half_done() {
    for acknowledged_before in [1, 4, 9] {
        let (dir, store, slab) = store_with_slab();
        drop(store);
        let mut victim = Command::new(std::env::current_exe().expect("this program"))
            .args(["--exact", "killed::victim", "--ignored", "--nocapture"])
            .env(FOLDER, dir.path())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .expect("it starts");
        let mut lines = BufReader::new(victim.stderr.take().expect("its words")).lines().map_while(Result::ok);
        let mut acknowledged =
            lines.by_ref().filter(|line| line.starts_with("acknowledged")).take(acknowledged_before).count();
        victim.kill().expect("it is killed");
        victim.wait().expect("it is gone");
        acknowledged += lines.filter(|line| line.starts_with("acknowledged")).count();
        assert!(acknowledged >= acknowledged_before, "the victim wrote");

        let store = Store::open(dir.path()).expect("it opens again");
        let diary = store.diary(slab).expect("a diary");
        assert_eq!(diary.len() % BATCH, 0, "no half batch");
        let batches = diary.len() / BATCH;
        assert!(batches == acknowledged || batches == acknowledged + 1, "{batches} kept, {acknowledged} acknowledged");
        for entry in notes(slab, 0, acknowledged * BATCH) {
            assert!(diary.get(entry.id).is_some());
        }
        let report = store.check().expect("a report");
        assert!(report.is_sound(), "{report:?}");
    }
}
