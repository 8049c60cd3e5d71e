//! How long evidence speaks, and when what proves a hold point will no longer do.

use jiff::civil::DateTime;
use units::Duration;

use super::{Judge, between};
use slab_diary::{Entry, EntryId, EntryKind};

/// The figure that tells how long entries of a kind count.
fn keeps(kind: EntryKind) -> Option<&'static str> {
    match kind {
        EntryKind::WaterDrop
        | EntryKind::Scrape
        | EntryKind::SolventWipe
        | EntryKind::AcidDrop
        | EntryKind::SurfacePh => Some("surface-tests-keep"),
        EntryKind::PlasticSheet | EntryKind::EmissionDish | EntryKind::SlabHumidity => Some("moisture-tests-keep"),
        EntryKind::Survey => Some("survey-keeps"),
        EntryKind::SiteCheck => Some("site-check-keeps"),
        EntryKind::AirReading => Some("air-reading-keeps"),
        _ => None,
    }
}

impl Judge<'_> {
    /// Whether an entry lies no longer back than a figure says tests keep.
    pub(super) fn keeps(&self, entry: &Entry, figure: &str) -> bool {
        between(entry.happened.instant(), self.at) <= self.figures.value::<Duration>(figure)
    }

    /// When the first of the entries that prove something will no longer count, by the slab's clock; nothing when
    /// none of them ever lapses.
    pub(super) fn lapses(&self, evidence: &[EntryId]) -> Option<DateTime> {
        let proving = self.slab.entries().iter().filter(|entry| evidence.contains(&entry.id));
        let until = proving.filter_map(|entry| {
            let figure = keeps(entry.body.kind()?)?;
            let keeps: Duration = self.figures.value(figure);
            let keeps = jiff::SignedDuration::from_secs(keeps.as_seconds() as i64);
            entry.happened.instant().checked_add(keeps).ok().filter(|until| *until >= self.at)
        });
        until.min().map(|at| at.to_zoned_datetime(self.slab.time_zone()).datetime())
    }
}
