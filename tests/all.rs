//! All tests of this package in one program: compiled and linked once. `cargo test -p quietpin-tests -- outputs::` runs
//! those of one module.

mod bus;
mod car;
mod circuits;
mod coils;
mod cranking;
mod engine;
mod feeds;
mod firing;
mod former;
mod fuel;
mod fusing;
mod injectors;
mod killers;
mod laws;
mod outputs;
mod pins;
mod plans;
mod points;
mod remedies;
mod schema;
mod sensors;
mod severities;
mod sound;
mod standing;
mod tidy;
mod trigger;
mod usual;
mod validation;
mod wires;
