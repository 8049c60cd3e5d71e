//! What the rules of the core really say, over thousands of made-up diaries: each reason carries what
//! the table of `carried` says, and every one of them reads without a gap in both languages.

use std::collections::BTreeMap;

use localization::{Lang, Locale, UnitSystem};
use slab_answers::standing::{Code, Reason, Standing, standing};
use slab_diary::{Context, Diary, Knowledge, SlabId, read_lines};
use trade_facts::Trade;

/// Bodies a diary is drawn from; `@` marks those that keep their label.
const BODIES: &[&str] = &[
    r#""kind":"job_opened","name":"x","time_zone":"America/Chicago""#,
    r#""kind":"job_opened","name":"x","age":"existing","exposure":"exterior""#,
    r#""kind":"plan","outline":{"area":"900 ft2"}"#,
    r#""kind":"pour","mix":"4021","thickness":"4 in""#,
    r#""kind":"pour""#,
    r#""kind":"finish","finish":"light-steel-trowel""#,
    r#""kind":"finish","finish":"hard-steel-trowel""#,
    r#""kind":"curing","method":"wet_covers""#,
    r#""kind":"curing","method":"none""#,
    r#""kind":"curing","method":"membrane""#,
    r#""kind":"cured""#,
    r#""kind":"temperature","slab":"41 °F""#,
    r#""kind":"temperature","slab":"41 °F""#,
    r#""kind":"temperature","slab":"75 °F""#,
    r#""kind":"color_look","evenness":"even""#,
    r#""kind":"color_look","evenness":"patchy""#,
    r#""kind":"color_look","evenness":"cant_tell""#,
    r#""kind":"water_drop","soaked_in":"45 s""#,
    r#""kind":"water_drop","soaked_in":"45 s""#,
    r#""kind":"water_drop","soaked_in":"50 s""#,
    r#""kind":"water_drop","soaked_in":"55 s""#,
    r#""kind":"water_drop","soaked_in":"70 s""#,
    r#""kind":"water_drop","soaked_in":"130 s""#,
    r#""kind":"water_drop","soaked_in":"10 s""#,
    r#""kind":"water_drop","still_stood_after":"5 min""#,
    r#""kind":"water_drop","still_stood_after":"12 min""#,
    r#""kind":"water_drop","beads":true"#,
    r#""kind":"scrape","result":"powder""#,
    r#""kind":"scrape","result":"powder""#,
    r#""kind":"scrape","result":"curl""#,
    r#""kind":"scrape","result":"shine_change""#,
    r#""kind":"solvent_wipe","result":"clean""#,
    r#""kind":"solvent_wipe","result":"shine_change""#,
    r#""kind":"solvent_wipe","result":"sticky_or_yellow""#,
    r#""kind":"acid_drop","fizz":"strong""#,
    r#""kind":"acid_drop","fizz":"strong""#,
    r#""kind":"acid_drop","fizz":"weak""#,
    r#""kind":"acid_drop","fizz":"none""#,
    r#""kind":"cleaning","method":"stripper""#,
    r#""kind":"cleaning","method":"acid""#,
    r#""kind":"survey","contamination":true,"cracks":true"#,
    r#""kind":"survey","contamination":true,"cracks":false"#,
    r#"@oil "kind":"incident","what":"cutting-oil""#,
    r#"@chalk "kind":"incident","what":"red-chalk""#,
    r#"@scratch "kind":"incident","what":"scratches""#,
    r#"@puddle "kind":"incident","what":"water-puddle""#,
    r#"@burn "kind":"incident","what":"trowel-burn""#,
    r#"@nailed "kind":"incident","what":"nailed-into-field""#,
    r#""kind":"accepted","of":"LABEL","by":"the owner","reason":"fine""#,
    r#""kind":"cleaning","method":"degreaser","of":"LABEL""#,
    r#""kind":"cleaning","method":"degreaser","of":"LABEL""#,
    r#""kind":"retest","of":"LABEL","result":"clear""#,
    r#""kind":"retest","of":"LABEL","result":"faint""#,
    r#""kind":"retest","of":"LABEL","result":"still_there""#,
    r#""kind":"water_drop","soaked_in":"45 s","of":"LABEL""#,
    r#""kind":"water_drop","beads":true,"of":"LABEL""#,
    r#""kind":"cover","action":"laid","material":"cardboard","printed":"down""#,
    r#""kind":"cover","action":"laid","material":"plastic""#,
    r#""kind":"cover","action":"lifted","material":"cardboard""#,
    r#""kind":"cover","action":"lifted","material":"plastic""#,
    r#""kind":"sealer_chosen","sealer":"epoxy-solid""#,
    r#""kind":"sealer_chosen","sealer":"acrylic-water""#,
    r#""kind":"sealer_chosen","sealer":"penetrating-silane""#,
    r#""kind":"slab_humidity","humidity":"74 %","depth":"1.6 in","equilibrated":"24 h""#,
    r#""kind":"slab_humidity","humidity":"80 %","depth":"1.6 in","equilibrated":"24 h""#,
    r#""kind":"slab_humidity","humidity":"92 %","depth":"1.6 in","equilibrated":"24 h""#,
    r#""kind":"slab_humidity","humidity":"70 %""#,
    r#""kind":"emission_dish","gain":"9 g","area":"0.5 ft2","exposed":"66 h""#,
    r#""kind":"emission_dish","gain":"1 g","area":"0.5 ft2","exposed":"66 h""#,
    r#""kind":"plastic_sheet","result":"dry","covered":"16 h""#,
    r#""kind":"plastic_sheet","result":"dry","covered":"2 h""#,
    r#""kind":"plastic_sheet","result":"darkened","covered":"16 h""#,
    r#""kind":"plastic_sheet","result":"drops","covered":"16 h""#,
    r#""kind":"coat_laid","coat":1"#,
    r#""kind":"neutralized","with":"bicarbonate""#,
    r#""kind":"rinsed","rag":"clean""#,
    r#""kind":"rinsed","rag":"faint""#,
    r#""kind":"rinsed","rag":"colored""#,
    r#""kind":"rinsed""#,
    r#""kind":"surface_ph","ph":"11.5""#,
    r#""kind":"surface_ph","ph":"9.5""#,
    r#""kind":"surface_ph","ph":"8""#,
    r#""kind":"surface_ph","ph":"8.5""#,
    r#""kind":"surface_ph","ph":"9""#,
    r#""kind":"surface_ph","ph":"5""#,
    r#"@crack "kind":"defect","what":"crack","width":"1/16 in""#,
    r#"@hair "kind":"defect","what":"crack","width":"0.01 in""#,
    r#"@unknown "kind":"defect","what":"crack""#,
    r#"@moving "kind":"defect","what":"crack","moving":true"#,
    r#"@hole "kind":"defect","what":"hole""#,
    r#"@spall "kind":"defect","what":"spall""#,
    r#"@patch "kind":"defect","what":"patch""#,
    r#"@dust "kind":"defect","what":"dusting""#,
    r#""kind":"repair","of":"LABEL","material":"cement","owner_told":true"#,
    r#""kind":"repair","of":"LABEL","material":"cement","owner_told":false"#,
    r#""kind":"repair","of":"LABEL","material":"polymer","owner_told":true"#,
    r#""kind":"panel_made","panel":"P1","mix":"4021","finish":"light-steel-trowel""#,
    r#""kind":"panel_made","panel":"P1","mix":"777","finish":"light-steel-trowel""#,
    r#""kind":"panel_made","panel":"P1","finish":"broom""#,
    r#""kind":"panel_made","panel":"P1","finish":"light-steel-trowel""#,
    r#""kind":"panel_made","panel":"P1","on_the_floor":true"#,
    r#""kind":"panel_stained","panel":"P1","mix":[{"stain":"umber","parts":1}],"water_parts":1,"coats":2"#,
    r#""kind":"choice_approved","panel":"P1","by":"the owner","state":"sealed""#,
    r#""kind":"choice_approved","panel":"P1","by":"the owner""#,
    r#""kind":"site_check","water":true,"eyewash":true,"waste_plan":true,"data_sheets":true"#,
    r#""kind":"site_check","water":true"#,
    r#""kind":"site_check","eyewash":false,"waste_plan":false"#,
    r#""kind":"hold_released","hold_point":"membrane","by":"Ana","reason":"seen""#,
    r#""kind":"hold_released","hold_point":"site","by":"Ana","reason":"seen""#,
    r#""kind":"hold_released","hold_point":"contamination","by":"Ana","reason":"seen""#,
];

/// Readings taken an hour before the question, one of them in a diary.
const READINGS: &[&str] = &[
    r#""kind":"air_reading","air":"66 °F","humidity":"45 %","slab":"62 °F""#,
    r#""kind":"air_reading","air":"66 °F","humidity":"90 %","slab":"53 °F","rain":true"#,
    r#""kind":"air_reading","air":"66 °F","humidity":"84 %","slab":"60 °F""#,
    r#""kind":"air_reading","air":"66 °F","humidity":"80 %","slab":"64 °F""#,
    r#""kind":"air_reading","air":"66 °F","humidity":"0 %","slab":"95 °F""#,
    r#""kind":"air_reading","slab":"45 °F""#,
    r#""kind":"air_reading","air":"66 °F""#,
];

/// What treatments and tests are for; mostly the oil, so that its story gets to its end.
const LABELS: [&str; 20] = [
    "oil", "oil", "oil", "oil", "oil", "oil", "oil", "oil", "oil", "chalk", "chalk", "scratch", "puddle", "nailed",
    "crack", "unknown", "moving", "hole", "patch", "spall",
];

/// Stories: the bodies whose text holds one of these.
const STORIES: [&[&str]; 5] = [
    &["water_drop", "scrape", "pour"],
    &["slab_humidity", "emission_dish", "plastic_sheet", "sealer_chosen", "\"plan\""],
    &["panel_", "choice_approved", "finish", "pour"],
    &["surface_ph", "coat_laid", "neutralized", "rinsed"],
    &["incident", "retest", "degreaser", "LABEL", "defect", "cover"],
];

/// A linear congruential row (Knuth's constants, from memory): any row would do, as long as it is the same each time.
struct Draw(u64);

impl Draw {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % n
    }
}

fn line(day: usize, hour: usize, place: &str, body: &str) -> String {
    let (id, body) = match body.strip_prefix('@').and_then(|b| b.split_once(' ')) {
        Some((label, body)) => (format!(r##""id":"#{label}","##), body),
        None => (String::new(), body),
    };
    let date = jiff::civil::date(2026, 3, 2) + jiff::Span::new().days(day as i64);
    format!("{{{id}\"happened\":\"{date} {hour:02}:00\",{place}\"body\":{{{body}}}}}\n")
}

fn diary(draw: &mut Draw) -> Diary {
    let divided = draw.below(4) == 0;
    let mut text = String::new();
    let mut labels_used = Vec::new();
    let mut add = |text: &mut String, draw: &mut Draw, index: usize, day: usize| {
        let body = BODIES[index].replace("LABEL", &format!("#{}", LABELS[draw.below(LABELS.len())]));
        if body.starts_with('@') {
            if labels_used.contains(&index) {
                return;
            }
            labels_used.push(index);
        }
        let place = match (divided, draw.below(3)) {
            (true, 1) => r#""place":{"zone":"shop"},"#,
            (true, 2) => r#""place":{"zone":"office"},"#,
            _ => "",
        };
        // Most tests name their point, so that they are tests at places of their own.
        let point = format!(r#""place":{{"point":["{} ft","{} ft"]}},"#, 3 * draw.below(12), 3 * draw.below(8));
        let place = if !divided && draw.below(3) > 0 { point.as_str() } else { place };
        text.push_str(&line(day, 6 + draw.below(12), place, &body));
    };
    // Half of the diaries tell one story closely, in the order of the job; the others tell anything.
    if let Some(story) = STORIES.get(draw.below(2 * STORIES.len())) {
        let matching: Vec<usize> = (0..BODIES.len()).filter(|i| story.iter().any(|s| BODIES[*i].contains(s))).collect();
        let mut drawn: Vec<usize> = (0..6 + draw.below(8)).map(|_| matching[draw.below(matching.len())]).collect();
        drawn.sort_unstable();
        for (step, index) in drawn.into_iter().enumerate() {
            add(&mut text, draw, index, 3 * step);
        }
    } else {
        for _ in 0..4 + draw.below(30) {
            let (index, day) = (draw.below(BODIES.len()), draw.below(40));
            add(&mut text, draw, index, day);
        }
    }
    if let Some(reading) = READINGS.get(draw.below(READINGS.len() + 3)) {
        text.push_str(&line(43, 11, "", reading));
    }
    let context = Context {
        slab: SlabId::of_name("words"),
        zone: jiff::tz::TimeZone::UTC,
        author: "a".to_owned(),
        device: "d".to_owned(),
        noted: None,
    };
    read_lines(&text, &context).unwrap_or_else(|e| panic!("{e:?}\n{text}")).into_iter().collect()
}

/// The worked cases of `reference/standing/`, each with its moment: they were written for what random diaries
/// seldom come to.
fn worked_cases() -> Vec<(Diary, jiff::Timestamp)> {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../reference/standing");
    let files = std::fs::read_dir(folder).expect("the folder is there").map(|file| file.expect("a file").path());
    let cases = files.filter(|path| path.extension().is_some_and(|end| end == "toml"));
    cases
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("a case");
            let head = |name: &str| {
                let line = text.lines().find_map(|line| line.strip_prefix(&format!("{name} = \"")));
                line.and_then(|rest| rest.strip_suffix('"')).unwrap_or_else(|| panic!("{}: {name}", path.display()))
            };
            let zone = jiff::tz::TimeZone::get(head("time_zone")).expect("a time zone");
            let at = slab_diary::When::read(head("at"), &zone).expect("a moment").instant();
            let lines = text.split("'''").nth(1).expect("a diary");
            let context = Context {
                slab: SlabId::of_name("case"),
                zone,
                author: "a".to_owned(),
                device: "d".to_owned(),
                noted: None,
            };
            (read_lines(lines, &context).expect("lines").into_iter().collect(), at)
        })
        .collect()
}

fn check(reason: &Reason) {
    let table = crate::carried::carried(reason.code);
    for (name, value) in &reason.values {
        let known = table.iter().find(|c| c.name == *name);
        let known = known.unwrap_or_else(|| panic!("{} carries {name}, which the table lacks", reason.code.name()));
        assert_eq!(crate::carried::kind_of(value), known.kind, "{} {name}", reason.code.name());
        let times = reason.values.iter().filter(|(n, _)| n == name).count();
        assert!(times == 1 || known.repeats, "{} carries {name} {times} times", reason.code.name());
    }
    for carried in table.iter().filter(|c| c.always) {
        assert!(
            reason.values.iter().any(|(name, _)| *name == carried.name),
            "{} does not carry {}",
            reason.code.name(),
            carried.name
        );
    }
}

fn read_aloud(standing: &Standing, seen: &mut BTreeMap<&'static str, String>) {
    for point in &standing.hold_points {
        for reason in &point.why {
            check(reason);
            for lang in Lang::ALL {
                let text = Locale::new(lang, UnitSystem::Imperial).reason(reason);
                assert!(!text.contains(['{', '$']) && text.ends_with('.'), "{text}");
            }
            seen.entry(reason.code.name()).or_insert_with(|| Locale::default().reason(reason));
        }
    }
    for lang in Lang::ALL {
        let text = Locale::new(lang, UnitSystem::Imperial).overall(&standing.overall);
        assert!(text.ends_with('.') && !text.contains(['{', '$']) && !text.contains(": ."), "{text}");
    }
}

#[test]
fn the_rules_carry_what_the_table_says() {
    let trade = Trade::built_in();
    let mut draw = Draw(20_260_302);
    let mut seen = BTreeMap::new();
    let at = "2026-04-14T17:00:00Z".parse().expect("a moment");
    for _ in 0..4000 {
        read_aloud(&standing(&diary(&mut draw), trade, Knowledge::happened_by(at)), &mut seen);
    }
    for (diary, at) in worked_cases() {
        read_aloud(&standing(&diary, trade, Knowledge::noted_by(at)), &mut seen);
    }
    let unseen: Vec<&str> = Code::ALL.iter().map(|c| c.name()).filter(|name| !seen.contains_key(name)).collect();
    assert!(unseen.is_empty(), "no diary came to {unseen:?}");
}
