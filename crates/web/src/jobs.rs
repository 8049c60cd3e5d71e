//! Work that takes longer than a page may: it runs beside, tells how far it is, and its answer is kept
//! for whoever asks again. A reload joins the same work instead of beginning another.

use std::collections::{HashMap, VecDeque};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use diary_photographs::Looked;
use slab_answers::map::SlabMap;
use slab_diary::EntryId;

use crate::fault;
use crate::serving::as_job;

/// Answers kept; the oldest go first.
const KEPT: usize = 200;
/// Measured entries kept, a few kilobytes each; then it begins anew.
const MAX_LOOKED: usize = 5000;
/// Maps kept, a few hundred kilobytes each; then it begins anew.
const MAX_MAPS: usize = 50;

/// One piece of work.
#[derive(Debug)]
pub(crate) struct Work<T> {
    thousandths: AtomicU32,
    broken: AtomicBool,
    answer: Mutex<Option<Arc<T>>>,
}

impl<T> Work<T> {
    /// How far it is, 0 to 1.
    pub(crate) fn share(&self) -> f64 {
        f64::from(self.thousandths.load(Ordering::Relaxed)) / 1000.0
    }

    /// Tells how far it is.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to 0 to 1")]
    pub(crate) fn tell(&self, share: f64) {
        self.thousandths.store((share.clamp(0.0, 1.0) * 1000.0) as u32, Ordering::Relaxed);
    }

    /// Whether it broke off by a mistake of ours: there will be no answer, and trying again would only
    /// break again.
    pub(crate) fn is_broken(&self) -> bool {
        self.broken.load(Ordering::Relaxed)
    }

    /// Its answer, once it is there.
    pub(crate) fn answer(&self) -> Option<Arc<T>> {
        self.answer.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

/// The answer of a drying forecast, or why there is none.
pub(crate) type Forecast = Result<slab_answers::drying::DryingForecast, science::moisture::DryingError>;

/// What the photographs of entries say; entries whose photographs can't be read are left out.
pub(crate) type Looks = Vec<(EntryId, Arc<Looked>)>;

/// What a piece of work is about: the same question has the same name.
pub(crate) type Name = String;

/// The pieces of work of this server.
#[derive(Debug, Default)]
pub(crate) struct Works {
    forecasts: Mutex<Kept<Forecast>>,
    looks: Mutex<Kept<Looks>>,
    looked: Mutex<HashMap<EntryId, Option<Arc<Looked>>>>,
    maps: Mutex<HashMap<Name, Option<Arc<SlabMap>>>>,
}

#[derive(Debug)]
struct Kept<T> {
    known: HashMap<Name, Arc<Work<T>>>,
    order: VecDeque<Name>,
}

impl<T> Default for Kept<T> {
    fn default() -> Self {
        Self { known: HashMap::new(), order: VecDeque::new() }
    }
}

impl<T: Send + Sync + 'static> Kept<T> {
    /// The work that goes by a name, begun in a thread of its own when nobody asked before.
    fn begin(
        kept: &Mutex<Self>,
        name: &str,
        doing: &'static str,
        begin: impl FnOnce(&Work<T>) -> T + Send + 'static,
    ) -> Arc<Work<T>> {
        let mut kept = kept.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(work) = kept.known.get(name) {
            return Arc::clone(work);
        }
        let work =
            Arc::new(Work { thousandths: AtomicU32::new(0), broken: AtomicBool::new(false), answer: Mutex::new(None) });
        kept.known.insert(name.to_owned(), Arc::clone(&work));
        kept.order.push_back(name.to_owned());
        if kept.order.len() > KEPT
            && let Some(oldest) = kept.order.pop_front()
        {
            kept.known.remove(&oldest);
        }
        drop(kept);
        let running = Arc::clone(&work);
        std::thread::spawn(as_job(doing, move || {
            // Whoever waits must not wait for ever when it panics.
            match catch_unwind(AssertUnwindSafe(|| begin(&running))) {
                Ok(answer) => {
                    *running.answer.lock().unwrap_or_else(PoisonError::into_inner) = Some(Arc::new(answer));
                }
                Err(_) => {
                    fault::tell_unless_told("it broke off");
                    running.broken.store(true, Ordering::Relaxed);
                }
            }
            running.tell(1.0);
        }));
        work
    }

    fn known(kept: &Mutex<Self>, name: &str) -> Option<Arc<Work<T>>> {
        kept.lock().unwrap_or_else(PoisonError::into_inner).known.get(name).map(Arc::clone)
    }
}

impl Works {
    /// The map that goes by a name, made at most once while its slab's diary stays as it is.
    pub(crate) fn map_once(&self, name: Name, make: impl FnOnce() -> Option<SlabMap>) -> Option<Arc<SlabMap>> {
        let maps = || self.maps.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(there) = maps().get(&name) {
            return there.clone();
        }
        let made = make().map(Arc::new);
        let mut maps = maps();
        if maps.len() >= MAX_MAPS {
            maps.clear();
        }
        maps.insert(name, made.clone());
        made
    }

    /// The forecast that goes by a name.
    pub(crate) fn forecast(
        &self,
        name: &str,
        begin: impl FnOnce(&Work<Forecast>) -> Forecast + Send + 'static,
    ) -> Arc<Work<Forecast>> {
        Kept::begin(&self.forecasts, name, "a drying forecast", begin)
    }

    /// A forecast that was begun before.
    pub(crate) fn known_forecast(&self, name: &str) -> Option<Arc<Work<Forecast>>> {
        Kept::known(&self.forecasts, name)
    }

    /// The measuring of photographs that goes by a name.
    pub(crate) fn looks(
        &self,
        name: &str,
        begin: impl FnOnce(&Work<Looks>) -> Looks + Send + 'static,
    ) -> Arc<Work<Looks>> {
        Kept::begin(&self.looks, name, "measuring photographs", begin)
    }

    /// A measuring that was begun before.
    pub(crate) fn known_looks(&self, name: &str) -> Option<Arc<Work<Looks>>> {
        Kept::known(&self.looks, name)
    }

    /// What the photographs of an entry say, measured at most once while the server runs: an entry and
    /// its photographs never change.
    pub(crate) fn look_once(&self, entry: EntryId, measure: impl FnOnce() -> Option<Looked>) -> Option<Arc<Looked>> {
        let known = || self.looked.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(there) = known().get(&entry) {
            return there.clone();
        }
        let looked = measure().map(Arc::new);
        let mut known = known();
        if known.len() >= MAX_LOOKED {
            known.clear();
        }
        known.insert(entry, looked.clone());
        looked
    }
}

#[cfg(test)]
mod tests {
    use super::Works;

    #[test]
    fn work_that_breaks_off_is_told_and_not_waited_for() {
        let works = Works::default();
        let work = works.forecast("a", |_| panic!("on purpose"));
        while !work.is_broken() {
            std::thread::yield_now();
        }
        assert!(work.answer().is_none());
        assert!(works.known_forecast("a").is_some_and(|known| known.is_broken()), "nobody begins it again");
    }
}
