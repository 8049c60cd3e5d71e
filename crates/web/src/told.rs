//! An entry in words: what it says, field by field, in the reader's language.

use forms::{Ask as Asked, Form};
use slab::diary::Entry;
use slab::diary::body::Body;
use words::Voice;

/// Label and value of everything an entry says.
pub(crate) fn told(entry: &Entry, voice: Voice) -> Vec<(String, String)> {
    match &entry.body {
        Body::Plan(plan) => plan_told(plan, voice),
        Body::AirSeries(series) => {
            vec![(voice.say("told-source", &[]), series.source.clone())]
        }
        Body::Unknown(unknown) => vec![(voice.say("told-unknown", &[]), unknown.raw.get().to_owned())],
        body => forms::form(body.kind()).map(|form| by_form(form, entry, voice)).unwrap_or_default(),
    }
}

fn by_form(form: &'static Form, entry: &Entry, voice: Voice) -> Vec<(String, String)> {
    let typed = forms::typed_from(&entry.body, None);
    let one = |field: &'static forms::Field| {
        let value = match field.ask {
            Asked::Mix => {
                let (stains, parts) = (typed.get("mix_stain"), typed.get("mix_parts"));
                let rows: Vec<String> =
                    stains.iter().zip(parts).map(|(stain, part)| format!("{stain} {part}")).collect();
                rows.join(" : ")
            }
            Asked::Lab | Asked::PictureBox(_) => {
                let parts: Vec<&str> = field.inputs().iter().filter_map(|name| typed.first(name)).collect();
                parts.join(", ")
            }
            _ => {
                let value = typed.first(field.name)?;
                if field.choices(slab::trade::Trade::built_in()).contains(&value) {
                    forms::choice_label(voice, form, field, value)
                } else {
                    value.to_owned()
                }
            }
        };
        // Another entry is named by its id: of use to a program, not to a reader.
        let of_entry = matches!(field.ask, Asked::Entry(_));
        (!value.is_empty() && !of_entry).then(|| (forms::label(voice, form, field), value))
    };
    form.fields.iter().filter_map(one).collect()
}

fn plan_told(spec: &slab::plan::PlanSpec, voice: Voice) -> Vec<(String, String)> {
    match slab::plan::Plan::resolve(spec) {
        Ok(plan) => {
            let mut all = vec![(voice.say("told-area", &[]), voice.area(plan.area()))];
            all.extend(plan.zones().iter().map(|zone| (zone.name().to_owned(), voice.area(zone.area()))));
            all
        }
        Err(error) => vec![(voice.say("told-wrong", &[]), voice.plan_error(&error))],
    }
}

/// The entry in one line.
pub(crate) fn line(entry: &Entry, voice: Voice) -> String {
    told(entry, voice).into_iter().map(|(label, value)| format!("{label}: {value}")).collect::<Vec<_>>().join("; ")
}

/// Its place in words; nothing for the whole slab.
pub(crate) fn place(entry: &Entry, voice: Voice) -> Option<String> {
    let place = entry.place.as_ref()?;
    if let Some(zone) = &place.zone {
        return Some(zone.clone());
    }
    if let Some([x, y]) = &place.point {
        let at = [("x", x.text().into()), ("y", y.text().into())];
        return Some(voice.say("told-point", &at));
    }
    place.polygon.as_ref().map(|_| voice.say("told-patch", &[]))
}
