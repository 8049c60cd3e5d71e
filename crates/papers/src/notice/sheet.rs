//! From the data of a site notice to the values its template prints.

use std::collections::BTreeMap;

use localization::{Arg, Lang, Locale, UnitSystem};
use serde_json::{Value, json};
use trade_facts::{Record, Trade};

use super::SiteNotice;
use crate::error::PaperError;
use crate::grades::Foot;
use crate::page::PageSize;
use crate::pictograms::Pictogram;
use crate::qr_code::QrCode;
use crate::typeset::{Draft, Laid, said};

const TEMPLATE: &str = include_str!("../../templates/site_notice.typ");
/// Type size in points and picture size in millimeters tried, greatest first. 14 pt and 18 mm are the least
/// that can be read from 2 m: cap height 3.5 mm, above 1/600 of the distance (our judgment).
const SIZES: [(f64, f64); 6] = [(17.0, 24.0), (16.0, 23.0), (15.0, 22.0), (14.5, 21.0), (14.0, 20.0), (14.0, 18.0)];
/// Found things listed at most, fewer where the sheet is full; the rest are counted.
const FOUND: usize = 3;
/// Both readers of the sheet, in the order of its sides.
pub(super) const READERS: [Locale; 2] =
    [Locale::new(Lang::En, UnitSystem::Imperial), Locale::new(Lang::Es, UnitSystem::Imperial)];
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
    let [en, _] = READERS;
    let mut foot = Foot::default();
    let mut pictures = BTreeMap::new();
    let rows = rows(notice, &mut foot, &mut pictures)?;
    let link = link(notice, &mut pictures)?;
    let (report, report_alt) = drawing(Pictogram::Report, &mut pictures);
    let signal = Trade::built_in().sign("slab-protection").ok_or_else(|| lacking("slab-protection"))?;
    foot.note(Trade::built_in(), &signal.citation(), &en.message("paper-signal-notice", &[]).to_lowercase());
    let side = |reader: Locale| {
        json!({
            "code": reader.lang.name(),
            "said": said(TEMPLATE, reader),
            "posted": reader.date(notice.posted),
        })
    };
    let title = [("job", notice.job.as_str().into()), ("slab", notice.slab.as_str().into())];
    Ok(Draft {
        template: TEMPLATE,
        data: json!({
            "paper": size.typesetter_name(),
            "title": en.message("paper-notice-document", &title),
            "date": [notice.posted.year(), i16::from(notice.posted.month()), i16::from(notice.posted.day())],
            "job": notice.job,
            "slab": notice.slab,
            "sides": READERS.map(side),
            "rows": rows,
            "report": {"picture": report, "alt": report_alt},
            "link": link,
            "sources": foot.say(en),
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
            foot.note(trade, &sign.citation(), &READERS[0].message("paper-signal-warning", &[]).to_lowercase());
        }
        let warning = mixing.map(|sign| READERS.map(|reader| reader.text_of(sign, "text")));
        let mut texts = READERS.map(|reader| reader.text_of(incident, "notice"));
        if kind == BRACES {
            let rule = trade.house_rule("R13").ok_or_else(|| lacking("R13"))?;
            foot.note(trade, &rule.citation(), "R13");
            for (text, braces) in texts.iter_mut().zip(both("paper-notice-braces", &[])) {
                *text = format!("{text} {braces}");
            }
        }
        let (picture, alt) = drawing(Pictogram::of(kind), pictures);
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
    let alt = both("paper-notice-code-alt", &[("address", code.address.as_str().into())]).join(" / ");
    Ok(json!({"picture": file, "alt": alt, "address": code.address}))
}

/// Puts a drawing among the pictures, and gives its file and its words in both languages.
fn drawing(picture: Pictogram, pictures: &mut BTreeMap<String, Vec<u8>>) -> (&'static str, String) {
    pictures.insert(picture.file().to_owned(), picture.svg().to_vec());
    (picture.file(), both(picture.key(), &[]).join(" / "))
}

/// A message for both readers.
fn both(key: &'static str, args: &[(&str, Arg<'_>)]) -> [String; 2] {
    READERS.map(|reader| reader.message(key, args))
}

/// What was found, at most `listed` of it by name and place and the rest counted.
fn found(notice: &SiteNotice, listed: usize) -> Result<Vec<Value>, PaperError> {
    let line = |texts: [String; 2], place: &str| json!({"texts": texts, "place": place.trim()});
    let counted = |key, count: usize| line(both(key, &[("count", count.to_string().into())]), "");
    let mut out = Vec::new();
    for (at, found) in notice.found.iter().enumerate() {
        let incident =
            Trade::built_in().incident(&found.kind).ok_or_else(|| unknown(format!("found[{at}].kind"), &found.kind))?;
        if at < listed {
            out.push(line(READERS.map(|reader| reader.text_of(incident, "short")), &found.place));
        }
    }
    match (notice.found.len(), listed) {
        (0, _) => out.push(line(both("paper-notice-found-none", &[]), "")),
        (all, 0) => out.push(counted("paper-notice-found-all", all)),
        (all, listed) if all > listed => out.push(counted("paper-notice-found-more", all - listed)),
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
