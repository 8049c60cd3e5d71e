//! A value of a calculation as JSON fields: the unit is in the name, metric first.

use serde_json::{Map, Value, json};

use crate::shown::{Key, Shown};

/// A number with the end of its field's name.
struct In(&'static str, f64, i32);

/// Without the noise of binary fractions.
fn rounded(value: f64, decimals: i32) -> Value {
    let scale = 10f64.powi(decimals);
    let rounded = (value * scale).round() / scale;
    if rounded.fract() == 0.0 && rounded.abs() < 1e15 { json!(rounded as i64) } else { json!(rounded) }
}

impl Key {
    fn name(self) -> String {
        let number = match self {
            Self::Day(day) => day.as_days(),
            Self::Limit(limit) => limit.as_percent(),
        };
        ((number * 1e6).round() / 1e6).to_string()
    }
}

impl Shown {
    /// The fields of a value that goes by a name.
    pub(crate) fn fields(&self, name: &str) -> Vec<(String, Value)> {
        if let Self::By(rows) = self {
            return by(name, rows);
        }
        if let Some(numbers) = self.numbers() {
            return numbers
                .into_iter()
                .map(|In(unit, value, decimals)| (format!("{name}{unit}"), rounded(value, decimals)))
                .collect();
        }
        let value = match self {
            // Far below what decimals can hold.
            Self::Diffusivity(d) => return vec![(format!("{name}_m2_s"), json!(d.as_square_meters_per_second()))],
            Self::FaceFilm(s) => return vec![(format!("{name}_m_s"), json!(s.as_meters_per_second()))],
            Self::Code(code) => json!(code),
            Self::Codes(codes) => json!(codes),
            Self::Text(text) => json!(text),
            Self::DaysTo(days) => days.map_or(Value::Null, |d| rounded(d.as_days(), 2)),
            Self::DaysBand(days) => band(days.map(|d| d.map_or(Value::Null, |d| rounded(d.as_days(), 1)))),
            Self::HumidityBand(h) => {
                return vec![(format!("{name}_pct"), band(h.map(|h| rounded(h.as_percent(), 2))))];
            }
            Self::Lab(lab) => json!({
                "l": rounded(lab.lightness(), 4), "a": rounded(lab.a(), 4), "b": rounded(lab.b(), 4),
            }),
            Self::Moment(at, zone) => moment(*at, zone),
            Self::Spans(spans, zone) => spans
                .iter()
                .map(|(from, until)| {
                    json!({
                        "from": moment(*from, zone),
                        "until": moment(*until, zone),
                        "hours": rounded(until.duration_since(*from).as_secs_f64() / 3600.0, 2),
                    })
                })
                .collect(),
            _ => Value::Null,
        };
        vec![(name.to_owned(), value)]
    }

    /// The numbers of a plain quantity; nothing for what is more than a number.
    fn numbers(&self) -> Option<Vec<In>> {
        Some(match self {
            Self::Temperature(t) => vec![In("_c", t.as_celsius(), 3), In("_f", t.as_fahrenheit(), 3)],
            Self::Difference(d) => {
                vec![In("_c_degrees", d.as_celsius_degrees(), 3), In("_f_degrees", d.as_fahrenheit_degrees(), 3)]
            }
            Self::Humidity(h) => vec![In("_pct", h.as_percent(), 3)],
            Self::Length(l) => vec![In("_m", l.as_meters(), 4), In("_ft", l.as_feet(), 4)],
            Self::Thickness(l) => vec![In("_mm", l.as_millimeters(), 3), In("_in", l.as_inches(), 4)],
            Self::Film(f) => vec![In("_um", f.as_micrometers(), 3), In("_mil", f.as_mils(), 5)],
            Self::Area(a) => vec![In("_m2", a.as_square_meters(), 4), In("_ft2", a.as_square_feet(), 4)],
            Self::Liquid(v) => vec![In("_l", v.as_liters(), 4), In("_gal", v.as_us_gallons(), 5)],
            Self::Concrete(v) => vec![In("_m3", v.as_cubic_meters(), 5), In("_yd3", v.as_cubic_yards(), 5)],
            Self::Space(v) => vec![In("_m3", v.as_cubic_meters(), 5), In("_ft3", v.as_cubic_feet(), 4)],
            Self::Mass(m) => vec![In("_kg", m.as_kilograms(), 5), In("_lb", m.as_pounds(), 5)],
            Self::Grams(m) => vec![In("_g", m.as_grams(), 4)],
            Self::Coverage(c) => {
                vec![In("_m2_l", c.as_square_meters_per_liter(), 5), In("_ft2_gal", c.as_square_feet_per_gallon(), 3)]
            }
            Self::Density(d) => {
                vec![In("_g_ml", d.as_grams_per_milliliter(), 5), In("_lb_gal", d.as_pounds_per_gallon(), 4)]
            }
            Self::Emission(e) => vec![
                In("_g_m2_d", e.as_grams_per_square_meter_day(), 4),
                In("_lb_1000ft2_d", e.as_pounds_per_thousand_square_feet_day(), 4),
            ],
            Self::Evaporation(e) => vec![
                In("_kg_m2_h", e.as_kilograms_per_square_meter_hour(), 5),
                In("_lb_ft2_h", e.as_pounds_per_square_foot_hour(), 6),
            ],
            Self::Flow(f) => {
                vec![In("_m3_h", f.as_cubic_meters_per_hour(), 4), In("_cfm", f.as_cubic_feet_per_minute(), 5)]
            }
            Self::Wind(s) => vec![In("_m_s", s.as_meters_per_second(), 4), In("_mph", s.as_miles_per_hour(), 4)],
            Self::AirPressure(p) => {
                vec![In("_kpa", p.as_kilopascals(), 5), In("_inhg", p.as_inches_of_mercury(), 5)]
            }
            Self::Strength(p) => vec![In("_mpa", p.as_megapascals(), 3), In("_psi", p.as_psi(), 1)],
            Self::Concentration(c) => vec![In("_ppm", c.as_parts_per_million(), 3)],
            Self::Percent(p) => vec![In("_pct", *p, 4)],
            Self::Minutes(t) => vec![In("_min", t.as_minutes(), 4)],
            Self::Hours(t) => vec![In("_h", t.as_hours(), 4), In("_d", t.as_days(), 5)],
            Self::Days(t) => vec![In("_d", t.as_days(), 3)],
            Self::DegreeHours(d) => {
                vec![In("_c_h", d.as_celsius_hours(), 3), In("_f_h", d.as_fahrenheit_hours(), 3)]
            }
            // More digits than printed, so that nothing is lost to a program.
            Self::Number(n, decimals) => vec![In("", *n, i32::try_from(*decimals).unwrap_or(0) + 3)],
            Self::Count(n) => vec![In("", f64::from(*n), 0)],
            _ => return None,
        })
    }
}

fn moment(at: jiff::Timestamp, zone: &jiff::tz::TimeZone) -> Value {
    let local = at.to_zoned_datetime(zone.clone());
    json!(at.display_with_offset(local.offset()).to_string())
}

fn band([p10, p50, p90]: [Value; 3]) -> Value {
    json!({ "p10": p10, "p50": p50, "p90": p90 })
}

/// One object for each field that the values have, keyed by day or limit.
fn by(name: &str, rows: &[(Key, Shown)]) -> Vec<(String, Value)> {
    let mut objects: Vec<(String, Map<String, Value>)> = Vec::new();
    for (key, shown) in rows {
        for (field, value) in shown.fields(name) {
            match objects.iter_mut().find(|(known, _)| *known == field) {
                Some((_, object)) => {
                    object.insert(key.name(), value);
                }
                None => objects.push((field, Map::from_iter([(key.name(), value)]))),
            }
        }
    }
    objects.into_iter().map(|(field, object)| (field, Value::Object(object))).collect()
}
