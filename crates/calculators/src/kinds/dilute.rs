//! Diluting hydrochloric acid.

use clap::Args;
use science::Parts;
use science::chemistry::{BAUME, Baume, HCL_DENSITY, dilute_by_parts, dilute_to, hcl_strength_from_baume};
use units::{Fraction, Volume};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{missing, number, share, unclear};
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Dilute {
    /// Strength of the stock by mass, as its data sheet says
    #[arg(long, value_name = "PERCENT", conflicts_with = "baume", allow_hyphen_values = true)]
    stock: Option<String>,
    /// Degrees Baumé of the stock, as sold
    #[arg(long, value_name = "DEGREES", allow_hyphen_values = true)]
    baume: Option<String>,
    /// Parts by volume, acid to water
    #[arg(long, value_name = "ACID:WATER", conflicts_with = "to", allow_hyphen_values = true)]
    parts: Option<String>,
    /// Strength wished, by mass
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    to: Option<String>,
    /// Volume of stock (with --parts) or of the mix (with --to)
    #[arg(long, value_name = "VOLUME", default_value = "1 gal", allow_hyphen_values = true)]
    volume: String,
}

/// The strength of acid by mass from a data sheet or from degrees Baumé.
pub(crate) fn strength(
    sum: &mut Sum,
    name: &'static str,
    percent: Option<&String>,
    baume: Option<&String>,
) -> Result<Fraction, SumError> {
    if let Some(text) = percent {
        let strength = share(name, text)?;
        sum.given(name, text, Shown::Percent(strength.as_percent()));
        return Ok(strength);
    }
    let text = baume.ok_or_else(|| missing(name, Accepted::naming("strength-or-baume", &["baume"])))?;
    let degrees = number("baume", text, "baume")?;
    sum.given("baume", text, Shown::Number(degrees, 1));
    sum.note_also(BAUME);
    Baume::degrees(degrees).and_then(hcl_strength_from_baume).map_err(SumError::core)
}

pub(crate) fn run(args: &Dilute) -> Result<Sum, SumError> {
    let mut sum = Sum::new("dilute", HCL_DENSITY);
    let stock = strength(&mut sum, "stock", args.stock.as_ref(), args.baume.as_ref())?;
    let mixed = match (&args.parts, &args.to) {
        (Some(text), _) => {
            let parts = parts(text)?;
            sum.given("parts", text, Shown::Text(text.trim().to_owned()));
            let volume: Volume = sum.read("volume", &args.volume, Shown::Liquid)?;
            dilute_by_parts(stock, volume, parts)
        }
        (None, Some(text)) => {
            let target = share("to", text)?;
            sum.given("to", text, Shown::Percent(target.as_percent()));
            let volume: Volume = sum.read("volume", &args.volume, Shown::Liquid)?;
            dilute_to(stock, target, volume)
        }
        (None, None) => return Err(missing("parts", Accepted::naming("parts-or-to", &["to"]))),
    }
    .map_err(SumError::core)?;
    sum.result("strength", Shown::Percent(mixed.strength.as_percent()));
    sum.result("water_first", Shown::Liquid(mixed.water));
    sum.result("then_stock", Shown::Liquid(mixed.stock));
    sum.result("mix", Shown::Liquid(mixed.mixed));
    sum.result("mix_density", Shown::Density(mixed.density));
    sum.result("hydrogen_chloride", Shown::Mass(mixed.acid));
    sum.caution(mixed.cautions.iter().copied().map(Caution::Chemical));
    Ok(sum)
}

fn parts(text: &str) -> Result<Parts, SumError> {
    const ACCEPTED: &str = "parts";
    let Some((acid, water)) = text.split_once(':') else { return Err(unclear("parts", text, ACCEPTED)) };
    let (acid, water) = (number("parts", acid, ACCEPTED)?, number("parts", water, ACCEPTED)?);
    Parts::new(acid, water).map_err(SumError::core)
}
