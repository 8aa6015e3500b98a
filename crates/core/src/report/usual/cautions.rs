//! What to beware of in what this plan says to do, each thing once.

use crate::{
    message::Message,
    questions::{
        bus::words as bus,
        coils::words as coils,
        cranking::words::{self as cranking, relays},
        feeds::words as feeds,
        firing::words::{self as firing, light, taps, wired},
        fuel::words as fuel,
        injectors::words::{self as injectors, parts},
        outputs::words as outputs,
        sensors::words as sensors,
        standing::words as standing,
        trigger::words as trigger,
        wires::words as wires,
    },
    report::{Answer, Report, Tone},
    say_of,
    words::Wording,
};

use super::{Chosen, names, proofs, words};

/// More of them than this nobody heeds.
const MOST: usize = 8;

/// When a caution is worth its line.
enum CalledFor {
    /// Wherever an answer has it.
    Always,
    /// Where one of these is to be done, or was found.
    By(&'static [&'static Wording]),
    /// Where its answer is not good: what is there, and right, needs none.
    Amiss,
}

/// What is said for some cautions, however many of them the answers have.
struct Caution {
    said: &'static Wording,
    of: &'static [&'static Wording],
    called_for: CalledFor,
}

const fn caution(
    said: &'static Wording,
    of: &'static [&'static Wording],
    called_for: CalledFor,
) -> Caution {
    Caution { said, of, called_for }
}

/// In the order in which they are said, what kills first.
const ALL: [Caution; 21] = [
    caution(
        words::CAUTION_SPARK,
        &[firing::CAUTION_SPARK, firing::CAUTION_VOLTAGE, coils::CAUTION_SPARK],
        CalledFor::By(&[
            wired::LOOK_COILS,
            taps::MUST_BE,
            taps::DO_FIRE_AGAIN,
            light::LIGHT_DO_THUMB,
            light::LIGHT_DO_TAPS,
            coils::FIRES_AT_KEY_ON,
        ]),
    ),
    caution(words::CAUTION_PLUG, &[outputs::CAUTION_UNPLUGGED], CalledFor::Always),
    caution(words::CAUTION_FUSE, &[outputs::CAUTION_DANGEROUS], CalledFor::Always),
    caution(
        words::CAUTION_PRESSURE,
        &[injectors::BEFORE_WIRING, firing::CAUTION_FUEL, fuel::CAUTION_PRESSURE],
        CalledFor::By(&[
            wired::LOOK_INJECTORS,
            injectors::RESISTOR_EACH,
            injectors::FEWER_AND_RESISTOR,
            injectors::ONLY_DRIVER,
            injectors::OR_DRIVER,
            fuel::CURE_LARGER,
            fuel::CURE_LARGER_SETS,
        ]),
    ),
    caution(words::CAUTION_PUMP, &[cranking::CAUTION_PUMP], CalledFor::Always),
    caution(words::CAUTION_HELD, &[coils::CAUTION_HELD], CalledFor::Always),
    caution(words::CAUTION_POWER, &[relays::CAUTION_SPARK], CalledFor::Always),
    caution(
        words::CAUTION_KEY_ON,
        &[
            outputs::CAUTION_MOVING,
            cranking::CAUTION_CRANK,
            light::LIGHT_CAUTION,
            trigger::CAUTION_LIGHT,
        ],
        CalledFor::By(&[
            cranking::DO_MEASURE,
            cranking::DO_LISTEN,
            trigger::DO_MEASURE,
            trigger::DO_LIGHT,
            firing::CHECK_ANGLES,
            light::LIGHT_DO_THUMB,
            light::LIGHT_DO_AGAIN,
        ]),
    ),
    caution(words::CAUTION_FLOODS, &[parts::FEED_CAUTION], CalledFor::Amiss),
    caution(words::CAUTION_LEAN, &[fuel::CAUTION_LEAN], CalledFor::Always),
    caution(
        words::CAUTION_DIODE,
        &[outputs::CAUTION_DIODE_COIL],
        CalledFor::By(&[
            outputs::DIODE_UNKNOWN,
            outputs::SHORTED_BY_DIODE,
            outputs::SHORTED_WHEN_TURNED,
            outputs::DO_TURN,
            outputs::DO_SPARE_TURNED,
            outputs::DO_STAGE_TURNED,
            outputs::DO_COIL_DIODE,
        ]),
    ),
    caution(words::CAUTION_HOT, &[injectors::HOT_RESISTOR, parts::HOT_DRIVER], CalledFor::Always),
    caution(words::CAUTION_SETTING, &[outputs::CAUTION_SETTING], CalledFor::Always),
    caution(words::CAUTION_NO_DIODE, &[injectors::NO_DIODE], CalledFor::Always),
    caution(
        words::CAUTION_METER,
        &[standing::CAUTION_METER],
        CalledFor::By(&[standing::DO_MEASURE, standing::DO_SEARCH]),
    ),
    caution(words::CAUTION_BUS, &[bus::CAUTION_OFF], CalledFor::Amiss),
    caution(words::CAUTION_CABLE, &[feeds::CAUTION_CABLE], CalledFor::Amiss),
    caution(words::CAUTION_PLATE, &[sensors::CAUTION_THROTTLE], CalledFor::Always),
    caution(words::CAUTION_HOT_SENSOR, &[sensors::CAUTION_HOT], CalledFor::By(&[sensors::DO_DATA])),
    caution(words::CAUTION_CUT, &[wires::CAUTION_CUT], CalledFor::Always),
    caution(words::CAUTION_BLOWS, &[feeds::CAUTION_FUSE], CalledFor::Amiss),
];

/// What the coils' relay is there to prevent, and what the question of coils tells of those that have none.
const SAID_ELSEWHERE: [&Wording; 1] = [cranking::CAUTION_COIL];

/// The cautions that this plan's answers call for, those that are alike as one.
pub(super) fn cautions(report: &Report, chosen: &[Chosen<'_>]) -> Vec<Message> {
    let answers = || report.sections.iter().flat_map(|section| &section.answers);
    let has = |answer: &Answer, of: &[&Wording]| {
        answer.cautions.iter().any(|caution| of.iter().any(|it| it.code == caution.code))
    };
    let is_met = |codes: &[&Wording]| {
        let is_one = |code: &str| codes.iter().any(|it| it.code == code);
        let mut to_do = chosen.iter().filter(|it| !proofs::is_done(it));
        to_do.any(|it| is_one(it.message.code))
            || report.findings.iter().any(|it| is_one(it.message.code))
    };
    let is_called_for = |it: &&Caution| match it.called_for {
        CalledFor::Always => answers().any(|answer| has(answer, it.of)),
        CalledFor::By(codes) => answers().any(|answer| has(answer, it.of)) && is_met(codes),
        CalledFor::Amiss => {
            answers().any(|answer| has(answer, it.of) && answer.verdict.tone != Tone::Good)
        }
    };
    let say = |it: &Caution| {
        let names_loads = [words::CAUTION_FUSE, words::CAUTION_PLUG];
        if names_loads.iter().all(|named| named.code != it.said.code) {
            return say_of!(it.said);
        }
        let loads = answers().filter(|answer| has(answer, it.of)).map(|answer| {
            let load = names::in_gap(answer.title.as_ref(), "load").map(str::to_owned);
            load.unwrap_or_else(|| names::called(report, &answer.subject))
        });
        let loads = names::folded(&loads.collect::<Vec<_>>());
        say_of!(it.said, loads = loads.join(", "))
    };
    ALL.iter().filter(is_called_for).map(say).take(MOST).collect()
}

/// Whether one of these says it.
pub(super) fn is_known(code: &str) -> bool {
    let said = ALL.iter().flat_map(|it| it.of).chain(&SAID_ELSEWHERE);
    said.into_iter().any(|it| it.code == code)
}
