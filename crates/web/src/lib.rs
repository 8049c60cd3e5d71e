//! Underfoot: the pages.
