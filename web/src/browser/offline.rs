//! The page without a network.

/// Whether the page was opened as a file rather than from a server.
pub(crate) fn is_single_file() -> bool {
    gloo::utils::window().location().protocol().is_ok_and(|protocol| protocol == "file:")
}
