//! Several photographs: two of the same place, and a row of them over days.

use jiff::Timestamp;

use crate::verdict::{Evenness, Verdict};
use crate::why::Why;

/// What two photographs of one place say together.
#[derive(Debug, Clone, PartialEq)]
pub struct Agreement {
    /// The verdict of both.
    pub verdict: Verdict,
    /// Why, where it is can't tell, and remarks.
    pub why: Vec<Why>,
}

/// Scores that differ by more than this factor do not show the same slab.
const APART: f64 = 2.0;

/// Joins two photographs of one place from different sides or hours: what moves is light, what
/// stays is in the slab. Even only if both say even, patchy only if both say patchy with scores
/// within a factor of two, else can't tell.
///
/// The photographs are not laid over each other, so that the pattern itself stays in place is not
/// checked: two pictures with two different shadows that both pass for damp would still agree.
#[must_use]
pub fn two(first: &Evenness, second: &Evenness) -> Agreement {
    let mut why = vec![Why::NotLaidOver];
    let mut verdict = if first.verdict == second.verdict { first.verdict } else { Verdict::CantTell };
    if first.verdict != second.verdict {
        why.insert(0, Why::NotTheSame);
    }
    if let (Verdict::Patchy, Some(a), Some(b)) = (verdict, first.score_de00, second.score_de00)
        && a.max(b) > APART * a.min(b)
    {
        verdict = Verdict::CantTell;
        why.insert(0, Why::ScoresApart { first: a, second: b });
    }
    if verdict == Verdict::CantTell {
        let grave = first.why.iter().chain(&second.why).filter(|reason| !reason.is_remark());
        for reason in grave {
            if !why.iter().any(|known| known.code() == reason.code()) {
                why.push(*reason);
            }
        }
    }
    Agreement { verdict, why }
}

/// One photograph of a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// When it was taken.
    pub at: Timestamp,
    /// Its score in ΔE00, where one was measured.
    pub score_de00: Option<f64>,
    /// Its verdict.
    pub verdict: Verdict,
}

/// Where a row of scores is heading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trend {
    /// Fewer than three scores, or less than a day between first and last.
    TooFew,
    /// The scores fall.
    MoreEven,
    /// Neither falls nor rises by enough to say so.
    NoChange,
    /// The scores rise.
    LessEven,
}

impl Trend {
    /// The word of records: `too_few`, `more_even`, `no_change`, `less_even`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::TooFew => "too_few",
            Self::MoreEven => "more_even",
            Self::NoChange => "no_change",
            Self::LessEven => "less_even",
        }
    }
}

/// A row of photographs as data for a chart.
#[derive(Debug, Clone, PartialEq)]
pub struct Series {
    /// The photographs, earliest first.
    pub points: Vec<Point>,
    /// Where the scores are heading.
    pub trend: Trend,
    /// Median of the slopes between all pairs, in ΔE00 a day; nothing for too few.
    pub change_per_day: Option<f64>,
}

/// Change over the whole row that counts, in ΔE00, and share of pairs that must agree in sign.
const MIN_CHANGE: f64 = 0.5;
const MIN_AGREEING: f64 = 0.75;

/// The scores over time. Only photographs whose slab was measured count: those where exposure or
/// framing already rules a verdict out carry no score that compares. The slope is the median over
/// all pairs (Theil and Sen; M), which one odd picture does not turn.
#[must_use]
pub fn series(days: &[(Timestamp, Evenness)]) -> Series {
    let mut points: Vec<Point> = days
        .iter()
        .map(|(at, evenness)| {
            let spoiled = evenness.why.iter().any(Why::spoils_score);
            Point { at: *at, score_de00: evenness.score_de00.filter(|_| !spoiled), verdict: evenness.verdict }
        })
        .collect();
    points.sort_by_key(|point| point.at);
    let scored: Vec<(f64, f64)> =
        points.iter().filter_map(|p| Some((p.at.as_second() as f64 / 86_400.0, p.score_de00?))).collect();
    let span = scored.last().zip(scored.first()).map_or(0.0, |(last, first)| last.0 - first.0);
    if scored.len() < 3 || span < 1.0 {
        return Series { points, trend: Trend::TooFew, change_per_day: None };
    }
    let mut slopes = Vec::new();
    for (i, a) in scored.iter().enumerate() {
        slopes.extend(scored[i + 1..].iter().filter(|b| b.0 > a.0).map(|b| (b.1 - a.1) / (b.0 - a.0)));
    }
    slopes.sort_by(f64::total_cmp);
    let middle = slopes.len() / 2;
    let slope = if slopes.len() % 2 == 1 { slopes[middle] } else { 0.5 * (slopes[middle - 1] + slopes[middle]) };
    let agreeing = crate::field::share(slopes.iter().filter(|s| s.signum() == slope.signum()).count(), slopes.len());
    let trend = if (slope * span).abs() < MIN_CHANGE || agreeing < MIN_AGREEING {
        Trend::NoChange
    } else if slope < 0.0 {
        Trend::MoreEven
    } else {
        Trend::LessEven
    };
    Series { points, trend, change_per_day: Some(slope) }
}
