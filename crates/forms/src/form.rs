//! What a form is: its fields, and how each of them is asked.

use localization::UnitSystem;
use trade_facts::Trade;

use crate::quantity::Quantity;

/// The form of one kind of entry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Form {
    /// The kind, as in `slab_diary::Body::KINDS`.
    pub kind: &'static str,
    /// Where it stands in the menu.
    pub group: Group,
    /// Whether it is filled kneeling on the slab and belongs on the slab's first page.
    pub quick: bool,
    /// Which place is asked for.
    pub place: PlaceInput,
    /// Whether photographs are asked for.
    pub photographs: PhotoInput,
    /// The fields, in the order they are asked.
    pub fields: &'static [Field],
    /// Answers of one tap.
    pub presets: &'static [Preset],
    /// What must hold between fields.
    pub rules: &'static [Rule],
}

/// Where a form stands in the menu.
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

/// Which place a form asks for. It says what to show; [`crate::read_place`] reads whatever place was
/// sent, so that correcting an old entry with a finer place loses nothing when its hidden fields are
/// sent along.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PlaceInput {
    /// None: the entry speaks of the whole slab, or of another entry's place.
    None,
    /// A zone or the whole slab.
    Zone,
    /// A zone, the whole slab, or a point with an optional radius.
    Point,
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

/// One field of a body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// Its name in the body's JSON. The names of its inputs are in [`Field::inputs`].
    pub name: &'static str,
    /// How it is asked.
    pub ask: InputKind,
    /// Whether it must be answered.
    pub need: Need,
}

/// Whether a field must be answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Need {
    /// It must.
    Required,
    /// It may stay empty.
    Optional,
}

/// How a field is asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum InputKind {
    /// A quantity with its unit; a bare number takes the usual unit.
    Quantity(Quantity),
    /// One of these values.
    Choice(&'static [&'static str]),
    /// One id of a list in the trade facts.
    Trade(TradeList),
    /// The id of an earlier entry of one of these kinds.
    Entry(&'static [&'static str]),
    /// The name of a panel that was made.
    Panel,
    /// `yes` or `no`; when it is optional, also unsaid.
    YesNo,
    /// A text.
    Text {
        /// Whether it may take several lines.
        long: bool,
    },
    /// A whole number within these ends, both included.
    Count {
        /// Least accepted.
        least: u32,
        /// Most accepted.
        most: u32,
    },
    /// A number.
    Number(Span),
    /// An amount of money as a decimal text: `120.50`.
    Money,
    /// A currency code of three letters, ISO 4217.
    Currency,
    /// A time zone by its name in the tz database; [`TIME_ZONES`] are offered.
    TimeZone,
    /// Rows of a stain and its parts, in the repeated inputs `mix_stain` and `mix_parts`.
    Mix,
    /// A measured color: `lab_l`, `lab_a`, `lab_b`; CIELAB (D65, 2°).
    Lab,
    /// A box in the upright picture in percent of its width and height; the names of its four inputs.
    PictureBox(&'static [&'static str; 4]),
}

/// Which numbers are accepted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Span {
    /// Above zero.
    Positive,
    /// Zero or more.
    NotNegative,
    /// 0 to 100.
    Percent,
    /// -128 to 128, the a* and b* of colors that a camera or meter can meet.
    Opponent,
}

impl Span {
    /// Least and most.
    #[must_use]
    pub const fn ends(self) -> (f64, f64) {
        match self {
            Self::Positive | Self::NotNegative => (0.0, f64::MAX),
            Self::Percent => (0.0, 100.0),
            Self::Opponent => (-128.0, 128.0),
        }
    }

    /// Whether it holds the number.
    #[must_use]
    pub fn holds(self, number: f64) -> bool {
        let (least, most) = self.ends();
        number.is_finite() && (least..=most).contains(&number) && !(self == Self::Positive && number == 0.0)
    }
}

/// A list in the trade facts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TradeList {
    /// Slab finishes.
    Finishes,
    /// Sealer classes.
    Sealers,
    /// What others leave on a slab.
    Incidents,
    /// Single figures that a slab may have its own value of. Offered are those that the standing and
    /// the order read ([`crate::FACTS`]); any fact with a single value is accepted.
    Facts,
}

impl TradeList {
    /// The ids to offer, in the order of the trade files.
    #[must_use]
    pub fn ids(self, trade: &Trade) -> Vec<&str> {
        match self {
            Self::Finishes => trade.finishes().map(|r| r.id.as_str()).collect(),
            Self::Sealers => trade.sealers().map(|r| r.id.as_str()).collect(),
            Self::Incidents => trade.incidents().map(|r| r.id.as_str()).collect(),
            Self::Facts => crate::FACTS.to_vec(),
        }
    }

    /// Whether an id is accepted.
    #[must_use]
    pub fn knows(self, trade: &Trade, id: &str) -> bool {
        match self {
            Self::Finishes => trade.finish(id).is_some(),
            Self::Sealers => trade.sealer(id).is_some(),
            Self::Incidents => trade.incident(id).is_some(),
            Self::Facts => trade.fact(id).is_some_and(|fact| fact.value.is_some()),
        }
    }
}

/// An answer of one tap: a button with the name `preset` and [`Preset::name`] as its value. What else
/// was typed in the form is read too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Preset {
    /// Its name, unique in its form.
    pub name: &'static str,
    /// Inputs and the values they get. An empty value clears an input that would contradict.
    pub sets: &'static [(&'static str, &'static str)],
}

/// What must hold between fields.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rule {
    /// At least one of the fields is answered.
    AtLeastOne(&'static [&'static str]),
    /// At least one of the fields is answered, or the last one with yes; its no says nothing yet.
    AtLeastOneOrYes(&'static [&'static str]),
    /// Not both are answered.
    NotBoth(&'static str, &'static str),
}

/// Time zones to offer: those of the United States by their names in the tz database.
pub const TIME_ZONES: &[&str] = &[
    "America/New_York",
    "America/Chicago",
    "America/Denver",
    "America/Phoenix",
    "America/Los_Angeles",
    "America/Anchorage",
    "Pacific/Honolulu",
    "America/Puerto_Rico",
];

impl Field {
    /// A field that must be answered.
    pub(crate) const fn must(name: &'static str, ask: InputKind) -> Self {
        Self { name, ask, need: Need::Required }
    }

    /// A field that may stay empty.
    pub(crate) const fn may(name: &'static str, ask: InputKind) -> Self {
        Self { name, ask, need: Need::Optional }
    }

    /// The names of its inputs: its own name, or one for each part.
    #[must_use]
    pub const fn inputs(&self) -> &[&'static str] {
        match self.ask {
            InputKind::Mix => &["mix_stain", "mix_parts"],
            InputKind::Lab => &["lab_l", "lab_a", "lab_b"],
            InputKind::PictureBox(names) => names.as_slice(),
            _ => std::slice::from_ref(&self.name),
        }
    }

    /// The unit that a bare number takes, to show beside the input; empty where there is none.
    #[must_use]
    pub const fn unit(&self, unit_system: UnitSystem) -> &'static str {
        match self.ask {
            InputKind::Quantity(quantity) => quantity.unit(unit_system),
            InputKind::PictureBox(_) => "%",
            _ => "",
        }
    }

    /// An example of what may be typed, to show in or under the input; empty where a choice is tapped
    /// or a text is free.
    #[must_use]
    pub const fn example(&self, unit_system: UnitSystem) -> &'static str {
        match self.ask {
            InputKind::Quantity(quantity) => quantity.example(unit_system),
            InputKind::Money => "120.50",
            InputKind::Currency => "USD",
            InputKind::TimeZone => "America/Chicago",
            _ => "",
        }
    }

    /// The `inputmode` of a text input: the keyboard that a phone shows.
    #[must_use]
    pub const fn input_mode(&self) -> &'static str {
        match self.ask {
            InputKind::Quantity(quantity) => quantity.input_mode(),
            InputKind::Count { .. } => "numeric",
            InputKind::Number(Span::Opponent) | InputKind::Lab => "text",
            InputKind::Number(_) | InputKind::Money | InputKind::PictureBox(_) => "decimal",
            _ => "text",
        }
    }

    /// The ids or values to offer where one of a known list is chosen; empty otherwise. Panels and
    /// earlier entries are known to the diary only.
    #[must_use]
    pub fn choices<'t>(&self, trade: &'t Trade) -> Vec<&'t str> {
        match self.ask {
            InputKind::Choice(values) => values.to_vec(),
            InputKind::Trade(list) => list.ids(trade),
            InputKind::YesNo => vec!["yes", "no"],
            InputKind::TimeZone => TIME_ZONES.to_vec(),
            _ => Vec::new(),
        }
    }

    /// Whether the answer is required.
    #[must_use]
    pub const fn required(&self) -> bool {
        matches!(self.need, Need::Required)
    }
}

impl Form {
    /// A field by its name in the body.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.name == name)
    }

    /// The field that an input belongs to.
    #[must_use]
    pub fn field_of_input(&self, input: &str) -> Option<&'static Field> {
        self.fields.iter().find(|field| field.inputs().contains(&input))
    }

    /// A preset by its name.
    #[must_use]
    pub fn preset(&self, name: &str) -> Option<&'static Preset> {
        self.presets.iter().find(|preset| preset.name == name)
    }
}
