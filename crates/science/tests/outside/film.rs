//! Film build and coverage against arithmetic from the gallon's 231 cubic inches (V).

use science::Parts;
use science::film::{CoatingJob, dry_film, theoretical_coverage, wet_film, wet_film_for_dry};
use units::{Area, Coverage, FilmThickness, Fraction, Volume};

use crate::reference::{near_share, number, rows};

fn share(value: f64) -> Fraction {
    Fraction::share(value).expect("a share")
}

#[test]
fn films_agree_with_the_reference_file() {
    let table = rows("film_volume_checks.csv", "item,inputs,value,unit");
    assert_eq!(table.len(), 16);
    let mil = FilmThickness::mils;
    let per_gallon = Coverage::square_feet_per_gallon;
    let undiluted = Parts::UNDILUTED;
    let solid = |vs: f64, dry: FilmThickness| theoretical_coverage(share(vs), dry).expect("a film");
    let tenth = Parts::new(10.0, 1.0).expect("parts");
    let job = CoatingJob {
        area: Area::square_feet(1000.0),
        volume_solids: share(0.25),
        dry_per_coat: mil(1.5),
        coats: 2,
        loss: share(0.15),
    };
    let wet = |ft2: f64| wet_film(per_gallon(ft2)).expect("a film");
    let dry = |film, vs, thinner| dry_film(film, share(vs), thinner).expect("a film").as_mils();
    let ours = [
        solid(1.0, mil(1.0)).as_square_feet_per_gallon(),
        solid(1.0, FilmThickness::micrometers(1.0)).as_square_meters_per_liter(),
        solid(0.65, mil(5.0)).as_square_feet_per_gallon(),
        solid(0.25, mil(1.5)).as_square_feet_per_gallon(),
        wet(300.0).as_mils(),
        dry(wet(300.0), 0.25, undiluted),
        wet(200.0).as_mils(),
        wet_film(Coverage::square_meters_per_liter(10.0)).expect("a film").as_micrometers(),
        dry(mil(8.0), 0.35, tenth),
        job.volume().expect("a job").as_us_gallons(),
    ];
    for (row, value) in table.iter().zip(ours) {
        // Six figures in the file: half a unit of the last is 5e-6 at most.
        near_share(value, number(&row[2]), 5e-6, &format!("{} {}", row[0], row[1]));
    }
    // Rows 11 to 14 are concrete (see there); the last two are conversions.
    let a_gallon_on_a_square = Volume::us_gallons(1.0) / Area::square_feet(100.0);
    near_share(a_gallon_on_a_square.as_millimeters(), number(&table[14][2]), 5e-6, "L/m² is mm");
    near_share(per_gallon(1.0).as_square_meters_per_liter(), number(&table[15][2]), 5e-6, "m²/L");
}

#[test]
fn the_wet_film_for_a_dry_one_is_its_inverse() {
    let thinner = Parts::new(4.0, 1.0).expect("parts");
    let wet = wet_film_for_dry(FilmThickness::mils(2.0), share(0.3), thinner).expect("a film");
    // 2 mil · 1.25 / 0.3
    near_share(wet.as_mils(), 2.0 * 1.25 / 0.3, 1e-12, "wet");
    near_share(dry_film(wet, share(0.3), thinner).expect("a film").as_mils(), 2.0, 1e-12, "back");
}
