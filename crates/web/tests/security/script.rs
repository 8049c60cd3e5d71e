//! Script in every text of every form: written, and read back on every page as the text it is.

use form_schema::{FormData, InputKind, Rule};
use slab_diary::{Entry, EntryKind, EntrySchema, SlabId};
use store::Role;
use trade_facts::Trade;

use crate::common::{Got, Site};
use crate::crowd::{Crowd, add, as_person, hours, link, now};
use crate::routes::{filled, routes};

/// Opens a tag in a text, ends an attribute of either kind, and needs no script tag.
const ODD: &str = r#"<script>alert(1)</script>"'><img src=x onerror=alert(2)>"#;

/// Tags that may never stand on a page as tags.
#[track_caller]
fn is_harmless(page: &str, what: &str) {
    for raw in ["<script>alert", "<img src=x", "\"'><", "onerror=alert(2)>"] {
        if let Some(at) = page.find(raw) {
            let from = page[..at].char_indices().rev().nth(160).map_or(0, |(i, _)| i);
            panic!("{what}: {raw} stands raw: …{}", page[from..].chars().take(320).collect::<String>());
        }
    }
}

/// A slab whose name, zones, panels and entries all carry script.
fn slab_of(site: &Site) -> SlabId {
    let id = site.slab(
        ODD,
        r#"{"happened":"2026-01-05 07:00","body":{"kind":"job_opened","name":"x","time_zone":"America/Chicago"}}"#,
    );
    let text = serde_json::to_string(ODD).unwrap();
    for line in [
        format!(
            r#"{{"happened":"2026-01-05 08:00","body":{{"kind":"plan","outline":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}}]}},"zones":[{{"name":{text},"shape":{{"rectangles":[{{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}}]}}}},{{"name":"office"}}]}}}}"#
        ),
        r#"{"happened":"2026-01-06 07:00","body":{"kind":"pour"}}"#.to_owned(),
        format!(
            r#"{{"happened":"2026-03-12 09:00","body":{{"kind":"air_series","source":{text},"series":{{"columns":["at","air_c","rh_pct"],"rows":[["2026-03-12T14:00:00Z",18.5,45.0],["2026-03-12T15:00:00Z",18.9,44.0]]}}}}}}"#
        ),
        format!(r#"{{"happened":"2026-03-12 09:00","body":{{"kind":"panel_made","panel":{text}}}}}"#),
    ] {
        site.add(id, &line);
    }
    id
}

/// Something for every field of a form that needs an answer, and script for every text.
fn typed(form: &EntrySchema, entries: &[Entry], whole: bool) -> Option<FormData> {
    let mut typed = FormData::new();
    let least_one: Vec<&str> = form
        .rules
        .iter()
        .filter_map(|rule| match rule {
            Rule::AtLeastOne(fields) | Rule::AtLeastOneOrYes(fields) => fields.first().copied(),
            Rule::MayBeLeftOut(_) | Rule::NotBoth(..) | Rule::OneOf(_) | Rule::Needs(..) => None,
        })
        .collect();
    for field in form.fields {
        let text = matches!(field.input, InputKind::Text { .. } | InputKind::Mix | InputKind::Panel);
        let needed = field.required() || least_one.contains(&field.name);
        if !(needed || text && whole) {
            continue;
        }
        let value = match field.input {
            InputKind::Text { .. } | InputKind::Panel => ODD.to_owned(),
            InputKind::Mix => {
                typed.set("mix_stain", ODD);
                typed.set("mix_parts", "1");
                continue;
            }
            InputKind::Lab => {
                ["lab_l", "lab_a", "lab_b"].iter().for_each(|name| typed.set(*name, "20"));
                continue;
            }
            InputKind::PictureBox(names) => {
                names.iter().for_each(|name| typed.set(*name, "10"));
                continue;
            }
            InputKind::Entry(kinds) => entries.iter().find(|e| kinds.contains(&e.body.kind_name()))?.id.to_string(),
            InputKind::Count { least, .. } => least.to_string(),
            InputKind::Number(_) => "20".to_owned(),
            InputKind::Quantity(_) | InputKind::Money | InputKind::Currency | InputKind::TimeZone => {
                field.example(localization::UnitSystem::Imperial).to_owned()
            }
            InputKind::Named { .. } | InputKind::Texts | InputKind::File => unreachable!("no kind of entry asks so"),
            InputKind::Choice(_)
            | InputKind::Offered { .. }
            | InputKind::Term(_)
            | InputKind::YesNo
            | InputKind::Flag => field.choices(Trade::built_in())[0].to_owned(),
        };
        typed.set(field.name, &value);
    }
    typed.set("happened", "2026-03-20 09:00");
    Some(typed)
}

fn send(crowd: &Crowd, slab: SlabId, form: &EntrySchema, typed: &FormData) -> Got {
    let mut fields: Vec<(&str, &str)> =
        typed.iter().flat_map(|(name, texts)| texts.iter().map(move |text| (name, text.as_str()))).collect();
    let zone = format!("zone:{ODD}");
    if form.place != slab_diary::body::PlaceInput::None {
        fields.push(("place_kind", &zone));
    }
    let path = format!("/slab/{slab}/add/{}", form.kind.name());
    crowd.site.post_as(&path, &as_person(ODD), &fields)
}

impl Site {
    fn post_as(&self, path: &str, cookie: &str, fields: &[(&str, &str)]) -> Got {
        let photograph = crate::pictures::jpeg();
        let mut body = Vec::new();
        for (name, value) in fields {
            body.extend(
                format!("--edge\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n").bytes(),
            );
        }
        if path.contains("photograph") {
            body.extend(
                b"--edge\r\nContent-Disposition: form-data; name=\"photographs\"; filename=\"<b>a.jpg\"\r\n\r\n",
            );
            body.extend(photograph);
            body.extend(b"\r\n");
        }
        body.extend(b"--edge--\r\n");
        let request = axum::http::Request::post(path)
            .header("host", "localhost")
            .header("cookie", cookie)
            .header("content-type", "multipart/form-data; boundary=edge");
        self.send(request.body(axum::body::Body::from(body)).unwrap())
    }
}

/// A crowd in which an owner is called like the script, and the slab.
fn odd_crowd() -> (Crowd, SlabId) {
    let crowd = Crowd::new();
    add(&crowd.site, 66, ODD, Role::Owner);
    let slab = slab_of(&crowd.site);
    (crowd, slab)
}

fn forms() -> Vec<&'static EntrySchema> {
    EntryKind::ALL
        .iter()
        .map(|kind| kind.schema())
        .filter(|schema| !schema.own_screen && !schema.only_corrects)
        .collect()
}

/// Writes an entry of every kind; how many texts of script went in.
fn write_all(crowd: &Crowd, slab: SlabId) -> usize {
    let mut left: Vec<&'static EntrySchema> = forms();
    let mut texts = 0;
    // Some speak of entries of another kind, which come first.
    for _ in 0..4 {
        left.retain(|form| {
            let diary = crowd.site.store.diary(slab).unwrap();
            let entries: Vec<Entry> = diary.entries().cloned().collect();
            for whole in [true, false] {
                let Some(typed) = typed(form, &entries, whole) else { return true };
                if send(crowd, slab, form, &typed).status == 303 {
                    texts += typed.iter().filter(|(_, texts)| texts.iter().any(|text| text == ODD)).count();
                    return false;
                }
            }
            true
        });
    }
    let said = |form: &&&'static EntrySchema| {
        let entries: Vec<Entry> = crowd.site.store.diary(slab).unwrap().entries().cloned().collect();
        let typed = typed(form, &entries, true).unwrap_or_default();
        let page = send(crowd, slab, form, &typed).text();
        let mistakes: Vec<&str> = page.split("class=\"mistakes\"").nth(1).unwrap_or(&page).lines().take(3).collect();
        format!("{}: {mistakes:?}", form.kind.name())
    };
    assert!(left.is_empty(), "not written: {:#?}", left.iter().map(|form| said(&form)).collect::<Vec<_>>());
    texts
}

#[test]
fn script_in_every_text_of_every_form_stays_text_on_every_page() {
    let (crowd, slab) = odd_crowd();
    let texts = write_all(&crowd, slab);
    let all = forms().into_iter().flat_map(|form| form.fields);
    let all =
        all.filter(|field| matches!(field.input, InputKind::Text { .. } | InputKind::Mix | InputKind::Panel)).count();
    assert_eq!(texts, all, "every text field of every form carried script");
    assert!(all >= 25, "only {all} text fields");
    let diary = crowd.site.store.diary(slab).unwrap();
    let (token, id) =
        link(&crowd.site, slab, &["standing", "plan", "diary", "photographs", "order", "choice"], now() + hours(1));
    let photo = diary.entries().find_map(|entry| entry.photographs.first().cloned()).expect("a photograph");
    let holes = |entry: &Entry| {
        vec![
            ("slab", slab.to_string()),
            ("entry", entry.id.to_string()),
            ("hash", photo.as_str().to_owned()),
            ("kind", entry.body.kind_name().to_owned()),
            ("person", "00000000-0000-0000-0000-000000000042".to_owned()),
            ("link", id.to_string()),
            ("token", token.clone()),
            ("sum", "dew-point".to_owned()),
            ("name", "no-such-work".to_owned()),
        ]
    };
    let mut paths: Vec<String> = Vec::new();
    for entry in diary.entries() {
        let pages = routes().into_iter().filter(|route| route.page.is_some() && !route.path.ends_with(".pdf"));
        paths.extend(pages.map(|route| filled(&route.path, &holes(entry))));
    }
    paths.sort();
    paths.dedup();
    let (mut pages, mut shown) = (0, 0);
    for path in paths {
        let got = crowd.site.look(&path, &as_person(ODD));
        assert!(got.status != 500, "{path}: {}", got.text());
        let kind = got.header("content-type").to_owned();
        // What is saved as a file is not shown by a browser as a page of ours.
        if !kind.starts_with("text/html") && !kind.contains("svg") {
            continue;
        }
        let text = got.text();
        is_harmless(&text, &path);
        shown += usize::from(text.contains("&#60;script&#62;alert") || text.contains("&lt;script&gt;alert"));
        pages += 1;
    }
    assert!(pages > 200, "only {pages} pages looked at");
    assert!(shown > 200, "only {shown} pages showed the text at all");
}

#[test]
fn script_in_a_refused_form_comes_back_as_text() {
    let (crowd, slab) = odd_crowd();
    let (mut refused, mut shown) = (0, 0);
    for form in forms() {
        let typed: Vec<(&str, &str)> =
            form.fields.iter().flat_map(|field| field.inputs().iter().map(|name| (*name, ODD))).collect();
        let more =
            ["happened", "entry", "next", "noted", "place_kind", "zone", "x", "y", "radius", "corner_x", "preset"];
        let all: Vec<(&str, &str)> = typed.into_iter().chain(more.map(|name| (name, ODD))).collect();
        let got = crowd.site.post_as(&format!("/slab/{slab}/add/{}", form.kind.name()), &as_person(ODD), &all);
        assert_eq!(got.status, 422, "{}", form.kind.name());
        let text = got.text();
        is_harmless(&text, form.kind.name());
        shown += usize::from(text.contains("&#60;script&#62;alert"));
        refused += 1;
    }
    assert!(refused >= 43 && shown >= 43, "{refused} refused, {shown} shown");
    let owner = as_person(ODD);
    let others: Vec<(String, Vec<(&str, &str)>)> = vec![
        ("/new".to_owned(), vec![("name", ODD), ("site", ODD), ("time_zone", ODD), ("slab", ODD), ("entry", ODD)]),
        ("/sign-in".to_owned(), vec![("name", ODD), ("password", ODD), ("next", ODD)]),
        ("/people".to_owned(), vec![("name", ODD), ("role", ODD), ("password", ODD)]),
        ("/password".to_owned(), vec![("now", ODD), ("password", ODD), ("again", "x")]),
        ("/reading".to_owned(), vec![("lang", ODD), ("measure", ODD), ("theme", ODD), ("back", ODD)]),
        (format!("/slab/{slab}/links"), vec![("page", ODD), ("note", ODD), ("days", ODD), ("link", ODD)]),
    ];
    for (path, fields) in others {
        let got = crowd.site.put(&path, &owner, &fields);
        assert!(got.status == 422 || got.status == 303, "{path}: {}", got.status);
        is_harmless(&got.text(), &path);
        assert!(!got.header("location").contains('<'), "{path}");
    }
}

#[test]
fn script_in_an_address_comes_back_as_text() {
    let (crowd, slab) = odd_crowd();
    let query = |name: &str| form_urlencoded::Serializer::new(String::new()).append_pair(name, ODD).finish();
    let owner = as_person(ODD);
    let (token, _) = link(&crowd.site, slab, &["diary"], now() + hours(1));
    let mut looked = 0;
    for path in [
        "/".to_owned(),
        "/sign-in".to_owned(),
        "/sums/dew-point".to_owned(),
        "/glossary".to_owned(),
        "/facts".to_owned(),
        format!("/slab/{slab}"),
        format!("/slab/{slab}/diary"),
        format!("/slab/{slab}/plan/draw"),
        format!("/slab/{slab}/add/water_drop"),
        format!("/slab/{slab}/pour-day"),
        format!("/slab/{slab}/drying"),
        format!("/slab/{slab}/time"),
        format!("/slab/{slab}/papers"),
        format!("/s/{token}/diary"),
        "/no-such-page".to_owned(),
    ] {
        for name in
            ["q", "next", "said", "kind", "before", "zone", "x", "of", "panel", "way", "day", "at", "back", "from"]
        {
            let got = crowd.site.look(&format!("{path}?{}", query(name)), &owner);
            assert!(got.status != 500, "{path} {name}");
            is_harmless(&got.text(), &format!("{path} {name}"));
            looked += 1;
        }
    }
    assert!(looked > 200);
    let encoded: String = ODD.bytes().map(|byte| format!("%{byte:02x}")).collect();
    for path in [
        format!("/{encoded}"),
        format!("/slab/{encoded}"),
        format!("/slab/{slab}/add/{encoded}"),
        format!("/s/{encoded}"),
    ] {
        is_harmless(&crowd.site.look(&path, &owner).text(), &path);
    }
}

#[test]
fn a_client_who_writes_script_by_link_writes_text() {
    let (crowd, slab) = odd_crowd();
    write_all(&crowd, slab);
    let (token, _) = link(&crowd.site, slab, &["choice", "diary"], now() + hours(1));
    let fields = [("panel", ODD), ("state", "sealed"), ("by", ODD), ("agree", "yes"), ("lang", ODD), ("entry", ODD)];
    let got = crowd.site.put(&format!("/s/{token}/choice"), "", &fields);
    assert_eq!(got.status, 303, "{}", got.text());
    for page in ["choice", "diary"] {
        let text = crowd.site.look(&format!("/s/{token}/{page}"), "").ends(200).text();
        is_harmless(&text, page);
        assert!(text.contains("&#60;script&#62;alert"));
    }
}

#[test]
fn script_in_the_reason_for_striking_out_stays_text() {
    let (crowd, slab) = odd_crowd();
    let owner = as_person(ODD);
    let written = crowd.site.post_as(&format!("/slab/{slab}/add/note"), &owner, &[("text", ODD)]).ends(303);
    let entry = written.header("location").split("entry=").nth(1).unwrap().to_owned();
    crowd.site.post_as(&format!("/slab/{slab}/undo/{entry}"), &owner, &[("reason", ODD)]).ends(303);
    for page in [format!("/slab/{slab}/diary"), format!("/slab/{slab}/entry/{entry}")] {
        is_harmless(&crowd.site.look(&page, &owner).ends(200).text(), &page);
    }
}
