//! Which warnings matter most on this site.

use trade_facts::{Incident, Trade};

use super::SiteNotice;
use crate::pictograms::Pictogram;

/// How many warnings one sheet holds in type that is read from 2 m.
const ROOM: usize = 9;

/// The trades whose own step is over when the notice goes up: the slab has been placed.
const GONE: [&str; 2] = ["ready-mix", "concrete sub"];

/// What spoils most floors and can be told in one picture. Our judgment, from the severities of
/// `incidents.toml` and the house rules R13 to R16.
const USUAL: [&str; ROOM] = [
    "red-chalk",
    "cutting-oil",
    "plastic-sheet",
    "acid-or-bleach",
    "tape",
    "nailed-into-field",
    "printed-cover",
    "lift-oil",
    "footprints",
];

impl SiteNotice {
    /// The usual warnings, for a site whose trades are not known.
    #[must_use]
    pub fn usual() -> Vec<String> {
        USUAL.map(str::to_owned).to_vec()
    }

    /// The warnings that matter most to these trades, worst first: kinds one of them usually causes or
    /// that anyone does, by severity, at most nine. Trades are written as in `incidents.toml`, in any case.
    #[must_use]
    pub fn for_trades(trades: &[&str]) -> Vec<String> {
        let here = |incident: &&Incident| {
            incident.trades.iter().any(|t| t == "all" || trades.iter().any(|w| w.eq_ignore_ascii_case(t)))
        };
        let still_to_come = |incident: &&Incident| incident.trades.iter().any(|t| !GONE.contains(&t.as_str()));
        let mut kinds: Vec<&Incident> = Trade::built_in().incidents().filter(still_to_come).filter(here).collect();
        // A stable sort keeps the order of the file among equals; a kind with its own picture goes first.
        kinds.sort_by_key(|kind| (std::cmp::Reverse(kind.severity), Pictogram::of(&kind.id) == Pictogram::Slab));
        kinds.into_iter().take(ROOM).map(|kind| kind.id.clone()).collect()
    }
}
