//! The tests of the drawings, in one program since they share the samples.

mod frame;
mod key_words;
mod map;
mod plan;
mod samples;
mod sound;
mod words_beside;
