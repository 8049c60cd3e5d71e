//! A real browser against the real binary.
//!
//! One Chromium runs for all tests but the walk in Firefox, each test in a profile of its own, with its own data folder and
//! its own server. Nothing here waits for a fixed time where a condition can be awaited, and each test
//! has a time after which it stops.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod axe;
mod browser;
mod firefox;
mod measure;
mod pages;
mod server;
mod tab;
mod taps;

pub use axe::{AXE, Fault, axe_faults};
pub use browser::{Visit, stopwatch};
pub use firefox::Firefox;
pub use measure::{Measured, measure};
pub use pages::{HIDDEN_ID, crawl, pattern, with_folds_open};
pub use server::{BASE, CLOCK, Ran, Server, Site, free_port, repository};
pub use tab::{Reading, Tab};
