//! The forms, one for each kind, in the order of `slab_diary::Body::KINDS`.

mod asks;
mod facts;
mod job;
mod making;
mod panel;
mod reading;
mod testing;
mod trouble;
mod work;

pub(crate) use asks::{OFFSET, RADIUS};
pub use facts::FACTS;

use crate::form::Form;

/// Kinds without a form here, since they have screens of their own: the plan is drawn, a series of
/// readings comes from a file.
pub const OWN_SCREEN: &[&str] = &["plan", "air_series"];

static FORMS: &[Form] = &[
    job::JOB_OPENED,
    making::POUR,
    making::FINISH,
    making::CURING,
    making::CURED,
    reading::AIR_READING,
    reading::TEMPERATURE,
    reading::SLAB_PHOTOGRAPH,
    reading::COLOR_LOOK,
    trouble::SURVEY,
    testing::WATER_DROP,
    testing::SCRAPE,
    testing::SOLVENT_WIPE,
    testing::ACID_DROP,
    testing::SURFACE_PH,
    testing::SLAB_HUMIDITY,
    testing::EMISSION_DISH,
    testing::PLASTIC_SHEET,
    trouble::INCIDENT,
    trouble::COVER,
    trouble::CLEANING,
    trouble::RETEST,
    trouble::DEFECT,
    trouble::REPAIR,
    trouble::ACCEPTED,
    panel::PANEL_MADE,
    panel::PANEL_STAINED,
    panel::PANEL_PHOTOGRAPHED,
    panel::CHOICE_APPROVED,
    job::SEALER_CHOSEN,
    work::DELIVERY,
    work::SITE_CHECK,
    work::BATCH_MIXED,
    work::COAT_LAID,
    work::NEUTRALIZED,
    work::RINSED,
    work::WASTE_COLLECTED,
    work::SEALER_COAT,
    job::TIME_COST,
    job::PAYMENT_TERMS,
    job::HOLD_RELEASED,
    job::LIMIT_SET,
    job::NOTE,
];

/// Every form, in the order of the job.
#[must_use]
pub fn forms() -> &'static [Form] {
    FORMS
}

/// The form of a kind: every kind of the diary has one, except those of [`OWN_SCREEN`].
#[must_use]
pub fn form(kind: &str) -> Option<&'static Form> {
    FORMS.iter().find(|form| form.kind == kind)
}
