//! What a share link opens, and what it never opens.

use axum::http::Method;
use slab_diary::Knowledge;
use slab_diary::body::ChoiceApproved;
use slab_diary::fold;
use web::Access;

use crate::common::{DEMO, Site};
use crate::crowd::{Crowd, as_person, cookies_of, hours, is_guarded, link, now, request};
use crate::pictures::png;

const ALL: [&str; 6] = ["standing", "plan", "diary", "photographs", "order", "choice"];

#[test]
fn a_link_opens_the_pages_it_names_and_no_other() {
    let crowd = Crowd::new();
    for named in ALL {
        let (token, _) = link(&crowd.site, crowd.slab, &[named], now() + hours(1));
        let first = crowd.site.look(&format!("/s/{token}"), "").ends(303);
        assert_eq!(first.header("location"), format!("/s/{token}/{named}"));
        for page in ALL {
            let got = crowd.site.look(&format!("/s/{token}/{page}"), "");
            assert_eq!(got.status == 200, page == named, "{named} at {page}: {}", got.status);
            assert!(got.status == 200 || got.status == 404);
        }
        let entry = crowd.site.look(&format!("/s/{token}/entry/{}", crowd.entry), "");
        assert_eq!(entry.status == 200, named == "diary", "{named}");
        let photo = crowd.site.look(&format!("/s/{token}/photo/{}", crowd.photo.as_str()), "");
        assert_eq!(photo.status == 200, named == "photographs", "{named}");
    }
}

#[test]
fn a_link_leads_only_to_its_own_pages() {
    let crowd = Crowd::new();
    let (token, _) = link(&crowd.site, crowd.slab, &ALL, now() + hours(1));
    let mut looked = 0;
    // The owner, who is signed in, sees what a stranger sees.
    for cookie in [String::new(), as_person("Olga")] {
        for page in ALL.iter().map(|page| (*page).to_owned()).chain([format!("entry/{}", crowd.entry)]) {
            let got = crowd.site.look(&format!("/s/{token}/{page}"), &cookie).ends(200);
            let text = got.text();
            for attribute in ["href=\"", "src=\"", "action=\""] {
                for part in text.split(attribute).skip(1) {
                    let to = part.split('"').next().unwrap();
                    let own = to.starts_with(&format!("/s/{token}")) || to.starts_with("/a/") || to.starts_with('#');
                    assert!(own || to == "/reading", "{page} leads to {to}");
                    looked += 1;
                }
            }
            assert!(!text.contains(&crowd.slab.to_string()), "{page} names the slab's id");
            assert!(!text.contains("Olga"), "{page} names who looks");
            assert!(!text.contains("<script"), "{page} has script");
            assert_eq!(got.header("x-robots-tag"), "noindex, nofollow");
        }
    }
    assert!(looked > 100, "only {looked}");
}

#[test]
fn every_answer_below_a_link_asks_not_to_be_found() {
    for (public, referrer) in [(None, "same-origin"), (Some("https://slabs.example.org"), "no-referrer")] {
        let crowd = Crowd::at(public);
        let (token, _) = link(&crowd.site, crowd.slab, &["standing"], now() + hours(1));
        let (over, _) = link(&crowd.site, crowd.slab, &["standing"], now() - hours(1));
        for path in
            [format!("/s/{token}/standing"), format!("/s/{token}/diary"), format!("/s/{over}"), "/s/no/x".to_owned()]
        {
            let got = crowd.site.look(&path, "");
            assert_eq!(got.header("x-robots-tag"), "noindex, nofollow", "{path}");
            // Without encryption browsers send no Sec-Fetch-Site, and with no referrer they would send
            // our own forms with the origin "null" (Fetch standard, "append a request Origin header").
            assert_eq!(got.header("referrer-policy"), referrer, "{path}");
            assert!(cookies_of(&got).is_empty());
            is_guarded(&got, &path);
        }
    }
    let site = Site::with(Access::ThisMachine);
    assert_eq!(site.get("/s/x").header("referrer-policy"), "no-referrer");
}

#[test]
fn a_link_that_is_over_or_withdrawn_says_which_and_what_to_do() {
    let crowd = Crowd::new();
    let (over, _) = link(&crowd.site, crowd.slab, &ALL, now() - hours(1));
    let (taken, id) = link(&crowd.site, crowd.slab, &ALL, now() + hours(1));
    assert_eq!(crowd.site.look(&format!("/s/{taken}/standing"), "").status, 200);
    let path = format!("/slab/{}/links/{id}/withdraw", crowd.slab);
    assert_eq!(crowd.site.put(&path, &as_person("Olga"), &[]).status, 303);
    let before = crowd.site.entries(crowd.slab);
    for (token, said, next) in
        [(&over, "This link is over since", "a new one"), (&taken, "This link was withdrawn on", "a new one")]
    {
        let photo = format!("photo/{}", crowd.photo.as_str());
        let entry = format!("entry/{}", crowd.entry);
        for page in ALL.into_iter().chain(["", photo.as_str(), entry.as_str()]) {
            let path = format!("/s/{token}/{page}");
            let got = crowd.site.look(path.trim_end_matches('/'), "");
            assert_eq!(got.status, 410, "{page}");
            let text = got.text();
            assert!(text.contains(said) && text.contains(next), "{page}: {text}");
            assert!(!text.contains("Creek Road shop"), "{page} still names the slab");
        }
        let choose = crowd.site.put(&format!("/s/{token}/choice"), "", &[("panel", "P1")]);
        assert_eq!(choose.status, 410);
    }
    let spanish = crowd.site.look(&format!("/s/{taken}"), "lang=es").ends(410);
    spanish.holds("Este enlace se retiró el");
    assert_eq!(crowd.site.entries(crowd.slab), before);
}

#[test]
fn a_token_can_not_be_guessed_at_the_edges() {
    let crowd = Crowd::new();
    let (token, _) = link(&crowd.site, crowd.slab, &ALL, now() + hours(1));
    let odd = [
        token[..63].to_owned(),
        format!("{token}0"),
        token.to_uppercase(),
        format!("%20{token}"),
        format!("{token}%00"),
        "0".repeat(64),
        "..".to_owned(),
        "%2e%2e%2f".to_owned(),
        "%27%20OR%201=1".to_owned(),
        blake3::hash(token.as_bytes()).to_hex().to_string(),
    ];
    for other in odd {
        // A token of digits alone has no capitals.
        if other == token {
            continue;
        }
        for page in ["/standing", "/no-such-page"] {
            let got = crowd.site.look(&format!("/s/{other}{page}"), "");
            assert!(got.status == 404 || got.status == 400, "{other}: {}", got.status);
            let text = got.text();
            assert!(!text.contains("Creek Road shop") && !text.contains("href=\"/\""), "{other}{page}");
        }
    }
}

#[test]
fn no_id_of_another_slab_opens_anything() {
    let crowd = Crowd::new();
    let other = crowd.site.slab("Mill Street hall", DEMO);
    let hash = crowd.site.store.put_photograph(&png()).unwrap();
    let line = format!(
        r#"{{"happened":"2026-03-20 09:00","photographs":["{}"],"body":{{"kind":"slab_photograph"}}}}"#,
        hash.as_str()
    );
    let foreign = crowd.site.add(other, &line);
    let (token, _) = link(&crowd.site, crowd.slab, &ALL, now() + hours(1));
    let status = |path: String| crowd.site.look(&path, "").status.as_u16();
    assert_eq!(status(format!("/s/{token}/photo/{}", crowd.photo.as_str())), 200);
    assert_eq!(status(format!("/s/{token}/photo/{}", hash.as_str())), 404);
    assert_eq!(status(format!("/s/{token}/entry/{foreign}")), 404);
    assert_eq!(status(format!("/s/{token}/slab/{other}")), 404);
    // Nor is the link a session: the ordinary pages stay closed, of its own slab too.
    for path in [format!("/slab/{}", crowd.slab), format!("/slab/{other}"), "/".to_owned()] {
        assert_eq!(status(path), 303);
    }
    for path in [format!("/s/{token}/add/note"), format!("/s/{token}/fix/{}", crowd.entry), format!("/s/{token}/links")]
    {
        assert_eq!(crowd.site.put(&path, "", &[("text", "n")]).status, 404, "{path}");
    }
}

#[test]
fn hours_and_costs_are_shown_by_no_link() {
    let crowd = Crowd::new();
    let hash = crowd.site.store.put_photograph(&png()).unwrap();
    let line = format!(
        r#"{{"happened":"2026-03-26 18:00","photographs":["{}"],"body":{{"kind":"time_cost","what":"two men scraping","cost":"913.27","currency":"USD"}}}}"#,
        hash.as_str()
    );
    let cost = crowd.site.add(crowd.slab, &line);
    let own = crowd.site.look(&format!("/slab/{}/diary", crowd.slab), &as_person("Olga")).ends(200).text();
    assert!(own.contains("913.27"));
    let (token, _) = link(&crowd.site, crowd.slab, &ALL, now() + hours(1));
    for page in ALL.iter().map(|page| (*page).to_owned()).chain(["diary?kind=time_cost".to_owned()]) {
        let text = crowd.site.look(&format!("/s/{token}/{page}"), "").ends(200).text();
        assert!(!text.contains("913.27") && !text.contains(hash.as_str()), "{page}");
    }
    assert_eq!(crowd.site.look(&format!("/s/{token}/entry/{cost}"), "").status, 404);
    assert_eq!(crowd.site.look(&format!("/s/{token}/photo/{}", hash.as_str()), "").status, 404);
}

/// A crowd whose slab has one panel stained and one bare, and a link to choose by.
fn to_choose() -> (Crowd, String) {
    let crowd = Crowd::new();
    let hash = crowd.photo.as_str();
    for line in [
        r#"{"happened":"2026-03-20 10:00","body":{"kind":"panel_made","panel":"P7","finish":"hard-steel-trowel"}}"#.to_owned(),
        r#"{"happened":"2026-03-21 10:00","body":{"kind":"panel_stained","panel":"P7","mix":[{"stain":"Umber","parts":1}],"coats":1}}"#.to_owned(),
        r#"{"happened":"2026-03-21 11:00","body":{"kind":"panel_made","panel":"P8"}}"#.to_owned(),
        format!(r#"{{"happened":"2026-03-22 10:00","photographs":["{hash}"],"body":{{"kind":"panel_photographed","panel":"P7","state":"sealed"}}}}"#),
    ] {
        crowd.site.add(crowd.slab, &line);
    }
    let (token, _) = link(&crowd.site, crowd.slab, &["choice"], now() + hours(1));
    (crowd, token)
}

const CHOICE: [(&str, &str); 6] = [
    ("entry", "01990000-0000-7000-8000-000000000777"),
    ("lang", "en"),
    ("panel", "P7"),
    ("state", "sealed"),
    ("by", "Rosa Bell"),
    ("agree", "yes"),
];

fn approvals(crowd: &Crowd) -> Vec<(ChoiceApproved, String, jiff::Timestamp)> {
    let diary = crowd.site.store.diary(crowd.slab).unwrap();
    let slab = fold(&diary, Knowledge::happened_by(jiff::Timestamp::MAX));
    slab.all::<ChoiceApproved>()
        .filter(|choice| choice.body.panel.starts_with("P7") || choice.body.by == "Rosa Bell")
        .map(|choice| (choice.body.clone(), choice.entry.author.clone(), choice.entry.happened.instant()))
        .collect()
}

#[test]
fn a_choice_by_link_says_who_when_which_and_the_words() {
    let (crowd, token) = to_choose();
    let path = format!("/s/{token}/choice");
    let page = crowd.site.look(&path, "").ends(200).text();
    assert!(page.contains(&format!("/s/{token}/photo/{}", crowd.photo.as_str())), "the panel's photograph is shown");
    assert_eq!(crowd.site.look(&format!("/s/{token}/photo/{}", crowd.photo.as_str()), "").status, 200);
    let got = crowd.site.put(&path, "", &CHOICE).ends(303);
    assert_eq!(got.header("location"), format!("/s/{token}/choice?said=approved"));
    // Sent again, as a phone does that doubts: one entry.
    crowd.site.put(&path, "", &CHOICE).ends(303);
    let all = approvals(&crowd);
    assert_eq!(all.len(), 1);
    let (choice, author, at) = &all[0];
    assert_eq!((choice.panel.as_str(), choice.by.as_str()), ("P7", "Rosa Bell"));
    assert_eq!(choice.state, Some(slab_diary::body::PanelState::Sealed));
    assert_eq!(author, "link: Rosa, owner");
    assert_eq!(*at, now());
    let words = choice.words.as_deref().unwrap();
    assert!(words.starts_with("en: "));
    // Every sentence that stood on the page is in the entry, to the letter.
    let shown: Vec<&str> = page
        .split("<ol class=\"agreed\">")
        .nth(1)
        .unwrap()
        .split("</ol>")
        .next()
        .unwrap()
        .split("<li>")
        .skip(1)
        .map(|li| li.split("</li>").next().unwrap())
        .collect();
    assert_eq!(shown.len(), 5);
    let kept: Vec<&str> = words.trim_start_matches("en: ").lines().collect();
    let plain: Vec<String> = shown.iter().map(|said| said.replace("&#39;", "'").replace("&#x27;", "'")).collect();
    assert_eq!(kept, plain);
    let after = crowd.site.look(&format!("{path}?said=approved"), "").ends(200).text();
    assert!(after.contains("Rosa Bell chose panel P7"));
}

#[test]
fn the_words_are_kept_in_the_language_they_were_shown_in() {
    let (crowd, token) = to_choose();
    let page = crowd.site.look(&format!("/s/{token}/choice"), "lang=es").ends(200).text();
    assert!(page.contains("name=\"lang\" value=\"es\""));
    let fields: Vec<(&str, &str)> =
        CHOICE.iter().map(|(name, value)| if *name == "lang" { ("lang", "es") } else { (*name, *value) }).collect();
    crowd.site.put(&format!("/s/{token}/choice"), "lang=en", &fields).ends(303);
    let words = approvals(&crowd)[0].0.words.clone().unwrap();
    assert!(words.starts_with("es: El tinte reactivo no es pintura."), "{words}");
}

#[test]
fn a_choice_is_refused_unless_all_of_it_is_said() {
    let (crowd, token) = to_choose();
    let odd: [(&str, &str, &str); 8] = [
        ("agree", "", "id=\"mistake-agree\""),
        ("agree", "no", "id=\"mistake-agree\""),
        ("by", "  ", "id=\"mistake-by\""),
        ("panel", "", "id=\"mistake-panel\""),
        ("panel", "P8", "id=\"mistake-panel\""),
        ("panel", "P99", "id=\"mistake-panel\""),
        ("state", "bare", "id=\"mistake-state\""),
        ("by", "a\nb", "id=\"mistake-by\""),
    ];
    for (n, (field, value, said)) in odd.into_iter().enumerate() {
        // A fresh link each: one link is slowed down.
        let (own, _) = if n == 0 {
            (token.clone(), None)
        } else {
            let (token, id) = link(&crowd.site, crowd.slab, &["choice"], now() + hours(1));
            (token, Some(id))
        };
        let fields: Vec<(&str, &str)> =
            CHOICE.iter().map(|(name, v)| (*name, if *name == field { value } else { v })).collect();
        let got = crowd.site.put(&format!("/s/{own}/choice"), "", &fields);
        assert_eq!(got.status, 422, "{field}={value:?}");
        assert!(got.text().contains(said), "{field}={value:?}: {}", got.text());
    }
    assert!(approvals(&crowd).is_empty());
}

#[test]
fn a_link_can_not_date_or_sign_for_others() {
    let (crowd, token) = to_choose();
    let mut fields = CHOICE.to_vec();
    fields.extend([
        ("happened", "2020-01-01 07:00"),
        ("noted", "2020-01-01T07:00:00-06:00"),
        ("author", "Olga"),
        ("words", "I never agreed"),
        ("place_kind", "zone:shop"),
        ("replaces", "01990000-0000-7000-8000-000000000001"),
    ]);
    crowd.site.put(&format!("/s/{token}/choice"), "", &fields).ends(303);
    let all = approvals(&crowd);
    assert_eq!(all[0].2, now());
    assert_eq!(all[0].1, "link: Rosa, owner");
    assert!(!all[0].0.words.as_deref().unwrap().contains("never agreed"));
    // Nor write over an entry that is there.
    let taken = crowd.entry.to_string();
    let fields: Vec<(&str, &str)> =
        CHOICE.iter().map(|(n, v)| if *n == "entry" { ("entry", taken.as_str()) } else { (*n, *v) }).collect();
    assert_eq!(crowd.site.put(&format!("/s/{token}/choice"), "", &fields).status, 422);
}

#[test]
fn a_link_is_slowed_down_by_itself() {
    let (crowd, token) = to_choose();
    let path = format!("/s/{token}/choice");
    let tried: Vec<u16> = (0..8).map(|_| crowd.site.put(&path, "", &[]).status.as_u16()).collect();
    assert_eq!(tried, [422, 422, 422, 422, 422, 429, 429, 429]);
    let (other, _) = link(&crowd.site, crowd.slab, &["choice"], now() + hours(1));
    assert_eq!(crowd.site.put(&format!("/s/{other}/choice"), "", &CHOICE).status, 303, "another link is free");
    let sign_in = [("name", "Olga"), ("password", crate::crowd::PASSWORD)];
    assert_eq!(crowd.site.put("/sign-in", "", &sign_in).status, 303, "and so is signing in");
}

#[test]
fn a_link_is_made_shown_once_and_kept_only_as_its_hash() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let path = format!("/slab/{}/links", crowd.slab);
    let fields = [
        ("link", "01990000-0000-7000-8000-0000000000aa"),
        ("page", "standing"),
        ("page", "photographs"),
        ("page", "no-such-page"),
        ("note", "Rosa"),
        ("days", "7"),
    ];
    let page = crowd.site.put(&path, &owner, &fields).ends(200).text();
    let address = page.split("data-copy=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let token = address.strip_prefix("http://localhost/s/").unwrap();
    assert_eq!(token.len(), 64);
    assert!(page.contains("<svg role=\"img\"") && !page.contains(" style="));
    assert_eq!(crowd.site.look(&format!("/s/{token}/photographs"), "").status, 200);
    assert_eq!(crowd.site.look(&format!("/s/{token}/diary"), "").status, 404);
    assert!(!crowd.site.look(&path, &owner).text().contains(token), "shown once");
    let kept = crowd.site.store.links_of(crowd.slab).unwrap();
    assert_eq!(kept[0].pages, ["standing", "photographs"]);
    assert_eq!(kept[0].expires, now() + hours(24 * 7));
    let database = std::fs::read(crowd.site.folder().join("underfoot.sqlite")).unwrap();
    let journal = std::fs::read(crowd.site.folder().join("underfoot.sqlite-wal")).unwrap_or_default();
    for bytes in [database, journal] {
        assert!(!bytes.windows(token.len()).any(|part| part == token.as_bytes()));
    }
    crowd.site.put(&path, &owner, &fields).ends(422).holds("made already");
    for (odd, said) in [
        ([("page", ""), ("days", "7"), ("note", "")], "mistake-page"),
        ([("page", "diary"), ("days", "0"), ("note", "")], "mistake-days"),
        ([("page", "diary"), ("days", "366"), ("note", "")], "mistake-days"),
        ([("page", "diary"), ("days", "-1"), ("note", "")], "mistake-days"),
        ([("page", "diary"), ("days", "soon"), ("note", "")], "mistake-days"),
        ([("page", "diary"), ("days", "7"), ("note", "a\nb")], "mistake-note"),
    ] {
        crowd.site.put(&path, &owner, &odd).ends(422).holds(said);
    }
    assert_eq!(crowd.site.store.links_of(crowd.slab).unwrap().len(), 1);
}

#[test]
fn on_this_machine_the_page_says_that_a_link_goes_nowhere_else() {
    let site = Site::empty();
    let slab = site.slab("Creek Road shop", DEMO);
    site.get(&format!("/slab/{slab}/links")).ends(200).holds("a link opens only here");
    let made = site.post(&format!("/slab/{slab}/links"), &[("page", "plan"), ("days", "1")]).ends(200).text();
    let address = made.split("data-copy=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let path = address.strip_prefix("http://localhost").unwrap();
    assert_eq!(site.get(&format!("{path}/plan")).status, 200);
    let crowd = Crowd::new();
    let there = crowd.site.look(&format!("/slab/{}/links", crowd.slab), &as_person("Olga")).ends(200).text();
    assert!(!there.contains("opens only here"));
}

#[test]
fn a_choice_from_another_site_is_refused() {
    let (crowd, token) = to_choose();
    let path = format!("/s/{token}/choice");
    for headers in [[("sec-fetch-site", "cross-site")], [("origin", "https://evil.example")]] {
        let got = crowd.site.send(request(Method::POST, &path, &headers, &CHOICE));
        assert_eq!(got.status, 403);
    }
    assert!(approvals(&crowd).is_empty());
}
