//! The sentences of the question of rest.

mod explained;

pub(crate) use explained::EXPLANATIONS;

use crate::words::sentences;

sentences! {
    QUESTION = "rest.question", "May I connect this load?";
    PENDING = "rest.pending", "One moment…";
    // not answered yet
    OPEN = "rest.open", "Name an output and what hangs on it";
    WHY_OPEN = "rest.why-open",
        "Three things first: the output's stage, the load, and where the load's other end goes.";
    OPEN_NO_LOADS = "rest.open-no-loads", "Name a load: what hangs on the output?";
    OPEN_STAGE = "rest.open-stage", "Say what stage {output} is.";
    OPEN_FAR_END = "rest.open-far-end", "Say where its other end goes.";
    OPEN_OUTPUT = "rest.open-output", "Say which output it hangs on.";
    OPEN_NO_SUCH_OUTPUT = "rest.open-no-such-output", "It hangs on no output of this plan.";
    OPEN_MEND = "rest.open-mend", "Mend the marked field first.";
    OPEN_UNSOLVED = "rest.open-unsolved", "This circuit can't be solved.";
    WHY_MEND = "rest.why-mend", "A value that can't be read is not the same as none, and the answer hangs on it.";
    END_WOULD_DO = "rest.end-would-do", "{end} would do: at most {unasked} across it at rest, {on} when on.";
    END_WOULD_DO_AT_LEVEL = "rest.end-would-do-at-level",
        "{end} would do, if {level} counts as on: at most {unasked} across it at rest, {on} when on.";
    NO_END_WOULD_DO = "rest.no-end-would-do", "None of the four ends is safe on {output}: choose another output.";
    OUTPUT_WOULD_DO = "rest.output-would-do",
        "{output} would do: at most {unasked} across it at rest, {on} when on.";
    OUTPUT_WOULD_DO_AT_LEVEL = "rest.output-would-do-at-level",
        "{output} would do, if {level} counts as on: at most {unasked} across it at rest, {on} when on.";
    LOAD_TITLE = "rest.load-title", "{load} on {output}";
    LOAD_TITLE_ALONE = "rest.load-title-alone", "{load}";
    // verdicts
    CONNECT = "rest.connect", "Connect it";
    NO_LIVE_AT_REST = "rest.no-live-at-rest", "Don't connect it: live at rest";
    NO_LIVE_AT_KEY_ON = "rest.no-live-at-key-on", "Don't connect it: live at key-on";
    NO_LIVE_KEY_OFF = "rest.no-live-key-off", "Don't connect it: live with the key off";
    NO_MAY_STAY_IN = "rest.no-may-stay-in", "Don't connect it: it may not let go";
    NO_MAY_STAY_IN_KEY_OFF = "rest.no-may-stay-in-key-off", "Don't connect it: may stay in, key off";
    NO_ACTS_WITH_OTHER = "rest.no-acts-with-other", "Don't connect it: another output works it";
    NO_MAY_STAY_IN_WITH_OTHER = "rest.no-may-stay-in-with-other", "Don't connect it: another output holds it";
    NO_NEVER_ACTS = "rest.no-never-acts", "Don't connect it: it never acts";
    NO_TOO_MUCH_CURRENT = "rest.no-too-much-current", "Don't connect it: too much current";
    NO_SHORTED_BY_DIODE = "rest.no-shorted-by-diode", "Don't connect it: its diode shorts it";
    NO_KICK_TOO_STRONG = "rest.no-kick-too-strong", "Don't connect it: its kick is too much";
    NO_TOO_FAST = "rest.no-too-fast", "Don't connect it: too fast for the output";
    CARE_CHATTERS = "rest.care-chatters", "With care: it chatters";
    CARE_KICKS_HEAT = "rest.care-kicks-heat", "With care: its kicks heat the output";
    NO_WAKES_CONTROLLER = "rest.no-wakes-controller", "Don't connect it: it feeds the dead controller";
    NO_MAY_STAY_IN_AT_RESTART = "rest.no-may-stay-in-at-restart", "Don't connect it: may stay in, restart";
    CARE_MAY_STAY_IN_AT_RESTART = "rest.care-may-stay-in-at-restart", "With care: may stay in at a restart";
    CARE_WEAK = "rest.care-weak", "With care: it may not act";
    CARE_INRUSH = "rest.care-inrush", "With care: inrush above the limit";
    CARE_FEEDS_DEAD_FEED = "rest.care-feeds-dead-feed", "With care: it feeds a dead circuit";
    CARE_LEAKS = "rest.care-leaks", "With care: leaks into the controller";
    CARE_DRAINS = "rest.care-drains", "With care: it drains the battery";
    CARE_LIFTS_LOGIC_RAIL = "rest.care-lifts-logic-rail", "With care: it lifts the sensor supply";
    DEPENDS = "rest.depends", "Depends: you don't know what counts as on";
    NO_EITHER_WAY = "rest.no-either-way", "Don't connect it: wrong either way";
    // why
    WHY_CONNECT = "rest.why-connect",
        "It gets at most {unasked} at rest and {on} when on; it is sure to act from {acts} on, and to let go below {lets_go}.";
    WHY_CONNECT_BUT = "rest.why-connect-but",
        "It gets at most {unasked} at rest and {on} when on; while cranking perhaps {weak}, and hot it is sure to act only from {acts} on.";
    // findings
    LIVE_AT_REST = "rest.live-at-rest",
        "{load} is live while {output} is off: {voltage} across it through {through}, and it acts from {acts} on ({corner}).";
    LIVE_AT_KEY_ON = "rest.live-at-key-on",
        "{load} is live for the 0.1 to 1 s in which the controller starts: {voltage} across it through {through}, and it acts from {acts} on ({corner}).";
    LIVE_KEY_OFF = "rest.live-key-off",
        "{load} is live with the key off: {voltage} across it through {through}, and it acts from {acts} on ({corner}).";
    MAY_STAY_IN = "rest.may-stay-in",
        "{load} may not let go when {output} is off: {voltage} stays across it through {through}, and it is sure to let go only below {lets_go} ({corner}).";
    MAY_STAY_IN_KEY_OFF = "rest.may-stay-in-key-off",
        "{load} may stay in when the key is turned off: {voltage} stays across it through {through}, and it is sure to let go only below {lets_go} ({corner}).";
    ACTS_WITH_OTHER = "rest.acts-with-other",
        "{load} acts when another output is on: {voltage} across it through {through}, and it acts from {acts} on ({corner}).";
    MAY_STAY_IN_WITH_OTHER = "rest.may-stay-in-with-other",
        "{load} may not let go while another output is on: {voltage} stays across it through {through}, and it is sure to let go only below {lets_go} ({corner}).";
    NEVER_ACTS = "rest.never-acts",
        "{load} never acts: with {output} on there is at most {voltage} across it, and it needs {acts}.";
    TOO_MUCH_CURRENT = "rest.too-much-current",
        "{output} carries {current} when {load} is on, and its limit is {limit} ({corner}).";
    WAKES_CONTROLLER = "rest.wakes-controller",
        "With the key off, {current} from {load} flow through {through} into the dead supply of the controller and lift it to {voltage} ({corner}): the engine may not stop, and the battery goes flat.";
    MAY_STAY_IN_AT_RESTART = "rest.may-stay-in-at-restart",
        "If the controller restarts while {load} is on (a dip of the battery does it), {load} may stay in meanwhile: {voltage} across it through {through}; it is sure to let go only below {lets_go} ({corner}).";
    WEAK = "rest.weak",
        "{load} is not sure to act: {voltage} across it with {output} on, and it needs {acts} ({corner}).";
    INRUSH = "rest.inrush",
        "{output} carries {current} for a moment when {load} is switched on, and its limit is {limit} ({corner}).";
    FEEDS_DEAD_FEED = "rest.feeds-dead-feed",
        "{load} feeds the circuit at its other end while that is switched off: {current} ({corner}).";
    LEAKS_INTO_CONTROLLER = "rest.leaks-into-controller",
        "With the key off, {current} from {load} leak through {through} into the dead supply of the controller ({corner}).";
    DRAINS_BATTERY = "rest.drains-battery",
        "{load} on {output} takes {current} from the battery with the key off.";
    LIFTS_LOGIC_RAIL = "rest.lifts-logic-rail",
        "{load} pushes {current} through {through} into the controller's 5 V or 3.3 V ({corner}): no regulator takes that back, and the sensors' supply rises.";
    WEAK_WHILE_CRANKING = "rest.weak-while-cranking",
        "{load} may not act while the starter turns: {voltage} across it, and it is sure to act from {acts} on ({corner}).";
    ACTS_WITHOUT_FEED = "rest.acts-without-feed",
        "If the fuse of its feed is pulled, {load} may act all the same: {voltage} across it, backwards through {through} ({corner}).";
    ACTS_WITHOUT_GROUND = "rest.acts-without-ground",
        "If the controller loses its ground, its own current seeks a way through {through} and {load}: {voltage} across it, and it acts from {acts} on ({corner}).";
    ACTS_WITHOUT_SUPPLY = "rest.acts-without-supply",
        "If the controller loses its supply, {load} may act: {voltage} across it through {through}, and it acts from {acts} on ({corner}).";
    KEEPS_FEED_ALIVE = "rest.keeps-feed-alive",
        "If the fuse of its feed is pulled, {output} feeds through {load} what else hangs on that feed: {current} ({corner}).";
    KEEPS_CONTROLLER_ALIVE = "rest.keeps-controller-alive",
        "If the controller loses its supply, {current} from {load} flow through {through} and lift its supply to {voltage} ({corner}): half alive, it may do anything.";
    SHORTED_BY_DIODE = "rest.shorted-by-diode",
        "The diode across {load} is the wrong way round for this: {current} through it ({corner}).";
    SHORTED_WHEN_TURNED = "rest.shorted-when-turned",
        "When the other output drives {load} the other way round, the diode across it is a short: {current} through {through} ({corner}).";
    KICK_TOO_STRONG = "rest.kick-too-strong",
        "Each time {load} is switched off at {current}, the clamp of {output} takes {energy}, and it may take {limit} ({corner}).";
    KICK_UNCAUGHT = "rest.kick-uncaught",
        "When {load} is switched off, its {current} must run on somewhere, and nothing in the plan catches it: no diode or resistor across it, no clamp in {output}.";
    TOO_FAST = "rest.too-fast",
        "{load} is pulsed at {frequency}, and {output} can do {limit}: it is never fully on or off, and melts.";
    CHATTERS = "rest.chatters",
        "{load} lets go between the pulses: {voltage} is left of what drives it ({frequency}, {duty} on, {corner}).";
    KICKS_HEAT = "rest.kicks-heat",
        "The kicks of {load} heat {output} with {heat} ({frequency}, {duty} on, {corner}).";
    PULSED_TOO_LITTLE = "rest.pulsed-too-little",
        "At {duty} on and {frequency} {load} is not sure to act: its pulses drive it like {voltage}, and it needs up to {acts} ({corner}).";
    DEPENDS_ON_LEVEL = "rest.depends-on-level",
        "What counts as on at {output} is not known. If ground: {ground}. If battery: {battery}.";
    WRONG_EITHER_WAY = "rest.wrong-either-way",
        "{load} is wrong on {output}, whatever counts as on. If ground: {ground}. If battery: {battery}.";
    DEPENDS_ON_RESISTANCE = "rest.depends-on-resistance",
        "The resistance of {load} decides: at {low} the answer is “{at_low}”, at {high} “{at_high}”.";
    DEPENDS_ON_DEAD_SUPPLY = "rest.depends-on-dead-supply",
        "What else hangs on the controller's supply decides for {load}: at {low} to ground the answer is “{at_low}”, at {high} “{at_high}”.";
    DEPENDS_ON_DEAD_FEED = "rest.depends-on-dead-feed",
        "What else hangs on the feed of {load} decides: at {low} to ground the answer is “{at_low}”, at {high} “{at_high}”.";
    SOLVED_WITHOUT = "rest.solved-without",
        "{load} hangs on {output} too, but too little is known of it: {others} {n|is|are} answered without it.";
    OUTPUT_NAMED_TWICE = "rest.output-named-twice",
        "Two outputs are named “{name}”; loads that name it are taken to hang on the first.";
    LETS_GO_ABOVE = "rest.lets-go-above",
        "It can't let go at {drop_out} when it acts from {pull_in} on: the first must be the lower. Check both against the data sheet.";
    // what to do
    DO_LEVEL = "rest.do-level",
        "Set the controller so that {level} counts as on: {then}. A new file or firmware can undo it: prove the bare pin again each time.";
    DO_LEVEL_IF = "rest.do-level-if",
        "Make sure that {level} counts as on: {then}. A new file or firmware can undo it: prove the bare pin again each time.";
    DO_IF_LEVEL = "rest.do-if-level", "If {level} counts as on, {change}";
    DO_END = "rest.do-end", "Move its other end to {end}: {then}.";
    DO_LEVEL_AND_END = "rest.do-level-and-end",
        "Set the controller so that {level} counts as on, and move its other end to {end}: {then}. A new file or firmware can undo it: prove the bare pin again each time.";
    DO_SPARE = "rest.do-spare", "Move it to {output}, which must carry {current}, its other end to {end}: {then}.";
    DO_SPARE_AT_LEVEL = "rest.do-spare-at-level",
        "Move it to {output}, which must carry {current}, with {level} as on, its other end to {end}: {then}.";
    DO_PULL_DOWN = "rest.do-pull-down", "Splice {resistor}, {power} or more, from the pin to ground: {then}.";
    DO_BLEEDER = "rest.do-bleeder",
        "Put {resistor}, {power} or more, across the load, from its one wire to the other: {then}.";
    DO_FEED_DIODE = "rest.do-feed-diode",
        "Put a diode that bears {current} and 100 V into its feed, stripe to the load; it costs the load 0.7 V: {then}.";
    DO_COIL_DIODE = "rest.do-coil-diode",
        "Put a diode that bears {current} and 100 V across its winding, stripe to plus; it then lets go up to {time} after it is switched off: {then}.";
    DO_SLOWER = "rest.do-slower",
        "Pulse it at {frequency} at most, if it bears that (a valve may then be heard): {then}.";
    DO_TURN = "rest.do-turn", "Let the load's two wires change places, stripe of its diode to plus: {then}.";
    DO_NO_DIODE = "rest.do-no-diode",
        "Take the diode off, or a load without one: driven both ways, one way shorts through it, and the two outputs catch the kick themselves: {then}.";
    DO_STAGE = "rest.do-stage", "Use {stage} instead that may carry {current}, its other end at {end}: {then}.";
    DO_RELAY = "rest.do-relay",
        "Put a relay between: its coil on {output}, the coil's other end at {end}, the load on its contact with a fuse of its own. For the coil: {then}.";
    THEN = "rest.then", "at most {unasked} across it at rest, {on} when on";
    DO_NOTHING_FOUND = "rest.do-nothing-found",
        "No other way to wire it solves clean with what the plan has: leave it unplugged, and ask the maker of the controller for an output that rests open.";
    DO_MEASURE = "rest.do-measure", "Measure first: {how}";
    DO_PROVE_READS = "rest.do-prove-reads",
        "Before you plug it in: meter from the bare pin to ground, key on, output off. It must read {reading}.";
    DO_PROVE_FLOATS = "rest.do-prove-floats",
        "Before you plug it in: the bare pin floats, and a meter shows 0 V or drifts, on or off. Hang {resistor} from it to {end}: it must read {off} with the output off, and {on} with it on.";
    DO_PROVE_LAMP = "rest.do-prove-lamp",
        "Or a test lamp of 12 V, 3 W in the resistor's stead: dark with the output off, lit with it on. It takes {current}.";
    DO_NO_LAMP = "rest.do-no-lamp",
        "No test lamp: it takes {inrush} for a moment, and the output's limit is {limit}.";
    DO_PROVE_OTHER = "rest.do-prove-other", "Then the same at {output}, which is the load's other end: {reading}.";
    DO_PROVE_OTHER_FLOATS = "rest.do-prove-other-floats",
        "Then at {output}, which is the load's other end, with {resistor} from it to {end}: {off} with the output off, and {on} with it on.";
    DO_CHECK_LIMIT = "rest.do-check-limit", "Check the pin table: {output} must carry {current}.";
    AND_INRUSH = "rest.and-inrush", "{current} ({inrush} for a moment)";
    // cautions
    CAUTION_DANGEROUS = "rest.caution-dangerous",
        "It can hurt someone if it acts unasked: keep its fuse out until the bare pin is proved, and put a switch in series that cuts it by hand. While the controller starts its outputs are taken as open, which only its maker can promise.";
    CAUTION_SETTING = "rest.caution-setting",
        "It rests by a setting, which a new file or firmware can undo: prove the bare pin again each time.";
    CAUTION_MOVING = "rest.caution-moving",
        "Things move by themselves at key-on: hands out, gearbox in neutral, before the first try.";
    CAUTION_DIODE_COIL = "rest.caution-diode-coil",
        "A relay with a built-in diode minds which way round its coil is: the wrong way is a dead short when on.";
    // figures
    FIGURE_ON_CURRENT = "rest.figure-on-current", "Current when on";
    FIGURE_INRUSH = "rest.figure-inrush", "Current at switch-on";
    FIGURE_REST_VOLTAGE = "rest.figure-rest-voltage", "Across it when off";
    FIGURE_KEY_OFF_CURRENT = "rest.figure-key-off-current", "Into the dead controller, key off";
    FIGURE_LETS_GO = "rest.figure-lets-go", "Lets go after (its kick caught by {catcher})";
    FIGURE_IN_CLAMP = "rest.figure-in-clamp", "Into the clamp at each turn-off";
    FIGURE_PULSED_MEAN = "rest.figure-pulsed-mean", "Mean current, pulsed at {frequency}, {duty} on";
    FIGURE_PULSED_SWING = "rest.figure-pulsed-swing", "Current swings, pulsed at {frequency}, {duty} on";
    FIGURE_PULSED_HEAT = "rest.figure-pulsed-heat", "Kicks heat the output, pulsed at {frequency}, {duty} on";
    FIGURE_ACTS_HOT = "rest.figure-acts-hot", "To act for certain, hottest";
    // tables
    TABLE_STATES = "rest.table-states", "In every key state (battery at rest, 20 °C; then lowest to highest)";
    TABLE_STATES_AT_LEVEL = "rest.table-states-at-level",
        "If {level} counts as on: every key state (battery at rest, 20 °C; then lowest to highest)";
    COLUMN_STATE = "rest.column-state", "State";
    COLUMN_EFFECT = "rest.column-effect", "The load";
    COLUMN_ACROSS = "rest.column-across", "Across it";
    COLUMN_THROUGH = "rest.column-through", "Through it";
    COLUMN_PIN = "rest.column-pin", "Pin to ground";
    COLUMN_BARE = "rest.column-bare", "Meter on the bare pin";
    TABLE_DAY = "rest.table-day", "Through a day: in and out by what was before";
    COLUMN_STEP = "rest.column-step", "Then";
    DAY_ON_BEFORE = "rest.day-on-before", "{state}, after it was on";
    DAY_AGAIN = "rest.day-again", "Key on, starting again while on";
    POSITION_OUT = "rest.position-out", "out";
    POSITION_MAY_STAY = "rest.position-may-stay", "may stay in";
    POSITION_IN = "rest.position-in", "in";
    TABLE_TAKEN = "rest.table-taken", "What was taken for it";
    COLUMN_WHAT = "rest.column-what", "What";
    COLUMN_VALUE = "rest.column-value", "Value";
    COLUMN_BASIS = "rest.column-basis", "From";
    TAKEN_RESISTANCE = "rest.taken-resistance", "Its resistance at 20 °C";
    TAKEN_PULL_IN = "rest.taken-pull-in", "Acts from";
    TAKEN_INDUCTANCE = "rest.taken-inductance", "Inductance of its winding";
    TAKEN_DEAD_SUPPLY = "rest.taken-dead-supply", "Controller's dead supply to ground";
    TAKEN_DEAD_FEED = "rest.taken-dead-feed", "Its dead feed to ground";
    TAKEN_CONTACT = "rest.taken-contact", "Relay's contact (87)";
    TAKEN_CONTACT_STATES = "rest.taken-contact-states",
        "open with the key off, either way until the output is on, then closed";
    TAKEN_START = "rest.taken-start", "Stages open while the controller starts";
    TAKEN_DIODE = "rest.taken-diode", "Body diode";
    TAKEN_USUAL = "rest.taken-usual", "usual for its kind";
    TAKEN_GIVEN = "rest.taken-given", "the plan";
    TAKEN_PRACTICE = "rest.taken-practice", "common practice, no source";
    // states and effects
    STATE_KEY_OFF = "rest.state-key-off", "Key off";
    STATE_STARTING = "rest.state-starting", "Key on, starting";
    STATE_OFF = "rest.state-off", "Running, output off";
    STATE_ON = "rest.state-on", "Output on";
    STATE_BOTH_ON = "rest.state-both-on", "Both outputs on";
    STATE_PULSED = "rest.state-pulsed", "Output pulsed";
    STATE_OTHER_ON = "rest.state-other-on", "Other output on";
    STATE_FEED_LOST = "rest.state-feed-lost", "Fuse of its feed pulled";
    STATE_GROUND_LOST = "rest.state-ground-lost", "Controller's ground lost";
    STATE_SUPPLY_LOST = "rest.state-supply-lost", "Controller's supply lost";
    EFFECT_RESTS = "rest.effect-rests", "rests";
    EFFECT_RESTS_FEEDS = "rest.effect-rests-feeds", "rests, but feeds the controller";
    EFFECT_MAY_HOLD = "rest.effect-may-hold", "may stay in";
    EFFECT_MAY_ACT = "rest.effect-may-act", "may act";
    EFFECT_LIVE = "rest.effect-live", "LIVE";
    EFFECT_LIVE_AT_SOME = "rest.effect-live-at-some", "LIVE at some corners";
    EFFECT_ACTS = "rest.effect-acts", "acts";
    EFFECT_ACTS_NOT_CRANKING = "rest.effect-acts-not-cranking", "acts; not sure while cranking";
    EFFECT_SHORTED = "rest.effect-shorted", "shorted by its diode";
    EFFECT_TURNED = "rest.effect-turned", "acts the other way round";
    EFFECT_NOT_SURE = "rest.effect-not-sure", "not sure to act";
    EFFECT_EACH_PULSE = "rest.effect-each-pulse", "acts with each pulse";
    EFFECT_STAYS_IN = "rest.effect-stays-in", "stays in between the pulses";
    EFFECT_TOO_LITTLE = "rest.effect-too-little", "does not act at this duty";
    EFFECT_BY_DUTY = "rest.effect-by-duty", "acts or rests, as the duty is";
    EFFECT_NEVER = "rest.effect-never", "does not act";
    FLOATS = "rest.floats", "0 V (floats)";
    PICTURE = "rest.picture", "{load} on {output}, {stage}; its other end at {end}";
    PICTURE_AT_LEVEL = "rest.picture-at-level",
        "{load} on {output}, {stage} with {level} as on; its other end at {end}";
    PICTURE_STATE = "rest.picture-state", "{voltage} across it, {current} through it: {effect} ({corner}).";
    PICTURE_STATE_BESIDE = "rest.picture-state-beside",
        "{voltage} across it, {current} through it and {beside} through {what}: {effect} ({corner}).";
    // names
    A_STAGE_OPEN_DRAIN = "rest.a-stage-open-drain", "an open-drain output";
    A_STAGE_HIGH_SIDE = "rest.a-stage-high-side", "a high-side output";
    A_STAGE_HALF_BRIDGE = "rest.a-stage-half-bridge", "a half-bridge output";
    A_STAGE_LOGIC = "rest.a-stage-logic", "a logic output";
    LEVEL_GROUND = "rest.level-ground", "ground";
    LEVEL_BATTERY = "rest.level-battery", "battery";
    LEVEL_FIVE_VOLT = "rest.level-five-volt", "5 V";
    END_GROUND = "rest.end-ground", "ground (31)";
    END_BATTERY = "rest.end-battery", "permanent battery (30)";
    END_IGNITION = "rest.end-ignition", "the ignition switch (15)";
    END_RELAY = "rest.end-relay", "a relay's contact (87)";
    BACKWARDS = "rest.backwards", "{value}, backwards";
    END_OUTPUT = "rest.end-output", "the other output of the pair";
    PAIR_OF_ONE = "rest.pair-of-one",
        "A load can't go from {output} to {output}: name the other output of the pair.";
    END_FIVE_VOLT = "rest.end-five-volt", "the controller's 5 V";
    PART_SUPPRESSOR = "rest.part-suppressor", "what lies across it";
    CATCHER_NONE = "rest.catcher-none", "nothing in the plan";
    CATCHER_DIODE = "rest.catcher-diode", "the diode across it";
    CATCHER_RESISTOR = "rest.catcher-resistor", "the resistor across it";
    CATCHER_SWITCH = "rest.catcher-switch", "the other switch of the output";
    CATCHER_CLAMP = "rest.catcher-clamp", "the clamp of the output";
    PART_LOAD = "rest.part-load", "the other load on the pin";
    PART_UPPER_SWITCH = "rest.part-upper-switch", "the upper switch";
    PART_LOWER_SWITCH = "rest.part-lower-switch", "the lower switch";
    PART_UPPER_DIODE = "rest.part-upper-diode", "the upper body diode";
    PART_LOWER_DIODE = "rest.part-lower-diode", "the lower body diode";
    PART_PULL_UP = "rest.part-pull-up", "the pull-up";
    PART_PULL_DOWN = "rest.part-pull-down", "the pull-down";
    PART_UPPER_LEAK = "rest.part-upper-leak", "the leakage of the upper switch";
    PART_LOWER_LEAK = "rest.part-lower-leak", "the leakage of the lower switch";
}
