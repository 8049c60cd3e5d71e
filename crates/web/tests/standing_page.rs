//! The standing page in both languages, with nothing a person typed taken for markup.

use localization::{Lang, Locale, UnitSystem};
use slab_answers::standing::{State, standing};
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use trade_facts::Trade;

const DIARY: &str = r#"{"happened":"2026-03-01 07:00","body":{"kind":"job_opened","name":"<b>shop</b>","time_zone":"America/Chicago"}}
{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"m","thickness":"4 in"}}
{"happened":"2026-03-20 07:00","body":{"kind":"hold_released","hold_point":"membrane","by":"<script>alert(1)</script>","reason":"x"}}"#;

fn page(lang: Lang) -> String {
    let context = Context {
        slab: SlabId::of_name("page"),
        zone: jiff::tz::TimeZone::UTC,
        author: "a".to_owned(),
        device: "d".to_owned(),
        noted: None,
    };
    let diary: Diary = read_lines(DIARY, &context).expect("well formed").into_iter().collect();
    let at = "2026-04-15T12:00:00Z".parse().expect("a moment");
    let zone = jiff::tz::TimeZone::get("America/Chicago").expect("bundled");
    let judged = standing(&diary, Trade::built_in(), Knowledge::noted_by(at));
    web::standing_page("<b>shop</b>", &judged, Locale::new(lang, UnitSystem::Imperial), Trade::built_in(), &zone)
}

#[test]
fn the_answer_stands_first_and_all_hold_points_follow() {
    for (lang, tag) in [(Lang::En, "<html lang=\"en\">"), (Lang::Es, "<html lang=\"es\">")] {
        let page = page(lang);
        assert!(page.contains(tag));
        assert_eq!(page.matches("<section ").count(), 11);
        assert!(page.find("class=\"answer\"") < page.find("<section "));
        assert!(page.contains("name=\"viewport\""));
        assert!(!page.contains("{{") && !page.contains("http"), "nothing is fetched, nothing left unfilled");
    }
    let spanish = Locale::new(Lang::Es, UnitSystem::Imperial);
    assert!(page(Lang::Es).contains(&spanish.state(State::Unproven)));
}

#[test]
fn what_people_typed_is_never_markup() {
    for lang in Lang::ALL {
        let page = page(lang);
        assert!(!page.contains("<script>") && !page.contains("<b>shop"));
        assert!(page.contains("&lt;script&gt;") || page.contains("&#60;script&#62;"), "the name is shown, escaped");
    }
}
