//! The core for JavaScript: translates, and computes nothing.
