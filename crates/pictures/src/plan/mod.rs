//! The plan to scale: zones, cut-outs, walls with their lengths, and what was found and tried on it.
//!
//! Ground is drawn from below: zones, finishes, how the ground drinks, score lines and joints, sections,
//! what happened. Lettering is placed in this order, each keeping clear of what is there already and of
//! the edges, borders and joints: wall lengths (outside), marks (where they were made, or beside with a
//! thin line to the spot), names of zones and numbers of sections (anywhere inside), times on the lines of
//! equal soaking time, what is known of a zone as a whole (anywhere inside).
//!
//! Every mark has one number, in the order of the list, whatever the width: it stands in its shape and in
//! the list beside. A mark that finds no room for its shape is a dot, and stays in the list; a zone that
//! finds no room for its name has a number after those of the marks.

mod absorbency;
mod finishes;
mod floor;
mod furniture;
mod glyph;
mod ground;
mod mark;
mod numbers;
mod of_slab;
mod place;
mod room;
mod section_names;
mod strokes;
mod view;
mod walls;
mod zone_names;

use localization::Locale;
use slab_plan::Plan;
use units::Length;

use crate::boxes::{Box2, Taken, Xy};
use crate::key::{KeyEntry, KeyLine, key_lines};
use crate::look::{Look, PHONE};
use crate::svg::{Hatch, Svg};

pub use absorbency::{bay_sentences, next_marks, no_next_sentence, zone_sentences};
pub use floor::{FloorPart, floor_svg, stretch_svg};
pub use mark::{Layer, MarkKind, MarkPlace, PlanLayers, PlanMark};
use numbers::Numbered;
pub use of_slab::marks_of;
pub use view::PlanView;

/// Numbers below the drawing at most; the rest is in the list beside it.
const MAX_NUMBERS: usize = 24;

/// How the plan is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanLook {
    /// Title, reader, prefix.
    pub look: Look,
    width: f64,
    keyed: bool,
}

impl PlanLook {
    /// For a phone, with the key and what the numbers stand for on the page beside it.
    #[must_use]
    pub fn new(prefix: &str, title: &str, locale: Locale) -> Self {
        Self { look: Look::new(prefix, title, locale), width: PHONE, keyed: false }
    }

    /// In so many units, 312 to 1600: the lettering keeps its size, the slab grows around it. For
    /// paper and large screens.
    #[must_use]
    pub fn wide(self, units: f64) -> Self {
        Self { width: if units.is_finite() { units.clamp(PHONE, 1600.0) } else { self.width }, ..self }
    }

    /// With the key and what the numbers stand for below the slab: for a file that stands by itself.
    #[must_use]
    pub fn keyed(self) -> Self {
        Self { keyed: true, ..self }
    }
}

/// The plan as a drawing, how to find a place on it, and the same as a list.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanDrawing {
    /// One `svg` element; `None` when only areas are known, and nothing can be drawn.
    ///
    /// Every part lies in a group `<g data-layer-of="…">` (a layer may have several); every mark in
    /// a group with `data-item` (its id), `data-x` and `data-y` (where it is, meters) and a title;
    /// every zone in a group with `data-zone`.
    pub svg: Option<String>,
    /// From the drawing to the plan and back; `None` when nothing is drawn.
    pub view: Option<PlanView>,
    /// Everything that the shown layers hold, in words.
    pub items: Vec<PlanItem>,
    /// What shapes, hatches and strokes mean, for the page beside the drawing.
    pub key: Vec<KeyLine>,
}

/// One thing on the plan in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanItem {
    /// The id of a mark; nothing for zones and walls.
    pub id: Option<String>,
    /// Where it belongs.
    pub layer: Layer,
    /// Its number in the drawing; a letter for a place to test next.
    pub number: Option<String>,
    /// What it is.
    pub text: String,
}

/// Everything the parts of the drawing share.
struct Sheet<'a> {
    svg: Svg,
    plan: &'a Plan,
    view: PlanView,
    layers: &'a PlanLayers,
    locale: Locale,
    /// Where lettering may go: the part of the sheet above the key.
    frame: Box2,
    taken: Taken,
    /// The edge of the slab.
    edges: Vec<(Xy, Xy)>,
    /// Strokes that words must not lie across: edges, borders of zones, joints, thin lines to a spot.
    rules: Vec<(Xy, Xy)>,
    /// Words set so far, which a thin line must not cross.
    words: Taken,
    /// Ground that marks cover: better left clear by names, if there is a choice.
    covered: Taken,
    items: Vec<PlanItem>,
    /// Numbered things with their words, for the lines below a keyed drawing.
    numbered: Vec<(String, String)>,
    /// Whether the key stands in the drawing.
    keyed: bool,
    /// Kinds of stroke drawn, for the key.
    line_kinds: Vec<strokes::LineKind>,
    thirst: absorbency::Thirst,
}

impl<'a> Sheet<'a> {
    /// A sheet with nothing on it.
    fn new(plan: &'a Plan, view: PlanView, layers: &'a PlanLayers, look: &PlanLook) -> Self {
        Self {
            svg: Svg::new(&look.look.prefix),
            plan,
            view,
            layers,
            locale: look.look.locale,
            frame: Box2 { left: 2.0, top: 2.0, right: view.width - 2.0, bottom: view.slab_bottom },
            taken: Taken::default(),
            edges: Vec::new(),
            rules: Vec::new(),
            words: Taken::default(),
            covered: Taken::default(),
            items: Vec::new(),
            numbered: Vec::new(),
            keyed: look.keyed,
            line_kinds: Vec::new(),
            thirst: absorbency::Thirst::default(),
        }
    }

    fn shows(&self, layer: Layer) -> bool {
        !self.layers.hidden.contains(&layer)
    }

    fn open_layer(&mut self, layer: Layer) {
        self.svg.open(&format!(" class=\"p-layer\" data-layer-of=\"{}\"", layer.name()));
    }
}

/// Draws a plan with its marks.
///
/// Marks in a zone that the plan does not have, and marks outside the sheet, are listed but not
/// drawn. Never fails: a plan of areas alone gives the list without a drawing.
#[must_use]
pub fn plan_svg(plan: &Plan, layers: &PlanLayers, look: &PlanLook) -> PlanDrawing {
    let locale = look.look.locale;
    let dimensions = !layers.hidden.contains(&Layer::Dimensions);
    let Some(view) = PlanView::of(plan, look.width, dimensions) else {
        return PlanDrawing { svg: None, view: None, items: undrawn_items(plan, layers, locale), key: Vec::new() };
    };
    let mut sheet = Sheet::new(plan, view, layers, look);
    sheet.draw_ground();
    sheet.draw_finishes();
    sheet.draw_thirst();
    sheet.draw_edge();
    sheet.draw_lines();
    sheet.draw_sections();
    sheet.draw_patches();
    sheet.draw_walls();
    let numbered = Numbered::all(layers);
    let shown = numbered.iter().filter(|n| !layers.hidden.contains(&n.mark.layer));
    let (at_points, in_zones): (Vec<&Numbered<'_>>, Vec<&Numbered<'_>>) = shown.partition(|n| !n.mark.at.is_zone());
    let places = sheet.place_marks(&at_points);
    sheet.draw_zone_names();
    sheet.draw_section_names();
    sheet.draw_times();
    sheet.draw_marks(&at_points, places);
    sheet.draw_zone_marks(&in_zones);
    sheet.list_cut_outs();
    let (height, entries) = sheet.draw_furniture();
    let key = key_lines(sheet.svg.prefix(), &entries);
    finish(sheet, look, height, key)
}

fn finish(sheet: Sheet<'_>, look: &PlanLook, height: f64, key: Vec<KeyLine>) -> PlanDrawing {
    let Sheet { svg, plan, mut view, locale, mut items, .. } = sheet;
    view.height = height;
    items.sort_by_key(|item| item.layer);
    let extra = format!(" data-x0=\"{}\" data-y0=\"{}\" data-m=\"{}\"", view.x0, view.y0, view.m);
    let svg = svg.finish((view.width, view.height), &look.look.title, &description(plan, locale), &extra);
    PlanDrawing { svg: Some(svg), view: Some(view), items, key }
}

fn description(plan: &Plan, locale: Locale) -> String {
    let Some((low, high)) = plan.bounds() else { return String::new() };
    let names: Vec<String> = plan.zones().iter().take(MAX_NUMBERS).map(|z| z.name().to_owned()).collect();
    let args = [
        ("area", locale.area(plan.area()).into()),
        ("width", locale.length(Length::from(high.x - low.x)).into()),
        ("depth", locale.length(Length::from(high.y - low.y)).into()),
        ("zones", locale.list(&names).into()),
    ];
    locale.message("pic-plan-desc", &args)
}

fn zone_text(zone: &slab_plan::Zone, locale: Locale) -> String {
    locale.message("pic-named", &[("name", zone.name().into()), ("value", locale.area(zone.area()).into())])
}

fn finish_text(zone: &str, finish: &str, locale: Locale) -> String {
    locale.message("pic-named", &[("name", zone.into()), ("value", locale.term(finish).into())])
}

fn undrawn_items(plan: &Plan, layers: &PlanLayers, locale: Locale) -> Vec<PlanItem> {
    let zones = plan.zones().iter().map(|z| (None, Layer::Zones, zone_text(z, locale)));
    let finish = |(zone, finish): &(String, String)| (None, Layer::Finishes, finish_text(zone, finish, locale));
    let marks = layers.marks.iter().map(|m| (Some(m.id.clone()), m.layer, m.title.clone()));
    zones
        .chain(layers.finishes.iter().map(finish))
        .chain(marks)
        .filter(|(_, layer, _)| !layers.hidden.contains(layer))
        .map(|(id, layer, text)| PlanItem { id, layer, number: None, text })
        .collect()
}

impl Sheet<'_> {
    fn list_cut_outs(&mut self) {
        let area = self.plan.cut_out_area();
        if self.shows(Layer::CutOuts) && area > units::Area::ZERO {
            let text = self.locale.message("pic-cut-outs", &[("area", self.locale.area(area).into())]);
            self.items.push(PlanItem { id: None, layer: Layer::CutOuts, number: None, text });
        }
    }

    /// The key: what the shapes and hatches mean.
    fn key_entries(&self) -> Vec<KeyEntry> {
        let mut entries: Vec<KeyEntry> = Vec::new();
        if self.shows(Layer::CutOuts) && self.plan.cut_out_area() > units::Area::ZERO {
            let fill = self.svg.hatch(Hatch::Cut);
            let words =
                self.locale.message("pic-cut-outs", &[("area", self.locale.area(self.plan.cut_out_area()).into())]);
            entries.push(KeyEntry {
                words,
                swatch: Box::new(move |svg, at| {
                    svg.rect(Box2::around(at, 18.0, 14.0), "p-cut", &fill, (crate::svg::INK, 1.0));
                }),
            });
        }
        entries.extend(self.finish_key());
        entries.extend(self.thirst_key());
        entries.extend(self.line_key());
        entries.extend(self.section_key());
        let mut shown: Vec<(MarkKind, bool)> = self
            .layers
            .marks
            .iter()
            .filter(|m| self.shows(m.layer) && m.kind != MarkKind::Section)
            .map(|m| (m.kind, m.settled && m.kind.can_settle()))
            .collect();
        shown.sort();
        shown.dedup();
        for (kind, settled) in shown {
            entries.push(KeyEntry {
                words: kind.meaning(settled, self.locale),
                swatch: Box::new(move |svg, at| glyph::draw(svg, kind, settled, at, kind.sample())),
            });
        }
        entries
    }
}
