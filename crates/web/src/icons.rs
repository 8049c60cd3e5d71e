//! Which symbol of `templates/icons.html` stands beside which words.

use slab_answers::standing::State;

/// The symbol of a state: its shape is the one that papers print.
pub(crate) fn of_state(state: &str) -> &'static str {
    match state {
        s if s == State::Released.name() => "released",
        s if s == State::Held.name() => "held",
        s if s == State::CantTell.name() => "cant_tell",
        _ => "unproven",
    }
}

/// The symbol of a way, by the last part of its address: a screen or a kind of entry.
pub(crate) fn of_way(href: &str) -> &'static str {
    let path = href.split(['?', '#']).next().unwrap_or_default();
    let mut parts = path.trim_matches('/').rsplit('/');
    let (last, before) = (parts.next().unwrap_or_default(), parts.next());
    match last {
        "" => "slabs",
        "plan" => "plan",
        "diary" => "diary",
        "add" => "write",
        "photographs" | "slab_photograph" | "panel_photographed" => "photo",
        "panels" | "choice" | "panel_made" => "panels",
        "order" => "order",
        "drying" | "slab_humidity" => "drying",
        "pour-day" => "day",
        "time" => "time",
        "papers" => "papers",
        "links" => "share",
        "sums" => "sums",
        "glossary" => "words",
        "facts" => "facts",
        "people" => "people",
        "password" => "key",
        "water_drop" => "drop",
        "scrape" => "scrape",
        "incident" | "defect" => "incident",
        "surface_ph" => "strip",
        "air_reading" => "air",
        _ if matches!(before, Some("slab" | "s")) => "slab",
        _ => "note",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const DRAWN: &str = include_str!("../templates/icons.html");

    fn is_drawn(name: &str) -> bool {
        DRAWN.contains(&format!("<symbol id=\"i-{name}\""))
    }

    #[test]
    fn every_symbol_that_is_asked_for_is_drawn() {
        let ways = ["/", "/slab/0198", "/slab/0198/plan?finishes=yes", "/s/token", "/slab/0198/add/water_drop?zone=a"];
        let names = ways.map(of_way);
        assert_eq!(names, ["slabs", "slab", "plan", "slab", "drop"]);
        let states = ["released", "held", "cant_tell", "unproven"].map(of_state);
        for name in names.into_iter().chain(states).chain(["note", "photo"]) {
            assert!(is_drawn(name), "{name}");
        }
        assert!(!is_drawn("nothing-like-this"));
    }

    /// Whatever the function can answer, as its own text lists it.
    #[test]
    fn no_answer_lacks_its_drawing() {
        let source = include_str!("icons.rs").split("#[cfg(test)]").next().unwrap_or_default();
        let answers: Vec<&str> = source.split("=> \"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        assert!(answers.len() > 20, "{answers:?}");
        for name in answers {
            assert!(is_drawn(name), "{name}");
        }
    }
}
