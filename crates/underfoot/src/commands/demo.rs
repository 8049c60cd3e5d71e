//! The demo: an invented slab, read from ordinary diary files, and the main job done on it.

use crate::out::answer;
use std::path::Path;

use diary_writer::Writer;
use jiff::Timestamp;
use jiff::tz::TimeZone;
use serde_json::Map;
use slab_answers::order::order;
use slab_answers::standing::standing;
use slab_diary::{DateOrder, Diary, EntryKind, Knowledge, SlabId, When, fold};
use store::Store;
use trade_facts::Trade;

use super::log::DIARY_FILE;
use super::papers::{Wanted, file_name, typeset, write};
use super::series::from_bytes;
use crate::cli::{Common, LangArg, PaperArg, PourArgs, Serve, SizeArg};
use crate::failure::{Answer, Failure};
use crate::session::{Session, locale, zone_of};
use crate::{json, text};

/// The demo's files, the same that `log` reads.
const DIARY: &str = include_str!("../../../../demo/slab.jsonl");
const WEATHER: &[u8] = include_bytes!("../../../../demo/weather/greensboro-nc-tmy3-feb-may.csv");
const WEATHER_NAME: &str = "greensboro-nc-tmy3-feb-may.csv";
/// Drawn by `demo/photographs/make.py`; the diary names them by their hashes.
const PHOTOGRAPHS: [&[u8]; 11] = [
    include_bytes!("../../../../demo/photographs/bay-day-11.jpg"),
    include_bytes!("../../../../demo/photographs/bay-day-18.jpg"),
    include_bytes!("../../../../demo/photographs/bay-day-25.jpg"),
    include_bytes!("../../../../demo/photographs/panel-bare.jpg"),
    include_bytes!("../../../../demo/photographs/panel-1.jpg"),
    include_bytes!("../../../../demo/photographs/panel-2.jpg"),
    include_bytes!("../../../../demo/photographs/panel-3.jpg"),
    include_bytes!("../../../../demo/photographs/panel-4.jpg"),
    include_bytes!("../../../../demo/photographs/panel-5.jpg"),
    include_bytes!("../../../../demo/photographs/panel-6.jpg"),
    include_bytes!("../../../../demo/photographs/panel-7.jpg"),
];

/// The demo is asked as of the last morning of its diary, so that it answers the same on any day.
const AS_OF: &str = "2026-03-27 08:00";
/// The pour sheet is a paper for before the pour: made from what the diary held on this evening, and
/// from what was wished for then.
const BEFORE_POUR: &str = "2026-02-12 18:00";
const WISHED_FINISHES: [&str; 3] = ["shop=light-steel-trowel", "showroom=hard-steel-trowel", "hall=light-steel-trowel"];
/// When its weather file was read in.
const WEATHER_READ: &str = "2026-02-10 09:00";

pub(crate) fn run(dir: &Path, serve: Option<&Serve>, common: &Common) -> Result<Answer, Failure> {
    std::fs::create_dir_all(dir.join("papers")).map_err(|e| Failure::file(dir, &e))?;
    let session = Session::open_in(dir, common)?;
    let slab_id = fill(&session.store)?;
    let diary = session.store.diary(slab_id).map_err(Failure::data)?;
    let zone = zone_of(&diary);
    let at = When::read(AS_OF, &zone).map_err(Failure::data)?.instant();
    let knowledge = Knowledge::noted_by(at);
    let trade = Trade::built_in();
    let standing = standing(&diary, trade, knowledge);
    let slab = fold(&diary, knowledge);
    let name = session.find(Some(&slab_id.to_string()))?.name;
    let shown = dir.display().to_string();
    let order = order(&slab, trade).map_err(Failure::data)?;
    let early = When::read(BEFORE_POUR, &zone).map_err(Failure::data)?;
    let before = fold(&diary, Knowledge::noted_by(early.instant()));
    let today = at.to_zoned_datetime(zone.clone()).date();
    let mut files = Vec::new();
    for (kind, lang) in
        [(PaperArg::PourSheet, LangArg::En), (PaperArg::PourSheet, LangArg::Es), (PaperArg::SiteNotice, LangArg::En)]
    {
        let locale = locale(&Common { lang, ..common.clone() });
        let (known, day) = match kind {
            PaperArg::PourSheet => (&before, early.date()),
            PaperArg::SiteNotice => (&slab, today),
        };
        let file = dir.join("papers").join(file_name(&name, kind, &locale));
        write(&file, &typeset(&locale, known, &wanted(kind), day)?)?;
        files.push(file.display().to_string());
    }
    if session.json {
        let id = slab_id.to_string();
        let locale = &session.locale;
        let answer = serde_json::json!({
            "standing": json::standing(&name, &id, &standing, locale, trade),
            "order": json::order(&name, &id, at, &order, locale),
            "papers": files,
            "data": shown,
        });
        answer!("{answer:#}");
        return Ok(Answer::Yes);
    }
    answer!("{}", session.locale.message("demo-head", &[]));
    let moment = text::moment(at, &zone, &session.locale);
    answer!("{}\n", session.locale.message("demo-as-of", &[("moment", moment.into())]));
    answer!("{}", text::standing(&name, &standing, &session.locale, trade, &zone));
    answer!("{}", text::order(&name, &order, &session.locale));
    for file in &files {
        answer!("{}", session.locale.message("paper-written", &[("file", file.as_str().into())]));
    }
    answer!("{}", session.locale.message("demo-diary", &[("dir", shown.as_str().into())]));
    if let Some(serve) = serve {
        return super::serve::run(session, serve);
    }
    // The demo showed what it should, whatever its slab's standing is.
    Ok(Answer::Yes)
}

fn wanted(kind: PaperArg) -> Wanted {
    let pour = PourArgs {
        thickness: Some("4 in".to_owned()),
        pour_day: Some("2026-02-23".to_owned()),
        finish: WISHED_FINISHES.map(str::to_owned).to_vec(),
        panels: 3,
        waste: "5 %".to_owned(),
    };
    Wanted { kind, size: SizeArg::Letter, out: None, link: None, pour }
}

/// The demo's slab.
pub(crate) fn slab_id() -> SlabId {
    SlabId::of_name("Underfoot demo: Alder Mill workshop")
}

/// The moment at which the demo is asked.
pub(crate) fn as_of() -> Timestamp {
    let zone = TimeZone::get("America/New_York").expect("the zone of the demo's diary is in the time zone table");
    When::read(AS_OF, &zone).expect("a moment of our own").instant()
}

/// Who writes the demo: nobody of this machine.
fn writer<'a>(store: &'a Store, slab: SlabId, diary: &'a Diary, zone: &'a TimeZone) -> Writer<'a> {
    Writer { store, slab, diary, zone, author: DIARY_FILE, device: DIARY_FILE, dates: DateOrder::Unknown, now: as_of() }
}

/// Reads the demo's files into the store; a second time nothing is added. Nothing of this machine or
/// person goes in: the same demo everywhere.
pub(crate) fn fill(store: &Store) -> Result<SlabId, Failure> {
    let id = slab_id();
    store.create_slab(id, "Alder Mill workshop").map_err(Failure::data)?;
    for bytes in PHOTOGRAPHS {
        store.put_photograph(bytes).map_err(Failure::data)?;
    }
    let empty = Diary::new();
    let utc = TimeZone::UTC;
    writer(store, id, &empty, &utc).write_lines(DIARY).map_err(Failure::data)?;
    let diary = store.diary(id).map_err(Failure::data)?;
    if !diary.entries().any(|e| e.body.kind() == Some(EntryKind::AirSeries)) {
        let zone = zone_of(&diary);
        let (mut fields, _) = from_bytes(WEATHER_NAME, WEATHER, &[], None, &zone)?;
        let mut body = Map::from_iter([("kind".to_owned(), serde_json::json!(EntryKind::AirSeries.name()))]);
        body.append(&mut fields);
        let line = serde_json::json!({ "id": "#weather", "happened": WEATHER_READ, "body": body });
        writer(store, id, &diary, &zone).write_lines(&line.to_string()).map_err(Failure::data)?;
    }
    Ok(id)
}
