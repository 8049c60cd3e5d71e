//! Buying, mixing, staining, rinsing, sealing.

use super::asks::{COATS, DWELL, LINE, RINSE_PH, VOLUME, plain};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Preset, Rule};

pub(super) const DELIVERY: Form = Form {
    photographs: PhotoInput::May,
    fields: &[Field::must("item", LINE), Field::must("amount", LINE), Field::may("batch", LINE)],
    ..plain("delivery", Group::Work)
};

pub(super) const SITE_CHECK: Form = Form {
    quick: true,
    photographs: PhotoInput::May,
    fields: &[
        Field::may("water", InputKind::YesNo),
        Field::may("eyewash", InputKind::YesNo),
        Field::may("waste_plan", InputKind::YesNo),
        Field::may("data_sheets", InputKind::YesNo),
    ],
    presets: &[Preset {
        name: "all",
        sets: &[("water", "yes"), ("eyewash", "yes"), ("waste_plan", "yes"), ("data_sheets", "yes")],
    }],
    rules: &[Rule::AtLeastOne(&["water", "eyewash", "waste_plan", "data_sheets"])],
    ..plain("site_check", Group::Work)
};

pub(super) const BATCH_MIXED: Form = Form {
    fields: &[Field::must("mix", InputKind::Mix), Field::must("stain", VOLUME), Field::must("water", VOLUME)],
    ..plain("batch_mixed", Group::Work)
};

pub(super) const COAT_LAID: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[Field::must("coat", COATS), Field::may("used", VOLUME), Field::may("dwell", DWELL)],
    ..plain("coat_laid", Group::Work)
};

pub(super) const NEUTRALIZED: Form = Form {
    place: PlaceInput::Zone,
    fields: &[
        Field::must("with", InputKind::Choice(&["bicarbonate", "carbonate", "ammonia", "alkaline_cleaner"])),
        Field::may("used", VOLUME),
    ],
    ..plain("neutralized", Group::Work)
};

pub(super) const RINSED: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[
        Field::may("passes", InputKind::Count { least: 1, most: 50 }),
        Field::may("ph", RINSE_PH),
        Field::may("rag", InputKind::Choice(&["clean", "faint", "colored"])),
    ],
    ..plain("rinsed", Group::Work)
};

pub(super) const WASTE_COLLECTED: Form = Form {
    photographs: PhotoInput::May,
    fields: &[Field::must("volume", VOLUME), Field::may("ph", RINSE_PH), Field::may("went_to", LINE)],
    ..plain("waste_collected", Group::Work)
};

pub(super) const SEALER_COAT: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[Field::must("coat", COATS), Field::may("used", VOLUME)],
    ..plain("sealer_coat", Group::Work)
};
