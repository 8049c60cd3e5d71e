//! A moment on the slab: an instant with the time zone it was lived in.

use std::fmt;

use jiff::civil::{Date, DateTime};
use jiff::tz::TimeZone;
use jiff::{Timestamp, ZonedDateTime};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

/// A moment with its zone. Written `2026-03-02T07:00:00-06:00[America/Chicago]` (RFC 9557).
///
/// Two are equal when instant and zone are: 23:00 in Chicago and the same instant in UTC fall on
/// different days, and the days of a slab are counted in its own calendar.
#[derive(Debug, Clone)]
pub struct When(ZonedDateTime);

/// A text that is not a moment.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("moment \"{text}\" cannot be read; accepted: 2026-03-02T07:00-06:00, 2026-03-02 07:00, 2026-03-02")]
pub struct WhenError {
    /// What was given.
    pub text: String,
}

impl When {
    /// From an instant and a zone.
    #[must_use]
    pub fn new(instant: Timestamp, zone: &TimeZone) -> Self {
        Self(instant.to_zoned_datetime(zone.clone()))
    }

    /// Reads a moment. Without an offset the time is local in `zone`; a bare date is its noon, the
    /// hour that stays on that day whatever the neighbors' clocks say.
    ///
    /// # Errors
    /// [`WhenError`] with the text when it is none of the accepted forms.
    pub fn read(text: &str, zone: &TimeZone) -> Result<Self, WhenError> {
        let trimmed = text.trim();
        if let Ok(zoned) = trimmed.parse::<ZonedDateTime>() {
            return Ok(Self(zoned));
        }
        let fail = || WhenError { text: text.to_owned() };
        let has_offset =
            trimmed.len() > 10 && trimmed.get(10..).is_some_and(|t| t.ends_with(['Z', 'z']) || t.contains(['+', '-']));
        if has_offset {
            let instant: Timestamp = trimmed.parse().map_err(|_| fail())?;
            let civil: DateTime = trimmed.trim_end_matches(['Z', 'z']).parse().map_err(|_| fail())?;
            // Keep the offset the person wrote, as a fixed zone, unless the job's own zone agrees with it.
            let local = instant.to_zoned_datetime(zone.clone());
            if local.datetime() == civil {
                return Ok(Self(local));
            }
            let offset =
                civil.to_zoned_datetime(TimeZone::UTC).map_err(|_| fail())?.timestamp().duration_since(instant);
            let offset = jiff::tz::Offset::from_seconds(i32::try_from(offset.as_secs()).map_err(|_| fail())?)
                .map_err(|_| fail())?;
            return Ok(Self(instant.to_zoned_datetime(TimeZone::fixed(offset))));
        }
        let civil = match trimmed.parse::<Date>() {
            Ok(date) if trimmed.len() <= 10 => date.at(12, 0, 0, 0),
            _ => trimmed.parse::<DateTime>().map_err(|_| fail())?,
        };
        civil.to_zoned_datetime(zone.clone()).map(Self).map_err(|_| fail())
    }

    /// The instant.
    #[must_use]
    pub fn instant(&self) -> Timestamp {
        self.0.timestamp()
    }

    /// The calendar day where it was lived.
    #[must_use]
    pub fn date(&self) -> Date {
        self.0.date()
    }

    /// The local clock reading.
    #[must_use]
    pub fn local(&self) -> DateTime {
        self.0.datetime()
    }

    /// The zone it was lived in.
    #[must_use]
    pub fn zone(&self) -> &TimeZone {
        self.0.time_zone()
    }
}

impl PartialEq for When {
    fn eq(&self, other: &Self) -> bool {
        self.instant() == other.instant() && self.zone() == other.zone()
    }
}

impl Eq for When {}

impl PartialOrd for When {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for When {
    /// By instant, then by the written zone, so that the order agrees with equality.
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        let zone = || self.to_string().cmp(&other.to_string());
        self.instant()
            .cmp(&other.instant())
            .then_with(|| if self == other { std::cmp::Ordering::Equal } else { zone() })
    }
}

impl fmt::Display for When {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl Serialize for When {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for When {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text, &TimeZone::UTC).map_err(de::Error::custom)
    }
}
