//! Underfoot: English and Spanish sentences for the core's codes.
