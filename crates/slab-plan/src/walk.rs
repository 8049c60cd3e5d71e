//! A walk along the walls: closure, and its adjustment by the compass rule.
//!
//! Method: the traverse computation of any surveying text (departures and latitudes, linear
//! misclosure, relative precision, compass or Bowditch rule); checked against the worked traverses
//! in `reference/plan/traverse.toml`, which carry their own grades.

use units::{AsWritten, Length};

use super::angle::half_turn;
use super::limits::{corner_limit, length, offset};
use super::{Bearing, Offset, PlanError, Point, Precision, Turn, WalkSpec, blunder};

/// The loosest closure accepted when the walk states none: 1:200.
///
/// Grade: common practice, no source. Reasoning: corners taken as square on a slab are commonly
/// out by about 1/2 in in 10 ft (1:240), and a tape adds a little. At this limit a dropped foot is
/// still caught on up to 200 ft of wall; state a tighter limit where the corners were measured.
pub const CLOSURE_LIMIT: Precision = Precision::one_in(200.0);

/// The largest angular misclosure accepted, for one corner; for `n` corners it grows with `√n`
/// (the form `c = K √n` of the traverse standards).
///
/// Grade of the half degree: common practice, no source (a framing square or a 3-4-5 triangle).
pub const ANGULAR_LIMIT_PER_CORNER: Turn = Turn::right_degrees(0.5);

/// Below this share of the perimeter a gap is float noise, not a misclosure.
const EXACT_SHARE: f64 = 1e-9;

/// How a walk closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WalkState {
    /// It came back to its start; nothing was changed.
    Exact,
    /// A gap (or an angular misclosure) within the limit was distributed.
    Adjusted,
    /// The gap is above the limit; nothing was changed. Only inside [`PlanError::WalkOpen`].
    Open,
}

/// One leg as walked and as adjusted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WalkLeg {
    /// Taped length.
    pub length: Length,
    /// Direction, after any angular adjustment.
    pub bearing: Bearing,
    /// Departure (to the right) as walked.
    pub departure: Offset,
    /// Latitude (up) as walked.
    pub latitude: Offset,
    /// What the compass rule adds to the departure.
    pub departure_correction: Offset,
    /// What the compass rule adds to the latitude.
    pub latitude_correction: Offset,
}

impl WalkLeg {
    /// Departure after adjustment.
    #[must_use]
    pub fn adjusted_departure(&self) -> Offset {
        self.departure + self.departure_correction
    }

    /// Latitude after adjustment.
    #[must_use]
    pub fn adjusted_latitude(&self) -> Offset {
        self.latitude + self.latitude_correction
    }
}

/// What a walk along the walls came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Walk {
    /// Exact, adjusted or open.
    pub state: WalkState,
    /// All taped lengths together.
    pub perimeter: Length,
    /// How far from its start the walk ended: the linear misclosure.
    pub misclosure: Length,
    /// From the start toward where the walk ended; `None` when it is exact.
    pub direction: Option<Bearing>,
    /// Misclosure against perimeter; `None` when it is exact.
    pub precision: Option<Precision>,
    /// The loosest precision that was accepted.
    pub limit: Precision,
    /// What the turns add up to beyond one full turn in the walk's own sense, taken off in equal
    /// parts; `None` when the closing turn was not measured.
    pub angular_misclosure: Option<Turn>,
    /// The legs in order.
    pub legs: Vec<WalkLeg>,
    /// The corners after adjustment, beginning with the start; one for each leg.
    pub points: Vec<Point>,
}

/// Walks by the path of the shape they drew.
pub(super) type Walks = Vec<(String, Walk)>;

/// A leg read and checked: its turn and taped length.
pub(super) struct Leg {
    pub(super) turn: Turn,
    pub(super) length: f64,
}

pub(super) fn resolve(spec: &WalkSpec, path: &str) -> Result<Walk, PlanError> {
    let mut legs = read_legs(spec, path)?;
    let angular_misclosure = match &spec.closing_turn {
        Some(closing) => Some(close_turns(&mut legs, closing, spec, path)?),
        None => None,
    };
    let limit = spec.limit.as_ref().map_or(CLOSURE_LIMIT, AsWritten::value);
    let start = Point::new(offset(&spec.start[0], path, "start[0]")?, offset(&spec.start[1], path, "start[1]")?);
    let mut walked: Vec<WalkLeg> = run(&legs);
    let perimeter: f64 = legs.iter().map(|l| l.length).sum();
    let (right, up) = gap(&walked);
    let misclosure = libm::hypot(right, up);

    let exact = misclosure <= EXACT_SHARE * perimeter;
    let open = !exact && misclosure * limit.parts() > perimeter * (1.0 + EXACT_SHARE);
    if !open {
        // Compass rule: correction of leg i = −(misclosure) · (length of leg i / perimeter).
        for leg in &mut walked {
            let share = leg.length.as_meters() / perimeter;
            leg.departure_correction = Offset::meters(-right * share);
            leg.latitude_correction = Offset::meters(-up * share);
        }
    }
    let turned = angular_misclosure.is_some_and(|t| t != Turn::STRAIGHT);
    let walk = Walk {
        state: match (open, exact && !turned) {
            (true, _) => WalkState::Open,
            (false, true) => WalkState::Exact,
            (false, false) => WalkState::Adjusted,
        },
        perimeter: Length::meters(perimeter),
        misclosure: if exact { Length::ZERO } else { Length::meters(misclosure) },
        direction: if exact { None } else { Bearing::of(right, up) },
        precision: (!exact).then(|| Precision::one_in(perimeter / misclosure)),
        limit,
        angular_misclosure,
        points: corners(start, &walked),
        legs: walked,
    };
    if open {
        let suspects = blunder::find(spec, &legs, limit);
        return Err(PlanError::WalkOpen { path: path.to_owned(), walk: Box::new(walk), suspects });
    }
    Ok(walk)
}

fn read_legs(spec: &WalkSpec, path: &str) -> Result<Vec<Leg>, PlanError> {
    corner_limit(spec.legs.len(), &format!("{path}.legs"))?;
    spec.legs
        .iter()
        .enumerate()
        .map(|(i, leg)| {
            let turn = match (&leg.turn, i) {
                (Some(turn), _) => turn.value(),
                (None, 0) => Turn::STRAIGHT,
                (None, _) => return Err(PlanError::MissingTurn { path: format!("{path}.legs[{i}].turn"), leg: i + 1 }),
            };
            Ok(Leg { turn, length: length(&leg.length, &format!("{path}.legs[{i}].length"))? })
        })
        .collect()
}

/// Departures and latitudes: departure = L sin α, latitude = L cos α, α clockwise from north.
pub(super) fn run(legs: &[Leg]) -> Vec<WalkLeg> {
    let mut bearing = Bearing::degrees(90.0);
    legs.iter()
        .map(|leg| {
            bearing = bearing.turned(leg.turn);
            let (right, up) = bearing.right_and_up();
            WalkLeg {
                length: Length::meters(leg.length),
                bearing,
                departure: Offset::meters(leg.length * right),
                latitude: Offset::meters(leg.length * up),
                departure_correction: Offset::ZERO,
                latitude_correction: Offset::ZERO,
            }
        })
        .collect()
}

/// Where the walk ends, seen from its start: the sums of departures and latitudes.
pub(super) fn gap(legs: &[WalkLeg]) -> (f64, f64) {
    legs.iter().fold((0.0, 0.0), |(x, y), leg| (x + leg.departure.as_meters(), y + leg.latitude.as_meters()))
}

fn corners(start: Point, legs: &[WalkLeg]) -> Vec<Point> {
    let mut at = start;
    let mut points = Vec::with_capacity(legs.len());
    for leg in legs {
        points.push(at);
        at = Point::new(at.x + leg.adjusted_departure(), at.y + leg.adjusted_latitude());
    }
    points
}

/// The turns of a closed walk that does not cross itself add up to one full turn; a small excess is
/// taken off in equal parts. Returns the excess.
fn close_turns(legs: &mut [Leg], closing: &AsWritten<Turn>, spec: &WalkSpec, path: &str) -> Result<Turn, PlanError> {
    let sum = legs[1..].iter().map(|l| l.turn.as_right_degrees()).sum::<f64>() + closing.value().as_right_degrees();
    let full = if sum < 0.0 { -360.0 } else { 360.0 };
    let excess = sum - full;
    let corners = legs.len() as f64;
    let limit = ANGULAR_LIMIT_PER_CORNER.as_right_degrees() * corners.sqrt();
    if excess.abs() > limit {
        return Err(PlanError::TurnsOpen {
            path: path.to_owned(),
            sum: Turn::right_degrees(sum),
            limit: Turn::right_degrees(limit),
            suspects: blunder::suspected_turns(spec, sum, limit),
        });
    }
    if excess.abs() <= EXACT_SHARE * 360.0 {
        return Ok(Turn::STRAIGHT);
    }
    for leg in &mut legs[1..] {
        leg.turn = Turn::right_degrees(half_turn(leg.turn.as_right_degrees() - excess / corners));
    }
    Ok(Turn::right_degrees(excess))
}
