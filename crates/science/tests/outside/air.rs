//! Vapor, dew point, wet bulb and humidity ratio against psychrolib 2.5.0 and CoolProp 8.0.0 (V).

use science::air::{Air, dew_point, dew_point_of_vapor, saturation_pressure, standard_pressure};
use units::{Length, Pressure, RelativeHumidity, Temperature};

use crate::reference::{near, near_share, number, rows};

const GRID: &str =
    "T_C,T_F,RH,P_Pa,pws_Pa,pw_Pa,W_kg_kg,Tdp_C,Tdp_F,Twb_C,magnus_pws_Pa,magnus_td_C,cp_Tdp_C,cp_Twb_C,cp_W";

struct GridRow {
    air: Air,
    cells: Vec<f64>,
    name: String,
}

fn grid() -> Vec<GridRow> {
    rows("psychrometric_grid.csv", GRID)
        .into_iter()
        .map(|row| {
            let cells: Vec<f64> = row.iter().map(|cell| number(cell)).collect();
            let air = Air::new(
                Temperature::celsius(cells[0]),
                RelativeHumidity::percent(100.0 * cells[2]).expect("a humidity"),
                Pressure::pascals(cells[3]),
            )
            .expect("air of the grid");
            GridRow { air, cells, name: format!("{} °C, RH {}, {} Pa", row[0], row[2], row[3]) }
        })
        .collect()
}

#[test]
fn saturation_pressure_agrees_with_psychrolib_and_with_iapws() {
    let header = "T_C,T_F,pws_HW_Pa,pws_HW_psi,pws_HW_inHg,pws_IAPWS95_Pa,magnus_AE_Pa,magnus_WMO_Pa";
    let table = rows("saturation_pressure.csv", header);
    assert_eq!(table.len(), 15);
    let mut with_iapws = 0;
    for row in &table {
        let ours = saturation_pressure(Temperature::celsius(number(&row[0]))).expect("in range");
        near_share(ours.as_pascals(), number(&row[2]), 2e-6, &row[0]);
        near(ours.as_psi(), number(&row[3]), 1e-6, &row[0]);
        near(ours.as_inches_of_mercury(), number(&row[4]), 2e-6, &row[0]);
        let iapws = number(&row[5]);
        if iapws.is_finite() {
            with_iapws += 1;
            near_share(ours.as_pascals(), iapws, 5e-4, &row[0]);
        }
    }
    assert_eq!(with_iapws, 12);
}

#[test]
fn dew_point_agrees_with_psychrolib_and_coolprop() {
    let grid = grid();
    assert_eq!(grid.len(), 308);
    for row in &grid {
        let ours = row.air.dew_point().expect("moist air").as_celsius();
        // psychrolib stops its search at 0.001 K.
        near(ours, row.cells[7], 0.001, &row.name);
        near(ours, row.cells[12], 0.03, &row.name);
        near(row.air.dew_point().expect("moist air").as_fahrenheit(), row.cells[8], 0.002, &row.name);
        let bare = dew_point(row.air.temperature(), row.air.humidity()).expect("moist air");
        assert_eq!(bare.as_celsius(), ours, "{}", row.name);
        let by_vapor = dew_point_of_vapor(Pressure::pascals(row.cells[5])).expect("moist air").as_celsius();
        near(by_vapor, row.cells[7], 0.002, &row.name);
    }
}

#[test]
fn vapor_pressure_and_humidity_ratio_agree_with_psychrolib_and_coolprop() {
    let grid = grid();
    assert_eq!(grid.len(), 308);
    for row in &grid {
        near(row.air.vapor_pressure().as_pascals(), row.cells[5], 0.001, &row.name);
        let ratio = row.air.humidity_ratio().as_mass_per_mass();
        near(ratio, row.cells[6], 6e-8, &row.name);
        // CoolProp treats moist air as a real gas: up to about half a percent more vapor.
        near_share(ratio, row.cells[14], 0.006, &row.name);
    }
}

#[test]
fn wet_bulb_agrees_with_psychrolib_and_coolprop_away_from_freezing() {
    let grid = grid();
    assert_eq!(grid.len(), 308);
    let (mut above, mut below) = (0, 0);
    for row in &grid {
        let ours = row.air.wet_bulb().as_celsius();
        let (psychrolib, coolprop) = (row.cells[9], row.cells[13]);
        // Across 0 °C the libraries take ice or water at different points: left out by rule.
        if psychrolib > 0.5 && coolprop > 0.5 {
            above += 1;
            near(ours, psychrolib, 0.002, &row.name);
            near(ours, coolprop, 0.03, &row.name);
        } else if psychrolib < -0.5 && coolprop < -0.5 {
            below += 1;
            near(ours, psychrolib, 0.002, &row.name);
        }
    }
    assert_eq!((above, below), (278, 26));
}

#[test]
fn standard_atmosphere_has_its_tabulated_pressures() {
    // ASHRAE Fundamentals 2017 ch. 1 table 1, standard atmosphere (M): kPa, rounded there to 3 figures or more.
    let table =
        [(0.0, 101.325), (500.0, 95.461), (1000.0, 89.875), (1500.0, 84.556), (2000.0, 79.495), (3000.0, 70.108)];
    for (meters, kilopascals) in table {
        let ours = standard_pressure(Length::meters(meters)).expect("in range").as_kilopascals();
        near(ours, kilopascals, 0.001, &format!("{meters} m"));
    }
}
