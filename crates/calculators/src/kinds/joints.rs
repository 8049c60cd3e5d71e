//! Spacing, depth and length of contraction joints.

use clap::Args;
use science::concrete::{JointRule, joint_plan, joint_spacing, saw_cut_depth};
use slab_plan::layout::JointLimits;
use trade_facts::Trade;
use units::Length;

use crate::caution::Caution;
use crate::error::SumError;
use crate::rests_on::fact;
use crate::shown::Shown;
use crate::sum::Sum;

/// What is asked.
#[derive(Debug, Args)]
pub struct Joints {
    /// Length of the slab
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    length: String,
    /// Width of the slab
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    width: String,
    /// Thickness of the slab
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    thickness: String,
    /// Shortest spacing as a multiple of the thickness [default: 24]
    #[arg(long, value_name = "NUMBER", allow_hyphen_values = true)]
    low: Option<String>,
    /// Longest spacing as a multiple of the thickness [default: 36]
    #[arg(long, value_name = "NUMBER", allow_hyphen_values = true)]
    high: Option<String>,
    /// Never further apart than this [default: 15 ft]
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    cap: Option<String>,
    /// Longest over shortest side of a panel [default: 1.5]
    #[arg(long, value_name = "NUMBER", allow_hyphen_values = true)]
    aspect: Option<String>,
    /// Depth of a saw cut as a share of the thickness [default: 25 %]
    #[arg(long, value_name = "SHARE", allow_hyphen_values = true)]
    cut: Option<String>,
}

pub(crate) fn run(args: &Joints) -> Result<Sum, SumError> {
    let limits = JointLimits::of(Trade::built_in()).expect("a test of this calculation reads the rule");
    let usual = limits.rule;
    let mut sum = Sum::new("joints", fact(limits.multiples.id));
    let length: Length = sum.read("length", &args.length, Shown::Length)?;
    let width: Length = sum.read("width", &args.width, Shown::Length)?;
    let thickness: Length = sum.read("thickness", &args.thickness, Shown::Thickness)?;
    let multiple = "multiple";
    let rule = JointRule {
        low_multiple: sum.number_or("low", args.low.as_ref(), usual.low_multiple, multiple)?,
        high_multiple: sum.number_or("high", args.high.as_ref(), usual.high_multiple, multiple)?,
        cap: sum.read_or("cap", args.cap.as_ref(), usual.cap, Shown::Length)?,
        aspect_max: sum.number_or("aspect", args.aspect.as_ref(), usual.aspect_max, "aspect")?,
    };
    let cut = sum.share_or("cut", args.cut.as_ref(), limits.cut_depth)?;
    let (low, high) = joint_spacing(thickness, &rule).map_err(SumError::core)?;
    let plan = joint_plan(length, width, thickness, &rule).map_err(SumError::core)?;
    sum.result("spacing_low", Shown::Length(low));
    sum.result("spacing_high", Shown::Length(high));
    sum.result("cut_depth", Shown::Thickness(saw_cut_depth(thickness, cut).map_err(SumError::core)?));
    sum.result("panels_along", Shown::Count(plan.along));
    sum.result("panels_across", Shown::Count(plan.across));
    sum.result("panel_length", Shown::Length(plan.panel_length));
    sum.result("panel_width", Shown::Length(plan.panel_width));
    sum.result("panel_aspect", Shown::Number(plan.aspect, 2));
    sum.result("aspect_check", Shown::Code(if plan.aspect_within { "aspect-within" } else { "aspect-outside" }));
    sum.result("cut_length", Shown::Length(plan.cut_length));
    sum.caution([Caution::DrawingsGovern, Caution::SilicaDust]);
    Ok(sum)
}
