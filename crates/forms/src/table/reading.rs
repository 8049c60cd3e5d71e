//! Readings of air, temperature and color.

use super::asks::{AIR_HUMIDITY, CARD, CARD_BOX, DEGREES, EVENNESS, WIND, plain};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Preset, Rule};

pub(super) const AIR_READING: Form = Form {
    quick: true,
    place: PlaceInput::Zone,
    fields: &[
        Field::may("air", DEGREES),
        Field::may("humidity", AIR_HUMIDITY),
        Field::may("slab", DEGREES),
        Field::may("wind", WIND),
        Field::may("rain", InputKind::YesNo),
    ],
    rules: &[Rule::AtLeastOne(&["air", "humidity", "slab", "wind", "rain"])],
    ..plain("air_reading", Group::Reading)
};

pub(super) const TEMPERATURE: Form = Form {
    quick: true,
    place: PlaceInput::Point,
    fields: &[Field::may("slab", DEGREES), Field::may("air", DEGREES)],
    rules: &[Rule::AtLeastOne(&["slab", "air"])],
    ..plain("temperature", Group::Reading)
};

pub(super) const SLAB_PHOTOGRAPH: Form = Form {
    quick: true,
    place: PlaceInput::Point,
    photographs: PhotoInput::Main,
    fields: &[
        Field::may("card", CARD),
        Field::may("card_box", InputKind::PictureBox(&CARD_BOX)),
        Field::may("evenness", EVENNESS),
    ],
    ..plain("slab_photograph", Group::Test)
};

pub(super) const COLOR_LOOK: Form = Form {
    quick: true,
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[Field::must("evenness", EVENNESS)],
    presets: &[
        Preset { name: "even", sets: &[("evenness", "even")] },
        Preset { name: "patchy", sets: &[("evenness", "patchy")] },
        Preset { name: "cant_tell", sets: &[("evenness", "cant_tell")] },
    ],
    ..plain("color_look", Group::Test)
};
