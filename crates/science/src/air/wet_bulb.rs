//! Thermodynamic wet bulb by bisection of the energy balance.

use units::Temperature;

use super::Air;
use super::saturation::ln_saturation;
use super::state::MASS_RATIO;

/// 0 °C in K.
const ICE_K: f64 = 273.15;

/// Humidity ratio of air at `dry` °C whose wet bulb is `wet` °C, at `pressure` Pa.
///
/// Over water (eq. 33): W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)
/// Over ice (eq. 35):   W = ((2830 − 0.24 t*) Ws* − 1.006 (t − t*)) / (2830 + 1.86 t − 2.1 t*)
fn ratio_at(dry: f64, wet: f64, pressure: f64) -> f64 {
    let saturated = libm::exp(ln_saturation(wet + ICE_K));
    let ws = MASS_RATIO * saturated / (pressure - saturated);
    if wet >= 0.0 {
        ((2501.0 - 2.326 * wet) * ws - 1.006 * (dry - wet)) / (2501.0 + 1.86 * dry - 4.186 * wet)
    } else {
        ((2830.0 - 0.24 * wet) * ws - 1.006 * (dry - wet)) / (2830.0 + 1.86 * dry - 2.1 * wet)
    }
}

/// Between -100 °C and the air temperature the balance rises with the wet bulb except for a small
/// fall at 0 °C, where the answer passes from ice to water. So the side of 0 °C is chosen first:
/// water whenever water at 0 °C or above balances.
pub(super) fn wet_bulb(air: Air) -> Temperature {
    let ratio = air.humidity_ratio().as_mass_per_mass();
    let (dry, pressure) = (air.temperature().as_celsius(), air.pressure().as_pascals());
    let liquid = dry >= 0.0 && ratio_at(dry, 0.0, pressure) <= ratio;
    let (mut low, mut high) = if liquid { (0.0, dry) } else { (-100.0, dry.min(-f64::MIN_POSITIVE)) };
    // 50 halvings of at most 300 K leave less than 1e-12 K, the rounding of the answer itself.
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if ratio_at(dry, middle, pressure) > ratio { high = middle } else { low = middle }
    }
    Temperature::celsius(0.5 * (low + high))
}
