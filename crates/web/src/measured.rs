//! What a photograph that came with a form measures, for the fields that were left to it.

use photo::{Card, Decoded, EvennessLook, Rect, Reflectance, decode, evenness, find_card, panel_colour};
use serde_json::{Map, Value, json};

/// Fills in what the photographs say and the person did not: a slab's evenness, a panel's colour. What
/// was typed stands. A photograph that says nothing for sure leaves "can't tell", or no colour.
pub(crate) fn fill_in(body: &mut Map<String, Value>, photographs: &[Vec<u8>]) {
    let kind = body.get("kind").and_then(Value::as_str).unwrap_or_default().to_owned();
    let Some(picture) = photographs.first().and_then(|bytes| decode(bytes).ok()) else { return };
    match kind.as_str() {
        "slab_photograph" if !body.contains_key("evenness") => {
            let look = EvennessLook { card: card(body, &picture), scale: None };
            body.insert("evenness".to_owned(), json!(evenness(&picture, &look).verdict.word()));
        }
        "panel_photographed" if !body.contains_key("lab") => {
            if let Some(lab) = panel_lab(&picture) {
                body.insert("lab".to_owned(), json!(lab));
            }
        }
        _ => {}
    }
}

/// The card as it was marked, else one that is seen for sure.
pub(crate) fn card(body: &Map<String, Value>, picture: &Decoded) -> Option<Card> {
    let marked = body.get("card_box").and_then(|place| {
        let part = |name: &str| place.get(name).and_then(Value::as_f64);
        Rect::from_percent([part("x")?, part("y")?, part("w")?, part("h")?], picture)
    });
    let reflectance = match body.get("card").and_then(Value::as_str) {
        Some("white_paper") => Reflectance::WHITE_PAPER,
        _ => Reflectance::GREY_CARD,
    };
    match marked {
        Some(rect) => Some(Card { rect, reflectance }),
        None => find_card(picture).ok().map(|found| found.card),
    }
}

/// Mean colour of the panel beside a card that is seen for sure; rounded as far as a photograph goes.
fn panel_lab(picture: &Decoded) -> Option<[f64; 3]> {
    let card = find_card(picture).ok()?.card;
    let colour = panel_colour(picture, Some(card), beside(picture, card.rect), None).ok()?;
    Some([colour.mean.lightness(), colour.mean.a(), colour.mean.b()].map(|n| (n * 100.0).round() / 100.0))
}

/// The larger part of the picture left or right of the card, a tenth in from its edges.
fn beside(picture: &Decoded, card: Rect) -> Rect {
    let (width, height) = (picture.width(), picture.height());
    let end = (card.x + card.w).min(width);
    let (left, right) = if card.x > width - end { (0, card.x) } else { (end, width) };
    let wide = right.saturating_sub(left);
    Rect {
        x: left + wide / 10,
        y: height / 10,
        w: wide.saturating_sub(wide / 5).max(1),
        h: height.saturating_sub(height / 5).max(1),
    }
}
