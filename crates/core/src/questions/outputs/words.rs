//! The sentences of the question of rest.

mod explained;

pub(crate) use explained::EXPLANATIONS;

use crate::words::sentences;

sentences! {
    QUESTION = "outputs.question", "May I connect this load?";
    PENDING = "outputs.pending", "One moment…";
    // not answered yet
    OPEN = "outputs.open", "Name an output and its load";
    WHY_OPEN = "outputs.why-open",
        "Needs: the output's type, the load, where its other end goes.";
    OPEN_NO_LOADS = "outputs.open-no-loads", "Name a load: what is on the output?";
    OPEN_STAGE = "outputs.open-stage", "Choose the type of {output}.";
    OPEN_FAR_END = "outputs.open-far-end", "Say where its other end goes.";
    OPEN_OUTPUT = "outputs.open-output", "Say which output it is on.";
    WHY_BY_HAND = "outputs.why-by-hand", "A switch works it: it needs no output.";
    OPEN_NO_SUCH_OUTPUT = "outputs.open-no-such-output", "It is on no output of this plan.";
    OPEN_MEND = "outputs.open-mend", "Correct the marked field first.";
    OPEN_TOO_MUCH = "outputs.open-too-much",
        "Not solved: too much is joined together";
    WHY_TOO_MUCH = "outputs.why-too-much",
        "{outputs} {outputs|output|outputs} and {loads} {loads|load|loads} are one circuit. All cases in all key states make {circuits} circuits to solve, more than this answer may take.";
    DO_EXACT = "outputs.do-exact",
        "Measure, and type one number for each blank or range of these loads and outputs: then it is solved.";
    TOO_MUCH_TOGETHER = "outputs.too-much-together",
        "{load} is not solved: {outputs} {outputs|output is|outputs are} joined to {loads} {loads|load|loads}, {circuits} circuits to solve. Nothing says that it is safe.";
    NOT_ALL_WAYS_TRIED = "outputs.not-all-ways-tried",
        "Not all other ways to wire {load} were tried: too much is joined together, or too much is asked at once.";
    DO_NOT_ALL_TRIED = "outputs.do-not-all-tried",
        "Leave it unplugged: no other way to wire it was found, but not all were tried, as too much is joined together.";
    OPEN_UNSOLVED = "outputs.open-unsolved", "This circuit can't be solved.";
    WHY_MEND = "outputs.why-mend", "A value that can't be read is not the same as none, and the answer depends on it.";
    END_WOULD_DO = "outputs.end-would-do", "{end} would do: at most {unasked} across it when off, {on} when on.";
    END_WOULD_DO_AT_LEVEL = "outputs.end-would-do-at-level",
        "{end} would do, if {level} counts as on: at most {unasked} across it when off, {on} when on.";
    NO_END_WOULD_DO = "outputs.no-end-would-do", "None of the four ends is safe on {output}: choose another output.";
    OUTPUT_WOULD_DO = "outputs.output-would-do",
        "{output} would do: at most {unasked} across it when off, {on} when on.";
    OUTPUT_WOULD_DO_AT_LEVEL = "outputs.output-would-do-at-level",
        "{output} would do, if {level} counts as on: at most {unasked} across it when off, {on} when on.";
    LOAD_TITLE = "outputs.load-title", "{load} on {output}";
    LOAD_TITLE_ALONE = "outputs.load-title-alone", "{load}";
    // verdicts
    CONNECT = "outputs.connect", "Connect it";
    MEASURE_FIRST = "outputs.measure-first", "Measure its resistance first";
    NO_LIVE_AT_REST = "outputs.no-live-at-rest", "Don't connect it: live when off";
    NO_LIVE_AT_KEY_ON = "outputs.no-live-at-key-on", "Don't connect it: live at key-on";
    NO_LIVE_KEY_OFF = "outputs.no-live-key-off", "Don't connect it: live with the key off";
    NO_MAY_STAY_IN = "outputs.no-may-stay-in", "Don't connect it: it may not drop out";
    NO_MAY_STAY_IN_KEY_OFF = "outputs.no-may-stay-in-key-off", "Don't connect it: may stay on, key off";
    NO_ACTS_WITH_OTHER = "outputs.no-acts-with-other", "Don't connect it: another output turns it on";
    NO_MAY_STAY_IN_WITH_OTHER = "outputs.no-may-stay-in-with-other", "Don't connect it: another output holds it on";
    NO_NEVER_ACTS = "outputs.no-never-acts", "Don't connect it: it never comes on";
    NO_NO_PULSES = "outputs.no-no-pulses", "Don't connect it: it gets no pulses";
    NO_TOO_MUCH_CURRENT = "outputs.no-too-much-current", "Don't connect it: too much current";
    NO_THROTTLE_ONE_WAY = "outputs.no-throttle-one-way", "Don't connect it: it needs two half-bridges";
    NO_THROTTLE_CUT = "outputs.no-throttle-cut", "Don't connect it: nothing else stops it";
    CARE_THROTTLE_CUT = "outputs.care-throttle-cut", "With care: what cuts its supply?";
    NO_OVER_VOLTAGE = "outputs.no-over-voltage", "Don't connect it: too many volts for its input";
    CARE_OVER_VOLTAGE = "outputs.care-over-voltage", "With care: can its input take that?";
    NO_LOADS_LOGIC_RAIL = "outputs.no-loads-logic-rail", "Don't connect it: too much for the 5 V";
    NO_SHORTED_BY_DIODE = "outputs.no-shorted-by-diode", "Don't connect it: its diode shorts it";
    NO_KICK_TOO_STRONG = "outputs.no-kick-too-strong", "Don't connect it: its switch-off spike is too much";
    NO_KICKS_MELT = "outputs.no-kicks-melt", "Don't connect it: its spikes melt the output";
    NO_TOO_FAST = "outputs.no-too-fast", "Don't connect it: too fast for the output";
    CARE_KICK = "outputs.care-kick", "With care: its switch-off spike may be too much";
    CARE_CHATTERS = "outputs.care-chatters", "With care: it chatters";
    CARE_KICKS_HEAT = "outputs.care-kicks-heat", "With care: its spikes heat the output";
    NO_WAKES_CONTROLLER = "outputs.no-wakes-controller", "Don't connect it: it feeds the dead controller";
    NO_LIVE_OUTLIVED = "outputs.no-live-outlived", "Don't connect it: live after key-off";
    NO_DRIVES_DEAD_FEED = "outputs.no-drives-dead-feed", "Don't connect it: its feed stays alive";
    NO_MAY_STAY_IN_AT_RESTART = "outputs.no-may-stay-in-at-restart", "Don't connect it: may stay on at a restart";
    CARE_MAY_STAY_IN_AT_RESTART = "outputs.care-may-stay-in-at-restart", "With care: may stay on at a restart";
    CARE_WEAK = "outputs.care-weak", "With care: it may not come on";
    CARE_PULSES_BLURRED = "outputs.care-pulses-blurred", "With care: it may miss pulses";
    CARE_AT_LIMIT = "outputs.care-at-limit", "With care: at the output's limit";
    CARE_INRUSH = "outputs.care-inrush", "With care: inrush above the limit";
    NO_WIRED_ELSEWHERE = "outputs.no-wired-elsewhere", "Wired to {wired}, planned on {planned}";
    NO_INRUSH = "outputs.no-inrush", "Don't connect it: its inrush is too much";
    CARE_FEEDS_DEAD_FEED = "outputs.care-feeds-dead-feed", "With care: it feeds a dead circuit";
    CARE_LEAKS = "outputs.care-leaks", "With care: leaks into the controller";
    CARE_DRAINS = "outputs.care-drains", "With care: it drains the battery";
    CARE_LIFTS_LOGIC_RAIL = "outputs.care-lifts-logic-rail", "With care: it lifts the sensor supply";
    DEPENDS = "outputs.depends", "Don't connect it yet: what counts as on is not known";
    NO_EITHER_WAY = "outputs.no-either-way", "Don't connect it: wrong either way";
    // why
    WHY_CONNECT = "outputs.why-connect",
        "It gets at most {unasked} when off and {on} when on; it is sure to pull in at {acts}, and to drop out below {lets_go}.";
    WHY_CONNECT_BUT = "outputs.why-connect-but",
        "It gets at most {unasked} when off and {on} when on; while cranking perhaps {weak}, and hot it is only sure to pull in at {acts}.";
    // findings
    ALSO = "outputs.also", "The same goes for {also}.";
    LIVE_AT_REST = "outputs.live-at-rest",
        "{load} is live while {output} is off: {voltage} across it through {through}, and it {does} {acts} ({corner}).";
    LIVE_AT_KEY_ON = "outputs.live-at-key-on",
        "{load} is live for the 0.1 to 1 s in which the controller starts: {voltage} across it through {through}, and it {does} {acts} ({corner}).";
    LIVE_KEY_OFF = "outputs.live-key-off",
        "{load} is live with the key off: {voltage} across it through {through}, and it {does} {acts} ({corner}).";
    MAY_STAY_IN = "outputs.may-stay-in",
        "{load} may not drop out when {output} is off: {voltage} stays across it through {through}, and it is only sure to drop out below {lets_go} ({corner}).";
    MAY_STAY_IN_KEY_OFF = "outputs.may-stay-in-key-off",
        "{load} may stay on when the key is turned off: {voltage} stays across it through {through}, and it is only sure to drop out below {lets_go} ({corner}).";
    ACTS_WITH_OTHER = "outputs.acts-with-other",
        "{load} comes on when another output is on: {voltage} across it through {through}, and it {does} {acts} ({corner}).";
    MAY_STAY_IN_WITH_OTHER = "outputs.may-stay-in-with-other",
        "{load} may not drop out while another output is on: {voltage} stays across it through {through}, and it is only sure to drop out below {lets_go} ({corner}).";
    NO_PULSES = "outputs.no-pulses",
        "{load} gets no pulses: with {output} off it is at {voltage} all the same, and {acts} already counts as high ({corner}).";
    NEVER_ACTS = "outputs.never-acts",
        "{load} never comes on: with {output} on there is at most {voltage} across it, and it needs {acts}.";
    THROTTLE_ONE_WAY = "outputs.throttle-one-way",
        "{load} is driven one way only, and springs hold a throttle's plate between its ends: it can't be both opened and closed.";
    THROTTLE_NO_CUT = "outputs.throttle-no-cut",
        "Nothing cuts the supply of {load}: one switch that sticks drives the plate open, and the engine with it.";
    THROTTLE_CUT_BY_ITSELF = "outputs.throttle-cut-by-itself",
        "The relay that should cut {load} off is on one of the outputs that drive it: the switch that sticks holds it in.";
    THROTTLE_CUT_UNDRIVEN = "outputs.throttle-cut-undriven",
        "The relay that should cut {load} off is on no output: the controller can't open it when it sees the plate go wrong.";
    THROTTLE_CUT_UNKNOWN = "outputs.throttle-cut-unknown",
        "What cuts the supply of {load}, apart from the outputs that drive it, is not known.";
    OVER_VOLTAGE = "outputs.over-voltage",
        "{load} gets {voltage} from {output}, and its input is rated for {limit} ({corner}).";
    PERHAPS_OVER_VOLTAGE = "outputs.perhaps-over-voltage",
        "{load} gets {voltage} from {output}: many inputs are rated for only 5 V, and the rating of this one is not known ({corner}).";
    LOADS_LOGIC_RAIL = "outputs.loads-logic-rail",
        "{load} takes {current} from the controller's 5 V, which feeds the sensors: they all read wrong while it is on ({corner}).";
    DRIVES_OPEN_FEED = "outputs.drives-open-feed",
        "While the feed of {load} is switched off, {output} drives {current} through it into that feed and lifts it to {voltage} ({corner}): what else is on it stays alive.";
    TOO_MUCH_CURRENT = "outputs.too-much-current",
        "{output} carries {current} when {load} is on, and its limit is {limit} ({corner}).";
    AT_LIMIT = "outputs.at-limit",
        "{output} carries {current} with {load}, and its limit is {limit} ({corner}): nothing to spare.";
    WAKES_CONTROLLER = "outputs.wakes-controller",
        "With the key off, {current} from {load} flows through {through} into the dead supply of the controller ({corner}) and lifts it to {voltage} at most.";
    LIFTS_SUPPLY = "outputs.lifts-supply", "The same current lifts the controller's dead supply to {lifted} at most.";
    MAY_NOT_STOP = "outputs.may-not-stop", "The engine may not stop, and the battery goes flat.";
    GOES_FLAT = "outputs.goes-flat", "The battery goes flat.";
    LIVE_OUTLIVED = "outputs.live-outlived",
        "Key off, the controller still alive: {output} is at battery, the feed at the other end of {load} is dead, and {voltage} is across it; it {does} {acts} ({corner}).";
    PERHAPS_LIVE_OUTLIVED = "outputs.perhaps-live-outlived",
        "If the controller holds its own supply on when the key is turned off, {load} comes on: {output} is at battery and the feed at its other end is dead, {voltage} ({corner}).";
    DRIVES_DEAD_FEED = "outputs.drives-dead-feed",
        "Key off, the controller still alive: {output} drives {current} through {load} into its dead feed ({corner}): the engine may not stop.";
    PERHAPS_DRIVES_DEAD_FEED = "outputs.perhaps-drives-dead-feed",
        "If the controller holds its own supply on when the key is turned off, {output} drives {current} through {load} into its dead feed ({corner}): the engine may not stop.";
    MAY_STAY_IN_AT_RESTART = "outputs.may-stay-in-at-restart",
        "If the controller restarts while {load} is on (a dip of the battery does it), {load} may stay on meanwhile: {voltage} across it through {through}; it is only sure to drop out below {lets_go} ({corner}).";
    WEAK = "outputs.weak",
        "{load} may not come on: {voltage} across it with {output} on, and it needs {acts} ({corner}).";
    PULSES_BLURRED = "outputs.pulses-blurred",
        "{load} may miss pulses: {voltage} stays across it between them, and it is only sure to see that they end below {lets_go} ({corner}).";
    INRUSH = "outputs.inrush",
        "{output} carries {current} for a moment when {load} is switched on, and its limit is {limit} ({corner}).";
    FEEDS_DEAD_FEED = "outputs.feeds-dead-feed",
        "{load} feeds the circuit at its other end while that is switched off: {current} lifts it to {voltage} ({corner}).";
    LEAKS_INTO_CONTROLLER = "outputs.leaks-into-controller",
        "With the key off, {current} from {load} leaks through {through} into the dead supply of the controller ({corner}).";
    DRAINS_BATTERY = "outputs.drains-battery",
        "{load} on {output} takes {current} from the battery with the key off, {month} a month.";
    LIFTS_LOGIC_RAIL = "outputs.lifts-logic-rail",
        "{load} pushes {current} through {through} into the controller's 5 V or 3.3 V ({corner}): no regulator takes that back, and the sensors' supply rises.";
    WEAK_WHILE_CRANKING = "outputs.weak-while-cranking",
        "{load} may not come on while the starter turns: {voltage} across it, and it is only sure to pull in at {acts} ({corner}).";
    ACTS_WITHOUT_FEED = "outputs.acts-without-feed",
        "If the fuse of its feed is pulled, {load} may come on all the same: {voltage} across it, backwards through {through} ({corner}).";
    ACTS_WITHOUT_GROUND = "outputs.acts-without-ground",
        "If the controller loses its ground, {through} {load}: {voltage} across it, and {acting} ({corner}).";
    RETURNS_THROUGH = "outputs.returns-through", "its own current returns through {part} and";
    NO_LONGER_HELD = "outputs.no-longer-held", "it no longer holds its pin, and {part} drives";
    OVER_VOLTAGE_WITHOUT_GROUND = "outputs.over-voltage-without-ground",
        "If the controller loses its ground, {load} gets {voltage}; its data allow {limit} ({corner}).";
    ACTS_WITHOUT_SUPPLY = "outputs.acts-without-supply",
        "If the controller loses its supply, {load} may come on or stay on: {voltage} across it through {through}, and {acting} ({corner}).";
    // what goes into the gap {acting}
    ACTS_FROM = "outputs.acts-from", "it {does} {acts}";
    PULLS_IN_AT = "outputs.pulls-in-at", "pulls in at";
    COUNTS_FROM = "outputs.counts-from", "counts as on from";
    STAYS_ABOVE = "outputs.stays-above", "once in, it drops out only below {lets_go}";
    KEEPS_FEED_ALIVE = "outputs.keeps-feed-alive",
        "If the fuse of its feed is pulled, {output} feeds through {load} what else is on that feed: {current} ({corner}).";
    KEEPS_CONTROLLER_ALIVE = "outputs.keeps-controller-alive",
        "If the controller loses its supply, {current} from {load} flows through {through} and lifts its supply to {voltage} ({corner}): half alive, it may do anything.";
    SHORTED_BY_DIODE = "outputs.shorted-by-diode",
        "The diode across {load} is the wrong way round for this: {current} through it ({corner}).";
    SHORTED_WHEN_TURNED = "outputs.shorted-when-turned",
        "When the other output drives {load} the other way round, the diode across it is a short: {current} through {through} ({corner}).";
    KICK_TOO_STRONG = "outputs.kick-too-strong",
        "Each time {load} is switched off at {current}, the clamp of {output} takes {energy}, and its limit is {limit} ({corner}).";
    KICK_PERHAPS_TOO_STRONG = "outputs.kick-perhaps-too-strong",
        "Each time {load} is switched off at {current}, the clamp of {output} takes up to {energy} with the most inductance that it may have, and its limit is {limit} ({corner}).";
    KICK_BEYOND_ANY = "outputs.kick-beyond-any",
        "Each time {load} is switched off at {current}, {output} takes {energy}: usual limits are 25 to 100 mJ, and no output lasts at that ({corner}).";
    KICK_BEYOND_USUAL = "outputs.kick-beyond-usual",
        "Each time {load} is switched off at {current}, {output} takes {energy}: usual limits are 25 to 100 mJ, and its own is not known ({corner}).";
    KICKS_MELT = "outputs.kicks-melt",
        "The spikes of {load} heat {output} with {heat}, and it can shed one or two watts ({frequency}, {duty} duty, {corner}).";
    KICK_UNCAUGHT = "outputs.kick-uncaught",
        "When {load} is switched off, its {current} must go on flowing somewhere, and nothing in the plan catches it: no diode or resistor across it, no clamp in {output}.";
    DIODE_UNKNOWN = "outputs.diode-unknown",
        "Has the coil of {load} a diode? The wrong way round it is a dead short as soon as {output} switches on; with none the spike must be caught.";
    TOO_FAST = "outputs.too-fast",
        "{load} is pulsed at {frequency}, and {output} can do {limit}: it is never fully on or off, and melts.";
    CHATTERS = "outputs.chatters",
        "{load} drops out between the pulses: {voltage} is left of what drives it ({frequency}, {duty} duty, {corner}).";
    KICKS_HEAT = "outputs.kicks-heat",
        "The spikes of {load} heat {output} with {heat} ({frequency}, {duty} duty, {corner}).";
    PULSED_TOO_LITTLE = "outputs.pulsed-too-little",
        "At {duty} duty and {frequency} {load} may not come on: its pulses drive it like {voltage}, and it needs {acts} ({corner}).";
    DEPENDS_ON_LEVEL = "outputs.depends-on-level",
        "If ground counts as on at {output}: {ground}. If battery does: {battery}.";
    WRONG_EITHER_WAY = "outputs.wrong-either-way",
        "{load} is wrong on {output}, whatever counts as on. If ground: {ground}. If battery: {battery}.";
    DEPENDS_ON_RESISTANCE = "outputs.depends-on-resistance",
        "The resistance of {load} decides: at {low} the answer is “{at_low}”, at {high} “{at_high}”.";
    DEPENDS_ON_DEAD_SUPPLY = "outputs.depends-on-dead-supply",
        "What else is on the controller's supply decides for {load}: at {low} to ground the answer is “{at_low}”, at {high} “{at_high}”.";
    DEPENDS_ON_DEAD_FEED = "outputs.depends-on-dead-feed",
        "What else is on the feed of {load} decides: at {low} to ground the answer is “{at_low}”, at {high} “{at_high}”.";
    SOLVED_WITHOUT = "outputs.solved-without",
        "{load} is on {output} too, but too little is known of it: {others} {n|is|are} answered without it.";
    OUTPUT_NAMED_TWICE = "outputs.output-named-twice",
        "Two outputs are named “{name}”; loads that name it are assumed to be on the first.";
    RELAY_NAMED_TWICE = "outputs.relay-named-twice",
        "Two relays are named “{name}”; what names it is assumed to mean the first.";
    FEEDS_ITSELF = "outputs.feeds-itself",
        "The coil of “{name}” is fed by its own contact, or by a relay that it feeds: none of them ever pulls in.";
    LETS_GO_ABOVE = "outputs.lets-go-above",
        "It can't drop out at {drop_out} if it pulls in at {pull_in}: the first must be the lower. Check both against the data sheet.";
    // what to do
    DO_LEVEL = "outputs.do-level",
        "Set the controller so that {level} counts as on: {then}. A new file or firmware can undo it: prove the bare pin again each time.";
    DO_LEVEL_IF = "outputs.do-level-if",
        "Make sure that {level} counts as on: {then}. A new file or firmware can undo it: prove the bare pin again each time.";
    DO_IF_LEVEL = "outputs.do-if-level", "If {level} counts as on, {change}";
    DO_END = "outputs.do-end", "Move its other end to {end}: {then}.";
    DO_LEVEL_AND_END = "outputs.do-level-and-end",
        "Set the controller so that {level} counts as on, and move its other end to {end}: {then}. A new file or firmware can undo it: prove the bare pin again each time.";
    DO_SPARE = "outputs.do-spare", "Move it to {output}, which must carry {current}, its other end to {end}: {then}.";
    DO_SPARE_TURNED = "outputs.do-spare-turned",
        "Move it to {output}, which must carry {current}, its other end to {end}, and swap its two wires, band (cathode) of its diode to plus: {then}.";
    DO_SPARE_AT_LEVEL = "outputs.do-spare-at-level",
        "Move it to {output}, which must carry {current}, with {level} as on, its other end to {end}: {then}.";
    DO_SPARE_WITH_DIODE = "outputs.do-spare-with-diode",
        "Move it to {output}, which must carry {current}, its other end to {end}, and put a diode rated {current}, 100 V, across its winding, band (cathode) to plus: {then}.";
    DO_PULL_DOWN = "outputs.do-pull-down", "Fit {resistor}, {power} or more, from the pin to ground: {then}.";
    DO_BLEEDER = "outputs.do-bleeder",
        "Fit {resistor}, {power} or more, across the load, from one wire to the other: {then}.";
    DO_FEED_DIODE = "outputs.do-feed-diode",
        "Put a diode rated {current}, 100 V, into its feed, band (cathode) to the load; it costs the load 0.7 V: {then}.";
    DO_COIL_DIODE = "outputs.do-coil-diode",
        "Put a diode rated {current}, 100 V, across its winding, band (cathode) to plus; it then drops out up to {time} after switch-off: {then}.";
    DO_SLOWER = "outputs.do-slower",
        "Pulse it at {frequency} at most, if it can take that (a valve may then be heard): {then}.";
    DO_TURN = "outputs.do-turn", "Swap the load's two wires, band (cathode) of its diode to plus: {then}.";
    DO_NO_DIODE = "outputs.do-no-diode",
        "Take the diode off, or use a load without one: driven both ways, one way shorts through it, and the two outputs catch the spike themselves: {then}.";
    DO_STAGE = "outputs.do-stage", "Use {stage} instead, rated for {current}, its other end to {end}: {then}.";
    DO_LOGIC = "outputs.do-logic", "Use a logic output instead, with 5 V as on: {then}.";
    DO_STAGE_TURNED = "outputs.do-stage-turned",
        "Use {stage} instead, rated for {current}, its other end to {end}, and swap its two wires, band (cathode) of its diode to plus: {then}.";
    DO_RELAY = "outputs.do-relay",
        "Drive it through a relay: coil from {output} to {end}, load on the contact with its own fuse. Coil: {then}.";
    THEN = "outputs.then", "at most {unasked} across it when off, {on} when on";
    DO_NOTHING_FOUND = "outputs.do-nothing-found",
        "No other wiring works in every state with what the plan has: leave it unplugged, and ask the controller's maker for an output that is open when off.";
    DO_MEASURE = "outputs.do-measure", "Measure first: {how}";
    DO_PROVE_READS = "outputs.do-prove-reads",
        "Before you plug it in: meter from the bare pin to ground, key on, output off. It must read {reading}.";
    DO_PROVE_FLOATS = "outputs.do-prove-floats",
        "Before you plug it in: connect {resistor} from the bare pin to {end}. Output off: {off}. On: {on}. Without the resistor the pin floats and the meter means nothing.";
    DO_PROVE_LAMP = "outputs.do-prove-lamp",
        "Or use a 12 V, 3 W test lamp instead of the resistor: dark with the output off, lit with it on. It takes {current}.";
    DO_NO_LAMP = "outputs.do-no-lamp",
        "No test lamp: it takes {inrush} for a moment, and the output's limit is {limit}.";
    DO_PROVE_OTHER = "outputs.do-prove-other", "Then test {output}, the load's other end, the same way: {reading}.";
    DO_PROVE_OTHER_FLOATS = "outputs.do-prove-other-floats",
        "Then connect {resistor} from {output}, the load's other end, to {end}. Output off: {off}. On: {on}.";
    DO_CHECK_LIMIT = "outputs.do-check-limit", "Check the pin table: {output} must carry {current}.";
    AND_INRUSH = "outputs.and-inrush", "{current} ({inrush} for a moment)";
    // cautions
    CAUTION_DANGEROUS = "outputs.caution-dangerous",
        "It can hurt someone if it comes on by itself: keep its fuse out until you have tested the bare pin, and fit a hand switch in series. Outputs are assumed open while the controller starts: ask its maker.";
    CAUTION_UNPLUGGED = "outputs.caution-unplugged",
        "It can hurt someone if it comes on by itself, and it may with its fuse pulled: leave its plug off until you have tested the bare pin, and fit a hand switch in series. Outputs are assumed open while the controller starts: ask its maker.";
    CAUTION_SETTING = "outputs.caution-setting",
        "Only a setting keeps it off, and a new file or firmware can undo it: prove the bare pin again each time.";
    CAUTION_MOVING = "outputs.caution-moving",
        "Hands out, gearbox in neutral before the first try: things move by themselves at key-on.";
    CAUTION_DIODE_COIL = "outputs.caution-diode-coil",
        "Mind which way round a coil with a built-in diode is: the wrong way is a dead short when on.";
    // figures
    FIGURE_ON_CURRENT = "outputs.figure-on-current", "Current when on";
    FIGURE_INRUSH = "outputs.figure-inrush", "Current at switch-on";
    FIGURE_REST_VOLTAGE = "outputs.figure-rest-voltage", "Across it when off";
    FIGURE_KEY_OFF_CURRENT = "outputs.figure-key-off-current", "Into the dead controller, key off";
    FIGURE_LETS_GO = "outputs.figure-lets-go", "Drop-out time (spike caught by {catcher})";
    FIGURE_IN_CLAMP = "outputs.figure-in-clamp", "Into the clamp at each turn-off";
    FIGURE_PULSED_MEAN = "outputs.figure-pulsed-mean", "Mean current, pulsed at {frequency}, {duty} duty";
    FIGURE_PULSED_SWING = "outputs.figure-pulsed-swing", "Current ripple, pulsed at {frequency}, {duty} duty";
    FIGURE_PULSED_HEAT = "outputs.figure-pulsed-heat", "Spike heat in the output, pulsed at {frequency}, {duty} duty";
    FIGURE_ACTS_HOT = "outputs.figure-acts-hot", "Voltage it needs when hot";
    // tables
    TABLE_STATES = "outputs.table-states", "In every key state (battery at rest, 20 °C; then lowest to highest)";
    TABLE_STATES_AT_LEVEL = "outputs.table-states-at-level",
        "If {level} counts as on: every key state (battery at rest, 20 °C; then lowest to highest)";
    COLUMN_STATE = "outputs.column-state", "State";
    COLUMN_EFFECT = "outputs.column-effect", "The load";
    COLUMN_ACROSS = "outputs.column-across", "Across it";
    COLUMN_THROUGH = "outputs.column-through", "Through it";
    COLUMN_PIN = "outputs.column-pin", "Pin to ground";
    COLUMN_BARE = "outputs.column-bare", "Meter on the bare pin";
    TABLE_DAY = "outputs.table-day", "From key-on to key-off: on or off, by what was before";
    COLUMN_STEP = "outputs.column-step", "Then";
    DAY_ON_BEFORE = "outputs.day-on-before", "{state}, after it was on";
    DAY_AGAIN = "outputs.day-again", "Key on, starting again while on";
    POSITION_OUT = "outputs.position-out", "out";
    POSITION_MAY_STAY = "outputs.position-may-stay", "may stay on";
    POSITION_IN = "outputs.position-in", "in";
    TABLE_TAKEN = "outputs.table-taken", "What was assumed for it";
    COLUMN_WHAT = "outputs.column-what", "What";
    COLUMN_VALUE = "outputs.column-value", "Value";
    COLUMN_BASIS = "outputs.column-basis", "From";
    TAKEN_RESISTANCE = "outputs.taken-resistance", "Resistance at 20 °C";
    TAKEN_PULL_IN = "outputs.taken-pull-in", "Pulls in at";
    TAKEN_INDUCTANCE = "outputs.taken-inductance", "Inductance of its winding";
    TAKEN_DEAD_SUPPLY = "outputs.taken-dead-supply", "Controller's dead supply to ground";
    TAKEN_DEAD_FEED = "outputs.taken-dead-feed", "Its dead feed to ground";
    TAKEN_CONTACT = "outputs.taken-contact", "Relay's contact (87)";
    TAKEN_CONTACT_STATES = "outputs.taken-contact-states",
        "open with the key off, either way until the output is on, then closed";
    TAKEN_START = "outputs.taken-start", "Outputs open while the controller starts";
    TAKEN_DIODE = "outputs.taken-diode", "Body diode";
    TAKEN_USUAL = "outputs.taken-usual", "usual for its kind";
    TAKEN_GIVEN = "outputs.taken-given", "the plan";
    TAKEN_PRACTICE = "outputs.taken-practice", "common practice, no source";
    // states and effects
    STATE_KEY_OFF = "outputs.state-key-off", "Key off";
    STATE_STARTING = "outputs.state-starting", "Key on, starting";
    STATE_OFF = "outputs.state-off", "Running, output off";
    STATE_CRANKING = "outputs.state-cranking", "Cranking, output on";
    STATE_ON = "outputs.state-on", "Output on";
    STATE_OUTLIVED = "outputs.state-outlived", "Key off, controller still alive";
    STATE_BOTH_ON = "outputs.state-both-on", "Both outputs on";
    STATE_PULSED = "outputs.state-pulsed", "Output pulsed";
    STATE_OTHER_ON = "outputs.state-other-on", "Other output on";
    STATE_FEED_LOST = "outputs.state-feed-lost", "Fuse of its feed pulled";
    STATE_GROUND_LOST = "outputs.state-ground-lost", "Controller's ground lost";
    STATE_SUPPLY_LOST = "outputs.state-supply-lost", "Controller's supply lost";
    EFFECT_RESTS = "outputs.effect-rests", "off";
    EFFECT_RESTS_FEEDS = "outputs.effect-rests-feeds", "off, but feeds the controller";
    EFFECT_DRIVES_FEED = "outputs.effect-drives-feed", "feeds its dead feed";
    EFFECT_MAY_HOLD = "outputs.effect-may-hold", "may stay on";
    EFFECT_MAY_ACT = "outputs.effect-may-act", "may come on";
    EFFECT_LIVE = "outputs.effect-live", "LIVE";
    EFFECT_LIVE_AT_SOME = "outputs.effect-live-at-some", "LIVE in some cases";
    EFFECT_ACTS = "outputs.effect-acts", "on";
    EFFECT_SHORTED = "outputs.effect-shorted", "shorted by its diode";
    EFFECT_TURNED = "outputs.effect-turned", "comes on the other way round";
    EFFECT_NOT_SURE = "outputs.effect-not-sure", "may not come on";
    EFFECT_EACH_PULSE = "outputs.effect-each-pulse", "comes on with each pulse";
    EFFECT_STAYS_IN = "outputs.effect-stays-in", "stays on between the pulses";
    EFFECT_TOO_LITTLE = "outputs.effect-too-little", "does not come on at this duty";
    EFFECT_BY_DUTY = "outputs.effect-by-duty", "on or off, depending on the duty";
    EFFECT_NEVER = "outputs.effect-never", "does not come on";
    FLOATS = "outputs.floats", "0 V (floats)";
    PICTURE = "outputs.picture", "{load} on {output}, {stage}; its other end at {end}";
    PICTURE_AT_LEVEL = "outputs.picture-at-level",
        "{load} on {output}, {stage} with {level} as on; its other end at {end}";
    PICTURE_STATE = "outputs.picture-state", "{voltage} across it, {current} through it: {effect} ({corner}).";
    PICTURE_STATE_BESIDE = "outputs.picture-state-beside",
        "{voltage} across it, {current} through it and {beside} through {what}: {effect} ({corner}).";
    // names
    A_STAGE_OPEN_DRAIN = "outputs.a-stage-open-drain", "a low-side output";
    A_STAGE_HIGH_SIDE = "outputs.a-stage-high-side", "a high-side output";
    A_STAGE_HALF_BRIDGE = "outputs.a-stage-half-bridge", "a half-bridge output";
    A_STAGE_LOGIC = "outputs.a-stage-logic", "a logic output";
    LEVEL_GROUND = "outputs.level-ground", "ground";
    LEVEL_BATTERY = "outputs.level-battery", "battery";
    LEVEL_FIVE_VOLT = "outputs.level-five-volt", "5 V";
    END_GROUND = "outputs.end-ground", "ground (31)";
    END_BATTERY = "outputs.end-battery", "permanent battery (30)";
    END_IGNITION = "outputs.end-ignition", "the ignition switch (15)";
    END_RELAY = "outputs.end-relay", "a relay's contact (87)";
    BACKWARDS = "outputs.backwards", "{value}, backwards";
    END_OUTPUT = "outputs.end-output", "the other output of the pair";
    PAIR_OF_ONE = "outputs.pair-of-one",
        "A load can't go from {output} to {output}: name the other output of the pair.";
    WIRED_ELSEWHERE = "outputs.wired-elsewhere",
        "{load} is wired to {wired} and planned on {planned}: {wired} switches it, whatever {planned} does.";
    DO_PLAN_WIRED = "outputs.do-plan-wired", "Leave the wire, and have {wired} switch {load} in the controller.";
    DO_REWIRE = "outputs.do-rewire", "Move the wire of {load} from {wired} to {planned}.";
    END_FIVE_VOLT = "outputs.end-five-volt", "the controller's 5 V";
    PART_SUPPRESSOR = "outputs.part-suppressor", "what is across it";
    CATCHER_NONE = "outputs.catcher-none", "nothing in the plan";
    CATCHER_DIODE = "outputs.catcher-diode", "the diode across it";
    CATCHER_RESISTOR = "outputs.catcher-resistor", "the resistor across it";
    CATCHER_SWITCH = "outputs.catcher-switch", "the other switch of the output";
    CATCHER_CLAMP = "outputs.catcher-clamp", "the clamp of the output";
    PART_LOAD = "outputs.part-load", "the other load on the pin";
    PART_UPPER_SWITCH = "outputs.part-upper-switch", "the upper switch";
    PART_LOWER_SWITCH = "outputs.part-lower-switch", "the lower switch";
    PART_UPPER_DIODE = "outputs.part-upper-diode", "the upper body diode";
    PART_LOWER_DIODE = "outputs.part-lower-diode", "the lower body diode";
    PART_PULL_UP = "outputs.part-pull-up", "the pull-up";
    PART_PULL_DOWN = "outputs.part-pull-down", "the pull-down";
    PART_UPPER_LEAK = "outputs.part-upper-leak", "the leakage of the upper switch";
    PART_LOWER_LEAK = "outputs.part-lower-leak", "the leakage of the lower switch";
}
