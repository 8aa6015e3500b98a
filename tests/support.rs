//! What the tests share: reading the reference files.
