//! Sums, trade words, facts, the order and the papers as pages.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use calculators::{NoFiles, calculate, calculators};
use common::{DEMO, Site};
use form_schema::FormData;
use localization::{Lang, Locale, UnitSystem};
use slab_diary::SlabId;
use trade_facts::Trade;

/// What a text becomes inside a page.
fn escaped(text: &str) -> String {
    let pairs = [('&', "&#38;"), ('<', "&#60;"), ('>', "&#62;"), ('"', "&#34;"), ('\'', "&#39;")];
    text.chars()
        .map(|c| pairs.iter().find(|(sign, _)| *sign == c).map_or(c.to_string(), |(_, to)| (*to).to_owned()))
        .collect()
}

fn address(path: &str, fields: &[(&str, &str)]) -> String {
    format!("{path}?{}", form_urlencoded::Serializer::new(String::new()).extend_pairs(fields).finish())
}

fn with_demo() -> (Site, SlabId) {
    let site = Site::empty();
    let id = site.slab("Alder Mill workshop", DEMO);
    (site, id)
}

#[test]
fn every_sum_answers_its_example_in_both_languages_and_measures() {
    let site = Site::empty();
    let mut answered = 0;
    for of in calculators() {
        for (lang, unit_system) in
            Lang::ALL.into_iter().flat_map(|lang| UnitSystem::ALL.map(|unit_system| (lang, unit_system)))
        {
            let locale = Locale::new(lang, unit_system);
            let cookies = format!("lang={}; measure={}", lang.name(), unit_system.name());
            let blank =
                site.get_as(&format!("/sums/{}", of.id()), &cookies).ends(200).holds(&escaped(&of.about(locale)));
            // The link that a person taps.
            let text = blank.text();
            let link = text.split("href=\"").find(|part| part.starts_with(&format!("/sums/{}?", of.id()))).unwrap();
            let link = link.split('"').next().unwrap().replace("&#38;", "&");
            let page = site.get_as(&link, &cookies).ends(200);
            let sum = of.calculate(&of.filled(unit_system), Some(unit_system), &NoFiles).unwrap();
            for line in sum.answers(locale).iter().flat_map(|answer| &answer.lines) {
                assert!(page.text().contains(&escaped(line)), "{} {cookies}: {line}", of.id());
            }
            for caution in sum.cautions(locale) {
                assert!(page.text().contains(&escaped(&caution.text)), "{} {cookies}: {}", of.id(), caution.text);
            }
            let formula = sum.formula(locale);
            assert!(page.text().contains(&escaped(&formula.formula)) && page.text().contains(&escaped(&formula.cited)));
            answered += 1;
        }
    }
    assert_eq!(answered, 15 * 4);
}

#[test]
fn every_sum_is_on_the_list_and_an_unknown_one_is_not_there() {
    let site = Site::empty();
    let list = site.get("/sums").ends(200).text();
    for of in calculators() {
        assert!(list.contains(&format!("href=\"/sums/{}\"", of.id())), "{}", of.id());
    }
    site.get("/sums/alchemy").ends(404);
    site.get("/sums/dew-point%2f..").ends(404);
    site.post("/sums/alchemy", &[("air", "75")]).ends(404);
}

/// A field that is needed beside others is not called optional, whatever the parser demands by itself.
#[test]
fn only_what_may_stay_empty_is_called_optional() {
    let site = Site::empty();
    let label = |page: &str, field: &str| {
        let (_, rest) = page.split_once(&format!("<label for=\"field-{field}\">")).unwrap();
        rest.split("</label>").next().unwrap().to_owned()
    };
    let page = site.get("/sums/evaporation").ends(200).text();
    for needed in ["air", "rh", "wind"] {
        assert!(!label(&page, needed).contains("optional"), "{needed}");
    }
    let page = site.get("/sums/dew-point").ends(200).text();
    assert!(label(&page, "slab").contains("optional") && !label(&page, "air").contains("optional"));
    // A unit stands beside the box once.
    site.get(&address("/sums/joints", &[("length", "40 ft"), ("width", "30 ft"), ("thickness", "4 in")]))
        .ends(200)
        .holds("value=\"40\"");
    site.get_as("/sums/drying", "lang=es").ends(200).holds("Vacío significa: Una: sobre el suelo");
}

/// An address that was made with one reader's units says the same to a reader of others.
#[test]
fn a_shared_address_keeps_the_units_it_was_typed_in() {
    let site = Site::empty();
    let shared = address("/sums/dew-point", &[("air", "75"), ("rh", "60"), ("measure", "imperial")]);
    let sum = calculate("dew-point", &FormData::from_iter([("air", "75 °F"), ("rh", "60 %")]), None, &NoFiles);
    let sum = sum.unwrap();
    let metric = Locale::new(Lang::En, UnitSystem::Metric);
    let page = site.get_as(&shared, "lang=en; measure=metric").ends(200);
    page.holds(&escaped(&sum.answers(metric)[0].lines[0])).holds("value=\"75 °F\"");
    site.get(&shared).ends(200).holds("value=\"75\"").holds(&sum.answers(Locale::default())[0].lines[0]);
}

#[test]
fn a_mistake_stands_beside_its_field_and_what_was_typed_stays() {
    let site = Site::empty();
    let page = site.get(&address("/sums/dew-point", &[("air", "warm"), ("rh", "60")])).ends(422);
    let page =
        page.holds("id=\"mistake-air\"").holds("value=\"warm\"").holds("value=\"60\"").holds("href=\"#field-air\"");
    assert!(!page.text().contains("class=\"result\""));
    // Nothing typed at all is a question too.
    site.get(&address("/sums/dew-point", &[("air", ""), ("rh", "")])).ends(422).holds("id=\"mistake-air\"");
    let spanish = site.get_as(&address("/sums/dew-point", &[("air", "75")]), "lang=es").ends(422);
    assert!(spanish.holds("Falta").text().contains("se acepta"));
}

#[test]
fn hostile_texts_come_back_as_texts() {
    let (site, id) = with_demo();
    let hostile = "\"><script>alert(1)</script>";
    let slab = format!("/slab/{id}");
    let pages = [
        address("/sums/dew-point", &[("air", hostile), ("measure", hostile), (hostile, hostile)]),
        address("/sums/drying", &[("sides", hostile), ("reading", hostile)]),
        address("/glossary", &[("q", hostile), ("from", hostile)]),
        address("/facts", &[("q", hostile), ("about", hostile)]),
        address(&format!("{slab}/papers"), &[("link", hostile), ("thickness", hostile), ("finish-0", hostile)]),
        address(&format!("{slab}/papers/site-notice.pdf"), &[("link", hostile), ("size", hostile)]),
        address(&format!("{slab}/papers/pour-sheet.pdf"), &[("pour_day", hostile), ("waste", hostile)]),
    ];
    for path in &pages {
        let page = site.get(path);
        assert!([200, 422].contains(&page.status.as_u16()), "{path}: {}", page.status);
        assert!(!page.text().contains("<script>alert"), "{path}");
    }
    // Names out of a diary, in pages and file names.
    let named = site.slab("=cmd|' /C calc'!A0 \"<b>", DEMO);
    for path in ["order", "papers", "order.csv"] {
        let page = site.get(&format!("/slab/{named}/{path}")).ends(200);
        assert!(!page.text().contains("\"<b>"), "{path}");
    }
    let csv = site.get(&format!("/slab/{named}/order.csv"));
    assert_eq!(csv.header("content-disposition"), "attachment; filename=\"cmd-c-calc-a0-b-order.csv\"");
}

#[test]
fn a_file_is_taken_and_without_one_the_form_leads_to_its_address() {
    let site = Site::empty();
    let fields = [("air", "75"), ("rh", "40"), ("wind", "10"), ("surface", "80"), ("measure", "imperial")];
    let led = site.post_files("/sums/evaporation", &fields, &[("file", "", b"")]).ends(303);
    let location = led.header("location").to_owned();
    assert!(location.starts_with("/sums/evaporation?") && location.contains("surface=80"), "{location}");
    site.get(&location).ends(200).holds("class=\"result\"");
    let weather = include_bytes!("../../../demo/weather/greensboro-nc-tmy3-feb-may.csv");
    let with_file = site.post_files(
        "/sums/evaporation",
        &[("surface", "80"), ("measure", "imperial")],
        &[("file", "../../etc/passwd", weather)],
    );
    let with_file = with_file.ends(200).holds("class=\"result\"");
    assert!(!with_file.text().contains("etc/passwd"));
    // Bytes that are no weather file are refused beside the field.
    let odd = site.post_files("/sums/evaporation", &[("measure", "imperial")], &[("file", "a.csv", b"not weather")]);
    odd.ends(422).holds("id=\"mistake-file\"");
    // A name alone opens nothing of this machine.
    site.get(&address("/sums/evaporation", &[("file", "/etc/passwd"), ("surface", "80")])).ends(422);
}

#[test]
fn the_glossary_is_found_from_both_sides() {
    let site = Site::empty();
    let all = site.get("/glossary").ends(200).text();
    let mut words = 0;
    for term in Trade::built_in().glossary() {
        let spanish = Locale::new(Lang::Es, UnitSystem::Imperial).text_of(term, "word");
        assert!(all.contains(&escaped(&term.en)) && all.contains(&escaped(&spanish)), "{}", term.id);
        words += 1;
    }
    assert_eq!(words, 135);
    for (search, from) in [("acido", "en"), ("ACID", "es"), ("tinte acido", "es")] {
        let page = site.get(&address("/glossary", &[("q", search), ("from", from)])).ends(200);
        page.holds("tinte ácido (tinte reactivo)").holds("acid stain (reactive stain)");
    }
    let spanish = site.get_as("/glossary", "lang=es").ends(200).holds("Palabras del oficio").text();
    assert!(spanish.find("<dt lang=\"es-US\">").is_some() && !spanish.contains("<dt lang=\"en-US\">"));
    site.get("/glossary?q=glitter").ends(200).holds("No word has that in it");
}

#[test]
fn every_fact_has_its_anchor_its_grade_and_its_sources() {
    let site = Site::empty();
    let all = site.get("/facts").ends(200).text();
    let trade = Trade::built_in();
    let mut facts = 0;
    for fact in trade.facts().chain(trade.limits()) {
        let (_, rest) = all.split_once(&format!("id=\"{}\"", fact.id)).unwrap_or_else(|| panic!("{}", fact.id));
        let article = rest.split("</article>").next().unwrap();
        assert!(article.contains(&escaped(&fact.statement)), "{}", fact.id);
        for key in &fact.source {
            assert!(article.contains(&format!("href=\"#source-{key}\"")), "{}: {key}", fact.id);
            assert!(all.contains(&format!("id=\"source-{key}\"")), "{key}");
        }
        facts += 1;
    }
    assert_eq!(facts, 29 + 131);
    assert_eq!(all.matches("id=\"test-").count(), 25);
    assert_eq!(all.matches("id=\"safety-").count(), 25);
    // 28 days of house rule R01 in the reader's words, and 40 °F as 4.4 °C.
    assert!(all.contains("at least 28 days"));
    let metric = site.get_as("/facts", "lang=es; measure=metric").ends(200).text();
    assert!(metric.contains("al menos 28 días") && metric.contains("solo en inglés, menos las pruebas"));
    for test in metric.split("id=\"test-").skip(1).filter_map(|test| test.split("</dl>").next()) {
        assert!(!test.contains("lang=\"en\""), "{test}");
    }
    assert!(metric.contains("Edad de la losa"));
    assert!(!metric.contains(" °F<") && metric.contains("lang=\"en\""));
}

#[test]
fn facts_are_narrowed_by_topic_and_by_words() {
    let site = Site::empty();
    let membrane = site.get("/facts?about=membrane").ends(200).text();
    assert!(membrane.contains("id=\"drop-quick-soak\"") && membrane.contains("id=\"test-water-drop\""));
    assert!(membrane.contains("id=\"membrane-blocks-stain\"") && !membrane.contains("id=\"hcl-ceiling-ppm\""));
    let found = site.get("/facts?q=quick+SOAKING").ends(200).text();
    assert!(found.contains("id=\"drop-quick-soak\"") && !found.contains("id=\"age-before-stain-days\""));
    // A test is found in the reader's words and in those of its record.
    for search in ["trapo+blanco", "damp+rag"] {
        let found = site.get_as(&format!("/facts?q={search}"), "lang=es").ends(200).text();
        assert!(found.contains("id=\"test-residue-rag\"") && !found.contains("id=\"test-slab-age\""), "{search}");
    }
    site.get("/facts?about=alchemy").ends(200).holds("id=\"age-before-stain-days\"");
}

#[test]
fn the_order_says_first_what_to_buy() {
    let (site, id) = with_demo();
    let page = site.get(&format!("/slab/{id}/order")).ends(200).text();
    let h1 = page.split("<h1>").nth(1).unwrap().split("</h1>").next().unwrap().to_owned();
    assert!(h1.starts_with("To buy for 1,"), "{h1}");
    let (_, after) = page.split_once("</h1>").unwrap();
    let first = after.split("</li>").next().unwrap();
    assert!(first.contains("gal</b> Reactive stain (umber)"), "{first}");
    // The panel that was approved is the evidence, and each record used is a step away.
    assert!(page.contains("measured on 2 panels") && page.contains("href=\"/facts#stain-waste\""));
    assert!(page.contains(&format!("href=\"/slab/{id}/entry/")));
    let spanish = site.get_as(&format!("/slab/{id}/order"), "lang=es; measure=metric").ends(200).text();
    assert!(spanish.contains("Qué comprar para") && spanish.contains(" L</b>"));
    assert!(spanish.contains("brisa, fondos de cubeta, retoques") && !spanish.contains("overspray"));
}

#[test]
fn an_order_that_cannot_be_made_says_what_is_missing() {
    let site = Site::empty();
    let bare = site.slab("Bare", "");
    let page = site.get(&format!("/slab/{bare}/order")).ends(200).holds("the plan is missing");
    page.holds(&format!("href=\"/slab/{bare}/plan/draw\""));
    let led = site.get(&format!("/slab/{bare}/order.csv")).ends(303);
    assert_eq!(led.header("location"), format!("/slab/{bare}/order"));
    let plan = DEMO.lines().nth(1).unwrap();
    let drawn = site.slab("Drawn", plan);
    let page = site.get(&format!("/slab/{drawn}/order")).ends(200);
    let page = page.holds(&format!("href=\"/slab/{drawn}/add/finish\""));
    page.holds(&format!("href=\"/slab/{drawn}/add/sealer_chosen\"")).holds("No panel is approved yet");
    site.get("/slab/0190a000-0000-7000-8000-000000000000/order").ends(404);
}

/// A formula in a name that a person typed is a text in the spreadsheet.
#[test]
fn the_spreadsheet_is_read_back_and_runs_nothing() {
    let (site, _) = with_demo();
    let hostile = DEMO.replace("\"stain\":\"umber\"", "\"stain\":\"=HYPERLINK(A1),\\\"x\\\"\"");
    let id = site.slab("Hostile", &hostile);
    let got = site.get(&format!("/slab/{id}/order.csv")).ends(200);
    assert_eq!(got.header("content-type"), "text/csv; charset=utf-8");
    assert_eq!(got.header("content-disposition"), "attachment; filename=\"hostile-order.csv\"");
    let text = got.text();
    assert!(text.starts_with('\u{feff}') && text.contains("\r\n"));
    let mut reader = csv::Reader::from_reader(text.trim_start_matches('\u{feff}').as_bytes());
    let head = reader.headers().unwrap().clone();
    assert_eq!(&head[0], "Item");
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert!(rows.len() >= 9, "{} rows", rows.len());
    assert!(rows.iter().any(|row| row[0].contains("=HYPERLINK(A1),\"x\"")), "the name is there as it was typed");
    for row in &rows {
        assert!(row.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@'])), "{row:?}");
        let [low, usual, high] = [1, 2, 3].map(|at| row[at].parse::<f64>().unwrap());
        assert!(low <= usual && usual <= high, "{row:?}");
    }
}

#[test]
fn papers_are_pdfs_under_plain_names() {
    let (site, id) = with_demo();
    let papers = format!("/slab/{id}/papers");
    let page = site.get(&papers).ends(200).holds("This slab was poured on February 23, 2026");
    page.holds("It names the 2 things found");
    site.get_as(&papers, "lang=es").ends(200).holds("se coló el 23 de febrero de 2026");
    let link = ("link", "https://slabs.example.org/s/4f2a");
    let sheet = address(&format!("{papers}/pour-sheet.pdf"), &[("finish-0", "broom"), ("panels", "2"), ("size", "a4")]);
    let notice = address(&format!("{papers}/site-notice.pdf"), &[link]);
    for (path, name) in
        [(sheet, "alder-mill-workshop-pour-sheet-en.pdf"), (notice, "alder-mill-workshop-site-notice.pdf")]
    {
        let pdf = site.get(&path).ends(200);
        assert_eq!(pdf.header("content-type"), "application/pdf");
        assert_eq!(pdf.header("content-disposition"), format!("inline; filename=\"{name}\""));
        assert!(pdf.bytes.starts_with(b"%PDF"));
    }
}

#[test]
fn papers_say_beside_the_field_what_cannot_be_taken() {
    let (site, id) = with_demo();
    let papers = format!("/slab/{id}/papers");
    let odd = [
        ("pour_day", "tomorrow"),
        ("thickness", "thick"),
        ("finish-1", "glitter"),
        ("panels", "1000"),
        ("waste", "80 %"),
    ];
    let page = site.get(&address(&format!("{papers}/pour-sheet.pdf"), &odd)).ends(422).text();
    for (field, typed) in odd {
        assert!(page.contains(&format!("id=\"mistake-{field}\"")), "{field}");
        assert!(field == "finish-1" || page.contains(&format!("value=\"{typed}\"")), "{field}");
    }
    // The sheet's own bound, which no input knows.
    let thick = address(&format!("{papers}/pour-sheet.pdf"), &[("thickness", "40 in")]);
    site.get(&thick).ends(422).holds("id=\"mistake-thickness\"");
    let link = address(&format!("{papers}/site-notice.pdf"), &[("link", "the office")]);
    site.get(&link).ends(422).holds("id=\"mistake-link\"").holds("value=\"the office\"");
    let spanish = site.get_as(&link, "lang=es").ends(422).holds("Esa no es una dirección web");
    assert!(!spanish.text().contains("accepted:"), "the sentence is Spanish");
    // Before the pour nothing is in the diary but the plan.
    let drawn = site.slab("Drawn", DEMO.lines().nth(1).unwrap());
    let sheet = format!("/slab/{drawn}/papers/pour-sheet.pdf");
    let page = site.get(&sheet).ends(422).holds("id=\"mistake-thickness\"").holds("id=\"mistake-finish-2\"");
    assert!(!page.text().contains("was poured"));
    let all: Vec<(&str, &str)> =
        vec![("thickness", "4 in"), ("finish-0", "broom"), ("finish-1", "broom"), ("finish-2", "float")];
    assert!(site.get(&address(&sheet, &all)).ends(200).bytes.starts_with(b"%PDF"));
    let bare = site.slab("Bare", "");
    site.get(&format!("/slab/{bare}/papers")).ends(200).holds("The plan is missing");
    site.get(&format!("/slab/{bare}/papers/pour-sheet.pdf")).ends(422);
}
