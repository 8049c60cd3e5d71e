//! Pour, finish, cure.

use super::asks::{CEMENT, LINE, RATIO, SHEET, STRENGTH, percent, plain, small_length};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Preset, TradeList};

pub(super) const POUR: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[
        Field::may("mix", LINE),
        Field::may("thickness", small_length("4 in", "100 mm")),
        Field::may("water_cement", RATIO),
        Field::may("cement", CEMENT),
        Field::may("strength", STRENGTH),
        Field::may("fly_ash", percent("15 %")),
        Field::may("chloride", InputKind::YesNo),
        Field::may("retarder", SHEET),
    ],
    ..plain("pour", Group::Making)
};

pub(super) const FINISH: Form = Form {
    place: PlaceInput::Zone,
    fields: &[Field::must("finish", InputKind::Trade(TradeList::Finishes))],
    ..plain("finish", Group::Making)
};

pub(super) const CURING: Form = Form {
    place: PlaceInput::Zone,
    fields: &[Field::must(
        "method",
        InputKind::Choice(&["wet_covers", "water", "sheet", "membrane", "none", "unknown"]),
    )],
    presets: &[
        Preset { name: "wet_covers", sets: &[("method", "wet_covers")] },
        Preset { name: "water", sets: &[("method", "water")] },
        Preset { name: "sheet", sets: &[("method", "sheet")] },
        Preset { name: "membrane", sets: &[("method", "membrane")] },
        Preset { name: "none", sets: &[("method", "none")] },
        Preset { name: "unknown", sets: &[("method", "unknown")] },
    ],
    ..plain("curing", Group::Making)
};

pub(super) const CURED: Form = Form { place: PlaceInput::Zone, ..plain("cured", Group::Making) };
