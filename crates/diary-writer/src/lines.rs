//! Entries as JSON Lines. All are written or none.

use serde_json::Value;
use slab_diary::{Body, DraftError, Entry, EntryError, Problem, problems, read_lines};
use trade_facts::Trade;

use crate::{Appended, WriteError, Writer, measure};

/// What was written of a file of lines.
#[derive(Debug, Clone)]
pub struct LinesWritten {
    /// The entries.
    pub appended: Appended,
    /// Lines that were kept though something about them is doubtful: dated ahead of now (another device's clock
    /// may be right and ours wrong), or telling of one spot without saying where.
    pub doubts: Vec<Doubt>,
}

/// What is doubtful about a line that was kept.
#[derive(Debug, Clone)]
pub struct Doubt {
    /// Its line, from 1.
    pub line: usize,
    /// What is told of it.
    pub problem: Problem,
}

/// What is wrong with one line.
#[derive(Debug)]
pub enum LineError {
    /// It cannot be read.
    Unread(EntryError),
    /// It does not fit the diary.
    Problem(Problem),
}

/// Why no line was written.
#[derive(Debug, thiserror::Error)]
pub enum LinesError {
    /// Lines, each by its number from 1.
    #[error("{} lines cannot be taken", .0.len())]
    Lines(Vec<(usize, LineError)>),
    /// The store.
    #[error(transparent)]
    Write(#[from] WriteError),
}

impl Writer<'_> {
    /// Whether a file of lines could be written: everything but the writing.
    ///
    /// # Errors
    /// [`LinesError`] with every line that cannot be taken.
    pub fn check_lines(&self, text: &str) -> Result<(), LinesError> {
        self.checked(text).map(drop)
    }

    /// Reads entries as JSON Lines and writes them all, or none. A line noted nowhere else is noted when it
    /// happened, as for a diary that is typed up from paper.
    ///
    /// # Errors
    /// [`LinesError`] with every line that cannot be taken.
    pub fn write_lines(&self, text: &str) -> Result<LinesWritten, LinesError> {
        let (entries, doubts) = self.checked(text)?;
        Ok(LinesWritten { appended: self.append(&entries)?, doubts })
    }

    fn checked(&self, text: &str) -> Result<(Vec<Entry>, Vec<Doubt>), LinesError> {
        let unread = |DraftError { line, error }| (line, LineError::Unread(error));
        let mut entries = read_lines(text, &self.context(None))
            .map_err(|errors| LinesError::Lines(errors.into_iter().map(unread).collect()))?;
        let lines: Vec<(usize, &str)> = text
            .lines()
            .enumerate()
            .map(|(index, line)| (index + 1, line.trim_start_matches('\u{feff}').trim()))
            .filter(|(_, line)| !line.is_empty())
            .collect();
        for (entry, (_, line)) in entries.iter_mut().zip(&lines) {
            self.measure(entry, line)?;
        }
        let line_of = |problem: &Problem| {
            let index = entries.iter().position(|entry| entry.id == problem.entry);
            index.and_then(|index| lines.get(index)).map_or(0, |(line, _)| *line)
        };
        let (doubtful, wrong): (Vec<Problem>, Vec<Problem>) =
            problems(self.diary, &entries, Trade::built_in(), self.now)
                .into_iter()
                .partition(|problem| problem.what.only_doubtful());
        if !wrong.is_empty() {
            let wrong = wrong.into_iter().map(|problem| (line_of(&problem), LineError::Problem(problem)));
            return Err(LinesError::Lines(wrong.collect()));
        }
        let doubts = doubtful.into_iter().map(|problem| Doubt { line: line_of(&problem), problem }).collect();
        Ok((entries, doubts))
    }

    /// Fills in what the photographs of a new line measure. An entry that was written elsewhere (it names
    /// its schema) stays as it is.
    fn measure(&self, entry: &mut Entry, line: &str) -> Result<(), WriteError> {
        let written_elsewhere = serde_json::from_str::<Value>(line).is_ok_and(|line| line.get("schema").is_some());
        let Some(kind) = entry.body.kind().filter(|_| !entry.photographs.is_empty() && !written_elsewhere) else {
            return Ok(());
        };
        if let Some(there) = self.diary.get(entry.id) {
            // The same line again: what its photographs measured then stands.
            if measure::is_the_same_but_measured(kind, &entry.body, &there.body) {
                entry.body = there.body.clone();
            }
            return Ok(());
        }
        let pictures: Vec<Vec<u8>> =
            entry.photographs.iter().filter_map(|hash| self.store.photograph(hash).ok()).collect();
        let mut fields = entry.body.to_fields();
        let before = fields.len();
        measure::fill_in(kind, &mut fields, &pictures);
        if fields.len() > before {
            entry.body = Body::of_kind(kind, fields).map_err(EntryError::Body)?;
        }
        Ok(())
    }
}
