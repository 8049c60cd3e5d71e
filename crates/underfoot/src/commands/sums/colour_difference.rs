//! How far two colours lie apart.

use clap::Args;
use science::colour::{CIEDE2000, Lab, Srgb, ciede2000};

use super::caution::Caution;
use super::shown::Shown;
use super::sum::Sum;
use crate::failure::Failure;

/// What is asked.
#[derive(Debug, Args)]
pub(crate) struct ColourDifference {
    /// A color: L,a,b of CIELAB (D65) or a screen color such as #7a563a
    #[arg(value_name = "COLOR", allow_hyphen_values = true)]
    first: String,
    /// The color it is compared with, written the same way or the other
    #[arg(value_name = "COLOR", allow_hyphen_values = true)]
    second: String,
}

pub(super) fn run(args: &ColourDifference) -> Result<Sum, Failure> {
    let mut sum = Sum::new("colour-difference", CIEDE2000);
    let first = colour("first", &args.first)?;
    let second = colour("second", &args.second)?;
    sum.given("first", &args.first, Shown::Lab(first));
    sum.given("second", &args.second, Shown::Lab(second));
    sum.result("difference", Shown::Number(ciede2000(first, second).as_units(), 2));
    sum.result("first_lab", Shown::Lab(first));
    sum.result("second_lab", Shown::Lab(second));
    sum.result("lighter_by", Shown::Number(second.lightness() - first.lightness(), 2));
    sum.cautions([Caution::NoBetterThanThePhoto]);
    Ok(sum)
}

fn colour(name: &str, text: &str) -> Result<Lab, Failure> {
    const ACCEPTED: &str = "L,a,b such as \"42, 10, 21\", or a screen color such as #7a563a";
    let parts: Vec<&str> = text.split([',', ';']).map(str::trim).collect();
    let refuse = || Failure::Use(format!("{name} color \"{}\": accepted: {ACCEPTED}", text.trim()));
    match parts.as_slice() {
        [one] => Srgb::read(one).map(Srgb::lab).map_err(|_| refuse()),
        [l, a, b] => {
            let number = |part: &str| part.parse::<f64>().map_err(|_| refuse());
            Lab::new(number(l)?, number(a)?, number(b)?).map_err(|e| Failure::Data(format!("{name} color: {e}")))
        }
        _ => Err(refuse()),
    }
}
