//! Tests of the surface and of the moisture in it.

use super::asks::{
    DISH_AREA, DISH_TIME, GAIN, MINUTES, PH, RINSE_PH, SECONDS, SLAB_HUMIDITY as HUMIDITY, SPOT, WAIT, plain,
    small_length,
};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Preset, Rule};

const fn on_the_surface(kind: &'static str) -> Form {
    Form { quick: true, place: PlaceInput::Point, photographs: PhotoInput::May, ..plain(kind, Group::Test) }
}

/// The drop's three answers exclude each other, so a preset sets all of them.
const fn soaked(time: &'static [(&'static str, &'static str)], name: &'static str) -> Preset {
    Preset { name, sets: time }
}

pub(super) const WATER_DROP: Form = Form {
    fields: &[
        Field::may("soaked_in", SECONDS),
        Field::may("still_stood_after", MINUTES),
        Field::may("beads", InputKind::YesNo),
        Field::may("of", SPOT),
    ],
    presets: &[
        soaked(&[("soaked_in", "15 s"), ("still_stood_after", ""), ("beads", "")], "soaked_15_s"),
        soaked(&[("soaked_in", "30 s"), ("still_stood_after", ""), ("beads", "")], "soaked_30_s"),
        soaked(&[("soaked_in", "60 s"), ("still_stood_after", ""), ("beads", "")], "soaked_60_s"),
        soaked(&[("soaked_in", "2 min"), ("still_stood_after", ""), ("beads", "")], "soaked_2_min"),
        soaked(&[("soaked_in", ""), ("still_stood_after", "10 min"), ("beads", "")], "stood_10_min"),
        soaked(&[("soaked_in", ""), ("still_stood_after", ""), ("beads", "yes")], "beads"),
    ],
    rules: &[
        Rule::AtLeastOneOrYes(&["soaked_in", "still_stood_after", "beads"]),
        Rule::NotBoth("soaked_in", "still_stood_after"),
    ],
    ..on_the_surface("water_drop")
};

pub(super) const SCRAPE: Form = Form {
    fields: &[
        Field::must("result", InputKind::Choice(&["powder", "shine_change", "curl", "flake", "tacky"])),
        Field::may("of", SPOT),
    ],
    presets: &[
        Preset { name: "powder", sets: &[("result", "powder")] },
        Preset { name: "shine_change", sets: &[("result", "shine_change")] },
        Preset { name: "curl", sets: &[("result", "curl")] },
        Preset { name: "flake", sets: &[("result", "flake")] },
        Preset { name: "tacky", sets: &[("result", "tacky")] },
    ],
    ..on_the_surface("scrape")
};

pub(super) const SOLVENT_WIPE: Form = Form {
    fields: &[Field::must("result", InputKind::Choice(&["clean", "shine_change", "sticky_or_yellow"]))],
    presets: &[
        Preset { name: "clean", sets: &[("result", "clean")] },
        Preset { name: "shine_change", sets: &[("result", "shine_change")] },
        Preset { name: "sticky_or_yellow", sets: &[("result", "sticky_or_yellow")] },
    ],
    ..on_the_surface("solvent_wipe")
};

pub(super) const ACID_DROP: Form = Form {
    fields: &[Field::must("fizz", InputKind::Choice(&["strong", "weak", "none"]))],
    presets: &[
        Preset { name: "strong", sets: &[("fizz", "strong")] },
        Preset { name: "weak", sets: &[("fizz", "weak")] },
        Preset { name: "none", sets: &[("fizz", "none")] },
    ],
    ..on_the_surface("acid_drop")
};

pub(super) const SURFACE_PH: Form = Form {
    fields: &[
        Field::must("ph", PH),
        Field::may("moment", InputKind::Choice(&["before_stain", "after_rinse"])),
        Field::may("rinse_water", RINSE_PH),
    ],
    presets: &[
        Preset { name: "ph_6", sets: &[("ph", "6")] },
        Preset { name: "ph_7", sets: &[("ph", "7")] },
        Preset { name: "ph_8", sets: &[("ph", "8")] },
        Preset { name: "ph_9", sets: &[("ph", "9")] },
        Preset { name: "ph_10", sets: &[("ph", "10")] },
        Preset { name: "ph_11", sets: &[("ph", "11")] },
        Preset { name: "ph_12", sets: &[("ph", "12")] },
    ],
    ..on_the_surface("surface_ph")
};

pub(super) const SLAB_HUMIDITY: Form = Form {
    fields: &[
        Field::must("humidity", HUMIDITY),
        Field::may("depth", small_length("1 5/8 in", "40 mm")),
        Field::may("equilibrated", WAIT),
    ],
    ..on_the_surface("slab_humidity")
};

pub(super) const EMISSION_DISH: Form = Form {
    fields: &[Field::must("gain", GAIN), Field::must("area", DISH_AREA), Field::must("exposed", DISH_TIME)],
    ..on_the_surface("emission_dish")
};

pub(super) const PLASTIC_SHEET: Form = Form {
    fields: &[
        Field::must("result", InputKind::Choice(&["dry", "darkened", "drops"])),
        Field::must("covered", WAIT),
        Field::may("side", small_length("18 in", "450 mm")),
    ],
    ..on_the_surface("plastic_sheet")
};
