//! Papers for the site: typeset PDF made from typed data.
//!
//! Why this crate exists: what leaves the contractor's hands is paper. Each paper is a pure function
//! of its data, a language and a sheet size; it opens no file and reads no clock (dates are data),
//! so the same data always give the same bytes. The typesetter is behind one module; the words are
//! messages in `locales/*/papers.ftl`; the layouts are templates under `templates/`; the pictograms are our own
//! drawings under `pictograms/`. Statements of the trade come from [`trade_facts`] with their grade,
//! and every paper ends by saying what it rests on.
//!
//! To add a paper: a module with its data type and one function to bytes, a template, its messages in
//! both languages, and a line in the rendering test. A text that does not change stands in the template, by its
//! key in `say("…")`.

mod error;
mod from_slab;
mod grades;
mod notice;
mod page;
mod pictograms;
mod pour;
mod qr_code;
mod show;
#[cfg(test)]
mod tests;
mod typeset;

pub use error::PaperError;
pub use from_slab::PourWishes;
pub use localization::Lang;
pub use notice::{Found, SiteNotice, site_notice};
pub use page::PageSize;
pub use pour::{
    ConcreteOrder, HourRisk, JointAdvice, Panels, PourSheet, PourWeather, PourZone, WeatherBasis, hour_risks,
    pour_sheet,
};
