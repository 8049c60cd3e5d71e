//! Below the slab: scale bar, north arrow, key and numbers.

use localization::UnitSystem;
use units::Length;

use super::Sheet;
use crate::boxes::{Box2, Xy};
use crate::key::{KeyEntry, key};
use crate::lettering::{DOWN, SMALL, width, wrapped};
use crate::svg::{INK, Letters, PAPER};

/// Room at the sheet's sides.
const SIDE: f64 = 12.0;
/// From a number to its words.
const INDENT: f64 = 32.0;
/// Height of a line of words.
const LINE: f64 = 18.0;
/// Lengths of the scale bar, in feet or meters.
const BARS: [f64; 13] = [0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0];

impl Sheet<'_> {
    /// Draws everything below the slab; gives the height of the sheet, and the entries of the key.
    pub(super) fn draw_furniture(&mut self) -> (f64, Vec<KeyEntry>) {
        self.draw_furniture_with(Vec::new())
    }

    /// The same with more in the key.
    pub(super) fn draw_furniture_with(&mut self, more: Vec<KeyEntry>) -> (f64, Vec<KeyEntry>) {
        let top = self.view.slab_bottom;
        self.svg.open(" class=\"p-furniture\"");
        let bar_end = self.scale_bar((SIDE, top + 18.0));
        let mut bottom = top + 28.0;
        if self.plan.north().is_some() {
            self.north_arrow((bar_end + 36.0, top + 14.0));
            bottom = top + 34.0;
        }
        self.svg.close();
        let mut entries = self.key_entries();
        entries.extend(more);
        if !self.keyed {
            return (bottom + 8.0, entries);
        }
        let bottom = key(&mut self.svg, &entries, (SIDE, self.view.width - SIDE), bottom);
        (self.numbers(bottom + 2.0) + 8.0, entries)
    }

    /// A bar of two halves, the longest round length up to a third of the sheet. Gives where it and
    /// its words end.
    fn scale_bar(&mut self, (x, y): Xy) -> f64 {
        let (unit, key) = match self.locale.unit_system {
            UnitSystem::Imperial => (Length::feet(1.0), "length-feet"),
            UnitSystem::Metric => (Length::meters(1.0), "length-meters"),
        };
        let drawn = |bar: f64| bar * unit.as_meters() / self.view.m;
        let longest = self.view.width / 3.0;
        let bar = BARS.iter().rev().copied().find(|b| drawn(*b) <= longest).unwrap_or(BARS[0]);
        let half = drawn(bar).min(longest) / 2.0;
        let high = 5.0;
        let part = |from: f64| Box2 { left: x + from, top: y - high, right: x + from + half, bottom: y };
        self.svg.rect(part(0.0), "p-scale", INK, (INK, 1.0));
        self.svg.rect(part(half), "p-scale", PAPER, (INK, 1.0));
        let words = self.locale.message(key, &[("n", self.locale.number(bar, 1).into())]);
        let end = x + 2.0 * half + 5.0;
        self.svg.text((end, y + 2.0), Letters::new(SMALL), &words);
        end + width(&words, SMALL)
    }

    /// An arrow to true north: half of its head is full. Plan north points to a compass bearing, so
    /// north lies by as much the other way.
    fn north_arrow(&mut self, (x, y): Xy) {
        let Some(bearing) = self.plan.north() else { return };
        let (sin, cos) = libm::sincos(-bearing.as_degrees().to_radians());
        // Up in the arrow's own frame is toward north.
        let turned = |right: f64, up: f64| (x + right * cos + up * sin, y + right * sin - up * cos);
        self.svg.stroke(&[turned(0.0, -13.0), turned(0.0, 13.0)], "p-north", (INK, 1.3), "");
        let (tip, base) = (turned(0.0, 14.0), turned(0.0, 4.0));
        self.svg.shape(&[tip, turned(-4.5, 2.0), base], "p-north", INK, (INK, 1.0));
        self.svg.shape(&[tip, turned(4.5, 2.0), base], "p-north", PAPER, (INK, 1.0));
        let words = self.locale.message("pic-north", &[]);
        // Beside the arrow, never on it.
        self.svg.text((x + 18.0, y + DOWN), Letters::new(SMALL).bold(), &words);
    }

    /// What the numbers stand for, each in up to two lines. Gives where they end.
    fn numbers(&mut self, top: f64) -> f64 {
        let lines = self.number_lines();
        if lines.is_empty() {
            return top;
        }
        let room = self.view.width - 2.0 * SIDE;
        let columns = if room > 600.0 { 2 } else { 1 };
        let column = room / columns as f64;
        self.svg.open(" class=\"p-numbers\"");
        let mut bottoms = [top; 2];
        for (at, line) in lines.iter().enumerate() {
            let place = at / lines.len().div_ceil(columns);
            let (number, words) = line;
            let x = SIDE + column * place as f64;
            let y = bottoms[place];
            self.svg.text((x, y + 15.0), Letters::new(SMALL).bold(), number);
            let wrapped = wrapped(words, SMALL, column - INDENT - 6.0, 2);
            for (row, words) in wrapped.iter().enumerate() {
                self.svg.text((x + INDENT, y + 15.0 + LINE * row as f64), Letters::new(SMALL), words);
            }
            bottoms[place] = y + LINE * wrapped.len() as f64 + 3.0;
        }
        self.svg.close();
        bottoms[0].max(bottoms[1]) + 2.0
    }
}
