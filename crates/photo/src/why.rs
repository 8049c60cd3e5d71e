//! The reasons beside a verdict, as codes with numbers; the words live with the translations.

/// A reason, or a remark, beside a verdict. Shares are 0 to 1; steps and ranges of light are in ln.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Why {
    /// The picture has too few pixels on its shorter side.
    TooSmall {
        /// Width, in pixels.
        width: u32,
        /// Height, in pixels.
        height: u32,
        /// The least that is accepted.
        least: u32,
    },
    /// The picture holds no color at all: red, green and blue are the same everywhere.
    NoColor,
    /// Too much is over- or underexposed.
    Clipped {
        /// Share, 0 to 1.
        share: f64,
        /// The most that is accepted.
        most: f64,
    },
    /// The picture is too dark: median green, as a byte.
    Dark {
        /// Median green light, 0 to 1.
        median: f64,
        /// The least that is accepted.
        least: f64,
    },
    /// Too little of the picture is slab that can be measured.
    LittleSlab {
        /// Share, 0 to 1.
        share: f64,
        /// The least that is accepted.
        least: f64,
    },
    /// The light falls off too much across the picture.
    UnevenLight {
        /// Range of the smooth light, in ln.
        range: f64,
        /// The most that is accepted.
        most: f64,
    },
    /// A hard straight edge, as of a cast shadow.
    HardEdge {
        /// How many.
        count: usize,
        /// Largest step in ln Y.
        step: f64,
    },
    /// Straight joints were left out (a remark).
    Joints {
        /// How many.
        count: usize,
    },
    /// The dark part is as neutral or blue as shade makes it.
    CouldBeShade {
        /// Warmth of the dark part, as in [`crate::Evenness::warmth`].
        warmth: f64,
        /// The least that is accepted.
        least: f64,
    },
    /// The bright part fades out from a peak, as glare does.
    CouldBeGlare {
        /// Slope across its rim for one cell, over its height.
        steepness: f64,
        /// The least that is accepted.
        least: f64,
    },
    /// The pattern is one of color more than of lightness, as light of another color makes it.
    CouldBeColoredLight {
        /// Warmth of the dark part, as in [`crate::Evenness::warmth`].
        warmth: f64,
    },
    /// Something lies or stands in the picture that is no slab.
    Things {
        /// Share, 0 to 1.
        share: f64,
    },
    /// Only small marks, such as footprints, stand out.
    SmallMarks {
        /// How many.
        count: usize,
        /// Share, 0 to 1.
        share: f64,
    },
    /// The colors spread like natural mottle, not in two classes.
    Mottle {
        /// Variance between the classes over all variance, 0 to 1.
        parted: f64,
        /// The least that is accepted.
        least: f64,
    },
    /// There are two classes of color, though they lie close together.
    FaintPattern {
        /// ΔE00 between the classes.
        class_de00: f64,
        /// Share, 0 to 1.
        share: f64,
    },
    /// A wide, weak pattern is left that the smooth light does not explain.
    LargePattern {
        /// Its 95th percentile, in ln.
        rise: f64,
        /// The most that is accepted.
        most: f64,
    },
    /// The picture is blurred.
    Blurred {
        /// Steps one unit apart over steps eight apart.
        sharpness: f64,
        /// The least that is accepted.
        least: f64,
    },
    /// The picture is compressed so much that its blocks show.
    Compressed {
        /// Steps across the blocks over other steps.
        blockiness: f64,
        /// The most that is accepted.
        most: f64,
    },
    /// Parts of the picture are without any detail, as a damaged or edited file has them.
    Blank {
        /// Share, 0 to 1.
        share: f64,
        /// The most that is accepted.
        most: f64,
    },
    /// The smooth light itself is warmer where it is dark, as a slowly drying slab is.
    SmoothDamp {
        /// Warmth of the dark part, as in [`crate::Evenness::warmth`].
        warmth: f64,
        /// Range of the smooth light, in ln.
        range: f64,
    },
    /// The score lies between the limits of even and patchy.
    Between {
        /// The score, in ΔE00.
        score_de00: f64,
    },
    /// No card: only differences mean anything (a remark).
    NoCard,
    /// The card given is clipped, not uniform, outside the picture, or tiny; it was not used.
    BadCard,
    /// The card says that the light is strongly colored: its strongest channel over its weakest.
    ColoredLight {
        /// Strongest channel over weakest.
        ratio: f64,
        /// The most that is accepted.
        most: f64,
    },
    /// The two photographs do not say the same.
    NotTheSame,
    /// The two scores lie too far apart to show the same slab.
    ScoresApart {
        /// Score of the first, in ΔE00.
        first: f64,
        /// Score of the second, in ΔE00.
        second: f64,
    },
    /// Two photographs cannot be laid over each other here: only their verdicts, scores and shares
    /// are compared (a remark).
    NotLaidOver,
}

impl Why {
    /// Every code there is, for the check that each has its words.
    pub const KEYS: [&str; 27] = [
        "photo-why-too_small",
        "photo-why-no_color",
        "photo-why-clipped",
        "photo-why-dark",
        "photo-why-little_slab",
        "photo-why-uneven_light",
        "photo-why-hard_edge",
        "photo-why-joints",
        "photo-why-could_be_shade",
        "photo-why-could_be_glare",
        "photo-why-could_be_colored_light",
        "photo-why-things",
        "photo-why-small_marks",
        "photo-why-mottle",
        "photo-why-faint_pattern",
        "photo-why-blurred",
        "photo-why-compressed",
        "photo-why-blank",
        "photo-why-smooth_damp",
        "photo-why-between",
        "photo-why-no_card",
        "photo-why-bad_card",
        "photo-why-colored_light",
        "photo-why-not_the_same",
        "photo-why-scores_apart",
        "photo-why-not_laid_over",
        "photo-why-large_pattern",
    ];

    /// Key of its sentence.
    #[must_use]
    pub fn key(&self) -> &'static str {
        Self::KEYS[self.place()]
    }

    /// The code, as in records: the key without its kind.
    #[must_use]
    pub fn code(&self) -> &'static str {
        &self.key()["photo-why-".len()..]
    }

    fn place(&self) -> usize {
        match self {
            Self::TooSmall { .. } => 0,
            Self::NoColor => 1,
            Self::Clipped { .. } => 2,
            Self::Dark { .. } => 3,
            Self::LittleSlab { .. } => 4,
            Self::UnevenLight { .. } => 5,
            Self::HardEdge { .. } => 6,
            Self::Joints { .. } => 7,
            Self::CouldBeShade { .. } => 8,
            Self::CouldBeGlare { .. } => 9,
            Self::CouldBeColoredLight { .. } => 10,
            Self::Things { .. } => 11,
            Self::SmallMarks { .. } => 12,
            Self::Mottle { .. } => 13,
            Self::FaintPattern { .. } => 14,
            Self::Blurred { .. } => 15,
            Self::Compressed { .. } => 16,
            Self::Blank { .. } => 17,
            Self::SmoothDamp { .. } => 18,
            Self::Between { .. } => 19,
            Self::NoCard => 20,
            Self::BadCard => 21,
            Self::ColoredLight { .. } => 22,
            Self::NotTheSame => 23,
            Self::ScoresApart { .. } => 24,
            Self::NotLaidOver => 25,
            Self::LargePattern { .. } => 26,
        }
    }

    /// The numbers of the reason by name, as the words ask for them.
    #[must_use]
    pub fn values(&self) -> Vec<(&'static str, f64)> {
        #[expect(clippy::cast_precision_loss, reason = "small counts")]
        let number = |count: usize| count as f64;
        match *self {
            Self::TooSmall { width, height, least } => {
                vec![("width", width.into()), ("height", height.into()), ("least", least.into())]
            }
            Self::Clipped { share, most } | Self::Blank { share, most } => vec![("share", share), ("most", most)],
            Self::Dark { median, least } => vec![("median", median), ("least", least)],
            Self::LittleSlab { share, least } => vec![("share", share), ("least", least)],
            Self::UnevenLight { range, most } => vec![("range", range), ("most", most)],
            Self::HardEdge { count, step } => vec![("count", number(count)), ("step", step)],
            Self::Joints { count } => vec![("count", number(count))],
            Self::CouldBeShade { warmth, least } => vec![("warmth", warmth), ("least", least)],
            Self::CouldBeGlare { steepness, least } => vec![("steepness", steepness), ("least", least)],
            Self::CouldBeColoredLight { warmth } => vec![("warmth", warmth)],
            Self::Things { share } => vec![("share", share)],
            Self::SmallMarks { count, share } => vec![("count", number(count)), ("share", share)],
            Self::Mottle { parted, least } => vec![("parted", parted), ("least", least)],
            Self::FaintPattern { class_de00, share } => vec![("class_de00", class_de00), ("share", share)],
            Self::LargePattern { rise, most } => vec![("rise", rise), ("most", most)],
            Self::Blurred { sharpness, least } => vec![("sharpness", sharpness), ("least", least)],
            Self::Compressed { blockiness, most } => vec![("blockiness", blockiness), ("most", most)],
            Self::SmoothDamp { warmth, range } => vec![("warmth", warmth), ("range", range)],
            Self::Between { score_de00 } => vec![("score_de00", score_de00)],
            Self::ColoredLight { ratio, most } => vec![("ratio", ratio), ("most", most)],
            Self::ScoresApart { first, second } => vec![("first", first), ("second", second)],
            Self::NoColor | Self::NoCard | Self::BadCard | Self::NotTheSame | Self::NotLaidOver => Vec::new(),
        }
    }

    /// Whether it is a remark that keeps no verdict from being given.
    #[must_use]
    pub fn is_remark(&self) -> bool {
        matches!(self, Self::Joints { .. } | Self::NoCard | Self::BadCard | Self::NotLaidOver)
    }

    /// Whether the score beside it does not compare with those of other photographs.
    #[must_use]
    pub fn spoils_score(&self) -> bool {
        matches!(
            self,
            Self::TooSmall { .. }
                | Self::NoColor
                | Self::Clipped { .. }
                | Self::Dark { .. }
                | Self::LittleSlab { .. }
                | Self::UnevenLight { .. }
                | Self::Blank { .. }
                | Self::Compressed { .. }
                | Self::ColoredLight { .. }
                | Self::CouldBeShade { .. }
                | Self::CouldBeGlare { .. }
                | Self::CouldBeColoredLight { .. }
        )
    }

    /// Whether a second photograph, from another side or hour, may settle it.
    #[must_use]
    pub fn asks_for_second(&self) -> bool {
        matches!(
            self,
            Self::HardEdge { .. }
                | Self::CouldBeShade { .. }
                | Self::CouldBeGlare { .. }
                | Self::CouldBeColoredLight { .. }
                | Self::SmoothDamp { .. }
                | Self::FaintPattern { .. }
                | Self::LargePattern { .. }
                | Self::UnevenLight { .. }
        )
    }
}
