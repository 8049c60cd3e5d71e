//! The store against the disk: what it keeps, what it refuses, what it survives.

mod append_only;
mod check;
mod common;
mod diary_pages;
mod entries;
mod first_owner;
mod ids;
mod killed;
mod laws;
mod links;
mod migration;
mod opening;
mod people;
mod photographs;
mod sessions;
mod slab_list;
mod slabs;
mod speed;
mod together;
