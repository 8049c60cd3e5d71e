//! Where marks and their words stand, and drawing them.

use slab_plan::Point;

use super::glyph;
use super::mark::{Layer, MarkKind, MarkPlace, PlanMark};
use super::numbers::Numbered;
use super::room::{middle, roomiest};
use super::{PlanItem, Sheet};
use crate::boxes::{Box2, Xy};
use crate::lettering::{DOWN, SMALL, TALL, width};
use crate::svg::{Anchor, INK, Letters, escaped};

/// Words beside a mark are at most so wide.
const WORDS_ROOM: f64 = 120.0;
/// Between a shape and its words.
const GAP: f64 = 2.0;
/// How far a shape moves off its spot to find room, step by step.
const STEPS: [f64; 3] = [27.0, 42.0, 60.0];
const DIRECTIONS: u32 = 12;
/// With more marks than this only the first step is tried: the drawing is full anyway.
const MANY: usize = 150;
/// As far as a shape with its words reaches from its spot: what lies farther off is nothing to it.
const REACH: Xy = (440.0, 220.0);

/// A mark as it is drawn.
pub(super) struct Placed {
    at: Xy,
    /// Without room for its shape it is a dot.
    is_dot: bool,
    words: Option<(Xy, Anchor, String)>,
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
        let down = glyph::HEIGHT / 2.0 + GAP + TALL / 2.0;
        let (center, from, anchor) = match self {
            Self::Right => ((x + out + words / 2.0, y), x + out, Anchor::Start),
            Self::Left => ((x - out - words / 2.0, y), x - out, Anchor::End),
            Self::Below => ((x, y + down), x, Anchor::Middle),
            Self::Above => ((x, y - down), x, Anchor::Middle),
        };
        (Box2::around(center, words, TALL), (from, center.1 + DOWN), anchor)
    }
}

/// What lies near the spot of a mark.
struct Near {
    /// The spots of the other marks.
    spots: Vec<Box2>,
    rules: Vec<(Xy, Xy)>,
}

impl Near {
    fn crosses(&self, words: Box2) -> bool {
        self.rules.iter().any(|(a, b)| words.crossed_by(*a, *b))
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

    /// Finds a place for each mark's shape and words, and takes it. The few places to test next choose first.
    pub(super) fn place_marks(&mut self, marks: &[&Numbered<'_>]) -> Vec<Option<Placed>> {
        let spots: Vec<Option<Xy>> = marks.iter().map(|n| self.spot(n.mark).map(|(_, at)| at)).collect();
        let steps = if marks.len() > MANY { &STEPS[..1] } else { &STEPS[..] };
        let mut order: Vec<usize> = (0..marks.len()).collect();
        order.sort_by_key(|at| marks[*at].mark.kind != MarkKind::Next);
        let mut placed: Vec<Option<Placed>> = marks.iter().map(|_| None).collect();
        for at in order {
            let Some(spot) = spots[at] else { continue };
            let region = Box2::around(spot, REACH.0, REACH.1);
            let others = spots.iter().enumerate().filter(|(other, _)| *other != at).filter_map(|(_, s)| *s);
            let near = Near {
                spots: others.map(|s| Box2::around(s, 7.0, 7.0)).filter(|b| b.overlap(region) > 0.0).collect(),
                rules: self.rules.iter().filter(|(a, b)| region.crossed_by(*a, *b)).copied().collect(),
            };
            placed[at] = Some(self.place(marks[at].mark, spot, &near, steps));
        }
        placed
    }

    fn place(&mut self, mark: &PlanMark, spot: Xy, near: &Near, steps: &[f64]) -> Placed {
        let shape = if mark.kind == MarkKind::Section { 0.0 } else { glyph::WIDTH };
        let words = mark.short.trim();
        // Words that must be cut tell less than the number with the whole in the list.
        if width(words, SMALL) <= WORDS_ROOM
            && let Some(found) = self.free_place(spot, shape, words, near, steps)
        {
            return found;
        }
        if shape > 0.0
            && !words.is_empty()
            && let Some(found) = self.free_place(spot, shape, "", near, steps)
        {
            return found;
        }
        self.taken.take(Box2::around(spot, 2.0 * glyph::DOT, 2.0 * glyph::DOT));
        Placed { at: spot, is_dot: shape > 0.0, words: None }
    }

    /// The first place, nearest first, where shape and words lie on nothing; taken when found.
    fn free_place(&mut self, spot: Xy, shape: f64, words: &str, near: &Near, steps: &[f64]) -> Option<Placed> {
        let wide = width(words, SMALL);
        let free = |sheet: &Self, b: Box2| {
            b.inside(sheet.frame) && sheet.taken.is_free(b) && near.spots.iter().all(|o| o.overlap(b) == 0.0)
        };
        let ring = |radius: f64| {
            (0..DIRECTIONS).map(move |i| {
                let (sin, cos) = libm::sincos(std::f64::consts::TAU * f64::from(i) / f64::from(DIRECTIONS));
                (spot.0 + radius * cos, spot.1 + radius * sin)
            })
        };
        for at in std::iter::once(spot).chain(steps.iter().flat_map(|r| ring(*r))) {
            let own = Box2::around(at, shape, glyph::HEIGHT);
            // The thin line to the spot crosses no words, and no other spot: it would seem to be about that.
            let astray = || self.words.is_crossed_by(spot, at) || near.spots.iter().any(|b| b.crossed_by(spot, at));
            if shape > 0.0 && (!free(self, own) || astray()) {
                continue;
            }
            if words.is_empty() {
                return Some(self.take_place(spot, at, own, None));
            }
            for side in Side::ALL {
                // Words without a shape stand on their spot.
                let (reach, from, anchor) = if shape > 0.0 {
                    side.set(at, shape, wide)
                } else {
                    (Box2::around(at, wide, TALL), (at.0, at.1 + DOWN), Anchor::Middle)
                };
                if free(self, reach) && !near.crosses(reach) && !reach.crossed_by(spot, at) {
                    let own = if shape > 0.0 { own } else { reach };
                    return Some(self.take_place(spot, at, own, Some((reach, (from, anchor, words.to_owned())))));
                }
            }
        }
        None
    }

    fn take_place(&mut self, spot: Xy, at: Xy, own: Box2, words: Option<(Box2, (Xy, Anchor, String))>) -> Placed {
        self.taken.take(own);
        if let Some((reach, _)) = words {
            self.taken.take(reach);
            self.words.take(reach);
        }
        if at != spot {
            self.rules.push((spot, at));
        }
        Placed { at, is_dot: false, words: words.map(|(_, words)| words) }
    }

    pub(super) fn draw_marks(&mut self, marks: &[&Numbered<'_>], placed: Vec<Option<Placed>>) {
        let placed: Vec<(&Numbered<'_>, Option<Placed>)> = marks.iter().copied().zip(placed).collect();
        for layer in Layer::ALL {
            if !placed.iter().any(|(n, _)| n.mark.layer == layer) {
                continue;
            }
            self.open_layer(layer);
            self.leaders(placed.iter().filter(|(n, _)| n.mark.layer == layer));
            for (numbered, place) in placed.iter().filter(|(n, _)| n.mark.layer == layer) {
                if let (Some(place), Some((at, _))) = (place, self.spot(numbered.mark)) {
                    let attributes = format!(" data-x=\"{}\" data-y=\"{}\"", at.x.as_meters(), at.y.as_meters());
                    self.draw_mark(numbered, place, &attributes);
                }
                self.list_mark(numbered);
            }
            self.svg.close();
        }
    }

    /// Thin lines from shapes that had to move to their spots, under all shapes.
    fn leaders<'m>(&mut self, marks: impl Iterator<Item = &'m (&'m Numbered<'m>, Option<Placed>)>) {
        for (numbered, place) in marks {
            if let (Some(place), Some((_, spot))) = (place, self.spot(numbered.mark))
                && spot != place.at
            {
                self.svg.stroke(&[spot, place.at], "p-leader", (INK, 0.9), "");
                self.svg.circle(spot, 2.2, "p-spot", INK, (INK, 0.5));
            }
        }
    }

    fn list_mark(&mut self, numbered: &Numbered<'_>) {
        let Numbered { mark, number } = numbered;
        if let Some(number) = number {
            self.numbered.push((number.clone(), mark.title.clone()));
        }
        let (id, text) = (Some(mark.id.clone()), mark.title.clone());
        self.items.push(PlanItem { id, layer: mark.layer, number: number.clone(), text });
    }

    fn draw_mark(&mut self, numbered: &Numbered<'_>, place: &Placed, attributes: &str) {
        let mark = numbered.mark;
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
        if place.is_dot {
            glyph::dot(&mut self.svg, mark.kind, settled, place.at);
        } else {
            glyph::draw(&mut self.svg, mark.kind, settled, place.at, numbered.number.as_deref().unwrap_or_default());
        }
        if let Some((from, anchor, words)) = &place.words {
            self.svg.text(*from, Letters::new(SMALL).at(*anchor).halo(), words);
        }
        self.svg.close();
    }

    /// What is known of a zone as a whole: anywhere inside it.
    pub(super) fn draw_zone_marks(&mut self, marks: &[&Numbered<'_>]) {
        for layer in Layer::ALL {
            let of_layer: Vec<&Numbered<'_>> = marks.iter().copied().filter(|n| n.mark.layer == layer).collect();
            if of_layer.is_empty() {
                continue;
            }
            self.open_layer(layer);
            for numbered in of_layer {
                if let Some(place) = self.place_in_zone(numbered.mark) {
                    self.draw_mark(numbered, &place, "");
                }
                self.list_mark(numbered);
            }
            self.svg.close();
        }
    }

    fn place_in_zone(&mut self, mark: &PlanMark) -> Option<Placed> {
        let MarkPlace::Zone(name) = &mark.at else { return None };
        let zone = self.plan.zone(name)?;
        let patch = self.patch(&zone.pieces());
        let around = self.around(patch.bounds()?);
        let short = mark.short.trim();
        let whole = width(short, SMALL) <= WORDS_ROOM;
        let aim = zone.centroid().map(|c| self.view.to_svg(c))?;
        let of_shape = self.around(patch.bounds()?).of_shape();
        let choices = [(short, &around), ("", &around), ("", &of_shape)];
        for (words, around) in choices.into_iter().skip(usize::from(!whole)) {
            let wide = width(words, SMALL);
            let all = glyph::WIDTH + if words.is_empty() { 0.0 } else { GAP + wide };
            let found = roomiest(&patch, around, aim, (all + 2.0, glyph::HEIGHT + 2.0));
            let Some((center, _)) = found.filter(|(_, over)| *over <= 0.0) else { continue };
            self.taken.take(Box2::around(center, all, glyph::HEIGHT));
            let at = (center.0 - all / 2.0 + glyph::WIDTH / 2.0, center.1);
            let (_, from, anchor) = Side::Right.set(at, glyph::WIDTH, wide);
            let words = (!words.is_empty()).then(|| (from, anchor, words.to_owned()));
            return Some(Placed { at, is_dot: false, words });
        }
        None
    }
}
