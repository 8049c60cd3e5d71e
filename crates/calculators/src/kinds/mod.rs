//! The calculators, one file for each. To add one: its file, and its line here.

mod drying_forecast;
mod evaporation_file;
mod prelude;

use crate::calculator::Calculator;

macro_rules! calculators {
    ($($name:ident),+ $(,)?) => {
        $(mod $name;)+

        /// In the order they are shown.
        pub(crate) static CALCULATORS: &[&Calculator] = &[$(&$name::CALCULATOR),+];
    };
}

calculators! {
    dew_point,
    evaporation,
    equivalent_age,
    drying,
    emission,
    film,
    batch,
    dilute,
    neutralize,
    ventilate,
    purge,
    volume,
    joints,
    markup,
    color_difference,
}
