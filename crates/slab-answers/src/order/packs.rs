//! Rounding up to packs: the least surplus, then the fewest packs.

use units::{Mass, Volume};

/// So many packs of one size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PackCount {
    /// How many.
    pub count: u32,
    /// Size of one.
    pub size: PackSize,
}

/// Size of a pack.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PackSize {
    /// A liquid.
    Volume(Volume),
    /// A powder.
    Mass(Mass),
}

/// Packs that hold at least `need`, largest first. Both in the same unit, sizes ascending and above
/// zero; larger sizes are whole multiples of the smallest in every list of the trade facts, so
/// filling from the largest down is also the fewest packs for the least surplus.
fn fill(need: f64, sizes: &[f64]) -> Vec<(usize, u32)> {
    let Some(smallest) = sizes.first().copied() else { return Vec::new() };
    // A need a hair above a full pack by rounding is not worth another pack.
    let mut left = ((need / smallest) - 1e-9).ceil().max(0.0) * smallest;
    let mut filled = Vec::new();
    for (index, size) in sizes.iter().enumerate().rev() {
        let count = (left / size + 1e-9).floor();
        if count > 0.0 {
            filled.push((index, count as u32));
            left -= count * size;
        }
    }
    filled
}

/// Packs of a liquid.
pub(super) fn liquid(need: Volume, sizes: &[Volume]) -> Vec<PackCount> {
    let numbers: Vec<f64> = sizes.iter().map(|s| s.as_us_gallons()).collect();
    fill(need.as_us_gallons(), &numbers)
        .into_iter()
        .map(|(index, count)| PackCount { count, size: PackSize::Volume(sizes[index]) })
        .collect()
}

/// Packs of a powder.
pub(super) fn powder(need: Mass, sizes: &[Mass]) -> Vec<PackCount> {
    let numbers: Vec<f64> = sizes.iter().map(|s| s.as_pounds()).collect();
    fill(need.as_pounds(), &numbers)
        .into_iter()
        .map(|(index, count)| PackCount { count, size: PackSize::Mass(sizes[index]) })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn packs_hold_the_need_and_less_than_one_smallest_pack_more(gallons in 0.0f64..500.0) {
            let need = Volume::us_gallons(gallons);
            let packs = liquid(need, &[Volume::us_gallons(1.0), Volume::us_gallons(5.0)]);
            let held: f64 = packs.iter().map(|p| match p.size {
                PackSize::Volume(v) => v.as_us_gallons() * f64::from(p.count),
                PackSize::Mass(_) => unreachable!("a liquid comes in volumes"),
            }).sum();
            prop_assert!(held >= gallons - 1e-6 && held < gallons + 1.0);
            let ones: u32 = packs.iter().filter(|p| p.size == PackSize::Volume(Volume::us_gallons(1.0))).map(|p| p.count).sum();
            prop_assert!(ones < 5, "five gallons in single cans");
        }
    }

    #[test]
    fn twelve_gallons_are_two_pails_and_two_cans() {
        let packs = liquid(Volume::us_gallons(11.3), &[Volume::us_gallons(1.0), Volume::us_gallons(5.0)]);
        assert_eq!(packs.iter().map(|p| p.count).collect::<Vec<_>>(), [2, 2]);
        assert!(liquid(Volume::ZERO, &[Volume::us_gallons(1.0)]).is_empty());
    }
}
