//! The map of the slab: for every place the worst of what was tried, what happened and the finish, with
//! why; how it drinks between the drops and how sure that is; and where the next drops teach most.
//!
//! Why: the hold points judge zones, and nobody grinds or degreases a zone where a corner of it is
//! meant. The map is cut into square cells; each carries the kriged soaking time of its own bay (see
//! [`Bay`]) and the worst thing that speaks of it. A bay with too few drops has no map, and says how
//! many are missing and where they would go.
//!
//! To add a thing that a place can have wrong: a variant of [`Ground`] in its rank, where it comes from
//! in `cells.rs`, its sentence in `locales/`.

mod bays;
mod cells;
mod incidents;
mod next;
mod shares;

use science::absorbency::{AbsorbencyError, Enough, Estimate, Field, Limits, Place};
use units::{Area, Duration, Fraction, Length};

use slab_diary::EntryId;
use slab_diary::{Figures, Slab};
use slab_plan::layout::{Cuts, Sections};
use slab_plan::{Plan, Point};
use trade_facts::Trade;

pub use bays::{Bay, BayField};
pub use cells::Cell;
pub use incidents::Spot;
pub use next::{NextTest, Teaches};
pub use shares::{ShareOf, ZonePicture};

/// How fine the map is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fineness {
    /// Cells over the whole slab, about.
    pub cells: u32,
}

impl Fineness {
    /// For a screen.
    pub const SCREEN: Self = Self { cells: 3000 };
    /// For numbers and print.
    pub const PRINT: Self = Self { cells: 12_000 };
}

/// What a place is, the worst first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ground {
    /// An incident that is not settled; the index of the spot.
    Spot(usize),
    /// The blade or the rag found a film in this zone.
    Film,
    /// Water stands.
    Stands,
    /// Slow to drink.
    Slow,
    /// Too few drops to say.
    Untested,
    /// Drinks, and the finish is so dense that it often needs one more coat.
    Dense,
    /// Drinks.
    Drinks,
}

impl Ground {
    /// A stable word for screens and JSON.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Spot(_) => "incident",
            Self::Film => "film",
            Self::Stands => "stands",
            Self::Slow => "slow",
            Self::Untested => "untested",
            Self::Dense => "dense_finish",
            Self::Drinks => "drinks",
        }
    }
}

/// The map.
#[derive(Debug, Clone)]
pub struct SlabMap {
    /// Side of a cell.
    pub cell: Length,
    /// The cells whose middle lies on the slab, row by row from the lower left.
    pub cells: Vec<Cell>,
    /// The bays, each mapped for itself.
    pub bays: Vec<Bay>,
    /// What happened and is not settled, and what was settled, with the ground it covers.
    pub spots: Vec<Spot>,
    /// Each zone in shares.
    pub zones: Vec<ZonePicture>,
    /// The stretches between the joints; one when there are none.
    pub sections: Sections,
    /// Where to test next, best first; at most five.
    pub next: Vec<NextTest>,
    /// Why no more places are named, where a bay could be planned.
    pub enough: Option<Enough>,
    /// The limits of soaking time between the classes: quick enough, slow, stands.
    pub limits: [Duration; 2],
}

/// Why there is no map.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NoMap {
    /// No plan is drawn.
    #[error("the slab is not drawn; accepted: a plan with an outline, so that drops and incidents have places")]
    NotDrawn,
}

impl SlabMap {
    /// Maps a slab.
    ///
    /// # Errors
    /// [`NoMap::NotDrawn`].
    pub fn of(slab: &Slab<'_>, trade: &Trade, fineness: Fineness) -> Result<Self, NoMap> {
        let plan = slab.plan().filter(|plan| plan.is_drawn()).ok_or(NoMap::NotDrawn)?;
        let figures = Figures::new(trade, slab);
        let limits: [Duration; 2] = [figures.value("drop-absorbed"), figures.value("drop-stands")];
        let classes = Limits::new(limits.to_vec()).ok();
        let spots = incidents::spots(slab, trade, plan);
        let (bays, parts) = bays::bays(slab, trade, plan);
        let (cell, mut cells) = cells::cut(plan, &bays, &parts, fineness);
        cells::judge(&mut cells, &bays, &spots, classes.as_ref());
        let (next, enough) = next::next_tests(&cells, cell, &bays, &spots, limits[0]);
        let zones = shares::pictures(plan, &cells, &spots);
        let sections = sections(plan);
        Ok(Self { cell, cells, bays, spots, zones, sections, next, enough, limits })
    }

    /// The cell that holds a place of the plan.
    #[must_use]
    pub fn cell_at(&self, at: Point) -> Option<&Cell> {
        let half = self.cell / 2.0;
        self.cells
            .iter()
            .find(|cell| Length::from(cell.at.x - at.x).abs() <= half && Length::from(cell.at.y - at.y).abs() <= half)
    }

    /// Area of a cell.
    #[must_use]
    pub fn each(&self) -> Area {
        self.cell * self.cell
    }
}

/// What happened to the slab, as ground; nothing where no plan is drawn.
#[must_use]
pub fn spots_of(slab: &Slab<'_>, trade: &Trade) -> Vec<Spot> {
    slab.plan().filter(|plan| plan.is_drawn()).map_or_else(Vec::new, |plan| incidents::spots(slab, trade, plan))
}

fn sections(plan: &Plan) -> Sections {
    let all = Sections::of(plan, Cuts { joints: true, score_lines: false });
    let whole = || Sections::of(plan, Cuts { joints: false, score_lines: false });
    all.or_else(|_| whole()).expect("a drawn plan without lines is one section for each of its pieces")
}

/// The field of a bay by drops, or why there is none.
pub(crate) type Mapped = Result<Field, AbsorbencyError>;

pub(crate) fn place(at: Point) -> Place {
    Place { x: Length::from(at.x), y: Length::from(at.y) }
}

/// How sure a class is: the chance of the class that the estimate falls into.
pub(crate) fn sureness(estimate: &Estimate, limits: &Limits) -> Option<Fraction> {
    estimate.chances(limits).get(estimate.class(limits)).copied()
}

/// Entries that a part of the map rests on.
pub(crate) fn ids(entries: impl IntoIterator<Item = EntryId>) -> Vec<EntryId> {
    let mut all: Vec<EntryId> = entries.into_iter().collect();
    all.sort_unstable();
    all.dedup();
    all
}
