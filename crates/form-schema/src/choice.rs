//! Answers that are one of a few words.

/// An answer that is one of a few words of the trade.
pub trait Choices: Sized + Copy + 'static {
    /// The words, as written in the diary.
    const NAMES: &'static [&'static str];
    /// Its word.
    fn name(self) -> &'static str;
}

/// Makes an enum of choices: each variant with the word it is written as.
#[macro_export]
macro_rules! choices {
    ($(#[$doc:meta])* $name:ident { $( $(#[$vdoc:meta])* $variant:ident = $word:literal ),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
        pub enum $name { $( $(#[$vdoc])* #[serde(rename = $word)] $variant, )+ }

        impl $crate::Choices for $name {
            const NAMES: &'static [&'static str] = &[$($word),+];
            fn name(self) -> &'static str {
                match self { $( Self::$variant => $word, )+ }
            }
        }

        impl $crate::Answer for $name {
            const REQUIRED: bool = true;
            const INPUT: Option<$crate::InputKind> = Some($crate::InputKind::Choice(<Self as $crate::Choices>::NAMES));
        }
    };
}
