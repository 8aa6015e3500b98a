//! The engine from its fields.

use super::Reader;
use crate::engine::Engine;

/// The engine, where enough of it is known.
pub(crate) fn engine(_reader: &mut Reader<'_>) -> Option<Engine> {
    None
}
