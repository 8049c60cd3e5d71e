//! Quantities and choices that several forms share. The usual units and the examples are ours; the
//! examples keep to sizes that the trade meets.

use crate::form::{Form, Group, InputKind, PhotoInput, PlaceInput};
use crate::quantity::{Quantity, QuantityKind as Kind};

const fn quantity(kind: Kind, units: [&'static str; 2], examples: [&'static str; 2]) -> InputKind {
    InputKind::Quantity(Quantity::new(kind, units, examples))
}

const fn both(kind: Kind, unit: &'static str, example: &'static str) -> InputKind {
    quantity(kind, [unit, unit], [example, example])
}

/// Thickness of a slab, width of a crack, depth of a probe, side of a panel or sheet.
pub(super) const fn small_length(imperial: &'static str, metric: &'static str) -> InputKind {
    quantity(Kind::Length, ["in", "mm"], [imperial, metric])
}

pub(super) const HEIGHT: InputKind = quantity(Kind::Length, ["ft", "m"], ["800 ft", "250 m"]);
pub(super) const AREA: InputKind = quantity(Kind::Area, ["ft²", "m²"], ["12 ft2", "1.1 m2"]);
pub(super) const DISH_AREA: InputKind = quantity(Kind::Area, ["ft²", "m²"], ["0.5 ft2", "0.046 m2"]);
pub(super) const VOLUME: InputKind = quantity(Kind::Volume, ["gal", "L"], ["3.5 gal", "13 L"]);
pub(super) const LITTLE_VOLUME: InputKind = quantity(Kind::Volume, ["fl oz", "mL"], ["12 fl oz", "350 mL"]);
pub(super) const GAIN: InputKind = both(Kind::Mass, "g", "2.5 g");
pub(super) const CEMENT: InputKind = quantity(Kind::Density, ["lb/yd³", "kg/m³"], ["520 lb/yd3", "310 kg/m3"]);
pub(super) const STRENGTH: InputKind = quantity(Kind::Pressure, ["psi", "MPa"], ["4000 psi", "28 MPa"]);
pub(super) const SHEET: InputKind = quantity(Kind::Film, ["mil", "µm"], ["15 mil", "380 µm"]);
pub(super) const DRY_FILM: InputKind = quantity(Kind::Film, ["mil", "µm"], ["1.5 mil", "40 µm"]);
pub(super) const EMISSION: InputKind = quantity(Kind::Emission, ["lb", "g/m²/d"], ["3 lb", "14.6 g/m2/d"]);
pub(super) const SECONDS: InputKind = both(Kind::Duration, "s", "45 s");
pub(super) const MINUTES: InputKind = both(Kind::Duration, "min", "10 min");
pub(super) const DWELL: InputKind = both(Kind::Duration, "h", "6 h");
pub(super) const WAIT: InputKind = both(Kind::Duration, "h", "24 h");
pub(super) const DISH_TIME: InputKind = both(Kind::Duration, "h", "66 h");
pub(super) const HOURS: InputKind = both(Kind::Duration, "h", "1 h 30 min");
pub(super) const WIND: InputKind = quantity(Kind::Speed, ["mph", "m/s"], ["5 mph", "2 m/s"]);
pub(super) const DEGREES: InputKind = quantity(Kind::Temperature, ["°F", "°C"], ["66 °F", "19 °C"]);
pub(super) const AIR_HUMIDITY: InputKind = both(Kind::Humidity, "%", "45 %");
pub(super) const SLAB_HUMIDITY: InputKind = both(Kind::Humidity, "%", "82 %");
pub(super) const RATIO: InputKind = both(Kind::Ratio, "", "0.48");
pub(super) const PH: InputKind = both(Kind::Ph, "", "10.5");
pub(super) const RINSE_PH: InputKind = both(Kind::Ph, "", "7.5");

pub(super) const fn percent(example: &'static str) -> InputKind {
    both(Kind::Percent, "%", example)
}

/// Where on the plan, along one axis.
pub(crate) const OFFSET: Quantity = Quantity::new(Kind::Offset, ["ft", "m"], ["12' 6\"", "3.8 m"]);
/// How far around a point.
pub(crate) const RADIUS: Quantity = Quantity::new(Kind::Length, ["ft", "m"], ["2 ft", "0.6 m"]);

pub(super) const LINE: InputKind = InputKind::Text { long: false };
pub(super) const LINES: InputKind = InputKind::Text { long: true };

/// Coats that anyone ever laid, as the diary's own check has it.
pub(super) const COATS: InputKind = InputKind::Count { least: 1, most: 20 };

pub(super) const EVENNESS: InputKind = InputKind::Choice(&["even", "patchy", "cant_tell"]);

/// The incident or defect that a test, a treatment or an acceptance is about.
pub(super) const SPOT: InputKind = InputKind::Entry(&["incident", "defect"]);

/// A form with nothing but its kind and group.
pub(super) const fn plain(kind: &'static str, group: Group) -> Form {
    Form {
        kind,
        group,
        quick: false,
        place: PlaceInput::None,
        photographs: PhotoInput::None,
        fields: &[],
        presets: &[],
        rules: &[],
    }
}

/// What lies in the picture to measure by.
pub(super) const CARD: InputKind = InputKind::Choice(&["gray_card", "white_paper"]);
/// The inputs of its place.
pub(super) const CARD_BOX: [&str; 4] = ["card_x", "card_y", "card_w", "card_h"];
/// The inputs of the panel's place.
pub(super) const PANEL_BOX: [&str; 4] = ["panel_x", "panel_y", "panel_w", "panel_h"];
