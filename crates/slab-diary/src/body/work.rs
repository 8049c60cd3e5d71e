//! Buying, mixing, staining, rinsing, sealing.

use super::inputs::*;
use units::{AsWritten, Duration, Ph, Volume};

use super::panel::StainShare;
use super::testing::RagResult;

entry! {
    /// Material arrived.
    Delivery {
        /// What.
        item: Text = LINE,
        /// How much, as on the slip.
        amount: Text = LINE,
        /// Batch number.
        batch: Option<Text> = LINE,
    }
    EntrySchema {
        asks_when: true,
        photographs: PhotoInput::May,
        before_pour: true,
        ..plain(EntryKind::Delivery, Group::Work, r##"{"happened":"2026-03-24 09:00","body":{"kind":"delivery","item":"stain umber","amount":"8 gal","batch":"B-17"}}"##)
    }
}

entry! {
    /// A batch was mixed: water first, then the acid stain into the water.
    BatchMixed {
        /// The stains and their parts.
        mix: Vec<StainShare> = InputKind::Mix,
        /// Stain in the batch.
        stain: AsWritten<Volume> = VOLUME,
        /// Water in the batch.
        water: AsWritten<Volume> = VOLUME,
    }
    EntrySchema {
        before_pour: true,
        ..plain(EntryKind::BatchMixed, Group::Work, r##"{"happened":"2026-04-01 07:00","body":{"kind":"batch_mixed","mix":[{"stain":"umber","parts":1}],"stain":"2 gal","water":"2 gal"}}"##)
    }
}

entry! {
    /// A coat of stain was laid.
    CoatLaid {
        /// Which coat, from 1.
        coat: u32 = COATS,
        /// Working mix used.
        used: Option<AsWritten<Volume>> = VOLUME,
        /// Time it was left alone.
        dwell: Option<AsWritten<Duration>> = DWELL,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::CoatLaid, Group::Work, r##"{"happened":"2026-04-01 08:00","place":{"zone":"shop"},"body":{"kind":"coat_laid","coat":1,"used":"3.5 gal","dwell":"6 h"}}"##)
    }
}

entry! {
    /// The floor was neutralized.
    Neutralized {
        /// With what.
        with: Neutralizer,
        /// Solution used.
        used: Option<AsWritten<Volume>> = VOLUME,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Neutralized, Group::Work, r##"{"happened":"2026-04-01 15:00","place":{"zone":"shop"},"body":{"kind":"neutralized","with":"bicarbonate","used":"35 gal"}}"##)
    }
}

choices! {
    /// Neutralizers by class.
    Neutralizer {
        /// Sodium bicarbonate.
        Bicarbonate = "bicarbonate",
        /// Sodium carbonate.
        Carbonate = "carbonate",
        /// Household ammonia.
        Ammonia = "ammonia",
        /// Alkaline cleaner.
        AlkalineCleaner = "alkaline_cleaner",
    }
}

entry! {
    /// The floor was rinsed.
    #[derive(Default)]
    Rinsed {
        /// Passes of scrub and vacuum.
        passes: Option<u32> = InputKind::Count { least: 1, most: 50 },
        /// pH of the rinse water that came up.
        ph: Option<AsWritten<Ph>> = RINSE_PH,
        /// A damp white rag afterwards.
        rag: Option<RagResult>,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Rinsed, Group::Work, r##"{"happened":"2026-04-01 16:00","place":{"zone":"shop"},"body":{"kind":"rinsed","passes":3,"ph":"7.5","rag":"clean"}}"##)
    }
}

entry! {
    /// Waste was collected.
    WasteCollected {
        /// How much.
        volume: AsWritten<Volume> = VOLUME,
        /// Its pH.
        ph: Option<AsWritten<Ph>> = RINSE_PH,
        /// Where it went.
        went_to: Option<Text> = LINE,
    }
    EntrySchema {
        photographs: PhotoInput::May,
        ..plain(EntryKind::WasteCollected, Group::Work, r##"{"happened":"2026-04-01 17:00","body":{"kind":"waste_collected","volume":"90 gal","ph":"7","went_to":"drums, waiting for the sewer authority"}}"##)
    }
}

entry! {
    /// A coat of sealer was laid.
    SealerCoat {
        /// Which coat, from 1.
        coat: u32 = COATS,
        /// How much was used.
        used: Option<AsWritten<Volume>> = VOLUME,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::SealerCoat, Group::Work, r##"{"happened":"2026-04-03 09:00","place":{"zone":"shop"},"body":{"kind":"sealer_coat","coat":1,"used":"3 gal"}}"##)
    }
}
