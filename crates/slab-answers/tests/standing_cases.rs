//! Worked standing cases: a short diary, a moment, and the state that the rules of the trade give
//! each hold point. The cases in `reference/standing/` were written from the design and the trade
//! facts, not from the code (common practice, no source; each file names the facts it rests on).

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use jiff::Timestamp;
use jiff::tz::TimeZone;
use serde::Deserialize;
use slab_answers::standing::{HoldPointId, Standing, State, standing};
use slab_diary::{Context, Diary, Knowledge, ProblemKind, SlabId, When, problems, read_lines};
use trade_facts::Trade;

/// How many cases there are: none may vanish in silence.
const CASES: usize = 429;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    title: String,
    why: String,
    at: String,
    time_zone: String,
    source: String,
    diary: String,
    #[serde(default)]
    complaints: bool,
    expect: Expect,
}

#[derive(Deserialize)]
struct Expect {
    overall: Option<State>,
    /// States that must not be given, where the rules forbid some without settling on one.
    #[serde(default)]
    not: Not,
    #[serde(flatten)]
    hold_points: BTreeMap<HoldPointId, State>,
}

#[derive(Deserialize, Default)]
struct Not {
    #[serde(default)]
    overall: Vec<State>,
    #[serde(flatten)]
    hold_points: BTreeMap<HoldPointId, Vec<State>>,
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/standing")
}

fn files() -> Vec<PathBuf> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder())
        .expect("reference/standing is there")
        .map(|entry| entry.expect("the folder can be listed").path())
        .filter(|path| path.extension().is_some_and(|e| e == "toml"))
        .collect();
    files.sort();
    files
}

fn read(path: &Path) -> Case {
    let text = std::fs::read_to_string(path).expect("a case can be read");
    toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

impl Case {
    fn moment(&self) -> Timestamp {
        let zone = TimeZone::get(&self.time_zone).unwrap_or_else(|e| panic!("{}: {e}", self.title));
        When::read(&self.at, &zone).unwrap_or_else(|e| panic!("{}: {e}", self.title)).instant()
    }

    /// The diary, once its entries were found with or without complaint a day later, as expected.
    fn diary(&self) -> Result<Diary, String> {
        let context = Context {
            slab: SlabId::of_name(&self.title),
            zone: TimeZone::get(&self.time_zone).map_err(|e| e.to_string())?,
            author: "the crew".to_owned(),
            device: "phone".to_owned(),
            noted: None,
        };
        let entries = read_lines(&self.diary, &context).map_err(|e| format!("{e:?}"))?;
        let day_later = self.moment() + jiff::SignedDuration::from_hours(24);
        let found = problems(&Diary::new(), &entries, Trade::built_in(), day_later);
        // A file of lines is taken with a word on a spot without a place.
        let no_place = |problem: &slab_diary::Problem| matches!(problem.what, ProblemKind::NoPlace { .. });
        let found: Vec<_> = found.into_iter().filter(|problem| !no_place(problem)).collect();
        if found.is_empty() == self.complaints {
            let found: Vec<String> = found.iter().map(|problem| format!("{problem:?}")).collect();
            return Err(format!("complaints: expected {}, got {found:?}", self.complaints));
        }
        let mut diary = Diary::new();
        for entry in entries {
            diary.add(entry).map_err(|e| e.to_string())?;
        }
        Ok(diary)
    }

    /// What differs from the expected states, a line each.
    fn mismatches(&self) -> Result<Vec<String>, String> {
        let diary = self.diary()?;
        let got = standing(&diary, Trade::built_in(), Knowledge::noted_by(self.moment()));
        let mut found = Vec::new();
        let overall = got.overall.state;
        if self.expect.overall.is_some_and(|expected| expected != overall) || self.expect.not.overall.contains(&overall)
        {
            found.push(format!(
                "overall: expected {}, got {}",
                wanted(self.expect.overall, &self.expect.not.overall),
                overall.name()
            ));
        }
        for id in HoldPointId::ALL {
            let expected = self.expect.hold_points.get(&id).copied();
            let forbidden = self.expect.not.hold_points.get(&id).map_or(&[][..], Vec::as_slice);
            let point = got.hold_point(id);
            if expected.is_some_and(|e| e != point.state) || forbidden.contains(&point.state) {
                found.push(format!(
                    "{}: expected {}, got {}, because {}",
                    id.name(),
                    wanted(expected, forbidden),
                    point.state.name(),
                    reasons(&got, id)
                ));
            }
        }
        Ok(found)
    }
}

fn wanted(expected: Option<State>, forbidden: &[State]) -> String {
    expected.map_or_else(
        || format!("none of {}", forbidden.iter().map(|s| s.name()).collect::<Vec<_>>().join(", ")),
        |state| state.name().to_owned(),
    )
}

fn reasons(got: &Standing, id: HoldPointId) -> String {
    let codes: Vec<String> = got.hold_point(id).why.iter().map(|reason| format!("{reason:?}")).collect();
    codes.join("; ")
}

#[test]
fn every_case_is_there_and_says_enough() {
    let files = files();
    assert_eq!(files.len(), CASES, "the number of cases changed: count them and pin the new number");
    for path in files {
        let case = read(&path);
        let name = path.display();
        for (field, text) in [("title", &case.title), ("why", &case.why), ("source", &case.source)] {
            assert!(!text.trim().is_empty() && !text.contains('\n'), "{name}: {field} is one line");
        }
        let expect = &case.expect;
        let points = expect.hold_points.keys().chain(expect.not.hold_points.keys());
        assert!(points.count() >= 3, "{name}: at least three hold points");
        assert!(
            expect.overall.is_some() || !expect.not.overall.is_empty(),
            "{name}: says nothing of the overall answer"
        );
        assert!(
            expect.not.hold_points.values().all(|states| !states.is_empty() && states.len() < 4),
            "{name}: expect.not forbids some states, not none and not all"
        );
    }
}

#[test]
fn the_standing_is_what_the_trade_would_say() {
    let mut report = String::new();
    let mut failed = 0;
    for path in files() {
        let case = read(&path);
        let found = case.mismatches().unwrap_or_else(|error| vec![error]);
        if found.is_empty() {
            continue;
        }
        failed += 1;
        let file = path.file_name().map_or_else(String::new, |n| n.to_string_lossy().into_owned());
        let _ = writeln!(report, "\n{file}: {}\n  ({})", case.title, case.why);
        for line in found {
            let _ = writeln!(report, "  {line}");
        }
    }
    assert!(failed == 0, "{failed} of {CASES} cases differ:\n{report}");
}
