//! What the steps of the question of the pins are for.

use crate::{questions::pins::words, report::usual::step::purposes};

purposes! {
    words::DO_PLACE => ;
    words::DO_LET_MOVE => ;
    words::DO_RELAY => Buy "relay, its coil on {output}";
    words::DO_SHARE => ;
    words::DO_SWITCH => ;
    words::DO_INPUT_ANALOGUE => ;
    words::DO_INPUT_PULLED => ;
    words::DO_INPUT_DIGITAL => ;
    words::DO_INPUT_KNOCK => ;
    words::DO_LARGER => ;
    words::DO_LARGER_INRUSH => ;
    words::DO_LARGER_PULSED => ;
    words::DO_MEASURE => Ask "resistance of {list}";
}
