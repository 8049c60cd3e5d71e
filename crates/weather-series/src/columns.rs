//! Finding the header of a plain table and what its columns are.

use jiff::tz::Offset;

use super::error::{ImportError, Missing};
use super::map::ColumnMap;
use super::names::{Role, role, stated_offset, tokens};
use super::quantity::Quantity;
use super::text::{Line, shown, split};
use super::unit::Unit;

/// Where the time stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum When {
    One(usize),
    Two { date: usize, clock: usize },
}

/// A column with readings.
#[derive(Debug, Clone)]
pub(super) struct Field {
    pub(super) index: usize,
    pub(super) quantity: Quantity,
    /// Absent when neither header nor mapping has it; then the cells must.
    pub(super) unit: Option<Unit>,
}

/// A header that was understood.
#[derive(Debug)]
pub(super) struct Layout {
    /// Index of the header among the lines.
    pub(super) header: usize,
    pub(super) separator: char,
    pub(super) names: Vec<String>,
    pub(super) when: When,
    pub(super) fields: Vec<Field>,
    pub(super) stated: Option<Offset>,
}

/// How far down the header may stand: loggers write a few lines about themselves first.
const HEADER_WITHIN: usize = 40;
/// Tried in this order: a comma may be a decimal mark in a file parted by semicolon or tab.
const SEPARATORS: [char; 4] = [';', '\t', ',', '|'];

impl When {
    pub(super) fn indexes(self) -> Vec<usize> {
        match self {
            Self::One(index) => vec![index],
            Self::Two { date, clock } => vec![date, clock],
        }
    }
}

impl Layout {
    /// Columns that are not used.
    pub(super) fn unused(&self) -> Vec<String> {
        let when = self.when.indexes();
        let used = |index: &usize| when.contains(index) || self.fields.iter().any(|f| f.index == *index);
        (0..self.names.len())
            .filter(|index| !used(index) && !self.names[*index].is_empty())
            .map(|index| shown(&self.names[index]))
            .collect()
    }
}

/// Finds the header line and its columns.
pub(super) fn find(lines: &[Line<'_>], map: &ColumnMap) -> Result<Layout, ImportError> {
    let near = &lines[..lines.len().min(HEADER_WITHIN)];
    for separator in SEPARATORS {
        for (header, line) in near.iter().enumerate() {
            let names = split(line.text, separator);
            if let Ok((when, fields)) = columns(&names, map)? {
                let stated = when.indexes().iter().find_map(|index| stated_offset(&names[*index]));
                return Ok(Layout { header, separator, names, when, fields, stated });
            }
        }
    }
    Err(refusal(near, map))
}

/// Says what is missing from the line that looks most like a header.
fn refusal(near: &[Line<'_>], map: &ColumnMap) -> ImportError {
    let candidates = near
        .iter()
        .filter(|line| !line.text.trim().is_empty())
        .take(5)
        .flat_map(|line| SEPARATORS.map(|separator| split(line.text, separator)));
    // The first of the longest: a header is at least as long as what stands above it.
    let names = candidates.fold(Vec::new(), |best, next| if next.len() > best.len() { next } else { best });
    let missing_column = wanted(map).into_iter().find(|(_, column)| position(&names, column).is_none());
    let found = names.iter().take(30).map(|name| shown(name)).collect();
    match missing_column {
        Some((key, column)) => ImportError::NoSuchColumn { key, column: shown(column), found },
        None => {
            let missing = match columns(&names, map) {
                Ok(Err(missing)) => missing,
                _ => Missing::TimeAndReading,
            };
            ImportError::Columns { found, missing }
        }
    }
}

fn position(names: &[String], wanted: &str) -> Option<usize> {
    let wanted = wanted.trim().to_lowercase();
    names.iter().position(|name| name.to_lowercase() == wanted)
}

/// Every mapped column: key and name.
fn wanted(map: &ColumnMap) -> Vec<(&'static str, &str)> {
    let readings = Quantity::ALL.into_iter().filter_map(|q| map.column(q).map(|column| (q.code(), column)));
    map.time_columns().into_iter().chain(readings).collect()
}

type Found = (When, Vec<Field>);

/// What the columns are, or what is missing; an error only for a unit that does not exist.
fn columns(names: &[String], map: &ColumnMap) -> Result<Result<Found, Missing>, ImportError> {
    if wanted(map).iter().any(|(_, column)| position(names, column).is_none()) {
        return Ok(Err(Missing::TimeAndReading));
    }
    let words: Vec<Vec<String>> = names.iter().map(|name| tokens(name)).collect();
    let mut roles: Vec<Role> = words.iter().map(|words| role(words)).collect();
    // A mapped column is what the mapping says and nothing else.
    for (_, column) in wanted(map) {
        if let Some(index) = position(names, column) {
            roles[index] = Role::Other;
        }
    }
    let when = when(names, map, &roles);
    let mut fields = Vec::new();
    for quantity in Quantity::ALL {
        let index = match map.column(quantity) {
            Some(column) => position(names, column),
            None => roles.iter().position(|role| *role == Role::Reading(quantity)),
        };
        let Some(index) = index else { continue };
        let unit = map.unit(quantity)?.or_else(|| Unit::find(quantity, &words[index]));
        let unit = unit.or((quantity == Quantity::Humidity).then_some(Unit::Percent));
        fields.push(Field { index, quantity, unit });
    }
    let enough = fields.iter().any(|f| matches!(f.quantity, Quantity::Air | Quantity::Humidity | Quantity::Slab));
    Ok(match (when, enough) {
        (Some(when), true) => Ok((when, fields)),
        (Some(_), false) => Err(Missing::Reading),
        (None, true) => Err(Missing::Time),
        (None, false) => Err(Missing::TimeAndReading),
    })
}

fn when(names: &[String], map: &ColumnMap, roles: &[Role]) -> Option<When> {
    let mapped = |column: &Option<String>| column.as_deref().and_then(|column| position(names, column));
    let first = |wanted: Role| roles.iter().position(|role| *role == wanted);
    if let Some(time) = mapped(&map.time) {
        return Some(When::One(time));
    }
    let date = mapped(&map.date).or_else(|| first(Role::Date));
    let clock = mapped(&map.clock).or_else(|| first(Role::Clock));
    let both_mapped = map.date.is_some() || map.clock.is_some();
    match (first(Role::Moment), date, clock) {
        (Some(moment), _, _) if !both_mapped => Some(When::One(moment)),
        (_, Some(date), Some(clock)) => Some(When::Two { date, clock }),
        (_, Some(one), None) | (_, None, Some(one)) => Some(When::One(one)),
        (moment, None, None) => moment.map(When::One),
    }
}
