//! A drawing as PNG, for phones and papers that take no SVG. Our own lettering face is used, so that
//! it looks the same on every machine.

use std::sync::{Arc, LazyLock};

use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::{Options, Tree, fontdb};

/// Most pixels of a side.
const MAX_SIDE: u32 = 8000;

static FONTS: LazyLock<Arc<fontdb::Database>> = LazyLock::new(|| {
    let mut fonts = fontdb::Database::new();
    for face in [notosans::REGULAR_TTF, notosans::BOLD_TTF] {
        fonts.load_font_data(face.to_vec());
    }
    fonts.set_sans_serif_family("Noto Sans");
    Arc::new(fonts)
});

/// Why a drawing is not a picture.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PngError {
    /// It is no drawing.
    #[error("the drawing can't be read: {0}")]
    Unreadable(String),
    /// Its size is none.
    #[error("{width} by {height} pixels; accepted: 1 to 8000 on a side")]
    Size {
        /// Pixels across.
        width: u32,
        /// Pixels down.
        height: u32,
    },
    /// The picture could not be written.
    #[error("the picture can't be written: {0}")]
    Unwritable(String),
}

/// A drawing of this crate as PNG, so many times as large as it is in CSS pixels.
///
/// # Errors
/// What is no SVG, or more than 8000 pixels on a side.
pub fn png(svg: &str, times: f64) -> Result<Vec<u8>, PngError> {
    let options = Options { fontdb: Arc::clone(&FONTS), font_family: "Noto Sans".to_owned(), ..Options::default() };
    let tree = Tree::from_str(svg, &options).map_err(|e| PngError::Unreadable(e.to_string()))?;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a float turns into the nearest size")]
    let side = |units: f32| (f64::from(units) * times).round() as u32;
    let (width, height) = (side(tree.size().width()), side(tree.size().height()));
    if width.max(height) > MAX_SIDE {
        return Err(PngError::Size { width, height });
    }
    let mut sheet = Pixmap::new(width, height).ok_or(PngError::Size { width, height })?;
    #[expect(clippy::cast_possible_truncation, reason = "a scale")]
    let scale = times as f32;
    resvg::render(&tree, Transform::from_scale(scale, scale), &mut sheet.as_mut());
    sheet.encode_png().map_err(|e| PngError::Unwritable(e.to_string()))
}
