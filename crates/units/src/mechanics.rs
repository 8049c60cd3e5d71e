//! Speed, pressure, time and air flow.

use crate::Volume;
use crate::amounts::{FOOT, INCH, POUND};

/// Standard gravity, m/s².
const GRAVITY: f64 = 9.806_65;
/// Minutes to seconds.
const MINUTE: f64 = 60.0;

quantity! {
    /// Wind speed.
    Speed, SpeedUnit, "speed", si "m/s", negative false,
    accepted "10 mph, 4.5 m/s, 16 km/h",
    units {
        /// Meter per second.
        MeterPerSecond: meters_per_second / as_meters_per_second = 1.0, "m/s", ["mps"];
        /// Kilometer per hour.
        KilometerPerHour: kilometers_per_hour / as_kilometers_per_hour = 1.0 / 3.6, "km/h", ["kmh", "kph"];
        /// Mile per hour.
        MilePerHour: miles_per_hour / as_miles_per_hour = 5280.0 * FOOT / 3600.0, "mph", ["mi/h", "millas por hora"];
        /// Knot.
        Knot: knots / as_knots = 1852.0 / 3600.0, "kn", ["kt", "knots", "nudos"];
    }
}

quantity! {
    /// Air or vapor pressure, or the strength of concrete.
    Pressure, PressureUnit, "pressure", si "Pa", negative false,
    accepted "101.3 kPa, 1013 hPa, 29.92 inHg, 3500 psi",
    units {
        /// Pascal.
        Pascal: pascals / as_pascals = 1.0, "Pa", ["pascals"];
        /// Hectopascal, which is also a millibar.
        Hectopascal: hectopascals / as_hectopascals = 100.0, "hPa", ["mbar"];
        /// Kilopascal.
        Kilopascal: kilopascals / as_kilopascals = 1000.0, "kPa", [];
        /// Megapascal.
        Megapascal: megapascals / as_megapascals = 1e6, "MPa", [];
        /// Pound-force per square inch.
        Psi: psi / as_psi = POUND * GRAVITY / (INCH * INCH), "psi", ["lb/in2"];
        /// Inch of mercury at 0 °C (NIST SP 811: 3386.389 Pa).
        InchOfMercury: inches_of_mercury / as_inches_of_mercury = 3386.389, "inHg", ["in hg"];
    }
}

quantity! {
    /// How long something takes or took.
    Duration, DurationUnit, "duration", si "s", negative false,
    accepted "90 s, 12 min, 1 h 30 min, 28 days",
    trailing (Hour, Minute),
    units {
        /// Second.
        Second: seconds / as_seconds = 1.0, "s", ["sec", "secs", "second", "seconds", "segundo", "segundos"];
        /// Minute.
        Minute: minutes / as_minutes = MINUTE, "min", ["mins", "minute", "minutes", "minuto", "minutos"];
        /// Hour.
        Hour: hours / as_hours = 3600.0, "h", ["hr", "hrs", "hour", "hours", "hora", "horas"];
        /// Day of 24 hours.
        Day: days / as_days = 86_400.0, "d", ["day", "days", "día", "días", "dia", "dias"];
        /// Week of seven days.
        Week: weeks / as_weeks = 604_800.0, "wk", ["week", "weeks", "semana", "semanas"];
    }
}

quantity! {
    /// Volume of air moved in a time.
    AirFlow, AirFlowUnit, "air flow", si "m³/s", negative false,
    accepted "800 cfm, 0.4 m3/s, 1400 m3/h",
    units {
        /// Cubic meter per second.
        CubicMeterPerSecond: cubic_meters_per_second / as_cubic_meters_per_second = 1.0, "m³/s", ["m3/s"];
        /// Cubic meter per hour.
        CubicMeterPerHour: cubic_meters_per_hour / as_cubic_meters_per_hour = 1.0 / 3600.0, "m³/h", ["m3/h"];
        /// Cubic foot per minute.
        CubicFootPerMinute: cubic_feet_per_minute / as_cubic_feet_per_minute = FOOT * FOOT * FOOT / MINUTE, "cfm", ["ft3/min"];
    }
}

impl std::ops::Mul<Duration> for AirFlow {
    type Output = Volume;
    fn mul(self, time: Duration) -> Volume {
        Volume::cubic_meters(self.0 * time.0)
    }
}

impl std::ops::Div<Duration> for Volume {
    type Output = AirFlow;
    fn div(self, time: Duration) -> AirFlow {
        AirFlow(self.as_cubic_meters() / time.0)
    }
}

impl std::ops::Div<AirFlow> for Volume {
    type Output = Duration;
    fn div(self, flow: AirFlow) -> Duration {
        Duration(self.as_cubic_meters() / flow.0)
    }
}
