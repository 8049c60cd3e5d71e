//! The color and the mottling of a panel.

use photo::{Decoded, PanelError, Rect, panel_color, panel_light};
use science::color::Lab;
use science::color::preview::{PanelColor, PixelSize, PreviewError};
use slab_diary::body::PanelPhotographed;
use units::Length;

use crate::card::{card, rect};

/// The side of a panel when nobody noted it, as panels are usually poured (common practice, no source).
const USUAL_SIDE: Length = Length::inches(18.0);

/// Mean color of a panel.
///
/// # Errors
/// No card, or a card or panel that cannot be measured.
pub fn panel_lab(body: &PanelPhotographed, picture: &Decoded) -> Result<Lab, PanelError> {
    let card = card(body.card, body.card_box, picture).map_err(|_| PanelError::NoCard)?;
    let area = Rect::of_panel(picture, Some(card.rect), body.panel_box.and_then(|marked| rect(marked, picture)));
    panel_color(picture, Some(card), area, None).map(|color| color.mean)
}

/// What an illustration of the floor is drawn from.
#[derive(Debug, Clone)]
pub struct Mottling {
    /// Colors, and how they are spread over the panel.
    pub color: PanelColor,
    /// How large a pixel is, and how that is known.
    pub scale_from: ScaleFrom,
}

/// How the size of a pixel on a panel is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ScaleFrom {
    /// The whole panel was marked, and its side is noted.
    Marked,
    /// Taken for granted: the side, or that the panel fills the picture beside the card.
    Assumed,
}

impl ScaleFrom {
    /// A stable word for screens and JSON.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::Marked => "marked",
            Self::Assumed => "assumed",
        }
    }
}

/// Why there is no illustration.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum MottlingError {
    /// The panel in the photograph.
    #[error(transparent)]
    Panel(#[from] PanelError),
    /// Its size or scale.
    #[error(transparent)]
    Preview(#[from] PreviewError),
}

/// The colors of a panel and their spread at their size on the floor. `side` is the panel's.
///
/// # Errors
/// As [`panel_lab`], and a panel of fewer than 32 pixels on a side.
pub fn panel_mottling(
    body: &PanelPhotographed,
    side: Option<Length>,
    picture: &Decoded,
) -> Result<Mottling, MottlingError> {
    let card = card(body.card, body.card_box, picture).map_err(|_| PanelError::NoCard)?;
    let marked = body.panel_box.and_then(|marked| rect(marked, picture));
    let area = Rect::of_panel(picture, Some(card.rect), marked);
    let points = panel_light(picture, Some(card), area)?;
    // The whole panel's box when it was marked, else what is measured of it.
    let whole = marked.unwrap_or(area);
    let across = 0.5 * (f64::from(whole.w) + f64::from(whole.h));
    let pixel = side.unwrap_or(USUAL_SIDE) / across * f64::from(points.step_px);
    let size = PixelSize { width: points.cols, height: points.rows };
    let color = PanelColor::from_light(&points.light, size, pixel)?;
    let known = marked.is_some() && side.is_some();
    Ok(Mottling { color, scale_from: if known { ScaleFrom::Marked } else { ScaleFrom::Assumed } })
}
