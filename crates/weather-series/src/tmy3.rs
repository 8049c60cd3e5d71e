//! Typical Meteorological Year 3.
//!
//! Columns and missing code (-9900): NREL/TP-581-43156, "Users Manual for TMY3 Data Sets". Grade M:
//! from memory; checked against an independent reader in `reference/weather`. Columns are found by
//! their header, so a file with fewer or other columns is read as far as it goes.

use super::Form;
use super::assumed::Assumption;
use super::error::ImportError;
use super::finish::Draft;
use super::hours::{Field, HOUR_ACCEPTED, Hour, hourly_rain, place, put};
use super::quantity::Quantity;
use super::report::{Site, Why};
use super::series::Sample;
use super::text::{Line, shown, split, starts};
use super::unit::Unit;

pub(super) const HEADER_START: &str = "Date (MM/DD/YYYY),Time (HH:MM)";
const SITE_ACCEPTED: &str = "station,\"name\",state,time zone,latitude,longitude,elevation";

const FIELDS: [(&str, Quantity, Unit); 6] = [
    ("Dry-bulb (C)", Quantity::Air, Unit::Celsius),
    ("Dew-point (C)", Quantity::DewPoint, Unit::Celsius),
    ("RHum (%)", Quantity::Humidity, Unit::Percent),
    ("Pressure (mbar)", Quantity::Pressure, Unit::Hectopascal),
    ("Wspd (m/s)", Quantity::Wind, Unit::MeterPerSecond),
    ("Lprecip depth (mm)", Quantity::Rain, Unit::Millimeter),
];
const RAIN_HOURS: &str = "Lprecip quantity (hr)";
/// How sure the file is of its rain; 9 is "greater uncertainty than 8, or unknown" (same manual, M).
const RAIN_UNCERTAINTY: &str = "Lprecip uncert (code)";
const UNKNOWN: &str = "9";
const TIME: &str = "Date, Time";
/// Missing readings are -9900; no reading comes near it.
const MISSING: f64 = -9900.0;

pub(super) fn read(lines: &[Line<'_>]) -> Result<Draft, ImportError> {
    let site = site(lines)?;
    let header = lines.get(1).map_or("end of file", |line| line.text);
    if !starts(header, HEADER_START) {
        return Err(ImportError::Header { line: 2, found: shown(header), accepted: HEADER_START });
    }
    let names = split(header, ',');
    let place = |wanted: &str| names.iter().position(|name| name.eq_ignore_ascii_case(wanted));
    let fields: Vec<(usize, Quantity, Unit)> =
        FIELDS.iter().filter_map(|(name, quantity, unit)| place(name).map(|i| (i, *quantity, *unit))).collect();
    if !fields.iter().any(|(_, q, _)| matches!(q, Quantity::Air | Quantity::Humidity)) {
        return Err(ImportError::Columns { found: names, missing: super::Missing::Reading });
    }
    let (rain_hours, rain_uncertainty) = (place(RAIN_HOURS), place(RAIN_UNCERTAINTY));
    let mut doubtful_rain = 0;

    let offset = site.standard_offset;
    let mut draft = Draft::new(Form::Tmy3, Some(site), 2);
    draft.typical_year = true;
    draft.assumed.extend([Assumption::HourEnding { offset }, Assumption::WindAtStation]);
    let mut years: Option<(i16, i16)> = None;
    for line in lines[2..].iter().filter(|line| !line.text.trim().is_empty()) {
        let cells = split(line.text, ',');
        if cells.len() < names.len() {
            draft.skip_row(line.number, shown(line.text), Why::CutShort, "as many cells as the header");
            continue;
        }
        let moment = hour(&cells).ok_or(Why::BadTime).and_then(|h| Ok((h.year, h.moment(true, offset)?)));
        let (year, at) = match moment {
            Ok(moment) => moment,
            Err(why) => {
                let found = format!("{},{}", cells[0], cells[1]);
                draft.skip_row_at(line.number, (TIME, &found), why, HOUR_ACCEPTED);
                continue;
            }
        };
        years = Some(years.map_or((year, year), |(first, last)| (first.min(year), last.max(year))));
        let mut sample = Sample::empty(at);
        for (index, quantity, unit) in &fields {
            let field = Field { quantity: *quantity, unit: *unit, name: &names[*index], cell: &cells[*index] };
            put(&mut draft, line.number, &mut sample, &field, |value| value <= MISSING);
        }
        if let Some(index) = rain_hours {
            hourly_rain(&mut draft, line.number, &mut sample, (RAIN_HOURS, &cells[index]));
        }
        let doubted = rain_uncertainty.is_some_and(|index| cells[index] == UNKNOWN);
        doubtful_rain += usize::from(doubted && sample.rain.is_some_and(|rain| rain > units::Length::ZERO));
        draft.take(line.number, sample);
    }
    if doubtful_rain > 0 {
        draft.assumed.push(Assumption::DoubtfulRain { rows: doubtful_rain });
    }
    if let Some((first, last)) = years {
        draft.assumed.push(Assumption::TypicalYear { first, last });
    }
    Ok(draft)
}

fn site(lines: &[Line<'_>]) -> Result<Site, ImportError> {
    let Some(line) = lines.first() else { return Err(ImportError::Empty) };
    let cells = split(line.text, ',');
    if cells.len() < 7 {
        return Err(ImportError::Header { line: 1, found: shown(line.text), accepted: SITE_ACCEPTED });
    }
    let (latitude_degrees, longitude_degrees, elevation, standard_offset) = place(line.number, &cells, [4, 5, 6, 3])?;
    Ok(Site {
        name: format!("{}, {}", cells[1], cells[2]),
        latitude_degrees,
        longitude_degrees,
        elevation,
        standard_offset,
    })
}

/// `02/01/1996` and `24:00`.
fn hour(cells: &[String]) -> Option<Hour> {
    let mut date = cells[0].split('/');
    let (month, day, year) = (date.next()?, date.next()?, date.next()?);
    let (hours, minutes) = cells[1].split_once(':')?;
    let (hours, minutes) = (hours.parse::<u8>().ok()?, minutes.parse::<u8>().ok()?);
    if date.next().is_some() || minutes > 59 {
        return None;
    }
    Some(Hour {
        year: year.parse().ok()?,
        month: month.parse().ok()?,
        day: day.parse().ok()?,
        minute_of_day: i64::from(hours) * 60 + i64::from(minutes),
    })
}
