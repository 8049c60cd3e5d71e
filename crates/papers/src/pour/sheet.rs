//! From the data of a pour sheet to the values its template prints.

use std::collections::BTreeMap;

use localization::{Lang, Locale};
use serde_json::{Value, json};
use trade_facts::{Grade, PourSpec, Record, Trade};

use super::PourSheet;
use crate::error::PaperError;
use crate::grades::Foot;
use crate::page::PageSize;
use crate::pictograms;
use crate::show;
use crate::typeset::{Draft, Laid, said};

const TEMPLATE: &str = include_str!("../../templates/pour_sheet.typ");
/// Type sizes tried, greatest first, in points.
const SIZES: [f64; 8] = [9.6, 9.2, 9.0, 8.8, 8.6, 8.4, 8.2, 8.0];
/// Sheets the paper may have before smaller type is tried.
const SHEETS: usize = 2;

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
pub(super) const JOINTS: [&str; 1] = ["flatness"];
const PLACING: [&str; 3] = ["bleed-and-finishing", "finish-to-sample", "no-finishing-aids"];
const CURING: [&str; 2] = ["protect-the-slab", "age-before-stain"];
const WEATHER: [&str; 1] = ["pour-weather"];

/// Makes the pour sheet: two sheets as a rule, more where there are many zones.
///
/// # Errors
/// A figure out of range; a finish that the trade facts do not hold; a character the typeface lacks.
pub fn pour_sheet(sheet: &PourSheet, lang: Lang, size: PageSize) -> Result<Vec<u8>, PaperError> {
    lay_out(sheet, lang, size)?.pdf()
}

pub(super) fn lay_out(sheet: &PourSheet, lang: Lang, size: PageSize) -> Result<Laid, PaperError> {
    let locale = Locale { lang, ..Locale::default() };
    let mut writer = Writer { locale, trade: Trade::built_in(), foot: Foot::default() };
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

/// Gathers the values and notes what they rest on.
pub(super) struct Writer {
    pub(super) locale: Locale,
    pub(super) trade: &'static Trade,
    pub(super) foot: Foot,
}

impl Writer {
    fn draft(&mut self, sheet: &PourSheet, size: PageSize) -> Result<Draft, PaperError> {
        let locale = self.locale;
        let order = sheet.concrete()?;
        let day = sheet.pour_day.map_or_else(|| locale.message("paper-pour-day-open", &[]), |day| locale.date(day));
        let title = [("job", sheet.job.as_str().into()), ("slab", sheet.slab.as_str().into())];
        let mut pictures = BTreeMap::from([("no_membrane.svg".to_owned(), pictograms::FILM.to_vec())]);
        let mut data = json!({
            "lang": locale.lang.name(),
            "paper": size.typesetter_name(),
            "points": SIZES[0],
            "said": said(TEMPLATE, locale),
            "title": locale.message("paper-pour-document", &title),
            "date": [sheet.prepared.year(), i16::from(sheet.prepared.month()), i16::from(sheet.prepared.day())],
            "job": sheet.job,
            "slab": sheet.slab,
            "prepared": locale.date(sheet.prepared),
            "day": day,
            "lead_grade": self.noted("stain-needs-bare-paste", "R17")?,
            "engineer_grade": self.said("structure-by-engineer")?,
            "membrane_grades": [
                ["P19", self.said("no-membrane-cure")?],
                ["P20", self.said("no-sealer-before-stain")?],
                ["R05", self.noted("membrane-blocks-stain", "R05")?],
            ],
            "zones": self.zones(sheet)?,
            "burnished": self.burnished(sheet),
            "concrete": self.concrete(sheet, order),
            "mix": self.clauses(&MIX)?,
            "joints": self.joints(sheet)?,
            "placing": self.clauses(&PLACING)?,
            "steps": self.steps()?,
            "curing": self.clauses(&CURING)?,
            "weather": self.weather(sheet.weather.as_ref(), &mut pictures)?,
            "weather_clauses": self.clauses(&WEATHER)?,
            "panels": self.panels(sheet)?,
        });
        // Known from safety data sheets and handbooks, not read for this work.
        self.foot.own(Grade::FromMemory, &locale.message("paper-placing-heading", &[]).to_lowercase());
        self.foot.own(Grade::FromMemory, "150 lb/ft³");
        data["sources"] = self.foot.say(locale);
        Ok(Draft { template: TEMPLATE, data, pictures })
    }

    pub(super) fn noted(&mut self, fact: &str, label: &str) -> Result<&'static str, PaperError> {
        let fact = self.trade.fact(fact).ok_or_else(|| lacking(fact))?;
        Ok(self.foot.note(self.trade, &fact.citation(), label))
    }

    /// Notes a clause that the sheet says in its own sentences.
    pub(super) fn said(&mut self, clause: &str) -> Result<&'static str, PaperError> {
        let clause = self.trade.pour_clause(clause).ok_or_else(|| lacking(clause))?;
        Ok(self.foot.note(self.trade, &clause.citation(), &clause.code))
    }

    pub(super) fn clauses(&mut self, ids: &[&str]) -> Result<Vec<Value>, PaperError> {
        ids.iter().map(|id| self.trade.pour_clause(id).ok_or_else(|| lacking(id)).map(|c| self.clause(c))).collect()
    }

    pub(super) fn clause(&mut self, clause: &PourSpec) -> Value {
        let text = |name| show::signs(&self.locale.text_of(clause, name));
        json!({
            "item": text("item"),
            "asked": text("requirement"),
            "range": text("range"),
            "why": text("why"),
            "code": clause.code,
            "grade": self.foot.note(self.trade, &clause.citation(), &clause.code),
        })
    }
}

pub(super) fn lacking(id: &str) -> PaperError {
    PaperError::field("trade facts", id, "a record of the built-in files with its number and unit")
}
