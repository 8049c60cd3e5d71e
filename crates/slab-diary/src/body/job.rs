//! The job itself: what it is, what was chosen, who released what.

use super::inputs::*;
use units::{AsWritten, FilmThickness, Fraction, Length, MoistureEmission, RelativeHumidity};

entry! {
    /// A job begins.
    JobOpened {
        /// What the crew calls this slab.
        name: Text = LINE,
        /// Where it is, in the words needed to find it.
        site: Option<Text> = LINE,
        /// Indoors or out; indoors when no entry says it.
        exposure: Option<Exposure>,
        /// Poured for this job, or an old floor; poured for it when no entry says it.
        age: Option<SlabAge>,
        /// Time zone by its name, such as `America/Chicago`.
        time_zone: Option<String> = InputKind::TimeZone,
        /// Height above the sea.
        elevation: Option<AsWritten<Length>> = HEIGHT,
        /// How many faces can dry: 1 on ground or on a sheet, 2 when the underside is open.
        drying_sides: Option<u8> = InputKind::Count { least: 1, most: 2 },
    }
    EntrySchema {
        before_pour: true,
        ..plain(EntryKind::JobOpened, Group::Job, r##"{"happened":"2026-03-02 06:00","body":{"kind":"job_opened","name":"Creek Road shop","site":"12 Creek Road","exposure":"interior","age":"new","time_zone":"America/Chicago","elevation":"800 ft","drying_sides":1}}"##)
    }
}

choices! {
    /// Indoors or out.
    #[derive(Default)]
    Exposure {
        /// Under a roof.
        #[default]
        Interior = "interior",
        /// In the weather.
        Exterior = "exterior",
    }
}

choices! {
    /// Poured for this job, or an old floor.
    #[derive(Default)]
    SlabAge {
        /// Poured for this job.
        #[default]
        New = "new",
        /// An old floor; never held for its age.
        Existing = "existing",
    }
}

entry! {
    /// The sealer was chosen, with its maker's own limits where they are known.
    SealerChosen {
        /// Class of sealer, by the id in the trade facts.
        sealer: String = InputKind::Term(TermList::Sealers),
        /// Highest relative humidity in the slab that the maker allows.
        humidity_limit: Option<AsWritten<RelativeHumidity>> = SLAB_HUMIDITY,
        /// Highest moisture emission that the maker allows.
        emission_limit: Option<AsWritten<MoistureEmission>> = EMISSION,
        /// Solids by volume from the maker's sheet.
        solids: Option<AsWritten<Fraction>> = percent("25 %"),
        /// Dry film wanted, one coat.
        dry_film: Option<AsWritten<FilmThickness>> = DRY_FILM,
        /// Coats wanted.
        coats: Option<u32> = COATS,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        before_pour: true,
        ..plain(EntryKind::SealerChosen, Group::Job, r##"{"happened":"2026-03-02 06:20","body":{"kind":"sealer_chosen","sealer":"acrylic-water","humidity_limit":"85 %","solids":"25 %","dry_film":"1.5 mil","coats":2}}"##)
    }
}

entry! {
    /// The site is set up for acid work. What is not mentioned was not checked.
    SiteCheck {
        /// Running water or enough of it brought along.
        water: Option<bool>,
        /// Eyewash within reach, tested.
        eyewash: Option<bool>,
        /// Where the rinse water goes, agreed in writing.
        waste_plan: Option<bool>,
        /// Safety data sheets on site and read.
        data_sheets: Option<bool>,
    }
    EntrySchema {
        quick: true,
        photographs: PhotoInput::May,
        rules: &[Rule::AtLeastOne(&["water", "eyewash", "waste_plan", "data_sheets"])],
        before_pour: true,
        ..plain(EntryKind::SiteCheck, Group::Work, r##"{"happened":"2026-04-01 06:30","body":{"kind":"site_check","water":true,"eyewash":true,"waste_plan":true,"data_sheets":true}}"##)
    }
}

entry! {
    /// A named person released a hold point.
    HoldReleased {
        /// Which hold point.
        hold_point: trade_facts::HoldPointId,
        /// Who released it.
        by: Text = LINE,
        /// Why.
        reason: Text = LINES,
    }
    EntrySchema {
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        before_pour: true,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::HoldReleased, Group::Job, r##"{"happened":"2026-04-03 10:00","body":{"kind":"hold_released","hold_point":"moisture","by":"the contractor","reason":"the maker agreed in writing"}}"##)
    }
}

entry! {
    /// A trade figure was replaced for this slab, by its id in the trade facts.
    LimitSet {
        /// Id of the fact.
        fact: String = InputKind::Term(TermList::Facts),
        /// The value to use, in the fact's own unit.
        value: f64 = InputKind::Number(Span::Positive),
        /// Why.
        reason: Text = LINES,
    }
    EntrySchema {
        before_pour: true,
        ..plain(EntryKind::LimitSet, Group::Job, r##"{"happened":"2026-03-02 06:30","body":{"kind":"limit_set","fact":"drop-absorbed","value":120,"reason":"our own experience with this plant's mix"}}"##)
    }
}

entry! {
    /// A free note.
    Note {
        /// The text.
        text: Text = LINES,
    }
    EntrySchema {
        quick: true,
        place: PlaceInput::Point,
        photographs: PhotoInput::May,
        before_pour: true,
        ..plain(EntryKind::Note, Group::Job, r##"{"happened":"2026-03-02 06:50","body":{"kind":"note","text":"The finisher asks for the pour sheet by Friday."}}"##)
    }
}

entry! {
    /// Another entry tells of something that never happened: it was tapped by mistake, or on the wrong slab. It
    /// stands in that entry's place.
    NeverHappened {
        /// What went wrong.
        reason: Option<Text> = LINES,
    }
    EntrySchema {
        before_pour: true,
        only_corrects: true,
        ..plain(EntryKind::NeverHappened, Group::Job, r##"{"happened":"2026-03-12 12:10","replaces":"#oil","body":{"kind":"never_happened","reason":"tapped on the wrong slab"}}"##)
    }
}
