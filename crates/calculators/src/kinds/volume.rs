//! Concrete to order.

use clap::Args;
use science::concrete::{ConcreteNeed, QUARTER_YARD, SamplePanels, order};
use science::{FormulaSource, Grade};
use units::{Area, Fraction, Length};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::missing;
use crate::shown::Shown;
use crate::sum::Sum;

/// Area times thickness; waste and rounding are the trade's.
const ORDER: FormulaSource = FormulaSource {
    id: "concrete-order",
    document: "geometry: 27 cubic feet in a cubic yard",
    locator: "waste and the quarter-yard step are trade practice and yours to change",
    grade: Grade::Verified,
};

/// What is asked.
#[derive(Debug, Args)]
pub struct Volume {
    /// Area of the slab
    #[arg(long, value_name = "AREA", conflicts_with_all = ["length", "width"], allow_hyphen_values = true)]
    area: Option<String>,
    /// Length of the slab
    #[arg(long, value_name = "LENGTH", requires = "width", allow_hyphen_values = true)]
    length: Option<String>,
    /// Width of the slab
    #[arg(long, value_name = "LENGTH", requires = "length", allow_hyphen_values = true)]
    width: Option<String>,
    /// Thickness of the slab
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    thickness: String,
    /// Sample panels cast from the same load
    #[arg(long, default_value_t = 0, value_name = "COUNT")]
    panels: u32,
    /// One side of a panel [default: 2 ft]
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    panel_length: Option<String>,
    /// The other side of a panel [default: 2 ft]
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    panel_width: Option<String>,
    /// Thickness of a panel [default: 2 in]
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    panel_thickness: Option<String>,
    /// Added for uneven ground and spilling [default: 5 %]
    #[arg(long, value_name = "SHARE", allow_hyphen_values = true)]
    waste: Option<String>,
    /// Step the plant sells by [default: 0.25 yd3]
    #[arg(long, value_name = "VOLUME", allow_hyphen_values = true)]
    step: Option<String>,
}

pub(crate) fn run(args: &Volume) -> Result<Sum, SumError> {
    let mut sum = Sum::new("volume", ORDER);
    let area: Area = match (&args.area, &args.length, &args.width) {
        (Some(text), ..) => sum.read("area", text, Shown::Area)?,
        (None, Some(length), Some(width)) => {
            let length: Length = sum.read("length", length, Shown::Length)?;
            length * sum.read::<Length>("width", width, Shown::Length)?
        }
        _ => return Err(missing("area", Accepted::naming("area-or-sides", &["length", "width"]))),
    };
    let thickness = sum.read("thickness", &args.thickness, Shown::Thickness)?;
    sum.given("panels", &args.panels.to_string(), Shown::Count(args.panels));
    let mut panels = SamplePanels {
        count: args.panels,
        length: Length::feet(2.0),
        width: Length::feet(2.0),
        thickness: Length::inches(2.0),
    };
    if args.panels > 0 {
        panels.length = sum.read_or("panel_length", args.panel_length.as_ref(), panels.length, Shown::Length)?;
        panels.width = sum.read_or("panel_width", args.panel_width.as_ref(), panels.width, Shown::Length)?;
        panels.thickness =
            sum.read_or("panel_thickness", args.panel_thickness.as_ref(), panels.thickness, Shown::Thickness)?;
    }
    let usual = Fraction::share(0.05).expect("0.05 lies between 0 and 1");
    let waste = sum.share_or("waste", args.waste.as_ref(), usual)?;
    let step = sum.read_or("step", args.step.as_ref(), QUARTER_YARD, Shown::Concrete)?;
    let found = order(&ConcreteNeed { area, thickness, panels, waste }, step).map_err(SumError::core)?;
    sum.result("order", Shown::Concrete(found.ordered));
    sum.result("slab_concrete", Shown::Concrete(found.slab));
    sum.result("panel_concrete", Shown::Concrete(found.panels));
    sum.result("waste_concrete", Shown::Concrete(found.waste));
    sum.result("needed", Shown::Concrete(found.needed));
    sum.result("spare", Shown::Concrete(found.spare()));
    sum.caution([Caution::WetConcreteBurns]);
    if args.panels == 0 {
        sum.caution([Caution::CastPanelsAlongside]);
    }
    Ok(sum)
}
