//! What each sentence is for that says what to do, question by question.

mod bus;
mod coils;
mod cranking;
mod feeds;
mod firing;
mod injectors;
mod outputs;
mod pins;
mod sensors;
mod standing;
mod trigger;
mod wires;

use super::step::Sorted;

/// All of them.
pub(super) const ALL: &[&[Sorted]] = &[
    firing::STEPS,
    injectors::STEPS,
    outputs::STEPS,
    pins::STEPS,
    trigger::STEPS,
    sensors::STEPS,
    cranking::STEPS,
    coils::STEPS,
    feeds::STEPS,
    standing::STEPS,
    bus::STEPS,
    wires::STEPS,
];
