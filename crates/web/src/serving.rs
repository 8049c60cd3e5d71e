//! What this thread or task is busy with just now, so that a fault can say for which request it happened.
//!
//! A handler runs on a thread of its own and a job outlives its request; both take this with them.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use tokio::task::JoinHandle;
use uuid::Uuid;

tokio::task_local! {
    static BUSY_WITH: Arc<Serving>;
}

/// A request that is being answered, or a job that a request began.
#[derive(Debug)]
pub(crate) struct Serving {
    /// Made here for every request. What a sender calls it is never looked at.
    pub(crate) request: Uuid,
    /// In plain words, never from what was sent.
    pub(crate) doing: &'static str,
    fault_told: AtomicBool,
}

impl Serving {
    pub(crate) fn request(request: Uuid) -> Arc<Self> {
        Arc::new(Self { request, doing: "answering a request", fault_told: AtomicBool::new(false) })
    }

    /// Whether the log holds a fault of it already.
    pub(crate) fn fault_is_told(&self) -> bool {
        self.fault_told.load(Ordering::Relaxed)
    }

    pub(crate) fn note_fault(&self) {
        self.fault_told.store(true, Ordering::Relaxed);
    }

    /// Runs what answers the request.
    pub(crate) async fn scope<T>(self: &Arc<Self>, answering: impl Future<Output = T>) -> T {
        BUSY_WITH.scope(Arc::clone(self), answering).await
    }
}

/// What is being done, where it is for a request.
pub(crate) fn now_serving() -> Option<Arc<Serving>> {
    BUSY_WITH.try_with(Arc::clone).ok()
}

/// Runs what reads the disk or computes on a thread where it holds nobody up, for the same request.
pub(crate) fn on_a_thread<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> JoinHandle<T> {
    let serving = now_serving();
    tokio::task::spawn_blocking(move || match serving {
        Some(serving) => BUSY_WITH.sync_scope(serving, work),
        None => work(),
    })
}

/// The same work as a job that goes on beside the request that began it. The job has its own faults: they are
/// told even when the request had one.
pub(crate) fn as_job<T>(doing: &'static str, work: impl FnOnce() -> T) -> impl FnOnce() -> T {
    let job = now_serving()
        .map(|begun_by| Arc::new(Serving { request: begun_by.request, doing, fault_told: AtomicBool::new(false) }));
    move || match job {
        Some(job) => BUSY_WITH.sync_scope(job, work),
        None => work(),
    }
}
