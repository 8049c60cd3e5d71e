//! Zones, concrete and panels as the template prints them.

use serde_json::{Value, json};
use trade_facts::{Finish, Marbling, Record, Traction};
use units::{Density, Mass, Volume};

use super::concrete::ConcreteOrder;
use super::sheet::{Writer, lacking};
use super::{Panels, PourSheet, PourZone};
use crate::error::PaperError;
use crate::show;

/// Normal-weight concrete with its steel, 150 lb/ft³: the usual round figure of US handbooks (M).
const CONCRETE_LB_FT3: f64 = 150.0;

impl Writer {
    fn finish(&self, id: &str, field: String) -> Result<&'static Finish, PaperError> {
        self.trade.finish(id).ok_or_else(|| {
            let known: Vec<&str> = self.trade.finishes().map(Record::id).collect();
            PaperError::field(field, format!("{id:?}"), known.join(", "))
        })
    }

    pub(super) fn zones(&mut self, sheet: &PourSheet) -> Result<Vec<Value>, PaperError> {
        let locale = self.locale;
        let mut out = Vec::new();
        for (at, zone) in sheet.zones.iter().enumerate() {
            let finish = self.finish(&zone.finish, format!("zones[{at}].finish"))?;
            let name = locale.text_of(finish, "name");
            let grip = [finish.traction_dry, finish.traction_wet].map(|traction| locale.message(grip(traction), &[]));
            out.push(json!({
                "name": zone.name,
                "area": format!("{} ft²", show::number(zone.area.as_square_feet(), 0)),
                "finish": name,
                "grip": grip.join(" / "),
                "marbling": locale.message(marbling(finish.marbling), &[]),
                "meaning": locale.text_of(finish, "meaning"),
                "grade": self.foot.note(self.trade, &finish.citation(), &name.to_lowercase()),
            }));
        }
        Ok(out)
    }

    /// One caution for each zone whose finish may refuse stain.
    pub(super) fn burnished(&self, sheet: &PourSheet) -> Vec<String> {
        let refuses = |id: &str| self.trade.finish(id).is_some_and(|finish| finish.may_not_take);
        let zones = sheet.zones.iter().filter(|zone| refuses(&zone.finish));
        let caution =
            |zone: &PourZone| self.locale.message("paper-zones-burnished", &[("zone", zone.name.as_str().into())]);
        zones.map(caution).collect()
    }

    pub(super) fn concrete(&self, sheet: &PourSheet, order: ConcreteOrder) -> Value {
        let locale = self.locale;
        let area = sheet.zones.iter().map(|zone| zone.area.as_square_feet()).sum::<f64>();
        let area = format!("{} ft²", show::number(area, 0));
        let count = sheet.panels.iter().map(|set| set.count).sum::<u32>();
        let percent = show::short(sheet.waste.as_share() * 100.0);
        let slab = [("area", area.into()), ("thickness", show::inches(sheet.thickness).into())];
        let row =
            |label: String, volume: Volume| json!({"label": label, "yards": yards(volume), "metric": metric(volume)});
        json!({
            "rows": [
                row(locale.message("paper-concrete-slab", &slab), order.slab),
                row(locale.message("paper-concrete-panels", &[("count", count.into())]), order.panels),
                row(locale.message("paper-concrete-waste", &[("percent", percent.into())]), order.waste),
            ],
            "total": row(locale.message("paper-concrete-total", &[]), order.order),
        })
    }

    pub(super) fn panels(&mut self, sheet: &PourSheet) -> Result<Value, PaperError> {
        let clause = self.trade.pour_clause("sample-panels").ok_or_else(|| lacking("sample-panels"))?;
        let clause = self.clause(clause);
        let usual = [("range", clause["range"].as_str().unwrap_or_default().into())];
        let mut rows = Vec::new();
        for (at, set) in sheet.panels.iter().enumerate() {
            let finish = self.finish(&set.finish, format!("panels[{at}].finish"))?;
            let each = Panels { count: 1, ..set.clone() }.concrete();
            rows.push(json!({
                "finish": self.locale.text_of(finish, "name"),
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
            "usual": self.locale.message("paper-panels-usual", &usual),
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

const fn grip(traction: Traction) -> &'static str {
    match traction {
        Traction::Poor => "paper-grip-poor",
        Traction::Fair => "paper-grip-fair",
        Traction::Good => "paper-grip-good",
    }
}

const fn marbling(marbling: Marbling) -> &'static str {
    match marbling {
        Marbling::Low => "paper-marbling-low",
        Marbling::LowToMedium => "paper-marbling-low-to-medium",
        Marbling::Medium => "paper-marbling-medium",
        Marbling::High => "paper-marbling-high",
        Marbling::Varies => "paper-marbling-varies",
    }
}
