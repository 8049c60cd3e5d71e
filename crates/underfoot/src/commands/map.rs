//! The map of the slab: what every place is, how it drinks, what happened, where to test next.

use std::path::Path;
use std::sync::Arc;

use pictures::{
    Layer, PlanLayers, PlanLook, bay_sentences, marks_of, next_marks, no_next_sentence, plan_svg, png, zone_sentences,
};
use slab_answers::map::{Fineness, SlabMap};
use slab_diary::fold;
use trade_facts::Trade;

use crate::cli::Which;
use crate::failure::{Answer, Failure};
use crate::json;
use crate::out::answer;
use crate::session::Session;

/// What is asked for.
pub(crate) struct Asked<'a> {
    pub(crate) svg: Option<&'a Path>,
    pub(crate) png: Option<&'a Path>,
    pub(crate) cells: bool,
}

/// Units of the drawing across.
const WIDTH: f64 = 1000.0;

pub(crate) fn run(session: &Session, which: &Which, asked: &Asked<'_>) -> Result<Answer, Failure> {
    let slab_asked = session.ask(which)?;
    let slab = fold(&slab_asked.diary, slab_asked.knowledge);
    let (locale, trade) = (session.locale, Trade::built_in());
    let map = Arc::new(SlabMap::of(&slab, trade, Fineness::PRINT).map_err(Failure::data)?);
    let name = &slab_asked.record.name;
    let mut written = Vec::new();
    if asked.svg.is_some() || asked.png.is_some() {
        let plan = slab.plan().ok_or_else(|| Failure::Data("the slab is not drawn".to_owned()))?;
        let mut marks = marks_of(&slab, trade, locale);
        marks.extend(next_marks(&map, locale));
        let layers =
            PlanLayers { marks, hidden: vec![Layer::Finishes], map: Some(Arc::clone(&map)), ..PlanLayers::default() };
        let look = PlanLook::new("map", name, locale).wide(WIDTH).keyed();
        let svg =
            plan_svg(plan, &layers, &look).svg.ok_or_else(|| Failure::Data("the slab is not drawn".to_owned()))?;
        if let Some(file) = asked.svg {
            super::papers::write(file, svg.as_bytes())?;
            written.push(file.display().to_string());
        }
        if let Some(file) = asked.png {
            super::papers::write(file, &png(&svg, 2.0).map_err(Failure::data)?)?;
            written.push(file.display().to_string());
        }
    }
    if session.json {
        let id = slab_asked.record.id.to_string();
        let mut answer = json::map(name, &id, slab_asked.knowledge.at, &map, asked.cells);
        answer["written"] = serde_json::json!(written);
        answer!("{answer:#}");
    } else {
        answer!("{}", locale.message("map-title", &[("name", name.as_str().into())]));
        for (zone, sentence) in zone_sentences(&map, locale) {
            answer!("  {zone}: {sentence}");
        }
        answer!("{}", locale.message("map-bays", &[]));
        for sentence in bay_sentences(&map, locale) {
            answer!("  {sentence}");
        }
        answer!("{}", locale.message("plan-layer-next", &[]));
        let next = next_marks(&map, locale);
        for mark in &next {
            answer!("  {}. {}", mark.short, mark.title);
        }
        if let Some(sentence) = no_next_sentence(&map, locale) {
            answer!("  {sentence}");
        }
        for file in &written {
            answer!("{}", locale.message("paper-written", &[("file", file.as_str().into())]));
        }
    }
    let open = map.spots.iter().any(slab_answers::map::Spot::is_open);
    Ok(if open { Answer::No } else { Answer::Yes })
}
