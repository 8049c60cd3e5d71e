//! A wished color and the recipe that comes nearest to it.

use localization::Locale;
use science::color::recipe::{Candidate, PracticalGrid, Search, Wish};
use science::color::{Lab, Srgb};
use slab_answers::panels::RecipeBook;

use super::{Swatch, swatch};
use crate::context::RequestContext;

/// What was wished for, as it was typed.
pub(super) struct Wished {
    /// Screen color `#rrggbb`.
    pub(super) color: String,
    pub(super) numbers: [String; 3],
    pub(super) panel: String,
    /// By which of them: `color`, `lab`, `panel`; nothing before anything was asked.
    pub(super) by: String,
    pub(super) panels: Vec<String>,
}

/// The answer in words.
pub(super) struct Found {
    pub(super) wish: Swatch,
    pub(super) best: Swatch,
    pub(super) recipe: String,
    pub(super) lines: Vec<String>,
    pub(super) doubts: Vec<String>,
    pub(super) runner_up: Option<String>,
    pub(super) nearest: Option<String>,
    pub(super) set: String,
    /// The predicted color, and the panel whose mottling goes with it.
    pub(super) lab: Lab,
    pub(super) nearest_panel: Option<String>,
}

/// What a fresh form shows: a mid brown.
const FIRST_COLOR: &str = "#6d5c46";

impl Wished {
    pub(super) fn read(context: &RequestContext, books: &[RecipeBook<'_>]) -> Self {
        let typed = |name: &str| context.query.first(name).unwrap_or_default().trim().to_owned();
        let color = typed("wish");
        Self {
            color: if color.is_empty() { FIRST_COLOR.to_owned() } else { color },
            numbers: ["wish_l", "wish_a", "wish_b"].map(typed),
            panel: typed("wish_panel"),
            by: typed("by"),
            panels: books.iter().flat_map(|book| book.used.iter().map(|used| used.panel.to_owned())).collect(),
        }
    }

    /// The answer of the first set that can give one, or what was wrong with the wish.
    pub(super) fn answer(&self, books: &[RecipeBook<'_>], locale: Locale) -> Option<Result<Found, String>> {
        if self.by.is_empty() {
            return None;
        }
        let named = |book: &&RecipeBook<'_>| self.by != "panel" || book.index_of(&self.panel).is_some();
        let Some(book) = books.iter().filter(|book| book.model.is_ok()).find(named) else {
            return Some(Err(locale.message("panels-no-model", &[])));
        };
        let wish = match self.wish(book, locale) {
            Ok(wish) => wish,
            Err(said) => return Some(Err(said)),
        };
        let model = book.model.as_ref().ok()?;
        let search = model.search(wish, &PracticalGrid::usual()).ok()?;
        Some(Ok(found(book, &search, locale)))
    }

    fn wish(&self, book: &RecipeBook<'_>, locale: Locale) -> Result<Wish, String> {
        match self.by.as_str() {
            "panel" => {
                book.index_of(&self.panel).map(Wish::Panel).ok_or_else(|| locale.message("panels-no-model", &[]))
            }
            "lab" => {
                let numbers: Vec<f64> =
                    self.numbers.iter().filter_map(|text| text.replace(',', ".").parse().ok()).collect();
                let lab = <[f64; 3]>::try_from(numbers).ok().and_then(|[l, a, b]| Lab::new(l, a, b).ok());
                lab.map(Wish::Lab).ok_or_else(|| locale.message("panels-wrong-lab", &[]))
            }
            _ => Srgb::read(&self.color)
                .map(Wish::Screen)
                .map_err(|_| locale.message("panels-wrong-color", &[("typed", self.color.as_str().into())])),
        }
    }
}

fn found(book: &RecipeBook<'_>, search: &Search, locale: Locale) -> Found {
    let number = |difference: science::color::ColorDifference| locale.number(difference.as_units(), 1);
    let recipe = |one: &Candidate| locale.recipe(&book.shares_of(&one.recipe), &one.recipe);
    let say = |key: &'static str, name: &'static str, value: String| locale.message(key, &[(name, value.into())]);
    let best = &search.best;
    let mut lines = match best.prediction.radius {
        Ok(radius) => vec![
            say("recipe-radius", "radius", number(radius)),
            say("recipe-expected", "difference", number(best.expected)),
        ],
        Err(_) => vec![say("recipe-off", "difference", number(best.expected))],
    };
    lines.extend(
        search.within_reach.map(|within| locale.message(if within { "recipe-within" } else { "recipe-beyond" }, &[])),
    );
    lines.extend(book.tried(best).map(|tried| say("recipe-tried", "panel", tried.panel.to_owned())));
    lines.extend(search.edges.iter().map(|edge| locale.recipe_edge(*edge)));
    let near = book.used.get(search.nearest_panel.index);
    let state = if book.state == slab_diary::body::PanelState::Sealed { "sealed" } else { "stained" };
    Found {
        wish: swatch(search.wish, locale),
        best: swatch(best.prediction.lab, locale),
        recipe: say("recipe-best", "recipe", recipe(best)),
        lines,
        doubts: locale.recipe_doubts(book),
        runner_up: search.runner_up.as_ref().map(|next| {
            let args = [("recipe", recipe(next).into()), ("difference", number(next.expected).into())];
            locale.message("recipe-runner-up", &args)
        }),
        nearest: near.map(|near| {
            let difference = number(search.nearest_panel.difference);
            locale.message("recipe-nearest", &[("panel", near.panel.into()), ("difference", difference.into())])
        }),
        set: locale.message(
            "recipe-set",
            &[("state", state.into()), ("concrete", locale.concrete_of(book.mix, book.finish).into())],
        ),
        lab: best.prediction.lab,
        nearest_panel: near.map(|near| near.panel.to_owned()),
    }
}
