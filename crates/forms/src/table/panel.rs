//! Sample panels and the client's choice.

use super::asks::{AREA, CARD, CARD_BOX, COATS, DWELL, LINE, LINES, LITTLE_VOLUME, PANEL_BOX, plain, small_length};
use crate::form::{Ask, Field, Form, Group, PhotoAsk, PlaceAsk, Span, TradeList};

const STATE: Ask = Ask::Choice(&["bare", "stained", "sealed"]);

pub(super) const PANEL_MADE: Form = Form {
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[
        Field::must("panel", LINE),
        Field::may("on_the_floor", Ask::YesNo),
        Field::may("mix", LINE),
        Field::may("finish", Ask::Trade(TradeList::Finishes)),
        Field::may("side", small_length("18 in", "450 mm")),
    ],
    ..plain("panel_made", Group::Panel)
};

pub(super) const PANEL_STAINED: Form = Form {
    photographs: PhotoAsk::May,
    fields: &[
        Field::must("panel", Ask::Panel),
        Field::must("mix", Ask::Mix),
        Field::must("water_parts", Ask::Number(Span::NotNegative)),
        Field::must("coats", COATS),
        Field::may("used", LITTLE_VOLUME),
        Field::may("area", AREA),
        Field::may("dwell", DWELL),
    ],
    ..plain("panel_stained", Group::Panel)
};

pub(super) const PANEL_PHOTOGRAPHED: Form = Form {
    photographs: PhotoAsk::Main,
    fields: &[
        Field::must("panel", Ask::Panel),
        Field::must("state", STATE),
        Field::may("card", CARD),
        Field::may("card_box", Ask::PictureBox(&CARD_BOX)),
        Field::may("panel_box", Ask::PictureBox(&PANEL_BOX)),
        Field::may("lab", Ask::Lab),
    ],
    ..plain("panel_photographed", Group::Panel)
};

pub(super) const CHOICE_APPROVED: Form = Form {
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[
        Field::must("panel", Ask::Panel),
        Field::must("by", LINE),
        Field::may("state", STATE),
        Field::may("words", LINES),
    ],
    ..plain("choice_approved", Group::Panel)
};
