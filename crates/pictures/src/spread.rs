//! Pushing labels apart along a line.

/// A label: where its center would like to be, and how much room it takes.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wish {
    pub(crate) at: f64,
    pub(crate) room: f64,
}

/// Centers for labels in the order of their wishes, none on another, with the least sum of squared
/// shifts, and the first not before `from`.
///
/// Method: with the room before each label taken off, the centers need only be in order, so it is
/// isotonic regression, solved by pooling neighbors that violate the order.
/// Source: Barlow, Bartholomew, Bremner and Brunk, Statistical Inference under Order Restrictions,
/// 1972 (from memory).
pub(crate) fn apart(wishes: &[Wish], from: f64) -> Vec<f64> {
    // What each center lies beyond the first when all touch.
    let mut touching = Vec::with_capacity(wishes.len());
    let mut sum = 0.0;
    for (at, wish) in wishes.iter().enumerate() {
        if at > 0 {
            sum += (wishes[at - 1].room + wish.room) / 2.0;
        }
        touching.push(sum);
    }
    // Pools: mean and count.
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (wish, offset) in wishes.iter().zip(&touching) {
        let mut pool = (wish.at - offset, 1);
        while let Some((mean, count)) = pools.last().copied()
            && mean >= pool.0
        {
            let all = count + pool.1;
            pool = ((mean * count as f64 + pool.0 * pool.1 as f64) / all as f64, all);
            pools.pop();
        }
        pools.push(pool);
    }
    let low = from + wishes.first().map_or(0.0, |w| w.room / 2.0);
    pools
        .iter()
        .flat_map(|(mean, count)| std::iter::repeat_n(mean.max(low), *count))
        .zip(&touching)
        .map(|(mean, offset)| mean + offset)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn labels_never_touch_keep_their_order_and_stay_where_they_can(
            mut at in proptest::collection::vec(0.0..500.0_f64, 0..40),
            room in 8.0..40.0_f64,
        ) {
            at.sort_by(f64::total_cmp);
            let wishes: Vec<Wish> = at.iter().map(|at| Wish { at: *at, room }).collect();
            let centers = apart(&wishes, 0.0);
            prop_assert_eq!(centers.len(), wishes.len());
            for pair in centers.windows(2) {
                prop_assert!(pair[1] - pair[0] >= room - 1e-9);
            }
            prop_assert!(centers.first().is_none_or(|c| *c >= room / 2.0 - 1e-9));
            // Moved apart again, nothing moves.
            let again: Vec<Wish> = centers.iter().map(|at| Wish { at: *at, room }).collect();
            for (a, b) in apart(&again, 0.0).iter().zip(&centers) {
                prop_assert!((a - b).abs() < 1e-6);
            }
        }
    }

    #[test]
    fn two_at_one_place_share_the_shift() {
        let wish = Wish { at: 100.0, room: 20.0 };
        assert_eq!(apart(&[wish, wish], 0.0), vec![90.0, 110.0]);
        assert_eq!(apart(&[Wish { at: 0.0, room: 20.0 }], 0.0), vec![10.0]);
    }
}
