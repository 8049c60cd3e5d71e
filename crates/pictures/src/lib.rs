//! Our own drawings as SVG: the plan, the drying and evaporation charts, the time line.
//!
//! Why this crate exists: pages, papers and the command line show the same pictures, and each must
//! stand by itself: a drawing knows nothing of the page around it. Everything here is a pure
//! function from plain data to text.
//!
//! What every drawing keeps, each held by a test:
//! - no style attribute, no style sheet, no script, no outside font, so that a page with a strict
//!   Content-Security-Policy can show it; looks are presentation attributes with classes beside them,
//!   which a page's style sheet may recolor (`p-ink`, `p-line`, `p-zone`, …);
//! - nothing is told by color alone: shape, hatch or word stands beside it;
//! - lettering of at least 14 units, in a drawing laid out for the pixels it gets;
//! - whatever a person typed is escaped; ids begin with the caller's prefix;
//! - the same in words beside it, for those who cannot use a picture.
//!
//! To add a drawing: a module with plain input structs, the [`Drawing`] it gives, and a case in
//! `tests/all/sound.rs`, which holds it to the list above.

mod boxes;
mod chart;
mod day;
mod hatch;
mod key;
mod lettering;
mod look;
mod plan;
mod png;
mod spread;
mod steps;
mod svg;
mod time_line;

pub use chart::{
    AlarmLine, BandPoint, DryingChart, EvaporationChart, EvaporationHour, LimitLine, RateBand, ReadingPoint,
    ScoreChart, drying_chart, evaporation_chart, score_chart,
};
pub use key::KeyLine;
pub use look::{Drawing, Look, Table};
pub use plan::{
    FloorPart, Layer, MarkKind, MarkPlace, PlanDrawing, PlanItem, PlanLayers, PlanLook, PlanMark, PlanView,
    bay_sentences, floor_svg, marks_of, next_marks, no_next_sentence, plan_svg, stretch_svg, zone_sentences,
};
pub use png::{PngError, png};
pub use steps::{Step, steps};
pub use time_line::{ForecastSpan, Happened, Milestone, TimeLine, time_line};
