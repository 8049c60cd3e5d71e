//! A set of panels that belong together: same concrete, same finish, seen in the same state.

use science::chance::Seed;
use science::color::recipe::{
    Bare, Candidate, Coats, Recipe, RecipeModel, RecipeRefusal, Shares, StainedPanel, WaterParts,
};
use science::color::{Lab, LinearRgb};

use super::{Panel, panels, same};
use slab_diary::EntryId;
use slab_diary::Slab;
use slab_diary::body::{PanelStained, PanelState};

/// Most stains that one model takes apart.
const MAX_STAINS: usize = 3;

/// Panels of one concrete and finish in one state, and the model of their colors.
#[derive(Debug, Clone)]
pub struct RecipeBook<'d> {
    /// The mix of their concrete, as on the ticket; nothing when it was not noted.
    pub mix: Option<&'d str>,
    /// Their finish, by the id in the trade facts; nothing when it was not noted.
    pub finish: Option<&'d str>,
    /// The state in which their colors were measured: stained or sealed.
    pub state: PanelState,
    /// The stains by the crew's names, in the order of the shares of a recipe.
    pub stains: Vec<&'d str>,
    /// The panels in the model, in its order.
    pub used: Vec<Measured<'d>>,
    /// What the bare concrete was taken from.
    pub bare: Vec<(&'d str, Lab)>,
    /// In which state that was.
    pub bare_from: Option<BareFrom>,
    /// Panels of this concrete that are not in the model, and why not.
    pub left_out: Vec<(&'d str, LeftOut)>,
    /// The model, or why there is none.
    pub model: Result<RecipeModel, RecipeRefusal>,
    /// The entries it rests on.
    pub evidence: Vec<EntryId>,
}

/// A panel in a model.
#[derive(Debug, Clone)]
pub struct Measured<'d> {
    /// Its name.
    pub panel: &'d str,
    /// How it was stained.
    pub recipe: Recipe,
    /// Its color.
    pub lab: Lab,
}

/// The state of the bare concrete in a model.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BareFrom {
    /// EntryOf in the state that the stained panels were seen in: a bare panel under sealer for sealed
    /// ones.
    SameState,
    /// Sealed panels beside a bare panel without sealer. Sealer darkens, so the model takes a part
    /// of the sealer for stain; within the tried range its residuals say how well that does.
    WithoutSealer,
}

impl BareFrom {
    /// A stable word for screens and JSON.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::SameState => "same-state",
            Self::WithoutSealer => "without-sealer",
        }
    }
}

/// Why a panel is not in a model.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LeftOut {
    /// It was not photographed in this state.
    NotPhotographed,
    /// It was photographed, and its color was not measured.
    NotMeasured,
    /// It was stained again after its photograph.
    StainedSince,
    /// How it was stained is not noted.
    RecipeUnknown,
    /// What is noted cannot be a recipe.
    RecipeWrong,
    /// Its stain is not one of the three that most panels have: a model takes three apart.
    TooManyStains,
}

impl LeftOut {
    /// All, for the test of the translations.
    pub const ALL: &'static [Self] = &[
        Self::NotPhotographed,
        Self::NotMeasured,
        Self::StainedSince,
        Self::RecipeUnknown,
        Self::RecipeWrong,
        Self::TooManyStains,
    ];

    /// A stable word for screens and JSON.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::NotPhotographed => "not-photographed",
            Self::NotMeasured => "not-measured",
            Self::StainedSince => "stained-since",
            Self::RecipeUnknown => "recipe-unknown",
            Self::RecipeWrong => "recipe-wrong",
            Self::TooManyStains => "too-many-stains",
        }
    }
}

impl<'d> RecipeBook<'d> {
    /// The parts of a recipe by the names of the stains, those with no share left out.
    #[must_use]
    pub fn shares_of(&self, recipe: &Recipe) -> Vec<(&'d str, units::Fraction)> {
        let all = self.stains.iter().enumerate().map(|(index, stain)| (*stain, recipe.shares.share(index)));
        all.filter(|(_, share)| share.as_share() > 0.0).collect()
    }

    /// The panel that was stained by just this recipe, when one was.
    #[must_use]
    pub fn tried(&self, candidate: &Candidate) -> Option<&Measured<'d>> {
        self.used.iter().find(|panel| panel.recipe == candidate.recipe)
    }

    /// The place of a panel in the model.
    #[must_use]
    pub fn index_of(&self, panel: &str) -> Option<usize> {
        self.used.iter().position(|used| same(used.panel, panel))
    }

    /// Whether it tells the radius of its answers.
    #[must_use]
    pub fn has_interval(&self) -> bool {
        self.model.as_ref().is_ok_and(|model| model.interval().is_ok())
    }
}

/// The models that the panels of a slab allow, the one to ask first at the front: those with a radius
/// before those without, sealed before unsealed since sealed is what the client will see, and more
/// panels before fewer.
#[must_use]
pub fn recipe_books<'d>(slab: &Slab<'d>, seed: Seed) -> Vec<RecipeBook<'d>> {
    let all = panels(slab);
    let mut concretes: Vec<Vec<&Panel<'d>>> = Vec::new();
    for panel in &all {
        match concretes.iter_mut().find(|group| alike(group[0], panel)) {
            Some(group) => group.push(panel),
            None => concretes.push(vec![panel]),
        }
    }
    let mut books: Vec<RecipeBook<'d>> = concretes
        .iter()
        .flat_map(|group| [PanelState::Sealed, PanelState::Stained].map(|state| book(group, state, seed)))
        .filter(|book| !book.used.is_empty())
        .collect();
    books.sort_by_key(|book| {
        (
            !book.has_interval(),
            book.model.is_err(),
            std::cmp::Reverse(book.used.len()),
            book.state != PanelState::Sealed,
        )
    });
    books
}

/// Whether two panels are of the same concrete and finish, as far as it is noted.
fn alike(a: &Panel<'_>, b: &Panel<'_>) -> bool {
    let equal = |a: Option<&str>, b: Option<&str>| match (a, b) {
        (Some(a), Some(b)) => same(a, b),
        (None, None) => true,
        _ => false,
    };
    equal(a.mix(), b.mix()) && equal(a.finish(), b.finish())
}

fn book<'d>(group: &[&Panel<'d>], state: PanelState, seed: Seed) -> RecipeBook<'d> {
    let mut left_out = Vec::new();
    let mut told: Vec<(&Panel<'d>, &'d PanelStained, Lab)> = Vec::new();
    let mut evidence = Vec::new();
    for panel in group {
        match usable(panel, state) {
            Ok(Some((stained, lab))) => told.push((panel, stained, lab)),
            Ok(None) => {}
            Err(why) => left_out.push((panel.name, why)),
        }
    }
    let stains = stains(&told);
    let mut used = Vec::new();
    for (panel, stained, lab) in told {
        match recipe(stained, &stains) {
            Ok(recipe) => {
                evidence.extend(panel.evidence());
                used.push(Measured { panel: panel.name, recipe, lab });
            }
            Err(why) => left_out.push((panel.name, why)),
        }
    }
    let (bare, bare_from) = bare_of(group, state);
    evidence.extend(group.iter().filter(|p| bare.iter().any(|(name, _)| *name == p.name)).flat_map(|p| p.evidence()));
    evidence.sort_unstable();
    evidence.dedup();
    let model = model(&bare, &used, seed);
    let first = group[0];
    RecipeBook {
        mix: first.mix(),
        finish: first.finish(),
        state,
        stains,
        used,
        bare,
        bare_from,
        left_out,
        model,
        evidence,
    }
}

/// How a panel was stained and what color that gave; nothing for a bare panel.
fn usable<'d>(panel: &Panel<'d>, state: PanelState) -> Result<Option<(&'d PanelStained, Lab)>, LeftOut> {
    let Some(stained) = panel.stained else {
        let shown_stained = panel.look(PanelState::Stained).is_some();
        return if shown_stained { Err(LeftOut::RecipeUnknown) } else { Ok(None) };
    };
    let look = panel.look(state).ok_or(LeftOut::NotPhotographed)?;
    if look.outdated {
        return Err(LeftOut::StainedSince);
    }
    let lab = look.lab.ok_or(LeftOut::NotMeasured)?;
    Ok(Some((stained.body, lab)))
}

/// The stains, those in most panels first, at most as many as a model takes apart; among equals the
/// one that was used first.
fn stains<'d>(told: &[(&Panel<'d>, &'d PanelStained, Lab)]) -> Vec<&'d str> {
    let mut counted: Vec<(&'d str, usize)> = Vec::new();
    for (_, stained, _) in told {
        for share in stained.mix.iter().filter(|share| share.parts > 0.0) {
            match counted.iter_mut().find(|(known, _)| same(known, &share.stain)) {
                Some((_, count)) => *count += 1,
                None => counted.push((share.stain.trim(), 1)),
            }
        }
    }
    counted.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    counted.into_iter().take(MAX_STAINS).map(|(stain, _)| stain).collect()
}

fn recipe(stained: &PanelStained, stains: &[&str]) -> Result<Recipe, LeftOut> {
    let mut parts = vec![0.0; stains.len()];
    for share in stained.mix.iter().filter(|share| share.parts > 0.0) {
        let index = stains.iter().position(|known| same(known, &share.stain)).ok_or(LeftOut::TooManyStains)?;
        parts[index] += share.parts;
    }
    let wrong = |_| LeftOut::RecipeWrong;
    Ok(Recipe {
        shares: Shares::of_parts(&parts).map_err(wrong)?,
        water: WaterParts::new(stained.water_parts).map_err(wrong)?,
        coats: Coats::new(stained.coats).map_err(wrong)?,
    })
}

/// The colors of the bare concrete: in the same state where there are any, else without sealer.
fn bare_of<'d>(group: &[&Panel<'d>], state: PanelState) -> (Vec<(&'d str, Lab)>, Option<BareFrom>) {
    let unstained = |look: PanelState| -> Vec<(&'d str, Lab)> {
        let bare = group.iter().filter(|panel| look == PanelState::Bare || panel.stained.is_none());
        bare.filter_map(|panel| Some((panel.name, panel.color(look)?))).collect()
    };
    if state == PanelState::Sealed {
        let sealed = unstained(PanelState::Sealed);
        if !sealed.is_empty() {
            return (sealed, Some(BareFrom::SameState));
        }
    }
    let bare = unstained(PanelState::Bare);
    let from = match state {
        _ if bare.is_empty() => None,
        PanelState::Sealed => Some(BareFrom::WithoutSealer),
        PanelState::Bare | PanelState::Stained => Some(BareFrom::SameState),
    };
    (bare, from)
}

fn model(bare: &[(&str, Lab)], used: &[Measured<'_>], seed: Seed) -> Result<RecipeModel, RecipeRefusal> {
    let light = |lab: Lab| lab.xyz().linear();
    let places: Vec<LinearRgb> = bare.iter().map(|(_, lab)| light(*lab)).collect();
    let panels: Vec<StainedPanel> =
        used.iter().map(|panel| StainedPanel { recipe: panel.recipe.clone(), color: light(panel.lab) }).collect();
    RecipeModel::fit(&Bare::of_places(&places)?, &panels, seed)
}
