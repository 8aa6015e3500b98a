//! The sentences of the question of channels, as planned; those of what is really wired stand in [`wired`].

pub(crate) mod entered;
pub(crate) mod light;
pub(crate) mod strip;
pub(crate) mod taps;
pub(crate) mod wired;

use crate::words::{Explanation, sentences};

sentences! {
    QUESTION = "firing.question", "Which channel fires which cylinder, and is it wired like that?";
    PENDING = "firing.pending", "One moment…";
    OPEN = "firing.open", "Not answered yet";
    NEEDS_THREE = "firing.needs-three",
        "Needs: how many cylinders, the firing order, how the coils are fired.";
    NEEDS_ORDER = "firing.needs-order", "It needs the order in which the cylinders fire.";
    NEEDS_ANGLES = "firing.needs-angles", "It needs the angles of the firings, since they are not even.";
    NEEDS_MENDING = "firing.needs-mending", "What is typed about the engine can't be used: correct the field that is marked.";
    MEND = "firing.mend", "A field can't be read";
    MEND_WHY = "firing.mend-why", "What is typed here can't be used: correct the field that is marked.";
    // the engine
    TITLE_ENGINE = "firing.title-engine", "Engine";
    FIRES_ALONE = "firing.fires-alone", "Fires once every {cycle}";
    FIRES_EVEN = "firing.fires-even", "Fires every {interval}: {order}";
    FIRES_ODD = "firing.fires-odd", "Odd-fire: {order}";
    FIRES_ODD_AT = "firing.fires-odd-at", "Odd-fire: {order} at {angles}";
    COMPANIONS = "firing.companions", "Companions, 360° apart: {pairs}.";
    COMPANIONS_NONE = "firing.companions-none",
        "Not every cylinder has a companion 360° away: the nearest to {cylinder} is {other}, {apart} away. Firing in pairs can't work.";
    COMPANIONS_ALONE = "firing.companions-alone", "One cylinder has no companion.";
    COMPANIONS_ONE_TURN = "firing.companions-one-turn", "Its cycle is one turn, so each fires on every turn.";
    CHECK_ROCKING = "firing.check-rocking",
        "Prove the order at the engine: with cylinder {cylinder} at its firing TDC, the valves of {companion} rock.";
    CHECK_PUSH = "firing.check-push",
        "Prove the order at the engine: spark plugs out, turn by hand the way it runs; after {first} the next with compression is {second}.";
    CHECK_ANGLES = "firing.check-angles",
        "Prove the angles before you rely on them: by a degree wheel, TDC of {second} comes {angle} after that of {first}. Once it runs, the timing light on {second} too, by a mark of its own.";
    CHECK_MARKS = "firing.check-marks",
        "The light proves the angles only if the mark of {second} was found by a degree wheel at its TDC, {angle} after that of {first}.";
    FIGURE_CYCLE = "firing.figure-cycle", "Cycle";
    FIGURE_INTERVAL = "firing.figure-interval", "Interval between firings";
    TABLE_FIRING = "firing.table-firing", "The firings, in order";
    COL_CYLINDER = "firing.col-cylinder", "Cylinder";
    COL_CYLINDERS = "firing.col-cylinders", "Cylinders";
    COL_ROTOR = "firing.col-rotor", "Rotor";
    COL_PLUG = "firing.col-plug", "Rotor and plug";
    COL_FIRES = "firing.col-fires", "Fires at";
    COL_NEXT = "firing.col-next", "Next after";
    COL_COMPANION = "firing.col-companion", "Companion";
    NONE = "firing.none", "none";
    // numbering and order
    COL_ACTS = "firing.col-acts", "Channel fires at";
    COL_TOWER = "firing.col-tower", "Tower";
    COL_CHANNEL = "firing.col-channel", "Channel";
    COL_BY_ORDER = "firing.col-by-order", "Channel, by firing order";
    COL_BY_ORDER_USED = "firing.col-by-order-used", "Channel, by firing order (this plan)";
    COL_BY_CYLINDER = "firing.col-by-cylinder", "Channel, by cylinder";
    COL_BY_CYLINDER_USED = "firing.col-by-cylinder-used", "Channel, by cylinder (this plan)";
    TABLE_HABITS = "firing.table-habits", "Two ways to number the channels: use one of them, with its own order";
    TABLE_TOWERS = "firing.table-towers", "Towers of the cap, in rotor direction";
    TABLE_GROUPS = "firing.table-groups", "Which injectors are on which channel";
    ORDER_TO_ENTER = "firing.order-to-enter", "Order of channels to enter";
    ORDER_ROTARY = "firing.order-rotary", "leading {leading}, trailing {trailing}";
    FIGURE_NEEDED = "firing.figure-needed", "Channels needed";
    FIGURE_SPARE = "firing.figure-spare", "Channels left over";
    PICTURE_PLANNED = "firing.picture-planned", "The cycle with each channel's spark; firing order {order}";
    // ignition
    TITLE_IGNITION = "firing.title-ignition", "Ignition";
    IGNITION_OPEN = "firing.ignition-open", "Choose how the coils are fired";
    IGNITION_OPEN_WHY = "firing.ignition-open-why", "The table shows what each way needs on this engine.";
    VERDICT_SEQUENTIAL = "firing.verdict-sequential",
        "{needed} {needed|channel|channels}, one for each cylinder";
    VERDICT_PLUGS = "firing.verdict-plugs", "{needed} channels, one for each plug";
    VERDICT_EVERY_TURN = "firing.verdict-every-turn",
        "{needed} {needed|channel|channels}, each fired every turn";
    VERDICT_PAIRED_SINGLE = "firing.verdict-paired-single",
        "{needed} {needed|channel|channels}, two coils on each";
    VERDICT_PAIRED_DOUBLE = "firing.verdict-paired-double",
        "{needed} {needed|channel|channels}, a double-ended coil on each";
    VERDICT_DISTRIBUTOR = "firing.verdict-distributor",
        "{needed} {needed|channel and coil|channels and coils}, with distributor";
    VERDICT_SHORT = "firing.verdict-short", "Needs {needed} channels, you have {there}";
    VERDICT_NO_PAIRS = "firing.verdict-no-pairs", "Pairs don't work on this engine";
    WHY_SEQUENTIAL = "firing.why-sequential",
        "Each coil fires once in two turns, so the controller must know which turn it is in: a cam sensor.";
    WHY_EVERY_TURN = "firing.why-every-turn",
        "Wasted spark: each coil's second spark falls into its own overlap. No companion and no cam sensor needed, at twice the heat in coil and driver.";
    WHY_ONE_TURN = "firing.why-one-turn",
        "The cycle is one turn: every turn is once a cycle, and no cam sensor is needed.";
    WHY_ROTARY = "firing.why-rotary",
        "Each rotor has a leading and a trailing plug, each on a channel of its own; how far the trailing one follows is set in the controller.";
    WHY_PAIRED_SINGLE = "firing.why-paired-single",
        "Wasted spark: companions share a channel; one fires while the other's spark falls into its overlap. No cam sensor needed.";
    WHY_PAIRED_DOUBLE = "firing.why-paired-double",
        "Wasted spark: companions share a coil; one fires while the other's spark falls into its overlap. No cam sensor needed.";
    WHY_TOGETHER = "firing.why-together", "The two that share a channel fire together.";
    WHY_DISTRIBUTOR = "firing.why-distributor",
        "The distributor hands round the sparks of one coil; the controller only sets the moment.";
    DO_WIRE = "firing.do-wire",
        "Wire each channel as planned, and label both ends with cylinder and channel.";
    DO_ENTER = "firing.do-enter", "Enter this order of channels in the controller: {order}.";
    DO_TOWERS = "firing.do-towers",
        "Put the leads on the towers as planned, starting from the tower at the rotor when the first one fires.";
    CAUTION_SPARK = "firing.caution-spark",
        "A coil test makes sparks that can light fuel vapour: no vapour about, injectors unplugged, every lead on a grounded plug or spark tester. Never fire a coil into the open.";
    CAUTION_VOLTAGE = "firing.caution-voltage",
        "Ignition high voltage can injure or kill: hands off coils, leads and plugs while they may fire.";
    IGNITION_SHORT = "firing.ignition-short",
        "This way of firing needs {needed} ignition channels; the controller has {there}.";
    VERDICT_BLIND = "firing.verdict-blind", "Sequential, but no cam sensor";
    BLIND_WHY = "firing.blind-why", "Nothing tells one turn from the other.";
    BLIND = "firing.blind",
        "Sequential ({what}), but nothing tells one turn from the other: no cam sensor is planned beside the crank wheel.";
    FIRE_WITHOUT_CAM = "firing.fire-without-cam", "Do it without a cam: {ways}.";
    ADD_CAM = "firing.add-cam", "Add a cam sensor, and type its teeth under “Trigger”.";
    NEEDS_PAIRS = "firing.needs-pairs",
        "You need {single} one by one, {pairs} in companion pairs; you have {there}.";
    NEEDS_SINGLE = "firing.needs-single",
        "You need {single} one by one, and this engine can't be fired in pairs; you have {there}.";
    BEST_SEQUENTIAL = "firing.best-sequential",
        "{n} {n|channel|channels}, one for each plug, is possible: the best there is.";
    BEST_EVERY_TURN = "firing.best-every-turn", "Fire each coil every turn, with {n} channels.";
    BEST_PAIRS = "firing.best-pairs",
        "With {there} channels: fire companion pairs (wasted spark), {n} {n|channel|channels}. You give up a spark of its own for each cylinder.";
    BEST_DISTRIBUTOR = "firing.best-distributor",
        "With {there} {there|channel|channels}: one coil and a distributor. Or a controller with more channels.";
    BEST_NONE = "firing.best-none",
        "Nothing can be fired with {there} channels: use another controller, or correct the number.";
    NO_COMPANION = "firing.no-companion",
        "No cylinder fires exactly 360° from cylinder {cylinder}: the nearest, {other}, misses by {miss}. Sharing, cylinder {one} gets a spark {error} from its firing point ({stroke}): {outcome}.";
    NO_COMPANION_ONE_TURN = "firing.no-companion-one-turn",
        "No other fires together with {cylinder}. Sharing, cylinder {one} gets a spark {error} from its firing point ({stroke}): {outcome}.";
    NO_COMPANION_ALONE = "firing.no-companion-alone",
        "Cylinder {cylinder} has no other cylinder to share a channel with.";
    INSTEAD_EVERY_TURN = "firing.instead-every-turn",
        "A coil for each cylinder, fired every turn (wasted spark): {n} {n|channel|channels}, no companion and no cam sensor needed, at twice the coil heat.";
    INSTEAD_SEQUENTIAL = "firing.instead-sequential",
        "Or sequential: {n} {n|channel|channels}, one for each coil.";
    INSTEAD_MORE = "firing.instead-more",
        "It needs {n} channels, one for each coil: a controller with that many.";
    INSTEAD_DISTRIBUTOR = "firing.instead-distributor", "Or one coil and a distributor: one channel.";
    INSTEAD_ROTARY = "firing.instead-rotary",
        "Some two-rotor engines share one double-ended coil between the leading plugs: that is not worked out here; follow the engine maker's data.";
    TABLE_WAYS = "firing.table-ways", "What each way of firing the coils needs on this engine";
    COL_WAY = "firing.col-way", "Way";
    COL_CHANNELS = "firing.col-channels", "Channels";
    COL_COILS = "firing.col-coils", "Coils";
    COL_CAM = "firing.col-cam", "Cam sensor";
    CAM_YES = "firing.cam-yes", "needed";
    CAM_NO = "firing.cam-no", "not needed";
    NOT_HERE = "firing.not-here", "no companions: not on this engine";
    WAY_SEQUENTIAL = "firing.way-sequential", "sequential";
    WAY_EVERY_TURN = "firing.way-every-turn", "every turn (wasted spark)";
    WAY_PAIRED_SINGLE = "firing.way-paired-single", "pairs, a coil each (wasted spark)";
    WAY_PAIRED_DOUBLE = "firing.way-paired-double", "pairs, double-ended coils (wasted spark)";
    WAY_DISTRIBUTOR = "firing.way-distributor", "distributor";
    // injection
    TITLE_INJECTION = "firing.title-injection", "Injection";
    TITLE_SECOND = "firing.title-second", "Second injectors";
    INJECTION_OPEN = "firing.injection-open", "Choose how the injectors are fired";
    INJECTION_OPEN_WHY = "firing.injection-open-why", "The table shows what each way needs on this engine.";
    VERDICT_INJECTORS = "firing.verdict-injectors", "{needed} {needed|channel|channels}, one for each injector";
    VERDICT_INJECTOR_PAIRS = "firing.verdict-injector-pairs",
        "{needed} {needed|channel|channels}, two injectors on each";
    VERDICT_BANKS = "firing.verdict-banks", "{needed} {needed|channel|channels}, one for each bank";
    VERDICT_TOGETHER = "firing.verdict-together", "One channel for all injectors";
    WHY_INJECTORS_ALONE = "firing.why-injectors-alone", "Each injector opens once a cycle at its own moment.";
    WHY_INJECTORS = "firing.why-injectors",
        "Each injector opens once a cycle at its own moment; a four-stroke engine needs a cam sensor for that.";
    WHY_INJECTOR_PAIRS = "firing.why-injector-pairs", "Companions are injected together, every turn.";
    WHY_OPEN_VALVE = "firing.why-open-valve",
        "For some cylinders the inlet valve is open at that moment: normal for this way.";
    DO_WIRE_INJECTORS = "firing.do-wire-injectors",
        "Wire each injector as planned. Injectors and coils are wired separately: either can be wrong alone.";
    DO_GROUPS = "firing.do-groups", "Check that the channel carries the current of all its injectors together.";
    CAUTION_FUEL = "firing.caution-fuel",
        "An injector test with pressure in the rail puts fuel into the cylinder: let off the pressure first, coils unplugged, no flames.";
    INJECTION_SHORT = "firing.injection-short",
        "This way of firing needs {needed} injection channels; the controller has {there}.";
    BANKS_OPEN = "firing.banks-open", "Type the banks";
    BANKS_UNKNOWN = "firing.banks-unknown", "Firing bank by bank needs to know which cylinder is on which bank.";
    BANKS_MISSING = "firing.banks-missing", "banks not typed";
    NO_INJECTOR_COMPANION = "firing.no-injector-companion",
        "No cylinder fires exactly 360° from cylinder {cylinder}, so there is no pair to inject together.";
    INJECT_EACH_ONCE = "firing.inject-each-once", "Use {n} {n|channel|channels}, one for each injector.";
    INJECT_PAIRS = "firing.inject-pairs", "Inject companion pairs: {n} {n|channel|channels}.";
    INJECT_BANKS = "firing.inject-banks", "Inject bank by bank: {n} {n|channel|channels}.";
    INJECT_TOGETHER = "firing.inject-together", "Inject all together: one channel, if it carries the current.";
    TABLE_INJECTION_WAYS = "firing.table-injection-ways",
        "What each way of firing the injectors needs on this engine";
    WAY_INJECTORS = "firing.way-injectors", "sequential";
    WAY_INJECTOR_PAIRS = "firing.way-injector-pairs", "companion pairs";
    WAY_BANKS = "firing.way-banks", "bank by bank";
    WAY_TOGETHER = "firing.way-together", "all together";
}

pub(crate) const EXPLANATIONS: &[Explanation] = &[
    Explanation {
        code: IGNITION_SHORT.code,
        // The way in which the coils are to be fired takes more channels than the controller has.
        why: "A cylinder without a channel never fires.",
        act: "Choose a way that needs fewer channels, or a controller that has more.",
        source: "count of channels",
    },
    Explanation {
        code: BLIND.code,
        // Coils or injectors act once a cycle of a four-stroke, the crank's wheel is told, and nothing at the cam.
        why: "A crank turns twice in a cycle: in half of all starts every spark and every injection is a turn out, or there is none.",
        act: "Add a cam sensor, or choose a way of firing that is the same in every turn.",
        source: "geometry: a four-stroke's cycle is two turns",
    },
    Explanation {
        code: INJECTION_SHORT.code,
        // The way in which the injectors are to be fired takes more channels than the controller has.
        why: "A cylinder without fuel doesn't run; the others have to turn it.",
        act: "Choose a way that needs fewer channels, or a controller that has more.",
        source: "count of channels",
    },
    Explanation {
        code: NO_COMPANION.code,
        // Coils are to be fired in pairs on an engine with no two cylinders exactly 360 degrees apart.
        why: "The spark that should be wasted falls into a live stroke: backfire, detonation or kick-back.",
        act: "A coil for each cylinder, fired sequentially or every turn. Firing a cylinder's own coil every turn needs no companion; people confuse the two.",
        source: "geometry of the four-stroke cycle",
    },
    Explanation {
        code: NO_COMPANION_ONE_TURN.code,
        // Coils are to be fired in pairs on a two-stroke or a rotary of which no two fire together.
        why: "With a cycle of one turn there is no overlap for a wasted spark to fall into. Some two-stroke twins are built with one at the bottom, ports open; some rotaries with one between the leading plugs.",
        act: "A coil for each spark plug, each on a channel of its own.",
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
        act: "Inject sequentially, or all together.",
        source: "geometry of the four-stroke cycle",
    },
];
