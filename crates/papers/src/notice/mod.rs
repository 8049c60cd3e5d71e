//! The site notice: what other trades must know about the slab, on one sheet, in two languages.

mod choose;
mod sheet;
#[cfg(test)]
mod tests;

use jiff::civil::Date;

pub use sheet::site_notice;

/// The data of a site notice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SiteNotice {
    /// Name of the job.
    pub job: String,
    /// Name of the slab.
    pub slab: String,
    /// The day it goes up.
    pub posted: Date,
    /// Ids of the incident kinds in `incidents.toml` it warns of, in the order printed; at least one.
    /// [`SiteNotice::usual`] and [`SiteNotice::for_trades`] choose.
    pub kinds: Vec<String>,
    /// What was already found on this slab, worst first: what does not fit is counted.
    pub found: Vec<Found>,
    /// The address where this slab can be seen, printed as a code for a phone's camera and as text under
    /// it: `http` or `https`, ASCII, at most 200 signs. Whoever reads the sheet can open it.
    pub link: Option<String>,
}

/// Something already found on the slab.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// Id of its kind in `incidents.toml`.
    pub kind: String,
    /// Where, in the words of the diary; the same in both languages.
    pub place: String,
}
