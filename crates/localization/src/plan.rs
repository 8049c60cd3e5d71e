//! What a walk along the walls came to, and what is wrong with a plan, in sentences.

use slab_plan::{Bearing, PlanError, Precision, Remedy, Suspect, Turn, Walk};
use units::Length;

use crate::locale::Locale;
use crate::messages::Arg;
use crate::numerals::rounded;

/// Of an angle in degrees.
const ANGLE_DECIMALS: usize = 2;
/// A gap below this can't be seen on a tape.
const TAPE_SEES: Length = Length::inches(1.0 / 16.0);

/// The compass points, from north clockwise.
const POINTS: [&str; 8] = [
    "walk-point-0",
    "walk-point-1",
    "walk-point-2",
    "walk-point-3",
    "walk-point-4",
    "walk-point-5",
    "walk-point-6",
    "walk-point-7",
];

impl Locale {
    /// How a walk closed: whether exactly, or by how much and that the gap was spread.
    #[must_use]
    pub fn walk(self, walk: &Walk) -> String {
        let perimeter = self.length(walk.perimeter);
        let closed = match (walk.direction, walk.precision) {
            (Some(direction), Some(precision)) => self.message("walk-closed", &self.gap(walk, direction, precision)),
            _ => self.message("walk-exact", &[("perimeter", perimeter.into())]),
        };
        match walk.angular_misclosure.filter(|turn| *turn != Turn::STRAIGHT) {
            Some(turn) => {
                let angle = rounded(turn.as_right_degrees().abs(), ANGLE_DECIMALS);
                format!("{closed} {}", self.message("walk-turns", &[("angle", angle.into())]))
            }
            None => closed,
        }
    }

    fn gap(self, walk: &Walk, direction: Bearing, precision: Precision) -> [(&'static str, Arg<'static>); 5] {
        [
            ("gap", self.length(walk.misclosure).into()),
            ("direction", self.bearing(direction).into()),
            ("precision", self.precision(precision).into()),
            ("perimeter", self.length(walk.perimeter).into()),
            ("limit", self.precision(walk.limit).into()),
        ]
    }

    /// `1:1,250`.
    fn precision(self, precision: Precision) -> String {
        let decimals = if precision.parts() < 10.0 { 1 } else { 0 };
        format!("1:{}", rounded(precision.parts(), decimals))
    }

    /// A direction on the plan: `toward plan north-east (45°)`.
    #[must_use]
    pub fn bearing(self, bearing: Bearing) -> String {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a bearing is 0 to 360 degrees")]
        let nearest = (bearing.as_degrees() * POINTS.len() as f64 / 360.0).round() as usize % POINTS.len();
        let point = self.message(POINTS[nearest], &[]);
        // A tape and a square know no finer direction of a gap.
        let angle = rounded(bearing.as_degrees(), 0);
        self.message("walk-toward", &[("point", point.into()), ("angle", angle.into())])
    }

    /// A turn: `90° to the right`.
    #[must_use]
    pub fn turn(self, turn: Turn) -> String {
        let degrees = turn.as_right_degrees();
        let angle = rounded(degrees.abs(), ANGLE_DECIMALS);
        let key = match angle.as_str() {
            "0" => return self.message("walk-turn-straight", &[]),
            _ if degrees < 0.0 => "walk-turn-left",
            _ => "walk-turn-right",
        };
        self.message(key, &[("angle", angle.into())])
    }

    /// One wall that alone could explain a gap, and what it would have to be; no whole sentence.
    #[must_use]
    pub fn suspect(self, suspect: &Suspect) -> String {
        let (key, better) = match suspect.remedy {
            Remedy::Length(length) => ("walk-suspect-wall", self.length(length)),
            Remedy::Turn(turn) => ("walk-suspect-turn", self.turn(turn)),
            Remedy::Inside(turn) => ("walk-suspect-inside", self.turn(turn)),
        };
        let what =
            self.message(key, &[("leg", suspect.leg.to_string().into()), ("typed", suspect.typed.as_str().into())]);
        let mut args: Vec<(&str, Arg<'_>)> = vec![("what", what.into()), ("better", better.into())];
        match suspect.leaves.filter(|gap| *gap > TAPE_SEES) {
            Some(gap) => {
                args.push(("gap", self.length(gap).into()));
                self.message("walk-suspect-leaves", &args)
            }
            None => self.message("walk-suspect-fits", &args),
        }
    }

    fn suspects(self, suspects: &[Suspect]) -> String {
        if suspects.is_empty() {
            return self.message("walk-suspects-none", &[]);
        }
        let each: Vec<String> = suspects.iter().map(|s| self.suspect(s)).collect();
        self.message("walk-suspects", &[("suspects", each.join("; ").into())])
    }

    /// What is wrong with a plan and what would be accepted. It does not name the field: beside it on
    /// a page the sentence stands alone, elsewhere [`PlanError::path`] goes before it.
    #[must_use]
    pub fn plan_error(self, error: &PlanError) -> String {
        let (key, args) = self.plan_error_parts(error);
        let said = self.message(key, &args);
        match error {
            PlanError::WalkOpen { suspects, .. } => format!("{said} {}", self.suspects(suspects)),
            PlanError::TurnsOpen { suspects, .. } if !suspects.is_empty() => {
                format!("{said} {}", self.suspects(suspects))
            }
            _ => said,
        }
    }

    /// The message of an error and what it carries, without the suspects.
    fn plan_error_parts(self, error: &PlanError) -> (&'static str, Vec<(&'static str, Arg<'_>)>) {
        let count = |n: usize| Arg::Number(n as f64);
        let area = |area: &units::Area| Arg::from(self.area(*area));
        match error {
            PlanError::Unreadable { problem, .. } => {
                ("plan-wrong-unreadable", vec![("problem", problem.as_str().into())])
            }
            PlanError::ZeroLength { path, .. } if path.ends_with("polygon") || path.ends_with("walk") => {
                ("plan-wrong-same-corner", Vec::new())
            }
            PlanError::ZeroLength { typed, .. } => {
                let example = if self.imperial() { "12' 6\"" } else { "3.8 m" };
                ("plan-wrong-zero-length", vec![("typed", typed.as_str().into()), ("example", example.into())])
            }
            PlanError::TooLarge { typed, .. } => ("plan-wrong-too-large", vec![("typed", typed.as_str().into())]),
            PlanError::TooFew { path, count: given, least } => (
                match path.rsplit('.').next() {
                    Some("legs") => "plan-wrong-few-walls",
                    Some("rectangles") => "plan-wrong-few-rectangles",
                    _ => "plan-wrong-few-corners",
                },
                vec![("count", count(*given)), ("least", count(*least))],
            ),
            PlanError::TooMany { count: given, most, .. } => {
                ("plan-wrong-too-many", vec![("count", count(*given)), ("most", count(*most))])
            }
            PlanError::MissingTurn { leg, .. } => ("plan-wrong-missing-turn", vec![("leg", leg.to_string().into())]),
            PlanError::Crossing { first, second, at, .. } => {
                let (x, y) = (self.length(Length::from(at.x)), self.length(Length::from(at.y)));
                let walls = [("first", first.to_string().into()), ("second", second.to_string().into())];
                ("plan-wrong-crossing", walls.into_iter().chain([("x", x.into()), ("y", y.into())]).collect())
            }
            PlanError::NoArea { typed: Some(typed), .. } => {
                let example = if self.imperial() { "850 ft2" } else { "80 m2" };
                ("plan-wrong-no-area-typed", vec![("typed", typed.as_str().into()), ("example", example.into())])
            }
            PlanError::NoArea { typed: None, .. } => ("plan-wrong-no-area", Vec::new()),
            PlanError::MixedShapes { .. } => ("plan-wrong-mixed", Vec::new()),
            PlanError::CutOutOutside { outside, .. } => ("plan-wrong-cut-out-outside", vec![("area", area(outside))]),
            PlanError::ZoneOutside { name, outside, .. } => {
                ("plan-wrong-zone-outside", vec![("name", name.as_str().into()), ("area", area(outside))])
            }
            PlanError::ZonesOverlap { name, other, overlap, .. } => {
                let args = vec![("name", name.as_str().into()), ("other", other.as_str().into())];
                ("plan-wrong-zones-overlap", args.into_iter().chain([("area", area(overlap))]).collect())
            }
            PlanError::AreasTooLarge { sum, available, .. } => {
                ("plan-wrong-areas-too-large", vec![("sum", area(sum)), ("available", area(available))])
            }
            PlanError::DuplicateZone { name, .. } => {
                ("plan-wrong-duplicate-zone", vec![("name", name.as_str().into())])
            }
            PlanError::BlankZoneName { .. } => ("plan-wrong-blank-name", Vec::new()),
            PlanError::TwoRestZones { name, other, .. } => {
                ("plan-wrong-two-rests", vec![("name", name.as_str().into()), ("other", other.as_str().into())])
            }
            PlanError::EmptyZone { name, .. } => ("plan-wrong-empty-zone", vec![("name", name.as_str().into())]),
            PlanError::WalkOpen { walk, .. } => {
                let (direction, precision) =
                    (walk.direction.unwrap_or_default(), walk.precision.unwrap_or(Precision::one_in(1.0)));
                let mut args: Vec<(&str, Arg<'_>)> = self.gap(walk, direction, precision).into();
                args.push(("allowed", self.length(walk.perimeter / walk.limit.parts()).into()));
                ("plan-wrong-walk-open", args)
            }
            PlanError::LinesWithoutShape { .. } => ("plan-wrong-lines-without-shape", Vec::new()),
            PlanError::LineOffSlab { .. } => ("plan-wrong-line-off-slab", Vec::new()),
            PlanError::TooManyLines { typed, count: lines, most, .. } => {
                let args = vec![("typed", typed.as_str().into()), ("count", count(*lines))];
                ("plan-wrong-too-many-lines", args.into_iter().chain([("most", count(*most))]).collect())
            }
            PlanError::BorderTooWide { typed, .. } => {
                ("plan-wrong-border-too-wide", vec![("typed", typed.as_str().into())])
            }
            PlanError::UnknownZone { name, known, .. } => {
                ("plan-wrong-unknown-zone", vec![("name", name.as_str().into()), ("known", self.list(known).into())])
            }
            PlanError::TurnsOpen { sum, limit, .. } => {
                let limit = rounded(limit.as_right_degrees(), ANGLE_DECIMALS);
                ("plan-wrong-turns-open", vec![("sum", self.turn(*sum).into()), ("limit", limit.into())])
            }
        }
    }
}
