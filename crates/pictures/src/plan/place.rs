//! Where marks and their words stand, and drawing them.

use slab_plan::Point;

use super::glyph;
use super::mark::{Layer, MarkKind, MarkPlace, PlanMark};
use super::room::{middle, roomiest};
use super::{PlanItem, Sheet};
use crate::boxes::{Box2, Taken, Xy};
use crate::lettering::{SMALL, fitted, width};
use crate::svg::{Anchor, INK, Letters, escaped};

/// Words beside a mark are at most so wide.
const WORDS_ROOM: f64 = 104.0;
const WORDS_HEIGHT: f64 = 13.0;
/// Between a shape and its words.
const GAP: f64 = 2.0;
/// How far a shape moves off its spot to find room, step by step.
const STEPS: [f64; 3] = [21.0, 33.0, 47.0];
const DIRECTIONS: u32 = 12;
/// With more marks than this only the first step is tried: the drawing is full anyway.
const MANY: usize = 150;

/// A shape with its words, placed.
pub(super) struct Placed {
    shape: Xy,
    words: Option<(Xy, Anchor, String)>,
    number: Option<u32>,
}

/// On which side of the shape its words stand.
#[derive(Clone, Copy)]
enum Side {
    Right,
    Left,
    Below,
    Above,
}

impl Side {
    const ALL: [Self; 4] = [Self::Right, Self::Left, Self::Below, Self::Above];

    /// The box of words so wide beside a shape so wide, and where their base line begins.
    fn set(self, (x, y): Xy, shape: f64, words: f64) -> (Box2, Xy, Anchor) {
        let out = shape / 2.0 + GAP;
        let down = glyph::HEIGHT / 2.0 + GAP + WORDS_HEIGHT / 2.0;
        let (center, from, anchor) = match self {
            Self::Right => ((x + out + words / 2.0, y), x + out, Anchor::Start),
            Self::Left => ((x - out - words / 2.0, y), x - out, Anchor::End),
            Self::Below => ((x, y + down), x, Anchor::Middle),
            Self::Above => ((x, y - down), x, Anchor::Middle),
        };
        (Box2::around(center, words, WORDS_HEIGHT), (from, center.1 + 4.0), anchor)
    }
}

impl Sheet<'_> {
    /// The point that a mark is about; `None` for a whole zone.
    fn spot(&self, mark: &PlanMark) -> Option<(Point, Xy)> {
        let at = match &mark.at {
            MarkPlace::Point(at) | MarkPlace::Circle { center: at, .. } => *at,
            MarkPlace::Polygon(corners) => {
                let points: Vec<Xy> = corners.iter().map(|c| self.view.to_svg(*c)).collect();
                let (x, y) = middle(&points)?;
                self.view.to_plan(x, y)
            }
            MarkPlace::Zone(_) => return None,
        };
        let drawn = self.view.to_svg(at);
        Box2::around(drawn, 1.0, 1.0).inside(self.frame).then_some((at, drawn))
    }

    /// Finds a place for each mark's shape and words, and takes it.
    pub(super) fn place_marks(&mut self, marks: &[&PlanMark]) -> Vec<Option<Placed>> {
        let spots: Vec<Option<Xy>> = marks.iter().map(|m| self.spot(m).map(|(_, at)| at)).collect();
        let steps = if marks.len() > MANY { &STEPS[..1] } else { &STEPS[..] };
        let mut placed = Vec::with_capacity(marks.len());
        for (mark, spot) in marks.iter().zip(&spots) {
            placed.push(spot.map(|spot| {
                let others: Vec<Box2> = spots
                    .iter()
                    .flatten()
                    .filter(|s| **s != spot && (s.0 - spot.0).abs() < 200.0 && (s.1 - spot.1).abs() < 100.0)
                    .map(|s| Box2::around(*s, 6.0, 6.0))
                    .collect();
                self.place(mark, spot, &others, steps)
            }));
        }
        placed
    }

    fn place(&mut self, mark: &PlanMark, spot: Xy, others: &[Box2], steps: &[f64]) -> Placed {
        let shape = if mark.kind == MarkKind::Section { 0.0 } else { glyph::WIDTH };
        let words = if mark.kind == MarkKind::Next { "" } else { mark.short.trim() };
        // Words that must be cut tell less than a number with the whole in the key.
        if width(words, SMALL) <= WORDS_ROOM
            && let Some(found) = self.free_place(spot, shape, words, others, steps)
        {
            return found;
        }
        if !words.is_empty() {
            let next = (self.numbered.len() + 1).to_string();
            if let Some(mut found) = self.free_place(spot, shape, &next, others, steps) {
                found.number = Some(self.number(mark.title.clone()));
                return found;
            }
        }
        self.taken.take(Box2::around(spot, shape, glyph::HEIGHT));
        Placed { shape: spot, words: None, number: None }
    }

    /// The first place, nearest first, where shape and words lie on nothing; taken when found.
    fn free_place(&mut self, spot: Xy, shape: f64, words: &str, others: &[Box2], steps: &[f64]) -> Option<Placed> {
        let wide = width(words, SMALL);
        let free = |sheet: &Self, b: Box2| {
            b.inside(sheet.frame) && sheet.taken.is_free(b) && others.iter().all(|o| o.overlap(b) == 0.0)
        };
        let ring = |radius: f64| {
            (0..DIRECTIONS).map(move |i| {
                let (sin, cos) = libm::sincos(std::f64::consts::TAU * f64::from(i) / f64::from(DIRECTIONS));
                (spot.0 + radius * cos, spot.1 + radius * sin)
            })
        };
        for at in std::iter::once(spot).chain(steps.iter().flat_map(|r| ring(*r))) {
            let own = Box2::around(at, shape, glyph::HEIGHT);
            if shape > 0.0 && !free(self, own) {
                continue;
            }
            if words.is_empty() {
                self.taken.take(own);
                return Some(Placed { shape: at, words: None, number: None });
            }
            for side in Side::ALL {
                // Words without a shape stand on their spot.
                let (reach, from, anchor) = if shape > 0.0 {
                    side.set(at, shape, wide)
                } else {
                    (Box2::around(at, wide, WORDS_HEIGHT), (at.0, at.1 + 4.0), Anchor::Middle)
                };
                if free(self, reach) && !self.edges.iter().any(|(a, b)| reach.crossed_by(*a, *b)) {
                    if shape > 0.0 {
                        self.taken.take(own);
                    }
                    self.taken.take(reach);
                    return Some(Placed { shape: at, words: Some((from, anchor, words.to_owned())), number: None });
                }
            }
        }
        None
    }

    pub(super) fn draw_marks(&mut self, marks: &[&PlanMark], placed: Vec<Option<Placed>>) {
        let placed: Vec<(&PlanMark, Option<Placed>)> = marks.iter().copied().zip(placed).collect();
        for layer in Layer::ALL {
            if !placed.iter().any(|(m, _)| m.layer == layer) {
                continue;
            }
            self.open_layer(layer);
            self.leaders(placed.iter().filter(|(m, _)| m.layer == layer));
            for (mark, place) in placed.iter().filter(|(m, _)| m.layer == layer) {
                if let (Some(place), Some((at, _))) = (place, self.spot(mark)) {
                    let attributes = format!(" data-x=\"{}\" data-y=\"{}\"", at.x.as_meters(), at.y.as_meters());
                    self.draw_mark(mark, place, &attributes);
                }
                self.list_mark(mark, place.as_ref().and_then(|p| p.number));
            }
            self.svg.close();
        }
    }

    /// Thin lines from shapes that had to move to their spots, under all shapes.
    fn leaders<'m>(&mut self, marks: impl Iterator<Item = &'m (&'m PlanMark, Option<Placed>)>) {
        for (mark, place) in marks {
            if let (Some(place), Some((_, spot))) = (place, self.spot(mark))
                && spot != place.shape
            {
                self.svg.stroke(&[spot, place.shape], "p-leader", (INK, 0.9), "");
                self.svg.circle(spot, 2.2, "p-spot", INK, (INK, 0.5));
            }
        }
    }

    fn list_mark(&mut self, mark: &PlanMark, number: Option<u32>) {
        let (id, text) = (Some(mark.id.clone()), mark.title.clone());
        self.items.push(PlanItem { id, layer: mark.layer, number, text });
    }

    fn draw_mark(&mut self, mark: &PlanMark, place: &Placed, attributes: &str) {
        let settled = mark.settled && mark.kind.can_settle();
        let state = match (mark.kind.can_settle(), settled) {
            (true, true) => " p-settled",
            (true, false) => " p-open",
            (false, _) => "",
        };
        self.svg.open(&format!(
            " class=\"p-mark {}{state}\" data-item=\"{}\"{attributes}",
            mark.kind.class(),
            escaped(&mark.id)
        ));
        self.svg.title(&mark.title);
        let letters =
            if mark.kind == MarkKind::Next { fitted(&mark.short, SMALL, 18.0) } else { mark.kind.letter(self.locale) };
        glyph::draw(&mut self.svg, mark.kind, settled, place.shape, &letters);
        if let Some((from, anchor, words)) = &place.words {
            let letters = Letters::new(SMALL).at(*anchor).halo();
            let letters = if place.number.is_some() { letters.bold() } else { letters };
            self.svg.text(*from, letters, words);
        }
        self.svg.close();
    }

    /// What is known of a zone as a whole: anywhere inside it.
    pub(super) fn draw_zone_marks(&mut self, marks: &[&PlanMark]) {
        for layer in Layer::ALL {
            let of_layer: Vec<&PlanMark> = marks.iter().copied().filter(|m| m.layer == layer).collect();
            if of_layer.is_empty() {
                continue;
            }
            self.open_layer(layer);
            for mark in of_layer {
                let place = self.place_in_zone(mark);
                if let Some(place) = &place {
                    self.draw_mark(mark, place, "");
                }
                self.list_mark(mark, place.and_then(|p| p.number));
            }
            self.svg.close();
        }
    }

    fn place_in_zone(&mut self, mark: &PlanMark) -> Option<Placed> {
        let MarkPlace::Zone(name) = &mark.at else { return None };
        let zone = self.plan.zone(name)?;
        let patch = self.patch(&zone.pieces());
        let near = |taken: &Taken| patch.bounds().map(|b| taken.near(b)).unwrap_or_default();
        let (near, covered) = (near(&self.taken), near(&self.covered));
        let short = if mark.kind == MarkKind::Next { "" } else { mark.short.trim() };
        let next = (self.numbered.len() + 1).to_string();
        let whole = width(short, SMALL) <= WORDS_ROOM;
        let choices = [(short.to_owned(), false), (next, true), (String::new(), false)];
        let aim = zone.centroid().map(|c| self.view.to_svg(c))?;
        for (words, numbered) in choices.into_iter().skip(usize::from(!whole)) {
            let wide = width(&words, SMALL);
            let all = glyph::WIDTH + if words.is_empty() { 0.0 } else { GAP + wide };
            let Some((center, over)) = roomiest(&patch, (&near, &covered), aim, (all + 2.0, glyph::HEIGHT + 2.0))
            else {
                continue;
            };
            if over > 0.0 {
                continue;
            }
            self.taken.take(Box2::around(center, all, glyph::HEIGHT));
            let shape = (center.0 - all / 2.0 + glyph::WIDTH / 2.0, center.1);
            let (_, from, anchor) = Side::Right.set(shape, glyph::WIDTH, wide);
            let number = numbered.then(|| self.number(mark.title.clone()));
            let words = (!words.is_empty()).then_some((from, anchor, words));
            return Some(Placed { shape, words, number });
        }
        None
    }
}
