//! The tests of the drawings, in one program since they share the samples.

mod frame;
mod map;
mod plan;
mod samples;
mod sound;
mod words_beside;
