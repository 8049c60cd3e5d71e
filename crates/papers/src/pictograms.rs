//! Our own pictograms: thick lines, black on white, drawn for 20 mm and up. A plain diagonal bar forbids.
//!
//! To add one: a drawing in `pictograms/` with a `viewBox` of 100 by 100, a line in `drawings!`, its
//! words under `[picture]` in both tables, and the incidents it stands for in [`Pictogram::of`].

/// A sprayer laying a film, crossed out; for the pour sheet.
pub(crate) const FILM: &[u8] = include_bytes!("../pictograms/film.svg");

macro_rules! drawings {
    ($($variant:ident = $name:literal),* $(,)?) => {
        /// A drawing.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub(crate) enum Pictogram { $($variant),* }

        impl Pictogram {
            /// Every drawing.
            #[cfg(test)]
            pub(crate) const ALL: &'static [Self] = &[$(Self::$variant),*];

            /// Its name: the file, and the key of its words.
            pub(crate) const fn name(self) -> &'static str {
                match self { $(Self::$variant => $name),* }
            }

            /// The SVG.
            pub(crate) const fn svg(self) -> &'static [u8] {
                match self { $(Self::$variant => include_bytes!(concat!("../pictograms/", $name, ".svg"))),* }
            }
        }
    };
}

drawings! {
    Chalk = "chalk", Marker = "marker", Tape = "tape", Nail = "nail", Lumber = "lumber", Battens = "battens",
    Plastic = "plastic", Printed = "printed", Pipe = "pipe", Tray = "tray", Lift = "lift", Boot = "boot",
    Acid = "acid", Spray = "spray", Puddle = "puddle", Cup = "cup", Slab = "slab", Report = "report",
}

impl Pictogram {
    /// The drawing for a kind of incident; kinds without one of their own get the slab with an
    /// exclamation mark.
    pub(crate) fn of(incident: &str) -> Self {
        match incident {
            "red-chalk" => Self::Chalk,
            "marker" => Self::Marker,
            "tape" => Self::Tape,
            "nailed-into-field" => Self::Nail,
            "lumber-left" => Self::Lumber,
            "stacked-material" => Self::Battens,
            "plastic-sheet" => Self::Plastic,
            "printed-cover" => Self::Printed,
            "cutting-oil" => Self::Pipe,
            "pipe-glue" => Self::Tray,
            "lift-oil" => Self::Lift,
            "footprints" => Self::Boot,
            "acid-or-bleach" => Self::Acid,
            "overspray" => Self::Spray,
            "water-puddle" => Self::Puddle,
            "food" => Self::Cup,
            _ => Self::Slab,
        }
    }
}
