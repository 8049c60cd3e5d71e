//! Zones, concrete and panels as the template prints them.

use serde_json::{Value, json};
use trade_facts::{Marbling, Record, Traction};
use units::{Density, Mass, Volume};

use super::concrete::ConcreteOrder;
use super::sheet::{Writer, lacking};
use super::{Panels, PourSheet};
use crate::error::PaperError;
use crate::show;
use crate::texts::Words;

/// Normal-weight concrete with its steel, 150 lb/ft³: the usual round figure of US handbooks (M).
const CONCRETE_LB_FT3: f64 = 150.0;

impl Writer {
    fn finish_name(&self, id: &str, field: &str) -> Result<String, PaperError> {
        let Some(finish) = self.trade.finish(id) else {
            let known: Vec<&str> = self.trade.finishes().map(Record::id).collect();
            return Err(PaperError::field(field, format!("{id:?}"), known.join(", ")));
        };
        Ok(self.words.locale().text_of(finish, "name"))
    }

    pub(super) fn zones(&mut self, sheet: &PourSheet) -> Result<Vec<Value>, PaperError> {
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
                "meaning": words.locale().text_of(finish, "meaning"),
                "grade": self.foot.note(self.trade, &finish.citation(), &name.to_lowercase()),
            }));
        }
        Ok(out)
    }

    /// One caution for each zone whose finish may refuse stain.
    pub(super) fn burnished(&self, sheet: &PourSheet) -> Result<Vec<String>, PaperError> {
        let refuses = |id: &str| self.trade.finish(id).is_some_and(|finish| finish.may_not_take);
        let zones = sheet.zones.iter().filter(|zone| refuses(&zone.finish));
        zones.map(|zone| self.words.fill("pour.zones.burnished", &[("zone", &zone.name)])).collect()
    }

    pub(super) fn concrete(&self, sheet: &PourSheet, order: ConcreteOrder) -> Result<Value, PaperError> {
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
            "total": row(words.message("pour.concrete.total")?.to_owned(), order.order),
        }))
    }

    pub(super) fn panels(&mut self, sheet: &PourSheet) -> Result<Value, PaperError> {
        let clause = self.trade.pour_clause("sample-panels").ok_or_else(|| lacking("sample-panels"))?;
        let clause = self.clause(clause);
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
            "usual": self.words.fill("pour.panels.usual", &[("range", clause["range"].as_str().unwrap_or_default())])?,
            "grade": clause["grade"],
        }))
    }
}

fn yards(volume: Volume) -> String {
    format!("{} yd³", show::number(volume.as_cubic_yards(), 2))
}

fn metric(volume: Volume) -> String {
    format!("{} m³", show::number(volume.as_cubic_meters(), 2))
}

/// The weight of a panel, to 5 lb.
fn pounds(volume: Volume) -> String {
    let mass: Mass = Density::pounds_per_cubic_foot(CONCRETE_LB_FT3) * volume;
    format!("{} lb", show::number((mass.as_pounds() / 5.0).round().max(1.0) * 5.0, 0))
}

fn grip(words: Words, traction: Traction) -> Result<&'static str, PaperError> {
    words.message(match traction {
        Traction::Poor => "traction.poor",
        Traction::Fair => "traction.fair",
        Traction::Good => "traction.good",
    })
}

fn marbling(words: Words, marbling: Marbling) -> Result<&'static str, PaperError> {
    words.message(match marbling {
        Marbling::Low => "marbling.low",
        Marbling::LowToMedium => "marbling.low-to-medium",
        Marbling::Medium => "marbling.medium",
        Marbling::High => "marbling.high",
        Marbling::Varies => "marbling.varies",
    })
}
