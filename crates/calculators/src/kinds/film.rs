//! Wet and dry film, coverage, and product for an area.

use science::Parts;
use science::film::{CoatingJob, FILM, dry_film, theoretical_coverage, thinned_solids, wet_film, wet_film_for_dry};
use units::{FilmThickness, Fraction};

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "film",
        fields: &[
            optional("solids", "value-solids", percent(Kind::Fraction, "25 %")),
            optional("dry", "sum-field-film-dry", quantity(Kind::FilmThickness, "1.5 mil", "40 µm")).in_answer("value-dry"),
            optional("wet", "sum-field-film-wet", quantity(Kind::FilmThickness, "6 mil", "150 µm")).in_answer("value-wet"),
            optional("coverage", "sum-field-film-coverage", quantity(Kind::Coverage, "300 ft2/gal", "7 m2/L")).in_answer("value-coverage"),
            optional("thinner", "sum-field-film-thinner", percent(Kind::Fraction, "10 %")).in_answer("value-thinner").more(),
            optional("area", "sum-field-film-area", quantity(Kind::Area, "1000 ft2", "90 m2")).in_answer("value-area"),
            optional("coats", "value-coats", count(1, 100)).such_as("2", "2").usual("1", "1"),
            optional("loss", "value-loss", percent(Kind::Fraction, "15 %")).usual("0 %", "0 %").more(),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["dry", "wet", "coverage"]), Rule::Needs("dry", "solids"), Rule::Needs("area", "solids"), Rule::Needs("coats", "area"), Rule::Needs("loss", "area")],
    },
    title: "sum-film",
    about: "sum-about-film",
    example: &["solids", "dry", "area", "coats"],
    lines: &[r#"--solids "25 %" --dry "1.5 mil" --area "1000 ft2" --coats 2 --loss "15 %""#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, FILM);
    let solids = given.share("solids")?;
    let parts = match given.share("thinner")? {
        Some(thinner) => Parts::new(1.0, thinner.as_share()).map_err(CalculatorError::core)?,
        None => Parts::UNDILUTED,
    };
    let (wet, dry) = films(given, solids, parts)?;
    if let Some(dry) = dry {
        sum.result("dry_film", Shown::Film(dry));
    }
    sum.result("wet_film", Shown::Film(wet));
    let spread = match (given.typed("coverage"), solids, dry) {
        (None, Some(solids), Some(dry)) => {
            Some(theoretical_coverage(thinned_solids(solids, parts), dry).map_err(CalculatorError::core)?)
        }
        _ => None,
    };
    if let Some(coverage) = spread {
        sum.result("coverage", Shown::Coverage(coverage));
    }
    if let (Some(volume_solids), Some(dry_per_coat), Some(area)) = (solids, dry, given.some("area", Shown::Area)?) {
        let coats = given.count("coats")?;
        given.note("coats", &coats.to_string(), Shown::Count(coats));
        let loss = given.read("loss", Shown::share)?;
        let job = CoatingJob { area, volume_solids, dry_per_coat, coats, loss };
        sum.result("product", Shown::Liquid(job.volume().map_err(CalculatorError::core)?));
    }
    sum.caution([Caution::AbsorptionNotCounted, Caution::MakersSheetGoverns]);
    Ok(sum)
}

/// Wet and dry film of one coat; no dry film without solids.
fn films(
    given: &mut Given<'_>,
    solids: Option<Fraction>,
    parts: Parts,
) -> Result<(FilmThickness, Option<FilmThickness>), CalculatorError> {
    if let (Some(dry), Some(solids)) = (given.some("dry", Shown::Film)?, solids) {
        return Ok((wet_film_for_dry(dry, solids, parts).map_err(CalculatorError::core)?, Some(dry)));
    }
    let wet = match given.some("wet", Shown::Film)? {
        Some(wet) => wet,
        None => wet_film(given.read("coverage", Shown::Coverage)?).map_err(CalculatorError::core)?,
    };
    let dry = solids.map(|solids| dry_film(wet, solids, parts)).transpose();
    Ok((wet, dry.map_err(CalculatorError::core)?))
}
