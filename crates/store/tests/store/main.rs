//! The store against the disk: what it keeps, what it refuses, what it survives.

mod append_only;
mod check;
mod common;
mod entries;
mod killed;
mod laws;
mod opening;
mod photographs;
mod slabs;
mod speed;
