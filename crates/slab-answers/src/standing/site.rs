//! The site set up for acid work. Checked, never released by a person's word.

use super::finding::{Finding, Value};
use super::{Action, Code, Judge};
use slab_diary::EntryId;
use slab_diary::body::SiteCheck;

/// What a check says of one item.
type Answer = fn(&SiteCheck) -> Option<bool>;

impl Judge<'_> {
    pub(super) fn site(&self) -> Finding {
        let items: [(&str, Answer); 4] = [
            ("water", |c| c.water),
            ("eyewash", |c| c.eyewash),
            ("waste-plan", |c| c.waste_plan),
            ("data-sheets", |c| c.data_sheets),
        ];
        let mut missing = Vec::new();
        let mut unchecked = Vec::new();
        let mut evidence: Vec<EntryId> = Vec::new();
        for (name, answer) in items {
            // The last check that mentions an item speaks for it.
            let last = self.slab.all::<SiteCheck>().rev().find_map(|s| Some((answer(s.body)?, s.entry.id)));
            match last {
                Some((true, id)) => evidence.push(id),
                Some((false, id)) => {
                    evidence.push(id);
                    missing.push(name);
                }
                None => unchecked.push(name),
            }
        }
        let listed = |mut f: Finding, names: &[&str]| {
            for name in names {
                f = f.with("item", Value::Term((*name).to_owned()));
            }
            f
        };
        let finding = if !missing.is_empty() {
            listed(Finding::held(Code::SiteLacks, Action::SetUpSite), &missing)
        } else if unchecked.len() == items.len() {
            Finding::unproven(Code::SiteNotChecked, Action::SetUpSite)
        } else if !unchecked.is_empty() {
            listed(Finding::unproven(Code::SitePartlyChecked, Action::SetUpSite), &unchecked)
        } else {
            Finding::released(Code::SiteReady)
        };
        finding.because(evidence)
    }
}
