//! SHA-256, in the spellings that a page needs.

use base64::{Engine, engine::general_purpose::STANDARD};
use sha2::{Digest, Sha256};
use std::fmt::Write;

/// For a policy or an integrity check: `sha256-…`.
pub(crate) fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(bytes)))
}

/// For a file name: 64 bits of the hash are ample to tell two builds apart.
pub(crate) fn short(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(8).fold(String::new(), |mut text, byte| {
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// Base64 with padding, as `atob` reads it.
pub(crate) fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: FIPS 180-4 example "abc" (ba7816bf 8f01cfea …), base64 of it by coreutils.
    #[test]
    fn the_standard_example_comes_out() {
        assert_eq!(short(b"abc"), "ba7816bf8f01cfea", "first 8 bytes");
        let expected = "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=";
        assert_eq!(integrity(b"abc"), expected, "whole hash");
    }
}
