//! What was read from an air record, to look at before it is written, and which column is what.

use form_schema::FormData;
use jiff::tz::TimeZone;
use localization::{Arg, Locale};
use weather_series::{Assumption, Form, Import, ImportError, Quantity, Sample, Unit};

use crate::air_text::{assumption, quantity, reading, skipped};

/// Rows shown as they were read.
const FIRST_ROWS: usize = 5;
/// Of what was left out, so many are shown; the rest is counted.
const SHOWN: usize = 12;
/// Begins the names of the inputs that say which column is what.
const MAP: &str = "map-";

/// One column that is used.
pub(crate) struct ColumnRow {
    pub(crate) quantity: String,
    /// Its name in the file and its unit; nothing where the form fixes both.
    pub(crate) column: Option<String>,
    pub(crate) count: String,
    pub(crate) low: String,
    pub(crate) high: String,
}

/// What was read.
pub(crate) struct Looked {
    pub(crate) answer: String,
    pub(crate) step: Option<String>,
    pub(crate) columns: Vec<ColumnRow>,
    /// Whether the columns have names of their own.
    pub(crate) named: bool,
    pub(crate) head: Vec<String>,
    pub(crate) first: Vec<Vec<String>>,
    pub(crate) assumed: Vec<String>,
    pub(crate) left_out: Vec<String>,
    pub(crate) left_out_more: Option<String>,
    /// The choice of columns, carried to the next step.
    pub(crate) chosen: Vec<(String, String)>,
}

/// A choice among columns or units.
pub(crate) struct Select {
    pub(crate) name: String,
    pub(crate) label: String,
    /// Text and whether it is chosen.
    pub(crate) options: Vec<(String, bool)>,
}

/// Which column is what.
pub(crate) struct Choice {
    pub(crate) selects: Vec<Select>,
    /// What was chosen before and is not asked again.
    pub(crate) carried: Vec<(String, String)>,
    /// It lies open: without it nothing can be read.
    pub(crate) open: bool,
}

/// Keys of a mapping with its own columns for time.
const TIMES: [(&str, &str); 3] = [("time", "air-map-time"), ("date", "air-map-date"), ("clock", "air-map-clock")];

fn units(of: Quantity) -> Option<(String, Vec<&'static str>)> {
    // Humidity is always in percent.
    (of != Quantity::Humidity).then(|| (format!("{}_unit", of.code()), Unit::accepted(of).split(", ").collect()))
}

/// What was chosen: key of the mapping and the column or unit.
pub(crate) fn chosen(typed: &FormData) -> Vec<(&'static str, String)> {
    const KEYS: [&str; 16] = [
        "time",
        "date",
        "clock",
        "air",
        "air_unit",
        "humidity",
        "dew_point",
        "dew_point_unit",
        "wind",
        "wind_unit",
        "slab",
        "slab_unit",
        "pressure",
        "pressure_unit",
        "rain",
        "rain_unit",
    ];
    KEYS.into_iter()
        .filter_map(|key| {
            let value = typed.first(&format!("{MAP}{key}")).map(str::trim).filter(|value| !value.is_empty())?;
            Some((key, value.to_owned()))
        })
        .collect()
}

/// The choice of columns for a table; nothing for a weather year, whose columns are fixed, and where
/// the columns have nothing to do with what was wrong.
pub(crate) fn choice(read: Result<&Import, &ImportError>, typed: &FormData, locale: Locale) -> Option<Choice> {
    let chosen = chosen(typed);
    let select = |key: &str, label: String, options: &mut dyn Iterator<Item = String>| {
        let now = chosen.iter().find(|(known, _)| *known == key).map(|(_, value)| value.as_str());
        let options = options.map(|option| {
            let is = now.is_some_and(|now| now.eq_ignore_ascii_case(&option));
            (option, is)
        });
        Select { name: format!("{MAP}{key}"), label, options: options.collect() }
    };
    let unit = |of: Quantity| {
        let (key, units) = units(of)?;
        let label = locale.message("air-map-unit", &[("quantity", quantity(of, locale).into())]);
        Some(select(&key, label, &mut units.into_iter().map(str::to_owned)))
    };
    let columns: Vec<String> = match read {
        Ok(read) if read.form == Form::PlainCsv => names(read),
        Err(ImportError::Columns { found, .. } | ImportError::NoSuchColumn { found, .. }) => found.clone(),
        // What the other columns are is not asked again: what was chosen for them goes along.
        Err(ImportError::UnitMissing { key, .. }) => {
            let of = Quantity::ALL.into_iter().find(|q| q.code() == *key)?;
            let asked = format!("{key}_unit");
            let carried = chosen.iter().filter(|(known, _)| *known != asked);
            return Some(Choice {
                selects: unit(of).into_iter().collect(),
                carried: carried.map(|(known, value)| (format!("{MAP}{known}"), value.clone())).collect(),
                open: true,
            });
        }
        _ => return None,
    };
    let mut selects: Vec<Select> = TIMES
        .into_iter()
        .map(|(key, label)| select(key, locale.message(label, &[]), &mut columns.iter().cloned()))
        .collect();
    for of in Quantity::ALL {
        selects.push(select(of.code(), quantity(of, locale), &mut columns.iter().cloned()));
        selects.extend(unit(of));
    }
    Some(Choice { selects, carried: Vec::new(), open: read.is_err() })
}

/// All columns of a table, as far as their names are known.
fn names(read: &Import) -> Vec<String> {
    read.assumed
        .iter()
        .flat_map(|assumed| match assumed {
            Assumption::TimeColumns { columns } | Assumption::Unused { columns } => columns.clone(),
            Assumption::Column { column, .. } => vec![column.clone()],
            _ => Vec::new(),
        })
        .collect()
}

/// What was read, in words.
pub(crate) fn looked(read: &Import, typed: &FormData, zone: &TimeZone, locale: Locale) -> Looked {
    let used: Vec<Quantity> = Quantity::ALL
        .into_iter()
        .filter(|q| read.series.samples.iter().any(|s| reading(s, *q, locale).is_some()))
        .collect();
    let when = |sample: &Sample| moment(sample, read.series.typical_year, zone, locale);
    let head = std::iter::once(locale.message("air-when", &[])).chain(used.iter().map(|q| quantity(*q, locale)));
    let row = |sample: &Sample| {
        let readings =
            used.iter().map(|q| reading(sample, *q, locale).map_or_else(|| "–".to_owned(), |(_, said)| said));
        std::iter::once(when(sample)).chain(readings).collect()
    };
    let left_out = read.skipped.iter().map(|s| skipped(s, locale));
    let doubts = read.assumed.iter().filter(|a| doubtful(a)).filter_map(|a| assumption(a, locale));
    let gaps = read.gaps.iter().map(|gap| {
        let ends = [("from", locale.moment(gap.from, zone).into()), ("to", locale.moment(gap.to, zone).into())];
        locale.message("air-gap", &ends)
    });
    let doubled = read.duplicates.iter().map(|double| {
        let lines = [("line", double.dropped_line.to_string().into()), ("kept", double.kept_line.to_string().into())];
        locale.message("air-double", &lines)
    });
    let more = read.skipped.len().saturating_sub(SHOWN)
        + read.gaps.len().saturating_sub(SHOWN)
        + read.duplicates.len().saturating_sub(SHOWN);
    Looked {
        answer: answer(read, &when, locale),
        step: read.usual_step.map(|step| {
            let step = units::Duration::seconds(step.as_secs_f64());
            locale.message("air-step", &[("step", locale.duration(step).into())])
        }),
        columns: used.iter().map(|q| column(read, *q, locale)).collect(),
        named: read.form == Form::PlainCsv,
        head: head.collect(),
        first: read.series.samples.iter().take(FIRST_ROWS).map(row).collect(),
        assumed: read.assumed.iter().filter(|a| !doubtful(a)).filter_map(|a| assumption(a, locale)).collect(),
        left_out: doubts.chain(left_out.take(SHOWN)).chain(gaps.take(SHOWN)).chain(doubled.take(SHOWN)).collect(),
        left_out_more: (more > 0).then(|| locale.message("air-more", &[("count", Arg::Number(more as f64))])),
        chosen: chosen(typed).into_iter().map(|(key, value)| (format!("{MAP}{key}"), value)).collect(),
    }
}

/// What the file itself doubts is told beside what was left out.
fn doubtful(assumed: &Assumption) -> bool {
    matches!(assumed, Assumption::DoubtfulRain { .. })
}

fn answer(read: &Import, when: &dyn Fn(&Sample) -> String, locale: Locale) -> String {
    let samples = &read.series.samples;
    let ends = samples.first().zip(samples.last()).map(|(from, to)| (when(from), when(to)));
    let (from, to) = ends.unwrap_or_default();
    let args = [
        ("count", Arg::Number(samples.len() as f64)),
        ("n", locale.count(samples.len() as u32).into()),
        ("from", from.into()),
        ("to", to.into()),
    ];
    locale.message(if read.series.typical_year { "air-answer-typical" } else { "air-answer" }, &args)
}

/// When a sample was taken; of a typical year without its made-up year.
fn moment(sample: &Sample, typical: bool, zone: &TimeZone, locale: Locale) -> String {
    if !typical {
        return locale.moment(sample.at, zone);
    }
    let local = sample.at.to_zoned_datetime(zone.clone());
    let month = locale.month_short(local.date());
    let day = locale.message("pic-day", &[("month", month.into()), ("day", local.day().to_string().into())]);
    format!("{day} {:02}:{:02}", local.hour(), local.minute())
}

fn column(read: &Import, of: Quantity, locale: Locale) -> ColumnRow {
    let readings: Vec<(f64, String)> = read.series.samples.iter().filter_map(|s| reading(s, of, locale)).collect();
    let least = readings.iter().min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, said)| said.clone());
    let most = readings.iter().max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, said)| said.clone());
    let column = read.assumed.iter().find_map(|assumed| match assumed {
        Assumption::Column { quantity, column, unit } if *quantity == of => {
            Some(format!("{column}, {}", unit.symbol()))
        }
        _ => None,
    });
    ColumnRow {
        quantity: quantity(of, locale),
        column,
        count: locale.count(readings.len() as u32),
        low: least.unwrap_or_default(),
        high: most.unwrap_or_default(),
    }
}
