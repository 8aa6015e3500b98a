//! Records of typed texts, with a way to each by name.

/// Whether nothing was typed in a record.
pub(super) fn is_blank<T: Default + PartialEq>(record: &T) -> bool {
    *record == T::default()
}

/// Declares a record whose fields are texts (`text`) or lists of texts (`list`).
macro_rules! record {
    ($(#[$meta:meta])* $name:ident { $($(#[$field_meta:meta])* $field:ident: $kind:ident,)* }) => {
        $(#[$meta])*
        #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
        #[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
        #[cfg_attr(feature = "typescript", ts(optional_fields))]
        #[serde(default, deny_unknown_fields)]
        pub struct $name {
            $(
                $(#[$field_meta])*
                #[serde(
                    skip_serializing_if = "record::is_blank",
                    deserialize_with = "typed::read"
                )]
                #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
                pub $field: $crate::plan::record::record!(@type $kind),
            )*
        }

        impl $name {
            /// Names of the fields, in the order in which they are asked.
            pub const FIELDS: &[&str] = &[$(stringify!($field)),*];

            pub(crate) fn get(&self, path: &str) -> Option<&str> {
                let (name, rest) = path.split_once('.').unwrap_or((path, ""));
                $(
                    if name == stringify!($field) {
                        return $crate::plan::typed::Place::get(&self.$field, rest);
                    }
                )*
                None
            }

            pub(crate) fn place(&mut self, path: &str) -> Option<&mut String> {
                let (name, rest) = path.split_once('.').unwrap_or((path, ""));
                $(
                    if name == stringify!($field) {
                        return $crate::plan::typed::Place::place(&mut self.$field, rest);
                    }
                )*
                None
            }
        }
    };
    (@type text) => { String };
    (@type list) => { Vec<String> };
}

pub(crate) use record;
