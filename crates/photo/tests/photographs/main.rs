//! The crate as its users see it, against pictures written and read back by general libraries:
//! `image` (encodes, decodes, turns), `kamadak-exif` (writes and reads EXIF), and files made with
//! Pillow (`tests/data/make.py`).

mod decoding;
mod garbage;
mod header;
mod judging;
mod location;
mod mutated;
mod pictures;
mod refusals;
mod tags;
