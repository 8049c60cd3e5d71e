//! Messages of the single calculations, which the command line names one by one; and what calculations
//! answer with, printed against values worked by hand from NIST SP 811, Appendix B.8 (V).

use localization::{Lang, Locale, UnitSystem};
use units::{AirFlow, Concentration, Density, EvaporationRate, Fraction, Pressure, Speed, Volume};

/// In both languages.
pub(crate) const NAMED: &str = "
sum-dew-point sum-evaporation sum-equivalent-age sum-drying sum-emission sum-film sum-dilute sum-neutralize
sum-ventilate sum-purge sum-volume sum-joints sum-markup sum-color-difference sum-from sum-assumed sum-formula
sum-also sum-on-day sum-band sum-not-within-horizon sum-no-spans sum-more-spans value-air value-rh found-rh value-slab
value-margin given-margin value-pressure value-elevation value-dew-point value-above-dew-point value-surface
value-surface-check value-wet-bulb value-vapor-pressure value-humidity-ratio value-wind value-limit value-file
value-evaporation value-evaporation-low value-evaporation-high value-against-limit value-other-form value-alarm-hours
value-alarms value-possible-alarm-hours value-not-known-hours value-highest value-highest-at value-history
value-reference value-activation value-energy value-datum value-longest-gap value-gap-margin value-equivalent-age
value-equivalent-age-low value-equivalent-age-high value-equivalent-age-proven value-gap-hours value-calendar-age
value-share-of-calendar value-against-calendar value-temperature-time value-temperature-time-low
value-temperature-time-high value-form value-thickness value-sides value-wc value-d1 value-strength value-h0
value-face value-wet-cure value-days value-limits value-reading value-members value-days-to value-probe-depth
value-month-per-inch value-rule-check value-rh-before-readings value-days-to-before-readings value-effective-members
value-gain value-area value-time value-emission value-exposure value-solids value-dry value-wet value-coverage
value-thinner value-coats value-loss value-dry-film value-wet-film value-product value-stock value-baume value-parts
value-to value-volume value-water-first value-then-stock value-mix value-mix-density value-hydrogen-chloride
value-acid value-base value-ph value-base-mass value-carbon-dioxide value-carbon-dioxide-gas value-waste-ph value-tell
value-substance value-molar-mass value-gravity value-lel value-liquid value-part value-over value-mixing value-safety
value-room value-flow-needed value-flow-for-health value-flow-below-explosive-limit value-explosive-limit value-vapor
value-without-fresh-air value-share-of-explosive-limit value-fan value-from value-removal value-purge-time
value-air-changes value-length value-width value-panels value-panel-length value-panel-width value-panel-thickness
value-waste value-step value-order value-slab-concrete value-panel-concrete value-waste-concrete value-needed
value-spare value-low value-high value-cap value-aspect value-cut value-spacing-low value-spacing-high value-cut-depth
value-panels-along value-panels-across value-panel-aspect value-aspect-check value-cut-length value-markup
value-price-per-100-cost value-price-as-markup value-price-as-margin value-shortfall-per-100-cost value-first
value-second value-difference value-first-lab value-second-lab value-lighter-by finding-surface-clear-of-dew-point
finding-surface-near-dew-point finding-surface-below-dew-point finding-below-limit finding-possibly-above-limit
finding-above-limit finding-within-limit finding-condensation finding-younger-than-calendar
finding-older-than-calendar finding-as-old-as-calendar finding-published-form finding-default-form finding-rule-agrees
finding-rule-earlier finding-rule-later finding-rule-cannot-tell finding-exposure-too-short finding-exposure-standard
finding-exposure-too-long finding-sodium-bicarbonate finding-sodium-carbonate finding-ammonia
finding-trisodium-phosphate finding-trisodium-phosphate-crystals finding-calcium-hydroxide finding-calcium-carbonate
finding-sodium-hydroxide finding-below-sewer-floor finding-corrosive-hazardous-waste finding-federal-ph-rules-silent
finding-tell-volume finding-tell-ph finding-tell-neutralizer finding-tell-metal-salts finding-tell-solids
finding-tell-laboratory-metals finding-tell-when-and-where finding-hydrogen-chloride finding-acetone finding-o-xylene
finding-m-xylene finding-p-xylene finding-toluene finding-does-not-burn finding-aspect-within finding-aspect-outside
formula-hyland-wexler formula-standard-atmosphere formula-dew-point-spread formula-menzel-1954 formula-uno-1998
formula-evaporation-alarm formula-equivalent-age formula-temperature-time-factor formula-model-code-1990-drying
formula-drying-prior formula-month-per-inch formula-humidity-probe-depth-one-side formula-humidity-probe-depth-two-sides formula-dish-test formula-film-build
formula-hcl-density-20c formula-baume-heavy formula-stoichiometry formula-dilution-for-health
formula-dilution-for-explosive-limit formula-exposure-limits formula-purge formula-concrete-order
formula-joint-spacing formula-markup-margin formula-ciede2000 caution-acid-into-water caution-never-bleach
caution-carbon-dioxide-bursts-closed-drums caution-bicarbonate-self-limits caution-carbonate-overshoots
caution-ammonia-overshoots caution-strong-base-overshoots caution-phosphate-in-waste-water caution-test-in-small-steps
caution-neutral-is-not-metal-free caution-dilution-is-not-neutralization caution-ask-before-discharge
caution-safety-data-sheet caution-one-reading caution-makers-sheet-governs caution-wet-bulb-near-freezing
caution-evaporation-band caution-wind-near-slab caution-wind-at-station caution-wet-surface-only caution-typical-year
caution-constants-of-cement caution-age-releases-nothing caution-air-for-slab caution-gaps-widen
caution-forecast-never-releases caution-prior-needs-readings caution-published-trend-backwards caution-sees-top-only
caution-not-the-standard-test caution-absorption-not-counted caution-not-for-acid-or-spray
caution-explosive-is-not-healthy caution-respirator-by-competent-person caution-vapor-lies-low caution-no-ignition
caution-gravity-from-memory caution-wet-concrete-burns caution-cast-panels-alongside caution-silica-dust
caution-drawings-govern caution-say-which-ratio caution-no-better-than-the-photo
evaporation-pounds evaporation-kilograms speed-miles speed-meters flow-cubic-feet flow-cubic-meters space-cubic-feet
concentration-ppm share-percent density-pounds density-grams pressure-mercury pressure-kilopascals pressure-psi
pressure-megapascals diffusivity degree-hours-fahrenheit degree-hours-celsius
";

/// In Spanish only: sources whose place in the document is told in English by the calculation itself.
pub(crate) const CITED_IN_SPANISH: &str = "
cite-sum-hyland-wexler cite-sum-standard-atmosphere cite-sum-menzel-1954
cite-sum-equivalent-age cite-sum-temperature-time-factor cite-sum-model-code-1990-drying
cite-sum-drying-prior cite-sum-month-per-inch cite-sum-dish-test cite-sum-film-build cite-sum-hcl-density-20c
cite-sum-baume-heavy cite-sum-stoichiometry cite-sum-dilution-for-health cite-sum-dilution-for-explosive-limit
cite-sum-exposure-limits cite-sum-purge cite-sum-concrete-order cite-sum-markup-margin
cite-sum-ciede2000
";

/// In the order: English imperial, English metric, Spanish imperial, Spanish metric.
fn printed(show: impl Fn(Locale) -> String) -> [String; 4] {
    [
        (Lang::En, UnitSystem::Imperial),
        (Lang::En, UnitSystem::Metric),
        (Lang::Es, UnitSystem::Imperial),
        (Lang::Es, UnitSystem::Metric),
    ]
    .map(|(lang, unit_system)| show(Locale::new(lang, unit_system)))
}

#[test]
fn rates_and_speeds() {
    // 0.2 × 4.88242764 = 0.97649; 10 × 0.44704 = 4.4704; 1000 × 1.69901082 = 1699.0.
    let alarm = EvaporationRate::pounds_per_square_foot_hour(0.2);
    assert_eq!(
        printed(|v| v.evaporation(alarm)),
        ["0.2 lb/ft² per hour", "0.98 kg/m² per hour", "0.2 lb/pie² por hora", "0.98 kg/m² por hora"]
    );
    assert_eq!(printed(|v| v.speed(Speed::miles_per_hour(10.0))), ["10 mph", "4.5 m/s", "10 mph", "4.5 m/s"]);
    assert_eq!(
        printed(|v| v.air_flow(AirFlow::cubic_feet_per_minute(1000.0))),
        ["1,000 cfm", "1,699 m³/h", "1,000 pies³/min", "1,699 m³/h"]
    );
}

#[test]
fn strengths_pressures_and_shares() {
    // 1 g/mL × 3.785411784 / 0.45359237 = 8.3454 lb/gal; 101.325 / 3.386389 = 29.921; 24.1317 MPa = 3500 psi.
    assert_eq!(
        printed(|v| v.density(Density::grams_per_milliliter(1.0))),
        ["8.35 lb/gal", "1 g/mL", "8.35 lb/gal", "1 g/mL"]
    );
    assert_eq!(
        printed(|v| v.air_pressure(Pressure::kilopascals(101.325))),
        ["29.921 inHg", "101.325 kPa", "29.921 pulgHg", "101.325 kPa"]
    );
    assert_eq!(printed(|v| v.strength(Pressure::psi(3500.0))), ["3,500 psi", "24.1 MPa", "3,500 psi", "24.1 MPa"]);
    assert_eq!(printed(|v| v.space(Volume::cubic_feet(5000.0))), ["5,000 ft³", "142 m³", "5,000 pies³", "142 m³"]);
    assert_eq!(printed(|v| v.concentration(Concentration::parts_per_million(9999.0)))[0], "9,999 ppm");
    assert_eq!(printed(|v| v.concentration(Concentration::percent(1.1)))[1], "1.1 %");
    assert_eq!(Locale::default().share(Fraction::share(0.3145).unwrap()), "31.45 %");
    assert_eq!(Locale::default().percent(133.333), "133.33 %");
    // 1248 °C·h are 2246.4 °F·h above the same datum.
    assert_eq!(printed(|v| v.degree_hours(1248.0, 2246.4)), ["2,246 °F·h", "1,248 °C·h", "2,246 °F·h", "1,248 °C·h"]);
}
