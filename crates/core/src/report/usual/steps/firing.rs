//! What the steps of the question of firing are for.

use crate::{
    car::engine::words::{self as engine, crank},
    questions::firing::words::{self, entered, light, strip, taps, wired},
    report::usual::step::purposes,
};

purposes! {
    // still wanted
    words::NEEDS_THREE => Ask "cylinders, firing order, how the coils are fired";
    words::NEEDS_ORDER => Ask "firing order";
    words::NEEDS_ANGLES => Ask "angles of the firings";
    words::BANKS_UNKNOWN => Ask "cylinders of each bank";
    light::LIGHT_NEEDS_ADVANCE => Ask "the advance to which the controller is locked";
    light::LIGHT_NEEDS_TWO => Ask "the light on a second cylinder";
    light::LIGHT_MEND => ;
    // the engine
    words::CHECK_ROCKING => Prove "{cylinder} at firing TDC, the valves of {companion} rock";
    words::CHECK_PUSH => Prove "plugs out, turned by hand, after {first} the next to push is {second}";
    words::CHECK_ANGLES => Prove "TDC of {second} by a degree wheel, {angle} after {first}; then the timing light on {second} too";
    words::CHECK_MARKS => Prove "the mark of {second} was set by a degree wheel, {angle} after {first}: else the light proves no angle";
    crank::ORDER_TRANSLATED => ;
    crank::OTHER_HAND => ;
    engine::TAKE_CRANK => ;
    engine::DROP_CRANK => ;
    // wiring and entering
    words::DO_WIRE => ;
    words::DO_ENTER => Enter "order of channels {order}";
    words::DO_TOWERS => ;
    words::DO_WIRE_INJECTORS => ;
    words::DO_GROUPS => ;
    entered::DO_ENTER_ANGLES => Enter "firing angles {angles}";
    entered::ENTER_ALL => Enter "{what}";
    entered::TAKE_HABIT => ;
    entered::TAKE_ANGLES => ;
    // other ways to fire
    words::BEST_SEQUENTIAL => ;
    words::BEST_EVERY_TURN => ;
    words::BEST_PAIRS => ;
    words::BEST_DISTRIBUTOR => ;
    words::BEST_NONE => ;
    words::FIRE_WITHOUT_CAM => ;
    words::ADD_CAM => Buy "cam sensor and its wheel";
    words::INSTEAD_EVERY_TURN => ;
    words::INSTEAD_SEQUENTIAL => ;
    words::INSTEAD_MORE => ;
    words::INSTEAD_DISTRIBUTOR => ;
    words::INSTEAD_ROTARY => ;
    words::INJECT_EACH_ONCE => ;
    words::INJECT_PAIRS => ;
    words::INJECT_BANKS => ;
    words::INJECT_TOGETHER => ;
    entered::OUTPUTS_CURE => ;
    entered::OUTPUTS_MORE => ;
    entered::SETS_TELL => ;
    strip::STRIP_DO_DWELL => ;
    strip::STRIP_DO_INJECTION => ;
    // as it is wired
    wired::LOOK_COILS => Prove "not seen yet, {cylinders}: fire one channel at a time, whose coil sparks?";
    wired::LOOK_INJECTORS => Prove "not seen yet, {cylinders}: fire one channel at a time, whose injector clicks?";
    wired::LOOK_TOWERS => Prove "not seen yet, {cylinders}: follow their leads from the cap";
    taps::CERTAINLY_WRONG => ;
    taps::MUST_BE => Prove "fire channel {channel} once: {cylinders} must answer";
    taps::DO_FIRE_AGAIN => Prove "fire every channel once more: each where the plan says";
    wired::CURE_SETTING_TURN => Enter "cam reference moved by {error}, leads as they are";
    wired::CURE_SETTING_EARLIER => Enter "reference {error} earlier, leads as they are";
    wired::CURE_SETTING_LATER => Enter "reference {error} later, leads as they are";
    wired::CURE_SETTING_FUEL_EARLIER => Enter "all injections {error} earlier";
    wired::CURE_SETTING_FUEL_LATER => Enter "all injections {error} later";
    wired::CURE_SETTING_TOWERS_ON => ;
    wired::CURE_SETTING_TOWERS_BACK => ;
    wired::CURE_ORDER => Enter "order of channels {order}, leads as they are";
    wired::CURE_GROUPS => Enter "channels to the banks {order}, wires as they are";
    wired::CURE_EXCHANGE => ;
    wired::CURE_EXCHANGE_INJECTORS => ;
    wired::CURE_MOVE => ;
    wired::CURE_MOVE_TOWERS => ;
    // by the timing light
    light::LIGHT_DO_THUMB =>
        Prove "fuel off, plug out, its lead on a spark tester well away, a cork on the hole; cranking, it pops just before the spark";
    light::LIGHT_DO_TURN => ;
    light::LIGHT_DO_SIGN => Enter "the offset with the other sign";
    light::LIGHT_DO_EDGE => ;
    light::LIGHT_DO_TEETH_LATE => ;
    light::LIGHT_DO_TEETH_EARLY => ;
    light::LIGHT_DO_REFERENCE => ;
    light::LIGHT_DO_EARLIER => Enter "all {error} earlier";
    light::LIGHT_DO_LATER => Enter "all {error} later";
    light::LIGHT_DO_TAPS => Prove "fire each channel alone: which cylinder fires?";
    light::LIGHT_DO_AGAIN => Prove "each reading once more: steady speed, timing locked";
    light::LIGHT_FIRED_EVENLY => Enter "firing angles {angles}";
    light::LIGHT_ALTERNATING => Prove "TDCs by a degree wheel: the angles to enter";
    light::LIGHT_DO_ANGLES => ;
}
