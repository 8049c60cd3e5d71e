//! How far two colors lie apart.

use clap::Args;
use science::color::{CIEDE2000, Lab, Srgb, ciede2000};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::{SumError, What};
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct ColorDifference {
    /// A color: L,a,b of CIELAB (D65) or a screen color such as #7a563a
    #[arg(value_name = "COLOR", allow_hyphen_values = true)]
    first: String,
    /// The color it is compared with, written the same way or the other
    #[arg(value_name = "COLOR", allow_hyphen_values = true)]
    second: String,
}

pub(crate) fn run(args: &ColorDifference) -> Result<Sum, SumError> {
    let mut sum = Sum::new("color-difference", CIEDE2000);
    let first = color("first", &args.first)?;
    let second = color("second", &args.second)?;
    sum.given("first", &args.first, Shown::Lab(first));
    sum.given("second", &args.second, Shown::Lab(second));
    sum.result("difference", Shown::Number(ciede2000(first, second).as_units(), 2));
    sum.result("first_lab", Shown::Lab(first));
    sum.result("second_lab", Shown::Lab(second));
    sum.result("lighter_by", Shown::Number(second.lightness() - first.lightness(), 2));
    sum.caution([Caution::NoBetterThanThePhoto]);
    Ok(sum)
}

fn color(name: &'static str, text: &str) -> Result<Lab, SumError> {
    let parts: Vec<&str> = text.split([',', ';']).map(str::trim).collect();
    let refuse = || {
        let (typed, accepted) = (text.trim().to_owned(), Accepted::from("color"));
        let said = format!("{name} color \"{typed}\": accepted: {}", accepted.as_option());
        SumError::bad_use(name, said, What::Unclear { typed, accepted })
    };
    match parts.as_slice() {
        [one] => Srgb::read(one).map(Srgb::lab).map_err(|_| refuse()),
        [l, a, b] => {
            let number = |part: &str| part.parse::<f64>().map_err(|_| refuse());
            Lab::new(number(l)?, number(a)?, number(b)?).map_err(|e| {
                let mut error = SumError::core(e).at(name);
                error.said = format!("{name} color: {error}");
                error
            })
        }
        _ => Err(refuse()),
    }
}
