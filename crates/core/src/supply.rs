//! Fuse, wire and short: what a wire bears as it is laid, how long a fuse lets it bear more, and whether the fuse blows first.

pub mod blow;
pub mod cable;
pub mod circuit;
pub mod ground;
pub mod laid;
#[cfg(test)]
mod laws;
pub mod short;
pub mod survives;
