//! What an hour's rate is reckoned with besides the weather: concrete, wind at the slab, alarms.

use jiff::civil::Date;
use units::{AsWritten, EvaporationRate, Temperature};

use slab_diary::EntryId;
use slab_diary::body::{AirReading, Pour, Temperature as TemperatureBody};
use slab_diary::{Figures, Slab};
use trade_facts::Trade;

/// Rates above which plastic shrinkage cracks are likely.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alarms {
    /// For the usual mix: the fact `evaporation-alarm`.
    pub usual: EvaporationRate,
    /// For a mix with silica fume: the fact `evaporation-alarm-silica-fume`.
    pub silica_fume: EvaporationRate,
}

/// The temperature of the fresh concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConcreteTemperature {
    /// What was taken.
    pub temperature: Temperature,
    /// Where it is from.
    pub from: ConcreteFrom,
}

/// Where the temperature of the concrete is from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ConcreteFrom {
    /// Read on the slab, by this entry.
    Read(EntryId),
    /// The middle of what is asked for at the truck: the fact `pour-concrete-temperature`.
    MiddleOf {
        /// The coldest.
        low: Temperature,
        /// The warmest.
        high: Temperature,
    },
}

/// The setting of all hours.
#[derive(Debug, Clone, Copy)]
pub(super) struct Setting {
    pub(super) concrete: ConcreteTemperature,
    /// Wind at the slab as a share of the wind of the station.
    pub(super) wind_factor: f64,
    pub(super) alarms: Alarms,
}

impl Setting {
    pub(super) fn of(slab: &Slab<'_>, trade: &Trade) -> Self {
        let figures = Figures::new(trade, slab);
        let (low, high): (Temperature, Temperature) = figures.range("pour-concrete-temperature");
        Self {
            concrete: ConcreteTemperature {
                temperature: low + (high - low).half(),
                from: ConcreteFrom::MiddleOf { low, high },
            },
            // A station reads the wind at 10 m; the formula wants it at 0.5 m over the slab.
            wind_factor: figures.number("wind-at-slab"),
            alarms: Alarms {
                usual: figures.value("evaporation-alarm"),
                silica_fume: figures.value("evaporation-alarm-silica-fume"),
            },
        }
    }

    /// With the concrete's temperature as it was first read after the pour on that day, if it was.
    pub(super) fn with_reading(mut self, slab: &Slab<'_>, day: Date) -> Self {
        let Some(pour) = slab.all::<Pour>().rfind(|p| p.entry.happened.date() == day) else { return self };
        let written = |w: &Option<AsWritten<Temperature>>| w.as_ref().map(AsWritten::value);
        let noted = slab.all::<TemperatureBody>().map(|s| (s.entry, written(&s.body.slab)));
        let with_air = slab.all::<AirReading>().map(|s| (s.entry, written(&s.body.slab)));
        let read = noted
            .chain(with_air)
            .filter_map(|(entry, slab)| Some((entry, slab?)))
            .filter(|(e, _)| e.happened.date() == day && e.happened.instant() >= pour.entry.happened.instant())
            .min_by_key(|(e, _)| e.order());
        if let Some((entry, temperature)) = read {
            self.concrete = ConcreteTemperature { temperature, from: ConcreteFrom::Read(entry.id) };
        }
        self
    }
}
