//! Checks that hold for every record of every file, made on the untyped table so that the error can
//! name the record before its type is known.

use std::collections::{BTreeMap, BTreeSet};

use toml::{Table, Value};

use super::error::{Place, TradeError, TradeErrorKind as Kind};
use super::grade::Grade;
use super::unit::Unit;

/// Source keys that exist, how each source was seen, and which were used.
#[derive(Debug, Default)]
pub(super) struct Keys {
    known: BTreeMap<String, Grade>,
    used: BTreeSet<String>,
}

impl Keys {
    pub(super) fn read(file: &str, sources: &[(&str, &Table)]) -> Result<Self, TradeError> {
        let mut known = BTreeMap::new();
        for (key, source) in sources {
            known.insert((*key).to_owned(), grade(Place { file, record: key }, "grade", source.get("grade"))?);
        }
        Ok(Self { known, used: BTreeSet::new() })
    }

    /// Fails on the first source that no record uses.
    pub(super) fn no_orphans(&self, file: &str) -> Result<(), TradeError> {
        match self.known.keys().find(|key| !self.used.contains(*key)) {
            None => Ok(()),
            Some(key) => Err(Place { file, record: key }.error(
                Kind::OrphanSource,
                "key",
                key,
                "a key that at least one record names in source or see",
            )),
        }
    }
}

/// The records of `[[kind]]`, each with its id.
pub(super) fn records<'a>(file: &str, kind: &str, table: &'a Table) -> Result<Vec<(&'a str, &'a Table)>, TradeError> {
    let here = Place { file, record: "" };
    let wrong = |value: String| here.error(Kind::Shape, kind, value, format!("one or more [[{kind}]] records"));
    let list = table.get(kind).and_then(Value::as_array).ok_or_else(|| wrong("no such records".to_owned()))?;
    let mut out = Vec::with_capacity(list.len());
    let mut seen = BTreeSet::new();
    for (at, value) in list.iter().enumerate() {
        let record = value.as_table().ok_or_else(|| wrong(format!("item {at} is no record")))?;
        let id = record
            .get("id")
            .or_else(|| record.get("key"))
            .and_then(Value::as_str)
            .ok_or_else(|| wrong(format!("item {at} has no id")))?;
        if !seen.insert(id) {
            return Err(Place { file, record: id }.error(Kind::DuplicateId, "id", id, "an id of its own"));
        }
        out.push((id, record));
    }
    Ok(out)
}

/// Grades, units, order and sources of one record.
pub(super) fn record(place: Place<'_>, record: &Table, keys: &mut Keys) -> Result<(), TradeError> {
    values(place, record)?;
    sources(place, record, keys)?;
    let named = record.get("source").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str);
    let best = named.filter_map(|key| keys.known.get(key)).min();
    for (field, value) in record.iter().filter(|(field, _)| is_grade(field)) {
        let found = grade(place, field, Some(value))?;
        let wrong = |kind, accepted: &str| Err(place.error(kind, field, format!("{:?}", found.words()), accepted));
        match best {
            None if found <= Grade::SecondaryCopy => {
                return wrong(Kind::VerifiedWithoutSource, "a source key, or a weaker grade");
            }
            Some(_) if field == "grade" && found >= Grade::CommonPractice => {
                return wrong(Kind::SourceDespiteGrade, "source = [], with related keys in see");
            }
            Some(best) if found < *best => return wrong(Kind::SurerThanSource, best.words()),
            _ => {}
        }
    }
    Ok(())
}

fn grade(place: Place<'_>, field: &str, value: Option<&Value>) -> Result<Grade, TradeError> {
    let words = value.and_then(Value::as_str).unwrap_or_default();
    let accepted = || Grade::ALL.map(Grade::words).map(|w| format!("{w:?}")).join(", ");
    Grade::from_words(words).ok_or_else(|| place.error(Kind::UnknownGrade, field, format!("{words:?}"), accepted()))
}

fn is_grade(field: &str) -> bool {
    field == "grade" || field.starts_with("grade_")
}

fn sources(place: Place<'_>, record: &Table, keys: &mut Keys) -> Result<(), TradeError> {
    for (field, value) in record.iter().filter(|(f, _)| *f == "source" || *f == "see" || f.ends_with("_source")) {
        for key in value.as_array().into_iter().flatten() {
            let key = key.as_str().unwrap_or_default();
            if !keys.known.contains_key(key) {
                return Err(place.error(Kind::UnknownSource, field, format!("{key:?}"), "a key of sources.toml"));
            }
            keys.used.insert(key.to_owned());
        }
    }
    Ok(())
}

/// Units and order, through nested tables.
fn values(place: Place<'_>, table: &Table) -> Result<(), TradeError> {
    for (field, value) in table {
        if field == "unit" || field.ends_with("_unit") {
            let word = value.as_str().unwrap_or_default();
            if Unit::from_word(word).is_none() {
                return Err(place.error(Kind::UnknownUnit, field, format!("{word:?}"), Unit::accepted()));
            }
        }
        if let Some(stem) = field.strip_suffix("low") {
            rising(place, table, stem)?;
        }
        match value {
            Value::Table(inner) => values(place, inner)?,
            Value::Array(list) => {
                for inner in list.iter().filter_map(Value::as_table) {
                    values(place, inner)?;
                }
            }
            _ => {}
        }
    }
    Ok(())
}

fn rising(place: Place<'_>, table: &Table, stem: &str) -> Result<(), TradeError> {
    let number = |end: &str| match table.get(&format!("{stem}{end}")) {
        Some(Value::Integer(whole)) => i32::try_from(*whole).ok().map(f64::from),
        Some(Value::Float(real)) => Some(*real),
        _ => None,
    };
    let found: Vec<f64> = ["low", "mid", "high"].into_iter().filter_map(number).collect();
    if found.windows(2).all(|pair| pair[0] <= pair[1]) {
        return Ok(());
    }
    let shown = found.iter().map(f64::to_string).collect::<Vec<_>>().join(", ");
    Err(place.error(Kind::OutOfOrder, &format!("{stem}low"), shown, "low <= mid <= high"))
}
