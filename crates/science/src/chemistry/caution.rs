//! Cautions as codes; the sentences live with the translations.

/// Something that must be said beside an answer. None of them replaces the safety data sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Caution {
    /// Pour acid into water, never water into acid: it boils and spits.
    AcidIntoWater,
    /// Never bleach with acid (chlorine) nor with ammonia (chloramine).
    NeverBleach,
    /// Carbon dioxide foams over and bursts closed drums; leave the lid loose, air the room.
    CarbonDioxideBurstsClosedDrums,
    /// Bicarbonate limits itself near pH 8.3.
    BicarbonateSelfLimits,
    /// Carbonate overshoots to about pH 11.
    CarbonateOvershoots,
    /// Ammonia overshoots to about pH 11, and its vapor hurts.
    AmmoniaOvershoots,
    /// A strong base overshoots beyond pH 12, heats the mix and burns skin and eyes.
    StrongBaseOvershoots,
    /// Phosphate is often not allowed in waste water; ask first.
    PhosphateInWasteWater,
    /// Add in small steps and test each time; the amount is a guide.
    TestInSmallSteps,
    /// Neutral is not free of metals: stain waste still holds copper, chromium, iron, manganese or cobalt.
    NeutralizNotMetalFree,
    /// Adding water makes acid weaker, not neutral.
    DilutionIsNotNeutralization,
    /// Ask the sewer authority or the waste contractor before anything leaves the site.
    AskBeforeDischarge,
    /// The product's safety data sheet governs.
    SafetyDataSheet,
}
