//! EnergyPlus weather format.
//!
//! Fields and missing codes: EnergyPlus Auxiliary Programs, "Weather Data Format" (US Department of
//! Energy). Grade M: from memory; the field places are checked against an independent reader in
//! `reference/weather`.

use super::Form;
use super::assumed::Assumption;
use super::error::ImportError;
use super::finish::Draft;
use super::hours::{Field, HOUR_ACCEPTED, Hour, hourly_rain, place, plain_number, put};
use super::quantity::Quantity;
use super::report::{Site, Why};
use super::series::Sample;
use super::text::{Line, shown, split, starts};
use super::unit::Unit;

/// The eight header lines in order. `DAYLIGHT SAVING` is written with and without a last S.
const HEADER: [(&str, &str); 8] = [
    ("LOCATION,", "LOCATION,city,state,country,source,station,latitude,longitude,time zone,elevation"),
    ("DESIGN CONDITIONS", "DESIGN CONDITIONS,..."),
    ("TYPICAL/EXTREME PERIODS", "TYPICAL/EXTREME PERIODS,..."),
    ("GROUND TEMPERATURES", "GROUND TEMPERATURES,..."),
    ("HOLIDAYS/DAYLIGHT SAVING", "HOLIDAYS/DAYLIGHT SAVING,..."),
    ("COMMENTS 1", "COMMENTS 1,..."),
    ("COMMENTS 2", "COMMENTS 2,..."),
    ("DATA PERIODS", "DATA PERIODS,..."),
];

/// Place of a reading, its unit, and from which value on it means "missing".
const FIELDS: [(usize, Quantity, Unit, &str, f64); 6] = [
    (6, Quantity::Air, Unit::Celsius, "dry bulb", 99.9),
    (7, Quantity::DewPoint, Unit::Celsius, "dew point", 99.9),
    (8, Quantity::Humidity, Unit::Percent, "relative humidity", 999.0),
    (9, Quantity::Pressure, Unit::Pascal, "pressure", 999_999.0),
    (21, Quantity::Wind, Unit::MeterPerSecond, "wind speed", 999.0),
    (33, Quantity::Rain, Unit::Millimeter, "rain depth", 999.0),
];
/// Hours over which the rain fell.
const RAIN_HOURS: usize = 34;
/// A row must reach to the wind speed; the fields after it are missing in some files.
const NEEDED: usize = 22;

struct Raw {
    line: usize,
    hour: Result<Hour, String>,
    cells: Vec<String>,
}

pub(super) fn read(lines: &[Line<'_>]) -> Result<Draft, ImportError> {
    for (index, (start, accepted)) in HEADER.iter().enumerate() {
        let found = lines.get(index).map_or("end of file", |line| line.text);
        if !starts(found, start) {
            return Err(ImportError::Header { line: index + 1, found: shown(found), accepted });
        }
    }
    let site = site(&lines[0])?;
    let offset = site.standard_offset;
    let mut draft = Draft::new(Form::Epw, Some(site), HEADER.len());
    draft.assumed.extend([Assumption::HourEnding { offset }, Assumption::WindAtStation]);

    let rows = rows(&mut draft, &lines[HEADER.len()..]);
    let typical = typical_years(&rows);
    if let Some((first, last)) = typical {
        draft.typical_year = true;
        draft.assumed.push(Assumption::TypicalYear { first, last });
    }
    for row in rows {
        let at = match &row.hour {
            Ok(hour) => hour.moment(typical.is_some(), offset).map_err(|why| (why, row.cells[..5].join(","))),
            Err(found) => Err((Why::BadTime, found.clone())),
        };
        match at {
            Ok(at) => {
                let mut sample = Sample::empty(at);
                readings(&mut draft, &row, &mut sample);
                draft.take(row.line, sample);
            }
            Err((why, found)) => {
                draft.skip_row_at(row.line, ("year,month,day,hour,minute", &found), why, HOUR_ACCEPTED);
            }
        }
    }
    Ok(draft)
}

fn site(line: &Line<'_>) -> Result<Site, ImportError> {
    let cells = split(line.text, ',');
    let (latitude_degrees, longitude_degrees, elevation, standard_offset) = place(line.number, &cells, [6, 7, 9, 8])?;
    let name = cells[1..4].iter().filter(|part| !matches!(part.as_str(), "" | "-" | "unknown")).cloned();
    Ok(Site {
        name: name.collect::<Vec<_>>().join(", "),
        latitude_degrees,
        longitude_degrees,
        elevation,
        standard_offset,
    })
}

fn rows(draft: &mut Draft, lines: &[Line<'_>]) -> Vec<Raw> {
    let mut rows: Vec<Raw> = Vec::with_capacity(lines.len());
    for line in lines.iter().filter(|line| !line.text.trim().is_empty()) {
        let cells = split(line.text, ',');
        // Every row of a file has as many fields as its first.
        let needed = rows.first().map_or(NEEDED, |first: &Raw| first.cells.len());
        if cells.len() < needed {
            let accepted = "as many fields as the rows before it, at least 22";
            draft.skip_row(line.number, shown(line.text), Why::CutShort, accepted);
        } else {
            rows.push(Raw { line: line.number, hour: hour(&cells), cells });
        }
    }
    rows
}

fn hour(cells: &[String]) -> Result<Hour, String> {
    let found = || cells[..5].join(",");
    let whole = |index: usize| cells[index].parse::<i16>().map_err(|_| found());
    let (year, month, day, hour, minute) = (whole(0)?, whole(1)?, whole(2)?, whole(3)?, whole(4)?);
    if !(1..=24).contains(&hour) || !(0..=60).contains(&minute) {
        return Err(found());
    }
    // Whole hours are written with minute 0 or 60; a part of an hour with the minute it ends at.
    let minute = if minute == 0 { 60 } else { minute };
    let narrow = |value: i16| i8::try_from(value).map_err(|_| found());
    Ok(Hour {
        year,
        month: narrow(month)?,
        day: narrow(day)?,
        minute_of_day: i64::from(hour - 1) * 60 + i64::from(minute),
    })
}

/// The earliest and latest year if months come from different years in no calendar order.
///
/// A record may run over New Year, so the year may step up when the month falls; any other change
/// from month to month means a typical year. Each month counts with its most common year, so that
/// one bad row does not decide.
fn typical_years(rows: &[Raw]) -> Option<(i16, i16)> {
    let hours: Vec<Hour> = rows.iter().filter_map(|row| row.hour.clone().ok()).collect();
    let months: Vec<(i8, i16)> = hours
        .chunk_by(|a, b| a.month == b.month)
        .map(|month| {
            let mut years: Vec<i16> = month.iter().map(|hour| hour.year).collect();
            years.sort_unstable();
            let most = years.chunk_by(|a, b| a == b).max_by_key(|same| same.len()).map_or(0, |same| same[0]);
            (month[0].month, most)
        })
        .collect();
    let calendar = months.windows(2).all(|pair| {
        let ((month, year), (next_month, next_year)) = (pair[0], pair[1]);
        next_year == year || (next_month < month && next_year > year)
    });
    let years = || months.iter().map(|(_, year)| *year);
    if calendar { None } else { years().min().zip(years().max()) }
}

fn readings(draft: &mut Draft, row: &Raw, sample: &mut Sample) {
    for (index, quantity, unit, name, missing) in FIELDS {
        if let Some(cell) = row.cells.get(index) {
            let field = Field { quantity, unit, name, cell };
            put(draft, row.line, sample, &field, |value| value >= missing);
        }
    }
    if let Some(hours) = row.cells.get(RAIN_HOURS)
        && plain_number(hours).is_some()
    {
        hourly_rain(draft, row.line, sample, ("rain hours", hours));
    }
}
