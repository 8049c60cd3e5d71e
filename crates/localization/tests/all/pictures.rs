//! Messages of the drawings, which crate `pictures` names one by one.

/// In both languages. A test of crate `pictures` finds each of them in its code.
pub(crate) const NAMED: &str = "
pic-score-axis pic-score-even pic-score-patchy pic-score-none pic-score-last pic-score-desc
pic-plan-desc pic-named pic-cut-outs pic-floor-no-panel pic-stretch pic-next-enough pic-next-none pic-wall pic-more pic-north pic-open pic-settled pic-in-zone pic-earlier
pic-soaked pic-stood pic-beads pic-seconds pic-minutes pic-hours pic-short-stood pic-short-beads pic-emission-pounds
pic-emission-grams pic-scrape-powder pic-scrape-shine-change pic-scrape-curl pic-scrape-flake pic-scrape-tacky
pic-wipe-clean pic-wipe-shine-change pic-wipe-sticky-or-yellow pic-fizz-strong pic-fizz-weak pic-fizz-none
pic-sheet-dry pic-sheet-darkened pic-sheet-drops pic-defect-crack pic-defect-hole pic-defect-spall pic-defect-patch
pic-defect-dusting pic-letter-water-drop pic-letter-scrape pic-letter-solvent-wipe pic-letter-acid-drop pic-letter-ph
pic-letter-humidity pic-letter-dish pic-letter-sheet pic-letter-temperature pic-legend-open pic-legend-settled
pic-legend-next pic-day pic-day-year pic-month-1 pic-month-2 pic-month-3 pic-month-4 pic-month-5 pic-month-6
pic-month-7 pic-month-8 pic-month-9 pic-month-10 pic-month-11 pic-month-12 pic-hour-am pic-hour-pm pic-noon
pic-midnight pic-today pic-today-is pic-date pic-what pic-reading pic-reading-margin pic-forecast pic-band pic-middle
pic-low pic-mid pic-high pic-drying-axis pic-drying-desc pic-drying-on pic-drying-no-forecast pic-drying-reach
pic-drying-reach-open pic-drying-reach-never pic-drying-last-reading pic-drying-no-readings pic-drying-rule
pic-drying-rule-is pic-drying-not-proof pic-air-pounds pic-air-kilograms pic-air-desc pic-air-highest pic-air-over
pic-air-may pic-air-unknown pic-air-hour pic-air-rate pic-air-below pic-air-possible pic-air-above pic-air-missing
pic-line-desc pic-line-happened pic-line-trouble pic-line-milestone pic-line-forecast pic-line-by pic-line-by-open
pic-line-open pic-line-span
pic-ground-share pic-share pic-share-least pic-ground-unsure pic-ground-film pic-ground-stands pic-ground-slow
pic-ground-untested pic-ground-dense pic-ground-drinks pic-ground-spot pic-ground-spot-assumed pic-ground-untreated
pic-ground-still-there pic-ground-stops-water pic-ground-faint pic-ground-no-treatment pic-ground-not-retested
pic-ground-no-drop pic-ground-not-acceptable pic-ground-nothing-takes-it-out pic-ground-cleared pic-ground-accepted
pic-ground-not-settled pic-bay pic-bay-no-finish pic-bay-mapped pic-bay-unplaced pic-bay-too-few pic-bay-no-drops
pic-bay-stood pic-bay-film pic-bay-none pic-bay-stands pic-next pic-next-settles pic-next-first-map pic-saw-cuts
pic-construction-joints pic-isolation-joints pic-joints pic-score-lines pic-key-saw-cut pic-key-construction-joint
pic-key-isolation-joint pic-key-joint pic-key-score-line pic-key-section pic-section pic-section-short
pic-key-drinks pic-key-slow pic-key-stands pic-key-unsure pic-key-border
";
