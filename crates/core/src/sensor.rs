//! Sensors at the controller's inputs: what each should read, and what the controller makes of it.
//!
//! **Model.** A sensor of two wires is a resistance between its input and its ground, which an input's pull-up makes a
//! voltage of; one of three wires gives a share of its supply. Both are still: no filter, no noise, no time. What is only known
//! between two ends is worked out at both: every voltage rises or falls throughout with each of what it is made of.

pub mod atmosphere;
pub mod curve;
pub mod divider;
pub mod element;
pub mod entered;
pub mod platinum;
pub mod ratiometric;
pub mod thermistor;
pub mod thermocouple;
pub mod tracks;
