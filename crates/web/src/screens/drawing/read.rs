//! From what was typed to a plan, and from the plan's parts back to the rows they came from.

use form_schema::FormData;
use localization::{Locale, UnitSystem};
use slab_plan::{
    Bearing, LegSpec, PlanSpec, Precision, RectangleSpec, ShapeSpec, Turn, WalkSpec, WrittenPoint, ZoneSpec,
};
use units::{AsWritten, Length, Notation, Problem};

use super::way::{CUT, LEG, PART, ROOM, Telling, filled_rows, in_row};

/// Longest name of a zone, in letters: it must fit the drawing and the papers.
const LONGEST_NAME: usize = 60;

/// FieldErrors by field.
pub(super) type Wrong = Vec<(String, String)>;

/// A plan, and where on the page its parts stand.
pub(super) struct Told {
    pub(super) spec: PlanSpec,
    pub(super) from: Sources,
}

/// Rows of the page by the plan's own numbering.
pub(super) struct Sources {
    pub(super) way: Telling,
    pub(super) outline: Vec<usize>,
    pub(super) legs: Vec<usize>,
    pub(super) cuts: Vec<usize>,
    /// Of each zone its rows; none for the rest of the slab.
    pub(super) zones: Vec<Vec<usize>>,
}

/// A quantity with the unit that a bare number takes and an example, for each measure.
pub(super) struct Asked {
    pub(super) units: [&'static str; 2],
    pub(super) examples: [&'static str; 2],
}

pub(super) const LENGTH: Asked = Asked { units: ["ft", "m"], examples: ["12' 6\"", "3.8 m"] };
pub(super) const AREA: Asked = Asked { units: ["ft2", "m2"], examples: ["850 ft2", "80 m2"] };

impl Asked {
    pub(super) const fn unit(&self, unit_system: UnitSystem) -> &'static str {
        self.units[matches!(unit_system, UnitSystem::Metric) as usize]
    }

    pub(super) const fn example(&self, unit_system: UnitSystem) -> &'static str {
        self.examples[matches!(unit_system, UnitSystem::Metric) as usize]
    }
}

/// Reads a plan told in this way.
pub(super) fn read(way: Telling, typed: &FormData, locale: Locale) -> Result<Told, Wrong> {
    let mut reader = Reader::of(typed, locale);
    let told = match way {
        Telling::Rooms => reader.rooms(),
        Telling::Walk => reader.walk(),
        Telling::Area => reader.area(),
        Telling::Text => reader.text(),
    };
    match told {
        Some(told) if reader.wrong.is_empty() => Ok(told),
        _ => Err(reader.wrong),
    }
}

/// Reads inputs, and gathers what is wrong with them.
pub(super) struct Reader<'t> {
    pub(super) typed: &'t FormData,
    pub(super) locale: Locale,
    pub(super) wrong: Wrong,
}

/// A rectangle, its name if it has one, and its row.
struct Room {
    name: String,
    rectangle: RectangleSpec,
    row: usize,
}

impl<'t> Reader<'t> {
    pub(super) const fn of(typed: &'t FormData, locale: Locale) -> Self {
        Self { typed, locale, wrong: Vec::new() }
    }

    pub(super) fn blame(&mut self, field: impl Into<String>, said: String) {
        self.wrong.push((field.into(), said));
    }

    pub(super) fn answer(&self, field: &str) -> &'t str {
        self.typed.answer(field).unwrap_or_default()
    }

    /// A quantity as typed; a bare number takes the reader's usual unit.
    pub(super) fn quantity<Q: Notation>(&mut self, field: &str, typed: &str, asked: &Asked) -> Option<AsWritten<Q>> {
        let unit = asked.unit(self.locale.unit_system);
        let read = AsWritten::<Q>::read(typed).map_err(|e| e.problem).or_else(|problem| match problem {
            // The added unit must not be blamed on the person.
            Problem::NoUnit => AsWritten::<Q>::read(&format!("{typed} {unit}")).map_err(|_| Problem::NoUnit),
            other => Err(other),
        });
        read.map_err(|problem| {
            let said = self.problem(typed, &problem, asked);
            self.blame(field, said);
        })
        .ok()
    }

    fn problem(&self, typed: &str, problem: &Problem, asked: &Asked) -> String {
        let example = asked.example(self.locale.unit_system);
        let key = match problem {
            Problem::Empty => return self.locale.message("mistake-missing", &[]),
            Problem::NotANumber => "mistake-no-number",
            Problem::NoUnit => "mistake-no-unit",
            Problem::OutOfOrder => "mistake-out-of-order",
            Problem::Negative => "mistake-negative",
            Problem::OutOfRange { .. } => "plan-wrong-too-large",
            Problem::UnknownUnit(unit) => {
                let args = [("unit", unit.as_str().into()), ("example", example.into())];
                return self.locale.message("mistake-unknown-unit", &args);
            }
        };
        self.locale.message(key, &[("typed", typed.into()), ("example", example.into())])
    }

    /// A corner; what is left empty is at 0.
    pub(super) fn corner(&mut self, fields: [&str; 2], typed: [&str; 2]) -> Option<WrittenPoint> {
        let or_zero = |text| if str::is_empty(text) { "0" } else { text };
        let x = self.quantity(fields[0], or_zero(typed[0]), &LENGTH);
        let y = self.quantity(fields[1], or_zero(typed[1]), &LENGTH);
        Some([x?, y?])
    }

    fn rectangle(&mut self, names: [&str; 4], row: usize, cells: [&str; 4]) -> Option<RectangleSpec> {
        let [x, y, width, depth] = names.map(|name| in_row(name, row));
        let corner = self.corner([&x, &y], [cells[0], cells[1]]);
        let width = self.quantity::<Length>(&width, cells[2], &LENGTH);
        let depth = self.quantity::<Length>(&depth, cells[3], &LENGTH);
        Some(RectangleSpec { corner: corner?, width: width?, depth: depth? })
    }

    fn name(&mut self, field: &str, typed: &str) -> String {
        if typed.chars().count() > LONGEST_NAME || typed.chars().any(char::is_control) {
            let said = self.locale.message("draw-wrong-name", &[("most", (LONGEST_NAME as f64).into())]);
            self.blame(field, said);
        }
        typed.to_owned()
    }

    fn read_rooms(&mut self) -> Vec<Room> {
        let [name, x, y, width, depth] = ROOM;
        let mut rooms = Vec::new();
        for (row, cells) in filled_rows(self.typed, &ROOM) {
            let [called, rest @ ..] = cells;
            let called = self.name(&in_row(name, row), called);
            if let Some(rectangle) = self.rectangle([x, y, width, depth], row, rest) {
                rooms.push(Room { name: called, rectangle, row });
            }
        }
        rooms
    }

    fn cut_outs(&mut self) -> (Vec<ShapeSpec>, Vec<usize>) {
        let mut cuts = Vec::new();
        for (row, cells) in filled_rows(self.typed, &CUT) {
            if let Some(rectangle) = self.rectangle(CUT, row, cells) {
                cuts.push((ShapeSpec::Rectangles(vec![rectangle]), row));
            }
        }
        cuts.into_iter().unzip()
    }

    fn north(&mut self) -> Option<AsWritten<Bearing>> {
        let typed = self.answer("north");
        if typed.is_empty() {
            return None;
        }
        let read = AsWritten::read(typed).ok();
        if read.is_none() {
            let said = self.locale.message("draw-wrong-north", &[("typed", typed.into())]);
            self.blame("north", said);
        }
        read
    }

    /// Zones of the named rooms, rows of one name together, then the rest of the slab.
    fn zones(&mut self, rooms: &[Room]) -> (Vec<ZoneSpec>, Vec<Vec<usize>>) {
        let mut zones: Vec<(String, Vec<RectangleSpec>, Vec<usize>)> = Vec::new();
        let folded = |name: &str| name.trim().to_lowercase();
        for room in rooms.iter().filter(|room| !room.name.is_empty()) {
            match zones.iter_mut().find(|(name, ..)| folded(name) == folded(&room.name)) {
                Some((_, rectangles, rows)) => {
                    rectangles.push(room.rectangle.clone());
                    rows.push(room.row);
                }
                None => zones.push((room.name.clone(), vec![room.rectangle.clone()], vec![room.row])),
            }
        }
        let (mut specs, mut rows): (Vec<ZoneSpec>, Vec<Vec<usize>>) = zones
            .into_iter()
            .map(|(name, rectangles, rows)| (ZoneSpec { name, shape: Some(ShapeSpec::Rectangles(rectangles)) }, rows))
            .unzip();
        self.rest(&mut specs, &mut rows);
        (specs, rows)
    }

    fn rest(&mut self, specs: &mut Vec<ZoneSpec>, rows: &mut Vec<Vec<usize>>) {
        let typed = self.answer("rest_name");
        if !typed.is_empty() {
            let name = self.name("rest_name", typed);
            specs.push(ZoneSpec { name, shape: None });
            rows.push(Vec::new());
        }
    }

    fn rooms(&mut self) -> Option<Told> {
        let rooms = self.read_rooms();
        let named = rooms.iter().any(|room| !room.name.is_empty());
        if let Some(nameless) = rooms.iter().find(|room| room.name.is_empty())
            && named
            && self.answer("rest_name").is_empty()
        {
            let said = self.locale.message("draw-wrong-nameless", &[]);
            self.blame(in_row(ROOM[0], nameless.row), said);
        }
        let mut outline: Vec<RectangleSpec> = Vec::new();
        let mut outline_rows = Vec::new();
        for room in &rooms {
            if !outline.contains(&room.rectangle) {
                outline.push(room.rectangle.clone());
                outline_rows.push(room.row);
            }
        }
        let (zones, zone_rows) = self.zones(&rooms);
        let (cut_outs, cuts) = self.cut_outs();
        let north = self.north();
        Some(Told {
            spec: PlanSpec {
                outline: ShapeSpec::Rectangles(outline),
                cut_outs,
                zones,
                joints: Vec::new(),
                score_lines: Vec::new(),
                north,
            },
            from: Sources { way: Telling::Rooms, outline: outline_rows, legs: Vec::new(), cuts, zones: zone_rows },
        })
    }

    fn walk(&mut self) -> Option<Told> {
        let start = self.corner(["start_x", "start_y"], [self.answer("start_x"), self.answer("start_y")]);
        let mut legs = Vec::new();
        let mut rows = Vec::new();
        for (row, [side, angle, length]) in filled_rows(self.typed, &LEG) {
            let turn = self.turn(row, side, angle);
            if let Some(length) = self.quantity(&in_row(LEG[2], row), length, &LENGTH) {
                legs.push(LegSpec { turn, length });
                rows.push(row);
            }
        }
        let closing_turn = self.closing_turn();
        let limit = self.limit();
        let rooms = self.read_rooms();
        for nameless in rooms.iter().filter(|room| room.name.is_empty()) {
            let said = self.locale.message("plan-wrong-blank-name", &[]);
            self.blame(in_row(ROOM[0], nameless.row), said);
        }
        let (zones, zone_rows) = self.zones(&rooms);
        let (cut_outs, cuts) = self.cut_outs();
        let north = self.north();
        let outline = ShapeSpec::Walk(WalkSpec { start: start?, legs, closing_turn, limit });
        Some(Told {
            spec: PlanSpec { outline, cut_outs, zones, joints: Vec::new(), score_lines: Vec::new(), north },
            from: Sources { way: Telling::Walk, outline: Vec::new(), legs: rows, cuts, zones: zone_rows },
        })
    }

    fn limit(&mut self) -> Option<AsWritten<Precision>> {
        let typed = self.answer("limit");
        if typed.is_empty() {
            return None;
        }
        let read = AsWritten::read(typed).ok();
        if read.is_none() {
            let said = self.locale.message("draw-wrong-limit", &[("typed", typed.into())]);
            self.blame("limit", said);
        }
        read
    }

    /// The turn before a wall; none where no side was chosen.
    fn turn(&mut self, row: usize, side: &str, angle: &str) -> Option<AsWritten<Turn>> {
        if side.is_empty() && !angle.is_empty() {
            let said = self.locale.message("draw-wrong-side", &[]);
            self.blame(in_row(LEG[0], row), said);
        }
        self.turned(&in_row(LEG[1], row), side, angle)
    }

    fn closing_turn(&mut self) -> Option<AsWritten<Turn>> {
        let (side, angle) = (self.answer("closing_side"), self.answer("closing_angle"));
        if side.is_empty() && !angle.is_empty() {
            let said = self.locale.message("draw-wrong-side", &[]);
            self.blame("closing_side", said);
        }
        self.turned("closing_angle", side, angle)
    }

    pub(super) fn turned(&mut self, field: &str, side: &str, angle: &str) -> Option<AsWritten<Turn>> {
        let text = match (side, angle) {
            ("", _) => return None,
            ("straight", _) => "straight".to_owned(),
            (side, "") => format!("{side} 90"),
            (side, angle) => format!("{side} {angle}"),
        };
        let read = AsWritten::read(&text).ok();
        if read.is_none() {
            let said = self.locale.message("draw-wrong-angle", &[("typed", angle.into())]);
            self.blame(field, said);
        }
        read
    }

    fn area(&mut self) -> Option<Told> {
        let area = self.quantity("area", self.answer("area"), &AREA);
        let (mut zones, mut rows) = (Vec::new(), Vec::new());
        let [name, size] = PART;
        for (row, [called, typed]) in filled_rows(self.typed, &PART) {
            let called = self.name(&in_row(name, row), called);
            if let Some(area) = self.quantity(&in_row(size, row), typed, &AREA) {
                zones.push(ZoneSpec { name: called, shape: Some(ShapeSpec::Area(area)) });
                rows.push(vec![row]);
            }
        }
        self.rest(&mut zones, &mut rows);
        Some(Told {
            spec: PlanSpec {
                outline: ShapeSpec::Area(area?),
                cut_outs: Vec::new(),
                zones,
                joints: Vec::new(),
                score_lines: Vec::new(),
                north: None,
            },
            from: Sources { way: Telling::Area, outline: Vec::new(), legs: Vec::new(), cuts: Vec::new(), zones: rows },
        })
    }

    fn text(&mut self) -> Option<Told> {
        let from =
            Sources { way: Telling::Text, outline: Vec::new(), legs: Vec::new(), cuts: Vec::new(), zones: Vec::new() };
        match PlanSpec::from_json(self.answer("json")) {
            Ok(spec) => Some(Told { spec, from }),
            Err(error) => {
                self.wrong.extend(super::error_source::blame(&error, &from, self.locale));
                None
            }
        }
    }
}
