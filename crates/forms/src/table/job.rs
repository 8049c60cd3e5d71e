//! The job itself: what it is, what was chosen, who released what.

use super::asks::{COATS, DRY_FILM, EMISSION, HEIGHT, HOURS, LINE, LINES, SLAB_HUMIDITY, percent, plain};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Span, TradeList};

pub(super) const JOB_OPENED: Form = Form {
    fields: &[
        Field::must("name", LINE),
        Field::may("site", LINE),
        Field::may("exposure", InputKind::Choice(&["interior", "exterior"])),
        Field::may("age", InputKind::Choice(&["new", "existing"])),
        Field::may("time_zone", InputKind::TimeZone),
        Field::may("elevation", HEIGHT),
        Field::may("drying_sides", InputKind::Count { least: 1, most: 2 }),
    ],
    ..plain("job_opened", Group::Job)
};

pub(super) const SEALER_CHOSEN: Form = Form {
    place: PlaceInput::Zone,
    fields: &[
        Field::must("sealer", InputKind::Trade(TradeList::Sealers)),
        Field::may("humidity_limit", SLAB_HUMIDITY),
        Field::may("emission_limit", EMISSION),
        Field::may("solids", percent("25 %")),
        Field::may("dry_film", DRY_FILM),
        Field::may("coats", COATS),
    ],
    ..plain("sealer_chosen", Group::Job)
};

pub(super) const TIME_COST: Form = Form {
    photographs: PhotoInput::May,
    fields: &[
        Field::must("what", LINE),
        Field::may("hours", HOURS),
        Field::may("cost", InputKind::Money),
        Field::may("currency", InputKind::Currency),
    ],
    ..plain("time_cost", Group::Job)
};

pub(super) const PAYMENT_TERMS: Form = Form {
    fields: &[
        Field::may("deposit", percent("30 %")),
        Field::may("retainage", percent("5 %")),
        Field::may("words", LINES),
    ],
    ..plain("payment_terms", Group::Job)
};

/// `site` is not offered: it is checked, never released by word.
pub(super) const HOLD_RELEASED: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[
        Field::must(
            "hold_point",
            InputKind::Choice(&[
                "age",
                "membrane",
                "absorbency",
                "contamination",
                "moisture",
                "surface_ph",
                "repairs",
                "panel",
                "air",
            ]),
        ),
        Field::must("by", LINE),
        Field::must("reason", LINES),
    ],
    ..plain("hold_released", Group::Job)
};

pub(super) const LIMIT_SET: Form = Form {
    fields: &[
        Field::must("fact", InputKind::Trade(TradeList::Facts)),
        Field::must("value", InputKind::Number(Span::Positive)),
        Field::must("reason", LINES),
    ],
    ..plain("limit_set", Group::Job)
};

pub(super) const NOTE: Form = Form {
    quick: true,
    place: PlaceInput::Point,
    photographs: PhotoInput::May,
    fields: &[Field::must("text", LINES)],
    ..plain("note", Group::Job)
};
