//! Ways of choosing places without looking at what the drops read.

use science::absorbency::Place;
use science::chance::Stream;

fn apart(a: Place, b: Place) -> f64 {
    let (x, y) = (a.x - b.x, a.y - b.y);
    x.as_metres().hypot(y.as_metres())
}

/// The reachable place nearest to a point and not yet taken.
fn nearest_free(reachable: &[Place], taken: &[usize], to: Place) -> Option<usize> {
    (0..reachable.len())
        .filter(|i| !taken.contains(i))
        .min_by(|a, b| apart(reachable[*a], to).total_cmp(&apart(reachable[*b], to)))
}

/// Equal spacing: each place in the middle of the part of the map nearest to it (Lloyd's rounds
/// from a random start), then moved to the nearest reachable place.
pub(crate) fn equal(map: &[Place], reachable: &[Place], count: usize, chance: &mut Stream) -> Vec<usize> {
    let mut sites: Vec<Place> = (0..count).map(|_| map[(chance.unit() * map.len() as f64) as usize]).collect();
    for _ in 0..100 {
        let mut sums = vec![(0.0, 0.0, 0.0); count];
        for cell in map {
            let near = (0..count).min_by(|a, b| apart(sites[*a], *cell).total_cmp(&apart(sites[*b], *cell)));
            let sum = &mut sums[near.unwrap_or(0)];
            *sum = (sum.0 + cell.x.as_metres(), sum.1 + cell.y.as_metres(), sum.2 + 1.0);
        }
        for (site, (x, y, n)) in sites.iter_mut().zip(sums) {
            if n > 0.0 {
                *site = crate::world::place(x / n, y / n);
            }
        }
    }
    let mut taken = Vec::new();
    for site in sites {
        taken.extend(nearest_free(reachable, &taken, site));
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
