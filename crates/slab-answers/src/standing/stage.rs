//! How far a zone is: before the stain, in its dwell, at the wash, under sealer, or done.
//!
//! Once stain is on, the questions of the bare slab are closed: their tests would mark the floor and could change
//! nothing any more.

use jiff::Timestamp;
use jiff::civil::DateTime;
use units::Duration;

use super::{HoldPointId, Judge, between};
use slab_diary::body::{CoatLaid, PanelStained, SealerChosen};
use slab_diary::{EntryOf, Zone};

/// How far a zone is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Stage {
    /// No stain is on it.
    Bare,
    /// The stain works; nobody walks on it.
    Dwell {
        /// Until then by the slab's clock, where the dwell is known.
        until: Option<DateTime>,
    },
    /// A coat has worked, and the recipe asks for another.
    NextCoat {
        /// The coat that comes.
        coat: u32,
        /// Coats in all.
        of: u32,
    },
    /// All coats have worked: the acid must come off.
    Neutralize,
    /// Neutralized, to be rinsed.
    Rinse,
    /// Rinsed: pH and moisture decide when it can be sealed.
    Dry,
    /// Sealer is on, and more is to come.
    Seal {
        /// The coat that comes.
        coat: u32,
        /// Coats in all.
        of: u32,
        /// Not before this.
        from: DateTime,
    },
    /// The last coat of sealer hardens.
    Cure {
        /// Nobody walks on it until then.
        until: DateTime,
    },
    /// It may be walked on.
    Open,
}

impl Stage {
    /// Its name in JSON and for its sentence.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Bare => "bare",
            Self::Dwell { .. } => "dwell",
            Self::NextCoat { .. } => "next_coat",
            Self::Neutralize => "neutralize",
            Self::Rinse => "rinse",
            Self::Dry => "dry",
            Self::Seal { .. } => "seal",
            Self::Cure { .. } => "cure",
            Self::Open => "open",
        }
    }

    /// Whether a hold point is still a question at this stage.
    #[must_use]
    pub const fn asks(self, id: HoldPointId) -> bool {
        match self {
            Self::Bare => true,
            // What lies on a wet floor, and what is measured before the rinse, tells nothing of its moisture.
            Self::Dwell { .. } | Self::NextCoat { .. } | Self::Neutralize | Self::Rinse => {
                matches!(id, HoldPointId::SurfacePh | HoldPointId::Site | HoldPointId::Air)
            }
            Self::Dry => {
                matches!(id, HoldPointId::SurfacePh | HoldPointId::Moisture | HoldPointId::Site | HoldPointId::Air)
            }
            Self::Seal { .. } => matches!(id, HoldPointId::Site | HoldPointId::Air),
            Self::Cure { .. } | Self::Open => false,
        }
    }

    /// Whether stain lies on it.
    #[must_use]
    pub const fn is_stained(self) -> bool {
        !matches!(self, Self::Bare)
    }

    /// Whether sealer lies on it.
    #[must_use]
    pub const fn is_sealed(self) -> bool {
        matches!(self, Self::Seal { .. } | Self::Cure { .. } | Self::Open)
    }
}

fn later(at: Timestamp, by: Duration) -> Timestamp {
    at.checked_add(jiff::SignedDuration::from_secs(by.as_seconds() as i64)).unwrap_or(at)
}

impl Judge<'_> {
    /// How far a zone is.
    pub(super) fn stage(&self, zone: &Zone) -> Stage {
        let Some(coat) = self.stained(zone).next_back() else { return Stage::Bare };
        if self.slab.cover_together(self.sealed(zone).map(|s| s.entry), zone) {
            return self.stage_of_sealer(zone);
        }
        let Some(neutralized) = self.neutralized(zone, coat.entry) else { return self.stage_of_stain(zone, coat) };
        let rinsed = self.rinsed(zone, neutralized);
        if rinsed.is_some() { Stage::Dry } else { Stage::Rinse }
    }

    /// The coat that comes after those laid and the coats of the recipe, where one is missing.
    pub(super) fn coat_to_come(&self, zone: &Zone) -> Option<(u32, u32)> {
        let laid = self.stained(zone).map(|s| s.body.coat).max()?;
        let of = self.recipe(zone)?.body.coats;
        (laid < of).then_some((laid + 1, of))
    }

    fn stage_of_stain(&self, zone: &Zone, coat: EntryOf<'_, CoatLaid>) -> Stage {
        let recipe = self.recipe(zone);
        let dwell = coat.body.dwell.as_ref().map(units::AsWritten::value);
        let dwell = dwell.or_else(|| recipe.as_ref().and_then(|r| r.body.dwell.as_ref().map(units::AsWritten::value)));
        let since = between(coat.entry.happened.instant(), self.at);
        match dwell {
            Some(dwell) if since < dwell => {
                return Stage::Dwell { until: Some(self.clock(later(coat.entry.happened.instant(), dwell))) };
            }
            // Nobody noted how long: until the longest that is in use is over it may still be working.
            None if since < self.longest_dwell() => return Stage::Dwell { until: None },
            _ => {}
        }
        match self.coat_to_come(zone) {
            Some((coat, of)) => Stage::NextCoat { coat, of },
            None => Stage::Neutralize,
        }
    }

    fn clock(&self, at: Timestamp) -> DateTime {
        at.to_zoned_datetime(self.slab.time_zone()).datetime()
    }

    /// How the panel was stained that the client chose for a zone.
    fn recipe(&self, zone: &Zone) -> Option<EntryOf<'_, PanelStained>> {
        let choice = crate::panels::choice_in_force(self.slab, zone).filter(|choice| choice.withdrawn.is_none())?;
        self.slab.all::<PanelStained>().rfind(|s| crate::panels::same(&s.body.panel, &choice.approved.body.panel))
    }

    fn longest_dwell(&self) -> Duration {
        use trade_facts::Measured as _;
        let record = self.figures.trade().material("dwell-per-coat");
        record.and_then(|r| r.high_as()).unwrap_or_else(|| Duration::hours(24.0))
    }

    fn stage_of_sealer(&self, zone: &Zone) -> Stage {
        let Some(last) = self.sealed(zone).next_back() else { return Stage::Bare };
        let laid = self.sealed(zone).map(|s| s.body.coat).max().unwrap_or(1);
        let chosen = self.slab.all::<SealerChosen>().rfind(|s| self.slab.touches(s.entry, zone));
        let class = chosen.and_then(|s| self.figures.trade().sealer(&s.body.sealer));
        let of = chosen.and_then(|s| s.body.coats).or_else(|| class.map(|c| u32::from(c.coats_low))).unwrap_or(laid);
        let at = last.entry.happened.instant();
        if laid < of {
            // Where the class or its times are not known, the longest that is usual.
            let recoat = class.and_then(|c| c.recoat()).map_or(Duration::hours(4.0), |(low, _)| low);
            return Stage::Seal { coat: laid + 1, of, from: self.clock(later(at, recoat)) };
        }
        let until = later(at, class.map_or(Duration::hours(24.0), |c| c.before_foot().1));
        if self.at < until { Stage::Cure { until: self.clock(until) } } else { Stage::Open }
    }
}
