//! What each finding of the question of rest means.

use crate::words::Explanation;

const SOLVED: &str =
    "nodal analysis of the output's circuit; body diodes as common practice, no source";

const fn explained(code: &'static str, why: &'static str, act: &'static str) -> Explanation {
    Explanation { code, why, act, source: SOLVED }
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    explained(
        crate::questions::outputs::words::LIVE_AT_REST.code,
        // With the output commanded off, the voltage across the load reaches the least at which such a
        // load acts.
        "The load comes on as soon as the controller is up, and goes off when it is switched on.",
        "Leave it unplugged until it is off in every state: another setting, or an output that is open when off.",
    ),
    explained(
        crate::questions::outputs::words::LIVE_AT_KEY_ON.code,
        // While the controller starts its stages are open, and something else still drives the load.
        "A pump runs, a valve opens or a coil charges at every turn of the key, and again each time cranking resets the controller.",
        "Leave it unplugged until it is off in every state: on an output without a pull-up, or held by a resistor.",
    ),
    explained(
        crate::questions::outputs::words::LIVE_KEY_OFF.code,
        // With the key off, current finds its way through the output into circuits that are switched off.
        "The load is on in a parked car, and the battery goes flat.",
        "Feed the load from the ignition switch (15) or a relay's contact (87) rather than from permanent battery.",
    ),
    explained(
        crate::questions::outputs::words::MAY_STAY_IN.code,
        // With the output off again, more is left across the load than the voltage at which it is sure to
        // let go.
        "A relay of 90 Ω may stay in at 1.2 V: the load can't be switched off.",
        "Use an output that lets less through while it is off, or put a resistor across the load that takes what leaks.",
    ),
    explained(
        crate::questions::outputs::words::MAY_STAY_IN_KEY_OFF.code,
        // With the key off, more is left across the load than the voltage at which it is sure to let go.
        "What was on when the key was turned may stay on: an engine that will not stop.",
        "Feed the load from the ignition switch (15) or a relay's contact (87).",
    ),
    explained(
        crate::questions::outputs::words::ACTS_WITH_OTHER.code,
        // A load that joins two pins lets the other output drive what hangs on this one.
        "Two outputs joined through a load are not independent: one of them works what is on the other.",
        "Give the load an output of its own, or one that holds its pin while it is off.",
    ),
    explained(
        crate::questions::outputs::words::MAY_STAY_IN_WITH_OTHER.code,
        // The same, between drop-out and pull-in.
        "A relay of 90 Ω may stay in at 1.2 V: what the other output lets through can hold it.",
        "Give the load an output of its own, or one that holds its pin while it is off.",
    ),
    explained(
        crate::questions::outputs::words::NO_PULSES.code,
        // With the output off, the input is as high as it needs to be to read as high.
        "It counts changes, and its voltage never falls: nothing is shown.",
        "Take an output that pulls the other way, or see which end its own pull-up goes to.",
    ),
    explained(
        crate::questions::outputs::words::NEVER_ACTS.code,
        // With the output on, the load gets less than any such load needs, at every corner.
        "Both ends of the load are then at nearly the same voltage: it is wired to the wrong side.",
        "Move its other end to the opposite side, or use an output that drives the other way.",
    ),
    explained(
        crate::questions::outputs::words::THROTTLE_ONE_WAY.code,
        // A throttle's motor that does not lie between two outputs which both drive both ways.
        "Without current the springs hold the plate where the engine runs a little above idle; from there it is driven both ways.",
        "Connect its motor between two half-bridges that the controller drives as a pair.",
    ),
    explained(
        crate::questions::outputs::words::THROTTLE_NO_CUT.code,
        // Told that nothing cuts the supply of its motor.
        "A controller that sees pedal and plate disagree can only act by a way that the fault does not share.",
        "Feed the pair through a relay that the controller drives from another output, and prove with the engine off that the plate falls back when it drops out.",
    ),
    explained(
        crate::questions::outputs::words::THROTTLE_CUT_BY_ITSELF.code,
        // The relay's coil hangs on an output of the pair.
        "A controller that sees pedal and plate disagree can only act by a way that the fault does not share.",
        "Move the relay's coil to another output.",
    ),
    explained(
        crate::questions::outputs::words::THROTTLE_CUT_UNDRIVEN.code,
        // The relay has no coil in the plan, or one that hangs on no output.
        "A relay that follows the key alone stays in until a hand reaches the key.",
        "Drive the relay's coil from an output of the controller that the pair does not use.",
    ),
    explained(
        crate::questions::outputs::words::THROTTLE_CUT_UNKNOWN.code,
        // Nothing is said of what cuts its supply, or the relay is not named.
        "One switch that sticks drives the plate open, and the engine with it.",
        "Look in the controller's data for how it cuts a throttle off, and name the relay; if there is none, plan one.",
    ),
    explained(
        crate::questions::outputs::words::OVER_VOLTAGE.code,
        // In a state of the car that is no fault, more than a tenth above what was typed.
        "An input that gets more than its rating is gone at once, or a month later.",
        "A logic output (5 V); or a low-side output with a pull-up to the rail of the input's own unit.",
    ),
    explained(
        crate::questions::outputs::words::PERHAPS_OVER_VOLTAGE.code,
        // The same against 5 V, where nothing was typed.
        "An input that gets more than its rating is gone at once, or a month later.",
        "Look up its rating, and type it. If that is 5 V: a logic output, or a low-side one with a pull-up to 5 V.",
    ),
    explained(
        crate::questions::outputs::words::LOADS_LOGIC_RAIL.code,
        // More than 50 mA of the 100 to 250 that such a supply gives.
        "The sensors' 5 V falls with each ampere that is not meant for it, and one short there stops the engine.",
        "Feed it from the ignition switch (15) or a relay's contact (87), with a fuse of its own.",
    ),
    explained(
        crate::questions::outputs::words::DRIVES_OPEN_FEED.code,
        // The contact of the load's relay is open, and the output rests at battery: through the load's own diode.
        "A half-bridge that is at battery when off feeds backwards whatever is on a relay that has dropped out.",
        "Use an output that is open when off, or feed the load from where the controller itself is fed.",
    ),
    explained(
        crate::questions::outputs::words::TOO_MUCH_CURRENT.code,
        // With the load on and running, the output carries more than its continuous limit at a corner.
        "The output overheats or shuts down, perhaps a week later.",
        "Drive it through a relay, or use an output with a higher limit.",
    ),
    explained(
        crate::questions::outputs::words::AT_LIMIT.code,
        // Up to 3 % more than the limit, at a corner.
        "Neither the limit nor what is compared with it is known better than this.",
        "Measure the load's resistance warm and cold, or use an output with more to spare.",
    ),
    explained(
        crate::questions::outputs::words::WAKES_CONTROLLER.code,
        // With the key off, 20 mA or more flow into the controller's dead supply, or 1 mA that lift it to
        // 3 V.
        "The controller may stay alive through its own output: the engine does not stop, the battery goes flat.",
        "Feed the load from the ignition switch (15) or a relay's contact (87), or use an output without an upper switch.",
    ),
    explained(
        crate::questions::outputs::words::LIVE_OUTLIVED.code,
        // The key is off and the controller alive: the load gets more than it needs, between its pin and a dead feed.
        "A half-bridge that is at battery when off is off only as long as battery is at the other end too.",
        "Use an output that is open when off, or feed the load from where the controller itself is fed.",
    ),
    explained(
        crate::questions::outputs::words::PERHAPS_LIVE_OUTLIVED.code,
        // The same, and whether the controller holds its supply on is not known.
        "A half-bridge that is at battery when off is off only as long as battery is at the other end too.",
        "Turn the key off and see whether its supply drops at once; say so in the plan. If it stays, use an output that is open when off.",
    ),
    explained(
        crate::questions::outputs::words::DRIVES_DEAD_FEED.code,
        // The same, and an ampere or more flows into the dead feed: through the load's own diode.
        "Through the diode across the coil the output feeds all that is on the ignition switch: coils and pump stay alive, and diode or output burn.",
        "Use an output that is open when off, or feed the load from where the controller itself is fed.",
    ),
    explained(
        crate::questions::outputs::words::PERHAPS_DRIVES_DEAD_FEED.code,
        // The same, and whether the controller holds its supply on is not known.
        "Through the diode across the coil the output feeds all that is on the ignition switch: coils and pump stay alive, and diode or output burn.",
        "Turn the key off and see whether its supply drops at once; say so in the plan. If it stays, use an output that is open when off.",
    ),
    explained(
        crate::questions::outputs::words::MAY_STAY_IN_AT_RESTART.code,
        // While the controller starts, the load gets more than the voltage at which it is sure to let go: what was in
        // before a restart may stay in.
        "A dip of the battery while cranking restarts the controller, and what was on stays on by itself.",
        "Use an output without a pull-up, or one that lets less through while it is off.",
    ),
    explained(
        crate::questions::outputs::words::WEAK.code,
        // With the output on, engine stopped or running, a corner leaves less than every such load needs.
        "A hot coil needs more volts: it works on the bench and fails after a hot stop.",
        "Check its pull-in voltage against the data sheet, and whether the output's resistance or a second load drops too much.",
    ),
    explained(
        crate::questions::outputs::words::PULSES_BLURRED.code,
        // It counts pulses; a leak through it leaves more than every such input reads as low.
        "An input that never sees the pulse end counts none.",
        "Put a resistor across it, which takes the leak; or type its drop-out voltage.",
    ),
    explained(
        crate::questions::outputs::words::INRUSH.code,
        // A cold filament draws some ten times its current, a standing motor five to eight times, for a
        // moment.
        "The output may trip, or age with every switching.",
        "Drive it through a relay, or ask the maker how long the output can take it.",
    ),
    explained(
        crate::questions::outputs::words::FEEDS_DEAD_FEED.code,
        // More than 20 mA flow through the load into the circuit at its far end while that is off.
        "Whatever is on it stays half alive: a dash that glows, a relay that stays in.",
        "Use an output that is open when off, or feed the load from where the controller itself is fed.",
    ),
    explained(
        crate::questions::outputs::words::LEAKS_INTO_CONTROLLER.code,
        // With the key off, more than 1 mA flows into the controller's dead supply.
        "Too little to keep it alive, but it never stops: 10 mA take 7 Ah out of the battery in a month.",
        "Feed the load from the ignition switch (15) or a relay's contact (87).",
    ),
    explained(
        crate::questions::outputs::words::DRAINS_BATTERY.code,
        // With the key off, this output and its load take 5 mA or more from the battery.
        "A parked car draws some 20 to 50 mA in all (from memory, no source); this comes on top: 10 mA take 7 Ah in a month.",
        "Use a pull-up to a switched rail, or feed the load from the ignition switch (15) or a relay's contact (87).",
    ),
    explained(
        crate::questions::outputs::words::WEAK_WHILE_CRANKING.code,
        // At the lowest voltage while cranking, the load gets less than every such load needs.
        "A winding pulls in by its current, so a hot coil on a weak battery may not: the hot start fails.",
        "Nothing, if the load need not be on while cranking. Else measure the cranking voltage and use a coil with a lower pull-in voltage.",
    ),
    explained(
        crate::questions::outputs::words::DEPENDS_ON_LEVEL.code,
        // The setting that says which level counts as on is not known, and the two give different answers.
        "A half-bridge that is off holds the level that is not on: the wrong guess leaves the load live.",
        "Look the setting up, or measure: bare pin, key on, output off, 1 kΩ to ground.",
    ),
    explained(
        crate::questions::outputs::words::WRONG_EITHER_WAY.code,
        // The setting that says which level counts as on is not known, and neither is right for this load.
        "No setting fixes it.",
        "Use an output that drives one way only: no setting turns it round.",
    ),
    explained(
        crate::questions::outputs::words::DEPENDS_ON_RESISTANCE.code,
        // The load's resistance is not given, and the answer differs within what is usual.
        "A meter settles it in a minute.",
        "Measure across the unplugged load, less the reading with the probes together.",
    ),
    explained(
        crate::questions::outputs::words::DEPENDS_ON_DEAD_SUPPLY.code,
        // How much else hangs on the controller's supply is not given, and the answer differs within what
        // is usual.
        "The less there is on it, the higher a small current lifts it; the more, the larger the current.",
        "Measure from the controller's supply wire to ground with the battery disconnected.",
    ),
    explained(
        crate::questions::outputs::words::DEPENDS_ON_DEAD_FEED.code,
        // How much else hangs on the load's feed is not given, and the answer differs within what is
        // usual.
        "The more there is on it, the more current flows backwards through the load.",
        "Measure from the load's feed wire to ground with the battery disconnected and the load unplugged.",
    ),
    Explanation {
        code: crate::questions::outputs::words::SOLVED_WITHOUT.code,
        // Two loads share an output, and one of them lacks a far end or has a field that can't be read.
        why: "Loads on one pin feed each other: the answer may change when the other is known.",
        act: "Fill in “Its other end goes to” of the other load.",
        source: "nodal analysis; the form of this plan",
    },
    Explanation {
        code: crate::questions::outputs::words::RELAY_NAMED_TWICE.code,
        // A relay bears the name of an earlier one.
        why: "A load that is fed by it could be fed by either.",
        act: "Give each relay a name of its own.",
        source: "the form of this plan",
    },
    Explanation {
        code: crate::questions::outputs::words::FEEDS_ITSELF.code,
        // A relay's coil hangs on its own contact.
        why: "A contact carries nothing before the relay has pulled in. Once it has, by hand, it would hold itself.",
        act: "Feed the coil from the ignition switch (15), the battery (30) or the contact of another relay.",
        source: "how a relay works",
    },
    Explanation {
        code: crate::questions::outputs::words::OUTPUT_NAMED_TWICE.code,
        // An output bears the name of an earlier one.
        why: "A load that names it could be on either.",
        act: "Give each output the name it has on the pin table.",
        source: "the form of this plan",
    },
    Explanation {
        code: crate::questions::outputs::words::LETS_GO_ABOVE.code,
        // The voltage at which the load lets go is not below that at which it acts.
        why: "Between the two a relay stays as it is; no part drops out above the voltage at which it pulls in.",
        act: "Check both against the data sheet: the larger is the pull-in voltage.",
        source: "definition of pull-in and drop-out in data sheets of generic relays",
    },
    explained(
        crate::questions::outputs::words::ACTS_WITHOUT_FEED.code,
        // With the output off and the feed's fuse out, current flows backwards through the load into
        // whatever else hangs on that feed.
        "Pulling the fuse does not make the load safe to touch.",
        "Pull the controller's fuse as well before you work on it.",
    ),
    explained(
        crate::questions::outputs::words::OVER_VOLTAGE_WITHOUT_GROUND.code,
        // The controller's own consumption, cut off from ground, lifts its outputs to the battery.
        "A loose ground bolt then costs the part that this input belongs to.",
        "Ground the controller so that one loose wire or bolt leaves it grounded: the others carry it all.",
    ),
    explained(
        crate::questions::outputs::words::ACTS_WITHOUT_GROUND.code,
        // The controller's own consumption, cut off from ground, flows through a body diode or a resistor
        // of the output and through the load; or the output, dead, no longer holds its pin against a pull-up.
        "A loose ground bolt then works the load.",
        "Ground the controller so that one loose wire or bolt leaves it grounded: the others carry it all.",
    ),
    explained(
        crate::questions::outputs::words::ACTS_WITHOUT_SUPPLY.code,
        // With the controller's fuse out and the load's feed on, current flows through the load and the
        // output into the controller's dead supply.
        "A blown fuse then works the load instead of stopping it.",
        "Feed the load through the same relay as the controller, or use a low-side output.",
    ),
    explained(
        crate::questions::outputs::words::KEEPS_FEED_ALIVE.code,
        // With the feed's fuse out, the output drives current through the load into the circuit that the
        // fuse should have made dead.
        "What seems dead is not: lamps glow, and a meter misleads whoever looks for a fault.",
        "Pull the controller's fuse as well before you look for a fault on that circuit.",
    ),
    explained(
        crate::questions::outputs::words::KEEPS_CONTROLLER_ALIVE.code,
        // With the controller's fuse out, the load's feed keeps its supply up through the output.
        "A controller on half its supply may fire coils or open injectors at random.",
        "Feed the load through the same relay as the controller, or use a low-side output.",
    ),
    explained(
        crate::questions::outputs::words::LIFTS_LOGIC_RAIL.code,
        // With the key on, more than 5 mA flow from the load into the controller's 5 V or 3.3 V.
        "Every sensor on that supply then reads wrong, and above its limit the controller is damaged.",
        "Feed the load from that same supply, or use an output whose pull-up goes to battery.",
    ),
    explained(
        crate::questions::outputs::words::SHORTED_BY_DIODE.code,
        // A diode across the winding conducts while the load should be driven.
        "As soon as the output is on, the diode is a dead short: it burns, or the output does.",
        "Swap the load's two wires at its connector; if the other end can't change, use a relay without a diode.",
    ),
    explained(
        crate::questions::outputs::words::SHORTED_WHEN_TURNED.code,
        // A diode is the right way round for one direction, and a bridge pair drives both.
        "The first time the load is driven back, the diode burns, or the outputs do.",
        "Take the diode off: a pair of half-bridges catches the spike with its own switches.",
    ),
    explained(
        crate::questions::outputs::words::KICK_TOO_STRONG.code,
        // The energy that the clamp takes at each turn-off, the supply's share counted in, is above its rating.
        "The clamp works until one day it does not, and the output stays on for good.",
        "Put a diode across the coil, band (cathode) to plus, or use an output with a stronger clamp. A valve closes later with a diode; if that matters, add a resistor or a Zener diode in series with it.",
    ),
    explained(
        crate::questions::outputs::words::KICK_PERHAPS_TOO_STRONG.code,
        // The same, with the most inductance, and not with the least.
        "The clamp works until one day it does not, and the output stays on for good.",
        "Measure the inductance, or use its data; or put a diode across the coil, band (cathode) to plus.",
    ),
    explained(
        crate::questions::outputs::words::KICK_BEYOND_ANY.code,
        // With the least inductance of such a load, 300 mJ go into a switch whose data are not known.
        "The switch breaks down at each turn-off and takes all that is stored in the winding: it dies within days, and stays on.",
        "Put a diode across the winding, band (cathode) to plus; or drive it through a relay.",
    ),
    explained(
        crate::questions::outputs::words::KICK_BEYOND_USUAL.code,
        // With the least inductance of such a load, 50 mJ go into a switch whose data are not known.
        "The clamp works until one day it does not, and the output stays on for good.",
        "Look up its clamp energy limit; or put a diode across the winding, band (cathode) to plus.",
    ),
    explained(
        crate::questions::outputs::words::KICKS_MELT.code,
        // More than five watts in the clamp or the body diode.
        "A switch without a heat sink sheds about a watt: common practice, no source.",
        "Put a diode across the load, band (cathode) to plus, so that the spike runs there; or lower the frequency.",
    ),
    explained(
        crate::questions::outputs::words::KICK_UNCAUGHT.code,
        // Neither the load nor the output is known to give the winding's current a way.
        "The voltage at the pin rises until something breaks down: at best a clamp that the pin table does not mention, at worst the output.",
        "Look in the pin table for a clamp or a flyback diode at this output. If there is none, put a diode across the coil, band (cathode) to plus.",
    ),
    explained(
        crate::questions::outputs::words::DIODE_UNKNOWN.code,
        // A relay of which nothing is said of what lies across its coil.
        "A relay with a diode looks like one without, and on the bench works either way round, as long as a lamp is in series.",
        "Before the first command: unplugged, 12 V through a 5 W lamp to its coil, both ways round, briefly. Much brighter one way: a diode, and that way is wrong.",
    ),
    explained(
        crate::questions::outputs::words::TOO_FAST.code,
        // The frequency is above the output's highest.
        "A slow switch spends much of each period half open, and turns what the load should get into heat.",
        "Lower the frequency in the controller if the load allows it, or move the load to an output that is fast enough.",
    ),
    explained(
        crate::questions::outputs::words::CHATTERS.code,
        // The current at the end of the off time is below where the relay lets go.
        "A relay that pulls in and drops out hundreds of times a minute burns its contacts.",
        "Don't pulse a relay's coil: switch it simply on or off.",
    ),
    explained(
        crate::questions::outputs::words::KICKS_HEAT.code,
        // More than a watt in the clamp or the body diode.
        "A switch without a heat sink sheds about a watt: common practice, no source.",
        "Put a diode across the load, band (cathode) to plus, so that the spike runs there; or lower the frequency.",
    ),
    explained(
        crate::questions::outputs::words::PULSED_TOO_LITTLE.code,
        // The current at the end of the on time is below where every such load acts.
        "A valve that is held between two positions is meant to do so; one that should open does not.",
        "Raise the duty where it must come on for certain, and see that the duty's range is what the controller is set to.",
    ),
    Explanation {
        code: crate::questions::outputs::words::TOO_MUCH_TOGETHER.code,
        // The circuits of its corners and key states take more counted steps than the answer may spend.
        why: "Every output joined to this load is solved with it, in every case. A page that did it all would freeze for minutes.",
        act: "Check the other ends of these loads: few cars join more than four outputs. Then type measured numbers in place of ranges.",
        source: "a bound on counted work, so that every machine gives the same answer",
    },
    Explanation {
        code: crate::questions::outputs::words::NOT_ALL_WAYS_TRIED.code,
        // Other ways to connect it were left out, as they take more counted steps than the answer may spend.
        why: "The answer itself stands. A way to wire it that was not tried may do, or do better.",
        act: "Plan this load and what shares its output in a plan of its own: more is then tried.",
        source: "a bound on counted work, so that every machine gives the same answer",
    },
    explained(
        crate::questions::outputs::words::PAIR_OF_ONE.code,
        // Both ends of a load are given to one output.
        "Both ends would be at one voltage, whatever the output does.",
        "Name the output that the other wire goes to, or move that wire to ground or to a feed.",
    ),
    Explanation {
        code: crate::questions::outputs::words::WIRED_ELSEWHERE.code,
        // Its wire was found on another output than the one that it is planned on.
        why: "What is judged here is the plan. Wired otherwise, another output acts on it, at moments that are meant for something else.",
        act: "Change the wire or the plan, then prove the output with a lamp in its place.",
        source: "common practice, no source",
    },
];
