//! What went wrong on the slab, and what was done about it.

use super::asks::{AREA, LINE, LINES, SPOT, plain, small_length};
use crate::form::{Field, Form, Group, InputKind, PhotoInput, PlaceInput, Preset, TradeList};

pub(super) const SURVEY: Form = Form {
    quick: true,
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[Field::must("contamination", InputKind::YesNo), Field::must("cracks", InputKind::YesNo)],
    presets: &[
        Preset { name: "both", sets: &[("contamination", "yes"), ("cracks", "yes")] },
        Preset { name: "contamination", sets: &[("contamination", "yes"), ("cracks", "no")] },
        Preset { name: "cracks", sets: &[("contamination", "no"), ("cracks", "yes")] },
    ],
    ..plain("survey", Group::Trouble)
};

pub(super) const INCIDENT: Form = Form {
    quick: true,
    place: PlaceInput::Point,
    photographs: PhotoInput::May,
    fields: &[
        Field::must("what", InputKind::Trade(TradeList::Incidents)),
        Field::may("trade", LINE),
        Field::may("area", AREA),
        Field::may("note", LINES),
    ],
    presets: &[
        Preset { name: "cutting_oil", sets: &[("what", "cutting-oil")] },
        Preset { name: "lift_oil", sets: &[("what", "lift-oil")] },
        Preset { name: "tire_marks", sets: &[("what", "tire-marks")] },
        Preset { name: "drywall_mud", sets: &[("what", "drywall-mud")] },
        Preset { name: "overspray", sets: &[("what", "overspray")] },
        Preset { name: "pipe_glue", sets: &[("what", "pipe-glue")] },
        Preset { name: "marker", sets: &[("what", "marker")] },
        Preset { name: "red_chalk", sets: &[("what", "red-chalk")] },
        Preset { name: "tape", sets: &[("what", "tape")] },
        Preset { name: "food", sets: &[("what", "food")] },
        Preset { name: "water_puddle", sets: &[("what", "water-puddle")] },
    ],
    ..plain("incident", Group::Trouble)
};

pub(super) const COVER: Form = Form {
    quick: true,
    place: PlaceInput::Zone,
    photographs: PhotoInput::May,
    fields: &[
        Field::must("action", InputKind::Choice(&["laid", "lifted"])),
        Field::must("material", InputKind::Choice(&["board", "paper", "cardboard", "plastic", "plywood", "other"])),
        Field::may("printed", InputKind::Choice(&["up", "down", "none"])),
    ],
    ..plain("cover", Group::Trouble)
};

pub(super) const CLEANING: Form = Form {
    quick: true,
    place: PlaceInput::Point,
    fields: &[
        Field::must(
            "method",
            InputKind::Choice(&[
                "sweep",
                "neutral_scrub",
                "alkaline_scrub",
                "degreaser",
                "poultice",
                "solvent",
                "stripper",
                "acid",
                "screen",
                "grind",
                "blast",
                "water",
            ]),
        ),
        Field::may("of", SPOT),
    ],
    ..plain("cleaning", Group::Trouble)
};

pub(super) const RETEST: Form = Form {
    quick: true,
    photographs: PhotoInput::May,
    fields: &[Field::must("of", SPOT), Field::must("result", InputKind::Choice(&["clear", "faint", "still_there"]))],
    presets: &[
        Preset { name: "clear", sets: &[("result", "clear")] },
        Preset { name: "faint", sets: &[("result", "faint")] },
        Preset { name: "still_there", sets: &[("result", "still_there")] },
    ],
    ..plain("retest", Group::Trouble)
};

pub(super) const DEFECT: Form = Form {
    quick: true,
    place: PlaceInput::Point,
    photographs: PhotoInput::May,
    fields: &[
        Field::must("what", InputKind::Choice(&["crack", "hole", "spall", "patch", "dusting"])),
        Field::may("width", small_length("1/16 in", "1.5 mm")),
        Field::may("moving", InputKind::YesNo),
    ],
    ..plain("defect", Group::Trouble)
};

pub(super) const REPAIR: Form = Form {
    photographs: PhotoInput::May,
    fields: &[
        Field::may("of", SPOT),
        Field::must("material", InputKind::Choice(&["cement", "polymer", "gypsum"])),
        Field::may("owner_told", InputKind::YesNo),
    ],
    ..plain("repair", Group::Trouble)
};

pub(super) const ACCEPTED: Form = Form {
    fields: &[Field::must("of", SPOT), Field::must("by", LINE), Field::must("reason", LINES)],
    ..plain("accepted", Group::Trouble)
};
