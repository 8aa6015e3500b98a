//! The sentences of the question of coils.

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] = &[
    ("coils.title", "How long must they be charged?"),
    ("coils.feed-title", "What must their feed bear?"),
    // verdicts
    ("coils.blank", "Not asked yet: type the coil’s resistance"),
    ("coils.no-voltage", "The igniter leaves the coil no voltage"),
    ("coils.never", "They never get {current}"),
    ("coils.runs-out-at", "Dwell runs out at {speed}"),
    ("coils.too-long", "Charged for too long: {duty} of the time"),
    ("coils.weak-cranking", "Not sure of {current} while cranking"),
    ("coils.not-sure", "Not sure of {current}"),
    ("coils.in-time", "Charged in time: {needed} of {available}"),
    ("coils.dwell-is", "Charge them for {dwell} at {supply}"),
    ("coils.feed-open", "Not answered yet: engine, firing and highest speed first"),
    ("coils.feed-both-small", "Fuse and relay are too small"),
    ("coils.feed-fuse-small", "The fuse is too small"),
    ("coils.feed-relay-small", "The relay is too small"),
    ("coils.feed-lead-thin", "The lead takes {drop} away"),
    ("coils.feed-good", "Fuse and relay bear it"),
    ("coils.feed-wanted", "A fuse of {fuse} for each relay"),
    ("coils.feed-too-much", "No blade fuse bears it: use more relays"),
    // why
    (
        "coils.why",
        "A coil needs up to {needed} for {current} at {supply} ({energy} as meant), and at {speed} there are {available} between two \
         sparks; the dwell runs out at {runs_out}.",
    ),
    (
        "coils.feed-why",
        "{coils} {coils|coil|coils} on each of {relays} {relays|relay|relays}: {mean} on average at the highest speed, {effective} as it heats a fuse, {peak} at the highest \
         instant, with up to {at_once} {at_once|coil|coils} of the engine charged at once.",
    ),
    // what to do
    (
        "coils.cure-once",
        "Give each cylinder a coil of its own, fired once a cycle: the dwell then runs out at {speed} only.",
    ),
    (
        "coils.cure-less",
        "Charge them to {current} only, {energy} a spark, if the engine fires with that.",
    ),
    (
        "coils.do-other-coil",
        "Take a coil of less inductance that bears more current, or more coils.",
    ),
    (
        "coils.do-other-pair",
        "Type a lower current if the engine fires with that, or take a coil and an igniter that reach {current}.",
    ),
    ("coils.do-enter", "Enter the dwell of each supply from the table below in the controller."),
    (
        "coils.do-engine",
        "Describe the engine and how its coils are fired in question 1: then it says whether there is time for it.",
    ),
    (
        "coils.do-speed",
        "Type the engine’s highest speed in question 1: then it says whether there is time for it.",
    ),
    (
        "coils.do-prove",
        "Prove it with an oscilloscope and current clamp on one coil’s feed, first with the fuel off: it rises to {current} and no further. \
         After a drive, ignition off: no coil much hotter than the engine next to it.",
    ),
    ("coils.taken", "Taken where nothing was typed: {list}."),
    (
        "coils.feed-fit",
        "Give each relay a fuse of {fuse} close to the battery, and a contact that bears {peak} of direct current.",
    ),
    ("coils.feed-split", "Share the coils between more relays, each with a fuse of its own."),
    (
        "coils.feed-ground",
        "Ground the igniters at the cylinder head with the same size of wire: what flows in must flow out.",
    ),
    // cautions
    (
        "coils.caution-spark",
        "Ignition voltage can kill: no hand near coil or lead while anything can fire, and every plug or a spark tester on its lead. A spark \
         lights fuel vapour: fuel off, rags and cans away.",
    ),
    (
        "coils.caution-held",
        "A coil that is held on with the engine standing takes {current} and makes {heat} of heat until it burns: feed the coils through a relay \
         that follows engine speed, and pull their fuse while you work.",
    ),
    // figures
    ("coils.figure-dwell", "Dwell as meant, 20 °C, at {supply}"),
    ("coils.figure-energy", "Energy of one charge, as meant"),
    ("coils.figure-needed", "Longest dwell while charging"),
    ("coils.figure-available", "Time for it at the highest speed"),
    ("coils.figure-runs-out", "Dwell runs out at"),
    ("coils.figure-runs-out-at-rest", "The same if the alternator is out"),
    ("coils.figure-duty", "Part of the time charged, highest speed"),
    ("coils.figure-coil-heat", "Heat in one coil’s primary, highest speed"),
    ("coils.figure-igniter-heat", "Heat in its igniter, highest speed"),
    ("coils.figure-held", "Current of a coil that is held on"),
    ("coils.figure-held-heat", "Heat in it"),
    ("coils.figure-held-time", "Its copper 100 K hotter after"),
    ("coils.figure-mean", "On one relay, on average"),
    ("coils.figure-effective", "The same, as it heats relay and fuse"),
    ("coils.figure-peak", "On one relay, at the highest instant"),
    ("coils.figure-least", "Least rating of relay and fuse"),
    ("coils.figure-drop", "Drop in the lead at that instant"),
    // table
    ("coils.table", "Dwell to enter, for {current}"),
    ("coils.table-banks", "What the relay of each bank carries at the highest speed"),
    ("coils.column-bank", "Bank"),
    ("coils.column-mean", "On average"),
    ("coils.column-effective", "As it heats"),
    ("coils.column-peak", "At most"),
    ("coils.picture", "The current of one coil while it is charged, 20 °C, to {current}"),
    ("coils.curve", "at {supply}"),
    ("coils.level-wanted", "wanted"),
    ("coils.level-limit", "igniter holds it"),
    ("coils.column-supply", "Supply"),
    ("coils.column-dwell", "Dwell (20 °C)"),
    ("coils.column-range", "Needed, cold to hot"),
    ("coils.column-current", "Current with that dwell"),
    ("coils.cell-never", "never gets there"),
    ("coils.cell-from", "{least} or never"),
    // findings
    (
        "coils.falls-short",
        "The coils are not sure to get {current}: at {supply} copper and igniter leave too little for it.",
    ),
    (
        "coils.runs-out",
        "From {runs_out} on a coil has too little time: it needs {needed} for its current, and at {speed} only {available} are left beside its \
         spark.",
    ),
    (
        "coils.over-duty",
        "At the highest speed a coil is charged for {duty} of the time; its data allow {limit}.",
    ),
    (
        "coils.fuse-too-small",
        "The fuse of {rating} is heated as by {effective}; loaded to 75% it must have {least} or more.",
    ),
    (
        "coils.relay-too-small",
        "The contact of {rating} is heated as by {effective}, and carries {peak} at the highest instant.",
    ),
    (
        "coils.lead-drops",
        "The lead to the coils takes {drop} away at {peak}; {most} is usual at most.",
    ),
    (
        "coils.fuse-bears-held",
        "A fuse of {rating} never blows by a coil that is held on: {current} and {heat} in it while hot, its copper 100 K hotter in {time} or \
         sooner.",
    ),
];

pub(super) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: "coils.falls-short",
        // At a corner of supply, temperature and tolerances the current that is neared is no more than the one wanted.
        why: "A weak spark fires a warm engine and not a cold, rich one; while cranking that is the difference between start and no start.",
        act: "Take a coil of less resistance, shorter and thicker leads, or a lower current where the engine fires with it.",
        source: "Ohm's law at every corner; University Physics, vol. 2, section 14.4",
    },
    Explanation {
        code: "coils.runs-out",
        // The longest dwell at the charging supply and the spark take longer than the least time between two charges.
        why: "Above that speed the current, and with its square the energy, falls: it misfires under load, where it matters.",
        act: "Fire each coil less often (its own coil once a cycle), take a faster coil, or a lower current.",
        source: "University Physics, vol. 2, section 14.4; a spark of 1 to 2 ms: common practice, no source",
    },
    Explanation {
        code: "coils.over-duty",
        // Dwell over the time between two charges is above the limit typed.
        why: "A coil with its igniter inside can't be cooled: it fails hot, and often shorted.",
        act: "Shorten the dwell, or fire each coil less often.",
        source: "the coil's own data",
    },
    Explanation {
        code: "coils.fuse-too-small",
        // The effective current is above 75% of the rating.
        why: "It blows at the highest speed, after minutes: the engine stops, all cylinders at once.",
        act: "Take the fuse that is named, on wire that bears it, or share the coils between more relays.",
        source: "ISO 8820-3 ratings, from memory; 75%: common practice, no source",
    },
    Explanation {
        code: "coils.relay-too-small",
        // The effective current is above 75% of the contact's rating, or the highest instant above the rating.
        why: "The contact gets hot, then sticks or burns away.",
        act: "Take a larger relay, or one for each bank of coils.",
        source: "75%: common practice, no source",
    },
    Explanation {
        code: "coils.lead-drops",
        // More than 0.3 V at the highest instant.
        why: "What the lead takes is missing in every coil: use the row of the table for that much less supply.",
        act: "Take a thicker or shorter lead.",
        source: "IEC 60028, copper; 0.3 V: common practice, no source",
    },
    Explanation {
        code: "coils.fuse-bears-held",
        // The current of a coil that is held on, hot, is no more than 110% of the fuse.
        why: "A wrong dwell sense, a stuck output or a crashed controller then burns the coil, and perhaps the car, behind a whole fuse.",
        act: "Let a relay cut the coils' feed when the engine stands; don't rely on the fuse.",
        source: "ISO 8820-3: a fuse bears 110% of its rating for a hundred hours, from memory",
    },
];
