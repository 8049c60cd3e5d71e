//! How long a fan takes to clear a room.

use clap::Args;
use science::ventilation::{Mixing, Room, air_changes_for_removal};
use science::{FormulaSource, Grade};
use units::{AirFlow, Concentration, Duration, Volume};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{missing, share};
use crate::shown::Shown;
use crate::sum::Sum;

/// t = V/Q' · ln(C1/C2), Q' = Q/K.
const PURGE: FormulaSource = FormulaSource {
    id: "purge",
    document: "ACGIH Industrial Ventilation, dilution chapter",
    locator: "t = V/Q' ln(C1/C2), Q' = Q/K; one well-mixed room, numbers checked by arithmetic",
    grade: Grade::FromMemory,
};

/// What is asked.
#[derive(Debug, Args)]
pub struct Purge {
    /// Volume of the room
    #[arg(long, value_name = "VOLUME", allow_hyphen_values = true)]
    room: String,
    /// Fresh air that the fan moves
    #[arg(long, value_name = "FLOW", allow_hyphen_values = true)]
    fan: String,
    /// Vapor in the air now
    #[arg(long, value_name = "PPM", requires = "to", conflicts_with = "removal", allow_hyphen_values = true)]
    from: Option<String>,
    /// Vapor wished
    #[arg(long, value_name = "PPM", requires = "from", allow_hyphen_values = true)]
    to: Option<String>,
    /// Share to remove, instead of --from and --to
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    removal: Option<String>,
    /// Mixing factor, 1 perfect to 10 dead corners [default: 5]
    #[arg(long, value_name = "K", allow_hyphen_values = true)]
    mixing: Option<String>,
}

pub(crate) fn run(args: &Purge) -> Result<Sum, SumError> {
    let mut sum = Sum::new("purge", PURGE);
    let room: Volume = sum.read("room", &args.room, Shown::Space)?;
    let fan: AirFlow = sum.read("fan", &args.fan, Shown::Flow)?;
    let factor = sum.number_or("mixing", args.mixing.as_ref(), 5.0, "mixing-factor")?;
    let mixing = Mixing::factor(factor).map_err(SumError::core)?;
    let blown = Room::new(room, fan, mixing).map_err(SumError::core)?;
    let (time, changes) = match (&args.removal, &args.from, &args.to) {
        (Some(text), ..) => {
            let removal = share("removal", text)?;
            sum.given("removal", text, Shown::Percent(removal.as_percent()));
            let changes = air_changes_for_removal(removal, mixing).map_err(SumError::core)?;
            // The time depends on the share alone, so any start will do.
            let start = Concentration::share(1.0);
            let left = start * (1.0 - removal.as_share());
            (blown.purge_time(start, left).map_err(SumError::core)?, changes)
        }
        (None, Some(from), Some(to)) => {
            let from = sum.read("from", from, Shown::Concentration)?;
            let to = sum.read("to", to, Shown::Concentration)?;
            let time: Duration = blown.purge_time(from, to).map_err(SumError::core)?;
            (time, fan * time / room)
        }
        _ => {
            return Err(missing("from", Accepted::naming("purge", &["from", "to", "removal"])));
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
