//! What the steps of the question of rest are for.

use crate::{questions::outputs::words, report::usual::step::purposes, words::field};

purposes! {
    // what can't be read, and two remedies as one
    field::UNREAD => ;
    field::BOTH => ;
    // still wanted
    words::WHY_OPEN => Ask "the output's type, the load, where its other end goes";
    words::WHY_MEND => ;
    words::DO_EXACT => Ask "one number for each blank or range of what is connected together";
    words::DO_MEASURE => Prove "{how}";
    words::END_WOULD_DO => ;
    words::END_WOULD_DO_AT_LEVEL => ;
    words::NO_END_WOULD_DO => ;
    words::OUTPUT_WOULD_DO => ;
    words::OUTPUT_WOULD_DO_AT_LEVEL => ;
    words::DO_NOT_ALL_TRIED => ;
    words::DO_PLAN_WIRED => Enter "{wired} switches {load}";
    words::DO_REWIRE => ;
    words::DO_NOTHING_FOUND => ;
    // other wirings
    words::DO_LEVEL => Enter "{level} counts as on", Cure "Set the controller so that {level} counts as on.";
    words::DO_LEVEL_IF => Enter "{level} counts as on", Cure "Make sure that {level} counts as on.";
    words::DO_IF_LEVEL => ;
    words::DO_END => Cure "Move its other end to {end}.";
    words::DO_LEVEL_AND_END =>
        Enter "{level} counts as on",
        Cure "Set the controller so that {level} counts as on, and move its other end to {end}.";
    words::DO_SPARE => Cure "Move it to {output}, which must carry {current}, its other end to {end}.";
    words::DO_SPARE_TURNED =>
        Cure "Move it to {output}, which must carry {current}, its other end to {end}, and swap its two wires, the diode's band (cathode) to plus.";
    words::DO_SPARE_WITH_DIODE =>
        Buy "diode, {current} and 100 V, across its winding",
        Cure "Move it to {output}, which must carry {current}, its other end to {end}, and put a diode across its winding, band (cathode) to plus.";
    words::DO_SPARE_AT_LEVEL =>
        Cure "Move it to {output}, which must carry {current}, with {level} as on, its other end to {end}.";
    words::DO_STAGE => Cure "Use {stage} that may carry {current}, its other end at {end}.";
    words::DO_LOGIC => Cure "Use a logic output instead, with 5 V as on.";
    words::DO_STAGE_TURNED =>
        Cure "Use {stage} that may carry {current}, its other end at {end}, and swap its two wires, the diode's band (cathode) to plus.";
    words::DO_TURN => Cure "Swap its two wires, the diode's band (cathode) to plus.";
    words::DO_NO_DIODE => Cure "Take the diode off: driven both ways, one way shorts through it.";
    words::DO_SLOWER => Enter "pulsed at {frequency} at most", Cure "Pulse it at {frequency} at most, if it is rated for that.";
    // parts
    words::DO_PULL_DOWN =>
        Buy "resistor {resistor}, {power} or more, from the pin to ground",
        Cure "Splice {resistor} from the pin to ground.";
    words::DO_BLEEDER =>
        Buy "resistor {resistor}, {power} or more, across the load",
        Cure "Put {resistor} across the load.";
    words::DO_FEED_DIODE =>
        Buy "diode, {current} and 100 V, in its feed",
        Cure "Put a diode into its feed, band (cathode) to the load.";
    words::DO_COIL_DIODE =>
        Buy "diode, {current} and 100 V, across its winding",
        Cure "Put a diode across its winding, band (cathode) to plus.";
    words::DO_RELAY =>
        Buy "relay, and a fuse for what it feeds",
        Cure "Put a relay between: its coil on {output}, the coil's other end at {end}, the load on its contact with a fuse of its own.";
    // the bare pin
    words::DO_PROVE_READS => Pin "{reading}";
    words::DO_PROVE_FLOATS => Pin "{resistor} to {end}: {off} off, {on} on";
    words::DO_PROVE_OTHER => Pin "{reading}";
    words::DO_PROVE_OTHER_FLOATS => Pin "{resistor} to {end}: {off} off, {on} on";
    words::DO_PROVE_LAMP => Lamp "dark with the output off, lit with it on";
    words::DO_NO_LAMP => Lamp "cold it draws {inrush} for a moment, the limit is {limit}";
    words::DO_CHECK_LIMIT => Prove "pin table: {output} carries {current}";
}
