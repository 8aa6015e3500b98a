//! One of several: what is chosen, its code in a file, and its label.

/// One of the things that can be chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choosable {
    /// As it stands in the plan.
    pub code: &'static str,
    /// As a person reads it.
    pub label: &'static str,
}

/// Something that is chosen from a list.
pub trait Choice: Copy + 'static {
    /// Every one of them, in the order in which they are offered.
    const ALL: &'static [Self];
    /// How each is written, in the same order.
    const TABLE: &'static [Choosable];

    /// How it is written.
    fn choosable(self) -> &'static Choosable;
}

/// Declares how the variants of an enum are written: one table, which the compiler holds to be whole.
macro_rules! choices {
    ($choice:ty { $($variant:ident $(($($inner:tt)*))? = $code:literal, $label:literal;)* }) => {
        impl $crate::schema::Choice for $choice {
            const ALL: &'static [Self] = &[$(Self::$variant $(($($inner)*))?,)*];
            const TABLE: &'static [$crate::schema::Choosable] =
                &[$($crate::schema::Choosable { code: $code, label: $label },)*];

            fn choosable(self) -> &'static $crate::schema::Choosable {
                match self {
                    $(Self::$variant $(($($inner)*))? => &$crate::schema::Choosable { code: $code, label: $label },)*
                }
            }
        }
    };
}

pub(crate) use choices;
