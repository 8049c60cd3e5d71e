//! Dry enough for the chosen sealer? Only measurements say so; a forecast never releases.
//!
//! Counted from the end of the wet cure, not from the pour: a probe read under wet covers tells
//! nothing of a dried slab. Humidity in the slab and emission from it cannot be converted into each
//! other; where both were measured and disagree, nobody can tell.

use std::collections::HashMap;

use jiff::Timestamp;
use science::emission::{Exposure as DishExposure, moisture_emission};
use science::moisture::month_per_inch;
use units::{Duration, Length, MoistureEmission, RelativeHumidity};

use super::finding::{Finding, Value};
use super::surface::DryingStart;
use super::{Action, Code, Judge};
use slab_diary::body::{
    AirReading, AirSeries, Cleaning, CleaningMethod, EmissionDish, Exposure, Incident, PlasticSheet, Pour, Rinsed,
    SealerChosen, SheetResult, SlabHumidity, Wetting,
};
use slab_diary::{Body, Entry, EntryId, EntryKind};
use slab_diary::{EntryOf, Zone};

/// What the sealer asks, from its maker's sheet where it is known.
pub(crate) struct Asked {
    /// Fine up to here.
    pub(crate) humidity: Option<RelativeHumidity>,
    /// Up to here the maker's sheet would have to say so.
    pub(crate) humidity_upper: Option<RelativeHumidity>,
    emission: Option<MoistureEmission>,
    dry_sheet_does: bool,
    damp_tolerant: bool,
}

/// The plastic sheets of one zone.
#[derive(Default)]
struct Sheets {
    dry: u32,
    /// Dry, but lifted too early to prove it.
    too_short: u32,
    darkened: u32,
    drops: u32,
    evidence: Vec<EntryId>,
}

/// One kind of test on one zone.
#[derive(Default)]
struct Measured {
    /// Readings that count in full.
    sound: usize,
    /// Readings taken the wrong way.
    weak: usize,
    over: usize,
    between: usize,
    /// The highest reading: humidity of probes, emission of dishes.
    wettest: Option<Value>,
    evidence: Vec<EntryId>,
}

impl Measured {
    fn fits(&self) -> bool {
        self.sound > 0 && self.over == 0 && self.between == 0
    }
}

/// How much smaller than its rule a sheet may be cut, as a share. Our judgment.
const SHEET_SLACK: f64 = 0.1;

/// When a test began to measure: a sheet or a dish lay before it was read.
fn laid(test: &Entry) -> Timestamp {
    let lay = match &test.body {
        Body::PlasticSheet(sheet) => sheet.covered.value(),
        Body::EmissionDish(dish) => dish.exposed.value(),
        _ => Duration::ZERO,
    };
    let lay = jiff::SignedDuration::from_secs(lay.as_seconds() as i64);
    test.happened.instant().checked_sub(lay).unwrap_or(test.happened.instant())
}

/// When what wetted a slab was over, where it is noted.
fn wet_until(wet: &Entry) -> Timestamp {
    let stayed = match &wet.body {
        Body::Wetting(wetting) => wetting.stayed_wet.as_ref().map(units::AsWritten::value),
        _ => None,
    };
    let stayed = jiff::SignedDuration::from_secs(stayed.map_or(0, |stayed| stayed.as_seconds() as i64));
    wet.happened.instant().checked_add(stayed).unwrap_or(wet.happened.instant())
}

/// Tests of one round lie within this time of each other.
const ONE_ROUND: jiff::SignedDuration = jiff::SignedDuration::from_hours(7 * 24);

impl Judge<'_> {
    pub(super) fn moisture(&self, zone: &Zone) -> Finding {
        let Some(chosen) = self.slab.all::<SealerChosen>().rfind(|s| self.slab.touches(s.entry, zone)) else {
            return Finding::unproven(Code::NoSealerChosen, Action::ChooseSealer);
        };
        let asked = self.asked(chosen.body);
        let (since, start) = self.dry_since(zone);
        let wettings = self.wettings(zone);
        let near = self.one_place();
        let dry = |e: &Entry| since.is_none_or(|since| e.happened.instant() >= since);
        let rained = self.last_rain(zone);
        let unwetted = |e: &Entry| {
            let laid = laid(e);
            rained.is_none_or(|rained| laid > rained)
                && wettings.iter().all(|wet| laid > wet_until(wet) || !self.slab.reaches(wet, e, near))
        };
        let keeps = |e: &Entry| self.keeps(e, "moisture-tests-keep");
        let here = |e: &Entry| self.slab.speaks_for(e, zone);
        let counts = |e: &Entry| here(e) && dry(e) && unwetted(e) && keeps(e);
        let tests = [EntryKind::SlabHumidity, EntryKind::EmissionDish, EntryKind::PlasticSheet];
        let failing = |fails: &dyn Fn(&Entry) -> bool| -> Vec<EntryId> {
            self.slab.of_kinds(&tests).filter(|e| here(e) && fails(e)).map(|e| e.id).collect()
        };
        let outdated = failing(&|e| !dry(e));
        let wetted = failing(&|e| dry(e) && !unwetted(e));
        let lapsed = failing(&|e| dry(e) && unwetted(e) && !keeps(e));
        let probes = self.probes(zone, &asked, &counts);
        let dishes = self.dishes(&asked, &counts);
        let sheets = self.sheets(&counts);
        let finding = if let DryingStart::StillWet(entry) = start
            && entry.happened.instant() + self.longest_wet_cure() > self.at
        {
            Finding::held(Code::StillWetCuring, Action::EndWetCure)
                .with("date", Value::Date(entry.happened.date()))
                .because([entry.id])
        } else {
            self.measured(zone, &asked, &probes, &dishes, &sheets)
        };
        let finding = finding
            .with("sealer", Value::Term(chosen.body.sealer.clone()))
            .because([chosen.entry.id])
            .because(probes.evidence)
            .because(dishes.evidence)
            .because(sheets.evidence)
            .and_if(!outdated.is_empty(), Code::MoistureTestsOutdated)
            .because(outdated)
            .and_if(!wetted.is_empty(), Code::MoistureTestsWetted)
            .because(wetted)
            .and_if(!lapsed.is_empty(), Code::MoistureTestsLapsed)
            .because(lapsed);
        self.with_rule_of_thumb(zone, self.sparing_the_stain(zone, finding), &start)
    }

    /// On a stained floor the holes of probes and the ground spots of dishes would show: a place is agreed on first.
    fn sparing_the_stain(&self, zone: &Zone, finding: Finding) -> Finding {
        let stained = self.stained(zone).next().is_some();
        let marks = matches!(finding.next, Some(Action::SetProbes | Action::MeasureMoistureAgain));
        if stained && marks { finding.proposing(Action::AgreeProbePlace) } else { finding }
    }

    pub(crate) fn asked(&self, chosen: &SealerChosen) -> Asked {
        let rule = self.figures.trade().sealer(&chosen.sealer).map(|s| s.moisture);
        let own_humidity = chosen.humidity_limit.as_ref().map(units::AsWritten::value);
        let own_emission = chosen.emission_limit.as_ref().map(units::AsWritten::value);
        // A sealer we know nothing of is taken for a tight film: the strictest default.
        let tight = rule.is_none_or(|r| !r.dry_sheet && !r.damp_tolerant);
        let (plain_id, upper_id, emission_id) = if tight {
            ("humidity-film", "humidity-film-stop", "emission-film")
        } else {
            ("humidity-breathing", "humidity-breathing", "emission-breathing")
        };
        let default = rule.and_then(|r| r.humidity_max()).or_else(|| Some(self.figures.value(plain_id)));
        let upper = rule.and_then(|r| r.humidity_upper()).or_else(|| Some(self.figures.value(upper_id)));
        Asked {
            humidity: own_humidity.or(default),
            humidity_upper: own_humidity.or(upper),
            emission: own_emission
                .or_else(|| rule.and_then(|r| r.emission_max()))
                .or_else(|| Some(self.figures.value(emission_id))),
            dry_sheet_does: rule.is_some_and(|r| r.dry_sheet || r.damp_tolerant),
            damp_tolerant: rule.is_some_and(|r| r.damp_tolerant),
        }
    }

    /// Since when a moisture test counts: the end of the wet cure, and the last rinse.
    fn dry_since(&self, zone: &Zone) -> (Option<Timestamp>, DryingStart<'_>) {
        let start = self.drying_since(zone);
        let cured = match &start {
            DryingStart::From(entry) => Some(entry.happened.instant()),
            DryingStart::StillWet(entry) => Some(entry.happened.instant() + self.longest_wet_cure()),
            DryingStart::Unknown => None,
        };
        let rinsed =
            self.slab.all::<Rinsed>().rfind(|s| self.slab.touches(s.entry, zone)).map(|s| s.entry.happened.instant());
        (cured.max(rinsed), start)
    }

    /// What wetted the zone, or places in it: water that came in, a wash, rain on an open slab.
    pub(super) fn wettings(&self, zone: &Zone) -> Vec<&Entry> {
        let came_in = self.slab.all::<Wetting>().map(|s| s.entry);
        let washed = self
            .slab
            .all::<Cleaning>()
            .filter(|s| s.body.of.is_none() && matches!(s.body.method, CleaningMethod::Water | CleaningMethod::Acid))
            .map(|s| s.entry);
        let puddle = self.slab.all::<Incident>().filter(|s| s.body.what == "water-puddle").map(|s| s.entry);
        let open = self.slab.exposure() == Exposure::Exterior;
        let rained = self.slab.all::<AirReading>().filter(|s| open && s.body.rain == Some(true)).map(|s| s.entry);
        // What was measured before this concrete was placed was measured in other concrete.
        let poured = self.slab.all::<Pour>().map(|s| s.entry);
        let all = came_in.chain(washed).chain(puddle).chain(rained).chain(poured);
        all.filter(|entry| self.slab.touches(entry, zone)).collect()
    }

    /// When it last rained on an open slab by a weather record of its days.
    fn last_rain(&self, zone: &Zone) -> Option<Timestamp> {
        if self.slab.exposure() != Exposure::Exterior {
            return None;
        }
        let records = self.slab.all::<AirSeries>().filter(|s| self.slab.touches(s.entry, zone));
        let samples = records.filter(|s| !s.body.series.typical_year).flat_map(|s| &s.body.series.samples);
        let wet = samples.filter(|s| s.at <= self.at && s.rain.is_some_and(|rain| rain > Length::default()));
        wet.map(|s| s.at).max()
    }

    fn probes(&self, zone: &Zone, asked: &Asked, counts: &impl Fn(&Entry) -> bool) -> Measured {
        let thickness = self.pour(zone).and_then(|p| p.body.thickness.as_ref().map(units::AsWritten::value));
        let two_sides = self.slab.drying_sides() == Some(2);
        let share: units::Fraction = self.figures.value(if two_sides {
            "humidity-probe-depth-two-sides"
        } else {
            "humidity-probe-depth-one-side"
        });
        let slack = self.figures.number("probe-depth-tolerance");
        let rest: Duration = self.figures.value("humidity-equilibrate");
        let mut measured = Measured::default();
        for seen in self.latest(self.slab.all::<SlabHumidity>().filter(|s| counts(s.entry))) {
            measured.evidence.push(seen.entry.id);
            let deep_enough = match (thickness, seen.body.depth.as_ref().map(units::AsWritten::value)) {
                (Some(thickness), Some(depth)) => {
                    let wanted = thickness * share.as_share();
                    (depth - wanted).abs() <= wanted * slack
                }
                // Nobody can say whether an unknown depth was right.
                (Some(_), None) => false,
                (None, _) => true,
            };
            let rested = seen.body.equilibrated.as_ref().is_some_and(|t| t.value() >= rest);
            if deep_enough && rested {
                measured.sound += 1;
            } else {
                measured.weak += 1;
            }
            let humidity = seen.body.humidity.value();
            if !matches!(&measured.wettest, Some(Value::Humidity(known)) if *known >= humidity) {
                measured.wettest = Some(Value::Humidity(humidity));
            }
            if asked.humidity_upper.is_some_and(|limit| humidity > limit) {
                measured.over += 1;
            } else if asked.humidity.is_some_and(|limit| humidity > limit) {
                measured.between += 1;
            }
        }
        measured
    }

    fn dishes(&self, asked: &Asked, counts: &impl Fn(&Entry) -> bool) -> Measured {
        let mut measured = Measured::default();
        for seen in self.latest(self.slab.all::<EmissionDish>().filter(|s| counts(s.entry))) {
            measured.evidence.push(seen.entry.id);
            let body = seen.body;
            let Ok(read) = moisture_emission(body.gain.value(), body.area.value(), body.exposed.value()) else {
                measured.weak += 1;
                continue;
            };
            if read.exposure == DishExposure::Standard {
                measured.sound += 1;
            } else {
                measured.weak += 1;
            }
            if !matches!(&measured.wettest, Some(Value::Emission(known)) if *known >= read.emission) {
                measured.wettest = Some(Value::Emission(read.emission));
            }
            // One that did not lie its time tells neither way.
            if read.exposure == DishExposure::Standard && asked.emission.is_some_and(|limit| read.emission > limit) {
                measured.over += 1;
            }
        }
        measured
    }

    fn sheets(&self, counts: &impl Fn(&Entry) -> bool) -> Sheets {
        let hours: Duration = self.figures.value("sheet-hours");
        let side: Length = self.figures.value("sheet-side");
        let large =
            |sheet: &PlasticSheet| sheet.side.as_ref().is_none_or(|cut| cut.value() >= side * (1.0 - SHEET_SLACK));
        let mut sheets = Sheets::default();
        for seen in self.latest(self.slab.all::<PlasticSheet>().filter(|s| counts(s.entry))) {
            sheets.evidence.push(seen.entry.id);
            match seen.body.result {
                SheetResult::Drops => sheets.drops += 1,
                SheetResult::Darkened => sheets.darkened += 1,
                // A dry sheet proves something only when it lay long enough and was large enough.
                SheetResult::Dry if seen.body.covered.value() >= hours && large(seen.body) => sheets.dry += 1,
                SheetResult::Dry => sheets.too_short += 1,
            }
        }
        sheets
    }

    fn measured(&self, zone: &Zone, asked: &Asked, probes: &Measured, dishes: &Measured, sheets: &Sheets) -> Finding {
        let drops = sheets.drops > 0;
        let limited = |f: Finding| {
            let f = match asked.humidity {
                Some(limit) => f.with("humidity_limit", Value::Humidity(limit)),
                None => f,
            };
            let f = match asked.emission {
                Some(limit) => f.with("emission_limit", Value::Emission(limit)),
                None => f,
            };
            let read = [("humidity_read", &probes.wettest), ("emission_read", &dishes.wettest)];
            read.into_iter().fold(f, |f, (name, value)| match value {
                Some(value) => f.with(name, value.clone()),
                None => f,
            })
        };
        let bad = probes.over > 0 || dishes.over > 0 || drops;
        let good = probes.fits() || dishes.fits();
        if bad && good {
            return limited(Finding::cant_tell(Code::MoistureTestsDisagree, Action::MeasureMoistureAgain));
        }
        if probes.over > 0 {
            return limited(Finding::held(Code::SlabTooHumid, Action::DryAndMeasureAgain));
        }
        if dishes.over > 0 {
            return limited(Finding::held(Code::EmissionTooHigh, Action::DryAndMeasureAgain));
        }
        if drops {
            return if asked.damp_tolerant {
                limited(Finding::cant_tell(Code::SheetWetSealerTolerates, Action::AskSealerMaker))
            } else {
                limited(Finding::held(Code::SheetWet, Action::DryAndMeasureAgain))
            };
        }
        if probes.between > 0 {
            return limited(Finding::cant_tell(Code::HumidityNeedsMaker, Action::AskSealerMaker));
        }
        if probes.sound == 0 && dishes.sound == 0 && asked.dry_sheet_does {
            let needed = zone.area.map_or(1, |area| self.figures.tests_for(area, "sheet-tests", None));
            let counted =
                |f: Finding| limited(f).with("have", Value::Count(sheets.dry)).with("needed", Value::Count(needed));
            return if sheets.darkened > 0 {
                limited(Finding::cant_tell(Code::SheetDarkened, Action::MeasureMoistureAgain))
            } else if sheets.dry > 0 && sheets.dry < needed {
                counted(Finding::unproven(Code::TooFewSheets, Action::LaySheet))
            } else if sheets.dry > 0 {
                counted(Finding::released(Code::SheetDry))
            } else if sheets.too_short > 0 {
                limited(Finding::cant_tell(Code::SheetTooShort, Action::LaySheet))
            } else if probes.weak + dishes.weak > 0 {
                limited(Finding::cant_tell(Code::MoistureTestsWeak, Action::MeasureMoistureAgain))
            } else {
                limited(Finding::unproven(Code::NoMoistureTest, Action::LaySheet))
            };
        }
        if probes.sound == 0 && dishes.sound == 0 {
            return if probes.weak + dishes.weak > 0 {
                limited(Finding::cant_tell(Code::MoistureTestsWeak, Action::SetProbes))
            } else if !sheets.evidence.is_empty() {
                limited(Finding::unproven(Code::SheetIsNotEnough, Action::SetProbes))
            } else {
                limited(Finding::unproven(Code::NoMoistureTest, Action::SetProbes))
            };
        }
        let (have, needed) = if probes.sound > 0 {
            (
                self.counted_over_slab::<SlabHumidity>(),
                self.tests_over_slab("humidity-tests-first", "humidity-tests-further"),
            )
        } else {
            (
                self.counted_over_slab::<EmissionDish>(),
                self.tests_over_slab("emission-tests-first", "emission-tests-further"),
            )
        };
        if have < needed {
            return limited(Finding::unproven(Code::TooFewMoistureTests, Action::SetProbes))
                .with("have", Value::Count(have))
                .with("needed", Value::Count(needed));
        }
        limited(Finding::released(Code::DryEnough)).with("have", Value::Count(have))
    }

    /// The readings that still speak: of one place the last, since a slab dries; and of readings without a point
    /// those of the last round in their zone.
    fn latest<'d, T: 'd>(&self, seen: impl Iterator<Item = EntryOf<'d, T>>) -> Vec<EntryOf<'d, T>> {
        let (placed, unplaced): (Vec<_>, Vec<_>) = seen.partition(|s| self.slab.point_of(s.entry).is_some());
        let zone = |s: &EntryOf<'d, T>| s.entry.place.as_ref().and_then(|place| place.zone.clone());
        let mut newest: HashMap<Option<String>, Timestamp> = HashMap::new();
        for s in &unplaced {
            newest.insert(zone(s), s.entry.happened.instant());
        }
        let in_round = unplaced.into_iter().filter(|s| {
            let last = newest.get(&zone(s)).copied().unwrap_or(s.entry.happened.instant());
            last.duration_since(s.entry.happened.instant()) <= ONE_ROUND
        });
        self.last_at_each_place(placed, |s| s.entry).into_iter().chain(in_round).collect()
    }

    /// Tests of a kind over the slab that are no older than tests keep.
    fn counted_over_slab<T: slab_diary::body::EntryBody>(&self) -> u32 {
        let kept = self.slab.all::<T>().filter(|s| self.keeps(s.entry, "moisture-tests-keep"));
        self.latest(kept).len() as u32
    }

    /// Tests the standard asks for over the whole slab; one where its area is unknown.
    fn tests_over_slab(&self, first: &str, further: &str) -> u32 {
        self.slab.area().map_or(1, |area| self.figures.tests_for(area, first, Some(further)))
    }

    /// Says when one month per inch would be over, counted from the start of drying.
    fn with_rule_of_thumb(&self, zone: &Zone, finding: Finding, start: &DryingStart<'_>) -> Finding {
        let thickness: Option<Length> =
            self.pour(zone).and_then(|p| p.body.thickness.as_ref().map(units::AsWritten::value));
        let (Some(thickness), DryingStart::From(entry)) = (thickness, start) else { return finding };
        if finding.state == super::State::Released {
            return finding;
        }
        let days = month_per_inch(thickness).as_days().ceil() as i64;
        let Ok(date) = entry.happened.date().checked_add(jiff::ToSpan::days(days)) else { return finding };
        finding
            .and(Code::MonthPerInch)
            .with("thickness", Value::Length(thickness))
            .with("from", Value::Date(entry.happened.date()))
            .with("date", Value::Date(date))
    }
}
