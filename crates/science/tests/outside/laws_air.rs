//! Laws of moist air and evaporation, over random air.

use proptest::prelude::*;
use science::air::{
    Air, EvaporationForm, dew_point, dew_point_of_vapor, evaporation_rate, saturation_pressure, standard_pressure,
    vapor_pressure,
};
use units::{EvaporationRate, Length, Pressure, RelativeHumidity, Speed, Temperature};

fn rh(percent: f64) -> RelativeHumidity {
    RelativeHumidity::percent(percent).expect("a humidity")
}

fn rate(surface: f64, air: f64, humidity: f64, wind: f64) -> EvaporationRate {
    evaporation_rate(
        EvaporationForm::Menzel,
        Temperature::celsius(surface),
        Temperature::celsius(air),
        rh(humidity),
        Speed::meters_per_second(wind),
    )
    .expect("in range")
    .rate
}

proptest! {
    #[test]
    fn the_dew_point_is_never_above_the_air(t in -60.0..180.0_f64, humidity in 0.5..100.0_f64) {
        let found = dew_point(Temperature::celsius(t), rh(humidity)).expect("moist air");
        prop_assert!(found <= Temperature::celsius(t));
    }

    #[test]
    fn saturated_air_is_at_its_dew_point(t in -99.9..200.0_f64) {
        let found = dew_point(Temperature::celsius(t), rh(100.0)).expect("moist air");
        prop_assert!((found.as_celsius() - t).abs() < 2e-6, "{}", found.as_celsius());
    }

    #[test]
    fn the_dew_point_rises_with_humidity(t in -60.0..180.0_f64, humidity in 0.5..99.0_f64, more in 0.01..1.0_f64) {
        let at = |h| dew_point(Temperature::celsius(t), rh(h)).expect("moist air");
        prop_assert!(at(humidity + more) > at(humidity));
    }

    /// The inversion is exact to its stated 1.2e-6 K over the whole range: 2e-7 of the pressure.
    #[test]
    fn the_dew_point_inverts_the_saturation_pressure(ln in -6.5..14.25_f64) {
        let vapor = Pressure::pascals(ln.exp());
        let back = saturation_pressure(dew_point_of_vapor(vapor).expect("in range")).expect("in range");
        prop_assert!((back / vapor - 1.0).abs() < 2e-7, "{} for {}", back.as_pascals(), vapor.as_pascals());
    }

    #[test]
    fn saturation_pressure_rises_with_temperature(t in -100.0..199.9_f64, rise in 1e-4..0.1_f64) {
        let at = |c| saturation_pressure(Temperature::celsius(c)).expect("in range");
        prop_assert!(at(t + rise) > at(t));
    }

    #[test]
    fn the_wet_bulb_lies_between_dew_point_and_air(t in 5.0..60.0_f64, humidity in 5.0..99.0_f64, z in 0.0..3000.0_f64) {
        let air = Air::at_elevation(Temperature::celsius(t), rh(humidity), Length::meters(z)).expect("air");
        // Ice and water are counted apart at 0 °C, so air whose wet bulb is near there is left out.
        prop_assume!(air.wet_bulb().as_celsius() > 0.5);
        prop_assert!(air.wet_bulb() <= air.temperature());
        prop_assert!(air.wet_bulb() >= air.dew_point().expect("moist air"));
    }

    #[test]
    fn thinner_air_holds_more_water_per_pound(t in 0.0..45.0_f64, humidity in 1.0..100.0_f64, z in 100.0..3000.0_f64) {
        let at = |z| Air::at_elevation(Temperature::celsius(t), rh(humidity), Length::meters(z)).expect("air");
        prop_assert!(at(z).humidity_ratio() > at(0.0).humidity_ratio());
        prop_assert!(standard_pressure(Length::meters(z)).expect("in range") < Pressure::kilopascals(101.325));
    }

    /// A surface at the dew point of the air gives and takes nothing, whatever the wind.
    #[test]
    fn evaporation_is_zero_at_equal_vapor_pressures(t in 5.0..50.0_f64, humidity in 50.0..100.0_f64, wind in 0.0..20.0_f64) {
        let surface = dew_point(Temperature::celsius(t), rh(humidity)).expect("moist air");
        prop_assume!(surface.as_celsius() > 0.02);
        let found = rate(surface.as_celsius(), t, humidity, wind).as_kilograms_per_square_meter_hour();
        prop_assert!(found.abs() < 1e-5, "{found}");
    }

    #[test]
    fn wind_drives_evaporation_and_condensation_alike(
        s in 1.0..50.0_f64, t in 1.0..50.0_f64, humidity in 0.0..100.0_f64, wind in 0.0..20.0_f64, more in 0.1..5.0_f64
    ) {
        let (calm, windy) = (rate(s, t, humidity, wind), rate(s, t, humidity, wind + more));
        prop_assert!(windy.abs() >= calm.abs());
        prop_assert!((windy >= EvaporationRate::ZERO) == (calm >= EvaporationRate::ZERO));
        let (surface, air) = (Temperature::celsius(s), Temperature::celsius(t));
        let drier = vapor_pressure(air, rh(humidity)).expect("in range") < saturation_pressure(surface).expect("in range");
        prop_assert_eq!(calm > EvaporationRate::ZERO, drier);
    }

    #[test]
    fn drier_air_and_a_warmer_slab_dry_faster(
        s in 1.0..50.0_f64, t in 1.0..50.0_f64, humidity in 1.0..100.0_f64, wind in 0.0..20.0_f64
    ) {
        prop_assert!(rate(s, t, humidity - 1.0, wind) > rate(s, t, humidity, wind));
        prop_assert!(rate(s + 0.5, t, humidity, wind) > rate(s, t, humidity, wind));
    }

    #[test]
    fn the_band_is_forty_per_cent_either_way(s in 1.0..50.0_f64, t in 1.0..50.0_f64, humidity in 0.0..100.0_f64) {
        let (surface, air) = (Temperature::celsius(s), Temperature::celsius(t));
        for form in [EvaporationForm::Menzel, EvaporationForm::Uno, EvaporationForm::UnoUsCustomary] {
            let found = evaporation_rate(form, surface, air, rh(humidity), Speed::miles_per_hour(8.0)).expect("in range");
            prop_assert!(found.low() <= found.rate && found.rate <= found.high());
            let width = (found.high() - found.low()).as_kilograms_per_square_meter_hour();
            prop_assert!((width - 0.8 * found.rate.abs().as_kilograms_per_square_meter_hour()).abs() < 1e-12);
        }
    }
}
