//! Typeset papers.

use crate::out::answer;
use std::path::{Path, PathBuf};

use jiff::civil::Date;
use localization::Locale;
use papers::{PageSize, PourSheet, PourWishes, SiteNotice, pour_sheet, site_notice};
use slab_diary::{Slab, fold};
use trade_facts::Trade;
use units::{Fraction, Length, Notation};

use crate::cli::{PaperArg, PourArgs, SizeArg, Which};
use crate::failure::{Answer, Failure};
use crate::session::Session;

/// Which paper, how, and where to.
pub(crate) struct Wanted {
    pub(crate) kind: PaperArg,
    pub(crate) size: SizeArg,
    pub(crate) out: Option<PathBuf>,
    /// Address to print as a code on a site notice.
    pub(crate) link: Option<String>,
    pub(crate) pour: PourArgs,
}

pub(crate) fn run(session: &Session, which: &Which, wanted: &Wanted) -> Result<Answer, Failure> {
    if wanted.link.is_some() && wanted.kind != PaperArg::SiteNotice {
        return Err(Failure::Use("--link: only a site notice prints one; accepted: --kind site-notice".to_owned()));
    }
    let asked = session.ask(which)?;
    let slab = fold(&asked.diary, asked.knowledge);
    let day = asked.knowledge.at.to_zoned_datetime(asked.zone.clone()).date();
    let file = wanted
        .out
        .clone()
        .unwrap_or_else(|| PathBuf::from(file_name(&asked.record.name, wanted.kind, &session.locale)));
    let bytes = typeset(&session.locale, &slab, wanted, day)?;
    write(&file, &bytes)?;
    if session.json {
        answer!("{}", serde_json::json!({ "file": file.display().to_string(), "bytes": bytes.len() }));
    } else {
        let shown = file.display().to_string();
        answer!("{}", session.locale.message("paper-written", &[("file", shown.as_str().into())]));
    }
    Ok(Answer::Yes)
}

/// The PDF of a paper.
pub(crate) fn typeset(locale: &Locale, slab: &Slab<'_>, wanted: &Wanted, day: Date) -> Result<Vec<u8>, Failure> {
    let trade = Trade::built_in();
    let size = match wanted.size {
        SizeArg::Letter => PageSize::Letter,
        SizeArg::A4 => PageSize::A4,
    };
    match wanted.kind {
        PaperArg::SiteNotice => {
            let notice = SiteNotice { link: wanted.link.clone(), ..SiteNotice::of(slab, trade, day) };
            site_notice(&notice, size)
        }
        PaperArg::PourSheet => {
            let wishes = wishes(&wanted.pour, day)?;
            PourSheet::of(slab, trade, &wishes).and_then(|sheet| pour_sheet(&sheet, locale.lang, size))
        }
    }
    .map_err(Failure::data)
}

fn wishes(args: &PourArgs, prepared: Date) -> Result<PourWishes, Failure> {
    let thickness = args.thickness.as_deref().map(Length::read).transpose();
    let pour_day = args.pour_day.as_deref().map(|text| {
        text.trim()
            .parse::<Date>()
            .map_err(|_| Failure::Use(format!("--pour-day \"{text}\": accepted: a date such as 2026-06-02")))
    });
    let mut finishes = std::collections::BTreeMap::new();
    for pair in &args.finish {
        let Some((zone, finish)) = pair.split_once('=') else {
            return Err(Failure::Use(format!(
                "--finish \"{pair}\": accepted: zone=finish, such as shop=light-steel-trowel"
            )));
        };
        finishes.insert(zone.trim().to_owned(), finish.trim().to_owned());
    }
    Ok(PourWishes {
        prepared,
        pour_day: pour_day.transpose()?,
        thickness: thickness.map_err(|e| Failure::Use(format!("--thickness: {e}")))?,
        finishes,
        panels_each: args.panels,
        waste: Fraction::read(&args.waste).map_err(|e| Failure::Use(format!("--waste: {e}")))?,
    })
}

/// A file name of plain letters from the slab's name, whatever a person called it.
pub(crate) fn file_name(slab: &str, kind: PaperArg, locale: &Locale) -> String {
    let plain: String = slab
        .to_lowercase()
        .chars()
        .map(|c| if c.is_ascii_alphanumeric() { c } else { '-' })
        .collect::<String>()
        .split('-')
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join("-");
    let paper = match kind {
        PaperArg::PourSheet => format!("pour-sheet-{}", locale.lang.name()),
        PaperArg::SiteNotice => "site-notice".to_owned(),
    };
    format!("{}-{paper}.pdf", if plain.is_empty() { "slab" } else { &plain })
}

/// Writes a file whole or not at all.
pub(crate) fn write(file: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let part = file.with_extension("part");
    std::fs::write(&part, bytes).and_then(|()| std::fs::rename(&part, file)).map_err(|e| Failure::file(file, &e))
}
