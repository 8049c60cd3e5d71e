//! Mark-up to margin and back, and what is lost by confusing them.

use clap::Args;
use science::markup::{Margin, Markup as Ratio};
use science::{FormulaSource, Grade};

use crate::accepted::Accepted;
use crate::caution::Caution;
use crate::error::SumError;
use crate::read::{missing, unclear};
use crate::shown::Shown;
use crate::sum::Sum;

/// (1 + mark-up)(1 − margin) = 1.
const MARKUP_MARGIN: FormulaSource = FormulaSource {
    id: "markup-margin",
    document: "arithmetic",
    locator: "(1 + mark-up)(1 - margin) = 1",
    grade: Grade::Verified,
};

/// What is asked.
#[derive(Debug, Args)]
pub struct Markup {
    /// Profit as a share of the cost
    #[arg(long, value_name = "PERCENT", conflicts_with = "margin", allow_hyphen_values = true)]
    markup: Option<String>,
    /// Profit as a share of the price
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    margin: Option<String>,
}

/// Percent with or without its sign; a small bare number could be a share, so it is asked back.
fn percent(name: &'static str, text: &str) -> Result<f64, SumError> {
    let bare = text.trim();
    let signed = bare.strip_suffix('%').map(str::trim_end);
    let number = signed.unwrap_or(bare).parse::<f64>().ok().filter(|n| n.is_finite());
    match number {
        Some(n) if signed.is_some() || n == 0.0 || n.abs() > 1.0 => Ok(n),
        Some(n) => {
            let (low, high) = (n.to_string(), ((n * 1e4).round() / 100.0).to_string());
            Err(unclear(name, text, Accepted::from("signed-percent").with("low", low).with("high", high)))
        }
        None => Err(unclear(name, text, "percent")),
    }
}

/// As typed, with the sign it was read with.
fn signed(text: &str) -> String {
    let text = text.trim();
    if text.ends_with('%') { text.to_owned() } else { format!("{text} %") }
}

pub(crate) fn run(args: &Markup) -> Result<Sum, SumError> {
    let mut sum = Sum::new("markup", MARKUP_MARGIN);
    let (markup, margin, asked) = match (&args.markup, &args.margin) {
        (Some(text), _) => {
            let asked = percent("markup", text)?;
            sum.given("markup", &signed(text), Shown::Percent(asked));
            let markup = Ratio::share(asked / 100.0).map_err(SumError::core)?;
            (markup, markup.margin(), asked / 100.0)
        }
        (None, Some(text)) => {
            let asked = percent("margin", text)?;
            sum.given("margin", &signed(text), Shown::Percent(asked));
            let margin = Margin::share(asked / 100.0).map_err(SumError::core)?;
            (margin.markup(), margin, asked / 100.0)
        }
        (None, None) => return Err(missing("markup", Accepted::naming("markup-or-margin", &["margin"]))),
    };
    sum.result("markup", Shown::Percent(markup.as_share() * 100.0));
    sum.result("margin", Shown::Percent(margin.as_share() * 100.0));
    sum.result("price_per_100_cost", Shown::Number(markup.price_over_cost() * 100.0, 2));
    // The same figure read as the other ratio: what a quote gives away when a margin is put on as
    // a mark-up. No price has a margin of the whole, so a mark-up of 100 % or more cannot be misread.
    if let (Ok(as_markup), Ok(as_margin)) = (Ratio::share(asked), Margin::share(asked)) {
        let (low, high) = (as_markup.price_over_cost() * 100.0, as_margin.price_over_cost() * 100.0);
        sum.result("price_as_markup", Shown::Number(low, 2));
        sum.result("price_as_margin", Shown::Number(high, 2));
        sum.result("shortfall_per_100_cost", Shown::Number(high - low, 2));
    }
    sum.caution([Caution::SayWhichRatio]);
    Ok(sum)
}
