//! A value of a calculation and how a person reads it.

use jiff::Timestamp;
use jiff::tz::TimeZone;
use science::color::Lab;
use science::cure::TemperatureTime;
use units::{
    AirFlow, Area, Concentration, Coverage, Density, Diffusivity, Duration, EvaporationRate, FilmThickness, Length,
    Mass, MoistureEmission, Pressure, RelativeHumidity, Speed, Temperature, TemperatureDifference, Volume,
};
use words::Voice;

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
    fn text(self, voice: Voice) -> String {
        match self {
            Self::Day(day) => voice.say("sum-on-day", &[("day", voice.number(day.as_days(), 2).into())]),
            Self::Limit(limit) => voice.humidity(limit),
        }
    }
}

impl Shown {
    /// One line, or several where it is a list.
    pub(crate) fn lines(&self, voice: Voice) -> Vec<String> {
        match self {
            Self::By(rows) => {
                rows.iter().map(|(key, shown)| format!("{}: {}", key.text(voice), shown.line(voice))).collect()
            }
            Self::Spans(spans, zone) => span_lines(spans, zone, voice),
            Self::Codes(codes) => codes.iter().map(|code| said(voice, code)).collect(),
            _ => vec![self.line(voice)],
        }
    }

    /// All on one line.
    pub(crate) fn line(&self, voice: Voice) -> String {
        match self {
            Self::Temperature(t) => voice.temperature(*t),
            Self::Difference(d) => voice.difference(*d),
            Self::Humidity(h) => voice.humidity(*h),
            Self::Length(l) | Self::Thickness(l) => voice.length(*l),
            Self::Film(f) => voice.film(*f),
            Self::Area(a) => voice.area(*a),
            Self::Liquid(v) => voice.volume(*v),
            Self::Concrete(v) => voice.concrete(*v),
            Self::Space(v) => voice.space(*v),
            Self::Mass(m) => voice.mass(*m),
            Self::Grams(m) => voice.say("mass-grams", &[("n", voice.number(m.as_grams(), 2).into())]),
            Self::Coverage(c) => voice.coverage(*c),
            Self::Density(d) => voice.density(*d),
            Self::Emission(e) => voice.emission(*e),
            Self::Evaporation(e) => voice.evaporation(*e),
            Self::Flow(f) => voice.air_flow(*f),
            Self::Wind(s) => voice.speed(*s),
            Self::FaceFilm(s) => format!("{:.2e} m/s", s.as_meters_per_second()),
            Self::AirPressure(p) => voice.air_pressure(*p),
            Self::Strength(p) => voice.strength(*p),
            Self::Diffusivity(d) => voice.diffusivity(*d),
            Self::Concentration(c) => voice.concentration(*c),
            Self::Percent(p) => voice.percent(*p),
            Self::Minutes(t) | Self::Hours(t) | Self::Days(t) | Self::DaysTo(Some(t)) => voice.duration(*t),
            Self::DaysTo(None) => voice.say("sum-not-within-horizon", &[]),
            Self::DegreeHours(d) => voice.degree_hours(d.as_celsius_hours(), d.as_fahrenheit_hours()),
            Self::Number(n, decimals) => voice.number(*n, *decimals),
            Self::Count(n) => voice.count(*n),
            Self::Lab(lab) => {
                let [l, a, b] = [lab.lightness(), lab.a(), lab.b()].map(|n| voice.number(n, 2));
                format!("L {l}, a {a}, b {b}")
            }
            Self::Code(code) => said(voice, code),
            Self::Text(text) => text.clone(),
            Self::DaysBand(days) => band(voice, days.map(|day| Self::DaysTo(day).line(voice))),
            Self::HumidityBand(humidities) => band(voice, humidities.map(|h| voice.humidity(h))),
            Self::Moment(at, zone) => voice.moment(*at, zone),
            Self::By(_) | Self::Spans(..) | Self::Codes(_) => self.lines(voice).join("; "),
        }
    }
}

fn said(voice: Voice, code: &str) -> String {
    voice.say(&format!("finding-{code}"), &[])
}

fn band(voice: Voice, [p10, p50, p90]: [String; 3]) -> String {
    voice.say("sum-band", &[("p10", p10.into()), ("p50", p50.into()), ("p90", p90.into())])
}

fn span_lines(spans: &[(Timestamp, Timestamp)], zone: &TimeZone, voice: Voice) -> Vec<String> {
    if spans.is_empty() {
        return vec![voice.say("sum-no-spans", &[])];
    }
    let mut lines: Vec<String> = spans
        .iter()
        .take(SPANS_SHOWN)
        .map(|(from, until)| {
            let (start, end) = (from.to_zoned_datetime(zone.clone()), until.to_zoned_datetime(zone.clone()));
            let end_text = if start.date() == end.date() {
                format!("{:02}:{:02}", end.hour(), end.minute())
            } else {
                voice.moment(*until, zone)
            };
            voice.range(&voice.moment(*from, zone), &end_text)
        })
        .collect();
    if spans.len() > SPANS_SHOWN {
        let more = u32::try_from(spans.len() - SPANS_SHOWN).unwrap_or(u32::MAX);
        lines.push(voice.say("sum-more-spans", &[("count", more.into())]));
    }
    lines
}
