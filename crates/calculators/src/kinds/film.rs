//! Wet and dry film, coverage, and product for an area.

use clap::Args;
use science::Parts;
use science::film::{CoatingJob, FILM, dry_film, theoretical_coverage, thinned_solids, wet_film, wet_film_for_dry};
use units::{Coverage, FilmThickness, Fraction};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{missing, share};
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Film {
    /// Share of the product that stays when dry, by volume
    #[arg(long, value_name = "SHARE", allow_hyphen_values = true)]
    solids: Option<String>,
    /// Dry film wished, each coat
    #[arg(long, value_name = "FILM", conflicts_with_all = ["wet", "coverage"], allow_hyphen_values = true)]
    dry: Option<String>,
    /// Wet film, as a comb gauge reads it
    #[arg(long, value_name = "FILM", conflicts_with = "coverage", allow_hyphen_values = true)]
    wet: Option<String>,
    /// How far it is spread, each coat
    #[arg(long, value_name = "COVERAGE", allow_hyphen_values = true)]
    coverage: Option<String>,
    /// Thinner added, as a share of the product's volume
    #[arg(long, value_name = "SHARE", allow_hyphen_values = true)]
    thinner: Option<String>,
    /// Area to coat
    #[arg(long, value_name = "AREA", requires = "solids", allow_hyphen_values = true)]
    area: Option<String>,
    /// How many coats
    #[arg(long, default_value_t = 1, value_name = "COUNT", requires = "area")]
    coats: u32,
    /// Share that never reaches the floor [default: 0 %]
    #[arg(long, value_name = "SHARE", requires = "area", allow_hyphen_values = true)]
    loss: Option<String>,
}

pub(crate) fn run(args: &Film) -> Result<Sum, SumError> {
    let mut sum = Sum::new("film", FILM);
    let none = Fraction::share(0.0).expect("0 lies between 0 and 1");
    let solids = match &args.solids {
        Some(text) => Some(sum.share_or("solids", Some(text), none)?),
        None => None,
    };
    let parts = match &args.thinner {
        Some(text) => {
            let thinner = share("thinner", text)?;
            sum.given("thinner", text, Shown::Percent(thinner.as_percent()));
            Parts::new(1.0, thinner.as_share()).map_err(SumError::core)?
        }
        None => Parts::UNDILUTED,
    };
    let (wet, dry) = films(&mut sum, args, solids, parts)?;
    if let Some(dry) = dry {
        sum.result("dry_film", Shown::Film(dry));
    }
    sum.result("wet_film", Shown::Film(wet));
    let spread = match (&args.coverage, solids, dry) {
        (None, Some(solids), Some(dry)) => {
            Some(theoretical_coverage(thinned_solids(solids, parts), dry).map_err(SumError::core)?)
        }
        _ => None,
    };
    if let Some(coverage) = spread {
        sum.result("coverage", Shown::Coverage(coverage));
    }
    if let (Some(text), Some(volume_solids), Some(dry_per_coat)) = (&args.area, solids, dry) {
        let area = sum.read("area", text, Shown::Area)?;
        sum.given("coats", &args.coats.to_string(), Shown::Count(args.coats));
        let loss = sum.share_or("loss", args.loss.as_ref(), none)?;
        let job = CoatingJob { area, volume_solids, dry_per_coat, coats: args.coats, loss };
        sum.result("product", Shown::Liquid(job.volume().map_err(SumError::core)?));
    }
    sum.caution([Caution::AbsorptionNotCounted, Caution::MakersSheetGoverns]);
    Ok(sum)
}

/// Wet and dry film of one coat; no dry film without solids.
fn films(
    sum: &mut Sum,
    args: &Film,
    solids: Option<Fraction>,
    parts: Parts,
) -> Result<(FilmThickness, Option<FilmThickness>), SumError> {
    let dried = |wet| solids.map(|solids| dry_film(wet, solids, parts)).transpose().map_err(SumError::core);
    if let Some(text) = &args.dry {
        let dry = sum.read("dry", text, Shown::Film)?;
        let solids = solids.ok_or_else(|| missing("solids", "volume-solids"))?;
        return Ok((wet_film_for_dry(dry, solids, parts).map_err(SumError::core)?, Some(dry)));
    }
    if let Some(text) = &args.wet {
        let wet = sum.read("wet", text, Shown::Film)?;
        return Ok((wet, dried(wet)?));
    }
    let text = args
        .coverage
        .as_ref()
        .ok_or_else(|| missing("dry", Accepted::naming("film-or-spread", &["wet", "coverage"])))?;
    let coverage: Coverage = sum.read("coverage", text, Shown::Coverage)?;
    let wet = wet_film(coverage).map_err(SumError::core)?;
    Ok((wet, dried(wet)?))
}
