//! The tests of the sentences and numbers, in one program since they share the parsed messages and
//! the table of what each code carries.

mod carried;
mod drying;
mod messages;
mod numbers;
mod pictures;
mod plan;
mod real_reasons;
mod sentences;
mod spelling;
mod sums;
mod translations;
