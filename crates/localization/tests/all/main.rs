//! The tests of the sentences and numbers, in one program since they share the parsed messages and
//! the table of what each code carries.

mod carried;
mod drying;
mod keys;
mod messages;
mod numbers;
mod plan;
mod real_reasons;
mod sentences;
mod spelling;
mod sums;
mod translations;
