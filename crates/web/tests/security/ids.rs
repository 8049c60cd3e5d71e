//! Ids of one slab open nothing of another.

use crate::common::DEMO;
use crate::crowd::{Crowd, as_person};
use crate::pictures::png;

#[test]
fn entries_and_photographs_belong_to_their_slab() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let other = crowd.site.slab("Mill Street hall", DEMO);
    let hash = crowd.site.store.put_photograph(&png()).unwrap();
    let line = format!(
        r#"{{"happened":"2026-03-20 09:00","photographs":["{}"],"body":{{"kind":"slab_photograph"}}}}"#,
        hash.as_str()
    );
    let foreign = crowd.site.add(other, &line);
    let (mine, theirs) = (format!("/slab/{}", crowd.slab), format!("/slab/{other}"));
    let looks = [
        (format!("/entry/{}", crowd.entry), format!("/entry/{foreign}")),
        (format!("/fix/{}", crowd.entry), format!("/fix/{foreign}")),
        (format!("/photo/{}", crowd.photo.as_str()), format!("/photo/{}", hash.as_str())),
    ];
    for (own, other) in looks {
        assert_eq!(crowd.site.look(&format!("{mine}{own}"), &owner).status, 200, "{own}");
        assert_eq!(crowd.site.look(&format!("{theirs}{other}"), &owner).status, 200, "{other}");
        assert_eq!(crowd.site.look(&format!("{mine}{other}"), &owner).status, 404, "{other}");
        assert_eq!(crowd.site.look(&format!("{theirs}{own}"), &owner).status, 404, "{own}");
    }
    let before = crowd.site.entries(crowd.slab);
    let fix = crowd.site.put(&format!("{mine}/fix/{foreign}"), &owner, &[("text", "n")]);
    assert_eq!(fix.status, 404);
    // An entry of one slab can't be written again into another under its id.
    let id = foreign.to_string();
    let stolen = crowd.site.put(&format!("{mine}/add/note"), &owner, &[("entry", &id), ("text", "n")]);
    assert!(stolen.status != 303 && stolen.status != 200, "{}", stolen.status);
    assert_eq!(crowd.site.entries(crowd.slab), before);
}

#[test]
fn an_entry_of_another_slab_can_not_be_spoken_of() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let other = crowd.site.slab("Mill Street hall", DEMO);
    let incident = r#"{"happened":"2026-03-20 09:00","body":{"kind":"incident","what":"red-chalk"}}"#;
    let foreign = crowd.site.add(other, incident);
    let fields = [("of", foreign.to_string())];
    let fields: Vec<(&str, &str)> = fields.iter().map(|(n, v)| (*n, v.as_str())).chain([("result", "clear")]).collect();
    let before = crowd.site.entries(crowd.slab);
    let got = crowd.site.put(&format!("/slab/{}/add/retest", crowd.slab), &owner, &fields);
    assert_eq!(got.status, 422, "{}", got.text());
    assert_eq!(crowd.site.entries(crowd.slab), before);
}

#[test]
fn a_link_of_another_slab_can_not_be_withdrawn() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let other = crowd.site.slab("Mill Street hall", DEMO);
    let (token, id) =
        crate::crowd::link(&crowd.site, other, &["standing"], crate::crowd::now() + crate::crowd::hours(1));
    let path = |slab| format!("/slab/{slab}/links/{id}/withdraw");
    assert_eq!(crowd.site.put(&path(crowd.slab), &owner, &[]).status, 404);
    assert_eq!(crowd.site.look(&format!("/s/{token}/standing"), "").status, 200);
    assert_eq!(crowd.site.put(&path(other), &owner, &[]).status, 303);
    assert_eq!(crowd.site.look(&format!("/s/{token}/standing"), "").status, 410);
}

#[test]
fn what_is_no_id_is_no_page() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let slab = crowd.slab;
    for path in [
        "/slab/1".to_owned(),
        "/slab/%27%20OR%201=1".to_owned(),
        "/slab/00000000-0000-0000-0000-000000000000".to_owned(),
        format!("/slab/{slab}/entry/1"),
        format!("/slab/{slab}/entry/{slab}"),
        format!("/slab/{slab}/add/no-such-kind"),
        format!("/slab/{slab}/add/..%2fnote"),
        format!("/slab/{slab}%00/diary"),
    ] {
        let got = crowd.site.look(&path, &owner);
        assert!(got.status == 404 || got.status == 400, "{path}: {}", got.status);
    }
    for query in ["kind=%00", "kind=nothing", "before=x", "before=9_9", "before=99999999999999999999_1"] {
        assert_eq!(crowd.site.look(&format!("/slab/{slab}/diary?{query}"), &owner).status, 200, "{query}");
    }
}
