//! The plan's page and the drawing of it: areas, closures, blunders, corrections, in both languages.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use axum::body::Body;
use axum::http::Request;
use axum::http::header::{ACCEPT, CONTENT_TYPE, COOKIE, HOST};
use common::{DEMO, Got, Site};
use slab_diary::fold;
use slab_diary::{Body as Entry, Knowledge, SlabId};
use slab_plan::{Plan, PlanSpec};

const JOB: &str =
    r#"{"happened":"2026-03-01 07:00","body":{"kind":"job_opened","name":"shop","time_zone":"America/Chicago"}}"#;

/// Posts with a browser's cookies and what it would take for an answer.
fn post_as(site: &Site, path: &str, fields: &[(&str, &str)], cookies: &str, accept: &str) -> Got {
    let body = form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish();
    let request = Request::post(path).header(HOST, "localhost").header(COOKIE, cookies).header(ACCEPT, accept);
    site.send(request.header(CONTENT_TYPE, "application/x-www-form-urlencoded").body(Body::from(body)).unwrap())
}

fn job() -> (Site, SlabId) {
    let site = Site::empty();
    let id = site.slab("shop", JOB);
    (site, id)
}

fn draw(id: SlabId, way: &str) -> String {
    format!("/slab/{id}/plan/draw?way={way}")
}

fn look(id: SlabId, way: &str) -> String {
    format!("/slab/{id}/plan/look?way={way}")
}

/// Rows of rooms: name, along, up, width, depth.
fn rooms<'a>(rows: &[[&'a str; 5]]) -> Vec<(&'a str, &'a str)> {
    let names = ["room_name[]", "room_x[]", "room_y[]", "room_width[]", "room_depth[]"];
    rows.iter().flat_map(|row| names.into_iter().zip(*row)).collect()
}

/// Rows of walls: turn, angle, length.
fn walls<'a>(rows: &[[&'a str; 3]]) -> Vec<(&'a str, &'a str)> {
    rows.iter().flat_map(|row| ["turn[]", "angle[]", "length[]"].into_iter().zip(*row)).collect()
}

/// The plan that stands in the diary.
fn plan(site: &Site, id: SlabId) -> (Plan, PlanSpec) {
    let diary = site.store.diary(id).unwrap();
    let slab = fold(&diary, Knowledge::happened_by(jiff::Timestamp::MAX));
    let (seen, error) = slab.plan_entry().unwrap();
    assert_eq!(error, None);
    (slab.plan().unwrap().clone(), seen.body.clone())
}

fn plans_written(site: &Site, id: SlabId) -> usize {
    site.store.diary(id).unwrap().entries().filter(|e| matches!(e.body, Entry::Plan(_))).count()
}

const TWO_ROOMS: [[&str; 5]; 3] =
    [["shop", "", "", "30 ft", "30'"], ["", "", "", "", ""], ["office", "30", "0", "18' 6\"", "20 ft"]];

#[test]
fn rooms_become_zones_and_their_union_the_slab() {
    let (site, id) = job();
    // 30 · 30 + 18.5 · 20 = 1270.
    post_as(&site, &look(id, "rooms"), &rooms(&TWO_ROOMS), "lang=en", "text/html")
        .ends(200)
        .holds("1,270 ft²")
        .holds("<th scope=\"row\">office</th><td class=\"number\">370 ft²</td>")
        .holds("class=\"picture\"");
    let got = site.post(&draw(id, "rooms"), &rooms(&TWO_ROOMS)).ends(303);
    let location = got.header("location");
    assert!(location.starts_with(&format!("/slab/{id}?said=plan-written&entry=")), "{location}");
    let (drawn, _) = plan(&site, id);
    assert!((drawn.area().as_square_feet() - 1270.0).abs() < 1e-6);
    // Two sides of the shop's right wall are shared by 20 ft: 2·(30+30) + 2·(18.5+20) − 2·20.
    assert!((drawn.perimeter().unwrap().as_feet() - 157.0).abs() < 1e-6);
    site.get(&format!("/slab/{id}/plan")).ends(200).holds("<h1>1,270 ft² in 2 zones; no incident is open</h1>");
}

#[test]
fn rows_of_one_name_make_one_room_and_a_bare_number_takes_the_readers_unit() {
    let (site, id) = job();
    let rows = [["Hall", "0", "0", "4", "3"], ["hall", "4", "0", "2", "1.5"]];
    post_as(&site, &draw(id, "rooms"), &rooms(&rows), "measure=metric", "text/html").ends(303);
    let (drawn, spec) = plan(&site, id);
    assert_eq!(drawn.zones().len(), 1);
    assert!((drawn.area().as_square_meters() - 15.0).abs() < 1e-9);
    assert_eq!(serde_json::to_value(&spec).unwrap()["outline"]["rectangles"][0]["width"], "4 m");
}

#[test]
fn what_is_wrong_stands_at_its_row_and_everything_typed_stays() {
    let (site, id) = job();
    let rows = [["shop", "", "", "30 ft", "30 ft"], ["", "", "", "", ""], ["office", "29 ft", "0", "wide", ""]];
    let got = site.post(&draw(id, "rooms"), &rooms(&rows)).ends(422);
    let page = got
        .holds("id=\"mistake-room_width[2]\" data-mistake-for=\"room_width[]\">There is no number in &#34;wide&#34;")
        .holds("id=\"mistake-room_depth[2]\" data-mistake-for=\"room_depth[]\">This is needed.")
        .holds("name=\"room_width[]\" value=\"wide\"")
        .holds("href=\"#field-room_width[2]\"")
        .text();
    assert!(page.contains("id=\"field-room_width[2]\"") && page.contains("value=\"29 ft\""));
    // The office begins a foot inside the shop: 1 ft · 20 ft.
    let rows = [["shop", "", "", "30 ft", "30 ft"], ["office", "29 ft", "0", "18 ft", "20 ft"]];
    let got = post_as(&site, &draw(id, "rooms"), &rooms(&rows), "lang=en", "application/json").ends(422);
    let answer: serde_json::Value = serde_json::from_str(&got.text()).unwrap();
    assert_eq!(answer["mistakes"][0]["field"], "room_name[1]");
    assert!(answer["mistakes"][0]["message"].as_str().unwrap().contains("\"office\" and \"shop\" share 20 ft²"));
    for (row, field) in
        [(["a", "", "", "0 ft", "1 ft"], "room_width[1]"), (["", "", "", "5 ft", "1 ft"], "room_name[1]")]
    {
        let rows = [["shop", "", "", "3 ft", "3 ft"], row];
        let got = post_as(&site, &draw(id, "rooms"), &rooms(&rows), "lang=en", "application/json").ends(422);
        assert!(got.text().contains(&format!("\"field\":\"{field}\"")), "{}", got.text());
    }
    assert_eq!(plans_written(&site, id), 0);
}

/// Half an inch short each way on 156 ft: 0.707 in of 1872 in is 1:2647.
const CLOSES: [[&str; 3]; 4] =
    [["", "", "48' 0\""], ["left", "", "30' 0 1/2\""], ["left", "90", "47' 11 1/2\""], ["left", "", "30'"]];

#[test]
fn a_walk_tells_its_closure_as_typed_and_in_the_end() {
    let (site, id) = job();
    let mut fields = walls(&CLOSES);
    fields.push(("rest_name", "shop"));
    let said = "The walk ends 11/16&#34; from where it began, toward plan north-east (45°). That is 1:2,647 of the \
                156.0 ft";
    let said = said.replace("156.0", "156");
    let got = post_as(&site, &look(id, "walk"), &fields, "lang=en", "text/html").ends(200).holds(&said);
    assert!(got.text().contains("spread over all walls"));
    site.post(&draw(id, "walk"), &fields).ends(303);
    site.get(&format!("/slab/{id}/plan")).holds(&said).holds("1,440 ft² in one zone");
    let page = site.get_as(&format!("/slab/{id}/plan"), "lang=es; measure=metric");
    page.holds("hacia el noreste del plano (45°)").holds("regla de la brújula").holds("134 m² en una zona");
}

#[test]
fn a_blunder_is_refused_with_the_wall_that_explains_it() {
    let (site, id) = job();
    let (mut rows, path) = (CLOSES, draw(id, "walk"));
    // A foot dropped from the third wall, with an empty row before it.
    rows[2] = ["left", "", "47' 0\""];
    let rows = [rows[0], rows[1], ["", "", ""], rows[2], rows[3]];
    let got = post_as(&site, &path, &walls(&rows), "lang=en", "application/json").ends(422);
    let answer: serde_json::Value = serde_json::from_str(&got.text()).unwrap();
    let mistakes: Vec<(&str, &str)> = answer["mistakes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|m| (m["field"].as_str().unwrap(), m["message"].as_str().unwrap()))
        .collect();
    assert_eq!(mistakes[0].0, "legs");
    assert!(mistakes[0].1.contains("the limit is 1:200") && mistakes[0].1.contains("Most likely wrong: "));
    // Rows are counted as they stand on the page.
    assert!(
        mistakes.iter().any(|(f, s)| *f == "length[3]" && s.contains("wall 4 (\"47' 0\"\"), where 48'")),
        "{mistakes:?}"
    );
    let spanish = post_as(&site, &path, &walls(&rows), "lang=es", "text/html").ends(422);
    spanish.holds("Lo más probable es que esté mal").holds("el muro 4 (").holds("value=\"47&#39; 0&#34;\"");
    let seen = post_as(&site, &look(id, "walk"), &walls(&rows), "lang=es", "text/html").ends(200);
    seen.holds("<polyline ").holds("Esto todavía no se puede anotar");
    assert_eq!(plans_written(&site, id), 0);
}

#[test]
fn turns_are_asked_for_and_a_measured_last_turn_is_checked() {
    let (site, id) = job();
    let mut rows = CLOSES;
    rows[3][0] = "";
    let got = post_as(&site, &draw(id, "walk"), &walls(&rows), "lang=en", "application/json").ends(422);
    assert!(got.text().contains("\"field\":\"turn[3]\"") && got.text().contains("Wall 4 has no turn"));
    let mut fields = walls(&CLOSES);
    fields.push(("closing_side", "right"));
    let got = post_as(&site, &draw(id, "walk"), &fields, "lang=en", "application/json").ends(422);
    assert!(got.text().contains("\"field\":\"closing_side\""), "{}", got.text());
    let two = walls(&CLOSES[..2]);
    post_as(&site, &look(id, "walk"), &two, "lang=en", "text/html").holds("There are 2 walls so far.");
    post_as(&site, &look(id, "walk"), &[], "lang=en", "text/html").holds("The drawing appears here");
}

#[test]
fn only_areas_give_a_bid_and_no_drawing() {
    let (site, id) = job();
    let fields =
        [("area", "1200 ft2"), ("part_name[]", "shop"), ("part_area[]", "900"), ("rest_name", "office"), ("next", "")];
    site.post(&draw(id, "area"), &fields).ends(303);
    assert!((plan(&site, id).0.zone("office").unwrap().area().as_square_feet() - 300.0).abs() < 1e-6);
    let page = site.get(&format!("/slab/{id}/plan")).holds("Only areas are known").text();
    assert!(!page.contains("class=\"picture\"") && !page.contains("plan.svg"));
    site.get(&format!("/slab/{id}/plan.svg")).ends(404);
    let fields = [("area", "1200 ft2"), ("part_name[]", "shop"), ("part_area[]", "1300")];
    let got = post_as(&site, &draw(id, "area"), &fields, "lang=en", "application/json").ends(422);
    assert!(got.text().contains("\"field\":\"parts\"") && got.text().contains("more than the 1,200 ft²"));
}

#[test]
fn a_polygon_is_told_as_text_and_its_mistakes_name_their_path() {
    let (site, id) = job();
    let polygon = r#"{"outline":{"polygon":[["0","0"],["20 ft","0"],["20 ft","10 ft"]]}}"#;
    site.post(&draw(id, "text"), &[("json", polygon)]).ends(303);
    assert!((plan(&site, id).0.area().as_square_feet() - 100.0).abs() < 1e-9);
    site.get(&format!("/slab/{id}/plan/draw")).holds("&#34;20 ft&#34;").holds("<textarea");
    let wrong = polygon.replace("20 ft", "20 parsecs");
    let got = site.post(&draw(id, "text"), &[("json", &wrong)]).ends(422);
    got.holds("outline.polygon").holds("20 parsecs");
}

#[test]
fn hostile_names_stay_text() {
    let (site, id) = job();
    let name = "<script>alert(1)</script>\" onload=\"x";
    let rows = [[name, "", "", "30 ft", "30 ft"], ["b", "30 ft", "", "<b>", "1 ft"]];
    let mut pages = vec![post_as(&site, &look(id, "rooms"), &rooms(&rows), "", "text/html").text()];
    pages.push(site.post(&draw(id, "rooms"), &rooms(&rows)).ends(422).text());
    pages.push(post_as(&site, &look(id, "rooms"), &rooms(&rows[..1]), "", "text/html").text());
    site.post(&draw(id, "rooms"), &rooms(&rows[..1])).ends(303);
    for path in ["plan", "plan.svg", "plan/draw"] {
        pages.push(site.get(&format!("/slab/{id}/{path}")).ends(200).text());
    }
    for page in pages {
        assert!(!page.contains("<script>") && !page.contains("\" onload") && !page.contains("<b>\""), "{page}");
        assert!(!page.contains(" style="), "{page}");
    }
    let long = "x".repeat(61);
    let got = site.post(&draw(id, "rooms"), &rooms(&[[&long, "", "", "1 ft", "1 ft"]])).ends(422);
    got.holds("up to 60 letters");
}

#[test]
fn everything_on_the_drawing_stands_in_the_list_too() {
    let site = Site::empty();
    let id = site.slab("demo", DEMO);
    for cookies in ["lang=en", "lang=es; measure=metric"] {
        let page = site.get_as(&format!("/slab/{id}/plan"), cookies).ends(200).text();
        let marks: Vec<&str> = page.split("data-item=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        assert!(marks.len() > 5, "only {} marks", marks.len());
        for mark in marks {
            // A place to test next is no entry: it stands in a list of its own, with its form.
            let told = match mark.strip_prefix("next-") {
                Some(number) => format!("<li id=\"{mark}\" value=\"{number}\">"),
                None => format!("<a href=\"/slab/{id}/entry/{mark}\">"),
            };
            assert!(page.contains(&told), "{mark}");
        }
        for kind in ["incident", "water_drop", "scrape", "slab_photograph", "defect"] {
            assert!(page.contains(&format!("href=\"/slab/{id}/add/{kind}\" data-at")), "{kind}");
        }
        for zone in ["shop", "showroom", "hall"] {
            assert!(page.contains(&format!("{zone}</th>")), "{zone}");
        }
    }
    let svg = site.get(&format!("/slab/{id}/plan.svg")).ends(200);
    assert!(svg.header("content-type").starts_with("image/svg+xml") && svg.text().starts_with("<svg xmlns="));
    let (site, id) = job();
    site.get(&format!("/slab/{id}/plan")).ends(200).holds("There is no plan yet").holds("plan/draw");
}

/// What a browser would send of a page's form: inputs and chosen options in the order they stand,
/// without those that only browsers without script have.
fn filled_in(page: &str) -> Vec<(String, String)> {
    let form = page.split("<form method=\"post\" action=\"/slab/").nth(1).unwrap().split("</form>").next().unwrap();
    let mut shown = String::new();
    for (i, part) in form.split("<template data-row>").enumerate() {
        shown += if i == 0 { part } else { part.split_once("</template>").unwrap().1 };
    }
    let plain = |text: &str| text.replace("&#34;", "\"").replace("&#39;", "'").replace("&amp;", "&");
    let attribute = |tag: &str, name: &str| {
        Some(plain(tag.split_once(&format!(" {name}=\""))?.1.split('"').next().unwrap_or_default()))
    };
    let mut fields = Vec::new();
    for tag in shown.split('<') {
        if tag.starts_with("input ") {
            fields.push((attribute(tag, "name").unwrap(), attribute(tag, "value").unwrap_or_default()));
        } else if tag.starts_with("select ") {
            fields.push((attribute(tag, "name").unwrap(), String::new()));
        } else if tag.starts_with("option ") && tag.contains(" selected") {
            fields.last_mut().unwrap().1 = attribute(tag, "value").unwrap();
        }
    }
    fields
}

#[test]
fn a_correction_begins_with_the_present_plan_and_resending_adds_nothing() {
    let rest = r#"{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},
        "cut_outs":[{"rectangles":[{"corner":["1 m","1 m"],"width":"2 ft","depth":"2 ft"}]}],"north":"12.5",
        "zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},
        {"name":"office"}]}"#;
    let angles = r#"{"kind":"plan","outline":{"walk":{"start":["1 ft","-2 ft"],"closing_turn":"left 90","limit":"1:300",
        "legs":[{"turn":"right 30","length":"10 ft"},{"turn":"90 left","length":"8 ft"},
        {"turn":"left 89°60'","length":"10 ft"},{"turn":"Left","length":"8 ft"}]}}}"#;
    let areas =
        r#"{"kind":"plan","outline":{"area":"90 m2"},"zones":[{"name":"A","shape":{"area":"10 m2"}},{"name":"B"}]}"#;
    let demo = DEMO.lines().find(|line| line.contains("\"kind\":\"plan\"")).unwrap();
    let demo: serde_json::Value = serde_json::from_str(demo).unwrap();
    let angles = angles.replace("89°60'", "90°00'");
    for body in [rest.to_owned(), angles, areas.to_owned(), demo["body"].to_string()] {
        let body = body.replace('\n', "");
        let site = Site::empty();
        let id = site.slab("shop", &format!("{JOB}\n{{\"happened\":\"2026-03-02 06:10\",\"body\":{body}}}"));
        let (before, _) = plan(&site, id);
        let page = site.get(&format!("/slab/{id}/plan/draw")).ends(200).holds("Correct the plan").text();
        let action = page.split("<form method=\"post\" action=\"/slab/").nth(1).unwrap().split('"').next().unwrap();
        let fields = filled_in(&page);
        let sent: Vec<(&str, &str)> = fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect();
        assert!(sent.iter().any(|(name, value)| *name == "happened" && *value == "2026-03-02 06:10"));
        let action = format!("/slab/{action}");
        for _ in 0..2 {
            let got = site.post(&action, &sent).ends(303);
            let location = got.header("location");
            assert!(location.starts_with(&format!("/slab/{id}/plan?said=plan-written&entry=")), "{location}");
        }
        assert_eq!(plans_written(&site, id), 2, "the old one, and one correction");
        let (after, _) = plan(&site, id);
        assert_eq!(after.area().as_square_feet().round(), before.area().as_square_feet().round());
        assert_eq!(after.north(), before.north());
        for zone in before.zones() {
            let same = after.zone(zone.name()).unwrap();
            assert!((same.area().as_square_feet() - zone.area().as_square_feet()).abs() < 1e-6, "{}", zone.name());
        }
        assert_eq!(
            after.walks().iter().map(|(_, w)| w.misclosure).collect::<Vec<_>>(),
            before.walks().iter().map(|(_, w)| w.misclosure).collect::<Vec<_>>()
        );
        assert_eq!(
            fold(&site.store.diary(id).unwrap(), Knowledge::happened_by(jiff::Timestamp::MAX)).entries().len(),
            2
        );
    }
}

#[test]
fn a_plan_that_forgets_a_zone_of_the_diary_is_doubted_and_not_refused() {
    let site = Site::empty();
    let id = site.slab("demo", DEMO);
    let rows = rooms(&[["shop", "", "", "30 ft", "30 ft"], ["", "40 ft", "", "2 ft", "2 ft"]]);
    let mut rows = rows;
    // The score lines of the demo lie in a zone that this plan does not have.
    rows.extend([("rest_name", "yard"), ("leave_lines", "1")]);
    let seen = post_as(&site, &look(id, "rooms"), &rows, "lang=en", "text/html").ends(200);
    let seen = seen.holds("the zone &#34;hall&#34;, which this plan does not have").holds("2 separate pieces");
    assert!(seen.text().contains("off this plan"));
    // Without script the same is asked for by a button.
    let page = site.post(&format!("/slab/{id}/plan/draw?way=rooms&look=1"), &rows).ends(200);
    page.holds("2 separate pieces").holds("value=\"yard\"");
    assert_eq!(plans_written(&site, id), 1);
    site.post(&draw(id, "rooms"), &rows).ends(303);
}

#[test]
fn the_map_says_what_every_place_is_and_where_the_next_drop_goes() {
    let site = Site::empty();
    let id = site.slab("demo", DEMO);
    let page = site.get(&format!("/slab/{id}/plan")).ends(200).text();
    for part in ["What every place is", "Red or black chalk lines, untreated", "100 % water stands", "slow to drink"] {
        assert!(page.contains(part), "{part}");
    }
    assert!(page.contains("It releases nothing"), "the map is worked out, not seen");
    // The next drop's form begins with its place.
    let href = page.split("class=\"button plain\" href=\"").find(|rest| rest.contains("add/water_drop?")).unwrap();
    let href = href.split('"').next().unwrap().replace("&#38;", "&").replace("&amp;", "&");
    let form = site.get(&href).ends(200).text();
    let x = href.split("x=").nth(1).unwrap().split('&').next().unwrap().replace('+', " ");
    assert!(form.contains(&format!("value=\"{x}\"")), "{href}");
    // Quiet layers are drawn and out of sight until their box is ticked.
    assert!(page.contains("class=\"p-layer off\" data-layer-of=\"score-lines\""));
    assert!(page.contains("data-layer=\"absorbency\" checked"));
    // The hatches of finishes come when they are asked for.
    assert!(!page.contains("data-layer-of=\"finishes\""));
    site.get(&format!("/slab/{id}/plan?finishes=yes")).ends(200).holds("data-layer-of=\"finishes\"");
    let spanish = site.get_as(&format!("/slab/{id}/plan"), "lang=es; measure=metric").ends(200).text();
    for part in ["Qué es cada lugar", "el agua se queda parada", "Poner una gota aquí"] {
        assert!(spanish.contains(part), "{part}");
    }
}

#[test]
fn a_slab_without_drops_says_where_the_first_six_go() {
    let site = Site::empty();
    let plan = r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"20 ft","depth":"10 ft"}]}}}"#;
    let id = site.slab("bare", plan);
    let page = site.get(&format!("/slab/{id}/plan")).ends(200).text();
    assert!(page.contains("100 % not tested enough"), "{page}");
    assert_eq!(page.matches("Put a drop here").count(), 5, "five at a time");
}

#[test]
fn an_incident_says_what_it_is_to_this_floor_and_what_to_do_about_it() {
    let site = Site::empty();
    let id = site.slab("demo", DEMO);
    let plan = site.get(&format!("/slab/{id}/plan")).ends(200).text();
    // In the list beside the drawing, not in its key.
    let (before, _) = plan.rsplit_once("Red or black chalk lines: open").unwrap();
    let (_, href) = before.rsplit_once("<a href=\"").unwrap();
    let href = href.split('"').next().unwrap().to_owned();
    let page = site.get(&href).ends(200).text();
    // A strip of 30 by 1 ft.
    for part in
        ["What it is to this floor", "nothing has been done about it", "30 ft² of shop", "dye stays under clear coat"]
    {
        assert!(page.contains(part), "{part}: {page}");
    }
    assert!(page.contains("/add/cleaning?of=") && page.contains("/add/retest?of="));
    assert!(!page.contains("/add/accepted?of="), "red chalk is not to be accepted (trade/incidents.toml)");
}

/// Water that stands at every drop is no map that has enough drops: the page must not call it enough.
#[test]
fn where_nothing_can_be_planned_the_page_does_not_say_enough() {
    let site = Site::empty();
    let plan = r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"20 ft","depth":"10 ft"}]}}}"#;
    let drops = [2, 6, 10, 14, 18].map(|x| {
        format!(r#"{{"happened":"2026-03-25 08:30","place":{{"point":["{x} ft","5 ft"]}},"body":{{"kind":"water_drop","still_stood_after":"12 min"}}}}"#)
    });
    let id = site.slab("tight", &[plan.to_owned(), drops.join("\n")].join("\n"));
    let page = site.get(&format!("/slab/{id}/plan")).ends(200).text();
    assert!(page.contains("100 % water stands") && page.contains("treat the surface first"), "{page}");
    assert!(!page.contains("Enough drops"));
}
