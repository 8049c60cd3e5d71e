//! Column names in English and Spanish.

use jiff::tz::Offset;

use super::quantity::Quantity;

/// What a column seems to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// Date and time of day together.
    Moment,
    /// A date, perhaps with the time of day.
    Date,
    /// A time of day, perhaps with the date.
    Clock,
    /// A reading.
    Reading(Quantity),
    /// Something else.
    Other,
}

/// Words that make a column something else than the plain reading: extremes, directions, flags,
/// other places, sums over other times.
const OTHER: &[&str] = &[
    "direction",
    "dir",
    "direccion",
    "rumbo",
    "gust",
    "gusts",
    "racha",
    "rachas",
    "rafaga",
    "chill",
    "sensacion",
    "termica",
    "index",
    "indice",
    "feels",
    "apparent",
    "max",
    "min",
    "maximum",
    "minimum",
    "maxima",
    "minima",
    "high",
    "low",
    "source",
    "uncert",
    "flag",
    "status",
    "battery",
    "bateria",
    "rate",
    "intensity",
    "cumulative",
    "accumulated",
    "acumulada",
    "daily",
    "zone",
    "zona",
    "soil",
    "ground",
    "suelo",
    "tierra",
    "water",
    "agua",
    "wet",
    "humedo",
    "globe",
];
const SLAB: &[&str] =
    &["slab", "losa", "concrete", "concreto", "hormigon", "floor", "piso", "surface", "superficie", "firme"];
const DEW: &[&str] = &["dew", "dewpoint", "rocio", "tdew"];
const HUMIDITY: &[&str] = &["rh", "humidity", "humedad", "humid", "hum", "rhum", "relhum"];
const WIND: &[&str] = &["wind", "viento", "windspeed", "wspd"];
const RAIN: &[&str] = &["rain", "lluvia", "rainfall", "precip", "precipitation", "precipitacion"];
const PRESSURE: &[&str] = &["pressure", "presion", "press", "barometer", "barometric", "barometrica", "baro"];
const AIR: &[&str] = &[
    "air",
    "aire",
    "temp",
    "temperature",
    "temperatura",
    "drybulb",
    "bulb",
    "bulbo",
    "ambient",
    "ambiente",
    "tair",
    "t",
];
const DATE: &[&str] = &["date", "fecha", "dia", "day"];
const CLOCK: &[&str] = &["time", "hora", "hour", "clock"];
const MOMENT: &[&str] = &["datetime", "timestamp", "fechahora", "moment", "momento", "at", "when", "unix", "epoch"];

fn plain(c: char) -> char {
    match c {
        'á' | 'à' | 'ä' | 'â' => 'a',
        'é' | 'è' | 'ë' | 'ê' => 'e',
        'í' | 'ì' | 'ï' | 'î' => 'i',
        'ó' | 'ò' | 'ö' | 'ô' => 'o',
        'ú' | 'ù' | 'ü' | 'û' => 'u',
        'ñ' => 'n',
        other => other,
    }
}

/// The words of a header in lower case without accents: `Temp. del aire (°F)`, `airTempF` and
/// `wind_m_s` are parted alike.
pub(super) fn tokens(header: &str) -> Vec<String> {
    let mut tokens = Vec::new();
    let mut word = String::new();
    let mut after_lower = false;
    for c in header.chars() {
        let letter = c.is_alphanumeric() && !matches!(c, 'º' | 'ª');
        if (!letter || (after_lower && c.is_uppercase())) && !word.is_empty() {
            tokens.push(std::mem::take(&mut word));
        }
        if letter {
            word.extend(c.to_lowercase().map(plain));
        } else if c == '%' {
            tokens.push("%".to_owned());
        }
        after_lower = c.is_lowercase();
    }
    if !word.is_empty() {
        tokens.push(word);
    }
    tokens
}

/// What a column seems to be, from the words of its name.
pub(super) fn role(tokens: &[String]) -> Role {
    let has = |words: &[&str]| tokens.iter().any(|token| words.contains(&token.as_str()));
    let (date, clock) = (has(DATE), has(CLOCK));
    // In Spanish HR is relative humidity; beside "hora" it is the hour's own abbreviation.
    let humidity = has(HUMIDITY) || (has(&["hr"]) && !date && !clock);
    let reading = if has(DEW) {
        Some(Quantity::DewPoint)
    } else if humidity {
        Some(Quantity::Humidity)
    } else if has(WIND) {
        Some(Quantity::Wind)
    } else if has(RAIN) {
        Some(Quantity::Rain)
    } else if has(PRESSURE) {
        Some(Quantity::Pressure)
    } else if has(SLAB) {
        Some(Quantity::Slab)
    } else if has(AIR) {
        Some(Quantity::Air)
    } else {
        None
    };
    let in_slab = has(SLAB) && matches!(reading, Some(Quantity::Humidity | Quantity::DewPoint));
    let wind_angle = reading == Some(Quantity::Wind) && has(&["deg", "degrees", "grados"]);
    match reading {
        _ if has(OTHER) || in_slab || wind_angle => Role::Other,
        Some(quantity) => Role::Reading(quantity),
        None if has(MOMENT) || (date && clock) => Role::Moment,
        None if date => Role::Date,
        None if clock => Role::Clock,
        None => Role::Other,
    }
}

/// The offset that a time column's name states: `Time (UTC)`, `Date Time, GMT-05:00`.
pub(super) fn stated_offset(header: &str) -> Option<Offset> {
    let lower = header.to_lowercase().replace('\u{2212}', "-");
    let after = ["utc", "gmt"].iter().find_map(|word| lower.split_once(word).map(|(_, after)| after))?;
    offset_of(after.trim_end_matches([')', ']', ' '])).or(Some(Offset::UTC))
}

/// An offset such as `-05:00`, `+0530` or `-5`.
pub(super) fn offset_of(text: &str) -> Option<Offset> {
    let text = text.trim();
    let sign = match text.chars().next()? {
        '+' => 1,
        '-' => -1,
        _ => return None,
    };
    let digits = &text[1..];
    let (hours, minutes) = match digits.split_once(':') {
        Some((hours, minutes)) if minutes.len() == 2 => (hours, minutes),
        Some(_) => return None,
        None if digits.len() == 4 && digits.is_ascii() => digits.split_at(2),
        None => (digits, "0"),
    };
    if !(1..=2).contains(&hours.len()) || !hours.bytes().chain(minutes.bytes()).all(|b| b.is_ascii_digit()) {
        return None;
    }
    let (hours, minutes) = (hours.parse::<i32>().ok()?, minutes.parse::<i32>().ok()?);
    if hours > 15 || minutes > 59 {
        return None;
    }
    Offset::from_seconds(sign * (hours * 3600 + minutes * 60)).ok()
}
