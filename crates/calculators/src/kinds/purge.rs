//! How long a fan takes to clear a room.

use science::ventilation::{Mixing, Room, air_changes_for_removal};
use science::{FormulaSource, Grade};
use units::{AirFlow, Concentration, Duration, Volume};

use super::prelude::*;
use crate::caution::Caution;
use crate::shown::Shown;

/// t = V/Q' · ln(C1/C2), Q' = Q/K.
const PURGE: FormulaSource = FormulaSource {
    id: "purge",
    document: "ACGIH Industrial Ventilation, dilution chapter",
    locator: "t = V/Q' ln(C1/C2), Q' = Q/K; one well-mixed room, numbers checked by arithmetic",
    grade: Grade::FromMemory,
};

pub(super) static CALCULATOR: Calculator = Calculator {
    form: Form {
        name: "purge",
        fields: &[
            required("room", "value-room", quantity(Kind::Volume, "5000 ft3", "140 m3")),
            required("fan", "sum-field-purge-fan", quantity(Kind::AirFlow, "2000 cfm", "3400 m3/h")).in_answer("value-fan"),
            optional("from", "value-from", quantity(Kind::Concentration, "1500 ppm", "1500 ppm")),
            optional("to", "sum-field-purge-to", quantity(Kind::Concentration, "100 ppm", "100 ppm")).in_answer("value-to"),
            optional("removal", "sum-field-purge-removal", percent(Kind::Fraction, "95 %")).in_answer("value-removal"),
            optional("mixing", "value-mixing", NUMBER).usual("5", "5").more(),
        ],
        presets: &[],
        rules: &[Rule::OneOf(&["from", "removal"]), Rule::Needs("from", "to"), Rule::Needs("to", "from")],
    },
    title: "sum-purge",
    about: "sum-about-purge",
    example: &["room", "fan", "from", "to"],
    lines: &[r#"--room "5000 ft3" --fan "2000 cfm" --from "1518 ppm" --to "100 ppm""#],
    places: &[],
    run,
};

fn run(given: &mut Given<'_>) -> Result<Calculation, CalculatorError> {
    let mut sum = Calculation::new(given, PURGE);
    let room: Volume = given.read("room", Shown::Space)?;
    let fan: AirFlow = given.read("fan", Shown::Flow)?;
    let factor = given.number_or("mixing", 5.0);
    let mixing = Mixing::factor(factor).map_err(CalculatorError::core)?;
    let blown = Room::new(room, fan, mixing).map_err(CalculatorError::core)?;
    let (time, changes) = match given.share("removal")? {
        Some(removal) => {
            let changes = air_changes_for_removal(removal, mixing).map_err(CalculatorError::core)?;
            // The time depends on the share alone, so any start will do.
            let start = Concentration::share(1.0);
            let left = start * (1.0 - removal.as_share());
            (blown.purge_time(start, left).map_err(CalculatorError::core)?, changes)
        }
        None => {
            let from = given.read("from", Shown::Concentration)?;
            let to = given.read("to", Shown::Concentration)?;
            let time: Duration = blown.purge_time(from, to).map_err(CalculatorError::core)?;
            (time, fan * time / room)
        }
    };
    sum.result("purge_time", Shown::Minutes(time));
    sum.result("air_changes", Shown::Number(changes, 1));
    sum.caution([
        Caution::VaporLiesLow,
        Caution::NotForAcidOrSpray,
        Caution::NoIgnition,
        Caution::RespiratorByCompetentPerson,
    ]);
    Ok(sum)
}
