//! The sentences about kill switch, starter and what the controller survives.

use crate::words::{Explanation, sentences};

sentences! {
    KILL_TITLE = "feeds.kill-title", "Kill switch";
    SURVIVES_TITLE = "feeds.survives-title", "Overvoltage";
    KILL_GOOD = "feeds.kill-good", "The kill switch stops the engine";
    KILL_OPEN = "feeds.kill-open", "Needs: what the alternator is rated for";
    KILL_BAD = "feeds.kill-bad", "The engine runs on with the kill switch thrown";
    SURVIVES_GOOD = "feeds.survives-good", "The controller survives a jump start and a load dump";
    SURVIVES_OPEN = "feeds.survives-open", "Needs: the highest supply the controller survives";
    SURVIVES_NOT = "feeds.survives-not", "The controller may not survive a mistake";
    STARTER_BAD = "feeds.starter-bad", "Nothing blocks the starter in gear";
    LIST_JUMP = "feeds.list-jump", "a jump start from 24 V";
    LIST_DUMP = "feeds.list-dump", "a battery that comes off while charging (35 V)";
    LIST_REVERSED = "feeds.list-reversed", "a reversed battery";
    // what to do
    DO_KILL = "feeds.do-kill", "Fit a kill switch with a second pole, for the alternator's field or the ignition feed (15).";
    DO_INTERLOCK = "feeds.do-interlock", "Put a neutral or clutch switch in series with the coil of {feed}.";
    // findings
    KILL_RUNS_ON = "feeds.kill-runs-on",
        "The kill switch cuts the battery alone: the alternator feeds the controller and the engine runs on, and with no battery its voltage destroys what is on it.";
    STARTER_UNLOCKED = "feeds.starter-unlocked",
        "{feed}: nothing keeps the starter from turning the engine in gear: the car moves, with nobody at the wheel.";
    NOT_SURVIVED = "feeds.not-survived", "The controller does not survive {list}.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: KILL_RUNS_ON.code,
        // The kill switch is said to cut the battery alone, and an alternator is known.
        why: "After a crash the switch is what stops pump and sparks. An alternator that is turning feeds both as well as the battery did, and its load dump has nowhere to go.",
        act: "A switch that cuts the alternator's field or the ignition feed as well, with the resistor that goes with it.",
        source: "common practice, no source",
    },
    Explanation {
        code: STARTER_UNLOCKED.code,
        // A relay of a starter of which it is said that nothing blocks it.
        why: "A starter moves a car that is in gear, and a hand that lies in the engine with it.",
        act: "A neutral or clutch switch in series with the relay's coil, so that no output alone can turn it.",
        source: "common practice, no source",
    },
    Explanation {
        code: NOT_SURVIVED.code,
        // What is typed of the controller is less than a standard asks.
        why: "One mistake at the battery and the controller is gone.",
        act: "Jump leads from 12 V alone, plus to plus; never take the battery off while the engine runs.",
        source: "ISO 16750-2, from memory: 24 V for 60 s, a load dump held to 35 V, 14 V reversed for 60 s",
    },
];
