//! A diary a page at a time, and one entry of it.

use rusqlite::types::Value;
use rusqlite::{OptionalExtension, params_from_iter};
use slab_diary::{Entry, EntryId, SlabId};

use crate::entries::{Kept, READING, SELECT};
use crate::error::StoreError;
use crate::{Store, slabs};

impl Store {
    /// A page of a slab's diary, the newest first: the reverse of [`Entry::order`], to the
    /// microsecond.
    ///
    /// `kinds`: only entries of these kinds. `before`: only those told before this entry, named by
    /// the microsecond in which it happened and its id, as the last of the page before was; when
    /// the diary does not have it, those that happened before that microsecond.
    ///
    /// # Errors
    /// [`StoreError::NoSuchSlab`]; [`StoreError::EntryDamaged`] naming the first entry of the page
    /// that is not what was once added.
    pub fn entries_page(
        &self,
        slab: SlabId,
        kinds: Option<&[&str]>,
        before: Option<(i64, EntryId)>,
        limit: u32,
    ) -> Result<Vec<Entry>, StoreError> {
        // Without the hint SQLite might take the index by kind and sort whole texts.
        let mut sql = format!("{SELECT} INDEXED BY entry_told WHERE slab = ?");
        let mut values: Vec<Value> = vec![slab.to_string().into()];
        if let Some((happened_us, id)) = before {
            sql.push_str(
                " AND (happened_us, noted_us, id) <
                 (?, coalesce((SELECT noted_us FROM entry WHERE id = ? AND slab = ?), -9223372036854775808), ?)",
            );
            values.extend([happened_us.into(), id.to_string().into(), slab.to_string().into(), id.to_string().into()]);
        }
        if let Some(kinds) = kinds {
            sql.push_str(&format!(" AND kind IN ({})", vec!["?"; kinds.len()].join(", ")));
            values.extend(kinds.iter().map(|kind| Value::from((*kind).to_owned())));
        }
        sql.push_str(" ORDER BY happened_us DESC, noted_us DESC, id DESC LIMIT ?");
        values.push(i64::from(limit).into());
        let kept: Vec<Kept> = self.view(READING, |connection| {
            slabs::demand(connection, slab)?;
            connection
                .prepare_cached(&sql)
                .and_then(|mut select| select.query_map(params_from_iter(values), Kept::from_row)?.collect())
                .map_err(StoreError::database(READING))
        })?;
        kept.iter().map(Kept::read).collect()
    }

    /// An entry of a slab's diary; none when the diary does not have it, even when another one does.
    ///
    /// # Errors
    /// [`StoreError::EntryDamaged`] when it is not what was once added.
    pub fn entry(&self, slab: SlabId, id: EntryId) -> Result<Option<Entry>, StoreError> {
        let kept = self.read(READING, |connection| {
            connection
                .prepare_cached(&format!("{SELECT} WHERE id = ?1 AND slab = ?2"))?
                .query_row((id.to_string(), slab.to_string()), Kept::from_row)
                .optional()
        })?;
        kept.as_ref().map(Kept::read).transpose()
    }
}
