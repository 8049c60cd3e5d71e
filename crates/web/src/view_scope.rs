//! How much of a slab is looked at, and from where: from our own pages, or through a share link.

use slab_diary::{Entry, EntryKind};

use crate::context::RequestContext;
use crate::visitor::Permission;

/// What no link shows: the contractor's own hours and costs.
const OWN_BUSINESS: [EntryKind; 1] = [EntryKind::TimeCost];

/// What a page about a slab may show and lead to.
#[derive(Debug, Clone)]
pub(crate) struct ViewScope {
    /// What the addresses of the slab's pages begin with.
    pub(crate) base: String,
    /// Whether there are ways to write.
    pub(crate) writes: bool,
    /// Whether single entries can be opened.
    pub(crate) entries: bool,
    /// Whether the photographs of entries are shown.
    pub(crate) photographs: bool,
    pub(crate) by_link: bool,
}

impl ViewScope {
    /// The slab on our own pages.
    pub(crate) fn own(context: &RequestContext, slab: slab_diary::SlabId) -> Self {
        Self {
            base: format!("/slab/{slab}"),
            writes: context.visitor.permission >= Permission::Write,
            entries: true,
            photographs: true,
            by_link: false,
        }
    }

    /// Whether an entry is to be seen. What a newer program wrote may be anything, so no link shows it.
    pub(crate) fn shows(&self, entry: &Entry) -> bool {
        !self.by_link || self.kinds().is_none_or(|kinds| kinds.contains(&entry.body.kind_name()))
    }

    /// The kinds of entry to be seen; nothing for all of them.
    pub(crate) fn kinds(&self) -> Option<Vec<&'static str>> {
        let shown = || {
            let seen = EntryKind::ALL.iter().filter(|kind| !OWN_BUSINESS.contains(kind));
            seen.map(|kind| kind.name()).collect()
        };
        self.by_link.then(shown)
    }
}
