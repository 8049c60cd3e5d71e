//! From the slab as its diary tells it to the data of a paper.

use std::collections::BTreeMap;

use jiff::civil::Date;
use slab_answers::pour_day::month_levels;
use slab_answers::standing::open_incidents;
use slab_diary::body::{Finish, Pour};
use slab_diary::{Figures, Slab, Zone};
use trade_facts::Trade;
use units::{Fraction, Length};

use crate::error::PaperError;
use crate::notice::{Found, SiteNotice};
use crate::pour::{Panels, PourSheet, PourWeather, PourZone, WeatherBasis, hour_risks};

/// What a pour sheet asks for and the diary may not hold yet, since it is written before the pour.
#[derive(Debug, Clone, PartialEq)]
pub struct PourWishes {
    /// The day the sheet is made.
    pub prepared: Date,
    /// The day of the pour; from the diary when there is a pour.
    pub pour_day: Option<Date>,
    /// Thickness; from the diary when there is a pour.
    pub thickness: Option<Length>,
    /// Finish of each zone by its name; what is absent comes from the diary.
    pub finishes: BTreeMap<String, String>,
    /// Sample panels for each finish.
    pub panels_each: u32,
    /// Share of the concrete added for waste.
    pub waste: Fraction,
}

impl PourSheet {
    /// The pour sheet of a slab.
    ///
    /// # Errors
    /// [`PaperError::Field`] naming what is missing and how to give it.
    pub fn of(slab: &Slab<'_>, trade: &Trade, wishes: &PourWishes) -> Result<Self, PaperError> {
        let job = slab.job();
        let name = job.map_or_else(|| "-".to_owned(), |j| j.body.name.to_string());
        let pour = slab.last::<Pour>();
        let thickness = wishes
            .thickness
            .or_else(|| pour.and_then(|p| p.body.thickness.as_ref().map(units::AsWritten::value)))
            .ok_or_else(|| PaperError::field("thickness", "is missing", "a thickness such as 4 in, or a pour entry"))?;
        let zones =
            slab.zones().iter().map(|zone| pour_zone(slab, trade, zone, wishes)).collect::<Result<Vec<_>, _>>()?;
        let (low, high): (Length, Length) = Figures::new(trade, slab).range("sample-panel-edge");
        let mut panels: Vec<Panels> = Vec::new();
        for zone in &zones {
            if wishes.panels_each > 0 && !panels.iter().any(|p| p.finish == zone.finish) {
                panels.push(Panels {
                    finish: zone.finish.clone(),
                    count: wishes.panels_each,
                    // The larger edge shows more of the marbling; a panel is half as thick as the slab.
                    edge: low.max(high),
                    thickness: thickness / 2.0,
                });
            }
        }
        let pour_day = wishes.pour_day.or_else(|| pour.map(|p| p.entry.happened.date()));
        Ok(Self {
            job: job.and_then(|j| j.body.site.as_ref().map(ToString::to_string)).unwrap_or_else(|| name.clone()),
            slab: name,
            prepared: wishes.prepared,
            pour_day,
            thickness,
            zones,
            panels,
            waste: wishes.waste,
            weather: pour_day.and_then(|day| weather(slab, trade, day.month())),
        })
    }
}

fn pour_zone(slab: &Slab<'_>, trade: &Trade, zone: &Zone, wishes: &PourWishes) -> Result<PourZone, PaperError> {
    let area = zone.area.ok_or_else(|| {
        PaperError::field(
            format!("zone {}", zone.name),
            "its area is not known",
            "a plan entry, which may hold just the area",
        )
    })?;
    let wished = wishes.finishes.iter().find(|(name, _)| name.trim().eq_ignore_ascii_case(zone.name.trim()));
    let noted = || slab.all::<Finish>().rfind(|s| slab.touches(s.entry, zone)).map(|s| s.body.finish.clone());
    let all = || trade.finishes().map(|f| f.id.as_str()).collect::<Vec<_>>().join(", ");
    let finish = wished.map(|(_, finish)| finish.clone()).or_else(noted).ok_or_else(|| {
        PaperError::field(format!("finish of zone {}", zone.name), "is missing", format!("one of {}", all()))
    })?;
    if trade.finish(&finish).is_none() {
        return Err(PaperError::field(format!("finish of zone {}", zone.name), &finish, format!("one of {}", all())));
    }
    Ok(PourZone { name: zone.name.clone(), area, finish })
}

/// The evaporation of a month, hour by hour, from the last weather series of the diary.
fn weather(slab: &Slab<'_>, trade: &Trade, month: i8) -> Option<PourWeather> {
    let counted = month_levels(slab, trade, month)?;
    let series = counted.series.body;
    Some(PourWeather {
        place: series.source.clone(),
        month,
        basis: if series.series.typical_year { WeatherBasis::TypicalYear } else { WeatherBasis::Recorded },
        alarm: counted.alarm,
        relative_error: counted.relative_error,
        concrete: counted.concrete,
        hours: hour_risks(counted.levels),
    })
}

impl SiteNotice {
    /// The site notice of a slab: the usual warnings, and what was found and is not settled yet. It has no
    /// link: who may see the slab is for a person to decide.
    #[must_use]
    pub fn of(slab: &Slab<'_>, trade: &Trade, posted: Date) -> Self {
        let job = slab.job();
        let name = job.map_or_else(|| "-".to_owned(), |j| j.body.name.to_string());
        let mut found: Vec<(u8, Found)> = open_incidents(slab, trade)
            .into_iter()
            .map(|seen| {
                let severity = trade.incident(&seen.body.what).map_or(0, |r| r.severity);
                let zones: Vec<String> =
                    slab.zones().iter().filter(|z| slab.touches(seen.entry, z)).map(|z| z.name.clone()).collect();
                (severity, Found { kind: seen.body.what.clone(), place: zones.join(", ") })
            })
            .collect();
        found.sort_by_key(|(severity, _)| std::cmp::Reverse(*severity));
        Self {
            job: job.and_then(|j| j.body.site.as_ref().map(ToString::to_string)).unwrap_or_else(|| name.clone()),
            slab: name,
            posted,
            kinds: Self::usual(),
            found: found.into_iter().map(|(_, found)| found).collect(),
            link: None,
        }
    }
}
