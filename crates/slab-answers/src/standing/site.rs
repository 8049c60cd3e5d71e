//! The site set up for acid work. Checked, never released by a person's word, and checked again on the morning of
//! the work: an eyewash that ran last week may be behind a pallet today.

use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::EntryOf;
use slab_diary::body::SiteCheck;

/// What a check says of one item.
type Answer = fn(&SiteCheck) -> Option<bool>;

const ITEMS: [(&str, Answer); 4] = [
    ("water", |c| c.water),
    ("eyewash", |c| c.eyewash),
    ("waste-plan", |c| c.waste_plan),
    ("data-sheets", |c| c.data_sheets),
];

impl Judge<'_> {
    pub(super) fn site(&self) -> Finding {
        // The last check that mentions an item speaks for it.
        let last = |answer: Answer| -> Option<(bool, EntryOf<'_, SiteCheck>)> {
            self.slab.all::<SiteCheck>().rev().find_map(|s| Some((answer(s.body)?, s)))
        };
        let said: Vec<_> = ITEMS.iter().map(|(name, answer)| (*name, last(*answer))).collect();
        let names = |wanted: fn(&Option<bool>) -> bool| -> Vec<&str> {
            said.iter().filter(|(_, said)| wanted(&said.map(|(answer, _)| answer))).map(|(name, _)| *name).collect()
        };
        let (missing, unchecked) = (names(|said| *said == Some(false)), names(Option::is_none));
        let oldest = said.iter().filter_map(|(_, said)| said.map(|(_, check)| check.entry.happened.date())).min();
        let days = oldest.map_or(0, |day| day.until(self.today).map_or(0, |span| span.get_days()).max(0));
        let keeps = self.figures.number("site-check-keeps");
        let dated = |f: Finding| {
            let f = f.with("days", Value::Count(days as u32)).with("keeps", Value::Count(keeps as u32));
            oldest.map_or(f.clone(), |day| f.with("date", Value::Date(day)))
        };
        let finding = if !missing.is_empty() {
            listed(Finding::held(Code::SiteLacks, Action::SetUpSite), &missing)
        } else if unchecked.len() == ITEMS.len() {
            Finding::unproven(Code::SiteNotChecked, Action::SetUpSite)
        } else if !unchecked.is_empty() {
            listed(Finding::unproven(Code::SitePartlyChecked, Action::SetUpSite), &unchecked)
        } else if f64::from(days) > keeps {
            dated(Finding::unproven(Code::SiteCheckOld, Action::CheckSiteAgain))
        } else if days > 0 && self.work_is_on() {
            dated(Finding::unproven(Code::SiteCheckNotToday, Action::CheckSiteAgain))
        } else {
            dated(Finding::released(Code::SiteReady)).and_if(days > 0, Code::SiteAgainOnTheDay)
        };
        finding.because(said.iter().filter_map(|(_, said)| said.map(|(_, check)| check.entry.id)))
    }
}

fn listed(finding: Finding, names: &[&str]) -> Finding {
    names.iter().fold(finding, |f, name| f.with("item", Value::Term((*name).to_owned())))
}
