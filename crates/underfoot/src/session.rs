//! The shell's share of the world: folder, clock, names of this machine.

use std::path::{Path, PathBuf};

use jiff::Timestamp;
use jiff::tz::TimeZone;
use localization::{Lang, Locale, UnitSystem};
use slab_diary::{Diary, Knowledge, When};
use store::{SlabRecord, Store, StoreError};

use crate::cli::{Common, KnownArg, LangArg, UnitsArg, Which};
use crate::failure::Failure;

/// An open store with the person's ways of reading.
pub(crate) struct Session {
    pub(crate) store: Store,
    pub(crate) locale: Locale,
    pub(crate) json: bool,
    /// Who writes: as named, or the user of this machine.
    pub(crate) author: String,
    /// Who writes, when it was said on the command line.
    pub(crate) named_author: Option<String>,
}

/// A slab with its diary and the moment asked about.
pub(crate) struct Asked {
    pub(crate) record: SlabRecord,
    pub(crate) diary: Diary,
    pub(crate) zone: TimeZone,
    pub(crate) knowledge: Knowledge,
}

/// The clock is read here and nowhere else.
#[expect(clippy::disallowed_methods, reason = "the shell is where now comes from")]
pub(crate) fn now() -> Timestamp {
    Timestamp::now()
}

/// A clock that only goes forward.
#[expect(clippy::disallowed_methods, reason = "the shell is where clocks come from")]
pub(crate) fn monotonic() -> std::time::Instant {
    std::time::Instant::now()
}

/// A fresh id for something made on this machine.
#[expect(clippy::disallowed_methods, reason = "the shell is where ids come from")]
pub(crate) fn fresh_id() -> uuid::Uuid {
    uuid::Uuid::now_v7()
}

#[expect(clippy::disallowed_methods, reason = "the shell is where settings come from")]
fn setting(name: &str) -> Option<String> {
    std::env::var(name).ok().filter(|value| !value.is_empty())
}

fn data_folder(common: &Common) -> PathBuf {
    if let Some(dir) = &common.data {
        return dir.clone();
    }
    if let Some(dir) = setting("UNDERFOOT_DATA") {
        return PathBuf::from(dir);
    }
    let base = setting("XDG_DATA_HOME")
        .map(PathBuf::from)
        .or_else(|| setting("HOME").map(|home| Path::new(&home).join(".local/share")))
        .or_else(|| setting("APPDATA").map(PathBuf::from));
    base.map_or_else(|| PathBuf::from("underfoot-data"), |base| base.join("underfoot"))
}

pub(crate) fn locale(common: &Common) -> Locale {
    let lang = match common.lang {
        LangArg::En => Lang::En,
        LangArg::Es => Lang::Es,
    };
    let unit_system = match common.units {
        UnitsArg::Imperial => UnitSystem::Imperial,
        UnitsArg::Metric => UnitSystem::Metric,
    };
    Locale::new(lang, unit_system)
}

impl Session {
    pub(crate) fn open(common: &Common) -> Result<Self, Failure> {
        Self::open_in(&data_folder(common), common)
    }

    pub(crate) fn open_in(dir: &Path, common: &Common) -> Result<Self, Failure> {
        let author = common
            .author
            .clone()
            .or_else(|| setting("USER"))
            .or_else(|| setting("USERNAME"))
            .unwrap_or_else(|| "me".to_owned());
        Ok(Self {
            store: Store::open(dir).map_err(|e| folder(dir, &e))?,
            locale: locale(common),
            json: common.json,
            author,
            named_author: common.author.clone(),
        })
    }

    /// Name of this machine, as the diary notes it.
    pub(crate) fn device() -> String {
        setting("HOSTNAME").unwrap_or_else(|| "command line".to_owned())
    }

    /// The slab that was named, or the only one.
    pub(crate) fn find(&self, named: Option<&str>) -> Result<SlabRecord, Failure> {
        if let Some(name) = named {
            return self.store.find_slab(name).map_err(|e| Failure::Use(e.to_string()));
        }
        let mut slabs = self.store.slabs().map_err(Failure::data)?;
        match slabs.len() {
            1 => Ok(slabs.remove(0)),
            0 => Err(Failure::Use(
                "there is no slab yet; accepted: first `underfoot new NAME`, or `underfoot demo`".to_owned(),
            )),
            _ => {
                let names: Vec<String> = slabs.into_iter().map(|s| format!("\"{}\"", s.name)).collect();
                Err(Failure::Use(format!("slab is missing and there are several; accepted: {}", names.join(", "))))
            }
        }
    }

    /// No slab goes by that name, nor does it begin the name of any.
    pub(crate) fn is_free(&self, name: &str) -> bool {
        matches!(self.store.find_slab(name), Err(StoreError::NoSuchSlab { .. }))
    }

    pub(crate) fn diary(&self, record: &SlabRecord) -> Result<Diary, Failure> {
        self.store.diary(record.id).map_err(Failure::data)
    }

    pub(crate) fn ask(&self, which: &Which) -> Result<Asked, Failure> {
        let record = self.find(which.slab())?;
        let diary = self.diary(&record)?;
        let zone = zone_of(&diary);
        let at = match &which.at {
            None => now(),
            Some(text) => moment(text, &zone)?,
        };
        let knowledge = match which.known {
            KnownArg::Noted => Knowledge::noted_by(at),
            KnownArg::Happened => Knowledge::happened_by(at),
        };
        Ok(Asked { record, diary, zone, knowledge })
    }
}

/// The zone of local times of a slab, by everything its diary holds.
pub(crate) fn zone_of(diary: &Diary) -> TimeZone {
    slab_diary::fold(diary, Knowledge::happened_by(Timestamp::MAX)).time_zone()
}

/// A moment asked about; a bare date is the end of that day.
fn moment(text: &str, zone: &TimeZone) -> Result<Timestamp, Failure> {
    let trimmed = text.trim();
    if let Ok(date) = trimmed.parse::<jiff::civil::Date>()
        && trimmed.len() <= 10
    {
        let late = |_| Failure::Use(format!("--at \"{text}\": too far off; accepted: a day such as 2026-05-03"));
        let end = date.at(23, 59, 59, 0).to_zoned_datetime(zone.clone()).map_err(late)?;
        return Ok(end.timestamp());
    }
    When::read(text, zone).map(|when| when.instant()).map_err(|e| Failure::Use(format!("--at: {e}")))
}

/// A folder that can't hold the diaries.
fn folder(dir: &Path, error: &StoreError) -> Failure {
    let said = error.to_string();
    if said.contains("accepted") {
        return Failure::Data(said);
    }
    Failure::Data(format!("--data \"{}\": {said}; accepted: a folder that can be made and written", dir.display()))
}
