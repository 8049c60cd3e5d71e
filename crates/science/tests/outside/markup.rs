//! Mark-up against margin: trade table of seven rows, two decimals (V by arithmetic).

use science::markup::{Margin, Markup};

use crate::reference::near;

#[test]
fn margin_and_markup_agree_with_the_trade_table() {
    let table = [
        (10.0, 11.11, 111.11),
        (15.0, 17.65, 117.65),
        (20.0, 25.00, 125.00),
        (25.0, 33.33, 133.33),
        (30.0, 42.86, 142.86),
        (35.0, 53.85, 153.85),
        (40.0, 66.67, 166.67),
    ];
    for (margin_pct, markup_pct, price_of_100) in table {
        let margin = Margin::share(margin_pct / 100.0).expect("a margin");
        near(margin.markup().as_share() * 100.0, markup_pct, 0.005, "mark-up");
        near(margin.price_over_cost() * 100.0, price_of_100, 0.005, "price");
        let markup = Markup::share(markup_pct / 100.0).expect("a mark-up");
        near(markup.margin().as_share() * 100.0, margin_pct, 0.005, "margin");
        near(markup.price_over_cost() * 100.0, price_of_100, 0.005, "price");
    }
}
