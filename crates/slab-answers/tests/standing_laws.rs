//! Laws that the standing keeps on every worked case of `reference/standing/`, whatever the case is about.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

use std::path::Path;

use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{Timestamp, ToSpan};
use slab_answers::ready::to_ready;
use slab_answers::standing::{Action, HoldPointId, Standing, State, judge, standing};
use slab_diary::{Context, Diary, Knowledge, Slab, SlabId, When, fold, read_lines};
use trade_facts::Trade;

struct Case {
    name: String,
    at: String,
    zone: TimeZone,
    lines: String,
}

impl Case {
    fn all() -> Vec<Self> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/standing");
        let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
        files.retain(|path| path.extension().is_some_and(|end| end == "toml"));
        files.sort();
        files.iter().map(|path| Self::read(path)).collect()
    }

    fn read(path: &Path) -> Self {
        let text = std::fs::read_to_string(path).unwrap();
        let head = |name: &str| {
            let line = text.lines().find_map(|line| line.strip_prefix(&format!("{name} = \"")));
            line.and_then(|rest| rest.strip_suffix('"'))
                .unwrap_or_else(|| panic!("{}: {name}", path.display()))
                .to_owned()
        };
        Self {
            name: path.file_stem().unwrap().to_string_lossy().into_owned(),
            at: head("at"),
            zone: TimeZone::get(&head("time_zone")).unwrap(),
            lines: text.split("'''").nth(1).unwrap().to_owned(),
        }
    }

    fn moment(&self) -> Timestamp {
        When::read(&self.at, &self.zone).unwrap().instant()
    }

    /// The standing of the case's lines and more.
    fn with(&self, more: &str) -> Standing {
        judged(&format!("{}\n{more}", self.lines), &self.zone, self.moment())
    }

    /// A line of an hour before the moment.
    fn line(&self, place: &str, body: &str) -> String {
        let at = (self.moment() - 1.hour()).to_zoned_datetime(self.zone.clone());
        format!("{{\"happened\":\"{}\",{place}\"body\":{{{body}}}}}", at.strftime("%Y-%m-%d %H:%M"))
    }
}

fn judged(lines: &str, zone: &TimeZone, at: Timestamp) -> Standing {
    let context = Context {
        slab: SlabId::of_name("laws"),
        zone: zone.clone(),
        author: "the crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    let entries = read_lines(lines, &context).unwrap_or_else(|e| panic!("{e:?}\n{lines}"));
    standing(&entries.into_iter().collect::<Diary>(), Trade::built_in(), Knowledge::noted_by(at))
}

type OfPoint = (HoldPointId, State, Vec<(String, State)>);

fn folded<T>(case: &Case, of: impl FnOnce(&Slab<'_>) -> T) -> T {
    let context = Context {
        slab: SlabId::of_name("laws"),
        zone: case.zone.clone(),
        author: "the crew".to_owned(),
        device: "phone".to_owned(),
        noted: None,
    };
    let diary: Diary = read_lines(&case.lines, &context).unwrap().into_iter().collect();
    of(&fold(&diary, Knowledge::noted_by(case.moment())))
}

fn states(standing: &Standing) -> Vec<OfPoint> {
    standing.hold_points.iter().map(|point| (point.id, point.state, point.zones.clone())).collect()
}

#[test]
fn the_same_lines_again_change_nothing() {
    for case in Case::all() {
        assert_eq!(case.with(&case.lines), case.with(""), "{}", case.name);
    }
}

/// Every date in a text a week later.
fn a_week_later(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("202") {
        let (before, from) = rest.split_at(at);
        out.push_str(before);
        match from.get(..10).and_then(|day| day.parse::<Date>().ok()) {
            Some(day) => {
                out.push_str(&(day + 7.days()).to_string());
                rest = &from[10..];
            }
            None => {
                out.push_str(&from[..3]);
                rest = &from[3..];
            }
        }
    }
    out + rest
}

#[test]
fn a_week_later_is_the_same_with_all_dates_a_week_later() {
    for case in Case::all() {
        let later = judged(&a_week_later(&case.lines), &case.zone, {
            When::read(&a_week_later(&case.at), &case.zone).unwrap().instant()
        });
        assert_eq!(states(&later), states(&case.with("")), "{}", case.name);
    }
}

/// Tests that pass, an hour before the moment.
const PASSING: [&str; 5] = [
    r#""kind":"scrape","result":"powder""#,
    r#""kind":"solvent_wipe","result":"clean""#,
    r#""kind":"acid_drop","fizz":"strong""#,
    r#""kind":"survey","contamination":true,"cracks":true"#,
    r#""kind":"site_check","water":true,"eyewash":true,"waste_plan":true,"data_sheets":true"#,
];

#[test]
fn a_passing_test_makes_nothing_worse() {
    let mut tried = 0;
    for case in Case::all() {
        let before = case.with("");
        for zone in before.hold_point(HoldPointId::Membrane).zones.iter().map(|(zone, _)| zone.clone()) {
            let place = if zone == "whole" { String::new() } else { format!("\"place\":{{\"zone\":\"{zone}\"}},") };
            for body in PASSING {
                let after = case.with(&case.line(&place, body));
                for (old, new) in before.hold_points.iter().zip(&after.hold_points) {
                    // The named rule: a scrape is what a lone film test lacks, and what it finds is told.
                    assert!(new.state <= old.state, "{}: {body} made {} worse in {zone}", case.name, old.id.name());
                }
                tried += 1;
            }
        }
    }
    assert!(tried > 1500, "{tried}");
}

/// Two zones of different concrete and finish, every test made and passed in both.
fn two_concretes() -> Case {
    let ready = Case::all().into_iter().find(|case| case.name.starts_with("165-")).unwrap();
    let zones = judged(&ready.lines, &ready.zone, ready.moment()).hold_point(HoldPointId::Membrane).zones.clone();
    // The second zone was finished another way, before anything was tried.
    let broom = format!(
        "{{\"happened\":\"2026-04-02 06:00\",\"place\":{{\"zone\":\"{}\"}},\"body\":{{\"kind\":\"finish\",\"finish\":\"broom\"}}}}",
        zones[1].0
    );
    let lines = format!("{}\n{broom}", ready.lines);
    Case { name: "two concretes".to_owned(), lines, ..ready }
}

#[test]
fn bad_evidence_of_one_zone_leaves_another_as_it_was() {
    let case = two_concretes();
    let before = case.with("");
    let zones: Vec<String> =
        before.hold_point(HoldPointId::Membrane).zones.iter().map(|(zone, _)| zone.clone()).collect();
    assert_eq!(zones.len(), 2);
    let bad = [
        r#""kind":"scrape","result":"curl""#,
        r#""kind":"water_drop","beads":true"#,
        r#""kind":"acid_drop","fizz":"none""#,
        r#""kind":"surface_ph","ph":"6","moment":"before_stain""#,
        r#""kind":"plastic_sheet","result":"drops","covered":"20 h""#,
        r#""kind":"wetting","cause":"flood""#,
        r#""kind":"incident","what":"cutting-oil""#,
        r#""kind":"defect","what":"hole""#,
        r#""kind":"coat_laid","coat":1,"dwell":"6 h""#,
    ];
    for (spoiled, spared) in [(0, 1), (1, 0)] {
        for body in bad {
            let place = format!("\"place\":{{\"zone\":\"{}\"}},", zones[spoiled]);
            let after = case.with(&case.line(&place, body));
            let mut worse = false;
            for (old, new) in before.hold_points.iter().zip(&after.hold_points) {
                let of = |point: &slab_answers::standing::HoldPoint, zone: &str| {
                    point.zones.iter().find(|(name, _)| name == zone).map(|(_, state)| *state)
                };
                assert_eq!(of(old, &zones[spared]), of(new, &zones[spared]), "{body}: {}", old.id.name());
                worse |= of(new, &zones[spoiled]) > of(old, &zones[spoiled]);
            }
            assert!(worse, "{body} worsened nothing in {}", zones[spoiled]);
        }
    }
}

/// What is open has a way out, or it is said that nobody knows one; what is ready has none to go.
#[test]
fn the_way_to_ready_leads_from_every_open_hold_point() {
    let trade = Trade::built_in();
    for case in Case::all() {
        folded(&case, |slab| {
            let judged = judge(slab, trade);
            let way = to_ready(slab, trade, &judged);
            if judged.overall.state == State::Released {
                assert!(way.deeds.is_empty() && way.unknown.is_empty() && way.minutes == 0, "{}", case.name);
                return;
            }
            let told: Vec<HoldPointId> =
                way.deeds.iter().flat_map(|deed| &deed.points).chain(&way.unknown).copied().collect();
            for point in judged.hold_points.iter().filter(|h| h.asked && h.state != State::Released) {
                assert!(told.contains(&point.id), "{}: nothing leads on from {}", case.name, point.id.name());
            }
            assert!(!way.deeds.is_empty() || !way.unknown.is_empty(), "{}", case.name);
            assert_eq!(way.minutes, way.deeds.iter().map(|deed| deed.next.minutes).sum::<u32>());
            assert!(way.earliest >= slab.knowledge().at.to_zoned_datetime(slab.time_zone()).datetime());
            // A zone that is stained in part still asks what a bare one asks.
            if judged.overall.stained() && !judged.hold_point(HoldPointId::Membrane).asked {
                let harm = way.deeds.iter().find(|deed| {
                    deed.next.action.changes_surface()
                        || matches!(
                            deed.next.action,
                            Action::WaterDrops
                                | Action::DropAndScrape
                                | Action::Scrape
                                | Action::AcidDrop
                                | Action::SetProbes
                        )
                });
                assert!(harm.is_none(), "{}: {harm:?} on a stained floor", case.name);
            }
        });
    }
}

/// What must follow a deed is a deed of ours.
#[test]
fn what_follows_a_deed_is_known() {
    let followers: Vec<&String> = {
        let records = Action::ALL.iter().filter_map(|action| Trade::built_in().action(action.name()));
        records.flat_map(|record| &record.then).collect()
    };
    assert!(followers.len() > 20);
    for name in followers {
        assert!(Action::named(name).is_some(), "{name}");
    }
}
