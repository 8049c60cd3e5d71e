//! What every schema is written with, and the quantities and choices that several kinds of entry ask for. The usual units and the examples are ours; the
//! examples keep to sizes that the trade meets.

pub(super) use form_schema::QuantityInput;
pub(super) use form_schema::{InputKind, PictureBox, Preset, Rule, Span, TermList, Text, choices};
use units::QuantityKind as Kind;

pub(super) use super::EntryKind;
pub(super) use super::schema::{EntrySchema, Group, PhotoInput, PlaceInput, TimeLine, on_the_surface, plain};

const fn quantity(kind: Kind, units: [&'static str; 2], examples: [&'static str; 2]) -> InputKind {
    InputKind::Quantity(QuantityInput::new(kind, units, examples))
}

const fn both(kind: Kind, unit: &'static str, example: &'static str) -> InputKind {
    quantity(kind, [unit, unit], [example, example])
}

/// Thickness of a slab, width of a crack, depth of a probe, side of a panel or sheet.
pub(super) const fn small_length(imperial: &'static str, metric: &'static str) -> InputKind {
    quantity(Kind::Length, ["in", "mm"], [imperial, metric])
}

/// The same, the side of a panel or a sheet, the depth of a probe, where a bare number may be meant in another unit than the usual one: outside these millimeters the unit
/// is asked for.
pub(super) const fn usual_length(
    imperial: &'static str,
    metric: &'static str,
    least_mm: u32,
    most_mm: u32,
) -> InputKind {
    InputKind::Quantity(QuantityInput::new(Kind::Length, ["in", "mm"], [imperial, metric]).usual_mm(least_mm, most_mm))
}

pub(super) const HEIGHT: InputKind = quantity(Kind::Length, ["ft", "m"], ["800 ft", "250 m"]);
pub(super) const AREA: InputKind = quantity(Kind::Area, ["ft²", "m²"], ["12 ft2", "1.1 m2"]);
pub(super) const DISH_AREA: InputKind = quantity(Kind::Area, ["ft²", "m²"], ["0.5 ft2", "0.046 m2"]);
pub(super) const VOLUME: InputKind = quantity(Kind::Volume, ["gal", "L"], ["3.5 gal", "13 L"]);
pub(super) const LITTLE_VOLUME: InputKind = quantity(Kind::Volume, ["fl oz", "mL"], ["12 fl oz", "350 mL"]);
pub(super) const GAIN: InputKind = both(Kind::Mass, "g", "2.5 g");
pub(super) const CEMENT: InputKind = quantity(Kind::Density, ["lb/yd³", "kg/m³"], ["520 lb/yd3", "310 kg/m3"]);
pub(super) const STRENGTH: InputKind = quantity(Kind::Pressure, ["psi", "MPa"], ["4000 psi", "28 MPa"]);
pub(super) const SHEET: InputKind = quantity(Kind::FilmThickness, ["mil", "µm"], ["15 mil", "380 µm"]);
pub(super) const DRY_FILM: InputKind = quantity(Kind::FilmThickness, ["mil", "µm"], ["1.5 mil", "40 µm"]);
pub(super) const EMISSION: InputKind = quantity(Kind::MoistureEmission, ["lb", "g/m²/d"], ["3 lb", "14.6 g/m2/d"]);
pub(super) const SECONDS: InputKind = both(Kind::Duration, "s", "45 s");
pub(super) const MINUTES: InputKind = both(Kind::Duration, "min", "10 min");
pub(super) const DWELL: InputKind = both(Kind::Duration, "h", "6 h");
pub(super) const WAIT: InputKind = both(Kind::Duration, "h", "24 h");
pub(super) const DISH_TIME: InputKind = both(Kind::Duration, "h", "66 h");
pub(super) const HOURS: InputKind = both(Kind::Duration, "h", "1 h 30 min");
pub(super) const WIND: InputKind = quantity(Kind::Speed, ["mph", "m/s"], ["5 mph", "2 m/s"]);
pub(super) const DEGREES: InputKind = quantity(Kind::Temperature, ["°F", "°C"], ["66 °F", "19 °C"]);
pub(super) const AIR_HUMIDITY: InputKind = InputKind::Quantity(QuantityInput::percent(Kind::RelativeHumidity, "45 %"));
pub(super) const SLAB_HUMIDITY: InputKind = InputKind::Quantity(QuantityInput::percent(Kind::RelativeHumidity, "82 %"));
pub(super) const RATIO: InputKind = both(Kind::Fraction, "", "0.48");
pub(super) const PH: InputKind = both(Kind::Ph, "", "10.5");
pub(super) const RINSE_PH: InputKind = both(Kind::Ph, "", "7.5");

pub(super) const fn percent(example: &'static str) -> InputKind {
    InputKind::Quantity(QuantityInput::percent(Kind::Fraction, example))
}

/// Where on the plan, along one axis.
pub(crate) const OFFSET: QuantityInput = QuantityInput::new(Kind::Offset, ["ft", "m"], ["12' 6\"", "3.8 m"]);
/// How far around a point.
pub(crate) const RADIUS: QuantityInput = QuantityInput::new(Kind::Length, ["ft", "m"], ["2 ft", "0.6 m"]);

pub(super) const LINE: InputKind = InputKind::Text { long: false };
pub(super) const LINES: InputKind = InputKind::Text { long: true };

/// Coats that anyone ever laid.
pub(super) const COATS: InputKind = InputKind::Count { least: 1, most: 20 };

/// What a spot is: its kinds of entry.
const SPOT_KINDS: &[&str] = &[EntryKind::Incident.name(), EntryKind::Defect.name()];

/// The incident or defect that a test, a treatment or an acceptance is about.
pub(super) const SPOT: InputKind = InputKind::Entry(SPOT_KINDS);

/// Where the card lies in the photograph.
pub(super) const CARD_BOX: InputKind = InputKind::PictureBox(&["card_x", "card_y", "card_w", "card_h"]);
/// Where the panel lies in the photograph.
pub(super) const PANEL_BOX: InputKind = InputKind::PictureBox(&["panel_x", "panel_y", "panel_w", "panel_h"]);
