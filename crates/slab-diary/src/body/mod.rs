//! What an entry says: one struct for each kind, in trade words.
//!
//! Every quantity keeps what was typed (`units::AsWritten`). Unknown fields are refused, since a
//! mistyped field name would lose evidence in silence; a body written by a newer version of the
//! program is kept byte for byte instead.

#[macro_use]
mod schema;
mod inputs;
mod job;
mod making;
mod money;
mod panel;
mod testing;
mod trouble;
mod wetting;
mod work;

use form_schema::{FieldError, FieldErrorKind, FormData, InputKind};
use serde_json::value::RawValue;
use serde_json::{Map, Value};
use units::UnitSystem;

pub use form_schema::{PictureBox, PictureBoxError};
pub(crate) use inputs::{OFFSET, RADIUS};
pub use job::{Exposure, HoldReleased, JobOpened, LimitSet, NeverHappened, Note, SealerChosen, SiteCheck, SlabAge};
pub use making::{Cured, Curing, CuringMethod, Finish, Pour};
pub use money::{PaymentTerms, TimeCost};
pub use panel::{ChoiceApproved, ChoiceWithdrawn, PanelMade, PanelPhotographed, PanelStained, PanelState, StainShare};
pub use schema::{EntrySchema, Group, PhotoInput, PlaceInput, TimeLine};
pub use testing::{
    AcidDrop, AirReading, AirSeries, ColorLook, EmissionDish, Evenness, Fizz, PhMoment, PlasticSheet, RagResult,
    ReferenceCard, Scrape, ScrapeResult, SheetResult, SlabHumidity, SlabPhotograph, SolventWipe, SurfacePh,
    Temperature, WaterDrop, WipeResult,
};
pub use trouble::{
    Accepted, Cleaning, CleaningMethod, Cover, CoverAction, CoverMaterial, Defect, DefectKind, Incident, PrintedSide,
    Repair, RepairMaterial, Retest, RetestResult, Survey,
};
pub use wetting::{Wetting, WettingCause};
pub use work::{BatchMixed, CoatLaid, Delivery, Neutralized, Neutralizer, Rinsed, SealerCoat, WasteCollected};

use super::entry::SCHEMA;

/// A body of a known kind: its schema, and how a fold finds it by type.
pub trait EntryBody: Sized {
    /// What is known of its kind.
    const SCHEMA: EntrySchema;
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
#[derive(Debug, Clone, PartialEq)]
pub enum BodyError {
    /// It is no JSON object with a `kind`.
    NoKind,
    /// The kind is unknown in the form this program writes.
    UnknownKind(String),
    /// Fields are missing, unknown or wrong.
    Fields(EntryKind, Vec<FieldError>),
}

macro_rules! bodies {
    ($( $(#[$doc:meta])* $variant:ident = $kind:literal ),+ $(,)?) => {
        /// A kind of entry.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum EntryKind { $( $(#[$doc])* $variant, )+ }

        /// What an entry says.
        #[derive(Debug, Clone, PartialEq)]
        pub enum Body {
            $( $(#[$doc])* $variant(Box<$variant>), )+
            /// Of a kind or form that a newer version wrote; kept as it came.
            Unknown(UnknownBody),
        }

        impl EntryKind {
            /// Every kind this program knows, in the order of the job.
            pub const ALL: &'static [Self] = &[$( Self::$variant ),+];

            /// Its name as written in the diary.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $( Self::$variant => $kind, )+ }
            }

            /// What is known of it.
            #[must_use]
            pub const fn schema(self) -> &'static EntrySchema {
                match self { $( Self::$variant => &<$variant as EntryBody>::SCHEMA, )+ }
            }

            fn typed(self, fields: Value) -> Result<Body, BodyError> {
                match self { $( Self::$variant => typed::<$variant>(self, fields).map(Body::from), )+ }
            }
        }

        impl Body {
            /// Its kind; nothing for a kind or form of a newer program.
            #[must_use]
            pub const fn kind(&self) -> Option<EntryKind> {
                match self {
                    $( Self::$variant(_) => Some(EntryKind::$variant), )+
                    Self::Unknown(_) => None,
                }
            }

            fn fields(&self) -> Result<Value, serde_json::Error> {
                match self {
                    $( Self::$variant(body) => serde_json::to_value(body), )+
                    Self::Unknown(unknown) => serde_json::from_str(unknown.raw.get()),
                }
            }
        }

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
    /// Water came onto the slab.
    Wetting = "wetting",
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
    /// The client took the choice back.
    ChoiceWithdrawn = "choice_withdrawn",
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
    /// Another entry tells of something that never happened.
    NeverHappened = "never_happened",
}

/// The plan as drawn; the plan crate knows what it means.
pub type Plan = slab_plan::PlanSpec;

/// A body of its own type out of fields that were checked.
fn typed<T: serde::de::DeserializeOwned>(kind: EntryKind, fields: Value) -> Result<T, BodyError> {
    serde_path_to_error::deserialize(fields).map_err(|e| {
        let (path, problem) = (e.path().to_string(), e.inner().to_string());
        // A missing or unknown field is named in the message, not in the path.
        let field = if path == "." { problem.split('`').nth(1).unwrap_or("body").to_owned() } else { path };
        BodyError::Fields(kind, vec![FieldError::new(&field, FieldErrorKind::Refused(problem), "")])
    })
}

impl EntryKind {
    /// The kind of a name; hyphen, underscore and space are one to a person.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        let name = name.trim().to_lowercase().replace(['-', ' '], "_");
        Self::ALL.iter().copied().find(|kind| kind.name() == name)
    }

    /// Brings the fields of such an entry to the way they are written and checks them.
    ///
    /// # Errors
    /// Every field that is wrong.
    pub fn check(self, fields: &mut Map<String, Value>) -> Result<(), Vec<FieldError>> {
        let schema = self.schema();
        let errors = if schema.own_screen { Vec::new() } else { form_schema::check(&schema.form(), fields) };
        if errors.is_empty() { Ok(()) } else { Err(errors) }
    }
}

impl EntryKind {
    /// The fields of what was typed into the kind's form.
    ///
    /// # Errors
    /// Every error at once, each with its input.
    pub fn read(self, typed: &FormData, usual: UnitSystem) -> Result<Map<String, Value>, Vec<FieldError>> {
        form_schema::read(&self.schema().form(), typed, usual)
    }

    /// One field from a text, as the command line has it: with its unit.
    ///
    /// # Errors
    /// There is no such field, or it cannot be read.
    pub fn read_text(self, name: &str, text: &str) -> Result<Value, FieldError> {
        let schema = self.schema();
        let name = name.trim().replace('-', "_");
        let Some(field) = schema.field(&name) else {
            return Err(FieldError::new(&name, FieldErrorKind::Unknown { fields: schema.fields }, text));
        };
        form_schema::read_text(field, text).map_err(|what| FieldError::new(&name, what, text))
    }
}

impl Body {
    /// What fills the form of its kind, for a correction.
    #[must_use]
    pub fn form_data(&self) -> FormData {
        self.kind().map_or_else(FormData::new, |kind| form_schema::fill(&kind.schema().form(), &self.to_fields()))
    }

    /// Its kind's name as written in the diary.
    #[must_use]
    pub fn kind_name(&self) -> &str {
        match self {
            Self::Unknown(unknown) => &unknown.kind,
            body => body.kind().map_or("", EntryKind::name),
        }
    }

    /// A body of a kind from its fields.
    ///
    /// # Errors
    /// [`BodyError::Fields`] with everything that is wrong.
    pub fn of_kind(kind: EntryKind, mut fields: Map<String, Value>) -> Result<Self, BodyError> {
        kind.check(&mut fields).map_err(|errors| BodyError::Fields(kind, errors))?;
        fields.retain(|_, value| !value.is_null());
        kind.typed(Value::Object(fields))
    }

    /// Reads a body from its JSON text, written in the given schema version.
    ///
    /// # Errors
    /// [`BodyError`] naming kind, field and what would be accepted. In a schema newer than ours
    /// nothing is an error: what we can't read is kept.
    pub fn read(raw: &RawValue, schema: u32) -> Result<Self, BodyError> {
        let Ok(Value::Object(mut fields)) = serde_json::from_str(raw.get()) else { return Err(BodyError::NoKind) };
        let Some(Value::String(name)) = fields.shift_remove("kind") else { return Err(BodyError::NoKind) };
        let read = match EntryKind::named(&name) {
            Some(kind) => Self::of_kind(kind, fields),
            None => Err(BodyError::UnknownKind(name.clone())),
        };
        match read {
            Err(_) if schema > SCHEMA => Ok(Self::Unknown(UnknownBody { kind: name, raw: raw.to_owned() })),
            read => read,
        }
    }

    /// Its fields without the kind. A no that is the same as nothing is left out, as is what was not said.
    #[must_use]
    pub fn to_fields(&self) -> Map<String, Value> {
        let Ok(Value::Object(mut fields)) = self.fields() else { return Map::new() };
        let flag = |name: &str| {
            self.kind().and_then(|kind| kind.schema().field(name)).is_some_and(|f| f.input == InputKind::Flag)
        };
        fields.retain(|name, value| !(value.is_null() || *value == Value::Bool(false) && flag(name)));
        fields
    }

    /// Its JSON text, `kind` first. An unknown body comes back byte for byte.
    #[must_use]
    pub fn to_raw(&self) -> Box<RawValue> {
        if let Self::Unknown(unknown) = self {
            return unknown.raw.clone();
        }
        let mut object = Map::new();
        object.insert("kind".to_owned(), Value::from(self.kind_name()));
        object.extend(self.to_fields());
        serde_json::value::to_raw_value(&object).expect("a body holds only text, numbers and lists")
    }
}

impl EntryBody for Plan {
    const SCHEMA: EntrySchema = EntrySchema {
        before_pour: true,
        own_screen: true,
        ..schema::plain(
            EntryKind::Plan,
            Group::Job,
            r##"{"happened":"2026-03-02 06:10","body":{"kind":"plan","outline":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"40 ft","depth":"30 ft"}]},"zones":[{"name":"shop","shape":{"rectangles":[{"corner":["0 ft","0 ft"],"width":"25 ft","depth":"30 ft"}]}},{"name":"office"}]}}"##,
        )
    };
    fn of(body: &Body) -> Option<&Self> {
        if let Body::Plan(inner) = body { Some(inner) } else { None }
    }
}
