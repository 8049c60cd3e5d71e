//! The answer of each slab for the list, kept while it holds.
//!
//! A list of forty slabs would read and judge forty diaries at every look. The answer of a slab is kept
//! until its diary grows or five minutes have passed: longer, and a hold point that time releases
//! would be told late.

use std::sync::PoisonError;

use jiff::{SignedDuration, Timestamp};
use slab_answers::standing::{Overall, standing};
use slab_diary::Knowledge;
use store::{SlabRecord, StoreError};
use trade_facts::Trade;

use crate::app::App;

const HOLDS: SignedDuration = SignedDuration::from_mins(5);

/// An answer, and what it rests on.
#[derive(Debug, Clone)]
pub(crate) struct Judged {
    version: i64,
    at: Timestamp,
    overall: Overall,
}

impl App {
    /// The overall answer of a slab, at most five minutes old and never older than its diary.
    pub(crate) fn overall(&self, record: &SlabRecord) -> Result<Overall, StoreError> {
        let at = self.asked_at(record.id);
        if let Some(known) = self.judged.lock().unwrap_or_else(PoisonError::into_inner).get(&record.id)
            && known.version == record.version
            && at.duration_since(known.at).abs() < HOLDS
        {
            return Ok(known.overall.clone());
        }
        let diary = self.store().diary(record.id)?;
        let overall = standing(&diary, Trade::built_in(), Knowledge::noted_by(at)).overall;
        let judged = Judged { version: record.version, at, overall: overall.clone() };
        self.judged.lock().unwrap_or_else(PoisonError::into_inner).insert(record.id, judged);
        Ok(overall)
    }
}
