//! Wet and dry film of a sealer: how far a gallon goes and how thick it stays.
//!
//! Why this module exists: a sealer is sold by the gallon, specified by the mil and fails by the
//! mil. A penetrating stain leaves no film: its volume solids count as zero here and the question
//! is refused.
//!
//! Checked against `reference/physics/film_volume_checks.csv`.

use units::{Area, Coverage, FilmThickness, Fraction, Length, Volume};

use crate::{FormulaSource, Grade, Parts};

/// ft²/gal = 1604.17 · VS / mil: 231 in³ in a gallon, spread over 144 in² at 0.001 in.
pub const FILM: FormulaSource = FormulaSource {
    id: "film-build",
    document: "geometry: 231 cubic inches in a US gallon",
    locator: "ft²/gal = 1604.17 VS / mil",
    grade: Grade::Verified,
};

/// A question about a film that has no answer.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum FilmError {
    /// Nothing stays on the surface: a penetrating product, or no solids given.
    #[error("volume solids 0 %: a penetrating product leaves no film; accepted: a film former above 0 %, such as 25 %")]
    NoFilm,
    /// A thickness that is not above zero.
    #[error("film thickness {} mil; accepted: above 0, such as 1.5 mil", .0.as_mils())]
    Thickness(FilmThickness),
    /// A coverage that is not above zero.
    #[error("coverage {} ft²/gal; accepted: above 0, such as 300 ft²/gal", .0.as_square_feet_per_gallon())]
    Coverage(Coverage),
    /// An area below zero or not a number.
    #[error("area {} ft²; accepted: 0 or more", .0.as_square_feet())]
    Area(Area),
    /// Everything is lost.
    #[error("loss {} %; accepted: below 100 %, such as 15 %", .0.as_percent())]
    Loss(Fraction),
    /// No coats.
    #[error("0 coats; accepted: 1 or more")]
    NoCoats,
}

fn solid(volume_solids: Fraction) -> Result<f64, FilmError> {
    if volume_solids.as_share() > 0.0 { Ok(volume_solids.as_share()) } else { Err(FilmError::NoFilm) }
}

fn thick(film: FilmThickness) -> Result<f64, FilmError> {
    let meters = film.as_meters();
    if meters > 0.0 && meters.is_finite() { Ok(meters) } else { Err(FilmError::Thickness(film)) }
}

/// Volume solids once thinner is mixed in: VS / (1 + thinner per product). V (stored copy).
#[must_use]
pub fn thinned_solids(volume_solids: Fraction, thinner: Parts) -> Fraction {
    Fraction::share(volume_solids.as_share() / (1.0 + thinner.diluent_per_product()))
        .expect("a share divided by one or more stays a share")
}

/// How far a product goes in theory for one coat of a wished dry film: no loss, no absorption.
///
/// # Errors
/// No solids; dry film not above zero.
pub fn theoretical_coverage(volume_solids: Fraction, dry: FilmThickness) -> Result<Coverage, FilmError> {
    // A liter of product leaves VS liters, spread over VS/thickness.
    Ok(Coverage::square_meters_per_cubic_meter(solid(volume_solids)? / thick(dry)?))
}

/// Thickness of the wet film at a spreading rate. Any liquid has one, also a stain, for as long as
/// it stands on the surface.
///
/// # Errors
/// Coverage not above zero.
pub fn wet_film(coverage: Coverage) -> Result<FilmThickness, FilmError> {
    let rate = coverage.as_square_meters_per_cubic_meter();
    if rate > 0.0 && rate.is_finite() {
        Ok(FilmThickness::meters(1.0 / rate))
    } else {
        Err(FilmError::Coverage(coverage))
    }
}

/// What stays of a wet film.
///
/// # Errors
/// No solids; wet film not above zero.
pub fn dry_film(wet: FilmThickness, volume_solids: Fraction, thinner: Parts) -> Result<FilmThickness, FilmError> {
    solid(volume_solids)?;
    thick(wet)?;
    // DFT = WFT · VS / (1 + thinner)
    Ok(wet * thinned_solids(volume_solids, thinner).as_share())
}

/// The wet film that leaves a wished dry film.
///
/// # Errors
/// No solids; dry film not above zero.
pub fn wet_film_for_dry(
    dry: FilmThickness,
    volume_solids: Fraction,
    thinner: Parts,
) -> Result<FilmThickness, FilmError> {
    solid(volume_solids)?;
    thick(dry)?;
    Ok(dry / thinned_solids(volume_solids, thinner).as_share())
}

/// A job of coating: each coat leaves `dry_per_coat`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoatingJob {
    /// Area to cover.
    pub area: Area,
    /// Share of the product that stays when dry, before thinning.
    pub volume_solids: Fraction,
    /// Dry film of one coat.
    pub dry_per_coat: FilmThickness,
    /// How many coats.
    pub coats: u32,
    /// Share of what is opened that never reaches the floor: trays, rollers, overspray (trade practice, M).
    pub loss: Fraction,
}

impl CoatingJob {
    /// Volume of unthinned product to open for the job. Absorption is not in it.
    ///
    /// # Errors
    /// No solids, no coats, film not above zero, area below zero, or a loss of everything.
    pub fn volume(&self) -> Result<Volume, FilmError> {
        if self.coats == 0 {
            return Err(FilmError::NoCoats);
        }
        if !(self.area >= Area::ZERO && self.area.as_square_meters().is_finite()) {
            return Err(FilmError::Area(self.area));
        }
        let reaching = 1.0 - self.loss.as_share();
        if reaching <= 0.0 {
            return Err(FilmError::Loss(self.loss));
        }
        let film: Length = self.dry_per_coat.into();
        thick(self.dry_per_coat)?;
        let dry_volume = self.area * film * f64::from(self.coats);
        Ok(dry_volume / (solid(self.volume_solids)? * reaching))
    }
}
