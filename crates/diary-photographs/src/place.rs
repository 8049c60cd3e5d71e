//! One place of the slab in its photographs, and the same place over days.

use jiff::Timestamp;
use photo::{Decoded, Evenness, EvennessLook, Series, Verdict, Why, evenness, series, two};
use slab_diary::body::SlabPhotograph;

use crate::card::card;

/// What the photographs of one entry say.
#[derive(Debug, Clone)]
pub struct Looked {
    /// The verdict of the entry: of its one photograph, or of its first two together.
    pub verdict: Verdict,
    /// Why, where it is can't tell, and remarks.
    pub why: Vec<Why>,
    /// Each photograph that was measured, the first two of the entry at most.
    pub each: Vec<Evenness>,
}

impl Looked {
    /// The same without the maps, to be kept.
    #[must_use]
    pub fn without_maps(self) -> Self {
        Self { each: self.each.into_iter().map(Evenness::without_map).collect(), ..self }
    }

    /// Whether a second photograph from another side or hour could settle it.
    #[must_use]
    pub fn asks_for_second(&self) -> bool {
        self.each.len() == 1 && self.each[0].asks_for_second()
    }

    /// The highest score of its photographs.
    #[must_use]
    pub fn score_de00(&self) -> Option<f64> {
        self.each.iter().filter_map(|one| one.score_de00).max_by(f64::total_cmp)
    }
}

/// Measures the photographs of an entry: those after the second are not looked at. Nothing when it has
/// none. The marked card is the first photograph's; in the second it is looked for.
#[must_use]
pub fn look(body: &SlabPhotograph, pictures: &[Decoded]) -> Option<Looked> {
    let each: Vec<Evenness> = pictures
        .iter()
        .take(2)
        .enumerate()
        .map(|(index, picture)| {
            let marked = body.card_box.filter(|_| index == 0);
            let card = card(body.card, marked, picture).ok();
            evenness(picture, &EvennessLook { card, scale: None })
        })
        .collect();
    match &each[..] {
        [] => None,
        [one] => Some(Looked { verdict: one.verdict, why: one.why.clone(), each }),
        [first, second, ..] => {
            let both = two(first, second);
            Some(Looked { verdict: both.verdict, why: both.why, each })
        }
    }
}

/// The entries of one place over days, as one row of scores: the first photograph of each, with the
/// verdict of the entry.
#[must_use]
pub fn row(days: &[(Timestamp, &Looked)]) -> Series {
    let firsts: Vec<(Timestamp, Evenness)> = days
        .iter()
        .filter_map(|(at, looked)| Some((*at, Evenness { verdict: looked.verdict, ..looked.each.first()?.clone() })))
        .collect();
    series(&firsts)
}
