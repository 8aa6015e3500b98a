//! Records of typed texts, with a way to each by name.
//!
//! What is done with a record is written once, for a list of its fields, and not once for each record: the
//! page carries every byte of it.

/// A field that holds a text, or several.
#[derive(Clone, Copy, Debug)]
pub(super) enum View<'a> {
    Text(&'a String),
    List(&'a Vec<String>),
}

/// The same, to be written to.
#[derive(Debug)]
pub(super) enum Slot<'a> {
    Text(&'a mut String),
    List(&'a mut Vec<String>),
}

/// A record as the list of its fields.
pub(super) trait Record: Default {
    /// The fields with their names.
    fn views(&self) -> Vec<(&'static str, View<'_>)>;
    /// The same, to be written to.
    fn slots(&mut self) -> Vec<(&'static str, Slot<'_>)>;
}

/// Declares a record whose fields are texts (`text`) or lists of texts (`list`).
macro_rules! record {
    ($(#[$meta:meta])* $name:ident { $($(#[$field_meta:meta])* $field:ident: $kind:ident,)* }) => {
        $(#[$meta])*
        #[derive(Clone, Debug, Default, PartialEq, Eq)]
        #[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
        #[cfg_attr(feature = "typescript", ts(optional_fields))]
        pub struct $name {
            $(
                $(#[$field_meta])*
                #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
                pub $field: $crate::plan::record::record!(@type $kind),
            )*
        }

        impl $name {
            /// Names of the fields, in the order in which they are asked.
            pub const FIELDS: &[&str] = &[$(stringify!($field)),*];
        }

        impl $crate::plan::record::Record for $name {
            fn views(&self) -> Vec<(&'static str, $crate::plan::record::View<'_>)> {
                vec![$((stringify!($field), $crate::plan::record::record!(@view $kind self $field))),*]
            }
            fn slots(&mut self) -> Vec<(&'static str, $crate::plan::record::Slot<'_>)> {
                vec![$((stringify!($field), $crate::plan::record::record!(@slot $kind self $field))),*]
            }
        }
    };
    (@type text) => { String };
    (@type list) => { Vec<String> };
    (@view text $this:ident $field:ident) => { $crate::plan::record::View::Text(&$this.$field) };
    (@view list $this:ident $field:ident) => { $crate::plan::record::View::List(&$this.$field) };
    (@slot text $this:ident $field:ident) => { $crate::plan::record::Slot::Text(&mut $this.$field) };
    (@slot list $this:ident $field:ident) => { $crate::plan::record::Slot::List(&mut $this.$field) };
}

pub(crate) use record;
