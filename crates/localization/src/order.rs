//! What to buy, in words.

use slab_answers::order::{Amount, Item, Order, OrderNote, PackCount, PackSize, Recipe};

use crate::locale::Locale;
use crate::reason::capitalized;

impl Locale {
    /// The name of a line of the order.
    #[must_use]
    pub fn item(self, item: Item) -> String {
        let key = match item {
            Item::Stain => "item-stain",
            Item::MixingWater => "item-mixing-water",
            Item::Bicarbonate => "item-bicarbonate",
            Item::NeutralizerWater => "item-neutralizer-water",
            Item::RinseWater => "item-rinse-water",
            Item::WasteWater => "item-waste-water",
            Item::Drums => "item-drums",
            Item::Sealer => "item-sealer",
            Item::MaskingPlastic => "item-masking-plastic",
            Item::ProtectiveBoard => "item-protective-board",
            Item::SpotWork => "item-spot-work",
        };
        self.message(key, &[])
    }

    /// What is ordered for: each recipe in a sentence, with its zones where there are several.
    #[must_use]
    pub fn order_recipes(self, order: &Order) -> String {
        let one = |recipe: &Recipe| {
            let said = match &recipe.panel {
                Some(panel) => self.message(
                    "order-recipe-panel",
                    &[
                        ("panel", panel.as_str().into()),
                        ("coats", recipe.coats.usual.into()),
                        ("water", recipe.water_parts.usual.into()),
                    ],
                ),
                None => self.message(
                    "order-recipe-usual",
                    &[
                        ("low", recipe.coats.low.into()),
                        ("high", recipe.coats.high.into()),
                        ("water", recipe.water_parts.low.into()),
                    ],
                ),
            };
            if order.recipes.len() == 1 {
                return said;
            }
            let zones = capitalized(&self.list(&recipe.zones));
            self.message("reason-in-zone", &[("zone", zones.into()), ("reason", said.into())])
        };
        order.recipes.iter().map(one).collect::<Vec<_>>().join(" ")
    }

    /// What to know about a line.
    #[must_use]
    pub fn order_note(self, note: OrderNote) -> String {
        let key = match note {
            OrderNote::CoverageFromPanels => "note-coverage-from-panels",
            OrderNote::CoverageFromTable => "note-coverage-from-table",
            OrderNote::FinishUnknown => "note-finish-unknown",
            OrderNote::FinishMayRefuse => "note-finish-may-refuse",
            OrderNote::RecipeFromChoice => "note-recipe-from-choice",
            OrderNote::RecipeAssumed => "note-recipe-assumed",
            OrderNote::OneBatch => "note-one-batch",
            OrderNote::TouchUpKept => "note-touch-up-kept",
            OrderNote::StoichiometryGoverns => "note-stoichiometry-governs",
            OrderNote::PracticeCoversStoichiometry => "note-practice-covers-stoichiometry",
            OrderNote::AcidAssumed => "note-acid-assumed",
            OrderNote::Foams => "note-foams",
            OrderNote::StopOnTests => "note-stop-on-tests",
            OrderNote::AskSewerAuthority => "note-ask-sewer-authority",
            OrderNote::SealerByFilm => "note-sealer-by-film",
            OrderNote::SealerByCoverage => "note-sealer-by-coverage",
            OrderNote::MakersSheetGoverns => "note-makers-sheet-governs",
            OrderNote::NoSealer => "note-no-sealer",
            OrderNote::PerimeterFromPlan => "note-perimeter-from-plan",
            OrderNote::PerimeterOfSquare => "note-perimeter-of-square",
            OrderNote::ReachAssumed => "note-reach-assumed",
        };
        self.message(key, &[])
    }

    /// How much is needed: from the low to the high end, and what is usual.
    #[must_use]
    pub fn need(self, need: &Amount) -> String {
        let (low, usual, high) = match need {
            Amount::Volume(s) => (self.volume(s.low), self.volume(s.usual), self.volume(s.high)),
            Amount::Mass(s) => (self.mass(s.low), self.mass(s.usual), self.mass(s.high)),
            Amount::Area(s) => (self.area(s.low), self.area(s.usual), self.area(s.high)),
            Amount::Pieces(s) => (self.pieces(s.low), self.pieces(s.usual), self.pieces(s.high)),
        };
        if low == high {
            return self.message("order-need-exact", &[("usual", usual.into())]);
        }
        let range = self.range(&low, &high);
        self.message("order-need", &[("range", range.into()), ("usual", usual.into())])
    }

    fn pieces(self, count: u32) -> String {
        self.message("order-pieces", &[("count", count.into())])
    }

    /// The packs to buy, as a list; nothing for what is not sold in packs.
    #[must_use]
    pub fn pack_list(self, packs: &[PackCount]) -> Option<String> {
        let one = |pack: &PackCount| {
            let size = match pack.size {
                PackSize::Volume(volume) => self.volume(volume),
                PackSize::Mass(mass) => self.mass(mass),
            };
            self.message("order-pack", &[("count", pack.count.into()), ("size", size.into())])
        };
        let each: Vec<String> = packs.iter().map(one).collect();
        (!each.is_empty()).then(|| self.list(&each))
    }

    /// What to buy; nothing for what is not sold in packs.
    #[must_use]
    pub fn packs(self, packs: &[PackCount]) -> Option<String> {
        self.pack_list(packs).map(|list| self.message("order-buy", &[("packs", list.into())]))
    }
}
