//! Buying, mixing, staining, rinsing, sealing.

use super::asks::{COATS, DWELL, LINE, RINSE_PH, VOLUME, plain};
use crate::form::{Ask, Field, Form, Group, PhotoAsk, PlaceAsk, Preset, Rule};

pub(super) const DELIVERY: Form = Form {
    photographs: PhotoAsk::May,
    fields: &[Field::must("item", LINE), Field::must("amount", LINE), Field::may("batch", LINE)],
    ..plain("delivery", Group::Work)
};

pub(super) const SITE_CHECK: Form = Form {
    quick: true,
    photographs: PhotoAsk::May,
    fields: &[
        Field::may("water", Ask::YesNo),
        Field::may("eyewash", Ask::YesNo),
        Field::may("waste_plan", Ask::YesNo),
        Field::may("data_sheets", Ask::YesNo),
    ],
    presets: &[Preset {
        name: "all",
        sets: &[("water", "yes"), ("eyewash", "yes"), ("waste_plan", "yes"), ("data_sheets", "yes")],
    }],
    rules: &[Rule::AtLeastOne(&["water", "eyewash", "waste_plan", "data_sheets"])],
    ..plain("site_check", Group::Work)
};

pub(super) const BATCH_MIXED: Form = Form {
    fields: &[Field::must("mix", Ask::Mix), Field::must("stain", VOLUME), Field::must("water", VOLUME)],
    ..plain("batch_mixed", Group::Work)
};

pub(super) const COAT_LAID: Form = Form {
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[Field::must("coat", COATS), Field::may("used", VOLUME), Field::may("dwell", DWELL)],
    ..plain("coat_laid", Group::Work)
};

pub(super) const NEUTRALIZED: Form = Form {
    place: PlaceAsk::Zone,
    fields: &[
        Field::must("with", Ask::Choice(&["bicarbonate", "carbonate", "ammonia", "alkaline_cleaner"])),
        Field::may("used", VOLUME),
    ],
    ..plain("neutralized", Group::Work)
};

pub(super) const RINSED: Form = Form {
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[
        Field::may("passes", Ask::Count { least: 1, most: 50 }),
        Field::may("ph", RINSE_PH),
        Field::may("rag", Ask::Choice(&["clean", "faint", "colored"])),
    ],
    ..plain("rinsed", Group::Work)
};

pub(super) const WASTE_COLLECTED: Form = Form {
    photographs: PhotoAsk::May,
    fields: &[Field::must("volume", VOLUME), Field::may("ph", RINSE_PH), Field::may("went_to", LINE)],
    ..plain("waste_collected", Group::Work)
};

pub(super) const SEALER_COAT: Form = Form {
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[Field::must("coat", COATS), Field::may("used", VOLUME)],
    ..plain("sealer_coat", Group::Work)
};
