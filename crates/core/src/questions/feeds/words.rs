//! The sentences of the question of the feeds.

pub(crate) mod grounds;
pub(crate) mod guards;

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "feeds.question", "Do fuses, wires and relays suit?";
    PENDING = "feeds.pending", "One moment…";
    NUMBERED = "feeds.numbered", "relay {n}";
    OF_INJECTORS = "feeds.of-injectors", "Injectors";
    OF_SECOND_INJECTORS = "feeds.of-second-injectors", "Second injectors";
    ON_IGNITION = "feeds.on-ignition", "Ignition feed (15)";
    ON_BATTERY = "feeds.on-battery", "Battery feed (30)";
    FEED_TITLE = "feeds.feed-title", "{load}";
    CABLE_TITLE = "feeds.cable-title", "Battery cable";
    ALTERNATOR_TITLE = "feeds.alternator-title", "Alternator";
    // verdicts
    BLANK = "feeds.blank", "Needs: a relay, its fuse and its wire";
    GOOD = "feeds.good", "Fuse and wire suit";
    GOOD_CONTACT = "feeds.good-contact", "Fuse, wire and contact suit";
    OPEN_DRAWS = "feeds.open-draws", "Needs: what it draws";
    OPEN_FIT = "feeds.open-fit", "Needs: a fuse of {fuse}, wire of {size}";
    OPEN_FUSE = "feeds.open-fuse", "Needs: its fuse";
    OPEN_WIRE = "feeds.open-wire", "Needs: its wire";
    OPEN_BOTH = "feeds.open-both", "Needs: its fuse and its wire";
    OPEN_CONTACT = "feeds.open-contact", "Needs: what its contact is rated for";
    BAD_WIRE = "feeds.bad-wire", "Its wire burns before its fuse blows";
    BAD_HOT = "feeds.bad-hot", "Its wire gets too hot as it runs";
    BAD_FAR = "feeds.bad-far", "A short at the other end doesn't blow its fuse";
    BAD_CONTACT = "feeds.bad-contact", "Its fuse is larger than its contact";
    BAD_FUSE = "feeds.bad-fuse", "Its fuse is too small";
    BAD_RELAY = "feeds.bad-relay", "Its contact is too small";
    BAD_START = "feeds.bad-start", "The inrush welds its contact";
    NEAR_WIRE = "feeds.near-wire", "Little to spare between fuse and wire";
    NEAR_BRANCH = "feeds.near-branch", "Needs a fuse of its own";
    NEAR_START = "feeds.near-start", "The inrush is high";
    NEAR_DROP = "feeds.near-drop", "The wire takes {drop}";
    CABLE_OPEN = "feeds.cable-open", "Needs: the cable's length and size, and what the starter draws";
    CABLE_GOOD = "feeds.cable-good", "The starter gets {left}";
    CABLE_THIN = "feeds.cable-thin", "The cable takes {drop} while cranking";
    CABLE_BACK = "feeds.cable-back", "Cable and strap take {drop} while cranking";
    ALTERNATOR_GOOD = "feeds.alternator-good", "The alternator feeds everything, at idle too";
    ALTERNATOR_SPEED = "feeds.alternator-speed", "The alternator feeds everything at speed";
    ALTERNATOR_IDLE = "feeds.alternator-idle", "At idle the battery gives up to {short}";
    ALTERNATOR_SHORT = "feeds.alternator-short", "The battery goes flat while driving: {short} short";
    ALTERNATOR_OPEN = "feeds.alternator-open", "Alternator: {needed} so far; not all known yet";
    // why
    WHY = "feeds.why", "Up to {draws} for long.";
    WHY_INRUSH = "feeds.why-inrush", "Up to {draws} for long, {inrush} at switch-on.";
    CABLE_WHY = "feeds.cable-why", "{starter} through {length} of {size} and back lose {drop} of {cranking}.";
    ALTERNATOR_WHY = "feeds.alternator-why", "All circuits on at once draw up to {needed}.";
    TAKEN_LAID = "feeds.taken-laid",
        "Each wire alone, in air of {ambient}. In a bundle, or where it is hotter, it carries less.";
    // what to do
    DO_FIT = "feeds.do-fit", "Fit a fuse of {fuse}, and wire of {size} or more.";
    DO_FIT_FUSE = "feeds.do-fit-fuse", "Fit a fuse of {fuse}.";
    DO_FIT_WIRE = "feeds.do-fit-wire", "Fit wire of {size} or more.";
    DO_DRAWS = "feeds.do-draws", "Type what it draws.";
    DO_TYPE = "feeds.do-type", "Type its fuse and its wire.";
    DO_RATING = "feeds.do-rating", "Type what its contact is rated for.";
    DO_SMALLER_FUSE = "feeds.do-smaller-fuse", "Fit a fuse of {fuse} for {feed}.";
    DO_OWN_FUSE = "feeds.do-own-fuse", "Fit a fuse of {fuse} for {feed} alone, where it branches off.";
    DO_OWN_FUSES = "feeds.do-own-fuses",
        "Feed {feed} in groups, each behind a fuse of {fuse} at most.";
    DO_LARGER_FUSE = "feeds.do-larger-fuse", "Fit a fuse of {fuse} for {feed}.";
    DO_LARGER_BOTH = "feeds.do-larger-both", "Fit a fuse of {fuse} for {feed}, and wire of {size} or more.";
    DO_LARGER_FUSED = "feeds.do-larger-fused", "Fit a fuse of {fuse} for {feed}, and a relay rated for {rating}.";
    DO_LARGER_ALL = "feeds.do-larger-all",
        "Fit a fuse of {fuse} for {feed}, wire of {size} or more, and a relay rated for {rating}.";
    DO_THICKER_WIRE = "feeds.do-thicker-wire", "Fit wire of {size} or more for {feed}; its thinnest piece counts.";
    DO_LARGER_RELAY = "feeds.do-larger-relay", "Fit a relay rated for {rating} for {feed}.";
    DO_SPLIT = "feeds.do-split", "Take something off {feed}: a feed of its own, with its own fuse and relay.";
    DO_RELAY = "feeds.do-relay", "Ask the relay's maker what its contact makes, or take a larger one.";
    DO_CABLE = "feeds.do-cable", "Fit a battery cable of {size} or more, {length}, and a minus cable as thick.";
    DO_CABLES = "feeds.do-cables", "Fit two cables side by side, or move the battery.";
    DO_SHED = "feeds.do-shed", "Fit an alternator rated for {rating} or more, or switch something off.";
    // cautions
    CAUTION_FUSE = "feeds.caution-fuse",
        "The fuse sits at the battery's end of the wire: what lies before it burns unprotected. Never fit a larger fuse to stop it blowing.";
    CAUTION_CABLE = "feeds.caution-cable",
        "A battery cable has no fuse: keep it off edges and hot parts, and sleeve it through each panel.";
    // figures
    FIGURE_DRAWS = "feeds.figure-draws", "What it draws, RMS";
    FIGURE_MEAN = "feeds.figure-mean", "The same on the average";
    FIGURE_INRUSH = "feeds.figure-inrush", "Inrush";
    FIGURE_FUSE = "feeds.figure-fuse", "Smallest fuse that carries it";
    FIGURE_SIZE = "feeds.figure-size", "Thinnest wire behind that fuse";
    FIGURE_WORST = "feeds.figure-worst", "The fault that heats the wire most before the fuse blows";
    FIGURE_FAR = "feeds.figure-far", "Dead short at the other end, at least";
    FIGURE_LOST = "feeds.figure-lost", "Lost in the wire, out and back";
    FIGURE_DROP = "feeds.figure-drop", "Lost between battery and starter, out and back";
    FIGURE_NEEDED = "feeds.figure-needed", "What all circuits draw";
    FIGURE_IDLE = "feeds.figure-idle", "Left at idle";
    FIGURE_SPEED = "feeds.figure-speed", "Left at speed";
    // findings
    FUSE_OVER_WIRE = "feeds.fuse-over-wire",
        "{feed}: a fault of {current} heats the {size} wire beyond the limit of its insulation, and the {fuse} fuse may hold it {holds}: fire.";
    FUSE_NEAR_WIRE = "feeds.fuse-near-wire",
        "{feed}: a fault of {current} may age the {size} wire before the {fuse} fuse blows ({holds} at most): nothing to spare for a bundle or a hot place.";
    BRANCH_UNFUSED = "feeds.branch-unfused",
        "{feed}: no fuse of its own is known, and the {fuse} fuse before it doesn't protect the {size} wire: a fault of {current} burns it first.";
    FUSE_NEVER_BLOWS = "feeds.fuse-never-blows",
        "{feed}: a short at the other end of {size} wire may draw only {far}, and the {fuse} fuse may hold that for ever.";
    FUSE_OVER_CONTACT = "feeds.fuse-over-contact",
        "{feed}: its {fuse} fuse is larger than its contact, which is rated for {rating}: the contact welds or burns before the fuse blows.";
    FUSE_TOO_SMALL = "feeds.fuse-too-small",
        "{feed}: what it feeds draws {draws}, and its {fuse} fuse carries {carries} for long: it blows when it is hot.";
    CONTACT_TOO_SMALL = "feeds.contact-too-small",
        "{feed}: what it feeds draws {draws}, more than its contact is rated for ({rating}): it gets hot and welds.";
    INRUSH_OVER_CONTACT = "feeds.inrush-over-contact",
        "{feed}: an inrush of {inrush} may weld a contact rated for {rating}.";
    INRUSH_WELDS = "feeds.inrush-welds",
        "{feed}: an inrush of {inrush} welds a contact rated for {rating} sooner or later: what it feeds stays on.";
    INRUSH_OVER_FUSE = "feeds.inrush-over-fuse",
        "{feed}: an inrush of {inrush} may blow its {fuse} fuse at switch-on.";
    WIRE_DROPS = "feeds.wire-drops",
        "{feed}: {size} wire loses {drop}, {part} of {supply}, out and back; more than {most} is too much.";
    WIRE_HOT = "feeds.wire-hot",
        "{feed}: what it feeds draws {draws}, and its {size} wire carries {bears} at most: it gets too hot as it runs.";
    CABLE_DROPS = "feeds.cable-drops",
        "The battery cable loses {drop} while cranking, out and back: {left} of {cranking} are left at the starter: it turns slower, or not at all.";
    ALTERNATOR_LACKS = "feeds.alternator-lacks",
        "All circuits draw up to {needed}, and the alternator gives {short} less, hot: the battery goes flat while driving.";
    IDLE_LACKS = "feeds.idle-lacks",
        "At idle, with all circuits on, the battery gives up to {short}.";
    NO_SUCH_RELAY = "feeds.no-such-relay", "“{name}” is no relay of this plan.";
    BEHIND_ITSELF = "feeds.behind-itself", "A contact can't be fed through itself.";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: FUSE_OVER_WIRE.code,
        // At the worst fault current, with the longest time that the fuse may take, the wire is past its limit by far.
        why: "A fuse protects the wire, not the load. The worst fault is not the dead short: a little more than the fuse holds for minutes heats the wire in the harness until it burns, and all around it.",
        act: "Size the fuse by the thinnest wire behind it, or the wire by the fuse.",
        source: "blade fuse data sheets (ISO 8820-3); thin-wall wire from a distributor's table; classes of insulation by ISO 6722-1, from memory",
    },
    Explanation {
        code: FUSE_NEAR_WIRE.code,
        // The same, by up to 28 % of the current.
        why: "An overload that the fuse holds for minutes heats the wire beyond its insulation, sooner in a bundle than alone.",
        act: "The next size of wire, or the next smaller fuse.",
        source: "as for a wire that burns; what the insulation stores of the heat is left out",
    },
    Explanation {
        code: BRANCH_UNFUSED.code,
        // The wire of a branch against the fuse before it, where none of its own is typed.
        why: "The fuse of a relay that feeds several things is too large for the thinnest wire behind it: with one wire chafed through, that wire burns in the harness.",
        act: "A smaller fuse of its own where it branches off. Where there is one, type it.",
        source: "as for a wire that burns",
    },
    Explanation {
        code: FUSE_NEVER_BLOWS.code,
        // Below 135 % of its rating a fuse may hold for ever.
        why: "A long thin wire has so much resistance that a dead short at its end is hardly an overload. The fuse stays whole, and where the short is, it arcs and burns.",
        act: "A smaller fuse, if what it feeds allows it, or a thicker wire.",
        source: "ISO 8820-3: 135% must blow it, from a data sheet; Ohm's law with the wire hot",
    },
    Explanation {
        code: FUSE_OVER_CONTACT.code,
        why: "A contact that carries more than it is rated for gets hot and welds: what it feeds then stays on.",
        act: "Fit a fuse no larger than the contact's rating, or a relay that is rated for more.",
        source: "common practice, no source",
    },
    Explanation {
        code: FUSE_TOO_SMALL.code,
        why: "A fuse carries about three quarters of its rating for long, less where it is hot. One that is loaded more ages, and blows on a hot day.",
        act: "The next larger fuse, and a wire to suit.",
        source: "common practice, no source",
    },
    Explanation {
        code: CONTACT_TOO_SMALL.code,
        why: "A contact that carries more than it is rated for gets hot and welds: what it feeds then stays on.",
        act: "A relay that is rated for more.",
        source: "common practice, no source",
    },
    Explanation {
        code: INRUSH_OVER_CONTACT.code,
        why: "A cold lamp takes ten times what it burns, a motor at rest six: the contact bounces while it makes that current. So a contact that is rated for a resistance is good for less than half of that in lamps, and for some three fifths in a motor.",
        act: "A relay whose data sheet allows it.",
        source: "four times its rating for an instant: common practice, no source",
    },
    Explanation {
        code: INRUSH_WELDS.code,
        why: "A cold lamp takes ten times what it burns, a motor at rest six: the contact bounces while it makes that current, and melts where it touches.",
        act: "A relay whose data sheet allows it.",
        source: "six times its rating as typed, and a good one makes four for an instant: common practice, no source",
    },
    Explanation {
        code: INRUSH_OVER_FUSE.code,
        why: "A fuse that blows now and then as something is switched on leaves the car standing.",
        act: "The next larger fuse, and a wire to suit.",
        source: "the least times of blade fuse data sheets",
    },
    Explanation {
        code: WIRE_DROPS.code,
        why: "What the wire takes the load lacks: a pump gives less pressure, a fan less air, a lamp less light.",
        act: "A thicker wire, or a shorter way.",
        source: "5% between battery and load: common practice, no source",
    },
    Explanation {
        code: WIRE_HOT.code,
        why: "No fuse helps against what the load itself draws all the time.",
        act: "A thicker wire.",
        source: "thin-wall wire from a distributor's table; classes of insulation by ISO 6722-1, from memory",
    },
    Explanation {
        code: CABLE_DROPS.code,
        why: "Hundreds of amperes make each milliohm count; a battery in the rear needs a cable to match, and so does its ground.",
        act: "A thicker cable, and a strap as thick between engine and body.",
        source: "0.8 V out and back: common practice, no source",
    },
    Explanation {
        code: ALTERNATOR_LACKS.code,
        why: "What the alternator does not give comes out of the battery, until the engine stops.",
        act: "A larger alternator, or less that is on at once.",
        source: "four fifths of its rating when hot: common practice, no source",
    },
    Explanation {
        code: IDLE_LACKS.code,
        why: "In a queue with fan and lamps on the battery empties slowly.",
        act: "It fills again on the road.",
        source: "the sum of the circuits, all on at once",
    },
    Explanation {
        code: NO_SUCH_RELAY.code,
        why: "Only a relay of this plan can feed it.",
        act: "Type its name as it stands there.",
        source: "the names in this plan",
    },
    Explanation {
        code: BEHIND_ITSELF.code,
        why: "It would never be fed.",
        act: "Name the relay before it, or leave it blank.",
        source: "the names in this plan",
    },
];
