//! Fills of strokes and dots, told apart without color.

/// A fill.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Hatch {
    /// Where there is no slab: close cement strokes, rising.
    Cut,
    /// Something on the slab: iron strokes, falling.
    Trouble,
    /// The same, dealt with: few dots.
    Settled,
    /// The likely span of a forecast: fine rising strokes.
    Likely,
    /// A stretch of work: upright dashes.
    Section,
    /// Above an alarm: crossed strokes.
    Above,
    /// Slow to drink: wide falling strokes.
    Slow,
    /// Water stands: close crossed strokes.
    Stands,
    /// Not tested: plus signs, far apart.
    Untested,
    /// A film: double waves.
    Film,
    /// Laid over a class that is not sure: fine dots.
    Unsure,
    /// A finish, by the order in which finishes come; quiet, so that marks stay readable on it.
    Finish(usize),
}

/// How many finishes have a hatch of their own; further ones begin again.
pub(crate) const FINISHES: usize = 6;

impl Hatch {
    /// Each of them once.
    pub(crate) fn all() -> impl Iterator<Item = Self> {
        let single = [
            Self::Cut,
            Self::Trouble,
            Self::Settled,
            Self::Likely,
            Self::Section,
            Self::Above,
            Self::Slow,
            Self::Stands,
            Self::Untested,
            Self::Film,
            Self::Unsure,
        ];
        single.into_iter().chain((0..FINISHES).map(Self::Finish))
    }

    /// What its id ends with.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Cut => "cut",
            Self::Trouble => "trouble",
            Self::Settled => "settled",
            Self::Likely => "likely",
            Self::Section => "section",
            Self::Above => "above",
            Self::Slow => "slow",
            Self::Stands => "stands",
            Self::Untested => "untested",
            Self::Film => "film",
            Self::Unsure => "unsure",
            Self::Finish(at) => match at % FINISHES {
                0 => "finish-1",
                1 => "finish-2",
                2 => "finish-3",
                3 => "finish-4",
                4 => "finish-5",
                _ => "finish-6",
            },
        }
    }

    /// Side of the tile, turn in degrees, and what is in it.
    pub(crate) const fn tile(self) -> (f64, f64, &'static str) {
        match self {
            Self::Cut => (4.0, 45.0, r##"<path class="p-line" d="M2 0 L2 4" stroke="#6f6c66" stroke-width="1.2"/>"##),
            Self::Trouble => {
                (5.0, -45.0, r##"<path class="p-accent" d="M2.5 0 L2.5 5" stroke="#7a3b1c" stroke-width="1.3"/>"##)
            }
            Self::Settled => (6.0, 45.0, r##"<circle class="p-accent-fill" cx="3" cy="3" r="0.8" fill="#7a3b1c"/>"##),
            Self::Likely => {
                (5.0, 45.0, r##"<path class="p-line" d="M2.5 0 L2.5 5" stroke="#6f6c66" stroke-width="1"/>"##)
            }
            Self::Section => {
                (7.0, 0.0, r##"<path class="p-line" d="M3.5 1 L3.5 4" stroke="#6f6c66" stroke-width="0.9"/>"##)
            }
            Self::Above => {
                (4.0, 45.0, r##"<path class="p-accent" d="M2 0 L2 4 M0 2 L4 2" stroke="#7a3b1c" stroke-width="1.1"/>"##)
            }
            Self::Slow => {
                (10.0, -45.0, r##"<path class="p-line" d="M5 0 L5 10" stroke="#6f6c66" stroke-width="1.1"/>"##)
            }
            Self::Stands => {
                (6.0, 45.0, r##"<path class="p-line" d="M3 0 L3 6 M0 3 L6 3" stroke="#6f6c66" stroke-width="0.9"/>"##)
            }
            Self::Untested => (
                15.0,
                0.0,
                r##"<path class="p-line" d="M7.5 5 L7.5 10 M5 7.5 L10 7.5" stroke="#6f6c66" stroke-width="0.9"/>"##,
            ),
            Self::Film => (
                12.0,
                0.0,
                r##"<path class="p-line" d="M0 4 Q3 1 6 4 Q9 7 12 4 M0 7 Q3 4 6 7 Q9 10 12 7" fill="none" stroke="#6f6c66" stroke-width="0.9"/>"##,
            ),
            Self::Unsure => (3.5, 45.0, r##"<circle class="p-ink" cx="1.75" cy="1.75" r="0.55" fill="#1f1d1a"/>"##),
            Self::Finish(at) => finish(at % FINISHES),
        }
    }
}

const fn finish(at: usize) -> (f64, f64, &'static str) {
    match at {
        0 => (9.0, 0.0, r##"<path class="p-line" d="M0 4.5 L9 4.5" stroke="#6f6c66" stroke-width="0.6"/>"##),
        1 => (9.0, 0.0, r##"<path class="p-line" d="M4.5 1 L4.5 6" stroke="#6f6c66" stroke-width="0.8"/>"##),
        2 => (
            10.0,
            45.0,
            r##"<circle class="p-line" cx="5" cy="5" r="1.7" fill="none" stroke="#6f6c66" stroke-width="0.7"/>"##,
        ),
        3 => (
            11.0,
            0.0,
            r##"<path class="p-line" d="M3 7 L5.5 4 L8 7" fill="none" stroke="#6f6c66" stroke-width="0.8"/>"##,
        ),
        4 => (8.0, 45.0, r##"<path class="p-line" d="M4 0 L4 8" stroke="#6f6c66" stroke-width="0.5"/>"##),
        _ => (9.0, 45.0, r##"<path class="p-line" d="M3 4.5 L6 4.5" stroke="#6f6c66" stroke-width="1.2"/>"##),
    }
}
