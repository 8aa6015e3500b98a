//! What the steps of the question of the wires are for.

use crate::{questions::wires::words, report::usual::step::purposes};

purposes! {
    words::DO_WAYS => Ask "the way of each wire";
    words::DO_LENGTHEN => ;
    words::DO_COLOUR => ;
    words::DO_PINS => ;
    words::DO_GROUND_PINS => ;
    words::DO_PIGTAIL => ;
    words::BUY_WIRE => Buy "{length} of wire {size}, {colour}";
    words::BUY_FUSES => Buy "{n} fuses {fuse}";
    words::BUY_RELAYS => Buy "{n} relays rated {rating}";
    words::BUY_SLEEVES => Buy "{n} label sleeves";
    words::BUY_SPLICES => Buy "{n} crimp splices, sealing sleeves";
    words::BUY_CONNECTORS => Buy "{n} connectors with terminals and seals";
}
