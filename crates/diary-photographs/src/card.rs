//! The card in a picture, as an entry tells it or as it is seen.

use photo::{Card, Decoded, NoCard, Rect, Reflectance, find_card};
use slab_diary::body::{PictureBox, ReferenceCard};

/// A box of an entry in the pixels of its picture; nothing when it is less than a pixel.
#[must_use]
pub fn rect(marked: PictureBox, picture: &Decoded) -> Option<Rect> {
    Rect::from_percent([marked.x, marked.y, marked.w, marked.h], picture)
}

/// The card as it was marked, else one that is seen for sure.
///
/// # Errors
/// Why none was seen, when none was marked.
pub fn card(kind: Option<ReferenceCard>, marked: Option<PictureBox>, picture: &Decoded) -> Result<Card, NoCard> {
    let told = kind.map(|kind| match kind {
        ReferenceCard::GrayCard => Reflectance::GRAY_CARD,
        ReferenceCard::WhitePaper => Reflectance::WHITE_PAPER,
    });
    match marked.and_then(|marked| rect(marked, picture)) {
        Some(rect) => Ok(Card { rect, reflectance: told.unwrap_or(Reflectance::GRAY_CARD) }),
        None => find_card(picture).map(|found| match told {
            Some(reflectance) => Card { reflectance, ..found.card },
            None => found.card,
        }),
    }
}
