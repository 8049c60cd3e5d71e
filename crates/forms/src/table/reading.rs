//! Readings of air, temperature and color.

use super::asks::{AIR_HUMIDITY, CARD, CARD_BOX, DEGREES, EVENNESS, WIND, plain};
use crate::form::{Ask, Field, Form, Group, PhotoAsk, PlaceAsk, Preset, Rule};

pub(super) const AIR_READING: Form = Form {
    quick: true,
    place: PlaceAsk::Zone,
    fields: &[
        Field::may("air", DEGREES),
        Field::may("humidity", AIR_HUMIDITY),
        Field::may("slab", DEGREES),
        Field::may("wind", WIND),
        Field::may("rain", Ask::YesNo),
    ],
    rules: &[Rule::AtLeastOne(&["air", "humidity", "slab", "wind", "rain"])],
    ..plain("air_reading", Group::Reading)
};

pub(super) const TEMPERATURE: Form = Form {
    quick: true,
    place: PlaceAsk::Point,
    fields: &[Field::may("slab", DEGREES), Field::may("air", DEGREES)],
    rules: &[Rule::AtLeastOne(&["slab", "air"])],
    ..plain("temperature", Group::Reading)
};

pub(super) const SLAB_PHOTOGRAPH: Form = Form {
    quick: true,
    place: PlaceAsk::Point,
    photographs: PhotoAsk::Main,
    fields: &[
        Field::may("card", CARD),
        Field::may("card_box", Ask::PictureBox(&CARD_BOX)),
        Field::may("evenness", EVENNESS),
    ],
    ..plain("slab_photograph", Group::Test)
};

pub(super) const COLOR_LOOK: Form = Form {
    quick: true,
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[Field::must("evenness", EVENNESS)],
    presets: &[
        Preset { name: "even", sets: &[("evenness", "even")] },
        Preset { name: "patchy", sets: &[("evenness", "patchy")] },
        Preset { name: "cant_tell", sets: &[("evenness", "cant_tell")] },
    ],
    ..plain("color_look", Group::Test)
};
