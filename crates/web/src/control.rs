//! A form's fields as the template draws them.

use form_schema::{Field, FormData, InputKind};
use jiff::{SignedDuration, Timestamp};
use localization::Locale;
use slab_diary::Entry;
use slab_diary::Slab;
use slab_diary::body::{Body, Group, PanelMade, PhotoInput, PlaceInput};
use slab_diary::{EntryKind, EntrySchema};
use trade_facts::Trade;

/// For how long the zone of an entry is the first guess for the next: a shift. Common practice, no source; the
/// script has the same (`place.js`).
const REMEMBERED: SignedDuration = SignedDuration::from_hours(12);
/// Up to this many choices lie open as things to tap; more are folded into a list.
const OPEN_CHOICES: usize = 8;

/// One choice.
#[derive(Debug, Clone)]
pub(crate) struct Choice {
    pub(crate) value: String,
    pub(crate) label: String,
    pub(crate) chosen: bool,
}

/// One input of a field.
#[derive(Debug, Clone)]
pub(crate) struct Input {
    pub(crate) name: String,
    pub(crate) label: String,
    pub(crate) value: String,
}

/// How it is drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Look {
    Line,
    Long,
    Open,
    List,
    /// Several short inputs side by side.
    Several,
    /// Rows of stain and parts.
    Mix,
    /// The place of something in the photograph.
    Card,
}

/// A field as it is drawn.
#[derive(Debug, Clone)]
pub(crate) struct Control {
    pub(crate) name: String,
    pub(crate) label: String,
    pub(crate) hint: Option<String>,
    pub(crate) look: Look,
    pub(crate) unit: String,
    pub(crate) example: String,
    pub(crate) input_mode: &'static str,
    pub(crate) required: bool,
    pub(crate) value: String,
    pub(crate) choices: Vec<Choice>,
    pub(crate) inputs: Vec<Vec<Input>>,
    pub(crate) stopwatch: bool,
    pub(crate) mistake: Option<String>,
}

/// What a form needs to know of the slab.
pub(crate) struct Known<'a> {
    pub(crate) slab: &'a Slab<'a>,
    pub(crate) trade: &'a Trade,
    pub(crate) locale: Locale,
}

impl Control {
    /// What is marked in the picture: `card`, `panel`.
    pub(crate) fn marks(&self) -> &str {
        self.name.trim_end_matches("_box")
    }
}

/// FieldErrors by field.
pub(crate) type FieldErrors = [(String, String)];

pub(crate) fn mistake_of(mistakes: &FieldErrors, name: &str) -> Option<String> {
    mistakes.iter().find(|(field, _)| field == name).map(|(_, said)| said.clone())
}

/// All fields of a form.
pub(crate) fn controls(
    schema: &'static EntrySchema,
    typed: &FormData,
    mistakes: &FieldErrors,
    known: &Known<'_>,
) -> Vec<Control> {
    schema.fields.iter().map(|field| control(schema, field, typed, mistakes, known)).collect()
}

fn control(
    schema: &'static EntrySchema,
    field: &'static Field,
    typed: &FormData,
    mistakes: &FieldErrors,
    known: &Known<'_>,
) -> Control {
    let Known { locale, .. } = *known;
    let value = typed.first(field.name).unwrap_or_default().to_owned();
    let mut choices = choices(schema, field, known);
    for choice in &mut choices {
        choice.chosen = choice.value == value;
    }
    // A value that is offered no more, such as an incident that was corrected, is not lost.
    if !choices.is_empty() && !value.is_empty() && !choices.iter().any(|c| c.chosen) {
        choices.push(Choice { value: value.clone(), label: value.clone(), chosen: true });
    }
    if !choices.is_empty() && !field.required() {
        choices.push(Choice { value: String::new(), label: locale.message("not-said", &[]), chosen: value.is_empty() });
    }
    let names = field.inputs();
    let row = |index: usize| -> Vec<Input> {
        let input = |name: &&str| Input {
            name: (*name).to_owned(),
            label: localization::input_label(locale, schema, name),
            value: typed.get(name).get(index).cloned().unwrap_or_default(),
        };
        names.iter().map(input).collect()
    };
    let (look, inputs) = match field.input {
        InputKind::Mix => {
            let filled = names.iter().map(|name| typed.get(name).len()).max().unwrap_or(0);
            (Look::Mix, (0..filled.max(1) + 1).map(row).collect())
        }
        InputKind::PictureBox(_) => (Look::Card, vec![row(0)]),
        InputKind::Lab => (Look::Several, vec![row(0)]),
        InputKind::Text { long: true } => (Look::Long, Vec::new()),
        _ if choices.is_empty() => (Look::Line, Vec::new()),
        _ if choices.len() <= OPEN_CHOICES => (Look::Open, Vec::new()),
        _ => (Look::List, Vec::new()),
    };
    Control {
        name: field.name.to_owned(),
        label: localization::label(locale, schema, field),
        hint: localization::hint(locale, schema, field),
        look,
        unit: field.unit(locale.unit_system).to_owned(),
        example: field.example(locale.unit_system).to_owned(),
        input_mode: field.input_mode(),
        required: field.required(),
        value,
        choices,
        inputs,
        stopwatch: schema.kind == EntryKind::WaterDrop && field.name == "soaked_in",
        mistake: names.iter().chain([&field.name]).find_map(|name| mistake_of(mistakes, name)),
    }
}

fn choices(schema: &'static EntrySchema, field: &'static Field, known: &Known<'_>) -> Vec<Choice> {
    let Known { slab, trade, locale } = *known;
    let plain = |value: String, label: String| Choice { value, label, chosen: false };
    match field.input {
        InputKind::Entry(kinds) => {
            let told = |entry: &&Entry| plain(entry.id.to_string(), short(entry, slab, locale));
            {
                let kinds: Vec<EntryKind> = kinds.iter().filter_map(|kind| EntryKind::named(kind)).collect();
                slab.of_kinds(&kinds).map(|e| told(&e)).collect()
            }
        }
        InputKind::Panel => {
            let mut names: Vec<&str> = slab.all::<PanelMade>().map(|p| p.body.panel.as_str()).collect();
            names.dedup();
            names.iter().map(|name| plain((*name).to_owned(), (*name).to_owned())).collect()
        }
        _ => field
            .choices(trade)
            .into_iter()
            .map(|value| plain(value.to_owned(), localization::choice_label(locale, schema, field, value)))
            .collect(),
    }
}

/// An earlier entry in one short line: what, and which day.
pub(crate) fn short(entry: &Entry, slab: &Slab<'_>, locale: Locale) -> String {
    let what = match &entry.body {
        Body::Incident(incident) => locale.term(&incident.what),
        Body::Defect(_) => crate::entry_text::told(entry, locale)
            .into_iter()
            .next()
            .map_or_else(|| locale.kind_of(&entry.body), |(_, value)| value),
        other => locale.kind_of(other),
    };
    let day = entry.happened.instant().to_zoned_datetime(slab.time_zone()).date();
    format!("{what}, {}", locale.date(day))
}

/// The place of an entry as the template draws it.
#[derive(Debug, Clone)]
pub(crate) struct Places {
    /// The kinds of place to tap, each zone one of them.
    pub(crate) choices: Vec<Choice>,
    pub(crate) may_be_point: bool,
    pub(crate) x: String,
    pub(crate) y: String,
    pub(crate) radius: String,
    /// What is said when it is left open; nothing where it need not be said.
    pub(crate) missing: Option<String>,
    /// Whether the zone of the last entry is the first guess.
    pub(crate) recalls: bool,
    /// The choice that is only a guess, by the last entry.
    pub(crate) guess: Option<String>,
    /// Whether the plan lies open: a spot is tapped there sooner than it is told in words.
    pub(crate) plan_open: bool,
    /// The plan to tap on.
    pub(crate) plan: Option<String>,
    /// The rest of a place that was drawn elsewhere, sent along as it is.
    pub(crate) rest: Vec<(String, String)>,
    pub(crate) mistakes: Vec<String>,
}

/// Says of the zone filled into a form that it is a guess.
pub(crate) const GUESSED: &str = "zone_guessed";

/// A tap on a zone says two things at once: the kind of place, and which.
const ZONE: &str = "zone:";

/// The inputs of a place as `forms` reads them, from those that the page has.
pub(crate) fn untangled(typed: &FormData) -> FormData {
    let mut typed = typed.clone();
    if let Some(zone) = typed.first("place_kind").and_then(|kind| kind.strip_prefix(ZONE)).map(str::to_owned) {
        typed.set("place_kind", "zone");
        typed.set("zone", zone);
    }
    typed
}

/// The kind of place that was chosen, or that follows from what was typed.
fn place_kind(typed: &FormData) -> Option<&str> {
    let typed_in = |name: &str| typed.answer(name).is_some();
    typed
        .answer("place_kind")
        .or_else(|| (typed_in("x") || typed_in("y")).then_some("point"))
        .or_else(|| typed_in("zone").then_some("zone"))
}

/// Whether what it tells of covers as much as its place says: an incident or a defect, not a test.
fn spreads(schema: &EntrySchema) -> bool {
    schema.place == PlaceInput::Spot && schema.group == Group::Trouble
}

/// Whether the zone of the last entry is a fair first guess: for the next test, beside the last one. What spoils, and
/// what is of a day of its own (a pour, a finish), has to be said each time.
fn follows_on(schema: &EntrySchema) -> bool {
    !spreads(schema) && !schema.asks_when
}

/// Whether a person has to say where. With several zones every default is wrong for most of them; with one,
/// a test can only be in it, but an oil drip is not all over it. The air over a slab and a note about it are of the
/// whole slab unless somebody says more.
fn must_be_said(schema: &EntrySchema, slab: &Slab<'_>) -> bool {
    schema.place != PlaceInput::None
        && schema.group != Group::Reading
        && schema.kind != EntryKind::Note
        && (slab.zones().len() > 1 || spreads(schema) && slab.plan().is_some_and(slab_plan::Plan::is_drawn))
}

/// What a form that asked for the place and was sent without one is told; nothing when the place is said, or needs
/// no saying. Whoever sends fields without the form means the whole slab, as on the command line.
pub(crate) fn place_left_open(schema: &EntrySchema, typed: &FormData, known: &Known<'_>) -> Option<String> {
    let about = schema.fields.iter().filter(|field| matches!(field.input, InputKind::Entry(_)));
    let of_another = about.into_iter().any(|field| typed.answer(field.name).is_some());
    let asked = typed.answer("place_asked").is_some();
    if !asked || place_kind(typed).is_some() || of_another || !must_be_said(schema, known.slab) {
        return None;
    }
    places(schema, typed, &[], known)?.missing
}

/// The zone that a form begins with: where this person last wrote something down, today.
pub(crate) fn last_zone(schema: &EntrySchema, slab: &Slab<'_>, author: &str, now: Timestamp) -> Option<String> {
    if !follows_on(schema) || !must_be_said(schema, slab) {
        return None;
    }
    let recent = |entry: &&Entry| {
        let age = now.duration_since(entry.noted.instant());
        entry.author == author && entry.place.is_some() && (SignedDuration::ZERO..REMEMBERED).contains(&age)
    };
    let last = slab.entries().iter().copied().filter(recent).max_by_key(|entry| (entry.noted.instant(), entry.id))?;
    let mut zones = slab.zones().iter().filter(|zone| slab.touches(last, zone));
    zones.next().filter(|_| zones.next().is_none()).map(|zone| zone.name.clone())
}

/// The place that a form asks for; nothing when it asks for none.
pub(crate) fn places(
    schema: &EntrySchema,
    typed: &FormData,
    mistakes: &FieldErrors,
    known: &Known<'_>,
) -> Option<Places> {
    let typed = untangled(typed);
    let first = |name: &str| typed.first(name).unwrap_or_default().to_owned();
    let drawn_elsewhere = matches!(typed.first("place_kind"), Some("patch" | "zone_point"));
    if !drawn_elsewhere && (schema.place == PlaceInput::None || known.slab.zones().is_empty()) {
        return None;
    }
    let locale = known.locale;
    let kind = place_kind(&typed).unwrap_or(if must_be_said(schema, known.slab) { "" } else { "slab" }).to_owned();
    let may_be_point = schema.place.points() && known.slab.plan().is_some_and(slab_plan::Plan::is_drawn);
    let several = known.slab.zones().len() > 1;
    let plain = |name: &str| Choice {
        value: name.to_owned(),
        label: localization::place_label(locale, name),
        chosen: kind == name,
    };
    let all_over = |name: String| match spreads(schema) {
        true => locale.message("place-all-over", &[("zone", name.into())]),
        false => name,
    };
    let mut choices = Vec::new();
    // What spoils is a spot first; that it is all over a zone is the rarer case, and is said.
    if spreads(schema) && may_be_point {
        choices.push(plain("point"));
    }
    if !(several && schema.place == PlaceInput::Spot) {
        choices.push(plain("slab"));
    }
    let named = known.slab.zones().iter().filter(|zone| several || zone.name != slab_plan::WHOLE);
    choices.extend(named.map(|zone| Choice {
        value: format!("{ZONE}{}", zone.name),
        label: all_over(zone.name.clone()),
        chosen: kind == "zone" && zone.name == first("zone"),
    }));
    if !spreads(schema) && may_be_point {
        choices.push(plain("point"));
    }
    if drawn_elsewhere {
        choices.push(plain(&kind));
    }
    let corners = ["corner_x", "corner_y"];
    let mut rest: Vec<(String, String)> = corners
        .iter()
        .flat_map(|name| typed.get(name).iter().map(|value| ((*name).to_owned(), value.clone())))
        .collect();
    if kind == "zone_point" {
        rest.push(("zone".to_owned(), first("zone")));
    }
    let plan = may_be_point.then(|| crate::small_plan::small_plan(known)).flatten();
    let of_place = slab_diary::PLACE_INPUTS.iter().copied().chain(["place"]);
    let offered: Vec<&str> = choices.iter().map(|choice| choice.label.as_str()).collect();
    let missing = must_be_said(schema, known.slab)
        .then(|| locale.message("mistake-no-place", &[("accepted", offered.join(", ").into())]));
    Some(Places {
        missing,
        recalls: follows_on(schema),
        guess: typed
            .answer(GUESSED)
            .and_then(|_| choices.iter().find(|choice| choice.chosen))
            .map(|choice| choice.value.clone()),
        plan_open: spreads(schema) || matches!(kind.as_str(), "point" | "zone_point"),
        choices,
        may_be_point,
        x: first("x"),
        y: first("y"),
        radius: first("radius"),
        plan,
        rest,
        mistakes: of_place.filter_map(|name| mistake_of(mistakes, name)).collect(),
    })
}

/// Whether a form takes photographs, and whether it is about them.
pub(crate) fn photographs(schema: &EntrySchema) -> (bool, bool) {
    (schema.photographs != PhotoInput::None, schema.photographs == PhotoInput::Main)
}
