//! Writes the sample drawings into a folder, to be looked at: `cargo run -p pictures --example draw -- DIR`.

#[path = "../tests/all/samples.rs"]
#[allow(dead_code, reason = "the tests use the rest")]
mod samples;

use localization::{Lang, Locale, UnitSystem};
use pictures::{
    Layer, PlanLayers, PlanLook, bay_sentences, drying_chart, evaporation_chart, marks_of, next_marks, plan_svg, png,
    time_line, zone_sentences,
};
use trade_facts::Trade;

fn main() -> std::io::Result<()> {
    let folder = std::env::args().nth(1).unwrap_or_else(|| ".".to_owned());
    let put = |name: &str, svg: &str| std::fs::write(format!("{folder}/{name}.svg"), svg);
    for (lang, unit_system) in [(Lang::En, UnitSystem::Imperial), (Lang::Es, UnitSystem::Metric)] {
        let locale = Locale::new(lang, unit_system);
        let tag = lang.name();
        let diary = samples::demo();
        let slab = slab_diary::fold(&diary, samples::after_all());
        let marks = marks_of(&slab, Trade::built_in(), locale);
        let demo = slab.plan().expect("the demo has a plan");
        let layers = PlanLayers { marks, ..PlanLayers::default() };
        let plans = [
            ("demo", demo.clone(), layers.clone(), 312.0),
            ("demo-wide", demo.clone(), layers, 900.0),
            (
                "crooked",
                samples::crooked(),
                PlanLayers { marks: samples::one_of_each(), ..PlanLayers::default() },
                312.0,
            ),
            ("bare", samples::crooked(), PlanLayers::default(), 312.0),
            ("rooms", samples::rooms(20, 20), PlanLayers::default(), 312.0),
            ("few-rooms", samples::rooms(6, 3), PlanLayers::default(), 312.0),
        ];
        for (name, plan, layers, width) in plans {
            let drawing = plan_svg(&plan, &layers, &PlanLook::new("plan", "Plan", locale).wide(width));
            put(&format!("plan-{name}-{tag}"), &drawing.svg.unwrap_or_default())?;
            if name == "demo" {
                drawing.items.iter().for_each(|i| println!("{:?} {:?} {}", i.layer, i.number, i.text));
            }
        }
        let (demo, all) = samples::layers_of(&diary, &[], locale);
        let (mapped, full) = samples::layers_of(&samples::diary(&samples::mapped_lines()), &samples::FINISHES, locale);
        let without = |layers: &PlanLayers, hidden: &[Layer]| PlanLayers { hidden: hidden.to_vec(), ..layers.clone() };
        let busy = [Layer::Finishes, Layer::ScoreLines, Layer::Sections];
        let maps = [
            ("demo", &demo, without(&all, &[])),
            ("thirst", &mapped, without(&full, &busy)),
            ("thirst-only", &mapped, without(&full, &[&busy[..], &[Layer::Tests]].concat())),
            ("lines", &mapped, without(&full, &[Layer::Absorbency, Layer::Finishes, Layer::Tests, Layer::Next])),
            ("sections", &mapped, without(&full, &[Layer::Joints, Layer::Finishes, Layer::Tests, Layer::ScoreLines])),
            ("finishes", &mapped, without(&full, &[Layer::Absorbency, Layer::Tests, Layer::Next, Layer::Sections])),
            ("all", &mapped, full.clone()),
        ];
        for (name, plan, layers) in maps {
            for width in [312.0, 1000.0] {
                let drawing = plan_svg(plan, &layers, &PlanLook::new("plan", "Plan", locale).wide(width));
                let svg = drawing.svg.unwrap_or_default();
                put(&format!("map-{name}-{width}-{tag}"), &svg)?;
                let picture = png(&svg, 2.0).map_err(std::io::Error::other)?;
                std::fs::write(format!("{folder}/map-{name}-{width}-{tag}.png"), picture)?;
            }
        }
        for layers in [&all, &full] {
            let map = layers.map.as_deref().expect("the sample has a map");
            zone_sentences(map, locale).iter().for_each(|(_, said)| println!("zone: {said}"));
            bay_sentences(map, locale).iter().for_each(|said| println!("bay: {said}"));
            next_marks(map, locale).iter().for_each(|mark| println!("{} {}", mark.short, mark.title));
        }
        let drawings = [
            ("drying", drying_chart(&samples::drying(locale))),
            ("evaporation", evaporation_chart(&samples::evaporation(locale))),
            ("line", time_line(&samples::time_line_sample(locale))),
        ];
        for (name, drawing) in drawings {
            put(&format!("{name}-{tag}"), &drawing.svg)?;
            drawing.sentences.iter().for_each(|s| println!("{name}: {s}"));
        }
    }
    Ok(())
}
