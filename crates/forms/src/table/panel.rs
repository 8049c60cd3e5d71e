//! Sample panels and the client's choice.

use super::asks::{AREA, CARD, CARD_BOX, COATS, DWELL, LINE, LINES, LITTLE_VOLUME, PANEL_BOX, plain, small_length};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Span, TradeList};

const STATE: InputKind = InputKind::Choice(&["bare", "stained", "sealed"]);

pub(super) const PANEL_MADE: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[
        Field::must("panel", LINE),
        Field::may("on_the_floor", InputKind::YesNo),
        Field::may("mix", LINE),
        Field::may("finish", InputKind::Trade(TradeList::Finishes)),
        Field::may("side", small_length("18 in", "450 mm")),
    ],
    ..plain("panel_made", Group::Panel)
};

pub(super) const PANEL_STAINED: Form = Form {
    photographs: PhotoInput::May,
    fields: &[
        Field::must("panel", InputKind::Panel),
        Field::must("mix", InputKind::Mix),
        Field::must("water_parts", InputKind::Number(Span::NotNegative)),
        Field::must("coats", COATS),
        Field::may("used", LITTLE_VOLUME),
        Field::may("area", AREA),
        Field::may("dwell", DWELL),
    ],
    ..plain("panel_stained", Group::Panel)
};

pub(super) const PANEL_PHOTOGRAPHED: Form = Form {
    photographs: PhotoInput::Main,
    fields: &[
        Field::must("panel", InputKind::Panel),
        Field::must("state", STATE),
        Field::may("card", CARD),
        Field::may("card_box", InputKind::PictureBox(&CARD_BOX)),
        Field::may("panel_box", InputKind::PictureBox(&PANEL_BOX)),
        Field::may("lab", InputKind::Lab),
    ],
    ..plain("panel_photographed", Group::Panel)
};

pub(super) const CHOICE_APPROVED: Form = Form {
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[
        Field::must("panel", InputKind::Panel),
        Field::must("by", LINE),
        Field::may("state", STATE),
        Field::may("words", LINES),
    ],
    ..plain("choice_approved", Group::Panel)
};
