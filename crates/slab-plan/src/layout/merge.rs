//! Which sections to join so that each is about as large as wished.

use std::collections::BTreeMap;

use super::LayoutError;
use super::faces::Faces;

/// The most sections that are joined; a crew works in dozens.
const MAX_SECTIONS: usize = 5_000;

/// For each face the number of its group, so that no group of several faces is larger than `most`
/// square meters.
pub(super) fn groups(faces: &Faces, most: f64) -> Result<Vec<usize>, LayoutError> {
    let count = faces.faces.len();
    if count > MAX_SECTIONS {
        return Err(LayoutError::TooManySections { count, most: MAX_SECTIONS });
    }
    let mut group: Vec<usize> = (0..count).collect();
    let mut area: Vec<Option<f64>> = faces.faces.iter().map(|f| Some(f.area)).collect();
    let mut met: Vec<BTreeMap<usize, f64>> = vec![BTreeMap::new(); count];
    for (a, b, length, _) in &faces.between {
        *met[*a].entry(*b).or_default() += length;
        *met[*b].entry(*a).or_default() += length;
    }
    // Groups that found no neighbor to join; they may be joined by another later.
    let mut settled = vec![false; count];
    loop {
        let open = (0..count).filter_map(|i| Some((i, area[i]?))).filter(|(i, _)| !settled[*i]);
        let Some((own, size)) = open.min_by(|a, b| a.1.total_cmp(&b.1)) else { break };
        let fits = |other: &usize| area[*other].is_some_and(|a| a + size <= most);
        let best = met[own].iter().filter(|(other, _)| fits(other)).max_by(|a, b| a.1.total_cmp(b.1));
        let Some(into) = best.map(|(other, _)| *other) else {
            settled[own] = true;
            continue;
        };
        for (other, length) in std::mem::take(&mut met[own]) {
            met[other].remove(&own);
            if other != into {
                *met[into].entry(other).or_default() += length;
                *met[other].entry(into).or_default() += length;
            }
        }
        area[into] = area[into].map(|a| a + size);
        area[own] = None;
        settled[into] = false;
        group.iter_mut().filter(|g| **g == own).for_each(|g| *g = into);
    }
    Ok(group)
}
