//! From the data of a pour sheet to the values its template prints.

use std::collections::BTreeMap;

use serde_json::{Value, json};
use slab::trade::{Grade, Marbling, Measured, PourSpec, Record, Traction, Trade};
use units::{Density, Duration, Mass, Temperature, Volume};
use words::Lang;

use super::chart::{ChartWords, hour_bars};
use super::concrete::ConcreteOrder;
use super::hours::{FIRST, LAST, stretches};
use super::{HourRisk, JointAdvice, Panels, PourSheet, PourWeather, WeatherBasis};
use crate::error::PaperError;
use crate::grades::{self, Foot};
use crate::page::PageSize;
use crate::pictograms;
use crate::show;
use crate::texts::Words;
use crate::typeset::Draft;

const TEMPLATE: &str = include_str!("../../templates/pour_sheet.typ");
/// Type sizes tried, greatest first, in points.
const SIZES: [f64; 6] = [9.6, 9.2, 9.0, 8.8, 8.6, 8.4];
/// Sheets the paper may have before smaller type is tried.
const SHEETS: usize = 2;
/// Normal-weight concrete with its steel, 150 lb/ft³: the usual round figure of US handbooks (M).
const CONCRETE_LB_FT3: f64 = 150.0;

const MIX: [&str; 10] = [
    "mix-strength-and-cement",
    "water-cement-ratio",
    "slump",
    "no-chloride",
    "fly-ash-and-slag",
    "other-admixtures",
    "one-supply",
    "no-added-air",
    "aggregates",
    "vapor-retarder",
];
const JOINTS: [&str; 1] = ["flatness"];
const PLACING: [&str; 3] = ["bleed-and-finishing", "finish-to-sample", "no-finishing-aids"];
const CURING: [&str; 2] = ["protect-the-slab", "age-before-stain"];
const WEATHER: [&str; 1] = ["pour-weather"];
const PANELS: [&str; 1] = ["sample-panels"];
/// Clauses said in sentences and figures of this sheet and not as a row.
const SAID: [&str; 5] =
    ["thickness-and-joints", "structure-by-engineer", "wet-cure", "no-membrane-cure", "no-sealer-before-stain"];

/// Every clause the sheet prints.
#[cfg(test)]
pub(super) fn printed_clauses() -> Vec<&'static str> {
    [&MIX[..], &JOINTS, &PLACING, &CURING, &WEATHER, &PANELS, &SAID].concat()
}

/// Makes the pour sheet: two sheets as a rule, more where there are many zones.
///
/// # Errors
/// A figure out of range; a finish that the trade facts do not hold; a character the typeface lacks.
pub fn pour_sheet(sheet: &PourSheet, lang: Lang, size: PageSize) -> Result<Vec<u8>, PaperError> {
    lay_out(sheet, lang, size)?.pdf()
}

pub(super) fn lay_out(sheet: &PourSheet, lang: Lang, size: PageSize) -> Result<crate::typeset::Laid, PaperError> {
    let mut writer = Writer { words: Words::of(lang), trade: Trade::built_in(), foot: Foot::default() };
    let mut draft = writer.draft(sheet, size)?;
    let mut laid = draft.lay_out()?;
    for points in SIZES.iter().skip(1) {
        if laid.sheets() <= SHEETS {
            break;
        }
        draft.data["points"] = json!(points);
        laid = draft.lay_out()?;
    }
    Ok(laid)
}

struct Writer {
    words: Words,
    trade: &'static Trade,
    foot: Foot,
}

impl Writer {
    fn draft(&mut self, sheet: &PourSheet, size: PageSize) -> Result<Draft, PaperError> {
        let words = self.words;
        let order = sheet.concrete()?;
        let day = match sheet.pour_day {
            Some(day) => show::date(words, day)?,
            None => words.say("pour.day_open")?.to_owned(),
        };
        let mut pictures = BTreeMap::from([("no_membrane.svg".to_owned(), pictograms::FILM.to_vec())]);
        let mut data = json!({
            "lang": words.lang().name(),
            "paper": size.typesetter_name(),
            "points": SIZES[0],
            "t": words.part("pour")?,
            "signal": words.part("signal")?,
            "page": words.say("page")?,
            "of": words.say("of")?,
            "title": words.fill("pour.document", &[("job", &sheet.job), ("slab", &sheet.slab)])?,
            "date": [sheet.prepared.year(), i16::from(sheet.prepared.month()), i16::from(sheet.prepared.day())],
            "job": sheet.job,
            "slab": sheet.slab,
            "prepared": show::date(words, sheet.prepared)?,
            "day": day,
            "lead_grade": self.noted("stain-needs-bare-paste", "R17")?,
            "engineer_grade": self.said(SAID[1])?,
            "membrane_grades": [
                ["P19", self.said(SAID[3])?],
                ["P20", self.said(SAID[4])?],
                ["R05", self.noted("membrane-blocks-stain", "R05")?],
            ],
            "zones": self.zones(sheet)?,
            "burnished": self.burnished(sheet)?,
            "concrete": self.concrete(sheet, order)?,
            "mix": self.clauses(&MIX)?,
            "joints": self.joints(sheet)?,
            "placing": self.clauses(&PLACING)?,
            "steps": self.steps()?,
            "curing": self.clauses(&CURING)?,
            "weather": self.weather(sheet.weather.as_ref(), &mut pictures)?,
            "weather_clauses": self.clauses(&WEATHER)?,
            "panels": self.panels(sheet)?,
            "panel_clauses": self.clauses(&PANELS)?,
        });
        // Known from safety data sheets and handbooks, not read for this work.
        self.foot.own(Grade::FromMemory, &words.say("pour.placing.heading")?.to_lowercase());
        self.foot.own(Grade::FromMemory, &words.say("pour.panels.weight")?.to_lowercase());
        data["sources"] = json!({
            "heading": words.say("sources.heading")?,
            "defer": words.say("sources.defer")?,
            "key": grades::key(words)?,
            "lines": self.foot.lines(words)?,
        });
        Ok(Draft { template: TEMPLATE, data, pictures })
    }

    fn noted(&mut self, fact: &str, label: &str) -> Result<&'static str, PaperError> {
        let fact = self.trade.fact(fact).ok_or_else(|| lacking(fact))?;
        Ok(self.foot.note(self.trade, &fact.citation(), label))
    }

    /// Notes a clause that the sheet says in its own sentences.
    fn said(&mut self, clause: &str) -> Result<&'static str, PaperError> {
        let clause = self.trade.pour_clause(clause).ok_or_else(|| lacking(clause))?;
        Ok(self.foot.note(self.trade, &clause.citation(), &clause.code))
    }

    fn clauses(&mut self, ids: &[&str]) -> Result<Vec<Value>, PaperError> {
        ids.iter().map(|id| self.trade.pour_clause(id).ok_or_else(|| lacking(id))).map(|c| self.clause(c?)).collect()
    }

    fn clause(&mut self, clause: &PourSpec) -> Result<Value, PaperError> {
        let words = self.words;
        let say = |part: &str, english: &str| {
            words.fact(&format!("clause.{}.{part}", clause.id), english).map(|text| show::signs(&text))
        };
        let maybe = |part: &str, english: &Option<String>| {
            english.as_deref().map_or(Ok(String::new()), |english| say(part, english))
        };
        Ok(json!({
            "item": say("item", &clause.item)?,
            "asked": say("requirement", &clause.requirement)?,
            "range": maybe("range", &clause.range)?,
            "why": maybe("why", &clause.why)?,
            "code": clause.code,
            "grade": self.foot.note(self.trade, &clause.citation(), &clause.code),
        }))
    }

    fn finish_name(&self, id: &str, field: &str) -> Result<String, PaperError> {
        let Some(finish) = self.trade.finish(id) else {
            let known: Vec<&str> = self.trade.finishes().map(Record::id).collect();
            return Err(PaperError::field(field, format!("{id:?}"), known.join(", ")));
        };
        self.words.fact(&format!("finish.{id}"), &finish.name)
    }

    fn zones(&mut self, sheet: &PourSheet) -> Result<Vec<Value>, PaperError> {
        let mut out = Vec::new();
        for (at, zone) in sheet.zones.iter().enumerate() {
            let name = self.finish_name(&zone.finish, &format!("zones[{at}].finish"))?;
            let words = self.words;
            let finish = self.trade.finish(&zone.finish).ok_or_else(|| lacking(&zone.finish))?;
            out.push(json!({
                "name": zone.name,
                "area": format!("{} ft²", show::number(zone.area.as_square_feet(), 0)),
                "finish": name,
                "grip": format!("{} / {}", grip(words, finish.traction_dry)?, grip(words, finish.traction_wet)?),
                "marbling": marbling(words, finish.marbling)?,
                "meaning": words.say(&format!("pour.finish.{}", zone.finish))?,
                "grade": self.foot.note(self.trade, &finish.citation(), &name.to_lowercase()),
            }));
        }
        Ok(out)
    }

    /// One caution for each zone whose finish may refuse stain.
    fn burnished(&self, sheet: &PourSheet) -> Result<Vec<String>, PaperError> {
        let refuses = |id: &str| self.trade.finish(id).is_some_and(|finish| finish.may_not_take);
        let zones = sheet.zones.iter().filter(|zone| refuses(&zone.finish));
        zones.map(|zone| self.words.fill("pour.zones.burnished", &[("zone", &zone.name)])).collect()
    }

    fn concrete(&self, sheet: &PourSheet, order: ConcreteOrder) -> Result<Value, PaperError> {
        let words = self.words;
        let area = sheet.zones.iter().map(|zone| zone.area.as_square_feet()).sum::<f64>();
        let area = format!("{} ft²", show::number(area, 0));
        let count = sheet.panels.iter().map(|set| set.count).sum::<u32>().to_string();
        let percent = show::short(sheet.waste.as_share() * 100.0);
        let with = [("area", area), ("thickness", show::inches(sheet.thickness))];
        let with: Vec<(&str, &str)> = with.iter().map(|(name, value)| (*name, value.as_str())).collect();
        let row =
            |label: String, volume: Volume| json!({"label": label, "yards": yards(volume), "metric": metric(volume)});
        Ok(json!({
            "rows": [
                row(words.fill("pour.concrete.slab", &with)?, order.slab),
                row(words.fill("pour.concrete.panels", &[("count", &count)])?, order.panels),
                row(words.fill("pour.concrete.waste", &[("percent", &percent)])?, order.waste),
            ],
            "total": row(words.say("pour.concrete.total")?.to_owned(), order.order),
        }))
    }

    fn joints(&mut self, sheet: &PourSheet) -> Result<Value, PaperError> {
        let words = self.words;
        let advice = JointAdvice::for_thickness(self.trade, sheet.thickness)?;
        let label = words.say("pour.joints.heading")?.to_lowercase();
        self.said(SAID[0])?;
        let spacing_grade = self.noted("joint-spacing", &label)?;
        let depth_grade = self.noted("joint-depth", &label)?;
        let low = show::tape(advice.spacing_low);
        let high = show::tape(down_to_inch(advice.spacing_high));
        let most = advice.held_to.map(|most| show::tape(down_to_inch(most)));
        let (times_low, times_high) = (show::short(advice.times_low), show::short(advice.times_high));
        let (key, capped_grade) = match most {
            Some(_) => ("pour.joints.spacing_capped", Some(self.noted("joint-spacing-most", &label)?)),
            None => ("pour.joints.spacing_why", None),
        };
        let most = most.unwrap_or_default();
        let times = [("low_times", times_low.as_str()), ("high_times", times_high.as_str()), ("most", most.as_str())];
        let why = words.fill(key, &times)?;
        let depth = words.fill("pour.joints.depth_value", &[("depth", &show::inches(up_to_eighth(advice.depth)))])?;
        let row = |item: &str, value: String, why: String, grade: &str| {
            Ok::<_, PaperError>(
                json!({"item": words.say(&format!("pour.joints.{item}"))?, "asked": value, "range": "", "why": why, "code": "P11", "grade": grade}),
            )
        };
        let mut rows = vec![
            row(
                "spacing",
                words.fill("pour.joints.spacing_value", &[("low", &low), ("high", &high)])?,
                why,
                capped_grade.unwrap_or(spacing_grade),
            )?,
            row("depth", depth, words.say("pour.joints.depth_why")?.to_owned(), depth_grade)?,
            self.cut()?,
        ];
        rows.extend(self.clauses(&JOINTS)?);
        let saw = self.trade.safety_rule("silica-dust").ok_or_else(|| lacking("silica-dust"))?;
        let saw = self.foot.note(self.trade, &saw.citation(), saw.code.as_str());
        Ok(json!({"thickness": show::inches(sheet.thickness), "rows": rows, "saw_grade": saw}))
    }

    fn cut(&mut self) -> Result<Value, PaperError> {
        let words = self.words;
        let hours = |id: &str| -> Result<(String, String), PaperError> {
            let range = self.trade.limit(id).and_then(Measured::range_as::<Duration>).ok_or_else(|| lacking(id))?;
            Ok((show::short(range.0.as_hours()), show::short(range.1.as_hours())))
        };
        let ((early_low, early_high), (wet_low, wet_high)) = (hours("joint-early-entry")?, hours("joint-wet-saw")?);
        let with = [
            ("early_low", early_low.as_str()),
            ("early_high", early_high.as_str()),
            ("wet_low", wet_low.as_str()),
            ("wet_high", wet_high.as_str()),
        ];
        let value = words.fill("pour.joints.cut_value", &with)?;
        let label = words.say("pour.joints.heading")?.to_lowercase();
        let grade = self.noted("joint-early-entry", &label)?;
        self.noted("joint-wet-saw", &label)?;
        Ok(
            json!({"item": words.say("pour.joints.cut")?, "asked": value, "range": "", "why": words.say("pour.joints.layout")?, "code": "P11", "grade": grade}),
        )
    }

    fn steps(&mut self) -> Result<Value, PaperError> {
        let words = self.words;
        let least = |id: &str| self.trade.limit(id).ok_or_else(|| lacking(id));
        let days: Duration = least("moist-cure")?.value_as().ok_or_else(|| lacking("moist-cure"))?;
        let warm: Temperature = least("cure-temperature")?.value_as().ok_or_else(|| lacking("cure-temperature"))?;
        let label = words.say("pour.curing.heading")?.to_lowercase();
        self.noted("moist-cure", &label)?;
        self.noted("cure-temperature", &label)?;
        let grade = self.said(SAID[2])?;
        let warm = format!("{} °F", show::short(warm.as_fahrenheit()));
        let line = "______________";
        let steps: Vec<String> = words
            .list("pour.curing.steps")?
            .into_iter()
            .map(|step| crate::texts::filled(step, &[("warm", &warm), ("line", line)]))
            .collect();
        let lead = words.fill("pour.curing.lead", &[("days", &show::short(days.as_days()))])?;
        Ok(json!({"lead": lead, "list": steps, "grade": grade}))
    }

    fn weather(
        &mut self,
        weather: Option<&PourWeather>,
        pictures: &mut BTreeMap<String, Vec<u8>>,
    ) -> Result<Value, PaperError> {
        let words = self.words;
        let label = words.say("pour.weather.heading")?.to_lowercase();
        let grade = self.noted("evaporation-alarm", &label)?;
        let limit = match weather {
            Some(weather) => weather.alarm.as_pounds_per_square_foot_hour(),
            None => self
                .trade
                .limit("evaporation-alarm")
                .and_then(|fact| fact.value)
                .ok_or_else(|| lacking("evaporation-alarm"))?,
        };
        if !(limit > 0.0 && limit <= 10.0) {
            return Err(PaperError::field(
                "weather.alarm",
                format!("{limit} lb/ft²/h"),
                "above 0, at most 10 lb/ft²/h",
            ));
        }
        let rule = words.fill("pour.weather.rule", &[("limit", &show::short(limit))])?;
        let Some(weather) = weather else {
            return Ok(json!({"grade": grade, "rule": rule, "none": words.say("pour.weather.no_series")?}));
        };
        let hours = printed_hours(weather);
        let error = show::short(weather.relative_error.as_share() * 100.0);
        pictures.insert("hours.svg".to_owned(), hour_bars(&hours, &self.chart_words(&hours, &error)?).into_bytes());
        Ok(json!({
            "grade": grade,
            "rule": rule,
            "chart": self.chart_text(weather, &hours)?,
            "summary": self.summary(&hours)?,
            "estimate": self.estimate(weather, &error)?,
        }))
    }

    fn chart_words(&self, hours: &[HourRisk], error: &str) -> Result<ChartWords, PaperError> {
        let words = self.words;
        let edges = hours.iter().map(|hour| hour.hour).chain([LAST + 1]);
        let labels: Result<Vec<String>, PaperError> = edges
            .map(|at| if (at - FIRST).is_multiple_of(2) { show::hour(words, at) } else { Ok(String::new()) })
            .collect();
        Ok(ChartWords {
            axis: words.say("pour.weather.axis")?.to_owned(),
            above: words.say("pour.weather.above")?.to_owned(),
            possible: words.fill("pour.weather.possible", &[("error", error)])?,
            hours: labels?,
        })
    }

    /// The chart in words, for those who cannot see it.
    fn chart_text(&self, weather: &PourWeather, hours: &[HourRisk]) -> Result<String, PaperError> {
        let words = self.words;
        let percent = |share: f64| show::number(share * 100.0, 0);
        let each: Result<Vec<String>, PaperError> = hours
            .iter()
            .map(|hour| {
                let name = show::hour(words, hour.hour)?;
                let (Some(above), Some(reach)) = (hour.above_share(), hour.reach_share()) else {
                    return words.fill("pour.weather.chart_unknown", &[("hour", &name)]);
                };
                let with = [("hour", name), ("above", percent(above)), ("reach", percent(reach))];
                let with: Vec<(&str, &str)> = with.iter().map(|(name, value)| (*name, value.as_str())).collect();
                words.fill("pour.weather.chart_hour", &with)
            })
            .collect();
        let month = show::month(words, weather.month)?;
        words.fill("pour.weather.chart", &[("month", month), ("hours", &format!("{}.", each?.join("; ")))])
    }

    fn summary(&self, hours: &[HourRisk]) -> Result<Vec<String>, PaperError> {
        let words = self.words;
        let say = |found: Vec<(u8, u8)>, key: &str, none: Option<&str>| -> Result<Option<String>, PaperError> {
            if found.is_empty() {
                return none.map(|none| words.say(none).map(str::to_owned)).transpose();
            }
            words.fill(key, &[("hours", &self.stretch_words(&found)?)]).map(Some)
        };
        let often = stretches(hours, |hour| hour.above_share().is_some_and(|share| share >= 0.5));
        let seldom = stretches(hours, |hour| hour.above_share().is_some_and(|share| share <= 0.1));
        let unknown = stretches(hours, |hour| hour.days == 0);
        let lines = [
            say(often, "pour.weather.often", Some("pour.weather.often_none"))?,
            say(seldom, "pour.weather.seldom", Some("pour.weather.seldom_none"))?,
            say(unknown, "pour.weather.unknown", None)?,
        ];
        Ok(lines.into_iter().flatten().collect())
    }

    fn stretch_words(&self, found: &[(u8, u8)]) -> Result<String, PaperError> {
        let words = self.words;
        let to = words.say("to")?;
        let each: Result<Vec<String>, PaperError> = found
            .iter()
            .map(|(start, end)| Ok(format!("{} {to} {}", show::hour(words, *start)?, show::hour(words, *end)?)))
            .collect();
        Ok(each?.join(", "))
    }

    fn estimate(&self, weather: &PourWeather, error: &str) -> Result<String, PaperError> {
        let words = self.words;
        let month = capital(show::month(words, weather.month)?);
        let basis = words.say(match weather.basis {
            WeatherBasis::TypicalYear => "pour.weather.basis_typical",
            WeatherBasis::Recorded => "pour.weather.basis_recorded",
        })?;
        let concrete = format!("{} °F", show::number(weather.concrete.as_fahrenheit(), 0));
        let with = [
            ("error", error),
            ("month", month.as_str()),
            ("place", weather.place.as_str()),
            ("basis", basis),
            ("concrete", concrete.as_str()),
        ];
        words.fill("pour.weather.estimate", &with)
    }

    fn panels(&mut self, sheet: &PourSheet) -> Result<Value, PaperError> {
        let mut rows = Vec::new();
        for (at, set) in sheet.panels.iter().enumerate() {
            let each = Panels { count: 1, ..set.clone() }.concrete();
            rows.push(json!({
                "finish": self.finish_name(&set.finish, &format!("panels[{at}].finish"))?,
                "count": set.count,
                "size": format!("{0} × {0}", show::inches(set.edge)),
                "thickness": show::inches(set.thickness),
                "concrete": yards(set.concrete()),
                "weight": pounds(each),
            }));
        }
        let total: Volume = sheet.panels.iter().map(Panels::concrete).sum();
        Ok(json!({
            "rows": rows,
            "count": sheet.panels.iter().map(|set| set.count).sum::<u32>(),
            "total": format!("{} ({})", yards(total), metric(total)),
        }))
    }
}

fn printed_hours(weather: &PourWeather) -> Vec<HourRisk> {
    let none = |hour| HourRisk { hour, days: 0, above: 0, possible: 0 };
    let of = |hour: u8| weather.hours.iter().find(|row| row.hour == hour).copied();
    (FIRST..=LAST).map(|hour| of(hour).unwrap_or_else(|| none(hour))).collect()
}

fn lacking(id: &str) -> PaperError {
    PaperError::field("trade facts", id, "a record of the built-in files with its number and unit")
}

fn yards(volume: Volume) -> String {
    format!("{} yd³", show::number(volume.as_cubic_yards(), 2))
}

fn metric(volume: Volume) -> String {
    format!("{} m³", show::number(volume.as_cubic_metres(), 2))
}

/// The weight of a panel, to 5 lb.
fn pounds(volume: Volume) -> String {
    let mass: Mass = Density::pounds_per_cubic_foot(CONCRETE_LB_FT3) * volume;
    format!("{} lb", show::number((mass.as_pounds() / 5.0).round().max(1.0) * 5.0, 0))
}

fn down_to_inch(length: units::Length) -> units::Length {
    units::Length::inches((length.as_inches() + 1e-9).floor())
}

fn up_to_eighth(length: units::Length) -> units::Length {
    units::Length::inches((length.as_inches() * 8.0 - 1e-9).ceil() / 8.0)
}

fn capital(word: &str) -> String {
    let mut chars = word.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}

fn grip(words: Words, traction: Traction) -> Result<&'static str, PaperError> {
    words.say(match traction {
        Traction::Poor => "traction.poor",
        Traction::Fair => "traction.fair",
        Traction::Good => "traction.good",
    })
}

fn marbling(words: Words, marbling: Marbling) -> Result<&'static str, PaperError> {
    words.say(match marbling {
        Marbling::Low => "marbling.low",
        Marbling::LowToMedium => "marbling.low-to-medium",
        Marbling::Medium => "marbling.medium",
        Marbling::High => "marbling.high",
        Marbling::Varies => "marbling.varies",
    })
}
