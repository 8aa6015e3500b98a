//! What each finding means, beyond its own sentence: read when one is unfolded, and named nowhere else.

use crate::{
    car::engine::words as engine,
    questions::{
        bus::words as bus, coils::words as coils, cranking::words as cranking,
        feeds::words as feeds, firing::words as firing, fuel::words as fuel,
        injectors::words as injectors, outputs::words as outputs, pins::words as pins,
        sensors::words::explained as sensors, standing::words as standing,
        trigger::words as trigger, wires::words as wires,
    },
    words::{Explanation, field},
};

const EXPLANATIONS: &[&[Explanation]] = &[
    field::EXPLANATIONS,
    engine::EXPLANATIONS,
    engine::crank::EXPLANATIONS,
    firing::EXPLANATIONS,
    firing::wired::EXPLANATIONS,
    firing::taps::EXPLANATIONS,
    firing::entered::EXPLANATIONS,
    firing::light::EXPLANATIONS,
    injectors::EXPLANATIONS,
    injectors::parts::EXPLANATIONS,
    fuel::EXPLANATIONS,
    outputs::EXPLANATIONS,
    pins::EXPLANATIONS,
    cranking::EXPLANATIONS,
    cranking::relays::EXPLANATIONS,
    cranking::supply::EXPLANATIONS,
    cranking::unsearched::EXPLANATIONS,
    coils::EXPLANATIONS,
    feeds::EXPLANATIONS,
    feeds::grounds::EXPLANATIONS,
    feeds::guards::EXPLANATIONS,
    trigger::EXPLANATIONS,
    sensors::EXPLANATIONS,
    standing::EXPLANATIONS,
    bus::EXPLANATIONS,
    wires::EXPLANATIONS,
];

/// The explanation of every finding.
pub fn explanations() -> impl Iterator<Item = &'static Explanation> {
    EXPLANATIONS.iter().copied().flatten()
}

/// The explanation of a finding.
pub fn explanation(code: &str) -> Option<&'static Explanation> {
    explanations().find(|explanation| explanation.code == code)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_explanation_is_whole_and_stands_once() {
        let mut codes: Vec<_> = explanations().map(|it| it.code).collect();
        let all = codes.len();
        codes.sort_unstable();
        codes.dedup();
        assert_eq!(codes.len(), all, "a finding is explained twice");
        for it in explanations() {
            for text in [it.why, it.act, it.source] {
                assert!(text.len() > 10, "{} is explained too shortly: {text:?}", it.code);
            }
        }
    }
}
