//! How the ground is said: classes, times, zones and bays in sentences.

use localization::{Locale, UnitSystem};
use science::absorbency::{AbsorbencyError, Enough};
use slab_answers::map::{Bay, BayField, Ground, NextTest, SlabMap, Spot, Teaches};
use slab_answers::standing::Code;
use units::{Area, Duration, Fraction};

use crate::plan::mark::{Layer, MarkKind, MarkPlace, PlanMark};

/// Shares below this are said as "under 1 %".
const MIN_SHARE: f64 = 0.005;

/// `45 s`, `3 min`, `1 h`.
pub(in crate::plan) fn round_time(time: Duration, locale: Locale) -> String {
    let seconds = time.as_seconds();
    let (key, n) = match seconds {
        s if s < 60.0 => ("pic-seconds", s),
        s if s < 3600.0 => ("pic-minutes", s / 60.0),
        s => ("pic-hours", s / 3600.0),
    };
    locale.message(key, &[("n", locale.number(n, 1).into())])
}

/// Each zone with what it is made of, such as "4 % cutting oil, untreated; 11 % slow to drink; 85 %
/// drinks", the worst first.
#[must_use]
pub fn zone_sentences(map: &SlabMap, locale: Locale) -> Vec<(String, String)> {
    map.zones
        .iter()
        .map(|zone| {
            let mut parts: Vec<String> = zone
                .shares
                .iter()
                .map(|of| {
                    let args =
                        [("share", share(of.share, locale).into()), ("what", ground(of.ground, map, locale).into())];
                    locale.message("pic-ground-share", &args)
                })
                .collect();
            if zone.unsure.as_share() >= MIN_SHARE {
                parts.push(locale.message("pic-ground-unsure", &[("share", share(zone.unsure, locale).into())]));
            }
            (zone.zone.clone(), parts.join("; "))
        })
        .collect()
}

fn share(of: Fraction, locale: Locale) -> String {
    let percent = of.as_share() * 100.0;
    if of.as_share() < MIN_SHARE {
        return locale.message("pic-share-least", &[]);
    }
    // A little that is left over must not read as all of it.
    let shown = if percent < 100.0 { percent.round().min(99.0) } else { 100.0 };
    locale.message("pic-share", &[("n", locale.number(shown, 0).into())])
}

fn ground(of: Ground, map: &SlabMap, locale: Locale) -> String {
    let key = match of {
        Ground::Spot(at) => return map.spots.get(at).map_or_else(String::new, |spot| spot_words(spot, locale)),
        Ground::Film => "pic-ground-film",
        Ground::Stands => "pic-ground-stands",
        Ground::Slow => "pic-ground-slow",
        Ground::Untested => "pic-ground-untested",
        Ground::Dense => "pic-ground-dense",
        Ground::Drinks => "pic-ground-drinks",
    };
    locale.message(key, &[])
}

fn spot_words(spot: &Spot, locale: Locale) -> String {
    let state = locale.message(state(spot.code), &[]);
    let args = [("what", locale.term(&spot.what).into()), ("state", state.into())];
    let words = locale.message("pic-ground-spot", &args);
    if spot.reach_assumed { locale.message("pic-ground-spot-assumed", &[("spot", words.into())]) } else { words }
}

/// How an incident stands, in a word or two.
const fn state(code: Code) -> &'static str {
    match code {
        Code::IncidentUntreated => "pic-ground-untreated",
        Code::IncidentStillThere => "pic-ground-still-there",
        Code::IncidentStopsWater | Code::LooksClearButWaterStops => "pic-ground-stops-water",
        Code::IncidentFaint => "pic-ground-faint",
        Code::ClearWithoutTreatment => "pic-ground-no-treatment",
        Code::TreatedNotRetested => "pic-ground-not-retested",
        Code::TreatedLooksClearNoDrop => "pic-ground-no-drop",
        Code::IncidentNotAcceptable => "pic-ground-not-acceptable",
        Code::NothingTakesItOut => "pic-ground-nothing-takes-it-out",
        Code::IncidentCleared => "pic-ground-cleared",
        Code::IncidentAccepted => "pic-ground-accepted",
        _ => "pic-ground-not-settled",
    }
}

/// Each bay with how well it is known: of a map how many drops it has and how many of them the others
/// foretold within their 80 % band, else what a map lacks.
#[must_use]
pub fn bay_sentences(map: &SlabMap, locale: Locale) -> Vec<String> {
    map.bays
        .iter()
        .map(|bay| {
            let finish = match &bay.finish {
                Some(finish) => locale.term(finish),
                None => locale.message("pic-bay-no-finish", &[]),
            };
            let args = [("finish", finish.into()), ("zones", bay.zones.join(", ").into())];
            let mut parts = vec![known(bay, locale)];
            if !bay.unplaced.is_empty() {
                let n = u32::try_from(bay.unplaced.len()).unwrap_or(u32::MAX);
                let args = [("n", locale.count(n).into()), ("count", n.into())];
                parts.push(locale.message("pic-bay-unplaced", &args));
            }
            let args_named = [("name", locale.message("pic-bay", &args).into()), ("value", parts.join("; ").into())];
            locale.message("pic-named", &args_named)
        })
        .collect()
}

fn known(bay: &Bay, locale: Locale) -> String {
    let counted = |key: &'static str, named: &[(&str, usize)], by: usize| {
        let mut args: Vec<(&str, localization::Arg<'_>)> =
            vec![("count", u32::try_from(by).unwrap_or(u32::MAX).into())];
        let shown = |n: usize| locale.count(u32::try_from(n).unwrap_or(u32::MAX));
        args.extend(named.iter().map(|(name, n)| (*name, shown(*n).into())));
        locale.message(key, &args)
    };
    if bay.film {
        return locale.message("pic-bay-film", &[]);
    }
    if bay.field().is_none() && bay.stands {
        return locale.message("pic-bay-stands", &[]);
    }
    match &bay.field {
        BayField::Mapped { left_out, .. } => {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of a count")]
            let held = (left_out.held_80.as_share() * left_out.timed as f64).round() as usize;
            let drops = left_out.drops.len();
            counted("pic-bay-mapped", &[("drops", drops), ("held", held), ("timed", left_out.timed)], drops)
        }
        BayField::None(AbsorbencyError::TooFewPlaces { places, more, .. }) => {
            let key = if *places == 0 { "pic-bay-no-drops" } else { "pic-bay-too-few" };
            counted(key, &[("places", *places), ("more", *more)], *places)
        }
        BayField::None(AbsorbencyError::NearlyAllStood { drops, timed, .. }) => {
            counted("pic-bay-stood", &[("drops", *drops), ("timed", *timed)], *timed)
        }
        BayField::None(_) => locale.message("pic-bay-none", &[]),
    }
}

/// The places to test next as marks, the best first.
#[must_use]
pub fn next_marks(map: &SlabMap, locale: Locale) -> Vec<PlanMark> {
    map.next.iter().enumerate().map(|(at, next)| next_mark(at + 1, next, locale)).collect()
}

/// An expected area is no finer than two figures, nor than a square foot or a tenth of a square meter;
/// one that is smaller stays as it is.
fn about(area: Area, locale: Locale) -> Area {
    let round = |value: f64, least: f64| {
        let step = libm::pow(10.0, libm::floor(libm::log10(value.max(f64::MIN_POSITIVE))) - 1.0).max(least);
        let rounded = (value / step).round() * step;
        if rounded > 0.0 { rounded } else { value }
    };
    match locale.unit_system {
        UnitSystem::Imperial => Area::square_feet(round(area.as_square_feet(), 1.0)),
        UnitSystem::Metric => Area::square_meters(round(area.as_square_meters(), 0.1)),
    }
}

/// Why no place to test next is named, when none is: enough is known, or nothing could be planned, which
/// is no reason to call it enough.
#[must_use]
pub fn no_next_sentence(map: &SlabMap, locale: Locale) -> Option<String> {
    let key = match map.enough {
        Some(Enough::LittleGain(_) | Enough::PlanStays(_)) => "pic-next-enough",
        Some(Enough::AsAsked | Enough::NoPlaceLeft) | None => "pic-next-none",
    };
    map.next.is_empty().then(|| locale.message(key, &[]))
}

fn next_mark(number: usize, next: &NextTest, locale: Locale) -> PlanMark {
    let why = match next.teaches {
        Teaches::Settles { settles, .. } => {
            locale.message("pic-next-settles", &[("area", locale.area(about(settles, locale)).into())])
        }
        Teaches::FirstMap { missing } => {
            let n = u32::try_from(missing).unwrap_or(u32::MAX);
            locale.message("pic-next-first-map", &[("n", locale.count(n).into()), ("count", n.into())])
        }
    };
    let args = [("name", locale.message("pic-next", &[]).into()), ("value", why.into())];
    PlanMark {
        id: format!("next-{number}"),
        layer: Layer::Next,
        kind: MarkKind::Next,
        at: MarkPlace::Point(next.at),
        short: String::new(),
        title: locale.message("pic-named", &args),
        settled: false,
    }
}
