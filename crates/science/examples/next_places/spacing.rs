//! Ways of choosing places without looking at what the drops read.

use science::absorbency::Place;
use science::chance::Stream;

fn apart(a: Place, b: Place) -> f64 {
    let (x, y) = (a.x - b.x, a.y - b.y);
    x.as_meters().hypot(y.as_meters())
}

/// The reachable place nearest to a point and not yet taken.
fn nearest_free(reachable: &[Place], taken: &[usize], to: Place) -> Option<usize> {
    (0..reachable.len())
        .filter(|i| !taken.contains(i))
        .min_by(|a, b| apart(reachable[*a], to).total_cmp(&apart(reachable[*b], to)))
}

/// Equal spacing: each place in the middle of the part of the map nearest to it, from a random start.
pub(crate) fn equal(map: &[Place], reachable: &[Place], count: usize, chance: &mut Stream) -> Vec<usize> {
    let sites = (0..count).map(|_| map[(chance.unit() * map.len() as f64) as usize]).collect();
    settled(map, reachable, &[], sites)
}

/// More places spaced as equally as can be with those there already: each in the middle of the part
/// of the map nearest to it, from the widest gaps.
pub(crate) fn filled(map: &[Place], reachable: &[Place], start: &[usize], count: usize) -> Vec<usize> {
    let sites = gaps(reachable, start, count)[start.len()..].iter().map(|i| reachable[*i]).collect();
    settled(map, reachable, start, sites)
}

/// Lloyd's rounds: the sites move, the places of `fixed` stay; then each site goes to the nearest
/// reachable place.
fn settled(map: &[Place], reachable: &[Place], fixed: &[usize], sites: Vec<Place>) -> Vec<usize> {
    let mut all: Vec<Place> = fixed.iter().map(|i| reachable[*i]).chain(sites).collect();
    for _ in 0..100 {
        let mut sums = vec![(0.0, 0.0, 0.0); all.len()];
        for cell in map {
            let near = (0..all.len()).min_by(|a, b| apart(all[*a], *cell).total_cmp(&apart(all[*b], *cell)));
            let sum = &mut sums[near.unwrap_or(0)];
            *sum = (sum.0 + cell.x.as_meters(), sum.1 + cell.y.as_meters(), sum.2 + 1.0);
        }
        for (site, (x, y, n)) in all.iter_mut().zip(sums).skip(fixed.len()) {
            if n > 0.0 {
                *site = crate::world::place(x / n, y / n);
            }
        }
    }
    let mut taken = fixed.to_vec();
    for site in &all[fixed.len()..] {
        taken.extend(nearest_free(reachable, &taken, *site));
    }
    taken
}

/// Each next place as far as can be from all before.
pub(crate) fn gaps(reachable: &[Place], start: &[usize], count: usize) -> Vec<usize> {
    let mut taken = start.to_vec();
    for _ in 0..count {
        let clear = |i: usize| taken.iter().map(|t| apart(reachable[i], reachable[*t])).fold(f64::INFINITY, f64::min);
        let far = (0..reachable.len()).max_by(|a, b| clear(*a).total_cmp(&clear(*b)));
        taken.extend(far);
    }
    taken
}

/// Anywhere reachable, each place at most once.
pub(crate) fn random(reachable: &[Place], start: &[usize], count: usize, chance: &mut Stream) -> Vec<usize> {
    let mut taken = start.to_vec();
    while taken.len() < start.len() + count {
        let at = (chance.unit() * reachable.len() as f64) as usize;
        if !taken.contains(&at) {
            taken.push(at);
        }
    }
    taken
}
