//! What to buy: quantities with their spread, rounded up to packs.
//!
//! Coverage comes from the panels of this slab where they were measured, and from the trade's range
//! for the finish where not; the answer says which. A range stays a range: `usual` is the middle of
//! what the trade sees, `low` and `high` its ends. What is bought covers `high` for the stain, since
//! a second batch may come in another color, and for what must be on site in full.
//!
//! To add a material: a function in `materials.rs` or beside it, one line in [`order`], an item in
//! [`Item`] with its sentence in `locales/`.

mod coverage;
mod materials;
mod packs;
mod recipe;
mod spread;
mod stain;

use units::{Area, Mass, Volume};

use slab_diary::EntryId;
use slab_diary::{Figures, Slab};
use trade_facts::{Grade, Trade};

pub use coverage::{CoverageBasis, ZoneCoverage};
pub use packs::{PackCount, PackSize};
pub use recipe::Recipe;
pub use spread::Spread;

/// What is bought or must be provided for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Item {
    /// Reactive stain as bought.
    Stain,
    /// Water to dilute it.
    MixingWater,
    /// Sodium bicarbonate.
    Bicarbonate,
    /// Water for the neutralizer.
    NeutralizerWater,
    /// Water to rinse with.
    RinseWater,
    /// Waste water to collect.
    WasteWater,
    /// Drums for it.
    Drums,
    /// Sealer.
    Sealer,
    /// Plastic for the wall band.
    MaskingPlastic,
    /// Board or paper over the finished floor.
    ProtectiveBoard,
    /// Ground to treat before it is stained: what incidents left and nobody has dealt with.
    SpotWork,
}

impl Item {
    /// All, for the test of the translations.
    pub const ALL: &'static [Self] = &[
        Self::Stain,
        Self::MixingWater,
        Self::Bicarbonate,
        Self::NeutralizerWater,
        Self::RinseWater,
        Self::WasteWater,
        Self::Drums,
        Self::Sealer,
        Self::MaskingPlastic,
        Self::ProtectiveBoard,
        Self::SpotWork,
    ];

    /// Its name: key of its word, and its name in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Stain => "stain",
            Self::MixingWater => "mixing-water",
            Self::Bicarbonate => "bicarbonate",
            Self::NeutralizerWater => "neutralizer-water",
            Self::RinseWater => "rinse-water",
            Self::WasteWater => "waste-water",
            Self::Drums => "drums",
            Self::Sealer => "sealer",
            Self::MaskingPlastic => "masking-plastic",
            Self::ProtectiveBoard => "protective-board",
            Self::SpotWork => "spot-work",
        }
    }
}

/// How much, with its spread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// A liquid.
    Volume(Spread<Volume>),
    /// A powder.
    Mass(Spread<Mass>),
    /// A sheet.
    Area(Spread<Area>),
    /// Pieces.
    Pieces(Spread<u32>),
}

/// What a person should know about a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OrderNote {
    /// Coverage measured on this slab's panels.
    CoverageFromPanels,
    /// Coverage from the trade's range for the finish.
    CoverageFromTable,
    /// No finish is noted: the whole range of all finishes was taken.
    FinishUnknown,
    /// The finish may refuse the stain.
    FinishMayRefuse,
    /// Coats and dilution from the approved panel.
    RecipeFromChoice,
    /// No choice yet: the trade's usual coats and dilution.
    RecipeAssumed,
    /// One batch, or mix all containers together before use.
    OneBatch,
    /// A sealed container of the batch is kept for touch-up.
    TouchUpKept,
    /// By practice; less than stoichiometry could ask for, which was taken instead.
    StoichiometryGoverns,
    /// By practice, which is more than stoichiometry asks for.
    PracticeCoversStoichiometry,
    /// The acid in the stain is assumed until its safety data sheet is at hand.
    AcidAssumed,
    /// It foams; keep drums open until it stops.
    Foams,
    /// Stop on tests, not on a count of passes.
    StopOnTests,
    /// The sewer authority decides where it goes. Neutral is not free of metals.
    AskSewerAuthority,
    /// Sealer by the film that its maker asks for.
    SealerByFilm,
    /// Sealer by the trade's coverage range.
    SealerByCoverage,
    /// The maker's sheet governs.
    MakersSheetGoverns,
    /// No sealer chosen.
    NoSealer,
    /// Perimeter of the drawn plan.
    PerimeterFromPlan,
    /// No plan is drawn: perimeter of a square of the same area, the least there can be.
    PerimeterOfSquare,
    /// Nobody noted how far a spot reaches; a foot around its point was taken.
    ReachAssumed,
}

impl OrderNote {
    /// All, for the test of the translations.
    pub const ALL: &'static [Self] = &[
        Self::CoverageFromPanels,
        Self::CoverageFromTable,
        Self::FinishUnknown,
        Self::FinishMayRefuse,
        Self::RecipeFromChoice,
        Self::RecipeAssumed,
        Self::OneBatch,
        Self::TouchUpKept,
        Self::StoichiometryGoverns,
        Self::PracticeCoversStoichiometry,
        Self::AcidAssumed,
        Self::Foams,
        Self::StopOnTests,
        Self::AskSewerAuthority,
        Self::SealerByFilm,
        Self::SealerByCoverage,
        Self::MakersSheetGoverns,
        Self::NoSealer,
        Self::PerimeterFromPlan,
        Self::PerimeterOfSquare,
        Self::ReachAssumed,
    ];

    /// Its name: key of its sentence, and its name in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::CoverageFromPanels => "coverage-from-panels",
            Self::CoverageFromTable => "coverage-from-table",
            Self::FinishUnknown => "finish-unknown",
            Self::FinishMayRefuse => "finish-may-refuse",
            Self::RecipeFromChoice => "recipe-from-choice",
            Self::RecipeAssumed => "recipe-assumed",
            Self::OneBatch => "one-batch",
            Self::TouchUpKept => "touch-up-kept",
            Self::StoichiometryGoverns => "stoichiometry-governs",
            Self::PracticeCoversStoichiometry => "practice-covers-stoichiometry",
            Self::AcidAssumed => "acid-assumed",
            Self::Foams => "foams",
            Self::StopOnTests => "stop-on-tests",
            Self::AskSewerAuthority => "ask-sewer-authority",
            Self::SealerByFilm => "sealer-by-film",
            Self::SealerByCoverage => "sealer-by-coverage",
            Self::MakersSheetGoverns => "makers-sheet-governs",
            Self::NoSealer => "no-sealer",
            Self::PerimeterFromPlan => "perimeter-from-plan",
            Self::PerimeterOfSquare => "perimeter-of-square",
            Self::ReachAssumed => "reach-assumed",
        }
    }
}

/// One line of the order.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// What.
    pub item: Item,
    /// Which of it: the stain's name, the sealer's class.
    pub which: Option<String>,
    /// How much is needed.
    pub need: Amount,
    /// What to buy; empty for what is not sold in packs.
    pub buy: Vec<PackCount>,
    /// What to know about it.
    pub notes: Vec<OrderNote>,
    /// The weakest ground any of its figures stands on.
    pub grade: Grade,
    /// Ids of the trade records it used.
    pub facts: Vec<String>,
    /// The entries it used.
    pub evidence: Vec<EntryId>,
}

/// The order for a slab.
#[derive(Debug, Clone, PartialEq)]
pub struct Order {
    /// How far the stain goes, zone by zone.
    pub coverage: Vec<ZoneCoverage>,
    /// Coats, dilution and mix, one for each choice that is in force somewhere; at least one.
    pub recipes: Vec<Recipe>,
    /// The lines.
    pub lines: Vec<Line>,
}

/// Why nothing can be ordered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum OrderError {
    /// The area is not known.
    #[error(
        "the plan is missing, so no area is known; accepted: a plan entry, or one with just an area such as 1200 ft2"
    )]
    NoArea,
}

/// The order for a slab as it stands.
///
/// # Errors
/// [`OrderError::NoArea`] without a plan.
pub fn order(slab: &Slab<'_>, trade: &Trade) -> Result<Order, OrderError> {
    if slab.area().is_none() {
        return Err(OrderError::NoArea);
    }
    let buyer = Buyer { slab, trade, figures: Figures::new(trade, slab) };
    let recipes = buyer.recipes();
    let coverage = buyer.coverage();
    let mut lines = buyer.stain_lines(&recipes, &coverage);
    let stain: Spread<Volume> =
        Spread::sum(lines.iter().filter(|l| l.item == Item::Stain).filter_map(|l| match l.need {
            Amount::Volume(volume) => Some(volume),
            _ => None,
        }));
    lines.extend(buyer.neutralizer_lines(stain));
    lines.extend(buyer.water_and_waste_lines());
    lines.extend(buyer.sealer_line());
    lines.extend(buyer.protection_lines());
    lines.extend(buyer.spot_lines());
    Ok(Order { coverage, recipes, lines })
}

/// What every line sees.
struct Buyer<'a> {
    slab: &'a Slab<'a>,
    trade: &'a Trade,
    figures: Figures<'a>,
}
