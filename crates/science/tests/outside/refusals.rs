//! Every refusal is typed, and its text says what would be accepted.

use science::air::{
    Air, AirError, AirSample, EvaporationForm, SeriesError, WeatherSeries, WorkLimits, dew_point, dew_point_of_vapor,
    evaporation_hours, evaporation_rate, humidity_ratio, saturation_pressure, standard_pressure, work_windows,
};
use science::chemistry::{
    Base, Baume, ChemistryError, Mineral, Solution, Species, dilute_by_parts, dilute_to, etched_depth, gas_volume,
    hcl_density, hcl_strength, hcl_strength_from_baume, ideal_ph, neutralize,
};
use science::concrete::{
    ConcreteError, ConcreteNeed, JointRule, SamplePanels, joint_plan, joint_spacing, order, saw_cut_depth,
};
use science::cure::{
    Activation, ArrheniusAge, Between, CureError, GapRule, TemperatureLog, TemperatureReading, TemperatureTimeFactor,
    equivalent_age, temperature_time_factor,
};
use science::emission::{EmissionError, moisture_emission};
use science::film::{CoatingJob, FilmError, dry_film, theoretical_coverage, wet_film};
use science::markup::{Margin, Markup, MarkupError};
use science::ventilation::{
    ExplosiveMargin, How, Mixing, Release, Room, Solvent, Substance, VentilationError, air_changes_for_removal,
    explosive_flow, health_flow, vapor_rate,
};
use science::{MixtureError, Parts, SpecificGravity};
use units::{
    AirFlow, AmountOfSubstance, Area, Concentration, Coverage, Density, Duration, EvaporationRate, FilmThickness,
    Fraction, Length, Mass, MolarMass, Molarity, Notation, Pressure, RelativeHumidity, Speed, Temperature,
    TemperatureDifference, Volume,
};

use crate::concrete::joint_rule;

/// The error of a call, whose text must say what would be accepted.
#[track_caller]
fn refused<T: std::fmt::Debug, E: std::error::Error>(answer: Result<T, E>) -> E {
    let error = answer.expect_err("a refusal");
    assert!(error.to_string().contains("accepted"), "{error}");
    error
}

fn rh(percent: f64) -> RelativeHumidity {
    RelativeHumidity::percent(percent).expect("a humidity")
}

fn share(value: f64) -> Fraction {
    Fraction::share(value).expect("a share")
}

fn celsius(value: f64) -> Temperature {
    Temperature::celsius(value)
}

#[test]
fn humidity_above_100_never_gets_in() {
    assert!(refused(RelativeHumidity::percent(101.0)).to_string().contains("100 %"));
    refused(RelativeHumidity::percent(f64::NAN));
    refused(RelativeHumidity::read("120 %"));
}

#[test]
fn air_refuses_what_its_formulas_do_not_cover() {
    for t in [-100.1, 200.1, f64::NAN, f64::INFINITY] {
        assert!(matches!(refused(saturation_pressure(celsius(t))), AirError::Temperature { .. }), "{t}");
        assert!(matches!(refused(dew_point(celsius(t), rh(50.0))), AirError::Temperature { .. }), "{t}");
    }
    assert!(matches!(refused(dew_point(celsius(20.0), rh(0.0))), AirError::NoDewPoint(_)));
    for p in [0.0, -1.0, 0.001, 2e6, f64::NAN] {
        assert!(matches!(refused(dew_point_of_vapor(Pressure::pascals(p))), AirError::NoDewPoint(_)), "{p}");
    }
    let sea = Pressure::kilopascals(101.325);
    assert!(matches!(refused(Air::new(celsius(105.0), rh(10.0), sea)), AirError::Boiling { .. }));
    assert!(matches!(refused(humidity_ratio(sea, sea)), AirError::Boiling { .. }));
    for p in [0.0, -5.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(refused(Air::new(celsius(20.0), rh(10.0), Pressure::pascals(p))), AirError::Pressure(_)));
    }
    for z in [-6000.0, 12_000.0, f64::NAN] {
        assert!(matches!(refused(standard_pressure(Length::meters(z))), AirError::Elevation(_)));
    }
}

#[test]
fn evaporation_refuses_wind_below_zero() {
    for wind in [-0.1, f64::NAN, f64::INFINITY] {
        for form in [EvaporationForm::Menzel, EvaporationForm::Uno, EvaporationForm::UnoUsCustomary] {
            let answer = evaporation_rate(form, celsius(20.0), celsius(20.0), rh(50.0), Speed::miles_per_hour(wind));
            assert!(matches!(refused(answer), AirError::Wind(_)), "{wind}");
        }
    }
    for form in [EvaporationForm::Uno, EvaporationForm::UnoUsCustomary] {
        let answer = evaporation_rate(form, celsius(10.0), celsius(-18.5), rh(50.0), Speed::ZERO);
        assert!(matches!(refused(answer), AirError::BelowUno { field: "air temperature", .. }));
    }
}

#[test]
fn series_refuse_bad_shape_and_name_the_bad_sample() {
    let sample = |hour: f64, wind: f64| AirSample {
        at: Duration::hours(hour),
        air: celsius(20.0),
        humidity: rh(50.0),
        wind: Some(Speed::meters_per_second(wind)),
        slab: Some(celsius(20.0)),
        rain: None,
        pressure: None,
    };
    let hour = Duration::hours(1.0);
    assert_eq!(refused(WeatherSeries::new(&[], hour)), SeriesError::Empty);
    let fine = [sample(0.0, 1.0)];
    assert!(matches!(refused(WeatherSeries::new(&fine, Duration::ZERO)), SeriesError::Holds(_)));
    let twice = [sample(0.0, 1.0), sample(0.0, 1.0)];
    assert!(matches!(refused(WeatherSeries::new(&twice, hour)), SeriesError::Order { index: 1, .. }));
    let endless = [sample(f64::INFINITY, 1.0)];
    assert!(matches!(refused(WeatherSeries::new(&endless, hour)), SeriesError::Order { index: 0, .. }));
    let gale = [sample(0.0, 1.0), sample(1.0, -3.0)];
    let series = WeatherSeries::new(&gale, hour).expect("a series");
    let limit = EvaporationRate::pounds_per_square_foot_hour(0.2);
    let answer = evaporation_hours(series, EvaporationForm::Menzel, limit);
    assert!(matches!(refused(answer), SeriesError::Sample { index: 1, problem: AirError::Wind(_) }));
    let limits = WorkLimits { wind_max: Some(Speed::miles_per_hour(15.0)), ..WorkLimits::default() };
    let answer = work_windows(series, &limits);
    assert!(matches!(refused(answer), SeriesError::Sample { index: 1, problem: AirError::Wind(_) }));
    let nothing = evaporation_hours(series, EvaporationForm::Menzel, EvaporationRate::ZERO);
    assert!(matches!(refused(nothing), SeriesError::Limit(_)));
}

#[test]
fn maturity_refuses_an_empty_log_and_bad_constants() {
    let rule = GapRule { longest: Duration::hours(3.0), margin: TemperatureDifference::celsius_degrees(0.0) };
    let reading = |h: f64, c: f64| TemperatureReading { at: Duration::hours(h), temperature: celsius(c) };
    let log = |readings: &'static [TemperatureReading], rule| TemperatureLog::new(readings, Between::Step, rule);
    assert_eq!(refused(log(&[], rule)), CureError::EmptyLog);
    let readings = [reading(0.0, 20.0), reading(1.0, 20.0)];
    let made = |rule| TemperatureLog::new(&readings, Between::Step, rule);
    assert!(matches!(refused(made(GapRule { longest: Duration::ZERO, ..rule })), CureError::GapLength(_)));
    let cold = GapRule { margin: TemperatureDifference::celsius_degrees(-1.0), ..rule };
    assert!(matches!(refused(made(cold)), CureError::GapMargin(_)));
    let back = [reading(1.0, 20.0), reading(0.5, 20.0)];
    let answer = TemperatureLog::new(&back, Between::Step, rule);
    assert!(matches!(refused(answer), CureError::Order { index: 1, .. }));
    let fahrenheit = [reading(0.0, 20.0), reading(1.0, 104.0)];
    let answer = TemperatureLog::new(&fahrenheit, Between::Step, rule);
    assert!(matches!(refused(answer), CureError::Reading { index: 1, .. }));
    let log = made(rule).expect("a log");
    let (start, end) = (Duration::ZERO, Duration::hours(1.0));
    let backward = equivalent_age(log, end, start, &ArrheniusAge::default());
    assert!(matches!(refused(backward), CureError::Period { .. }));
    let hot = ArrheniusAge { reference: celsius(200.0), ..ArrheniusAge::default() };
    assert!(matches!(refused(equivalent_age(log, start, end, &hot)), CureError::Constant { .. }));
    let datum = TemperatureTimeFactor { datum: celsius(f64::NAN) };
    assert!(matches!(refused(temperature_time_factor(log, start, end, datum)), CureError::Constant { .. }));
    for q in [0.0, -1.0, 41_500.0, f64::NAN] {
        assert!(matches!(refused(Activation::kelvins(q)), CureError::Activation(_)), "{q}");
    }
}

#[test]
fn films_refuse_penetrating_products_and_nothing() {
    let mil = FilmThickness::mils(2.0);
    assert_eq!(refused(theoretical_coverage(share(0.0), mil)), FilmError::NoFilm);
    assert_eq!(refused(dry_film(mil, share(0.0), Parts::UNDILUTED)), FilmError::NoFilm);
    assert!(matches!(refused(theoretical_coverage(share(0.3), FilmThickness::ZERO)), FilmError::Thickness(_)));
    assert!(matches!(refused(wet_film(Coverage::ZERO)), FilmError::Coverage(_)));
    let job = CoatingJob {
        area: Area::square_feet(100.0),
        volume_solids: share(0.3),
        dry_per_coat: mil,
        coats: 1,
        loss: share(0.1),
    };
    assert_eq!(refused(CoatingJob { coats: 0, ..job }.volume()), FilmError::NoCoats);
    assert!(matches!(refused(CoatingJob { loss: share(1.0), ..job }.volume()), FilmError::Loss(_)));
    assert!(matches!(refused(CoatingJob { area: Area::square_feet(-1.0), ..job }.volume()), FilmError::Area(_)));
    assert_eq!(refused(CoatingJob { volume_solids: share(0.0), ..job }.volume()), FilmError::NoFilm);
}

#[test]
fn chemistry_refuses_dilution_beyond_stock_strength() {
    let gallon = Volume::us_gallons(1.0);
    assert!(matches!(refused(dilute_to(share(0.10), share(0.20), gallon)), ChemistryError::BeyondStock { .. }));
    assert!(matches!(refused(dilute_to(share(0.45), share(0.20), gallon)), ChemistryError::Strength(_)));
    assert_eq!(refused(dilute_by_parts(share(0.0), gallon, Parts::UNDILUTED)), ChemistryError::NoAcid);
    let negative = Volume::us_gallons(-1.0);
    assert!(matches!(refused(dilute_to(share(0.3), share(0.2), negative)), ChemistryError::Volume(_)));
    assert!(matches!(refused(dilute_by_parts(share(0.3), negative, Parts::UNDILUTED)), ChemistryError::Volume(_)));
    assert!(matches!(refused(hcl_density(share(0.41))), ChemistryError::Strength(_)));
    for density in [0.95, 1.25] {
        let density = Density::grams_per_milliliter(density);
        assert!(matches!(refused(hcl_strength(density)), ChemistryError::AcidDensity(_)));
    }
    assert!(matches!(refused(Baume::degrees(90.0)), ChemistryError::Baume(_)));
    let (weak, light) = (Baume::degrees(5.0).expect("degrees"), SpecificGravity::new(0.9).expect("a gravity"));
    assert!(matches!(refused(hcl_strength_from_baume(weak)), ChemistryError::AcidBaume(_)));
    assert!(matches!(refused(Baume::of(light)), ChemistryError::Baume(_)));
}

#[test]
fn chemistry_refuses_nothing_and_less_than_nothing() {
    let lost = Mass::grams(-1.0);
    assert!(matches!(refused(neutralize(lost, Base::SodiumBicarbonate)), ChemistryError::Mass(_)));
    let bare = etched_depth(Mass::grams(1.0), Area::ZERO, Mineral::CalciumCarbonate);
    assert!(matches!(refused(bare), ChemistryError::Area(_)));
    let weightless = Solution::new(Species::Ammonia, share(0.05), Density::ZERO);
    assert!(matches!(refused(weightless), ChemistryError::Density(_)));
    let water = Solution::hydrochloric(share(0.0)).expect("water");
    assert_eq!(refused(water.volume_with(Mass::grams(1.0))), ChemistryError::NoSolute);
    assert!(matches!(refused(ideal_ph(Molarity::ZERO)), ChemistryError::Molarity(_)));
    let nowhere = gas_volume(AmountOfSubstance::moles(1.0), celsius(20.0), Pressure::ZERO);
    assert!(matches!(refused(nowhere), ChemistryError::Gas { .. }));
}

fn release(how: How, substance: Substance) -> Release {
    let solvent = Solvent::of(substance, SpecificGravity::new(0.8).expect("a gravity"));
    Release { solvent, liquid: Volume::us_pints(1.0), over: Duration::hours(1.0), how }
}

#[test]
fn ventilation_refuses_acid_mist_and_spraying() {
    assert_eq!(refused(vapor_rate(&release(How::AcidMist, Substance::Acetone))), VentilationError::AcidMist);
    assert_eq!(refused(vapor_rate(&release(How::Spraying, Substance::Acetone))), VentilationError::Spraying);
    let acid = release(How::Evaporating, Substance::HydrogenChloride);
    assert_eq!(refused(vapor_rate(&acid)), VentilationError::AcidMist);
    // The explosive question for acid mist has no answer either.
    assert_eq!(refused(acid.solvent.lower_explosive_limit()), VentilationError::NoExplosiveLimit);
    let margin = ExplosiveMargin::new(4.0, celsius(20.0)).expect("a factor");
    let flow = AirFlow::cubic_feet_per_minute(1.0);
    assert_eq!(refused(explosive_flow(flow, &acid.solvent, margin)), VentilationError::NoExplosiveLimit);
}

#[test]
fn ventilation_refuses_values_out_of_range() {
    let fine = release(How::Evaporating, Substance::Acetone);
    let empty = Release { over: Duration::ZERO, ..fine };
    assert!(matches!(refused(vapor_rate(&empty)), VentilationError::Time { .. }));
    let negative = Release { liquid: Volume::us_pints(-1.0), ..fine };
    assert!(matches!(refused(vapor_rate(&negative)), VentilationError::Volume { .. }));
    for k in [0.5, 11.0, f64::NAN] {
        assert!(matches!(refused(Mixing::factor(k)), VentilationError::Mixing(_)));
    }
    assert!(matches!(refused(ExplosiveMargin::new(0.5, celsius(20.0))), VentilationError::Safety(_)));
    let flow = AirFlow::cubic_feet_per_minute(1.0);
    let none = Concentration::ZERO;
    assert!(matches!(refused(health_flow(flow, none, Mixing::PERFECT)), VentilationError::Concentration { .. }));
    let backward = AirFlow::cubic_feet_per_minute(-1.0);
    let whole = Concentration::parts_per_million(100.0);
    assert!(matches!(refused(health_flow(backward, whole, Mixing::PERFECT)), VentilationError::Flow { .. }));
    assert!(matches!(refused(Room::new(Volume::ZERO, flow, Mixing::PERFECT)), VentilationError::Volume { .. }));
    let still = Room::new(Volume::cubic_feet(1000.0), AirFlow::ZERO, Mixing::PERFECT).expect("a room");
    assert!(matches!(refused(still.purge_time(whole, whole * 0.5)), VentilationError::Flow { .. }));
    assert!(matches!(refused(still.steady(flow)), VentilationError::Flow { .. }));
    assert!(matches!(refused(still.builds_up_to(flow, Duration::hours(-1.0))), VentilationError::Time { .. }));
    assert!(matches!(refused(air_changes_for_removal(share(1.0), Mixing::PERFECT)), VentilationError::Removal(_)));
    let light = Solvent::new(MolarMass::ZERO, SpecificGravity::new(0.8).expect("a gravity"), None);
    assert!(matches!(refused(light), VentilationError::MolarMass(_)));
}

#[test]
fn a_dish_that_lost_mass_is_no_test() {
    let (area, time) = (Area::square_feet(0.5), Duration::hours(66.0));
    assert!(matches!(refused(moisture_emission(Mass::grams(-0.1), area, time)), EmissionError::Gain(_)));
    assert!(matches!(refused(moisture_emission(Mass::grams(1.0), Area::ZERO, time)), EmissionError::Area(_)));
    assert!(matches!(refused(moisture_emission(Mass::grams(1.0), area, Duration::ZERO)), EmissionError::Time(_)));
}

#[test]
fn concrete_refuses_nothing_and_broken_rules() {
    let (side, none) = (Length::feet(3.0), Length::ZERO);
    let panels = SamplePanels { count: 1, length: side, width: side, thickness: Length::inches(2.0) };
    let need = ConcreteNeed { area: Area::square_feet(100.0), thickness: side, panels, waste: share(0.0) };
    let step = Volume::cubic_yards(0.25);
    assert!(matches!(refused(order(&ConcreteNeed { area: Area::ZERO, ..need }, step)), ConcreteError::Area(_)));
    let thin = ConcreteNeed { thickness: none, ..need };
    assert!(matches!(refused(order(&thin, step)), ConcreteError::Length { field: "slab thickness", .. }));
    let flat = ConcreteNeed { panels: SamplePanels { thickness: none, ..panels }, ..need };
    assert!(matches!(refused(order(&flat, step)), ConcreteError::Length { field: "panel thickness", .. }));
    assert!(matches!(refused(order(&need, Volume::ZERO)), ConcreteError::Step(_)));
    let rule = joint_rule();
    let turned = JointRule { low_multiple: 40.0, ..rule };
    assert!(matches!(refused(joint_spacing(side, &turned)), ConcreteError::SpacingRule { .. }));
    assert!(matches!(refused(joint_spacing(side, &JointRule { aspect_max: 0.9, ..rule })), ConcreteError::Aspect(_)));
    assert!(matches!(refused(saw_cut_depth(side, share(0.0))), ConcreteError::CutDepth(_)));
    let thread = joint_plan(Length::feet(1e6), Length::inches(1.0), Length::inches(4.0), &rule);
    assert!(matches!(refused(thread), ConcreteError::TooManyPanels { .. }));
}

#[test]
fn ratios_refuse_what_no_price_or_mix_has() {
    assert!(matches!(refused(Margin::share(1.0)), MarkupError::Margin(_)));
    assert!(matches!(refused(Margin::share(f64::NAN)), MarkupError::Margin(_)));
    assert!(matches!(refused(Markup::share(-1.0)), MarkupError::Markup(_)));
    for (product, diluent) in [(0.0, 1.0), (1.0, -1.0), (f64::NAN, 1.0), (1.0, f64::INFINITY)] {
        assert!(matches!(refused(Parts::new(product, diluent)), MixtureError::Parts { .. }));
    }
    assert!(matches!(refused(SpecificGravity::new(0.0)), MixtureError::SpecificGravity(_)));
}
