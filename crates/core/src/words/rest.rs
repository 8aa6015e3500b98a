//! The sentences of the question of rest.

mod explained;

pub(super) use explained::EXPLANATIONS;

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] = &[
    // not answered yet
    ("rest.open", "Name an output and what hangs on it"),
    (
        "rest.why-open",
        "Three things first: the output's stage, the load, and where the load's other end goes.",
    ),
    ("rest.open-no-loads", "Name a load: what hangs on the output?"),
    ("rest.open-stage", "Say what stage {output} is."),
    ("rest.open-far-end", "Say where its other end goes."),
    ("rest.open-output", "Say which output it hangs on."),
    ("rest.open-no-such-output", "It hangs on no output of this plan."),
    ("rest.open-mend", "Mend the marked field first."),
    ("rest.open-unsolved", "This circuit can't be solved."),
    (
        "rest.why-mend",
        "A value that can't be read is not the same as none, and the answer hangs on it.",
    ),
    ("rest.end-would-do", "{end} would do: at most {unasked} across it at rest, {on} when on."),
    (
        "rest.end-would-do-at-level",
        "{end} would do, if {level} counts as on: at most {unasked} across it at rest, {on} when on.",
    ),
    ("rest.no-end-would-do", "None of the four ends is safe on {output}: choose another output."),
    (
        "rest.output-would-do",
        "{output} would do: at most {unasked} across it at rest, {on} when on.",
    ),
    (
        "rest.output-would-do-at-level",
        "{output} would do, if {level} counts as on: at most {unasked} across it at rest, {on} when on.",
    ),
    ("rest.load-title", "{load} on {output}"),
    ("rest.load-title-alone", "{load}"),
    // verdicts
    ("rest.connect", "Connect it"),
    ("rest.no-live-at-rest", "Don't connect it: live at rest"),
    ("rest.no-live-at-key-on", "Don't connect it: live at key-on"),
    ("rest.no-live-key-off", "Don't connect it: live with the key off"),
    ("rest.no-may-stay-in", "Don't connect it: it may not let go"),
    ("rest.no-may-stay-in-key-off", "Don't connect it: may stay in, key off"),
    ("rest.no-acts-with-other", "Don't connect it: another output works it"),
    ("rest.no-may-stay-in-with-other", "Don't connect it: another output holds it"),
    ("rest.no-never-acts", "Don't connect it: it never acts"),
    ("rest.no-too-much-current", "Don't connect it: too much current"),
    ("rest.no-shorted-by-diode", "Don't connect it: its diode shorts it"),
    ("rest.no-kick-too-strong", "Don't connect it: its kick is too much"),
    ("rest.no-too-fast", "Don't connect it: too fast for the output"),
    ("rest.care-chatters", "With care: it chatters"),
    ("rest.care-kicks-heat", "With care: its kicks heat the output"),
    ("rest.no-wakes-controller", "Don't connect it: it feeds the dead controller"),
    ("rest.no-may-stay-in-at-restart", "Don't connect it: may stay in, restart"),
    ("rest.care-may-stay-in-at-restart", "With care: may stay in at a restart"),
    ("rest.care-weak", "With care: it may not act"),
    ("rest.care-inrush", "With care: inrush above the limit"),
    ("rest.care-feeds-dead-feed", "With care: it feeds a dead circuit"),
    ("rest.care-leaks", "With care: leaks into the controller"),
    ("rest.care-drains", "With care: it drains the battery"),
    ("rest.care-lifts-logic-rail", "With care: it lifts the sensor supply"),
    ("rest.depends", "Depends: you don't know what counts as on"),
    ("rest.no-either-way", "Don't connect it: wrong either way"),
    // why
    (
        "rest.why-connect",
        "It gets at most {unasked} at rest and {on} when on; it is sure to act from {acts} on, and to let go below {lets_go}.",
    ),
    (
        "rest.why-connect-but",
        "It gets at most {unasked} at rest and {on} when on; while cranking perhaps {weak}, and hot it is sure to act only from {acts} on.",
    ),
    // findings
    (
        "rest.live-at-rest",
        "{load} is live while {output} is off: {voltage} across it through {through}, and it acts from {acts} on ({corner}).",
    ),
    (
        "rest.live-at-key-on",
        "{load} is live for the 0.1 to 1 s in which the controller starts: {voltage} across it through {through}, and it acts from {acts} on ({corner}).",
    ),
    (
        "rest.live-key-off",
        "{load} is live with the key off: {voltage} across it through {through}, and it acts from {acts} on ({corner}).",
    ),
    (
        "rest.may-stay-in",
        "{load} may not let go when {output} is off: {voltage} stays across it through {through}, and it is sure to let go only below {lets_go} ({corner}).",
    ),
    (
        "rest.may-stay-in-key-off",
        "{load} may stay in when the key is turned off: {voltage} stays across it through {through}, and it is sure to let go only below {lets_go} ({corner}).",
    ),
    (
        "rest.acts-with-other",
        "{load} acts when another output is on: {voltage} across it through {through}, and it acts from {acts} on ({corner}).",
    ),
    (
        "rest.may-stay-in-with-other",
        "{load} may not let go while another output is on: {voltage} stays across it through {through}, and it is sure to let go only below {lets_go} ({corner}).",
    ),
    (
        "rest.never-acts",
        "{load} never acts: with {output} on there is at most {voltage} across it, and it needs {acts}.",
    ),
    (
        "rest.too-much-current",
        "{output} carries {current} when {load} is on, and its limit is {limit} ({corner}).",
    ),
    (
        "rest.wakes-controller",
        "With the key off, {current} from {load} flow through {through} into the dead supply of the controller and lift it to {voltage} ({corner}): the engine may not stop, and the battery goes flat.",
    ),
    (
        "rest.may-stay-in-at-restart",
        "If the controller restarts while {load} is on (a dip of the battery does it), {load} may stay in meanwhile: {voltage} across it through {through}; it is sure to let go only below {lets_go} ({corner}).",
    ),
    (
        "rest.weak",
        "{load} is not sure to act: {voltage} across it with {output} on, and it needs {acts} ({corner}).",
    ),
    (
        "rest.inrush",
        "{output} carries {current} for a moment when {load} is switched on, and its limit is {limit} ({corner}).",
    ),
    (
        "rest.feeds-dead-feed",
        "{load} feeds the circuit at its other end while that is switched off: {current} ({corner}).",
    ),
    (
        "rest.leaks-into-controller",
        "With the key off, {current} from {load} leak through {through} into the dead supply of the controller ({corner}).",
    ),
    (
        "rest.drains-battery",
        "{load} on {output} takes {current} from the battery with the key off.",
    ),
    (
        "rest.lifts-logic-rail",
        "{load} pushes {current} through {through} into the controller's 5 V or 3.3 V ({corner}): no regulator takes that back, and the sensors' supply rises.",
    ),
    (
        "rest.weak-while-cranking",
        "{load} may not act while the starter turns: {voltage} across it, and it is sure to act from {acts} on ({corner}).",
    ),
    (
        "rest.acts-without-feed",
        "If the fuse of its feed is pulled, {load} may act all the same: {voltage} across it, backwards through {through} ({corner}).",
    ),
    (
        "rest.acts-without-ground",
        "If the controller loses its ground, its own current seeks a way through {through} and {load}: {voltage} across it, and it acts from {acts} on ({corner}).",
    ),
    (
        "rest.acts-without-supply",
        "If the controller loses its supply, {load} may act: {voltage} across it through {through}, and it acts from {acts} on ({corner}).",
    ),
    (
        "rest.keeps-feed-alive",
        "If the fuse of its feed is pulled, {output} feeds through {load} what else hangs on that feed: {current} ({corner}).",
    ),
    (
        "rest.keeps-controller-alive",
        "If the controller loses its supply, {current} from {load} flow through {through} and lift its supply to {voltage} ({corner}): half alive, it may do anything.",
    ),
    (
        "rest.shorted-by-diode",
        "The diode across {load} is the wrong way round for this: {current} through it ({corner}).",
    ),
    (
        "rest.shorted-when-turned",
        "When the other output drives {load} the other way round, the diode across it is a short: {current} through {through} ({corner}).",
    ),
    (
        "rest.kick-too-strong",
        "Each time {load} is switched off at {current}, the clamp of {output} takes {energy}, and it may take {limit} ({corner}).",
    ),
    (
        "rest.kick-uncaught",
        "When {load} is switched off, its {current} must run on somewhere, and nothing in the plan catches it: no diode or resistor across it, no clamp in {output}.",
    ),
    (
        "rest.too-fast",
        "{load} is pulsed at {frequency}, and {output} can do {limit}: it is never fully on or off, and melts.",
    ),
    (
        "rest.chatters",
        "{load} lets go between the pulses: {voltage} is left of what drives it ({frequency}, {duty} on, {corner}).",
    ),
    (
        "rest.kicks-heat",
        "The kicks of {load} heat {output} with {heat} ({frequency}, {duty} on, {corner}).",
    ),
    (
        "rest.pulsed-too-little",
        "At {duty} on and {frequency} {load} is not sure to act: its pulses drive it like {voltage}, and it needs up to {acts} ({corner}).",
    ),
    (
        "rest.depends-on-level",
        "What counts as on at {output} is not known. If ground: {ground}. If battery: {battery}.",
    ),
    (
        "rest.wrong-either-way",
        "{load} is wrong on {output}, whatever counts as on. If ground: {ground}. If battery: {battery}.",
    ),
    (
        "rest.depends-on-resistance",
        "The resistance of {load} decides: at {low} the answer is “{at_low}”, at {high} “{at_high}”.",
    ),
    (
        "rest.depends-on-dead-supply",
        "What else hangs on the controller's supply decides for {load}: at {low} to ground the answer is “{at_low}”, at {high} “{at_high}”.",
    ),
    (
        "rest.depends-on-dead-feed",
        "What else hangs on the feed of {load} decides: at {low} to ground the answer is “{at_low}”, at {high} “{at_high}”.",
    ),
    (
        "rest.solved-without",
        "{load} hangs on {output} too, but too little is known of it: {others} {n|is|are} answered without it.",
    ),
    (
        "rest.output-named-twice",
        "Two outputs are named “{name}”; loads that name it are taken to hang on the first.",
    ),
    (
        "rest.lets-go-above",
        "It can't let go at {drop_out} when it acts from {pull_in} on: the first must be the lower. Check both against the data sheet.",
    ),
    // what to do
    (
        "rest.do-level",
        "Set the controller so that {level} counts as on: {then}. A new file or firmware can undo it: prove the bare pin again each time.",
    ),
    (
        "rest.do-level-if",
        "Make sure that {level} counts as on: {then}. A new file or firmware can undo it: prove the bare pin again each time.",
    ),
    ("rest.do-if-level", "If {level} counts as on, {change}"),
    ("rest.do-end", "Move its other end to {end}: {then}."),
    (
        "rest.do-level-and-end",
        "Set the controller so that {level} counts as on, and move its other end to {end}: {then}. A new file or firmware can undo it: prove the bare pin again each time.",
    ),
    (
        "rest.do-spare",
        "Move it to {output}, which must carry {current}, its other end to {end}: {then}.",
    ),
    (
        "rest.do-spare-at-level",
        "Move it to {output}, which must carry {current}, with {level} as on, its other end to {end}: {then}.",
    ),
    ("rest.do-pull-down", "Splice {resistor}, {power} or more, from the pin to ground: {then}."),
    (
        "rest.do-bleeder",
        "Put {resistor}, {power} or more, across the load, from its one wire to the other: {then}.",
    ),
    (
        "rest.do-feed-diode",
        "Put a diode that bears {current} and 100 V into its feed, stripe to the load; it costs the load 0.7 V: {then}.",
    ),
    (
        "rest.do-coil-diode",
        "Put a diode that bears {current} and 100 V across its winding, stripe to plus; it then lets go up to {time} after it is switched off: {then}.",
    ),
    (
        "rest.do-slower",
        "Pulse it at {frequency} at most, if it bears that (a valve may then be heard): {then}.",
    ),
    (
        "rest.do-turn",
        "Let the load's two wires change places, stripe of its diode to plus: {then}.",
    ),
    (
        "rest.do-no-diode",
        "Take the diode off, or a load without one: driven both ways, one way shorts through it, and the two outputs catch the kick themselves: {then}.",
    ),
    (
        "rest.do-stage",
        "Use {stage} instead that may carry {current}, its other end at {end}: {then}.",
    ),
    (
        "rest.do-relay",
        "Put a relay between: its coil on {output}, the coil's other end at {end}, the load on its contact with a fuse of its own. For the coil: {then}.",
    ),
    ("rest.then", "at most {unasked} across it at rest, {on} when on"),
    (
        "rest.do-nothing-found",
        "No other way to wire it solves clean with what the plan has: leave it unplugged, and ask the maker of the controller for an output that rests open.",
    ),
    ("rest.do-measure", "Measure first: {how}"),
    (
        "rest.do-prove-reads",
        "Before you plug it in: meter from the bare pin to ground, key on, output off. It must read {reading}.",
    ),
    (
        "rest.do-prove-floats",
        "Before you plug it in: the bare pin floats, and a meter shows 0 V or drifts, on or off. Hang {resistor} from it to {end}: it must read {off} with the output off, and {on} with it on.",
    ),
    (
        "rest.do-prove-lamp",
        "Or a test lamp of 12 V, 3 W in the resistor's stead: dark with the output off, lit with it on. It takes {current}.",
    ),
    (
        "rest.do-no-lamp",
        "No test lamp: it takes {inrush} for a moment, and the output's limit is {limit}.",
    ),
    ("rest.do-prove-other", "Then the same at {output}, which is the load's other end: {reading}."),
    (
        "rest.do-prove-other-floats",
        "Then at {output}, which is the load's other end, with {resistor} from it to {end}: {off} with the output off, and {on} with it on.",
    ),
    ("rest.do-check-limit", "Check the pin table: {output} must carry {current}."),
    ("rest.and-inrush", "{current} ({inrush} for a moment)"),
    // cautions
    (
        "rest.caution-dangerous",
        "It can hurt someone if it acts unasked: keep its fuse out until the bare pin is proved, and put a switch in series that cuts it by hand. While the controller starts its outputs are taken as open, which only its maker can promise.",
    ),
    (
        "rest.caution-setting",
        "It rests by a setting, which a new file or firmware can undo: prove the bare pin again each time.",
    ),
    (
        "rest.caution-moving",
        "Things move by themselves at key-on: hands out, gearbox in neutral, before the first try.",
    ),
    (
        "rest.caution-diode-coil",
        "A relay with a built-in diode minds which way round its coil is: the wrong way is a dead short when on.",
    ),
    // figures
    ("rest.figure-on-current", "Current when on"),
    ("rest.figure-inrush", "Current at switch-on"),
    ("rest.figure-rest-voltage", "Across it when off"),
    ("rest.figure-key-off-current", "Into the dead controller, key off"),
    ("rest.figure-lets-go", "Lets go after (its kick caught by {catcher})"),
    ("rest.figure-in-clamp", "Into the clamp at each turn-off"),
    ("rest.figure-pulsed-mean", "Mean current, pulsed at {frequency}, {duty} on"),
    ("rest.figure-pulsed-swing", "Current swings, pulsed at {frequency}, {duty} on"),
    ("rest.figure-pulsed-heat", "Kicks heat the output, pulsed at {frequency}, {duty} on"),
    ("rest.figure-acts-hot", "To act for certain, hottest"),
    // tables
    ("rest.table-states", "In every key state (battery at rest, 20 °C; then lowest to highest)"),
    (
        "rest.table-states-at-level",
        "If {level} counts as on: every key state (battery at rest, 20 °C; then lowest to highest)",
    ),
    ("rest.column-state", "State"),
    ("rest.column-effect", "The load"),
    ("rest.column-across", "Across it"),
    ("rest.column-through", "Through it"),
    ("rest.column-pin", "Pin to ground"),
    ("rest.column-bare", "Meter on the bare pin"),
    ("rest.table-day", "Through a day: in and out by what was before"),
    ("rest.column-step", "Then"),
    ("rest.day-on-before", "{state}, after it was on"),
    ("rest.day-again", "Key on, starting again while on"),
    ("rest.position-out", "out"),
    ("rest.position-may-stay", "may stay in"),
    ("rest.position-in", "in"),
    ("rest.table-taken", "What was taken for it"),
    ("rest.column-what", "What"),
    ("rest.column-value", "Value"),
    ("rest.column-basis", "From"),
    ("rest.taken-resistance", "Its resistance at 20 °C"),
    ("rest.taken-pull-in", "Acts from"),
    ("rest.taken-inductance", "Inductance of its winding"),
    ("rest.taken-dead-supply", "Controller's dead supply to ground"),
    ("rest.taken-dead-feed", "Its dead feed to ground"),
    ("rest.taken-contact", "Relay's contact (87)"),
    (
        "rest.taken-contact-states",
        "open with the key off, either way until the output is on, then closed",
    ),
    ("rest.taken-start", "Stages open while the controller starts"),
    ("rest.taken-diode", "Body diode"),
    ("rest.taken-usual", "usual for its kind"),
    ("rest.taken-given", "the plan"),
    ("rest.taken-practice", "common practice, no source"),
    // states and effects
    ("rest.state-key-off", "Key off"),
    ("rest.state-starting", "Key on, starting"),
    ("rest.state-off", "Running, output off"),
    ("rest.state-on", "Output on"),
    ("rest.state-both-on", "Both outputs on"),
    ("rest.state-pulsed", "Output pulsed"),
    ("rest.state-other-on", "Other output on"),
    ("rest.state-feed-lost", "Fuse of its feed pulled"),
    ("rest.state-ground-lost", "Controller's ground lost"),
    ("rest.state-supply-lost", "Controller's supply lost"),
    ("rest.effect-rests", "rests"),
    ("rest.effect-rests-feeds", "rests, but feeds the controller"),
    ("rest.effect-may-hold", "may stay in"),
    ("rest.effect-may-act", "may act"),
    ("rest.effect-live", "LIVE"),
    ("rest.effect-live-at-some", "LIVE at some corners"),
    ("rest.effect-acts", "acts"),
    ("rest.effect-acts-not-cranking", "acts; not sure while cranking"),
    ("rest.effect-shorted", "shorted by its diode"),
    ("rest.effect-turned", "acts the other way round"),
    ("rest.effect-not-sure", "not sure to act"),
    ("rest.effect-each-pulse", "acts with each pulse"),
    ("rest.effect-stays-in", "stays in between the pulses"),
    ("rest.effect-too-little", "does not act at this duty"),
    ("rest.effect-by-duty", "acts or rests, as the duty is"),
    ("rest.effect-never", "does not act"),
    ("rest.floats", "0 V (floats)"),
    ("rest.picture", "{load} on {output}, {stage}; its other end at {end}"),
    (
        "rest.picture-at-level",
        "{load} on {output}, {stage} with {level} as on; its other end at {end}",
    ),
    ("rest.picture-state", "{voltage} across it, {current} through it: {effect} ({corner})."),
    (
        "rest.picture-state-beside",
        "{voltage} across it, {current} through it and {beside} through {what}: {effect} ({corner}).",
    ),
    // names
    ("rest.a-stage-open-drain", "an open-drain output"),
    ("rest.a-stage-high-side", "a high-side output"),
    ("rest.a-stage-half-bridge", "a half-bridge output"),
    ("rest.a-stage-logic", "a logic output"),
    ("rest.level-ground", "ground"),
    ("rest.level-battery", "battery"),
    ("rest.level-five-volt", "5 V"),
    ("rest.end-ground", "ground (31)"),
    ("rest.end-battery", "permanent battery (30)"),
    ("rest.end-ignition", "the ignition switch (15)"),
    ("rest.end-relay", "a relay's contact (87)"),
    ("rest.backwards", "{value}, backwards"),
    ("rest.end-output", "the other output of the pair"),
    (
        "rest.pair-of-one",
        "A load can't go from {output} to {output}: name the other output of the pair.",
    ),
    ("rest.end-five-volt", "the controller's 5 V"),
    ("rest.part-suppressor", "what lies across it"),
    ("rest.catcher-none", "nothing in the plan"),
    ("rest.catcher-diode", "the diode across it"),
    ("rest.catcher-resistor", "the resistor across it"),
    ("rest.catcher-switch", "the other switch of the output"),
    ("rest.catcher-clamp", "the clamp of the output"),
    ("rest.part-load", "the other load on the pin"),
    ("rest.part-upper-switch", "the upper switch"),
    ("rest.part-lower-switch", "the lower switch"),
    ("rest.part-upper-diode", "the upper body diode"),
    ("rest.part-lower-diode", "the lower body diode"),
    ("rest.part-pull-up", "the pull-up"),
    ("rest.part-pull-down", "the pull-down"),
    ("rest.part-upper-leak", "the leakage of the upper switch"),
    ("rest.part-lower-leak", "the leakage of the lower switch"),
];
