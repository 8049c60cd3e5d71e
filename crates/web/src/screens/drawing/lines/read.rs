//! From the rows to joints and patterns, and from a plan's path back to the input it came from.

use form_schema::FormData;
use localization::Locale;
use slab_plan::{
    BorderSpec, DiagonalSpec, FreeSpec, GridSpec, JointKind, JointSpec, Offset, PlanSpec, ScoreSpec, WrittenPoint,
};
use units::{Area, AsWritten, Fraction, Length};

use super::super::error_source::number;
use super::super::read::{AREA, Asked, LENGTH, Reader, Wrong};
use super::super::way::{in_row, rows};

/// Inputs of one joint; in the page each name ends in `[]`.
pub(super) const JOINT: [&str; 7] =
    ["joint_x", "joint_y", "joint_to_x", "joint_to_y", "joint_kind", "joint_zone", "joint_via"];
/// Inputs of one grid.
pub(super) const GRID: [&str; 7] =
    ["grid_spacing_x", "grid_spacing_y", "grid_side", "grid_angle", "grid_origin_x", "grid_origin_y", "grid_zone"];
/// Inputs of one diagonal pattern.
pub(super) const DIAGONAL: [&str; 4] = ["diagonal_spacing", "diagonal_origin_x", "diagonal_origin_y", "diagonal_zone"];
/// Inputs of one border.
pub(super) const BORDER: [&str; 2] = ["border_inset", "border_zone"];
/// Inputs of one free line.
pub(super) const FREE: [&str; 6] = ["free_x", "free_y", "free_to_x", "free_to_y", "free_zone", "free_via"];

/// The thickness of a slab: a bare number is inches or millimeters.
pub(super) const THICK: Asked = Asked { units: ["in", "mm"], examples: ["5 in", "125 mm"] };

/// A cut tile narrower than this share of a full one is a sliver, unless another is typed. Grade:
/// common practice, no source.
pub(super) const SLIVER: &str = "50 %";

/// Joints and patterns with the rows they came from.
#[derive(Debug, Default)]
pub(super) struct Lines {
    pub(super) joints: Vec<JointSpec>,
    pub(super) patterns: Vec<ScoreSpec>,
    joint_rows: Vec<usize>,
    pattern_rows: Vec<PatternRows>,
}

/// Where a pattern stands on the page.
#[derive(Debug)]
enum PatternRows {
    Grid(usize),
    Diagonal(usize),
    Border(usize),
    /// The lines of one zone, each a row.
    Free(Vec<usize>),
}

/// What the reckoning asks for besides the lines.
#[derive(Debug, Default)]
pub(super) struct Tools {
    pub(super) thickness: Option<Length>,
    pub(super) wish: Option<Area>,
    pub(super) sliver: Option<Fraction>,
}

/// Reads every row.
pub(super) fn read(typed: &FormData, locale: Locale) -> Result<Lines, Wrong> {
    let mut desk = Desk { reader: Reader::of(typed, locale), lines: Lines::default() };
    desk.joints();
    desk.grids();
    desk.diagonals();
    desk.borders();
    desk.free();
    if desk.reader.wrong.is_empty() { Ok(desk.lines) } else { Err(desk.reader.wrong) }
}

/// Reads what the reckoning asks for; what is left empty is not asked.
pub(super) fn tools(typed: &FormData, locale: Locale) -> (Tools, Wrong) {
    let mut reader = Reader::of(typed, locale);
    let mut tools = Tools::default();
    let answer = |name: &str| typed.answer(name).unwrap_or_default();
    if !answer("thickness").is_empty() {
        let read = reader.quantity::<Length>("thickness", answer("thickness"), &THICK);
        tools.thickness = read.map(|written| written.value());
    }
    if !answer("wish").is_empty() {
        tools.wish = reader.quantity::<Area>("wish", answer("wish"), &AREA).map(|written| written.value());
    }
    let share = typed.first("sliver").map_or(SLIVER, str::trim);
    if !share.is_empty() {
        let read = AsWritten::<Fraction>::read(share).or_else(|_| AsWritten::<Fraction>::read(&format!("{share} %")));
        tools.sliver = read.ok().map(|written| written.value());
        if tools.sliver.is_none() {
            reader.blame("sliver", locale.message("lines-wrong-sliver", &[("typed", share.into())]));
        }
    }
    (tools, reader.wrong)
}

struct Desk<'t> {
    reader: Reader<'t>,
    lines: Lines,
}

/// The rows where one of the first `asked` inputs was typed in: what is only chosen makes no line.
fn typed_rows<'t, const N: usize>(typed: &'t FormData, names: &[&str; N], asked: usize) -> Vec<(usize, [&'t str; N])> {
    let all = rows(typed, names);
    all.into_iter().filter(|(_, cells)| cells[..asked].iter().any(|cell| !cell.is_empty())).collect()
}

fn named(zone: &str) -> Option<String> {
    (!zone.is_empty()).then(|| zone.to_owned())
}

impl Desk<'_> {
    fn message(&self, key: &'static str, typed: &str) -> String {
        self.reader.locale.message(key, &[("typed", typed.into())])
    }

    fn length(&mut self, name: &str, row: usize, typed: &str) -> Option<AsWritten<Length>> {
        self.reader.quantity(&in_row(name, row), typed, &LENGTH)
    }

    /// From, what lies between, to.
    fn line(&mut self, names: [&str; 5], row: usize, cells: [&str; 5]) -> Option<Vec<WrittenPoint>> {
        let fields = names.map(|name| in_row(name, row));
        let from = self.reader.corner([&fields[0], &fields[1]], [cells[0], cells[1]]);
        let to = self.reader.corner([&fields[2], &fields[3]], [cells[2], cells[3]]);
        let via = self.via(&fields[4], cells[4]);
        let mut line = vec![from?];
        line.extend(via?);
        line.push(to?);
        Some(line)
    }

    /// The points between, as the diary keeps them: `[["1 ft", "2 ft"]]`.
    fn via(&mut self, field: &str, typed: &str) -> Option<Vec<WrittenPoint>> {
        if typed.is_empty() {
            return Some(Vec::new());
        }
        let texts: Option<Vec<[String; 2]>> = serde_json::from_str(typed).ok();
        let point =
            |[x, y]: &[String; 2]| Some([AsWritten::<Offset>::read(x).ok()?, AsWritten::<Offset>::read(y).ok()?]);
        let points = texts.and_then(|texts| texts.iter().map(point).collect());
        if points.is_none() {
            let said = self.message("lines-wrong-via", typed);
            self.reader.blame(field, said);
        }
        points
    }

    fn origin(&mut self, names: [&str; 2], row: usize, cells: [&str; 2]) -> Option<Option<WrittenPoint>> {
        if cells.iter().all(|cell| cell.is_empty()) {
            return Some(None);
        }
        let [x, y] = names.map(|name| in_row(name, row));
        self.reader.corner([&x, &y], cells).map(Some)
    }

    fn joints(&mut self) {
        let [x, y, to_x, to_y, kind, _, via] = JOINT;
        for (row, cells) in typed_rows(self.reader.typed, &JOINT, 4) {
            let [from_x, from_y, end_x, end_y, made, zone, between] = cells;
            let line = self.line([x, y, to_x, to_y, via], row, [from_x, from_y, end_x, end_y, between]);
            let known = JointKind::ALL.into_iter().find(|known| known.code() == made);
            if known.is_none() && !made.is_empty() {
                let said = self.message("lines-wrong-kind", made);
                self.reader.blame(in_row(kind, row), said);
            }
            if let Some(line) = line {
                self.lines.joints.push(JointSpec { line, kind: known, zone: named(zone) });
                self.lines.joint_rows.push(row);
            }
        }
    }

    fn pattern(&mut self, spec: ScoreSpec, rows: PatternRows) {
        self.lines.patterns.push(spec);
        self.lines.pattern_rows.push(rows);
    }

    fn grids(&mut self) {
        let [x, y, side, angle, origin_x, origin_y, _] = GRID;
        for (row, cells) in typed_rows(self.reader.typed, &GRID, 2) {
            let [across, up, turned, degrees, at_x, at_y, zone] = cells;
            let spacing_x = self.length(x, row, across);
            // One spacing alone makes squares.
            let spacing_y = if up.is_empty() { spacing_x.clone() } else { self.length(y, row, up) };
            if turned.is_empty() && !degrees.is_empty() {
                let said = self.reader.locale.message("draw-wrong-side", &[]);
                self.reader.blame(in_row(side, row), said);
            }
            let turn = self.reader.turned(&in_row(angle, row), turned, degrees);
            let origin = self.origin([origin_x, origin_y], row, [at_x, at_y]);
            if let (Some(spacing_x), Some(spacing_y), Some(origin)) = (spacing_x, spacing_y, origin) {
                let grid = GridSpec { spacing_x, spacing_y, origin, turn, zone: named(zone) };
                self.pattern(ScoreSpec::Grid(grid), PatternRows::Grid(row));
            }
        }
    }

    fn diagonals(&mut self) {
        let [spacing, origin_x, origin_y, _] = DIAGONAL;
        for (row, [side, at_x, at_y, zone]) in typed_rows(self.reader.typed, &DIAGONAL, 1) {
            let spacing = self.length(spacing, row, side);
            let origin = self.origin([origin_x, origin_y], row, [at_x, at_y]);
            if let (Some(spacing), Some(origin)) = (spacing, origin) {
                let diagonal = DiagonalSpec { spacing, origin, zone: named(zone) };
                self.pattern(ScoreSpec::Diagonal(diagonal), PatternRows::Diagonal(row));
            }
        }
    }

    fn borders(&mut self) {
        for (row, [inset, zone]) in typed_rows(self.reader.typed, &BORDER, 1) {
            if let Some(inset) = self.length(BORDER[0], row, inset) {
                self.pattern(ScoreSpec::Border(BorderSpec { inset, zone: named(zone) }), PatternRows::Border(row));
            }
        }
    }

    /// Free lines, those of one zone together.
    fn free(&mut self) {
        let [x, y, to_x, to_y, _, via] = FREE;
        let mut by_zone: Vec<(FreeSpec, Vec<usize>)> = Vec::new();
        for (row, cells) in typed_rows(self.reader.typed, &FREE, 4) {
            let [from_x, from_y, end_x, end_y, zone, between] = cells;
            let line = self.line([x, y, to_x, to_y, via], row, [from_x, from_y, end_x, end_y, between]);
            let (Some(line), zone) = (line, named(zone)) else { continue };
            match by_zone.iter_mut().find(|(free, _)| free.zone == zone) {
                Some((free, rows)) => {
                    free.lines.push(line);
                    rows.push(row);
                }
                None => by_zone.push((FreeSpec { lines: vec![line], zone }, vec![row])),
            }
        }
        for (free, rows) in by_zone {
            self.pattern(ScoreSpec::Lines(free), PatternRows::Free(rows));
        }
    }
}

impl Lines {
    /// The plan that stands, with these lines in place of its own.
    pub(super) fn on(&self, plan: &PlanSpec) -> PlanSpec {
        PlanSpec { joints: self.joints.clone(), score_lines: self.patterns.clone(), ..plan.clone() }
    }

    /// The input that a path of the plan came from.
    pub(super) fn field(&self, path: &str) -> String {
        if let Some((row, index)) = number(path, "joints").and_then(|i| Some((*self.joint_rows.get(i)?, i))) {
            let [x, y, to_x, to_y, _, zone, via] = JOINT;
            let last = self.joints[index].line.len() - 1;
            return in_row(end(path, "line", last, [x, y, to_x, to_y, zone, via]), row);
        }
        if let Some(rows) = number(path, "score_lines").and_then(|i| self.pattern_rows.get(i)) {
            return self.pattern_field(path, rows);
        }
        let group = [("joints", "joints"), ("score_lines", "patterns")];
        group.into_iter().find(|(name, _)| path.starts_with(name)).map_or("plan", |(_, field)| field).to_owned()
    }

    fn pattern_field(&self, path: &str, rows: &PatternRows) -> String {
        let ends = |with: &str| path.ends_with(with);
        let (origin, second) = (path.contains(".origin"), ends("[1]"));
        match rows {
            PatternRows::Grid(row) => {
                let [x, y, _, angle, origin_x, origin_y, zone] = GRID;
                let name = match () {
                    () if ends(".zone") => zone,
                    () if ends(".turn") => angle,
                    () if ends(".spacing_y") => y,
                    () if origin && second => origin_y,
                    () if origin => origin_x,
                    () => x,
                };
                in_row(name, *row)
            }
            PatternRows::Diagonal(row) => {
                let [spacing, origin_x, origin_y, zone] = DIAGONAL;
                let name = match () {
                    () if ends(".zone") => zone,
                    () if origin && second => origin_y,
                    () if origin => origin_x,
                    () => spacing,
                };
                in_row(name, *row)
            }
            PatternRows::Border(row) => in_row(if ends(".zone") { BORDER[1] } else { BORDER[0] }, *row),
            PatternRows::Free(rows) => {
                let [x, y, to_x, to_y, zone, via] = FREE;
                let inner = path.split_once(".lines.").map_or(path, |(_, rest)| rest);
                let line = number(inner, "lines").unwrap_or(0);
                let row = rows.get(line).or(rows.first()).copied().unwrap_or(0);
                let points = number(path, "score_lines").and_then(|i| match self.patterns.get(i) {
                    Some(ScoreSpec::Lines(free)) => free.lines.get(line).map(Vec::len),
                    _ => None,
                });
                let inner = inner.replacen(&format!("lines[{line}]"), "line", 1);
                in_row(end(&inner, "line", points.map_or(1, |n| n - 1), [x, y, to_x, to_y, zone, via]), row)
            }
        }
    }
}

/// The input of a line's row that a path ends in.
fn end<'n>(path: &str, line: &str, last: usize, [x, y, to_x, to_y, zone, via]: [&'n str; 6]) -> &'n str {
    let second = path.ends_with("[1]");
    match number(path, line) {
        _ if path.ends_with("zone") => zone,
        Some(0) if second => y,
        Some(point) if point == last && second => to_y,
        Some(point) if point == last => to_x,
        Some(point) if point > 0 => via,
        _ => x,
    }
}
