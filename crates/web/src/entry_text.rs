//! An entry in words: what it says, field by field, in the reader's language.

use form_schema::{Field, InputKind};
use localization::Locale;
use slab_diary::body::{Body, PlaceInput};
use slab_diary::{Entry, EntrySchema};
use units::{AsWritten, Offset, QuantityKind};

/// Label and value of everything an entry says.
pub(crate) fn told(entry: &Entry, locale: Locale) -> Vec<(String, String)> {
    match &entry.body {
        Body::Plan(plan) => plan_told(plan, locale),
        Body::AirSeries(series) => {
            vec![(locale.message("told-source", &[]), series.source.clone())]
        }
        Body::Unknown(unknown) => vec![(locale.message("told-unknown", &[]), unknown.raw.get().to_owned())],
        body => body.kind().map(|kind| by_schema(kind.schema(), entry, locale)).unwrap_or_default(),
    }
}

fn by_schema(schema: &'static EntrySchema, entry: &Entry, locale: Locale) -> Vec<(String, String)> {
    let typed = entry.body.form_data();
    let one = |field: &'static Field| {
        let value = match field.input {
            InputKind::Mix => {
                let (stains, parts) = (typed.get("mix_stain"), typed.get("mix_parts"));
                let rows: Vec<String> =
                    stains.iter().zip(parts).map(|(stain, part)| format!("{stain} {part}")).collect();
                rows.join(" : ")
            }
            InputKind::Lab | InputKind::PictureBox(_) => {
                let parts: Vec<&str> = field.inputs().iter().filter_map(|name| typed.first(name)).collect();
                parts.join(", ")
            }
            InputKind::Quantity(quantity) => locale.typed_quantity(quantity.kind, typed.first(field.name)?),
            _ => {
                let value = typed.first(field.name)?;
                if field.choices(trade_facts::Trade::built_in()).contains(&value) {
                    localization::choice_label(locale, schema, field, value)
                } else {
                    value.to_owned()
                }
            }
        };
        // Another entry is named by its id: of use to a program, not to a reader.
        let of_entry = matches!(field.input, InputKind::Entry(_));
        (!value.is_empty() && !of_entry).then(|| (localization::label(locale, schema, field), value))
    };
    schema.fields.iter().filter_map(one).collect()
}

fn plan_told(spec: &slab_plan::PlanSpec, locale: Locale) -> Vec<(String, String)> {
    match slab_plan::Plan::resolve(spec) {
        Ok(plan) => {
            let mut all = vec![(locale.message("told-area", &[]), locale.area(plan.area()))];
            all.extend(plan.zones().iter().map(|zone| (zone.name().to_owned(), locale.area(zone.area()))));
            all
        }
        Err(error) => vec![(locale.message("told-wrong", &[]), locale.plan_error(&error))],
    }
}

/// The entry in one line.
pub(crate) fn line(entry: &Entry, locale: Locale) -> String {
    told(entry, locale).into_iter().map(|(label, value)| format!("{label}: {value}")).collect::<Vec<_>>().join("; ")
}

/// Its place in words; nothing for the whole slab.
pub(crate) fn place(entry: &Entry, locale: Locale) -> Option<String> {
    let place = entry.place.as_ref()?;
    if let Some(zone) = &place.zone {
        return Some(zone.clone());
    }
    if let Some([x, y]) = &place.point {
        let told = |offset: &AsWritten<Offset>| locale.typed_quantity(QuantityKind::Offset, offset.text());
        let at = [("x", told(x).into()), ("y", told(y).into())];
        return Some(locale.message("told-point", &at));
    }
    place.polygon.as_ref().map(|_| locale.message("told-patch", &[]))
}

/// That it was written: what, where, and what it says.
pub(crate) fn written(entry: &Entry, locale: Locale) -> String {
    locale.message("said-written-what", &[("entry", in_short(entry, locale).into())])
}

/// That it was corrected, and to what.
pub(crate) fn corrected(entry: &Entry, locale: Locale) -> String {
    locale.message("said-corrected-what", &[("entry", in_short(entry, locale).into())])
}

/// What, where, and what it says; a long text is cut, since the entry itself is a tap away.
fn in_short(entry: &Entry, locale: Locale) -> String {
    const MOST: usize = 120;
    let what = locale.kind_of(&entry.body);
    let asks_place = entry.body.kind().is_some_and(|kind| kind.schema().place != PlaceInput::None);
    let place = place(entry, locale).or_else(|| asks_place.then(|| localization::place_label(locale, "slab")));
    let mut said = [Some(what), place].into_iter().flatten().collect::<Vec<_>>().join(", ");
    let line = match &entry.body {
        // What it is says its first field by itself: no label before it.
        Body::Incident(_) | Body::Defect(_) => {
            told(entry, locale).into_iter().map(|(_, value)| value).collect::<Vec<_>>().join("; ")
        }
        _ => line(entry, locale),
    };
    if !line.is_empty() {
        said.push_str(": ");
        said.push_str(&line);
    }
    match said.char_indices().nth(MOST) {
        Some((at, _)) => format!("{}…", said[..at].trim_end()),
        None => said.trim_end_matches('.').to_owned(),
    }
}
