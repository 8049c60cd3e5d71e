//! The dish test against its unit conversion (V).

use science::emission::{Exposure, moisture_emission};
use units::{Area, Duration, Mass};

use crate::reference::{near_share, number, rows};

#[test]
fn emission_agrees_with_the_reference_file() {
    let table = rows("mver_checks.csv", "dm_g,A_ft2,t_h,MVER");
    assert_eq!(table.len(), 5);
    for row in &table {
        let found = moisture_emission(
            Mass::grams(number(&row[0])),
            Area::square_feet(number(&row[1])),
            Duration::hours(number(&row[2])),
        )
        .expect("a test");
        // The file uses 52.91, rounded from 52.9109: 2e-5, plus its four decimals.
        let pounds = found.emission.as_pounds_per_thousand_square_feet_day();
        near_share(pounds, number(&row[3]), 5e-5, &row.join(" "));
        assert_eq!(found.exposure, Exposure::Standard);
    }
}

#[test]
fn one_pound_is_the_stated_gram_rate() {
    // 1 lb/1000 ft²/24 h = 4.8824 g/m²/d (V, head of the reference file).
    let found = moisture_emission(Mass::pounds(1.0), Area::square_feet(1000.0), Duration::hours(24.0)).expect("a test");
    near_share(found.emission.as_grams_per_square_meter_day(), 4.8824, 1e-5, "grams");
    assert_eq!(found.exposure, Exposure::TooShort);
    let late = moisture_emission(Mass::grams(1.0), Area::square_feet(0.5), Duration::hours(80.0)).expect("a test");
    assert_eq!(late.exposure, Exposure::TooLong);
}
