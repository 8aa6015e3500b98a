//! What the steps of the question of the standing car are for.

use crate::{questions::standing::words, report::usual::step::purposes};

purposes! {
    words::DO_LEFT_OUT => Ask "what was left out: {list}";
    words::DO_SWITCHED => ;
    words::DO_CONTROLLER => ;
    words::DO_CUT_OFF => Buy "cut-off switch at the battery";
    words::DO_SEARCH => Prove "key off: fuses pulled one after the other until the reading falls";
    words::DO_MEASURE => Prove "current with the key off, of clock, alarm, radio, alternator";
}
