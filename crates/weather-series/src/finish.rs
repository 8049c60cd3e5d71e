//! Sorting, doubled moments and gaps: the same for every form.

use std::collections::BTreeMap;

use jiff::{SignedDuration, Timestamp};

use super::Form;
use super::assumed::Assumption;
use super::error::ImportError;
use super::report::{Duplicate, Gap, Import, Lost, Site, Skipped, Why};
use super::series::{Sample, Series};

/// One good row, with the line it came from.
pub(super) struct Row {
    pub(super) line: usize,
    pub(super) sample: Sample,
}

/// What a form's reader hands over.
pub(super) struct Draft {
    pub(super) form: Form,
    pub(super) site: Option<Site>,
    pub(super) typical_year: bool,
    /// The last line of the header.
    pub(super) header_line: usize,
    pub(super) rows: Vec<Row>,
    pub(super) assumed: Vec<Assumption>,
    pub(super) skipped: Vec<Skipped>,
}

impl Draft {
    pub(super) const fn new(form: Form, site: Option<Site>, header_line: usize) -> Self {
        Self {
            form,
            site,
            typical_year: false,
            header_line,
            rows: Vec::new(),
            assumed: Vec::new(),
            skipped: Vec::new(),
        }
    }

    /// Takes a row, unless nothing was measured in it.
    pub(super) fn take(&mut self, line: usize, sample: Sample) {
        if !sample.is_empty() {
            self.rows.push(Row { line, sample });
            return;
        }
        // A row whose readings were all refused is already listed, reading by reading.
        if self.skipped.last().is_none_or(|skipped| skipped.line != line) {
            self.skip_row(line, sample.at.to_string(), Why::NothingMeasured, "a row with at least one reading");
        }
    }

    /// Lists a whole row as left out.
    pub(super) fn skip_row(&mut self, line: usize, value: String, why: Why, accepted: &'static str) {
        self.skipped.push(Skipped { line, column: None, value, lost: Lost::Row, why, accepted });
    }

    /// Lists a row left out because of one cell.
    pub(super) fn skip_row_at(&mut self, line: usize, cell: (&str, &str), why: Why, accepted: &'static str) {
        let (column, value) = cell;
        self.skipped.push(Skipped {
            line,
            column: Some(column.to_owned()),
            value: super::text::shown(value),
            lost: Lost::Row,
            why,
            accepted,
        });
    }

    /// Lists one reading as left out.
    pub(super) fn skip_reading(&mut self, line: usize, cell: (&str, &str), why: Why, accepted: &'static str) {
        self.skip_row_at(line, cell, why, accepted);
        if let Some(last) = self.skipped.last_mut() {
            last.lost = Lost::Reading;
        }
    }
}

pub(super) fn finish(draft: Draft) -> Result<Import, ImportError> {
    let Draft { form, site, typical_year, header_line, mut rows, mut assumed, mut skipped } = draft;
    skipped.sort_by_key(|s| s.line);
    if rows.is_empty() {
        return Err(match skipped.first() {
            Some(first) => ImportError::NoGoodRow { count: skipped.len(), first: Box::new(first.clone()) },
            None => ImportError::NoRows { line: header_line },
        });
    }
    let late = out_of_order(&rows);
    if late > 0 {
        assumed.push(Assumption::Sorted { rows: late });
    }
    // Stable, so that of two rows at one moment the one higher up in the file comes first.
    rows.sort_by_key(|row| row.sample.at);
    let mut duplicates = Vec::new();
    let mut kept: Vec<Row> = Vec::with_capacity(rows.len());
    for row in rows {
        match kept.last() {
            Some(before) if before.sample.at == row.sample.at => {
                duplicates.push(Duplicate { at: row.sample.at, kept_line: before.line, dropped_line: row.line })
            }
            _ => kept.push(row),
        }
    }
    let times: Vec<Timestamp> = kept.iter().map(|row| row.sample.at).collect();
    let usual_step = usual_step(&times);
    Ok(Import {
        gaps: usual_step.map(|step| gaps(&times, step)).unwrap_or_default(),
        series: Series { samples: kept.into_iter().map(|row| row.sample).collect(), typical_year },
        form,
        site,
        assumed,
        skipped,
        duplicates,
        usual_step,
    })
}

/// Rows earlier than one above them.
fn out_of_order(rows: &[Row]) -> usize {
    let mut latest = Timestamp::MIN;
    let mut late = 0;
    for row in rows {
        if row.sample.at < latest {
            late += 1;
        }
        latest = latest.max(row.sample.at);
    }
    late
}

/// The most common step; of two equally common the shorter.
fn usual_step(times: &[Timestamp]) -> Option<SignedDuration> {
    let mut counts: BTreeMap<SignedDuration, usize> = BTreeMap::new();
    for pair in times.windows(2) {
        *counts.entry(pair[1].duration_since(pair[0])).or_default() += 1;
    }
    counts.into_iter().rev().max_by_key(|(_, count)| *count).map(|(step, _)| step)
}

fn gaps(times: &[Timestamp], step: SignedDuration) -> Vec<Gap> {
    let step = step.as_nanos();
    let mut gaps = Vec::new();
    for pair in times.windows(2) {
        let steps = pair[1].duration_since(pair[0]).as_nanos();
        // Half a step of slack, since loggers drift.
        if steps * 2 > step * 3 {
            let missing = (steps + step / 2) / step - 1;
            gaps.push(Gap { from: pair[0], to: pair[1], missing: usize::try_from(missing).unwrap_or(usize::MAX) });
        }
    }
    gaps
}
