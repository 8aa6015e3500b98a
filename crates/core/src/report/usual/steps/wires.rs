//! What the steps of the question of the wires are for.

use crate::{questions::wires::words, report::usual::step::purposes};

purposes! {
    words::DO_WAYS => Ask "the way of each wire";
    words::DO_LENGTHEN => ;
    words::DO_COLOUR => ;
    words::DO_PINS => ;
    words::DO_GROUND_PINS => ;
    words::DO_PIGTAIL => ;
    words::BUY_WIRE => Buy "wire {size}, {colour}";
    words::BUY_WIRE_FOR => Buy "wire {size}, {colour} (and {least})";
    words::BUY_SHIELD => Buy "braid shield";
    words::BUY_PIECE => Buy "{length} of {size}";
    words::BUY_FUSES => Buy "fuses {fuse}";
    words::BUY_HOLDERS => Buy "fuse holders";
    words::BUY_RELAYS => Buy "relays rated {rating}";
    words::BUY_SOCKETS => Buy "relay sockets";
    words::BUY_RINGS => Buy "ring terminals {size}";
    words::BUY_SLEEVES => Buy "label sleeves";
    words::BUY_SPLICES => Buy "sealed crimp splices";
    words::BUY_CONNECTORS => Buy "connectors with terminals and seals";
}
