//! The floor with the colors of panels laid over its zones: an illustration, and it says so on itself.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use science::color::preview::Illustration;
use slab_plan::{Plan, Point};
use units::Length;

use super::mark::Layer;
use super::{PlanLayers, PlanLook, PlanView, Sheet};
use crate::boxes::Box2;
use crate::key::KeyEntry;
use crate::lettering::{SMALL, wrapped};
use crate::svg::{CEMENT, Hatch, INK, Letters, Num, Svg, outline};

/// Height of a line of the note.
const LINE: f64 = 18.0;

/// An illustration and the zones it is laid over.
#[derive(Debug, Clone, Copy)]
pub struct FloorPart<'a> {
    /// Colors over the box round the whole plan, from its upper left corner.
    pub colors: &'a Illustration,
    /// Side of a pixel on the floor.
    pub pixel: Length,
    /// The zones by name.
    pub zones: &'a [String],
}

/// The floor as it may look. Zones without a part are hatched and the key says that no panel stands
/// for them. `note` stands under the drawing: what it is, and what it is not. Nothing when only areas
/// are known.
#[must_use]
pub fn floor_svg(plan: &Plan, parts: &[FloorPart<'_>], note: &str, look: &PlanLook) -> Option<String> {
    let locale = look.look.locale;
    let view = PlanView::of(plan, look.width, true)?;
    let (low, high) = plan.bounds()?;
    let corner = view.to_svg(Point::new(low.x, high.y));
    let layers = PlanLayers::default();
    let mut sheet = Sheet::new(plan, view, &layers, &look.clone().keyed());
    sheet.draw_ground();
    sheet.draw_edge();
    for (index, part) in parts.iter().enumerate() {
        sheet.lay(index, part, corner);
    }
    let dressed = |name: &str| parts.iter().any(|part| part.zones.iter().any(|zone| zone == name));
    let bare: Vec<_> = plan.zones().iter().filter(|zone| !dressed(zone.name())).collect();
    let hatch = sheet.svg.hatch(Hatch::Likely);
    for zone in &bare {
        let patch = sheet.patch(&zone.pieces());
        let d: Vec<String> = patch.0.iter().map(|ring| outline(ring, true)).collect();
        let d = d.join(" ");
        sheet.svg.put(format_args!(
            "<path d=\"{d}\" fill=\"{hatch}\" fill-rule=\"evenodd\" stroke=\"{CEMENT}\" stroke-width=\"1\"/>"
        ));
    }
    let edge = sheet.patch(&plan.pieces());
    for ring in &edge.0 {
        let closed: Vec<_> = ring.iter().chain(ring.first()).copied().collect();
        sheet.svg.stroke(&closed, "p-edge", (INK, 2.2), "");
    }
    sheet.draw_walls();
    sheet.draw_zone_names();
    let mut extra = Vec::new();
    if !bare.is_empty() {
        extra.push(KeyEntry {
            words: locale.message("pic-floor-no-panel", &[]),
            swatch: Box::new(move |svg, at| svg.rect(Box2::around(at, 18.0, 14.0), "p-line", &hatch, (CEMENT, 1.0))),
        });
    }
    let (bottom, _) = sheet.draw_furniture_with(extra);
    let lines = wrapped(note, SMALL, view.width - 24.0, 6);
    for (row, words) in lines.iter().enumerate() {
        let at = (12.0, bottom + 12.0 + LINE * row as f64);
        sheet.svg.text(at, Letters::new(SMALL).bold(), words);
    }
    let height = bottom + 12.0 + LINE * lines.len() as f64;
    Some(sheet.svg.finish((view.width, height), &look.look.title, note, ""))
}

impl Sheet<'_> {
    /// Lays an illustration over its zones.
    fn lay(&mut self, index: usize, part: &FloorPart<'_>, corner: crate::boxes::Xy) {
        let zones = self.plan.zones().iter().filter(|zone| part.zones.iter().any(|name| name == zone.name()));
        let rings: Vec<String> =
            zones.flat_map(|zone| self.patch(&zone.pieces()).0).map(|ring| outline(&ring, true)).collect();
        let Some(bytes) = png_of(part.colors).filter(|_| !rings.is_empty()) else { return };
        let (clip, d) = (format!("{}-floor-{index}", self.svg.prefix()), rings.join(" "));
        let unit = part.pixel.as_meters() / self.view.m;
        let size = part.colors.size;
        let (x, y) = (Num(corner.0), Num(corner.1));
        let (w, h) = (Num(size.width as f64 * unit), Num(size.height as f64 * unit));
        let data = STANDARD.encode(bytes);
        self.svg.open(&format!(" class=\"p-layer\" data-layer-of=\"{}\"", Layer::Zones.name()));
        self.svg.put(format_args!(
            "<clipPath id=\"{clip}\"><path d=\"{d}\" clip-rule=\"evenodd\"/></clipPath>\
             <image clip-path=\"url(#{clip})\" x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" \
             preserveAspectRatio=\"none\" href=\"data:image/png;base64,{data}\"/>\
             <path d=\"{d}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1\"/>"
        ));
        self.svg.close();
    }
}

/// A stretch of floor seen near, with a scale bar and the note under it.
#[must_use]
pub fn stretch_svg(part: &FloorPart<'_>, (wide, deep): (Length, Length), note: &str, look: &PlanLook) -> String {
    let locale = look.look.locale;
    let mut svg = Svg::new(&look.look.prefix);
    let (left, top) = (12.0, 12.0);
    let across = look.width - 2.0 * left;
    let unit = across / wide.as_meters();
    let down = deep.as_meters() * unit;
    let clip = format!("{}-stretch", svg.prefix());
    if let Some(bytes) = png_of(part.colors) {
        let pixel = part.pixel.as_meters() * unit;
        let size = part.colors.size;
        let (w, h) = (Num(size.width as f64 * pixel), Num(size.height as f64 * pixel));
        let (across, down) = (Num(across), Num(down));
        let data = STANDARD.encode(bytes);
        svg.put(format_args!(
            "<clipPath id=\"{clip}\"><rect x=\"{left}\" y=\"{top}\" width=\"{across}\" height=\"{down}\"/></clipPath>\
             <image clip-path=\"url(#{clip})\" x=\"{left}\" y=\"{top}\" width=\"{w}\" height=\"{h}\" \
             preserveAspectRatio=\"none\" href=\"data:image/png;base64,{data}\"/>"
        ));
    }
    let frame = Box2 { left, top, right: left + across, bottom: top + down };
    svg.rect(frame, "p-edge", "none", (INK, 1.5));
    let size = [("width", locale.length(wide).into()), ("depth", locale.length(deep).into())];
    let said = locale.message("pic-stretch", &size);
    let mut lines = vec![said];
    lines.extend(wrapped(note, SMALL, across, 6));
    for (row, words) in lines.iter().enumerate() {
        svg.text((left, top + down + 20.0 + LINE * row as f64), Letters::new(SMALL).bold(), words);
    }
    let height = top + down + 16.0 + LINE * (lines.len() as f64 + 0.5);
    svg.finish((look.width, height), &look.look.title, note, "")
}

/// The colors as a PNG.
pub(crate) fn png_of(colors: &Illustration) -> Option<Vec<u8>> {
    use image::{ImageFormat, RgbImage};
    let (width, height) = (u32::try_from(colors.size.width).ok()?, u32::try_from(colors.size.height).ok()?);
    let picture = RgbImage::from_raw(width, height, colors.pixels.concat())?;
    let mut out = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut out, ImageFormat::Png).ok()?;
    Some(out.into_inner())
}
