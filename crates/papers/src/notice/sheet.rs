//! From the data of a site notice to the values its template prints.

use std::collections::BTreeMap;

use serde_json::{Value, json};
use slab::trade::{Record, Trade};
use words::Lang;

use super::SiteNotice;
use crate::error::PaperError;
use crate::grades::{self, Foot};
use crate::page::PageSize;
use crate::pictograms::Pictogram;
use crate::show;
use crate::texts::Words;
use crate::typeset::{Draft, Laid};

const TEMPLATE: &str = include_str!("../../templates/site_notice.typ");
/// Type size in points and picture size in millimetres tried, greatest first. 14 pt and 18 mm are the least
/// that can be read from 2 m: cap height 3.5 mm, above 1/600 of the distance (our judgement).
const SIZES: [(f64, f64); 6] = [(17.0, 24.0), (16.0, 23.0), (15.0, 22.0), (14.5, 21.0), (14.0, 20.0), (14.0, 18.0)];
/// Found things listed at most; the rest are counted.
const FOUND: usize = 3;
/// The kind beside which the warning about mixing is printed.
const MIXING: &str = "acid-or-bleach";

/// Makes the site notice: one sheet, English and Spanish side by side.
///
/// # Errors
/// No warning, or one that the trade facts do not hold; more warnings than one sheet holds in readable
/// type; a character the typeface lacks.
pub fn site_notice(notice: &SiteNotice, size: PageSize) -> Result<Vec<u8>, PaperError> {
    lay_out(notice, size)?.pdf()
}

pub(super) fn lay_out(notice: &SiteNotice, size: PageSize) -> Result<Laid, PaperError> {
    let mut draft = draft(notice, size)?;
    for (points, picture) in SIZES {
        draft.data["points"] = json!(points);
        draft.data["picture"] = json!(picture);
        let laid = draft.lay_out()?;
        if laid.sheets() == 1 {
            return Ok(laid);
        }
    }
    Err(PaperError::TooMuch { field: "kinds".into(), count: notice.kinds.len(), sheets: 1 })
}

fn draft(notice: &SiteNotice, size: PageSize) -> Result<Draft, PaperError> {
    if notice.kinds.is_empty() {
        return Err(PaperError::field("kinds", "none", "at least one incident kind"));
    }
    let (en, es) = (Words::of(Lang::En), Words::of(Lang::Es));
    let mut foot = Foot::default();
    let mut pictures = BTreeMap::new();
    let rows = rows(notice, &mut foot, &mut pictures)?;
    let signal = Trade::built_in().sign("slab-protection").ok_or_else(|| lacking("slab-protection"))?;
    foot.note(Trade::built_in(), &signal.citation(), &en.say("signal.notice")?.to_lowercase());
    let side = |words: Words| -> Result<Value, PaperError> {
        Ok(json!({
            "code": words.lang().name(),
            "signal": words.say("signal.notice")?,
            "warning": words.say("signal.warning")?,
            "t": words.part("notice")?,
            "found": found(notice, words)?,
            "posted": show::date(words, notice.posted)?,
        }))
    };
    Ok(Draft {
        template: TEMPLATE,
        data: json!({
            "paper": size.typesetter_name(),
            "title": en.fill("notice.document", &[("job", &notice.job), ("slab", &notice.slab)])?,
            "date": [notice.posted.year(), i16::from(notice.posted.month()), i16::from(notice.posted.day())],
            "job": notice.job,
            "slab": notice.slab,
            "sides": [side(en)?, side(es)?],
            "rows": rows,
            "sources": {
                "heading": en.say("sources.heading")?,
                "defer": en.say("sources.defer")?,
                "key": grades::key(en)?,
                "lines": foot.lines(en)?,
                "spanish": es.say("notice.spanish")?,
            },
        }),
        pictures,
    })
}

fn rows(
    notice: &SiteNotice,
    foot: &mut Foot,
    pictures: &mut BTreeMap<String, Vec<u8>>,
) -> Result<Vec<Value>, PaperError> {
    let trade = Trade::built_in();
    let mut out = Vec::new();
    for (at, kind) in notice.kinds.iter().enumerate() {
        let incident = trade.incident(kind).ok_or_else(|| unknown(format!("kinds[{at}]"), kind))?;
        foot.note(trade, &incident.citation(), &incident.code);
        let mixing = (kind == MIXING).then(|| trade.sign("chemical-store")).flatten();
        if let Some(sign) = mixing {
            foot.note(trade, &sign.citation(), Words::of(Lang::En).say("signal.warning")?.to_lowercase().as_str());
        }
        let warning = mixing.map_or(Value::Null, |sign| json!([sign.en, sign.es]));
        out.push(row(Pictogram::of(kind), [&incident.en, &incident.es], warning, pictures)?);
    }
    let report = |lang| Words::of(lang).say("notice.report");
    out.push(row(Pictogram::Report, [report(Lang::En)?, report(Lang::Es)?], Value::Null, pictures)?);
    Ok(out)
}

fn row(
    picture: Pictogram,
    texts: [&str; 2],
    warning: Value,
    pictures: &mut BTreeMap<String, Vec<u8>>,
) -> Result<Value, PaperError> {
    let file = format!("{}.svg", picture.name());
    pictures.insert(file.clone(), picture.svg().to_vec());
    let key = format!("picture.{}", picture.name());
    let alt = format!("{} / {}", Words::of(Lang::En).say(&key)?, Words::of(Lang::Es).say(&key)?);
    Ok(json!({"picture": file, "alt": alt, "texts": texts, "warning": warning}))
}

fn found(notice: &SiteNotice, words: Words) -> Result<Vec<String>, PaperError> {
    let mut out = Vec::new();
    for (at, found) in notice.found.iter().take(FOUND).enumerate() {
        Trade::built_in().incident(&found.kind).ok_or_else(|| unknown(format!("found[{at}].kind"), &found.kind))?;
        let name = words.say(&format!("found.{}", found.kind))?;
        out.push(if found.place.trim().is_empty() {
            name.to_owned()
        } else {
            format!("{name}: {}", found.place.trim())
        });
    }
    if notice.found.len() > FOUND {
        let count = (notice.found.len() - FOUND).to_string();
        out.push(words.fill("notice.found_more", &[("count", &count)])?);
    }
    if out.is_empty() {
        out.push(words.say("notice.found_none")?.to_owned());
    }
    Ok(out)
}

fn unknown(field: String, kind: &str) -> PaperError {
    let known: Vec<&str> = Trade::built_in().incidents().map(Record::id).collect();
    PaperError::field(field, format!("{kind:?}"), known.join(", "))
}

fn lacking(id: &str) -> PaperError {
    PaperError::field("trade facts", id, "a record of the built-in files")
}
