//! How a test is done, as a short row of drawings: one deed in each, its caption below.
//!
//! Why this stands here: words alone are slow to read on one's knees with wet gloves. The drawings are files under
//! `steps/`, one for each step, `<subject>-<n>.svg`, drawn for 150 pixels of width. All share one vocabulary:
//! - the slab in section is a line over a light fill with stones; seen from above it is the light fill alone;
//! - a bare hand has no fill, a gloved one a light fill and a cuff;
//! - water is an outlined drop, acid a full one; what is wet, in shadow or card is the darker fill;
//! - a dial with a full hour's part is waiting, a stopwatch is timing, an eye is looking.
//!
//! They hold no letters or numerals, no ids and no looks but presentation attributes in `currentColor`, so that any
//! number of them may stand on one page with a strict Content-Security-Policy. They want light paper in both themes,
//! as all drawings do: wet and shadow are darker than dry. They are hidden from screen readers: the caption tells all.
//!
//! To add a subject: its files under `steps/`, its list and its line in [`steps`], its captions in
//! `locales/*/steps.ftl`. Captions say no figure that a slab may set for itself.

/// One step of a test.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// The drawing, a whole `<svg>` of 160 by 120 units without a size of its own.
    pub svg: &'static str,
    /// The key of its caption's message, which asks for no arguments.
    pub caption: &'static str,
}

/// The steps of a test in their order. The subject is the name of a kind of entry as the diary writes it
/// (`slab_diary::EntryKind::name`), or `card` for the reference card in any photograph. Photographs of the slab and
/// of panels have the steps of the card. Empty where nothing is drawn.
#[must_use]
pub fn steps(subject: &str) -> &'static [Step] {
    match subject {
        "water_drop" => WATER_DROP,
        "scrape" => SCRAPE,
        "solvent_wipe" => SOLVENT_WIPE,
        "acid_drop" => ACID_DROP,
        "slab_humidity" => SLAB_HUMIDITY,
        "plastic_sheet" => PLASTIC_SHEET,
        "card" | "slab_photograph" | "panel_photographed" => CARD,
        _ => &[],
    }
}

const WATER_DROP: &[Step] = &[
    Step { svg: include_str!("../steps/water_drop-1.svg"), caption: "step-water-drop-1" },
    Step { svg: include_str!("../steps/water_drop-2.svg"), caption: "step-water-drop-2" },
    Step { svg: include_str!("../steps/water_drop-3.svg"), caption: "step-water-drop-3" },
    Step { svg: include_str!("../steps/water_drop-4.svg"), caption: "step-water-drop-4" },
    Step { svg: include_str!("../steps/water_drop-5.svg"), caption: "step-water-drop-5" },
];

const SCRAPE: &[Step] = &[
    Step { svg: include_str!("../steps/scrape-1.svg"), caption: "step-scrape-1" },
    Step { svg: include_str!("../steps/scrape-2.svg"), caption: "step-scrape-2" },
    Step { svg: include_str!("../steps/scrape-3.svg"), caption: "step-scrape-3" },
    Step { svg: include_str!("../steps/scrape-4.svg"), caption: "step-scrape-4" },
];

const SOLVENT_WIPE: &[Step] = &[
    Step { svg: include_str!("../steps/solvent_wipe-1.svg"), caption: "step-solvent-wipe-1" },
    Step { svg: include_str!("../steps/solvent_wipe-2.svg"), caption: "step-solvent-wipe-2" },
    Step { svg: include_str!("../steps/solvent_wipe-3.svg"), caption: "step-solvent-wipe-3" },
    Step { svg: include_str!("../steps/solvent_wipe-4.svg"), caption: "step-solvent-wipe-4" },
];

const ACID_DROP: &[Step] = &[
    Step { svg: include_str!("../steps/acid_drop-1.svg"), caption: "step-acid-drop-1" },
    Step { svg: include_str!("../steps/acid_drop-2.svg"), caption: "step-acid-drop-2" },
    Step { svg: include_str!("../steps/acid_drop-3.svg"), caption: "step-acid-drop-3" },
    Step { svg: include_str!("../steps/acid_drop-4.svg"), caption: "step-acid-drop-4" },
    Step { svg: include_str!("../steps/acid_drop-5.svg"), caption: "step-acid-drop-5" },
];

const SLAB_HUMIDITY: &[Step] = &[
    Step { svg: include_str!("../steps/slab_humidity-1.svg"), caption: "step-slab-humidity-1" },
    Step { svg: include_str!("../steps/slab_humidity-2.svg"), caption: "step-slab-humidity-2" },
    Step { svg: include_str!("../steps/slab_humidity-3.svg"), caption: "step-slab-humidity-3" },
    Step { svg: include_str!("../steps/slab_humidity-4.svg"), caption: "step-slab-humidity-4" },
    Step { svg: include_str!("../steps/slab_humidity-5.svg"), caption: "step-slab-humidity-5" },
];

const PLASTIC_SHEET: &[Step] = &[
    Step { svg: include_str!("../steps/plastic_sheet-1.svg"), caption: "step-plastic-sheet-1" },
    Step { svg: include_str!("../steps/plastic_sheet-2.svg"), caption: "step-plastic-sheet-2" },
    Step { svg: include_str!("../steps/plastic_sheet-3.svg"), caption: "step-plastic-sheet-3" },
    Step { svg: include_str!("../steps/plastic_sheet-4.svg"), caption: "step-plastic-sheet-4" },
    Step { svg: include_str!("../steps/plastic_sheet-5.svg"), caption: "step-plastic-sheet-5" },
];

const CARD: &[Step] = &[
    Step { svg: include_str!("../steps/card-1.svg"), caption: "step-card-1" },
    Step { svg: include_str!("../steps/card-2.svg"), caption: "step-card-2" },
    Step { svg: include_str!("../steps/card-3.svg"), caption: "step-card-3" },
    Step { svg: include_str!("../steps/card-4.svg"), caption: "step-card-4" },
    Step { svg: include_str!("../steps/card-5.svg"), caption: "step-card-5" },
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use localization::{Lang, Locale, UnitSystem};
    use roxmltree::Document;
    use slab_diary::EntryKind;

    use super::{CARD, Step, steps};

    /// Longest caption, in characters: beyond it the caption outgrows its drawing on a phone.
    const LONGEST: usize = 90;
    /// Largest drawing, in bytes: a page carries five.
    const LARGEST: usize = 1500;

    fn all() -> Vec<&'static Step> {
        let kinds = EntryKind::ALL.iter().map(|kind| kind.name()).filter(|name| steps(name) != CARD);
        kinds.chain(["card"]).flat_map(steps).collect()
    }

    #[test]
    fn a_subject_has_a_short_row_or_none() {
        let rows = EntryKind::ALL.iter().map(|kind| steps(kind.name()));
        let drawn: Vec<_> = rows.filter(|row| !row.is_empty()).collect();
        assert_eq!(drawn.len(), 8, "six tests and two kinds of photograph");
        assert!(drawn.iter().all(|row| (3..=5).contains(&row.len())));
        assert_eq!(steps("card"), CARD);
        assert!(steps("pour").is_empty() && steps("").is_empty() && steps("Card").is_empty());
    }

    #[test]
    fn every_drawing_is_sound_and_has_no_letters_or_looks_of_its_own() {
        let plain = ["svg", "g", "path", "circle"];
        for Step { svg, caption } in all() {
            let document = Document::parse(svg).unwrap_or_else(|error| panic!("{caption}: {error}"));
            let root = document.root_element();
            assert_eq!(root.attribute("viewBox"), Some("0 0 160 120"), "{caption}");
            assert_eq!(root.attribute("aria-hidden"), Some("true"), "{caption}");
            assert!(root.attribute("width").is_none() && root.attribute("height").is_none(), "{caption}");
            for element in document.descendants().filter(|node| node.is_element()) {
                assert!(plain.contains(&element.tag_name().name()), "{caption}: {element:?}");
                assert!(element.attribute("style").is_none() && element.attribute("id").is_none(), "{caption}");
                for paint in ["fill", "stroke"].into_iter().filter_map(|name| element.attribute(name)) {
                    assert!(["none", "currentColor"].contains(&paint), "{caption}: {paint}");
                }
            }
            let mut texts = document.descendants().filter(|node| node.is_text());
            assert!(texts.all(|node| node.text() == Some("\n")), "{caption} holds letters");
            assert!(svg.len() <= LARGEST, "{caption}: {} bytes", svg.len());
        }
    }

    #[test]
    fn every_caption_is_one_short_message_in_both_languages() {
        let all = all();
        let captions: BTreeSet<&str> = all.iter().map(|step| step.caption).collect();
        let drawings: BTreeSet<&str> = all.iter().map(|step| step.svg).collect();
        assert_eq!((captions.len(), drawings.len()), (all.len(), all.len()), "a step stands twice");
        for lang in Lang::ALL {
            let locale = Locale::new(lang, UnitSystem::Imperial);
            for &caption in &captions {
                assert!(locale.knows(caption), "{caption}");
                let said = locale.message(caption, &[]);
                assert!(said.chars().count() <= LONGEST, "{caption} is too long: {said}");
                assert!(!said.chars().any(|c| c.is_ascii_digit()), "{caption} says a figure: {said}");
            }
        }
    }
}
