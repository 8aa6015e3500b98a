//! Pictures, for those who would rather look than read. Geometry is made here, from the numbers of the report.

mod circuit;
mod cycle;
mod timeline;

pub(crate) use circuit::CircuitView;
pub(crate) use cycle::cycle_view;
pub(crate) use timeline::timeline_view;

/// A number without decimals.
fn whole(number: f64) -> String {
    quietpin_core::math::fixed(number, 0)
}

/// A coordinate of a drawing, to a tenth of its unit.
fn at(number: f64) -> String {
    quietpin_core::math::fixed(number, 1)
}
