//! Our own pictograms: thick lines, black on white, drawn for 20 mm and up. A plain diagonal bar forbids.
//!
//! To add one: a drawing in `pictograms/` with a `viewBox` of 100 by 100, a line in `drawings!`, its
//! words in both languages, and the incidents it stands for in [`Pictogram::of`].

/// A sprayer laying a film, crossed out; for the pour sheet.
pub(crate) const FILM: &[u8] = include_bytes!("../pictograms/film.svg");

macro_rules! drawings {
    ($($variant:ident = $name:literal, $key:literal;)*) => {
        /// A drawing.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub(crate) enum Pictogram { $($variant),* }

        impl Pictogram {
            /// The name of its file.
            pub(crate) const fn file(self) -> &'static str {
                match self { $(Self::$variant => $name),* }
            }

            /// The key of its words.
            pub(crate) const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key),* }
            }

            /// The SVG.
            pub(crate) const fn svg(self) -> &'static [u8] {
                match self { $(Self::$variant => include_bytes!(concat!("../pictograms/", $name))),* }
            }
        }
    };
}

drawings! {
    Chalk = "chalk.svg", "paper-picture-chalk";
    Marker = "marker.svg", "paper-picture-marker";
    Tape = "tape.svg", "paper-picture-tape";
    Nail = "nail.svg", "paper-picture-nail";
    Lumber = "lumber.svg", "paper-picture-lumber";
    Battens = "battens.svg", "paper-picture-battens";
    Plastic = "plastic.svg", "paper-picture-plastic";
    Printed = "printed.svg", "paper-picture-printed";
    Pipe = "pipe.svg", "paper-picture-pipe";
    Tray = "tray.svg", "paper-picture-tray";
    Lift = "lift.svg", "paper-picture-lift";
    Boot = "boot.svg", "paper-picture-boot";
    Acid = "acid.svg", "paper-picture-acid";
    Spray = "spray.svg", "paper-picture-spray";
    Puddle = "puddle.svg", "paper-picture-puddle";
    Cup = "cup.svg", "paper-picture-cup";
    Slab = "slab.svg", "paper-picture-slab";
    Report = "report.svg", "paper-picture-report";
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
