//! What went wrong on the slab, and what was done about it.

use super::asks::{AREA, LINE, LINES, SPOT, plain, small_length};
use crate::form::{Ask, Field, Form, Group, PhotoAsk, PlaceAsk, Preset, TradeList};

pub(super) const SURVEY: Form = Form {
    quick: true,
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[Field::must("contamination", Ask::YesNo), Field::must("cracks", Ask::YesNo)],
    presets: &[
        Preset { name: "both", sets: &[("contamination", "yes"), ("cracks", "yes")] },
        Preset { name: "contamination", sets: &[("contamination", "yes"), ("cracks", "no")] },
        Preset { name: "cracks", sets: &[("contamination", "no"), ("cracks", "yes")] },
    ],
    ..plain("survey", Group::Trouble)
};

pub(super) const INCIDENT: Form = Form {
    quick: true,
    place: PlaceAsk::Point,
    photographs: PhotoAsk::May,
    fields: &[
        Field::must("what", Ask::Trade(TradeList::Incidents)),
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
    place: PlaceAsk::Zone,
    photographs: PhotoAsk::May,
    fields: &[
        Field::must("action", Ask::Choice(&["laid", "lifted"])),
        Field::must("material", Ask::Choice(&["board", "paper", "cardboard", "plastic", "plywood", "other"])),
        Field::may("printed", Ask::Choice(&["up", "down", "none"])),
    ],
    ..plain("cover", Group::Trouble)
};

pub(super) const CLEANING: Form = Form {
    quick: true,
    place: PlaceAsk::Point,
    fields: &[
        Field::must(
            "method",
            Ask::Choice(&[
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
    photographs: PhotoAsk::May,
    fields: &[Field::must("of", SPOT), Field::must("result", Ask::Choice(&["clear", "faint", "still_there"]))],
    presets: &[
        Preset { name: "clear", sets: &[("result", "clear")] },
        Preset { name: "faint", sets: &[("result", "faint")] },
        Preset { name: "still_there", sets: &[("result", "still_there")] },
    ],
    ..plain("retest", Group::Trouble)
};

pub(super) const DEFECT: Form = Form {
    quick: true,
    place: PlaceAsk::Point,
    photographs: PhotoAsk::May,
    fields: &[
        Field::must("what", Ask::Choice(&["crack", "hole", "spall", "patch", "dusting"])),
        Field::may("width", small_length("1/16 in", "1.5 mm")),
        Field::may("moving", Ask::YesNo),
    ],
    ..plain("defect", Group::Trouble)
};

pub(super) const REPAIR: Form = Form {
    photographs: PhotoAsk::May,
    fields: &[
        Field::may("of", SPOT),
        Field::must("material", Ask::Choice(&["cement", "polymer", "gypsum"])),
        Field::may("owner_told", Ask::YesNo),
    ],
    ..plain("repair", Group::Trouble)
};

pub(super) const ACCEPTED: Form = Form {
    fields: &[Field::must("of", SPOT), Field::must("by", LINE), Field::must("reason", LINES)],
    ..plain("accepted", Group::Trouble)
};
