//! The inputs of the drawing form as the templates draw them.

use form_schema::FormData;
use localization::Locale;

use crate::control::{Choice, FieldErrors, mistake_of};

use super::read::{AREA, Asked, LENGTH};
use super::way::{CUT, LEG, PART, ROOM, Telling, in_row, rows};

/// One input, in a row or by itself.
#[derive(Debug, Clone)]
pub(super) struct Cell {
    /// Its name in the form.
    pub(super) name: String,
    /// Its field: the id of the input and of its mistake are made of it.
    pub(super) field: String,
    pub(super) label: String,
    pub(super) hint: Option<String>,
    pub(super) value: String,
    pub(super) example: String,
    pub(super) unit: &'static str,
    /// A list to choose from; a line to type in when it is empty.
    pub(super) choices: Vec<Choice>,
    pub(super) wide: bool,
    /// Sent along unseen while it is empty.
    pub(super) hidden: bool,
    pub(super) mistake: Option<String>,
}

/// Rows of one kind.
#[derive(Debug, Clone)]
pub(super) struct Rows {
    pub(super) field: &'static str,
    /// What one row is; the page counts them.
    pub(super) one: String,
    pub(super) add: String,
    pub(super) rows: Vec<Vec<Cell>>,
    /// More empty rows for browsers without script, which can't add any.
    pub(super) spare: Vec<Vec<Cell>>,
    /// What the script adds.
    pub(super) template: Vec<Cell>,
    pub(super) mistake: Option<String>,
    /// Whether anything stands in it.
    pub(super) filled: bool,
}

/// All inputs of one way.
#[derive(Debug, Clone, Default)]
pub(super) struct Inputs {
    pub(super) start: Vec<Cell>,
    pub(super) legs: Option<Rows>,
    pub(super) closing: Vec<Cell>,
    /// Whether something stands in the finer inputs of a walk.
    pub(super) finer: bool,
    pub(super) area: Option<Cell>,
    pub(super) rooms: Option<Rows>,
    pub(super) parts: Option<Rows>,
    pub(super) rest: Option<Cell>,
    pub(super) cuts: Option<Rows>,
    pub(super) north: Option<Cell>,
    pub(super) json: Option<Cell>,
}

/// Empty rows for browsers without script.
const SPARE: usize = 3;
/// Walls of the simplest slab: so many rows stand there from the beginning.
const FEWEST_WALLS: usize = 4;

/// The inputs of one way with what was typed and what is wrong with it.
pub(super) fn inputs(way: Telling, typed: &FormData, mistakes: &FieldErrors, locale: Locale) -> Inputs {
    let form = Shown { typed, mistakes, locale };
    let mut inputs = Inputs::default();
    match way {
        Telling::Rooms => {
            inputs.rooms = Some(form.rooms());
            inputs.rest =
                Some(form.rest(locale.message("draw-rest-rooms", &[]), locale.message("draw-rest-rooms-hint", &[])));
        }
        Telling::Walk => {
            inputs.start = vec![
                form.length("start_x", locale.message("draw-start-x", &[])),
                form.length("start_y", locale.message("draw-start-y", &[])),
            ];
            inputs.legs = Some(form.legs());
            inputs.closing = form.closing();
            let told = |cell: &Cell| !cell.value.is_empty() || cell.mistake.is_some();
            inputs.finer = inputs.closing.iter().chain(&inputs.start).any(told);
            inputs.rooms = Some(form.rooms());
            inputs.rest =
                Some(form.rest(locale.message("draw-rest-walk", &[]), locale.message("draw-rest-walk-hint", &[])));
        }
        Telling::Area => {
            inputs.area = Some(form.quantity("area", locale.message("draw-area", &[]), &AREA));
            inputs.parts = Some(form.parts());
            inputs.rest =
                Some(form.rest(locale.message("draw-rest-area", &[]), locale.message("draw-rest-area-hint", &[])));
        }
        Telling::Text => {
            inputs.json = Some(form.line("json", locale.message("draw-json", &[])));
        }
    }
    if matches!(way, Telling::Rooms | Telling::Walk) {
        inputs.cuts = Some(form.cuts());
        let mut north = form.line("north", locale.message("draw-north", &[]));
        north.hint = Some(locale.message("draw-north-hint", &[]));
        north.unit = "°";
        inputs.north = Some(north);
    }
    inputs
}

pub(super) struct Shown<'a> {
    pub(super) typed: &'a FormData,
    pub(super) mistakes: &'a FieldErrors,
    pub(super) locale: Locale,
}

/// An input of a row before its row is known: its name, its label, and what it asks for.
pub(super) struct Column {
    pub(super) name: &'static str,
    pub(super) label: String,
    pub(super) asked: Option<&'static Asked>,
    pub(super) example: &'static str,
    /// Shown beside the label where no quantity is asked.
    pub(super) unit: &'static str,
    pub(super) choices: Vec<Choice>,
    /// Seen only where something stands in it.
    pub(super) seldom: bool,
}

impl Column {
    pub(super) const fn new(name: &'static str, label: String) -> Self {
        Self { name, label, asked: None, example: "", unit: "", choices: Vec::new(), seldom: false }
    }

    pub(super) fn asking(self, asked: &'static Asked) -> Self {
        Self { asked: Some(asked), ..self }
    }

    pub(super) fn example(self, example: &'static str) -> Self {
        Self { example, ..self }
    }
}

impl Shown<'_> {
    pub(super) fn message(&self, key: &'static str) -> String {
        self.locale.message(key, &[])
    }

    pub(super) fn line(&self, field: &str, label: String) -> Cell {
        Cell {
            name: field.to_owned(),
            field: field.to_owned(),
            label,
            hint: None,
            value: self.typed.first(field).unwrap_or_default().to_owned(),
            example: String::new(),
            unit: "",
            choices: Vec::new(),
            wide: false,
            hidden: false,
            mistake: mistake_of(self.mistakes, field),
        }
    }

    pub(super) fn quantity(&self, field: &str, label: String, asked: &Asked) -> Cell {
        let unit_system = self.locale.unit_system;
        Cell {
            example: asked.example(unit_system).to_owned(),
            unit: asked.unit(unit_system),
            ..self.line(field, label)
        }
    }

    fn length(&self, field: &str, label: String) -> Cell {
        Cell { example: "0".to_owned(), ..self.quantity(field, label, &LENGTH) }
    }

    fn rest(&self, label: String, hint: String) -> Cell {
        Cell { hint: Some(hint), wide: true, ..self.line("rest_name", label) }
    }

    fn cell(&self, column: &Column, row: &str, value: &str, mistake: Option<String>) -> Cell {
        let unit_system = self.locale.unit_system;
        let example = column.asked.map_or("", |asked| asked.example(unit_system));
        let mut choices = column.choices.clone();
        choices.iter_mut().for_each(|choice| choice.chosen = choice.value == value);
        Cell {
            name: format!("{}[]", column.name),
            field: format!("{}[{row}]", column.name),
            label: column.label.clone(),
            hint: None,
            value: value.to_owned(),
            example: if column.example.is_empty() { example.to_owned() } else { column.example.to_owned() },
            unit: column.asked.map_or(column.unit, |asked| asked.unit(unit_system)),
            choices,
            wide: column.name.ends_with("_name") || column.seldom,
            hidden: column.seldom && value.is_empty() && mistake.is_none(),
            mistake,
        }
    }

    pub(super) fn rows<const N: usize>(
        &self,
        field: &'static str,
        one: &str,
        columns: [Column; N],
        least: usize,
    ) -> Rows {
        let names = columns.each_ref().map(|column| column.name);
        let typed = rows(self.typed, &names);
        let last = typed.iter().rposition(|(_, cells)| cells.iter().any(|cell| !cell.is_empty()));
        let filled = last.map_or(0, |last| last + 1);
        let shown = (filled + 1).max(least);
        let row = |index: usize| -> Vec<Cell> {
            let texts = typed.get(index).map(|(_, cells)| *cells);
            columns
                .iter()
                .enumerate()
                .map(|(i, column)| {
                    let mistake = mistake_of(self.mistakes, &in_row(column.name, index));
                    self.cell(column, &index.to_string(), texts.map_or("", |texts| texts[i]), mistake)
                })
                .collect()
        };
        Rows {
            field,
            one: one.to_owned(),
            add: String::new(),
            rows: (0..shown).map(row).collect(),
            spare: (shown..shown + SPARE).map(row).collect(),
            template: columns.iter().map(|column| self.cell(column, "__row__", "", None)).collect(),
            mistake: mistake_of(self.mistakes, field),
            filled: filled > 0 || mistake_of(self.mistakes, field).is_some(),
        }
    }

    fn rooms(&self) -> Rows {
        let [name, x, y, width, depth] = ROOM;
        let columns = [
            Column::new(name, self.message("draw-room-name")),
            Column::new(x, self.message("draw-x")).asking(&LENGTH).example("0"),
            Column::new(y, self.message("draw-y")).asking(&LENGTH).example("0"),
            Column::new(width, self.message("draw-width")).asking(&LENGTH),
            Column::new(depth, self.message("draw-depth")).asking(&LENGTH),
        ];
        Rows { add: self.message("draw-add-room"), ..self.rows("rooms", &self.message("draw-room"), columns, 1) }
    }

    fn cuts(&self) -> Rows {
        let [x, y, width, depth] = CUT;
        let columns = [
            Column::new(x, self.message("draw-x")).asking(&LENGTH).example("0"),
            Column::new(y, self.message("draw-y")).asking(&LENGTH).example("0"),
            Column::new(width, self.message("draw-width")).asking(&LENGTH),
            Column::new(depth, self.message("draw-depth")).asking(&LENGTH),
        ];
        Rows { add: self.message("draw-add-cut"), ..self.rows("cuts", &self.message("draw-cut"), columns, 1) }
    }

    pub(super) fn sides(&self) -> Vec<Choice> {
        let choice = |value: &str, label: String| Choice { value: value.to_owned(), label, chosen: false };
        vec![
            choice("", self.message("draw-turn-none")),
            choice("left", self.message("draw-turn-left")),
            choice("right", self.message("draw-turn-right")),
            choice("straight", self.message("draw-turn-straight")),
        ]
    }

    fn legs(&self) -> Rows {
        let [turn, angle, length] = LEG;
        let columns = [
            Column { choices: self.sides(), ..Column::new(turn, self.message("draw-turn")) },
            Column { unit: "°", ..Column::new(angle, self.message("draw-angle")).example("90") },
            Column::new(length, self.message("draw-length")).asking(&LENGTH),
        ];
        Rows {
            add: self.message("draw-add-wall"),
            ..self.rows("legs", &self.message("draw-wall"), columns, FEWEST_WALLS)
        }
    }

    fn closing(&self) -> Vec<Cell> {
        let mut side = self.line("closing_side", self.message("draw-turn"));
        side.choices = self.sides();
        side.choices.iter_mut().for_each(|choice| choice.chosen = choice.value == side.value);
        let angle =
            Cell { example: "90".to_owned(), unit: "°", ..self.line("closing_angle", self.message("draw-angle")) };
        let limit = Cell { example: "1:200".to_owned(), ..self.line("limit", self.message("draw-limit")) };
        vec![side, angle, limit]
    }

    fn parts(&self) -> Rows {
        let [name, area] = PART;
        let columns = [
            Column::new(name, self.message("draw-room-name")),
            Column::new(area, self.message("draw-part-area")).asking(&AREA),
        ];
        Rows { add: self.message("draw-add-part"), ..self.rows("parts", &self.message("draw-part"), columns, 1) }
    }
}
