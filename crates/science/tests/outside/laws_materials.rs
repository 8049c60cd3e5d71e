//! Laws of films, solutions, rooms, orders and ratios.

use proptest::prelude::*;
use science::Parts;
use science::chemistry::{Base, dilute_by_parts, dilute_to, hcl_density, hcl_strength, neutralize};
use science::concrete::{ConcreteNeed, QUARTER_YARD, SamplePanels, joint_plan, joint_spacing, order};
use science::emission::moisture_emission;
use science::film::{CoatingJob, dry_film, theoretical_coverage, wet_film};
use science::markup::Markup;
use science::ventilation::{Mixing, Room};
use units::{AirFlow, Area, Concentration, Duration, FilmThickness, Fraction, Length, Mass, Volume};

use crate::concrete::joint_rule;

fn share(value: f64) -> Fraction {
    Fraction::share(value).expect("a share")
}

proptest! {
    /// What covers a floor to a dry film is the wet film's own volume: coverage times film is the solids.
    #[test]
    fn coverage_times_dry_film_is_the_solids(vs in 0.01..1.0_f64, mils in 0.1..60.0_f64) {
        let dry = FilmThickness::mils(mils);
        let coverage = theoretical_coverage(share(vs), dry).expect("a film");
        let product = coverage.as_square_meters_per_cubic_meter() * dry.as_meters();
        prop_assert!((product - vs).abs() < 1e-12);
        let back = dry_film(wet_film(coverage).expect("a film"), share(vs), Parts::UNDILUTED).expect("a film");
        prop_assert!((back / dry - 1.0).abs() < 1e-12);
    }

    /// The solids in the tins are the film on the floor and what was lost.
    #[test]
    fn a_coating_job_balances_its_solids(
        ft2 in 1.0..20_000.0_f64, vs in 0.05..1.0_f64, mils in 0.2..20.0_f64, coats in 1..5_u32, loss in 0.0..0.6_f64
    ) {
        let dry_per_coat = FilmThickness::mils(mils);
        let area = Area::square_feet(ft2);
        let job = CoatingJob { area, volume_solids: share(vs), dry_per_coat, coats, loss: share(loss) };
        let solids = job.volume().expect("a job") * vs * (1.0 - loss);
        let film: Length = dry_per_coat.into();
        prop_assert!((solids / (area * film * f64::from(coats)) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn dilution_keeps_its_mass_and_its_acid(stock in 0.5..40.0_f64, water in 0.0..50.0_f64, gallons in 0.1..50.0_f64) {
        let parts = Parts::new(1.0, water).expect("parts");
        let found = dilute_by_parts(share(stock / 100.0), Volume::us_gallons(gallons), parts).expect("a dilution");
        let stock_mass = hcl_density(share(stock / 100.0)).expect("in range") * found.stock;
        let water_mass = hcl_density(share(0.0)).expect("in range") * found.water;
        let mixed_mass = found.density * found.mixed;
        prop_assert!(((stock_mass + water_mass) / mixed_mass - 1.0).abs() < 1e-12);
        prop_assert!((stock_mass * (stock / 100.0) / found.acid - 1.0).abs() < 1e-12);
        prop_assert!((mixed_mass * found.strength.as_share() / found.acid - 1.0).abs() < 1e-12);
        prop_assert!(found.mixed.as_liters() < (found.stock + found.water).as_liters() * (1.0 + 1e-4));
    }

    /// Asking for the strength that parts made gives the same parts back.
    #[test]
    fn dilution_by_strength_inverts_dilution_by_parts(stock in 5.0..40.0_f64, water in 0.01..50.0_f64) {
        let parts = Parts::new(1.0, water).expect("parts");
        let one = dilute_by_parts(share(stock / 100.0), Volume::us_gallons(1.0), parts).expect("a dilution");
        let back = dilute_to(share(stock / 100.0), one.strength, one.mixed).expect("a dilution");
        prop_assert!((back.stock / one.stock - 1.0).abs() < 1e-9);
        prop_assert!((back.water - one.water).abs() < Volume::us_gallons(1e-9 * (1.0 + water)));
    }

    #[test]
    fn density_and_strength_invert_each_other(percent in 0.0..40.0_f64) {
        let back = hcl_strength(hcl_density(share(percent / 100.0)).expect("in range")).expect("in range");
        prop_assert!((back.as_percent() - percent).abs() < 1e-9);
    }

    #[test]
    fn twice_the_acid_takes_twice_the_base(kilograms in 0.001..50.0_f64, which in 0..8_usize) {
        let base = Base::ALL[which];
        let of = |kg| neutralize(Mass::kilograms(kg), base).expect("an amount").base_mass;
        prop_assert!((of(2.0 * kilograms) / of(kilograms) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn a_room_never_passes_its_steady_state(
        ft3 in 100.0..1e5_f64, cfm in 1.0..1e4_f64, k in 1.0..10.0_f64, vapor in 1e-4..1.0_f64, minutes in 0.0..600.0_f64
    ) {
        let flow = AirFlow::cubic_feet_per_minute(cfm);
        let room = Room::new(Volume::cubic_feet(ft3), flow, Mixing::factor(k).expect("a factor")).expect("a room");
        let vapor = AirFlow::cubic_feet_per_minute(vapor);
        let built = room.builds_up_to(vapor, Duration::minutes(minutes)).expect("in range");
        let later = room.builds_up_to(vapor, Duration::minutes(minutes + 1.0)).expect("in range");
        let steady = room.steady(vapor).expect("a fan");
        let hair = 1.0 + 1e-12;
        prop_assert!(built <= later * hair && later <= steady * hair);
        let still = Room::new(Volume::cubic_feet(ft3), AirFlow::ZERO, Mixing::PERFECT).expect("a room");
        prop_assert!(still.builds_up_to(vapor, Duration::minutes(minutes)).expect("in range") >= built);
    }

    /// Purging to half twice is purging to a quarter; being there already takes no time.
    #[test]
    fn purge_times_add_up(ft3 in 100.0..1e5_f64, cfm in 1.0..1e4_f64, ppm in 1.0..1e5_f64) {
        let flow = AirFlow::cubic_feet_per_minute(cfm);
        let room = Room::new(Volume::cubic_feet(ft3), flow, Mixing::PERFECT).expect("a room");
        let from = Concentration::parts_per_million(ppm);
        let time = |a, b| room.purge_time(a, b).expect("a fan").as_minutes();
        let twice = time(from, from * 0.5) + time(from * 0.5, from * 0.25);
        prop_assert!((time(from, from * 0.25) - twice).abs() < 1e-9 * twice);
        prop_assert_eq!(time(from, from * 2.0), 0.0);
    }

    #[test]
    fn an_order_covers_the_need_by_less_than_a_step(
        ft2 in 1.0..50_000.0_f64, inches in 2.0..12.0_f64, waste in 0.0..0.3_f64, panels in 0..10_u32
    ) {
        let side = Length::feet(2.0);
        let sample = SamplePanels { count: panels, length: side, width: side, thickness: Length::inches(2.0) };
        let (area, thickness) = (Area::square_feet(ft2), Length::inches(inches));
        let found = order(&ConcreteNeed { area, thickness, panels: sample, waste: share(waste) }, QUARTER_YARD);
        let found = found.expect("an order");
        prop_assert!(found.ordered >= found.needed && found.spare() < QUARTER_YARD);
        let quarters = found.ordered / QUARTER_YARD;
        prop_assert!((quarters - quarters.round()).abs() < 1e-6);
    }

    /// Panels tile the slab, none is longer than the rule allows, and the cuts are their inner edges.
    #[test]
    fn joint_panels_tile_the_slab(l in 3.0..200.0_f64, w in 3.0..200.0_f64, inches in 3.0..8.0_f64) {
        let rule = joint_rule();
        let thickness = Length::inches(inches);
        let plan = joint_plan(Length::feet(l), Length::feet(w), thickness, &rule).expect("a plan");
        let (_, longest) = joint_spacing(thickness, &rule).expect("a rule");
        prop_assert!(plan.panel_length <= longest * (1.0 + 1e-6) && plan.panel_width <= longest * (1.0 + 1e-6));
        prop_assert!((plan.panel_length.as_feet() * f64::from(plan.along) - l).abs() < 1e-9 * l);
        prop_assert!((plan.panel_width.as_feet() * f64::from(plan.across) - w).abs() < 1e-9 * w);
        let edges = f64::from(plan.along + 1) * w + f64::from(plan.across + 1) * l;
        prop_assert!((plan.cut_length.as_feet() - (edges - 2.0 * (l + w))).abs() < 1e-9 * edges);
        prop_assert!(plan.aspect_within);
    }

    #[test]
    fn emission_is_mass_over_area_and_time(grams in 0.0..20.0_f64, ft2 in 0.1..2.0_f64, hours in 1.0..100.0_f64) {
        let one = moisture_emission(Mass::grams(grams), Area::square_feet(ft2), Duration::hours(hours)).expect("a test");
        let given_off = one.emission.as_grams_per_square_meter_day() * Area::square_feet(ft2).as_square_meters();
        prop_assert!((given_off * hours / 24.0 - grams).abs() < 1e-9);
    }

    #[test]
    fn markup_and_margin_are_one_profit(markup in -0.9..5.0_f64) {
        let markup = Markup::share(markup).expect("a mark-up");
        let margin = markup.margin();
        prop_assert!(((1.0 + markup.as_share()) * (1.0 - margin.as_share()) - 1.0).abs() < 1e-12);
        prop_assert!((margin.markup().as_share() - markup.as_share()).abs() < 1e-12);
        prop_assert!((margin.price_over_cost() - markup.price_over_cost()).abs() < 1e-9);
    }
}
