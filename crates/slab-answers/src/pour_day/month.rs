//! How often each hour of a month lies above the alarm, for the pour sheet.

use science::air::Level;
use units::{EvaporationRate, Fraction, Temperature};

use super::hours::hours;
use super::setting::Setting;
use slab_diary::body::AirSeries;
use slab_diary::{EntryOf, Slab};
use trade_facts::Trade;

/// The hours of one month, of all years of a series, against the usual alarm.
#[derive(Debug, Clone)]
pub struct MonthLevels<'d> {
    /// The series.
    pub series: EntryOf<'d, AirSeries>,
    /// The alarm.
    pub alarm: EvaporationRate,
    /// The temperature taken for the concrete.
    pub concrete: Temperature,
    /// Half width of the band around an estimate, as a share.
    pub relative_error: Fraction,
    /// Local hour, 0 to 23, and how its estimate stands; nothing where a reading is missing.
    pub levels: Vec<(u8, Option<Level>)>,
}

/// Counts a month (1 to 12) of the last weather series; nothing when there is none, or when no hour of
/// the month is known in it.
#[must_use]
pub fn month_levels<'d>(slab: &Slab<'d>, trade: &Trade, month: i8) -> Option<MonthLevels<'d>> {
    let series = slab.last::<AirSeries>()?;
    let setting = Setting::of(slab, trade);
    let hours = hours(&series.body.series, &slab.time_zone(), &setting, |local| local.month() == month).ok()?;
    let relative_error = hours.iter().find_map(|h| Some(h.evaporation?.estimate.relative_error))?;
    Some(MonthLevels {
        series,
        alarm: setting.alarms.usual,
        concrete: setting.concrete.temperature,
        relative_error,
        levels: hours.iter().map(|h| (u8::try_from(h.hour).unwrap_or(0), h.evaporation.map(|e| e.usual))).collect(),
    })
}
