//! The order as a file for a spreadsheet (RFC 4180).

use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse, Redirect};
use localization::{Locale, UnitSystem};
use slab_answers::order::{Amount, Line, order};
use slab_diary::Knowledge;
use slab_diary::fold;
use trade_facts::Trade;

use crate::context::{Answer, RequestContext};
use crate::page_error::PageError;
use crate::texts::file_name;

/// Tells a spreadsheet that the letters are UTF-8.
const MARK: &[u8] = "\u{feff}".as_bytes();

pub(super) fn file(context: &RequestContext) -> Answer {
    let opened = context.opened()?;
    let locale = context.locale();
    let slab = fold(&opened.diary, Knowledge::noted_by(context.app.asked_at(opened.record.id)));
    // Without an area the page says what is missing.
    let Ok(order) = order(&slab, Trade::built_in()) else {
        return Ok(Redirect::to(&format!("/slab/{}/order", opened.record.id)).into_response());
    };
    let bytes = written(&order.lines, locale).map_err(|e| PageError::failed("writing the order as a table", &e))?;
    let name = format!("attachment; filename=\"{}-order.csv\"", file_name(&opened.record.name));
    Ok(([(CONTENT_TYPE, "text/csv; charset=utf-8".to_owned()), (CONTENT_DISPOSITION, name)], bytes).into_response())
}

fn written(lines: &[Line], locale: Locale) -> Result<Vec<u8>, csv::Error> {
    let mut sheet = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(MARK.to_vec());
    let head = [
        locale.message("order-item", &[]),
        locale.message("order-low", &[]),
        locale.message("order-usual", &[]),
        locale.message("order-high", &[]),
        locale.message("order-unit", &[]),
        locale.message("order-packs", &[]),
        locale.message("order-grade", &[]),
        locale.message("order-notes", &[]),
    ];
    sheet.write_record(&head)?;
    for line in lines {
        let ([low, usual, high], unit) = numbers(&line.need, locale);
        let notes: Vec<String> = line.notes.iter().map(|note| locale.order_note(*note)).collect();
        let texts = [
            super::item_of(line, locale),
            low,
            usual,
            high,
            unit,
            locale.pack_list(&line.buy).unwrap_or_default(),
            locale.grade(line.grade),
            notes.join(" "),
        ];
        sheet.write_record(texts.iter().map(|text| harmless(text)))?;
    }
    sheet.into_inner().map_err(|e| csv::Error::from(e.into_error()))
}

/// Bare numbers in the unit of the column beside them.
fn numbers(need: &Amount, locale: Locale) -> ([String; 3], String) {
    let metric = locale.unit_system == UnitSystem::Metric;
    let round = |number: f64| format!("{number:.2}");
    let all = |low: f64, usual: f64, high: f64, unit: &str| ([low, usual, high].map(round), unit.to_owned());
    match need {
        Amount::Volume(s) if metric => all(s.low.as_liters(), s.usual.as_liters(), s.high.as_liters(), "L"),
        Amount::Volume(s) => all(s.low.as_us_gallons(), s.usual.as_us_gallons(), s.high.as_us_gallons(), "gal"),
        Amount::Mass(s) if metric => all(s.low.as_kilograms(), s.usual.as_kilograms(), s.high.as_kilograms(), "kg"),
        Amount::Mass(s) => all(s.low.as_pounds(), s.usual.as_pounds(), s.high.as_pounds(), "lb"),
        Amount::Area(s) if metric => {
            all(s.low.as_square_meters(), s.usual.as_square_meters(), s.high.as_square_meters(), "m²")
        }
        Amount::Area(s) => all(s.low.as_square_feet(), s.usual.as_square_feet(), s.high.as_square_feet(), "ft²"),
        Amount::Pieces(s) => {
            ([s.low, s.usual, s.high].map(|n| n.to_string()), locale.message("order-pieces-unit", &[]))
        }
    }
}

/// A text that a spreadsheet does not take for a formula: a stain's name is typed by a person, and
/// `=` or `@` in front would be carried out on the machine of whoever opens the file.
fn harmless(text: &str) -> String {
    let risky = text.trim_start().starts_with(['=', '+', '-', '@']) || text.starts_with(['\t', '\r', '\n']);
    if risky { format!("'{text}") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::harmless;

    #[test]
    fn a_typed_formula_is_only_a_text() {
        for odd in ["=1+1", "+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "  =cmd|' /C calc'!A0"] {
            assert_eq!(harmless(odd), format!("'{odd}"));
        }
        for plain in ["Reactive stain (Umber)", "11.30", "2 × 5 gal", ""] {
            assert_eq!(harmless(plain), plain);
        }
    }
}
