//! What an entry says: one struct for each kind, in trade words.
//!
//! Every quantity keeps what was typed (`units::AsWritten`). Unknown fields are refused, since a
//! mistyped field name would lose evidence in silence; a body written by a newer version of the
//! program is kept byte for byte instead.

mod color;
mod job;
mod making;
mod money;
mod testing;
mod trouble;
mod work;

use serde_json::Value;
use serde_json::value::RawValue;

pub use color::{ChoiceApproved, PanelMade, PanelPhotographed, PanelStained, PanelState, StainShare};
pub use job::{Exposure, HoldReleased, JobOpened, LimitSet, Note, SealerChosen, SiteCheck, SlabAge};
pub use making::{Cured, Curing, CuringMethod, Finish, Pour};
pub use money::{PaymentTerms, TimeCost};
pub use testing::{
    AcidDrop, AirReading, AirSeries, ColorLook, EmissionDish, Evenness, Fizz, PhMoment, PictureBox, PictureBoxError,
    PlasticSheet, RagResult, ReferenceCard, Scrape, ScrapeResult, SheetResult, SlabHumidity, SlabPhotograph,
    SolventWipe, SurfacePh, Temperature, WaterDrop, WipeResult,
};
pub use trouble::{
    Accepted, Cleaning, CleaningMethod, Cover, CoverAction, CoverMaterial, Defect, DefectKind, Incident, PrintedSide,
    Repair, RepairMaterial, Retest, RetestResult, Survey,
};
pub use work::{BatchMixed, CoatLaid, Delivery, Neutralized, Neutralizer, Rinsed, SealerCoat, WasteCollected};

use super::entry::SCHEMA;

/// One kind of body, so that a fold can ask for all entries of a kind by type.
pub trait BodyKind: Sized {
    /// Its name in the diary.
    const KIND: &'static str;
    /// The body, when it is of this kind.
    fn of(body: &Body) -> Option<&Self>;
}

/// A body that this program does not know, kept byte for byte.
#[derive(Debug, Clone)]
pub struct UnknownBody {
    /// The kind it names.
    pub kind: String,
    /// Its JSON text as it came.
    pub raw: Box<RawValue>,
}

impl PartialEq for UnknownBody {
    fn eq(&self, other: &Self) -> bool {
        self.raw.get() == other.raw.get()
    }
}

/// A body that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BodyError {
    /// It is no JSON object with a `kind`.
    #[error("body: {0}; accepted: an object with \"kind\" and that kind's fields")]
    NoKind(String),
    /// The kind is unknown in the form this program writes.
    #[error("body.kind \"{kind}\" is not known; accepted: {}", Body::KINDS.join(", "))]
    UnknownKind {
        /// The kind it names.
        kind: String,
    },
    /// A field is missing, unknown or wrong.
    #[error("{kind}.{field}: {problem}")]
    Field {
        /// The body's kind.
        kind: &'static str,
        /// The field, with its path.
        field: String,
        /// What was wrong and what would be accepted.
        problem: String,
    },
}

macro_rules! bodies {
    ($( $(#[$doc:meta])* $variant:ident = $kind:literal ),+ $(,)?) => {
        /// What an entry says.
        #[derive(Debug, Clone, PartialEq)]
        pub enum Body {
            $( $(#[$doc])* $variant(Box<$variant>), )+
            /// Of a kind or form that a newer version wrote; kept as it came.
            Unknown(UnknownBody),
        }

        impl Body {
            /// Every kind this program knows, in the order of the job.
            pub const KINDS: &'static [&'static str] = &[$($kind),+];

            /// The kind's name as written in the diary.
            #[must_use]
            pub fn kind(&self) -> &str {
                match self {
                    $( Self::$variant(_) => $kind, )+
                    Self::Unknown(unknown) => &unknown.kind,
                }
            }

            fn read_known(kind: &str, fields: Value) -> Result<Option<Self>, BodyError> {
                match kind {
                    $( $kind => read_fields::<$variant>($kind, fields).map(|b| Some(Self::$variant(Box::new(b)))), )+
                    _ => Ok(None),
                }
            }

            fn fields(&self) -> Result<Value, serde_json::Error> {
                match self {
                    $( Self::$variant(body) => serde_json::to_value(body), )+
                    Self::Unknown(unknown) => serde_json::from_str(unknown.raw.get()),
                }
            }
        }

        $( impl BodyKind for $variant {
            const KIND: &'static str = $kind;
            fn of(body: &Body) -> Option<&Self> {
                if let Body::$variant(inner) = body { Some(inner) } else { None }
            }
        } )+

        $( impl From<$variant> for Body {
            fn from(body: $variant) -> Self { Self::$variant(Box::new(body)) }
        } )+
    };
}

bodies! {
    /// A job begins.
    JobOpened = "job_opened",
    /// The plan of the slab.
    Plan = "plan",
    /// Concrete was placed.
    Pour = "pour",
    /// The surface was finished.
    Finish = "finish",
    /// Curing began.
    Curing = "curing",
    /// Curing ended.
    Cured = "cured",
    /// One reading of the air.
    AirReading = "air_reading",
    /// A series of readings from a weather file or a logger.
    AirSeries = "air_series",
    /// Slab or air temperature.
    Temperature = "temperature",
    /// A photograph of the slab.
    SlabPhotograph = "slab_photograph",
    /// The color judged by eye.
    ColorLook = "color_look",
    /// The mist-and-look round.
    Survey = "survey",
    /// Seconds for a water drop to soak in.
    WaterDrop = "water_drop",
    /// What a blade lifts.
    Scrape = "scrape",
    /// What a solvent rag lifts.
    SolventWipe = "solvent_wipe",
    /// Does the surface fizz under a drop of dilute acid.
    AcidDrop = "acid_drop",
    /// Surface pH.
    SurfacePh = "surface_ph",
    /// Relative humidity in the slab.
    SlabHumidity = "slab_humidity",
    /// Moisture emission by a dish.
    EmissionDish = "emission_dish",
    /// Moisture under a taped sheet.
    PlasticSheet = "plastic_sheet",
    /// Something happened to the slab.
    Incident = "incident",
    /// A cover was laid or lifted.
    Cover = "cover",
    /// The surface was cleaned, stripped, washed or abraded.
    Cleaning = "cleaning",
    /// The spot of an incident was looked at again.
    Retest = "retest",
    /// A crack, hole or patch was found.
    Defect = "defect",
    /// It was repaired.
    Repair = "repair",
    /// An incident or defect was accepted as it is.
    Accepted = "accepted",
    /// A sample panel was made.
    PanelMade = "panel_made",
    /// A panel was stained.
    PanelStained = "panel_stained",
    /// A panel was photographed.
    PanelPhotographed = "panel_photographed",
    /// The client chose.
    ChoiceApproved = "choice_approved",
    /// The sealer was chosen.
    SealerChosen = "sealer_chosen",
    /// Material arrived.
    Delivery = "delivery",
    /// The site is set up.
    SiteCheck = "site_check",
    /// A batch was mixed.
    BatchMixed = "batch_mixed",
    /// A coat of stain was laid.
    CoatLaid = "coat_laid",
    /// The floor was neutralized.
    Neutralized = "neutralized",
    /// The floor was rinsed.
    Rinsed = "rinsed",
    /// Waste was collected.
    WasteCollected = "waste_collected",
    /// A coat of sealer was laid.
    SealerCoat = "sealer_coat",
    /// Hours and money spent.
    TimeCost = "time_cost",
    /// What was agreed on payment.
    PaymentTerms = "payment_terms",
    /// A person released a hold point.
    HoldReleased = "hold_released",
    /// A trade figure was replaced for this slab.
    LimitSet = "limit_set",
    /// A free note.
    Note = "note",
}

/// The plan as drawn; the plan module knows what it means.
pub type Plan = slab_plan::PlanSpec;

fn read_fields<T: serde::de::DeserializeOwned>(kind: &'static str, fields: Value) -> Result<T, BodyError> {
    serde_path_to_error::deserialize(fields).map_err(|e| {
        let path = e.path().to_string();
        let problem = e.inner().to_string();
        // A missing or unknown field is named in the message, not in the path.
        let field = if path == "." { problem.split('`').nth(1).unwrap_or("body").to_owned() } else { path.clone() };
        let problem = match path.as_str() {
            "." if problem.starts_with("missing field") => {
                format!("{problem}; accepted: {kind} with its {field}, as docs/diary.md shows it")
            }
            _ => problem,
        };
        BodyError::Field { kind, field, problem }
    })
}

impl Body {
    /// Reads a body from its JSON text, written in the given schema version.
    ///
    /// # Errors
    /// [`BodyError`] naming kind, field and what would be accepted. In a schema newer than ours
    /// nothing is an error: what we can't read is kept.
    pub fn read(raw: &RawValue, schema: u32) -> Result<Self, BodyError> {
        let value: Value = serde_json::from_str(raw.get()).map_err(|e| BodyError::NoKind(e.to_string()))?;
        let Value::Object(mut fields) = value else {
            return Err(BodyError::NoKind("it is not an object".to_owned()));
        };
        let kind = match fields.shift_remove("kind") {
            Some(Value::String(kind)) => kind,
            Some(other) => return Err(BodyError::NoKind(format!("\"kind\" is {other}, not a text"))),
            None => return Err(BodyError::NoKind("\"kind\" is missing".to_owned())),
        };
        let known = Self::read_known(&kind, Value::Object(fields));
        let newer = schema > SCHEMA;
        match known {
            Ok(Some(body)) => Ok(body),
            Ok(None) | Err(_) if newer => Ok(Self::Unknown(UnknownBody { kind, raw: raw.to_owned() })),
            Ok(None) => Err(BodyError::UnknownKind { kind }),
            Err(error) => Err(error),
        }
    }

    /// Its JSON text, `kind` first. An unknown body comes back byte for byte.
    #[must_use]
    pub fn to_raw(&self) -> Box<RawValue> {
        if let Self::Unknown(unknown) = self {
            return unknown.raw.clone();
        }
        let mut object = serde_json::Map::new();
        object.insert("kind".to_owned(), Value::String(self.kind().to_owned()));
        if let Ok(Value::Object(fields)) = self.fields() {
            object.extend(fields);
        }
        serde_json::value::to_raw_value(&object).expect("a body holds only text, numbers and lists")
    }
}
