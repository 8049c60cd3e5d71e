//! Seeded chance: streams of random draws, distributions and quantiles with their sampling error.
//!
//! Why this module exists: every forecast here is a sample of possible slabs or possible weeks, and
//! a sample is only evidence when anyone can draw it again. The seed is an argument, each member of
//! a sample has its own stream numbered by its index, and no draw depends on which thread made it
//! or on how many there are. A quantile read off a sample carries the error that comes from the
//! sample being finite.
//!
//! ```
//! use science::chance::{Seed, Stream};
//! let mut third = Stream::of_member(Seed(7), 3);
//! let again = Stream::of_member(Seed(7), 3).standard_normal();
//! assert_eq!(third.standard_normal(), again);
//! ```
//!
//! To add a distribution: one method on [`Stream`] that turns one uniform draw through the inverse
//! of its distribution function, so that a bigger draw is always a bigger value.

mod normal;
mod quantile;
mod stream;

pub use normal::{normal_cdf, normal_quantile};
pub use quantile::{Estimate, Sample, SampleError};
pub use stream::{DrawError, Seed, Stream};
