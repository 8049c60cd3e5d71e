//! What the program knows of a kind of entry: where it stands, what it asks, what must hold.

use form_schema::{Field, Form, Preset, Rule};

use super::EntryKind;

/// The schema of one kind of entry. Forms, command line, written lines, corrections and `docs/diary.md` come
/// from it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EntrySchema {
    /// The kind.
    pub kind: EntryKind,
    /// Where it stands in the menu.
    pub group: Group,
    /// Whether it is filled kneeling on the slab and belongs on the slab's first page.
    pub quick: bool,
    /// Which place is asked for.
    pub place: PlaceInput,
    /// Whether photographs are asked for.
    pub photographs: PhotoInput,
    /// Whether it may lie before the pour: it speaks of the job, not of the concrete.
    pub before_pour: bool,
    /// Whether its moment is asked for: it is often written down days later, and what follows counts from it.
    pub asks_when: bool,
    /// Whether it can only stand in place of another entry.
    pub only_corrects: bool,
    /// Its row on the time line; none when it does not stand there.
    pub time_line: Option<TimeLine>,
    /// It has a screen and a reader of its own: a plan is drawn, a series comes from a file.
    pub own_screen: bool,
    /// The fields, in the order they are asked.
    pub fields: &'static [Field],
    /// Answers of one tap.
    pub presets: &'static [Preset],
    /// What must hold between fields.
    pub rules: &'static [Rule],
    /// A line of a diary with such an entry.
    pub example: &'static str,
}

/// Where a kind of entry stands in the menu.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Tests of the surface.
    Test,
    /// Readings of air and temperature.
    Reading,
    /// Incidents, defects and what was done about them.
    Trouble,
    /// Pour, finish, cure.
    Making,
    /// Sample panels and the choice.
    Panel,
    /// Staining, rinsing, sealing.
    Work,
    /// The job itself.
    Job,
}

impl Group {
    /// All, in the order of the menu.
    pub const ALL: [Self; 7] =
        [Self::Test, Self::Reading, Self::Trouble, Self::Making, Self::Panel, Self::Work, Self::Job];

    /// Its name in message keys and addresses.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Test => "test",
            Self::Reading => "reading",
            Self::Trouble => "trouble",
            Self::Making => "making",
            Self::Panel => "panel",
            Self::Work => "work",
            Self::Job => "job",
        }
    }
}

/// Which place is asked for. It says what to show; [`crate::read_place`] reads whatever place was sent, so that
/// correcting an old entry with a finer place loses nothing when its hidden fields are sent along.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PlaceInput {
    /// None: the entry speaks of the whole slab, or of another entry's place.
    None,
    /// A zone or the whole slab.
    Zone,
    /// A zone, the whole slab, or a point with an optional radius.
    Point,
    /// A zone or a point with an optional radius: it tells of one spot. Of a slab of several zones it never
    /// means the whole, since it would count for no zone, or spoil them all.
    Spot,
}

/// Whether photographs are asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PhotoInput {
    /// Not asked.
    None,
    /// May be added.
    May,
    /// The entry is about the photograph.
    Main,
}

/// A row of the time line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TimeLine {
    /// Tests of one day stand in one row: how each went is the standing's affair.
    Test,
    /// In a row of its own, with all of its kind on that day.
    Step,
    /// Each by itself: it went against the work.
    Trouble,
}

impl EntrySchema {
    /// What is asked, for the engine that reads and checks.
    #[must_use]
    pub const fn form(&self) -> Form {
        Form { name: self.kind.name(), fields: self.fields, presets: self.presets, rules: self.rules }
    }

    /// A field by its name in the body.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }
}

/// A kind with nothing but its group and an example.
pub(super) const fn plain(kind: EntryKind, group: Group, example: &'static str) -> EntrySchema {
    EntrySchema {
        kind,
        group,
        quick: false,
        place: PlaceInput::None,
        photographs: PhotoInput::None,
        before_pour: false,
        asks_when: false,
        only_corrects: false,
        time_line: None,
        own_screen: false,
        fields: &[],
        presets: &[],
        rules: &[],
        example,
    }
}

/// A test at a point of the surface.
pub(super) const fn on_the_surface(kind: EntryKind, example: &'static str) -> EntrySchema {
    EntrySchema {
        quick: true,
        place: PlaceInput::Spot,
        photographs: PhotoInput::May,
        ..plain(kind, Group::Test, example)
    }
}

/// A kind of entry: its body as a type and its schema, each field said once. A field whose type does not say how
/// it is asked has its input kind behind the type.
macro_rules! entry {
    (@field $field:ident, $ty:ty) => { form_schema::Field::of_type::<$ty>(stringify!($field)) };
    (@field $field:ident, $ty:ty, $input:expr) => { form_schema::Field::of::<$ty>(stringify!($field), $input) };
    (
        $(#[$doc:meta])*
        $name:ident { $( $(#[$fdoc:meta])* $field:ident : $ty:ty $(= $input:expr)? ),* $(,)? }
        $schema:expr
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct $name { $( $(#[$fdoc])* pub $field: $ty, )* }

        impl super::EntryBody for $name {
            const SCHEMA: super::EntrySchema = super::EntrySchema {
                fields: &[ $( entry!(@field $field, $ty $(, $input)?) ),* ],
                ..$schema
            };
            fn of(body: &super::Body) -> Option<&Self> {
                if let super::Body::$name(inner) = body { Some(inner) } else { None }
            }
        }
    };
}

/// One-tap answers that each give one value to one field.
macro_rules! one_tap {
    (@value $name:literal) => { $name };
    (@value $name:literal, $value:literal) => { $value };
    ($field:literal: $( $name:literal $(= $value:literal)? ),+) => {
        &[ $( form_schema::Preset { name: $name, sets: &[($field, one_tap!(@value $name $(, $value)?))] } ),+ ]
    };
}
