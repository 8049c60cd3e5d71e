//! Numbers in JSON without the noise of binary fractions.

use serde_json::{Value, json};

/// Rounded to so many decimals.
pub(crate) fn rounded(value: f64, decimals: i32) -> Value {
    let scale = 10f64.powi(decimals);
    let rounded = (value * scale).round() / scale;
    if rounded.fract() == 0.0 && rounded.abs() < 1e15 { json!(rounded as i64) } else { json!(rounded) }
}
