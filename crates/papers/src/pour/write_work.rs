//! Joints and curing as the template prints them.

use serde_json::{Value, json};
use trade_facts::{Measured, Record};
use units::{Duration, Temperature};

use super::sheet::{JOINTS, Writer, lacking};
use super::{JointAdvice, PourSheet};
use crate::error::PaperError;
use crate::show;

impl Writer {
    pub(super) fn joints(&mut self, sheet: &PourSheet) -> Result<Value, PaperError> {
        let words = self.words;
        let advice = JointAdvice::for_thickness(self.trade, sheet.thickness)?;
        let clause = self.trade.pour_clause("thickness-and-joints").ok_or_else(|| lacking("thickness-and-joints"))?;
        let clause = self.clause(clause);
        let spacing_grade = self.noted("joint-spacing", "P11")?;
        let depth_grade = self.noted("joint-depth", "P11")?;
        let low = show::tape(advice.spacing.low);
        let high = show::tape(down_to_inch(advice.spacing.high));
        let most = advice.spacing.held_to.map(|most| show::tape(down_to_inch(most)));
        let (times_low, times_high) = (show::short(advice.times_low), show::short(advice.times_high));
        let (key, capped_grade) = match most {
            Some(_) => ("pour.joints.spacing_capped", Some(self.noted(advice.spacing.fact.id, "P11")?)),
            None => ("pour.joints.spacing_why", None),
        };
        let most = most.unwrap_or_default();
        let times = [("low_times", times_low.as_str()), ("high_times", times_high.as_str()), ("most", most.as_str())];
        let why = words.fill(key, &times)?;
        let depth = words.fill("pour.joints.depth_value", &[("depth", &show::inches(up_to_eighth(advice.depth)))])?;
        let spacing = words.fill("pour.joints.spacing_value", &[("low", &low), ("high", &high)])?;
        let mut rows = vec![
            json!({
                "item": words.message("pour.joints.spacing")?, "asked": clause["asked"], "range": spacing,
                "why": why, "code": "P11", "grade": capped_grade.unwrap_or(spacing_grade),
            }),
            json!({
                "item": words.message("pour.joints.depth")?, "asked": "", "range": depth,
                "why": words.message("pour.joints.depth_why")?, "code": "P11", "grade": depth_grade,
            }),
            self.cut(&clause["why"])?,
        ];
        rows.extend(self.clauses(&JOINTS)?);
        let saw = self.trade.safety_rule("silica-dust").ok_or_else(|| lacking("silica-dust"))?;
        let saw = self.foot.note(self.trade, &saw.citation(), saw.code.as_str());
        Ok(json!({"thickness": show::inches(sheet.thickness), "rows": rows, "saw_grade": saw}))
    }

    fn cut(&mut self, why: &Value) -> Result<Value, PaperError> {
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
        let grade = self.noted("joint-early-entry", "P11")?;
        self.noted("joint-wet-saw", "P11")?;
        Ok(json!({
            "item": words.message("pour.joints.cut")?, "asked": value, "range": "", "why": why, "code": "P11",
            "grade": grade,
        }))
    }

    pub(super) fn steps(&mut self) -> Result<Value, PaperError> {
        let words = self.words;
        let least = |id: &str| self.trade.limit(id).ok_or_else(|| lacking(id));
        let days: Duration = least("moist-cure")?.value_as().ok_or_else(|| lacking("moist-cure"))?;
        let warm: Temperature = least("cure-temperature")?.value_as().ok_or_else(|| lacking("cure-temperature"))?;
        self.noted("moist-cure", "P18")?;
        self.noted("cure-temperature", "P18")?;
        let grade = self.said("wet-cure")?;
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
}

fn down_to_inch(length: units::Length) -> units::Length {
    units::Length::inches((length.as_inches() + 1e-9).floor())
}

fn up_to_eighth(length: units::Length) -> units::Length {
    units::Length::inches((length.as_inches() * 8.0 - 1e-9).ceil() / 8.0)
}
