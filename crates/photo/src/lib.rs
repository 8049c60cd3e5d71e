//! Underfoot: photographs to colour measurements.
