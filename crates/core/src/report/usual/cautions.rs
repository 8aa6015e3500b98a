//! What to beware of, each thing once.

use crate::{
    message::Message,
    questions::{
        coils::words as coils,
        cranking::words::{self as cranking, relays},
        firing::words::{self as firing, light},
        fuel::words as fuel,
        injectors::words::{self as injectors, parts},
        outputs::words as outputs,
        standing::words as standing,
        trigger::words as trigger,
    },
    report::Report,
    say_of,
    words::Wording,
};

use super::words;

/// What is said for these cautions, however many of them the answers have; in the order in which it is said.
const SAID: [(&Wording, &[&Wording]); 14] = [
    (words::CAUTION_SPARK, &[firing::CAUTION_SPARK, firing::CAUTION_VOLTAGE, coils::CAUTION_SPARK]),
    (
        words::CAUTION_KEY_ON,
        &[
            outputs::CAUTION_MOVING,
            cranking::CAUTION_CRANK,
            light::LIGHT_CAUTION,
            trigger::CAUTION_LIGHT,
        ],
    ),
    (words::CAUTION_FUSE, &[outputs::CAUTION_DANGEROUS]),
    (words::CAUTION_SETTING, &[outputs::CAUTION_SETTING]),
    (words::CAUTION_DIODE, &[outputs::CAUTION_DIODE_COIL]),
    (words::CAUTION_NO_DIODE, &[injectors::NO_DIODE]),
    (
        words::CAUTION_PRESSURE,
        &[injectors::BEFORE_WIRING, firing::CAUTION_FUEL, fuel::CAUTION_PRESSURE],
    ),
    (words::CAUTION_FLOODS, &[parts::FEED_CAUTION]),
    (words::CAUTION_HOT, &[injectors::HOT_RESISTOR, parts::HOT_DRIVER]),
    (words::CAUTION_LEAN, &[fuel::CAUTION_LEAN]),
    (words::CAUTION_PUMP, &[cranking::CAUTION_PUMP]),
    (words::CAUTION_HELD, &[cranking::CAUTION_COIL, coils::CAUTION_HELD]),
    (words::CAUTION_POWER, &[relays::CAUTION_SPARK]),
    (words::CAUTION_METER, &[standing::CAUTION_METER]),
];

/// The cautions of all answers, those that are alike as one.
pub(super) fn cautions(report: &Report) -> Vec<Message> {
    let answers = || report.sections.iter().flat_map(|section| &section.answers);
    let is_there = |it: &Wording| {
        answers().any(|answer| answer.cautions.iter().any(|caution| caution.code == it.code))
    };
    let said = SAID.iter().filter(|(_, of)| of.iter().any(|it| is_there(it)));
    said.map(|(said, _)| say_of!(said)).collect()
}

/// Whether one of these says it.
pub(super) fn is_known(code: &str) -> bool {
    SAID.iter().any(|(_, of)| of.iter().any(|it| it.code == code))
}
