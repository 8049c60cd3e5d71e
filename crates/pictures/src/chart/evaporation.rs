//! Water leaving fresh concrete, hour by hour.

use jiff::civil::DateTime;
use localization::{Locale, UnitSystem};
use units::EvaporationRate;

use super::axes::Axes;
use super::ticks::{decimals, round_numbers};
use crate::boxes::Box2;
use crate::day::{day, day_year, hour};
use crate::key::{KeyEntry, Swatch, key};
use crate::lettering::{SMALL, bold_width};
use crate::look::{Drawing, Look, Table};
use crate::svg::{Anchor, CEMENT, Hatch, INK, Letters, PALE, Svg};

/// What the evaporation chart shows.
#[derive(Debug, Clone, PartialEq)]
pub struct EvaporationChart {
    /// Title, reader, prefix.
    pub look: Look,
    /// The hours in order, each beside the one before.
    pub hours: Vec<EvaporationHour>,
    /// Lines at which something is to be done.
    pub alarms: Vec<AlarmLine>,
}

/// One hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EvaporationHour {
    /// When it begins, on the clock of the site.
    pub from: DateTime,
    /// What leaves; `None` when the air is not known.
    pub rate: Option<RateBand>,
}

/// A rate with its margin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RateBand {
    /// The low end.
    pub low: EvaporationRate,
    /// The estimate.
    pub rate: EvaporationRate,
    /// The high end.
    pub high: EvaporationRate,
}

/// A rate at which something is to be done.
#[derive(Debug, Clone, PartialEq)]
pub struct AlarmLine {
    /// From this rate on.
    pub rate: EvaporationRate,
    /// Its name, in the reader's language.
    pub label: String,
}

/// How an hour stands to the lowest alarm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Against {
    Below,
    Possible,
    Above,
}

impl Against {
    const ALL: [Self; 3] = [Self::Below, Self::Possible, Self::Above];

    fn of(band: RateBand, alarms: &[AlarmLine]) -> Self {
        if alarms.iter().any(|a| band.rate >= a.rate) {
            Self::Above
        } else if alarms.iter().any(|a| band.high >= a.rate) {
            Self::Possible
        } else {
            Self::Below
        }
    }

    const fn key(self) -> &'static str {
        match self {
            Self::Below => "pic-air-below",
            Self::Possible => "pic-air-possible",
            Self::Above => "pic-air-above",
        }
    }

    /// The fill of its bars.
    fn fill(self, svg: &Svg) -> String {
        match self {
            Self::Below => PALE.to_owned(),
            Self::Possible => svg.hatch(Hatch::Likely),
            Self::Above => svg.hatch(Hatch::Above),
        }
    }
}

/// Draws a bar for each hour with its margin, and the alarm lines.
#[must_use]
pub fn evaporation_chart(chart: &EvaporationChart) -> Drawing {
    let locale = chart.look.locale;
    let mut svg = Svg::new(&chart.look.prefix);
    let axes = axes(chart);
    let numbers = round_numbers(axes.y.0, axes.y.1, 6);
    let places = decimals(&numbers);
    let name = match locale.unit_system {
        UnitSystem::Imperial => "pic-air-pounds",
        UnitSystem::Metric => "pic-air-kilograms",
    };
    let ticks: Vec<(f64, String)> = numbers.iter().map(|n| (*n, locale.number(*n, places))).collect();
    axes.upright(&mut svg, &ticks, &locale.message(name, &[]), 0.0);
    bars(&mut svg, &axes, chart);
    // The unit stands at the axis already.
    let name = |a: &AlarmLine| {
        let n = in_reader(a.rate, locale);
        let args = [("name", a.label.as_str().into()), ("value", locale.number(n, 2).into())];
        (n, locale.message("pic-named", &args))
    };
    let lines: Vec<(f64, String)> = chart.alarms.iter().map(name).collect();
    axes.named_lines(&mut svg, &lines, lower_end(chart), &[]);
    hours(&mut svg, &axes, chart);
    let entries = entries(&svg, chart);
    let height = key(&mut svg, &entries, (8.0, chart.look.width - 8.0), axes.plot.bottom + 44.0) + 6.0;
    let sentences = sentences(chart);
    Drawing {
        svg: svg.finish((chart.look.width, height), &chart.look.title, &locale.message("pic-air-desc", &[]), ""),
        sentences,
        table: table(chart),
    }
}

fn in_reader(rate: EvaporationRate, locale: Locale) -> f64 {
    match locale.unit_system {
        UnitSystem::Imperial => rate.as_pounds_per_square_foot_hour(),
        UnitSystem::Metric => rate.as_kilograms_per_square_meter_hour(),
    }
}

fn alarm_words(alarm: &AlarmLine, locale: Locale) -> String {
    let value = locale.evaporation(alarm.rate);
    locale.message("pic-named", &[("name", alarm.label.as_str().into()), ("value", value.into())])
}

fn axes(chart: &EvaporationChart) -> Axes {
    let locale = chart.look.locale;
    let highs = chart.hours.iter().filter_map(|h| h.rate).map(|r| r.high);
    let highest = highs.chain(chart.alarms.iter().map(|a| a.rate)).map(|r| in_reader(r, locale)).fold(0.0, f64::max);
    let top = if highest > 0.0 { highest * 1.12 } else { 1.0 };
    let plot = Box2 { left: 46.0, top: 32.0, right: chart.look.width - 10.0, bottom: 228.0 };
    Axes { width: chart.look.width, plot, x: (0.0, chart.hours.len().max(1) as f64), y: (0.0, top) }
}

/// The end of the chart where the bars are lower, for names to stand at.
fn lower_end(chart: &EvaporationChart) -> Anchor {
    let locale = chart.look.locale;
    let quarter = chart.hours.len().div_ceil(4);
    let sum =
        |hours: &[EvaporationHour]| hours.iter().filter_map(|h| h.rate).map(|r| in_reader(r.high, locale)).sum::<f64>();
    let late = &chart.hours[chart.hours.len() - quarter..];
    if sum(late) < sum(&chart.hours[..quarter]) { Anchor::End } else { Anchor::Start }
}

fn bars(svg: &mut Svg, axes: &Axes, chart: &EvaporationChart) {
    let locale = chart.look.locale;
    for (at, hour) in chart.hours.iter().enumerate() {
        let (left, right) = (axes.x_at(at as f64), axes.x_at(at as f64 + 1.0));
        let gap = (right - left) * 0.12;
        let middle = (left + right) / 2.0;
        let Some(band) = hour.rate else {
            // A dash on the ground: no bar is not the same as nothing leaving.
            let y = axes.plot.bottom - 5.0;
            svg.stroke(&[(left + gap, y), (right - gap, y)], "p-unknown", (INK, 1.4), "");
            continue;
        };
        let fill = Against::of(band, &chart.alarms).fill(svg);
        let top = axes.y_at(in_reader(band.rate, locale));
        let bar = Box2 { left: left + gap, top, right: right - gap, bottom: axes.plot.bottom };
        svg.rect(bar, "p-bar", &fill, (INK, 0.8));
        let ends = [band.low, band.high].map(|r| axes.y_at(in_reader(r, locale)));
        svg.stroke(&[(middle, ends[0]), (middle, ends[1])], "p-margin", (INK, 1.2), "");
        let cap = ((right - left) * 0.22).min(4.0);
        for y in ends {
            svg.stroke(&[(middle - cap, y), (middle + cap, y)], "p-margin", (INK, 1.2), "");
        }
    }
}

/// Hours under the bars, and the day under its first hour.
fn hours(svg: &mut Svg, axes: &Axes, chart: &EvaporationChart) {
    let locale = chart.look.locale;
    let count = chart.hours.len();
    let step = [1, 2, 3, 6, 12, 24].into_iter().find(|s| (count / s) as f64 <= axes.width / 60.0).unwrap_or(24);
    let on_the_hour = |h: &EvaporationHour| i64::from(h.from.hour()) % step as i64 == 0 && h.from.minute() == 0;
    let ticks: Vec<(f64, String)> = chart
        .hours
        .iter()
        .enumerate()
        .filter(|(_, h)| step < 24 && on_the_hour(h))
        .map(|(at, h)| (at as f64, hour(locale, h.from)))
        .collect();
    axes.level(svg, &ticks, 18.0);
    let mut used = f64::NEG_INFINITY;
    for (at, h) in chart.hours.iter().enumerate() {
        let begins = at == 0 || chart.hours[at - 1].from.date() != h.from.date();
        let words = day(locale, h.from.date());
        let x = axes.x_at(at as f64);
        let wide = bold_width(&words, SMALL);
        if begins && x > used && x + wide < axes.width {
            svg.text((x + 3.0, axes.plot.bottom + 37.0), Letters::new(SMALL).bold(), &words);
            if at > 0 {
                let down = [(x, axes.plot.bottom + 23.0), (x, axes.plot.bottom + 39.0)];
                svg.stroke(&down, "p-axis", (CEMENT, 0.8), "");
            }
            used = x + wide + 6.0;
        }
    }
}

fn entries(svg: &Svg, chart: &EvaporationChart) -> Vec<KeyEntry> {
    let locale = chart.look.locale;
    if chart.alarms.is_empty() {
        return Vec::new();
    }
    let against: Vec<Against> =
        chart.hours.iter().filter_map(|h| h.rate).map(|r| Against::of(r, &chart.alarms)).collect();
    let kinds = Against::ALL.into_iter().filter(|kind| against.contains(kind));
    let mut entries: Vec<KeyEntry> = kinds
        .map(|kind| {
            let fill = kind.fill(svg);
            let swatch: Swatch = Box::new(move |svg, at| {
                svg.rect(Box2::around(at, 14.0, 14.0), "p-bar", &fill, (INK, 0.8));
            });
            KeyEntry { words: locale.message(kind.key(), &[]), swatch }
        })
        .collect();
    if chart.hours.iter().any(|h| h.rate.is_none()) {
        entries.push(KeyEntry {
            words: locale.message("pic-air-missing", &[]),
            swatch: Box::new(|svg, (x, y)| svg.stroke(&[(x - 6.0, y), (x + 6.0, y)], "p-unknown", (INK, 1.4), "")),
        });
    }
    entries
}

fn sentences(chart: &EvaporationChart) -> Vec<String> {
    let locale = chart.look.locale;
    let known: Vec<(DateTime, RateBand)> = chart.hours.iter().filter_map(|h| Some((h.from, h.rate?))).collect();
    let mut out = Vec::new();
    if let Some((from, band)) =
        known.iter().max_by(|a, b| in_reader(a.1.rate, locale).total_cmp(&in_reader(b.1.rate, locale)))
    {
        let args = [
            ("rate", locale.evaporation(band.rate).into()),
            ("date", day_year(locale, from.date()).into()),
            ("hour", hour(locale, *from).into()),
        ];
        out.push(locale.message("pic-air-highest", &args));
    }
    for alarm in &chart.alarms {
        let over = known.iter().filter(|(_, b)| b.rate >= alarm.rate).count() as u32;
        let may = known.iter().filter(|(_, b)| b.rate < alarm.rate && b.high >= alarm.rate).count() as u32;
        for (key, count) in [("pic-air-over", Some(over)), ("pic-air-may", Some(may).filter(|m| *m > 0))] {
            let Some(count) = count else { continue };
            let line = alarm_words(alarm, locale);
            let args = [("line", line.into()), ("n", locale.count(count).into()), ("count", count.into())];
            out.push(locale.message(key, &args));
        }
    }
    let unknown = (chart.hours.len() - known.len()) as u32;
    if unknown > 0 {
        out.push(locale.message("pic-air-unknown", &[("n", locale.count(unknown).into()), ("count", unknown.into())]));
    }
    out
}

fn table(chart: &EvaporationChart) -> Table {
    let locale = chart.look.locale;
    let head =
        ["pic-date", "pic-air-hour", "pic-low", "pic-air-rate", "pic-high"].map(|k| locale.message(k, &[])).to_vec();
    let rows = chart.hours.iter().map(|h| {
        let rates = match h.rate {
            Some(band) => [band.low, band.rate, band.high].map(|r| locale.evaporation(r)),
            None => [String::new(), locale.message("pic-air-missing", &[]), String::new()],
        };
        [day_year(locale, h.from.date()), hour(locale, h.from)].into_iter().chain(rates).collect()
    });
    Table { head, rows: rows.collect() }
}
