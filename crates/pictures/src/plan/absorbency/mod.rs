//! How the ground drinks: hatched classes, lines of equal soaking time, and a veil where the class is
//! not sure.
//!
//! Each bay is drawn from a grid of its own and cut off at its edge, so that nothing is smoothed over a
//! joint or a boundary of finish. Classes are told by the foretold middle of the soaking time. Where the
//! likeliest class is another one, no class reaches even odds, and the veil lies there.

mod bay_edge;
mod field;
mod labels;
mod words;

use slab_answers::map::{Bay, Cell, SlabMap};
use units::Duration;

use super::Sheet;
use super::ground::Patch;
use super::mark::Layer;
use crate::boxes::{Box2, Xy};
use crate::key::KeyEntry;
use crate::svg::{CEMENT, Hatch, INK, outline};
use bay_edge::BayEdge;
use field::Grid;

pub use words::{bay_sentences, next_marks, no_next_sentence, zone_sentences};

/// Times of the fine lines. Limits of classes have lines of their own.
const ROUND: [f64; 10] = [10.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1200.0, 1800.0, 3600.0, 7200.0];
/// A round time this near to a limit has no line beside that of the limit.
const NEAR_LIMIT: f64 = 1.1;
/// Below this chance a class is drawn as not sure, as in `slab_answers::map::ZonePicture::unsure`.
const SURE_FROM: f64 = 0.8;
const BORDER: f64 = 1.7;
const DASHES: &str = " stroke-dasharray=\"5 3\"";

/// What is drawn of it, for the key and the lettering.
#[derive(Default)]
pub(super) struct Thirst {
    seen: Vec<Seen>,
    lines: Vec<Line>,
}

/// A line of equal soaking time.
struct Line {
    points: Vec<Xy>,
    time: Duration,
    is_limit: bool,
    edge: std::rc::Rc<BayEdge>,
}

/// Something the key explains.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Seen {
    Drinks,
    Slow,
    Stands,
    Film,
    Untested,
    Unsure,
    Border,
}

impl Sheet<'_> {
    /// The map, when its layer is shown.
    fn thirst_map(&self) -> Option<std::sync::Arc<SlabMap>> {
        self.layers.map.clone().filter(|_| self.shows(Layer::Absorbency))
    }

    pub(super) fn draw_thirst(&mut self) {
        let Some(map) = self.thirst_map() else { return };
        let told = bay_sentences(&map, self.locale);
        let edges = self.bay_edges(&map);
        self.open_layer(Layer::Absorbency);
        for ((index, bay), edge) in map.bays.iter().enumerate().zip(edges) {
            let opened = self.open_bay(index, &edge);
            if let Some(told) = told.get(index) {
                self.svg.title(told);
            }
            let edge = std::rc::Rc::new(edge);
            if bay.film {
                self.hatch_bay(&edge, Seen::Film, Hatch::Film);
            } else if bay.field().is_some() {
                self.draw_field(&map, index, &edge);
            } else if bay.stands {
                self.hatch_bay(&edge, Seen::Stands, Hatch::Stands);
            } else {
                self.hatch_bay(&edge, Seen::Untested, Hatch::Untested);
            }
            (0..opened).for_each(|_| self.svg.close());
        }
        self.svg.close();
        self.thirst.seen.sort();
        self.thirst.seen.dedup();
        for (zone, text) in zone_sentences(&map, self.locale) {
            if self.plan.zone(&zone).is_some() {
                let args = [("name", zone.as_str().into()), ("value", text.into())];
                let text = self.locale.message("pic-named", &args);
                self.items.push(super::PlanItem { id: None, layer: Layer::Absorbency, number: None, text });
            }
        }
    }

    /// Opens the groups that cut off at the edge of a bay; gives how many.
    fn open_bay(&mut self, index: usize, edge: &BayEdge) -> usize {
        let parts = [Some(&edge.zones), edge.stretch.as_ref()];
        let mut opened = 0;
        for (name, patch) in ["bay", "stretch"].into_iter().zip(parts) {
            let Some(patch) = patch else { continue };
            let id = format!("{}-{name}-{index}", self.svg.prefix());
            let d = path(&patch.0);
            self.svg.put(format_args!("<clipPath id=\"{id}\"><path d=\"{d}\" clip-rule=\"evenodd\"/></clipPath>"));
            self.svg.open(&format!(" class=\"p-bay\" clip-path=\"url(#{id})\""));
            opened += 1;
        }
        opened
    }

    fn hatch_bay(&mut self, edge: &BayEdge, seen: Seen, hatch: Hatch) {
        self.put_class(&edge.zones.0, hatch);
        self.thirst.seen.push(seen);
    }

    fn put_class(&mut self, rings: &[Vec<Xy>], hatch: Hatch) {
        if rings.is_empty() {
            return;
        }
        let (d, fill, name) = (path(rings), self.svg.hatch(hatch), hatch.name());
        self.svg.put(format_args!(
            "<path class=\"p-class p-class-{name}\" d=\"{d}\" fill=\"{fill}\" fill-rule=\"evenodd\" stroke=\"none\"/>"
        ));
    }

    fn draw_field(&mut self, map: &SlabMap, index: usize, edge: &std::rc::Rc<BayEdge>) {
        let own = || map.cells.iter().filter(|cell| cell.bay == index);
        let timed: Vec<(&Cell, f64)> = own().filter_map(|c| Some((c, c.estimate.as_ref()?.log_mean()))).collect();
        let doubt: Vec<(&Cell, f64)> = own().filter_map(|c| Some((c, 1.0 - c.sure?.as_share()))).collect();
        let Some(grid) = Grid::of(&timed, map.cell) else { return };
        let (low, high) = grid.span();
        let limits = map.limits.map(|limit| libm::log(limit.as_seconds()));
        let rings = limits.map(|limit| self.on_sheet(&grid.rings(limit)));
        self.put_class(&[rings[0].clone(), rings[1].clone()].concat(), Hatch::Slow);
        self.put_class(&rings[1], Hatch::Stands);
        let classes = [
            (Seen::Drinks, low < limits[0]),
            (Seen::Slow, low < limits[1] && high >= limits[0]),
            (Seen::Stands, high >= limits[1]),
        ];
        self.thirst.seen.extend(classes.iter().filter(|(_, there)| *there).map(|(seen, _)| *seen));
        if let Some(doubt) = Grid::of(&doubt, map.cell)
            && doubt.span().1 > 1.0 - SURE_FROM
        {
            let rings = self.on_sheet(&doubt.rings(1.0 - SURE_FROM));
            self.put_class(&rings, Hatch::Unsure);
            for ring in &rings {
                self.svg.stroke(ring, "p-unsure-edge", (CEMENT, 1.0), DASHES);
            }
            self.thirst.seen.push(Seen::Unsure);
        }
        let fine = ROUND.iter().map(|seconds| (Duration::seconds(*seconds), false)).filter(|(time, _)| {
            map.limits.iter().all(|limit| {
                let ratio = time.as_seconds() / limit.as_seconds();
                !(1.0 / NEAR_LIMIT..NEAR_LIMIT).contains(&ratio)
            })
        });
        for (time, is_limit) in map.limits.iter().map(|limit| (*limit, true)).chain(fine) {
            let value = libm::log(time.as_seconds());
            if !(low < value && value <= high) {
                continue;
            }
            let ink = if is_limit { (INK, BORDER) } else { (CEMENT, 0.8) };
            let class = if is_limit { "p-class-border" } else { "p-time-line" };
            for points in self.on_sheet(&grid.rings(value)) {
                self.svg.stroke(&points, class, ink, "");
                self.thirst.lines.push(Line { points, time, is_limit, edge: std::rc::Rc::clone(edge) });
            }
            self.thirst.seen.push(Seen::Border);
        }
    }

    /// Rings on the drawing; what leaves the sheet runs along its edge, since it is cut off anyway.
    fn on_sheet(&self, rings: &[field::Ring]) -> Vec<Vec<Xy>> {
        let (right, bottom) = (self.view.width, self.view.slab_bottom);
        let drawn = |ring: &field::Ring| {
            let points = ring.iter().map(|at| self.view.to_svg(*at));
            straightened(points.map(|(x, y)| (x.clamp(0.0, right), y.clamp(0.0, bottom))))
        };
        rings.iter().map(drawn).filter(|ring| ring.len() > 2).collect()
    }

    /// What hatches and lines mean.
    pub(super) fn thirst_key(&self) -> Vec<KeyEntry> {
        let Some(map) = self.thirst_map() else { return Vec::new() };
        let [soaks, stands] = map.limits.map(|limit| words::round_time(limit, self.locale));
        let entry = |seen: &Seen| {
            let (key, args): (&str, Vec<(&str, localization::Arg<'_>)>) = match seen {
                Seen::Drinks => ("pic-key-drinks", vec![("time", soaks.as_str().into())]),
                Seen::Slow => ("pic-key-slow", vec![("low", soaks.as_str().into()), ("high", stands.as_str().into())]),
                Seen::Stands => ("pic-key-stands", vec![("time", stands.as_str().into())]),
                Seen::Film => ("pic-ground-film", Vec::new()),
                Seen::Untested => ("pic-ground-untested", Vec::new()),
                Seen::Unsure => ("pic-key-unsure", Vec::new()),
                Seen::Border => ("pic-key-border", Vec::new()),
            };
            let hatch = match seen {
                Seen::Drinks | Seen::Untested | Seen::Border => None,
                Seen::Slow => Some(Hatch::Slow),
                Seen::Stands => Some(Hatch::Stands),
                Seen::Film => Some(Hatch::Film),
                Seen::Unsure => Some(Hatch::Unsure),
            };
            let fill = hatch.map_or_else(|| "none".to_owned(), |hatch| self.svg.hatch(hatch));
            let seen = *seen;
            KeyEntry {
                words: self.locale.message(key, &args),
                swatch: Box::new(move |svg, (x, y)| match seen {
                    Seen::Border => svg.stroke(&[(x - 10.0, y), (x + 10.0, y)], "p-class-border", (INK, BORDER), ""),
                    // The hatch is too wide to show a whole sign in so small a box.
                    Seen::Untested => {
                        svg.rect(Box2::around((x, y), 20.0, 16.0), "p-class", "none", (INK, 1.0));
                        svg.stroke(&[(x - 3.0, y), (x + 3.0, y)], "p-line", (CEMENT, 1.0), "");
                        svg.stroke(&[(x, y - 3.0), (x, y + 3.0)], "p-line", (CEMENT, 1.0), "");
                    }
                    Seen::Unsure => {
                        let (l, r, t, b) = (x - 10.0, x + 10.0, y - 8.0, y + 8.0);
                        svg.rect(Box2::around((x, y), 20.0, 16.0), "p-class", &fill, ("none", 0.0));
                        let ring = [(l, t), (r, t), (r, b), (l, b), (l, t)];
                        svg.stroke(&ring, "p-unsure-edge", (CEMENT, 1.0), DASHES);
                    }
                    _ => svg.rect(Box2::around((x, y), 20.0, 16.0), "p-class", &fill, (INK, 1.0)),
                }),
            }
        };
        self.thirst.seen.iter().map(entry).collect()
    }
}

fn path(rings: &[Vec<Xy>]) -> String {
    let d: Vec<String> = rings.iter().map(|ring| outline(ring, true)).collect();
    d.join(" ")
}

/// A line without the points that lie straight between their neighbors.
fn straightened(points: impl Iterator<Item = Xy>) -> Vec<Xy> {
    let mut out: Vec<Xy> = Vec::new();
    for next in points {
        if let [.., a, b] = out[..] {
            let bent = (b.0 - a.0) * (next.1 - b.1) - (b.1 - a.1) * (next.0 - b.0);
            if bent.abs() < 1e-6 {
                out.pop();
            }
        }
        out.push(next);
    }
    out
}

/// The zones of a bay on the sheet.
fn zones_of(sheet: &Sheet<'_>, bay: &Bay) -> Patch {
    let pieces: Vec<_> =
        bay.zones.iter().filter_map(|name| sheet.plan.zone(name)).flat_map(slab_plan::Zone::pieces).collect();
    sheet.patch(&pieces)
}
