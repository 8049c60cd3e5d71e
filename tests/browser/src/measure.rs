//! What is measured on a page without any library: sizes, widths, contrast.

use serde_json::Value;

use crate::tab::Tab;

const MEASURE: &str = include_str!("measure.js");

/// What was found on one page.
#[derive(Debug, Clone, Default)]
pub struct Measured {
    /// Things to tap that are smaller than 48 by 48 CSS pixels.
    pub small: Vec<String>,
    /// What sticks out sideways.
    pub wide: Vec<String>,
    /// Text with less contrast than 7:1.
    pub faint: Vec<String>,
    /// How many things to tap were measured.
    pub targets: u64,
    /// How many texts were measured.
    pub texts: u64,
    /// The least contrast.
    pub worst: f64,
}

/// Measures the page at the tab's own width.
pub fn measure(tab: &Tab) -> Measured {
    let found = tab.eval(&format!("{MEASURE}({})", tab.reading().size.0));
    let lines = |name: &str| -> Vec<String> {
        let all = found[name].as_array().into_iter().flatten();
        all.filter_map(Value::as_str).map(str::to_owned).collect()
    };
    Measured {
        small: lines("small"),
        wide: lines("wide"),
        faint: lines("faint"),
        targets: found["targets"].as_u64().unwrap_or_default(),
        texts: found["texts"].as_u64().unwrap_or_default(),
        worst: found["worst"].as_f64().unwrap_or_default(),
    }
}
