//! Drying, pour day, time line and air record as pages.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use std::time::Duration;

use axum::body::Body;
use axum::http::Request;
use axum::http::header::{ACCEPT, HOST};
use common::{DEMO, Got, NOW, Site};
use jiff::tz::TimeZone;
use localization::{Lang, Locale, UnitSystem};
use slab_answers::drying::{MEMBERS, question};
use slab_answers::pour_day::pour_day;
use slab_diary::body::{AirSeries, Pour};
use slab_diary::fold;
use slab_diary::{Knowledge, SlabId};
use trade_facts::Trade;
use units::RelativeHumidity;
use weather_series::import;
use web::Access;

const WEATHER: &[u8] = include_bytes!("../../../demo/weather/greensboro-nc-tmy3-feb-may.csv");
const SPANISH: &str = "lang=es; measure=metric";

fn knowledge() -> Knowledge {
    Knowledge::noted_by(NOW.parse().unwrap())
}

/// The name of the work that a page waits for.
fn work(page: &str) -> Option<String> {
    let (_, rest) = page.split_once("data-work=\"/work/")?;
    Some(rest.split('"').next().unwrap().to_owned())
}

fn json(got: &Got) -> serde_json::Value {
    serde_json::from_slice(&got.bytes).unwrap()
}

/// Waits until a piece of work is done, and says what was told on the way.
fn wait_for(site: &Site, name: &str) -> Vec<(f64, String)> {
    let mut told = Vec::new();
    for _ in 0..3000 {
        let now = json(&site.get(&format!("/work/{name}")).ends(200));
        told.push((now["share"].as_f64().unwrap(), now["said"].as_str().unwrap().to_owned()));
        if now["done"] == true {
            return told;
        }
        std::thread::sleep(Duration::from_millis(100));
    }
    panic!("not done after five minutes");
}

/// A page once nothing on it is waited for.
fn settled(site: &Site, path: &str, cookies: &str) -> String {
    let page = site.get_as(path, cookies).ends(200).text();
    match work(&page) {
        Some(name) => {
            wait_for(site, &name);
            site.get_as(path, cookies).ends(200).text()
        }
        None => page,
    }
}

/// The value of a hidden input.
fn hidden(page: &str, name: &str) -> String {
    let (_, rest) = page.split_once(&format!("name=\"{name}\" value=\"")).unwrap_or_else(|| panic!("no {name}"));
    rest.split('"').next().unwrap().to_owned()
}

fn entries(site: &Site, id: SlabId) -> usize {
    site.store.diary(id).unwrap().len()
}

fn air_series(site: &Site, id: SlabId) -> Vec<AirSeries> {
    let diary = site.store.diary(id).unwrap();
    fold(&diary, Knowledge::happened_by(jiff::Timestamp::MAX)).all::<AirSeries>().map(|s| s.body.clone()).collect()
}

/// A diary of a pour and two readings in the slab that a plain slab may well have.
const READ: &str = r#"{"happened":"2026-01-02 08:00","body":{"kind":"job_opened","name":"read","exposure":"interior","age":"new","time_zone":"America/New_York","drying_sides":1}}
{"happened":"2026-01-05 08:00","body":{"kind":"pour","thickness":"4 in","water_cement":"0.50"}}
{"happened":"2026-01-12 08:00","body":{"kind":"cured"}}
{"happened":"2026-02-20 08:00","body":{"kind":"slab_humidity","humidity":"90 %","depth":"1.6 in","equilibrated":"72 h"}}
{"happened":"2026-02-21 08:00","body":{"kind":"slab_humidity","humidity":"89 %","depth":"1.6 in","equilibrated":"1 h"}}"#;

#[test]
fn the_demo_is_answered_with_the_dates_of_the_forecast_and_joins_the_work_that_runs() {
    let site = Site::empty();
    let id = site.slab("Alder Mill workshop", DEMO);
    let path = format!("/slab/{id}/drying");
    let first = site.get(&path).ends(200).text();
    if let Some(name) = work(&first) {
        assert!(first.contains("<progress max=\"1\"") && first.contains("http-equiv=\"refresh\""));
        let again = work(&site.get(&path).text());
        assert!(again.is_none() || again.as_deref() == Some(&*name), "a reload joins the same work");
        let told = wait_for(&site, &name);
        assert!(told.windows(2).all(|pair| pair[0].0 <= pair[1].0), "{told:?}");
    }
    let page = site.get(&path).ends(200).text();
    let diary = site.store.diary(id).unwrap();
    let slab = fold(&diary, knowledge());
    let asked = question(&slab, Trade::built_in()).unwrap();
    let (high, low) = id.0.as_u64_pair();
    let forecast = asked.forecast(MEMBERS, high ^ low).unwrap();
    let locale = Locale::new(Lang::En, UnitSystem::Imperial);
    for limit in &forecast.limits {
        let dates = forecast.dates(limit).unwrap();
        for date in [dates.p10, dates.p50, dates.p90].into_iter().flatten() {
            assert!(page.contains(&locale.date(date.date)), "{:?}", date.date);
        }
    }
    assert!(page.contains("By mix, thickness and air alone, "), "no reading was taken: the answer says so");
    assert!(page.contains("A forecast never releases a hold point"));
    assert!(["phone", "desk"].iter().all(|on| page.contains(&format!("<figure class=\"drawing on-{on}\"><svg"))));
    assert!(page.contains(&format!("href=\"/slab/{id}/add/slab_humidity\"")));
    assert!(page.find("<h1>") < page.find("<figure"), "the answer stands before the chart");

    let spanish = site.get_as(&path, SPANISH).ends(200).text();
    assert!(work(&spanish).is_none(), "the reader's language does not begin another forecast");
    assert!(
        spanish.contains("sin lecturas, solo por mezcla, espesor y aire")
            && spanish.contains("Un pronóstico nunca libera")
    );

    let line = settled(&site, &format!("/slab/{id}/time"), "lang=en");
    assert!(line.contains("<h1>Day 32 since the pour</h1>"), "February 23 to March 27");
    assert!(line.contains("Down to ") && line.contains("28 days since the pour"));
    assert!(line.contains(&locale.term("red-chalk")), "what went wrong is on it");
}

#[test]
fn readings_count_and_those_left_out_say_why() {
    let site = Site::empty();
    let id = site.slab("read", READ);
    let page = settled(&site, &format!("/slab/{id}/drying"), "lang=en");
    assert!(page.contains("By the readings, "), "{page}");
    assert!(page.contains("What was likely before the readings"));
    assert!(page.contains("The hole must stand closed for") && page.contains("89 %"));
    assert_eq!(page.matches("drawing on-phone").count(), 2, "with the readings, and before them");
}

#[test]
fn a_reading_that_cannot_be_this_slabs_gives_no_date() {
    let site = Site::empty();
    let id = site.slab("wrong", &READ.replace("\"90 %\"", "\"31 %\""));
    let page = settled(&site, &format!("/slab/{id}/drying"), "lang=en");
    assert!(page.contains("the readings don&#39;t fit this slab"), "{page}");
    assert!(page.contains("Look at the reading that doesn&#39;t fit"));
    let low = Locale::default().humidity(RelativeHumidity::percent(31.0).unwrap());
    assert!(page.contains(&format!("A reading of {low}")));
    assert!(!page.contains("8 in 10 such slabs come down"));
}

#[test]
fn an_empty_slab_is_told_what_to_write_down() {
    let site = Site::empty();
    let id = site.slab("empty", "");
    for (cookies, drying, time) in [
        ("lang=en", "No pour is noted.", "No pour is logged yet"),
        (SPANISH, "No hay colado anotado.", "Todavía no hay colado anotado"),
    ] {
        let page = site.get_as(&format!("/slab/{id}/drying"), cookies).ends(200).holds(drying);
        assert!(page.text().contains(&format!("href=\"/slab/{id}/add/pour\"")) && work(&page.text()).is_none());
        site.get_as(&format!("/slab/{id}/time"), cookies).ends(200).holds(time).holds("/add/pour\"");
        let day = site.get_as(&format!("/slab/{id}/pour-day"), cookies).ends(200);
        day.holds(&format!("href=\"/slab/{id}/add/pour\"")).holds("name=\"day\"");
        let asked = site.get_as(&format!("/slab/{id}/pour-day?day=2026-05-03"), cookies).ends(200);
        asked.holds(&format!("href=\"/slab/{id}/air-record\"")).holds("value=\"2026-05-03\"");
    }
}

#[test]
fn a_pour_without_its_mix_leads_to_that_entry() {
    let site = Site::empty();
    let id = site.slab("no mix", r#"{"happened":"2026-03-02 07:00","body":{"kind":"pour","thickness":"4 in"}}"#);
    let diary = site.store.diary(id).unwrap();
    let pour = fold(&diary, knowledge()).last::<Pour>().unwrap().entry.id;
    let page = site.get(&format!("/slab/{id}/drying")).ends(200).holds("water-cement ratio");
    page.holds(&format!("href=\"/slab/{id}/fix/{pour}\""));
}

#[test]
fn how_far_work_is_is_told_to_readers_only() {
    let site = Site::empty();
    let id = site.slab("empty", "");
    site.get("/work/nonsense").ends(404);
    site.get(&format!("/work/{}.1.2026-03-27.1", SlabId::of_name("another"))).ends(404);
    // Begun before the server was: the page is to load again.
    assert_eq!(json(&site.get(&format!("/work/{id}.1.2026-03-27.1")).ends(200))["done"], true);
    let closed = Site::with(Access::People { public: None });
    let id = closed.slab("closed", READ);
    for path in [format!("/work/{id}.1.2026-03-27.1"), format!("/slab/{id}/drying")] {
        let request = Request::get(path).header(HOST, "localhost").header(ACCEPT, "application/json");
        closed.send(request.body(Body::empty()).unwrap()).ends(401);
    }
}

#[test]
fn a_weather_year_is_looked_at_before_it_is_written_and_tells_the_pour_day() {
    let site = Site::empty();
    let id = site.slab("Alder Mill workshop", DEMO);
    let path = format!("/slab/{id}/air-record");
    site.get(&path).ends(200).holds("enctype=\"multipart/form-data\"");
    let before = entries(&site, id);
    let look = site.post_files(&path, &[("step", "look")], &[("file", "greensboro.csv", WEATHER)]).ends(200);
    let look = look.holds("2,880 hours of a typical year").holds("Nothing is logged yet").text();
    assert!(look.contains("marks 108 hours of rain as doubtful") && !look.contains("every row is good"));
    assert_eq!(entries(&site, id), before, "looking writes nothing");
    let (kept, entry) = (hidden(&look, "kept"), hidden(&look, "entry"));
    let next = format!("/slab/{id}/pour-day");
    let fields = [
        ("step", "write"),
        ("kept", kept.as_str()),
        ("entry", entry.as_str()),
        ("source", "airport"),
        ("next", next.as_str()),
    ];
    for _ in 0..2 {
        let done = site.post_files(&path, &fields, &[]).ends(303);
        let location = done.header("location");
        assert!(location.starts_with(&format!("/slab/{id}/pour-day?said=written&entry=")), "{location}");
    }
    assert_eq!(entries(&site, id), before + 1, "sent twice, written once");
    let zone = TimeZone::get("America/New_York").unwrap();
    let written = air_series(&site, id);
    assert_eq!(written.last().unwrap().series, import(WEATHER, None, None, &zone).unwrap().series);
    assert_eq!(written.last().unwrap().source, "airport");

    let diary = site.store.diary(id).unwrap();
    let slab = fold(&diary, knowledge());
    let told = pour_day(&slab, Trade::built_in(), None).unwrap();
    assert_eq!(told.hours.len(), 24);
    for (cookies, locale, day) in [
        ("lang=en", Locale::new(Lang::En, UnitSystem::Imperial), "on a typical February 23"),
        (SPANISH, Locale::new(Lang::Es, UnitSystem::Metric), "un 23 de febrero típico"),
    ] {
        let page = site.get_as(&next, cookies).ends(200).holds(day).text();
        let worst = told.worst().unwrap().evaporation.unwrap().estimate.rate;
        assert!(page.contains(&locale.evaporation(worst)));
        assert_eq!(page.matches("<tr><th scope=\"row\">").count(), 24, "every hour is in the table");
        assert!(page.contains(&locale.pour_day_assumption(&told.assumptions[0])));
    }
    // The last air reading of the demo has air, humidity and wind.
    site.get(&next).holds("March 27, 2026 07:30");
}

#[test]
fn columns_that_are_not_recognized_are_chosen_and_a_missing_unit_is_asked_for() {
    let site = Site::empty();
    let id = site.slab("log", "");
    let path = format!("/slab/{id}/air-record");
    let table =
        "cuando fue;primero;segundo\n2026-03-02 14:00;51,5;60\n2026-03-02 15:00;x;61\n2026-03-02 16:00;400;61\n";
    let page = site.post_files(&path, &[("step", "look")], &[("file", "a.csv", table.as_bytes())]).ends(422);
    let page = page.holds("cuando fue, primero, segundo").holds("name=\"map-time\"").text();
    let kept = hidden(&page, "kept");
    let chosen = [
        ("step", "look"),
        ("kept", kept.as_str()),
        ("map-time", "cuando fue"),
        ("map-air", "primero"),
        ("map-humidity", "segundo"),
    ];
    let page = site.post_files(&path, &chosen, &[]).ends(422);
    let page = page.holds("does not say its unit").holds("name=\"map-air_unit\"").text();
    assert_eq!(hidden(&page, "map-time"), "cuando fue", "what was chosen goes along");
    let with_unit: Vec<(&str, &str)> = chosen.into_iter().chain([("map-air_unit", "°F")]).collect();
    let page = site.post_files(&path, &with_unit, &[]).ends(200).holds("3 rows from").holds("primero, °F");
    let page = page.holds("Line 3, column primero, &#34;x&#34;: not a number").text();
    assert!(page.contains("Line 4, column primero, &#34;400&#34;: more or less than can be measured outdoors"));
    let write: Vec<(&str, &str)> =
        with_unit.iter().map(|(name, value)| (*name, if *name == "step" { "write" } else { *value })).collect();
    site.post_files(&path, &write, &[]).ends(303);
    let series = air_series(&site, id);
    assert_eq!(series.len(), 1);
    let first = series[0].series.samples[0];
    assert!((first.air.unwrap().as_fahrenheit() - 51.5).abs() < 1e-9);
    assert_eq!(first.humidity.unwrap(), RelativeHumidity::percent(60.0).unwrap());
    let spanish = site.send(
        Request::post(&path)
            .header(HOST, "localhost")
            .header("cookie", SPANISH)
            .header("content-type", "multipart/form-data; boundary=edge")
            .body(Body::from(format!(
                "--edge\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.csv\"\r\n\r\n{}\r\n--edge--\r\n",
                "hora;aire °C\n2026-03-02 14:00;400\n2026-03-02 15:00;10\n"
            )))
            .unwrap(),
    );
    let spanish = spanish.ends(200).holds("1 renglón, ").text();
    assert!(spanish.contains("Se acepta un número de -60 a 60 °C"), "{spanish}");
}

#[test]
fn hostile_files_are_refused_in_words_and_nothing_is_written() {
    let site = Site::empty();
    let id = site.slab("hostile", "");
    let path = format!("/slab/{id}/air-record");
    let look = |name: &str, bytes: &[u8]| site.post_files(&path, &[("step", "write")], &[("file", name, bytes)]);
    look("photo.csv", &[0x89, b'P', b'N', b'G', 0, 0, 0, 1, 2, 3, 0, 0]).ends(422).holds("not a text file");
    look("empty.csv", b"").ends(422).holds("The file is empty");
    look("cut.epw", b"LOCATION,a,b\nnothing").ends(422).holds("Line 2, &#34;nothing&#34;");
    look("names.csv", b"time,air F\n").ends(422).holds("No row follows the names in line 1");
    look("bad.csv", b"time,air F\nyesterday,5\n").ends(422).holds("No row can be used");
    site.post(&path, &[("step", "write")]).ends(422).holds("No file came");
    site.post(&path, &[("step", "write"), ("kept", "0123")]).ends(422).holds("not kept here any more");
    look("long.csv", &vec![b'7'; 8 * 1024 * 1024 + 1]).ends(422).holds("larger than 8 MB");
    let mut rows = "unix,air C\n".to_owned();
    for minute in 0..60_001 {
        rows.push_str(&format!("{},5\n", 1_770_000_000 + 60 * minute));
    }
    look("rows.csv", rows.as_bytes()).ends(422).holds("has 60,001 rows");
    let named = look("<b>x</b>.csv", b"time,<script>alert(1)</script>,air F\n2026-03-02 14:00,1,50\n");
    assert!(!named.text().contains("<script>alert") && !named.text().contains("<b>x"));
    assert_eq!(named.status.as_u16(), 303, "a good table under an odd name is no harm");
    assert_eq!(entries(&site, id), 1);

    let other = site.slab("other", "");
    let kept =
        hidden(&site.post_files(&path, &[], &[("file", "a.csv", b"time,air F\n2026-03-02 14:00,50\n")]).text(), "kept");
    let stolen = format!("/slab/{other}/air-record");
    site.post(&stolen, &[("step", "write"), ("kept", &kept)]).ends(422);
    assert_eq!(entries(&site, other), 0, "a file belongs to the slab it was sent to");
}

#[test]
fn a_day_that_cannot_be_read_comes_back_as_typed() {
    let site = Site::empty();
    let id = site.slab("Alder Mill workshop", DEMO);
    let page = site.get(&format!("/slab/{id}/pour-day?day=%3Cscript%3E")).ends(200).text();
    assert!(page.contains("value=\"&#60;script&#62;\"") && page.contains("is not a day. Accepted:"));
    assert!(!page.contains("<script>\""));
}
