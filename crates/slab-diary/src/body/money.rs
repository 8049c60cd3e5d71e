//! Hours, costs and terms. Amounts of money are decimal texts, never binary fractions.

use super::inputs::*;
use units::{AsWritten, Duration, Fraction};

entry! {
    /// Hours and money spent.
    TimeCost {
        /// For what.
        what: Text = LINE,
        /// Hours of all persons together.
        hours: Option<AsWritten<Duration>> = HOURS,
        /// Money, as a decimal text such as `120.50`.
        cost: Option<String> = InputKind::Money,
        /// Currency code, ISO 4217.
        currency: Option<String> = InputKind::Currency,
    }
    EntrySchema {
        photographs: PhotoInput::May,
        before_pour: true,
        ..plain(EntryKind::TimeCost, Group::Job, r##"{"happened":"2026-03-02 06:45","body":{"kind":"time_cost","what":"measuring","hours":"1 h 30 min","cost":"120.00","currency":"USD"}}"##)
    }
}

entry! {
    /// What was agreed on payment.
    PaymentTerms {
        /// Deposit.
        deposit: Option<AsWritten<Fraction>> = percent("30 %"),
        /// Kept back until acceptance.
        retainage: Option<AsWritten<Fraction>> = percent("5 %"),
        /// The rest, in words.
        words: Option<Text> = LINES,
    }
    EntrySchema {
        before_pour: true,
        ..plain(EntryKind::PaymentTerms, Group::Job, r##"{"happened":"2026-03-02 06:40","body":{"kind":"payment_terms","deposit":"30 %","retainage":"5 %","words":"balance on acceptance"}}"##)
    }
}
