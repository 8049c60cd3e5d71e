//! Joints and score lines on their page, lines that a new plan keeps, and plans out of drawing files.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use axum::body::Body;
use axum::http::Request;
use axum::http::header::{ACCEPT, CONTENT_TYPE, COOKIE, HOST};
use common::{Got, Site};
use slab_diary::fold;
use slab_diary::{Body as Entry, Knowledge, SlabId};
use slab_plan::{Plan, PlanSpec};

const JOB: &str =
    r#"{"happened":"2026-03-01 07:00","body":{"kind":"job_opened","name":"shop","time_zone":"America/Chicago"}}"#;
/// 40 ft by 30 ft in two zones, with a joint through both and a grid in one.
const LINED: &str = r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan",
    "outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},
    "zones":[{"name":"West","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"20 ft","depth":"30 ft"}]}},{"name":"East"}],
    "joints":[{"line":[["0 ft","15 ft"],["40 ft","15 ft"]],"kind":"construction"},
              {"line":[["10 ft","0"],["10 ft","15 ft"],["12 ft","30 ft"]],"kind":"saw_cut","zone":"West"}],
    "score_lines":[{"grid":{"spacing_x":"4 ft","spacing_y":"5 ft","origin":["1 ft","0"],"turn":"left 30","zone":"East"}},
                   {"diagonal":{"spacing":"3 ft"}},{"border":{"inset":"18 in","zone":"West"}},
                   {"lines":{"lines":[[["0","0"],["40 ft","30 ft"]],[["0","30 ft"],["20 ft","14 ft"],["40 ft","0"]]]}}]}}"#;
const POUR: &str = r#"{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"4021","thickness":"4 in"}}"#;

fn of(lines: &[&str]) -> (Site, SlabId) {
    let site = Site::empty();
    let all: Vec<String> = std::iter::once(&JOB).chain(lines).map(|line| line.replace('\n', "")).collect();
    let id = site.slab("shop", &all.join("\n"));
    (site, id)
}

fn square(width: &str, depth: &str) -> String {
    format!(
        r#"{{"happened":"2026-03-02 06:10","body":{{"kind":"plan","outline":{{"rectangles":[{{"corner":["0","0"],"width":"{width}","depth":"{depth}"}}]}}}}}}"#
    )
}

/// The plan that stands, as it is kept.
fn spec(site: &Site, id: SlabId) -> PlanSpec {
    let diary = site.store.diary(id).unwrap();
    let slab = fold(&diary, Knowledge::happened_by(jiff::Timestamp::MAX));
    let (seen, error) = slab.plan_entry().unwrap();
    assert_eq!(error, None);
    seen.body.clone()
}

fn plans_written(site: &Site, id: SlabId) -> usize {
    site.store.diary(id).unwrap().entries().filter(|e| matches!(e.body, Entry::Plan(_))).count()
}

fn post_as(site: &Site, path: &str, fields: &[(&str, &str)], cookies: &str, accept: &str) -> Got {
    let body = form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish();
    let request = Request::post(path).header(HOST, "localhost").header(COOKIE, cookies).header(ACCEPT, accept);
    site.send(request.header(CONTENT_TYPE, "application/x-www-form-urlencoded").body(Body::from(body)).unwrap())
}

/// What a browser would send of a page's first form, pressing no button.
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
    let mut fields: Vec<(String, String)> = Vec::new();
    for tag in shown.split('<') {
        let tag = tag.split('>').next().unwrap_or_default();
        if tag.starts_with("input ") && !tag.contains("type=\"file\"") {
            if !tag.contains("type=\"checkbox\"") || tag.ends_with(" checked") {
                fields.push((attribute(tag, "name").unwrap(), attribute(tag, "value").unwrap_or_default()));
            }
        } else if tag.starts_with("select ") {
            fields.push((attribute(tag, "name").unwrap(), String::new()));
        } else if tag.starts_with("option ") && tag.ends_with(" selected") {
            fields.last_mut().unwrap().1 = attribute(tag, "value").unwrap();
        }
    }
    fields
}

fn pairs(fields: &[(String, String)]) -> Vec<(&str, &str)> {
    fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect()
}

/// Rows of rooms: name, along, up, width, depth.
fn rooms<'a>(rows: &[[&'a str; 5]]) -> Vec<(&'a str, &'a str)> {
    let names = ["room_name[]", "room_x[]", "room_y[]", "room_width[]", "room_depth[]"];
    rows.iter().flat_map(|row| names.into_iter().zip(*row)).collect()
}

/// Rows of joints: from, to, how it was made.
fn joints<'a>(rows: &[[&'a str; 5]]) -> Vec<(&'a str, &'a str)> {
    let names = ["joint_x[]", "joint_y[]", "joint_to_x[]", "joint_to_y[]", "joint_kind[]"];
    rows.iter().flat_map(|row| names.into_iter().zip(*row)).collect()
}

fn page(id: SlabId, name: &str) -> String {
    format!("/slab/{id}/plan/{name}")
}

// ---- Lines that a new plan keeps.

#[test]
fn a_plan_drawn_anew_keeps_joints_and_score_lines() {
    let (site, id) = of(&[LINED]);
    let before = spec(&site, id);
    site.get(&page(id, "draw")).ends(200).holds("has 2 joints and 4 patterns of score lines; the new plan keeps them");
    site.get_as(&page(id, "draw"), "lang=es").holds("2 juntas y 4 dibujos");
    let rows = rooms(&[["West", "", "", "20 ft", "30 ft"], ["East", "20 ft", "", "21 ft", "30 ft"]]);
    site.post(&page(id, "draw?way=rooms"), &rows).ends(303);
    let after = spec(&site, id);
    assert_eq!((&after.joints, &after.score_lines), (&before.joints, &before.score_lines));
    assert!((Plan::resolve(&after).unwrap().area().as_square_feet() - 1230.0).abs() < 1e-6);
    // The form that corrects the plan begins with what stands, lines and all.
    let fields = filled_in(&site.get(&page(id, "draw")).ends(200).text());
    site.post(&page(id, "draw?way=rooms"), &pairs(&fields)).ends(303);
    assert_eq!(spec(&site, id).score_lines, before.score_lines);
}

#[test]
fn lines_that_no_longer_fit_are_told_and_can_be_left_out() {
    let (site, id) = of(&[LINED]);
    let nameless = rooms(&[["", "", "", "40 ft", "30 ft"]]);
    let got = site.post(&page(id, "draw?way=rooms"), &nameless).ends(422);
    let got = got.holds("id=\"mistake-leave_lines\"").holds("Joint 2 of the old plan: There is no zone &#34;West&#34;");
    got.holds("name=\"leave_lines\"");
    let got = post_as(&site, &page(id, "draw?way=rooms"), &nameless, "lang=es", "application/json").ends(422);
    let answer: serde_json::Value = serde_json::from_str(&got.text()).unwrap();
    assert_eq!(answer["mistakes"][0]["field"], "leave_lines");
    assert!(answer["mistakes"][0]["message"].as_str().unwrap().starts_with("Junta 2 del plano anterior: No hay zona"));
    let area = [("area", "1200 ft2")];
    site.post(&page(id, "draw?way=area"), &area).ends(422).holds("Only the area is known");
    assert_eq!(plans_written(&site, id), 1);
    // The look says the same as it is typed, and the box alone is no plan.
    post_as(&site, &page(id, "look?way=rooms"), &nameless, "lang=en", "text/html").holds("Joint 2 of the old plan");
    post_as(&site, &page(id, "look?way=rooms"), &[("leave_lines", "1")], "lang=en", "text/html")
        .holds("The drawing appears here");
    let without: Vec<_> = nameless.into_iter().chain([("leave_lines", "1")]).collect();
    site.post(&page(id, "draw?way=rooms"), &without).ends(303);
    let after = spec(&site, id);
    assert!(after.joints.is_empty() && after.score_lines.is_empty());
    // Nothing to carry over, nothing to leave out.
    assert!(!site.get(&page(id, "draw")).text().contains("leave_lines"));
}

// ---- The page of lines.

#[test]
fn every_line_of_a_plan_comes_back_from_its_own_form() {
    let (site, id) = of(&[LINED, POUR]);
    let before = spec(&site, id);
    let shown = site.get(&page(id, "lines")).ends(200).text();
    let mut fields = filled_in(&shown);
    fields.push(("step".to_owned(), "write".to_owned()));
    for _ in 0..2 {
        let got = site.post(&page(id, "lines"), &pairs(&fields)).ends(303);
        let location = got.header("location");
        assert!(location.starts_with(&format!("/slab/{id}/plan?said=plan-written&entry=")), "{location}");
    }
    assert_eq!(plans_written(&site, id), 2, "one more, however often it is sent");
    let after = spec(&site, id);
    assert_eq!(serde_json::to_value(&after).unwrap(), serde_json::to_value(&before).unwrap());
}

#[test]
fn lines_replace_those_of_the_plan_and_nothing_else_of_it() {
    let (site, id) = of(&[LINED]);
    let before = spec(&site, id);
    let mut fields = joints(&[["", "", "", "", ""], ["20", "0", "20", "30", "saw_cut"]]);
    fields.extend([("border_inset[]", "1' 6\""), ("border_zone[]", "East"), ("step", "write")]);
    site.post(&page(id, "lines"), &fields).ends(303);
    let after = spec(&site, id);
    assert_eq!((&after.outline, &after.zones), (&before.outline, &before.zones));
    let kept = serde_json::to_value(&after).unwrap();
    assert_eq!(kept["joints"], serde_json::json!([{"line": [["20 ft", "0"], ["20 ft", "30 ft"]], "kind": "saw_cut"}]));
    assert_eq!(kept["score_lines"], serde_json::json!([{"border": {"inset": "1' 6\"", "zone": "East"}}]));
}

#[test]
fn lengths_sections_and_tiles_are_told() {
    let (site, id) = of(&[&square("40 ft", "30 ft")]);
    let mut fields = joints(&[["20 ft", "0", "20 ft", "30 ft", ""], ["0", "10 ft", "40 ft", "10 ft", ""]]);
    // Lines at 16 ft along and at 20 ft up: tiles of 16 by 20 ft, one of each row and column cut.
    fields.extend([("grid_spacing_x[]", "16 ft"), ("grid_spacing_y[]", "20 ft"), ("wish", "650 ft2")]);
    let seen = post_as(&site, &page(id, "lines/look"), &fields, "lang=en", "text/html").ends(200);
    // 30 + 40 ft of joints make 4 sections of 20 by 10 and 20 by 20 ft; joined, no two exceed 650 ft².
    let seen =
        seen.holds("2 joints, 70&#39; 0&#34; in all").holds("4 sections between the joints, from 200 ft² to 400 ft²");
    let seen = seen.holds("For 650 ft² at a time: 2 sections, from 600 ft² to 600 ft²");
    // Grid lines: x = 16 and 32, y = 20: 2 · 30 + 40 ft. Whole: 2 of 16 by 20; cut: 8 by 20, and 3 of 10 ft depth;
    // 8 ft is half of 16 and no sliver, 10 ft neither.
    let seen = seen.holds("100&#39; 0&#34;").holds("2 whole, 4 cut; no slivers");
    let seen = seen.holds("class=\"picture\"").holds("data-layer-of=\"joints\"").holds("data-layer-of=\"score-lines\"");
    seen.holds("Write the thickness of the slab to have the joints checked");
    fields.push(("sliver", "60"));
    let seen = post_as(&site, &page(id, "lines/look"), &fields, "lang=es; measure=metric", "text/html").ends(200);
    // Below 60 % of 16 ft, which is 9.6 ft: the two of 8 ft.
    seen.holds("2 enteros, 4 cortados; 2 tiras angostas").holds("4 paños entre juntas");
}

#[test]
fn existing_joints_are_checked_by_the_thickness_of_the_diary_with_grades_and_facts() {
    let (site, id) = of(&[LINED, POUR]);
    let seen = site.get(&page(id, "lines")).ends(200);
    // 24 and 36 times 4 in.
    let seen = seen
        .holds("The diary says 4&#34;")
        .holds("For a slab 4&#34; thick the rule has joints 8&#39; 0&#34; to 12&#39; 0&#34; apart");
    let seen = seen.holds("the rule has it no longer than 12&#39; 0&#34;").holds("href=\"/facts#joint-spacing\"");
    let seen =
        seen.holds("How sure: ").holds("not an engineer&#39;s design: the drawings and the engineer of record govern");
    assert!(!seen.text().contains("lines-finding") && !seen.text().contains("lines-rule"), "{}", seen.text());
    let spanish = site.get_as(&page(id, "lines"), "lang=es").ends(200);
    spanish.holds("Es una regla de campo, no el diseño de un ingeniero").holds("la regla no lo quiere de más de");
}

#[test]
fn saw_cuts_are_proposed_into_the_rows_and_written_only_when_asked() {
    let (site, id) = of(&[&square("24 ft", "24 ft")]);
    let mut fields = joints(&[["0", "3 ft", "24 ft", "3 ft", "isolation"], ["1 ft", "0", "1 ft", "24 ft", "saw_cut"]]);
    fields.extend([("border_inset[]", "odd"), ("step", "propose")]);
    // No thickness in the diary: it is asked for, and what was typed stays.
    let got = site.post(&page(id, "lines"), &fields).ends(422).holds("id=\"mistake-thickness\"");
    got.holds("The thickness of the slab is needed").holds("value=\"odd\"").holds("value=\"1 ft\"");
    fields.push(("thickness", "4"));
    let got = site.post(&page(id, "lines"), &fields).ends(200).holds("value=\"odd\"").holds("value=\"3 ft\"").text();
    assert_eq!(plans_written(&site, id), 1);
    // 24 ft by at most 12 ft: one cut each way through the middle.
    let sent = filled_in(&got);
    let cells = |name: &str| -> Vec<String> {
        sent.iter().filter(|(n, v)| n == name && !v.is_empty()).map(|(_, v)| v.clone()).collect()
    };
    assert_eq!(cells("joint_kind[]"), ["isolation", "saw_cut", "saw_cut"]);
    assert!(!cells("joint_x[]").contains(&"1 ft".to_owned()), "the old saw cut made room");
    let mut fields: Vec<(String, String)> = sent.into_iter().filter(|(name, _)| name != "border_inset[]").collect();
    fields.push(("step".to_owned(), "write".to_owned()));
    site.post(&page(id, "lines"), &pairs(&fields)).ends(303);
    let plan = Plan::resolve(&spec(&site, id)).unwrap();
    assert_eq!(plan.joints().len(), 3);
    let cuts = slab_plan::layout::joint_lines(&plan).unwrap();
    assert!((cuts.length.as_feet() - 72.0).abs() < 0.02, "{}", cuts.length.as_feet());
    // With the proposal alone the rule is met, and the page does not say more than that.
    let fields = joints(&[["12 ft", "0", "12 ft", "24 ft", "saw_cut"], ["0", "12 ft", "24 ft", "12 ft", "saw_cut"]]);
    let fields: Vec<_> = fields.into_iter().chain([("thickness", "4 in")]).collect();
    post_as(&site, &page(id, "lines/look"), &fields, "lang=en", "text/html")
        .holds("Nothing speaks against these joints");
}

/// What is typed, the field it is wrong at, and a part of what is said.
type Odd<'a> = (&'a [(&'a str, &'a str)], &'a str, &'a str);

#[test]
fn what_is_wrong_stands_at_its_field_with_what_is_accepted_and_nothing_typed_is_lost() {
    let (site, id) = of(&[LINED]);
    let odd: [Odd<'_>; 16] = [
        (&joints(&[["", "", "", "", ""], ["0", "wide", "9", "9", ""]]), "joint_y[1]", "There is no number in \"wide\""),
        (&joints(&[["50 ft", "0", "50 ft", "9 ft", ""]]), "joint_x[0]", "Nothing of this line lies on the slab"),
        (&joints(&[["1 ft", "0", "1 ft", "0", ""]]), "joint_x[0]", "has no length"),
        (&joints(&[["0", "0", "9 ft", "9 ft", "glue"]]), "joint_kind[0]", "Choose one of the list"),
        (&[("joint_to_x[]", "9 ft"), ("joint_via[]", "here")], "joint_via[0]", "such as [["),
        (
            &[("joint_to_x[]", "9 ft"), ("joint_to_y[]", "9 ft"), ("joint_zone[]", "Attic")],
            "joint_zone[0]",
            "no zone \"Attic\"",
        ),
        (&[("grid_spacing_x[]", "0 ft")], "grid_spacing_x[0]", "has no length"),
        (&[("grid_spacing_x[]", "1 mm")], "grid_spacing_x[0]", "lines; there may be"),
        (&[("grid_spacing_x[]", "4 ft"), ("grid_spacing_y[]", "-1 ft")], "grid_spacing_y[0]", "\"-1 ft\""),
        (&[("grid_spacing_x[]", "4 ft"), ("grid_angle[]", "30")], "grid_side[0]", "Choose the side too"),
        (
            &[("grid_spacing_x[]", "4 ft"), ("grid_side[]", "left"), ("grid_angle[]", "x")],
            "grid_angle[0]",
            "is no angle",
        ),
        (&[("diagonal_spacing[]", "4 parsecs")], "diagonal_spacing[0]", "parsecs"),
        (&[("border_inset[]", "16 ft")], "border_inset[0]", "leaves nothing inside"),
        (&[("free_to_x[]", "9 ft"), ("free_zone[]", "Attic")], "free_zone[0]", "no zone \"Attic\""),
        (&[("free_to_x[]", "11 km")], "free_to_x[0]", "too large"),
        (&[("free_x[]", "60 ft"), ("free_y[]", "1 ft"), ("free_to_x[]", "70 ft")], "free_x[0]", "Nothing of this line"),
    ];
    for (typed, field, said) in odd {
        let fields: Vec<(&str, &str)> = typed.iter().copied().chain([("step", "write")]).collect();
        let got = post_as(&site, &page(id, "lines"), &fields, "lang=en", "application/json").ends(422);
        let answer: serde_json::Value = serde_json::from_str(&got.text()).unwrap();
        assert_eq!(answer["mistakes"][0]["field"], field, "{}", got.text());
        let message = answer["mistakes"][0]["message"].as_str().unwrap();
        assert!(message.contains(said) || said == "too large", "{field}: {message}");
        for lang in ["lang=en", "lang=es"] {
            let shown = post_as(&site, &page(id, "lines"), &fields, lang, "text/html").ends(422).text();
            assert!(
                shown.contains(&format!("id=\"mistake-{field}\"")) && shown.contains(&format!("#field-{field}")),
                "{field}"
            );
            for (name, value) in typed.iter().filter(|(_, value)| !value.is_empty()) {
                let value = value.replace('"', "&#34;");
                assert!(shown.contains(&format!("value=\"{value}\"")), "{field}: {name}={value} is lost");
            }
        }
    }
    // The reckoning's own fields are told too, and keep nothing from being written.
    let tools = [("thickness", "thin"), ("wish", "0 ft2"), ("sliver", "much"), ("step", "look")];
    let got = site
        .post(&page(id, "lines"), &tools)
        .ends(422)
        .holds("id=\"mistake-thickness\"")
        .holds("id=\"mistake-sliver\"");
    got.holds("is no share").holds("An area above 0 ft² is needed");
    assert_eq!(plans_written(&site, id), 1);
}

#[test]
fn more_rows_keep_what_was_typed() {
    let (site, id) = of(&[&square("40 ft", "30 ft")]);
    let fields = [("joint_x[]", "odd"), ("grid_spacing_x[]", "4"), ("step", "more")];
    let shown = site.post(&page(id, "lines"), &fields).ends(200).holds("value=\"odd\"").text();
    let count = |page: &str, name: &str| filled_in(page).iter().filter(|(n, _)| n == name).count();
    let blank = site.get(&page(id, "lines")).ends(200).text();
    for name in ["joint_x[]", "grid_spacing_x[]", "border_inset[]", "free_x[]", "diagonal_spacing[]"] {
        assert!(count(&shown, name) >= count(&blank, name) + 5, "{name}");
    }
}

#[test]
fn without_a_drawn_plan_the_page_says_what_to_do() {
    for lines in [&[][..], &[r#"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"area":"900 ft2"}}}"#]]
    {
        let (site, id) = of(lines);
        site.get(&page(id, "lines")).ends(200).holds("Draw the slab first").holds("/plan/draw");
        site.post(&page(id, "lines"), &[("step", "write")]).ends(422).holds("Draw the slab first");
        site.post(&page(id, "lines/look"), &[]).ends(404);
    }
}

#[test]
fn the_pages_around_a_plan_lead_to_each_other() {
    let (site, id) = of(&[LINED]);
    for name in ["draw", "lines", "dxf"] {
        let shown = site.get(&page(id, name)).ends(200).text();
        for other in ["draw?way=rooms", "lines", "dxf"] {
            assert!(shown.contains(&format!("href=\"{}\"", page(id, other))), "{name} to {other}");
        }
    }
    let (site, id) = of(&[]);
    site.get(&format!("/slab/{id}/plan")).holds(&page(id, "dxf"));
}

#[test]
fn hostile_texts_in_lines_stay_texts() {
    let (site, id) = of(&[LINED]);
    let evil = "<script>alert(1)</script>\" onload=\"x";
    let names = ["joint_x[]", "joint_kind[]", "joint_zone[]", "joint_via[]", "grid_spacing_x[]", "grid_zone[]", "wish"];
    let fields: Vec<(&str, &str)> = names.into_iter().map(|name| (name, evil)).chain([("sliver", evil)]).collect();
    for path in ["lines", "lines/look"] {
        let shown = site.post(&page(id, path), &fields).text();
        assert!(!shown.contains("<script>alert") && !shown.contains("\" onload"), "{shown}");
    }
    // Thousands of rows and a plan of text are no plan either, and no panic.
    let many: Vec<(&str, &str)> = (0..2_000)
        .flat_map(|_| [("joint_to_x[]", "9 ft"), ("joint_to_y[]", "9 ft")])
        .chain([("step", "write")])
        .collect();
    site.post(&page(id, "lines"), &many).ends(422).holds("are too many");
    for path in ["lines", "lines/look"] {
        site.post(&page(id, path), &vec![("joint_x[]", "1"); 2_001]).ends(413);
    }
}

// ---- Plans out of drawing files.

fn sample(name: &str) -> Vec<u8> {
    std::fs::read(format!("{}/../../reference/plan/dxf/{name}", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

fn send(site: &Site, id: SlabId, name: &str, bytes: &[u8]) -> Got {
    site.post_files(&page(id, "dxf"), &[("step", "look")], &[("file", name, bytes)])
}

/// The form as it came, with some fields changed and a button pressed.
fn pressed(shown: &str, changed: &[(&str, &str)], roles: &[&str], step: &str) -> Vec<(String, String)> {
    let mut fields = filled_in(shown);
    for (name, value) in &mut fields {
        if let Some((_, new)) = changed.iter().find(|(known, _)| known == name) {
            (*new).clone_into(value);
        }
    }
    let mut roles = roles.iter();
    for (_, value) in fields.iter_mut().filter(|(name, _)| name == "role[]") {
        if let Some(role) = roles.next() {
            (*role).clone_into(value);
        }
    }
    fields.push(("step".to_owned(), step.to_owned()));
    fields
}

/// Layers of the committed drawings stand by name: JOINTS, PITS, SLAB, ZONES, after 0.
fn roles_of(shown: &str) -> Vec<String> {
    let names = shown.split("<b>").skip(1).filter_map(|rest| rest.split_once("</b></label>")).map(|(name, _)| name);
    let role = |name: &str| match name {
        "SLAB" => "outline",
        "PITS" => "cut-outs",
        "ZONES" => "zones",
        "JOINTS" => "joints",
        _ => "",
    };
    names.map(|name| role(name).to_owned()).collect()
}

#[test]
fn a_drawing_is_looked_at_chosen_and_only_then_written() {
    let (site, id) = of(&[]);
    let shown = send(&site, id, "floor.dxf", &sample("zones_joints.dxf")).ends(200).holds("floor.dxf").text();
    assert_eq!(plans_written(&site, id), 0);
    assert!(shown.contains("as the file says: feet: 40&#39; 0&#34; by 30&#39; 0&#34;"), "{shown}");
    assert!(shown.contains("2 closed lines: 600 ft², 600 ft²."), "{shown}");
    let roles = roles_of(&shown);
    let roles: Vec<&str> = roles.iter().map(String::as_str).collect();
    let looked = site.post(&page(id, "dxf"), &pairs(&pressed(&shown, &[], &roles, "look"))).ends(200);
    // 1200 ft² less an ellipse of half axes 3 and 1.5 ft, π · 4.5.
    let looked = looked.holds("class=\"picture\"").holds("1,186 ft²").holds("2 joints.").holds("Salón").text();
    assert_eq!(plans_written(&site, id), 0);
    for _ in 0..2 {
        let got = site.post(&page(id, "dxf"), &pairs(&pressed(&looked, &[], &roles, "write"))).ends(303);
        let location = got.header("location");
        assert!(location.starts_with(&format!("/slab/{id}/plan?said=plan-written&entry=")), "{location}");
    }
    assert_eq!(plans_written(&site, id), 1);
    let plan = spec(&site, id);
    assert_eq!((plan.zones.len(), plan.joints.len(), plan.cut_outs.len()), (2, 2, 1));
    // Another drawing over it says that its lines are not carried over.
    send(&site, id, "b.dxf", &sample("rectangle_mm.dxf")).ends(200).holds("They are not carried over");
}

#[test]
fn the_unit_is_asked_for_where_the_file_does_not_tell() {
    let (site, id) = of(&[]);
    let shown =
        send(&site, id, "a.dxf", &sample("no_units.dxf")).ends(200).holds("choose: the file does not say").text();
    assert!(shown.contains("The file does not say in what unit it is drawn") && !shown.contains("value=\"write\""));
    let without = pressed(&shown, &[], &[], "write");
    site.post(&page(id, "dxf"), &pairs(&without)).ends(422).holds("id=\"mistake-unit\"").holds("href=\"#field-unit\"");
    let wide = pressed(&shown, &[("unit", "m")], &[], "look");
    site.post(&page(id, "dxf"), &pairs(&wide)).ends(200).holds("6,458 ft²");
    let feet = pressed(&shown, &[("unit", "ft")], &[], "write");
    site.post(&page(id, "dxf"), &pairs(&feet)).ends(303);
    assert!((Plan::resolve(&spec(&site, id)).unwrap().area().as_square_feet() - 600.0).abs() < 1e-6);
}

/// The areas that an independent reader found in the committed drawings (see `make_drawings.py`).
#[test]
fn every_committed_drawing_is_shown_with_its_areas_in_both_languages() {
    let areas: serde_json::Value = serde_json::from_slice(&sample("areas.json")).unwrap();
    let mut shown = 0;
    for (name, wanted) in areas.as_object().unwrap() {
        let (site, id) = of(&[]);
        let got = send(&site, id, name, &sample(name)).ends(200).holds(name);
        let page = got.text();
        let closed = wanted["slab"].as_array().unwrap().len();
        assert!(page.contains("<b>SLAB</b>"), "{name}");
        match closed {
            0 => assert!(page.contains("the narrowest gap is 1&#34;, from "), "{name}: {page}"),
            1 => assert!(page.contains("1 closed line: "), "{name}"),
            n => assert!(page.contains(&format!("{n} closed lines: ")), "{name}"),
        }
        assert!(!page.contains("dxf-holds") && !page.contains("dxf-unit"), "{name}");
        shown += 1;
    }
    assert_eq!(shown, 8);
}

#[test]
fn what_is_wrong_with_a_drawing_is_told_where_it_is_in_both_languages() {
    let (site, id) = of(&[]);
    let shown = send(&site, id, "a.dxf", &sample("open_loop.dxf")).ends(200).text();
    let row = roles_of(&shown).iter().position(|role| role == "outline").unwrap();
    let roles: Vec<String> =
        roles_of(&shown).into_iter().map(|r| if r == "outline" { r } else { String::new() }).collect();
    let roles: Vec<&str> = roles.iter().map(String::as_str).collect();
    let open = pressed(&shown, &[], &roles, "write");
    // 25 mm, told as a tape reads it.
    let got = site.post(&page(id, "dxf"), &pairs(&open)).ends(422).holds(&format!("id=\"mistake-role[{row}]\""));
    got.holds("is open by 1&#34;, from (0; ").holds("Make the ends meet");
    let got = post_as(&site, &page(id, "dxf"), &pairs(&open), "lang=es; measure=metric", "text/html").ends(422);
    got.holds("está abierta por 25 mm").holds("Haga que las puntas se junten");
    let none: Vec<&str> = roles.iter().map(|_| "").collect();
    let none = pressed(&shown, &[], &none, "write");
    site.post(&page(id, "dxf"), &pairs(&none)).ends(422).holds("No layer is chosen as the line around the slab");
    let two = file(&(ring("A", [0, 0, 9, 6]) + &ring("B", [1, 1, 2, 2])));
    let two = send(&site, id, "two.dxf", two.as_bytes()).ends(200).text();
    let two = pressed(&two, &[("unit", "m")], &["outline", "outline"], "write");
    site.post(&page(id, "dxf"), &pairs(&two)).ends(422).holds("More than one layer is chosen");
    site.post(&page(id, "dxf"), &[("step", "write"), ("kept", "0000")]).ends(422).holds("no longer here");
    site.post(&page(id, "dxf"), &[("step", "write")]).ends(422).holds("Choose a drawing file first");
    assert_eq!(plans_written(&site, id), 0);
}

fn file(entities: &str) -> String {
    format!("0\nSECTION\n2\nENTITIES\n{entities}0\nENDSEC\n0\nEOF\n")
}

fn ring(layer: &str, [x, y, to_x, to_y]: [i32; 4]) -> String {
    let corners = [(x, y), (to_x, y), (to_x, to_y), (x, to_y)];
    let corners: String = corners.iter().map(|(x, y)| format!("10\n{x}\n20\n{y}\n")).collect();
    format!("0\nLWPOLYLINE\n8\n{layer}\n70\n1\n{corners}")
}

fn line(layer: &str, [x, y, to_x, to_y]: [i32; 4]) -> String {
    format!("0\nLINE\n8\n{layer}\n10\n{x}\n20\n{y}\n11\n{to_x}\n21\n{to_y}\n")
}

#[test]
fn lines_of_joint_layers_along_the_edge_are_left_out_and_told() {
    let (site, id) = of(&[]);
    let drawn = file(&(ring("A", [0, 0, 9, 6]) + &line("B", [0, 0, 9, 0]) + &line("B", [3, 0, 3, 6])));
    let shown = send(&site, id, "a.dxf", drawn.as_bytes()).ends(200).text();
    let sent = pressed(&shown, &[("unit", "m")], &["outline", "joints"], "look");
    site.post(&page(id, "dxf"), &pairs(&sent)).ends(200).holds("1 line of the joint layers lies off the slab");
    let sent = pressed(&shown, &[("unit", "m")], &["outline", "joints"], "write");
    site.post(&page(id, "dxf"), &pairs(&sent)).ends(303);
    assert_eq!(spec(&site, id).joints.len(), 1);
}

#[test]
fn each_way_of_being_wrong_has_its_sentence() {
    let (site, id) = of(&[]);
    let crossing =
        line("A", [0, 0, 4, 0]) + &line("A", [4, 0, 4, 3]) + &line("A", [4, 3, 0, 0]) + &line("A", [4, 0, 9, 9]);
    let outside = ring("A", [0, 0, 9, 6]) + &ring("B", [8, 5, 12, 7]);
    let apart = ring("A", [0, 0, 9, 6]) + &ring("A", [20, 0, 22, 2]);
    let open = ring("A", [0, 0, 9, 6]) + "0\nTEXT\n8\nB\n10\n1\n20\n1\n1\nhall\n";
    let wide = ring("A", [0, 0, 20_000, 6]);
    let zones = ring("A", [0, 0, 9, 6]) + &ring("B", [0, 0, 5, 5]) + &ring("B", [1, 1, 6, 6]);
    let cases: [(String, &[&str], &str, &str, &str); 6] = [
        (crossing, &["outline"], "role[0]", "3 lines meet at (4; 0)", "3 líneas se juntan en (4; 0)"),
        (outside, &["outline", "cut-outs"], "role[1]", "reaches outside the slab at (", "sale de la losa en ("),
        (apart, &["outline"], "role[0]", "2 closed lines that lie apart", "2 líneas cerradas apartadas"),
        (open, &["outline", "zones"], "role[1]", "has no closed line", "no tiene ninguna línea cerrada"),
        (wide, &["outline"], "unit", "Choose another unit", "Escoja otra unidad"),
        (zones, &["outline", "zones"], "layers", "share", "se enciman"),
    ];
    for (entities, roles, field, english, spanish) in cases {
        let shown = send(&site, id, "a.dxf", file(&entities).as_bytes()).ends(200).text();
        let sent = pressed(&shown, &[("unit", "m")], roles, "write");
        for (lang, said) in [("lang=en; measure=metric", english), ("lang=es; measure=metric", spanish)] {
            let got = post_as(&site, &page(id, "dxf"), &pairs(&sent), lang, "application/json").ends(422);
            let answer: serde_json::Value = serde_json::from_str(&got.text()).unwrap();
            assert_eq!(answer["mistakes"][0]["field"], field, "{}", got.text());
            assert!(answer["mistakes"][0]["message"].as_str().unwrap().contains(said), "{}", got.text());
        }
        site.post(&page(id, "dxf"), &pairs(&sent)).ends(422).holds(&format!("href=\"#field-{field}\""));
    }
    assert_eq!(plans_written(&site, id), 0);
}

#[test]
fn files_that_are_no_drawing_are_refused_with_a_sentence() {
    let (site, id) = of(&[]);
    let block = |name: &str, holds: &str| format!("0\nBLOCK\n8\n0\n2\n{name}\n70\n0\n10\n0\n20\n0\n{holds}0\nENDBLK\n");
    let insert = |name: &str| format!("0\nINSERT\n8\nA\n2\n{name}\n10\n0\n20\n0\n");
    let nested = format!(
        "0\nSECTION\n2\nBLOCKS\n{}0\nENDSEC\n{}",
        block("<b>LOOP", &insert("<b>LOOP")),
        file(&insert("<b>LOOP"))
    );
    let odd: [(&str, Vec<u8>, &str, &str); 11] = [
        ("empty.dxf", b"  \r\n".to_vec(), "empty or binary", "vacío o es binario"),
        ("binary.dxf", b"Binary DXF\r\n\x1a\0".to_vec(), "empty or binary", "vacío o es binario"),
        ("picture.dxf", vec![0xFF, 0xD8, 0xFF, 0xE0, 0, 0x10], "empty or binary", "vacío o es binario"),
        ("text.dxf", b"<script>\nworld\n".to_vec(), "Line 1 of the file has", "El renglón 1 del archivo tiene"),
        ("code.dxf", file(&line("A", [0; 4])).replacen("\n0\n", "\nNaN\n", 1).into_bytes(), "is due", "donde va"),
        (
            "number.dxf",
            file("0\nLINE\n8\nA\n10\nNaN\n").into_bytes(),
            "a number up to 10^12 is due",
            "un número de hasta 10^12",
        ),
        ("comma.dxf", file("0\nLINE\n8\nA\n10\n1,5\n").into_bytes(), "where a number is due", "va un número."),
        ("huge.dxf", file("0\nLINE\n8\nA\n10\n1e300\n").into_bytes(), "a number up to 10^12", "hasta 10^12"),
        ("cut.dxf", b"0\nSECTION\n2\nENTITIES\n0\nLINE\n10\n1".to_vec(), "it was cut short", "está cortado"),
        ("nested.dxf", nested.into_bytes(), "holds itself", "se contiene a sí mismo"),
        ("large.dxf", vec![b' '; (32 << 20) + 1], "larger than 32 MB", "pasa de 32 MB"),
    ];
    for (name, bytes, english, spanish) in odd {
        let got = send(&site, id, name, &bytes).ends(422).holds("id=\"mistake-file\"").holds(english);
        assert!(!got.text().contains("<script>\n") && !got.text().contains("<b>LOOP"), "{name}");
        let request = Request::post(page(id, "dxf")).header(HOST, "localhost").header(COOKIE, "lang=es");
        let head = "--edge\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.dxf\"\r\n\r\n";
        let body: Vec<u8> = head.bytes().chain(bytes).chain(*b"\r\n--edge--\r\n").collect();
        let request = request.header(CONTENT_TYPE, "multipart/form-data; boundary=edge");
        site.send(request.body(Body::from(body)).unwrap()).ends(422).holds(spanish);
    }
    let crowd = file(&line("A", [0, 0, 1, 1]).repeat(200_001));
    send(&site, id, "crowd.dxf", crowd.as_bytes()).ends(422).holds("holds too much");
    assert_eq!(plans_written(&site, id), 0);
}

#[test]
fn names_out_of_a_file_stay_text() {
    let (site, id) = of(&[]);
    let evil = "<script>alert(1)</script>";
    let drawn = file(
        &(ring(evil, [0, 0, 9, 6])
            + &format!("0\nTEXT\n8\n{evil}\n10\n1\n20\n1\n1\n<img src=x onerror=alert(1)>\n")
            + "0\n<b>DRAGON\n8\nX\n10\n0\n"
            + &ring(&"x".repeat(5_000), [1, 1, 2, 2])),
    );
    let shown = send(&site, id, "<img src=x>.dxf", drawn.as_bytes()).ends(200).text();
    for text in ["<script>alert", "<img", "<b>DRAGON"] {
        assert!(!shown.contains(text), "{text}: {shown}");
    }
    assert!(shown.contains("&#60;script&#62;alert(1)") && !shown.contains(&"x".repeat(200)));
    let layers = file(&(0..300).map(|n| ring(&format!("L{n:03}"), [0, 0, 9, 6])).collect::<String>());
    send(&site, id, "many.dxf", layers.as_bytes()).ends(200).holds("100 more layers are not shown");
}

#[test]
fn a_file_that_waits_is_of_one_slab_only() {
    let (site, id) = of(&[]);
    let shown = send(&site, id, "a.dxf", &sample("rectangle_mm.dxf")).ends(200).text();
    let other = site.slab("another", JOB);
    let sent = pressed(&shown, &[], &[], "write");
    site.post(&page(other, "dxf"), &pairs(&sent)).ends(422).holds("no longer here");
    assert_eq!(plans_written(&site, other), 0);
}
