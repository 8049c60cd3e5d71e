//! Whoever writes an entry, the same input gives the same entry or the same refusal: the command line and the
//! pages over one store.

#![allow(clippy::unwrap_used, reason = "a test may stop")]
#![allow(clippy::disallowed_methods, reason = "a test is its own shell: it makes the ids and reads the clock")]

mod common;

use std::sync::Arc;

use axum::body::Body;
use axum::http::Request;
use axum::http::header::{CONTENT_TYPE, HOST};
use common::{Site, repository};
use jiff::Timestamp;
use store::Store;
use tower::ServiceExt;
use web::{Access, App, Outside, Settings, router};

/// Sends a form with files to the pages over the site's own store; the status.
fn post(site: &Site, path: &str, fields: &[(&str, &str)], photograph: Option<&[u8]>) -> u16 {
    let settings = Settings {
        store: Store::open(&site.path("data")).unwrap(),
        access: Access::ThisMachine,
        outside: Outside {
            now: Timestamp::now,
            monotonic: std::time::Instant::now,
            fresh_id: uuid::Uuid::now_v7,
            secret: || *blake3::hash(uuid::Uuid::new_v4().as_bytes()).as_bytes(),
        },
        stands_at: None,
        author: "Ana".to_owned(),
        demo: None,
    };
    let mut body = Vec::new();
    for (name, value) in fields {
        let part = format!("--edge\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n");
        body.extend(part.bytes());
    }
    if let Some(bytes) = photograph {
        let head = b"--edge\r\nContent-Disposition: form-data; name=\"photographs\"; filename=\"p.jpg\"\r\n\r\n";
        body.extend(head.iter().copied().chain(bytes.iter().copied()).chain(*b"\r\n"));
    }
    body.extend(*b"--edge--\r\n");
    let request = Request::post(path)
        .header(HOST, "localhost")
        .header(CONTENT_TYPE, "multipart/form-data; boundary=edge")
        .body(Body::from(body))
        .unwrap();
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let pages = router(Arc::new(App::new(settings)));
    runtime.block_on(pages.oneshot(request)).unwrap().status().as_u16()
}

fn slab_id(site: &Site) -> String {
    site.run(&["list", "--json"]).ends(0).json()[0]["id"].as_str().unwrap().to_owned()
}

/// What says nothing, or too little, by kind: its fields as both shells take them.
const REFUSED: &[(&str, &[(&str, &str)])] = &[
    ("hold_released", &[("hold_point", "membrane"), ("by", ""), ("reason", "")]),
    ("hold_released", &[("hold_point", "membrane"), ("by", "  "), ("reason", "it is dry")]),
    ("hold_released", &[("hold_point", "membrane"), ("by", "the contractor"), ("reason", "")]),
    ("hold_released", &[("hold_point", "site"), ("by", "the contractor"), ("reason", "all is there")]),
    ("site_check", &[]),
    ("note", &[("text", "")]),
    ("note", &[("text", " \t ")]),
    ("air_reading", &[]),
    ("temperature", &[]),
    ("water_drop", &[]),
    ("water_drop", &[("soaked_in", "45 s"), ("still_stood_after", "10 min")]),
    ("water_drop", &[("beads", "no")]),
    ("water_drop", &[("soaked_in", "-45 s")]),
    ("scrape", &[("result", "powdery")]),
    ("finish", &[("finish", "marble")]),
    ("sealer_chosen", &[("sealer", "acrylic-water"), ("coats", "21")]),
    ("emission_dish", &[("gain", "2 g"), ("area", "0 ft2"), ("exposed", "66 h")]),
    ("slab_humidity", &[("humidity", "80 %"), ("depth", "9 in")]),
    ("limit_set", &[("fact", "drop-absorbed"), ("value", "0"), ("reason", "ours")]),
    ("panel_stained", &[("panel", "P1"), ("water_parts", "1"), ("coats", "2")]),
    ("time_cost", &[("what", "measuring"), ("cost", "much")]),
    // What tells of one spot says no place, on a slab of two zones.
    ("water_drop", &[("beads", "yes")]),
    ("scrape", &[("result", "clean")]),
    ("acid_drop", &[("fizz", "weak")]),
    ("surface_ph", &[("ph", "9"), ("rinse_water", "7")]),
    ("incident", &[("what", "cutting-oil")]),
    ("defect", &[("what", "crack")]),
    ("pour", &[("thickness", "half")]),
];

#[test]
fn both_shells_refuse_the_same() {
    let site = Site::with_slab();
    let (id, before) = (slab_id(&site), site.entries());
    for (kind, fields) in REFUSED {
        let given: Vec<String> = fields.iter().map(|(name, value)| format!("{name}={value}")).collect();
        let mut args = vec!["log", *kind];
        args.extend(given.iter().map(String::as_str));
        let ran = site.run(&args);
        assert_eq!(ran.code, 3, "{kind} {fields:?}: {} {}", ran.out, ran.err);
        assert!(ran.err.contains(kind), "{kind} {fields:?}: {}", ran.err);
        let status = post(&site, &format!("/slab/{id}/add/{kind}"), fields, None);
        assert_eq!(status, 422, "{kind} {fields:?}");
    }
    assert_eq!(site.entries(), before, "nothing was written");
}

/// The same on both sides of the line: what one takes the other takes.
const TAKEN: &[(&str, &[(&str, &str)])] = &[
    ("hold_released", &[("hold_point", "membrane"), ("by", "the contractor"), ("reason", "tests by another lab")]),
    ("site_check", &[("water", "yes")]),
    ("note", &[("text", "ask for the pour sheet")]),
    ("air_reading", &[("rain", "no")]),
    ("sealer_chosen", &[("sealer", "acrylic-water"), ("coats", "20")]),
    ("limit_set", &[("fact", "drop-absorbed"), ("value", "120"), ("reason", "ours")]),
    ("time_cost", &[("what", "measuring"), ("cost", "120.50"), ("currency", "USD")]),
];

/// What tells of one spot, each somewhere.
const TAKEN_SOMEWHERE: &[(&str, &[(&str, &str)])] = &[
    ("water_drop", &[("beads", "yes")]),
    ("water_drop", &[("soaked_in", "45 s"), ("beads", "yes")]),
    ("emission_dish", &[("gain", "2 g"), ("area", "0.5 ft2"), ("exposed", "66 h")]),
    ("slab_humidity", &[("humidity", "80 %"), ("depth", "4 in")]),
    ("incident", &[("what", "cutting-oil")]),
];

/// The bodies of a kind, as the diary keeps them.
fn bodies(site: &Site, kind: &str) -> Vec<serde_json::Value> {
    let told = site.run(&["diary", "--all", "--json", "--kind", kind]).ends(0).json_lines();
    told.iter().map(|entry| entry["body"].clone()).collect()
}

#[test]
fn both_shells_write_the_same() {
    let somewhere = TAKEN_SOMEWHERE.iter().map(|taken| (taken, Some("office")));
    for ((kind, fields), zone) in TAKEN.iter().map(|taken| (taken, None)).chain(somewhere) {
        let site = Site::with_slab();
        let given: Vec<String> = fields.iter().map(|(name, value)| format!("{name}={value}")).collect();
        let mut args = vec!["log", *kind];
        args.extend(given.iter().map(String::as_str));
        args.extend(zone.iter().flat_map(|zone| ["--zone", zone]));
        site.run(&args).ends(0);
        let mut fields = fields.to_vec();
        fields.extend(zone.map(|zone| ("zone", zone)));
        let status = post(&site, &format!("/slab/{}/add/{kind}", slab_id(&site)), &fields, None);
        assert_eq!(status, 303, "{kind} {fields:?}");
        let bodies = bodies(&site, kind);
        assert_eq!(bodies.len(), 2, "{kind}");
        assert_eq!(bodies[0], bodies[1], "{kind}");
    }
}

/// A file of lines keeps what was written on paper, and says what it does not prove.
#[test]
fn a_line_without_a_place_is_kept_with_a_word() {
    let site = Site::with_slab();
    let line = r#"{"happened":"2026-03-05 10:00","body":{"kind":"water_drop","soaked_in":"45 s"}}"#;
    let ran = site.log_lines(line);
    assert_eq!(ran.code, 0, "{}", ran.err);
    assert!(ran.err.contains("line 1: water_drop.place") && ran.err.contains("office"), "{}", ran.err);
    let placed = r#"{"happened":"2026-03-05 10:00","place":{"zone":"shop"},"body":{"kind":"water_drop","beads":true}}"#;
    let ran = site.log_lines(placed);
    assert!(ran.code == 0 && !ran.err.contains("place"), "{}", ran.err);
}

#[test]
fn what_never_happened_counts_for_nothing_and_can_come_back() {
    let site = Site::with_slab();
    let id = slab_id(&site);
    let entry_of = |kind: &str| -> String {
        let told = site.run(&["diary", "--all", "--json", "--kind", kind]).ends(0).json_lines();
        told[0]["id"].as_str().unwrap().to_owned()
    };
    let standing = || site.run(&["ready", "--json", "--at", "2026-04-20", "--known", "happened"]).json();
    let before = standing();
    let oil = [("what", "cutting-oil"), ("zone", "office"), ("happened", "2026-03-05 10:00")];
    assert_eq!(post(&site, &format!("/slab/{id}/add/incident"), &oil, None), 303);
    let incident = entry_of("incident");
    assert_ne!(standing()["hold_points"], before["hold_points"], "the oil counts");
    assert_eq!(post(&site, &format!("/slab/{id}/undo/{incident}"), &[("reason", "another slab")], None), 303);
    assert_eq!(standing()["hold_points"], before["hold_points"], "struck out, it counts for nothing");
    let all = site.run(&["diary", "--all"]).ends(0).out;
    assert!(all.contains("another slab"), "{all}");
    // It did happen after all: a correction of the struck entry brings it back.
    site.run(&["fix", &incident, "trade=plumber"]).ends(0);
    assert_ne!(standing()["hold_points"], before["hold_points"], "it counts again");
    let pour = entry_of("pour");
    site.run(&["fix", &pour, "--never-happened", "reason=it was the slab next door"]).ends(0);
    let bare = site.run(&["diary", "--json", "--kind", "pour"]).ends(0);
    assert!(bare.out.trim().is_empty(), "{}", bare.out);
    // On what everything rests is not taken back, and nothing is taken back without saying what.
    let nothing = site.run(&["log", "never-happened", "reason=tapped by mistake"]);
    assert!(nothing.code == 3 && nothing.err.contains("never_happened.replaces"), "{}", nothing.err);
    let job = entry_of("job_opened");
    assert_eq!(site.run(&["fix", &job, "--never-happened"]).code, 3);
    assert_eq!(post(&site, &format!("/slab/{id}/undo/{job}"), &[], None), 422);
    assert_eq!(post(&site, &format!("/slab/{id}/undo/{}", uuid::Uuid::nil()), &[], None), 404);
}

/// The date as people write it, whoever reads it.
#[test]
fn a_date_is_read_as_people_write_it() {
    let site = Site::with_slab();
    let id = slab_id(&site);
    let days = || -> Vec<String> {
        let told = site.run(&["diary", "--json", "--kind", "delivery"]).ends(0).json_lines();
        told.iter().map(|e| e["happened"].as_str().unwrap()[..16].to_owned()).collect()
    };
    let form = |happened| {
        post(
            &site,
            &format!("/slab/{id}/add/delivery"),
            &[("item", "stain"), ("amount", "8 gal"), ("happened", happened)],
            None,
        )
    };
    assert_eq!(form("3/20/2026 7:30 am"), 303);
    site.run(&["log", "delivery", "item=stain", "amount=8 gal", "--happened", "Mar 20 2026 7:30am"]).ends(0);
    assert_eq!(days(), ["2026-03-20T07:30"; 2]);
    // The clock of the slab, not that of a phone from elsewhere.
    let away = [("noted", "2026-03-20T16:00:00+02:00"), ("happened", "2026-03-20 08:15")];
    let away = [&[("item", "stain"), ("amount", "8 gal")][..], &away].concat();
    assert_eq!(post(&site, &format!("/slab/{id}/add/delivery"), &away, None), 303);
    let told = site.run(&["diary", "--json", "--kind", "delivery"]).ends(0).json_lines();
    let at_eight = told.iter().find(|e| e["happened"].as_str().unwrap().contains("T08:15")).expect("it is there");
    assert!(at_eight["happened"].as_str().unwrap().contains("-05:00"), "{at_eight}");
    let written = days().len();
    for wrong in ["", "  ", "soon", "13/32/2026", "3/20/2026 25:00"] {
        assert_eq!(form(wrong), 422, "\"{wrong}\"");
    }
    assert_eq!(days().len(), written);
}

#[test]
fn a_photograph_is_measured_whoever_logs_it() {
    let site = Site::with_slab();
    let file = repository("demo/photographs/bay-day-11.jpg");
    let photograph = std::fs::read(&file).unwrap();
    let card_box = r#"card_box={"x":9.6,"y":69.8,"w":18.3,"h":17.4}"#;
    site.run(&["log", "slab-photograph", "card=gray_card", card_box, "--photo", file.to_str().unwrap()]).ends(0);
    let typed = [("card", "gray_card"), ("card_x", "9.6"), ("card_y", "69.8"), ("card_w", "18.3"), ("card_h", "17.4")];
    let path = format!("/slab/{}/add/slab_photograph", slab_id(&site));
    assert_eq!(post(&site, &path, &typed, Some(&photograph)), 303);
    let bodies = bodies(&site, "slab_photograph");
    assert_eq!(bodies.len(), 2);
    assert_eq!(bodies[0]["evenness"], "patchy", "{}", bodies[0]);
    assert_eq!(bodies[0], bodies[1]);

    // A written line that names the same photograph gives the same body.
    let entry = &site.run(&["diary", "--all", "--json", "--kind", "slab-photograph"]).ends(0).json_lines()[0];
    let line = serde_json::json!({
        "happened": "2026-03-20 12:00",
        "photographs": entry["photographs"],
        "body": {"kind": "slab_photograph", "card": "gray_card", "card_box": {"x": 9.6, "y": 69.8, "w": 18.3, "h": 17.4}},
    });
    site.log_lines(&line.to_string()).ends(0);
    site.log_lines(&line.to_string()).ends(0);
    let bodies = self::bodies(&site, "slab_photograph");
    assert_eq!(bodies.len(), 3, "read twice, it is there once");
    assert!(bodies.iter().all(|body| *body == bodies[0]), "{bodies:#?}");
}
