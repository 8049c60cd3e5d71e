//! What a person wishes of a pour sheet: the inputs, and reading what was typed into them.

use std::collections::BTreeMap;

use form_schema::FormData;
use jiff::civil::Date;
use localization::{Locale, UnitSystem};
use papers::{PaperError, PourWishes};
use slab_diary::body::{Finish, Pour};
use slab_diary::{Slab, Zone};
use trade_facts::Trade;
use units::{Fraction, Length, Notation};

use crate::control::{Choice, FieldErrors, mistake_of};

/// Sample panels of each finish and share of waste when nothing is wished; as on the command line.
const PANELS: &str = "3";
const WASTE: &str = "5 %";
/// Most panels of one finish, as the sheet takes them.
const MAX_PANELS: u32 = 99;

/// An input as the template draws it.
pub(super) struct WishField {
    pub(super) name: String,
    pub(super) label: String,
    pub(super) hint: String,
    pub(super) value: String,
    pub(super) example: &'static str,
    pub(super) number: bool,
    pub(super) choices: Vec<Choice>,
    pub(super) mistake: Option<String>,
}

/// The finish of a zone is asked for by its place in the list: a name may hold anything.
fn finish_input(index: usize) -> String {
    format!("finish-{index}")
}

fn noted_finish<'s>(slab: &'s Slab<'_>, zone: &Zone) -> Option<&'s str> {
    slab.all::<Finish>().rfind(|s| slab.touches(s.entry, zone)).map(|s| s.body.finish.as_str())
}

fn zone_name(zone: &Zone, locale: Locale) -> String {
    if zone.name.is_empty() { locale.message("order-whole-slab", &[]) } else { zone.name.clone() }
}

/// All inputs, with what was typed or what is usual.
pub(super) fn fields(slab: &Slab<'_>, typed: &FormData, mistakes: &FieldErrors, locale: Locale) -> Vec<WishField> {
    let pour = slab.last::<Pour>();
    let from_diary = |known: Option<String>| match known {
        Some(known) => locale.message("papers-from-diary", &[("value", known.into())]),
        None => String::new(),
    };
    let thick = pour.and_then(|p| p.body.thickness.as_ref()).map(|t| locale.length(t.value()));
    let field = |name: &str, label: String, hint: String, usual: &str, example, number| WishField {
        value: typed.first(name).unwrap_or(usual).to_owned(),
        mistake: mistake_of(mistakes, name),
        choices: Vec::new(),
        name: name.to_owned(),
        label,
        hint,
        example,
        number,
    };
    let day = from_diary(pour.map(|p| locale.date(p.entry.happened.date())));
    let thickness = if locale.unit_system == UnitSystem::Metric { "100 mm" } else { "4 in" };
    let mut all = vec![
        field("pour_day", locale.message("papers-pour-day", &[]), day, "", "2026-06-02", false),
        field("thickness", locale.message("papers-thickness", &[]), from_diary(thick), "", thickness, false),
    ];
    for (index, zone) in slab.zones().iter().enumerate() {
        let name = finish_input(index);
        let noted = noted_finish(slab, zone);
        let chosen = typed.first(&name).unwrap_or_default();
        let mut choices = vec![Choice {
            value: String::new(),
            label: noted.map_or_else(|| locale.message("choose", &[]), |id| from_diary(Some(locale.term(id)))),
            chosen: chosen.is_empty(),
        }];
        choices.extend(Trade::built_in().finishes().map(|finish| Choice {
            value: finish.id.clone(),
            label: locale.term(&finish.id),
            chosen: chosen == finish.id,
        }));
        let label = locale.message("papers-finish", &[("zone", zone_name(zone, locale).into())]);
        all.push(WishField { choices, ..field(&name, label, String::new(), "", "", false) });
    }
    all.push(field(
        "panels",
        locale.message("papers-panels", &[]),
        locale.message("papers-panels-hint", &[]),
        PANELS,
        PANELS,
        true,
    ));
    all.push(field("waste", locale.message("papers-waste", &[]), String::new(), WASTE, WASTE, false));
    all
}

/// The wishes as typed, or every mistake with its input.
pub(super) fn read(
    slab: &Slab<'_>,
    typed: &FormData,
    prepared: Date,
    locale: Locale,
) -> Result<PourWishes, Vec<(String, String)>> {
    let mut wrong: Vec<(String, String)> = Vec::new();
    let mut refuse = |field: &str, key: &'static str| wrong.push((field.to_owned(), locale.message(key, &[])));
    let pour = slab.last::<Pour>();
    let pour_day = typed.answer("pour_day").map(str::parse::<Date>);
    if matches!(pour_day, Some(Err(_))) {
        refuse("pour_day", "papers-day-wrong");
    }
    let thickness = typed.answer("thickness").map(Length::read);
    match &thickness {
        Some(Err(_)) => refuse("thickness", "papers-thickness-wrong"),
        None if pour.and_then(|p| p.body.thickness.as_ref()).is_none() => {
            refuse("thickness", "papers-thickness-missing");
        }
        _ => {}
    }
    let mut finishes = BTreeMap::new();
    for (index, zone) in slab.zones().iter().enumerate() {
        let name = finish_input(index);
        match typed.answer(&name) {
            Some(id) if Trade::built_in().finish(id).is_some() => {
                finishes.insert(zone.name.clone(), id.to_owned());
            }
            Some(_) => refuse(&name, "papers-finish-wrong"),
            None if noted_finish(slab, zone).is_none() => refuse(&name, "papers-finish-missing"),
            None => {}
        }
        if zone.area.is_none() {
            refuse(&name, "papers-no-area");
        }
    }
    let panels = typed.first("panels").unwrap_or(PANELS).trim();
    let panels = panels.parse::<u32>().ok().filter(|panels| *panels <= MAX_PANELS);
    if panels.is_none() {
        refuse("panels", "papers-panels-wrong");
    }
    let waste = typed.answer("waste").unwrap_or(WASTE);
    let waste = Fraction::read(waste).ok().filter(|waste| (0.0..=0.5).contains(&waste.as_share()));
    if waste.is_none() {
        refuse("waste", "papers-waste-wrong");
    }
    match (panels, waste) {
        (Some(panels_each), Some(waste)) if wrong.is_empty() => Ok(PourWishes {
            prepared,
            pour_day: pour_day.and_then(Result::ok),
            thickness: thickness.and_then(Result::ok),
            finishes,
            panels_each,
            waste,
        }),
        _ => Err(wrong),
    }
}

/// A refusal of the paper itself: what its form could not know.
pub(super) fn refused(error: &PaperError, slab: &Slab<'_>, locale: Locale) -> (String, String) {
    match error {
        PaperError::Field { field, .. } if field.starts_with("thickness") => {
            ("thickness".to_owned(), locale.message("papers-thickness-wrong", &[]))
        }
        PaperError::Field { field, .. } if field.starts_with("waste") => {
            ("waste".to_owned(), locale.message("papers-waste-wrong", &[]))
        }
        PaperError::Glyph { text, character, .. } => {
            let said = [("text", text.to_string().into()), ("sign", character.to_string().into())];
            (String::new(), locale.message("papers-glyph", &said))
        }
        _ if slab.zones().is_empty() => (String::new(), locale.message("papers-no-area", &[])),
        error => (String::new(), locale.message("papers-failed", &[("what", error.to_string().into())])),
    }
}
