//! The macro that makes one quantity type: newtype, constructors, getters, reader and printer.

/// Makes a quantity that is a plain multiple of its SI unit.
macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $name:ident, $unit_enum:ident, $label:literal, si $si:literal, negative $negative:literal,
        accepted $accepted:literal,
        $(trailing ($after:ident, $takes:ident),)?
        units { $( $(#[$udoc:meta])* $variant:ident: $make:ident / $get:ident = $factor:expr, $symbol:literal, [$($word:literal),* $(,)?]; )+ }
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        #[doc = concat!("The units in which ", $label, " is written and printed.")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum $unit_enum { $( $(#[$udoc])* $variant, )+ }

        impl $unit_enum {
            /// The symbol printed after the number.
            #[must_use]
            pub const fn symbol(self) -> &'static str {
                match self { $( Self::$variant => $symbol, )+ }
            }

            const fn to_si(self) -> f64 {
                match self { $( Self::$variant => $factor, )+ }
            }
        }

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            $(
                #[doc = concat!("From a number in ", $symbol, ".")]
                #[must_use]
                pub const fn $make(value: f64) -> Self { Self(value * $factor) }

                #[doc = concat!("As a number in ", $symbol, ".")]
                #[must_use]
                pub const fn $get(self) -> f64 { self.0 / $factor }
            )+

            /// From a number in the given unit.
            #[must_use]
            pub const fn in_unit(value: f64, unit: $unit_enum) -> Self { Self(value * unit.to_si()) }

            /// As a number in the given unit.
            #[must_use]
            pub const fn as_unit(self, unit: $unit_enum) -> f64 { self.0 / unit.to_si() }

            /// Printed in the given unit with a fixed number of decimals, such as `3.50 gal`.
            #[must_use]
            pub fn show(self, unit: $unit_enum, decimals: usize) -> String {
                format!("{} {}", crate::notation::fixed(self.as_unit(unit), decimals), unit.symbol())
            }

            /// The smaller of the two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self { if other.0 < self.0 { other } else { self } }

            /// The larger of the two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self { if other.0 > self.0 { other } else { self } }

            /// Without its sign.
            #[must_use]
            pub const fn abs(self) -> Self { Self(self.0.abs()) }
        }

        impl crate::Notation for $name {
            fn read(text: &str) -> Result<Self, crate::ReadError> {
                const UNITS: &[crate::notation::UnitWords] = &[
                    $( crate::notation::UnitWords { words: &[$symbol, $($word),*], to_si: $factor }, )+
                ];
                #[allow(unused_mut, unused_assignments)]
                let mut trailing: Option<(usize, usize)> = None;
                $( trailing = Some(($unit_enum::$after as usize, $unit_enum::$takes as usize)); )?
                let value = crate::notation::read_terms($label, $accepted, UNITS, trailing, text)?;
                if value < 0.0 && !$negative {
                    return Err(crate::ReadError {
                        quantity: $label,
                        text: text.to_owned(),
                        problem: crate::Problem::Negative,
                        accepted: $accepted,
                    });
                }
                Ok(Self(value))
            }
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self { Self(self.0 + other.0) }
        }
        impl std::ops::AddAssign for $name {
            fn add_assign(&mut self, other: Self) { self.0 += other.0; }
        }
        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self { Self(self.0 - other.0) }
        }
        impl std::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self { Self(-self.0) }
        }
        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, times: f64) -> Self { Self(self.0 * times) }
        }
        impl std::ops::Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, other: $name) -> $name { $name(self * other.0) }
        }
        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, parts: f64) -> Self { Self(self.0 / parts) }
        }
        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 { self.0 / other.0 }
        }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self { items.fold(Self(0.0), |a, b| a + b) }
        }
    };
}

/// `$a × $b = $c` and the two divisions that follow from it, all in SI.
macro_rules! product {
    ($a:ident * $b:ident = $c:ident) => {
        impl std::ops::Mul<$b> for $a {
            type Output = $c;
            fn mul(self, other: $b) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl std::ops::Mul<$a> for $b {
            type Output = $c;
            fn mul(self, other: $a) -> $c {
                $c(self.0 * other.0)
            }
        }
        impl std::ops::Div<$a> for $c {
            type Output = $b;
            fn div(self, other: $a) -> $b {
                $b(self.0 / other.0)
            }
        }
        impl std::ops::Div<$b> for $c {
            type Output = $a;
            fn div(self, other: $b) -> $a {
                $a(self.0 / other.0)
            }
        }
    };
}
