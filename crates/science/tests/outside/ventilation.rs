//! Ventilation against arithmetic with the handbook's forms (V for health, M for the explosive limit).

use science::SpecificGravity;
use science::chemistry::gas_volume;
use science::ventilation::{
    ExplosiveMargin, FlashPoint, How, LimitKind, Mixing, Release, Room, Solvent, Substance, SubstanceData,
    air_changes_for_removal, dilution_flows, explosive_flow, health_flow, mass_concentration, vapor_rate,
};
use units::{AirFlow, AmountOfSubstance, Concentration, Duration, Fraction, MolarMass, Pressure, Temperature, Volume};

use crate::reference::{near_share, number, rows};

fn solvent(substance: Substance, gravity: f64) -> Solvent {
    Solvent::of(substance, SpecificGravity::new(gravity).expect("a gravity"))
}

fn pints_a_minute(solvent: Solvent, pints: f64) -> Release {
    Release { solvent, liquid: Volume::us_pints(pints), over: Duration::minutes(1.0), how: How::Evaporating }
}

fn ppm(value: f64) -> Concentration {
    Concentration::parts_per_million(value)
}

fn k(value: f64) -> Mixing {
    Mixing::factor(value).expect("a factor")
}

fn margin(fahrenheit: f64) -> ExplosiveMargin {
    ExplosiveMargin::new(4.0, Temperature::fahrenheit(fahrenheit)).expect("a factor")
}

fn milligrams(substance: Substance, value: f64) -> f64 {
    let (room, normal) = (Temperature::celsius(25.0), Pressure::kilopascals(101.325));
    mass_concentration(ppm(value), substance.data().molar_mass, room, normal)
        .expect("in range")
        .as_milligrams_per_cubic_meter()
}

#[test]
fn worked_examples_come_out() {
    let table = rows("ventilation_checks.csv", "item,inputs,value,unit");
    assert_eq!(table.len(), 24);
    let acetone = pints_a_minute(solvent(Substance::Acetone, 0.79), 0.1);
    let xylene = pints_a_minute(solvent(Substance::OrthoXylene, 0.864), 0.05);
    let toluene = pints_a_minute(solvent(Substance::Toluene, 0.866), 0.05);
    let health = |release: &Release, limit, mixing| {
        dilution_flows(release, ppm(limit), k(mixing), margin(70.0)).expect("in range").for_health
    };
    let explosive = |release: &Release, fahrenheit| {
        dilution_flows(release, ppm(100.0), k(1.0), margin(fahrenheit))
            .expect("in range")
            .below_explosive_limit
            .expect("it burns")
            .as_cubic_feet_per_minute()
    };
    // Two gallons of sealer, 70 % of it xylene, in an hour.
    let sealer = Release {
        liquid: Volume::us_gallons(1.4),
        over: Duration::hours(1.0),
        ..pints_a_minute(solvent(Substance::OrthoXylene, 0.864), 1.0)
    };
    let vapor = vapor_rate(&sealer).expect("in range");
    let cubic_feet = Volume::cubic_feet(5000.0);
    let still = Room::new(cubic_feet, AirFlow::ZERO, Mixing::PERFECT).expect("a room");
    let fan = Room::new(cubic_feet, AirFlow::cubic_feet_per_minute(2000.0), k(5.0)).expect("a room");
    let hour = Duration::hours(1.0);
    let built = fan.builds_up_to(vapor, hour).expect("in range");
    let unvented = still.builds_up_to(vapor, hour).expect("in range");
    let limit = sealer.solvent.lower_explosive_limit().expect("it burns");
    let tenth = ExplosiveMargin::new(10.0, Temperature::fahrenheit(70.0)).expect("a factor");
    let most = Fraction::share(0.95).expect("a share");
    let normal = Pressure::kilopascals(101.325);
    let pound_mole = AmountOfSubstance::moles(453.592_37);
    let per_pound_mole = gas_volume(pound_mole, Temperature::fahrenheit(70.0), normal).expect("a gas").as_cubic_feet();
    let per_mole =
        gas_volume(AmountOfSubstance::moles(1.0), Temperature::celsius(20.0), normal).expect("a gas").as_liters();
    // What a pint of gravity 1 and molar mass 1 gives: the handbook's constant itself.
    let unit = Solvent::new(MolarMass::grams_per_mole(1.0), SpecificGravity::new(1.0).expect("a gravity"), None);
    let constant = vapor_rate(&pints_a_minute(unit.expect("a solvent"), 1.0)).expect("in range");
    let hcl_to_ceiling = milligrams(Substance::HydrogenChloride, 5.0) * cubic_feet.as_cubic_meters() / 1000.0;
    let ours = [
        per_pound_mole,
        constant.as_cubic_feet_per_minute(),
        per_mole,
        health(&acetone, 250.0, 5.0).as_cubic_feet_per_minute(),
        health(&xylene, 100.0, 5.0).as_cubic_feet_per_minute(),
        health(&toluene, 50.0, 4.0).as_cubic_feet_per_minute(),
        explosive(&acetone, 70.0),
        explosive(&xylene, 70.0),
        explosive(&xylene, 300.0),
        vapor.as_cubic_feet_per_minute(),
        health_flow(vapor, ppm(100.0), k(5.0)).expect("in range").as_cubic_feet_per_minute(),
        explosive_flow(vapor, &sealer.solvent, tenth).expect("it burns").as_cubic_feet_per_minute(),
        unvented.as_parts_per_million(),
        unvented / limit * 100.0,
        built.as_parts_per_million(),
        fan.steady(vapor).expect("a fan").as_parts_per_million(),
        fan.purge_time(built, ppm(100.0)).expect("a fan").as_minutes(),
        air_changes_for_removal(most, Mixing::PERFECT).expect("below all"),
        air_changes_for_removal(most, k(5.0)).expect("below all"),
        milligrams(Substance::HydrogenChloride, 5.0),
        milligrams(Substance::Acetone, 250.0),
        milligrams(Substance::OrthoXylene, 100.0),
        milligrams(Substance::Ammonia, 25.0),
        hcl_to_ceiling,
    ];
    for (index, (row, value)) in table.iter().zip(ours).enumerate() {
        let share = match index {
            // The handbook rounds 403.49 to 403.
            1 => 1.3e-3,
            // The file divides by 24.45 L/mol, the ideal gas at 25 °C has 24.465.
            19..=23 => 7e-4,
            // Six figures in the file.
            _ => 5e-6,
        };
        near_share(value, number(&row[2]), share, &format!("{} {}", row[0], row[1]));
    }
}

#[test]
fn below_the_explosive_limit_is_far_from_healthy() {
    let release = pints_a_minute(solvent(Substance::OrthoXylene, 0.864), 0.05);
    let flows = dilution_flows(&release, ppm(100.0), k(5.0), margin(70.0)).expect("in range");
    let explosive = flows.below_explosive_limit.expect("it burns");
    assert!(flows.for_health > explosive * 100.0);
    assert_eq!(flows.needed(), flows.for_health);
}

/// The legal limits as the file writes them.
fn legal(data: &SubstanceData) -> String {
    let written = |kind| {
        data.legal.iter().find(|limit| limit.kind == kind).map(|limit| limit.value.as_parts_per_million().round())
    };
    match (written(LimitKind::WorkingDay), written(LimitKind::Ceiling), written(LimitKind::Peak)) {
        (Some(day), None, None) => format!("{day}"),
        (None, Some(ceiling), None) => format!("C {ceiling}"),
        (Some(day), Some(ceiling), Some(peak)) => format!("{day} (C {ceiling}; {peak} peak)"),
        other => panic!("an unforeseen set of limits {other:?}"),
    }
}

#[test]
fn the_list_of_substances_is_the_reference_file() {
    let header = "substance,MW,OSHA_PEL_ppm,NIOSH_REL_ppm,ST_or_C,IDLH_ppm,LEL_pct,UEL_pct,flash_C";
    let table = rows("exposure_limits.csv", header);
    assert_eq!(table.len(), Substance::ALL.len());
    for (row, substance) in table.iter().zip(Substance::ALL) {
        let data = substance.data();
        near_share(data.molar_mass.as_grams_per_mole(), number(&row[1]), 1e-9, &row[0]);
        assert_eq!(legal(&data), row[2], "{}", row[0]);
        let advised = data.advised[0];
        let mark = if advised.kind == LimitKind::Ceiling { "C " } else { "" };
        assert_eq!(format!("{mark}{}", advised.value.as_parts_per_million().round()), row[3], "{}", row[0]);
        let short = match data.advised.iter().find(|limit| limit.kind == LimitKind::ShortTerm) {
            Some(limit) => format!("ST {}", limit.value.as_parts_per_million().round()),
            None if advised.kind == LimitKind::Ceiling => "ceiling".to_owned(),
            None => "none".to_owned(),
        };
        assert_eq!(short, row[4], "{}", row[0]);
        let dangerous = data.dangerous.as_parts_per_million().round().to_string();
        let stricter = row[5].split(['(', ' ']).any(|word| word == dangerous);
        assert!(stricter, "{}: {dangerous} is not in {}", row[0], row[5]);
        match data.explosive {
            None => assert_eq!((row[6].as_str(), row[7].as_str()), ("none", "none")),
            Some((lower, upper)) => {
                near_share(lower.as_percent(), number(&row[6]), 1e-9, &row[0]);
                near_share(upper.as_percent(), number(&row[7]), 1e-9, &row[0]);
            }
        }
        match data.flash_point {
            FlashPoint::None => assert_eq!(row[8], "none"),
            FlashPoint::Gas => assert_eq!(row[8], "gas"),
            FlashPoint::At(t) => assert!((t.as_celsius() - number(&row[8])).abs() < 1e-9),
        }
    }
}
