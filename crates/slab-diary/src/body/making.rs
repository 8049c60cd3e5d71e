//! How the slab came to be: pour, finish, curing.

use super::inputs::*;
use units::{AsWritten, Density, FilmThickness, Fraction, Length, Pressure};

entry! {
    /// Concrete was placed; when it happened is the age's beginning.
    #[derive(Default)]
    Pour {
        /// Name of the mix, as on the ticket.
        mix: Option<Text> = LINE,
        /// Thickness.
        thickness: Option<AsWritten<Length>> = InputKind::Quantity(QuantityInput::SLAB_THICKNESS),
        /// Water to cementitious material by mass, 0.3 to 0.8.
        water_cement: Option<AsWritten<Fraction>> = RATIO,
        /// Cement in the mix.
        cement: Option<AsWritten<Density>> = CEMENT,
        /// Strength ordered.
        strength: Option<AsWritten<Pressure>> = STRENGTH,
        /// Share of the cementitious material that is fly ash or slag.
        fly_ash: Option<AsWritten<Fraction>> = percent("15 %"),
        /// Calcium chloride in the mix.
        chloride: Option<bool>,
        /// Thickness of the vapor retarder directly below; absent when unknown.
        retarder: Option<AsWritten<FilmThickness>> = SHEET,
    }
    EntrySchema {
        asks_when: true,
        place: PlaceInput::Zone,
        photographs: PhotoInput::May,
        before_pour: true,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Pour, Group::Making, r##"{"happened":"2026-03-02 07:00","body":{"kind":"pour","mix":"4021","thickness":"4 in","water_cement":"0.48","cement":"520 lb/yd3","strength":"4000 psi","fly_ash":"0 %","chloride":false,"retarder":"15 mil"}}"##)
    }
}

entry! {
    /// The surface was finished.
    Finish {
        /// Which finish, by its id in the trade facts.
        finish: String = InputKind::Term(TermList::Finishes),
    }
    EntrySchema {
        asks_when: true,
        place: PlaceInput::Zone,
        ..plain(EntryKind::Finish, Group::Making, r##"{"happened":"2026-03-02 12:00","place":{"zone":"shop"},"body":{"kind":"finish","finish":"light-steel-trowel"}}"##)
    }
}

entry! {
    /// Curing began.
    Curing {
        /// How.
        method: CuringMethod,
    }
    EntrySchema {
        asks_when: true,
        place: PlaceInput::Zone,
        presets: one_tap!("method": "wet_covers", "water", "sheet", "membrane", "none", "unknown"),
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Curing, Group::Making, r##"{"happened":"2026-03-02 15:00","body":{"kind":"curing","method":"wet_covers"}}"##)
    }
}

choices! {
    /// Ways to cure a slab.
    CuringMethod {
        /// Covers kept wet, flat on the slab.
        WetCovers = "wet_covers",
        /// Water sprayed or ponded.
        Water = "water",
        /// A plastic sheet laid on the slab.
        Sheet = "sheet",
        /// A sprayed compound that leaves a film.
        Membrane = "membrane",
        /// Nothing was done.
        None = "none",
        /// Nobody knows.
        Unknown = "unknown",
    }
}

entry! {
    /// Curing ended; the slab dries from here.
    #[derive(Default)]
    Cured {
    }
    EntrySchema {
        asks_when: true,
        place: PlaceInput::Zone,
        time_line: Some(TimeLine::Step),
        ..plain(EntryKind::Cured, Group::Making, r##"{"happened":"2026-03-09 08:00","body":{"kind":"cured"}}"##)
    }
}
