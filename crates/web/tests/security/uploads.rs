//! Files that are not what they say, or not where they should be.

use axum::body::Body;
use axum::http::Request;
use axum::http::header::{CONTENT_TYPE, COOKIE, HOST};

use crate::common::Got;
use crate::crowd::{Crowd, as_person};
use crate::pictures::{jpeg, png, png_of};

/// Sends a form with one file as a member of the crew.
fn send(crowd: &Crowd, name: &str, bytes: &[u8]) -> Got {
    let mut body = Vec::new();
    body.extend(b"--edge\r\nContent-Disposition: form-data; name=\"photographs\"; filename=\"");
    body.extend(name.bytes());
    body.extend(b"\"\r\nContent-Type: image/jpeg\r\n\r\n");
    body.extend(bytes);
    body.extend(b"\r\n--edge--\r\n");
    let request = Request::post(format!("/slab/{}/add/slab_photograph", crowd.slab))
        .header(HOST, "localhost")
        .header(COOKIE, as_person("Carl"))
        .header(CONTENT_TYPE, "multipart/form-data; boundary=edge");
    crowd.site.send(request.body(Body::from(body)).unwrap())
}

/// Every file below the store's folder.
fn files(crowd: &Crowd) -> Vec<String> {
    fn walk(folder: &std::path::Path, all: &mut Vec<String>) {
        for file in std::fs::read_dir(folder).unwrap() {
            let path = file.unwrap().path();
            if path.is_dir() {
                walk(&path, all);
            } else {
                all.push(path.display().to_string());
            }
        }
    }
    let mut all = Vec::new();
    walk(crowd.site.folder(), &mut all);
    all.sort();
    all
}

#[test]
fn what_is_no_picture_is_refused_and_leaves_nothing() {
    let crowd = Crowd::new();
    let cut = |bytes: Vec<u8>| bytes[..bytes.len() / 2].to_vec();
    let mut large = jpeg();
    large.resize(41_000_000, 0);
    let odd: [(&str, Vec<u8>, &str); 12] = [
        ("text.jpg", b"I am a picture".to_vec(), "not a JPEG or PNG"),
        ("pack.jpg", b"PK\x03\x04\x14\x00\x00\x00\x08\x00".to_vec(), "not a JPEG or PNG"),
        (
            "script.svg",
            b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>".to_vec(),
            "not a JPEG",
        ),
        ("page.png", b"<!doctype html><script>alert(1)</script>".to_vec(), "not a JPEG or PNG"),
        ("moving.gif", b"GIF89a\x01\x00\x01\x00\x00\x00\x00;".to_vec(), "not a JPEG or PNG"),
        ("paper.jpg", b"%PDF-1.7\n".to_vec(), "not a JPEG or PNG"),
        ("program.png", b"\x7fELF\x02\x01\x01".to_vec(), "not a JPEG or PNG"),
        ("empty.jpg", Vec::new(), "empty"),
        ("cut.jpg", cut(jpeg()), "cut short"),
        ("cut.png", cut(png()), "cut short"),
        ("wide.png", png_of(10_000, 10_000), "too many dots"),
        ("large.jpg", large, "larger than 40 MB"),
    ];
    let (entries, before) = (crowd.site.entries(crowd.slab), files(&crowd));
    for (name, bytes, said) in odd {
        let got = send(&crowd, name, &bytes);
        assert_eq!(got.status, 422, "{name}");
        let page = got.text();
        assert!(page.contains(said), "{name}: {said} is not said");
        assert!(page.contains(name), "{name} is not named");
    }
    assert_eq!(crowd.site.entries(crowd.slab), entries);
    assert_eq!(files(&crowd), before);
}

#[test]
fn a_form_of_more_than_can_be_is_cut_off() {
    let crowd = Crowd::new();
    let got = send(&crowd, "huge.jpg", &vec![0_u8; 121 * 1024 * 1024]);
    assert_eq!(got.status, 413);
    let many: Vec<(&str, &str, Vec<u8>)> = (0..13).map(|_| ("photographs", "a.jpg", jpeg())).collect();
    let mut body = Vec::new();
    for (field, name, bytes) in &many {
        let head = format!("--edge\r\nContent-Disposition: form-data; name=\"{field}\"; filename=\"{name}\"\r\n\r\n");
        body.extend(head.bytes().chain(bytes.iter().copied()).chain(*b"\r\n"));
    }
    body.extend(b"--edge--\r\n");
    let request = Request::post(format!("/slab/{}/add/slab_photograph", crowd.slab))
        .header(HOST, "localhost")
        .header(COOKIE, as_person("Carl"))
        .header(CONTENT_TYPE, "multipart/form-data; boundary=edge");
    assert_eq!(crowd.site.send(request.body(Body::from(body)).unwrap()).status, 413);
}

#[test]
fn who_may_not_write_is_refused_before_the_file_is_read() {
    let crowd = Crowd::new();
    let before = files(&crowd);
    let who = [as_person("Gina"), String::new()];
    for (cookie, page) in who.iter().flat_map(|who| [(who, "add/slab_photograph"), (who, "plan/dxf")]) {
        let request = Request::post(format!("/slab/{}/{page}", crowd.slab))
            .header(HOST, "localhost")
            .header(COOKIE, cookie)
            // Not a form at all: whoever reads it says 415.
            .header(CONTENT_TYPE, "multipart/form-data");
        let got = crowd.site.send(request.body(Body::from(vec![0_u8; 1_000_000])).unwrap());
        assert!(got.status == 403 || got.status == 303, "{}", got.status);
    }
    assert_eq!(files(&crowd), before);
}

#[test]
fn the_name_of_a_file_is_never_a_path() {
    let crowd = Crowd::new();
    let names = [
        "../../../../etc/cron.d/x",
        "..\\..\\windows\\x.jpg",
        "/etc/passwd",
        "%2e%2e%2f%2e%2e%2fx.jpg",
        "....//....//x.jpg",
        "a\0b.jpg",
        "C:\\x.jpg",
        "underfoot.sqlite",
        "con",
        "..",
        ".",
    ];
    for (n, name) in names.iter().enumerate() {
        let got = send(&crowd, name, &png());
        // No browser sends a name with a zero in it, and no reader of forms takes one.
        let wanted = if name.contains('\0') { 415 } else { 303 };
        assert_eq!(got.status, wanted, "{n} {name:?}: {}", got.text());
    }
    for file in files(&crowd) {
        let below = file.strip_prefix(&crowd.site.folder().display().to_string()).unwrap();
        let hash = below
            .strip_prefix("/photographs/")
            .is_some_and(|name| name.len() == 64 && name.bytes().all(|b| b.is_ascii_hexdigit()));
        assert!(hash || below.starts_with("/underfoot.sqlite") || below == "/lock", "{below}");
    }
}

#[test]
fn a_hash_is_never_a_path() {
    let crowd = Crowd::new();
    let owner = as_person("Olga");
    let good = crowd.photo.as_str();
    let path = |hash: &str| format!("/slab/{}/photo/{hash}", crowd.slab);
    let got = crowd.site.look(&path(good), &owner).ends(200);
    assert_eq!(got.header("content-type"), "image/jpeg");
    assert_eq!(got.header("x-content-type-options"), "nosniff");
    let odd = [
        "..%2f..%2funderfoot.sqlite".to_owned(),
        "%2e%2e%2funderfoot.sqlite".to_owned(),
        "..%5cunderfoot.sqlite".to_owned(),
        "..".to_owned(),
        format!("{good}%00"),
        format!("{good}.jpg"),
        format!("..%2fphotographs%2f{good}"),
        good.to_uppercase(),
        good[..63].to_owned(),
        format!("{good}0"),
        "0".repeat(64),
        "%ff%fe".to_owned(),
    ];
    for hash in odd {
        let got = crowd.site.look(&path(&hash), &owner);
        assert!(got.status == 404 || got.status == 400, "{hash}: {}", got.status);
        assert!(!got.bytes.starts_with(b"SQLite"), "{hash}");
    }
    assert_eq!(crowd.site.look(&format!("/slab/{}/photo/../../x", crowd.slab), &owner).status, 404);
}

#[test]
fn a_form_in_another_shape_is_refused() {
    let crowd = Crowd::new();
    let path = format!("/slab/{}/add/note", crowd.slab);
    let send = |kind: &str, body: &[u8]| {
        let request =
            Request::post(&path).header(HOST, "localhost").header(COOKIE, as_person("Carl")).header(CONTENT_TYPE, kind);
        crowd.site.send(request.body(Body::from(body.to_vec())).unwrap()).status.as_u16()
    };
    assert_eq!(send("application/json", b"{\"text\":\"n\"}"), 415);
    assert_eq!(send("text/plain", b"text=n"), 415);
    assert_eq!(send("multipart/form-data", b"text=n"), 415);
    assert_eq!(send("multipart/form-data; boundary=edge", b"--edge\r\nnonsense"), 415);
    assert_eq!(
        send(
            "multipart/form-data; boundary=edge",
            b"--edge\r\nContent-Disposition: form-data; name=\"text\"\r\n\r\n\xff\xfe\r\n--edge--\r\n"
        ),
        415
    );
    assert_eq!(send("application/x-www-form-urlencoded", &vec![b'a'; 3_000_000]), 413);
}
