//! What must be refused, tried: foreign pages, planted cookies, guessed passwords and ids, odd files,
//! stored script, links that are over.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

#[path = "../common/mod.rs"]
mod common;

mod crowd;
mod doors;
mod errors;
mod ids;
mod links;
mod pictures;
mod roles;
mod routes;
mod script;
mod sign_in;
mod uploads;
mod writers;
