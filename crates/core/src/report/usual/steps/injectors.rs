//! What the steps of the questions of injectors and fuel are for.

use crate::{
    questions::{
        fuel::words as fuel,
        injectors::words::{self, parts},
    },
    report::usual::step::purposes,
};

purposes! {
    // still wanted
    words::WANTS_RESISTANCE => Ask "resistance of one injector, unplugged, less that of the probes";
    words::WANTS_SHARING => Ask "how many share an output";
    words::WANTS_LIMIT => Ask "current limit of one output (pin table)";
    words::WANTS_PEAK => Ask "peak of the output, and whether it can be set";
    parts::FEED_WANTS_COUNT => Ask "how many injectors, in each set";
    parts::FEED_WANTS_SETS => ;
    words::MEASURE_AGAIN => ;
    words::MEASURE_ANOTHER => ;
    words::COUNT_AS_CYLINDERS => ;
    words::SEVERAL_SHARE => ;
    words::SEVERAL_APART => ;
    words::SHARING_AS_FIRED => ;
    words::FIND_OPENING => ;
    // what to take
    words::ANY_ONE => ;
    parts::TAKE_FEWER => ;
    parts::TAKE_RESISTOR => ;
    parts::TAKE_DRIVER_TIGHT => ;
    parts::TAKE_DRIVER => ;
    parts::TAKE_OTHER => ;
    parts::TAKE_NONE => ;
    words::FEWER_COUNTED => ;
    words::FEWER => ;
    parts::FEWER_ON_CHANNEL => ;
    words::RESISTOR_EACH => BuyEach "resistor {value}, {rating}, in series";
    words::FEWER_AND_RESISTOR => BuyEach "resistor {value}, {rating}, in series";
    parts::RESISTOR_LARGER => BuyEach "resistor of {rating} or more";
    words::RESISTOR_STARVES => ;
    words::RESISTOR_HAS_NO_VALUE => ;
    words::RESISTOR_IMPOSSIBLE => ;
    words::RESISTOR_TOO_HOT => ;
    words::ONLY_DRIVER =>
        Buy "peak-and-hold driver, a channel for each injector",
        Enter "peak {peak}, hold {hold} or more",
        Cure "Only a peak-and-hold driver will do, a channel for each injector.";
    words::OR_DRIVER =>
        Buy "peak-and-hold driver, a channel for each injector",
        Enter "peak {peak}, hold {hold} or more",
        Cure "Fit a peak-and-hold driver, a channel for each injector.";
    words::NOT_EVEN_DRIVER => ;
    words::BETTER_OUTPUT => ;
    words::SET_PEAK => Enter "peak {peak}";
    parts::LONGER_PEAK => Enter "peak for {time} or more";
    words::TIME_OUT => ;
    words::NO_PEAK_FITS => ;
    words::OPENS_FROM => ;
    parts::STRONGER_CLAMP => ;
    parts::TAKE_DIODE_OFF => ;
    // the feed
    parts::FEED_FIT =>
        Buy "fuse {fuse}, close to the battery; wire and relay contact rated for more",
        Cure "Fit a fuse of {fuse}, and wire and relay rated for more.";
    parts::FEED_WIRE => ;
    parts::FEED_SPLIT => Buy "fuse, wire and relay for each bank";
    // fuel
    fuel::DO_FLOW => Ask "what one injector passes, and at which pressure";
    fuel::DO_COUNT => Ask "how many injectors";
    fuel::DO_COUNT_SECOND => Ask "how many injectors in the second set";
    fuel::DO_POWER => Ask "the power needed";
    fuel::DO_SPEED => Ask "highest speed of the engine";
    fuel::DO_PROVE => Prove "full load, in steps: fuel pressure must not fall; wideband probe in the exhaust";
    fuel::WHY => Enter "duty limit of the injectors {limit}";
    fuel::DO_HOSE => Buy "manifold-referenced regulator";
    fuel::CURE_SEQUENCE => ;
    fuel::CURE_PRESSURE => ;
    fuel::CURE_DEAD_TIME => ;
    fuel::FIND_DEAD_TIME => ;
    fuel::CURE_LARGER => BuyEach "injector of {flow} or more at {stated}";
    fuel::CURE_LARGER_SETS => Buy "injectors of {times} times the flow, both sets";
    fuel::CURE_LESS => ;
    fuel::NO_PRESSURE => ;
    fuel::NO_TIME => ;
}
