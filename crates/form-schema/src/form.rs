//! What a form is: its fields, and how each of them is asked.

use trade_facts::Trade;
use units::UnitSystem;

use crate::quantity::QuantityInput;

/// What is asked for one thing: an entry of the diary, a calculation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Form {
    /// Its name: the kind of entry, the calculation.
    pub name: &'static str,
    /// The fields, in the order they are asked.
    pub fields: &'static [Field],
    /// Answers of one tap.
    pub presets: &'static [Preset],
    /// What must hold between fields.
    pub rules: &'static [Rule],
}

/// One field of a body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// Its name in the body's JSON. The names of its inputs are in [`Field::inputs`].
    pub name: &'static str,
    /// How it is asked.
    pub input: InputKind,
    /// Whether it must be answered.
    pub need: Need,
    /// What is told beside it.
    pub hints: Hints,
}

/// What is told of a field beside how it is asked. Keys are those of the messages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Hints {
    /// The key of its label; empty where whoever shows the form has its own names.
    pub label: &'static str,
    /// The key of its name where an answer tells it back.
    pub in_answer: &'static str,
    /// An example, imperial and metric, where how it is asked does not bring one.
    pub example: [&'static str; 2],
    /// What an empty field means, imperial and metric, as it could be typed.
    pub usual: Option<[&'static str; 2]>,
    /// The key of a sentence that tells it better.
    pub usual_said: Option<&'static str>,
    /// For the few who need it: a page may fold it away.
    pub more: bool,
}

impl Hints {
    /// Nothing beside it.
    pub const NONE: Self =
        Self { label: "", in_answer: "", example: ["", ""], usual: None, usual_said: None, more: false };
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
    Quantity(QuantityInput),
    /// One of these values.
    Choice(&'static [&'static str]),
    /// One of these values, not all of which a page offers.
    Offered {
        /// What is read.
        accepted: &'static [&'static str],
        /// What a page offers.
        offered: &'static [&'static str],
    },
    /// One of these values, some of which go by other names too, each with the value it is.
    Named {
        /// The values.
        values: &'static [&'static str],
        /// Other names.
        also: &'static [(&'static str, &'static str)],
    },
    /// One id of a list in the trade facts.
    Term(TermList),
    /// The id of an earlier entry of one of these kinds.
    Entry(&'static [&'static str]),
    /// The name of a panel that was made.
    Panel,
    /// `yes` or `no`; when it is optional, also unsaid.
    YesNo,
    /// Said or not said: a no is the same as nothing.
    Flag,
    /// A text.
    Text {
        /// Whether it may take several lines.
        long: bool,
    },
    /// Several texts: a repeated option, the lines of a box.
    Texts,
    /// The name of a file; whoever asks knows what bytes go by it.
    File,
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
    /// Any number.
    Any,
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
            Self::Any => (f64::MIN, f64::MAX),
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
pub enum TermList {
    /// Slab finishes.
    Finishes,
    /// Sealer classes.
    Sealers,
    /// What others leave on a slab.
    Incidents,
    /// Single figures that a slab may have its own value of. Offered are
    /// [`trade_facts::SETTABLE`]; any fact with a single value is accepted.
    Facts,
}

impl TermList {
    /// The ids to offer, in the order of the trade files.
    #[must_use]
    pub fn ids(self, trade: &Trade) -> Vec<&str> {
        match self {
            Self::Finishes => trade.finishes().map(|r| r.id.as_str()).collect(),
            Self::Sealers => trade.sealers().map(|r| r.id.as_str()).collect(),
            Self::Incidents => trade.incidents().map(|r| r.id.as_str()).collect(),
            Self::Facts => trade_facts::SETTABLE.to_vec(),
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
    /// A page asks for these until they are answered; a written line may leave them out and means the usual
    /// answer.
    MayBeLeftOut(&'static [&'static str]),
    /// Not both are answered.
    NotBoth(&'static str, &'static str),
    /// Exactly one of the fields is answered.
    OneOf(&'static [&'static str]),
    /// When the first is answered, the second is too.
    Needs(&'static str, &'static str),
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

/// A type that answers a field: whether it must be answered, and how it is asked when that follows from the type.
pub trait Answer {
    /// Whether there is no such answer without something given.
    const REQUIRED: bool;
    /// How it is asked, when the type says it all.
    const INPUT: Option<InputKind> = None;
}

impl<T: Answer> Answer for Option<T> {
    const REQUIRED: bool = false;
    const INPUT: Option<InputKind> = T::INPUT;
}

macro_rules! required {
    ($($type:ty),+ $(,)?) => { $( impl Answer for $type { const REQUIRED: bool = true; } )+ };
}

required!(crate::Text, String, u8, u32, f64, [f64; 3], crate::PictureBox);

impl Answer for trade_facts::HoldPointId {
    const REQUIRED: bool = true;
    const INPUT: Option<InputKind> = Some(InputKind::Offered { accepted: &Self::NAMES, offered: &Self::BY_WORD });
}

impl Answer for bool {
    const REQUIRED: bool = true;
    const INPUT: Option<InputKind> = Some(InputKind::YesNo);
}

impl<Q> Answer for units::AsWritten<Q> {
    const REQUIRED: bool = true;
}

impl<T> Answer for Vec<T> {
    const REQUIRED: bool = true;
}

impl Field {
    /// A field that a type answers.
    #[must_use]
    pub const fn of<T: Answer>(name: &'static str, input: InputKind) -> Self {
        let required = T::REQUIRED && !matches!(input, InputKind::Flag);
        Self { name, input, need: if required { Need::Required } else { Need::Optional }, hints: Hints::NONE }
    }

    /// A field that must be answered, with the key of its label.
    #[must_use]
    pub const fn required_with(name: &'static str, label: &'static str, input: InputKind) -> Self {
        let hints = Hints { label, in_answer: label, ..Hints::NONE };
        Self { name, input, need: Need::Required, hints }
    }

    /// A field that may stay empty, with the key of its label.
    #[must_use]
    pub const fn optional(name: &'static str, label: &'static str, input: InputKind) -> Self {
        Self { need: Need::Optional, ..Self::required_with(name, label, input) }
    }

    /// The same under another name where an answer tells it back.
    #[must_use]
    pub const fn in_answer(self, key: &'static str) -> Self {
        Self { hints: Hints { in_answer: key, ..self.hints }, ..self }
    }

    /// The same with an example, imperial and metric.
    #[must_use]
    pub const fn such_as(self, imperial: &'static str, metric: &'static str) -> Self {
        Self { hints: Hints { example: [imperial, metric], ..self.hints }, ..self }
    }

    /// The same with what an empty field means, imperial and metric.
    #[must_use]
    pub const fn usual(self, imperial: &'static str, metric: &'static str) -> Self {
        Self { hints: Hints { usual: Some([imperial, metric]), ..self.hints }, ..self }
    }

    /// The same with the key of a sentence that tells what an empty field means.
    #[must_use]
    pub const fn usual_said(self, key: &'static str) -> Self {
        Self { hints: Hints { usual_said: Some(key), ..self.hints }, ..self }
    }

    /// The same for the few who need it.
    #[must_use]
    pub const fn more(self) -> Self {
        Self { hints: Hints { more: true, ..self.hints }, ..self }
    }

    /// A field whose type says how it is asked.
    ///
    /// # Panics
    /// When the type does not; at compile time, since every form is a constant.
    #[must_use]
    pub const fn of_type<T: Answer>(name: &'static str) -> Self {
        match T::INPUT {
            Some(input) => Self::of::<T>(name, input),
            None => panic!("the type does not say how it is asked"),
        }
    }

    /// The names of its inputs: its own name, or one for each part.
    #[must_use]
    pub const fn inputs(&self) -> &[&'static str] {
        match self.input {
            InputKind::Mix => &["mix_stain", "mix_parts"],
            InputKind::Lab => &["lab_l", "lab_a", "lab_b"],
            InputKind::PictureBox(names) => names.as_slice(),
            _ => std::slice::from_ref(&self.name),
        }
    }

    /// The unit that a bare number takes, to show beside the input; empty where there is none.
    #[must_use]
    pub const fn unit(&self, unit_system: UnitSystem) -> &'static str {
        match self.input {
            InputKind::Quantity(quantity) => quantity.unit(unit_system),
            InputKind::PictureBox(_) => "%",
            _ => "",
        }
    }

    /// An example of what may be typed, to show in or under the input; empty where a choice is tapped
    /// or a text is free.
    #[must_use]
    pub fn example(&self, unit_system: UnitSystem) -> &'static str {
        match self.input {
            InputKind::Quantity(quantity) => quantity.example(unit_system),
            InputKind::Money => "120.50",
            InputKind::Currency => "USD",
            InputKind::TimeZone => "America/Chicago",
            _ => {
                let told = self.hints.usual.filter(|_| self.hints.example[0].is_empty()).unwrap_or(self.hints.example);
                told[crate::quantity::at(unit_system)]
            }
        }
    }

    /// The `inputmode` of a text input: the keyboard that a phone shows.
    #[must_use]
    pub const fn input_mode(&self) -> &'static str {
        match self.input {
            InputKind::Quantity(quantity) => quantity.input_mode(),
            InputKind::Count { .. } => "numeric",
            InputKind::Number(Span::Any | Span::Opponent) | InputKind::Lab => "text",
            InputKind::Number(_) | InputKind::Money | InputKind::PictureBox(_) => "decimal",
            _ => "text",
        }
    }

    /// Whether one of a few words is asked.
    #[must_use]
    pub const fn is_choice(&self) -> bool {
        matches!(self.input, InputKind::Choice(_) | InputKind::Offered { .. } | InputKind::Named { .. })
    }

    /// The ids or values to offer where one of a known list is chosen; empty otherwise. Panels and
    /// earlier entries are known to the diary only.
    #[must_use]
    pub fn choices<'t>(&self, trade: &'t Trade) -> Vec<&'t str> {
        match self.input {
            InputKind::Choice(values)
            | InputKind::Offered { offered: values, .. }
            | InputKind::Named { values, .. } => values.to_vec(),
            InputKind::Term(list) => list.ids(trade),
            InputKind::YesNo | InputKind::Flag => vec!["yes", "no"],
            InputKind::TimeZone => TIME_ZONES.to_vec(),
            _ => Vec::new(),
        }
    }

    /// Whether a page asks until it is answered.
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

    /// Whether a page must not call a field optional: it must be answered, or is the first of those of which
    /// one must be.
    #[must_use]
    pub fn needed(&self, field: &Field) -> bool {
        field.required()
            || self.rules.iter().any(|rule| match rule {
                Rule::AtLeastOne(names) | Rule::AtLeastOneOrYes(names) | Rule::OneOf(names) => names[0] == field.name,
                Rule::MayBeLeftOut(_) | Rule::NotBoth(..) | Rule::Needs(..) => false,
            })
    }

    /// The fields that cannot be answered beside this one.
    #[must_use]
    pub fn excluded_by(&self, name: &str) -> Vec<&'static Field> {
        let excluded = |other: &str| {
            self.rules.iter().any(|rule| match rule {
                Rule::NotBoth(one, two) => (*one == name && *two == other) || (*one == other && *two == name),
                Rule::OneOf(names) => name != other && names.contains(&name) && names.contains(&other),
                _ => false,
            })
        };
        self.fields.iter().filter(|field| excluded(field.name)).collect()
    }

    /// The fields that must be answered beside this one.
    #[must_use]
    pub fn needed_by(&self, name: &str) -> Vec<&'static Field> {
        let needs = |rule: &Rule| match rule {
            Rule::Needs(one, other) if *one == name => self.field(other),
            _ => None,
        };
        self.rules.iter().filter_map(needs).collect()
    }

    /// A preset by its name.
    #[must_use]
    pub fn preset(&self, name: &str) -> Option<&'static Preset> {
        self.presets.iter().find(|preset| preset.name == name)
    }
}
