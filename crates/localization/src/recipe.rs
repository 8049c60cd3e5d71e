//! Recipes of stain and what a model of the panels can and can't say.

use science::color::Lab;
use science::color::recipe::{Edge, NoInterval, Place, Recipe, RecipeRefusal};
use slab_answers::panels::{BareFrom, LeftOut, RecipeBook};
use units::Fraction;

use crate::locale::Locale;
use crate::messages::Arg;

/// Largest sum of whole parts that is still measured out.
const MAX_PARTS: u32 = 24;

impl Locale {
    /// A recipe as it is mixed: parts of each stain, water, coats.
    #[must_use]
    pub fn recipe(self, shares: &[(&str, Fraction)], recipe: &Recipe) -> String {
        let args = [
            ("mix", self.stain_mix(shares).into()),
            ("water", self.water_parts(recipe.water.per_stain()).into()),
            ("coats", self.message("recipe-coats", &[("count", Arg::Number(f64::from(recipe.coats.count())))]).into()),
        ];
        self.message("recipe-line", &args)
    }

    /// The stains of a mix with their parts in small whole numbers, or in percent where none fit.
    #[must_use]
    pub fn stain_mix(self, shares: &[(&str, Fraction)]) -> String {
        if let [(stain, _)] = shares {
            return (*stain).to_owned();
        }
        let parts = whole_parts(shares);
        let said = |(at, (stain, share)): (usize, &(&str, Fraction))| {
            let stain = ("stain", Arg::from(*stain));
            match &parts {
                Some(parts) => self.message("recipe-parts", &[("count", Arg::Number(f64::from(parts[at]))), stain]),
                None => self.message("recipe-share", &[("share", self.share(*share).into()), stain]),
            }
        };
        self.list(&shares.iter().enumerate().map(said).collect::<Vec<_>>())
    }

    /// The concrete of a panel or a set.
    #[must_use]
    pub fn concrete_of(self, mix: Option<&str>, finish: Option<&str>) -> String {
        let mix = mix.map_or_else(|| self.message("recipe-mix-unknown", &[]), str::to_owned);
        let finish = finish.map_or_else(|| self.message("recipe-finish-unknown", &[]), |finish| self.term(finish));
        self.message("recipe-concrete", &[("mix", mix.into()), ("finish", finish.into())])
    }

    /// A color in numbers.
    #[must_use]
    pub fn color(self, lab: Lab) -> String {
        let [l, a, b] = [lab.lightness(), lab.a(), lab.b()].map(|n| self.number(n, 1));
        self.message("recipe-color", &[("l", l.into()), ("a", a.into()), ("b", b.into()), ("hex", hex(lab).into())])
    }

    /// What stands against the answers of a set of panels.
    #[must_use]
    pub fn recipe_doubts(self, book: &RecipeBook<'_>) -> Vec<String> {
        let mut lines: Vec<String> = book.bare_from.map(|from| self.bare_from(from)).into_iter().collect();
        match &book.model {
            Err(why) => lines.push(self.no_model(why, book)),
            Ok(model) => lines.extend(model.interval().err().map(|why| self.no_radius(why, book))),
        }
        lines
    }

    /// Parts of water to one of stain.
    #[must_use]
    pub fn water_parts(self, parts: f64) -> String {
        if parts == 0.0 {
            return self.message("recipe-no-water", &[]);
        }
        self.message("recipe-water", &[("count", Arg::Number(parts)), ("n", self.number(parts, 2).into())])
    }

    /// Why a model tells no radius.
    #[must_use]
    pub fn no_radius(self, why: NoInterval, book: &RecipeBook<'_>) -> String {
        let stain = |index: usize| Arg::from(book.stains.get(index).copied().unwrap_or_default());
        let panel = |index: usize| Arg::from(book.used.get(index).map_or("", |used| used.panel));
        let count = |count: usize| Arg::Number(count as f64);
        match why {
            NoInterval::TooFewPanels { stains, panels, needed } => self.message(
                "recipe-no-radius-too-few-panels",
                &[("stains", count(stains)), ("panels", count(panels)), ("needed", count(needed))],
            ),
            NoInterval::NoMix { stains, panels } => {
                self.message("recipe-no-radius-no-mix", &[("stains", count(stains)), ("panels", count(panels))])
            }
            NoInterval::StainInOnePanel { stain: index } => {
                self.message("recipe-no-radius-stain-in-one-panel", &[("stain", stain(index))])
            }
            NoInterval::NoFitWithout { panel: index } => {
                self.message("recipe-no-radius-no-fit-without-panel", &[("panel", panel(index))])
            }
        }
    }

    /// Why there is no model.
    #[must_use]
    pub fn no_model(self, why: &RecipeRefusal, book: &RecipeBook<'_>) -> String {
        match why {
            RecipeRefusal::NoBare => self.message("recipe-no-model-bare", &[]),
            RecipeRefusal::NoPanels => self.message("recipe-no-model-panels", &[]),
            RecipeRefusal::NoFit => self.message("recipe-no-model-fit", &[]),
            RecipeRefusal::Light { place, .. } => {
                let panel = match place {
                    Place::Bare(index) => book.bare.get(*index).map(|(panel, _)| *panel),
                    Place::Panel(index) => book.used.get(*index).map(|used| used.panel),
                };
                self.message("recipe-no-model-light", &[("panel", panel.unwrap_or_default().into())])
            }
            // A book never asks for these: its recipes were read before.
            RecipeRefusal::Coats(_)
            | RecipeRefusal::Water(_)
            | RecipeRefusal::Parts { .. }
            | RecipeRefusal::Stains { .. }
            | RecipeRefusal::StainUntried { .. } => why.to_string(),
        }
    }

    /// Why a panel is not in a model.
    #[must_use]
    pub fn panel_left_out(self, why: LeftOut) -> String {
        let key = match why {
            LeftOut::NotPhotographed => "recipe-left-out-not-photographed",
            LeftOut::NotMeasured => "recipe-left-out-not-measured",
            LeftOut::StainedSince => "recipe-left-out-stained-since",
            LeftOut::RecipeUnknown => "recipe-left-out-recipe-unknown",
            LeftOut::RecipeWrong => "recipe-left-out-recipe-wrong",
            LeftOut::TooManyStains => "recipe-left-out-too-many-stains",
        };
        self.message(key, &[])
    }

    /// What the bare concrete was taken from.
    #[must_use]
    pub fn bare_from(self, from: BareFrom) -> String {
        let key = match from {
            BareFrom::SameState => "recipe-bare-same-state",
            BareFrom::WithoutSealer => "recipe-bare-without-sealer",
        };
        self.message(key, &[])
    }

    /// Where the best recipe stands at the end of what was tried.
    #[must_use]
    pub fn recipe_edge(self, edge: Edge) -> String {
        let key = match edge {
            Edge::MoreCoats => "recipe-edge-more-coats",
            Edge::FewerCoats => "recipe-edge-fewer-coats",
            Edge::MoreWater => "recipe-edge-more-water",
            Edge::LessWater => "recipe-edge-less-water",
            Edge::Shares => "recipe-edge-shares",
        };
        self.message(key, &[])
    }
}

/// A color's screen code.
#[must_use]
pub fn hex(lab: Lab) -> String {
    let [red, green, blue] = lab.srgb().as_bytes();
    format!("#{red:02x}{green:02x}{blue:02x}")
}

/// Shares as the smallest whole parts, when small ones do.
fn whole_parts(shares: &[(&str, Fraction)]) -> Option<Vec<u32>> {
    (1..=MAX_PARTS).find_map(|sum| {
        let parts: Vec<f64> = shares.iter().map(|(_, share)| share.as_share() * f64::from(sum)).collect();
        let whole = parts.iter().all(|part| (part - part.round()).abs() < 1e-6 && part.round() >= 1.0);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to MAX_PARTS")]
        whole.then(|| parts.iter().map(|part| part.round() as u32).collect())
    })
}
