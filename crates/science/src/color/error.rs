//! What is no color.

/// A color that cannot be read or does not exist.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ColorError {
    /// Not the six digits of a screen color.
    #[error("color \"{0}\": accepted: # and six digits 0 to 9, a to f, such as #7a563a")]
    Hex(String),
    /// A coordinate of CIELAB outside what a surface can have.
    #[error("{field} {value}; accepted: L from 0 to 105, a and b from -200 to 200, such as 42.0, 10.0, 21.0")]
    Lab {
        /// Which coordinate.
        field: &'static str,
        /// What was given.
        value: f64,
    },
}
