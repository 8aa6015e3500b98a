//! The sentences of the question of channels, as planned; those of what is really wired stand in [`wired`].

pub(crate) mod light;
pub(crate) mod strip;
pub(crate) mod taps;
pub(crate) mod wired;

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "channels.question", "Which channel fires which cylinder, and is it wired like that?";
    PENDING = "channels.pending", "One moment…";
    OPEN = "channels.open", "Not answered yet";
    NEEDS_THREE = "channels.needs-three",
        "It needs three things: how many cylinders, in which order they fire, and how the coils are fired.";
    NEEDS_ORDER = "channels.needs-order", "It needs the order in which the cylinders fire.";
    NEEDS_ANGLES = "channels.needs-angles", "It needs the angles of the firings, since they are not even.";
    NEEDS_MENDING = "channels.needs-mending", "Something typed about the engine can't be used: see the field.";
    MEND = "channels.mend", "A field can't be read";
    MEND_WHY = "channels.mend-why", "Something typed here can't be used: see the field.";
    // the engine
    TITLE_ENGINE = "channels.title-engine", "Engine";
    FIRES_ALONE = "channels.fires-alone", "Fires once every {cycle}";
    FIRES_EVEN = "channels.fires-even", "Fires every {interval}: {order}";
    FIRES_ODD = "channels.fires-odd", "Odd-fire: {order}";
    FIRES_ODD_AT = "channels.fires-odd-at", "Odd-fire: {order} at {angles}";
    COMPANIONS = "channels.companions", "Companions, 360° apart: {pairs}.";
    COMPANIONS_NONE = "channels.companions-none",
        "Not every cylinder has a companion 360° away: the nearest to that of {cylinder} is {other}, {apart} away. Firing in pairs can't work.";
    COMPANIONS_ALONE = "channels.companions-alone", "One cylinder has no companion.";
    COMPANIONS_ONE_TURN = "channels.companions-one-turn", "Its cycle is one turn, so each fires on every turn.";
    CHECK_ROCKING = "channels.check-rocking",
        "Prove the order at the engine: with {cylinder} at its firing top dead centre, the valves of {companion} rock.";
    CHECK_PUSH = "channels.check-push",
        "Prove the order at the engine: plugs out, turn by hand in its own direction; after {first} the next to push is {second}.";
    FIGURE_CYCLE = "channels.figure-cycle", "Cycle";
    FIGURE_INTERVAL = "channels.figure-interval", "Interval between firings";
    TABLE_FIRING = "channels.table-firing", "The firings, in order";
    COL_CYLINDER = "channels.col-cylinder", "Cylinder";
    COL_CYLINDERS = "channels.col-cylinders", "Cylinders";
    COL_ROTOR = "channels.col-rotor", "Rotor";
    COL_PLUG = "channels.col-plug", "Rotor and plug";
    COL_FIRES = "channels.col-fires", "Fires at";
    COL_NEXT = "channels.col-next", "Next after";
    COL_COMPANION = "channels.col-companion", "Companion";
    NONE = "channels.none", "none";
    // numbering and order
    COL_ACTS = "channels.col-acts", "Channel acts at";
    COL_TOWER = "channels.col-tower", "Tower";
    COL_CHANNEL = "channels.col-channel", "Channel";
    COL_BY_ORDER = "channels.col-by-order", "Channel, by firing order";
    COL_BY_ORDER_USED = "channels.col-by-order-used", "Channel, by firing order (this plan)";
    COL_BY_CYLINDER = "channels.col-by-cylinder", "Channel, by cylinder";
    COL_BY_CYLINDER_USED = "channels.col-by-cylinder-used", "Channel, by cylinder (this plan)";
    TABLE_HABITS = "channels.table-habits", "Two ways to number the channels: use one of them, with its own order";
    TABLE_TOWERS = "channels.table-towers", "Towers of the cap, in the direction of the rotor";
    TABLE_GROUPS = "channels.table-groups", "Which injectors hang on which channel";
    ORDER_TO_ENTER = "channels.order-to-enter", "Order of channels to enter";
    ORDER_ROTARY = "channels.order-rotary", "leading {leading}, trailing {trailing}";
    FIGURE_NEEDED = "channels.figure-needed", "Channels needed";
    FIGURE_SPARE = "channels.figure-spare", "Channels left over";
    PICTURE_PLANNED = "channels.picture-planned", "The cycle with each channel's spark; firing order {order}";
    // ignition
    TITLE_IGNITION = "channels.title-ignition", "Ignition";
    IGNITION_OPEN = "channels.ignition-open", "Choose how the coils are fired";
    IGNITION_OPEN_WHY = "channels.ignition-open-why", "The table says what each way takes on this engine.";
    VERDICT_SEQUENTIAL = "channels.verdict-sequential",
        "{needed} {needed|channel|channels}, one for each cylinder";
    VERDICT_PLUGS = "channels.verdict-plugs", "{needed} channels, one for each plug";
    VERDICT_EVERY_TURN = "channels.verdict-every-turn",
        "{needed} {needed|channel|channels}, each fired every turn";
    VERDICT_PAIRED_SINGLE = "channels.verdict-paired-single",
        "{needed} {needed|channel|channels}, two coils on each";
    VERDICT_PAIRED_DOUBLE = "channels.verdict-paired-double",
        "{needed} {needed|channel|channels}, a double-ended coil on each";
    VERDICT_DISTRIBUTOR = "channels.verdict-distributor",
        "{needed} {needed|channel and coil|channels and coils}, with distributor";
    VERDICT_SHORT = "channels.verdict-short", "{needed} channels wanted, {there} there";
    VERDICT_NO_PAIRS = "channels.verdict-no-pairs", "Pairs don't work on this engine";
    WHY_SEQUENTIAL = "channels.why-sequential",
        "Each coil fires once in two turns, so the controller must know which turn it is in: a cam sensor.";
    WHY_EVERY_TURN = "channels.why-every-turn",
        "Each coil's second spark falls into its own overlap: no companion and no cam sensor needed, at twice the heat in coil and driver.";
    WHY_ONE_TURN = "channels.why-one-turn",
        "The cycle is one turn: every turn is once a cycle, and no cam sensor is needed.";
    WHY_ROTARY = "channels.why-rotary",
        "Each rotor has a leading and a trailing plug, each on a channel of its own; how far the trailing one follows is set in the controller.";
    WHY_PAIRED_SINGLE = "channels.why-paired-single",
        "Companions share a channel: one fires while the other's spark falls into its overlap. No cam sensor needed.";
    WHY_PAIRED_DOUBLE = "channels.why-paired-double",
        "Companions share a coil: one fires while the other's spark falls into its overlap. No cam sensor needed.";
    WHY_TOGETHER = "channels.why-together", "The two that share a channel fire together.";
    WHY_DISTRIBUTOR = "channels.why-distributor",
        "The distributor hands the sparks of one coil round; the controller only gives the moment.";
    DO_WIRE = "channels.do-wire",
        "Wire each channel as the table says, and label both ends with cylinder and channel.";
    DO_ENTER = "channels.do-enter", "Enter this order of channels in the controller: {order}.";
    DO_TOWERS = "channels.do-towers",
        "Put the leads on the towers as the table says, from the tower at the rotor when the first one fires.";
    CAUTION_SPARK = "channels.caution-spark",
        "A coil test makes sparks that can light fuel vapour: no vapour about, injectors unplugged, every lead on a grounded plug or spark tester. Never fire a coil into the open.";
    CAUTION_VOLTAGE = "channels.caution-voltage",
        "Ignition high voltage can injure or kill: hands off coils, leads and plugs while they may fire.";
    IGNITION_SHORT = "channels.ignition-short",
        "This way of firing takes {needed} ignition channels; the controller has {there}.";
    NEEDS_PAIRS = "channels.needs-pairs",
        "You need {single} one by one, {pairs} in companion pairs; you have {there}.";
    NEEDS_SINGLE = "channels.needs-single",
        "You need {single} one by one, and this engine can't be fired in pairs; you have {there}.";
    BEST_SEQUENTIAL = "channels.best-sequential",
        "{n} {n|channel|channels}, one for each plug, is possible: the best there is.";
    BEST_EVERY_TURN = "channels.best-every-turn", "Fire each coil every turn, with {n} channels.";
    BEST_PAIRS = "channels.best-pairs",
        "With {there} channels: fire companion pairs, {n} {n|channel|channels}. What is given up: a spark of its own for each cylinder.";
    BEST_DISTRIBUTOR = "channels.best-distributor",
        "With {there} {there|channel|channels}: one coil and a distributor. Or a controller with more channels.";
    BEST_NONE = "channels.best-none",
        "Nothing can be fired with {there} channels: another controller, or another number typed.";
    NO_COMPANION = "channels.no-companion",
        "No cylinder fires exactly 360° from cylinder {cylinder}: the nearest, {other}, misses by {miss}, so a shared spark would fall into a live stroke.";
    NO_COMPANION_ONE_TURN = "channels.no-companion-one-turn",
        "No other fires together with {cylinder}, so a shared spark would fall into a live stroke.";
    NO_COMPANION_ALONE = "channels.no-companion-alone",
        "Cylinder {cylinder} has no other cylinder to share a channel with.";
    INSTEAD_EVERY_TURN = "channels.instead-every-turn",
        "A coil for each cylinder, each fired every turn: {n} {n|channel|channels}, no companion and no cam sensor, at twice the coil heat.";
    INSTEAD_SEQUENTIAL = "channels.instead-sequential",
        "Or in sequence: {n} {n|channel|channels}, one for each coil.";
    INSTEAD_MORE = "channels.instead-more",
        "It takes {n} channels, one for each coil: a controller with that many.";
    INSTEAD_DISTRIBUTOR = "channels.instead-distributor", "Or one coil and a distributor: one channel.";
    INSTEAD_ROTARY = "channels.instead-rotary",
        "Some two-rotor engines share one double-ended coil between the leading plugs: that is not worked out here; follow the engine maker's data.";
    TABLE_WAYS = "channels.table-ways", "What each way of firing the coils takes on this engine";
    COL_WAY = "channels.col-way", "Way";
    COL_CHANNELS = "channels.col-channels", "Channels";
    COL_COILS = "channels.col-coils", "Coils";
    COL_CAM = "channels.col-cam", "Cam sensor";
    CAM_YES = "channels.cam-yes", "needed";
    CAM_NO = "channels.cam-no", "not needed";
    NOT_HERE = "channels.not-here", "no companions: not on this engine";
    WAY_SEQUENTIAL = "channels.way-sequential", "in sequence";
    WAY_EVERY_TURN = "channels.way-every-turn", "every turn";
    WAY_PAIRED_SINGLE = "channels.way-paired-single", "pairs, a coil each";
    WAY_PAIRED_DOUBLE = "channels.way-paired-double", "pairs, double-ended coils";
    WAY_DISTRIBUTOR = "channels.way-distributor", "distributor";
    // injection
    TITLE_INJECTION = "channels.title-injection", "Injection";
    TITLE_SECOND = "channels.title-second", "Second injectors";
    INJECTION_OPEN = "channels.injection-open", "Choose how the injectors are fired";
    INJECTION_OPEN_WHY = "channels.injection-open-why", "The table says what each way takes on this engine.";
    VERDICT_INJECTORS = "channels.verdict-injectors", "{needed} {needed|channel|channels}, one for each injector";
    VERDICT_INJECTOR_PAIRS = "channels.verdict-injector-pairs",
        "{needed} {needed|channel|channels}, two injectors on each";
    VERDICT_BANKS = "channels.verdict-banks", "{needed} {needed|channel|channels}, one for each bank";
    VERDICT_TOGETHER = "channels.verdict-together", "One channel for all injectors";
    WHY_INJECTORS = "channels.why-injectors",
        "Each injector opens once a cycle at its own moment; a four-stroke engine needs a cam sensor for that.";
    WHY_INJECTOR_PAIRS = "channels.why-injector-pairs", "Companions are injected together, every turn.";
    WHY_OPEN_VALVE = "channels.why-open-valve",
        "For some cylinders the inlet valve is open meanwhile: normal for this way, no fault.";
    DO_WIRE_INJECTORS = "channels.do-wire-injectors",
        "Wire each injector as the table says. Its map is apart from that of the coils: each can be wrong alone.";
    DO_GROUPS = "channels.do-groups", "Check that the channel carries the current of all its injectors together.";
    CAUTION_FUEL = "channels.caution-fuel",
        "An injector test with pressure in the rail puts fuel into the cylinder: relieve the pressure first, coils unplugged, no flames.";
    INJECTION_SHORT = "channels.injection-short",
        "This way of firing takes {needed} injection channels; the controller has {there}.";
    BANKS_OPEN = "channels.banks-open", "Type the banks";
    BANKS_UNKNOWN = "channels.banks-unknown", "Firing bank by bank needs to know which cylinder is on which bank.";
    BANKS_MISSING = "channels.banks-missing", "banks not typed";
    NO_INJECTOR_COMPANION = "channels.no-injector-companion",
        "No cylinder fires exactly 360° from cylinder {cylinder}, so there is no pair to inject together.";
    INJECT_EACH_ONCE = "channels.inject-each-once", "Use {n} {n|channel|channels}, one for each injector.";
    INJECT_PAIRS = "channels.inject-pairs", "Inject companion pairs: {n} {n|channel|channels}.";
    INJECT_BANKS = "channels.inject-banks", "Inject bank by bank: {n} {n|channel|channels}.";
    INJECT_TOGETHER = "channels.inject-together", "Inject all together: one channel, if it carries the current.";
    TABLE_INJECTION_WAYS = "channels.table-injection-ways",
        "What each way of firing the injectors takes on this engine";
    WAY_INJECTORS = "channels.way-injectors", "in sequence";
    WAY_INJECTOR_PAIRS = "channels.way-injector-pairs", "companion pairs";
    WAY_BANKS = "channels.way-banks", "bank by bank";
    WAY_TOGETHER = "channels.way-together", "all together";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: IGNITION_SHORT.code,
        // The way in which the coils are to be fired takes more channels than the controller has.
        why: "A cylinder without a channel never fires.",
        act: "Choose a way that takes fewer channels, or a controller that has more.",
        source: "count of channels",
    },
    Explanation {
        code: INJECTION_SHORT.code,
        // The way in which the injectors are to be fired takes more channels than the controller has.
        why: "A cylinder without fuel doesn't run, and its neighbours are driven by it.",
        act: "Choose a way that takes fewer channels, or a controller that has more.",
        source: "count of channels",
    },
    Explanation {
        code: NO_COMPANION.code,
        // Coils are to be fired in pairs on an engine with no two cylinders exactly 360 degrees apart.
        why: "The spark that should be wasted falls into a live stroke: backfire, detonation or kick-back.",
        act: "A coil for each cylinder, fired in sequence or every turn. Firing a cylinder's own coil every turn needs no companion; people confuse the two.",
        source: "geometry of the four-stroke cycle",
    },
    Explanation {
        code: NO_COMPANION_ONE_TURN.code,
        // Coils are to be fired in pairs on a two-stroke or a rotary of which no two fire together.
        why: "With a cycle of one turn there is no overlap for a wasted spark to fall into.",
        act: "A coil for each plug, each on a channel of its own.",
        source: "geometry of the two-stroke cycle",
    },
    Explanation {
        code: NO_COMPANION_ALONE.code,
        // Coils are to be fired in pairs on an engine of one cylinder.
        why: "There is nothing to pair it with.",
        act: "Fire its coil every turn: no cam sensor is needed.",
        source: "geometry of the four-stroke cycle",
    },
    Explanation {
        code: NO_INJECTOR_COMPANION.code,
        // Injectors are to be fired in pairs on an engine without companions.
        why: "There is no pair whose moments agree.",
        act: "Inject in sequence, or all together.",
        source: "geometry of the four-stroke cycle",
    },
];
