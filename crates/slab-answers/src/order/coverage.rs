//! How far the stain goes, zone by zone: from the panels of this slab, or from the trade's table.

use units::{Area, Coverage, Length, Volume};

use super::{Buyer, Spread};
use slab_diary::EntryId;
use slab_diary::Zone;
use slab_diary::body::{Finish, PanelMade, PanelStained};
use trade_facts::Grade;

/// What a coverage rests on.
#[derive(Debug, Clone, PartialEq)]
pub enum CoverageBasis {
    /// Measured on so many panels of the zone's finish.
    Panels(u32),
    /// The trade's range for the finish.
    Table,
    /// No finish is noted.
    Unknown,
}

/// How far the working mix goes in one zone, one coat.
#[derive(Debug, Clone, PartialEq)]
pub struct ZoneCoverage {
    /// The zone.
    pub zone: String,
    /// Its area.
    pub area: Area,
    /// Its finish, by id of the trade facts.
    pub finish: Option<String>,
    /// Coverage of one coat: low is the thirstiest.
    pub coverage: Spread<Coverage>,
    /// Coats that the finish needs beyond the recipe's, at its usual and at its worst.
    pub extra_coats: (u32, u32),
    /// What it rests on.
    pub basis: CoverageBasis,
    /// Grade of the figures.
    pub grade: Grade,
    /// Panels it was measured on.
    pub evidence: Vec<EntryId>,
}

impl Buyer<'_> {
    pub(super) fn coverage(&self) -> Vec<ZoneCoverage> {
        self.slab.zones().iter().filter_map(|zone| self.zone_coverage(zone)).collect()
    }

    fn zone_coverage(&self, zone: &Zone) -> Option<ZoneCoverage> {
        let area = zone.area?;
        let finish = self.slab.all::<Finish>().rfind(|s| self.slab.touches(s.entry, zone));
        let record = finish.and_then(|f| self.trade.finish(&f.body.finish));
        let mut found = ZoneCoverage {
            zone: zone.name.clone(),
            area,
            finish: record.map(|r| r.id.clone()),
            coverage: self.widest(),
            extra_coats: (0, 0),
            basis: CoverageBasis::Unknown,
            grade: Grade::CommonPractice,
            evidence: finish.map(|f| f.entry.id).into_iter().collect(),
        };
        let Some(record) = record else { return Some(found) };
        found.extra_coats = (record.extra_coats_low.into(), record.extra_coats_high.into());
        let (low, high) = record.coverage();
        found.coverage = Spread { low, usual: middle(low, high), high };
        found.basis = CoverageBasis::Table;
        if let Some((coverage, panels)) = self.panel_coverage(&record.id) {
            found.coverage = coverage;
            found.basis = CoverageBasis::Panels(panels.len() as u32);
            // The measurement is this slab's own; how far the floor may differ is our judgment.
            found.grade = Grade::ExpertJudgment;
            // The panels needed the coats they got: nothing is added for the finish.
            found.extra_coats = (0, 0);
            found.evidence.extend(panels);
        }
        Some(found)
    }

    /// The whole range of all finishes, for a zone whose finish nobody noted.
    fn widest(&self) -> Spread<Coverage> {
        let ranges: Vec<(Coverage, Coverage)> = self.trade.finishes().map(|f| f.coverage()).collect();
        let low = ranges.iter().map(|r| r.0).reduce(Coverage::min).unwrap_or(Coverage::ZERO);
        let high = ranges.iter().map(|r| r.1).reduce(Coverage::max).unwrap_or(Coverage::ZERO);
        Spread { low, usual: middle(low, high), high }
    }

    /// What the panels of a finish really drank: area times coats over volume, each panel alone,
    /// widened by how far a floor may differ from its panels.
    fn panel_coverage(&self, finish: &str) -> Option<(Spread<Coverage>, Vec<EntryId>)> {
        let mut measured: Vec<(Coverage, EntryId)> = Vec::new();
        for made in self.slab.all::<PanelMade>().filter(|s| s.body.finish.as_deref() == Some(finish)) {
            let stained = self
                .slab
                .all::<PanelStained>()
                .rfind(|s| s.body.panel.trim().eq_ignore_ascii_case(made.body.panel.trim()));
            let Some(stained) = stained else { continue };
            let side: Option<Length> = made.body.side.as_ref().map(units::AsWritten::value);
            let area = stained.body.area.as_ref().map(units::AsWritten::value).or(side.map(|s| s * s));
            let used = stained.body.used.as_ref().map(units::AsWritten::value).filter(|used| *used > Volume::ZERO);
            if let (Some(area), Some(used)) = (area, used) {
                measured.push((area * f64::from(stained.body.coats) / used, stained.entry.id));
            }
        }
        let low = measured.iter().map(|m| m.0).reduce(Coverage::min)?;
        let high = measured.iter().map(|m| m.0).reduce(Coverage::max)?;
        let usual = measured.iter().map(|m| m.0).sum::<Coverage>() / measured.len() as f64;
        let spread = self.figures.number("panel-coverage-spread");
        let coverage = Spread { low: low * (1.0 - spread), usual, high: high * (1.0 + spread) };
        Some((coverage, measured.into_iter().map(|m| m.1).collect()))
    }
}

/// The coverage whose need is midway between the needs of the two ends: the harmonic mean, since
/// gallons, not square feet, are bought.
fn middle(low: Coverage, high: Coverage) -> Coverage {
    let per = |c: Coverage| 1.0 / c.as_square_meters_per_cubic_meter();
    Coverage::square_meters_per_cubic_meter(2.0 / (per(low) + per(high)))
}
