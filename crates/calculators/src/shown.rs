//! A value of a calculation and how a person reads it.

use jiff::Timestamp;
use jiff::tz::TimeZone;
use localization::Locale;
use science::color::Lab;
use science::cure::TemperatureTime;
use units::{
    AirFlow, Area, Concentration, Coverage, Density, Diffusivity, Duration, EvaporationRate, FilmThickness, Fraction,
    Length, Mass, MoistureEmission, Pressure, RelativeHumidity, Speed, Temperature, TemperatureDifference, Volume,
};

/// Printed spans of time beyond which only their number is told.
const SPANS_SHOWN: usize = 10;

/// A value with its kind, which decides units and decimals.
#[derive(Debug)]
pub(crate) enum Shown {
    Temperature(Temperature),
    Difference(TemperatureDifference),
    Humidity(RelativeHumidity),
    Length(Length),
    Thickness(Length),
    Film(FilmThickness),
    Area(Area),
    Liquid(Volume),
    Concrete(Volume),
    Space(Volume),
    Mass(Mass),
    /// A mass weighed in grams everywhere, such as a dish.
    Grams(Mass),
    Coverage(Coverage),
    Density(Density),
    Emission(MoistureEmission),
    Evaporation(EvaporationRate),
    Flow(AirFlow),
    Wind(Speed),
    /// How easily moisture leaves a face, m/s.
    FaceFilm(Speed),
    AirPressure(Pressure),
    Strength(Pressure),
    Diffusivity(Diffusivity),
    Concentration(Concentration),
    Percent(f64),
    Minutes(Duration),
    Hours(Duration),
    Days(Duration),
    DegreeHours(TemperatureTime),
    Number(f64, usize),
    Count(u32),
    Lab(Lab),
    /// A choice or finding with a name in each language.
    Code(&'static str),
    Codes(Vec<&'static str>),
    Text(String),
    /// When a limit is reached, if it is within the time looked at.
    DaysTo(Option<Duration>),
    /// The same for P10, P50 and P90.
    DaysBand([Option<Duration>; 3]),
    /// P10, P50 and P90.
    HumidityBand([RelativeHumidity; 3]),
    /// One value for each day or limit.
    By(Vec<(Key, Shown)>),
    Moment(Timestamp, TimeZone),
    Spans(Vec<(Timestamp, Timestamp)>, TimeZone),
}

/// What a value of a list belongs to.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Key {
    Day(Duration),
    Limit(RelativeHumidity),
}

impl Key {
    fn text(self, locale: Locale) -> String {
        match self {
            Self::Day(day) => locale.message("sum-on-day", &[("day", locale.number(day.as_days(), 2).into())]),
            Self::Limit(limit) => locale.humidity(limit),
        }
    }
}

impl Shown {
    /// A share of the whole, in percent.
    pub(crate) fn share(share: Fraction) -> Self {
        Self::Percent(share.as_percent())
    }

    /// One line, or several where it is a list.
    pub(crate) fn lines(&self, locale: Locale) -> Vec<String> {
        match self {
            Self::By(rows) => {
                rows.iter().map(|(key, shown)| format!("{}: {}", key.text(locale), shown.line(locale))).collect()
            }
            Self::Spans(spans, zone) => span_lines(spans, zone, locale),
            Self::Codes(codes) => codes.iter().map(|code| said(locale, code)).collect(),
            _ => vec![self.line(locale)],
        }
    }

    /// All on one line.
    pub(crate) fn line(&self, locale: Locale) -> String {
        match self {
            Self::Temperature(t) => locale.temperature(*t),
            Self::Difference(d) => locale.difference(*d),
            Self::Humidity(h) => locale.humidity(*h),
            Self::Length(l) | Self::Thickness(l) => locale.length(*l),
            Self::Film(f) => locale.film(*f),
            Self::Area(a) => locale.area(*a),
            Self::Liquid(v) => locale.volume(*v),
            Self::Concrete(v) => locale.concrete(*v),
            Self::Space(v) => locale.space(*v),
            Self::Mass(m) => locale.mass(*m),
            Self::Grams(m) => locale.message("mass-grams", &[("n", locale.number(m.as_grams(), 2).into())]),
            Self::Coverage(c) => locale.coverage(*c),
            Self::Density(d) => locale.density(*d),
            Self::Emission(e) => locale.emission(*e),
            Self::Evaporation(e) => locale.evaporation(*e),
            Self::Flow(f) => locale.air_flow(*f),
            Self::Wind(s) => locale.speed(*s),
            Self::FaceFilm(s) => format!("{:.2e} m/s", s.as_meters_per_second()),
            Self::AirPressure(p) => locale.air_pressure(*p),
            Self::Strength(p) => locale.strength(*p),
            Self::Diffusivity(d) => locale.diffusivity(*d),
            Self::Concentration(c) => locale.concentration(*c),
            Self::Percent(p) => locale.percent(*p),
            Self::Minutes(t) | Self::Hours(t) | Self::Days(t) | Self::DaysTo(Some(t)) => locale.duration(*t),
            Self::DaysTo(None) => locale.message("sum-not-within-horizon", &[]),
            Self::DegreeHours(d) => locale.degree_hours(d.as_celsius_hours(), d.as_fahrenheit_hours()),
            Self::Number(n, decimals) => locale.number(*n, *decimals),
            Self::Count(n) => locale.count(*n),
            Self::Lab(lab) => {
                let [l, a, b] = [lab.lightness(), lab.a(), lab.b()].map(|n| locale.number(n, 2));
                format!("L {l}, a {a}, b {b}")
            }
            Self::Code(code) => said(locale, code),
            Self::Text(text) => text.clone(),
            Self::DaysBand(days) => band(locale, days.map(|day| Self::DaysTo(day).line(locale))),
            Self::HumidityBand(humidities) => band(locale, humidities.map(|h| locale.humidity(h))),
            Self::Moment(at, zone) => locale.moment(*at, zone),
            Self::By(_) | Self::Spans(..) | Self::Codes(_) => self.lines(locale).join("; "),
        }
    }
}

fn said(locale: Locale, code: &str) -> String {
    locale.message_built(&format!("finding-{code}"), &[])
}

fn band(locale: Locale, [p10, p50, p90]: [String; 3]) -> String {
    locale.message("sum-band", &[("p10", p10.into()), ("p50", p50.into()), ("p90", p90.into())])
}

fn span_lines(spans: &[(Timestamp, Timestamp)], zone: &TimeZone, locale: Locale) -> Vec<String> {
    if spans.is_empty() {
        return vec![locale.message("sum-no-spans", &[])];
    }
    let mut lines: Vec<String> = spans
        .iter()
        .take(SPANS_SHOWN)
        .map(|(from, until)| {
            let (start, end) = (from.to_zoned_datetime(zone.clone()), until.to_zoned_datetime(zone.clone()));
            let end_text = if start.date() == end.date() {
                format!("{:02}:{:02}", end.hour(), end.minute())
            } else {
                locale.moment(*until, zone)
            };
            locale.range(&locale.moment(*from, zone), &end_text)
        })
        .collect();
    if spans.len() > SPANS_SHOWN {
        let more = u32::try_from(spans.len() - SPANS_SHOWN).unwrap_or(u32::MAX);
        lines.push(locale.message("sum-more-spans", &[("count", more.into())]));
    }
    lines
}
