//! The forms against the diary's own documentation, against bad input, and in both languages.

mod bad_input;
mod examples;
mod presets;
mod quantities;
mod support;
mod words;
