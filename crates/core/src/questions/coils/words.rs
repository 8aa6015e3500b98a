//! The sentences of the question of coils.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "coils.question", "Are the coils charged, and fed?";
    PENDING = "coils.pending", "One moment…";
    TITLE = "coils.title", "What dwell do they need?";
    FEED_TITLE = "coils.feed-title", "Fuse, relay and cable for the coils";
    // verdicts
    BLANK = "coils.blank", "Needs: the coil's resistance";
    NO_VOLTAGE = "coils.no-voltage", "The igniter leaves the coil no voltage";
    NEVER = "coils.never", "They never reach {current}";
    RUNS_OUT_AT = "coils.runs-out-at", "Dwell runs out at {speed}";
    TOO_LONG = "coils.too-long", "Coil duty too high: {duty}";
    WEAK_CRANKING = "coils.weak-cranking", "May not reach {current} while cranking";
    NOT_SURE = "coils.not-sure", "May not reach {current}";
    IN_TIME = "coils.in-time", "Time enough: {needed} of {available}";
    DWELL_IS = "coils.dwell-is", "Dwell {dwell} at {supply}";
    DWELL_GUESSED = "coils.dwell-guessed", "Not known yet: a dwell from {least} to {most}";
    DWELL_UNKNOWN = "coils.dwell-unknown", "Right or wrong: the coil is not known";
    DWELL_LONG = "coils.dwell-long", "Dwell too long: charged to {current}";
    DWELL_SHORT = "coils.dwell-short", "Dwell too short: charged to {current}";
    AT_REST = "coils.at-rest", "They charge with the outputs off";
    AT_KEY_ON = "coils.at-key-on", "They fire at key-on";
    PERHAPS_AT_KEY_ON = "coils.perhaps-at-key-on", "They may fire at key-on";
    FEED_OUTLASTS = "coils.feed-outlasts", "Big enough, but the fuse outlasts a coil held on";
    FEED_OPEN = "coils.feed-open", "Not answered yet: engine, firing and highest speed first";
    FEED_BOTH_SMALL = "coils.feed-both-small", "Fuse and relay are too small";
    FEED_FUSE_SMALL = "coils.feed-fuse-small", "The fuse is too small";
    FEED_RELAY_SMALL = "coils.feed-relay-small", "The relay is too small";
    FEED_LEAD_THIN = "coils.feed-lead-thin", "The cable drops {drop}";
    FEED_SHARED = "coils.feed-shared", "Fuse and relay: see Feeds";
    FEED_GOOD = "coils.feed-good", "Fuse and relay are big enough";
    FEED_WANTED = "coils.feed-wanted", "A fuse of {fuse}{relays|| for each relay}";
    FEED_UNRATED = "coils.feed-unrated", "The fuse is big enough; the relay's rating is not known";
    DO_RATING = "coils.do-rating", "Look up the rating of the relay's contact, and type it.";
    FEED_TOO_MUCH = "coils.feed-too-much", "Too much for one blade fuse: use more relays";
    // why
    WHY = "coils.why",
        "A coil needs up to {needed} for {current} at {supply} (nominally {energy}), and at {speed} there are {available} between two sparks.";
    WHY_ENTERED = "coils.why-entered",
        "The dwell entered, {dwell}, nominally charges a coil to {current} at {supply}; at {speed} there are {available} between two sparks.";
    WHY_RUNS_OUT = "coils.why-runs-out", "The dwell runs out at {runs_out}.";
    FEED_WHY = "coils.feed-why",
        "{relays} {relays|relay feeds|relays feed} {coils} {coils|coil|coils}{relays|| each}: {mean} average at {speed}, where it is highest, {effective} RMS (what heats a fuse), {peak} peak, with up to {at_once} {at_once|coil|coils} of the engine charged at once.";
    // what to do
    CURE_ONCE = "coils.cure-once",
        "Give each cylinder its own coil, fired once a cycle: the dwell then runs out only at {speed}.";
    CURE_LESS = "coils.cure-less",
        "Charge them to only {current}, {energy} a spark, if the engine fires with that.";
    CURE_DWELL = "coils.cure-dwell", "Enter {dwell} at {supply}; the table below has the other supplies.";
    DO_OTHER_COIL = "coils.do-other-coil",
        "Use a coil with less inductance that is rated for more current, or more coils.";
    DO_OTHER_PAIR = "coils.do-other-pair",
        "Type a lower current if the engine fires with that, or use a coil and an igniter that reach {current}.";
    DO_START = "coils.do-start",
        "Start with {least} at {supply}, and raise it with a current clamp on one coil's feed until it reaches {current}.";
    DO_ENTER = "coils.do-enter", "Enter the dwell for each supply from the table below in the controller.";
    DO_ENGINE = "coils.do-engine",
        "Fill in the engine and how its coils are fired under “Firing”, to see whether there is time for it.";
    DO_SPEED = "coils.do-speed",
        "Type the highest speed under “Firing”, to see whether there is time for it.";
    DO_PROVE = "coils.do-prove",
        "Prove it with an oscilloscope and current clamp on one coil's feed, first with the fuel off: it rises to {current} and no further. After a drive, ignition off: no coil much hotter than the engine next to it.";
    TAKEN = "coils.taken", "Assumed: {list}.";
    FEED_FIT = "coils.feed-fit",
        "Fit a fuse of {fuse}{relays|| for each relay} close to the battery, and a contact rated for {peak} DC.";
    FUSE_LARGER = "coils.fuse-larger", "Fit a fuse of {fuse}.";
    FEED_SPLIT = "coils.feed-split", "Share the coils between more relays, each with its own fuse.";
    FEED_GROUND = "coils.feed-ground",
        "Ground the igniters at the cylinder head with wire of the same size as their feed: both carry the same current.";
    // cautions
    CAUTION_SPARK = "coils.caution-spark",
        "Ignition voltage can kill: no hand near coil or lead while anything can fire, and every plug or a spark tester on its lead. A spark lights fuel vapour: fuel off, rags and cans away.";
    CAUTION_HELD = "coils.caution-held",
        "A coil held on with the engine stopped takes {current} and makes {heat} of heat until it burns: feed the coils through a relay that follows engine speed, and pull their fuse while you work.";
    // figures
    FIGURE_DWELL = "coils.figure-dwell", "Nominal dwell, 20 °C, at {supply}";
    FIGURE_ENERGY = "coils.figure-energy", "Energy per spark, nominal";
    FIGURE_NEEDED = "coils.figure-needed", "Longest dwell, alternator charging";
    FIGURE_AVAILABLE = "coils.figure-available", "Time for it at the highest speed";
    FIGURE_RUNS_OUT = "coils.figure-runs-out", "Dwell runs out at";
    FIGURE_RUNS_OUT_AT_REST = "coils.figure-runs-out-at-rest", "Dwell runs out at, alternator dead";
    FIGURE_DUTY = "coils.figure-duty", "Coil duty at the highest speed";
    FIGURE_COIL_HEAT = "coils.figure-coil-heat", "Heat in one coil's primary, at most";
    FIGURE_IGNITER_HEAT = "coils.figure-igniter-heat", "Heat in its igniter, at most";
    FEED_FUSE_BIG = "coils.feed-fuse-big", "Fuse too large for what is behind it";
    FIGURE_HELD = "coils.figure-held", "Current of a coil that is held on";
    FIGURE_HELD_HEAT = "coils.figure-held-heat", "Heat in a coil that is held on";
    FIGURE_HELD_TIME = "coils.figure-held-time", "Winding 100 °C hotter after";
    FIGURE_MEAN = "coils.figure-mean", "One relay, average";
    FIGURE_EFFECTIVE = "coils.figure-effective", "One relay, RMS (heats relay and fuse)";
    FIGURE_PEAK = "coils.figure-peak", "One relay, peak";
    FIGURE_LEAST = "coils.figure-least", "Smallest rating of relay and fuse";
    FIGURE_DROP = "coils.figure-drop", "Voltage drop in the cable at that peak";
    // table
    TABLE = "coils.table", "Dwell to enter, for {current}";
    TABLE_BANKS = "coils.table-banks", "Highest current in the relay of each bank";
    COLUMN_BANK = "coils.column-bank", "Bank";
    COLUMN_MEAN = "coils.column-mean", "Average";
    COLUMN_EFFECTIVE = "coils.column-effective", "RMS";
    COLUMN_PEAK = "coils.column-peak", "Peak";
    PICTURE = "coils.picture", "The current of one coil while it is charged, 20 °C, to {current}";
    CURVE = "coils.curve", "at {supply}";
    LEVEL_WANTED = "coils.level-wanted", "needed";
    LEVEL_LIMIT = "coils.level-limit", "igniter limits it";
    COLUMN_SUPPLY = "coils.column-supply", "Supply";
    COLUMN_DWELL = "coils.column-dwell", "Dwell (20 °C)";
    COLUMN_RANGE = "coils.column-range", "Needed, cold to hot";
    COLUMN_CURRENT = "coils.column-current", "Current with that dwell";
    CELL_NEVER = "coils.cell-never", "never gets there";
    CELL_FROM = "coils.cell-from", "{least} or never";
    // findings
    FALLS_SHORT = "coils.falls-short",
        "The coils may not reach {current}: at {supply} copper and igniter leave too little voltage.";
    RUNS_OUT = "coils.runs-out",
        "Above {runs_out} there is too little time to charge a coil: it needs {needed}, and at {speed} only {available} are left beside its spark.";
    OVER_DUTY = "coils.over-duty",
        "At the highest speed coil duty is {duty}; its data allow {limit}.";
    DWELL_TOO_LONG = "coils.dwell-too-long",
        "The dwell entered, {dwell}, charges a coil to {current} at {supply}, to at least {least} when hot; {wanted} is needed.";
    DWELL_TOO_SHORT = "coils.dwell-too-short",
        "The dwell entered, {dwell}, charges a coil to only {current} at {supply}; {wanted} is needed.";
    DWELL_ANYTHING = "coils.dwell-anything",
        "The coil's {what} is not known: the dwell for {current} is anything from {least} to {most} at {supply}.";
    ENTERED_ANYTHING = "coils.entered-anything",
        "The coil's {what} is not known: the dwell entered, {dwell}, charges it to anything from {least} to {most} at {supply}; {wanted} is needed.";
    ITS_RESISTANCE = "coils.its-resistance", "resistance";
    ITS_INDUCTANCE = "coils.its-inductance", "inductance";
    LONGER = "coils.longer", "never reached";
    FUSE_TOO_SMALL = "coils.fuse-too-small",
        "The {rating} fuse carries {effective} RMS; loaded to 75% it must be {least} or more.";
    RELAY_TOO_SMALL = "coils.relay-too-small",
        "The {rating} contact carries {effective} RMS, {peak} peak.";
    LEAD_DROPS = "coils.lead-drops", "The cable to the coils drops {drop} at {peak}; the usual limit is {most}.";
    FUSE_BEARS_HELD = "coils.fuse-bears-held",
        "With the key on and the controller not up, {name} keeps its coil on: {current}, and {fuse}; {part}, with {heat} in it, is 100 °C hotter in {time}.";
    HELD_BUT_CUT = "coils.held-but-cut",
        "With its threshold at {speed} the relay saves a coil that stays on with the engine stopped; with it turning, {fuse}, and in {time} {part} is 100 °C hotter.";
    HELD_WOULD = "coils.held-would",
        "A wrong polarity or a stuck output would keep a coil on, {current} from key-on: {fuse}, and in {time} {part} is 100 °C hotter.";
    // what is said of an input that is live while its output is off
    CHARGES_AT_REST = "coils.charges-at-rest",
        "Its coil charges as long as it has power: {current}, until coil or igniter burns.";
    CHARGES_BEHIND = "coils.charges-behind",
        "Its coil charges as long as it has power: {current}, and the {rating} fuse may not save it.";
    CHARGES_UNTIL = "coils.charges-until",
        "Its coil charges as long as it has power, until the igniter switches off after {time}, with a spark.";
    FIRES_AT_KEY_ON = "coils.fires-at-key-on",
        "While the controller starts, {name} makes the igniter charge its coil to {current}; then it fires with {energy}, wherever the engine is and whoever has a hand there.";
    SHARED_LIMIT = "coils.shared-limit",
        "The igniter limits {n} coils together to {limit}: each gets {each}, and {wanted} is needed.";
    NO_SUCH_INPUT = "coils.no-such-input", "No load is called {name}.";
    FUSE_HOLDS_FOR = "coils.fuse-holds-for", "the {rating} fuse may last {time} at that";
    FUSE_HOLDS_FOR_EVER = "coils.fuse-holds-for-ever", "the {rating} fuse may not blow at that";
    THE_COIL = "coils.the-coil", "the coil's winding";
    THE_IGNITER = "coils.the-igniter", "the igniter";
    SPEED_RELAY = "coils.speed-relay",
        "Feed the coils through a relay with a threshold of {speed}: no power while the engine is stopped.";
    FUSE_EACH = "coils.fuse-each", "Give each igniter its own fuse of {fuse}: it carries its coil for long, and blows in time.";
    HOLD_INPUT = "coils.hold-input",
        "Hold that input off until the controller is up: a resistor from it to ground, as under “Outputs”.";
    OWN_IGNITER = "coils.own-igniter", "Give each coil its own igniter.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: FALLS_SHORT.code,
        // At a corner of supply, temperature and tolerances the current that is neared is no more than the one wanted.
        why: "A weak spark fires a warm engine but not a cold, rich one: while cranking it decides whether the engine starts.",
        act: "Use a coil with less resistance, shorter and thicker cables, or a lower current if the engine fires with it.",
        source: "Ohm's law in every case; University Physics, vol. 2, section 14.4",
    },
    Explanation {
        code: RUNS_OUT.code,
        // The longest dwell at the charging supply and the spark take longer than the least time between two charges.
        why: "Above that speed the current falls, and the energy with its square: it misfires under load.",
        act: "Fire each coil less often (its own coil once a cycle), use a faster coil, or a lower current.",
        source: "University Physics, vol. 2, section 14.4; a spark of 1 to 2 ms: common practice, no source",
    },
    Explanation {
        code: OVER_DUTY.code,
        // Dwell over the time between two charges is above the limit typed.
        why: "A coil with its igniter inside can't be cooled: it fails hot, and often shorted.",
        act: "Shorten the dwell, or fire each coil less often.",
        source: "the coil's own data",
    },
    Explanation {
        code: DWELL_TOO_LONG.code,
        // More than 1.25 times the current wanted: of the slowest coil, or, as a doubt, of one as meant.
        why: "The heat in coil and igniter goes with the square of the current: they burn, often in minutes, and a shorted igniter holds the coil on.",
        act: "Enter the dwell of the coil's own data, supply by supply; begin with too little.",
        source: "University Physics, vol. 2, section 14.4; 1.25 times: common practice, no source",
    },
    Explanation {
        code: DWELL_TOO_SHORT.code,
        // Less than 0.7 times the current wanted, of a coil as meant.
        why: "Half the current is a quarter of the energy: it fires at idle and misses under load, or in the cold.",
        act: "Enter the dwell of the coil's own data, supply by supply.",
        source: "University Physics, vol. 2, section 14.4; 0.7 times: common practice, no source",
    },
    Explanation {
        code: DWELL_ANYTHING.code,
        // Resistance or inductance is what is usual, and no dwell is entered.
        why: "A dwell from a guess may charge the coil to twice its current: it burns, and the igniter with it.",
        act: "Measure it, or find it in the coil's data; else begin with the least, and raise it with a current clamp.",
        source: "University Physics, vol. 2, section 14.4; what is usual for a coil: common practice, no source",
    },
    Explanation {
        code: ENTERED_ANYTHING.code,
        // The same with a dwell entered that may give more than 1.25 times the current wanted, or less than 0.7 times.
        why: "With one coil of the usual ones it burns, with another it misses under load.",
        act: "Measure it, or find it in the coil's data; else begin with the least, and raise it with a current clamp.",
        source: "University Physics, vol. 2, section 14.4; 1.25 and 0.7 times: common practice, no source",
    },
    Explanation {
        code: FUSE_TOO_SMALL.code,
        // The effective current is above 75% of the rating.
        why: "It blows at speed, after minutes: the engine stops, all cylinders at once.",
        act: "Fit the fuse named, on wire rated for it, or share the coils between more relays.",
        source: "ISO 8820-3 ratings, from memory; 75%: common practice, no source",
    },
    Explanation {
        code: RELAY_TOO_SMALL.code,
        // The effective current is above 75% of the contact's rating, or the highest instant above the rating.
        why: "The contact gets hot, then sticks or burns away.",
        act: "Use a larger relay, or one for each bank of coils.",
        source: "75%: common practice, no source",
    },
    Explanation {
        code: LEAD_DROPS.code,
        // More than 0.3 V at the highest instant.
        why: "Every coil loses what the cable drops: use the table's row for that much less supply.",
        act: "Fit a thicker or shorter cable.",
        source: "IEC 60028, copper; 0.3 V: common practice, no source",
    },
    Explanation {
        code: FUSE_BEARS_HELD.code,
        // An igniter's input may charge its coil while the controller is not up, and the fuse may bear that for longer than the
        // first of coil and igniter needs to be 100 K hotter.
        why: "A controller that does not start, or has no program yet, then burns it, and perhaps the car, and the fuse doesn't blow.",
        act: "Feed the coils through a relay that drops out when the engine stops. Don't rely on the fuse.",
        source: "ISO 8820-3: at 135% of its rating a fuse may hold for ten minutes, from memory; 100 g of copper in a coil, 10 g about an igniter: common practice, no source",
    },
    Explanation {
        code: FIRES_AT_KEY_ON.code,
        // The load that is the igniter's input acts while the stages of the controller are open, and no relay cuts the coils then.
        why: "A tenth of a second charges a coil fully, to several times the energy of a usual spark: it can stop a heart, make the engine kick back or light fuel.",
        act: "Hold the input off, or leave the coils without power until the engine turns. Plug leads off until you have proved it.",
        source: "University Physics, vol. 2, section 14.3; starting takes 0.1 to 1 s: common practice, no source",
    },
    Explanation {
        code: SHARED_LIMIT.code,
        // What an igniter holds, over the coils on it, is less than the current wanted.
        why: "Coils in parallel share their igniter's limit: half the current is a quarter of the energy.",
        act: "Use an igniter for each coil, or one with as many times the limit.",
        source: "Kirchhoff's current law; University Physics, vol. 2, section 14.3",
    },
    Explanation {
        code: NO_SUCH_INPUT.code,
        // The name is none of a load's.
        why: "Without it, what the coil does while the controller starts is not checked.",
        act: "Type the name of the load as it stands under “Outputs”.",
        source: "the form of this plan",
    },
];
