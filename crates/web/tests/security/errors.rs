//! When something of ours fails, nobody learns where things lie on the disk.

use axum::http::Method;

use crate::crowd::{Crowd, as_person, is_guarded, request};
use crate::pictures::png;

#[test]
fn a_failure_tells_no_path() {
    let crowd = Crowd::new();
    let folder = crowd.site.folder().display().to_string();
    let photographs = crowd.site.folder().join("photographs");
    std::fs::remove_dir_all(&photographs).unwrap();
    std::fs::write(&photographs, "not a folder").unwrap();
    let json = [("cookie", as_person("Carl")), ("accept", "application/json".to_owned())];
    let json: Vec<(&str, &str)> = json.iter().map(|(n, v)| (*n, v.as_str())).collect();
    let looked = format!("/slab/{}/photo/{}", crowd.slab, crowd.photo.as_str());
    let got = crowd.site.send(request(Method::GET, &looked, &json, &[]));
    assert!(got.status == 500 || got.status == 404, "{}", got.status);
    let mut answers = vec![got.text(), crowd.site.look(&looked, &as_person("Gina")).text()];
    let mut body = Vec::new();
    body.extend(b"--edge\r\nContent-Disposition: form-data; name=\"photographs\"; filename=\"a.png\"\r\n\r\n");
    body.extend(png());
    body.extend(b"\r\n--edge--\r\n");
    for accept in ["application/json", "text/html"] {
        let request = axum::http::Request::post(format!("/slab/{}/add/slab_photograph", crowd.slab))
            .header("host", "localhost")
            .header("cookie", as_person("Carl"))
            .header("accept", accept)
            .header("content-type", "multipart/form-data; boundary=edge");
        let got = crowd.site.send(request.body(axum::body::Body::from(body.clone())).unwrap());
        assert_eq!(got.status, 500, "{}", got.text());
        is_guarded(&got, accept);
        answers.push(got.text());
    }
    for answer in answers {
        for never in [folder.as_str(), "/tmp", "photographs/", ".sqlite", "src/", ".rs:"] {
            assert!(!answer.contains(never), "{never} in {answer}");
        }
    }
}

#[test]
fn a_refusal_for_the_script_says_what_and_where() {
    let crowd = Crowd::new();
    let path = format!("/slab/{}/add/water_drop", crowd.slab);
    let cookie = as_person("Carl");
    let headers = [("cookie", cookie.as_str()), ("accept", "application/json")];
    let got = crowd.site.send(request(Method::POST, &path, &headers, &[("soaked_in", "soon")])).ends(422);
    assert!(got.header("content-type").starts_with("application/json"));
    let said: serde_json::Value = serde_json::from_slice(&got.bytes).unwrap();
    assert_eq!(said["ok"], false);
    assert_eq!(said["mistakes"][0]["field"], "soaked_in");
    let stranger = crowd.site.send(request(Method::POST, &path, &[("accept", "application/json")], &[])).ends(401);
    assert!(stranger.text().contains("\"ok\":false"));
}

#[test]
fn whether_a_log_is_kept_is_not_decided_here() {
    let crowd = Crowd::new();
    let got = crowd.site.look("/nothing-here", &as_person("Carl")).ends(404);
    assert_ne!(got.header("x-request-id"), "");
    assert!(!tracing::dispatcher::has_been_set(), "the pages installed a subscriber");
}

#[test]
fn every_answer_has_an_id_of_ours_and_none_that_was_sent() {
    let crowd = Crowd::new();
    let cookie = as_person("Carl");
    let sent = "0190a8f0-7c1e-7b3a-9c51-0d6e3b9a7f10";
    let ask = || {
        let headers = [("cookie", cookie.as_str()), ("x-request-id", sent)];
        let got = crowd.site.send(request(Method::GET, "/", &headers, &[])).ends(200);
        got.header("x-request-id").parse::<uuid::Uuid>().unwrap()
    };
    let (first, second) = (ask(), ask());
    assert_ne!(first, second);
    assert_ne!(first.to_string(), sent);
    let elsewhere = [("sec-fetch-site", "cross-site")];
    let refused = crowd.site.send(request(Method::POST, "/sign-in", &elsewhere, &[])).ends(403);
    assert_ne!(refused.header("x-request-id"), "", "a refusal at the door has one too");
}
