//! What the steps of the question of cranking are for.

use crate::{
    questions::cranking::words::{self, relays, supply, unsearched},
    report::usual::step::purposes,
};

purposes! {
    // still wanted
    words::OPEN_WANTS => Ask "{wanted}";
    relays::RELAY_WANTS_PURPOSE => Ask "what it feeds";
    relays::RELAY_WANTS_THRESHOLD => Ask "the speed at which it is switched on";
    unsearched::SEARCH_SHORTER => ;
    words::WHEEL_APART => ;
    words::WHEEL_OF_GAPS => ;
    // in the controller
    words::DO_SET => Enter "on at {threshold}, off below {release}, {agree} {agree|reading|readings} in a row";
    words::DO_KEEP => Enter "on at {threshold}, off below {release}, {agree} {agree|reading|readings} in a row";
    words::SET_THRESHOLD => Cure "Switch on at {threshold} and off below {release}.";
    relays::SET_RUNNING => ;
    relays::RAISE_RELEASE => ;
    relays::PUMP_BY_CONTROLLER =>
        Cure "Let the controller switch its relay, at an engine speed.";
    words::SET_TIMEOUT => Enter "stall time-out {timeout} or more";
    words::USE_CAM => ;
    words::SHORTER_TIMEOUT => ;
    relays::FILTER_EDGES => ;
    // parts
    words::USE_RELAY => Buy "relay that pulls in at {voltage} or less, its coil at 20 °C";
    relays::OTHER_IGNITER => Buy "igniters that stay quiet at power-up";
    relays::FIT_CUT =>
        Buy "inertia switch, or oil-pressure switch with a start bypass",
        Cure "Put an inertia switch, or an oil-pressure switch with a start bypass, in the pump's feed.";
    words::HOLD_SUPPLY => ;
    supply::LIVE_FEED => ;
    supply::HOLDS_ONCE_IN => ;
    relays::POWER_BEFORE => ;
    // at the car
    words::DO_MEASURE => Prove "speed from every tooth while cranking cold, fuel and spark off: mean and dip";
    words::DO_LISTEN =>
        Prove "coils, injectors, pump unplugged, its fuse in, cranking: one click, no buzz; its contact (87) reads battery voltage";
    words::DO_STOP => Prove "key released: power goes when the engine stops";
    relays::DO_PUMP => Prove "stalled on purpose, in the open: the pump stops when the engine stands";
}
