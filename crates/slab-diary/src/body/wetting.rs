//! Water that came onto the slab.

use units::{AsWritten, Duration};

use super::inputs::*;

choices! {
    /// How water came onto the slab.
    WettingCause {
        /// Rain came in.
        RainCameIn = "rain_came_in",
        /// A hose ran.
        Hose = "hose",
        /// A sprinkler went off or was tested.
        Sprinkler = "sprinkler",
        /// Water stood on it.
        Flood = "flood",
    }
}

entry! {
    /// Water came onto the slab. What was measured of its moisture there before speaks of a drier slab.
    Wetting {
        /// How.
        cause: WettingCause,
        /// How long it stayed wet.
        stayed_wet: Option<AsWritten<Duration>> = WAIT,
        /// Anything else.
        note: Option<Text> = LINES,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Point,
        photographs: PhotoInput::May,
        time_line: Some(TimeLine::Trouble),
        presets: one_tap!("cause": "rain_came_in", "hose", "sprinkler", "flood"),
        ..plain(EntryKind::Wetting, Group::Trouble, r##"{"happened":"2026-03-12 12:40","place":{"zone":"office"},"body":{"kind":"wetting","cause":"rain_came_in","stayed_wet":"3 h","note":"the north door stood open"}}"##)
    }
}
