//! The pages. So far one: the standing of a slab as a self-contained page that can be saved,
//! sent and printed. It needs no script and fetches nothing.
//!
//! To add a page: a template under `templates/`, a module with the struct it is filled from, and a
//! test that renders it in both languages.

mod standing_page;

pub use standing_page::standing_page;
