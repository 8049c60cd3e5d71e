//! Hours, costs and terms. Amounts of money are decimal texts, never binary fractions.

use serde::{Deserialize, Serialize};
use units::{AsWritten, Duration, Fraction};

/// Hours and money spent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TimeCost {
    /// For what.
    pub what: String,
    /// Hours of all persons together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<AsWritten<Duration>>,
    /// Money, as a decimal text such as `120.50`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<String>,
    /// Currency code, ISO 4217.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
}

/// What was agreed on payment.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PaymentTerms {
    /// Deposit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub deposit: Option<AsWritten<Fraction>>,
    /// Kept back until acceptance.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub retainage: Option<AsWritten<Fraction>>,
    /// The rest, in words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}
