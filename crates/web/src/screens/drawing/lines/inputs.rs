//! The inputs of the page of lines as the templates draw them.

use localization::Locale;
use slab_plan::{JointKind, Plan, WHOLE};

use crate::control::Choice;

use super::super::inputs::{Cell, Column, Rows, Shown};
use super::super::read::{AREA, LENGTH};
use super::read::{BORDER, DIAGONAL, FREE, GRID, JOINT, SLIVER, THICK};

/// Empty rows that "more rows" adds.
const MORE: usize = 6;

/// Words that no list has, kept in it because they were sent, at most.
const MAX_UNKNOWN: usize = 50;

/// Rows of joints and of each kind of pattern, and what the reckoning asks for.
pub(super) struct Inputs {
    pub(super) joints: Rows,
    /// Each with its heading and hint.
    pub(super) patterns: Vec<(String, String, Rows)>,
    pub(super) thickness: Cell,
    pub(super) wish: Cell,
    pub(super) sliver: Cell,
}

pub(super) fn inputs(form: &Shown<'_>, plan: &Plan, more: bool) -> Inputs {
    let desk = Desk { form, plan, least: if more { MORE } else { 1 } };
    let say = |key: &'static str| form.locale.message(key, &[]);
    let mut thickness = form.quantity("thickness", say("lines-thickness"), &THICK);
    thickness.hint = Some(say("lines-thickness-hint"));
    let mut wish = form.quantity("wish", say("lines-wish"), &AREA);
    wish.hint = Some(say("lines-wish-hint"));
    let mut sliver = form.line("sliver", say("lines-sliver"));
    sliver.hint = Some(say("lines-sliver-hint"));
    if form.typed.first("sliver").is_none() {
        sliver.value = SLIVER.to_owned();
    }
    Inputs { joints: desk.joints(), patterns: desk.patterns(), thickness, wish, sliver }
}

struct Desk<'a> {
    form: &'a Shown<'a>,
    plan: &'a Plan,
    least: usize,
}

impl Desk<'_> {
    fn message(&self, key: &'static str) -> String {
        self.form.locale.message(key, &[])
    }

    fn length(&self, name: &'static str, key: &'static str) -> Column {
        Column::new(name, self.message(key)).asking(&LENGTH)
    }

    fn at_zero(&self, name: &'static str, key: &'static str) -> Column {
        self.length(name, key).example("0")
    }

    /// The zones of the plan, and what else was typed: it must not be lost.
    fn zone(&self, name: &'static str) -> Column {
        let choice =
            |value: &str, label: &str| Choice { value: value.to_owned(), label: label.to_owned(), chosen: false };
        let mut choices = vec![choice("", &self.message("plan-whole"))];
        choices.extend(self.plan.zones().iter().filter(|z| z.name() != WHOLE).map(|z| choice(z.name(), z.name())));
        self.keep_typed(name, &mut choices);
        Column { choices, ..Column::new(name, self.message("plan-zone")) }
    }

    fn keep_typed(&self, name: &str, choices: &mut Vec<Choice>) {
        let most = choices.len() + MAX_UNKNOWN;
        for typed in self.form.typed.get(&format!("{name}[]")) {
            let typed = typed.trim();
            if choices.len() < most && choices.iter().all(|known| known.value != typed) {
                choices.push(Choice { value: typed.to_owned(), label: typed.to_owned(), chosen: false });
            }
        }
    }

    fn kinds(&self, name: &'static str) -> Column {
        let choice = |value: &str, label: String| Choice { value: value.to_owned(), label, chosen: false };
        let mut choices = vec![choice("", self.message("lines-kind-unknown"))];
        choices.extend(JointKind::ALL.map(|kind| choice(kind.code(), kind_label(kind, self.form.locale))));
        self.keep_typed(name, &mut choices);
        Column { choices, ..Column::new(name, self.message("lines-kind")) }
    }

    fn via(&self, name: &'static str) -> Column {
        Column { seldom: true, ..Column::new(name, self.message("lines-via")) }
    }

    fn rows<const N: usize>(&self, field: &'static str, one: &str, add: &str, columns: [Column; N]) -> Rows {
        let filled = self.form.rows(field, one, columns, self.least);
        Rows { add: add.to_owned(), ..filled }
    }

    fn joints(&self) -> Rows {
        let [x, y, to_x, to_y, kind, zone, via] = JOINT;
        let columns = [
            self.at_zero(x, "lines-from-x"),
            self.at_zero(y, "lines-from-y"),
            self.at_zero(to_x, "lines-to-x"),
            self.at_zero(to_y, "lines-to-y"),
            self.kinds(kind),
            self.zone(zone),
            self.via(via),
        ];
        self.rows("joints", &self.message("lines-joint"), &self.message("lines-add-joint"), columns)
    }

    fn patterns(&self) -> Vec<(String, String, Rows)> {
        let add = self.message("lines-add-pattern");
        let [x, y, side, angle, origin_x, origin_y, zone] = GRID;
        let mut turn = Column::new(side, self.message("lines-turn"));
        turn.choices = self.form.sides();
        turn.choices.retain(|choice| choice.value != "straight");
        if let Some(none) = turn.choices.first_mut() {
            none.label = self.message("lines-turn-none");
        }
        let grid = [
            self.length(x, "lines-spacing-x"),
            self.length(y, "lines-spacing-y"),
            turn,
            Column { unit: "°", ..Column::new(angle, self.message("draw-angle")).example("30") },
            self.length(origin_x, "lines-origin-x").example(" "),
            self.length(origin_y, "lines-origin-y").example(" "),
            self.zone(zone),
        ];
        let [spacing, at_x, at_y, zone] = DIAGONAL;
        let diagonal = [
            self.length(spacing, "lines-spacing"),
            self.length(at_x, "lines-origin-x").example(" "),
            self.length(at_y, "lines-origin-y").example(" "),
            self.zone(zone),
        ];
        let border = [self.length(BORDER[0], "lines-inset"), self.zone(BORDER[1])];
        let [x, y, to_x, to_y, zone, via] = FREE;
        let free = [
            self.at_zero(x, "lines-from-x"),
            self.at_zero(y, "lines-from-y"),
            self.at_zero(to_x, "lines-to-x"),
            self.at_zero(to_y, "lines-to-y"),
            self.zone(zone),
            self.via(via),
        ];
        let one = |key: &'static str| self.message(key);
        vec![
            (one("lines-grids"), one("lines-grids-hint"), self.rows("grids", &one("lines-grid"), &add, grid)),
            (
                one("lines-diagonals"),
                one("lines-diagonals-hint"),
                self.rows("diagonals", &one("lines-diagonal"), &add, diagonal),
            ),
            (one("lines-borders"), one("lines-borders-hint"), self.rows("borders", &one("lines-border"), &add, border)),
            (one("lines-free"), one("lines-free-hint"), self.rows("free", &one("lines-free-one"), &add, free)),
        ]
    }
}

/// How a joint was made.
fn kind_label(kind: JointKind, locale: Locale) -> String {
    match kind {
        JointKind::SawCut => locale.message("lines-kind-saw-cut", &[]),
        JointKind::Construction => locale.message("lines-kind-construction", &[]),
        JointKind::Isolation => locale.message("lines-kind-isolation", &[]),
    }
}
