//! Humidity in the slab over the days since the pour.

use jiff::civil::Date;
use localization::Locale;
use units::{Duration, HumidityDifference, RelativeHumidity};

use super::axes::Axes;
use super::ticks::{decimals, round_dates, round_numbers};
use crate::boxes::{Box2, Xy};
use crate::day::{date_after, day, day_year, days_between};
use crate::key::{KeyEntry, key};
use crate::look::{Drawing, Look, Table};
use crate::svg::{Anchor, CEMENT, Hatch, INK, IRON, Svg};

/// Rows of the table that tell the forecast.
const FORECAST_ROWS: usize = 8;

/// What the drying chart shows. All times count from the pour.
#[derive(Debug, Clone, PartialEq)]
pub struct DryingChart {
    /// Title, reader, prefix.
    pub look: Look,
    /// The day of the pour.
    pub poured: Date,
    /// Today, when it is to be marked.
    pub today: Option<Date>,
    /// The forecast, in order of time; may be empty.
    pub band: Vec<BandPoint>,
    /// What was measured.
    pub readings: Vec<ReadingPoint>,
    /// Limits of sealers.
    pub limits: Vec<LimitLine>,
    /// When the rule of one month per inch runs out.
    pub month_per_inch: Option<Duration>,
}

/// The forecast at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandPoint {
    /// Since the pour.
    pub since: Duration,
    /// One slab in ten is drier.
    pub p10: RelativeHumidity,
    /// Half are drier.
    pub p50: RelativeHumidity,
    /// Nine in ten are drier.
    pub p90: RelativeHumidity,
}

/// A measured humidity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingPoint {
    /// Since the pour.
    pub since: Duration,
    /// What was read.
    pub humidity: RelativeHumidity,
    /// How far off it may be, either way.
    pub error: Option<HumidityDifference>,
}

impl ReadingPoint {
    fn ends(&self) -> Option<(f64, f64)> {
        let error = self.error?.as_points().abs();
        let read = self.humidity.as_percent();
        Some(((read - error).max(0.0), (read + error).min(100.0)))
    }
}

/// A limit with its name.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitLine {
    /// At most this humidity.
    pub humidity: RelativeHumidity,
    /// What asks for it, in the reader's language.
    pub label: String,
}

/// Draws the forecast band, readings, limits, and the marks of today and of the rule of thumb.
#[must_use]
pub fn drying_chart(chart: &DryingChart) -> Drawing {
    let locale = chart.look.locale;
    let mut svg = Svg::new(&chart.look.prefix);
    let axes = axes(chart);
    let percents = round_numbers(axes.y.0, axes.y.1, 6);
    let at =
        |p: &f64| (*p, locale.message("humidity-percent", &[("n", locale.number(*p, decimals(&percents)).into())]));
    axes.upright(&mut svg, &percents.iter().map(at).collect::<Vec<_>>(), &locale.message("pic-drying-axis", &[]), 2.0);
    band(&mut svg, &axes, &chart.band);
    let limits: Vec<(f64, String)> =
        chart.limits.iter().map(|l| (l.humidity.as_percent(), limit_words(l, locale))).collect();
    let today = chart.today.map(|today| f64::from(days_between(chart.poured, today)));
    let upright: Vec<f64> = today.into_iter().chain(chart.month_per_inch.map(Duration::as_days)).collect();
    axes.named_lines(&mut svg, &limits, Anchor::Start, &upright);
    if let Some(rule) = chart.month_per_inch {
        axes.moment(&mut svg, rule.as_days(), &locale.message("pic-drying-rule", &[]), (0.0, false), &upright);
    }
    if let Some(days) = today {
        axes.moment(&mut svg, days, &locale.message("pic-today", &[]), (1.0, true), &upright);
    }
    for reading in &chart.readings {
        let at = axes.at(reading.since.as_days(), reading.humidity.as_percent());
        let ends = reading.ends().map(|(low, high)| (axes.y_at(low), axes.y_at(high)));
        reading_point(&mut svg, at, ends);
    }
    let dates = round_dates(chart.poured, axes.x.1.ceil() as i32, 6);
    let ticks: Vec<(f64, String)> =
        dates.iter().map(|d| (f64::from(days_between(chart.poured, *d)), day(locale, *d))).collect();
    axes.level(&mut svg, &ticks, 19.0);
    let entries = entries(&svg, chart);
    let height = key(&mut svg, &entries, (8.0, chart.look.width - 8.0), axes.plot.bottom + 28.0) + 6.0;
    let sentences = sentences(chart);
    Drawing {
        svg: svg.finish((chart.look.width, height), &chart.look.title, &locale.message("pic-drying-desc", &[]), ""),
        sentences,
        table: table(chart),
    }
}

fn limit_words(limit: &LimitLine, locale: Locale) -> String {
    let value = locale.humidity(limit.humidity);
    locale.message("pic-named", &[("name", limit.label.as_str().into()), ("value", value.into())])
}

fn axes(chart: &DryingChart) -> Axes {
    let today = chart.today.map(|t| f64::from(days_between(chart.poured, t)));
    let days = chart.band.iter().map(|b| b.since.as_days());
    let days = days.chain(chart.readings.iter().map(|r| r.since.as_days()));
    let last = days.chain(chart.month_per_inch.map(Duration::as_days)).chain(today).fold(7.0, f64::max);
    let all = chart.band.iter().flat_map(|b| [b.p10, b.p90]).map(RelativeHumidity::as_percent);
    let all = all.chain(chart.readings.iter().flat_map(|r| {
        let (low, high) = r.ends().unwrap_or((r.humidity.as_percent(), r.humidity.as_percent()));
        [low, high]
    }));
    let lowest = all.chain(chart.limits.iter().map(|l| l.humidity.as_percent())).fold(95.0, f64::min);
    let low = ((lowest - 3.0) / 5.0).floor() * 5.0;
    // Two rows above the plot for the names of upright lines, one for the axis.
    let plot = Box2 { left: 50.0, top: 66.0, right: chart.look.width - 12.0, bottom: 286.0 };
    Axes { width: chart.look.width, plot, x: (0.0, last * 1.02), y: (low.max(0.0), 100.0) }
}

fn band(svg: &mut Svg, axes: &Axes, points: &[BandPoint]) {
    let along = |value: fn(&BandPoint) -> RelativeHumidity| {
        points.iter().map(move |b| axes.at(b.since.as_days(), value(b).as_percent())).collect::<Vec<Xy>>()
    };
    let (low, middle, high) = (along(|b| b.p10), along(|b| b.p50), along(|b| b.p90));
    if points.len() < 2 {
        return;
    }
    let around: Vec<Xy> = high.into_iter().chain(low.into_iter().rev()).collect();
    let fill = svg.hatch(Hatch::Likely);
    svg.shape(&around, "p-band", &fill, (CEMENT, 0.8));
    svg.stroke(&middle, "p-median", (INK, 2.0), "");
}

fn reading_point(svg: &mut Svg, at: Xy, ends: Option<(f64, f64)>) {
    if let Some((low, high)) = ends {
        svg.stroke(&[(at.0, low), (at.0, high)], "p-reading", (IRON, 1.6), "");
        for y in [low, high] {
            svg.stroke(&[(at.0 - 4.0, y), (at.0 + 4.0, y)], "p-reading", (IRON, 1.6), "");
        }
    }
    svg.circle(at, 4.0, "p-reading", IRON, ("#ffffff", 1.2));
}

fn entries(svg: &Svg, chart: &DryingChart) -> Vec<KeyEntry> {
    let locale = chart.look.locale;
    let mut entries: Vec<KeyEntry> = Vec::new();
    if chart.band.len() > 1 {
        let fill = svg.hatch(Hatch::Likely);
        entries.push(KeyEntry {
            words: locale.message("pic-band", &[]),
            swatch: Box::new(move |svg, at| {
                svg.rect(Box2::around(at, 20.0, 12.0), "p-band", &fill, (CEMENT, 0.8));
            }),
        });
        entries.push(KeyEntry {
            words: locale.message("pic-middle", &[]),
            swatch: Box::new(|svg, (x, y)| svg.stroke(&[(x - 10.0, y), (x + 10.0, y)], "p-median", (INK, 2.0), "")),
        });
    }
    if !chart.readings.is_empty() {
        let margin = chart.readings.iter().any(|r| r.error.is_some());
        entries.push(KeyEntry {
            words: locale.message(if margin { "pic-reading-margin" } else { "pic-reading" }, &[]),
            swatch: Box::new(move |svg, at| {
                reading_point(svg, at, margin.then_some((at.1 - 8.0, at.1 + 8.0)));
            }),
        });
    }
    entries
}

fn sentences(chart: &DryingChart) -> Vec<String> {
    let locale = chart.look.locale;
    let on = |since: Duration| day_year(locale, date_after(chart.poured, since));
    let mut out = Vec::new();
    if chart.band.is_empty() {
        out.push(locale.message("pic-drying-no-forecast", &[]));
    }
    let today = chart.today.map(|t| f64::from(days_between(chart.poured, t)));
    let now = today.and_then(|t| chart.band.iter().find(|b| b.since.as_days() >= t));
    let end = chart.band.last().filter(|last| now.is_none_or(|n| n.since < last.since));
    for point in now.into_iter().chain(end) {
        let args = [
            ("date", on(point.since).into()),
            ("middle", locale.humidity(rounded(point.p50)).into()),
            ("low", locale.humidity(rounded(point.p10)).into()),
            ("high", locale.humidity(rounded(point.p90)).into()),
        ];
        out.push(locale.message("pic-drying-on", &args));
    }
    out.extend(chart.limits.iter().filter(|_| !chart.band.is_empty()).map(|limit| reach(chart, limit, &on)));
    out.push(match chart.readings.iter().max_by(|a, b| a.since.as_days().total_cmp(&b.since.as_days())) {
        Some(last) => {
            let args = [("date", on(last.since).into()), ("humidity", locale.humidity(last.humidity).into())];
            locale.message("pic-drying-last-reading", &args)
        }
        None => locale.message("pic-drying-no-readings", &[]),
    });
    if let Some(rule) = chart.month_per_inch {
        out.push(locale.message("pic-drying-rule-is", &[("date", on(rule).into())]));
    }
    if !chart.band.is_empty() {
        out.push(locale.message("pic-drying-not-proof", &[]));
    }
    out
}

/// A forecast is not known to tenths.
fn rounded(humidity: RelativeHumidity) -> RelativeHumidity {
    RelativeHumidity::percent(humidity.as_percent().round()).unwrap_or(humidity)
}

/// When the forecast reaches a limit and stays there.
fn reach(chart: &DryingChart, limit: &LimitLine, on: &impl Fn(Duration) -> String) -> String {
    let locale = chart.look.locale;
    let first = |value: fn(&BandPoint) -> RelativeHumidity| {
        let above = chart.band.iter().rposition(|b| value(b) > limit.humidity);
        chart.band.get(above.map_or(0, |at| at + 1)).map(|b| on(b.since))
    };
    let name = limit_words(limit, locale);
    match (first(|b| b.p50), first(|b| b.p90)) {
        (Some(middle), Some(late)) => {
            let args = [("limit", name.into()), ("middle", middle.into()), ("late", late.into())];
            locale.message("pic-drying-reach", &args)
        }
        (Some(middle), None) => {
            locale.message("pic-drying-reach-open", &[("limit", name.into()), ("middle", middle.into())])
        }
        (None, _) => locale.message("pic-drying-reach-never", &[("limit", name.into())]),
    }
}

fn table(chart: &DryingChart) -> Table {
    let locale = chart.look.locale;
    let head = ["pic-date", "pic-what", "pic-low", "pic-mid", "pic-high"].map(|k| locale.message(k, &[])).to_vec();
    let percent = |value: f64| locale.message("humidity-percent", &[("n", locale.number(value, 1).into())]);
    let mut rows: Vec<(f64, Vec<String>)> = Vec::new();
    let step = (chart.band.len().div_ceil(FORECAST_ROWS)).max(1);
    let last = chart.band.len().saturating_sub(1);
    for (_, point) in chart.band.iter().enumerate().filter(|(at, _)| at % step == 0 || *at == last) {
        let values = [point.p10, point.p50, point.p90].map(|h| percent(h.as_percent().round()));
        rows.push((point.since.as_days(), row(chart, point.since, "pic-forecast", values)));
    }
    for reading in &chart.readings {
        let (low, high) = reading.ends().map_or((String::new(), String::new()), |(l, h)| (percent(l), percent(h)));
        let values = [low, percent(reading.humidity.as_percent()), high];
        rows.push((reading.since.as_days(), row(chart, reading.since, "pic-reading", values)));
    }
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    Table { head, rows: rows.into_iter().map(|(_, row)| row).collect() }
}

fn row(chart: &DryingChart, since: Duration, what: &'static str, values: [String; 3]) -> Vec<String> {
    let locale = chart.look.locale;
    let date = day_year(locale, date_after(chart.poured, since));
    [date, locale.message(what, &[])].into_iter().chain(values).collect()
}
