//! The pages as a person uses them: with a finger, with a keyboard, without a connection, without
//! script, in both languages.

#![allow(clippy::unwrap_used, reason = "a test may stop")]

mod before_going;
mod by_keyboard;
mod design;
mod drawings;
mod drops;
mod firefox;
mod first_run;
mod full_phone;
mod incident;
mod offline;
mod photographs;
mod pictures;
mod screens;
mod screens_of_people;
mod share;
mod shared_phone;
mod three_taps;
mod typed;
mod whole_slab;
