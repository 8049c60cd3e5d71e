//! From local times to moments, through the hours that clocks skip and repeat.

use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::{AmbiguousOffset, Offset, TimeZone};

use super::assumed::{Assumption, DateOrder};
use super::report::Why;
use super::series::YEARS;
use super::times::{Day, Stamp, date_order};

/// The moments of a log in file order, and what was assumed on the way.
pub(super) struct Resolved {
    pub(super) moments: Vec<Result<Timestamp, Why>>,
    pub(super) assumed: Vec<Assumption>,
}

/// A time that still needs the zone, or not.
#[derive(Clone, Copy)]
enum Half {
    Known(Timestamp),
    Local(DateTime),
    Bad,
}

/// Finds the moment of each stamp. `stated` is the offset the header states; `lines` are the line
/// numbers, for what is said.
pub(super) fn resolve(stamps: &[Option<Stamp>], lines: &[usize], stated: Option<Offset>, zone: &TimeZone) -> Resolved {
    let mut assumed = Vec::new();
    let days = stamps.iter().filter_map(|stamp| match stamp {
        Some(Stamp::Civil { day, .. }) => Some(*day),
        _ => None,
    });
    let found = date_order(days);
    if let Some((order, because)) = found {
        assumed.push(Assumption::DateOrder { order, because });
    }
    let order = found.map_or(DateOrder::MonthFirst, |(order, _)| order);
    if stamps.iter().any(|s| matches!(s, Some(Stamp::Civil { two_digit_year: true, .. }))) {
        assumed.push(Assumption::TwoDigitYears);
    }
    let halves: Vec<Half> = stamps.iter().map(|stamp| half(*stamp, order, stated)).collect();
    if let Some(offset) = stated {
        assumed.push(Assumption::StatedOffset { offset });
    } else if halves.iter().any(|half| matches!(half, Half::Local(_))) {
        assumed.push(Assumption::LocalTimes { zone: zone_name(zone) });
    }
    let (moments, repeated) = walk(&halves, zone);
    if let Some(first) = repeated.first() {
        assumed.push(Assumption::RepeatedHour { first_line: lines[*first], rows: repeated.len() });
    }
    Resolved { moments, assumed }
}

fn zone_name(zone: &TimeZone) -> String {
    match (zone.iana_name(), zone.to_fixed_offset()) {
        (Some(name), _) => name.to_owned(),
        (None, Ok(offset)) => format!("UTC{offset}"),
        (None, Err(_)) => "the zone given".to_owned(),
    }
}

fn half(stamp: Option<Stamp>, order: DateOrder, stated: Option<Offset>) -> Half {
    let (day, clock, offset): (Day, _, _) = match stamp {
        None => return Half::Bad,
        Some(Stamp::Instant(at)) => {
            let year = Offset::UTC.to_datetime(at).year();
            return if YEARS.contains(&year) { Half::Known(at) } else { Half::Bad };
        }
        Some(Stamp::Civil { day, clock, offset, .. }) => (day, clock, offset.or(stated)),
    };
    match (Stamp::civil(day, clock, order), offset) {
        (Some(at), _) if !YEARS.contains(&at.year()) => Half::Bad,
        (Some(at), Some(offset)) => offset.to_timestamp(at).map_or(Half::Bad, Half::Known),
        (Some(at), None) => Half::Local(at),
        (None, _) => Half::Bad,
    }
}

/// Goes through the rows in the order of time, so that the second pass of the repeated hour can be
/// told from the first; a log that is written newest first is walked from its end.
fn walk(halves: &[Half], zone: &TimeZone) -> (Vec<Result<Timestamp, Why>>, Vec<usize>) {
    let locals: Vec<DateTime> =
        halves.iter().filter_map(|half| if let Half::Local(at) = half { Some(*at) } else { None }).collect();
    let falls = locals.windows(2).filter(|pair| pair[1] < pair[0]).count();
    let newest_first = falls * 2 > locals.len();
    let mut moments = vec![Err(Why::BadTime); halves.len()];
    let mut repeated = Vec::new();
    let mut before: Option<Timestamp> = None;
    for step in 0..halves.len() {
        let index = if newest_first { halves.len() - 1 - step } else { step };
        moments[index] = match halves[index] {
            Half::Bad => Err(Why::BadTime),
            Half::Known(at) => Ok(at),
            Half::Local(at) => {
                let ambiguous = zone.to_ambiguous_timestamp(at);
                match ambiguous.offset() {
                    AmbiguousOffset::Gap { .. } => Err(Why::NoSuchLocalTime),
                    AmbiguousOffset::Unambiguous { offset } => offset.to_timestamp(at).map_err(|_| Why::BadTime),
                    AmbiguousOffset::Fold { before: first, after: second } => {
                        repeated.push(index);
                        let earlier = first.to_timestamp(at);
                        let passed = earlier.as_ref().is_ok_and(|earlier| before.is_some_and(|b| b >= *earlier));
                        let chosen = if passed { second.to_timestamp(at) } else { earlier };
                        chosen.map_err(|_| Why::BadTime)
                    }
                }
            }
        };
        before = moments[index].as_ref().ok().copied().or(before);
    }
    repeated.sort_unstable();
    (moments, repeated)
}
