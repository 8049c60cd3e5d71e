//! What went wrong on the slab, and what was done about it.

use super::inputs::*;
use units::{Area, AsWritten, Length};

use crate::EntryId;

entry! {
    /// Something happened to the slab.
    Incident {
        /// What, by its id in the trade facts.
        what: String = InputKind::Term(TermList::Incidents),
        /// The trade that did it.
        trade: Option<Text> = LINE,
        /// Area touched, when it is not drawn.
        area: Option<AsWritten<Area>> = AREA,
        /// Anything else.
        note: Option<Text> = LINES,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Spot,
        photographs: PhotoInput::May,
        presets: one_tap!("what": "cutting_oil" = "cutting-oil", "lift_oil" = "lift-oil", "tire_marks" = "tire-marks", "drywall_mud" = "drywall-mud", "overspray", "pipe_glue" = "pipe-glue", "marker", "red_chalk" = "red-chalk", "tape", "food", "water_puddle" = "water-puddle"),
        time_line: Some(TimeLine::Trouble),
        ..plain(EntryKind::Incident, Group::Trouble, r##"{"id":"#oil","happened":"2026-03-12 12:10","place":{"point":["10 ft","10 ft"],"radius":"2 ft"},"body":{"kind":"incident","what":"cutting-oil","trade":"plumber","note":"pipe threaded by the north door"}}"##)
    }
}

entry! {
    /// A cover was laid or lifted.
    Cover {
        /// Laid or lifted.
        action: CoverAction,
        /// Of what.
        material: CoverMaterial,
        /// Which side carries print.
        printed: Option<PrintedSide>,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        ..plain(EntryKind::Cover, Group::Trouble, r##"{"happened":"2026-03-10 09:00","place":{"zone":"office"},"body":{"kind":"cover","action":"laid","material":"cardboard","printed":"up"}}"##)
    }
}

choices! {
    /// Laid or lifted.
    CoverAction {
        /// Laid.
        Laid = "laid",
        /// Lifted.
        Lifted = "lifted",
    }
}

choices! {
    /// What a cover is made of.
    CoverMaterial {
        /// Breathing board.
        Board = "board",
        /// Paper.
        Paper = "paper",
        /// Cardboard.
        Cardboard = "cardboard",
        /// Plastic sheet.
        Plastic = "plastic",
        /// Plywood.
        Plywood = "plywood",
        /// Something else.
        Other = "other",
    }
}

choices! {
    /// Which side of a cover carries print.
    PrintedSide {
        /// Print up, away from the slab.
        Up = "up",
        /// Print down, against the slab.
        Down = "down",
        /// No print.
        None = "none",
    }
}

entry! {
    /// The surface was cleaned, stripped, washed or abraded.
    Cleaning {
        /// How.
        method: CleaningMethod,
        /// The incident it was for.
        of: Option<EntryId> = SPOT,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Point,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Cleaning, Group::Trouble, r##"{"happened":"2026-03-13 09:00","place":{"zone":"shop"},"body":{"kind":"cleaning","method":"degreaser","of":"#oil"}}"##)
    }
}

choices! {
    /// Ways to clean a slab.
    CleaningMethod {
        /// Sweep and vacuum.
        Sweep = "sweep",
        /// Scrub with a neutral cleaner.
        NeutralScrub = "neutral_scrub",
        /// Scrub with an alkaline cleaner.
        AlkalineScrub = "alkaline_scrub",
        /// Degreaser.
        Degreaser = "degreaser",
        /// Poultice.
        Poultice = "poultice",
        /// Solvent on a spot.
        Solvent = "solvent",
        /// Chemical stripper.
        Stripper = "stripper",
        /// Acid wash.
        Acid = "acid",
        /// Screen with an abrasive disc.
        Screen = "screen",
        /// Grind.
        Grind = "grind",
        /// Blast with shot or grit.
        Blast = "blast",
        /// Plain water.
        Water = "water",
    }
}

entry! {
    /// The spot of an incident was looked at again after the treatment.
    Retest {
        /// The incident.
        of: EntryId = SPOT,
        /// What was seen.
        result: RetestResult,
    }
    EntrySchema {
        quick: true,
        photographs: PhotoInput::May,
        presets: one_tap!("result": "clear", "faint", "still_there"),
        time_line: Some(TimeLine::Test),
        ..plain(EntryKind::Retest, Group::Trouble, r##"{"happened":"2026-03-14 09:05","body":{"kind":"retest","of":"#oil","result":"clear"}}"##)
    }
}

choices! {
    /// What was seen at the second look.
    RetestResult {
        /// Nothing left.
        Clear = "clear",
        /// A trace.
        Faint = "faint",
        /// Still there.
        StillThere = "still_there",
    }
}

entry! {
    /// A crack, hole or patch was found.
    Defect {
        /// What.
        what: DefectKind,
        /// Width of a crack.
        width: Option<AsWritten<Length>> = small_length("1/16 in", "1.5 mm"),
        /// Its sides move against each other.
        moving: Option<bool>,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Spot,
        photographs: PhotoInput::May,
        time_line: Some(TimeLine::Trouble),
        ..plain(EntryKind::Defect, Group::Trouble, r##"{"id":"#crack","happened":"2026-03-12 12:20","place":{"point":["30 ft","4 ft"]},"body":{"kind":"defect","what":"crack","width":"1/16 in","moving":false}}"##)
    }
}

choices! {
    /// Kinds of defect.
    DefectKind {
        /// A crack.
        Crack = "crack",
        /// A nail or anchor hole.
        Hole = "hole",
        /// A spall.
        Spall = "spall",
        /// An old patch.
        Patch = "patch",
        /// A weak, dusting surface.
        Dusting = "dusting",
    }
}

entry! {
    /// A defect was repaired.
    Repair {
        /// The defect or incident.
        of: Option<EntryId> = SPOT,
        /// With what.
        material: RepairMaterial,
        /// The owner knows that it will show.
        #[serde(default)]
        owner_told: bool = InputKind::Flag,
    }
    EntrySchema {
        photographs: PhotoInput::May,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Repair, Group::Trouble, r##"{"happened":"2026-03-15 09:00","body":{"kind":"repair","of":"#crack","material":"cement","owner_told":true}}"##)
    }
}

choices! {
    /// Repair materials by class.
    RepairMaterial {
        /// Plain cement patch: takes stain, in another color.
        Cement = "cement",
        /// Polymer or epoxy: takes no stain.
        Polymer = "polymer",
        /// Gypsum: takes no stain.
        Gypsum = "gypsum",
    }
}

entry! {
    /// An incident or defect was accepted as it is.
    Accepted {
        /// The incident or defect.
        of: EntryId = SPOT,
        /// Who accepted it.
        by: Text = LINE,
        /// In what words.
        reason: Text = LINES,
    }
    EntrySchema {
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Accepted, Group::Trouble, r##"{"happened":"2026-03-15 10:00","body":{"kind":"accepted","of":"#crack","by":"the owner","reason":"it may show"}}"##)
    }
}

entry! {
    /// The mist-and-look round over the bare slab.
    Survey {
        /// Oil, marks, drips and shadows were looked for.
        #[serde(default = "yes")]
        contamination: bool,
        /// Cracks, holes and patches were looked for.
        #[serde(default = "yes")]
        cracks: bool,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        // A line of an earlier diary may say only that the round was made.
        rules: &[Rule::MayBeLeftOut(&["contamination", "cracks"])],
        presets: &[
        Preset { name: "both", sets: &[("contamination", "yes"), ("cracks", "yes")] },
        Preset { name: "contamination", sets: &[("contamination", "yes"), ("cracks", "no")] },
        Preset { name: "cracks", sets: &[("contamination", "no"), ("cracks", "yes")] },
    ],
        time_line: Some(TimeLine::Test),
        ..plain(EntryKind::Survey, Group::Trouble, r##"{"happened":"2026-03-12 12:00","body":{"kind":"survey","contamination":true,"cracks":true}}"##)
    }
}

fn yes() -> bool {
    true
}
