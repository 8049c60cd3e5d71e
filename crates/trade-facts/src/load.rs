//! From the texts of the data files to a checked [`Trade`].

use std::collections::{BTreeMap, BTreeSet};

use serde::de::DeserializeOwned;
use toml::{Table, Value};

use super::check::{self, Keys};
use super::error::{Place, TradeError, TradeErrorKind as Kind};
use super::record::{Measured, Record, Which};
use super::unit::Unit;
use super::{Number, Trade};

/// The files and the kinds of record each holds. `sources.toml` comes first: the others are checked against it.
pub(super) const FILES: &[(&str, &[&str])] = &[
    ("sources.toml", &["source"]),
    ("practice.toml", &["fact"]),
    ("hold_point_tests.toml", &["test"]),
    ("incidents.toml", &["incident"]),
    ("finishes.toml", &["finish"]),
    ("allowances.toml", &["allowance"]),
    ("materials.toml", &["material"]),
    ("sealers.toml", &["sealer"]),
    ("pour_spec.toml", &["clause"]),
    ("safety.toml", &["rule"]),
    ("signs.toml", &["sign"]),
    ("limits.toml", &["limit"]),
    ("conflicts.toml", &["conflict"]),
    ("glossary.toml", &["term"]),
    ("work_breakdown.toml", &["step"]),
    ("pricing.toml", &["item", "margin"]),
    ("diagnosis.toml", &["cause", "observation", "likelihood"]),
    ("callbacks.toml", &["callback"]),
    ("next_actions.toml", &["action"]),
    ("packs.toml", &["pack"]),
];

type Tables<'a> = BTreeMap<&'a str, Table>;

pub(super) fn load(files: &[(&str, &str)]) -> Result<Trade, TradeError> {
    let tables = parse(files)?;
    every_record(&tables)?;
    let trade = typed(&tables)?;
    references(&trade)?;
    ranges(&trade)?;
    Ok(trade)
}

fn parse<'a>(files: &[(&'a str, &str)]) -> Result<Tables<'a>, TradeError> {
    let names = || FILES.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
    let mut tables = Tables::new();
    for &(file, text) in files {
        let here = Place { file, record: "" };
        if !FILES.iter().any(|(name, _)| *name == file) {
            return Err(here.error(Kind::UnknownFile, "", file, names()));
        }
        let table = text
            .parse::<Table>()
            .map_err(|error| here.error(Kind::NotToml, "", error.to_string().replace('\n', " "), "TOML 1.0"))?;
        tables.insert(file, table);
    }
    match FILES.iter().find(|(name, _)| !tables.contains_key(name)) {
        None => Ok(tables),
        Some((file, _)) => Err(Place { file, record: "" }.error(Kind::MissingFile, "", "absent", names())),
    }
}

fn every_record(tables: &Tables<'_>) -> Result<(), TradeError> {
    let known = check::records("sources.toml", "source", &tables["sources.toml"])?;
    let mut keys = Keys::read("sources.toml", &known)?;
    for (file, kinds) in FILES {
        let table = &tables[file];
        if let Some(other) = table.keys().find(|kind| !kinds.contains(&kind.as_str())) {
            return Err(Place { file, record: "" }.error(Kind::Shape, other, "unknown table", kinds.join(", ")));
        }
        for kind in *kinds {
            for (id, record) in check::records(file, kind, table)? {
                if *file != "sources.toml" {
                    check::record(Place { file, record: id }, record, &mut keys)?;
                }
            }
        }
    }
    keys.no_orphans("sources.toml")
}

fn typed(tables: &Tables<'_>) -> Result<Trade, TradeError> {
    Ok(Trade {
        sources: take(tables, "sources.toml", "source")?,
        facts: take(tables, "practice.toml", "fact")?,
        hold_point_tests: take(tables, "hold_point_tests.toml", "test")?,
        incidents: take(tables, "incidents.toml", "incident")?,
        finishes: take(tables, "finishes.toml", "finish")?,
        allowances: take(tables, "allowances.toml", "allowance")?,
        materials: take(tables, "materials.toml", "material")?,
        sealers: take(tables, "sealers.toml", "sealer")?,
        pour_spec: take(tables, "pour_spec.toml", "clause")?,
        safety: take(tables, "safety.toml", "rule")?,
        signs: take(tables, "signs.toml", "sign")?,
        limits: take(tables, "limits.toml", "limit")?,
        conflicts: take(tables, "conflicts.toml", "conflict")?,
        glossary: take(tables, "glossary.toml", "term")?,
        steps: take(tables, "work_breakdown.toml", "step")?,
        pricing: take(tables, "pricing.toml", "item")?,
        margins: take(tables, "pricing.toml", "margin")?,
        causes: take(tables, "diagnosis.toml", "cause")?,
        observations: take(tables, "diagnosis.toml", "observation")?,
        likelihoods: take(tables, "diagnosis.toml", "likelihood")?,
        callbacks: take(tables, "callbacks.toml", "callback")?,
        actions: take(tables, "next_actions.toml", "action")?,
        packs: take(tables, "packs.toml", "pack")?,
    })
}

fn take<T: DeserializeOwned>(tables: &Tables<'_>, file: &str, kind: &str) -> Result<Vec<T>, TradeError> {
    let mut out = Vec::new();
    for (id, record) in check::records(file, kind, &tables[file])? {
        let value = Value::Table(record.clone()).try_into().map_err(|error: toml::de::Error| {
            let found = error.message().to_owned();
            // The parser names the field in back quotes where it knows it.
            let field = found.split('`').nth(1).unwrap_or_default().to_owned();
            let accepted = format!("the fields and value types of a [[{kind}]] record");
            Place { file, record: id }.error(Kind::Shape, &field, found, accepted)
        })?;
        out.push(value);
    }
    Ok(out)
}

/// Every id that one record names of another exists.
fn references(trade: &Trade) -> Result<(), TradeError> {
    let practice: BTreeSet<&str> = trade.facts.iter().map(Record::id).collect();
    if let Some(twice) = trade.limits.iter().find(|limit| practice.contains(limit.id())) {
        let place = Place { file: "limits.toml", record: twice.id() };
        return Err(place.error(Kind::DuplicateId, "id", twice.id(), "an id that practice.toml does not use"));
    }
    let facts: BTreeSet<&str> = trade.facts.iter().chain(&trade.limits).map(Record::id).collect();
    for test in &trade.hold_point_tests {
        known(Place { file: "hold_point_tests.toml", record: &test.id }, "limits", &test.limits, &facts)?;
    }
    for rule in &trade.safety {
        known(Place { file: "safety.toml", record: &rule.id }, "limits", &rule.limits, &facts)?;
    }
    let steps: BTreeSet<&str> = trade.steps.iter().map(Record::id).collect();
    for step in &trade.steps {
        let place = Place { file: "work_breakdown.toml", record: &step.id };
        known(place, "after", &step.after, &steps)?;
        known(place, "after_any", &step.after_any, &steps)?;
    }
    let causes: BTreeSet<&str> = trade.causes.iter().map(Record::id).collect();
    let observations: BTreeSet<&str> = trade.observations.iter().map(Record::id).collect();
    let rows: BTreeSet<&str> = trade.likelihoods.iter().map(Record::id).collect();
    same("causes", &rows, &causes, "likelihoods")?;
    for row in &trade.likelihoods {
        let given: BTreeSet<&str> = row.given.keys().map(String::as_str).collect();
        same("observations", &given, &observations, &row.id)?;
    }
    Ok(())
}

fn known(place: Place<'_>, field: &str, named: &[String], ids: &BTreeSet<&str>) -> Result<(), TradeError> {
    match named.iter().find(|id| !ids.contains(id.as_str())) {
        None => Ok(()),
        Some(id) => Err(place.error(Kind::UnknownReference, field, format!("{id:?}"), "the id of a record")),
    }
}

fn same(what: &str, found: &BTreeSet<&str>, wanted: &BTreeSet<&str>, record: &str) -> Result<(), TradeError> {
    match found.symmetric_difference(wanted).next() {
        None => Ok(()),
        Some(id) => {
            let place = Place { file: "diagnosis.toml", record };
            Err(place.error(Kind::UnknownReference, "given", format!("{id:?}"), format!("exactly the {what}")))
        }
    }
}

/// Numbers are where their meaning allows.
fn ranges(trade: &Trade) -> Result<(), TradeError> {
    for fact in trade.facts.iter().chain(&trade.limits) {
        let file = if fact.about.is_some() { "limits.toml" } else { "practice.toml" };
        numbered(Place { file, record: &fact.id }, fact)?;
    }
    for clause in &trade.pour_spec {
        each_numbered(Place { file: "pour_spec.toml", record: &clause.id }, &clause.numbers)?;
    }
    for item in &trade.pricing {
        each_numbered(Place { file: "pricing.toml", record: &item.id }, &item.numbers)?;
    }
    for finish in &trade.finishes {
        coverage(Place { file: "finishes.toml", record: &finish.id }, finish.coverage_unit, finish.coverage_low)?;
    }
    for sealer in &trade.sealers {
        let place = Place { file: "sealers.toml", record: &sealer.id };
        coverage(place, sealer.coverage_unit, sealer.coverage_low)?;
        within(place, "solids_pct_low", sealer.solids_pct_low, (0.0, 100.0))?;
        within(place, "solids_pct_high", sealer.solids_pct_high, (0.0, 100.0))?;
        let most = sealer.moisture.rh_pct_max.unwrap_or(0.0);
        within(place, "moisture.rh_pct_max", most, (0.0, 100.0))?;
        within(place, "moisture.rh_pct_upper", sealer.moisture.rh_pct_upper.unwrap_or(most), (most, 100.0))?;
    }
    for incident in &trade.incidents {
        let place = Place { file: "incidents.toml", record: &incident.id };
        within(place, "severity", f64::from(incident.severity), (1.0, 5.0))?;
    }
    for row in &trade.likelihoods {
        for (observation, chance) in &row.given {
            // A certain observation would let one slip of the eye rule out every other cause.
            within(Place { file: "diagnosis.toml", record: &row.id }, observation, *chance, (0.01, 0.99))?;
        }
    }
    let sum: f64 = trade.causes.iter().map(|cause| cause.prior).sum();
    within(Place { file: "diagnosis.toml", record: "causes" }, "prior, summed", sum, (1.0 - 1e-9, 1.0 + 1e-9))
}

fn within(place: Place<'_>, field: &str, value: f64, (low, high): (f64, f64)) -> Result<(), TradeError> {
    if value >= low && value <= high {
        return Ok(());
    }
    Err(place.error(Kind::OutOfRange, field, value, format!("{low} to {high}")))
}

fn coverage(place: Place<'_>, unit: Unit, low: f64) -> Result<(), TradeError> {
    if unit != Unit::SquareFootPerGallon {
        let accepted = Unit::SquareFootPerGallon.word();
        return Err(place.error(Kind::UnknownUnit, "coverage_unit", format!("{:?}", unit.word()), accepted));
    }
    within(place, "coverage_low", low, (1.0, 10_000.0))
}

fn each_numbered(place: Place<'_>, numbers: &[Number]) -> Result<(), TradeError> {
    numbers.iter().try_for_each(|number| numbered(place, number))
}

/// Either one value, or low and high, or (without a unit) none.
fn numbered(place: Place<'_>, of: &impl Measured) -> Result<(), TradeError> {
    let has = |which| of.amount(which).is_some();
    let fine = match (has(Which::Usual), has(Which::Low), has(Which::High)) {
        (true, false, false) | (false, true, true) => of.unit().is_some(),
        (false, false, false) => of.unit().is_none(),
        _ => false,
    };
    if fine {
        return Ok(());
    }
    let accepted = "value and unit; or low, high and unit; or none of them";
    Err(place.error(Kind::Shape, "value", "an incomplete number", accepted))
}
