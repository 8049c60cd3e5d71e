//! The codes that answers are made of. Their sentences are in `locales/`; a test demands one for
//! each code in each language.

macro_rules! codes {
    ($(#[$doc:meta])* $name:ident, $prefix:literal { $( $(#[$vdoc:meta])* $variant:ident = $key:literal ),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $( #[doc = concat!("`", $key, "`")] $(#[$vdoc])* $variant, )+ }

        impl $name {
            /// All, for the test of the translations.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// Key of its sentence.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $( Self::$variant => $key, )+ }
            }

            /// Its name in JSON: the key without its kind.
            #[must_use]
            pub const fn name(self) -> &'static str {
                self.key().split_at($prefix.len()).1
            }
        }
    };
}

codes! {
    /// Why a hold point stands as it does.
    Code, "why-" {
        OldSlab = "why-old-slab",
        OneColor = "why-one-color",
        OneColorButGreen = "why-one-color-but-green",
        OldEnough = "why-old-enough",
        NoPourDate = "why-no-pour-date",
        TooYoung = "why-too-young",
        ColdCure = "why-cold-cure",
        EquivalentAge = "why-equivalent-age",
        EquivalentAgeReached = "why-equivalent-age-reached",
        NoTemperatureRecord = "why-no-temperature-record",
        TemperatureGaps = "why-temperature-gaps",
        ColorPatchy = "why-color-patchy",
        ColorCantTell = "why-color-cant-tell",
        MembraneOnSlab = "why-membrane-on-slab",
        TestsLookClearAllTheSame = "why-tests-look-clear-all-the-same",
        NoFilmTest = "why-no-film-test",
        FilmOnRag = "why-film-on-rag",
        RagAgainstWater = "why-rag-against-water",
        RagChangesShine = "why-rag-changes-shine",
        FilmOnBlade = "why-film-on-blade",
        FilmOnBladeWaterStopped = "why-film-on-blade-water-stopped",
        BeadsOnPowder = "why-beads-on-powder",
        SlowOnPowder = "why-slow-on-powder",
        CleanRagNoAcidDrop = "why-clean-rag-no-acid-drop",
        CleanRagWeakFizz = "why-clean-rag-weak-fizz",
        PenetratingTreatment = "why-penetrating-treatment",
        WaterStandsNoBlade = "why-water-stands-no-blade",
        ScrapeMissing = "why-scrape-missing",
        DropMissing = "why-drop-missing",
        ShineChangeOnly = "why-shine-change-only",
        TooFewDrops = "why-too-few-drops",
        PowderWhereWaterStands = "why-powder-where-water-stands",
        WaterAndBladeAgree = "why-water-and-blade-agree",
        DensePasteNotFilm = "why-dense-paste-not-film",
        WaterStandsInPlaces = "why-water-stands-in-places",
        OlderTestsOutdated = "why-older-tests-outdated",
        TestsLapsed = "why-tests-lapsed",
        TestsWithoutPlace = "why-tests-without-place",
        TrowelBurn = "why-trowel-burn",
        NoDrops = "why-no-drops",
        FilmHidesAbsorbency = "why-film-hides-absorbency",
        Burnished = "why-burnished",
        DenseFinishNeedsCoat = "why-dense-finish-needs-coat",
        WaterStandsUnknownWhy = "why-water-stands-unknown-why",
        DrinksUnevenly = "why-drinks-unevenly",
        DrinksSomewhatUnevenly = "why-drinks-somewhat-unevenly",
        SlowPlacesTogether = "why-slow-places-together",
        SlowByZone = "why-slow-by-zone",
        SlowScattered = "why-slow-scattered",
        BothEndsApproved = "why-both-ends-approved",
        DrinksSlowly = "why-drinks-slowly",
        TooFewPlaces = "why-too-few-places",
        DrinksEvenly = "why-drinks-evenly",
        NoFizz = "why-no-fizz",
        WeakFizz = "why-weak-fizz",
        StrongFizz = "why-strong-fizz",
        PlainPortland = "why-plain-portland",
        MuchFlyAsh = "why-much-fly-ash",
        ChlorideInMix = "why-chloride-in-mix",
        OldToppingUnknown = "why-old-topping-unknown",
        ReactionUntried = "why-reaction-untried",
        PanelTookStain = "why-panel-took-stain",
        IncidentUntreated = "why-incident-untreated",
        IncidentStillThere = "why-incident-still-there",
        IncidentStopsWater = "why-incident-stops-water",
        IncidentFaint = "why-incident-faint",
        LooksClearButWaterStops = "why-looks-clear-but-water-stops",
        ClearWithoutTreatment = "why-clear-without-treatment",
        TreatedNotRetested = "why-treated-not-retested",
        TreatedLooksClearNoDrop = "why-treated-looks-clear-no-drop",
        IncidentCleared = "why-incident-cleared",
        IncidentAccepted = "why-incident-accepted",
        IncidentNotAcceptable = "why-incident-not-acceptable",
        NothingTakesItOut = "why-nothing-takes-it-out",
        CoverStillLies = "why-cover-still-lies",
        InkLayAgainstSlab = "why-ink-lay-against-slab",
        PlasticLayOnSlab = "why-plastic-lay-on-slab",
        NoSurvey = "why-no-survey",
        SurveyUnderCover = "why-survey-under-cover",
        SurveyOld = "why-survey-old",
        Surveyed = "why-surveyed",
        NoSealerChosen = "why-no-sealer-chosen",
        StillWetCuring = "why-still-wet-curing",
        MoistureTestsOutdated = "why-moisture-tests-outdated",
        MoistureTestsWetted = "why-moisture-tests-wetted",
        MoistureTestsLapsed = "why-moisture-tests-lapsed",
        MoistureTestsDisagree = "why-moisture-tests-disagree",
        MoistureTestsWeak = "why-moisture-tests-weak",
        SlabTooHumid = "why-slab-too-humid",
        EmissionTooHigh = "why-emission-too-high",
        SheetWet = "why-sheet-wet",
        SheetWetSealerTolerates = "why-sheet-wet-sealer-tolerates",
        SheetDry = "why-sheet-dry",
        SheetDarkened = "why-sheet-darkened",
        SheetTooShort = "why-sheet-too-short",
        SheetIsNotEnough = "why-sheet-is-not-enough",
        TooFewSheets = "why-too-few-sheets",
        HumidityNeedsMaker = "why-humidity-needs-maker",
        NoMoistureTest = "why-no-moisture-test",
        TooFewMoistureTests = "why-too-few-moisture-tests",
        DryEnough = "why-dry-enough",
        MonthPerInch = "why-month-per-inch",
        NoPhTest = "why-no-ph-test",
        NoPhTestAfterRinse = "why-no-ph-test-after-rinse",
        PhTestOlderThanWash = "why-ph-test-older-than-wash",
        PhTestLapsed = "why-ph-test-lapsed",
        PhTooLow = "why-ph-too-low",
        PhOutsideWindow = "why-ph-outside-window",
        TooFewPhTests = "why-too-few-ph-tests",
        PhFit = "why-ph-fit",
        DwellRuns = "why-dwell-runs",
        DwellNotNoted = "why-dwell-not-noted",
        CoatToCome = "why-coat-to-come",
        NotNeutralized = "why-not-neutralized",
        NotRinsed = "why-not-rinsed",
        RagColored = "why-rag-colored",
        RagFaint = "why-rag-faint",
        NoRag = "why-no-rag",
        AcidLeft = "why-acid-left",
        CracksNotMapped = "why-cracks-not-mapped",
        NoDefects = "why-no-defects",
        DefectsMapped = "why-defects-mapped",
        DefectAccepted = "why-defect-accepted",
        CrackMoves = "why-crack-moves",
        CrackNotMeasured = "why-crack-not-measured",
        CrackWide = "why-crack-wide",
        CrackHairline = "why-crack-hairline",
        HoleOpen = "why-hole-open",
        SpallOpen = "why-spall-open",
        PatchUntried = "why-patch-untried",
        SurfaceDusts = "why-surface-dusts",
        RepairedOwnerTold = "why-repaired-owner-told",
        RepairedOwnerNotTold = "why-repaired-owner-not-told",
        RepairTakesNoStain = "why-repair-takes-no-stain",
        NoPanel = "why-no-panel",
        PanelsBare = "why-panels-bare",
        NoChoiceYet = "why-no-choice-yet",
        PanelOriginUnknown = "why-panel-origin-unknown",
        PanelFinishUnknown = "why-panel-finish-unknown",
        PanelMixUnknown = "why-panel-mix-unknown",
        PanelOtherFinish = "why-panel-other-finish",
        PanelOtherMix = "why-panel-other-mix",
        PanelOtherZone = "why-panel-other-zone",
        FloorChangedSincePanel = "why-floor-changed-since-panel",
        ApprovedBeforeStained = "why-approved-before-stained",
        StainedAgainSinceApproval = "why-stained-again-since-approval",
        PartWithoutPanel = "why-part-without-panel",
        ChoiceWithdrawn = "why-choice-withdrawn",
        PanelApproved = "why-panel-approved",
        ApprovedUnsealed = "why-approved-unsealed",
        SiteNotChecked = "why-site-not-checked",
        SitePartlyChecked = "why-site-partly-checked",
        SiteLacks = "why-site-lacks",
        SiteCheckOld = "why-site-check-old",
        SiteCheckNotToday = "why-site-check-not-today",
        SiteReady = "why-site-ready",
        SiteAgainOnTheDay = "why-site-again-on-the-day",
        NoFreshAirReading = "why-no-fresh-air-reading",
        NoSurfaceTemperature = "why-no-surface-temperature",
        NoHumidityReading = "why-no-humidity-reading",
        SurfaceTooCold = "why-surface-too-cold",
        SurfaceTooHot = "why-surface-too-hot",
        SurfaceMarginal = "why-surface-marginal",
        SurfaceFit = "why-surface-fit",
        AirTooHumid = "why-air-too-humid",
        NearDewPoint = "why-near-dew-point",
        DewPointMarginal = "why-dew-point-marginal",
        AboveDewPoint = "why-above-dew-point",
        Rain = "why-rain",
        WindTooStrong = "why-wind-too-strong",
        WindNoSpraying = "why-wind-no-spraying",
        ReleasedByPerson = "why-released-by-person",
        ReleaseLapsed = "why-release-lapsed",
        NobodyMayReleaseSite = "why-nobody-may-release-site",
        NobodyMayReleaseAir = "why-nobody-may-release-air",
        WordDoesNotSettle = "why-word-does-not-settle",
        ClosedByStain = "why-closed-by-stain",
    }
}

codes! {
    /// What to do next. Minutes and waiting hours of each are in `trade/next_actions.toml`.
    Action, "do-" {
        NotePour = "do-note-pour",
        WaitForAge = "do-wait-for-age",
        LookForOneColor = "do-look-for-one-color",
        DropAndScrape = "do-drop-and-scrape",
        RepeatDropAndScrape = "do-repeat-drop-and-scrape",
        Scrape = "do-scrape",
        WaterDrops = "do-water-drops",
        MoreDrops = "do-more-drops",
        ScrapeWhereWaterStands = "do-scrape-where-water-stands",
        AcidDrop = "do-acid-drop",
        AskAboutConcrete = "do-ask-about-concrete",
        TryThisConcrete = "do-try-this-concrete",
        SolventWipe = "do-solvent-wipe",
        StripAndRetest = "do-strip-and-retest",
        ScreenAndRetest = "do-screen-and-retest",
        ScreenPlace = "do-screen-place",
        MixByZone = "do-mix-by-zone",
        MockUpBothEnds = "do-mock-up-both-ends",
        TryOnPanelOrScreen = "do-try-on-panel-or-screen",
        MistAndLook = "do-mist-and-look",
        LiftMistAndLook = "do-lift-mist-and-look",
        TreatAndRetest = "do-treat-and-retest",
        RetestSpot = "do-retest-spot",
        AskOwnerToAccept = "do-ask-owner-to-accept",
        ChooseSealer = "do-choose-sealer",
        EndWetCure = "do-end-wet-cure",
        SetProbes = "do-set-probes",
        LaySheet = "do-lay-sheet",
        MeasureMoistureAgain = "do-measure-moisture-again",
        DryAndMeasureAgain = "do-dry-and-measure-again",
        AskSealerMaker = "do-ask-sealer-maker",
        TestPh = "do-test-ph",
        MockUpOrGrind = "do-mock-up-or-grind",
        WaitDwell = "do-wait-dwell",
        LayCoat = "do-lay-coat",
        NeutralizeAndRinse = "do-neutralize-and-rinse",
        MapCracks = "do-map-cracks",
        MeasureCrack = "do-measure-crack",
        RepairOrAccept = "do-repair-or-accept",
        AskEngineer = "do-ask-engineer",
        TryStainOnPatch = "do-try-stain-on-patch",
        MakePanel = "do-make-panel",
        StainPanels = "do-stain-panels",
        NotePanel = "do-note-panel",
        SealPanelAndShow = "do-seal-panel-and-show",
        GetApproval = "do-get-approval",
        SetUpSite = "do-set-up-site",
        CheckSiteAgain = "do-check-site-again",
        ReadAir = "do-read-air",
        WaitForAir = "do-wait-for-air",
        AgreeProbePlace = "do-agree-probe-place",
        LaySealerCoat = "do-lay-sealer-coat",
        KeepOff = "do-keep-off",
    }
}

impl Action {
    /// The action of a name in the trade facts.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|action| action.name() == name)
    }

    /// Whether it opens or takes off the surface, so that tests made on it before no longer count.
    #[must_use]
    pub const fn changes_surface(self) -> bool {
        matches!(
            self,
            Self::StripAndRetest
                | Self::ScreenAndRetest
                | Self::ScreenPlace
                | Self::TryOnPanelOrScreen
                | Self::MockUpOrGrind
        )
    }
}
