//! Underfoot: typeset papers.
