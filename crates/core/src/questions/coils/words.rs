//! The sentences of the question of coils.

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "coils.question", "Are the coils charged in time, and fed well enough?";
    PENDING = "coils.pending", "One moment…";
    TITLE = "coils.title", "How long must they be charged?";
    FEED_TITLE = "coils.feed-title", "What must their feed bear?";
    // verdicts
    BLANK = "coils.blank", "Not asked yet: type the coil’s resistance";
    NO_VOLTAGE = "coils.no-voltage", "The igniter leaves the coil no voltage";
    NEVER = "coils.never", "They never get {current}";
    RUNS_OUT_AT = "coils.runs-out-at", "Dwell runs out at {speed}";
    TOO_LONG = "coils.too-long", "Charged for too long: {duty} of the time";
    WEAK_CRANKING = "coils.weak-cranking", "Not sure of {current} while cranking";
    NOT_SURE = "coils.not-sure", "Not sure of {current}";
    IN_TIME = "coils.in-time", "Charged in time: {needed} of {available}";
    DWELL_IS = "coils.dwell-is", "Charge them for {dwell} at {supply}";
    DWELL_LONG = "coils.dwell-long", "Dwell too long: charged to {current}";
    DWELL_SHORT = "coils.dwell-short", "Dwell too short: charged to {current}";
    AT_KEY_ON = "coils.at-key-on", "They fire as the key is turned on";
    PERHAPS_AT_KEY_ON = "coils.perhaps-at-key-on", "They may fire as the key is turned on";
    FEED_OUTLASTS = "coils.feed-outlasts", "It bears them; the fuse outlasts a coil held on";
    FEED_OPEN = "coils.feed-open", "Not answered yet: engine, firing and highest speed first";
    FEED_BOTH_SMALL = "coils.feed-both-small", "Fuse and relay are too small";
    FEED_FUSE_SMALL = "coils.feed-fuse-small", "The fuse is too small";
    FEED_RELAY_SMALL = "coils.feed-relay-small", "The relay is too small";
    FEED_LEAD_THIN = "coils.feed-lead-thin", "The lead takes {drop} away";
    FEED_GOOD = "coils.feed-good", "Fuse and relay bear it";
    FEED_WANTED = "coils.feed-wanted", "A fuse of {fuse} for each relay";
    FEED_TOO_MUCH = "coils.feed-too-much", "No blade fuse bears it: use more relays";
    // why
    WHY = "coils.why",
        "A coil needs up to {needed} for {current} at {supply} ({energy} as meant), and at {speed} there are {available} between two \
         sparks.";
    WHY_ENTERED = "coils.why-entered",
        "The dwell of {dwell} that is entered charges a coil to {current} at {supply}, as meant; at {speed} there are {available} between \
         two sparks.";
    WHY_RUNS_OUT = "coils.why-runs-out", "The dwell runs out at {runs_out}.";
    FEED_WHY = "coils.feed-why",
        "{coils} {coils|coil|coils} on each of {relays} {relays|relay|relays}: {mean} on average at {speed}, where it is most, {effective} as it heats a fuse, {peak} at the highest \
         instant, with up to {at_once} {at_once|coil|coils} of the engine charged at once.";
    // what to do
    CURE_ONCE = "coils.cure-once",
        "Give each cylinder a coil of its own, fired once a cycle: the dwell then runs out at {speed} only.";
    CURE_LESS = "coils.cure-less",
        "Charge them to {current} only, {energy} a spark, if the engine fires with that.";
    CURE_DWELL = "coils.cure-dwell", "Enter {dwell} at {supply}; the table below has the other supplies.";
    DO_OTHER_COIL = "coils.do-other-coil",
        "Take a coil of less inductance that bears more current, or more coils.";
    DO_OTHER_PAIR = "coils.do-other-pair",
        "Type a lower current if the engine fires with that, or take a coil and an igniter that reach {current}.";
    DO_ENTER = "coils.do-enter", "Enter the dwell of each supply from the table below in the controller.";
    DO_ENGINE = "coils.do-engine",
        "Describe the engine and how its coils are fired under “Firing”: then it says whether there is time for it.";
    DO_SPEED = "coils.do-speed",
        "Type the engine’s highest speed under “Firing”: then it says whether there is time for it.";
    DO_PROVE = "coils.do-prove",
        "Prove it with an oscilloscope and current clamp on one coil’s feed, first with the fuel off: it rises to {current} and no further. \
         After a drive, ignition off: no coil much hotter than the engine next to it.";
    TAKEN = "coils.taken", "Taken where nothing was typed: {list}.";
    FEED_FIT = "coils.feed-fit",
        "Give each relay a fuse of {fuse} close to the battery, and a contact that bears {peak} of direct current.";
    FUSE_LARGER = "coils.fuse-larger", "Fit a fuse of {fuse}.";
    FEED_SPLIT = "coils.feed-split", "Share the coils between more relays, each with a fuse of its own.";
    FEED_GROUND = "coils.feed-ground",
        "Ground the igniters at the cylinder head with the same size of wire: what flows in must flow out.";
    // cautions
    CAUTION_SPARK = "coils.caution-spark",
        "Ignition voltage can kill: no hand near coil or lead while anything can fire, and every plug or a spark tester on its lead. A spark \
         lights fuel vapour: fuel off, rags and cans away.";
    CAUTION_HELD = "coils.caution-held",
        "A coil that is held on with the engine standing takes {current} and makes {heat} of heat until it burns: feed the coils through a relay \
         that follows engine speed, and pull their fuse while you work.";
    // figures
    FIGURE_DWELL = "coils.figure-dwell", "Dwell as meant, 20 °C, at {supply}";
    FIGURE_ENERGY = "coils.figure-energy", "Energy of one charge, as meant";
    FIGURE_NEEDED = "coils.figure-needed", "Longest dwell while charging";
    FIGURE_AVAILABLE = "coils.figure-available", "Time for it at the highest speed";
    FIGURE_RUNS_OUT = "coils.figure-runs-out", "Dwell runs out at";
    FIGURE_RUNS_OUT_AT_REST = "coils.figure-runs-out-at-rest", "The same if the alternator is out";
    FIGURE_DUTY = "coils.figure-duty", "Part of the time charged, highest speed";
    FIGURE_COIL_HEAT = "coils.figure-coil-heat", "Heat in one coil’s primary, at most";
    FIGURE_IGNITER_HEAT = "coils.figure-igniter-heat", "Heat in its igniter, at most";
    FEED_FUSE_BIG = "coils.feed-fuse-big", "The fuse is too large for what lies behind it";
    FIGURE_HELD = "coils.figure-held", "Current of a coil that is held on";
    FIGURE_HELD_HEAT = "coils.figure-held-heat", "Heat in it";
    FIGURE_HELD_TIME = "coils.figure-held-time", "Its copper 100 K hotter after";
    FIGURE_MEAN = "coils.figure-mean", "On one relay, on average";
    FIGURE_EFFECTIVE = "coils.figure-effective", "The same, as it heats relay and fuse";
    FIGURE_PEAK = "coils.figure-peak", "On one relay, at the highest instant";
    FIGURE_LEAST = "coils.figure-least", "Least rating of relay and fuse";
    FIGURE_DROP = "coils.figure-drop", "Drop in the lead at that instant";
    // table
    TABLE = "coils.table", "Dwell to enter, for {current}";
    TABLE_BANKS = "coils.table-banks", "What the relay of each bank carries at most";
    COLUMN_BANK = "coils.column-bank", "Bank";
    COLUMN_MEAN = "coils.column-mean", "On average";
    COLUMN_EFFECTIVE = "coils.column-effective", "As it heats";
    COLUMN_PEAK = "coils.column-peak", "At most";
    PICTURE = "coils.picture", "The current of one coil while it is charged, 20 °C, to {current}";
    CURVE = "coils.curve", "at {supply}";
    LEVEL_WANTED = "coils.level-wanted", "wanted";
    LEVEL_LIMIT = "coils.level-limit", "igniter holds it";
    COLUMN_SUPPLY = "coils.column-supply", "Supply";
    COLUMN_DWELL = "coils.column-dwell", "Dwell (20 °C)";
    COLUMN_RANGE = "coils.column-range", "Needed, cold to hot";
    COLUMN_CURRENT = "coils.column-current", "Current with that dwell";
    CELL_NEVER = "coils.cell-never", "never gets there";
    CELL_FROM = "coils.cell-from", "{least} or never";
    // findings
    FALLS_SHORT = "coils.falls-short",
        "The coils are not sure to get {current}: at {supply} copper and igniter leave too little for it.";
    RUNS_OUT = "coils.runs-out",
        "From {runs_out} on a coil has too little time: it needs {needed} for its current, and at {speed} only {available} are left beside its \
         spark.";
    OVER_DUTY = "coils.over-duty",
        "At the highest speed a coil is charged for {duty} of the time; its data allow {limit}.";
    DWELL_TOO_LONG = "coils.dwell-too-long",
        "The dwell of {dwell} that is entered charges a coil to {current} at {supply}, to {least} at least when hot; {wanted} is wanted.";
    DWELL_TOO_SHORT = "coils.dwell-too-short",
        "The dwell of {dwell} that is entered charges a coil to {current} only at {supply}; {wanted} is wanted.";
    FUSE_TOO_SMALL = "coils.fuse-too-small",
        "The fuse of {rating} is heated as by {effective}; loaded to 75% it must have {least} or more.";
    RELAY_TOO_SMALL = "coils.relay-too-small",
        "The contact of {rating} is heated as by {effective}, and carries {peak} at the highest instant.";
    LEAD_DROPS = "coils.lead-drops", "The lead to the coils takes {drop} away at {peak}; {most} is usual at most.";
    FUSE_BEARS_HELD = "coils.fuse-bears-held",
        "A coil that is held on takes {current}, which a fuse of {rating} may bear {holds}; {part}, with {heat} in it, is 100 K hotter in {time}.";
    HELD_BUT_CUT = "coils.held-but-cut",
        "The relay at {speed} saves a coil that is held on with the engine standing; with it turning the fuse may bear that {holds}, and {part} is 100 K hotter in {time}.";
    FIRES_AT_KEY_ON = "coils.fires-at-key-on",
        "While the controller starts, {name} makes the igniter charge its coil to {current}; as the start ends it fires with {energy}, wherever \
         the engine stands and whoever has a hand there.";
    SHARED_LIMIT = "coils.shared-limit",
        "The igniter holds {limit} for {n} coils together: each gets {each}, and {wanted} is wanted.";
    NO_SUCH_INPUT = "coils.no-such-input", "No load is called {name}.";
    HOLDS_FOR = "coils.holds-for", "for {time}";
    HOLDS_FOR_EVER = "coils.holds-for-ever", "for ever";
    THE_COIL = "coils.the-coil", "its primary";
    THE_IGNITER = "coils.the-igniter", "its igniter";
    SPEED_RELAY = "coils.speed-relay",
        "Feed the coils through a relay that is switched on at {speed} of the engine: with it standing they have no power.";
    FUSE_EACH = "coils.fuse-each", "Give each igniter a fuse of its own, of {fuse}: it blows in time.";
    HOLD_INPUT = "coils.hold-input",
        "Hold that input at rest until the controller is up: a resistor from it to ground, as under “Outputs”.";
    OWN_IGNITER = "coils.own-igniter", "Give each coil an igniter of its own.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: FALLS_SHORT.code,
        // At a corner of supply, temperature and tolerances the current that is neared is no more than the one wanted.
        why: "A weak spark fires a warm engine and not a cold, rich one; while cranking that is the difference between start and no start.",
        act: "Take a coil of less resistance, shorter and thicker leads, or a lower current where the engine fires with it.",
        source: "Ohm's law at every corner; University Physics, vol. 2, section 14.4",
    },
    Explanation {
        code: RUNS_OUT.code,
        // The longest dwell at the charging supply and the spark take longer than the least time between two charges.
        why: "Above that speed the current, and with its square the energy, falls: it misfires under load, where it matters.",
        act: "Fire each coil less often (its own coil once a cycle), take a faster coil, or a lower current.",
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
        code: FUSE_TOO_SMALL.code,
        // The effective current is above 75% of the rating.
        why: "It blows at speed, after minutes: the engine stops, all cylinders at once.",
        act: "Take the fuse that is named, on wire that bears it, or share the coils between more relays.",
        source: "ISO 8820-3 ratings, from memory; 75%: common practice, no source",
    },
    Explanation {
        code: RELAY_TOO_SMALL.code,
        // The effective current is above 75% of the contact's rating, or the highest instant above the rating.
        why: "The contact gets hot, then sticks or burns away.",
        act: "Take a larger relay, or one for each bank of coils.",
        source: "75%: common practice, no source",
    },
    Explanation {
        code: LEAD_DROPS.code,
        // More than 0.3 V at the highest instant.
        why: "What the lead takes is missing in every coil: use the row of the table for that much less supply.",
        act: "Take a thicker or shorter lead.",
        source: "IEC 60028, copper; 0.3 V: common practice, no source",
    },
    Explanation {
        code: FUSE_BEARS_HELD.code,
        // A fuse may hold the coils of one igniter, held on, for longer than the first of coil and igniter needs to be 100 K hotter.
        why: "A wrong dwell sense, a stuck output or a crashed controller then burns it, and perhaps the car, behind a whole fuse.",
        act: "Let a relay that falls off below a speed cut the coils' feed when the engine stands. Don't rely on the fuse.",
        source: "ISO 8820-3: at 135% of its rating a fuse may hold for ten minutes, from memory; 100 g of copper in a coil, 10 g about an igniter: common practice, no source",
    },
    Explanation {
        code: FIRES_AT_KEY_ON.code,
        // The load that is the igniter's input acts while the stages of the controller are open, and no relay cuts the coils then.
        why: "A tenth of a second charges a coil as far as it goes, several times the energy of a usual spark: it can stop a heart, kick the engine or light fuel.",
        act: "Hold the input at rest, or leave the coils without power until the engine turns. Plugs' leads off until it is proved.",
        source: "University Physics, vol. 2, section 14.3; starting takes 0.1 to 1 s: common practice, no source",
    },
    Explanation {
        code: SHARED_LIMIT.code,
        // What an igniter holds, over the coils on it, is less than the current wanted.
        why: "Coils side by side share what their igniter lets through: half the current is a quarter of the energy.",
        act: "Take an igniter for each coil, or one that holds as many times the current.",
        source: "Kirchhoff's current law; University Physics, vol. 2, section 14.3",
    },
    Explanation {
        code: NO_SUCH_INPUT.code,
        // The name is none of a load's.
        why: "Without it nothing is said of what the coil does while the controller starts.",
        act: "Type the name of the load as it stands under “Outputs”.",
        source: "the form of this plan",
    },
];
