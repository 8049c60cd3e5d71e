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
        let locale = self.locale;
        let advice = JointAdvice::for_thickness(self.trade, sheet.thickness)?;
        let clause = self.trade.pour_clause("thickness-and-joints").ok_or_else(|| lacking("thickness-and-joints"))?;
        let clause = self.clause(clause);
        let spacing_grade = self.noted("joint-spacing", "P11")?;
        let depth_grade = self.noted("joint-depth", "P11")?;
        let low = show::tape(advice.spacing.low);
        let high = show::tape(down_to_inch(advice.spacing.high));
        let most = advice.spacing.held_to.map(|most| show::tape(down_to_inch(most)));
        let (key, capped_grade) = match most {
            Some(_) => ("paper-joints-spacing-capped", Some(self.noted(advice.spacing.fact.id, "P11")?)),
            None => ("paper-joints-spacing-why", None),
        };
        let times = [
            ("low_times", show::short(advice.times_low).into()),
            ("high_times", show::short(advice.times_high).into()),
            ("most", most.unwrap_or_default().into()),
        ];
        let depth = [("depth", show::inches(up_to_eighth(advice.depth)).into())];
        let mut rows = vec![
            json!({
                "item": locale.message("paper-joints-spacing", &[]), "asked": clause["asked"],
                "range": locale.message("range", &[("low", low.into()), ("high", high.into())]),
                "why": locale.message(key, &times), "code": "P11", "grade": capped_grade.unwrap_or(spacing_grade),
            }),
            json!({
                "item": locale.message("paper-joints-depth", &[]), "asked": "",
                "range": locale.message("paper-joints-depth-value", &depth),
                "why": locale.message("paper-joints-depth-why", &[]), "code": "P11", "grade": depth_grade,
            }),
            self.cut(&clause["why"])?,
        ];
        rows.extend(self.clauses(&JOINTS)?);
        let saw = self.trade.safety_rule("silica-dust").ok_or_else(|| lacking("silica-dust"))?;
        let saw = self.foot.note(self.trade, &saw.citation(), saw.code.as_str());
        Ok(json!({"thickness": show::inches(sheet.thickness), "rows": rows, "saw_grade": saw}))
    }

    fn cut(&mut self, why: &Value) -> Result<Value, PaperError> {
        let hours = |id: &str| -> Result<(String, String), PaperError> {
            let range = self.trade.limit(id).and_then(Measured::range_as::<Duration>).ok_or_else(|| lacking(id))?;
            Ok((show::short(range.0.as_hours()), show::short(range.1.as_hours())))
        };
        let ((early_low, early_high), (wet_low, wet_high)) = (hours("joint-early-entry")?, hours("joint-wet-saw")?);
        let times = [
            ("early_low", early_low.into()),
            ("early_high", early_high.into()),
            ("wet_low", wet_low.into()),
            ("wet_high", wet_high.into()),
        ];
        let grade = self.noted("joint-early-entry", "P11")?;
        self.noted("joint-wet-saw", "P11")?;
        Ok(json!({
            "item": self.locale.message("paper-joints-cut", &[]),
            "asked": self.locale.message("paper-joints-cut-value", &times), "range": "", "why": why, "code": "P11",
            "grade": grade,
        }))
    }

    pub(super) fn steps(&mut self) -> Result<Value, PaperError> {
        let locale = self.locale;
        let least = |id: &str| self.trade.limit(id).ok_or_else(|| lacking(id));
        let days: Duration = least("moist-cure")?.value_as().ok_or_else(|| lacking("moist-cure"))?;
        let warm: Temperature = least("cure-temperature")?.value_as().ok_or_else(|| lacking("cure-temperature"))?;
        self.noted("moist-cure", "P18")?;
        self.noted("cure-temperature", "P18")?;
        let grade = self.said("wet-cure")?;
        let warm = format!("{} °F", show::short(warm.as_fahrenheit()));
        Ok(json!({
            "lead": locale.message("paper-curing-lead", &[("days", show::short(days.as_days()).into())]),
            "list": [
                locale.message("paper-curing-start", &[]),
                locale.message("paper-curing-water", &[]),
                locale.message("paper-curing-wet", &[("warm", warm.into())]),
                locale.message("paper-curing-panels", &[]),
                locale.message("paper-curing-lift", &[("line", "______________".into())]),
            ],
            "grade": grade,
        }))
    }
}

fn down_to_inch(length: units::Length) -> units::Length {
    units::Length::inches((length.as_inches() + 1e-9).floor())
}

fn up_to_eighth(length: units::Length) -> units::Length {
    units::Length::inches((length.as_inches() * 8.0 - 1e-9).ceil() / 8.0)
}
