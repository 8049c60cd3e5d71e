//! Which recipe gives a color, and how sure that is.

use localization::Locale;
use science::chance::Seed;
use science::color::recipe::{Candidate, PracticalGrid, RecipeModel, Search, Wish};
use science::color::{Lab, Srgb};
use serde_json::{Value, json};
use slab_answers::panels::{RecipeBook, recipe_books};
use slab_diary::body::PanelState;
use slab_diary::fold;

use crate::cli::{StateArg, Which};
use crate::failure::{Answer, Failure};
use crate::json::rounded;
use crate::out::answer;
use crate::session::Session;

/// What is asked for.
pub(crate) struct Asked {
    pub(crate) wish: Option<String>,
    pub(crate) state: Option<StateArg>,
    pub(crate) seed: u64,
}

pub(crate) fn run(session: &Session, which: &Which, asked: &Asked) -> Result<Answer, Failure> {
    let slab_asked = session.ask(which)?;
    let slab = fold(&slab_asked.diary, slab_asked.knowledge);
    let locale = &session.locale;
    let mut books = recipe_books(&slab, Seed(asked.seed));
    if let Some(state) = asked.state {
        books.retain(|book| book.state == PanelState::from(state));
    }
    // A panel wished for is a panel of one set; that set answers.
    let name = &slab_asked.record.name;
    let found = match &asked.wish {
        Some(wish) => Some(answered(&books, wish)?),
        None => None,
    };
    if session.json {
        let answer = json!({
            "slab": name,
            "seed": asked.seed,
            "sets": books.iter().map(book_json).collect::<Vec<_>>(),
            "answer": found.as_ref().map(|(at, search)| search_json(*at, &books[*at], search)),
        });
        answer!("{answer:#}");
    } else if let Some((at, search)) = &found {
        told_search(&books[*at], search, *locale);
    } else {
        told_books(name, &books, *locale);
    }
    let answered = match (&asked.wish, &found) {
        (None, _) => books.iter().any(|book| book.model.is_ok()),
        (Some(_), found) => found.as_ref().is_some_and(|(_, search)| search.within_reach == Some(true)),
    };
    Ok(if answered { Answer::Yes } else { Answer::No })
}

/// The set that answers a wish, and its answer.
fn answered(books: &[RecipeBook<'_>], wish: &str) -> Result<(usize, Search), Failure> {
    let usable = |book: &&RecipeBook<'_>| book.model.is_ok();
    let named = |book: &RecipeBook<'_>| book.index_of(wish);
    let found = books.iter().position(|book| book.model.is_ok() && named(book).is_some());
    let at = found.or_else(|| books.iter().position(|book| usable(&book)));
    let Some(at) = at else {
        return Err(Failure::Data(
            "no set of panels gives a model; what is missing: underfoot recipe without --wish".to_owned(),
        ));
    };
    let book = &books[at];
    let wish = match named(book) {
        Some(index) => Wish::Panel(index),
        None => read_wish(wish, books)?,
    };
    let model: &RecipeModel = book.model.as_ref().map_err(Failure::data)?;
    Ok((at, model.search(wish, &PracticalGrid::usual()).map_err(Failure::data)?))
}

fn read_wish(text: &str, books: &[RecipeBook<'_>]) -> Result<Wish, Failure> {
    if text.trim().starts_with('#') {
        return Ok(Wish::Screen(Srgb::read(text.trim()).map_err(|e| Failure::Use(format!("--wish: {e}")))?));
    }
    let numbers: Vec<f64> =
        text.split([',', ' ', ';']).filter(|part| !part.is_empty()).map_while(|part| part.parse().ok()).collect();
    if let [l, a, b] = numbers[..] {
        return Ok(Wish::Lab(Lab::new(l, a, b).map_err(|e| Failure::Use(format!("--wish: {e}")))?));
    }
    let panels: Vec<&str> = books.iter().flat_map(|book| book.used.iter().map(|used| used.panel)).collect();
    Err(Failure::Use(format!(
        "--wish \"{text}\": accepted: a screen color such as \"#7a563a\", L, a and b such as \"42, 9, 15\", or a measured panel ({})",
        panels.join(", ")
    )))
}

fn told_books(name: &str, books: &[RecipeBook<'_>], locale: Locale) {
    answer!("{}", locale.message("recipe-title", &[("name", name.into())]));
    if books.is_empty() {
        answer!("{}", locale.message("recipe-no-panels", &[]));
        return;
    }
    for book in books {
        let state = if book.state == PanelState::Sealed { "sealed" } else { "stained" };
        let args = [("state", state.into()), ("concrete", locale.concrete_of(book.mix, book.finish).into())];
        answer!("\n{}", locale.message("recipe-set", &args));
        for (panel, lab) in &book.bare {
            let args = [("panel", (*panel).into()), ("color", locale.color(*lab).into())];
            answer!("  {}", locale.message("recipe-bare-panel", &args));
        }
        for used in &book.used {
            let recipe = locale.recipe(&book.shares_of(&used.recipe), &used.recipe);
            let args =
                [("panel", used.panel.into()), ("recipe", recipe.into()), ("color", locale.color(used.lab).into())];
            answer!("  {}", locale.message("recipe-panel", &args));
        }
        for (panel, why) in &book.left_out {
            let args = [("panel", (*panel).into()), ("why", locale.panel_left_out(*why).into())];
            answer!("  {}", locale.message("recipe-panel-out", &args));
        }
        for line in locale.recipe_doubts(book) {
            answer!("  - {line}");
        }
    }
    answer!("\n{}", locale.message("recipe-wish-how", &[]));
}

fn told_search(book: &RecipeBook<'_>, search: &Search, locale: Locale) {
    let number = |difference: science::color::ColorDifference| locale.number(difference.as_units(), 1);
    let recipe = |one: &Candidate| locale.recipe(&book.shares_of(&one.recipe), &one.recipe);
    let say = |key: &'static str, name: &'static str, value: String| locale.message(key, &[(name, value.into())]);
    answer!("{}", say("recipe-wish", "color", locale.color(search.wish)));
    answer!("{}", say("recipe-best", "recipe", recipe(&search.best)));
    answer!("  {}", say("recipe-gives", "color", locale.color(search.best.prediction.lab)));
    match search.best.prediction.radius {
        Ok(radius) => {
            answer!("  {}", say("recipe-radius", "radius", number(radius)));
            answer!("  {}", say("recipe-expected", "difference", number(search.best.expected)));
        }
        Err(_) => answer!("  {}", say("recipe-off", "difference", number(search.best.expected))),
    }
    match search.within_reach {
        Some(true) => answer!("  {}", locale.message("recipe-within", &[])),
        Some(false) => answer!("  {}", locale.message("recipe-beyond", &[])),
        None => {}
    }
    if let Some(tried) = book.tried(&search.best) {
        answer!("  {}", say("recipe-tried", "panel", tried.panel.to_owned()));
    }
    for edge in &search.edges {
        answer!("  - {}", locale.recipe_edge(*edge));
    }
    for line in locale.recipe_doubts(book) {
        answer!("  - {line}");
    }
    if let Some(next) = &search.runner_up {
        let args = [("recipe", recipe(next).into()), ("difference", number(next.expected).into())];
        answer!("{}", locale.message("recipe-runner-up", &args));
    }
    if let Some(panel) = book.used.get(search.nearest_panel.index) {
        let args = [("panel", panel.panel.into()), ("difference", number(search.nearest_panel.difference).into())];
        answer!("{}", locale.message("recipe-nearest", &args));
    }
    answer!("{}", locale.message("recipe-regression", &[]));
}

fn lab_json(lab: Lab) -> Value {
    json!([rounded(lab.lightness(), 3), rounded(lab.a(), 3), rounded(lab.b(), 3)])
}

fn recipe_json(book: &RecipeBook<'_>, recipe: &science::color::recipe::Recipe) -> Value {
    let shares: serde_json::Map<String, Value> = book
        .shares_of(recipe)
        .into_iter()
        .map(|(stain, share)| (stain.to_owned(), rounded(share.as_share(), 6)))
        .collect();
    json!({
        "share_of_stain": shares,
        "water_parts": recipe.water.per_stain(),
        "coats": recipe.coats.count(),
    })
}

fn book_json(book: &RecipeBook<'_>) -> Value {
    let used = book.used.iter().map(
        |used| json!({ "panel": used.panel, "recipe": recipe_json(book, &used.recipe), "lab": lab_json(used.lab) }),
    );
    let bare = book.bare.iter().map(|(panel, lab)| json!({ "panel": panel, "lab": lab_json(*lab) }));
    let left_out = book.left_out.iter().map(|(panel, why)| json!({ "panel": panel, "why": why.code() }));
    json!({
        "mix": book.mix,
        "finish": book.finish,
        "state": state_word(book.state),
        "stains": book.stains,
        "bare": bare.collect::<Vec<_>>(),
        "bare_from": book.bare_from.map(slab_answers::panels::BareFrom::code),
        "used": used.collect::<Vec<_>>(),
        "left_out": left_out.collect::<Vec<_>>(),
        "model": match &book.model {
            Ok(model) => json!({
                "coat_power": rounded(model.coat_power(), 6),
                "water_power": rounded(model.water_power(), 6),
                "objective": rounded(model.objective(), 9),
                "strength_per_coat": (0..book.stains.len()).filter_map(|i| model.strength(i)).collect::<Vec<_>>(),
                "no_radius": model.interval().err().map(|why| json!({ "code": why.code(), "said": why.to_string() })),
            }),
            Err(why) => json!({ "refused": why.to_string() }),
        },
        "evidence": book.evidence.iter().map(ToString::to_string).collect::<Vec<_>>(),
    })
}

fn candidate_json(book: &RecipeBook<'_>, one: &Candidate) -> Value {
    json!({
        "recipe": recipe_json(book, &one.recipe),
        "lab": lab_json(one.prediction.lab),
        "srgb": one.prediction.lab.srgb().as_bytes(),
        "radius_90_de00": one.prediction.radius.ok().map(|r| rounded(r.as_units(), 4)),
        "expected_de00": rounded(one.expected.as_units(), 4),
    })
}

fn search_json(at: usize, book: &RecipeBook<'_>, search: &Search) -> Value {
    json!({
        "set": at,
        "wish_lab": lab_json(search.wish),
        "best": candidate_json(book, &search.best),
        "runner_up": search.runner_up.as_ref().map(|one| candidate_json(book, one)),
        "nearest_panel": book.used.get(search.nearest_panel.index).map(|used| {
            json!({ "panel": used.panel, "difference_de00": rounded(search.nearest_panel.difference.as_units(), 4) })
        }),
        "edges": search.edges.iter().map(|edge| edge.code()).collect::<Vec<_>>(),
        "within_reach": search.within_reach,
        "recipes_looked_at": search.tried,
    })
}

const fn state_word(state: PanelState) -> &'static str {
    match state {
        PanelState::Bare => "bare",
        PanelState::Stained => "stained",
        PanelState::Sealed => "sealed",
    }
}
