//! What the steps of the question of crank and cam are for.

use crate::{questions::trigger::words, report::usual::step::purposes};

purposes! {
    // still wanted
    words::DO_SPEED => Ask "highest speed of the engine";
    words::DO_CRANKING => Ask "cranking speed";
    words::DO_LIMIT => Ask "highest frequency of the controller's inputs";
    words::DO_INPUT => Ask "the smallest peak the input counts, and its highest voltage";
    words::DO_RAIL => Ask "the pull-up: at the input's pin, sensor unplugged, controller on, 5 V or the battery's";
    words::DO_BEARS => Ask "the highest voltage of the input: it gets up to {high}";
    words::DO_PAIR => Ask "speed and reading of the light, both";
    // in the controller
    words::WHY_GAP => Enter "{positions} positions, {missing} missing";
    words::WHY_CAM => Enter "{positions} positions, {missing} missing";
    words::WHY_PLAIN => Enter "{positions} positions, {missing} missing";
    words::ENTER_FIRST => Enter "{angle}";
    words::ENTER => Enter "{angle}";
    words::ADD => Enter "{error} {change}";
    words::DIFFERS => Enter "{stands}, once the tooth is counted again";
    words::CURE_COUNT => ;
    words::DO_COUNT => ;
    words::CURE_OFFSET => Enter "{enter}";
    // parts
    words::CURE_TEETH => Buy "crank wheel of {most} positions or fewer";
    words::CURE_SERIES => Buy "resistor {series}, in series with the signal";
    words::CURE_CLAMP => Buy "resistor {series} in line, and a clamp of no more than {bears} behind it, both ways, for {current}";
    words::CURE_PULL_UP => Buy "pull-up {pull_up}, to {rail}";
    words::DO_GAP => ;
    // at the car
    words::DO_MEASURE => Prove "unplugged, fuel and spark off, cranking: AC volts across its wires; note the speed";
    words::DO_POLARITY => Prove "polarity: which way a scope or a moving-coil meter swings as iron comes near";
    words::DO_GAP_WIDTH => Prove "air gap by its maker's data, all round, with a feeler gauge";
    words::DO_COIL_WIRES => Prove "a few hundred to 2000 Ω between its two wires, none to ground";
    words::DO_HALL_WIRES => Prove "ignition on: supply 5 or 12 V, ground 0 V; no ohmmeter";
    words::DO_STAND => Prove "cylinder 1 at TDC, turned by hand the way it runs: count the tooth at the sensor";
    words::DO_LIGHT => Prove "light at two speeds, advance locked: alike at both is offset, what grows is delay";
    // with the hands
    words::DO_SWAP => ;
    words::DO_CONNECTOR_TWO => ;
    words::DO_CONNECTOR_THREE => ;
    words::DO_ROUTE => ;
}
