//! What each code carries: the table that the sentences are checked against. `real_reasons.rs`
//! checks the table itself against what the rules of the core really say.

use slab_answers::standing::{Action, Next};
use slab_answers::standing::{Code, Reason, Value};
use slab_plan::Point;
use units::{
    Duration, Fraction, Length, MoistureEmission, Ph, RelativeHumidity, Speed, Temperature, TemperatureDifference,
};

/// `code: name=type …`; `?` behind the name: not in every situation; `+`: it may stand several times.
/// A code without a line carries nothing.
const TABLE: &str = "
one-color: days?=count needed?=count poured?=date ready?=date
old-enough: days=count needed=count poured=date ready=date
too-young: days=count needed=count poured=date ready=date
cold-cure: low=duration high=duration
equivalent-age: low=duration high=duration
equivalent-age-reached: low=duration high=duration
membrane-on-slab: date=date
no-film-test: drops=count scrapes=count needed=count
film-on-rag: drops=count scrapes=count needed=count
rag-against-water: drops=count scrapes=count needed=count
rag-changes-shine: drops=count scrapes=count needed=count
slow-on-powder: drops=count scrapes=count needed=count
clean-rag-no-acid-drop: drops=count scrapes=count needed=count
clean-rag-weak-fizz: drops=count scrapes=count needed=count
penetrating-treatment: drops=count scrapes=count needed=count
film-on-blade: drops=count scrapes=count needed=count
film-on-blade-water-stopped: drops=count scrapes=count needed=count
beads-on-powder: drops=count scrapes=count needed=count
water-stands-no-blade: drops=count scrapes=count needed=count
scrape-missing: drops=count scrapes=count needed=count
shine-change-only: drops=count scrapes=count needed=count
drop-missing: drops=count scrapes=count needed=count
too-few-drops: drops=count scrapes?=count needed=count
water-and-blade-agree: drops=count scrapes=count needed=count
dense-paste-not-film: drops=count scrapes=count needed=count
water-stands-in-places: drops=count scrapes=count needed=count
trowel-burn: date=date
no-drops: drops=count needed=count
film-hides-absorbency: drops=count needed=count
burnished: drops=count needed=count
water-stands-unknown-why: drops=count needed=count
drinks-unevenly: drops=count needed=count factor=ratio fastest=duration slowest=duration
drinks-slowly: drops=count needed=count factor=ratio fastest?=duration slowest?=duration
drinks-somewhat-unevenly: drops=count needed=count factor=ratio fastest=duration slowest=duration
slow-places-together: drops=count needed=count factor=ratio fastest=duration slowest=duration
slow-by-zone: drops=count needed=count factor=ratio fastest=duration slowest=duration
slow-scattered: drops=count needed=count factor=ratio fastest=duration slowest=duration
both-ends-approved: drops=count needed=count factor=ratio fastest=duration slowest=duration
much-fly-ash: share=share limit=share
panel-took-stain: panel=text
too-few-places: drops=count needed=count places=count places_needed=count
drinks-evenly: drops=count needed=count factor=ratio fastest=duration slowest=duration
incident-untreated: what=term date=date
incident-still-there: what=term date=date
incident-stops-water: what=term date=date
incident-faint: what=term date=date
looks-clear-but-water-stops: what=term date=date
clear-without-treatment: what=term date=date
treated-not-retested: what=term date=date
treated-looks-clear-no-drop: what=term date=date
incident-cleared: what=term date=date
incident-accepted: what=term date=date by=text
incident-not-acceptable: what=term date=date
nothing-takes-it-out: what=term date=date
cover-still-lies: date=date
ink-lay-against-slab: date=date
plastic-lay-on-slab: date=date
survey-under-cover: date=date
survey-old: date=date days=count keeps=count
surveyed: date=date days=count keeps=count
still-wet-curing: date=date sealer=term
moisture-tests-disagree: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
moisture-tests-weak: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
slab-too-humid: humidity_limit=humidity emission_limit=emission humidity_read=humidity emission_read?=emission sealer=term
emission-too-high: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read=emission sealer=term
sheet-wet: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
sheet-wet-sealer-tolerates: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
sheet-dry: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission have=count needed=count sealer=term
too-few-sheets: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission have=count needed=count sealer=term
sheet-darkened: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
sheet-too-short: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
sheet-is-not-enough: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
humidity-needs-maker: humidity_limit=humidity emission_limit=emission humidity_read=humidity emission_read?=emission sealer=term
no-moisture-test: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission sealer=term
too-few-moisture-tests: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission have=count needed=count sealer=term
dry-enough: humidity_limit=humidity emission_limit=emission humidity_read?=humidity emission_read?=emission have=count sealer=term
month-per-inch: thickness=length from=date date=date
no-ph-test: have=count needed=count
no-ph-test-after-rinse: have=count needed=count
ph-test-older-than-wash: have=count needed=count
ph-test-lapsed: have=count needed=count
dwell-runs: until=moment
coat-to-come: coat=count of=count
part-without-panel: part_is=term
choice-withdrawn: panel=text by=text date=date reason=text
approved-unsealed: panel=text by=text date=date
ph-too-low: have=count needed=count lowest=ph highest=ph low=ph high=ph
ph-outside-window: have=count needed=count lowest=ph highest=ph low=ph high=ph
too-few-ph-tests: have=count needed=count lowest=ph highest=ph low=ph high=ph
ph-fit: have=count needed=count lowest=ph highest=ph low=ph high=ph
rag-faint: have=count needed=count lowest=ph highest=ph low=ph high=ph
acid-left: have=count needed=count lowest=ph highest=ph low=ph high=ph
no-defects: date=date
defects-mapped: count=count
defect-accepted: by=text width?=length limit?=length
crack-wide: width=length limit=length
crack-hairline: width=length
repaired-owner-told: width?=length limit?=length
repaired-owner-not-told: width?=length limit?=length
repair-takes-no-stain: width?=length limit?=length
panel-origin-unknown: panel=text by=text date=date
panel-finish-unknown: panel=text by=text date=date
panel-mix-unknown: panel=text by=text date=date
panel-other-finish: panel=text by=text date=date panel_has=term zone_has=term
panel-other-mix: panel=text by=text date=date panel_has=term zone_has=term
panel-other-zone: panel=text by=text date=date
floor-changed-since-panel: panel=text by=text date=date
approved-before-stained: panel=text by=text date=date
stained-again-since-approval: panel=text by=text date=date
panel-approved: panel=text by=text date=date
site-partly-checked: item+=term
site-lacks: item+=term
site-check-old: days=count keeps=count date=date
site-check-not-today: days=count keeps=count date=date
site-ready: days=count keeps=count date=date
wind-too-strong: wind=speed limit=speed
wind-no-spraying: wind=speed limit=speed
surface-too-cold: surface=temperature limit=temperature
surface-too-hot: surface=temperature limit=temperature
surface-marginal: surface=temperature low=temperature high=temperature
surface-fit: surface=temperature
air-too-humid: humidity=humidity limit=humidity
near-dew-point: spread=difference dew_point=temperature wanted=difference
dew-point-marginal: spread=difference dew_point=temperature wanted=difference
above-dew-point: spread?=difference dew_point?=temperature wanted?=difference
released-by-person: by=text reason=text date=date
release-lapsed: by=text reason=text date=date
nobody-may-release-site: by=text reason=text date=date
nobody-may-release-air: by=text reason=text date=date
word-does-not-settle: by=text reason=text date=date
";

/// One value that a code carries.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Carried {
    pub(crate) name: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) always: bool,
    pub(crate) repeats: bool,
}

/// The values of a code.
pub(crate) fn carried(code: Code) -> Vec<Carried> {
    let line = TABLE.lines().find_map(|line| line.split_once(':').filter(|(name, _)| *name == code.name()));
    line.map_or_else(Vec::new, |(_, values)| {
        values
            .split_whitespace()
            .map(|value| {
                let (name, kind) = value.split_once('=').expect("name=type");
                Carried {
                    name: name.trim_end_matches(['?', '+']),
                    kind,
                    always: !name.ends_with('?'),
                    repeats: name.ends_with('+'),
                }
            })
            .collect()
    })
}

/// Codes that the table has a line for.
pub(crate) fn listed() -> Vec<&'static str> {
    TABLE.lines().filter_map(|line| line.split_once(':')).map(|(name, _)| name).collect()
}

/// The type of a value, in the words of the table.
pub(crate) fn kind_of(value: &Value) -> &'static str {
    match value {
        Value::Count(_) => "count",
        Value::Ratio(_) => "ratio",
        Value::Text(_) => "text",
        Value::Term(_) => "term",
        Value::Date(_) => "date",
        Value::Duration(_) => "duration",
        Value::Length(_) => "length",
        Value::Area(_) => "area",
        Value::Temperature(_) => "temperature",
        Value::Difference(_) => "difference",
        Value::Humidity(_) => "humidity",
        Value::Emission(_) => "emission",
        Value::Ph(_) => "ph",
        Value::Share(_) => "share",
        Value::Speed(_) => "speed",
        Value::Moment(_) => "moment",
        Value::Point(_) => "point",
        Value::Remedy(_) => "remedy",
    }
}

/// A sample of a type; `seed` varies counts and signs.
pub(crate) fn sample(kind: &str, seed: u32) -> Value {
    match kind {
        "count" => Value::Count(seed),
        "ratio" => Value::Ratio(4.26),
        "text" => Value::Text("Ana Ruiz".to_owned()),
        "term" => Value::Term(["acrylic-water", "red-chalk", "float", "4021"][seed as usize % 4].to_owned()),
        "date" => Value::Date(jiff::civil::date(2026, 5, 3)),
        "duration" => Value::Duration(Duration::seconds(75.0)),
        "length" => Value::Length(Length::inches(0.04)),
        "temperature" => Value::Temperature(Temperature::fahrenheit(48.5)),
        "difference" => Value::Difference(TemperatureDifference::fahrenheit_degrees(f64::from(seed) - 1.5)),
        "humidity" => Value::Humidity(RelativeHumidity::percent(85.0).expect("in range")),
        "emission" => Value::Emission(MoistureEmission::pounds_per_thousand_square_feet_day(3.0)),
        "share" => Value::Share(Fraction::share(0.2).expect("in range")),
        "speed" => Value::Speed(Speed::miles_per_hour(12.0)),
        "moment" => Value::Moment(jiff::civil::date(2026, 5, 3).at(14, 5, 0, 0)),
        "point" => Value::Point(Point::new(Length::feet(12.0).into(), Length::feet(3.0).into())),
        "remedy" => Value::Remedy("cutting-oil".to_owned()),
        "ph" => Value::Ph(Ph::new(9.5).expect("in range")),
        other => panic!("the table names no type {other}"),
    }
}

/// A reason with samples of everything it always carries, and of the rest when `full`.
pub(crate) fn reason(code: Code, full: bool, seed: u32) -> Reason {
    let mut values = Vec::new();
    for carried in carried(code).iter().filter(|c| full || c.always) {
        for again in 0..if carried.repeats { 1 + seed % 4 } else { 1 } {
            values.push((carried.name, sample(carried.kind, seed + again)));
        }
    }
    Reason { code, zones: Vec::new(), values }
}

/// What each action names, besides the count of missing tests that all of them may have.
const ASKED: &str = "
treat-and-retest: remedy=remedy place?=point
retest-spot: remedy=remedy place?=point
screen-place: place=point
mix-by-zone: slow_zone+=text
mock-up-both-ends: slow_place?=point fast_place?=point
lay-coat: coat=count of=count
lay-sealer-coat: coat=count of=count from=moment
keep-off: until=moment
";

/// A next step with samples of what it names, of the optional ones too when `full`.
pub(crate) fn next(action: Action, full: bool) -> Next {
    let line = ASKED.lines().find_map(|line| line.split_once(": ").filter(|(name, _)| *name == action.name()));
    let mut values = vec![("missing", Value::Count(3))];
    for value in line.map_or("", |(_, values)| values).split_whitespace() {
        let (name, kind) = value.split_once('=').expect("name=type");
        if full || !name.ends_with('?') {
            values.push((name.trim_end_matches(['?', '+']), sample(kind, 2)));
        }
    }
    let zones = if full { vec!["Shop".to_owned()] } else { Vec::new() };
    Next { action, zones, values, minutes: 20, wait_hours: 24 }
}
