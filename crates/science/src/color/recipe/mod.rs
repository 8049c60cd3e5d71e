//! From stained panels to a recipe: which mix, dilution and number of coats should give a wished
//! color on this slab, and how surely.
//!
//! Why this module exists: reactive stain takes differently on every slab, so a color chart says
//! little and panels on the slab itself say a lot. Between the panels a simple law of absorption
//! fills in, and what the panels disagree on becomes the interval.
//!
//! The law: K/S = (1 − R)²/2R for each of red, green and blue, and
//! q_c = q0_c + Σ_j f_j k_jc n^p (1 + w)^(−r), with q0 the bare concrete, f the shares of the mix,
//! n coats and w parts of water. It is a regression, not physics: it is never asked beyond the
//! coats, dilutions and mixes tried, nor for another slab, finish or state of sealing. With one
//! stain it is no better than a regression in CIELAB.
//!
//! Grades: the single-constant law M ([`KUBELKA_MUNK`]); that strengths of a mix add up M (Duncan
//! 1940); powers, priors and the interval our own, tried on simulated panels only
//! (`reference/color/coverage.md`), so provisional.
//!
//! ```
//! use science::chance::Seed;
//! use science::color::Srgb;
//! use science::color::recipe::{Bare, Coats, Recipe, RecipeModel, Shares, StainedPanel, WaterParts};
//! let panel = |coats, water, color: &str| -> Result<StainedPanel, Box<dyn std::error::Error>> {
//!     let recipe = Recipe {
//!         shares: Shares::of_parts(&[1.0])?,
//!         water: WaterParts::new(water)?,
//!         coats: Coats::new(coats)?,
//!     };
//!     Ok(StainedPanel { recipe, color: Srgb::read(color)?.linear() })
//! };
//! let bare = Bare::of_places(&[Srgb::read("#a8a29a")?.linear()])?;
//! let panels = [
//!     panel(1, 0.0, "#7a563a")?,
//!     panel(2, 0.0, "#6b4529")?,
//!     panel(1, 4.0, "#97806b")?,
//!     panel(2, 2.0, "#80614a")?,
//! ];
//! let model = RecipeModel::fit(&bare, &panels, Seed(7))?;
//! let between = Recipe { water: WaterParts::new(1.0)?, ..panels[0].recipe.clone() };
//! let expected = model.predict(&between)?;
//! assert!(expected.lab.lightness() > 30.0 && expected.radius.is_ok());
//! let beyond = Recipe { coats: Coats::new(5)?, ..between };
//! assert!(model.predict(&beyond).is_err());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! To add something a recipe can vary (dwell, say): a field of [`Recipe`], its range in [`Tested`],
//! its power in the fit, and the coverage experiment again.

mod absorb;
mod error;
mod fit;
mod interval;
mod model;
mod panel;
mod search;
mod tested;

pub use absorb::KUBELKA_MUNK;
pub use error::{NoInterval, OutsideTested, Place, RecipeRefusal, SearchRefusal};
pub use interval::{FEWEST_PANELS, Interval};
pub use model::{HELD, Prediction, RecipeModel};
pub use panel::{Bare, Coats, Recipe, Shares, StainedPanel, WaterParts};
pub use search::{Candidate, NearestPanel, PracticalGrid, Search, Wish};
pub use tested::{Edge, StainTested, Tested};
