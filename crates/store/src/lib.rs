//! Underfoot: keeps diaries and photographs.
