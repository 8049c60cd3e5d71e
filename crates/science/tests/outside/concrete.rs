//! Volume, order and joints. Volumes from the reference file; joints by the rule of thumb.

use science::concrete::{
    ConcreteNeed, JointRule, QUARTER_YARD, SamplePanels, joint_plan, joint_spacing, order, saw_cut_depth, slab_volume,
};
use units::{Area, Fraction, Length, Volume};

use crate::reference::{near, near_share, number, rows};

/// The usual rule, written out: the formulas hold no numbers of their own.
pub(crate) fn joint_rule() -> JointRule {
    JointRule { low_multiple: 24.0, high_multiple: 36.0, cap: Length::feet(15.0), aspect_max: 1.5 }
}

fn slab(waste: f64, panels: u32) -> ConcreteNeed {
    ConcreteNeed {
        area: Area::square_feet(600.0),
        thickness: Length::inches(4.0),
        panels: SamplePanels {
            count: panels,
            length: Length::feet(3.0),
            width: Length::feet(3.0),
            thickness: Length::inches(3.0),
        },
        waste: Fraction::share(waste).expect("a share"),
    }
}

#[test]
fn volumes_agree_with_the_reference_file() {
    let table = rows("film_volume_checks.csv", "item,inputs,value,unit");
    let volume = slab_volume(Area::square_feet(600.0), Length::inches(4.0)).expect("a slab");
    let ordered = order(&slab(0.05, 0), QUARTER_YARD).expect("an order");
    let ours = [
        ("concrete volume", volume.as_cubic_yards()),
        ("with 5% waste", ordered.needed.as_cubic_yards()),
        ("ordered, next 1/4 yd3", ordered.ordered.as_cubic_yards()),
        ("yd3 in m3", Volume::cubic_yards(1.0).as_cubic_meters()),
    ];
    for ((name, value), row) in ours.into_iter().zip(&table[10..14]) {
        assert_eq!(row[0], name);
        near_share(value, number(&row[2]), 5e-6, name);
    }
}

#[test]
fn sample_panels_are_ordered_with_the_slab() {
    // Four panels 3 ft by 3 ft by 3 in are 9 ft³, a third of a yard; with 5 % waste 8.128 yd³ in all.
    let found = order(&slab(0.05, 4), QUARTER_YARD).expect("an order");
    near(found.panels.as_cubic_yards(), 1.0 / 3.0, 1e-12, "panels");
    near(found.needed.as_cubic_yards(), (200.0 / 27.0 + 1.0 / 3.0) * 1.05, 1e-12, "needed");
    near(found.ordered.as_cubic_yards(), 8.25, 1e-12, "ordered");
    near((found.needed + found.spare()).as_cubic_yards(), 8.25, 1e-12, "spare");
}

#[test]
fn a_need_of_whole_steps_buys_no_more() {
    // 27 ft by 10 ft by 4.8 in are 4 yd³ to the last digit but one.
    let need = ConcreteNeed { area: Area::square_feet(270.0), thickness: Length::inches(4.8), ..slab(0.0, 0) };
    near(order(&need, QUARTER_YARD).expect("an order").ordered.as_cubic_yards(), 4.0, 1e-9, "ordered");
}

#[test]
fn joints_follow_the_rule_of_thumb() {
    let rule = joint_rule();
    // 24 to 36 times 4 in are 8 to 12 ft (V2); six inches would give 18 ft, capped at 15.
    let (low, high) = joint_spacing(Length::inches(4.0), &rule).expect("a rule");
    near(low.as_feet(), 8.0, 1e-9, "low");
    near(high.as_feet(), 12.0, 1e-9, "high");
    let (low, high) = joint_spacing(Length::inches(6.0), &rule).expect("a rule");
    near(low.as_feet(), 12.0, 1e-9, "low");
    near(high.as_feet(), 15.0, 1e-9, "high");
    let quarter = Fraction::share(0.25).expect("a share");
    near(saw_cut_depth(Length::inches(4.0), quarter).expect("a cut").as_inches(), 1.0, 1e-12, "depth");
    // 20 by 30 ft at no more than 12 ft: 2 by 3 panels of 10 by 10; cuts 20 + 20 + 30 ft.
    let plan = joint_plan(Length::feet(30.0), Length::feet(20.0), Length::inches(4.0), &rule).expect("a plan");
    assert_eq!((plan.along, plan.across, plan.aspect_within), (3, 2, true));
    near(plan.cut_length.as_feet(), 70.0, 1e-9, "cuts");
    near(plan.aspect, 1.0, 1e-9, "aspect");
}

#[test]
fn a_strip_is_cut_until_its_panels_are_near_square() {
    // A walk of 4 by 24 ft: 12 ft apart would be 3 : 1, 8 ft 2 : 1; four panels of 6 by 4 ft are 1.5 : 1.
    let plan = joint_plan(Length::feet(24.0), Length::feet(4.0), Length::inches(4.0), &joint_rule());
    let plan = plan.expect("a plan");
    assert_eq!((plan.along, plan.across, plan.aspect_within), (4, 1, true));
    near(plan.cut_length.as_feet(), 12.0, 1e-9, "cuts");
}
