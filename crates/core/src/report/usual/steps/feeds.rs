//! What the steps of the question of the feeds are for.

use crate::{
    questions::feeds::words::{self, grounds, guards},
    report::usual::step::purposes,
};

purposes! {
    words::DO_FIT => Buy "fuse {fuse}, wire {size}";
    words::DO_FIT_FUSE => Buy "fuse {fuse}";
    words::DO_FIT_WIRE => Buy "wire of {size} or more";
    words::DO_DRAWS => Ask "what it draws";
    words::DO_TYPE => Ask "its fuse and wire";
    words::DO_RATING => Ask "what its contact is rated for";
    words::DO_SMALLER_FUSE => Buy "fuse {fuse}";
    words::DO_OWN_FUSE => Buy "fuse {fuse} with a holder, for it alone";
    words::DO_OWN_FUSES => Buy "fuses {fuse} with holders, one for each group";
    words::DO_LARGER_FUSE => Buy "fuse {fuse}";
    words::DO_LARGER_BOTH => Buy "fuse {fuse}, wire {size}";
    words::DO_LARGER_FUSED => Buy "fuse {fuse}, relay rated {rating}";
    words::DO_LARGER_ALL => Buy "fuse {fuse}, wire {size}, relay rated {rating}";
    words::DO_THICKER_WIRE => Buy "wire of {size} or more";
    words::DO_LARGER_RELAY => Buy "relay, contact rated {rating}";
    words::DO_SPLIT => ;
    words::DO_RELAY => Ask "what the relay's contact makes";
    words::DO_CABLE => Buy "{length} battery cable {size}, minus cable {size}";
    words::DO_CABLES => ;
    guards::DO_KILL => Buy "kill switch, second pole for the alternator";
    guards::DO_INTERLOCK => Buy "neutral or clutch switch";
    grounds::DO_STRAP => Buy "strap, engine to body";
    grounds::DO_STRAP_SIZE => Buy "strap {size}, engine to body";
    grounds::DO_STRAP_SHORTER => ;
    grounds::DO_GROUND_WIRES => ;
    grounds::DO_GROUND_SIZE => Buy "ground wires {size}, controller";
    grounds::DO_GROUND_BOTH => Buy "{count} ground wires {size}, controller";
    grounds::DO_GROUND_SHORTER => ;
    grounds::DO_SENSORS_PIN => ;
    grounds::DO_OWN_BOLT => ;
    words::DO_SHED => Buy "alternator rated {rating}";
}
