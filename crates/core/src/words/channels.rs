//! The sentences of the question of channels, as planned; those of what is really wired stand in [`wired`].

pub(super) mod light;
pub(super) mod strip;
pub(super) mod taps;
pub(super) mod wired;

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] = &[
    ("channels.open", "Not answered yet"),
    (
        "channels.needs-three",
        "It needs three things: how many cylinders, in which order they fire, and how the coils are fired.",
    ),
    ("channels.needs-order", "It needs the order in which the cylinders fire."),
    ("channels.needs-angles", "It needs the angles of the firings, since they are not even."),
    ("channels.needs-mending", "Something typed about the engine can't be used: see the field."),
    ("channels.mend", "A field can't be read"),
    ("channels.mend-why", "Something typed here can't be used: see the field."),
    // the engine
    ("channels.title-engine", "Engine"),
    ("channels.fires-alone", "Fires once every {cycle}"),
    ("channels.fires-even", "Fires every {interval}: {order}"),
    ("channels.fires-odd", "Odd-fire: {order}"),
    ("channels.fires-odd-at", "Odd-fire: {order} at {angles}"),
    ("channels.companions", "Companions, 360° apart: {pairs}."),
    (
        "channels.companions-none",
        "Not every cylinder has a companion 360° away: the nearest to that of {cylinder} is {other}, {apart} away. Firing in pairs can't work.",
    ),
    ("channels.companions-alone", "One cylinder has no companion."),
    ("channels.companions-one-turn", "Its cycle is one turn, so each fires on every turn."),
    (
        "channels.check-rocking",
        "Prove the order at the engine: with {cylinder} at its firing top dead centre, the valves of {companion} rock.",
    ),
    (
        "channels.check-push",
        "Prove the order at the engine: plugs out, turn by hand in its own direction; after {first} the next to push is {second}.",
    ),
    ("channels.figure-cycle", "Cycle"),
    ("channels.figure-interval", "Interval between firings"),
    ("channels.table-firing", "The firings, in order"),
    ("channels.col-cylinder", "Cylinder"),
    ("channels.col-cylinders", "Cylinders"),
    ("channels.col-rotor", "Rotor"),
    ("channels.col-plug", "Rotor and plug"),
    ("channels.col-fires", "Fires at"),
    ("channels.col-next", "Next after"),
    ("channels.col-companion", "Companion"),
    ("channels.none", "none"),
    // numbering and order
    ("channels.col-acts", "Channel acts at"),
    ("channels.col-tower", "Tower"),
    ("channels.col-channel", "Channel"),
    ("channels.col-by-order", "Channel, by firing order"),
    ("channels.col-by-order-used", "Channel, by firing order (this plan)"),
    ("channels.col-by-cylinder", "Channel, by cylinder"),
    ("channels.col-by-cylinder-used", "Channel, by cylinder (this plan)"),
    (
        "channels.table-habits",
        "Two ways to number the channels: use one of them, with its own order",
    ),
    ("channels.table-towers", "Towers of the cap, in the direction of the rotor"),
    ("channels.table-groups", "Which injectors hang on which channel"),
    ("channels.order-to-enter", "Order of channels to enter"),
    ("channels.order-rotary", "leading {leading}, trailing {trailing}"),
    ("channels.figure-needed", "Channels needed"),
    ("channels.figure-spare", "Channels left over"),
    ("channels.picture-planned", "The cycle with each channel's spark; firing order {order}"),
    // ignition
    ("channels.title-ignition", "Ignition"),
    ("channels.ignition-open", "Choose how the coils are fired"),
    ("channels.ignition-open-why", "The table says what each way takes on this engine."),
    ("channels.verdict-sequential", "{needed} {needed|channel|channels}, one for each cylinder"),
    ("channels.verdict-plugs", "{needed} channels, one for each plug"),
    ("channels.verdict-every-turn", "{needed} {needed|channel|channels}, each fired every turn"),
    ("channels.verdict-paired-single", "{needed} {needed|channel|channels}, two coils on each"),
    (
        "channels.verdict-paired-double",
        "{needed} {needed|channel|channels}, a double-ended coil on each",
    ),
    (
        "channels.verdict-distributor",
        "{needed} {needed|channel and coil|channels and coils}, with distributor",
    ),
    ("channels.verdict-short", "{needed} channels wanted, {there} there"),
    ("channels.verdict-no-pairs", "Pairs don't work on this engine"),
    (
        "channels.why-sequential",
        "Each coil fires once in two turns, so the controller must know which turn it is in: a cam sensor.",
    ),
    (
        "channels.why-every-turn",
        "Each coil's second spark falls into its own overlap: no companion and no cam sensor needed, at twice the heat in coil and driver.",
    ),
    (
        "channels.why-one-turn",
        "The cycle is one turn: every turn is once a cycle, and no cam sensor is needed.",
    ),
    (
        "channels.why-rotary",
        "Each rotor has a leading and a trailing plug, each on a channel of its own; how far the trailing one follows is set in the controller.",
    ),
    (
        "channels.why-paired-single",
        "Companions share a channel: one fires while the other's spark falls into its overlap. No cam sensor needed.",
    ),
    (
        "channels.why-paired-double",
        "Companions share a coil: one fires while the other's spark falls into its overlap. No cam sensor needed.",
    ),
    ("channels.why-together", "The two that share a channel fire together."),
    (
        "channels.why-distributor",
        "The distributor hands the sparks of one coil round; the controller only gives the moment.",
    ),
    (
        "channels.do-wire",
        "Wire each channel as the table says, and label both ends with cylinder and channel.",
    ),
    ("channels.do-enter", "Enter this order of channels in the controller: {order}."),
    (
        "channels.do-towers",
        "Put the leads on the towers as the table says, from the tower at the rotor when the first one fires.",
    ),
    (
        "channels.caution-spark",
        "A coil test makes sparks that can light fuel vapour: no vapour about, injectors unplugged, every lead on a grounded plug or spark tester. Never fire a coil into the open.",
    ),
    (
        "channels.caution-voltage",
        "Ignition high voltage can injure or kill: hands off coils, leads and plugs while they may fire.",
    ),
    (
        "channels.ignition-short",
        "This way of firing takes {needed} ignition channels; the controller has {there}.",
    ),
    (
        "channels.needs-pairs",
        "You need {single} one by one, {pairs} in companion pairs; you have {there}.",
    ),
    (
        "channels.needs-single",
        "You need {single} one by one, and this engine can't be fired in pairs; you have {there}.",
    ),
    (
        "channels.best-sequential",
        "{n} {n|channel|channels}, one for each plug, is possible: the best there is.",
    ),
    ("channels.best-every-turn", "Fire each coil every turn, with {n} channels."),
    (
        "channels.best-pairs",
        "With {there} channels: fire companion pairs, {n} {n|channel|channels}. What is given up: a spark of its own for each cylinder.",
    ),
    (
        "channels.best-distributor",
        "With {there} {there|channel|channels}: one coil and a distributor. Or a controller with more channels.",
    ),
    (
        "channels.best-none",
        "Nothing can be fired with {there} channels: another controller, or another number typed.",
    ),
    (
        "channels.no-companion",
        "No cylinder fires exactly 360° from cylinder {cylinder}: the nearest, {other}, misses by {miss}, so a shared spark would fall into a live stroke.",
    ),
    (
        "channels.no-companion-one-turn",
        "No other fires together with {cylinder}, so a shared spark would fall into a live stroke.",
    ),
    (
        "channels.no-companion-alone",
        "Cylinder {cylinder} has no other cylinder to share a channel with.",
    ),
    (
        "channels.instead-every-turn",
        "A coil for each cylinder, each fired every turn: {n} {n|channel|channels}, no companion and no cam sensor, at twice the coil heat.",
    ),
    ("channels.instead-sequential", "Or in sequence: {n} {n|channel|channels}, one for each coil."),
    (
        "channels.instead-more",
        "It takes {n} channels, one for each coil: a controller with that many.",
    ),
    ("channels.instead-distributor", "Or one coil and a distributor: one channel."),
    (
        "channels.instead-rotary",
        "Some two-rotor engines share one double-ended coil between the leading plugs: that is not worked out here; follow the engine maker's data.",
    ),
    ("channels.table-ways", "What each way of firing the coils takes on this engine"),
    ("channels.col-way", "Way"),
    ("channels.col-channels", "Channels"),
    ("channels.col-coils", "Coils"),
    ("channels.col-cam", "Cam sensor"),
    ("channels.cam-yes", "needed"),
    ("channels.cam-no", "not needed"),
    ("channels.not-here", "no companions: not on this engine"),
    ("channels.way-sequential", "in sequence"),
    ("channels.way-every-turn", "every turn"),
    ("channels.way-paired-single", "pairs, a coil each"),
    ("channels.way-paired-double", "pairs, double-ended coils"),
    ("channels.way-distributor", "distributor"),
    // injection
    ("channels.title-injection", "Injection"),
    ("channels.title-second", "Second injectors"),
    ("channels.injection-open", "Choose how the injectors are fired"),
    ("channels.injection-open-why", "The table says what each way takes on this engine."),
    ("channels.verdict-injectors", "{needed} {needed|channel|channels}, one for each injector"),
    (
        "channels.verdict-injector-pairs",
        "{needed} {needed|channel|channels}, two injectors on each",
    ),
    ("channels.verdict-banks", "{needed} {needed|channel|channels}, one for each bank"),
    ("channels.verdict-together", "One channel for all injectors"),
    (
        "channels.why-injectors",
        "Each injector opens once a cycle at its own moment; a four-stroke engine needs a cam sensor for that.",
    ),
    ("channels.why-injector-pairs", "Companions are injected together, every turn."),
    (
        "channels.why-open-valve",
        "For some cylinders the inlet valve is open meanwhile: normal for this way, no fault.",
    ),
    (
        "channels.do-wire-injectors",
        "Wire each injector as the table says. Its map is apart from that of the coils: each can be wrong alone.",
    ),
    (
        "channels.do-groups",
        "Check that the channel carries the current of all its injectors together.",
    ),
    (
        "channels.caution-fuel",
        "An injector test with pressure in the rail puts fuel into the cylinder: relieve the pressure first, coils unplugged, no flames.",
    ),
    (
        "channels.injection-short",
        "This way of firing takes {needed} injection channels; the controller has {there}.",
    ),
    ("channels.banks-open", "Type the banks"),
    (
        "channels.banks-unknown",
        "Firing bank by bank needs to know which cylinder is on which bank.",
    ),
    ("channels.banks-missing", "banks not typed"),
    (
        "channels.no-injector-companion",
        "No cylinder fires exactly 360° from cylinder {cylinder}, so there is no pair to inject together.",
    ),
    ("channels.inject-each-once", "Use {n} {n|channel|channels}, one for each injector."),
    ("channels.inject-pairs", "Inject companion pairs: {n} {n|channel|channels}."),
    ("channels.inject-banks", "Inject bank by bank: {n} {n|channel|channels}."),
    ("channels.inject-together", "Inject all together: one channel, if it carries the current."),
    ("channels.table-injection-ways", "What each way of firing the injectors takes on this engine"),
    ("channels.way-injectors", "in sequence"),
    ("channels.way-injector-pairs", "companion pairs"),
    ("channels.way-banks", "bank by bank"),
    ("channels.way-together", "all together"),
];

pub(super) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: "channels.ignition-short",
        // The way in which the coils are to be fired takes more channels than the controller has.
        why: "A cylinder without a channel never fires.",
        act: "Choose a way that takes fewer channels, or a controller that has more.",
        source: "count of channels",
    },
    Explanation {
        code: "channels.injection-short",
        // The way in which the injectors are to be fired takes more channels than the controller has.
        why: "A cylinder without fuel doesn't run, and its neighbours are driven by it.",
        act: "Choose a way that takes fewer channels, or a controller that has more.",
        source: "count of channels",
    },
    Explanation {
        code: "channels.no-companion",
        // Coils are to be fired in pairs on an engine with no two cylinders exactly 360 degrees apart.
        why: "The spark that should be wasted falls into a live stroke: backfire, detonation or kick-back.",
        act: "A coil for each cylinder, fired in sequence or every turn. Firing a cylinder's own coil every turn needs no companion; people confuse the two.",
        source: "geometry of the four-stroke cycle",
    },
    Explanation {
        code: "channels.no-companion-one-turn",
        // Coils are to be fired in pairs on a two-stroke or a rotary of which no two fire together.
        why: "With a cycle of one turn there is no overlap for a wasted spark to fall into.",
        act: "A coil for each plug, each on a channel of its own.",
        source: "geometry of the two-stroke cycle",
    },
    Explanation {
        code: "channels.no-companion-alone",
        // Coils are to be fired in pairs on an engine of one cylinder.
        why: "There is nothing to pair it with.",
        act: "Fire its coil every turn: no cam sensor is needed.",
        source: "geometry of the four-stroke cycle",
    },
    Explanation {
        code: "channels.no-injector-companion",
        // Injectors are to be fired in pairs on an engine without companions.
        why: "There is no pair whose moments agree.",
        act: "Inject in sequence, or all together.",
        source: "geometry of the four-stroke cycle",
    },
];
