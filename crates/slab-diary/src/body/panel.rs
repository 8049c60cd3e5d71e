//! Sample panels and the client's choice.

use serde::{Deserialize, Serialize};

use super::inputs::*;
use units::{Area, AsWritten, Duration, Length, Volume};

use super::{PictureBox, ReferenceCard};

entry! {
    /// A sample panel was made.
    PanelMade {
        /// Its name, such as `P1`.
        panel: Text = LINE,
        /// The mix it was poured from, as on the ticket.
        mix: Option<Text> = LINE,
        /// Its finish, by the id in the trade facts.
        finish: Option<String> = InputKind::Term(TermList::Finishes),
        /// Its side.
        side: Option<AsWritten<Length>> = usual_length("18 in", "450 mm", 100, 3000),
        /// It is a corner of the real floor, not a poured panel.
        #[serde(default)]
        on_the_floor: bool = InputKind::Flag,
    }
    EntrySchema {
        asks_when: true,
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        before_pour: true,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::PanelMade, Group::Panel, r##"{"happened":"2026-03-02 13:00","body":{"kind":"panel_made","panel":"P1","mix":"4021","finish":"light-steel-trowel","side":"18 in"}}"##)
    }
}

/// A share of one stain in a mix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StainShare {
    /// The stain, by the crew's own name for its color.
    pub stain: String,
    /// Parts of it in the mix.
    pub parts: f64,
}

entry! {
    /// A panel was stained.
    PanelStained {
        /// Which panel.
        panel: Text = InputKind::Panel,
        /// The stains and their parts.
        mix: Vec<StainShare> = InputKind::Mix,
        /// Parts of water to one part of stain.
        #[serde(default)]
        water_parts: f64 = InputKind::Number(Span::NotNegative),
        /// Coats laid.
        coats: u32 = COATS,
        /// Working mix used in all coats together.
        used: Option<AsWritten<Volume>> = LITTLE_VOLUME,
        /// Area stained, when it is not the whole panel.
        area: Option<AsWritten<Area>> = AREA,
        /// Time each coat was left alone.
        dwell: Option<AsWritten<Duration>> = DWELL,
    }
    EntrySchema {
        asks_when: true,
        // A line that says nothing of water means none.
        rules: &[Rule::MayBeLeftOut(&["water_parts"])],
        photographs: PhotoInput::May,
        before_pour: true,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::PanelStained, Group::Panel, r##"{"happened":"2026-03-20 09:00","body":{"kind":"panel_stained","panel":"P1","mix":[{"stain":"umber","parts":1}],"water_parts":1,"coats":2,"used":"2 fl oz","dwell":"6 h"}}"##)
    }
}

entry! {
    /// A panel was photographed.
    PanelPhotographed {
        /// Which panel.
        panel: Text = InputKind::Panel,
        /// In which state.
        state: PanelState,
        /// Measured color, CIELAB (D65, 2°).
        lab: Option<[f64; 3]> = InputKind::Lab,
        /// What lay beside it to measure by.
        card: Option<ReferenceCard>,
        /// Where that lies in the first photograph.
        card_box: Option<PictureBox> = CARD_BOX,
        /// Where the whole panel lies in the first photograph. With the panel's side it tells how large a
        /// pixel is on the panel.
        panel_box: Option<PictureBox> = PANEL_BOX,
    }
    EntrySchema {
        photographs: PhotoInput::Main,
        before_pour: true,
        ..plain(EntryKind::PanelPhotographed, Group::Panel, r##"{"happened":"2026-03-22 09:00","body":{"kind":"panel_photographed","panel":"P1","state":"sealed","lab":[42.0,9.5,15.0]}}"##)
    }
}

choices! {
    /// State of a panel.
    PanelState {
        /// Bare concrete.
        Bare = "bare",
        /// Stained, not sealed.
        Stained = "stained",
        /// Stained and sealed.
        Sealed = "sealed",
    }
}

entry! {
    /// The client chose.
    ChoiceApproved {
        /// Which panel.
        panel: Text = InputKind::Panel,
        /// Who approved it.
        by: Text = LINE,
        /// State of the panel when it was shown.
        state: Option<PanelState>,
        /// The text that was agreed.
        words: Option<Text> = LINES,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        before_pour: true,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::ChoiceApproved, Group::Panel, r##"{"happened":"2026-03-23 17:00","body":{"kind":"choice_approved","panel":"P1","by":"the owner","state":"sealed","words":"variation is normal"}}"##)
    }
}

entry! {
    /// The client took a choice back. An older approval does not come to life again by it.
    ChoiceWithdrawn {
        /// Which panel.
        panel: Text = InputKind::Panel,
        /// Who took it back.
        by: Text = LINE,
        /// Why.
        reason: Text = LINES,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        before_pour: true,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::ChoiceWithdrawn, Group::Panel, r##"{"happened":"2026-03-24 17:00","body":{"kind":"choice_withdrawn","panel":"P1","by":"the owner","reason":"too dark beside the cabinets"}}"##)
    }
}
