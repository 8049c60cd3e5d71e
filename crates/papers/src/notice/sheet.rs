//! From the data of a site notice to the values its template prints.

use std::collections::BTreeMap;

use localization::Lang;
use serde_json::{Value, json};
use trade_facts::{Record, Trade};

use super::SiteNotice;
use crate::error::PaperError;
use crate::grades::{self, Foot};
use crate::page::PageSize;
use crate::pictograms::Pictogram;
use crate::qr_code::QrCode;
use crate::show;
use crate::texts::Words;
use crate::typeset::{Draft, Laid};

const TEMPLATE: &str = include_str!("../../templates/site_notice.typ");
/// Type size in points and picture size in millimeters tried, greatest first. 14 pt and 18 mm are the least
/// that can be read from 2 m: cap height 3.5 mm, above 1/600 of the distance (our judgment).
const SIZES: [(f64, f64); 6] = [(17.0, 24.0), (16.0, 23.0), (15.0, 22.0), (14.5, 21.0), (14.0, 20.0), (14.0, 18.0)];
/// Found things listed at most, fewer where the sheet is full; the rest are counted.
const FOUND: usize = 3;
/// The kind beside which the warning about mixing is printed.
const MIXING: &str = "acid-or-bleach";
/// The kind beside which house rule R13 is printed.
const BRACES: &str = "nailed-into-field";

/// Makes the site notice: one sheet, English and Spanish side by side.
///
/// # Errors
/// No warning, or one that the trade facts do not hold; more warnings than one sheet holds in readable
/// type; a link that is no web address; a character the typeface lacks.
pub fn site_notice(notice: &SiteNotice, size: PageSize) -> Result<Vec<u8>, PaperError> {
    lay_out(notice, size)?.pdf()
}

pub(super) fn lay_out(notice: &SiteNotice, size: PageSize) -> Result<Laid, PaperError> {
    let mut draft = draft(notice, size)?;
    for listed in (0..=notice.found.len().min(FOUND)).rev() {
        draft.data["found"] = json!(found(notice, listed)?);
        for (points, picture) in SIZES {
            draft.data["points"] = json!(points);
            draft.data["picture"] = json!(picture);
            let laid = draft.lay_out()?;
            if laid.sheets() == 1 {
                return Ok(laid);
            }
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
    let link = link(notice, &mut pictures)?;
    let (report, report_alt) = drawing(Pictogram::Report, &mut pictures)?;
    let signal = Trade::built_in().sign("slab-protection").ok_or_else(|| lacking("slab-protection"))?;
    foot.note(Trade::built_in(), &signal.citation(), &en.message("signal.notice")?.to_lowercase());
    let side = |words: Words| -> Result<Value, PaperError> {
        Ok(json!({
            "code": words.lang().name(),
            "signal": words.message("signal.notice")?,
            "warning": words.message("signal.warning")?,
            "t": words.part("notice")?,
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
            "report": {"picture": report, "alt": report_alt},
            "link": link,
            "sources": {
                "heading": en.message("sources.heading")?,
                "defer": en.message("sources.defer")?,
                "key": grades::key(en)?,
                "lines": foot.lines(en)?,
                "defer_es": es.message("sources.defer")?,
                "spanish": es.message("notice.spanish")?,
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
    let readers = Lang::ALL.map(|lang| Words::of(lang).locale());
    let mut out = Vec::new();
    for (at, kind) in notice.kinds.iter().enumerate() {
        let incident = trade.incident(kind).ok_or_else(|| unknown(format!("kinds[{at}]"), kind))?;
        foot.note(trade, &incident.citation(), &incident.code);
        let mixing = (kind == MIXING).then(|| trade.sign("chemical-store")).flatten();
        if let Some(sign) = mixing {
            foot.note(trade, &sign.citation(), Words::of(Lang::En).message("signal.warning")?.to_lowercase().as_str());
        }
        let warning = mixing.map_or(Value::Null, |sign| json!(readers.map(|reader| reader.text_of(sign, "text"))));
        let mut texts = readers.map(|reader| reader.text_of(incident, "notice"));
        if kind == BRACES {
            let rule = trade.house_rule("R13").ok_or_else(|| lacking("R13"))?;
            foot.note(trade, &rule.citation(), "R13");
            for (text, lang) in texts.iter_mut().zip(Lang::ALL) {
                *text = format!("{text} {}", Words::of(lang).message("notice.braces")?);
            }
        }
        let (picture, alt) = drawing(Pictogram::of(kind), pictures)?;
        out.push(json!({"picture": picture, "alt": alt, "texts": texts, "warning": warning}));
    }
    Ok(out)
}

/// Puts the code of the link among the pictures, and gives what is printed with it; nothing without a link.
fn link(notice: &SiteNotice, pictures: &mut BTreeMap<String, Vec<u8>>) -> Result<Value, PaperError> {
    let Some(address) = &notice.link else { return Ok(Value::Null) };
    let code = QrCode::of(address)?;
    let file = "code.svg";
    pictures.insert(file.to_owned(), code.svg());
    let say = |lang| Words::of(lang).fill("notice.code_alt", &[("address", &code.address)]);
    let alt = format!("{} / {}", say(Lang::En)?, say(Lang::Es)?);
    Ok(json!({"picture": file, "alt": alt, "address": code.address}))
}

/// Puts a drawing among the pictures, and gives its file and its words in both languages.
fn drawing(picture: Pictogram, pictures: &mut BTreeMap<String, Vec<u8>>) -> Result<(String, String), PaperError> {
    let file = format!("{}.svg", picture.name());
    pictures.insert(file.clone(), picture.svg().to_vec());
    let key = format!("picture.{}", picture.name());
    Ok((file, format!("{} / {}", Words::of(Lang::En).message(&key)?, Words::of(Lang::Es).message(&key)?)))
}

/// What was found, at most `listed` of it by name and place and the rest counted.
fn found(notice: &SiteNotice, listed: usize) -> Result<Vec<Value>, PaperError> {
    let readers = Lang::ALL.map(|lang| Words::of(lang).locale());
    let line = |key: &str, count: usize, place: &str| -> Result<Value, PaperError> {
        let count = count.to_string();
        let say = |lang| Words::of(lang).fill(key, &[("count", &count)]);
        Ok(json!({"en": say(Lang::En)?, "es": say(Lang::Es)?, "place": place.trim()}))
    };
    let mut out = Vec::new();
    for (at, found) in notice.found.iter().enumerate() {
        let incident =
            Trade::built_in().incident(&found.kind).ok_or_else(|| unknown(format!("found[{at}].kind"), &found.kind))?;
        if at < listed {
            let [en, es] = readers.map(|reader| reader.text_of(incident, "short"));
            out.push(json!({"en": en, "es": es, "place": found.place.trim()}));
        }
    }
    match (notice.found.len(), listed) {
        (0, _) => out.push(line("notice.found_none", 0, "")?),
        (all, 0) => out.push(line("notice.found_all", all, "")?),
        (all, listed) if all > listed => out.push(line("notice.found_more", all - listed, "")?),
        _ => {}
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
