//! What every calculator is written with.

use form_schema::{Field, QuantityInput, Span};
pub(super) use form_schema::{Form, InputKind, Rule};
pub(super) use units::QuantityKind as Kind;

pub(super) use crate::calculation::Calculation;
pub(super) use crate::calculator::Calculator;
pub(super) use crate::error::CalculatorError;
pub(super) use crate::given::Given;
pub(super) use crate::shown::Shown;

/// A field that must be answered, with the key of its label.
pub(super) const fn required(name: &'static str, label: &'static str, input: InputKind) -> Field {
    Field::required_with(name, label, input)
}

/// A field that may stay empty, with the key of its label.
pub(super) const fn optional(name: &'static str, label: &'static str, input: InputKind) -> Field {
    Field::optional(name, label, input)
}

/// A quantity by an example in imperial and in metric.
pub(super) const fn quantity(kind: Kind, imperial: &'static str, metric: &'static str) -> InputKind {
    InputKind::Quantity(QuantityInput::by_example(kind, imperial, metric))
}

/// How thick a slab is.
pub(super) const THICKNESS: InputKind = InputKind::Quantity(QuantityInput::SLAB_THICKNESS);

/// How thick a sample panel is; the bounds as those of a slab, common practice, no source.
pub(super) const PANEL_THICKNESS: InputKind =
    InputKind::Quantity(QuantityInput::by_example(Kind::Length, "2 in", "50 mm").usual_mm(10, 300));

/// A quantity in percent, by an example.
pub(super) const fn percent(kind: Kind, example: &'static str) -> InputKind {
    InputKind::Quantity(QuantityInput::percent(kind, example))
}

/// A quantity that everybody writes in one unit.
pub(super) const fn one_unit(kind: Kind, unit: &'static str, example: &'static str) -> InputKind {
    InputKind::Quantity(QuantityInput::in_one_unit(kind, unit, example))
}

pub(super) const fn count(least: u32, most: u32) -> InputKind {
    InputKind::Count { least, most }
}

/// A number whose range the formulas know.
pub(super) const NUMBER: InputKind = InputKind::Number(Span::Any);

pub(super) const LINE: InputKind = InputKind::Text { long: false };

/// The words of a list of choices.
pub(super) const fn words<T: Copy, const N: usize>(list: [(&'static str, T); N]) -> [&'static str; N] {
    let mut words = [""; N];
    let mut at = 0;
    while at < N {
        words[at] = list[at].0;
        at += 1;
    }
    words
}
