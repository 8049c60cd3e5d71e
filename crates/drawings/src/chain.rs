//! Lines that meet end to end, as closed loops and open chains.

use std::collections::{BTreeMap, HashMap};

use crate::curve::Path;
use crate::flatten::Loose;
use crate::{Chain, Gap, Layer, Loop, Spot};

/// The most ends whose nearest other end is looked for; a drawing of a slab has none.
const MAX_GAPS: usize = 200;
/// The most lines between the same two ends that are compared with each other.
const MAX_ALIKE: usize = 64;

/// Ends within this share of the drawing's extent are one.
const JOIN_SHARE: f64 = 1e-5;

/// Joins the lines of every layer; the answer has how near two ends count as one.
pub(crate) fn layers(loose: BTreeMap<String, Loose>) -> (BTreeMap<String, Layer>, f64) {
    let points = loose.values().flat_map(|l| &l.paths).flat_map(|(path, _)| &path.points);
    let (mut low, mut high) =
        (Spot::new(f64::INFINITY, f64::INFINITY), Spot::new(f64::NEG_INFINITY, f64::NEG_INFINITY));
    for p in points {
        low = Spot::new(low.x.min(p.x), low.y.min(p.y));
        high = Spot::new(high.x.max(p.x), high.y.max(p.y));
    }
    let within = if low.x <= high.x { JOIN_SHARE * (high.x - low.x).max(high.y - low.y) } else { 0.0 };
    (loose.into_iter().map(|(name, l)| (name, layer(l, within))).collect(), within)
}

fn layer(loose: Loose, within: f64) -> Layer {
    let mut out = Layer { labels: loose.labels, ignored: loose.ignored, ..Layer::default() };
    let mut open = Vec::new();
    for (path, closed) in loose.paths {
        match (path.points.len(), closed) {
            (0 | 1, _) => {}
            (_, true) => out.loops.extend(closed_line(path, within)),
            // Drawn around and back to its start without saying that it is closed.
            (4.., false) if path.points[0].distance(path.points[path.points.len() - 1]) <= within => {
                out.loops.extend(closed_line(path, within));
            }
            (_, false) => open.push(path),
        }
    }
    Net::of(open, within).take_apart(&mut out, within);
    out
}

/// A loop of its points, without repeats; nothing when it is no shape.
fn closed_line(path: Path, within: f64) -> Option<Loop> {
    let mut corners: Vec<Spot> = Vec::with_capacity(path.points.len());
    for p in path.points {
        if corners.last().is_none_or(|last| last.distance(p) > within) {
            corners.push(p);
        }
    }
    while corners.len() > 1 && corners[0].distance(corners[corners.len() - 1]) <= within {
        corners.pop();
    }
    if corners.len() < 3 {
        return None;
    }
    let area = signed_area(&corners).abs();
    (area > within * within).then_some(Loop { corners, area, deviation: path.deviation, area_error: path.area_error })
}

pub(crate) fn signed_area(corners: &[Spot]) -> f64 {
    let from = corners[0];
    let next = corners.iter().cycle().skip(1);
    let twice = corners
        .iter()
        .zip(next)
        .map(|(a, b)| (a.x - from.x) * (b.y - from.y) - (a.y - from.y) * (b.x - from.x))
        .sum::<f64>();
    twice / 2.0
}

/// Open lines by the places where they end.
struct Net {
    paths: Vec<Option<Path>>,
    /// The two end places of each line.
    ends: Vec<(usize, usize)>,
    /// The lines that end at each place, one that ends there twice named twice.
    at: Vec<Vec<usize>>,
    spots: Vec<Spot>,
}

impl Net {
    fn of(paths: Vec<Path>, within: f64) -> Self {
        let mut places = Places { within: within.max(f64::MIN_POSITIVE), cells: HashMap::new(), spots: Vec::new() };
        let mut net = Self { paths: Vec::new(), ends: Vec::new(), at: Vec::new(), spots: Vec::new() };
        let mut seen: HashMap<(usize, usize), Vec<Spot>> = HashMap::new();
        for path in paths {
            let last = path.points.len() - 1;
            let ends = (places.number(path.points[0]), places.number(path.points[last]));
            if ends.0 == ends.1 && path.points.len() == 2 {
                continue;
            }
            // The same line drawn twice counts once.
            let middle = halfway(&path.points);
            let same = seen.entry((ends.0.min(ends.1), ends.0.max(ends.1))).or_default();
            if same.iter().take(MAX_ALIKE).any(|m| m.distance(middle) <= within) {
                continue;
            }
            same.push(middle);
            net.at.resize(places.spots.len(), Vec::new());
            net.at[ends.0].push(net.paths.len());
            net.at[ends.1].push(net.paths.len());
            net.ends.push(ends);
            net.paths.push(Some(path));
        }
        net.at.resize(places.spots.len(), Vec::new());
        net.spots = places.spots;
        net
    }

    fn take_apart(mut self, out: &mut Layer, within: f64) {
        out.branches =
            self.at.iter().enumerate().filter(|(_, a)| a.len() > 2).map(|(i, a)| (self.spots[i], a.len())).collect();
        let mut loose_ends = Vec::new();
        // From the ends first, so that only loops are left for the second pass.
        for place in 0..self.at.len() {
            if self.at[place].len() != 2 {
                for line in self.at[place].clone() {
                    if let Some((path, to)) = self.follow(line, place) {
                        loose_ends.extend([place, to].into_iter().filter(|p| self.at[*p].len() == 1));
                        out.open.push(Chain { points: path.points });
                    }
                }
            }
        }
        for line in 0..self.paths.len() {
            if let Some((path, _)) = self.follow(line, self.ends[line].0) {
                out.loops.extend(closed_line(path, within));
            }
        }
        for end in loose_ends.iter().take(MAX_GAPS) {
            let from = self.spots[*end];
            let others = loose_ends.iter().filter(|o| *o != end).map(|o| self.spots[*o]);
            let nearest = others.min_by(|a, b| a.distance(from).total_cmp(&b.distance(from)));
            out.gaps.extend(nearest.map(|to| Gap { from, to }));
        }
        out.gaps.sort_by(|a, b| a.width().total_cmp(&b.width()));
    }

    /// Takes the line and all that follow it through places where two lines meet; with where it ends.
    fn follow(&mut self, line: usize, from: usize) -> Option<(Path, usize)> {
        let mut path = self.directed(line, from)?;
        let (mut line, mut place) = (line, self.other(line, from));
        while self.at[place].len() == 2 && place != from {
            let next = self.at[place].iter().copied().find(|l| *l != line);
            let Some(next) = next else { break };
            let Some(more) = self.directed(next, place) else { break };
            path.points.extend(more.points.into_iter().skip(1));
            path.deviation = path.deviation.max(more.deviation);
            path.area_error += more.area_error;
            (line, place) = (next, self.other(next, place));
        }
        Some((path, place))
    }

    fn other(&self, line: usize, from: usize) -> usize {
        let (a, b) = self.ends[line];
        if a == from { b } else { a }
    }

    /// The line from that place on, taken out.
    fn directed(&mut self, line: usize, from: usize) -> Option<Path> {
        let mut path = self.paths[line].take()?;
        if self.ends[line].0 != from {
            path.points.reverse();
        }
        Some(path)
    }
}

fn halfway(points: &[Spot]) -> Spot {
    let count = points.len();
    let (a, b) = (points[(count - 1) / 2], points[count / 2]);
    Spot::new((a.x + b.x) / 2.0, (a.y + b.y) / 2.0)
}

/// Places by the cell of a raster that they lie in.
struct Places {
    within: f64,
    cells: HashMap<(i64, i64), Vec<usize>>,
    spots: Vec<Spot>,
}

impl Places {
    fn number(&mut self, at: Spot) -> usize {
        let cell = |v: f64| (v / self.within).floor() as i64;
        let (x, y) = (cell(at.x), cell(at.y));
        for (dx, dy) in (-1..=1).flat_map(|dx| (-1..=1).map(move |dy| (dx, dy))) {
            let near = self.cells.get(&(x.saturating_add(dx), y.saturating_add(dy)));
            if let Some(i) = near.into_iter().flatten().find(|i| self.spots[**i].distance(at) <= self.within) {
                return *i;
            }
        }
        self.spots.push(at);
        self.cells.entry((x, y)).or_default().push(self.spots.len() - 1);
        self.spots.len() - 1
    }
}
