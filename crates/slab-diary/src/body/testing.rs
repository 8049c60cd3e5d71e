//! Readings and tests.

use serde::{Deserialize, Serialize};

use super::inputs::*;
use super::{Body, EntryBody};
use units::{Area, AsWritten, Duration, Length, Mass, Ph, RelativeHumidity, Speed};

entry! {
    /// One reading of the air, and of the slab's surface where it was taken.
    #[derive(Default)]
    AirReading {
        /// Air temperature.
        air: Option<AsWritten<units::Temperature>> = DEGREES,
        /// Relative humidity of the air.
        humidity: Option<AsWritten<RelativeHumidity>> = AIR_HUMIDITY,
        /// Wind at slab height.
        wind: Option<AsWritten<Speed>> = WIND,
        /// Surface temperature of the slab.
        slab: Option<AsWritten<units::Temperature>> = DEGREES,
        /// It rains, or rain is forecast for the work.
        rain: Option<bool>,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Zone,
        rules: &[Rule::AtLeastOne(&["air", "humidity", "slab", "wind", "rain"])],
        before_pour: true,
        ..plain(EntryKind::AirReading, Group::Reading, r##"{"happened":"2026-03-12 08:00","body":{"kind":"air_reading","air":"66 °F","humidity":"45 %","wind":"3 mph","slab":"62 °F","rain":false}}"##)
    }
}

/// A series of readings from a weather file or a logger.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AirSeries {
    /// Where it came from, such as the file's name.
    pub source: String,
    /// The readings.
    pub series: weather_series::Series,
}

impl EntryBody for AirSeries {
    const SCHEMA: EntrySchema = EntrySchema {
        before_pour: true,
        own_screen: true,
        ..plain(
            EntryKind::AirSeries,
            Group::Reading,
            r##"{"happened":"2026-03-12 09:00","body":{"kind":"air_series","source":"logger.csv","series":{"columns":["at","air_c","rh_pct"],"rows":[["2026-03-12T14:00:00Z",18.5,45.0],["2026-03-12T15:00:00Z",18.9,44.0]]}}}"##,
        )
    };
    fn of(body: &Body) -> Option<&Self> {
        if let Body::AirSeries(inner) = body { Some(inner) } else { None }
    }
}

entry! {
    /// Slab or air temperature.
    #[derive(Default)]
    Temperature {
        /// Of the slab, on or in it.
        slab: Option<AsWritten<units::Temperature>> = DEGREES,
        /// Of the air.
        air: Option<AsWritten<units::Temperature>> = DEGREES,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Point,
        rules: &[Rule::AtLeastOne(&["slab", "air"])],
        before_pour: true,
        ..plain(EntryKind::Temperature, Group::Reading, r##"{"happened":"2026-03-12 10:00","body":{"kind":"temperature","slab":"61 °F","air":"66 °F"}}"##)
    }
}

entry! {
    /// A photograph of the slab, with what was measured in it.
    #[derive(Default)]
    SlabPhotograph {
        /// What lay in the picture as a reference.
        card: Option<ReferenceCard>,
        /// Verdict of the measurement.
        evenness: Option<Evenness>,
        /// Where the reference lies in the picture.
        card_box: Option<PictureBox> = CARD_BOX,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Point,
        photographs: PhotoInput::Main,
        ..plain(EntryKind::SlabPhotograph, Group::Test, r##"{"happened":"2026-03-12 10:30","body":{"kind":"slab_photograph","card":"gray_card","evenness":"patchy","card_box":{"x":40.0,"y":70.0,"w":12.5,"h":8.0}}}"##)
    }
}

choices! {
    /// A thing of known lightness in a photograph.
    ReferenceCard {
        /// A gray card, 18 %.
        GrayCard = "gray_card",
        /// A sheet of white paper.
        WhitePaper = "white_paper",
    }
}

choices! {
    /// Is the slab one color?
    Evenness {
        /// One color.
        Even = "even",
        /// Light and dark fields.
        Patchy = "patchy",
        /// Can't tell.
        CantTell = "cant_tell",
    }
}

entry! {
    /// The color judged by eye, dry and then misted.
    ColorLook {
        /// What was seen.
        evenness: Evenness,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        presets: one_tap!("evenness": "even", "patchy", "cant_tell"),
        time_line: Some(TimeLine::Test),
        ..plain(EntryKind::ColorLook, Group::Test, r##"{"happened":"2026-03-12 10:40","body":{"kind":"color_look","evenness":"even"}}"##)
    }
}

/// The drop's three answers exclude each other, so a preset sets all of them.
const fn soaked(sets: &'static [(&'static str, &'static str)], name: &'static str) -> Preset {
    Preset { name, sets }
}

entry! {
    /// Seconds for a water drop to soak in.
    WaterDrop {
        /// Time until it was absorbed.
        soaked_in: Option<AsWritten<Duration>> = SECONDS,
        /// It still stood after this time, when the watching stopped.
        still_stood_after: Option<AsWritten<Duration>> = MINUTES,
        /// It stood up as a bead, as on wax.
        #[serde(default)]
        beads: bool = InputKind::Flag,
        /// The incident whose spot was tested.
        of: Option<crate::EntryId> = SPOT,
    }
    EntrySchema {
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
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::WaterDrop, r##"{"happened":"2026-03-12 11:00","place":{"point":["5 ft","5 ft"]},"body":{"kind":"water_drop","soaked_in":"45 s"}}"##)
    }
}

entry! {
    /// What a blade lifts.
    Scrape {
        /// What came up.
        result: ScrapeResult,
        /// The incident whose spot was tested.
        of: Option<crate::EntryId> = SPOT,
    }
    EntrySchema {
        presets: one_tap!("result": "powder", "shine_change", "curl", "flake", "tacky"),
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::Scrape, r##"{"happened":"2026-03-12 11:20","place":{"zone":"shop"},"body":{"kind":"scrape","result":"powder"}}"##)
    }
}

choices! {
    /// What came up under the blade.
    ScrapeResult {
        /// Gray powder: bare paste.
        Powder = "powder",
        /// Nothing but a slight change of shine.
        ShineChange = "shine_change",
        /// A wax-like curl or shaving.
        Curl = "curl",
        /// Flakes of a film.
        Flake = "flake",
        /// Tacky.
        Tacky = "tacky",
    }
}

entry! {
    /// What a solvent rag lifts. Small spot, ventilated, by the solvent's safety data sheet.
    SolventWipe {
        /// The rag afterwards.
        result: WipeResult,
    }
    EntrySchema {
        presets: one_tap!("result": "clean", "shine_change", "sticky_or_yellow"),
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::SolventWipe, r##"{"happened":"2026-03-12 11:25","place":{"zone":"shop"},"body":{"kind":"solvent_wipe","result":"clean"}}"##)
    }
}

choices! {
    /// The rag afterwards.
    WipeResult {
        /// Clean.
        Clean = "clean",
        /// Clean, but the spot changed its shine.
        ShineChange = "shine_change",
        /// Sticky or yellow.
        StickyOrYellow = "sticky_or_yellow",
    }
}

entry! {
    /// Does the surface fizz under a drop of dilute acid.
    AcidDrop {
        /// How much.
        fizz: Fizz,
    }
    EntrySchema {
        presets: one_tap!("fizz": "strong", "weak", "none"),
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::AcidDrop, r##"{"happened":"2026-03-12 11:30","place":{"zone":"shop"},"body":{"kind":"acid_drop","fizz":"strong"}}"##)
    }
}

choices! {
    /// How much it fizzed.
    Fizz {
        /// At once and strong.
        Strong = "strong",
        /// A little.
        Weak = "weak",
        /// Not at all.
        None = "none",
    }
}

entry! {
    /// Surface pH, with distilled water.
    SurfacePh {
        /// The reading.
        ph: AsWritten<Ph> = PH,
        /// Before the stain or after the rinse; taken from the diary when absent.
        moment: Option<PhMoment>,
        /// pH of the rinse water itself, for comparison.
        rinse_water: Option<AsWritten<Ph>> = RINSE_PH,
    }
    EntrySchema {
        presets: one_tap!("ph": "ph_6" = "6", "ph_7" = "7", "ph_8" = "8", "ph_9" = "9", "ph_10" = "10", "ph_11" = "11", "ph_12" = "12"),
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::SurfacePh, r##"{"happened":"2026-03-12 11:40","place":{"zone":"shop"},"body":{"kind":"surface_ph","ph":"11.5","moment":"before_stain"}}"##)
    }
}

choices! {
    /// When a pH was taken.
    PhMoment {
        /// Before any stain.
        BeforeStain = "before_stain",
        /// After the last rinse.
        AfterRinse = "after_rinse",
    }
}

entry! {
    /// Relative humidity in the slab, by a probe in a drilled hole.
    SlabHumidity {
        /// The reading.
        humidity: AsWritten<RelativeHumidity> = SLAB_HUMIDITY,
        /// Depth of the probe.
        depth: Option<AsWritten<Length>> = usual_length("1 5/8 in", "40 mm", 10, 500),
        /// How long the hole stood closed before the reading.
        equilibrated: Option<AsWritten<Duration>> = WAIT,
    }
    EntrySchema {
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::SlabHumidity, r##"{"happened":"2026-03-14 11:00","place":{"zone":"shop"},"body":{"kind":"slab_humidity","humidity":"82 %","depth":"1.6 in","equilibrated":"24 h"}}"##)
    }
}

entry! {
    /// Moisture emission by a dish of calcium chloride under a dome.
    EmissionDish {
        /// Mass the dish gained.
        gain: AsWritten<Mass> = GAIN,
        /// Area under the dome.
        area: AsWritten<Area> = DISH_AREA,
        /// How long it stood.
        exposed: AsWritten<Duration> = DISH_TIME,
    }
    EntrySchema {
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::EmissionDish, r##"{"happened":"2026-03-17 11:00","place":{"zone":"shop"},"body":{"kind":"emission_dish","gain":"2.5 g","area":"0.5 ft2","exposed":"66 h"}}"##)
    }
}

entry! {
    /// Moisture under a taped plastic sheet.
    PlasticSheet {
        /// What was seen when it was lifted.
        result: SheetResult,
        /// How long it lay.
        covered: AsWritten<Duration> = WAIT,
        /// Its side.
        side: Option<AsWritten<Length>> = usual_length("18 in", "450 mm", 100, 3000),
    }
    EntrySchema {
        time_line: Some(TimeLine::Test),
        ..on_the_surface(EntryKind::PlasticSheet, r##"{"happened":"2026-03-18 11:00","place":{"zone":"office"},"body":{"kind":"plastic_sheet","result":"dry","covered":"16 h","side":"18 in"}}"##)
    }
}

choices! {
    /// What was seen under the sheet.
    SheetResult {
        /// No drops, no darkening.
        Dry = "dry",
        /// Slightly darker.
        Darkened = "darkened",
        /// Drops.
        Drops = "drops",
    }
}

choices! {
    /// A damp white rag after the rinse.
    RagResult {
        /// Mostly clean.
        Clean = "clean",
        /// A faint tint.
        Faint = "faint",
        /// Colored.
        Colored = "colored",
    }
}
