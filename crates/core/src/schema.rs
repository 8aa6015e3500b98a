//! What a plan may hold: its parts, their fields, and what each field takes.
//!
//! A field is declared once, in a list of [`fields!`](crate::fields): that gives a typed constant ([`Key`]), through which
//! it is read, and a [`Field`], from which the form, the file, the types for JavaScript and the JSON Schema are made. A
//! path such as `loads.0.kind` is made here and nowhere else.

use std::sync::LazyLock;

mod choice;
mod field;
mod packed;
mod place;

pub use choice::{Choice, Choosable};
pub use field::{
    Condition, Draft, Field, InputName, Kind, LoadName, NumberRow, OutputName, RelayName,
    SupplyName, Text, Tier, Whole,
};
pub use place::{Key, Place};

pub(crate) use choice::choices;
pub(crate) use field::{
    choice, input_name, load_name, output_name, quantity, relay_name, row, supply_name, text, whole,
};
pub(crate) use packed::{PackedFields, offered, packed};

/// Declares the parts of a plan: a line each, with the module that lists its fields.
macro_rules! parts {
    ($($(#[$meta:meta])* $part:ident = $name:literal, $shape:ident $($module:ident)::+;)*) => {
        /// A part of a plan: one record of fields, or a list of such records.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Part { $($(#[$meta])* $part,)* }

        impl Part {
            /// Every part, in the order in which a fitter can know the answers.
            pub const ALL: &[Self] = &[$(Self::$part,)*];

            /// Its name in the plan.
            pub fn name(self) -> &'static str {
                match self { $(Self::$part => $name,)* }
            }

            /// Whether it is a list of records.
            pub fn is_list(self) -> bool {
                match self { $(Self::$part => parts!(@is_list $shape),)* }
            }

            /// The fields of a record, packed.
            pub(crate) fn packed(self) -> $crate::schema::PackedFields {
                match self { $(Self::$part => $($module)::+::PACKED,)* }
            }

            /// The fields of a record, as they are declared.
            #[cfg(test)]
            pub(crate) fn declared(self) -> &'static [$crate::schema::Field] {
                match self { $(Self::$part => $($module)::+::FIELDS,)* }
            }

            /// Where what is assumed of each comes from, in the same order; empty where nothing is assumed.
            pub(crate) fn bases(self) -> &'static [&'static str] {
                match self { $(Self::$part => $($module)::+::BASES,)* }
            }

            /// How each of them is found at the car, in the same order; empty where nothing is known of that.
            pub fn measures(self) -> &'static [&'static str] {
                match self { $(Self::$part => $($module)::+::MEASURES,)* }
            }
        }
    };
    (@is_list one) => { false };
    (@is_list many) => { true };
}

pub(crate) use parts;

pub use crate::fields::Part;

/// The fields of every part, in the order of the parts: unpacked when the first is asked for.
static FIELDS: LazyLock<Vec<Vec<Field>>> =
    LazyLock::new(|| Part::ALL.iter().map(|part| packed::unpacked(part.packed())).collect());

impl Part {
    /// The fields of a record, in the order in which they are asked.
    pub fn fields(self) -> &'static [Field] {
        FIELDS.get(self as usize).map_or(&[], Vec::as_slice)
    }

    /// The part of this name.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|part| part.name() == name)
    }

    /// Its fields, each at its place in the first record.
    pub fn places(self) -> impl Iterator<Item = Place> {
        (0..).zip(self.fields()).map(move |(field, _)| Place::new(self, field))
    }
}

/// Every field, each at its place in the first record of its part, in the order in which a fitter can know the answers.
pub fn places() -> impl Iterator<Item = Place> {
    Part::ALL.iter().flat_map(|part| part.places())
}

/// Declares the fields of a record, in the order in which they are asked: a constant each, and the list `FIELDS`.
///
/// ```text
/// fields! {
///     of Part::Engine;
///     /// Number of cylinders, or of rotors.
///     CYLINDERS: Whole = whole("cylinders", "Cylinders", 1, 16).first();
/// }
/// ```
macro_rules! fields {
    (of $part:expr; $($(#[$meta:meta])* $name:ident: $takes:ty = $draft:expr;)*) => {
        /// The fields, in the order in which they are asked.
        pub const FIELDS: &[$crate::schema::Field] = &[$({
            const DRAFT: $crate::schema::Draft<$takes> = $draft;
            DRAFT.field()
        },)*];

        /// The same, packed.
        pub(crate) const PACKED: $crate::schema::PackedFields = $crate::schema::PackedFields {
            text: {
                const BYTES: &[u8] = &{
                    const LENGTH: usize = $crate::schema::packed::<0>(FIELDS).1;
                    $crate::schema::packed::<LENGTH>(FIELDS).0
                };
                match std::str::from_utf8(BYTES) {
                    Ok(text) => text,
                    // whole texts are whole when they stand behind each other
                    Err(_) => "",
                }
            },
            choices: &{
                const COUNT: usize = $crate::schema::offered::<0>(FIELDS).1;
                $crate::schema::offered::<COUNT>(FIELDS).0
            },
        };

        /// Where what is assumed of each comes from, in the same order. What shows no more than the fields leads to none of these.
        pub const BASES: &[&str] = &[$({
            const DRAFT: $crate::schema::Draft<$takes> = $draft;
            DRAFT.basis()
        },)*];

        /// How each is found at the car, in the same order. What shows no more than the fields leads to none of these.
        pub const MEASURES: &[&str] = &[$({
            const DRAFT: $crate::schema::Draft<$takes> = $draft;
            DRAFT.how()
        },)*];

        $crate::schema::keys!($part, 0; $($(#[$meta])* $name: $takes;)*);
    };
}

/// The constants of [`fields!`], numbered in their order.
macro_rules! keys {
    ($part:expr, $number:expr;) => {};
    (
        $part:expr, $number:expr;
        $(#[$meta:meta])* $name:ident: $takes:ty;
        $($rest:tt)*
    ) => {
        $(#[$meta])*
        pub const $name: $crate::schema::Key<$takes> = $crate::schema::Key::new($part, $number);
        $crate::schema::keys!($part, $number + 1; $($rest)*);
    };
}

pub(crate) use {fields, keys};

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn what_is_unpacked_is_what_was_declared() {
        for part in Part::ALL {
            assert_eq!(part.fields(), part.declared(), "{}", part.name());
            assert!(!part.fields().is_empty(), "{}", part.name());
        }
    }

    #[test]
    fn every_place_is_found_by_its_path_and_by_its_pattern() {
        let mut seen = BTreeSet::new();
        for place in places() {
            let there = place.at(if place.part().is_list() { 7 } else { 0 });
            let there = there.in_cell(if place.field().is_list { 3 } else { 0 });
            assert_eq!(Place::at_path(&there.path()), Some(there), "{}", there.path());
            assert_eq!(Place::at_path(&place.pattern()), Some(place), "{}", place.pattern());
            assert!(seen.insert(place.pattern()), "{} stands twice", place.pattern());
        }
    }

    #[test]
    fn a_constant_stands_for_the_field_beside_which_it_is_declared() {
        use crate::fields::{engine, loads, sensor};
        for (place, name) in [
            (engine::CYLINDERS.place(), "cylinders"),
            (engine::BANKS.place(), "banks"),
            (loads::FAR_END.place(), "far_end"),
            (sensor::CONNECTOR.place(), "connector"),
        ] {
            assert_eq!(place.field().name, name);
        }
    }

    #[test]
    fn what_is_no_place_is_not_found() {
        for path in [
            "",
            "engine",
            "engine.",
            "engine.none",
            "engine.order.1",
            "loads.kind",
            "loads.-1.kind",
        ] {
            assert_eq!(Place::at_path(path), None, "{path:?}");
        }
    }

    #[test]
    fn what_is_assumed_can_be_read() {
        for place in places() {
            if let Some(assumed) = place.field().assumed {
                let is_readable = crate::read::assumed_is_readable(place.field(), assumed);
                assert!(is_readable, "{}: its default can't be read", place.pattern());
            }
        }
    }

    #[test]
    fn what_a_field_waits_for_stands_beside_it_and_can_be_chosen() {
        for place in places() {
            let Some(only) = place.field().only_if else { continue };
            let beside = place.beside(only.name).expect(only.name);
            let Kind::Choice(choices) = beside.field().kind else {
                let is_count = matches!(beside.field().kind, Kind::Whole(..));
                let is_one = |it: &&str| is_count && it.parse::<u32>().is_ok();
                assert!(only.codes.iter().all(is_one), "{}: any text will do", place.pattern());
                continue;
            };
            for code in only.codes {
                let is_there = code.is_empty() || choices.iter().any(|it| it.code == *code);
                assert!(is_there, "{}: nobody can choose {code}", place.pattern());
            }
        }
    }

    #[test]
    fn choices_have_codes_and_labels_of_their_own() {
        for place in places() {
            let Kind::Choice(choices) = place.field().kind else { continue };
            for of in [|it: &Choosable| it.code, |it: &Choosable| it.label] {
                let all: BTreeSet<_> = choices.iter().map(of).collect();
                assert_eq!(all.len(), choices.len(), "{}", place.pattern());
            }
        }
    }

    #[test]
    fn the_compilers_table_is_the_one_that_is_offered() {
        use crate::{engine::numbering::Numbering, output::Stage};
        fn check<C: Choice>() {
            let table: Vec<_> = C::ALL.iter().map(|it| *it.choosable()).collect();
            assert_eq!(table, C::TABLE);
        }
        check::<Numbering>();
        check::<Stage>();
    }
}
