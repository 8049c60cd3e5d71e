//! What must be said beside an answer. The sentences are in `locales/*/sums.ftl`.

use science::chemistry::Caution as Chemical;

/// A caution by its code.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Caution {
    /// One that the chemistry itself gives.
    Chemical(Chemical),
    OneReading,
    MakersSheetGoverns,
    WetBulbNearFreezing,
    EvaporationBand,
    WindNearSlab,
    WindAtStation,
    WetSurfaceOnly,
    TypicalYear,
    ConstantsOfCement,
    AgeReleasesNothing,
    AirForSlab,
    GapsWiden,
    ForecastNeverReleases,
    PriorNeedsReadings,
    PublishedTrendBackwards,
    SeesTopOnly,
    NotTheStandardTest,
    AbsorptionNotCounted,
    NotForAcidOrSpray,
    ExplosiveIsNotHealthy,
    RespiratorByCompetentPerson,
    VaporLiesLow,
    NoIgnition,
    GravityFromMemory,
    WetConcreteBurns,
    CastPanelsAlongside,
    SilicaDust,
    DrawingsGovern,
    SayWhichRatio,
    NoBetterThanThePhoto,
}

impl Caution {
    /// Its code.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Chemical(caution) => chemical(caution),
            Self::OneReading => "one-reading",
            Self::MakersSheetGoverns => "makers-sheet-governs",
            Self::WetBulbNearFreezing => "wet-bulb-near-freezing",
            Self::EvaporationBand => "evaporation-band",
            Self::WindNearSlab => "wind-near-slab",
            Self::WindAtStation => "wind-at-station",
            Self::WetSurfaceOnly => "wet-surface-only",
            Self::TypicalYear => "typical-year",
            Self::ConstantsOfCement => "constants-of-cement",
            Self::AgeReleasesNothing => "age-releases-nothing",
            Self::AirForSlab => "air-for-slab",
            Self::GapsWiden => "gaps-widen",
            Self::ForecastNeverReleases => "forecast-never-releases",
            Self::PriorNeedsReadings => "prior-needs-readings",
            Self::PublishedTrendBackwards => "published-trend-backwards",
            Self::SeesTopOnly => "sees-top-only",
            Self::NotTheStandardTest => "not-the-standard-test",
            Self::AbsorptionNotCounted => "absorption-not-counted",
            Self::NotForAcidOrSpray => "not-for-acid-or-spray",
            Self::ExplosiveIsNotHealthy => "explosive-is-not-healthy",
            Self::RespiratorByCompetentPerson => "respirator-by-competent-person",
            Self::VaporLiesLow => "vapor-lies-low",
            Self::NoIgnition => "no-ignition",
            Self::GravityFromMemory => "gravity-from-memory",
            Self::WetConcreteBurns => "wet-concrete-burns",
            Self::CastPanelsAlongside => "cast-panels-alongside",
            Self::SilicaDust => "silica-dust",
            Self::DrawingsGovern => "drawings-govern",
            Self::SayWhichRatio => "say-which-ratio",
            Self::NoBetterThanThePhoto => "no-better-than-the-photo",
        }
    }

    /// The key of its sentence.
    pub(crate) fn key(self) -> String {
        format!("caution-{}", self.name())
    }
}

const fn chemical(caution: Chemical) -> &'static str {
    match caution {
        Chemical::AcidIntoWater => "acid-into-water",
        Chemical::NeverBleach => "never-bleach",
        Chemical::CarbonDioxideBurstsClosedDrums => "carbon-dioxide-bursts-closed-drums",
        Chemical::BicarbonateSelfLimits => "bicarbonate-self-limits",
        Chemical::CarbonateOvershoots => "carbonate-overshoots",
        Chemical::AmmoniaOvershoots => "ammonia-overshoots",
        Chemical::StrongBaseOvershoots => "strong-base-overshoots",
        Chemical::PhosphateInWasteWater => "phosphate-in-waste-water",
        Chemical::TestInSmallSteps => "test-in-small-steps",
        Chemical::NeutralizNotMetalFree => "neutral-is-not-metal-free",
        Chemical::DilutionIsNotNeutralization => "dilution-is-not-neutralization",
        Chemical::AskBeforeDischarge => "ask-before-discharge",
        Chemical::SafetyDataSheet => "safety-data-sheet",
    }
}
