//! Drawing the rows.

use jiff::civil::Date;

use super::scale::Scale;
use super::{ForecastSpan, Row, TimeLine, What};
use crate::boxes::{Box2, Xy};
use crate::chart::round_dates;
use crate::day::{day, days_between};
use crate::key::{KeyEntry, key};
use crate::lettering::{DOWN, PLAIN, SMALL, bold_width, wrapped};
use crate::spread::{Wish, apart};
use crate::svg::{Anchor, CEMENT, Hatch, INK, IRON, Letters, PAPER, Svg, escaped};

/// Calendar to the left of the line, spans beside it, then dates and words of the rows.
const LINE: f64 = 64.0;
const LANE: f64 = 13.0;
const DATES: f64 = 116.0;
const WORDS: f64 = 184.0;
/// Words of a row are no wider: longer lines are hard to follow.
const WORDS_ROOM: f64 = 420.0;
const TOP: f64 = 30.0;
/// Heights of the lines of a row and the room between rows.
const HIGH: f64 = 18.0;
const LOW: f64 = 17.0;
const BETWEEN: f64 = 7.0;
/// Spans drawn side by side; more share the last lane.
const LANES: usize = 3;

/// A row's words, set in lines.
struct Set {
    label: Vec<String>,
    small: Vec<String>,
}

impl Set {
    fn of(row: &Row, right: f64) -> Self {
        let room = (right - WORDS).min(WORDS_ROOM);
        let small = if row.small.is_empty() { Vec::new() } else { wrapped(&row.small, SMALL, room, 4) };
        Self { label: wrapped(&row.label, PLAIN, room, 3), small }
    }

    fn height(&self) -> f64 {
        HIGH * self.label.len() as f64 + LOW * self.small.len() as f64 + BETWEEN
    }
}

pub(super) fn draw(line: &TimeLine, rows: &[Row]) -> String {
    let locale = line.look.locale;
    let right = right(line);
    let sets: Vec<Set> = rows.iter().map(|row| Set::of(row, right)).collect();
    let labels = rows.iter().zip(&sets).map(|(row, set)| (row.on, set.height()));
    let spans = line.forecasts.iter().flat_map(|f| [(f.p10, 0.0), (f.end(), 0.0)]);
    let scale = Scale::new(labels.chain(spans).collect(), TOP);
    let places = apart(&wishes(rows, &sets, &scale), 0.0);

    let mut svg = Svg::new(&line.look.prefix);
    let (top, bottom) = (scale.first().map_or(TOP, |(_, y)| y), scale.last().map_or(TOP, |(_, y)| y));
    svg.stroke(&[(LINE, top - 8.0), (LINE, bottom + 8.0)], "p-axis", (INK, 1.6), "");
    calendar(&mut svg, line, &scale);
    for (at, span) in line.forecasts.iter().enumerate() {
        span_bar(&mut svg, span, &scale, lane(at));
    }
    let mut last_date = None;
    for ((row, set), center) in rows.iter().zip(&sets).zip(&places) {
        let same_day = last_date == Some(row.on) && !matches!(row.what, What::Today);
        draw_row(&mut svg, line, (row, set), (scale.at(row.on), *center), same_day);
        last_date = Some(row.on);
    }
    let end = places.last().zip(sets.last()).map_or(bottom, |(y, set)| y + set.height() / 2.0).max(bottom + 8.0);
    let entries = entries(&svg, line);
    let height = key(&mut svg, &entries, (8.0, right), end + 8.0) + 6.0;
    svg.finish((line.look.width, height), &line.look.title, &locale.message("pic-line-desc", &[]), "")
}

/// Where words end.
fn right(line: &TimeLine) -> f64 {
    line.look.width - 8.0
}

/// Where rows would like to be: the first of a day with its first line at the day, the others below.
fn wishes(rows: &[Row], sets: &[Set], scale: &Scale) -> Vec<Wish> {
    let mut wishes: Vec<Wish> = Vec::with_capacity(rows.len());
    let (mut day, mut below) = (None, 0.0);
    for (row, set) in rows.iter().zip(sets) {
        if day != Some(row.on) {
            (day, below) = (Some(row.on), scale.at(row.on) - (HIGH + BETWEEN) / 2.0);
        }
        wishes.push(Wish { at: below + set.height() / 2.0, room: set.height() });
        below += set.height();
    }
    wishes
}

fn lane(at: usize) -> f64 {
    LINE + 7.0 + LANE * at.min(LANES - 1) as f64
}

/// Round dates beside the line, those that have room, and the year where it begins or changes.
fn calendar(svg: &mut Svg, line: &TimeLine, scale: &Scale) {
    let (Some((first, top)), Some((last, bottom))) = (scale.first(), scale.last()) else { return };
    let most = (((bottom - top) / 44.0) as usize).clamp(2, 14);
    let today = scale.at(line.today);
    let mut used = f64::NEG_INFINITY;
    let mut year = None;
    for date in round_dates(first, days_between(first, last), most) {
        let y = scale.at(date);
        // The line of today crosses the calendar.
        if y - 11.0 < used || (y - today).abs() < 13.0 {
            continue;
        }
        svg.stroke(&[(LINE - 5.0, y), (LINE, y)], "p-axis", (INK, 1.0), "");
        let letters = Letters::new(SMALL).at(Anchor::End);
        svg.text((LINE - 9.0, y + DOWN), letters, &day(line.look.locale, date));
        if year != Some(date.year()) && y - 27.0 > used {
            svg.text((LINE - 9.0, y - 12.0), letters.bold(), &date.year().to_string());
        }
        year = Some(date.year());
        used = y + 8.0;
    }
}

/// The likely span beside the line, hatched, a thick stroke at its middle; open below when its late
/// end is not known.
fn span_bar(svg: &mut Svg, span: &ForecastSpan, scale: &Scale, left: f64) {
    let (from, to) = (scale.at(span.p10), scale.at(span.end()).max(scale.at(span.p10) + 3.0));
    let bar = Box2 { left, top: from, right: left + LANE - 3.0, bottom: to };
    let fill = svg.hatch(Hatch::Likely);
    svg.rect(bar, "p-band", &fill, ("none", 0.0));
    let edge = if span.p90.is_some() {
        vec![(bar.left, from), (bar.right, from), (bar.right, to), (bar.left, to), (bar.left, from)]
    } else {
        vec![(bar.left, to), (bar.left, from), (bar.right, from), (bar.right, to)]
    };
    svg.stroke(&edge, "p-band-edge", (CEMENT, 1.2), "");
    if let Some(middle) = span.p50 {
        let y = scale.at(middle.clamp(span.p10, span.end()));
        svg.stroke(&[(bar.left - 1.0, y), (bar.right + 1.0, y)], "p-median", (INK, 3.0), "");
    }
}

fn draw_row(svg: &mut Svg, line: &TimeLine, (row, set): (&Row, &Set), (true_y, center): Xy, same_day: bool) {
    let item = row.id.as_deref().map(|id| format!(" data-item=\"{}\"", escaped(id))).unwrap_or_default();
    svg.open(&format!(" class=\"p-row {}\"{item}", class(row.what)));
    svg.title(&super::in_words(line, row));
    let first_line = center - (set.height() - BETWEEN) / 2.0 + HIGH / 2.0;
    if row.what == What::Today {
        today(svg, line, row.on, (true_y, first_line));
        svg.close();
        return;
    }
    let from = match row.what {
        What::Forecast(at) => lane(at) + LANE - 2.0,
        _ => LINE + 6.0,
    };
    svg.stroke(&[(from, true_y), (DATES - 12.0, first_line), (DATES - 4.0, first_line)], "p-leader", (CEMENT, 0.9), "");
    if !matches!(row.what, What::Forecast(_)) {
        shape(svg, row.what, (LINE, true_y));
    }
    let base = first_line + DOWN;
    if !same_day {
        svg.text((DATES, base), Letters::new(SMALL).bold(), &day(line.look.locale, row.on));
    }
    for (at, text) in set.label.iter().enumerate() {
        svg.text((WORDS, base + HIGH * at as f64), Letters::new(PLAIN), text);
    }
    let small = base + HIGH * set.label.len() as f64 - 1.0;
    for (at, text) in set.small.iter().enumerate() {
        svg.text((WORDS, small + LOW * at as f64), Letters::new(SMALL), text);
    }
    svg.close();
}

const fn class(what: What) -> &'static str {
    match what {
        What::Happened => "p-happened",
        What::Trouble => "p-trouble",
        What::Milestone => "p-milestone",
        What::Today => "p-today",
        What::Forecast(_) => "p-forecast",
    }
}

/// A thick line across calendar and line, down to a dark tag.
fn today(svg: &mut Svg, line: &TimeLine, on: Date, (true_y, row_y): Xy) {
    let locale = line.look.locale;
    let words = locale.message("pic-today-is", &[("date", day(locale, on).into())]);
    let path = [(6.0, true_y), (DATES - 14.0, true_y), (DATES - 5.0, row_y), (DATES, row_y)];
    svg.stroke(&path, "p-today-line", (INK, 3.0), " stroke-linejoin=\"round\"");
    let wide = bold_width(&words, PLAIN) + 14.0;
    let tag = Box2 {
        left: DATES - 4.0,
        top: row_y - 10.0,
        right: (DATES - 4.0 + wide).min(right(line)),
        bottom: row_y + 10.0,
    };
    svg.rect(tag, "p-today-tag", INK, (INK, 1.0));
    svg.text((DATES + 3.0, row_y + DOWN), Letters { ink: PAPER, ..Letters::new(PLAIN).bold() }, &words);
}

/// A ring for what happened, a full burr for trouble, a diamond for the calendar.
fn shape(svg: &mut Svg, what: What, (x, y): Xy) {
    match what {
        What::Trouble => {
            let rim: Vec<Xy> = (0..14)
                .map(|i| {
                    let radius = if i % 2 == 0 { 7.0 } else { 4.2 };
                    let (sin, cos) = libm::sincos(std::f64::consts::PI * f64::from(i) / 7.0);
                    (x + radius * sin, y - radius * cos)
                })
                .collect();
            svg.shape(&rim, "p-shape p-open", IRON, (PAPER, 0.8));
        }
        What::Milestone => {
            let diamond = [(x, y - 7.0), (x + 7.0, y), (x, y + 7.0), (x - 7.0, y)];
            svg.shape(&diamond, "p-shape", PAPER, (INK, 1.6));
        }
        _ => svg.circle((x, y), 4.0, "p-shape", PAPER, (INK, 1.8)),
    }
}

fn entries(svg: &Svg, line: &TimeLine) -> Vec<KeyEntry> {
    let locale = line.look.locale;
    let mut entries: Vec<KeyEntry> = Vec::new();
    let kinds = [
        (line.happened.iter().any(|h| !h.trouble), What::Happened, "pic-line-happened"),
        (line.happened.iter().any(|h| h.trouble), What::Trouble, "pic-line-trouble"),
        (!line.milestones.is_empty(), What::Milestone, "pic-line-milestone"),
    ];
    for (_, what, words) in kinds.into_iter().filter(|(shown, ..)| *shown) {
        entries.push(KeyEntry {
            words: locale.message(words, &[]),
            swatch: Box::new(move |svg, at| shape(svg, what, at)),
        });
    }
    if !line.forecasts.is_empty() {
        let fill = svg.hatch(Hatch::Likely);
        entries.push(KeyEntry {
            words: locale.message("pic-line-forecast", &[]),
            swatch: Box::new(move |svg, (x, y)| {
                svg.rect(Box2::around((x, y), 10.0, 18.0), "p-band", &fill, (CEMENT, 1.2));
                svg.stroke(&[(x - 6.0, y), (x + 6.0, y)], "p-median", (INK, 3.0), "");
            }),
        });
    }
    entries
}
